"""Building `Text`: characters with their places, white space folded without losing where it stood."""

from __future__ import annotations

import re
from array import array
from collections.abc import Iterable

from fit.document.blocks import Mark, Text

_BLANKS = " \t\n\r\f\v"
"""White space that folds; a no-break space does not."""

_FOLDING = re.compile(r" [ \t\n\r\f\v]+|[\t\n\r\f\v][ \t\n\r\f\v]*")
"""Runs of white space that are not one blank already."""

NO_BREAK_SPACE = "\u00a0"
ZERO_WIDTH_SPACE = "\u200b"
"""Where a word may be broken without a hyphen."""


class TextBuilder:
    """Collects characters, each with its offset in the document and its marks."""

    def __init__(self) -> None:
        self._chars: list[str] = []
        self._sources = array("q")
        self._marks = bytearray()
        self.blank = True
        """Whether it holds nothing but white space."""

    def __len__(self) -> int:
        return len(self._sources)

    def add(self, chars: str, sources: Iterable[int], mark: int = Mark.NONE) -> None:
        """Append ``chars``; ``sources`` gives one offset a character."""
        self._chars.append(chars)
        self._sources.extend(sources)
        self._marks += bytes((mark,)) * len(chars)
        self.blank = self.blank and not chars.strip()
        assert len(self._sources) == len(self._marks)

    def add_run(self, chars: str, start: int, mark: int = Mark.NONE) -> None:
        """Append characters that stand one after the other in the document, from offset ``start``."""
        self.add(chars, range(start, start + len(chars)), mark)

    def add_own(self, chars: str, mark: int = Mark.NONE) -> None:
        """Append characters that are not in the document."""
        self.add(chars, (-1,) * len(chars), mark)

    def add_text(self, text: Text) -> None:
        """Append a text made elsewhere."""
        self._chars.append(text.chars)
        self._sources.extend(text.sources)
        self._marks += text.marks
        self.blank = self.blank and not text.chars.strip()

    def since(self, begin: int) -> str:
        """The characters from index ``begin`` on, at a cost that depends on them alone."""
        parts: list[str] = []
        missing = len(self) - begin
        for part in reversed(self._chars):
            if missing <= 0:
                break
            parts.append(part[-missing:] if missing < len(part) else part)
            missing -= len(part)
        return "".join(reversed(parts))

    def build(self) -> Text:
        """The text as collected."""
        return Text("".join(self._chars), self._sources[:], bytes(self._marks))

    def folded(self) -> Text:
        """The text with every run of white space made one blank, and none at its ends."""
        return fold(self.build())


def cut(text: Text, start: int, end: int) -> Text:
    """The characters ``start <= i < end``."""
    return Text(text.chars[start:end], text.sources[start:end], text.marks[start:end])


def fold(text: Text) -> Text:
    """Make every run of white space one blank, which keeps the place of the first, and drop it at the ends."""
    chars = text.chars
    end = len(chars.rstrip(_BLANKS))
    begin = min(end, len(chars) - len(chars.lstrip(_BLANKS)))
    builder = TextBuilder()
    for run in _FOLDING.finditer(chars, begin, end):
        builder.add_text(cut(text, begin, run.start()))
        builder.add(" ", (text.sources[run.start()],), text.marks[run.start()])
        begin = run.end()
    builder.add_text(cut(text, begin, end))
    return hold_together(builder.build())


def hold_together(text: Text) -> Text:
    """Write each no-break space as a blank at which, by its mark and that of the character before, no line ends."""
    if NO_BREAK_SPACE not in text.chars:
        return text
    marks = bytearray(text.marks)
    for index, char in enumerate(text.chars):
        if char == NO_BREAK_SPACE:
            marks[max(0, index - 1)] |= Mark.NO_BREAK
            marks[index] |= Mark.NO_BREAK
    return Text(text.chars.replace(NO_BREAK_SPACE, " "), text.sources, bytes(marks))


def split_lines(text: Text) -> list[Text]:
    """The lines of a text without their line ends (LF alone, as the readers make them)."""
    lines = []
    begin = 0
    while (end := text.chars.find("\n", begin)) >= 0:
        lines.append(cut(text, begin, end))
        begin = end + 1
    lines.append(cut(text, begin, len(text)))
    return lines


def strip_start(text: Text) -> Text:
    """The text without white space at its start."""
    return cut(text, len(text.chars) - len(text.chars.lstrip()), len(text.chars))


def strip_end(text: Text) -> Text:
    """The text without white space at its end."""
    return cut(text, 0, len(text.chars.rstrip()))
