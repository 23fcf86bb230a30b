"""What two colons at the end of a paragraph lead to: literal text, as deep as it was set in, over its blank lines.

After "Literal Blocks" of the reStructuredText Markup Specification.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.markers import find_marker

_LEADS = re.compile(r"(?!\.\. )(?:.*[^\s:] ?)?::")


def find_literal(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such."""
    found: list[tuple[int, int]] = []
    end = 0
    for index, line in enumerate(lines):
        if index < end or not line.text.endswith("::") or taken[index] is not None:
            continue
        end = _end(lines, taken, index)
        if end > index + 1 and _LEADS.fullmatch(line.text):
            found.append((index + 1, end))
    return found


def _end(lines: Sequence[Line], taken: Sequence[object], index: int) -> int:
    """The end of what stands deeper than the text of a line, a blank line below it."""
    marker = find_marker(lines[index].text)
    left = lines[index].indent + (marker.text if marker is not None else 0)
    end = index + 1
    if end == len(lines) or not lines[end].gap:
        return end
    while end < len(lines) and taken[end] is None and lines[end].indent > left:
        end += 1
    return end
