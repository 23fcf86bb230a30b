"""Blocks to lines to pages."""
