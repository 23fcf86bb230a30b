"""A layout to the bytes that the machine stores: lines, page breaks, padding, parts.

Pages are parted by a form feed (ECMA-48, FF), by a line of the user's or by nothing. Text files of these
machines end at 1Ah and fill records of 128 bytes (Digital Research, *CP/M Operating System Manual*).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate
from typing import Final

from fit.errors import UsageError
from fit.layout.lines import Layout
from fit.width import SOFT_HYPHEN

FORM_FEED: Final = "\f"
RECORD: Final = 128
"""Bytes of a record, the unit in which the small machine's files grow."""
END_OF_TEXT: Final = b"\x1a"

_INVISIBLE: Final = str.maketrans({SOFT_HYPHEN: None, "\u200b": None, "\u00a0": " "})


@dataclass(frozen=True, slots=True)
class FileForm:
    """How the file is written."""

    line_end: str = "\r\n"
    page_break: str = FORM_FEED
    """Between pages: a form feed, nothing, or a line of its own."""
    pad: bool = False
    """Whether to fill the last record up with 1Ah."""
    part_size: int | None = None
    """The most bytes of a part, padding included; None for one file."""
    encoding: str = "ascii"


def device_files(layout: Layout, form: FileForm) -> list[bytes]:
    """The file, or its parts where a size is given, cut at page ends.

    Raises `UsageError` where a page alone is larger than a part may be.
    """
    pages = _pages(layout, form)
    if form.part_size is None:
        return [_padded(_joined(pages, form), form)]
    room = form.part_size // RECORD * RECORD if form.pad else form.part_size
    return [_padded(_joined(pages[start:end], form), form) for start, end in _parts(pages, form, room)]


def _pages(layout: Layout, form: FileForm) -> list[bytes]:
    """The bytes of each page. Without a page break, blank lines between two pages stand before the second."""
    pages: list[bytes] = []
    reached = 0
    for page in layout.pages:
        start = page.start if form.page_break or not pages else reached
        lines = [line.text.translate(_INVISIBLE) + form.line_end for line in layout.lines[start : page.end]]
        pages.append("".join(lines).encode(form.encoding))
        reached = page.end
    return pages


def _joined(pages: list[bytes], form: FileForm) -> bytes:
    return _break(form).join(pages)


def _break(form: FileForm) -> bytes:
    text = form.page_break
    return (text + form.line_end if text not in ("", FORM_FEED) else text).encode(form.encoding)


def _parts(pages: list[bytes], form: FileForm, room: int) -> list[tuple[int, int]]:
    """The pages of each part: as few parts as there can be, filled from the front."""
    sizes = list(accumulate((len(page) + len(_break(form)) for page in pages), initial=0))
    parts = []
    start = 0
    for end in range(1, len(pages) + 1):
        if len(pages[end - 1]) > room:
            raise UsageError(
                f"page {end} alone takes {len(pages[end - 1])} bytes, more than a part of {form.part_size} can hold",
                hint="give a larger --part-size, or fewer --rows",
            )
        if sizes[end] - sizes[start] - len(_break(form)) > room:
            parts.append((start, end - 1))
            start = end - 1
    return [*parts, (start, len(pages))] if pages else [(0, 0)]


def _padded(data: bytes, form: FileForm) -> bytes:
    return data + END_OF_TEXT * (-len(data) % RECORD) if form.pad else data


def part_names(name: str, count: int) -> list[str]:
    """The names of the parts of ``name``: numbered in the stem, which keeps to 8 characters if it did before."""
    stem, dot, ending = name.rpartition(".")
    if not dot or not stem:
        stem, dot, ending = name, "", ""
    digits = len(str(count))
    kept = stem[: 8 - digits] if len(stem) <= 8 else stem
    return [f"{kept}{number:0{digits}}{dot}{ending}" for number in range(1, count + 1)]
