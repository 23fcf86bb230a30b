"""Examples between two lines that say where they begin and end: `#+begin_src`, `{{{`, `<<`, `--- Cut here ---`, a file name in a rule."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import ruled_off, scissors
from fit.document.text.signs.titled_rules import titled_rule

LONGEST = 400
"""Lines between the two, at most: farther apart they are no pair."""
_OPENS = re.compile(r"#\+begin_(src|example)\b.*", re.IGNORECASE)
_PAIRS = {"{{{": "}}}", "<<": ">>"}
"""What stands alone above an example, as wikis and printed pages have it, and what below it."""
_RULES = {"-", "=", "~", "*", "#"}
SHORTEST = 10
"""Signs of the rule that closes it, at least."""
_STROKES = {"-", "=", "~", "*", "_", "8", "<", ">", "%", "+", "o"}
_BULLET = re.compile(r"^[-*+o] +(?=[-=~_]{2})")
"""A bullet before a mark."""
_CUT = re.compile(r"[-=~*_8<>% ]{3,}(?:cut|snip)(?: here)? ?[-=~*_8<>% ]{3,}", re.IGNORECASE)


LONGEST_FILE = 40
"""Lines of a file that is shown in a box between rules, at most."""
_FILE = re.compile(r"([-=~*#])\1{4,} (?=\S*[/.]\w)\S+(?: \S+){0,4}? \1{4,}")
"""A rule that holds the name of a file: `------ /etc/lamp ------`."""
_REMARKS = ("#", ";", "//", "/*", "*", "<!--")


def find_fenced(lines: Sequence[Line]) -> list[tuple[int, int]]:
    """The half-open runs of lines from such a beginning to its end, both with them."""
    found: list[tuple[int, int]] = []
    for index in [place for place, line in enumerate(lines) if line.text[:2] in {"#+", "{{", "<<"}]:
        match = _OPENS.fullmatch(lines[index].text)
        close = f"#+end_{match[1].lower()}" if match is not None else _PAIRS.get(lines[index].text, "")
        if close and not (found and index < found[-1][1]) and (end := _end(lines, index, close)):
            found.append((index, end))
    found += [pair for pair in _cut_out(lines) if _free(found, *pair)]
    for index, line in enumerate(lines):
        if line.text[:1] in _RULES and " " in line.text and _FILE.fullmatch(line.text):
            last = _end_of_file(lines, index)
            if last and _free(found, index, last):
                found.append((index, last))
    return sorted(found)


def _free(found: Sequence[tuple[int, int]], first: int, last: int) -> bool:
    """Whether none of what was found has lines of ``first <= i < last``."""
    return not any(start < last and first < end for start, end in found)


def _cut_out(lines: Sequence[Line]) -> list[tuple[int, int]]:
    """What is to be cut out, with the two marks of one build around it, the first perhaps behind a bullet.

    Whatever it looks like, it is no text of this document, unless most of it reads as text.
    """
    cuts = [(place, mark) for place, line in enumerate(lines) if (mark := _mark(line.text))]
    found: list[tuple[int, int]] = []
    number = 1
    while number < len(cuts):
        (first, opening), (last, closing) = cuts[number - 1 : number + 1]
        number += 1
        if opening != closing or last - first >= LONGEST:
            continue
        number += 1
        if 2 * sum(prose(line.text) for line in lines[first:last]) < last - first:
            found.append((first, last + 1))
    return found


def _mark(text: str) -> str:
    """The mark that a line is to cut along, without a bullet before it, all scissors turned one way; or nothing."""
    if text[:1] not in _STROKES:
        return ""
    mark = without_bullet(text)
    cut = _CUT.fullmatch(mark) or scissors(mark)
    return mark.replace(">8", "8<").replace(">%", "%<") if cut else ""


def without_bullet(text: str) -> str:
    """A mark without the bullet of its item."""
    return _BULLET.sub("", text, count=1)


def _end_of_file(lines: Sequence[Line], start: int) -> int:
    """Behind the rule that closes the box of a file, which hardly reads as text; or 0."""
    sign = lines[start].text[0]
    told = 0
    for index in range(start + 1, min(len(lines), start + LONGEST_FILE + 2)):
        line = lines[index]
        if line.text.count(sign) == len(line.text) >= SHORTEST:
            return index + 1 if 4 * told < index - start - 1 else 0
        if ruled_off(line.text) or titled_rule(line.text)[2] or line.indent < lines[start].indent:
            return 0
        told += prose(line.text) and not line.text.startswith(_REMARKS)
    return 0


def _end(lines: Sequence[Line], start: int, close: str) -> int:
    """Behind the line that closes an example, at the indent of the one that begins it; or 0."""
    for index in range(start + 2, min(len(lines), start + LONGEST)):
        line = lines[index]
        if line.indent == lines[start].indent and line.text.lower() == close:
            return index + 1
    return 0
