"""Page faults counted from their definition alone, on what ``fit reflow --json`` writes; shares nothing with the layout.

* A page ends in a heading, or in the label of an item that has no text of its own while the next page says it: in what is
  deeper and no list, or in the next item, where both labels are words and keys of one list share a text.
* An item of a list with all that is deeper below it, a row of a table, or a field of one that is higher than a page,
  would fit on one page and stands on two.
* The first or the last line of a paragraph stands alone on its page (orphans and widows 2, CSS Fragmentation Level 3).
  An item that is higher than a page is like a paragraph here: its own lines are held to the same rule where they
  are more than a page, and it may be parted at the end of any paragraph or field in it. Keys that share a text are one
  item with it.

Depths: an item is followed by what belongs to it for as long as blocks are deeper than it is, up to a heading.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any

from fit.report.reflow_json import reflow_json
from fit.report.reflowed import Reflowed

NOT_OF_THE_DOCUMENT = {"repeated", "added", "blank", "rule"}
LISTED = ("item", "note")
KEY = re.compile("[a-z]{4}")
"""What the labels have that are words, no bullets or numbers."""


def as_json(result: Reflowed) -> dict[str, Any]:
    """What a user of ``--json`` gets."""
    loaded: dict[str, Any] = json.loads("".join(reflow_json(result)))
    return loaded


def count_faults(report: dict[str, Any]) -> Counter[str]:
    """The faults by name."""
    lines, rows = report["lines"], report["page_rows"]
    shown = [
        [number for number in range(start, end) if not NOT_OF_THE_DOCUMENT & set(lines[number]["flags"])]
        for start, end in report["pages"]
    ]
    shown = [page for page in shown if page]
    page_of = {number: page for page, numbers in enumerate(shown) for number in numbers}
    at_fault: dict[int, str] = {}
    """By the page that ends badly; a page can end badly only once."""
    for page, numbers in enumerate(shown[:-1]):
        if lines[numbers[-1]]["kind"] == "heading":
            at_fault[page] = "heading last"
        elif is_parted_label(report, lines[numbers[-1]]["block"], lines[shown[page + 1][0]]["block"]):
            at_fault[page] = "label last"
    for group in whole_groups(report):
        if group[-1] - group[0] < rows and page_of[group[0]] != page_of[group[-1]]:
            for page in range(page_of[group[0]], page_of[group[-1]]):
                at_fault.setdefault(page, "split")
    for paragraph in paragraphs(report):
        pages = [page_of[number] for number in paragraph]
        if len(pages) > 1 and pages[0] != pages[1]:
            at_fault.setdefault(pages[0], "line alone")
        if len(pages) > 1 and pages[-1] != pages[-2]:
            at_fault.setdefault(pages[-2], "line alone")
    return Counter(at_fault.values())


def whole_groups(report: dict[str, Any]) -> Iterator[list[int]]:
    """The lines of each item, of each item with what belongs to it, and of each row of a table and its fields."""
    blocks, of_block = report["blocks"], lines_by_block(report)
    for number, block in enumerate(blocks):
        own = of_block.get(number, [])
        for row in table_rows(report, block, own) if block["kind"] == "table" and own else ():
            yield row
            yield from fields(report, row)
        if block["kind"] not in LISTED or not own or shares_text(blocks, number):
            continue
        own = with_keys(report, number, of_block)
        yield own
        below = list(own)
        for deeper in range(number + 1, len(blocks)):
            if blocks[deeper]["kind"] == "furniture":
                continue
            if blocks[deeper]["kind"] == "heading" or blocks[deeper]["level"] <= block["level"]:
                break
            below += of_block.get(deeper, [])
        yield below


def with_keys(report: dict[str, Any], number: int, of_block: dict[int, list[int]]) -> list[int]:
    """The lines of an item with those of the keys above it that share its text."""
    own = of_block[number]
    while number and shares_text(report["blocks"], number - 1):
        number -= 1
        own = of_block[number] + own
    return own


def is_bare(block: dict[str, Any]) -> bool:
    """Whether an item is a label alone."""
    return block["kind"] == "item" and "label" in block and "text" not in block


def shares_text(blocks: list[dict[str, Any]], number: int) -> bool:
    """Whether an item is a key whose text is that of the next item. No furniture stands between them in our tests."""
    pair = blocks[number : number + 2]
    if len(pair) < 2 or not is_bare(pair[0]) or pair[1]["kind"] != "item":
        return False
    if pair[0]["level"] != pair[1]["level"] or not all(
        "label" in block and KEY.search(block["label"]["text"]) for block in pair
    ):
        return False
    below = blocks[number + 2] if number + 2 < len(blocks) else {"kind": "heading"}
    told = below["kind"] != "heading" and below["level"] > pair[1]["level"] and not is_bare(below)
    return "text" in pair[1] or told or shares_text(blocks, number + 1)


def is_parted_label(report: dict[str, Any], last: int, first: int) -> bool:
    """Whether a page ends in a label, block ``last``, whose text begins on the next page with block ``first``."""
    blocks = report["blocks"]
    if last == first or not is_bare(blocks[last]):
        return False
    deeper = blocks[first]["kind"] != "heading" and blocks[first]["level"] > blocks[last]["level"]
    return shares_text(blocks, last) or (deeper and blocks[first]["kind"] not in LISTED)


def table_rows(report: dict[str, Any], block: dict[str, Any], own: list[int]) -> Iterator[list[int]]:
    """The lines of each row of a table: those that show a character of its cells, and those between them."""
    row_of = {
        offset + step: row
        for row, cells in enumerate(block["rows"])
        for cell in cells
        for offset, count in cell.get("sources", [])
        for step in range(count if offset >= 0 else 0)
    }
    shows = {number: rows_shown(report["lines"][number], row_of) for number in own}
    header = block.get("header_rows", 0)
    as_records = any(min(rows) < header <= max(rows) for rows in shows.values() if rows)
    lines_of: dict[int, list[int]] = {}
    below = len(block["rows"]) - 1
    for number in reversed(own):
        rows = shows[number]
        if not rows:
            continue  # a rule, which belongs to no row
        if max(rows) >= header or not as_records:  # else the name of a field, which stands above or beside it
            below = max(rows)
        lines_of.setdefault(below, []).insert(0, number)
    yield from lines_of.values()


def rows_shown(line: dict[str, Any], row_of: dict[int, int]) -> set[int]:
    """The rows of a table of which a line shows a character."""
    places = [
        offset + step if offset >= 0 else offset for offset, count in line["sources"] for step in range(count)
    ]
    return {
        row_of[place]
        for char, place in zip(line["text"], places, strict=True)
        if char != " " and place in row_of
    }


def paragraphs(report: dict[str, Any]) -> Iterable[list[int]]:
    """The lines of each paragraph, each item whose own lines are higher than a page, each field of such a row."""
    height = report["page_rows"]
    for number, own in lines_by_block(report).items():
        block = report["blocks"][number]
        if block["kind"] == "paragraph" or (block["kind"] in LISTED and high(report, number) >= height):
            yield own
        for row in table_rows(report, block, own) if block["kind"] == "table" else ():
            if row[-1] - row[0] >= height:
                yield from fields(report, row)


def high(report: dict[str, Any], number: int) -> int:
    """The rows from the first line to the last of an item, keys that share its text with it."""
    while shares_text(report["blocks"], number):
        number += 1
    whole = with_keys(report, number, lines_by_block(report))
    return whole[-1] - whole[0]


def fields(report: dict[str, Any], row: list[int]) -> Iterator[list[int]]:
    """The lines of each field of a record."""
    field: list[int] = []
    for number in row:
        field.append(number)
        if "last" in report["lines"][number]["flags"]:
            yield field
            field = []
    if field:
        yield field


def lines_by_block(report: dict[str, Any]) -> dict[int, list[int]]:
    """The lines of each block that are on a page."""
    on_a_page = [False] * len(report["lines"])
    for start, end in report["pages"]:
        on_a_page[start:end] = [True] * (end - start)
    found: dict[int, list[int]] = {}
    for number, line in enumerate(report["lines"]):
        if on_a_page[number] and line["block"] >= 0 and not NOT_OF_THE_DOCUMENT & set(line["flags"]):
            found.setdefault(line["block"], []).append(number)
    return found
