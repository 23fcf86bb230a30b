"""Terms that two colons mark, `lamp oil::`, with their text right below them, as lists of definitions are written.

Where two colons lead to literal text, a blank line stands between: right above words they can mean nothing else. Where the
text is not set in, a blank line stands above the term.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow_lines, fold
from fit.document.text.running.definitions import NOTE
from fit.document.text.signs.code import code
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.rules import ruled_off

LEAST = 3
"""Terms of a document whose texts read as such, at least."""
MARKS = ("::", ";;")
"""What ends a term, and one in a list within such a list."""
SHORT = 4
"""Words of a term that may have those of a sentence among them, at most."""
ON = "+"
"""The sign that goes on with an entry at the margin."""


def find_marked_terms(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such terms, each with an item, with its text where that is one paragraph."""
    heads: set[int] = set()
    for index in range(len(lines) - 1, -1, -1):
        text = lines[index].text
        if text.endswith(MARKS) and taken[index] is None and _named(text) and _over_text(lines, index, heads):
            heads.add(index)
    found = [index for index in sorted(heads) if _begins(lines, index, heads)]
    over = [
        index
        for index in found
        if lines[index].text[-1] == ":" and lines[index + 1].text != ON and index + 1 not in heads
    ]
    said = sum(_said(lines[index + 1].text) for index in over)
    if said < LEAST or 2 * said <= len(over):
        return []
    return [_entry(lines, index, heads, hyphens) for index in found]


def _named(text: str) -> bool:
    """Whether something stands before the colons, and neither the dots of a directive nor a list mark before it."""
    return len(text) > 2 and text[-3] != text[-1] and not text.startswith(".. ") and find_marker(text) is None


def _over_text(lines: Sequence[Line], index: int, heads: set[int]) -> bool:
    """Whether a line that two colons end begins something of its own, and its text, or one of the ``heads``, stands right below it."""
    if parted_above(lines, index + 1):
        return False
    line, below = lines[index : index + 2]
    if below.text == ON:
        return True
    if below.indent > line.indent:
        return not prose(line.text) or _said(below.text)
    if below.indent < line.indent or index + 1 in heads:
        return below.indent == line.indent
    return parted_above(lines, index) and (not prose(line.text) or len(line.text.split()) <= SHORT)


def _begins(lines: Sequence[Line], index: int, heads: set[int]) -> bool:
    """Whether no sentence at its own indent leads to such a line from above."""
    if parted_above(lines, index) or index - 1 in heads:
        return True
    above = lines[index - 1]
    return above.indent > lines[index].indent or ruled_off(above.text)


def _said(text: str) -> bool:
    return (prose(text) or closed(text)) and not code(text)


def _entry(
    lines: Sequence[Line], index: int, heads: set[int], hyphens: Hyphens
) -> tuple[int, int, list[Block]]:
    """A term with its text as far as that is set in; without it where it is a list, or program text."""
    line = lines[index]
    label = fold(line.piece(line.indent, line.end))
    end = index + 1
    least = line.indent + (lines[end].indent > line.indent)
    while end < len(lines) and end not in heads and not lines[end].apart and lines[end].indent >= least:
        if lines[end].text == ON or ruled_off(lines[end].text):
            break
        end += 1
    part = lines[index + 1 : end]
    level = part and len({one.indent for one in part}) == 1 and not any(find_marker(one.text) for one in part)
    if not level or code(part[0].text):
        return index, index + 1, [Block(Kind.ITEM, label=label, note=NOTE)]
    return index, end, [Block(Kind.ITEM, flow_lines(part, hyphens), label=label, note=NOTE)]
