"""How far the text of items hangs to the right of their labels, the same for all items of a list."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from enum import Enum, auto
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.layout.flowing import Setter, bind
from fit.layout.lines import Line, LineFlag
from fit.layout.records import GUTTER, longest_key, longest_word
from fit.layout.texts import add, inserted
from fit.width import text_cells

_BULLET = re.compile(r"[-*+o\u2022\u00b7\u2013\u2014>#]")
_NUMBER = re.compile(r"[(\[]?(\d{1,3}(\.\d+)*|[A-Za-z]|[ivxlc]+|[IVXLC]+)[.)\]:]")

DEEPEST = 40
"""Broken markup may nest without end; indentation stops long before."""
_LISTED = (Kind.ITEM, Kind.NOTE)


class Label(Enum):
    """What marks an item. A list has labels of one sort."""

    BULLET = auto()
    NUMBER = auto()
    """A number or letter with a point or bracket."""
    KEY = auto()
    """A word that the text explains."""


def sort_of(label: Text) -> Label:
    """The sort of a label."""
    if _BULLET.fullmatch(label.chars):
        return Label.BULLET
    return Label.NUMBER if _NUMBER.fullmatch(label.chars) else Label.KEY


def depth_of(block: Block) -> int:
    """The depth of a block that is no heading, no deeper than any screen has room for."""
    return min(block.level, DEEPEST)


def is_bare(block: Block) -> bool:
    """Whether an item is a label without text."""
    return block.kind is Kind.ITEM and bool(block.label.chars) and not block.text.chars


def find_lists(blocks: Sequence[Block]) -> dict[int, list[int]]:
    """For the first block of each list, the blocks of its items.

    What is deeper than a list belongs to its items and does not end it.
    """
    lists: dict[int, list[int]] = {}
    open_lists: dict[tuple[Kind, int, Label], list[int]] = {}
    for number, block in enumerate(blocks):
        if block.kind is Kind.FURNITURE:
            continue
        key = (block.kind, depth_of(block), sort_of(block.label))
        ends = 0 if block.kind is Kind.HEADING else depth_of(block)
        open_lists = {k: v for k, v in open_lists.items() if k[1] < ends or k == key}
        if block.kind in _LISTED:
            if key not in open_lists:
                lists[number] = open_lists[key] = []
            open_lists[key].append(number)
    return lists


def find_records(blocks: Sequence[Block], lists: dict[int, list[int]]) -> tuple[set[int], set[int]]:
    """The items that begin a record but the first, and those that another of their record follows.

    A list is one of records where the key of its first item comes again: so a table set as records reads. It is none
    where this key never has a text: that of a record would be empty throughout.
    """
    begins: set[int] = set()
    bound: set[int] = set()
    for first, items in lists.items():
        key = blocks[first].label
        again = {item for item in items[1:] if blocks[item].label.chars == key.chars}
        told = any(not is_bare(blocks[item]) for item in (first, *again))
        if key.chars and again and told and sort_of(key) is Label.KEY:
            begins |= again
            bound |= {item for item, later in pairwise(items) if later not in again}
    return begins, bound


def hang_of(blocks: Sequence[Block], items: Sequence[int], room: int) -> int:
    """The cells from the beginning of the labels to that of the text, for lines of ``room`` cells."""
    labels = [text_cells(blocks[item].label.chars) for item in items]
    longest = max(labels)
    if not longest:
        return 0
    if sort_of(blocks[items[0]].label) is not Label.KEY:  # one blank parts it from its text
        return min(longest + 1, room // 3)
    texts = [
        [(text_cells(text.chars), longest_word(text)) for text in _hanging(blocks, item)] for item in items
    ]
    limit = longest_key(room)
    beside = {label + GUTTER for label in labels if 0 < label <= limit and label + GUTTER < room}
    least = min(4, room // 3)
    if all(is_bare(blocks[item]) for item in items):
        return least  # nothing stands beside a label
    choices = beside | {least}
    return min(sorted(choices, reverse=True), key=lambda hang: _rows(labels, texts, hang, room))


def _hanging(blocks: Sequence[Block], item: int) -> Iterator[Text]:
    """The texts that hang beside or below the label of an item: its own, and those of all that is deeper."""
    yield blocks[item].text
    for number in range(item + 1, len(blocks)):
        block = blocks[number]
        if block.kind is Kind.FURNITURE:
            continue
        if block.kind is Kind.HEADING or depth_of(block) - block.apart <= depth_of(blocks[item]):
            return
        yield block.label if is_bare(block) else block.text


def _rows(labels: Sequence[int], texts: Sequence[Sequence[tuple[int, int]]], hang: int, room: int) -> int:
    """About how many lines a list takes, by the cells of its texts and of their longest words.

    A label that is longer stands on a line of its own, as one without a text always does, and a word that is leaves
    most of a line empty.
    """
    width = max(1, room - hang)
    return sum(
        (label + GUTTER > hang and own[0][0] > 0)
        + sum(-(-text // width) + (word > width) for text, word in own)
        for label, own in zip(labels, texts, strict=True)
    )


def set_item(block: Block, setter: Setter, indent: int, hang: int) -> list[Line]:
    """One item: its label, and the text that hangs ``hang`` cells to its right."""
    label = add(inserted(" " * indent), block.label) if block.label.chars else Text()
    short = text_cells(label.chars) < indent + hang
    if not label.chars or short or not block.text.chars or sort_of(block.label) is not Label.KEY:
        lines = setter.flow(block.text, indent + hang, label=label if label.chars else None)
        if is_bare(block):
            lines = [line._replace(flags=line.flags | LineFlag.LABEL) for line in lines]
        return lines
    head = setter.flow(block.label, indent)
    body = setter.flow(block.text, indent + hang)
    return [*bind(head), *body]
