"""The proof that a reader lost nothing: every letter and digit of a document stands in one block, in order."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from fit.document.blocks import Block, Document, Kind, Text

# A letter struck twice in its place is one letter; the letters of an attribute are none.
_STRUCK = re.compile(r"(?<=(\w)\x08)\1|\x1b\[[\d;]*m")


def texts(block: Block) -> Iterator[Text]:
    """The texts that a block carries its characters in: the rows of a table, not its lines again."""
    if block.kind is Kind.TABLE:
        for row in block.rows:
            yield from row
        return
    yield block.label
    yield block.text
    yield from block.lines


def lost_and_doubled(document: Document) -> tuple[list[int], list[int]]:
    """The places of letters and digits that no block holds, and of those that more than one does."""
    places: Counter[int] = Counter()
    for block in document.blocks:
        for text in texts(block):
            assert len(text.chars) == len(text.sources) == len(text.marks)
            places.update(
                place for char, place in zip(text.chars, text.sources, strict=True) if char.isalnum()
            )
    struck = {place for match in _STRUCK.finditer(document.source) for place in range(*match.span())}
    lost = [
        place
        for place, char in enumerate(document.source)
        if char.isalnum() and not places[place] and place not in struck
    ]
    return lost, [place for place, times in places.items() if times > 1]


def out_of_order(document: Document) -> list[int]:
    """The places that a flowing block holds before an earlier place of its own."""
    found = []
    for block in document.blocks:
        if block.kind is Kind.TABLE:
            continue
        last = -1
        for text in texts(block):
            for place in text.sources:
                if 0 <= place < last:
                    found.append(place)
                last = max(last, place)
    return found
