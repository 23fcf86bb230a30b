"""Colour and weight for a terminal. Without colour every text stays as it is: colour never carries meaning alone."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Ink(StrEnum):
    """Select Graphic Rendition, ECMA-48 8.3.117: the parameters of each ink."""

    PLAIN = ""
    BOLD = "1"
    RED = "31"
    GREEN = "32"
    YELLOW = "33"


@dataclass(frozen=True, slots=True)
class Paint:
    """Puts ink on texts, or leaves them plain."""

    enabled: bool = False

    def __call__(self, text: str, *inks: Ink) -> str:
        """The text in the inks given, ended by a reset."""
        codes = ";".join(ink.value for ink in inks if ink.value)
        if not self.enabled or not codes or not text:
            return text
        return f"\x1b[{codes}m{text}\x1b[m"
