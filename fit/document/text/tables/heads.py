"""Heads of tables: whether a first row names the columns, and where it was printed again after a page end."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise
from statistics import median

from fit.document.numerals import written
from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, prose

WORDS = 3
"""Words of a column's name, at most, where nothing but the words tells it from a row."""
MOST_WORDS = 6
"""Words of one that is clearly shorter than the cells below it."""
SHORT = 0.6
"""The share of the usual length of a cell below which a name is clearly shorter."""
SENTENCE = 6
"""Words from which on running text with a full stop is a sentence, and no question or remark that heads a column."""
LONGEST = 16
"""Words of running text, at least, that head nothing."""
COUNTED = 4
"""Numbers in a row by even steps that no chance of figures makes."""
IN_ORDER = 9
"""Words in the order of the alphabet that no chance has put so."""
ORDERED = 0.9
"""The share of words, at least, that come behind the one before them, where a hand has put them in order."""
_YEARS = range(1500, 2100)
_COUNT = re.compile(r"(\d{1,4})([-/]\d{1,4})?")
"""A number, or a season or a range that begins with one."""
_NAME = re.compile(
    r"[^\W\d_][\w #/(),.'?&$%\u00a3\u20ac-]*[\w)?]|[^\W\d_][\w .-]* ?[#$%\u00a3\u20ac]|\W?[^\W\d_]+|[^\W\d_]{1,4}\."
)
"""Words, perhaps with the sign of what is counted behind them; an abbreviation too, as `No.` is."""
_PLAIN = re.compile(r"[a-z]+(?:[ -][a-z]+)*")


def tells(cells: Sequence[str]) -> bool:
    """Whether one of the cells tells something in a sentence, and heads no column: a head may be printed again."""
    return any(
        prose(text) and len(text.split()) >= (SENTENCE if closed(text) else LONGEST)
        for text in cells
        if " " in text
    )


