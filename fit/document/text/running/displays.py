"""Single lines that are shown in the middle of running text: a command to type, a form, a line of output."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.code import typed, with_options
from fit.document.text.signs.joins import SCHEMES, shortfall
from fit.document.text.signs.measure import closed, prose, starts_small

DEEPER = 2
"""Cells by which a line is set in from the text around it, at least."""
SHORT = 4
"""Words of a command without any sign, at most."""
_NO_DISPLAY = re.compile(r"([^\w\s])\1{3,}|[A-Z]\w+ [\dA-Z]?[\d.-]+|\[\d+\]\d.*|[a-z]+://\S+")
"""A rule, a caption, a section number behind the number of a link, an address, which has places of its own at which it may be broken."""
_EDGES = "*~#=<>+_-.,:()[]\"'"
_COMMANDS = "/#$%&.\\>:"
"""Signs before a command that need not be set in."""
_SIGNED = re.compile(
    rf"(?!<?\(?(?:URL:)?(?:{SCHEMES}):|<[A-Za-z]+(?:-\S+)?>$)[^*_'\"(\u2018\u201c@]"
    r"[^\s@]*[\w>)*][:;=|*<%]+(?=[^\s:]*\w)[^\s@]*[^\s.,]"
)
"""One word with signs inside that no word has: a setting, a path with stars, fields with colons; no address, no key."""
_PLAIN = re.compile(r"[\"'(\u201c\u2018]*[^\W\d_]+(?:['\u2019-][^\W\d_]+)*[\"')\u201d\u2019.,;:!?]*")


def displayed(lines: Sequence[Line], index: int) -> bool:
    """Whether a line between blank lines is shown by the sentence around it and is no sentence itself."""
    line = lines[index]
    if not index or not line.gap or line.crossing or not parted_above(lines, index + 1):
        return False
    above = lines[index - 1]
    text = line.text
    said = prose(text) or (closed(text) and text.rstrip(".:!?")[-1:].isalpha())
    if said or no_display(text) or not _shown(lines, index):
        return False
    words = text.split()
    plain = sum(_PLAIN.fullmatch(word) is not None for word in words)
    deeper = line.indent >= above.indent + DEEPER
    if plain == len(words):
        return deeper and len(words) <= SHORT and all(word[:1].islower() for word in words)
    named = (word.strip(_EDGES) for word in words)
    if all(not word or (word[0].isupper() and word.isalpha()) for word in named):
        return False  # a name or a title
    return deeper or text[0] in _COMMANDS


def command_below(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether a command stands alone right below a sentence that leads to it, deeper than the lines above and below it.

    Without options it could have begun in the line above: nothing was wrapped there.
    """
    above, line = lines[index - 1 : index + 1]
    if line.indent < above.indent + DEEPER or not typed(line.text) or not prose(above.text):
        return False
    if not parted_above(lines, index + 1) and lines[index + 1].indent > above.indent:
        return False
    return with_options(line.text) or shortfall(above, line, right) > 0


def no_display(text: str) -> bool:
    """Whether a line is a rule, a caption, a number of a link or an address, which nobody types."""
    return _NO_DISPLAY.fullmatch(text) is not None


def signed(text: str) -> bool:
    """Whether a line is one word that only a program reads."""
    return _SIGNED.fullmatch(text) is not None


def _shown(lines: Sequence[Line], index: int) -> bool:
    """Whether the sentence above leads to a line, by its colon or because it has no end, or goes on below it."""
    above = lines[index - 1].text
    led = above.endswith(":") or (not closed(above) and (prose(above) or above.endswith(",")))
    after = lines[index + 1] if index + 1 < len(lines) else None
    goes_on = after is not None and starts_small(after.text) and prose(after.text)
    return led or (goes_on and after is not None and after.indent < lines[index].indent)
