"""Footnotes at the foot of a page, in the middle of what is read: taken out and set after it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines, fold, keep_lines
from fit.document.text.signs.code import prompted, typed
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.rules import ruled_off
from fit.document.text.titles.headings import underlined

TALLEST = 12
"""Lines of footnotes on one page, at most."""
TALLEST_RULED = 30
"""The same where a rule stands above them and no blank line parts them."""
INSET = 4
"""Cells by which a rule may stand further in than the notes below it."""
PAGE = 70
"""Lines above a footnote in which its mark may stand, at most."""
APART = 2
"""Blank lines that part what else stands at the foot of a page from its notes."""
_MARK = re.compile(
    r"""(\*{1,3}|\(\*{1,3}\)|\+(?=\ )|[\u2020\u2021\u00b9\u00b2\u00b3]|\[\d{1,3}\]|\[[*+a-z\u2020\u2021]\]|\(\d{1,2}\)
    |\^\d{1,2}|\d{1,2}(?:[)/]|\.(?!\d))|\d{1,2}(?=\s|[^\W\d]))(\s*)(?=\S)""",
    re.VERBOSE,
)
_NUMBER = re.compile(r"\d+")
_SHORT_RULE = 40


def find_notes(lines: Sequence[Line], ends: Sequence[int]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are footnotes, a rule above them included; ``ends`` are page ends."""
    found: list[tuple[int, int]] = []
    previous = 0
    for end in ends:
        start = _foot(lines, max(previous, end - TALLEST_RULED), end)
        if start < end and (start > previous or _far_below(lines[start])):
            found.append((start, _stop(lines, start, end)))
        elif found and (more := _rest(lines, found[-1], previous, end)):
            found.append((more, end))
        previous = end
    return found


def _rest(lines: Sequence[Line], note: tuple[int, int], first: int, end: int) -> int:
    """Where the rest of the note of the page before starts, below the same rule, at the foot of the one from ``first`` on; or 0."""
    start, stop = note
    rule = lines[start]
    if stop != first or not ruled_off(rule.text) or closed(lines[stop - 1].text):
        return 0
    for index in range(end - 2, max(first, end - TALLEST) - 1, -1):
        line = lines[index]
        if ruled_off(line.text):
            same = (line.text, line.indent) == (rule.text, rule.indent)
            return index if same and goes_on(lines[start:stop], lines[index:end]) else 0
        if lines[index + 1].gap:
            return 0
    return 0


def goes_on(note: Sequence[Line], below: Sequence[Line]) -> bool:
    """Whether what stands below the rule of a page is the rest of the note at the foot of the page before."""
    first = below[1] if len(below) > 1 and ruled_off(below[0].text) else below[0]
    return not closed(note[-1].text) and starts_small(first.text) and _MARK.match(first.text) is None


def _stop(lines: Sequence[Line], start: int, end: int) -> int:
    """Where the footnotes end that begin at ``start``: before a blank line and a mark of another form, which numbers a section."""
    first = start + ruled_off(lines[start].text)
    mark = _MARK.match(lines[first].text)
    if mark is None:
        return end
    for index in range(first + 1, end):
        line = lines[index]
        numbered = line.gap > 0 and line.indent <= lines[first].indent and _MARK.match(line.text)
        if numbered and not _same_mark(line.text, mark[1]):
            return index
    return end


def _far_below(line: Line) -> bool:
    """Whether a line is a rule at the foot of a page whose text ended long before."""
    return line.gap > APART and ruled_off(line.text)


def _foot(lines: Sequence[Line], floor: int, end: int) -> int:
    """Where the footnotes of the page that ends at ``end`` start; ``end`` where it has none."""
    for index in range(end - 1, floor - 1, -1):
        text = lines[index].text
        if index and underlined(lines, index - 1):
            continue
        if ruled_off(text) and set(text) <= set("-_\u2500 "):
            if _under_rule(lines, index, end):
                return index
            if len(text) <= _SHORT_RULE:
                return end
    floor = max(floor, end - TALLEST)
    start = end
    for index in range(end - 1, floor, -1):
        if lines[index].gap == 0:
            continue
        match = _MARK.match(lines[index].text)
        if match is None or not _called(lines, index, end, match[1]):
            break
        if _same_mark(lines[index - 1].text, match[1]) or _item(lines, index, match[1]):
            break
        start = index
    return start


