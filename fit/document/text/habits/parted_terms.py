"""Terms that a blank line parts from their texts: a run of such entries, of which some alone look like titles or commands.

In capitals a term is taken for a title, with brackets for program text; one below the other, each over text that is set
deeper, they are of one kind, and what no title looks like tells which.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.habits.below import below_term
from fit.document.text.line import Line
from fit.document.text.make import fold
from fit.document.text.running.placed import Placed
from fit.document.text.signs.code import code, small_words
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, hangs, prose
from fit.document.text.titles.headings import loud

LEAST = 4
"""Entries of a run, at least."""
OPTIONS = 2
"""Entries of a run whose terms are all options, at least."""
SAID = 2
"""Small words that make a sentence of an option and its text, at least."""
PLAIN = 3
"""Entries of a run of which none looks like a title, at least, with their texts at one column."""
TEXTS = 0.75
"""The share of these texts that are paragraphs, at least."""
ODD = 3
"""Entries of a run for one of which the term looks like no title, at most."""
STEP = 16
"""Cells by which the text stands deeper than its term, at most."""
LONGEST = 66
"""Characters of a term, at most."""
STACKED = 6
"""Terms over one text, at most."""
_SIGNS = re.compile(r"[][<>{}|=*$%\\_]|\d[/:]\d")
"""What names, forms and numbers have in them, and titles hardly ever."""
_OPTION = re.compile(r"--?[A-Za-z?][\w-]*(?![^\s,=<[])")
"""An option at the start of a line."""
_REMARK = re.compile(r"\([^()]*\)")
_SETTING = re.compile(r"[A-Za-z_][\w.-]* ?= ?\S")
"""A value given to a name in program text, which no text explains below a blank line."""


def with_parted_terms(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with items made of the terms of such runs and of the paragraphs below them."""
    terms = [_is_term(lines, placed, number) for number in range(len(placed))]
    found: set[int] = set()
    named: set[int] = set()
    seen: set[int] = set()
    for number, term in enumerate(terms):
        if term and number not in seen:
            run = _run(lines, placed, terms, number)
            seen.update(run)
            if _of_terms(lines, placed, run):
                found.update(run)
            elif all(_named(lines, placed[other]) for other in run):
                named.update(run)
    if len(named) >= LEAST:
        found |= named
    return _made(lines, placed, found) if found else list(placed)


def _is_term(lines: Sequence[Line], placed: Sequence[Placed], number: int) -> bool:
    """Whether a block may be a term, or a few of them, between blank lines and over deeper text."""
    one = placed[number]
    line = lines[one.start]
    if number + 1 == len(placed) or not (one.start == 0 or line.gap):
        return False
    below = lines[placed[number + 1].start]
    if placed[number + 1].start != one.end or not below.gap or not 0 < below.indent - line.indent <= STEP:
        return False
    kept = one.block.kind is Kind.PREFORMATTED
    if one.end - one.start > (STACKED if kept else 1):
        return False
    if not kept and one.block.kind not in {Kind.PARAGRAPH, Kind.HEADING}:
        return False
    return all(
        other.indent == line.indent
        and len(other.text) <= LONGEST
        and other.text[-1] not in ":,;{"
        and not closed(other.text)
        and not hangs(other.text)
        and ": " not in other.text
        and not _SETTING.match(other.text)
        and find_marker(other.text) is None
        for other in lines[one.start : one.end]
    )


def _run(lines: Sequence[Line], placed: Sequence[Placed], terms: Sequence[bool], number: int) -> list[int]:
    """The entries that follow each other from one on: nothing else stands as far left as their terms."""
    indent = lines[placed[number].start].indent
    run = [number]
    for other in range(number + 1, len(placed)):
        if lines[placed[other].start].indent > indent:
            continue
        if lines[placed[other].start].indent < indent or not terms[other]:
            break
        run.append(other)
    return run


def _of_terms(lines: Sequence[Line], placed: Sequence[Placed], run: Sequence[int]) -> bool:
    """Whether the entries of a run are of different kinds, and enough of their terms are no titles; or none of them can be one."""
    texts = [lines[placed[number].start].text for number in run]
    if len(run) >= OPTIONS and all(map(_option, texts)):
        return True
    if len(run) >= PLAIN and all(_plain(placed[number].block) for number in run):
        return _over_texts(lines, placed, run) and 2 * sum(map(prose, texts)) < len(run)
    if len(run) < LEAST or len({placed[number].block.kind for number in run}) == 1:
        return False
    odd = titles = 0
    for number in run:
        text = lines[placed[number].start].text
        title = text[0].isupper() and not code(text) and not _SIGNS.search(text)
        odd += not title
        titles += title and not loud(text) and placed[number].block.kind is Kind.HEADING
    return odd * ODD >= len(run) and titles * ODD < odd * 2


def _option(text: str) -> bool:
    """Whether a line is an option, with what it takes and a remark in brackets perhaps, and says nothing of it."""
    return _OPTION.match(text) is not None and small_words(_REMARK.sub("", text)) < SAID


def _plain(block: Block) -> bool:
    """Whether a block looks like no title and like no program text, and has words."""
    chars = block.lines[0].chars if block.lines else block.text.chars
    return any(map(str.isalnum, chars)) and block.kind is not Kind.HEADING and not block.code


def _over_texts(lines: Sequence[Line], placed: Sequence[Placed], run: Sequence[int]) -> bool:
    """Whether what stands below the entries of a run begins at one column, and nearly all of it is paragraphs."""
    below = [placed[number + 1] for number in run]
    texts = sum(one.block.kind is Kind.PARAGRAPH and " " in lines[one.start].text for one in below)
    return len({lines[one.start].indent for one in below}) == 1 and texts >= TEXTS * len(below)


def _named(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block that was taken for a title is one name with signs that no title has: `LAMP_OUT`."""
    text = lines[one.start].text
    return one.block.kind is Kind.HEADING and "_" in text and " " not in text


def _made(lines: Sequence[Line], placed: Sequence[Placed], found: set[int]) -> list[Placed]:
    """The blocks with items made of the terms that were found."""
    result: list[Placed] = []
    open_: list[int] = []
    number = 0
    while number < len(placed):
        one = placed[number]
        line = lines[one.start]
        number += 1
        while open_ and open_[-1] >= line.indent:
            open_.pop()
        if number - 1 not in found:
            result.append(one)
            continue
        level = len(open_)
        for index in range(one.start, one.end):
            label = fold(lines[index].piece(lines[index].indent, lines[index].end))
            result.append(Placed(Block(Kind.ITEM, label=label, level=level), index, index + 1))
        below = placed[number]
        column = lines[below.start].indent
        if below.block.kind is Kind.PARAGRAPH:
            last = result[-1]
            result[-1] = Placed(replace(last.block, text=below.block.text), last.start, below.end)
            number += 1
        open_.append(line.indent)
        inner = next((other for other in range(number, len(placed)) if other in found), len(placed))
        under = below_term(lines, placed[number:inner], line.indent, column, level)
        result += under
        number += len(under)
    return result
