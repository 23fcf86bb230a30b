"""Examples that a `>` at the end of a line leads to and a `<` in the first column ends: what is set in between is shown.

The text around them may be set in as well, so that nothing else says where they end. Several such pairs show what the signs
are for; then lines of no sentence between a `>` and the next line in the first column are an example without the `<`. What
is told or drawn there is read like anything else.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import prose
from fit.document.text.signs.strokes import strength

LEAST = 3
"""Pairs of these signs in a document, at least."""
LONGEST = 100
"""Lines of an example, at most."""
DRAWN = 1
"""Lines of strokes between them, at most: more are a drawing, or a table."""


def find_angled(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such examples; a `<` alone on its line is their last one."""
    found: list[tuple[int, int]] = []
    pairs = 0
    for index, line in enumerate(lines):
        if not (line.text == ">" or line.text.endswith(" >")) or taken[index] is not None:
            continue
        end = index + 1
        last = min(len(lines), end + LONGEST)
        while end < last and taken[end] is None and lines[end].indent:
            end += 1
        if end == index + 1 or (end < len(lines) and (taken[end] is not None or lines[end].indent)):
            continue
        closing = lines[end].text if end < len(lines) else ""
        ended = closing == "<" or closing.startswith("< ")
        pairs += ended
        told = sum(prose(one.text) for one in lines[index + 1 : end])
        drawn = sum(strength(one.text) > 1 for one in lines[index + 1 : end])
        if drawn <= DRAWN and (2 * told < end - index - 1 if ended else not told):
            found.append((index + 1, end + (closing == "<")))
    return found if pairs >= LEAST else []
