"""Numbered lines alone between blank lines: headings or items all of them, as most of those are that count on from each other.

`7a. The Lamp` is a heading by its title, `7b. What the Bell Is For` an item; that they count on at one place shows brothers.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from fit.document.blocks import Block, Kind
from fit.document.characters import cut
from fit.document.text.line import Line, parted_above
from fit.document.text.make import concat, space
from fit.document.text.running.placed import Placed
from fit.document.text.signs.measure import small_word
from fit.document.text.signs.rules import ruled_off

LEAST = 3
"""Brothers, at least."""
MOST = 3
"""Items for one of which a heading becomes one as well, at least: short items look like titles."""
SEVERAL = 2
"""Headings that show what all their brothers are, if each of these stands over text of its own: at least."""
MOST_WORDS = 10
"""Words of a title that nothing but its capitals shows, at most."""
NAMED = 5
"""Brothers that are all set as titles are, at least, where none was read as one."""
LEVEL = 2
"""The level of these."""
TALLEST = 3
"""Lines of a title, at most."""
LONGEST = 160
"""Characters of a title, at most."""
OPEN = 60
"""Rows of brothers of one form that may go on at a place, at most: of more the nearest, so that many short lists cost no more each."""
KINDS = frozenset({Kind.HEADING, Kind.ITEM})
_NUMBER = re.compile(
    r"(?P<head>[(\[]?(?:[A-Z]?\d{1,3}[.-])*)(?P<last>\d{1,3})(?P<letter>[a-z]?)(?P<tail>\.\)|[.):\]]|(?= )) +(?=\S)"
)


Form = tuple[str, str, bool]
"""What the numbers of brothers share: all but the last part, the signs behind it, and whether a letter counts them."""


@dataclass(slots=True)
class _Run:
    """Brothers: blocks by number, the count of the last of them, where it stands and where the words behind its number do."""

    numbers: list[int]
    count: int
    indent: int
    column: int

    def goes_on(self, count: int, indent: int, column: int) -> bool:
        """Whether a number is the next one; of a longer number the first or the last figure may stand at the same place."""
        return count == self.count + 1 and (indent == self.indent or column == self.column)


def with_numbered_alike(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, the few of each row of brothers made what most of them are."""
    result = list(placed)
    runs = _runs(lines, placed)
    brothers = {number: run for run in runs for number in run}
    for place, run in enumerate([*runs, *_as_deep(lines, placed)]):
        counted_on = place < len(runs)
        kinds = Counter(placed[number].block.kind for number in run)
        heads, items = kinds[Kind.HEADING], kinds[Kind.ITEM]
        named = counted_on and len(run) >= NAMED and not heads
        if named and all(_named(lines, placed, number) for number in run):
            for number in run:
                result[number] = _heading(placed[number], LEVEL)
        if len(run) < LEAST or not heads or not items:
            continue
        read = [number for number in run if placed[number].block.kind is Kind.HEADING]
        ruled = any(ruled_off(lines[placed[number].end - 1].text) for number in read)
        listed = [number for number in run if placed[number].block.kind is Kind.ITEM]
        led = sum(placed[number].block.text.chars.endswith(":") for number in run) < SEVERAL
        stopped = 2 * sum(placed[number].block.text.chars.endswith(".") for number in read) > heads
        titles = [
            number
            for number in listed
            if _titled(lines, placed, number, stopped=stopped) and not (led and _leads(lines, placed[number]))
        ]
        if not counted_on:  # the last entry of a list is one, whatever stands below it
            either = {*titles, *read}
            titles = [
                number
                for number in titles
                if 2 * len(either.intersection(brothers[number])) > len(brothers[number])
            ]
        alike = titles == listed and all(_over_margin(lines, placed[number]) for number in run)
        if heads > items or (heads >= SEVERAL and alike):
            levels = Counter(placed[number].block.level for number in read)
            for number in titles:
                result[number] = _heading(placed[number], levels.most_common(1)[0][0])
        elif not counted_on or ruled or items < MOST * heads:
            continue
        elif all(_alone(lines, placed[number]) for number in read):
            for number in read:
                result[number] = _item(lines, placed[number], placed[listed[0]].block.level)
    return result


