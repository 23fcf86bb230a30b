"""Keys that start a line: for each line the column of the text after its key, whatever kind of key that is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.dashed_keys import below_text, dashed_key
from fit.document.text.lists.hanging_keys import hanging_key
from fit.document.text.lists.hung_labels import hung_label
from fit.document.text.lists.key_columns import behind_dash, hanging_columns, key_of
from fit.document.text.lists.keys_between import keys_between
from fit.document.text.lists.legends import find_legends
from fit.document.text.lists.own_look_keys import glossed_word, loud_key, said_again, set_apart_key
from fit.document.text.lists.parameters import find_parameters
from fit.document.text.lists.settings import find_settings
from fit.document.text.lists.stepped_keys import find_stepped_keys
from fit.document.text.lists.tight_keys import tight_key
from fit.document.text.signs.code import prompted
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.markers import Marker, find_marker
from fit.document.text.signs.measure import Measure, closed, hangs, prose, starts_small
from fit.document.text.signs.spaced import spaced
from fit.document.text.titles.headings import decked

VALUE = 3
"""Words of the value of a name, at most."""
_REMARKS = "#;%!'"
"""Signs of typewriters that a remark begins with, and no item."""
ITEMS = 2
"""Lines that begin with a dash at one column, at least, that show items there."""


def find_keys(
    lines: Sequence[Line],
    taken: Sequence[object],
    markers: Sequence[Marker | None],
    measure: Measure,
    keyed: Mapping[int, int],
) -> list[int]:
    """For each line the column of the text after the key that starts it; 0 where none does.

    ``keyed`` has those of runs whose columns have shown them.
    """
    keys = [0] * len(lines)
    columns = hanging_columns(lines, taken, measure)
    dashes = _behind_dashes(lines, columns)
    legends = (
        find_stepped_keys(lines, taken)
        | find_legends(lines, taken)
        | find_parameters(lines, taken)
        | find_settings(lines, taken)
    )
    for index in range(len(lines)):
        text = lines[index].text
        free = taken[index] is None and markers[index] is None
        if free and not (spaced(text) or prompted(text) or decked(text)):
            dashed = dashed_key(lines, index, measure, keys, markers)
            hanging = keyed.get(index, 0) or hanging_key(lines, index, measure, columns, keys)
            hanging = hanging or set_apart_key(lines, index) or glossed_word(lines, index)
            hanging = hanging or loud_key(lines, index) or hung_label(lines, index, measure)
            hanging = hanging or tight_key(lines, index, measure, keys) or said_again(lines, index, keys)
            if lines[index].cells[hanging : hanging + 2] == "= ":
                hanging = 0  # a value behind its sign: its name alone is no key
            if (hanging, lines[index].indent) in dashes and lines[index].cells[hanging : hanging + 2] == "- ":
                hanging += 2
            if index in keyed and not _value_beside(lines[index], dashed, hanging):
                keys[index] = dashed or hanging
            else:
                keys[index] = hanging or dashed
            if keys[index] and (
                _mid_sentence(lines, index, measure, keys, markers) or _remark_on(lines, index, keys)
            ):
                keys[index] = 0
            keys[index] = legends.get(index, keys[index])
    for index, column in keys_between(lines, taken, keys).items():
        keys[index] = column
    return keys


def _value_beside(line: Line, dashed: int, hanging: int) -> bool:
    """Whether a name and its value stand before the text: `Left = 8    The left edge`; none of them is the key alone."""
    if not 0 < dashed < hanging or line.cells[dashed - 2 : dashed] != "= ":
        return False
    value = line.cells[dashed:hanging]
    return value.endswith(" ") and "  " not in value.strip() and len(value.split()) <= VALUE


def _behind_dashes(lines: Sequence[Line], columns: Mapping[tuple[int, int], int]) -> set[tuple[int, int]]:
    """The columns in which a dash parts keys at an indent from their texts, one of which goes on right under its words.

    It is no dash before each of several items that stand beside a key.
    """
    found: set[tuple[int, int]] = set()
    items: Counter[int] = Counter()
    for index, line in enumerate(lines):
        if line.text.startswith("- "):
            items[line.indent] += 1
        match = key_of(line.text) if "  - " in line.text else None
        if match is None or parted_above(lines, index + 1):
            continue
        column = line.indent + match.end()
        if (line.indent, column) in columns and behind_dash(line, lines[index + 1], column):
            found.add((column, line.indent))
    return {place for place in found if items[place[0]] < ITEMS}


def _mid_sentence(
    lines: Sequence[Line],
    index: int,
    measure: Measure,
    keys: Sequence[int],
    markers: Sequence[Marker | None],
) -> bool:
    """Whether a line goes on with the sentence of the paragraph or the item's text that it stands under."""
    if index == 0 or lines[index].gap:
        return False
    above, line = lines[index - 1], lines[index]
    if not below_text(above, keys[index - 1], markers[index - 1], line.indent):
        return False
    told = prose(above.text) and prose(line.text)
    runs = told and find_marker(line.text) is None and not closed(above.text) and starts_small(line.text)
    return runs and (shortfall(above, line, measure.right(index)) < 0 or hangs(above.text))


def _remark_on(lines: Sequence[Line], index: int, keys: Sequence[int]) -> bool:
    """Whether a line begins with the sign that the text of the entry above begins with, right under it: a remark goes on."""
    line = lines[index]
    sign = line.text[:2]
    if sign[1:] != " " or (sign.isascii() and sign[0] not in _REMARKS) or line.apart or not index:
        return False
    first = index - 1
    while first and not lines[first].apart and lines[first].indent == line.indent:
        first -= 1
    return keys[first] == line.indent and lines[first].cells[line.indent : line.indent + 2] == sign
