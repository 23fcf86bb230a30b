"""Frames around text."""
