"""HTML to blocks, after the HTML standard."""

from __future__ import annotations

from fit.document.html.reader import read_html

__all__ = ["read_html"]
