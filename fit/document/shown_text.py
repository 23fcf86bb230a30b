"""Kept lines in markup that are no program: a table, a drawing, keys beside their texts or a song, as a plain text has them.

Writers of markup set all these between the marks of program text, for there their columns stay. Set as program text,
each line too long for the screen would be torn by itself.
"""

from __future__ import annotations

import re
import sys
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from fit.document.block_maker import at_level
from fit.document.blocks import Block, Kind, Text
from fit.document.characters import split_lines
from fit.document.text import read_body
from fit.document.text.hyphens import Hyphens
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import prose
from fit.document.wrapped_text import plain_line

_BESIDE: Final = re.compile(r" *\S+(?: \S+)* {2,}(?=\S)")
"""A key and the wide blank before its text."""
LEAST_ROWS: Final = 3
"""Rows, and keys with their texts, at least, that show what the lines are."""
PAIR: Final = 2
"""Cells of a row that is a key and its text."""
LEAST_WORDS: Final = 2
"""Words of letters alone in one cell or text that show that it is said to readers, at least."""
CODED: Final = 0.2
"""The share of the lines that read as program text beyond which all are."""
OTHER: Final = 0.2
"""The share of the characters, at most, that stand neither in rows nor beside keys where the rest does."""
SHARE: Final = 0.5
"""Of the rows, keys and lines, the share that must be said in words."""


def read_shown(block: Block, text: Text, hyphens: Hyphens) -> list[Block]:
    """The blocks of a preformatted element or the like: those of a plain text, or ``block`` as it is.

    ``text`` has the lines of the block as they stand in the document.
    """
    told = [line.chars.strip() for line in block.lines if line.chars.strip()]
    if block.kind is not Kind.PREFORMATTED or len(told) < LEAST_ROWS or _coded(_beginning(block.lines)):
        return [block]
    read = read_body([plain_line(line) for line in split_lines(text)], hyphens)
    kinds = {each.kind for each in read}
    rows, options, other = _rows(read)
    if len(rows) >= LEAST_ROWS and other <= (OTHER * sum(map(len, told)) if options else 0):
        named = all(each.header_rows for each in read)
        if named or options or not block.code or _share_said(rows):
            return [at_level(each, block.level) for each in read]
    if any(each.code for each in read) or not kinds <= _SHOWN:
        return [block]
    if Kind.PICTURE in kinds:
        return [replace(block, kind=Kind.PICTURE, code=False)] if _drawn(read, block) else [block]
    worded = sum(map(prose, told)) > SHARE * len(told)
    if worded and kinds == {Kind.ITEM}:
        return [at_level(each, block.level) for each in read]
    return [replace(block, code=False)] if worded and Kind.TABLE not in kinds else [block]


_BESIDE_ROWS: Final = {Kind.PREFORMATTED, Kind.PARAGRAPH}
_SHOWN: Final = {Kind.TABLE, Kind.ITEM, Kind.PICTURE, Kind.PREFORMATTED, Kind.PARAGRAPH, Kind.HEADING}


def _beginning(lines: Sequence[Text]) -> list[str]:
    """The lines, those left out that go on under the texts beside keys, since nothing begins there."""
    columns = Counter(gap.end() for line in lines if (gap := _BESIDE.match(line.chars)))
    column, times = columns.most_common(1)[0] if columns else (0, 0)
    beside = column if times >= LEAST_ROWS else sys.maxsize
    return [
        told
        for line in lines
        if (told := line.chars.strip()) and len(line.chars) - len(line.chars.lstrip(" ")) < beside
    ]


def _coded(lines: Sequence[str]) -> bool:
    """Whether so many lines read as program text, or are forms in brackets, that all of them are."""
    return sum(line.startswith("(") or code(line) for line in lines) > CODED * len(lines)


def _drawn(read: Sequence[Block], block: Block) -> bool:
    """Whether the drawings are most of the lines, and nothing beside them is a table or a list."""
    drawn = sum(len(each.lines) for each in read if each.kind is Kind.PICTURE)
    return drawn > SHARE * len(block.lines) and all(each.kind not in {Kind.TABLE, Kind.ITEM} for each in read)


def _rows(read: Sequence[Block]) -> tuple[list[list[str]], bool, int]:
    """The rows of the tables, and the texts behind keys and a wide blank; whether the keys are options; the characters of all else.

    Where an item has no such key there are no rows.
    """
    rows: list[list[str]] = []
    pairs: list[tuple[str, str]] = []
    other = 0
    for block in read:
        if block.kind is Kind.TABLE:
            rows += [[cell.chars for cell in row] for row in block.rows]
            pairs += [(row[0].chars, row[1].chars if len(row) == PAIR else "") for row in block.rows]
        elif block.kind is Kind.ITEM and _hung(block.label, block.text):
            rows.append([block.text.chars])
            pairs.append((block.label.chars, block.text.chars))
        elif block.kind in _BESIDE_ROWS:
            other += sum(len(text.chars) for text in (block.text, *block.lines))
        else:
            return [], False, 0
    # Program text has no wide blanks behind options; a grid of nothing but names has no blank in its cells.
    options = all(key.startswith("-") for key, _ in pairs) and any(" " in text for _, text in pairs)
    return rows, options, other


def _hung(label: Text, text: Text) -> bool:
    """Whether a word is a key whose text stands behind a wide blank, or below it."""
    if not any(map(str.isalnum, label.chars)) or not text.chars or label.chars.rstrip(".)").isdigit():
        return False
    return text.sources[0] - label.sources[-1] > 2


def _share_said(rows: Sequence[Sequence[str]]) -> bool:
    said = sum(any(_said(cell) for cell in row) for row in rows)
    return said > SHARE * len(rows)


def _said(cell: str) -> bool:
    """Whether a cell says something in words."""
    return sum(word.strip(".,;:()").isalpha() for word in cell.split()) >= LEAST_WORDS
