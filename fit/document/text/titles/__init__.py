"""Headings, and contents that announce them."""
