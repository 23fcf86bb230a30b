"""Labels with a colon and one blank, where the rest of the text hangs right under its first word: `0x01: Light the lamp`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.measure import Measure, closed, prose, starts_small

NEARBY = 8
"""Lines within which a label whose text hangs shows that another is one."""
HANDMADE = 8
"""Cells that a line broken by hand may leave free."""
_LABEL = re.compile(r"(?=.{4,34}: )[^\s:]+(?: [^\s:]+){0,2}: (?=\S)")


def hung_label(lines: Sequence[Line], index: int, measure: Measure) -> int:
    """The column of the text after such a label at the start of a line, or 0."""
    own, indent = _column(lines[index]), lines[index].indent
    if not own or _hangs(lines, index, measure):
        return own
    around = range(max(0, index - NEARBY), min(len(lines), index + NEARBY + 1)) if lines[index].gap else ()
    alike = (place for place in around if lines[place].indent == indent and _column(lines[place]) == own)
    return own if any(_hangs(lines, place, measure) for place in alike) else 0


def _column(line: Line) -> int:
    """The column after a label of one to three words; 0 where the line starts with none."""
    match = _LABEL.match(line.text)
    return 0 if match is None or code(line.text) else line.indent + match.end()


def _hangs(lines: Sequence[Line], index: int, measure: Measure) -> bool:
    """Whether the text after the label of a line goes on in the next, right under its first word."""
    column = _column(lines[index])
    if index + 1 >= len(lines) or lines[index + 1].indent != column:
        return False
    line, below = lines[index], lines[index + 1]
    rest = line.cells[column:]
    if below.apart or code(below.text) or not prose(rest):
        return False
    small = starts_small(below.text) and not closed(rest)
    return small or (not rest.endswith(",") and shortfall(line, below, measure.right(index)) <= HANDMADE)