def _under_rule(lines: Sequence[Line], index: int, end: int) -> bool:
    """Whether footnotes stand below the rule at ``index``, down to the end of the page."""
    rule, below = lines[index], lines[index + 1 : end]
    if not below or rule.indent > below[0].indent + INSET:
        return False
    packed = all(line.gap == 0 for line in below)
    if end - index > TALLEST and not packed:
        return False
    match = _MARK.match(below[0].text)
    if len(rule.text) > _SHORT_RULE:
        return match is not None and _called(lines, index, end, match[1])
    if match is not None and (rule.gap + below[0].gap or set(rule.text) == {"_"}):
        return True
    if set(rule.text) == {"_"} and rule.indent == below[0].indent and rule.gap and packed:
        return True
    return _cut(lines, index, index + 1, end) and packed and not rule.gap


def _cut(lines: Sequence[Line], start: int, first: int, end: int) -> bool:
    """Whether the text stops in a sentence above ``start``, and what begins at ``first`` does not go on with it."""
    above = lines[max(0, start - 2) : start]
    text = " ".join(line.text for line in (above[-1:] if above and above[-1].gap else above))
    return prose(text) and not closed(text) and end < len(lines) and not starts_small(lines[first].text)


def _same_mark(text: str, mark: str) -> bool:
    """Whether a text begins with a mark of the same form: both are items of a list."""
    match = _MARK.match(text)
    return match is not None and _NUMBER.sub("1", match[1]) == _NUMBER.sub("1", mark)


def _item(lines: Sequence[Line], index: int, mark: str) -> bool:
    """Whether the mark is the bullet of a list: below its text, all of it further in, the next item begins with it."""
    indent = lines[index].indent
    for line in lines[index + 1 : index + 1 + TALLEST]:
        if line.indent <= indent:
            return line.indent == indent and line.text.startswith(f"{mark} ")
    return False


def _called(lines: Sequence[Line], index: int, end: int, mark: str) -> bool:
    """Whether the text above ``index`` refers to the mark: right after a word, in the line.

    A mark that is also a number or a sign in any text counts where the note cuts a sentence in two.
    """
    above = lines[max(0, index - PAGE) : index]
    number = mark[0].isdigit()
    call = rf"[\w.,;:\"')]\s?{re.escape(mark)}(?![\w*])"
    if number:
        call = rf"(?<=[a-z.,;:\"')]){mark.rstrip('.)/')}(?!\w)"
    if number or mark == "+":
        on = lines[end].text if end < len(lines) else ""
        if not _cut(lines, index, index, end) or not starts_small(on):
            return False
    begins = re.compile(re.escape(mark) + r"(?![\d.])" if number else re.escape(mark))
    listed = any(begins.match(line.text) for line in above[-12:])
    return not listed and any(re.search(call, line.text) for line in above)


def note_blocks(lines: Sequence[Line], hyphens: Hyphens) -> list[Block]:
    """The blocks of one page's footnotes: a new one at each mark; commands that end one keep their lines."""
    groups: list[list[Line]] = []
    for line in lines:
        if ruled_off(line.text) and not groups:
            continue
        if not groups or line.gap >= APART or (_MARK.match(line.text) and line.indent == groups[0][0].indent):
            groups.append([line])
        else:
            groups[-1].append(line)
    blocks = []
    for group in groups:
        head = group[0]
        match = _MARK.match(head.text)
        start = head.indent + (match.end() if match and match[2] else 0)
        label = fold(head.piece(head.indent, start))
        end = len(group)
        while end > 1 and prompted(group[end - 1].text) and typed(group[end - 1].text):
            end -= 1
        blocks.append(Block(Kind.NOTE, flow_lines(group[:end], hyphens, start), label=label, note="footnote"))
        if end < len(group):
            blocks.append(Block(Kind.PREFORMATTED, lines=keep_lines(group[end:]), level=1, code=True))
    return blocks
