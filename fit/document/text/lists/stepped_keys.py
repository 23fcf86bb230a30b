"""Keys whose texts go on at one step from them, however long the key is: `oil_left  what is in the tank`, hanging by three.

Texts at one column show most lists of keys; here what does not fit on the first line of a text hangs as deep as that of all
others, and not under the text. Several long entries of one indent and one step show the list.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.key_columns import LONGEST_KEY, WIDE
from fit.document.text.signs.measure import closed, starts_small

LEAST = 5
"""Entries that go on in mid-sentence at the step and not under their texts, at least."""
TALLEST = 60
"""Lines from one entry to the next, at most."""
STEP = (2, 6)
"""Cells from a key to what hangs below it."""
_KEY = re.compile(r"[^\s.:,;!?]\S*(?<![.:,;!?]) {2,}(?=\S)")


def find_stepped_keys(lines: Sequence[Line], taken: Sequence[object]) -> dict[int, int]:
    """The lines that begin with such a key, each with the column of the text behind it."""
    columns = {
        index: line.indent + match.end()
        for index, line in enumerate(lines)
        if "  " in line.text
        and taken[index] is None
        and (match := _KEY.match(line.text)) is not None
        and match.end() <= LONGEST_KEY
        and WIDE.search(line.text, match.end()) is None
    }
    steps: Counter[tuple[int, int]] = Counter()
    for index, column in columns.items():
        line = lines[index]
        if not parted_above(lines, index + 1) and _fresh(lines, index, columns):
            step = lines[index + 1].indent - line.indent
            goes_on = starts_small(lines[index + 1].text) and not closed(line.text)
            if goes_on and STEP[0] <= step <= STEP[1] and line.indent + step != column:
                steps[line.indent, step] += 1
    found: dict[int, int] = {}
    for (indent, step), times in steps.items():
        if times < LEAST:
            continue
        for index, column in columns.items():
            if lines[index].indent == indent and _entry(lines, index, indent + step, found):
                found[index] = column
    return found


def _fresh(lines: Sequence[Line], index: int, columns: dict[int, int]) -> bool:
    """Whether no sentence leads to a line from one above it at its own indent."""
    return parted_above(lines, index) or lines[index - 1].indent > lines[index].indent or index - 1 in columns


def _entry(lines: Sequence[Line], index: int, under: int, found: dict[int, int]) -> bool:
    """Whether a line begins a part, or stands below an entry, and what is below it is another one, or hangs as all others."""
    line = lines[index]
    below = lines[index + 1] if not parted_above(lines, index + 1) else None
    if below is not None and below.indent > line.indent and below.indent != under:
        return False
    if parted_above(lines, index) or lines[index - 1].indent == under:
        return True
    place = index - 1
    last = index - TALLEST
    while (
        place > last
        and lines[place].indent == line.indent
        and place not in found
        and not parted_above(lines, place)
    ):
        place -= 1
    return place in found
