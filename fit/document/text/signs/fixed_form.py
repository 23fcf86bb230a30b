"""FORTRAN in fixed form: `C` or `*` in column 1 makes a comment, a sign in column 6 continues a statement, which begins in 7.

So a reader takes no `*` for a bullet and no gap for a gutter there: what stands in these columns is one listing. A head
with its `END` is a piece too, whatever it leaves to be filled in between.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line

SIGN = 5
"""Cells from column 1 to the sign of a line that goes on."""
STATEMENT = 6
"""Cells from column 1 to a statement."""
MOST_BLANK = 2
"""Blank lines inside a listing, at most."""
LEAST = 2
"""Statements of a listing, at least."""
TALLEST = 40
"""Lines from a head to its `END`, at most."""
_COMMENT = re.compile(r"[Cc*](?:$| {2,}\S|[*=-]{3}| *[*=-]{3,}$)")
_HEAD = re.compile(
    r"(?:(?:INTEGER|REAL|LOGICAL|COMPLEX|DOUBLE PRECISION) )?(?:SUBROUTINE|FUNCTION) [A-Z]\w*(?:\([A-Z\d, *]*(?:[),]|$)|$)"
)
_TEXT = re.compile(
    r"""
      (?:INTEGER|REAL|LOGICAL|COMPLEX|DOUBLE\ PRECISION|CHARACTER)(?:\*\(?[\d*]+\)?)?(?:\ FUNCTION)?\ +[A-Z]\w*(?:[,(*/].*)?$
    | (?:SUBROUTINE|PROGRAM|FUNCTION|CALL|EXTERNAL|INTRINSIC|COMMON|DIMENSION|DATA|SAVE)\ +/?[A-Z]\w*(?:\s?[,(/].*)?$
    | (?:BLOCK\ DATA|IMPLICIT\ NONE|CONTINUE|RETURN|STOP|END|END\ ?IF|END\ ?DO|ELSE)$
    | IMPLICIT\ [A-Z]+.*\(.*\)$ | (?:PARAMETER|WRITE|READ|FORMAT|IF|ELSE\ ?IF|OPEN|CLOSE)\s?\(
    | (?:GO\ ?TO|DO)\ \d+ | DO\ [A-Z]\w*\s?= | [A-Z]\w*(?:\(.*\))?\s?=\s?\S | PRINT\ \*,
    """,
    re.VERBOSE | re.IGNORECASE,
)
_LABELLED = re.compile(r"\d{1,5} +(?=\S)")


def find_fixed_form(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such listings, or a head with what its `END` closes."""
    found: list[tuple[int, int]] = []
    none: dict[int, int] = {}  # by column 1, the end of the lines in which no listing begins
    floor = 0
    for index, line in enumerate(lines):
        if index < floor or taken[index] is not None:
            continue
        end = 0
        if line.text[:1] in {"C", "c", "*"} and _COMMENT.match(line.text):
            end = _listing_end(lines, taken, index, line.indent, none)
        elif line.text[:2].isupper() and _TEXT.match(line.text):
            first = line.indent - STATEMENT
            end = _listing_end(lines, taken, index, first, none) if first >= 0 else 0
            end = max(end, _closed_end(lines, taken, index))
        if end:
            found.append((index, end))
            floor = end
    return found


def _listing_end(
    lines: Sequence[Line], taken: Sequence[object], start: int, first: int, none: dict[int, int]
) -> int:
    """The end of the listing that begins with a line, column 1 at ``first``; 0 where none does, which ``none`` keeps."""
    if start < none.get(first, 0):
        return 0
    statements = shown = 0
    end = start
    while end < len(lines) and taken[end] is None:
        line = lines[end]
        if end > start and line.gap > MOST_BLANK and not line.crossing:
            break
        place = line.indent - first
        if (place == 0 and _COMMENT.match(line.text)) or (place == SIGN and end > start):
            shown += 1
        elif _states(line, place):
            statements += 1
        else:
            break
        end += 1
    if statements >= LEAST and shown:
        return end
    none[first] = end
    return 0


def _states(line: Line, place: int) -> bool:
    """Whether a line is a statement in its columns, with a label of digits before it or none."""
    if place >= STATEMENT:
        return _TEXT.match(line.text) is not None
    label = _LABELLED.match(line.text) if 0 <= place < SIGN else None
    if label is None or place + label.end() < STATEMENT:
        return False
    return _TEXT.match(line.text, label.end()) is not None


def _closed_end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the lines from a head to its `END`, none of them left of the head; 0 where it has none."""
    head = lines[start]
    if _HEAD.match(head.text) is None:
        return 0
    for index in range(start + 1, min(start + TALLEST, len(lines))):
        line = lines[index]
        if taken[index] is not None or line.indent < head.indent - 1 or line.gap > MOST_BLANK:
            return 0
        if line.text == "END":
            return index + 1 if line.indent == head.indent else 0
    return 0
