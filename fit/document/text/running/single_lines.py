"""Single lines that stand together: the headings that begin them, and the lines that are kept."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines, keep_lines
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.displays import displayed, signed
from fit.document.text.running.key_lines import is_key_line, over_another_term, typed_below
from fit.document.text.running.lone_sentences import lone_sentence
from fit.document.text.running.neighbours import inner_column
from fit.document.text.running.placed import Levels, Placed
from fit.document.text.running.unit import Unit
from fit.document.text.running.unit_titles import title_block
from fit.document.text.signs.closings import signed_below
from fit.document.text.signs.code import asked, code, command, prompted
from fit.document.text.signs.measure import prose
from fit.document.text.signs.postal import town
from fit.document.text.signs.quotes import quoted_words
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.spaced import spaced
from fit.document.text.titles.headings import (
    TALLEST,
    around_display,
    chapter_number,
    heading,
    heading_may_follow,
    loud,
    underlined,
)
from fit.document.text.titles.small_titles import more_capitals, subtitle

_WIDE = re.compile(r"[^.!?] {2}| {3}")
"""A wide blank that no sentence ends before."""
_PROGRAM_LABEL = re.compile(r"\w+(?:\.+\w+)*::")
"""A name with two colons: a place in a program, which leads to nothing."""
_SIGN = re.compile(r"[^\w\s]+ *")
FEW = 4
"""Kept lines below a heading that they may have among them, at most."""


def end_of_lines(lines: Sequence[Line], units: Sequence[Unit], place: int, chunks: dict[int, Chunk]) -> int:
    """The end of the units of single lines that stand together from ``place`` on."""
    end = place + 1
    while end < len(units):
        unit = units[end]
        line = lines[unit.start]
        if unit.end - unit.start > 1 or unit.marker is not None or unit.key or ruled_off(line.text):
            break
        if chunks[unit.start].shown:
            break
        if over_another_term(lines, units, end) or is_key_line(lines, units, end, chunks):
            break
        above = lines[unit.start - 1]
        if signed_below(above, line):
            end += 1
            continue
        if line.crossing and (_goes_with(above, line) or chunks[unit.start] is chunks[unit.start - 1]):
            end += 1
            continue
        if line.gap > 1 or line.crossing or underlined(lines, unit.start):
            break
        if line.gap == 0 and chunks[unit.start] is not chunks[unit.start - 1]:
            break
        if line.gap == 1 and not _goes_with(above, line):
            break
        if line.gap == 0 and not chunks[unit.start].fixed and lone_sentence(lines, unit, chunks):
            break
        end += 1
    return end


def _goes_with(above: Line, below: Line) -> bool:
    """Whether program text goes on after a blank line."""
    return (code(above.text) and code(below.text)) and not prose(below.text)


def titles_and_lines(
    lines: Sequence[Line], units: Sequence[Unit], chunks: dict[int, Chunk], levels: Levels, hyphens: Hyphens
) -> list[Placed]:
    """Headings and kept lines out of single lines that stand together."""
    first, last = units[0].start, units[-1].end
    part = lines[first:last]
    if (
        len(part) > 1
        and part[0].text.endswith(":")
        and not chunks[first].verse
        and not _PROGRAM_LABEL.fullmatch(part[0].text)
        and min(line.indent for line in part[1:]) > part[0].indent
    ):
        level = levels.of(part[0].indent, None)
        lead = Placed(Block(Kind.PARAGRAPH, flow_lines(part[:1], hyphens), level=level), first, first + 1)
        return [lead, *titles_and_lines(lines, units[1:], chunks, levels, hyphens)]
    if len(units) > 1 and (
        _heads_code(part[0], part[1]) or _marks(part[0], part[1]) or _name_over_title(part[0], part[1])
    ):
        return [
            *titles_and_lines(lines, units[:1], chunks, levels, hyphens),
            *titles_and_lines(lines, units[1:], chunks, levels, hyphens),
        ]
    coded = sum(code(line.text) or command(line.text) for line in part) > 0.4 * len(part)
    coded = coded or (len(part) > 1 and any(prompted(line.text) for line in part))
    coded = coded or (len(part) == 1 and (displayed(lines, first) or signed(part[0].text)))
    coded = coded and not quoted_words([line.text for line in part])
    title = int(len(part) > 1 and chapter_number(part[0], part[1]))
    heads = 0
    leads_in = first > 0 and not (
        heading_may_follow(lines[first - 1], part[title]) or _marks(lines[first - 1], part[title])
    )
    leads_in = leads_in or _right_under(lines, first)
    leads_in = leads_in or (len(part) == 1 and not loud(part[0].text) and around_display(lines, first))
    many = chunks[first].fixed and len(part) > FEW and not _over_deeper(part)
    if not coded and not leads_in and not many:
        heads = title
        while heads < len(part) and heads < TALLEST:
            following = lines[first + heads + 1] if first + heads + 1 < len(lines) else None
            if _opens_title(part, heads):
                heads += 1
            elif not heads == title > 0 and (
                not heading(part[heads], following) or (heads and not loud(part[heads].text))
            ):
                break
            heads += 1
        if heads == title:
            heads = 0
        if heads > 1 and all(line.text.endswith((".", "?")) for line in part[:heads]):
            heads = 0
        if heads == len(part) and (more_capitals(lines, first, last) or (heads > 1 and town(part[-1].text))):
            heads = 0
        if heads == TALLEST and heads < len(part) and loud(part[heads].text):
            heads = 0  # more lines in capitals than a title has
        if heads and len(part) > heads and chunks[first].fixed and not loud(part[title].text):
            heads = 0
    placed: list[Placed] = []
    if heads:
        following = lines[first + heads] if first + heads < len(lines) else None
        level = 1 if title or _opens_title(part, 0) else heading(part[title], following)
        levels.columns.clear()
        placed.append(
            Placed(Block(Kind.HEADING, flow_lines(part[:heads], hyphens), level=level), first, first + heads)
        )
    if heads < len(part):
        rest = part[heads:]
        if heads and subtitle(lines, first + heads) == last:
            return [*placed, title_block(rest, hyphens, first + heads, last, 2)]
        level = levels.of(min(line.indent for line in rest), None)
        answered = asked(rest[0].text) or typed_below(lines, last + 1, rest[0].indent)
        if len(rest) == 1 and not coded and not _parted(rest[0].text) and not answered:
            placed.append(
                Placed(Block(Kind.PARAGRAPH, flow_lines(rest, hyphens), level=level), last - 1, last)
            )
            return placed
        block = Block(Kind.PREFORMATTED, lines=keep_lines(rest), level=level, code=coded)
        placed.append(Placed(block, first + heads, last))
    return placed


def _parted(text: str) -> bool:
    """Whether a wide blank parts a line that is no running text, or stands elsewhere than behind the end of a sentence."""
    return "  " in text and not (prose(text) and _WIDE.search(text) is None)


def _opens_title(part: Sequence[Line], index: int) -> bool:
    """Whether a line in capitals ends in a comma above the last one of a title of two lines."""
    above = part[index].text
    return index == 0 and len(part) == 2 and above.endswith(",") and loud(above) and loud(part[1].text)


def _over_deeper(part: Sequence[Line]) -> bool:
    """Whether words in capitals stand left of all lines below them: a heading, however many these are."""
    return (
        part[0].apart
        and loud(part[0].text)
        and "  " not in part[0].text
        and min(line.indent for line in part[1:]) > part[0].indent
        and not any(loud(line.text) for line in part[1:])
    )


def _right_under(lines: Sequence[Line], index: int) -> bool:
    """Whether a line that is set in, in plain type, stands right under the line above, or under what begins behind wide blanks in it."""
    line = lines[index]
    under = index > 0 and not line.apart and inner_column(lines[index - 1], line.indent)
    return under and not line.marked()


def _name_over_title(line: Line, below: Line) -> bool:
    """Whether capitals in spaced letters stand over others that are not: a name, and what it is the name of."""
    return spaced(line.text) and loud(below.text) and not spaced(below.text)


def _marks(line: Line, below: Line) -> bool:
    """Whether a line has a sign and the words of the line right below it: a mark for a program, and then the title."""
    return (
        not below.apart
        and line.text.endswith(below.text)
        and _SIGN.fullmatch(line.text[: -len(below.text)]) is not None
    )


def _heads_code(line: Line, below: Line) -> bool:
    """Whether a line in capitals is the heading of commands that stand deeper right below it."""
    if below.indent <= line.indent or below.gap or "  " in line.text or line.text.endswith(":"):
        return False
    return heading(line, below) == 1 and (code(below.text) or command(below.text))
