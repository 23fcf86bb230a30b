"""Examples of program text between paragraphs, set in from them: one piece with all their lines and blank lines.

What a reader takes for an example is everything from where it is set in up to where the text goes on at its left: the
lines of it that alone could be a title, a list, a row of a table or a word of the text belong to it all the same.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.code import code, prompted, typed
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.program import keyed, mostly_items, said, wrapped
from fit.document.text.signs.rules import ruled_off

DEEPER = 2
"""Cells by which an example stands in from the text above it, at least."""
SET_IN = 8
"""Cells by which one at the top of a page does, below a colon at the end of the page before."""
MOST_BLANK = 2
"""Blank lines inside an example, at most."""
_SIGNS = re.compile(r"[{}=$#%\\|<>@_\"~^]|\(\)|\w\(|::|\w[:/.]\w|;$|^\W|\d-\d")
_WIDE = re.compile(r" {2,}")
_OPENS = re.compile(
    r"(?:if|elif|else|for|foreach|while|until|unless|with|try|def|class|switch|case|function|repeat|begin)\b.*(?:[:{(]| do| then)"
)
"""A statement that opens others, though it may read as a sentence."""
_RULES = re.compile(r"[-=]+(?: +[-=]+)+")
"""Rules under the heads of columns."""
COLUMN = 0.6
"""Share of lines whose second column begins at the same place, which make a table of them."""
_PLAIN = re.compile(r"[A-Za-z][\w'-]*(?:,? [A-Za-z][\w'-]*)*[,:.]?")
_ENDS = frozenset(("end", "end.", "end;", "END"))
"""Words that close a piece of program text."""
_LINKS = frozenset(("or", "and", "to", "with"))
"""Words that stand alone between two examples."""
MOST_WORDS = 3
"""Lines of words between lines of program text, at most."""
SEVERAL = 3
"""Words before a colon that lead to something, at least."""
SHARE = 3
"""One of so many lines, at least, is program text by itself."""


def find_shown_code(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such examples, as enough of them show that are program text."""
    return _find(lines, taken, _coded)


def find_signed_lines(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """Those that a colon leads to, as the signs in their lines show that words do not have."""
    return _find(lines, taken, _signed)


def _find(
    lines: Sequence[Line], taken: Sequence[object], shows: Callable[[Sequence[Line], int, int], bool]
) -> list[tuple[int, int]]:
    found: list[tuple[int, int]] = []
    index = 1
    while index < len(lines):
        end = index + 1
        if lines[index].indent and taken[index] is None and _begins(lines, index):
            end = _end(lines, taken, index)
            if end > index + 1 and shows(lines, index, end):
                found.append((index, end))
            else:
                end = index + 1
        index = end
    return found


def _begins(lines: Sequence[Line], index: int) -> bool:
    """Whether an example can begin with a line: below text, and no text itself."""
    line = lines[index]
    if not _below_text(lines[index - 1], line) or _leads(lines, index):
        return False
    return not said(line.text) or _opens(lines, index)


def _below_text(above: Line, line: Line) -> bool:
    """Whether a line is set in from running text, or from the end of it, above a blank line or behind a colon."""
    led = above.text.endswith(":")
    if line.indent < above.indent + (DEEPER if not line.crossing else SET_IN) or (line.crossing and not led):
        return False
    return (led or line.gap > 0) and (led or closed(above.text) or prose(above.text)) and not code(above.text)


def _leads(lines: Sequence[Line], index: int) -> bool:
    """Whether a line of words leads to what stands deeper below it: it is text that is set in itself."""
    text = lines[index].text.strip("*_")
    if index + 1 == len(lines) or code(text) or _opens(lines, index):
        return False
    below = lines[index + 1]
    if below.indent <= lines[index].indent and not (below.apart and (text.endswith(":") or text in _LINKS)):
        return False
    plain = _PLAIN.fullmatch(text) is not None and (text[:1].isupper() or text in _LINKS)
    told = text[:1].isupper() and text.endswith(":") and len(text.split()) >= SEVERAL
    return plain or prose(text) or told


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """Where the lines end that stand at least as deep as the first; below text of their own, at the last blank line."""
    end = last = start + 1
    while end < len(lines) and lines[end].indent >= lines[start].indent and taken[end] is None:
        line = lines[end]
        if line.gap > MOST_BLANK or _titled(lines, end):
            break
        if line.gap:
            last = end
        words = said(line.text) and not (_opens(lines, end) or _among_code(lines, end))
        if words or (line.indent == lines[start].indent and _leads(lines, end)):
            return last if last > start + 1 or line.gap else start + 1
        end += 1
    return end


def _opens(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a statement that opens what stands deeper below it."""
    deeper = index + 1 < len(lines) and lines[index + 1].indent > lines[index].indent
    return deeper and _OPENS.fullmatch(lines[index].text) is not None


def _among_code(lines: Sequence[Line], index: int) -> bool:
    """Whether program text stands right above and right below a few lines: words that a program says, or remarks."""
    first, last = index, index + 1
    while index - first < MOST_WORDS and not lines[first].apart and said(lines[first].text):
        first -= 1
    while (
        last < len(lines) and last - index < MOST_WORDS and not lines[last].apart and said(lines[last].text)
    ):
        last += 1
    if parted_above(lines, last):
        return False
    return typed(lines[first].text) and typed(lines[last].text)


def _titled(lines: Sequence[Line], index: int) -> bool:
    """Whether a line in capitals stands alone between blank lines."""
    alone = lines[index].gap > 0 and (index + 1 == len(lines) or lines[index + 1].gap > 0)
    text = lines[index].text
    return alone and text.isupper() and not code(text)


def _coded(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether enough lines are program text, and they are neither a list nor a table."""
    part = lines[start:end]
    coded = sum(code(line.text) or prompted(line.text) for line in part)
    like = sum(typed(line.text) or prompted(line.text) for line in part)
    enough = SHARE * like >= len(part) or _ended(part)
    return coded > 0 and enough and not _listed(part)


def _ended(part: Sequence[Line]) -> bool:
    """Whether `end` alone stands below lines set in, at the margin of the first one: it closes what that opens."""
    first, last = part[0], part[-1]
    return last.text in _ENDS and last.indent == first.indent and part[1].indent > first.indent


def _signed(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether most lines below a colon hold signs that words do not have, and none is an item, a key or a sentence."""
    part = lines[start:end]
    if not lines[start - 1].text.endswith(":") or _listed(part) or wrapped(part) or _in_columns(part):
        return False
    if end < len(lines) and lines[end].indent >= lines[start].indent and said(lines[end].text):
        return False
    if any(keyed(line.text) or closed(line.text) or ruled_off(line.text) for line in part):
        return False
    return 2 * sum(_SIGNS.search(line.text) is not None for line in part) > len(part)


def _listed(part: Sequence[Line]) -> bool:
    """Whether half of the lines at the left begin with a list mark or a key and a dash, or a head has rules below it."""
    return mostly_items(part) or any(_RULES.fullmatch(line.text) for line in part)


def _in_columns(part: Sequence[Line]) -> bool:
    """Whether most lines have a second column that begins at one place."""
    starts = Counter(gap.end() + line.indent for line in part if (gap := _WIDE.search(line.text)))
    return bool(starts) and max(starts.values()) >= max(2, COLUMN * len(part))
