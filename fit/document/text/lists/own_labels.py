"""Labels that begin lines of their own again and again: `Action: Ring the bell.` below what happened, in each entry."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import closed

LEAST = 3
"""Lines with the same label at the same place, at least."""
EXCEPT = 10
"""Lines with it below the end of a sentence for each one below a line with another end, at least."""
LONGEST = 28
"""Cells of a label with its colon, at most."""
_LABEL = re.compile(r"[A-Z][a-z]{2,}(?::(?= +[\"'(]?[A-Z])|(?: [a-z]{2,}){1,3}:(?= +\S+$))")
"""A word with a colon before a sentence, or several before one word."""


def own_labels(lines: Sequence[Line]) -> set[int]:
    """The lines that begin with such a label right below the end of a sentence; none where some go on with a sentence."""
    found: dict[tuple[int, str], list[int]] = {}
    for index, line in enumerate(lines):
        if ":" in line.text[:LONGEST] and (match := _LABEL.match(line.text)):
            found.setdefault((line.indent, match.group()), []).append(index)
    return {
        index
        for places in found.values()
        if len(places) >= LEAST and _on_their_own(lines, places)
        for index in places
    }


def _on_their_own(lines: Sequence[Line], places: Sequence[int]) -> bool:
    """Whether the lines stand below a blank line or the end of a sentence, some of them below the latter."""
    below = Counter(
        "blank" if parted_above(lines, index) else "sentence" if closed(lines[index - 1].text) else "open"
        for index in places
    )
    return below["sentence"] >= LEAST - 1 and below["sentence"] >= EXCEPT * below["open"]