def names_columns(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the first of rows that are all set alike names the columns.

    Names are a few words without figures or signs: with capitals, or clearly shorter than the cells of the last
    column, or plain words over a first column that has none.
    """
    filled = [text for text in first if text]
    if not rest or not filled or len(filled) < len(first) - (not first[0]):
        return False
    short = is_shorter(first, rest)
    most = MOST_WORDS if short else WORDS
    if not all(_NAME.fullmatch(text) and len(text.split()) <= most for text in filled):
        return False
    if all(text[0].isupper() for text in filled):
        return True
    keys = [row[0] for row in rest if row[0]]
    other = sum(_PLAIN.fullmatch(key) is None for key in keys) >= 0.8 * len(keys)
    return short or (bool(first[0]) and bool(keys) and other)


def names_without_saying(rows: Sequence[Sequence[str]]) -> bool:
    """Whether the first row of a table whose markup names no header is one: beside names, what stands below shows it.

    The cells of a column without figures in its name all have some, or those of the last column are clearly longer.
    Two columns are mostly keys and what they mean, which have no names.
    """
    first, rest = rows[0], rows[1:]
    if len(first) <= 2 or len(rest) < 2 or not names_columns(first, rest):
        return False
    columns = zip(first, *rest, strict=True)
    counted = any(not _figures(name) and all(map(_figures, cells)) for name, *cells in columns)
    return counted or is_shorter(first, rest)


def _figures(text: str) -> bool:
    return any(map(str.isdigit, text))


def plain_names(texts: Sequence[str]) -> bool:
    """Whether texts are a few words each, the first with a capital, without figures and signs: what heads are made of."""
    filled = [text for text in texts if text]
    return bool(filled) and all(
        text[0].isupper()
        and len(text.split()) <= WORDS
        and _NAME.fullmatch(text) is not None
        and not any(map(str.isdigit, text))
        for text in filled
    )


def counts_columns(first: Sequence[str], rest: Sequence[Sequence[str]], *, apart: bool) -> bool:
    """Whether the first row counts the columns, in years or other even steps, as no other row does.

    Without a word over the keys their company shows it; with one, years do, or ``COUNTED`` numbers, or a blank line.
    """
    numbers = _counted(first[1:])
    if not numbers or any(char.isdigit() for char in first[0]) or any(_counted(row[1:]) for row in rest):
        return False
    if not all(row[0] for row in rest):
        return False
    years = all(number in _YEARS for number in numbers)
    return not first[0] or apart or years or len(numbers) >= COUNTED


def _counted(cells: Sequence[str]) -> list[int]:
    """The numbers that cells of one form begin with, where they rise by even steps: two years, or three of other kinds."""
    matches = [_COUNT.fullmatch(text) for text in cells]
    numbers = [int(match[1]) for match in matches if match is not None]
    if len(numbers) < max(2, len(cells)) or len({match[2] is None for match in matches if match}) > 1:
        return []
    steps = {below - above for above, below in pairwise(numbers)}
    years = all(number in _YEARS for number in numbers)
    return numbers if len(steps) == 1 and min(steps) > 0 and (years or len(numbers) > 2) else []


def names_and_years(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the first row has years in order over some columns, as no other row does, and names over all others."""
    dated = [column for column, text in enumerate(first) if text.isdigit()]
    names = [text for column, text in enumerate(first) if column not in dated]
    numbers = _counted([first[column] for column in dated])
    if not names or not numbers or not all(number in _YEARS for number in numbers) or not plain_names(names):
        return False
    return "" not in names and not any(_counted([row[column] for column in dated]) for row in rest)


def in_order(grid: Sequence[Sequence[str]]) -> bool:
    """Whether words go on by the alphabet from cell to cell and from row to row: a list of them, which has no head."""
    words = [text for row in grid for text in row if text]
    if len(words) < IN_ORDER or any(" " in word for word in words):
        return False
    letters = ["".join(filter(str.isalpha, word)).casefold() for word in words]
    return sum(first < second for first, second in pairwise(letters)) >= ORDERED * (len(words) - 1)


def numerals(keys: Sequence[str]) -> bool:
    """Whether keys count the rows in numerals from `I` on, as what stands over them does not."""
    counted = [written(number, "I") for number in range(1, len(keys) + 1)]
    return len(keys) > 1 and [key.rstrip(".)") for key in keys] == counted


def is_shorter(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the last cell of the first row is clearly shorter than those below it."""
    lengths = [len(row[-1]) for row in rest if row[-1]]
    return bool(lengths) and len(first[-1]) < SHORT * median(lengths)


def repeated_heads(lines: Sequence[Line], rule: Callable[[Line], bool]) -> list[tuple[int, int]]:
    """The half-open runs of lines after a page end that print the head of the table again, line for line."""
    height = _height(lines, rule)
    head = [line.text for line in lines[:height]]
    return [
        (start, start + height)
        for start in range(height, len(lines) - height + 1)
        if lines[start].crossing and [line.text for line in lines[start : start + height]] == head
    ]


def _height(lines: Sequence[Line], rule: Callable[[Line], bool]) -> int:
    """The lines of the head with the rules around it; those above the first blank line, or one, where it has no rule."""
    first = next((index for index, line in enumerate(lines) if not rule(line)), 0)
    end = first + 1
    while end < len(lines) and not rule(lines[end]):
        end += 1
    if end == len(lines):
        below = range(first + 1, min(first + 4, len(lines)))
        end = next((index for index in below if lines[index].gap and not lines[index].crossing), first + 1)
    while end < len(lines) and rule(lines[end]):
        end += 1
    return end


def without(lines: Sequence[Line], runs: Sequence[tuple[int, int]]) -> list[Line]:
    """The lines that are in none of the runs; the page ends before those that follow one, whatever its blank lines."""
    out = {index for first, last in runs for index in range(first, last)}
    ends = {last for _, last in runs}
    return [
        replace(line, crossing=True) if index in ends else line
        for index, line in enumerate(lines)
        if index not in out
    ]
