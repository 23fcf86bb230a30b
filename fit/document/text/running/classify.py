"""Units to blocks: what each is, its level, its text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import concat, flow, flow_lines, fold, keep_lines
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.closings import signed_below
from fit.document.text.running.displays import displayed, signed
from fit.document.text.running.numbered import numbered_heading
from fit.document.text.running.set_lines import SIGNED
from fit.document.text.running.terms import sign_alone
from fit.document.text.running.units import Unit
from fit.document.text.signs.code import asked, code, command, prompted, typed
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.pictures import remark_rule, ruled_off
from fit.document.text.signs.quotes import quoted_words
from fit.document.text.signs.titled_rules import titled_rule
from fit.document.text.signs.underlines import underlines
from fit.document.text.titles.headings import (
    TALLEST,
    around_display,
    between_rules,
    chapter_number,
    dressed,
    heading,
    heading_may_follow,
    lines_over_rule,
    loud,
    loud_lines,
    titles_over_rule,
    underlined,
    underlined_each,
    underlined_together,
)
from fit.document.text.titles.small_titles import middle_title, part_title, subtitle, title_under

LONGEST_RULE = 32
"""Cells of a rule that are kept: it was as long as the line was wide."""
LONGEST_KEY_LINE = 40
"""Characters of a key of several words that stands on a line of its own, at most."""
_OPENS = re.compile(r"else|then|do|begin|try:?|.*[{;]")
"""What opens a part of a program."""
_NAME = re.compile(r"\w+_\w+|'[^']+'|\u2018[^\u2018\u2019]+\u2019|`[^`']+'|\"[^\"]+\"")
"""A name of a program or a quotation: a term to be explained, though it may be in capitals as titles are."""
_KEYCAP = re.compile(r"<[a-z]+(?:[ -][A-Za-z]+)*>|<[A-Z][a-z]*-.{1,8}>|\S{1,12} +\{\S+\}")
"""A key of the keyboard, which looks like an element of a markup language, or one with a name in braces."""
_WORD = re.compile(r"(?<!\S)[(\"'`]?[^\W\d_]{3,}[)\"'.,:;]*(?!\S)")
_OPTION = re.compile(r"[-+]{1,2}[A-Za-z][\w-]* ")
STEP = 3
"""Cells of indentation that make a level."""


@dataclass(slots=True)
class Placed:
    """A block and the body lines ``start <= i < end`` it was made of."""

    block: Block
    start: int
    end: int


@dataclass(slots=True)
class Levels:
    """The depth of indentation, from the items that are open."""

    base: int
    columns: list[tuple[int, int]] = field(default_factory=list)

    def of(self, indent: int, text: int | None) -> int:
        """The level of a block at ``indent``; ``text`` is the text column of an item: one a column is one list."""
        while self.columns and (
            self.columns[-1][0] >= indent or self.columns[-1][1] == text
            if text is not None
            else self.columns[-1][1] > indent + 1
        ):
            self.columns.pop()
        level = len(self.columns)
        if text is not None:
            self.columns.append((indent, text))
        if not self.columns and indent - self.base >= STEP:
            return 1
        return level


def classify(
    lines: Sequence[Line], units: Sequence[Unit], chunks: dict[int, Chunk], base: int, hyphens: Hyphens
) -> list[Placed]:
    """The blocks of the units, in order."""
    placed: list[Placed] = []
    levels = Levels(base)
    place = 0
    while place < len(units):
        unit = units[place]
        line = lines[unit.start]
        single = unit.end - unit.start == 1
        if chunks[unit.start].shown:
            end = chunks[unit.start].end
            part = lines[unit.start : end]
            level = levels.of(min(one.indent for one in part), None)
            block = Block(Kind.PREFORMATTED, lines=keep_lines(part), level=level, code=True)
            placed.append(Placed(block, unit.start, end))
            place += len(part)
        elif titles := _ruled_titles(lines, unit, hyphens) or _bare_titles(
            lines, units, place, chunks, placed, levels, hyphens
        ):
            placed += titles
            while place < len(units) and units[place].start < titles[-1].end:
                place += 1
        elif single and ruled_off(line.text):
            placed.append(Placed(_rule(line), unit.start, unit.end))
            place += 1
        elif _stacked(lines, units, place):
            level = levels.of(line.indent, lines[unit.start + 1].indent)
            label = fold(line.piece(line.indent, line.end))
            placed.append(Placed(Block(Kind.ITEM, label=label, level=level), unit.start, unit.end))
            place += 1
        elif unit.marker is not None or unit.key:
            placed.append(_item(lines, unit, levels, hyphens))
            place += 1
        elif single and _keyed(lines, units, place, chunks):
            placed.append(_key_line(lines, unit, units[place + 1], levels, hyphens))
            place += 2
        elif single and (chunks[unit.start].fixed or not _sentence(lines, unit, chunks)):
            end = _run_of_fixed(lines, units, place, chunks)
            placed.extend(_single(lines, units[place:end], chunks, levels, hyphens))
            place = end
        else:
            part = lines[unit.start : unit.end]
            level = levels.of(min(one.indent for one in part), None)
            block = Block(Kind.PARAGRAPH, flow_lines(part, hyphens), level=level)
            placed.append(Placed(block, unit.start, unit.end))
            place += 1
    return placed


def _ruled_titles(lines: Sequence[Line], unit: Unit, hyphens: Hyphens) -> list[Placed]:
    """The headings with rules beside, above or below them that a unit begins; mostly none."""
    start, line = unit.start, lines[unit.start]
    single, bare = unit.end - start == 1, unit.marker is None and not unit.key
    if single and ruled_off(line.text):
        end = between_rules(lines, start)
        return [_title(lines[start + 1 : end], hyphens, start, end + 1)] if end else []
    if single and (ruled := titled_rule(line.text))[2]:
        text = fold(line.piece(line.indent + ruled[0], line.indent + ruled[1]))
        return [Placed(Block(Kind.HEADING, text, level=ruled[2], note="rule left out"), start, unit.end)]
    if single and underlined(lines, start) and (not unit.key or underlines(lines, unit.end)):
        level = 1 if lines[start + 1].text[0] in "=*#\u2550" else 2
        tall = underlined_each(lines, start)
        part = [line, lines[start + 2]] if tall else [line]
        return [_title(part, hyphens, start, tall or unit.end + 1, level)]
    if bare and (end := titles_over_rule(lines, start)):
        titles = [
            _title([lines[at]], hyphens, at, at + 1, 1 if at == start else 2) for at in range(start, end)
        ]
        return [*titles[:-1], replace(titles[-1], end=end + 1)]
    if bare and underlined_together(lines, start, unit.end):
        return [_title(lines[start : unit.end], hyphens, start, unit.end + 1)]
    if bare and single and (end := lines_over_rule(lines, start)):
        return [_title(lines[start:end], hyphens, start, end + 1)]
    return []


def _bare_titles(
    lines: Sequence[Line],
    units: Sequence[Unit],
    place: int,
    chunks: dict[int, Chunk],
    placed: Sequence[Placed],
    levels: Levels,
    hyphens: Hyphens,
) -> list[Placed]:
    """The heading that a unit is by its letters, its place on the page or its number; the lists above it end there."""
    unit = units[place]
    start, end, level = unit.start, unit.end, 1
    bare = unit.marker is None and not unit.key and not ruled_off(lines[start].text)
    below_title = placed[-1:] and placed[-1].end == start and placed[-1].block.kind is Kind.HEADING
    if bare and below_title and (added := subtitle(lines, start)):
        end, level = added, 2
    elif not (bare and loud_lines(lines, start, end)):
        small = _small_title(lines, unit, chunks, levels.base, placed) if bare else 0
        level = 1 if small else numbered_heading(lines, units, place)
        end = small or end
    if not level:
        return []
    levels.columns.clear()
    return [_title(lines[start:end], hyphens, start, end, level)]


def _title(part: Sequence[Line], hyphens: Hyphens, start: int, end: int, level: int = 1) -> Placed:
    return Placed(Block(Kind.HEADING, flow_lines(part, hyphens), level=level), start, end)


def _small_title(
    lines: Sequence[Line], unit: Unit, chunks: dict[int, Chunk], base: int, placed: Sequence[Placed]
) -> int:
    """The end of the title that a part's number shows, or its place in the middle of the page; or 0."""
    start = unit.start
    if end := part_title(lines, start):
        return end
    above = placed[-1] if placed else None
    if (
        above
        and above.end == start
        and above.block.kind is Kind.HEADING
        and part_title(lines, above.start) == start
    ):
        return title_under(lines, start)
    below = chunks.get(unit.end)
    return middle_title(lines, start, base, max(chunks[start].right, below.right if below else 0))


