"""Physical lines of a table to its rows: a cell may be wrapped over several lines, its label centred beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.signs.joins import cut_word
from fit.document.text.signs.markers import WEAK, find_marker
from fit.document.text.signs.measure import closed, hangs, prose, starts_small
from fit.document.text.tables.wrapped_cells import Cells, full_above, links, text_width, wraps

WORD = 3
"""Letters below which a key is a sign and no word that could have been wrapped."""
WORDS = 3
"""Words of a text that is no value, at least."""
SEVERAL = 3
"""Lines that show a habit, at least."""
MOST = 0.6
"""The share of them that does."""
MANY = 4
"""Columns of a table in which a line with one cell is no row."""
_ENTRY = re.compile(r"\w{1,3} ?[:=-] ")
_FIELD = re.compile(r"[A-Z][\w-]*(?: [\w-]+){0,2}:(?: |$)")
"""A name with what it stands for, as the head of a memo has them one below the other."""


def group_rows(grid: Sequence[Cells], fresh: Sequence[bool], drawn: Sequence[int] = ()) -> list[list[int]]:
    """The lines of each row. ``fresh`` says before which lines a rule or a blank line stands.

    ``drawn`` has the widths of the columns where the table was drawn with bars.
    """
    widths = drawn or [text_width([cells[column] for cells in grid]) for column in range(len(grid[0]))]
    parts = sections(fresh)
    if drawn and len(parts) > 1 and (_keyed_once(grid, parts) or _full_once(grid, parts)):
        return parts
    whole = [len(section) == 1 or _whole(grid, section, widths) for section in parts]
    if len(parts) > 1 and all(sum(bool(grid[index][0]) for index in section) == 1 for section in parts):
        whole = [one or _centred(grid, section, widths) for section, one in zip(parts, whole, strict=True)]
    if len(parts) == 1 or sum(whole) < MOST * len(parts):
        whole = [False] * len(parts)
    runs_on = _runs_on(grid, fresh, widths)
    centred = any(
        one and not grid[section[0]][0] and any(grid[line][0] for line in section)
        for section, one in zip(parts, whole, strict=True)
    )
    return [
        row
        for section, one in zip(parts, whole, strict=True)
        for row in ([section] if one else _by_line(grid, section, widths, runs_on, centred=centred))
    ]


def sections(fresh: Sequence[bool]) -> list[list[int]]:
    """The lines between two rules or blank lines."""
    found: list[list[int]] = []
    for index, new in enumerate(fresh):
        if new or not found:
            found.append([index])
        else:
            found[-1].append(index)
    return found


def _keyed_once(grid: Sequence[Cells], sections: Sequence[Sequence[int]]) -> bool:
    """Whether half of the sections between rules have one key each, or keys that stand in the middle of their text.

    The rules part rows then, not groups of them.
    """
    keys = [[index for index in section if grid[index][0]] for section in sections]
    once = sum(
        len(keyed) == 1 or (keyed != [] and keyed[0] > section[0])
        for keyed, section in zip(keys, sections, strict=True)
    )
    return 2 * once >= len(sections)


def _full_once(grid: Sequence[Cells], sections: Sequence[Sequence[int]]) -> bool:
    """Whether the first line of each section between rules fills all its cells, and no other line as many as half of them.

    Each of those has the rests of the cells that were too long for their columns, the key's perhaps.
    """
    return (
        len(sections) >= SEVERAL
        and len(grid[0]) >= MANY
        and all(all(grid[section[0]]) for section in sections)
        and all(
            2 * sum(map(bool, grid[index])) < len(grid[0]) for section in sections for index in section[1:]
        )
    )


def _whole(grid: Sequence[Cells], section: Sequence[int], widths: Sequence[int]) -> bool:
    """Whether a section is one row, or has a key in its first line and a text in the last column of the others.

    Several lines that start with a sign of their own are a list in a cell: none of them goes on.
    """
    return one_row(grid, section, widths) or (
        bool(grid[section[0]][0])
        and sum(_ENTRY.match(grid[index][-1]) is not None for index in section[1:]) < SEVERAL
        and all(
            _rest(grid, index) and (len(grid[index][-1].split()) >= WORDS or _ends_above(grid, index, widths))
            for index in section[1:]
        )
    )


def _centred(grid: Sequence[Cells], section: Sequence[int], widths: Sequence[int]) -> bool:
    """Whether the only key of a section stands in the middle, below its first line and above its last one, and some cell goes on."""
    if grid[section[0]][0] or grid[section[-1]][0]:
        return False
    return any(
        grid[above][column] and grid[below][column] and wraps(grid, above, below, column, width)
        for above, below in pairwise(section)
        for column, width in enumerate(widths)
    )


def _rest(grid: Sequence[Cells], index: int) -> bool:
    """Whether a line has text in the last column of several, and in no other."""
    return bool(grid[index][-1]) and not any(grid[index][:-1])


def _ends_above(grid: Sequence[Cells], index: int, widths: Sequence[int]) -> bool:
    """Whether the text of the last column clearly goes on in a line, or an item of a list in it begins."""
    if not grid[index - 1][-1]:
        return False
    marker = find_marker(grid[index][-1])
    item = marker is not None and marker.kind.startswith("bullet") and marker.label not in WEAK
    return item or wraps(grid, index - 1, index, -1, widths[-1])


def _runs_on(grid: Sequence[Cells], fresh: Sequence[bool], widths: Sequence[int]) -> bool:
    """Whether most lines that have text in the last column alone clearly go on: the others do so too."""
    rest = [index for index in range(1, len(grid)) if not fresh[index] and _rest(grid, index)]
    clear = sum(_ends_above(grid, index, widths) for index in rest)
    return len(rest) >= SEVERAL and clear >= MOST * len(rest)


def one_row(grid: Sequence[Cells], section: Sequence[int], widths: Sequence[int]) -> bool:
    """Whether a section is one row: a column is filled once, and the others read as wrapped."""
    filled = [sum(bool(grid[index][column]) for index in section) for column in range(len(widths))]
    if max(filled) < 2:
        return True
    breaks: list[tuple[int, bool]] = []
    for above, below in pairwise(section):
        on = [column for column in range(len(widths)) if grid[above][column] and grid[below][column]]
        goes_on = [wraps(grid, above, below, column, widths[column]) for column in on]
        if len(on) > 1 and not any(goes_on):
            return False
        breaks.extend(zip(on, goes_on, strict=True))
    wrapped = sum(goes_on for _, goes_on in breaks)
    if any(
        sum(goes_on for place, goes_on in breaks if place == column) == 0
        for column, count in enumerate(filled)
        if len(breaks) > 2 and count > 2
    ):
        return False  # a value in each line
    if _resumed(grid, section):
        return False
    first = grid[section[0]][0]
    worded = (first[:1].isalpha() or " " in first) and all(
        len(grid[index][0]) >= WORD and grid[index][0][0].isalpha() for index in section[1:]
    )
    return (min(filter(None, filled)) <= 1 and wrapped >= 0.5 * len(breaks)) or (
        worded and wrapped == len(breaks)
    )


def _resumed(grid: Sequence[Cells], section: Sequence[int]) -> bool:
    """Whether a column that had stopped is filled again beside another: the next row has begun."""
    return any(
        grid[section[0]][column] and grid[below][column] and not grid[above][column] and grid[below][-1]
        for above, below in pairwise(section)
        for column in range(len(grid[0]) - 1)
    )


def _by_line(
    grid: Sequence[Cells], section: Sequence[int], widths: Sequence[int], runs_on: bool, *, centred: bool
) -> list[list[int]]:
    """The rows of a section line by line; ``centred`` says that keys of others stand in the middle of their rows."""
    rows: list[list[int]] = []
    for index in section:
        under = runs_on and bool(rows) and _rest(grid, index)
        if (under and not _ENTRY.match(grid[index][-1])) or (
            rows
            and (
                _continues(grid, rows[-1], index, widths)
                or (centred and _labels(grid, rows[-1], index, widths, 0))
            )
        ):
            rows[-1].append(index)
        else:
            rows.append([index])
    return rows


def _continues(grid: Sequence[Cells], row: Sequence[int], index: int, widths: Sequence[int]) -> bool:
    cells = grid[index]
    if cells[0] and any(cells[1:]) and grid[row[-1]][0] and not any(any(grid[line][1:]) for line in row):
        return (
            cells[0][0].islower()
            and grid[row[0]][0][0].isalpha()
            and wraps(grid, row[-1], index, 0, widths[0])
        )
    filled = [column for column, cell in enumerate(cells) if cell]
    cut = " " in grid[row[-1]][-1] and cut_word(grid[row[-1]][-1], cells[-1])
    if cut or _labels(grid, row, index, widths):
        return True
    if filled == [0] and _FIELD.match(cells[0]) and _FIELD.match(grid[row[-1]][0]):
        return False
    if filled == [0] and grid[row[-1]][0].endswith(":") and not starts_small(cells[0]):
        return False  # the key was whole
    if cells[0] and grid[row[-1]][0].endswith("....."):
        return False  # a leader has carried it to its value
    if filled == [0] and " " in cells[0] and grid[row[0]][0].startswith(f"{cells[0].split()[0]} "):
        return False  # two keys that begin alike: a command with other names behind it
    if len(filled) == len(widths) and (_each_whole(grid) or not _all_small(grid, row, index)):
        return False
    above = row[-1]
    if len(cells) > 2 and filled == [len(cells) - 1] and _sentence_more(grid[above][-1], cells[-1]):
        return True
    if not cells[0] and (_inner(grid, above, index, filled) or _phrase(grid, row, index)):
        return True
    if any(not grid[above][column] for column in filled):
        return False
    if not all(
        wraps(grid, above, index, column, widths[column])
        or _wrapped(grid, row, index, column, widths[column])
        for column in filled
    ):
        return not cells[0] and _together(grid, row, index, widths)
    if not cells[0]:
        return True
    if filled == [0] and _single_words(grid):
        return False
    if _single_words(grid) and not grid[above][0].endswith((",", "-")):
        return False
    if not (cells[0][0].isalpha() or cells[0][0] == "(") or min(len(cells[0]), len(grid[above][0])) < WORD:
        return False
    return starts_small(cells[0]) or len(grid[above][0]) + 1 + len(cells[0].split()[0]) > widths[0]


def _wrapped(grid: Sequence[Cells], row: Sequence[int], index: int, column: int, width: int) -> bool:
    """Whether a cell that clearly went on in the line above goes on again: the next word had no room there, a capital or not."""
    if len(row) == 1 or grid[index][0] or not grid[row[-2]][column]:
        return False
    first, second = grid[row[-1]][column], grid[index][column]
    broken = grid[row[-2]][column].endswith(("-", ",")) and starts_small(first)
    return broken and second[0].isalpha() and full_above(first, second, width)


def _sentence_more(above: str, below: str) -> bool:
    """Whether a sentence stands right under another: more of what the cell says, and no entry of a list in it."""
    said = bool(above) and closed(above) and closed(below) and prose(below) and not below.endswith(":")
    return said and not below[0].isdigit() and _ENTRY.match(below) is None


def _labels(
    grid: Sequence[Cells], row: Sequence[int], index: int, widths: Sequence[int], more: int = 1
) -> bool:
    """Whether a line has the key of a row that has begun without one: it stands in the middle beside cells that all go on.

    The row has begun with ``more`` cells than these, at least.
    """
    if not grid[index][0] or any(grid[line][0] for line in row) or not any(grid[index][1:]):
        return False
    beside = [column for column in range(1, len(widths)) if grid[index][column]]
    return sum(map(bool, grid[row[0]])) >= len(beside) + more and all(
        grid[row[-1]][column] and wraps(grid, row[-1], index, column, widths[column]) for column in beside
    )


def _inner(grid: Sequence[Cells], above: int, index: int, filled: Sequence[int]) -> bool:
    """Whether a line has one cell of many, neither the first nor the last, under one: it says nothing by itself.

    In a table of three columns it does so below a sentence, being some words itself.
    """
    if len(filled) != 1 or filled[0] == len(grid[0]) - 1 or not grid[above][filled[0]]:
        return False
    over, under = grid[above][filled[0]], grid[index][filled[0]]
    return len(grid[0]) >= MANY or (closed(over) and " " in under)


def _phrase(grid: Sequence[Cells], row: Sequence[int], index: int) -> bool:
    """Whether the cell beside the key clearly goes on: then the whole line does, though others begin in it."""
    if len(grid[0]) < MANY or not grid[row[0]][0]:
        return False
    first, second = grid[row[-1]][1], grid[index][1]
    return bool(first and second) and first[0].isupper() and links(first, second)


def _together(grid: Sequence[Cells], row: Sequence[int], index: int, widths: Sequence[int]) -> bool:
    """Whether one cell of several clearly goes on, and each other in small letters where the row has a capital or a figure.

    Beside one that stopped in mid-sentence it may have had no room in the line above; a figure under a figure is another.
    """
    filled = [column for column, cell in enumerate(grid[index]) if cell]
    above = grid[row[-1]]
    clear = any(
        wraps(grid, row[-1], index, column, widths[column])
        and full_above(above[column], grid[index][column], widths[column])
        for column in filled
    )
    hung = any(
        (hangs(above[column]) or prose(above[column])) and starts_small(grid[index][column])
        for column in filled
    )
    return clear and all(
        wraps(grid, row[-1], index, column, widths[column])
        or (starts_small(grid[index][column]) and not starts_small(grid[row[0]][column]))
        or (
            hung
            and full_above(above[column], grid[index][column], widths[column])
            and not (above[column][0].isdigit() and grid[index][column][0].isdigit())
        )
        for column in filled
    )


def _all_small(grid: Sequence[Cells], row: Sequence[int], index: int) -> bool:
    """Whether each cell of a full line goes on in small letters below a row that starts with a capital.

    A key that ends in a colon is whole, and so is the one above it: nothing goes on between the two.
    """
    whole = grid[index][0].endswith(":") and grid[row[-1]][0].endswith(":")
    return not whole and grid[row[0]][0][:1].isupper() and all(starts_small(cell) for cell in grid[index])


def _each_whole(grid: Sequence[Cells]) -> bool:
    """Whether every line of several has all its cells: each is a row."""
    return len(grid) >= SEVERAL and all(all(cells) for cells in grid)


def _single_words(grid: Sequence[Cells]) -> bool:
    """Whether no key of the table has two words, so that its column's width says nothing about wrapping."""
    return all(" " not in cells[0] for cells in grid)
