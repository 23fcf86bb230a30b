"""Addresses at the start of a line: on a line of their own for their length, or in the middle of a sentence."""

from __future__ import annotations

import re

from fit.document.text.line import Line
from fit.document.text.signs.joins import SCHEMES
from fit.document.text.signs.measure import closed, hangs, prose

_ADDRESS = re.compile(rf"[<(\[]{{0,2}}(?:{SCHEMES})://\S+")
_STOPPED = re.compile(r"[>)\]\w/][.,;]$")
"""The end of an address behind which the stop of a sentence stands."""


def address_in_sentence(above: Line, below: Line, right: int) -> bool:
    """Whether a line had no room for the whole address that the sentence goes on with, and behind it."""
    if above.text.endswith("://"):
        return True  # the rest of it
    address = _ADDRESS.match(below.text)
    if address is None or above.end + 1 + len(address.group()) <= right:
        return False
    rest = below.text[address.end() :]
    told = len(rest.split()) > 1
    stopped = not rest and _STOPPED.search(address.group()) is not None
    begun = prose(above.text) or hangs(above.text) or len(above.text.split()) > 2
    if above.text.endswith(":"):
        return begun and (told or ")" in address.group())
    return begun and not closed(above.text) and (told or stopped)
