"""Cases that begin alike, each over what is to be done in it: `If the lamp is out`, and deeper below it `Ring the bell`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import closed

LEAST = 2
"""Cases right below one another, at least."""
DEEPER = 2
"""Cells by which what is to be done is set deeper, at least."""
_OPENING = re.compile(r"[A-Z][a-z]+ [^\W\d_]+ ")


def opening(part: Sequence[Line]) -> str:
    """The two words that each case of a chunk begins with; nothing where it is no such list."""
    match = _OPENING.match(part[0].text) if len(part) >= 2 * LEAST else None
    if match is None:
        return ""
    indent = part[0].indent
    level = [index for index, line in enumerate(part) if line.indent == indent]
    if len(level) < LEAST or any(not part[index].text.startswith(match.group()) for index in level):
        return ""
    deeper = all(line.indent >= indent + DEEPER for line in part if line.indent != indent)
    answered = all(after - index > 1 for index, after in zip(level, [*level[1:], len(part)], strict=True))
    return match.group() if deeper and answered else ""


def answered(above: Line, below: Line, words: str) -> bool:
    """Whether a line begins what is to be done in the case above it."""
    return above.text.startswith(words) and below.text[:1].isupper() and not closed(above.text)
