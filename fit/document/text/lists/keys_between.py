"""Signs and values among keys of their own list: `$   the tin`, which alone would be a prompt, a remark or a command.

The keys beside it, at its indent, have their texts at the column where its own begins: it is one of them.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.lists.key_columns import key_of, too_far
from fit.document.text.signs.code import code

LOOK = 12
"""Lines within which the next key of the list stands."""
LEAST = 3
"""Keys of a list, at least, that begins or ends with such ones."""
LONGEST = 8
"""Characters of such a sign, at most."""
_OPENING = "\"'`(\u2018\u201c"
"""Signs before a word of a sentence."""
_VALUED = re.compile(r"[A-Za-z]\w* = \w+(?: \w+)?")
"""A name and its value, which alone would be a statement of a program."""


def keys_between(lines: Sequence[Line], taken: Sequence[object], keys: Sequence[int]) -> dict[int, int]:
    """For each line that is such a key the column of its text; ``keys`` has those of all others, 0 where a line has none."""
    open_ = {
        index: column
        for index, line in enumerate(lines)
        if "  " in line.text and not keys[index] and taken[index] is None and (column := _column(line))
    }
    found: dict[int, int] = {}
    floor = 0
    for index, column in open_.items():
        if index < floor:
            continue
        above, below = _shown(lines, taken, keys, _next(lines, index, -1), column), 0
        run = [index]
        while (other := _next(lines, run[-1], 1)) in open_ and open_[other] == column:
            run.append(other)
        while _shown(lines, taken, keys, other, column) and below < LEAST:
            below += 1
            other = _next(lines, other, 1)
        if above and _shown(lines, taken, keys, _next(lines, _next(lines, index, -1), -1), column):
            above += 1
        floor = run[-1] + 1
        if len({lines[each].cells[:column] for each in run}) < len(run):
            continue  # remarks, or what is typed
        if (above and below) or (above + below and above + len(run) + below >= LEAST):
            found.update(dict.fromkeys(run, column))
    return found


def _column(line: Line) -> int:
    """The column of the words behind a sign or a value and wide blanks; 0 where there are none."""
    match = key_of(line.text)
    if match is None or too_far(match):
        return 0
    key, text = match["key"], line.text[match.end() :]
    valued = _VALUED.fullmatch(key) is not None
    sign = " " not in key and len(key) <= LONGEST and not key[0].isalnum() and key[0] not in _OPENING
    told = text.removeprefix("-> ") if valued else text
    return 0 if not (sign or valued) or code(told) or not told[0].isalnum() else line.indent + match.end()


def _shown(
    lines: Sequence[Line], taken: Sequence[object], keys: Sequence[int], index: int, column: int
) -> int:
    """Whether a line was read as a key with its text at the column, alone or as the row of a table: 1, or else 0."""
    if index < 0:
        return 0
    if keys[index] or taken[index] is None:
        return int(keys[index] == column)
    match = key_of(lines[index].text)
    return int(match is not None and lines[index].indent + match.end() == column)


def _next(lines: Sequence[Line], index: int, step: int) -> int:
    """The entry above or below at the same indent, over lines that stand deeper; -1 where none is near."""
    if index < 0:
        return -1
    indent = lines[index].indent
    for place in range(index + step, index + step * LOOK, step):
        if not 0 <= place < len(lines) or lines[place].indent < indent:
            return -1
        if lines[place].indent == indent:
            return place
    return -1
