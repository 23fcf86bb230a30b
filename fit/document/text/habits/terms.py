"""Terms over their texts: where most of those at one place were read as such, the others that stand so are ones too.

Each place was judged for itself: a term in capitals looks like a title, one with brackets like program text, a long one
like a paragraph, two short lines like lines that stay. That the same form comes again and again shows what they are.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Protocol

from fit.document.blocks import Block, Kind, Text
from fit.document.text.habits.below import below_term, text_column
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import EMPTY, flow_lines, fold
from fit.document.text.running.placed import Placed
from fit.document.text.running.terms import ROOM
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import joins, shortfall
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import Measure, closed, hangs, starts_small

LEAST = 4
"""Terms that were read as such, at least, to show what the document does."""
ALIKE = 2
"""Terms that begin alike, at least: a letter, a digit, or the same sign."""
SINGLE = 3
"""Terms on a line of their own over running text that weigh as much as one in lines that stay: they were near to it."""
STEP = 2
"""Cells by which its text stands deeper than a term, at least."""
LONGEST = 66
"""Characters of a term, at most, unless it says of what kind it is, as others do."""
_OF_KIND = re.compile(r"\S+ +[(\[<] ?[\w-]+(?: [\w-]+)? ?[)\]>](?: |$)")
"""A name, and of what kind it is in brackets."""

Reader = Callable[[int, int], list[Placed]]
"""From a half-open range of lines to its blocks, read by themselves."""


class _TextReader(Protocol):
    def __call__(self, first: int, last: int, *, code: bool) -> list[Placed]: ...


@dataclass(slots=True)
class _Form:
    """The entries at one indent with their texts at one column."""

    terms: list[Placed] = field(default_factory=list)
    """Those that were read as a term with its text."""
    others: dict[int, list[int]] = field(default_factory=dict)
    """Blocks that were read as something else, by number, each with the lines of the terms in it."""
    against: float = 0.0
    """How many terms there are in these, those weighing less that nothing but their looks speaks against."""


def with_terms(
    lines: Sequence[Line], placed: Sequence[Placed], measure: Measure, hyphens: Hyphens, read: Reader
) -> list[Placed]:
    """The blocks in order, those made items that stand as most terms of the document do; ``read`` reads lines anew."""
    forms: dict[tuple[int, int], _Form] = {}
    times = Counter(one.start for one in placed)
    for number, one in enumerate(placed):
        place = _place(lines, one)
        if place is not None and times[one.start] == 1:
            _sort(lines, placed, number, forms.setdefault(place, _Form()), place, measure)
    found: dict[int, tuple[list[int], int]] = {}
    for form in forms.values():
        if len(form.terms) < LEAST or len(form.terms) <= form.against:
            continue
        level = Counter(one.block.level for one in form.terms).most_common(1)[0][0]
        traits = Counter(trait for one in form.terms for trait in _traits(_term(lines, one)))
        between = _between_terms(
            lines, form.terms, {terms[0] for terms in form.others.values() if len(terms) == 1}
        )
        for number, terms in form.others.items():
            alike = all(traits[trait] >= ALIKE for term in terms for trait in _traits(lines[term].text))
            if alike or terms[0] in between:
                found[number] = (terms, level)

    def text_of(first: int, last: int, *, code: bool) -> list[Placed]:
        """The blocks of the lines below a term that were kept with it."""
        part = lines[first:last]
        flows = len({line.indent for line in part}) == 1 and all(
            joins(above, below, measure.right(first), measure.slack) for above, below in pairwise(part)
        )
        if flows:
            return [Placed(Block(Kind.PARAGRAPH, flow_lines(part, hyphens)), first, last)]
        return [replace(each, block=replace(each.block, code=code)) for each in read(first, last)]

    return _made(lines, placed, found, text_of) if found else list(placed)


def _between_terms(lines: Sequence[Line], known: Sequence[Placed], others: Collection[int]) -> set[int]:
    """The lines of ``others`` between two of the ``known`` terms that only texts and such lines stand between: of one list with them."""
    found: set[int] = set()
    if not others:
        return found
    indent = lines[known[0].start].indent
    for one, other in pairwise(known):
        between = range(one.start + 1, other.start)
        if all(lines[place].indent > indent or place in others for place in between):
            found.update(place for place in between if place in others)
    return found


def _place(lines: Sequence[Line], one: Placed) -> tuple[int, int] | None:
    """The indent of the first line of a block and the column of what is set deeper right below it, or beside it."""
    line, kind = lines[one.start], one.block.kind
    if kind is Kind.ITEM and one.block.text.chars:
        return line.indent, text_column(lines, one)
    if kind in {Kind.TABLE, Kind.PICTURE, Kind.FURNITURE}:
        return None
    if len(line.text) > LONGEST and not _OF_KIND.match(line.text):
        return None
    below = one.start + 1
    if parted_above(lines, below) or lines[below].indent < line.indent + STEP:
        return None
    return line.indent, lines[below].indent


def _sort(
    lines: Sequence[Line],
    placed: Sequence[Placed],
    number: int,
    form: _Form,
    place: tuple[int, int],
    measure: Measure,
) -> None:
    """Put a block into its form, if it is a term with its text or could be made of such."""
    one = placed[number]
    line, kind = lines[one.start], one.block.kind
    single = one.end == one.start + 1
    if kind is Kind.ITEM and find_marker(line.text) is None:
        terms = _entries(lines, one, place, measure)
        if len(terms) > 1 and one.block.text.sources[0] >= lines[one.start + 1].offset:
            form.others[number] = terms
            form.against += len(terms)
        else:
            form.terms.append(one)
    if kind is Kind.ITEM or not (one.start == 0 or line.apart or lines[one.start - 1].indent > line.indent):
        return
    if kind is Kind.HEADING and not single:
        return  # its rule says what it is
    terms = [one.start] if single else _entries(lines, one, place, measure)
    if terms and all(_may_be(lines, term) for term in terms):
        form.others[number] = terms
        plain = single and number + 1 < len(placed) and placed[number + 1].block.kind is Kind.PARAGRAPH
        form.against += len(terms) / SINGLE if plain and kind is not Kind.HEADING else len(terms)


def _entries(lines: Sequence[Line], one: Placed, place: tuple[int, int], measure: Measure) -> list[int]:
    """The lines of the terms that a block is made of, with their texts at the same column; empty where there is more in it."""
    indent, column = place
    joined = one.block.kind is not Kind.PREFORMATTED
    terms: list[int] = []
    for index in range(one.start, one.end):
        line = lines[index]
        if line.indent == indent:
            below = lines[index + 1] if index + 1 < one.end else None
            if below is None or below.indent != column or below.apart or (terms and terms[-1] == index - 1):
                return []
            if " = " in line.text:
                return []  # values of a program, which go on deeper
            if joined and starts_small(below.text) and not starts_small(line.text):
                return []
            if joined and _full(lines, index, measure) and not _OF_KIND.match(line.text):
                return []
            terms.append(index)
        elif line.indent < column or line.apart:
            return []
    return terms


def _full(lines: Sequence[Line], term: int, measure: Measure) -> bool:
    """Whether a line leaves so little room that it may be one that was wrapped."""
    return shortfall(lines[term], lines[term + 1], measure.right(term)) < ROOM


def _may_be(lines: Sequence[Line], term: int) -> bool:
    """Whether a line stops where a term can, and what stands below it may be its text."""
    text, below = lines[term].text, lines[term + 1].text
    if text.endswith((":", ",", "{", "\\")) or hangs(text) or not any(map(str.isalnum, text)):
        return False
    if any(text.count(left) > text.count(right) for left, right in ("()", "[]")):
        return False
    return not code(below) or not (" " in text or code(text))


def _term(lines: Sequence[Line], item: Placed) -> str:
    """The term of an item: its line, or the part of it before the text."""
    line, text = lines[item.start], item.block.text
    alone = not text.chars or text.sources[0] >= lines[min(item.start + 1, len(lines) - 1)].offset
    return line.text if alone else item.block.label.chars


def _traits(text: str) -> list[str]:
    """What a term is known by: a capital, a small letter, a digit or its sign first, a colon or a gap inside, a full stop last."""
    first = text[0]
    traits = ["A" if first.isupper() else "a" if first.isalpha() else "0" if first.isdigit() else first]
    traits += [trait for trait in (": ", "   ") if trait in text]
    return [*traits, "."] if closed(text) else traits


def _made(
    lines: Sequence[Line],
    placed: Sequence[Placed],
    found: dict[int, tuple[list[int], int]],
    text_of: _TextReader,
) -> list[Placed]:
    """The blocks with those that were found made items, and what stands below these at its level."""
    result: list[Placed] = []
    number = 0
    while number < len(placed):
        one = placed[number]
        number += 1
        if one_terms := found.get(number - 1):
            terms, level = one_terms
            for term, end in zip(terms, [*terms[1:], one.end], strict=True):
                alone = one.end == one.start + 1
                rest = placed[number:] if alone else text_of(term + 1, end, code=one.block.code)
                text = _text(rest[0]) if rest and rest[0].start == term + 1 else None
                last = term + 1 if text is None else rest[0].end
                result.append(_item(lines, term, last, text or EMPTY, level))
                used = int(text is not None)
                under = below_term(lines, rest[used:], lines[term].indent, lines[term + 1].indent, level)
                result += under
                if alone:
                    number += used + len(under)
            if not alone:
                under = below_term(
                    lines, placed[number:], lines[one.start].indent, lines[one.start + 1].indent, level
                )
                result += under
                number += len(under)
        else:
            result.append(one)
    return result


def _text(below: Placed) -> Text | None:
    """The text of a term: a paragraph, or a single line that was kept."""
    block = below.block
    if block.kind is Kind.PARAGRAPH:
        return block.text
    if block.kind is Kind.PREFORMATTED and not block.code and len(block.lines) == 1:
        return fold(block.lines[0])
    return None


def _item(lines: Sequence[Line], start: int, end: int, text: Text, level: int) -> Placed:
    line = lines[start]
    label = fold(line.piece(line.indent, line.end))
    return Placed(Block(Kind.ITEM, text, label=label, level=level), start, end)
