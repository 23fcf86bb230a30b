"""Running text: chunks, units, blocks."""
