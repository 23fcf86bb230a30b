"""List items, hanging keys and entries."""
