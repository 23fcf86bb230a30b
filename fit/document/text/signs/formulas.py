"""Formulas whose parts stand over one another: integral signs drawn of strokes, raised exponents, braces made of bars."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import prose

EXPONENT = 10
"""Cells of a raised exponent, at most."""
BRACED = 3
"""Lines beside a brace, at least."""
_WORD = re.compile(r"[A-Za-z]{3,}")
_TOKEN = re.compile(r"\S+")
_AROUND_SIGN = re.compile(r" +(?=[-+*/=] )|(?<= [-+*/=]) +")


def find_formulas(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such formulas."""
    found: list[tuple[int, int]] = []
    end = 0
    for index, line in enumerate(lines):
        if index < end or "=" not in line.text or "  " not in line.cells or taken[index] is not None:
            continue
        run = _integral(lines, index) or _raised(lines, index) or _braced(lines, index)
        if run is not None and run[0] >= end and all(taken[place] is None for place in range(*run)):
            found.append(run)
            end = run[1]
    return found


def spaced_formula(lines: Sequence[Line], index: int) -> bool:
    """Whether a line alone between blank lines is a formula with wide blanks around its signs, where no columns part."""
    text = lines[index].text
    if " = " not in text or not (parted_above(lines, index) and parted_above(lines, index + 1)):
        return False
    return "  " not in _AROUND_SIGN.sub(" ", text)


def _integral(lines: Sequence[Line], index: int) -> tuple[int, int] | None:
    """The lines of a formula with an integral sign: a stroke aslant right above and below its first bar, alone below."""
    column = lines[index].cells.find("|")
    if column < 0 or not 0 < index < len(lines) - 1 or lines[index].apart or lines[index + 1].apart:
        return None
    above, below = lines[index - 1], lines[index + 1]
    drawn = above.text[0] == below.text == "/" and above.indent == below.indent == column
    return (index - 1, index + 2) if drawn else None


def _raised(lines: Sequence[Line], index: int) -> tuple[int, int] | None:
    """The two lines of a formula with exponents: all that stands above it is short and begins behind a sign below it."""
    if (
        not index
        or lines[index].apart
        or not parted_above(lines, index - 1)
        or not parted_above(lines, index + 1)
    ):
        return None
    above, line = lines[index - 1 : index + 1]
    if above.indent <= line.indent or " = " not in line.text or prose(line.text) or _WORD.search(above.text):
        return None
    tokens = [match.span() for match in _TOKEN.finditer(above.cells)]
    raised = all(
        last - first <= EXPONENT
        and not line.cells[first:last].strip()
        and line.cells[max(0, first - 2) : first].strip()
        for first, last in tokens
    )
    return (index - 1, index + 1) if raised and any(map(str.isalnum, above.text)) else None


def _braced(lines: Sequence[Line], index: int) -> tuple[int, int] | None:
    """The equations beside a brace, from the first on: the only bar of each at one column, words behind one of them."""
    column = lines[index].cells.find("|")
    if column < 0 or not parted_above(lines, index):
        return None
    end, said = index, 0
    while end < len(lines) and (end == index or not lines[end].apart):
        line = lines[end]
        if (
            line.text.count("|") != 1
            or line.cells[column - 1 : column + 1] != " |"
            or " = " not in line.cells[:column]
        ):
            return None
        said += line.end > column + 1
        end += 1
    return (index, end) if end - index >= BRACED and said == 1 else None
