"""Titles that lines of signs show: one that comes again and again, or one above and one below a title in a rule.

One such line may be anything. Several that are the same, each of them right below a short line that stands apart, or
each over a line alone between blank lines, are how this document marks its titles. A banner shows itself: three lines
of one length, of which the middle one holds the title.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow_lines, fold
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.rules import remark_rule, ruled_off
from fit.document.text.signs.titled_rules import banner_title
from fit.document.text.titles.headings import SECTION, loud

LEAST = 3
"""Titles with the same line of signs, at least."""
SHARE = 0.8
"""Share of the lines with the same signs that are such a line, at least."""
LONGEST = 78
"""Characters of a title, at most."""
SHORTEST = 10
"""Signs of a line that has one length below all titles, at least."""
BY_EYE = 4
"""Signs by which the line under a title may be longer or shorter, at most, to show by itself what it is."""
_SIGNS = frozenset("=-~*_+#^\"'`.:")
Found = list[tuple[int, int, list[Block]]]


def find_ruled_titles(lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens) -> Found:
    """The half-open runs of a title and its line of signs, each as a heading."""
    alike: dict[str, list[int]] = defaultdict(list)
    for index, line in enumerate(lines):
        text = line.text
        if text[:1] in _SIGNS and len(text) > 2 and text == text[0] * len(text) and taken[index] is None:
            alike[text].append(index)
    remarks = [
        index
        for index, line in enumerate(lines)
        if remark_rule(line.text) and taken[index : index + 2] == [None, None]
    ]
    return sorted(
        (
            *_below(lines, alike, taken, hyphens),
            *_above(lines, alike, taken, hyphens),
            *_banners(lines, alike, taken),
            *(_under_remarks(lines, remarks, hyphens) if len(remarks) >= LEAST else ()),
        ),
        key=lambda run: run[0],
    )


def _under_remarks(lines: Sequence[Line], rules: Sequence[int], hyphens: Hyphens) -> Found:
    """Titles right below rules that are drawn as remarks of a program, each over a blank line."""
    titles = [rule + 1 for rule in rules if not lines[rule + 1].apart and parted_above(lines, rule + 2)]
    return [
        (title - 1, title + 1, [_heading(lines, title, title - 1, hyphens)])
        for title in titles
        if _title(lines[title]) and not code(lines[title].text)
    ]


def _below(
    lines: Sequence[Line], alike: dict[str, list[int]], taken: Sequence[object], hyphens: Hyphens
) -> Found:
    """Titles over lines of one length, or over one sign as often as they have letters with anything right below it.

    Where nearly all lines of a sign stand below a title, so does one that is much longer or shorter than its title.
    """
    exact: dict[str, list[int]] = defaultdict(list)
    chosen: list[int] = []
    every: Counter[str] = Counter()
    ruled: dict[str, list[int]] = defaultdict(list)
    for rule, places in alike.items():
        under = [index for index in places if _underlined(lines, index) and taken[index - 1] is None]
        if not ruled_off(rule):
            exact[rule[0]] += [index for index in under if lines[index].end == lines[index - 1].end]
            continue
        every[rule[0]] += len(places)
        ruled[rule[0]] += under
        if len(rule) >= SHORTEST:
            alone = [
                index for index in under if parted_above(lines, index + 1) or prose(lines[index + 1].text)
            ]
            counted = [index for index in alone if SECTION.match(lines[index - 1].text)]
            if len(alone) >= max(LEAST, SHARE * len(places)):
                chosen += alone
            elif len(counted) >= LEAST:  # the same line stands elsewhere, too
                chosen += counted
    for places in exact.values():
        if len(places) >= LEAST:
            chosen += places
    for sign, places in ruled.items():
        if len(places) >= LEAST and len(places) >= SHARE * every[sign]:
            chosen += [index for index in places if abs(lines[index].end - lines[index - 1].end) > BY_EYE]
    return [(index - 1, index + 1, [_heading(lines, index - 1, index, hyphens)]) for index in set(chosen)]


def _underlined(lines: Sequence[Line], index: int) -> bool:
    """Whether a line of signs stands right below a short line that stands apart and is no sentence."""
    rule, line = lines[index], lines[index - 1]
    level = index > 0 and not rule.apart and line.indent == rule.indent
    return level and parted_above(lines, index - 1) and _title(line)


def _above(
    lines: Sequence[Line], alike: dict[str, list[int]], taken: Sequence[object], hyphens: Hyphens
) -> Found:
    """Titles alone between blank lines, each below the same line of signs that stands apart too."""
    found: Found = []
    for rule, places in alike.items():
        if not ruled_off(rule) or len(rule) < SHORTEST or len(places) < LEAST:
            continue
        over = [index for index in places if taken[index + 1 : index + 2] == [None] and _over(lines, index)]
        if len(over) >= max(LEAST, SHARE * len(places)):
            found += [(index, index + 2, [_heading(lines, index + 1, index, hyphens)]) for index in over]
    return found


def _over(lines: Sequence[Line], index: int) -> bool:
    """Whether a line of signs stands apart over a title that stands apart too."""
    if not (parted_above(lines, index) and parted_above(lines, index + 1) and parted_above(lines, index + 2)):
        return False
    line, below = lines[index + 1], lines[index + 2] if index + 2 < len(lines) else None
    return abs(line.indent - lines[index].indent) <= 1 and _title(line) and below is not None


def _title(line: Line) -> bool:
    text = line.text
    said = closed(text) and (text.endswith(".") or prose(text)) and not text.endswith("?")
    said = said and not (text[-1] == ":" and loud(text))
    return text[:1].isalnum() and len(text) <= LONGEST and "   " not in SECTION.sub("", text) and not said


def _banners(lines: Sequence[Line], alike: dict[str, list[int]], taken: Sequence[object]) -> Found:
    """Titles that stand in a rule between two more: all three have one place and length."""
    found: Found = []
    for places in alike.values():
        for above, below in pairwise(places):
            rule, line = lines[above], lines[above + 1]
            start, end = banner_title(line) if below == above + 2 else (0, 0)
            level = (rule.indent, rule.end) == (line.indent, line.end)
            alone = parted_above(lines, above) and not (line.apart or lines[below].apart)
            if end and level and alone and taken[above + 1] is None:
                title = fold(line.piece(start, end))
                depth = 1 if rule.text[0] in "=*#" else 2
                heading = Block(Kind.HEADING, title, level=depth, note="rule left out")
                found.append((above, below + 1, [heading]))
    return found


def _heading(lines: Sequence[Line], title: int, rule: int, hyphens: Hyphens) -> Block:
    level = 1 if lines[rule].text[0] in "=*#" else 2
    return Block(Kind.HEADING, flow_lines([lines[title]], hyphens), level=level, note="rule left out")
