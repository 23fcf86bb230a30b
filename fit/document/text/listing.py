"""Which lines start list items or hanging keys: a marker alone is no proof, its company is.

Proof is a sibling in sequence, a hanging indent, or a place where no wrapped line can stand.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from fit.document.text.code import code
from fit.document.text.joins import cut_word, shortfall
from fit.document.text.line import Line
from fit.document.text.markers import Marker, find_dashed, find_marker, follows
from fit.document.text.measure import Measure, closed, hangs, prose, starts_small

LOOK_BACK = 60
"""Lines within which a sibling is looked for."""
LONGEST_KEY = 34
"""Cells to the text after a hanging key, at most."""
NEARBY = 6
"""Lines within which a hanging key must have company."""
DASH = 4
"""Cells free before a dash that may start a wrapped line: it has next to no width, the margin is an estimate."""
HANDMADE = 8
"""Cells that a line broken by hand may leave free."""
_OPTION = re.compile(r"[-/+][\w?][\w-]*|\^.|<[^<>]{1,12}>|(?:Ctrl|CTRL|Alt|ALT|Shift)[-+ ].{1,3}|F\d{1,2}")
_KEY = re.compile(r"(?P<key>\S+(?: \S+){0,5}?)(?P<blank> {2,}| ?\.{3,} *)(?=\S)")


@dataclass(slots=True)
class Listing:
    """For each line the marker that starts it, and the column of the text after a hanging key (0: none)."""

    markers: list[Marker | None]
    keys: list[int]


def find_listing(lines: Sequence[Line], taken: Sequence[object], measure: Measure) -> Listing:
    """The markers and keys of the body that are ones."""
    possible = [find_marker(line.text) if taken[index] is None else None for index, line in enumerate(lines)]
    markers: list[Marker | None] = [None] * len(lines)
    open_lists: dict[tuple[int, str], tuple[int, Marker]] = {}
    siblings = _siblings(lines, possible)
    for index, marker in enumerate(possible):
        if marker is None:
            continue
        if _item(lines, index, marker, measure, siblings, open_lists):
            markers[index] = marker
            open_lists[lines[index].indent, marker.kind] = (index, marker)
    keys = [0] * len(lines)
    columns = _hanging_columns(lines, taken)
    for index in range(len(lines)):
        if taken[index] is None and markers[index] is None:
            keys[index] = _key(lines, index, measure, columns) or _dashed(
                lines, index, measure, keys, markers
            )
    return Listing(markers, keys)


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
    fresh = line.gap > 0 or index == 0
    hanging = _hangs_under(lines, index, marker, measure.right(index))
    before = open_lists.get((line.indent, marker.kind))
    running = before is not None and index - before[0] <= LOOK_BACK and follows(before[1], marker)
    if marker.kind.startswith("step") and marker.ordinal == 0 and not (hanging or index in siblings):
        return False
    if fresh:
        if bullet and marker.label in {"o", "x", "+", "--", "\u2014", "\u2013"}:
            return index in siblings or hanging or running
        return not (
            marker.kind.startswith("letter") and not marker.strong and not (index in siblings or hanging)
        )
    above = lines[index - 1]
    right = measure.right(index)
    full = shortfall(above, line, right) < (DASH if marker.label in {"-", "--"} else 0)
    if line.crossing:
        return running or index in siblings or (marker.strong and closed(above.text)) or hanging
    same_indent = above.indent == line.indent
    if running or (index in siblings and not full):
        flat = full and same_indent and not hanging and not closed(above.text) and _flat_before(lines, index)
        return not (
            flat
            and bullet
            and starts_small(line.text[marker.text :])
            and not _list_above(before, lines, index)
        )
    if full and not closed(above.text) and not hanging:
        return False
    if full and same_indent and not hanging:
        return index in siblings and closed(above.text) and (bullet is False or marker.strong)
    if hanging and not (full and same_indent and hangs(above.text)):
        return True
    if index in siblings:
        return True
    deeper = line.indent > above.indent and (above.text.endswith(":") or not full)
    return (marker.strong and not full and (closed(above.text) or deeper)) or (
        bullet and (above.text.endswith(":") or (deeper and not prose(above.text)))
    )


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
    under = below.gap == 0 and abs(below.indent - column) <= 1 and marker.text > 1
    return under and (shortfall(lines[index], below, right) <= HANDMADE or starts_small(below.text))


def _hanging_columns(lines: Sequence[Line], taken: Sequence[object]) -> dict[tuple[int, int], int]:
    """How often a key at one indent has its text at one column, with nothing but that column below it."""
    counts: dict[tuple[int, int], int] = defaultdict(int)
    for index, line in enumerate(lines):
        match = _KEY.match(line.text) if taken[index] is None else None
        if match is None or match.end() > LONGEST_KEY:
            continue
        column = line.indent + match.end()
        under = _under(lines, index, column)
        if under:
            counts[line.indent, column] += under
    return counts


def _under(lines: Sequence[Line], index: int, column: int) -> int:
    """Whether the next line stands under a key's text (2), lets it stand (1), or makes it mere spacing (0)."""
    if index + 1 >= len(lines) or lines[index + 1].gap:
        return 1
    below = lines[index + 1]
    if below.indent == column:
        return 2
    key = _KEY.match(below.text)
    beside = key is not None and below.indent + key.end() == column
    return 1 if beside or _tight_key(lines, index + 1, column) else 0


