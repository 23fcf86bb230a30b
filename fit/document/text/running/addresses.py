"""Addresses at the start of a line: on a line of their own for their length, or in the middle of a sentence."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.joins import SCHEMES
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

_ADDRESS = re.compile(rf"[<(\[]{{0,2}}(?:link:)?(?:{SCHEMES})://\S+")
_LED_TO = re.compile(rf"(?:at|by|from|in|of|on|to|under|via) {_ADDRESS.pattern}")
"""A small word that leads to an address from the words before it, wherever their line ended."""
_STOPPED = re.compile(r"[>)\]\w/][.,;]$")
"""The end of an address behind which the stop of a sentence stands."""
_REMARK = re.compile(r"\s+#\s+\S.*")
_ALONE = re.compile(rf"(?:{SCHEMES})://[^\s<>()]+[\w/](?:{_REMARK.pattern})?")
"""Nothing but an address, and perhaps a remark on it."""
_WIDE = " " * 6
"""A blank that no sentence has: it parts two ends of a line."""


def address(text: str) -> bool:
    """Whether a line begins with an address."""
    return "://" in text and _ADDRESS.match(text) is not None


def address_in_sentence(above: Line, below: Line, right: int) -> bool:
    """Whether a line had no room for the whole address that the sentence goes on with, or a small word leads to it."""
    if above.text.endswith("://"):
        return True  # the rest of it
    if "://" in below.text and prose(above.text) and not closed(above.text) and _LED_TO.match(below.text):
        return _WIDE not in above.text
    begins = _ADDRESS.match(below.text)
    if begins is None or above.end + 1 + len(begins.group()) <= right or _WIDE in above.text:
        return False
    rest = below.text[begins.end() :]
    if _REMARK.fullmatch(rest):
        return False
    told = len(rest.split()) > 1
    stopped = not rest and _STOPPED.search(begins.group()) is not None
    begun = prose(above.text) or hangs(above.text) or len(above.text.split()) > 2
    if above.text.endswith(":"):
        return begun and (told or ")" in begins.group())
    return begun and not closed(above.text) and (told or stopped)


def address_between(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether an address alone on its line stands in a sentence: small letters go on right below it, or went on below another.

    ``start`` is where the unit above starts.
    """
    above, below = lines[index - 1], lines[index]
    if "://" not in below.text or not _ALONE.fullmatch(below.text) or not above.text.endswith(":"):
        return False
    if above.indent != below.indent or not (prose(above.text) or index - start > 2):
        return False
    after = lines[index + 1] if index + 1 < len(lines) else None
    on = after is not None and not after.apart and after.indent == below.indent and starts_small(after.text)
    return (on and prose(lines[index + 1].text)) or (
        index - start > 2 and _ALONE.fullmatch(lines[index - 2].text) is not None
    )


def set_in_address(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is nothing but an address, set in: it says where to find what is named above it.

    Not where the sentence goes on right below it.
    """
    line = lines[index]
    if line.indent <= lines[index - 1].indent or "://" not in line.text or not _ALONE.fullmatch(line.text):
        return False
    below = lines[index + 1] if index + 1 < len(lines) else None
    on = below is not None and not below.apart and below.indent == line.indent and starts_small(below.text)
    return not on or _ADDRESS.match(lines[index + 1].text) is not None
