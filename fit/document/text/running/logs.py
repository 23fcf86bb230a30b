"""Logs of a program: lines that say what it does and what came of it, `looking for oil... yes`, or behind one name each, or `---`.

The three dots stand right behind a word, with one blank before what came of it: they lead to no page and no meaning. That
line after line begins with the same word shows that each stands for itself. Where `---` stands above record after record, it
is no rule under a title, nor between two parts of the text.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import ruled_off

DOING = 2
"""Lines of one part that say what is being done, at least."""
BETWEEN = 2
"""Lines of a log to one that shows it, at most."""
NAMED = 4
"""Lines behind one name with what is counted of it, at least."""
RECORDS = 3
"""Times that one sign stands above a record, at least."""
_ABOVE = "---"
_DOING = re.compile(r"(?P<word>[a-z]+ing) [^.]+(?:\.[^. ][^.]*)*\w[)\]\"']?\.\.\.(?: \S.{0,60})?")
_NAMED = re.compile(r"(?P<word>[a-z][\w.-]*)(?:<[^<>]*>|\[\d+\]): ")
"""A name, in brackets what is counted of it or its number as a process, and a colon."""
_SAYS = re.compile(r"[a-z]+: \w")


def find_logs(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines, with no blank line between, that are such."""
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        if taken[index] is None and lines[index].text == _ABOVE and (end := _records(lines, taken, index)):
            while not parted_above(lines, index) and taken[index - 1] is None:
                index -= 1
            found.append((index, end))
            index = end
            continue
        if taken[index] is not None or not _word(lines[index]):
            index += 1
            continue
        end = part_end(lines, index)
        if last := _last(lines, index, end):
            start = index
            while (
                not parted_above(lines, start)
                and taken[start - 1] is None
                and _printed(lines[start - 1].text)
            ):
                start -= 1
            found.append((start, last))
        index = last or end
    return found


def _records(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the records that begin at a line, each a line or more below its sign, with no blank line; 0 for none."""
    end = part_end(lines, start)
    signs = [index for index in range(start, end) if lines[index].text == _ABOVE]
    if len(signs) < RECORDS or any(second - first < 2 for first, second in pairwise(signs)):
        return 0
    free = all(
        taken[index] is None and lines[index].indent >= lines[start].indent for index in range(start, end)
    )
    return end if free and not any(prose(line.text) for line in lines[start:end]) else 0


def _word(line: Line) -> str:
    """The word that a line of a log begins with; else nothing."""
    if "..." not in line.text and ": " not in line.text:
        return ""
    match = _DOING.fullmatch(line.text) or _NAMED.match(line.text)
    return match["word"] if match is not None else ""


def _printed(text: str) -> bool:
    """Whether a line next to a log is part of it: no sentence of the text around it, and no rule."""
    return not ruled_off(text) and (not prose(text) or _SAYS.match(text) is not None)


def _last(lines: Sequence[Line], start: int, end: int) -> int:
    """The end of the log that begins at a line, with what else is printed right below; 0 for none."""
    words = {index: found for index in range(start, end) if (found := _word(lines[index]))}
    same = max(Counter(words.values()).values())
    doing = "..." in lines[start].text
    last = max(words) + 1
    if same < (DOING if doing else NAMED) or BETWEEN * len(words) < last - start:
        return 0
    while last < end and _printed(lines[last].text):
        last += 1
    return last
