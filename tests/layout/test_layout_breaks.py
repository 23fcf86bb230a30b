"""The places at which lines may end, against Unicode's own test data for line breaking."""

from __future__ import annotations

from array import array
from pathlib import Path

import pytest

from fit.document.blocks import Text
from fit.layout.breaks import find_places
from fit.layout.costs import Costs, Rules

DATA = Path("/usr/share/unicode/auxiliary/LineBreakTest.txt")
"""From Debian's package unicode-data, Unicode 15.0.0: 7,654 cases for Unicode Standard Annex 14."""

NOT_TEXT = frozenset(map(chr, [*range(32), 0x7F, 0x85, 0xA0, 0x200B, 0x2028, 0x2029, 0x2060]))
"""Controls and the characters that stand for layout: readers fold them before, or they have tests of their own."""

DEPARTURES = ("[7.01] SPACE (SP) \u00d7 [15.0]", "[7.01] SPACE (SP) \u00d7 [16.0]")
"""A quotation mark and an opening bracket with a blank between, a closing one and a small letter: we part them."""


LEADING_POINT = ("find .com", "equals .35 cents")
"""A word that begins with a full stop, as names of files do, may begin a line with us."""


def cases() -> list[tuple[str, set[int], str]]:
    """Text, the indices at which a line may begin, and the comment."""
    found = []
    for line in DATA.read_text(encoding="utf-8").splitlines():
        body, _, comment = line.partition("#")
        parts = body.split()
        if parts:
            chars = "".join(chr(int(code, 16)) for code in parts[1::2])
            signs = parts[2::2]
            found.append((chars, {i for i, sign in enumerate(signs, 1) if sign == "\u00f7"}, comment.strip()))
    return found


@pytest.mark.outside
def test_no_line_ends_where_unicode_forbids_it() -> None:
    if not DATA.exists():
        pytest.skip("Debian's package unicode-data is not installed")
    tie = Costs().tie
    wrong = []
    tried = 0
    for chars, allowed, comment in cases():
        if (
            chars in LEADING_POINT
            or NOT_TEXT & set(chars)
            or any(departure in comment for departure in DEPARTURES)
        ):
            continue
        tried += 1
        places = find_places(Text(chars, array("q", range(len(chars))), bytes(len(chars))), 400, Rules(""))
        for start, cost in zip(places.starts, places.costs, strict=True):
            if cost < tie and start < len(chars) and start not in allowed:
                wrong.append(comment)
    assert wrong == []
    assert tried > 4800
