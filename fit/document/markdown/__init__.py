"""Markdown to blocks, after CommonMark, with tables."""

from __future__ import annotations

from fit.document.markdown.reader import read_markdown

__all__ = ["read_markdown"]
