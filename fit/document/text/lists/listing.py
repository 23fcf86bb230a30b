"""Which lines start list items or hanging keys: a marker alone is no proof, its company is.

Proof is a sibling in sequence, a hanging indent, or a place where no wrapped line can stand.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.cut_keys import find_cut_keys
from fit.document.text.lists.keys import find_keys
from fit.document.text.lists.no_items import requested, set_aside
from fit.document.text.lists.option_keys import add_explained_options, add_long_options, add_quoted_names
from fit.document.text.lists.own_labels import own_labels
from fit.document.text.lists.own_line_terms import dashes_of_terms, own_line_terms
from fit.document.text.lists.stacked_terms import stacked_terms
from fit.document.text.signs.joins import NEAR, shortfall
from fit.document.text.signs.markers import WEAK, Marker, find_marker, first_under, follows
from fit.document.text.signs.measure import Measure, closed, hangs, prose, starts_small
from fit.document.text.signs.spaced import spaced
from fit.document.text.titles.headings import loud

LOOK_BACK = 60
"""Lines within which a sibling is looked for."""
DASH = 4
"""Cells free before a dash that may start a wrapped line: it has next to no width, the margin is an estimate."""
HANDMADE = 8
"""Cells that a line broken by hand may leave free."""
STOPS = 3
"""Lines of nothing but a full stop, a plus, or the same two signs, that part paragraphs, at least."""
_BETWEEN = frozenset(".+")
"""Signs that stand right between two texts."""
_PARTING = frozenset(("%%", "++", "~~", "**", "--", "==", "##"))
"""Two signs that part texts."""
COMPANY = 3
"""Lines to another key of a list, at most."""

_ROW = re.compile(r"\d+(?: {2,}(?:\d+|\.{3,}))+")
_QUANTITY = re.compile(r"\d[\d.,]* (?=[a-z\d\W])\S+(?: \S+){0,3}? {2,}(?=\S)")
"""A number and a few words that are no title, then wide blanks."""


@dataclass(slots=True)
class Listing:
    """For each line the marker that starts it, and the column of the text after a hanging key (0: none); terms alone on a line."""

    markers: list[Marker | None]
    keys: list[int]
    terms: set[int]
    """The lines that are nothing but a term, with their text below them."""
    cut: set[int]
    """The lines that start with the rest of the key above."""
    stacked: set[int]
    """The terms that stand over one meaning together."""
    labels: set[int] = field(default_factory=set)
    """The lines that begin with a label which begins lines again and again."""
    stops: frozenset[int] = frozenset()
    """The lines that are nothing but a sign, as the writer parts paragraphs by them."""
    shown: dict[int, int] = field(default_factory=dict)
    """For each line that an example of program text starts with, where the example ends."""
    steps: frozenset[tuple[str, int, int]] = frozenset()
    """Kind and column of marks with the column, deeper than their text, at which it goes on."""


def find_listing(
    lines: Sequence[Line], taken: Sequence[object], measure: Measure, keyed: Mapping[int, int], base: int
) -> Listing:
    """The markers and keys of the body that are ones; ``keyed`` has keys that columns have shown already.

    ``base`` is the usual margin of running text.
    """
    possible = [
        find_marker(line.text) if taken[index] is None and not spaced(line.text) else None
        for index, line in enumerate(lines)
    ]
    markers: list[Marker | None] = [None] * len(lines)
    open_lists: dict[tuple[int, str], tuple[int, Marker]] = {}
    titles = _signed_titles(lines, possible)
    possible = [None if index in titles else marker for index, marker in enumerate(possible)]
    siblings = _siblings(lines, possible)
    for index, marker in enumerate(possible):
        if marker is None or _quantity(lines, index, marker):
            continue
        if _item(lines, index, marker, measure, siblings, open_lists):
            markers[index] = marker
            open_lists[lines[index].indent, marker.kind] = (index, marker)
    keys = find_keys(lines, taken, markers, measure, keyed)
    add_long_options(lines, taken, keys)
    add_quoted_names(lines, taken, keys)
    add_explained_options(lines, taken, keys)
    cut = find_cut_keys(lines, keys)
    stacked = stacked_terms(lines, taken, keys)
    terms = own_line_terms(lines, keys, base) | stacked
    free = {index for index in terms if taken[index] is None and markers[index] is None}
    for index in dashes_of_terms(lines, keys, free):
        markers[index] = None
    return Listing(markers, keys, free, cut, stacked & free, own_labels(lines), _stops(lines, taken))


def _stops(lines: Sequence[Line], taken: Sequence[object]) -> frozenset[int]:
    """The lines of nothing but a full stop, a plus, or two signs such as `%%`, three at least, most of them next to running text.

    The first two stand right between lines of which one is running text; other signs close the text right above.
    """
    found: dict[str, list[int]] = {}
    for index, line in enumerate(lines):
        if (line.text in _BETWEEN or (len(line.text) == 2 and line.text in _PARTING)) and taken[
            index
        ] is None:
            found.setdefault(line.text, []).append(index)
    stops: list[int] = []
    for sign, places in found.items():
        beside = [
            index
            for index in places
            if not (parted_above(lines, index) or (sign in _BETWEEN and parted_above(lines, index + 1)))
            and (prose(lines[index - 1].text) or (sign in _BETWEEN and prose(lines[index + 1].text)))
        ]
        if len(places) >= STOPS and 2 * len(beside) > len(places):
            stops += places
    return frozenset(stops)


def _signed_titles(lines: Sequence[Line], possible: Sequence[Marker | None]) -> set[int]:
    """Titles in capitals behind a sign, two at least: each alone between blank lines, and none right after another."""
    found: dict[tuple[int, str], set[int]] = defaultdict(set)
    for index, marker in enumerate(possible):
        if (
            marker is None
            or not marker.kind.startswith("bullet")
            or not lines[index].text[marker.text].isalnum()
            or not loud(lines[index].text[marker.text :])
        ):
            continue
        line = lines[index]
        alone = parted_above(lines, index) and parted_above(lines, index + 1)
        beside = [possible[near] for near in (index - 1, index + 1) if 0 <= near < len(lines)]
        if alone and not any(other is not None and other.kind == marker.kind for other in beside):
            found[line.indent, marker.kind].add(index)
    return {index for places in found.values() if len(places) > 1 for index in places}


def _quantity(lines: Sequence[Line], index: int, marker: Marker) -> bool:
    """Whether a bare number is the first word of a key, its text at the column of that beside or below: `4.8 to 5 V   Good`.

    Or the first of figures with wide blanks between them, and dots for those left out: `11    10    ...    1`.
    """
    line = lines[index]
    if "..." in line.text and _ROW.fullmatch(line.text):
        return True
    match = _QUANTITY.match(line.text) if "  " in line.text and marker.kind.startswith("number") else None
    if match is None:
        return False
    column = line.indent + match.end()
    return any(
        other.indent == column or (other.indent == line.indent and _starts_at(other, column))
        for place in (*range(max(0, index - COMPANY), index), *range(index + 1, index + 1 + COMPANY))
        if place < len(lines) and (other := lines[place]).text
    )


def _starts_at(line: Line, column: int) -> bool:
    """Whether something begins at a column behind two blanks."""
    return line.end > column > 1 and line.cells[column] != " " and line.cells[column - 2 : column] == "  "


def _siblings(lines: Sequence[Line], possible: Sequence[Marker | None]) -> set[int]:
    """Indices of possible markers that have a sibling before or after them at the same indent."""
    found: set[int] = set()
    left: dict[int, list[tuple[int, Marker]]] = defaultdict(list)
    texts: dict[int, list[tuple[int, Marker]]] = defaultdict(list)
    for index, marker in enumerate(possible):
        if marker is None:
            continue
        indent = lines[index].indent
        for row in (left[indent], texts[indent + marker.text]):
            for place, other in row[-4:]:
                if index - place <= LOOK_BACK and follows(other, marker):
                    found.update((place, index))
            row.append((index, marker))
    return found


def _item(
    lines: Sequence[Line],
    index: int,
    marker: Marker,
    measure: Measure,
    siblings: set[int],
    open_lists: dict[tuple[int, str], tuple[int, Marker]],
) -> bool:
    line = lines[index]
    bullet = marker.kind.startswith("bullet")
    if set_aside(lines, index, marker, measure.right(index)) or requested(lines, index):
        return False
    hanging = _hangs_under(lines, index, marker, measure.right(index))
    lone = index not in siblings and not hanging
    if lone and line.crossing and _cut_by_page(lines, index, measure.right(index)):
        return False
    fresh = line.gap > 0 or index == 0
    before = open_lists.get((line.indent, marker.kind))
    running = before is not None and index - before[0] <= LOOK_BACK and follows(before[1], marker)
    if marker.kind.startswith("step") and marker.ordinal == 0 and not (hanging or index in siblings):
        return False
    if fresh:
        if bullet and marker.label in WEAK:
            apart = marker.label == "o" and marker.text > 2  # no word has two blanks after it
            return index in siblings or hanging or running or apart
        return not (
            marker.kind.startswith("letter") and not marker.strong and not (index in siblings or hanging)
        )
    if bullet and index in siblings and _level_bullet(lines, index, marker):
        return True
    above = lines[index - 1]
    under = line.indent > above.indent and not line.crossing and first_under(above.text, marker)
    if under or _follows_inside(above, line, marker):
        return True
    right = measure.right(index)
    full = shortfall(above, line, right) < (DASH if marker.label in {"-", "--"} else 0)
    if line.crossing:
        return running or index in siblings or (marker.strong and closed(above.text)) or hanging
    if (
        not (running or index in siblings)
        and prose(above.text)
        and hangs(above.text)
        and above.text[-1].isalpha()
    ):
        return False
    same_indent = above.indent == line.indent
    if running or (index in siblings and not full):
        flat = full and same_indent and not hanging and not closed(above.text)
        inside = flat and (
            (not bullet and " " in above.text)
            or (_flat_before(lines, index) and starts_small(line.text[marker.text :]))
        )
        return not inside or _list_above(before, lines, index)
    if full and not closed(above.text) and not hanging:
        return False
    if full and same_indent and not hanging:
        return index in siblings and closed(above.text) and not bullet
    if hanging and not (full and same_indent and hangs(above.text)):
        return True
    if index in siblings:
        return True
    deeper = line.indent > above.indent and (above.text.endswith(":") or not full)
    return (marker.strong and not full and (closed(above.text) or deeper)) or (
        bullet and (above.text.endswith(":") or (deeper and not prose(above.text)))
    )


def _follows_inside(above: Line, line: Line, marker: Marker) -> bool:
    """Whether a marker stands right under the one before it, which words lead to: `Drill: a) Light it` over `b) Trim it`."""
    column = line.indent
    if (
        marker.kind.startswith("bullet")
        or not above.indent < column < above.end
        or above.cells[column - 1] != " "
    ):
        return False
    other = find_marker(above.cells[column:])
    return other is not None and follows(other, marker)


def _cut_by_page(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether a page ends in a full line and in the middle of a sentence, which goes on with a sign: no list began."""
    above, line = lines[index - 1], lines[index]
    if closed(above.text) or not prose(above.text) or line.indent > above.indent:
        return False
    full = shortfall(above, line, right) <= NEAR
    alone = index + 1 == len(lines) or lines[index + 1].gap > 0
    return full and (closed(line.text) or not alone)


def _level_bullet(lines: Sequence[Line], index: int, marker: Marker) -> bool:
    """Whether the line right below begins with the same bullet: no two wrapped lines do."""
    line, below = lines[index], lines[index + 1] if index + 1 < len(lines) else None
    if below is None or below.apart or below.indent != line.indent:
        return False
    other = find_marker(below.text)
    return other is not None and other.kind == marker.kind


def _list_above(before: tuple[int, Marker] | None, lines: Sequence[Line], index: int) -> bool:
    """Whether the sibling before stands in the same chunk as this line."""
    if before is None:
        return False
    return not any(lines[place].gap for place in range(before[0] + 1, index + 1))


def _flat_before(lines: Sequence[Line], index: int) -> bool:
    """Whether the line above is itself a line of running text at the same indent."""
    return prose(lines[index - 1].text)


def _hangs_under(lines: Sequence[Line], index: int, marker: Marker, right: int) -> bool:
    """Whether a full line is followed by one that stands under the text after the marker."""
    if index + 1 >= len(lines):
        return False
    below = lines[index + 1]
    column = lines[index].indent + marker.text
    under = below.gap == 0 and abs(below.indent - column) <= 1
    return under and (shortfall(lines[index], below, right) <= HANDMADE or starts_small(below.text))
