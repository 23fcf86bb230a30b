"""The places at which a line of flowing text may end, and what each costs."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from fit.document.blocks import Mark, Text
from fit.layout.cells import cells_before
from fit.layout.costs import End, Rules
from fit.layout.inside import inside_word
from fit.layout.words import Word, analyse
from fit.width import SOFT_HYPHEN, char_cells

_WORD = re.compile(r"[^ \t\n]+")
SET_OFF = Mark.BOLD | Mark.UNDERLINE | Mark.CODE
"""Marks that set a word off from those around it."""


@dataclass(frozen=True, slots=True)
class Places:
    """The places in order, as columns of a table. A line runs from a ``start`` to a later ``end``."""

    ends: Sequence[int] = ()
    """Index of the first character that is not on the line."""
    starts: Sequence[int] = ()
    """Index of the first character of the next line."""
    end_cells: Sequence[int] = ()
    """Cells of the text up to the end, with the hyphen or mark to put in; never descending."""
    start_cells: Sequence[int] = ()
    costs: Sequence[int] = ()
    kinds: Sequence[End] = ()

    def __len__(self) -> int:
        return len(self.ends)


def find_places(text: Text, width: int, rules: Rules) -> Places:
    """All places in a text at which a line of at most ``width`` cells may end; the last is the end of the text."""
    chars = text.chars
    cells: Sequence[int] = cells_before(chars)
    if SOFT_HYPHEN in chars:  # a terminal shows one; here they are taken out
        shown = accumulate((char_cells(char) * (char == SOFT_HYPHEN) for char in chars), initial=0)
        cells = [before - soft for before, soft in zip(cells, shown, strict=True)]
    even = isinstance(cells, range)
    marks = telling_marks(text.marks)
    costs = rules.costs
    places: list[tuple[int, int, int, int, int, End]] = []  # the columns of `Places`
    before: Word | None = None
    before_end = 0
    for match in _WORD.finditer(chars):
        start, end = match.span()
        written = match[0]
        word = analyse(written, rules.language)
        if before is not None:
            tied = before.left & word.right or (marks and _no_break(marks[before_end - 1 : start]))
            places.append(
                (before_end, start, cells[before_end], cells[start], costs.tie if tied else 0, End.BLANK)
            )
        before, before_end = word, end
        if even and not marks and not word.apart and end - start <= width:
            if word.inside and not (rules.names and _is_name(written, marks, rules)):
                for at, kind in word.inside:
                    spot = start + at
                    if kind is End.HYPHEN:
                        places.append((spot, spot, spot + 1, spot, costs.hyphen, kind))
                    else:
                        places.append((spot, spot, spot, spot, costs.joint, kind))
            continue
        own = marks[start:end]
        inside = () if _is_name(written, own, rules) else word.inside
        held = {index for index, mark in enumerate(own, 1) if mark & Mark.NO_BREAK}
        for at, cost, kind in inside_word(
            written, inside, word.apart, cells[start : end + 1], width, rules, held
        ):
            spot = start + at
            extra = kind in (End.HYPHEN, End.MARKED)
            places.append((spot, spot, cells[spot] + extra, cells[spot], cost, kind))
    if before is not None:
        places.append((before_end, len(chars), cells[before_end], cells[before_end], 0, End.BLANK))
    return Places(*zip(*places, strict=True))


def telling_marks(marks: bytes) -> bytes:
    """The marks, or nothing where they set nothing apart: a text all bold is as good as plain."""
    kinds = set(marks)
    return marks if len(kinds) > 1 or any(kind & (Mark.NO_BREAK | Mark.CODE) for kind in kinds) else b""


def _no_break(marks: bytes) -> bool:
    return any(mark & Mark.NO_BREAK for mark in marks)


def _is_name(written: str, marks: bytes, rules: Rules) -> bool:
    """Whether a word is set off, or one of the program texts: it is cut only where it is too long for a line."""
    if any(mark & SET_OFF for mark in marks):
        return True
    return bool(rules.names) and written.strip(".,;:!?()*`\"'").lower() in rules.names
