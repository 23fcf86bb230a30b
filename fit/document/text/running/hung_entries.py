"""Entries without a sign, one below the other: what does not fit on the first line of one hangs deeper than it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.entries import labelled
from fit.document.text.running.unit import Unit
from fit.document.text.signs.code import typed
from fit.document.text.signs.joins import FAR, NEAR, shortfall
from fit.document.text.signs.markers import Marker
from fit.document.text.signs.measure import closed, hangs, prose, small_word, starts_small

STEPS = range(2, 7)
"""Cells by which the rest of an entry hangs."""
BESIDE = 3
"""Paragraphs on either side of one that show how its like are set, at most."""
ARROWS = ">> "
"""What stands before something to be tried."""
DEEP = range(2, 9)
"""Cells by which what a term means stands deeper."""
STEPPED = 4
"""Such terms in one piece, at least."""
OPEN = 0.8
"""Share of the terms that leave room for a word of what they mean, at least."""
RARE = 4
"""Such entries, at least, for each line that goes on at their column all the same."""
EARLY = 0.4
"""Share of a line that is left free where a step ends in it, at least."""
AROUND = 60
"""Lines on either side of an entry in which others show how it hangs."""
HUNG = 3
"""Entries of a list that hang, at least, to show how all of it is set."""
Step = tuple[str, int, int]
"""A kind of mark, its column, and the column at which the text behind it goes on."""


@dataclass(frozen=True, slots=True)
class Entries:
    """How a list without signs is set, all through it."""

    column: int
    """Where each entry begins; -1 where the lines are no such list."""
    terms: bool
    """Whether its first line is a term, and what that means stands deeper."""

    def part(self, above: Line, below: Line, start: int, right: int) -> bool:
        """Whether the lower one of two lines begins something of its own; ``start`` is the column of what is above it."""
        if below.indent == self.column <= start:
            return self.terms or not _on_below(above, below, right)
        return self.terms and above.indent == self.column and shortfall(above, below, right) >= 0


NO_ENTRIES = Entries(-1, terms=False)


def hung(part: Sequence[Line], right: int) -> bool:
    """Whether the rest of an entry hangs below its first line, and the next entry begins right below at its column."""
    for index in range(len(part) - 2):
        above, below = part[index : index + 2]
        if not hangs_below(above, below, right):
            continue
        end = index + 2
        while end < len(part) and part[end].indent == below.indent:
            end += 1
        if end < len(part) and part[end].indent == above.indent and next_entry(part[end - 1], part[end]):
            return True
    return False


def hung_over_page(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether a line at the top of a page stands where the entries right above and below it hang, and the next one begins below it."""
    outer, inner = lines[unit.start].indent, lines[index].indent
    if inner - outer not in STEPS or unit.start == 0 or index + 2 >= len(lines):
        return False
    near = not (lines[unit.start].apart or lines[index + 1].apart or lines[index + 2].apart)
    around = (unit.start - 1, index + 1, index + 2)
    return near and [lines[place].indent for place in around] == [inner, outer, inner]


def find_entries(part: Sequence[Line], marked: Sequence[bool], right: int) -> Entries:
    """Where the entries of a list begin whose rest hangs, several of them, if next to no line goes on there.

    What stands behind a sign or beside a key, as ``marked`` has it line by line, hangs anyway.
    """
    if _stepped(part):
        heads = [pair for pair in pairwise(part) if pair[0].indent < pair[1].indent]
        room = sum(shortfall(*pair, right) > NEAR for pair in heads)
        return Entries(part[0].indent, terms=room >= OPEN * len(heads))
    if _small_steps(part, marked, right):
        return Entries(part[0].indent, terms=False)
    hanging = Counter(
        above.indent
        for own, (above, below) in zip(marked, pairwise(part), strict=False)
        if not own and hangs_below(above, below, right)
    )
    if not hanging:
        return NO_ENTRIES
    column, times = max(hanging.items(), key=lambda item: (item[1], -item[0]))
    level = (pair for pair in pairwise(part) if pair[0].indent == pair[1].indent == column)
    on = sum(_on_below(*pair, right) for pair in level)
    return Entries(column, terms=False) if times >= max(HUNG, RARE * on) else NO_ENTRIES


def _stepped(part: Sequence[Line]) -> bool:
    """Whether each line at the column of the first one, several of them, has deeper ones at one column right below it."""
    outer = part[0].indent
    inner = part[1].indent if len(part) > 1 else 0
    if inner - outer not in DEEP or part[-1].indent != inner:
        return False
    places = [index for index, line in enumerate(part) if line.indent == outer]
    return (
        len(places) >= STEPPED
        and all(part[place + 1].indent == inner for place in places)
        and all(line.indent in {outer, inner} for line in part)
    )


def _small_steps(part: Sequence[Line], marked: Sequence[bool], right: int) -> bool:
    """Whether all lines begin with a small letter at one column and end no sentence, the first one and others far too early.

    They are steps or names, and what found no room in one goes on below it.
    """
    if (
        len(part) < STEPPED
        or any(marked)
        or part[0].text[0].isupper()
        or len({line.indent for line in part}) > 1
    ):
        return False
    if not all(starts_small(line.text) for line in part) or any(closed(line.text) for line in part[:-1]):
        return False
    early = [shortfall(*pair, right) > EARLY * right for pair in pairwise(part)]
    full = any(shortfall(*pair, right) < 0 for pair in pairwise(part))
    return early[0] and sum(early) > 1 and full


