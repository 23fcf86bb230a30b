"""Whether a program seems to offer a choice of terminal or screen size: by the words it holds or prints.

Words are no proof: a program may only mention a terminal. They are shown as evidence.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from fit.machine.screen_text import without_codes

MOST_LINES: Final = 8
_TEXT: Final = re.compile(rb"[\x20-\x7e\x8a\xa0-\xfe]{8,}")
_STRING_END: Final = b"$"
"""Where function 9 stops printing."""
_SEVEN_BITS: Final = bytes(byte & 0x7F for byte in range(256))
_MENTIONS: Final = re.compile(
    r"\bterminals?\b|\bscreen (?:size|width|length|height|type)|\b(?:lines|rows) (?:per|on (?:the|your)) (?:page|screen)"
    r"|\bcolumns\b|\bpage length\b|\bcursor (?:control|address|position)|\bansi\b|\bvt-?52\b|\bvt-?100\b|\badm-?3a?\b",
    re.IGNORECASE,
)


def terminal_choice(image: bytes, outputs: Iterable[bytes] = ()) -> tuple[str, ...]:
    """Lines of a program's bytes, or of what it printed, that speak of a terminal or a screen size."""
    found: dict[str, None] = {}
    for data in (*outputs, image.replace(_STRING_END, b"\0")):
        for piece in _TEXT.findall(without_codes(data)):
            line = " ".join(piece.translate(_SEVEN_BITS).decode("ascii").split())
            if _MENTIONS.search(line):
                found[line] = None
    return tuple(found)[:MOST_LINES]
