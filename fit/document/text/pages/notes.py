"""Footnotes at the foot of a page, in the middle of what is read: taken out and set after it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines, fold
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.pictures import ruled_off
from fit.document.text.titles.headings import underlined

TALLEST = 12
"""Lines of footnotes on one page, at most."""
TALLEST_RULED = 30
"""The same where a rule stands above them and no blank line parts them."""
_MARK = re.compile(
    r"(\*{1,3}|\u2020|\u2021|\[\d{1,3}\]|\(\d{1,2}\)|\d{1,2}(?:[)/]|\.(?!\d))|\d{1,2}(?=\s|[^\W\d])|[\u00b9\u00b2\u00b3]|\[\*\]|\[[a-z]\])\s*(?=\S)"
)
_SHORT_RULE = 40


def find_notes(lines: Sequence[Line], ends: Sequence[int]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are footnotes, a rule above them included; ``ends`` are page ends."""
    found: list[tuple[int, int]] = []
    previous = 0
    for end in ends:
        start = _foot(lines, max(previous, end - TALLEST_RULED), end)
        if start < end and start > previous:
            found.append((start, end))
        previous = end
    return found


def _foot(lines: Sequence[Line], floor: int, end: int) -> int:
    """Where the footnotes of the page that ends at ``end`` start; ``end`` where it has none."""
    for index in range(end - 1, floor - 1, -1):
        text = lines[index].text
        if index and underlined(lines, index - 1):
            continue
        if ruled_off(text) and len(text) <= _SHORT_RULE and set(text) <= set("-_\u2500 "):
            return index if _under_rule(lines, index, end) else end
    floor = max(floor, end - TALLEST)
    start = end
    for index in range(end - 1, floor, -1):
        if lines[index].crossing:
            break
        if lines[index].gap == 0:
            continue
        match = _MARK.match(lines[index].text)
        if match is None or not _called(lines[max(0, index - 70) : index], match.group(1)):
            break
        if _MARK.match(lines[index - 1].text) or _item(lines, index, match.group(1)):
            break
        start = index
    return start


def _under_rule(lines: Sequence[Line], index: int, end: int) -> bool:
    """Whether footnotes stand below the short rule at ``index``, down to the end of the page."""
    rule, below = lines[index], lines[index + 1 : end]
    if not below:
        return False
    packed = all(line.gap == 0 for line in below)
    if end - index > TALLEST and not packed:
        return False
    if _MARK.match(below[0].text) is not None and (rule.gap + below[0].gap or set(rule.text) == {"_"}):
        return True
    if set(rule.text) == {"_"} and rule.indent == below[0].indent and rule.gap and packed:
        return True
    above = lines[index - 1].text if index else ""
    cut = prose(above) and not closed(above) and not rule.gap
    return cut and packed and (end < len(lines) and not starts_small(below[0].text))


def _item(lines: Sequence[Line], index: int, mark: str) -> bool:
    """Whether the mark is the bullet of a list: below its text, all of it further in, the next item begins with it."""
    indent = lines[index].indent
    for line in lines[index + 1 : index + 1 + TALLEST]:
        if line.indent <= indent:
            return line.indent == indent and line.text.startswith(f"{mark} ")
    return False


def _called(above: Sequence[Line], mark: str) -> bool:
    """Whether the text above refers to the mark: right after a word, in the line."""
    if not mark.startswith(("*", "[", "\u2020", "\u2021", "(")):
        return False
    call = re.compile(r"[\w.,;:\"')]\s?" + re.escape(mark) + r"(?![\w*])")
    listed = sum(line.text.startswith(mark) for line in above[-12:])
    return listed == 0 and any(call.search(line.text) for line in above)


def note_blocks(lines: Sequence[Line], hyphens: Hyphens) -> list[Block]:
    """The blocks of one page's footnotes: a new one at each mark."""
    groups: list[list[Line]] = []
    for line in lines:
        if ruled_off(line.text) and not groups:
            continue
        if not groups or (_MARK.match(line.text) and line.indent == groups[0][0].indent):
            groups.append([line])
        else:
            groups[-1].append(line)
    blocks = []
    for group in groups:
        head = group[0]
        match = _MARK.match(head.text)
        start = head.indent + (match.end() if match else 0)
        label = fold(head.piece(head.indent, start)) if match else head.piece(0, 0)
        blocks.append(Block(Kind.NOTE, flow_lines(group, hyphens, start), label=label, note="footnote"))
    return blocks
