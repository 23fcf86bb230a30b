"""An 8-bit program to a session."""
