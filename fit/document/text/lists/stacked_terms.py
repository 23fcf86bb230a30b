"""Terms stacked over one meaning: `-h` and `--help`, each on a line of its own, then the text deeper or beside the last.

Options show it by themselves. Words ask for company: another entry with its term at the same indent and its text at
the same column.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.code import code, prompted
from fit.document.text.signs.measure import closed, prose

MOST = 3
"""Terms over one meaning, at most."""
LONGEST = 40
"""Characters of a term, at most."""
STEP = (2, 16)
"""Cells from a term to its text below it."""
_OPTION = re.compile(
    r"(?:--?[A-Za-z?][\w-]*|/[A-Za-z?])(?:[ =]?[\[<]?[A-Z][\w<>\[\]|:/.-]*|=\S+| [\[<]\S+)?(?:, ?--?[A-Za-z?]\S*)*,?"
)
"""An option, with its argument and other spellings of it."""


def stacked_terms(lines: Sequence[Line], taken: Sequence[object], keys: Sequence[int]) -> set[int]:
    """The lines that are such terms and nothing else; ``keys`` has the columns of texts beside their terms."""
    stacks: list[tuple[int, int, int]] = []
    places: dict[tuple[int, int], int] = {}
    for index in range(len(lines) - 1):
        line = lines[index]
        if len(line.text) > LONGEST or taken[index] is not None or not _begins(lines, index):
            continue
        end, column = _stack(lines, taken, keys, index)
        if not column or not _said(lines, end, column):
            continue
        places[line.indent, column] = places.get((line.indent, column), 0) + 1
        if end - index > MOST:
            stacks.append((end - 1, end, column))
        elif end - index > 1 or keys[end]:
            stacks.append((index, end, column))
    found: set[int] = set()
    for start, end, column in stacks:
        last = end + (keys[end] > 0)
        options = all(
            _OPTION.fullmatch(lines[place].cells[:column].strip(" ")) for place in range(start, last)
        )
        company = places[lines[start].indent, column] > 1 and not keys[end]
        if options or company:
            found.update(range(start, end))
    return found


def _begins(lines: Sequence[Line], index: int) -> bool:
    """Whether a line can begin an entry: below a blank line, a text set deeper, or a title farther left."""
    if parted_above(lines, index):
        return True
    above, indent = lines[index - 1], lines[index].indent
    return above.indent > indent or (above.indent < indent and not (prose(above.text) or closed(above.text)))


def _stack(
    lines: Sequence[Line], taken: Sequence[object], keys: Sequence[int], start: int
) -> tuple[int, int]:
    """Where terms that begin at a line end, with the column of their text: below them, or beside the last; or 0."""
    end = start
    indent = lines[start].indent
    while end < len(lines) and lines[end].indent == indent and taken[end] is None:
        if end >= start + MOST and not _OPTION.fullmatch(lines[end].text):
            break
        if end > start and (lines[end].apart or keys[end]):
            break
        if keys[end] or not _term(lines[end]):
            return end, 0
        end += 1
    if parted_above(lines, end) or taken[end] is not None:
        return end, 0
    if keys[end] and lines[end].indent == indent:
        return end, keys[end]
    column = lines[end].indent
    return end, column if STEP[0] <= column - indent <= STEP[1] else 0


def _said(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a meaning is running text: the words from the column on in its first line, or up to where it ends."""
    text = lines[index].cells[column:]
    below = lines[index + 1] if index + 1 < len(lines) and not lines[index + 1].apart else None
    on = below is not None and below.indent == column and prose(below.text)
    return (on or prose(text) or closed(text)) and not code(text)


def _term(line: Line) -> bool:
    text = line.text
    return (
        len(text) <= LONGEST
        and "  " not in text
        and not closed(text)
        and not prose(text)
        and not code(text)
        and not prompted(text)
        and any(map(str.isalnum, text))
    )
