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


class SelectiveRule(StrEnum):
    """What DECSED, DECSEL and DECSERA do."""

    HONOURED = "honoured"
    """They spare protected glyphs."""
    PLAIN = "plain"
    """They erase protected glyphs too."""
    IGNORED = "ignored"
    """They do nothing."""


@dataclass(frozen=True, slots=True)
class Rules:
    """How a screen treats what terminals differ in."""

    wrap: WrapRule = WrapRule.DEFERRED
    pending: PendingRule = PendingRule.ERASE
    decaln: DecalnRule = DecalnRule.HOME
    selective_erase: SelectiveRule = SelectiveRule.HONOURED
    back_wrap: bool = False
    """Whether BS in column 1 moves to the end of the row above (terminfo: bw)."""
    insert_lines_home: bool = False
    """Whether IL and DL also move the cursor to column 1, as ECMA-48 has it, or leave it (common practice, no source)."""
