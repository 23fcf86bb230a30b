"""Raw bytes and pasted text. Offsets in the session are offsets in the file: no byte moves.

Two things are decided from the data, said as remarks, and can be overridden:

* Whether LF alone means a new line, as in text that went through no terminal. The session then carries
  ``bare_lf``, and the dialect adds the carriage return.
* Whether a terminal had cut long lines in two, as it does where lines are longer than its rows and the
  rows are then copied. Such a line end is taken out by writing NUL over it, which terminals ignore
  (ECMA-48: NUL is a time fill), so that every other byte stays where it was. Where the row lost a blank at
  its end, LF becomes that blank.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from itertools import islice, pairwise

from fit.session import Session
from fit.width import char_cells

CUT_COLUMNS = 80
"""The width at which terminals cut lines."""
_SAMPLE_ROWS = 20_000  # enough to see how lines end; 10 MB of full rows took 2.8 s without this limit

_BARE_FEED = re.compile(rb"(?<!\r)\n(?!\r(?!\n))")
_ADDRESSED = re.compile(rb"\x1b\[[0-9;]*[Hfd]")
_BROKEN = re.compile(r"[^\W\d_](?: ?[^\W\d_A-Z]).?")
"""A word, or the blank after it, that goes on in the next row; a program that wraps at words leaves neither."""
_GOES_ON = re.compile(r"( ?)\S")
_TABLE_GAP = "   "
_NO_TEXT = re.compile(rb"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]")


@dataclass(frozen=True, slots=True)
class _Row:
    """A line of the data: its text, its cells, and the span of its line end."""

    text: str
    cells: int
    end: int
    next_start: int


def read_raw(
    data: bytes,
    name: str,
    *,
    bare_lf: bool | None = None,
    join: bool | None = None,
    columns: int = CUT_COLUMNS,
) -> Session:
    """The session of raw bytes; None decides from the data."""
    remarks = []
    if bare_lf is None:
        bare_lf, why = _bare_lf(data)
        remarks += [why] if why else []
    if join or (join is None and _is_cut(data, columns)):
        data, joins = _joined(data, columns)
        lines = "1 line" if joins == 1 else f"{joins} lines"
        remarks.append(f"{lines} that a terminal of {columns} columns had cut in two were joined.")
    return Session(data, bare_lf=bare_lf, name=name, remarks=tuple(remarks))


def _bare_lf(data: bytes) -> tuple[bool, str]:
    """Whether LF alone means a new line, and the sentence that says why."""
    feeds = data.count(b"\n")
    bare = len(_BARE_FEED.findall(data))
    if not bare:
        return False, ""
    paired = feeds - bare
    if bare <= paired:
        return (
            False,
            f"{bare} of {feeds} line feeds have no carriage return; they move down and keep the column.",
        )
    if data.count(b"\r") > paired and _ADDRESSED.search(data):
        return (
            False,
            f"{bare} line feeds have no carriage return, but the cursor is addressed: they keep the column.",
        )
    return True, f"A line feed alone starts a new line, because {bare} of {feeds} have no carriage return."


def _rows(data: bytes) -> Iterator[_Row]:
    start = 0
    while start < len(data):
        feed = data.find(b"\n", start)
        stop = len(data) if feed < 0 else feed
        end = stop - 1 if stop > start and data[stop - 1] == 0x0D else stop
        text = data[start:end].decode("utf-8", "replace").expandtabs()
        start = min(stop + 1, len(data))
        yield _Row(text, len(text) if text.isascii() else sum(map(char_cells, text)), end, start)


def _is_cut(data: bytes, columns: int) -> bool:
    """Whether the data shows that a terminal cut it: no row is longer, and words are broken at the width.

    A program that wraps at words also fills rows now and then, but then a new word begins after each, and
    most of its rows stop short because the next word would not have fitted.
    """
    if max(map(len, BytesIO(data)), default=0) < columns or _NO_TEXT.search(data):
        return False
    full = broken = wrapped = 0
    words: set[str] = set()
    mended = ""
    for row, following in islice(pairwise(_rows(data)), _SAMPLE_ROWS):
        if max(row.cells, following.cells) > columns or "\r" in row.text:
            return False
        parts = following.text.split()
        if not parts:
            continue
        words.update(parts[1:-1])
        if row.cells == columns:
            full += 1
            if _TABLE_GAP not in row.text and _BROKEN.fullmatch(row.text[-1] + following.text[:2]):
                broken += 1
                mended = row.text.split()[-1] + parts[0]
        elif row.cells + 1 + len(parts[0]) > columns and following.text[0] != " ":
            wrapped += 1
    if broken == 1:
        return wrapped <= 1 and mended.rstrip(".,;:!?") in words
    return broken >= 2 and broken * 3 >= full > wrapped


def _joined(data: bytes, columns: int) -> tuple[bytes, int]:
    """The data with the line ends taken out that stand at the width, and how many they were."""
    blanks_kept = any(row.cells == columns and row.text[-1] == " " for row in _rows(data))
    mended = bytearray(data)
    joins = 0
    for row, following in pairwise(_rows(data)):
        lost_blank = row.cells == columns - 1 and not blanks_kept
        goes_on = _GOES_ON.match(following.text)
        if goes_on and (row.cells == columns or (lost_blank and not goes_on[1])):
            joins += 1
            fill = b" " if lost_blank else b"\0"
            mended[row.end : row.next_start] = fill.ljust(row.next_start - row.end, b"\0")
    return bytes(mended), joins
