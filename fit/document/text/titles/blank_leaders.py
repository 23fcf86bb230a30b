"""Contents whose page numbers stand under each other at the right, with nothing but blanks before them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.markers import find_marker
from fit.document.text.titles.leaders import Leader

_BLANK_LEADER = re.compile(
    r"^(?P<title>\s*\S.*?\S)(?P<dots> {3,})(?P<value>\d{1,4}|[ivxl]{1,6}|[A-Z]?\d{0,3}-\d{1,3})$"
)
HEADS = re.compile(r"(?:table of )?contents:?|list of \w+|chapters?|index", re.IGNORECASE)
REACH = 2
"""Lines without a leader that may stand between two with one: a title wrapped."""


def blank_leaders(
    lines: Sequence[Line], taken: Sequence[object], leaders: Sequence[Leader | None]
) -> list[Leader | None]:
    """Entries of contents whose page numbers stand under each other at the right, nothing but blanks before them."""
    found: list[Leader | None] = [None] * len(lines)
    matches = [
        _BLANK_LEADER.match(line.cells)
        if "   " in line.text and taken[index] is None and leaders[index] is None
        else None
        for index, line in enumerate(lines)
    ]
    index = 0
    while index < len(lines):
        match = matches[index]
        if match is None:
            index += 1
            continue
        end, run = index, [index]
        while (
            end + 1 < len(lines)
            and end - run[-1] < REACH
            and lines[end + 1].gap <= 2
            and taken[end + 1] is None
        ):
            end += 1
            other = matches[end]
            if other is not None and other.end() == match.end():
                run.append(end)
            elif other is not None or lines[end].end > match.end("dots"):
                break
        entries = [entry for place in run if (entry := matches[place]) is not None]
        if _is_contents(lines, run, entries):
            for place, entry in zip(run, entries, strict=True):
                found[place] = Leader(
                    entry.end("title"), entry.span("dots"), entry.span("value"), entry["value"]
                )
        index = run[-1] + 1
    return found


def _is_contents(lines: Sequence[Line], run: Sequence[int], entries: Sequence[re.Match[str]]) -> bool:
    """Whether titles and numbers are contents: the numbers never fall, the titles are words and no columns."""
    titles = [_title(entry["title"].strip(" ")) for entry in entries]
    pages = [int(entry["value"]) for entry in entries if entry["value"].isdigit()]
    rising = sum(first <= second for first, second in pairwise(pages))
    headed = any(
        HEADS.fullmatch(re.sub(r"[^\w ]+", "", lines[place].text).strip())
        for place in range(max(0, run[0] - 3), run[0])
    )
    worded = sum(any(char.isalpha() for char in title) for title in titles)
    if len(entries) < (2 if headed else 4) or worded < len(titles) or any("   " in title for title in titles):
        return False
    if headed:
        return rising >= 0.8 * (len(pages) - 1)
    numbered = sum(find_marker(entry["title"].strip(" ")) is not None for entry in entries)
    return rising == len(pages) - 1 and 2 * numbered >= len(entries)


def _title(text: str) -> str:
    """A title without its number."""
    marker = find_marker(text)
    return text[marker.text :] if marker else text
