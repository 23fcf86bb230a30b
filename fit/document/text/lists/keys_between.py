"""Signs between keys of their own list: `$   the tin`, which alone would be a prompt, a remark or a command.

The keys above and below it, at its indent, have their texts at the column where its own begins: it is one of them.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.lists.key_columns import key_of, too_far
from fit.document.text.signs.code import code

LOOK = 12
"""Lines within which the next key of the list stands."""
LONGEST = 8
"""Characters of such a sign, at most."""


def keys_between(lines: Sequence[Line], taken: Sequence[object], keys: Sequence[int]) -> dict[int, int]:
    """For each line that is such a key the column of its text; ``keys`` has those of all others, 0 where a line has none."""
    columns = {
        index: column
        for index, line in enumerate(lines)
        if "  " in line.text and not keys[index] and taken[index] is None and (column := _column(line))
    }
    found: dict[int, int] = {}
    for index, column in columns.items():
        if index not in found and _beside(lines, index, column, keys, found, -1):
            run = [index]
            while (below := _next(lines, run[-1], 1)) in columns and columns[below] == column:
                run.append(below)
            if below >= 0 and keys[below] == column:
                found.update(dict.fromkeys(run, column))
    return found


def _column(line: Line) -> int:
    """The column of the words behind a sign and wide blanks at the start of a line; 0 where there are none."""
    match = key_of(line.text)
    if match is None or too_far(match) or " " in match["key"] or len(match["key"]) > LONGEST:
        return 0
    sign, text = match["key"], line.text[match.end() :]
    return 0 if sign.isalnum() or code(text) or not text[0].isalnum() else line.indent + match.end()


def _beside(
    lines: Sequence[Line],
    index: int,
    column: int,
    keys: Sequence[int],
    found: dict[int, int],
    step: int,
) -> bool:
    """Whether the next entry of the list has its text at the column."""
    other = _next(lines, index, step)
    return other >= 0 and (keys[other] or found.get(other, 0)) == column


def _next(lines: Sequence[Line], index: int, step: int) -> int:
    """The entry above or below at the same indent, over lines that stand deeper; -1 where none is near."""
    indent = lines[index].indent
    for place in range(index + step, index + step * LOOK, step):
        if not 0 <= place < len(lines) or lines[place].indent < indent:
            return -1
        if lines[place].indent == indent:
            return place
    return -1
