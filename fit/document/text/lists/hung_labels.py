"""Labels with a colon and one blank, where the rest of the text hangs right under its first word: `0x01: Light the lamp`.

So do texts behind bare numbers that rise, `12 The clock is late`, where more than one hangs.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.measure import Measure, closed, prose, starts_small

NEARBY = 8
"""Lines within which a label whose text hangs shows that another is one."""
HANDMADE = 8
"""Cells that a line broken by hand may leave free."""
_LABEL = re.compile(r"(?=.{4,34}: )[^\s:]+(?: [^\s:]+){0,2}: (?=\S)")
_NUMBER = re.compile(r"(\d{1,3}) (?=[A-Z])")
SEVERAL = 2
"""Numbers whose text hangs, at least, that show a list of them."""


def hung_label(lines: Sequence[Line], index: int, measure: Measure) -> int:
    """The column of the text after such a label at the start of a line, or 0."""
    if column := _hung_number(lines, index, measure):
        return column
    line = lines[index]
    own = _column(line, _LABEL)
    if not own or _hangs(lines, index, own, measure):
        return own
    alike = _alike(lines, index, own, _LABEL) if line.gap else []
    return own if any(_hangs(lines, place, own, measure) for place in alike) else 0


def _hung_number(lines: Sequence[Line], index: int, measure: Measure) -> int:
    """The column of the text after a number among others at its indent that rise, or 0: it hangs, or a sentence ended above it."""
    line = lines[index]
    own = _column(line, _NUMBER) if line.text[:1].isdigit() else 0
    above = lines[index - 1] if index else None
    fresh = above is None or line.apart or (closed(above.text) and above.indent in {line.indent, own})
    if not own or not fresh:
        return 0
    alike = _alike(lines, index, own, _NUMBER)
    numbers = [int(lines[place].text.split(maxsplit=1)[0]) for place in alike]
    hung = sum(_hangs(lines, place, own, measure) for place in alike)
    return own if hung >= SEVERAL and all(one < two for one, two in pairwise(numbers)) else 0


def _alike(lines: Sequence[Line], index: int, column: int, form: re.Pattern[str]) -> list[int]:
    """The lines near one, and itself, that begin at its indent with a label of the same form and width."""
    around = range(max(0, index - NEARBY), min(len(lines), index + NEARBY + 1))
    indent = lines[index].indent
    return [at for at in around if lines[at].indent == indent and _column(lines[at], form) == column]


def _column(line: Line, form: re.Pattern[str]) -> int:
    """The column after a label of a form; 0 where the line starts with none."""
    match = form.match(line.text)
    return 0 if match is None or code(line.text) else line.indent + match.end()


def _hangs(lines: Sequence[Line], index: int, column: int, measure: Measure) -> bool:
    """Whether the text after the label of a line, at ``column``, goes on in the next, right under its first word."""
    if index + 1 >= len(lines) or lines[index + 1].indent != column:
        return False
    line, below = lines[index], lines[index + 1]
    rest = line.cells[column:]
    if below.apart or code(below.text) or not prose(rest):
        return False
    small = starts_small(below.text) and not closed(rest)
    return small or (not rest.endswith(",") and shortfall(line, below, measure.right(index)) <= HANDMADE)
