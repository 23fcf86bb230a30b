"""Terminal operations to what stood where, and the fate of each glyph."""
