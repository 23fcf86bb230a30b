"""Rows of letters that are no words: line after line made of a few letters alone, in groups perhaps, counted or named at the left.

So many letters of so few kinds are data that somebody shows: no title, though all are capitals, and no item.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import ruled_off

LETTERS = 16
"""Letters of a row, at least."""
GROUP = 8
"""Letters of the longest group in a row, at least: names in capitals are shorter."""
KINDS = 5
"""Different ones among them, at most: no words are made of so few."""
FEWEST = 2
"""Different ones, at least: one alone fills a line, or rules it off."""


def find_letter_rows(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines between blank lines or rules of which half or more are such rows, joined over single blank lines.

    A row of figures among them, as long, is one of their kind.
    """
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        if taken[index] is not None or not _row(lines[index].text):
            index += 1
            continue
        start, end = index, part_end(lines, index)
        end = next((place for place in range(index, end) if ruled_off(lines[place].text)), end)
        while not (parted_above(lines, start) or taken[start - 1] or ruled_off(lines[start - 1].text)):
            start -= 1
        part = lines[start:end]
        rows = sum(_row(line.text) or _figures(line.text) for line in part)
        free = all(taken[place] is None for place in range(start, end))
        if free and 2 * rows >= len(part) and not any(prose(line.text) for line in part):
            if found and found[-1][1] == start and lines[start].gap == 1:
                start = found.pop()[0]
            end += _goes_on(lines, taken, index, end)
            found.append((start, end))
        index = end
    return found


def _goes_on(lines: Sequence[Line], taken: Sequence[object], row: int, end: int) -> bool:
    """Whether a number and less than a whole row of the same letters stand alone below a blank line."""
    if end == len(lines) or taken[end] is not None or lines[end].gap != 1 or not parted_above(lines, end + 1):
        return False
    label, _, letters = lines[end].text.partition(" ")
    return label.isdigit() and letters != "" and set(letters) <= {*_letters(lines[row].text), " "}


def _letters(text: str) -> str:
    """The letters of a line in capitals, without a word or a number before them, and without the strokes for those left out.

    Nothing where all of its groups are as short as words are.
    """
    first, _, rest = text.partition(" ")
    groups = (rest if rest and not first.isupper() else text).split()
    return "".join(groups).replace("-", "") if groups and max(map(len, groups)) >= GROUP else ""


def _row(text: str) -> bool:
    """Whether a line is a row of few kinds of letters, with a word or a number before it perhaps."""
    if len(text) < LETTERS or not text[-LETTERS // 2 :].isupper():
        return False
    letters = _letters(text)
    return letters.isalpha() and len(letters) >= LETTERS and FEWEST <= len(set(letters)) <= KINDS


def _figures(text: str) -> bool:
    """Whether figures and capitals alone, as many as a row has, stand on a line without a blank, behind a word perhaps."""
    rest = text.partition(" ")[2].lstrip() or text
    return len(rest) >= LETTERS and rest.isalnum() and rest.upper() == rest and not rest.isalpha()
