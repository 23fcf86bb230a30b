"""ECMA-48 with the line drawing of consoles that switch it as a font: SGR 11 or 12 on, SGR 10 off.

ECMA-48, 8.3.117, has 10 to 19 as fonts; that 11 shows the code page's own glyphs is common practice, no
source. Which characters are line drawing then says ``acsc``.
"""

from __future__ import annotations

from typing import Final

from fit.dialect.description import Description
from fit.dialect.encoding import TABLES
from fit.dialect.meanings import line_drawing
from fit.dialect.operation import Dialect, Operation


class AlternateFont:
    """A dialect whose text is line drawing while an alternate font is selected."""

    SWITCHES: Final = (b"\x1b[11m", b"\x1b[12m")

    def __init__(self, inner: Dialect, description: Description, encoding: str) -> None:
        self.name = inner.name
        self._inner = inner
        self._glyphs = _glyphs(description, encoding)
        self._alternate = False

    def feed(self, data: bytes, start: int) -> list[Operation]:
        """Take the next bytes of the output, the first of which stands at offset ``start``."""
        return [self._seen(operation) for operation in self._inner.feed(data, start)]

    def finish(self) -> list[Operation]:
        """What an unfinished sequence at the end comes to."""
        return [self._seen(operation) for operation in self._inner.finish()]

    def _seen(self, operation: Operation) -> Operation:
        start, end, event, arguments, private = operation
        if event == "select_graphic_rendition" and not private:
            for code in arguments or (0,):
                if code in (0, 10, 11, 12):
                    self._alternate = code in (11, 12)
        elif event == "draw" and self._alternate:
            text, offsets = arguments
            return (start, end, event, (text.translate(self._glyphs), offsets), private)
        return operation


def font_of(description: Description) -> tuple[bytes, bytes] | None:
    """What decides how a terminal draws lines by an alternate font, None where it has none for that."""
    switch = description.fixed.get("smacs", b"")
    return (switch, description.fixed.get("acsc", b"")) if switch in AlternateFont.SWITCHES else None


def _glyphs(description: Description, encoding: str) -> dict[int, str]:
    table = TABLES.get(encoding, "")
    glyphs = line_drawing(description.fixed.get("acsc", b""))
    return {
        ord(table[byte]) if table else byte: glyph for byte, glyph in glyphs.items() if table or byte < 0x80
    }
