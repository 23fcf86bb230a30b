"""What belongs to an item besides its own text: all that is deeper, and for a key without text the next item too.

A reader takes an item with its paragraphs, program texts and lists below it for one thing, and so does a page break;
so, too, several keys one below the other that share what the last of them says.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.layout.lines import Line, LineFlag
from fit.layout.lists import Label, depth_of, find_lists, find_records, is_bare, sort_of
from fit.units import Span

_LISTED = (Kind.ITEM, Kind.NOTE)


def find_nests(blocks: Sequence[Block]) -> list[Span]:
    """The blocks of each item that has more than its own text, outer ones before the inner.

    An item that others share (`find_terms`) is of one with these.
    """
    terms = find_terms(blocks)
    nests: list[Span] = []
    open_items: list[tuple[int, int]] = []
    before = -1
    for number, block in enumerate((*blocks, None)):
        if block is not None and block.kind is Kind.FURNITURE:
            continue
        depth = -1 if block is None else _depth(block)
        if before not in terms:
            while open_items and depth <= open_items[-1][0]:
                start = open_items.pop()[1]
                if number > start + 1:
                    nests.append(Span(start, number))
            if block is not None and block.kind in _LISTED:
                open_items.append((depth, number))
        before = number
    return sorted(nests, key=lambda nest: (nest.start, -nest.end))


def find_terms(blocks: Sequence[Block]) -> set[int]:
    """The items that share what the next item of their list says: keys with no text of their own, right above it.

    The last keys of a list, where nothing explains them, share nothing; nor do those of different records.
    """
    terms: set[int] = set()
    if not any(map(is_bare, blocks)):
        return terms
    lists = find_lists(blocks)
    begins, _ = find_records(blocks, lists)
    below = dict(pairwise(number for number, block in enumerate(blocks) if block.kind is not Kind.FURNITURE))
    for items in lists.values():
        if sort_of(blocks[items[0]].label) is not Label.KEY:
            continue
        for item, later in reversed([*pairwise(items)]):
            if is_bare(blocks[item]) and below[item] == later and later not in begins:
                last = blocks[later]
                more = blocks[below[later]] if later in below else last
                explained = _depth(more) > depth_of(last) and not is_bare(more)  # keys explain nothing
                if later in terms or explained or not is_bare(last):
                    terms.add(item)
    return terms


def _depth(block: Block) -> int:
    """The depth for what a block belongs to; a heading belongs to nothing."""
    return -1 if block.kind is Kind.HEADING else depth_of(block) - block.apart


def rows_of_nests(lines: Sequence[Line], nests: Sequence[Span]) -> dict[int, Span]:
    """By row, the rows of the innermost item that holds both this row's line and the last one before it.

    Rows are those of ``lines`` that are not blank; a row that no such item holds is left out. ``nests`` are blocks as
    `find_nests` gives them.
    """
    rows: dict[int, list[int]] = {}
    for row, line in enumerate(lines):
        if not line.flags & LineFlag.BLANK and line.block >= 0:
            rows.setdefault(line.block, []).append(row)
    found: dict[int, Span] = {}
    for nest in nests:  # the inner ones come later, and have the last word
        own = list(_rows_of(rows, nest))
        if own:
            found |= dict.fromkeys(own[1:], Span(own[0], own[-1] + 1))
    return found


def _rows_of(rows: dict[int, list[int]], nest: Span) -> Iterator[int]:
    for block in range(nest.start, nest.end):
        yield from rows.get(block, ())
