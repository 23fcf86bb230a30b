"""A document to blocks: one file a format."""
