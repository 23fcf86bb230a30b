"""Blocks in a form that can be compared with the gold, and checks that hold for every reader."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from gold import GoldBlock

from fit.document.blocks import Block, Document, Kind, Text

SIGNS = str.maketrans({"~": " ", "\u2016": "|", "\u2205": "", "\u00ac": "\u00ad", "\u00a6": "\u200b"})
"""What the gold writes for characters that would be hard to see in it."""


def plain(block: Block) -> tuple[object, ...]:
    """One block: kind, level of a heading, label, text, lines, rows, header rows."""
    kind = block.kind.value
    if block.kind is Kind.PREFORMATTED:
        kind = "code" if block.code else "lines"
    level = block.level if block.kind is Kind.HEADING else 0
    lines = [line.chars for line in block.lines]
    rows = [[cell.chars for cell in row] for row in block.rows]
    return (kind, level, block.label.chars, block.text.chars, lines, rows, block.header_rows)


def plain_gold(block: GoldBlock) -> tuple[object, ...]:
    """One block of the gold in the same form."""
    lines = [line.translate(SIGNS) for line in block.lines]
    rows = [[cell.translate(SIGNS) for cell in row] for row in block.rows]
    return (
        block.kind,
        block.level,
        block.label.translate(SIGNS),
        block.text.translate(SIGNS),
        lines,
        rows,
        block.header_rows,
    )


def rows_of(blocks: Iterable[Block]) -> list[str]:
    """The rows of all tables with bars between their cells, those of heads with ``=``."""
    return [
        (" = " if number < block.header_rows else " | ").join(cell.chars for cell in row)
        for block in blocks
        for number, row in enumerate(block.rows)
    ]


def texts_of(block: Block) -> Iterator[Text]:
    """All texts of a block in reading order."""
    yield block.label
    yield block.text
    yield from block.lines
    for row in block.rows:
        yield from row


def shown_words(document: Document) -> list[str]:
    """The words of a document in order, furniture left out."""
    return [
        word
        for block in document.blocks
        if block.kind is not Kind.FURNITURE
        for text in texts_of(block)
        for word in text.chars.replace("\u00ad", "").replace("\u200b", "").replace("\u00a0", " ").split()
    ]


def assert_places_hold(document: Document) -> None:
    """Every letter and digit stands where its place says, or an entity, an escape or the call of a macro begins there."""
    for block in document.blocks:
        for text in texts_of(block):
            assert len(text.chars) == len(text.sources) == len(text.marks)
            for char, place in zip(text.chars, text.sources, strict=True):
                if place >= 0 and char.isalnum():
                    there = document.source[place]
                    assert there == char or there in "&\\." or not char.isascii() or there.isdigit(), (
                        char,
                        text.chars,
                    )