def _tight_key(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key fills the room before the column but for one blank, and its text goes on below at the column."""
    line = lines[index]
    full = line.cells[column - 1 : column] == " " and " " not in line.cells[line.indent : column - 1]
    return full and index + 1 < len(lines) and not lines[index + 1].gap and lines[index + 1].indent == column


def _key(lines: Sequence[Line], index: int, measure: Measure, columns: dict[tuple[int, int], int]) -> int:
    """The column of the text after a hanging key at the start of a line, or 0."""
    line = lines[index]
    match = _KEY.match(line.text)
    if code(line.text) or (index and cut_word(lines[index - 1].text, line.text)):
        return 0
    if match is None or match.end() > LONGEST_KEY:
        return _long_key(lines, index, columns)
    column = line.indent + match.end()
    under = _under(lines, index, column)
    inside = _inside(lines, index, measure, column)
    if under == 2 and not (inside and prose(line.text) and columns.get((line.indent, column), 0) < 4):
        return column
    if under and not inside and _OPTION.fullmatch(match["key"]):
        return column
    if not under or inside or columns.get((line.indent, column), 0) < 3:
        return 0
    return column if _company(lines, index, column) else 0


def _company(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key with its text at the same column stands nearby."""
    return _has_key(lines, range(max(0, index - NEARBY), index), lines[index].indent, column) or _has_key(
        lines, range(index + 1, min(len(lines), index + NEARBY + 1)), lines[index].indent, column
    )


def _has_key(lines: Sequence[Line], places: range, indent: int, column: int) -> bool:
    for place in places:
        if lines[place].indent == indent:
            key = _KEY.match(lines[place].text)
            if key is not None and indent + key.end() == column:
                return True
    return False


def _inside(lines: Sequence[Line], index: int, measure: Measure, column: int) -> bool:
    """Whether the line goes on from a full one above, which is no key itself."""
    line = lines[index]
    if index == 0 or (line.gap and not line.crossing) or lines[index - 1].indent != line.indent:
        return False
    key = _KEY.match(lines[index - 1].text)
    if key is not None and line.indent + key.end() == column:
        return False
    return shortfall(lines[index - 1], line, measure.right(index)) < 0


def _long_key(lines: Sequence[Line], index: int, columns: dict[tuple[int, int], int]) -> int:
    """The column after a key so long that only one blank was left before its text."""
    line = lines[index]
    key, _, rest = line.text.partition(" ")
    column = line.indent + len(key) + 1
    held = columns.get((line.indent, column), 0)
    if len(key) > LONGEST_KEY or not rest or rest.startswith(" ") or held < 3:
        return 0
    if index and not line.gap:
        above = lines[index - 1]
        match = _KEY.match(above.text)
        beside = match is not None and above.indent + match.end() == column
        if above.indent != column and not (above.indent == line.indent and beside):
            return 0
    before = _has_key(lines, range(max(0, index - NEARBY), index), line.indent, column)
    after = _has_key(lines, range(index + 1, min(len(lines), index + NEARBY + 1)), line.indent, column)
    after = after or (line.gap == 0 and index > 0 and lines[index - 1].indent == column)
    after = after or _tight_key(lines, index, column)
    return column if before and after and _under(lines, index, column) else 0


def _dashed(
    lines: Sequence[Line],
    index: int,
    measure: Measure,
    keys: Sequence[int],
    markers: Sequence[Marker | None],
) -> int:
    """The same for ``key - meaning``, where a neighbour has the form too."""
    line = lines[index]
    found = find_dashed(line.text)
    if found is None:
        return 0
    column = line.indent + found[2]
    for other in (index - 1, index + 1, index + 2, index - 2):
        if 0 <= other < len(lines) and lines[other].indent == line.indent:
            near = find_dashed(lines[other].text)
            if near is not None and near[1] == found[1] and abs(other - index) <= 2:
                break
    else:
        return 0
    if index == 0 or line.gap or shortfall(lines[index - 1], line, measure.right(index)) >= 0:
        return column
    return 0 if _below_text(lines[index - 1], keys[index - 1], markers[index - 1], line.indent) else column


def _below_text(above: Line, key: int, marker: Marker | None, indent: int) -> bool:
    """Whether a line at ``indent`` stands under the text of the one above: under an item's or a key's text, if any."""
    if key:
        return key == indent
    if marker is not None:
        return above.indent + marker.text == indent
    return above.indent == indent
