"""Addresses side by side: each is read by itself, from the name down to the place.

A house with its number, below the names and in one row alone, tells that the lines are no rows of a table.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line, part_end, parted_above, without_blanks
from fit.document.text.make import keep_lines
from fit.document.text.signs.measure import closed

LEAST, MOST = 3, 7
"""Lines of an address, at least and at most."""
CROOKED = 1
"""Cells by which a line typed by hand may miss the column of the one above."""
_CELL = re.compile(r"\S+(?: \S+)*(?= {3}|$)")
_HOUSE = re.compile(r"\d{1,4}[a-z]?,? [A-Z][a-z]+(?:,? [A-Z][\w.]+)*")


def find_side_addresses(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such addresses, each with the blocks of these."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        if "   " not in lines[index].text or not parted_above(lines, index) or taken[index] is not None:
            index += 1
            continue
        end = part_end(lines, index)
        part = lines[index:end]
        columns = [cell.start() for cell in _CELL.finditer(part[0].cells)]
        if (
            LEAST <= len(part) <= MOST
            and len(columns) > 1
            and not any(taken[index:end])
            and _addresses(part, columns)
        ):
            bounds = [*zip([0, *columns[1:]], [*columns[1:], max(line.end for line in part)], strict=True)]
            sides = [
                [line.cut(max(0, first - CROOKED), last - CROOKED * (last in columns)) for line in part]
                for first, last in bounds
            ]
            found.append((index, end, [_block(side) for side in sides]))
        index = end
    return found


def _block(side: Sequence[Line]) -> Block:
    return Block(Kind.PREFORMATTED, lines=keep_lines(without_blanks(side)), note="addresses side by side")


def _addresses(part: Sequence[Line], columns: Sequence[int]) -> bool:
    """Whether each line has names at the columns, of two words in the first one, and one line below that has a house."""
    houses: set[int] = set()
    heights = [0] * len(columns)
    for number, line in enumerate(part):
        for cell in _CELL.finditer(line.cells):
            place = next((at for at, first in enumerate(columns) if abs(cell.start() - first) <= CROOKED), -1)
            text = cell.group()
            named = all(word[0].isupper() or word[0].isdigit() for word in (text, text.split()[-1]))
            if place < 0 or not named or closed(text) or (number == 0 and " " not in text):
                return False
            if heights[place] != number:
                return False  # a blank cell above
            heights[place] += 1
            if _HOUSE.fullmatch(text.rstrip(",")):
                houses.add(number)
    return min(heights) >= LEAST and len(houses) == 1 and houses != {0}
