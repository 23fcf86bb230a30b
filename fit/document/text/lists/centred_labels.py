"""Entries whose label stands beside the middle of their text, or goes on beside it, as a table without lines prints it.

Read line by line, the label would stand in the middle of the sentence.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, prose, starts_small

WIDEST = 24
"""Cells of a label, at most."""
WORDS = 3
"""Words of one, at most."""
NEAR = 40
"""Lines around a label in which another one shows that labels stand at that place."""
GUTTER = 2
"""Cells of blank that part a label from its text where it does not fill its room."""


def find_centred_labels(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such an entry, each as an item."""
    found: list[tuple[int, int, list[Block]]] = []
    floor = 0
    for index in range(1, len(lines) - 1):
        if index <= floor or any(taken[index - 1 : index + 2]) or not _together(lines, index):
            continue
        column = lines[index + 1].indent
        if not column or not 0 < column - lines[index].indent <= WIDEST:
            continue
        middle = _in_the_middle(lines, index, column) and _in_company(lines, index, column)
        if not (middle or _goes_on_beside(lines, index, column)):
            continue
        start, end = _extent(lines, taken, index, column, floor)
        found.append((start, end, [_entry(lines[start:end], column, hyphens)]))
        floor = end
    return found


def _together(lines: Sequence[Line], index: int) -> bool:
    """Whether no blank line and no page end stands above or below a line."""
    return not any(line.apart for line in lines[index : index + 2])


def _label(line: Line, column: int) -> str:
    """What stands left of a column at which a word starts; nothing where that is no label.

    One in small letters is a word with a gutter behind it.
    """
    label = line.cells[:column].strip(" ")
    parted = " " not in label and line.cells[column - GUTTER : column] == " " * GUTTER
    if label[:1].islower() and not parted:
        return ""
    if not any(map(str.isalpha, label)) or find_marker(line.text) is not None:
        return ""
    starts = line.cells[column - 1 : column] == " " and line.cells[column : column + 1].strip(" ") != ""
    return label if starts and len(label.split()) <= WORDS and not closed(label.rstrip(":")) else ""


def _in_the_middle(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a label stands left of a text that goes on from the line above and in the one below."""
    above, line = lines[index - 1], lines[index]
    label = _label(line, column)
    if above.indent != column or not label or code(line.text):
        return False
    rest = line.cells[column:]
    if any("   " in text for text in (above.text, rest, lines[index + 1].text)) or _begun(
        lines, index, column
    ):
        return False
    return prose(above.text) and not closed(above.text) and starts_small(rest) and not closed(rest)


def _in_company(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether another label nearby begins where this one does, and a gutter parts it from text at the same column.

    One word before a line of verse that is set in stands so by itself, too.
    """
    indent = lines[index].indent
    return any(
        line.indent == indent
        and line.cells[column - GUTTER : column] == " " * GUTTER
        and _label(line, column)
        for line in lines[max(0, index - NEAR) : index + NEAR + 1]
        if line is not lines[index]
    )


def _begun(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether the text above a label began beside another one: it is the text of that."""
    start = index - 1
    while start and lines[start].indent == column and not lines[start].apart:
        if _begins(lines, start, index):
            return False
        start -= 1
    return lines[start].indent != column


def _goes_on_beside(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether the line above starts with the beginning of a label, of which this line has the rest beside the text."""
    above, line = lines[index - 1], lines[index]
    label, rest = _label(above, column), line.cells[:column].strip(" ")
    if not label or above.indent != line.indent or code(above.text):
        return False
    fills = above.cells[column - GUTTER : column - 1] != " " and label.isalpha()
    apart = line.cells[column - GUTTER : column].strip(" ") == "" and rest.isalpha() and rest.islower()
    goes_on = starts_small(line.cells[column : column + 1]) and not closed(above.text)
    return fills and apart and goes_on and prose(above.cells[column:])


def _extent(
    lines: Sequence[Line], taken: Sequence[object], index: int, column: int, floor: int
) -> tuple[int, int]:
    """The half-open run of the entry's lines: from one blank line to the next or, where other entries stand right

    above or below, from and to the lines that leave the label nearest to the middle.
    """
    start, end = index - 1, index + 2
    starts, ends = [start], [end]
    while start > floor and _under(lines, taken, start - 1, column) and not lines[start].apart:
        start -= 1
        starts = [*starts, start] if _begins(lines, start, index) else starts
    if start == floor or lines[start].apart:
        starts = [start]
    while end < len(lines) and _under(lines, taken, end, column) and not lines[end].apart:
        ends = [*ends, end] if _begins(lines, end, index) else ends
        end += 1
    if parted_above(lines, end):
        ends = [end]
    elif closed(lines[end - 1].text):
        ends.append(end)
    starts, ends = starts[1:] or starts, ends[1:] or ends
    pairs = ((first, last) for first in starts for last in ends)
    return min(pairs, key=lambda pair: (abs(index - pair[0] - (pair[1] - 1 - index)), pair[0] - pair[1]))


def _begins(lines: Sequence[Line], start: int, label: int) -> bool:
    """Whether a text may begin in a line: below the end of a sentence, or with a capital below a line with room for more."""
    above, line = lines[start - 1], lines[start]
    right = max(one.end for one in lines[label - 1 : label + 2])
    return closed(above.text) or (line.text[:1].isupper() and shortfall(above, line, right) >= 0)


def _under(lines: Sequence[Line], taken: Sequence[object], index: int, column: int) -> bool:
    return lines[index].indent == column and taken[index] is None


def _entry(lines: Sequence[Line], column: int, hyphens: Hyphens) -> Block:
    labels = [line.piece(line.indent, column) for line in lines if line.indent < column]
    text = flow([line.piece(column, line.end) for line in lines], hyphens)
    return Block(Kind.ITEM, text, label=flow(labels, hyphens), note="label beside the middle of its text")
