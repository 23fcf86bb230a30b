"""What stands around lines that come back: a sentence that they cut, margins, or the same lines each time."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence, Set as AbstractSet

from fit.document.text.line import Line
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, prose, starts_small

NEAR = 12
"""Lines from a running head to the text that it cuts, at most."""
ROOM = 8
"""Cells that a ragged line leaves, at most, where the next word would just have fitted."""
BETWEEN = " " * 12
"""Blank between the words at the left and those at the right of a running head, at least."""
FULL_PAGE = 40
"""Lines of a page, at least, that all printers fill; heads of shorter ones must be as widely spread, or cut sentences."""


def sentences_cut(lines: Sequence[Line], indices: list[int], heads: AbstractSet[int] = frozenset()) -> int:
    """How often running text is cut by such a line, or by the few lines of which it is one, with other ``heads`` near.

    The line above is full: the word that goes on below did not fit.
    """
    cut = 0
    for index in indices:
        above = beyond(lines, index, -1, heads)
        below = beyond(lines, index, 1, heads)
        if above is None or below is None or not prose(above.text) or closed(above.text):
            continue
        if starts_small(below.text) and find_marker(below.text) is None:
            right = max(line.end for line in lines[max(0, index - FULL_PAGE) : index + FULL_PAGE])
            cut += above.end + len(below.text.split(maxsplit=1)[0]) + ROOM > right
    return cut


def over_the_page(lines: Sequence[Line], index: int) -> bool:
    """Whether the words of a line stand at both edges of the text, with much blank between them, as in a printed book."""
    near = [line for line in lines[max(0, index - FULL_PAGE) : index + FULL_PAGE] if line.cells]
    right, left = max(line.end for line in near), min(line.indent for line in near)
    line = lines[index]
    return BETWEEN in line.text and line.end + ROOM >= right and line.indent <= left + ROOM


def beyond(
    lines: Sequence[Line], index: int, step: int, heads: AbstractSet[int] = frozenset()
) -> Line | None:
    """The first text behind the blank lines on one side of the lines without a blank one to which a line belongs.

    Lines known as ``heads`` are none.
    """
    blank = False
    for distance in range(1, NEAR):
        near = index + step * distance
        if not 0 <= near < len(lines):
            break
        if lines[near].cells and blank and near not in heads:
            return lines[near]
        blank = blank or not lines[near].cells
    return None


def apart(lines: Sequence[Line], indices: list[int]) -> bool:
    """Whether most of the lines touch nothing, or always the same line: heads of two lines do, the end of a text not."""
    beside = Counter(
        (lines[index - 1].text if index else "") + (lines[index + 1].text if index + 1 < len(lines) else "")
        for index in indices
    )
    return beside.most_common(1)[0][1] >= 0.75 * len(indices)


def margin(lines: Sequence[Line], index: int, *, both: bool = False) -> bool:
    """Whether two blank lines, or the document's edge, stand above or below a line, or on ``both`` sides."""
    above = [line.cells for line in lines[max(0, index - 2) : index]]
    below = [line.cells for line in lines[index + 1 : index + 3]]
    return any(above) + any(below) <= (0 if both else 1)
