"""Flowing text to lines: indentation, hanging labels, hyphens and marks around what the line breaker chose."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from fit.document.blocks import Kind, Mark, Text
from fit.document.characters import cut, split_lines
from fit.layout.breaks import find_places
from fit.layout.cells import cells_before
from fit.layout.costs import End, Rules
from fit.layout.inside import MARK_FROM, ZERO_WIDTH_SPACE
from fit.layout.lines import Line, LineFlag
from fit.layout.settings import LayoutSettings
from fit.layout.texts import add, inserted, join, margin, pick, strip_blanks
from fit.layout.total_fit import total_fit
from fit.width import SOFT_HYPHEN, text_cells

NO_BREAK_SPACE = "\u00a0"
CONTINUED = 2
"""Cells by which a continued line that stays a line stands to the right of its beginning."""
_BLANKS = " " + NO_BREAK_SPACE
_LONGEST_BULLET = 6
"""Cells of a bullet or number in a cell of a table, with the blank after it."""
_BULLET = re.compile(r"(?:[^\w\s]{1,3}|[(\[]?\w{1,3}[.)\]]) ")
"""What starts an item of a list, where lines stay lines."""

_FLAGS = {
    End.BLANK: LineFlag.NONE,
    End.HYPHEN: LineFlag.HYPHEN,
    End.JOINED: LineFlag.JOINED,
    End.MARKED: LineFlag.MARKED,
}


@dataclass(frozen=True, slots=True)
class Setter:
    """Sets text of one block into lines."""

    settings: LayoutSettings
    rules: Rules
    block: int
    kind: Kind
    heading_level: int = 0

    @property
    def width(self) -> int:
        """Cells of a line."""
        return self.settings.width

    def line(self, text: Text, flags: int, slack: int = 0) -> Line:
        """A line of the block that reads ``text``, without the blanks at its end."""
        chars = _visible(text.chars).rstrip(" ")
        if SOFT_HYPHEN in chars or ZERO_WIDTH_SPACE in chars:
            text = pick(
                text, [i for i, char in enumerate(chars) if char not in (SOFT_HYPHEN, ZERO_WIDTH_SPACE)]
            )
            chars = _visible(text.chars)
        sources = text.sources[: len(chars)]
        return Line(chars, sources, self.block, self.kind, flags, slack, self.heading_level)

    def blank(self) -> Line:
        """A blank line inside the block."""
        return self.line(Text(), LineFlag.BLANK)

    def flow(self, text: Text, indent: int = 0, *, label: Text | None = None, outdent: int = 0) -> list[Line]:
        """One unit of flowing text, ``indent`` cells from the left; ``label`` stands there in the first line.

        A label, its own indentation included, that leaves no room for a blank after it begins the text instead.
        Without a label, the first line may begin ``outdent`` cells further to the left. A text of several lines is one
        unit after the other, bound together.
        """
        if "\n" not in text.chars:
            return self._flow_line(text, indent, label, outdent, _own_bullet(text))
        first, *others = split_lines(text)
        units = self._flow_line(first, indent, label, outdent, _bullet(first))
        for other in others:
            units = [*bind(units), *self._flow_line(other, indent, None, 0, _bullet(other))]
        return units

    def _flow_line(self, text: Text, indent: int, label: Text | None, outdent: int, begin: int) -> list[Line]:
        """A text of one line: its own margin stays, and what follows a bullet of ``begin`` cells hangs beside it."""
        if text.marks and text.marks[-1] & Mark.PROGRAM:
            return self._flow_program(text, indent, label)
        most = (self.width - indent) // 2
        off = margin(text)
        if off < begin <= min(most, _LONGEST_BULLET) and text.chars[begin - 1] == " ":
            lead = label or Text()
            label = add(lead, inserted(" " * (indent - text_cells(lead.chars))), cut(text, 0, begin - 1))
            text, indent = strip_blanks(cut(text, begin, len(text))), indent + begin
        elif off:
            text, indent = cut(text, off, len(text)), indent + min(off, most)
        return self._flow_unit(text, indent, label, outdent)

    def _flow_program(self, text: Text, indent: int, label: Text | None) -> list[Line]:
        """A line of a program in a cell, beside the label or behind it."""
        lead = label or Text()
        lead = add(lead, inserted(" " * max(bool(lead.chars), indent - text_cells(lead.chars))))
        later = inserted(" " * min(indent + margin(text) + CONTINUED, self.width // 2))
        lines = self.program(text, lead, later)
        return [line._replace(flags=line.flags | LineFlag.FLOWING) for line in lines]

    def program(self, text: Text, lead: Text, later: Text) -> list[Line]:
        """One line of a program over several: each but the last ends in the mark, and what parts them is all blanks.

        The first stands behind ``lead``, the others behind ``later``. Without the mark, and without that, the lines
        one after the other are the line as it was.
        """
        mark = inserted(self.settings.mark if self.width >= MARK_FROM else "")
        cells = cells_before(text.chars)
        lines: list[Line] = []
        flags = LineFlag.FIRST
        start = 0
        while cells[-1] - cells[start] > (room := self.width - text_cells(lead.chars)):
            stop = _cut(text.chars, cells, start, room - len(mark.chars))
            if stop == len(text.chars):
                break  # a single character is wider than the screen
            while stop > start + 1 and text.chars[stop] == " " and text.sources[stop] < 0:
                stop -= 1  # a blank that is nowhere in the document would pass for one of ours
            if mark.chars:
                flags |= LineFlag.MARKED
            elif text.chars[stop - 1] not in _BLANKS and text.chars[stop] not in _BLANKS:
                flags |= LineFlag.JOINED
            lines.append(self.line(add(lead, cut(text, start, stop), mark), flags))
            lead, flags, start = later, LineFlag.NONE, stop
        lines.append(self.line(add(lead, cut(text, start, len(text))), flags | LineFlag.LAST))
        return lines

    def _flow_unit(self, text: Text, indent: int, label: Text | None, outdent: int) -> list[Line]:
        lead = label or Text()
        if lead.chars and text_cells(lead.chars) >= indent:
            outdent = indent - margin(lead)
            text, lead = join(strip_blanks(lead), text), Text()
        room = self.width - indent
        places = find_places(text, room, self.rules)
        if not places:
            return [self.line(lead, LineFlag.FIRST | LineFlag.LAST)] if lead.chars else []
        left = inserted(" " * indent)
        before = add(lead, inserted(" " * (indent - outdent - text_cells(lead.chars))))
        ends = {End.HYPHEN: inserted("-"), End.MARKED: inserted(self.settings.mark)}
        lines: list[Line] = []
        flags = LineFlag.FIRST | LineFlag.FLOWING
        start, cells = 0, outdent
        for place in total_fit(places, room, self.rules.costs, max(1, self.settings.max_hyphens), outdent):
            kind, end = places.kinds[place], places.ends[place]
            if place == len(places) - 1:
                flags |= LineFlag.LAST
            elif kind is End.BLANK and places.costs[place]:
                flags |= LineFlag.PARTED
            body = cut(text, start, end)
            whole = (
                add(before, body, ends[kind]) if kind in ends else add(before, body) if before.chars else body
            )
            lines.append(self.line(whole, flags | _FLAGS[kind], room - places.end_cells[place] + cells))
            start, cells = places.starts[place], places.start_cells[place]
            before, flags = left, LineFlag.FLOWING
        return lines


def _cut(chars: str, cells: Sequence[int], start: int, room: int) -> int:
    """Where a line of a program is cut: after the last blanks in the later half of the room, else where it is full."""
    full = start + 1
    while full < len(chars) and cells[full + 1] - cells[start] <= room:
        full += 1
    indent = start
    while indent < full and chars[indent] in _BLANKS:
        indent += 1
    for at in range(full, indent, -1):
        if at < len(chars) and chars[at - 1] in _BLANKS and chars[at] not in _BLANKS:
            word = next((end for end in range(at, len(chars)) if chars[end] in _BLANKS), len(chars))
            return at if at > start + (full - start) // 2 or cells[word] - cells[at] <= room else full
    return full


def _visible(chars: str) -> str:
    return chars.replace(NO_BREAK_SPACE, " ")


def bind(lines: list[Line]) -> list[Line]:
    """The lines, bound to what follows them: a page is best not ended there."""
    return [*lines[:-1], lines[-1]._replace(flags=lines[-1].flags | LineFlag.WITH_NEXT)] if lines else []


def _own_bullet(text: Text) -> int:
    """The characters of a bullet or number of ours, which stands nowhere in the document, before a text."""
    at = next((at for at, source in enumerate(text.sources) if source >= 0), 0)
    return 0 if text.chars[:at].endswith(": ") else at  # the name of a column, repeated


def _bullet(text: Text) -> int:
    """The characters of a bullet or number at the start of one of several lines."""
    match = _BULLET.match(text.chars)
    return _own_bullet(text) or (match.end() if match else 0)
