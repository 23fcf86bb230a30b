"""The gold of a corpus document: what its blocks are, in a form that can be read and typed by hand.

One line a piece, the first character its kind:

    = 1 heading          a heading and its level
    p text               a paragraph
    * label | text       a list item or a hanging key
    T cell | cell        a header row of a table
    t cell | cell        a row of a table; rows that follow each other are one table
    c line               a line of program text or a transcript; lines that follow each other are one block
    l line               a line that stays a line: verse, an address
    # line               a line of a picture
    n label | text       a footnote
    f line               page furniture

A blank line parts two tables, pictures or kept blocks. ``%`` starts a comment.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

KINDS = {
    "=": "heading",
    "p": "paragraph",
    "*": "item",
    "T": "table",
    "t": "table",
    "c": "code",
    "l": "lines",
    "#": "picture",
    "n": "note",
    "f": "furniture",
}


@dataclass
class GoldBlock:
    """One block as it should be read."""

    kind: str
    text: str = ""
    label: str = ""
    level: int = 0
    rows: list[list[str]] = field(default_factory=list)
    header_rows: int = 0
    lines: list[str] = field(default_factory=list)


def parse_gold(text: str) -> list[GoldBlock]:
    """The blocks of a gold text."""
    blocks: list[GoldBlock] = []
    fresh = True
    for line in text.splitlines():
        if not line.strip():
            fresh = True
            continue
        if line.startswith("%"):
            continue
        tag, body = line[0], line[2:]
        kind = KINDS[tag]
        if kind in {"table", "code", "lines", "picture"}:
            if fresh or not blocks or blocks[-1].kind != kind:
                blocks.append(GoldBlock(kind))
            block = blocks[-1]
            if kind == "table":
                block.rows.append([cell.strip() for cell in body.split(" | ")])
                block.header_rows += tag == "T"
            else:
                block.lines.append(body)
        elif kind == "heading":
            level, _, words = body.partition(" ")
            blocks.append(GoldBlock(kind, words, level=int(level)))
        elif kind in {"item", "note"}:
            label, _, words = body.partition(" | ")
            blocks.append(GoldBlock(kind, words, label.strip()))
        elif kind == "furniture":
            blocks.append(GoldBlock(kind, lines=[body]))
        else:
            blocks.append(GoldBlock(kind, body))
        fresh = False
    return blocks


def read_gold(path: Path) -> list[GoldBlock]:
    """The blocks of a gold file."""
    return parse_gold(path.read_text(encoding="utf-8"))
