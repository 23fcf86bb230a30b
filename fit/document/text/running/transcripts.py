"""Sessions over blank lines: what is typed at one prompt again and again, and what comes of it, is one piece.

Not one that tells in running text what each command does, nor one whose answers were wrapped: those flow.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line, parted_above
from fit.document.text.running.runs_on import carries
from fit.document.text.running.typed_lines import typed_lines
from fit.document.text.signs.code import asked, prompted
from fit.document.text.signs.measure import prose

LEAST = 3
"""Times that something is typed, at least."""
REACH = 12
"""Lines from one prompt to the next, at most."""
_PROMPT = re.compile(r"[^\s>$%]*[>$%] ?")


def find_transcripts(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such sessions."""
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        line = lines[index]
        fresh = taken[index] is None and parted_above(lines, index)
        end = _session(lines, taken, index) if fresh and _sign(line.text) else 0
        if end:
            found.append((index, end))
        index = max(end, index + 1)
    return found


def _sign(text: str) -> str:
    """The prompt that a line begins with, or nothing."""
    match = _PROMPT.match(text) if prompted(text) or (text.startswith(">") and asked(text)) else None
    return match.group() if match is not None else ""


def _session(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the session that begins at a prompt, or 0."""
    first = lines[start]
    sign = _sign(first.text)
    typed, end = typed_lines(lines, taken, start, _sign, REACH)
    gaps = [index for index in range(start + 1, typed[-1] + 1) if lines[index].gap]
    shell = sign[0] != ">"
    remarks = shell and any(prose(lines[index].text.removeprefix(sign)) for index in typed)
    if len(typed) < LEAST or not gaps or remarks:
        return 0
    end = _chunk_end(lines, typed[-1] + 1, end)
    if end < len(lines) and all(_answered(lines, index) for index in typed[:-1]):
        end = _chunk_end(lines, end + 1, len(lines)) if _answer(lines, taken, end, first) else end
    answers = [line for line in lines[start:end] if _sign(line.text) != sign]
    wrapped = any(carries(above.text, below.text) for above, below in pairwise(answers) if not below.apart)
    told = shell and any(prose(line.text) for line in answers)
    return end if answers and not (wrapped or told) else 0


def _chunk_end(lines: Sequence[Line], index: int, last: int) -> int:
    """The first line from one on that stands apart, or the last."""
    while index < last and not lines[index].apart:
        index += 1
    return index


def _answered(lines: Sequence[Line], index: int) -> bool:
    """Whether an answer stands below a blank line under what was typed."""
    return lines[index + 1].apart and not _sign(lines[index + 1].text)


def _answer(lines: Sequence[Line], taken: Sequence[object], index: int, first: Line) -> bool:
    """Whether the lines from one on can be the last answer of a session."""
    line = lines[index]
    told = first.text[0] != ">" and prose(line.text)
    return taken[index] is None and line.gap == 1 and line.indent >= first.indent and not told
