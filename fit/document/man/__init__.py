"""Manual pages in the man macros to blocks, and of the formatter what they need."""

from __future__ import annotations

from fit.document.man.reader import read_man

__all__ = ["read_man"]
