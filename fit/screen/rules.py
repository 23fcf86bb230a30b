"""The rules on which terminals differ: settings of a screen, not constants."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class WrapRule(StrEnum):
    """What happens when a glyph fills the last column."""

    DEFERRED = "deferred"
    """The cursor waits in the last column and wraps with the next glyph (VT100 and its heirs)."""
    IMMEDIATE = "immediate"
    """The cursor wraps at once (terminfo: am without xenl)."""
    NONE = "none"
    """The cursor stays; later glyphs replace the last one (terminfo: no am)."""
    WORD = "word"
    """Deferred, and a flowing word that does not fit moves to the next row whole: a remedy."""


class PendingRule(StrEnum):
    """What an erase to the end of the line does while a wrap is pending."""

    ERASE = "erase"
    """The glyph in the last column goes."""
    KEEP = "keep"
    """Nothing goes: the cursor counts as past the last column."""


class DecalnRule(StrEnum):
    """Where the screen alignment display (DECALN) leaves the cursor."""

    HOME = "home"
    STAY = "stay"


@dataclass(frozen=True, slots=True)
class Rules:
    """How a screen treats what terminals differ in."""

    wrap: WrapRule = WrapRule.DEFERRED
    pending: PendingRule = PendingRule.ERASE
    decaln: DecalnRule = DecalnRule.HOME
    selective_erase: bool = True
    """Whether DECSED and DECSEL spare protected glyphs; false: they are treated as ED and EL."""
    insert_lines_home: bool = True
    """Whether IL and DL move the cursor to column 1 (ECMA-48 with the VT220's practice) or leave it."""
