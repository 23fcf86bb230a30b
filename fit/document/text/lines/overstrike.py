"""Backspaces, returns without line feed, tabs, ANSI attributes and wide characters of one line, resolved.

A printer strikes a cell twice: the same character makes it bold, an underscore underlines it. Tab stops stand
every 8 columns (common practice, no source). SGR is ECMA-48 8.3.117, CUF 8.3.20.
"""

from __future__ import annotations

import re
import unicodedata
from array import array
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from fit.document.blocks import Mark
from fit.document.text.line import FILLER, Line, Resolved
from fit.width import char_cells

TAB = 8
_ESCAPE = re.compile(
    r"\x1b\[([0-?]*)([ -/]*)([@-~])|\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)?|\x1b.?|\x9b([0-?]*)[ -/]*([@-~])"
)
_FORWARD = re.compile(r"(?:\x1b\[|\x9b)(?P<cells>\d{0,3})C")
"""Cursor forward: as many blank cells where nothing stands yet."""
WIDEST = 255
"""Column beyond which nothing moves forward."""
_ACCENTS = {"'": "\u0301", "`": "\u0300", "^": "\u0302", '"': "\u0308", "~": "\u0303", ",": "\u0327"}
_SOFT_HYPHEN = "\u00ad"
_NO_BREAK_SPACE = "\u00a0"


@dataclass(slots=True)
class _Cell:
    chars: str
    place: int
    mark: int
    extra: list[int]
    """Places of combining characters."""


def resolve(
    raw: str, places: Sequence[int], unknown: Counter[str], marks: Sequence[int] | None = None
) -> Line:
    """The line that a printer would have made of ``raw``.

    ``places`` are the offsets of its characters in the document; ``marks`` what they are set off by already.
    """
    cells: list[_Cell] = []
    column = 0
    mark: int = Mark.NONE
    place = 0
    while place < len(raw):
        char = raw[place]
        at = places[place]
        if marks is not None:
            mark = marks[place]
        width = 1 if " " <= char <= "~" else char_cells(char)
        if char in "\x1b\x9b":
            match = _ESCAPE.match(raw, place)
            if match is not None:
                forward = _FORWARD.fullmatch(match.group())
                if forward is not None:
                    column += min(int(forward["cells"] or 1) or 1, WIDEST - min(column, WIDEST))
                else:
                    mark = _attributes(match, mark, unknown)
                place = match.end()
                continue
            unknown["9Bh"] += 1
        elif char == "\b":
            column = max(0, column - 1)
        elif char == "\r":
            column = 0
        elif char == "\t":
            column = _tab(cells, column, at)
        elif char == _SOFT_HYPHEN:
            if place == len(raw) - 1:
                _write(cells, column, char, at, mark)
        elif char == _NO_BREAK_SPACE:
            if 0 < column <= len(cells):
                cells[column - 1].mark |= Mark.NO_BREAK
            _write(cells, column, " ", at, mark | Mark.NO_BREAK)
            column += 1
        elif width == 0:
            if unicodedata.category(char) == "Cc":
                unknown[f"{ord(char):02X}h"] += 1
            elif 0 < column <= len(cells):
                target = cells[column - 1] if cells[column - 1].chars != FILLER else cells[column - 2]
                target.chars += char
                target.extra.append(at)
        else:
            _write(cells, column, char, at, mark)
            column += 1
            if width == 2:
                _write(cells, column, FILLER, at, mark)
                column += 1
        place += 1
    return _pack(cells, places[0] if places else 0)


