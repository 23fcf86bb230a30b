"""Postal addresses: the line with the town, and a whole address in one line.

After "Last Line of the Address" of Publication 28, Postal Addressing Standards (from memory): town, two letters for the
state, and a code of five figures, or of nine with a hyphen.
"""

from __future__ import annotations

import re

_TOWN = re.compile(r".*\b[A-Z]{2},? +\d{5}(?:-\d{4})?(?:[ ,]+[A-Z]\w+)*\.?")


def town(text: str) -> bool:
    """Whether a line ends an address, perhaps with the land behind the code."""
    return _TOWN.fullmatch(text) is not None


def whole_address(text: str) -> bool:
    """Whether a line is an address from the number of the house on."""
    return text[:1].isdigit() and "," in text and town(text)
