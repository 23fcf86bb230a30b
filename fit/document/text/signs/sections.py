"""Sections of a file of settings: a name alone in brackets, and below it settings, `name = value`, a line each.

What a value says may read as text or as a key's meaning: the name over it and the settings beside it show what it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import sentence

LEAST = 2
"""Settings below a name in brackets, at least."""
_NAME = re.compile(r"\[[^\W\d_][^][=,]*\]")
_SETTING = re.compile(r"[\w*\"'][\w*\"'.:/-]*(?: [\w.:-]+){0,3} ?[=:]?=(?: .*|[^=\s].*)?")
_COMMENT = re.compile(r"[;#]")


def find_sections(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such sections, with the comments in them and the settings right above the first."""
    found: list[tuple[int, int]] = []
    floor = 0
    for index, line in enumerate(lines):
        if index < floor or line.text[0] != "[" or taken[index] is not None or not _NAME.fullmatch(line.text):
            continue
        end = _end(lines, taken, index)
        if end:
            start = index
            while start > floor and not lines[start].apart and _part(lines[start - 1].text):
                start -= 1
            found.append((start, end))
            floor = end
    return found


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the sections that begin with a name in brackets; 0 where text goes on right below them, or nothing is set."""
    end = start + 1
    set_ = 0
    while end < len(lines) and taken[end] is None:
        line = lines[end]
        text = line.text
        if line.indent < lines[start].indent:
            break
        if _SETTING.fullmatch(text):
            set_ += 1
        elif not (_COMMENT.match(text) or _NAME.fullmatch(text)):
            if not (line.apart or _value_on(lines, end)):
                return 0
            if line.apart:
                break
        end += 1
    while end > start and _COMMENT.match(lines[end - 1].text) and lines[end - 1].apart:
        end -= 1  # it may be a remark on what stands below
    return end if set_ >= LEAST else 0


def _part(text: str) -> bool:
    return _SETTING.fullmatch(text) is not None or _COMMENT.match(text) is not None


def _value_on(lines: Sequence[Line], index: int) -> bool:
    """Whether a line stands deeper than the one above it, or as deep as the rest of a value does, and is no sentence."""
    above, line = lines[index - 1], lines[index]
    deeper = line.indent > above.indent or not (_part(above.text) or _NAME.fullmatch(above.text))
    return deeper and not sentence(line.text)
