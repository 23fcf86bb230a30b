"""Findings to text, JSON, HTML and pictures."""
