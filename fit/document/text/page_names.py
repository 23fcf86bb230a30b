"""Names of pages of a manual with their section, `lamp(1)`: a line end parts the two where others stand together."""

from __future__ import annotations

import re

from fit.document.text.hyphen_words import HUNG

LEAST = 5
"""Such names, at least, in a document that writes them without a blank."""
MORE = 4
"""How many times as many they are, at least, as words with such a number in brackets behind a blank."""
_SECTION = re.compile(r"\w( *)\([1-9][a-z]?\)")


def writes_sections(source: str) -> bool:
    """Whether a document writes the section of a page right behind its name, and hardly ever a number in brackets behind a word."""
    gaps = [match[1] for match in _SECTION.finditer(source)]
    together = gaps.count("")
    return together >= LEAST and together >= MORE * (len(gaps) - together)


def names_section(before: str, after: str) -> bool:
    """Whether a line begins with what may be the section of a page that the end of the one above names, no small word of a list."""
    name = before.rsplit(None, 1)[-1]
    return _SECTION.match(f"{before[-1]}{after}") is not None and name not in HUNG
