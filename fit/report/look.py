"""Both screens at one look, with marks under what is not intact (``-``) and what is not clean (``?``).

Side by side where the page is wide enough, else one above the other; rows that are longer than a narrow page
are folded. The marks say everything; colour only repeats them.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile, zip_longest
from typing import NamedTuple

from fit.loss.figures import LookView
from fit.remedy.findings import Report
from fit.report.ink import Ink
from fit.report.numbers import count
from fit.report.plain import in_cells, pad
from fit.report.style import Style
from fit.width import clusters, text_cells

BETWEEN = "   "
MARGIN = 3
"""Cells of the row number and the edge before a row."""
FEW = 3
"""More blank rows than this at the bottom are told, not drawn."""
LEGEND = "- under the big screen: not intact on the small one.  ? under the small screen: not clean."


class _Row(NamedTuple):
    """A row of a picture and the marks under it; equally wide, but for blanks at their ends."""

    text: str
    marks: str


def look_page(report: Report, view: LookView, style: Style) -> str:
    """The page for one look; ended by a new line."""
    title = f"Look {view.look} of {report.looks}, at byte {view.at} of {count(len(report.session.output), 'byte')}"
    big_title = f"big {report.big.size}"
    small_title = f"small {report.small.size}"
    big = _picture(view.big_rows, view.big_marks, style)
    small = _picture(view.small_rows, view.small_marks, style)
    left = max(text_cells(big_title), *(_cells(row) for row in big))
    right = max(text_cells(small_title), *(_cells(row) for row in small))
    if left + len(BETWEEN) + right <= style.width and not _folded(view, style):
        body = [style.paint(pad(big_title, left) + BETWEEN + small_title, Ink.BOLD)]
        body += _beside(big, small, left, style)
    else:
        body = [*style.heading(big_title), *_stacked(big, style), "", *style.heading(small_title)]
        body += _stacked(small, style)
    lines = [*style.heading(title), "", *body, "", *style.text(LEGEND, "")]
    return "\n".join(lines) + "\n"


def _picture(rows: tuple[str, ...], marks: tuple[str, ...], style: Style) -> list[_Row]:
    """The rows with their numbers and edges, folded where they are longer than the page."""
    columns = max(map(len, marks), default=0)
    blank = _blank_rows(rows)
    total = len(rows)
    rows, marks = rows[: total - blank], marks[: total - blank]
    longest = max((text_cells(row.rstrip()) for row in rows), default=0)
    edge = "|" if MARGIN + columns + 1 <= style.width else ""
    room = columns if edge else style.width - MARGIN
    bare = not edge and longest > room and longest <= style.width
    if bare:
        rule = "=" * min(columns, style.width)
        inside = [_Row(in_cells(row.rstrip()), mark.rstrip()) for row, mark in zip(rows, marks, strict=True)]
        return [_Row(rule, ""), *inside, *_told_blank(blank, total), _Row(rule, "")]
    rule = "  +" + "=" * min(columns, room) + ("+" if edge else "")
    lines = [_Row(rule, "")]
    for number, (row, mark) in enumerate(zip(rows, marks, strict=True), 1):
        for index, (text, under) in enumerate(_fold(row, mark, room)):
            margin = f"{number:>2}|" if index == 0 else "  >"
            lines.append(
                _Row(margin + (pad(text, room) + edge if edge else text), "   " + under if under else "")
            )
    return [*lines, *_told_blank(blank, total), _Row(rule, "")]


def _blank_rows(rows: tuple[str, ...]) -> int:
    """How many rows at the bottom are blank, where they are worth leaving out."""
    blank = sum(1 for _ in takewhile(lambda row: not row.strip(), reversed(rows)))
    return blank if blank > FEW else 0


def _told_blank(blank: int, total: int) -> list[_Row]:
    return [_Row(f"  : rows {total - blank + 1} to {total} are blank", "")] if blank else []


def _fold(row: str, marks: str, room: int) -> Iterator[tuple[str, str]]:
    """The row in pieces of at most ``room`` cells, each with its marks; at least one piece."""
    row = row.rstrip()
    text, start, cell = "", 0, 0
    for cluster in clusters(row):
        if cell + cluster.cells - start > room:
            yield text, marks[start:cell].rstrip()
            text, start = "", cell
        text += in_cells(row[cluster.start : cluster.end])
        cell += cluster.cells
    yield text, marks[start : max(cell, start + room)].rstrip() if start == 0 else marks[start:].rstrip()


def _folded(view: LookView, style: Style) -> bool:
    """Whether the big screen does not fit beside anything."""
    return max(map(len, view.big_marks), default=0) + MARGIN + 1 > style.width


def _beside(big: list[_Row], small: list[_Row], left: int, style: Style) -> list[str]:
    lines = []
    for one, other in zip_longest(big, small, fillvalue=_Row("", "")):
        gap = " " * (left - text_cells(one.text))
        lines.append((_painted(one, style) + gap + BETWEEN + _painted(other, style)).rstrip())
        if one.marks or other.marks:
            lines.append((pad(one.marks, left) + BETWEEN + other.marks).rstrip())
    return lines


def _stacked(rows: list[_Row], style: Style) -> list[str]:
    lines = []
    for row in rows:
        lines.append(_painted(row, style))
        if row.marks:
            lines.append(row.marks)
    return lines


def _painted(row: _Row, style: Style) -> str:
    """The text with its marked cells in colour."""
    if not style.paint.enabled or not row.marks:
        return row.text
    parts, cell = [], 0
    for cluster in clusters(row.text):
        text = row.text[cluster.start : cluster.end]
        marked = row.marks[cell : cell + 1].strip()
        parts.append(style.paint(text, Ink.RED if marked == "-" else Ink.YELLOW) if marked else text)
        cell += cluster.cells
    return "".join(parts)


def _cells(row: _Row) -> int:
    return max(text_cells(row.text), len(row.marks))
