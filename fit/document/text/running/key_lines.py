"""Keys on lines of their own, over the indented text that says what they mean."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.lists.own_line_terms import bracketed
from fit.document.text.make import flow_lines, fold
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.lone_sentences import lone_sentence
from fit.document.text.running.placed import Levels, Placed
from fit.document.text.running.set_lines import SIGNED
from fit.document.text.running.terms import sign_alone
from fit.document.text.running.unit import Unit
from fit.document.text.signs.code import asked, code, typed
from fit.document.text.signs.measure import closed, prose, small_word
from fit.document.text.signs.rules import ruled_off
from fit.document.text.titles.headings import (
    loud,
)

LONGEST_KEY_LINE = 40
"""Characters of a key of several words that stands on a line of its own, at most."""
_NAME = re.compile(r"\w+_\w+|'[^']+'|\u2018[^\u2018\u2019]+\u2019|`[^`']+'|\"[^\"]+\"")
"""A name of a program or a quotation: a term to be explained, though it may be in capitals as titles are."""
_KEYCAP = re.compile(r"<[a-z]+(?:[ -][A-Za-z]+)*>|<[A-Z][a-z]*-.{1,8}>|\S{1,12} +\{\S+\}")
"""A key of the keyboard, which looks like an element of a markup language, or one with a name in braces."""
_WORD = re.compile(r"(?<!\S)[(\"'`]?[^\W\d_]{3,}[)\"'.,:;]*(?!\S)")
_OPTION = re.compile(r"[-+]{1,2}[A-Za-z][\w-]* ")


def over_another_term(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether a term has another one right below it, over the meaning of both."""
    if place + 1 >= len(units) or not units[place].term:
        return False
    unit, below = units[place], units[place + 1]
    level = lines[below.start].indent == lines[unit.start].indent
    return level and (below.term or below.key > 0)


def is_key_line(lines: Sequence[Line], units: Sequence[Unit], place: int, chunks: dict[int, Chunk]) -> bool:
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
    if below.indent < line.indent + 2 or (below.apart and not _over_page(lines, units, place)):
        return False
    if typed_below(lines, unit.end, line.indent) or _between_two(lines, units[place].start, below.indent):
        return False
    company = _company(lines, units, place)
    if below.indent > line.indent + 16 and not company:
        return False
    if not (company or units[place].term) and _in_sentence(lines, units[place].start):
        return False
    if unit.marker is not None or unit.key:
        return False
    chunk = chunks[units[place].start]
    listed = chunk.entries.terms and chunk.entries.column == line.indent and not chunk.fixed
    if listed and not (typed(line.text) or typed(below.text)):
        return True
    if _set_in_first(lines[unit.start : unit.end], line.indent):
        return False
    told = closed(below.text) or prose(below.text) or below.text.startswith("(")
    if units[place].term and (told or unit.end - unit.start > 1 or _explained(lines, units[place], unit)):
        return not code(below.text)
    if chunks[unit.start].fixed:
        return False
    named = company and (_OPTION.match(line.text) is not None or bracketed(line.text))
    if len(line.text) > LONGEST_KEY_LINE and " " in line.text and not named:
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
    alone = company and sign_alone(line.text)
    return unit.end - unit.start > 1 or said or alone or lone_sentence(lines, unit, chunks)


def _over_page(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether a page ends between a key that stands alone and its text, as company on both sides shows."""
    first, below = units[place], units[place + 1]
    if (
        not lines[below.start].crossing
        or not parted_above(lines, first.start)
        or place < 1
        or place + 2 >= len(units)
    ):
        return False
    before, after = units[:place], units[place + 2 :]
    return all(_company(lines, [first, below, *side], 0) for side in (before[-2:], after[:2]))


def _between_two(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a small word alone, `or`, parts two lines that are set in alike."""
    line = lines[index]
    inside = index > 0 and not line.apart and lines[index - 1].indent == column
    return inside and line.text.isalpha() and line.text.islower() and small_word(line.text)


def _in_sentence(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is quoted right below a sentence that has no end: what that one leads to, and no key."""
    line, above = lines[index], lines[index - 1] if index else None
    if above is None or line.apart or above.indent != line.indent or line.text[0] not in "\"'`":
        return False
    return prose(above.text) and not closed(above.text)


def _explained(lines: Sequence[Line], term: Unit, unit: Unit) -> bool:
    """Whether words stand below a term that is no statement, and nothing else is set in there: all that is said of it."""
    key = lines[term.start].text
    words = key.endswith(":") or _WORD.search(lines[unit.start].text) is not None
    words = words and not (" " in key and typed(key))
    after = unit.end
    return words and (parted_above(lines, after) or lines[after].indent <= lines[term.start].indent)


def typed_below(lines: Sequence[Line], index: int, indent: int) -> bool:
    """Whether a game goes on with what was typed: what stands above is its answer, and no key with its text."""
    return index < len(lines) and lines[index].indent == indent and asked(lines[index].text)


def _set_in_first(part: Sequence[Line], indent: int) -> bool:
    """Whether a paragraph of three lines or more has only its first line set in from ``indent``."""
    return len(part) > 2 and all(line.indent <= indent for line in part[1:])


def _beside(lines: Sequence[Line], first: Unit, second: Unit) -> bool:
    """Whether two single lines stand right under one another: usage, of which none alone is a key."""
    above, below = lines[first.start], lines[second.start]
    single = first.end - first.start == 1 and first.marker is None and not first.key
    level = below.gap == 0 and not below.crossing and above.indent == below.indent
    return single and level and not (prose(above.text) or closed(above.text) or ruled_off(above.text))


def _long_phrase(text: str) -> bool:
    return prose(text) and len(text.split()) > 5


def _company(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether a key nearby has its text at the same column: beside it, or like this one on the line below it.

    The text may begin with a dash there, which is part of the key where both stand on one line.
    """
    line, below = lines[units[place].start], lines[units[place + 1].start]
    for other in units[max(0, place - 3) : place + 4]:
        first = lines[other.start]
        if other.start == units[place].start or first.indent != line.indent:
            continue
        dash = 2 if below.text.startswith("- ") and first.cells[below.indent :].startswith("- ") else 0
        if other.key and other.text == below.indent + dash:
            return True
        under = lines[other.start + 1] if other.end == other.start + 1 < len(lines) else None
        if under is not None and not other.key and not under.gap and under.indent == below.indent:
            return True
    return False


def key_line(lines: Sequence[Line], unit: Unit, below: Unit, levels: Levels, hyphens: Hyphens) -> Placed:
    line = lines[unit.start]
    part = lines[below.start : below.end]
    level = levels.of(line.indent, part[-1].indent)
    block = Block(
        Kind.ITEM, flow_lines(part, hyphens), label=fold(line.piece(line.indent, line.end)), level=level
    )
    return Placed(block, unit.start, below.end)
