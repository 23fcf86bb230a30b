"""Single lines that are running text all the same: a whole sentence, or a line that fills the measure."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.unit import Unit
from fit.document.text.signs.code import typed
from fit.document.text.signs.measure import closed, prose
from fit.document.text.titles.headings import (
    dressed,
    leads,
    loud,
)

_SECTION = re.compile(r"\u00a7 ?\d+[.:]? +[A-Z]")
"""The sign of a section with its number, and a title."""


def lone_sentence(lines: Sequence[Line], unit: Unit, chunks: dict[int, Chunk]) -> bool:
    """Whether a single line is running text: a whole sentence, or a line that fills the measure."""
    line = lines[unit.start]
    text = line.text
    if dressed(line) or leads(text) or "     " in text or ("   " in text and not prose(text)):
        return False
    if typed(text):
        return False
    if loud(text) and (not text.endswith((".", ":")) or _over_title(lines, unit.start)):
        return False
    if text[:1] == "\u00a7" and _SECTION.match(text) and not closed(text):
        return False
    if chunks[unit.start].broken and not closed(text):
        return False
    words = [word for word in text.split() if word != "&"]
    starts = text.lstrip("\"'(*[<")[:1]
    if closed(text) and len(words) >= 3 and (starts.isupper() or starts.isdigit() or prose(text)):
        return sum(any(map(str.isalpha, word)) for word in words) > 1
    if text.endswith(":") and prose(text):
        return True
    return prose(text) and len(words) >= 6 and line.end > 0.5 * chunks[unit.start].right


def _over_title(lines: Sequence[Line], index: int) -> bool:
    """Whether a line of words in capitals ends in a colon above another that stands alone with it: a title of two lines."""
    if not lines[index].text.endswith(":") or parted_above(lines, index + 1):
        return False
    line, below = lines[index], lines[index + 1]
    words = not any(map(str.isdigit, line.text + below.text)) and " " in line.text
    level = line.indent == below.indent and parted_above(lines, index) and parted_above(lines, index + 2)
    return level and words and loud(below.text) and not below.text.endswith((".", ":"))
