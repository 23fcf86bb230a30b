"""A document laid out as JSON, described by ``reflow.schema.json`` beside this file."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from importlib import resources
from itertools import groupby
from typing import Any, Final

from fit.document.blocks import Block, LeftOut, Text
from fit.layout.lines import Figures, Line, LineFlag
from fit.layout.reading_order import moved_blocks
from fit.report.advice import MASTER_COPY
from fit.report.reflowed import Reflowed

FORM: Final = "fit-reflow"
VERSION: Final = 1
"""Grows when a field changes its meaning or goes; new fields leave it as it is."""

FLAGS: Final = {
    "first": LineFlag.FIRST,
    "last": LineFlag.LAST,
    "hyphen": LineFlag.HYPHEN,
    "joined": LineFlag.JOINED,
    "marked": LineFlag.MARKED,
    "blank": LineFlag.BLANK,
    "repeated": LineFlag.REPEATED,
    "rule": LineFlag.RULE,
    "added": LineFlag.ADDED,
}
"""The flags of a line that are written, with their names."""


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) that every such report follows."""
    text = (resources.files("fit.report") / "reflow.schema.json").read_text("utf-8")
    loaded: dict[str, Any] = json.loads(text)
    return loaded


def reflow_json(result: Reflowed) -> Iterator[str]:
    """The report in pieces of JSON text, 7-bit, one field of the top a line; ended by a new line."""
    yield "{\n"
    for key, value in _head(result).items():
        yield f"{json.dumps(key)}: {json.dumps(value)},\n"
    yield from _array("blocks", map(_block, result.document.blocks), ",")
    yield from _array("lines", map(_line, result.layout.lines), ",")
    yield from _array("pages", ([page.start, page.end] for page in result.layout.pages), "")
    yield "}\n"


def _head(result: Reflowed) -> dict[str, Any]:
    document, layout, settings = result.document, result.layout, result.settings
    return {
        "form": FORM,
        "version": VERSION,
        "document": {
            "name": document.name,
            "format": document.format,
            "encoding": document.encoding,
            "characters": len(document.source),
        },
        "columns": settings.width,
        "page_rows": settings.page_rows,
        "language": settings.language if settings.hyphenate else None,
        "shortfalls": result.shortfalls,
        "before": None if layout.before is None else _figures(layout.before),
        "after": _figures(layout.after),
        "naive_pages": layout.naive_pages,
        "words": {
            "total": result.proof.words,
            "lost": list(result.proof.lost),
            "added": list(result.proof.added),
            "out_of_order": list(result.proof.out_of_order),
        },
        "left_out": _left_out(document.left_out),
        "moved": [
            {"block": each.block, "first_line": each.lines.start + 1, "last_line": each.lines.end}
            for each in moved_blocks(document, layout)
        ],
        "characters": [
            {"char": char, "written": form, "count": result.changes.counts[char]}
            for char, form in result.changes.written.items()
        ],
        "lacking": [
            {"char": char, "count": number, "first": result.changes.first_lacking[char]}
            for char, number in result.changes.lacking.items()
        ],
        "remarks": list(document.remarks),
        "decisions": [
            {"block": each.block, "kind": each.kind.value, "what": each.what, "degraded": each.degraded}
            for each in layout.decisions
        ],
        "faults": [
            {"page": each.page, "what": each.what, "block": each.block, "forced": each.forced}
            for each in layout.faults
        ],
        "keep": MASTER_COPY,
    }


def _left_out(left: LeftOut | None) -> dict[str, Any] | None:
    return None if left is None else {"hyphens": left.hyphens, "signs": dict(left.signs.most_common())}


def _figures(figures: Figures) -> dict[str, Any]:
    return {
        "lines": figures.lines,
        "lines_over_width": figures.lines_over_width,
        "raggedness": round(figures.raggedness, 3),
        "hyphens": figures.hyphens,
        "pages": figures.pages,
        "page_faults": figures.page_faults,
        "forced_faults": figures.forced_faults,
        "tall_items": figures.tall_items,
    }


def _block(block: Block) -> dict[str, Any]:
    parts: dict[str, Any] = {"kind": block.kind.value, "level": block.level}
    if len(block.label):
        parts["label"] = _text(block.label)
    if len(block.text):
        parts["text"] = _text(block.text)
    if block.lines:
        parts["lines"] = list(map(_text, block.lines))
    if block.rows:
        parts["rows"] = [list(map(_text, row)) for row in block.rows]
        parts["header_rows"] = block.header_rows
    if block.code:
        parts["code"] = True
    if block.note:
        parts["note"] = block.note
    return parts


def _text(text: Text) -> dict[str, Any]:
    return {"text": text.chars, "sources": source_runs(text.sources)}


def _line(line: Line) -> dict[str, Any]:
    return {
        "text": line.text,
        "sources": source_runs(line.sources),
        "block": line.block,
        "kind": None if line.kind is None else line.kind.value,
        "flags": [name for name, flag in FLAGS.items() if line.flags & flag],
    }


def source_runs(sources: Iterable[int]) -> list[list[int]]:
    """Runs ``[offset, count]`` of characters that stand side by side in the document, or ``[-1, count]``."""
    runs: list[list[int]] = []
    for offset, same in groupby(
        enumerate(sources), key=lambda pair: pair[1] - pair[0] if pair[1] >= 0 else None
    ):
        places = [place for _, place in same]
        runs.append([-1 if offset is None else places[0], len(places)])
    return runs


def _array(name: str, items: Iterable[Any], comma: str) -> Iterator[str]:
    yield f"{json.dumps(name)}: ["
    separator = "\n"
    for item in items:
        yield f"{separator}{json.dumps(item)}"
        separator = ",\n"
    yield f"\n]{comma}\n"
