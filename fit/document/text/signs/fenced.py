"""Examples between two lines that say where they begin and end: `#+begin_src` and `#+end_src`, as outlines have them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line

LONGEST = 400
"""Lines between the two, at most: farther apart they are no pair."""
_OPENS = re.compile(r"#\+begin_(src|example)\b.*", re.IGNORECASE)


def find_fenced(lines: Sequence[Line]) -> list[tuple[int, int]]:
    """The half-open runs of lines from such a beginning to its end, both with them."""
    found: list[tuple[int, int]] = []
    for index in [place for place, line in enumerate(lines) if line.text[:2] == "#+"]:
        match = _OPENS.fullmatch(lines[index].text)
        free = match is not None and not (found and index < found[-1][1])
        if match is not None and free and (end := _end(lines, index, match[1].lower())):
            found.append((index, end))
    return found


def _end(lines: Sequence[Line], start: int, name: str) -> int:
    """Behind the line that ends the example of a name, at the indent of the one that begins it; or 0."""
    for index in range(start + 2, min(len(lines), start + LONGEST)):
        line = lines[index]
        if line.indent == lines[start].indent and line.text.lower() == f"#+end_{name}":
            return index + 1
    return 0
