"""Output bytes to terminal operations: one file a family of terminals."""