def _runs(lines: Sequence[Line], placed: Sequence[Placed]) -> list[list[int]]:
    """The headings and items by number that count on from each other; of several that do, the nearest of its own kind."""
    runs: dict[Form, list[_Run]] = {}
    found: list[_Run] = []
    for number, one in enumerate(placed):
        line = lines[one.start]
        match = _NUMBER.match(line.text) if one.block.kind in KINDS else None
        if match is None or not (match["head"].strip("([") or match["tail"]):
            continue
        lettered = match["letter"] != ""
        form = (match["head"] + (match["last"] if lettered else ""), match["tail"], lettered)
        count = ord(match["letter"]) - ord("a") + 1 if lettered else int(match["last"])
        column = line.indent + match.end()
        opened = runs.setdefault(form, [])
        before = [run for run in opened if run.goes_on(count, line.indent, column)]
        own = [run for run in before if placed[run.numbers[-1]].block.kind is one.block.kind]
        if before:
            run = (own or before)[-1]
            del opened[opened.index(run) + 1 :]
            run.numbers.append(number)
            run.count, run.indent, run.column = count, line.indent, column
        else:
            run = _Run([number], count, line.indent, column)
            del opened[: 1 - OPEN]
            opened.append(run)
            found.append(run)
    return [run.numbers for run in found]


def _as_deep(lines: Sequence[Line], placed: Sequence[Placed]) -> list[list[int]]:
    """The headings and items by number whose numbers have as many parts, several of them: each chapter has its own, `2.1`, `4.1`."""
    found: dict[tuple[int, str, int], list[int]] = {}
    for number, one in enumerate(placed):
        line = lines[one.start]
        match = _NUMBER.match(line.text) if one.block.kind in KINDS else None
        if match is not None and match["head"][:1].isdigit():
            parts = match["head"].count(".") + match["head"].count("-")
            found.setdefault((parts, match["tail"], line.indent), []).append(number)
    return list(found.values())


def _over_margin(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block stands alone over what does not hang below the words behind its number, as the text of an item does."""
    return _alone(lines, one) and _not_hung(lines, one)


def _not_hung(lines: Sequence[Line], one: Placed) -> bool:
    """Whether what stands below a block begins left of the words behind its number."""
    match = _NUMBER.match(lines[one.start].text)
    return match is not None and lines[one.end].indent < lines[one.start].indent + match.end()


def _named(lines: Sequence[Line], placed: Sequence[Placed], number: int) -> bool:
    """Whether an item is a few words with a capital each, small ones left out, alone over text at its own margin."""
    one, below = placed[number], placed[number + 1 : number + 2]
    if not below or below[0].block.kind in KINDS:
        return False
    words = one.block.text.chars.rstrip(".").split()
    few = 0 < len(words) <= MOST_WORDS and not one.block.text.chars.endswith((":", ";", ","))
    return few and all(map(_capital, words)) and one.end == one.start + 1 and _over_margin(lines, one)


def _capital(word: str) -> bool:
    return word[:1].isupper() or word.isdecimal() or small_word(word)


def _alone(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block of a few lines stands between blank lines, with something below it."""
    apart = parted_above(lines, one.start) and parted_above(lines, one.end)
    return apart and one.end < len(lines) and one.end - one.start <= TALLEST


def _leads(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block counted by a single number ends in a colon: a step leads to how it is done."""
    match = _NUMBER.match(lines[one.start].text)
    single = match is not None and not match["head"].strip("([")
    return single and one.block.text.chars.endswith(":")


def _titled(lines: Sequence[Line], placed: Sequence[Placed], number: int, *, stopped: bool) -> bool:
    """Whether an item can be a title: it stands alone, is no sentence, and no further number is what stands below it.

    Where its brothers are ``stopped`` it may end as a sentence does. One line may stand right over a text that does not hang.
    """
    one = placed[number]
    block = one.block
    text = block.text.chars
    below = placed[number + 1].block if number + 1 < len(placed) else None
    last = below is None or (below.kind is Kind.ITEM and below.label.chars[:1].isdigit())
    told = last or (text.endswith(".") and not stopped) or len(text) > LONGEST
    line = one.end == one.start + 1 < len(lines) and parted_above(lines, one.start)
    return (_alone(lines, one) or (line and _not_hung(lines, one))) and (text.isupper() or not told)


def _heading(one: Placed, level: int) -> Placed:
    text = concat([one.block.label, space(), one.block.text])
    return replace(one, block=Block(Kind.HEADING, text, level=level))


def _item(lines: Sequence[Line], one: Placed, level: int) -> Placed:
    match = _NUMBER.match(lines[one.start].text)
    label = len(match[0].rstrip(" ")) if match is not None else 0
    text = one.block.text
    item = Block(Kind.ITEM, cut(text, label + 1, len(text)), label=cut(text, 0, label), level=level)
    return replace(one, block=item)