def _on_below(above: Line, below: Line, right: int) -> bool:
    """Whether the sentence of a full line goes on in one that begins with no label."""
    return not closed(above.text) and shortfall(above, below, right) < 0 and not labelled(below.text)


def hangs_below(above: Line, below: Line, right: int) -> bool:
    """Whether a full line that ends no sentence stands over one that hangs, neither of them program text."""
    full = not closed(above.text) and shortfall(above, below, right) <= NEAR
    return full and below.indent - above.indent in STEPS and not (typed(above.text) or typed(below.text))


def hangs_as_others(part: Sequence[Line], above: Line, below: Line, right: int) -> bool:
    """Whether a line hangs below a nearly full one where the rest of another entry of the same list hangs in mid-sentence."""
    if below.indent - above.indent not in STEPS or shortfall(above, below, right) > NEAR:
        return False
    return any(
        (first.indent, second.indent) == (above.indent, below.indent) and hangs_below(first, second, right)
        for first, second in pairwise(part)
    )


def hangs_in_company(lines: Sequence[Line], unit: Unit, index: int, right: int) -> bool:
    """Whether a line hangs below the first one of an entry, or below one that hangs, as those of several entries nearby do.

    Those go on there in the middle of a sentence; another paragraph would begin at the column of the first line. What begins
    right below that with a small word and a capital is a sentence of its own, unless the line above is full.
    """
    above, below = lines[index - 1], lines[index]
    outer = lines[unit.start].indent
    if below.indent - outer not in STEPS or unit.marker is not None or unit.key:
        return False
    first = index == unit.start + 1
    if first and (closed(above.text) or small_word(below.text.partition(" ")[0])):
        return False
    if not (prose(above.text) and prose(below.text)) or shortfall(above, below, right) > FAR:
        return False
    near = lines[max(0, index - AROUND) : index + AROUND]
    return (
        sum(
            (one.indent, other.indent) == (outer, below.indent)
            and not (closed(one.text) or other.apart)
            and starts_small(other.text)
            and prose(one.text)
            for one, other in pairwise(near)
        )
        >= HUNG
    )


def item_steps(lines: Sequence[Line], markers: Sequence[Marker | None]) -> frozenset[Step]:
    """Where items go on deeper than the text after their mark, in the middle of a sentence, several of them in the document."""
    found: Counter[Step] = Counter()
    for index, marker in enumerate(markers[:-1]):
        if marker is None or parted_above(lines, index + 1):
            continue
        above, below = lines[index : index + 2]
        if below.indent > above.indent + marker.text and starts_small(below.text) and prose(below.text):
            found[_step(marker, above, below)] += prose(above.text) and not closed(above.text)
    return frozenset(step for step, times in found.items() if times >= HUNG)


def _step(marker: Marker, above: Line, below: Line) -> Step:
    return marker.kind, above.indent, below.indent


def hangs_as_items(lines: Sequence[Line], unit: Unit, index: int, steps: frozenset[Step], right: int) -> bool:
    """Whether what stands behind a mark goes on where the sentences of other items do, deeper than their text.

    A few words far short of the margin may be a term, and what stands deeper says what it means.
    """
    above, below = lines[index - 1], lines[index]
    if unit.marker is None or index != unit.start + 1 or _step(unit.marker, above, below) not in steps:
        return False
    if below.indent <= unit.text or closed(above.text):
        return False
    open_ = prose(above.text) or hangs(above.text) or above.text.count("(") > above.text.count(")")
    small = starts_small(below.text) and not typed(below.text)
    return open_ or small or shortfall(above, below, right) <= FAR


def next_entry(above: Line, below: Line) -> bool:
    """Whether a line begins with a capital, no deeper than the line above it, which ends a sentence."""
    begun = below.text[:1].isupper() or below.text[:1] == "["
    return begun and closed(above.text) and not above.text.endswith(":") and below.indent <= above.indent


def hangs_as_beside(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether a nearly full sentence stands over a text that hangs, in the shape of a paragraph beside it.

    That one stops in mid-sentence at the end of its first line. What is to be tried stands behind `>>`, all of it.
    """
    above, below = lines[index - 1], lines[index]
    if above.text.startswith(ARROWS):
        return below.indent == above.indent + len(ARROWS) and closed(above.text)
    if below.indent - above.indent not in STEPS or not (above.text.endswith(".") and prose(above.text)):
        return False
    told = prose(below.text) and below.text[:1].isupper() and shortfall(above, below, right) <= FAR
    if not told or not (index == 1 or above.apart):
        return False
    return any(_runs_over(lines, start, above.indent, below.indent) for start in _beside(lines, index - 1))


def _beside(lines: Sequence[Line], start: int) -> Iterator[int]:
    """The first lines of the paragraphs above and below the one that begins at ``start``."""
    for step in (-1, 1):
        place, found = start + step, 0
        while 0 <= place < len(lines) and found < BESIDE:
            if parted_above(lines, place):
                found += 1
                yield place
            place += step


def _runs_over(lines: Sequence[Line], start: int, indent: int, column: int) -> bool:
    """Whether a paragraph begins at ``indent`` and goes on at ``column``, in the middle of a sentence."""
    if parted_above(lines, start + 1):
        return False
    above, below = lines[start], lines[start + 1]
    hung = (above.indent, below.indent) == (indent, column)
    return hung and prose(above.text) and not closed(above.text) and starts_small(below.text)
