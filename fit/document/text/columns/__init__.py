"""Blank gutters, and columns that are read one after the other."""