def expand_tabs(raw: str, offset: int) -> Line:
    """A line of plain characters and tabs, which stands at ``offset`` in the document."""
    chars = raw.expandtabs(TAB)
    sources = array("q")
    place = offset
    for number, run in enumerate(raw.split("\t")):
        if number:
            goal = (len(sources) // TAB + 1) * TAB
            sources.extend([place - 1] * (goal - len(sources)))
        sources.extend(range(place, place + len(run)))
        place += len(run) + 1
    return Line(chars, offset, Resolved(chars, sources, bytes(len(chars)), range(len(chars) + 1)))


def _tab(cells: list[_Cell], column: int, place: int) -> int:
    goal = (column // TAB + 1) * TAB
    for target in range(max(column, len(cells)), goal):
        _write(cells, target, " ", place, 0)
    return goal


def _write(cells: list[_Cell], column: int, char: str, place: int, mark: int) -> None:
    while len(cells) < column:
        cells.append(_Cell(" ", place, 0, []))
    if column == len(cells):
        cells.append(_Cell(char, place, mark, []))
        return
    cell = cells[column]
    if char == " ":
        if cell.chars == "_":
            cells[column] = _Cell(" ", place, cell.mark | Mark.UNDERLINE, [])
    elif cell.chars == " " and char == "_" and column + 1 < len(cells):
        cell.mark |= Mark.UNDERLINE
    elif cell.chars == " ":
        cells[column] = _Cell(char, place, mark, [])
    elif cell.chars == char:
        cell.mark |= Mark.UNDERLINE if char == "_" else Mark.BOLD
    elif char == "_":
        cell.mark |= Mark.UNDERLINE
    elif cell.chars == "_":
        cells[column] = _Cell(char, place, cell.mark | mark | Mark.UNDERLINE, [])
    else:
        _compose(cell, char, place)


def _compose(cell: _Cell, char: str, place: int) -> None:
    """Two different characters in one cell: an accented letter, a slashed zero, else the letter or the last."""
    letter, accent = (cell.chars, char) if char in _ACCENTS else (char, cell.chars)
    composed = unicodedata.normalize("NFC", letter + _ACCENTS.get(accent, ""))
    if accent in _ACCENTS and len(composed) == 1 and letter.isalpha():
        cell.chars = composed
    elif {cell.chars, char} == {"0", "/"}:
        cell.chars = "0"
    elif char.isalnum() or not cell.chars.isalnum():
        cell.chars, cell.place = char, place


def _attributes(match: re.Match[str], mark: int, unknown: Counter[str]) -> int:
    final = match.group(3) or match.group(5)
    if final != "m" or match.group(2):
        unknown["ESC " + match.group(0)[1:].strip("\x07\x1b\\")[:8]] += 1
        return mark
    for code in (match.group(1) or match.group(4) or "0").split(";"):
        match code.lstrip("0"):
            case "":
                mark = Mark.NONE
            case "1":
                mark |= Mark.BOLD
            case "4":
                mark |= Mark.UNDERLINE
            case "21" | "22":
                mark &= ~Mark.BOLD
            case "24":
                mark &= ~Mark.UNDERLINE
            case _:
                pass
    return mark


def _pack(cells: list[_Cell], offset: int) -> Line:
    while cells and cells[-1].chars == " ":
        cells.pop()
    if all(len(cell.chars) == 1 and cell.chars != FILLER and not cell.extra for cell in cells):
        line = "".join([cell.chars for cell in cells])
        places = array("q", [cell.place for cell in cells])
        struck = bytes([cell.mark for cell in cells])
        return Line(line, offset, Resolved(line, places, struck, range(len(line) + 1)))
    chars: list[str] = []
    sources = array("q")
    marks = bytearray()
    starts: list[int] = []
    count = 0
    for cell in cells:
        if cell.chars == FILLER:
            starts.append(count)
            continue
        starts.append(count)
        chars.append(cell.chars)
        sources.append(cell.place)
        sources.extend(cell.extra)
        missing = len(cell.chars) - 1 - len(cell.extra)
        sources.extend([cell.place] * missing)
        marks.extend([cell.mark] * len(cell.chars))
        count += len(cell.chars)
    starts.append(count)
    # A blank that carries a mark is to be seen: the mark stands for it.
    geometry = "".join(cell.chars.strip(" ")[:1] or " " for cell in cells)
    return Line(geometry, offset, Resolved("".join(chars), sources, bytes(marks), starts))
