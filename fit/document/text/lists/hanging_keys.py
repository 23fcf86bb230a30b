"""Hanging keys: ``KEY   meaning``, the meaning hanging under itself.

Justified text has wide blanks too, so a key needs company: others at its place with their text at the same column.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.key_columns import (
    WIDE,
    filling_key,
    fills_column,
    goes_on,
    has_key,
    is_spacing,
    key_of,
    opens,
    stands_under,
    too_far,
)
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import FAR, cut_word, shortfall
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import Measure, closed, prose, starts_small

NEARBY = 6
"""Lines within which a hanging key must have company."""
USUAL = 8
"""Keys with their texts at one column, at least, that show it for a name with its value far from them."""
HUNG = 2
"""Cells by which the text beside a key may hang deeper below its first line, at most."""
_SWITCH = re.compile(
    r"(?:[-+][\w?][\w-]*|--[\w?][\w-]*|/[\w?]{1,3})(?:(?:[ =]|\[=)[\w<>\[\]{}|:/.-]+)?(?:, ?(?:-{1,2}|/)[\w?][\w-]*(?:(?:[ =]|\[=)[\w<>\[\]{}|:/.-]+)?)*"
)
"""An option with its argument and its other spellings: `-p PORT, --port=PORT`."""
_ARGUMENT = frozenset("<[{abcdefghijklmnopqrstuvwxyz")
"""What the argument of an option begins with."""
_OPTION = re.compile(r"[-/+][\w?][\w-]*|\^.|<[^<>]{1,12}>|(?:Ctrl|CTRL|Alt|ALT|Shift)[-+ ].{1,3}|F\d{1,2}")


def hanging_key(
    lines: Sequence[Line],
    index: int,
    measure: Measure,
    columns: dict[tuple[int, int], int],
    keys: Sequence[int],
) -> int:
    """The column of the text after a hanging key at the start of a line, or 0."""
    line = lines[index]
    match = key_of(line.text)
    if code(line.text) or (index and _word_goes_on(lines[index - 1], line)):
        return 0
    if match is not None and match[0].endswith(".  ") and _last_words(lines, index, measure):
        return 0
    if match is None or too_far(match):
        column = _long_key(lines, index, columns, measure)
        return 0 if column and _inside(lines, index, measure, column, keys) else column
    if _justified(lines, index, match, measure):
        return 0
    column = line.indent + match.end()
    under = stands_under(lines, index, column)
    inside = _inside(lines, index, measure, column, keys)
    if under == 2 and not (inside and prose(line.text) and columns.get((line.indent, column), 0) < 4):
        return column
    if not inside and (_SWITCH.fullmatch(match["key"]) or (under and _OPTION.fullmatch(match["key"]))):
        return 0 if not under and argued_option(lines, index) else column
    if not under or inside or columns.get((line.indent, column), 0) < 3:
        return 0
    return column if _company(lines, index, column) else 0


def wide_argument(text: str) -> bool:
    """Whether a text is an option and, behind wide blanks, one small or bracketed word that it takes."""
    match = key_of(text)
    if match is None or _SWITCH.fullmatch(match["key"]) is None:
        return False
    word = text[match.end() :]
    return " " not in word and word[0] in _ARGUMENT and not closed(word)


def argued_option(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is such an option over running text that is deeper, and left of the word."""
    line = lines[index]
    if line.text[0] not in "-+/" or "  " not in line.text or parted_above(lines, index + 1):
        return False
    if not wide_argument(line.text):
        return False
    below = lines[index + 1]
    left = line.indent < below.indent < line.indent + line.text.rindex("  ") + 2
    return left and (prose(below.text) or closed(below.text))


def _word_goes_on(above: Line, line: Line) -> bool:
    """Whether a line begins with the rest of a word of running text, and not of an option alone on its line."""
    alone = " " not in above.text and _SWITCH.fullmatch(above.text) is not None
    return cut_word(above.text, line.text) and not alone


def _last_words(lines: Sequence[Line], index: int, measure: Measure) -> bool:
    """Whether the sentence of the full line above, which begins where this one does, goes on: a full stop in this one ends it."""
    if index == 0 or lines[index].apart:
        return False
    above, line = lines[index - 1], lines[index]
    level = above.indent == line.indent and line.text[0] != "."
    open_ = prose(above.text) and not closed(above.text)
    return level and open_ and shortfall(above, line, measure.right(index)) <= FAR


def _justified(lines: Sequence[Line], index: int, match: re.Match[str], measure: Measure) -> bool:
    """Whether a full line goes on in the next, and blanks as wide as the one after its first word stand in either."""
    if (
        len(match["blank"]) > 2
        or not match["key"].rstrip(",:").isalpha()
        or index + 1 == len(lines)
        or parted_above(lines, index + 1)
    ):
        return False
    line, below = lines[index], lines[index + 1]
    full = below.indent == line.indent and shortfall(line, below, measure.right(index)) < 0
    wide = WIDE.search(line.text, match.end()) is not None or WIDE.search(below.text) is not None
    return full and wide and goes_on(line, below)


def _company(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key with its text at the same column stands nearby."""
    return has_key(lines, range(max(0, index - NEARBY), index), lines[index].indent, column) or has_key(
        lines, range(index + 1, min(len(lines), index + NEARBY + 1)), lines[index].indent, column
    )


def _inside(lines: Sequence[Line], index: int, measure: Measure, column: int, keys: Sequence[int]) -> bool:
    """Whether the line goes on from a full one above, which is no key itself."""
    line = lines[index]
    if index == 0 or (line.gap and not line.crossing) or keys[index - 1] == column:
        return False
    above = lines[index - 1]
    if code(above.text) and has_key(lines, range(index - 1, index), line.indent, column):
        return False  # a key among the others, of a program
    apart = above.indent != column or (starts_small(line.text) and not closed(above.text))
    if above.indent != line.indent and not (opens(above, line) and apart):
        return False
    return shortfall(above, line, measure.right(index)) < 0


def _numbered(line: Line) -> bool:
    """Whether a line starts with a number as sections and items do, which no key stands beside."""
    marker = find_marker(line.text)
    return marker is not None and marker.strong and marker.kind.startswith("number")


def _long_key(
    lines: Sequence[Line], index: int, columns: dict[tuple[int, int], int], measure: Measure
) -> int:
    """The column after a key so long that only one blank was left before its text."""
    line = lines[index]
    key = filling_key(line.text)
    column = line.indent + key.end() + 1 if key is not None else 0
    if key is None or too_far(key) or columns.get((line.indent, column), 0) < 3:
        return 0
    under = False
    if index and not line.gap:
        above = lines[index - 1]
        match = key_of(above.text)
        beside = match is not None and above.indent + match.end() == column
        under = column <= above.indent <= column + HUNG
        if not under and not (above.indent == line.indent and beside):
            return 0
    around = range(max(0, index - NEARBY), min(len(lines), index + NEARBY + 1))
    near = [
        place
        for place in around
        if not _numbered(lines[place]) and not is_spacing(lines, place, column, measure)
    ]
    before = has_key(lines, [place for place in near if place < index], line.indent, column)
    after = has_key(lines, [place for place in near if place > index], line.indent, column)
    after = after or (line.gap == 0 and index > 0 and under)
    after = after or fills_column(lines, index, column)
    valued = " = " in key.group() and columns[line.indent, column] >= USUAL
    return column if ((before and after) or valued) and stands_under(lines, index, column) else 0
