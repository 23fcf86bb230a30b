"""Whether a sentence goes on with what it quotes at the start of a line, or with names that commas alone part."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

_QUOTE = r"(?:'[^']+'|\"[^\"]+\")"
_QUOTED = re.compile(rf"{_QUOTE}[.,;]?")
_WORDS_BEHIND = re.compile(rf"{_QUOTE},? [a-z]+[ ,]")
_AND_QUOTED = re.compile(r"(?:and|or) ['\"]")
_NAMES = re.compile(r"[a-z][\w-]*(?:,[a-z][\w-]*)+[,.]?")
_LAST_NAMES = re.compile(r"(?:\S+ ){3,}[a-z][\w-]*(?:,[a-z][\w-]*)+,")


def quoted_on(lines: Sequence[Line], index: int) -> bool:
    """Whether a line begins with a quotation that belongs to the sentence above it: `Type` over `'lamp /n'` and more words."""
    above, below = lines[index - 1].text, lines[index].text
    if _AND_QUOTED.match(below):
        return above[-1] in "'\""
    if below[0] not in "'\"":
        return False
    whole = _QUOTED.fullmatch(below) is not None
    if whole and _AND_QUOTED.match(above):
        return hangs(above) and closed(below)
    if not prose(above):
        return False
    after = lines[index + 1] if index + 1 < len(lines) and not lines[index + 1].apart else None
    if above.endswith(":"):
        beside = (lines[index - 1].text[0], after.text[0] if after else "")
        words = _WORDS_BEHIND.match(below) is not None
        return words and below[0] not in beside
    on = after is not None and after.indent == lines[index].indent and starts_small(after.text)
    return whole and on and after is not None and prose(after.text) and not closed(above + below[-1])


def names_on(lines: Sequence[Line], first: int, index: int) -> bool:
    """Whether names without a blank between them go on behind a comma, in words that the unit at ``first`` begins with."""
    if not lines[index - 1].text.endswith(",") or _NAMES.fullmatch(lines[index].text) is None:
        return False
    place = index - 1
    while place > first and _NAMES.fullmatch(lines[place].text):
        place -= 1
    return _LAST_NAMES.fullmatch(lines[place].text) is not None