def _item(lines: Sequence[Line], unit: Unit, levels: Levels, hyphens: Hyphens) -> Placed:
    line = lines[unit.start]
    label_end = line.indent + (len(unit.marker.label) if unit.marker else unit.key)
    if unit.key:
        label_end = line.indent + len(
            re.sub(r"(?:\s*\.{3,}|(?: \.){3,})$", "", line.cells[line.indent : label_end])
        )
    label = fold(line.piece(line.indent, label_end))
    level = levels.of(line.indent, unit.text)
    pieces = [one.piece(0, one.end) for one in lines[unit.start : unit.end]]
    pieces[0] = line.piece(max(unit.text, label_end), line.end)
    if unit.cut:
        below = lines[unit.start + 1]
        label = flow([label, below.piece(below.indent, unit.text)], hyphens)
        pieces[1] = below.piece(unit.text, below.end)
    return Placed(Block(Kind.ITEM, flow(pieces, hyphens), label=label, level=level), unit.start, unit.end)


def _stacked(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether a term has another one right below it, over the meaning of both."""
    if place + 1 >= len(units) or not units[place].term:
        return False
    unit, below = units[place], units[place + 1]
    level = lines[below.start].indent == lines[unit.start].indent and not lines[below.start].apart
    return level and (below.term or below.key > 0)


def _keyed(lines: Sequence[Line], units: Sequence[Unit], place: int, chunks: dict[int, Chunk]) -> bool:
    """Whether a short line is the key of the indented paragraph right below it."""
    if place + 1 >= len(units):
        return False
    line, unit = lines[units[place].start], units[place + 1]
    below = lines[unit.start]
    if chunks[unit.start].shown:
        return False
    beside = place and not units[place].term and _beside(lines, units[place - 1], units[place])
    if line.text == SIGNED or beside:
        return False
    if below.apart or below.indent < line.indent + 2:
        return False
    if _typed_below(lines, unit.end, line.indent):
        return False
    company = _company(lines, units, place)
    if below.indent > line.indent + 16 and not company:
        return False
    if unit.marker is not None or unit.key:
        return False
    told = closed(below.text) or prose(below.text) or below.text.startswith("(")
    if units[place].term and (told or unit.end - unit.start > 1 or _explained(lines, units[place], unit)):
        return not code(below.text)
    if chunks[unit.start].fixed:
        return False
    if len(line.text) > LONGEST_KEY_LINE and " " in line.text and not (company and _OPTION.match(line.text)):
        return False
    if (
        loud(line.text)
        and line.text.lstrip("'`\"")[:1] not in "-/+"
        and line.gap
        and line.indent < below.indent - 2
        and not (company and _NAME.fullmatch(line.text))
    ):
        return False
    if (
        (closed(line.text) and not sign_alone(line.text))
        or (code(line.text) and not _KEYCAP.fullmatch(line.text))
        or code(below.text)
        or ruled_off(below.text)
        or (not company and _long_phrase(line.text))
    ):
        return False
    said = (closed(below.text) and not below.text.endswith(":")) or prose(below.text)
    alone = company and sign_alone(line.text) and not typed(below.text)
    return unit.end - unit.start > 1 or said or alone or _sentence(lines, unit, chunks)


def _explained(lines: Sequence[Line], term: Unit, unit: Unit) -> bool:
    """Whether words stand below a term that is no statement, and nothing else is set in there: all that is said of it."""
    key = lines[term.start].text
    words = _WORD.search(lines[unit.start].text) is not None and not (" " in key and typed(key))
    after = unit.end
    return words and (
        after == len(lines) or lines[after].apart or lines[after].indent <= lines[term.start].indent
    )


def _typed_below(lines: Sequence[Line], index: int, indent: int) -> bool:
    """Whether a game goes on with what was typed: what stands above is its answer, and no key with its text."""
    return index < len(lines) and lines[index].indent == indent and asked(lines[index].text)


def _beside(lines: Sequence[Line], first: Unit, second: Unit) -> bool:
    """Whether two single lines stand right under one another: usage, of which none alone is a key."""
    above, below = lines[first.start], lines[second.start]
    single = first.end - first.start == 1 and first.marker is None and not first.key
    level = below.gap == 0 and not below.crossing and above.indent == below.indent
    return single and level and not (prose(above.text) or closed(above.text) or ruled_off(above.text))


def _long_phrase(text: str) -> bool:
    return prose(text) and len(text.split()) > 5


def _company(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether a key nearby has its text at the same column: beside it, or like this one on the line below it."""
    line, below = lines[units[place].start], lines[units[place + 1].start]
    for other in units[max(0, place - 3) : place + 4]:
        first = lines[other.start]
        if other.start == units[place].start or first.indent != line.indent:
            continue
        if other.key and other.text == below.indent:
            return True
        under = lines[other.start + 1] if other.end == other.start + 1 < len(lines) else None
        if under is not None and not other.key and not under.gap and under.indent == below.indent:
            return True
    return False


def _key_line(lines: Sequence[Line], unit: Unit, below: Unit, levels: Levels, hyphens: Hyphens) -> Placed:
    line = lines[unit.start]
    part = lines[below.start : below.end]
    level = levels.of(line.indent, part[-1].indent)
    block = Block(
        Kind.ITEM, flow_lines(part, hyphens), label=fold(line.piece(line.indent, line.end)), level=level
    )
    return Placed(block, unit.start, below.end)


def _sentence(lines: Sequence[Line], unit: Unit, chunks: dict[int, Chunk]) -> bool:
    """Whether a single line is running text: a whole sentence, or a line that fills the measure."""
    line = lines[unit.start]
    text = line.text
    if dressed(line) or "     " in text or ("   " in text and not prose(text)):
        return False
    if code(text) or (command(text) and not prose(text)):
        return False
    if loud(text) and not text.endswith((".", ":")):
        return False
    if chunks[unit.start].broken and not closed(text):
        return False
    words = text.split()
    starts = text.lstrip("\"'(*[<")[:1]
    if closed(text) and len(words) >= 3 and (starts.isupper() or starts.isdigit() or prose(text)):
        return sum(any(map(str.isalpha, word)) for word in words) > 1
    if text.endswith(":") and prose(text):
        return True
    return prose(text) and len(words) >= 6 and line.end > 0.5 * chunks[unit.start].right


def _run_of_fixed(lines: Sequence[Line], units: Sequence[Unit], place: int, chunks: dict[int, Chunk]) -> int:
    """The end of the units of single lines that stand together from ``place`` on."""
    end = place + 1
    while end < len(units):
        unit = units[end]
        line = lines[unit.start]
        if unit.end - unit.start > 1 or unit.marker is not None or unit.key or ruled_off(line.text):
            break
        if titled_rule(line.text)[2] or chunks[unit.start].shown:
            break
        if _stacked(lines, units, end) or _keyed(lines, units, end, chunks):
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
        if line.gap == 0 and not chunks[unit.start].fixed and _sentence(lines, unit, chunks):
            break
        end += 1
    return end


def _goes_with(above: Line, below: Line) -> bool:
    """Whether program text goes on after a blank line."""
    return (code(above.text) and code(below.text)) and not prose(below.text)


def _single(
    lines: Sequence[Line], units: Sequence[Unit], chunks: dict[int, Chunk], levels: Levels, hyphens: Hyphens
) -> list[Placed]:
    """Headings and kept lines out of single lines that stand together."""
    first, last = units[0].start, units[-1].end
    part = lines[first:last]
    if (
        len(part) > 1
        and part[0].text.endswith(":")
        and not chunks[first].verse
        and min(line.indent for line in part[1:]) > part[0].indent
    ):
        level = levels.of(part[0].indent, None)
        lead = Placed(Block(Kind.PARAGRAPH, flow_lines(part[:1], hyphens), level=level), first, first + 1)
        return [lead, *_single(lines, units[1:], chunks, levels, hyphens)]
    if len(units) > 1 and _heads_code(part[0], part[1]):
        return [
            *_single(lines, units[:1], chunks, levels, hyphens),
            *_single(lines, units[1:], chunks, levels, hyphens),
        ]
    coded = sum(code(line.text) or command(line.text) for line in part) > 0.4 * len(part)
    coded = coded or (len(part) > 1 and any(prompted(line.text) for line in part))
    coded = coded or (len(part) == 1 and (displayed(lines, first) or signed(part[0].text)))
    coded = coded and not quoted_words([line.text for line in part])
    title = int(len(part) > 1 and chapter_number(part[0], part[1]))
    heads = 0
    leads_in = first > 0 and not heading_may_follow(lines[first - 1], part[title])
    leads_in = leads_in or (len(part) == 1 and not loud(part[0].text) and around_display(lines, first))
    if not coded and not leads_in and not (chunks[first].fixed and len(part) > 4):
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
        if heads == title or (
            heads == len(part) and heads > 1 and not all(loud(line.text) for line in part[2 * title :])
        ):
            heads = 0
        if heads > 1 and all(line.text.endswith((".", "?")) for line in part[:heads]):
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
            return [*placed, _title(rest, hyphens, first + heads, last, 2)]
        level = levels.of(min(line.indent for line in rest), None)
        answered = asked(rest[0].text) or _typed_below(lines, last + 1, rest[0].indent)
        if len(rest) == 1 and not coded and "  " not in rest[0].text and not answered:
            placed.append(
                Placed(Block(Kind.PARAGRAPH, flow_lines(rest, hyphens), level=level), last - 1, last)
            )
            return placed
        block = Block(Kind.PREFORMATTED, lines=keep_lines(rest), level=level, code=coded)
        placed.append(Placed(block, first + heads, last))
    return placed


def _opens_title(part: Sequence[Line], index: int) -> bool:
    """Whether a line in capitals ends in a comma above the last one of a title of two lines."""
    above = part[index].text
    return index == 0 and len(part) == 2 and above.endswith(",") and loud(above) and loud(part[1].text)


def _heads_code(line: Line, below: Line) -> bool:
    """Whether a line in capitals is the heading of commands that stand deeper right below it."""
    if below.indent <= line.indent or below.gap or "  " in line.text or line.text.endswith(":"):
        return False
    return heading(line, below) == 1 and loud(line.text) and (code(below.text) or command(below.text))


def _rule(line: Line) -> Block:
    """A rule between parts of the text, no longer than the smallest screens are wide."""
    close = 2 * remark_rule(line.text)
    short = line.piece(line.indent, line.indent + LONGEST_RULE)
    if close and len(line.text) > LONGEST_RULE:
        short = concat(
            [
                line.piece(line.indent, line.indent + LONGEST_RULE - close),
                line.piece(line.end - close, line.end),
            ]
        )
    note = "rule shortened" if len(line.text) > LONGEST_RULE else ""
    return Block(Kind.PREFORMATTED, lines=(short,), note=note)
