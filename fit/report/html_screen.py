"""Pictures of screens in HTML: a row a line, what is marked underlined as well as coloured."""

from __future__ import annotations

from html import escape
from itertools import groupby

from fit.loss.figures import LookView
from fit.remedy.findings import Report
from fit.report.plain import in_cells
from fit.width import clusters

CLASSES = {"-": "lost", "?": "false"}


def look_html(report: Report, view: LookView) -> str:
    """Both screens at one look."""
    big = _screen(f"big, {report.big.size}", view.big_rows, view.big_marks)
    small = _screen(f"small, {report.small.size}", view.small_rows, view.small_marks)
    return f'<div class="screens">{big}{small}</div>'


def rows_html(caption: str, rows: tuple[str, ...]) -> str:
    """A screen without marks."""
    return _screen(caption, rows, tuple("" for _ in rows))


def _screen(caption: str, rows: tuple[str, ...], marks: tuple[str, ...]) -> str:
    lines = "\n".join(_row(row, mark) for row, mark in zip(rows, marks, strict=True))
    return f"<figure><figcaption>{escape(caption)}</figcaption><pre>{lines}</pre></figure>"


def _row(row: str, marks: str) -> str:
    """One row: runs of cells with the same mark together."""
    pairs: list[tuple[str, str]] = []
    cell = 0
    for cluster in clusters(row):
        pairs.append((marks[cell : cell + 1].strip(), row[cluster.start : cluster.end]))
        cell += cluster.cells
    parts = []
    for mark, run in groupby(pairs, key=lambda pair: pair[0]):
        text = escape(in_cells("".join(chars for _, chars in run)))
        parts.append(f'<span class="{CLASSES[mark]}">{text}</span>' if mark else text)
    return "".join(parts)
