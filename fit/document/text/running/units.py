"""Body lines to units: whether each line goes on with the unit above it, or begins its own."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Ending, Line
from fit.document.text.lists.listing import Listing
from fit.document.text.running.addresses import address_between, address_in_sentence
from fit.document.text.running.beginnings import (
    begins,
    behind_arrow,
    in_bracket,
    noted,
    notice_goes_on,
    tagged_alike,
)
from fit.document.text.running.cases import answered
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.displays import command_below
from fit.document.text.running.early_ends import (
    early_end,
    last_short,
    left_short,
    loosely_wrapped,
    named_below,
    told_below,
)
from fit.document.text.running.hung_entries import (
    hangs_as_beside,
    hangs_as_items,
    hangs_as_others,
    hangs_below,
    hangs_in_company,
    hung_over_page,
    next_entry,
)
from fit.document.text.running.item_lines import (
    asks_on,
    between_keys,
    hangs_over,
    last_of_entry,
    over_its_text,
    place_of_entry,
    second_line,
    set_in_below,
    shown_in_item,
    typed_under,
    value_over_page,
)
from fit.document.text.running.neighbours import (
    centred,
    closes_bracket,
    led_to,
    left_of_key,
    mid_item,
    mid_words,
    next_label,
    over_deeper,
    runs_on,
    set_in_first,
    set_off,
    stretched,
    through,
    title_alone,
    too_long,
    worded_on,
)
from fit.document.text.running.own_lines import own_lines
from fit.document.text.running.quoted_on import names_on, quoted_on
from fit.document.text.running.terms import is_term
from fit.document.text.running.title_lines import dressed_below, over_plain, title_goes_on, title_over
from fit.document.text.running.unit import Unit
from fit.document.text.running.unit_indents import DEEPER, indent_fits, indents_after_page
from fit.document.text.signs.code import typed
from fit.document.text.signs.joins import crosses, cut_word, joins, shortfall
from fit.document.text.signs.measure import UNWRAPPED, Measure, closed, hangs, prose, several, starts_small
from fit.document.text.signs.routines import inside_brackets
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.titled_rules import titled_rule
from fit.document.text.signs.underlines import underlines
from fit.document.text.titles.headings import underlined

_LABEL = re.compile(r"[A-Z]\d{1,2}(?:[-.]\d{1,2})+[.:]")
"""The label of an answer that nobody gave, alone at the column of the labels: `A2-08.`"""


def split_units(
    lines: Sequence[Line], first: int, last: int, measure: Measure, chunks: dict[int, Chunk], listing: Listing
) -> list[Unit]:
    """The units of the body lines ``first <= i < last``, in order."""
    units: list[Unit] = []
    for index in range(first, last):
        if units and index in listing.cut and units[-1].start == index - 1 and units[-1].key:
            units[-1].end, units[-1].cut = index + 1, True
            units[-1].key = units[-1].key if " " in lines[index - 1].text else len(lines[index - 1].text)
        elif chunks[index].shown:
            units.append(Unit(index, index + 1, None, lines[index].indent))
        elif (
            units
            and not chunks[index - 1].shown
            and _goes_on(lines, units[-1], index, measure, chunks, listing)
        ):
            units[-1].end = index + 1
        else:
            units.append(_open(lines, index, listing))
    return units


def _open(lines: Sequence[Line], index: int, listing: Listing) -> Unit:
    line = lines[index]
    marker = listing.markers[index]
    if marker is not None:
        return Unit(index, index + 1, marker, line.indent + marker.text)
    key = listing.keys[index]
    if key and (listing.markers[index + 1 : index + 2] != [None] or not left_of_key(lines, index)):
        return Unit(index, index + 1, None, key, len(line.cells[:key].rstrip()) - line.indent)
    return Unit(index, index + 1, None, line.indent, term=index in listing.terms)


def _goes_on(
    lines: Sequence[Line],
    unit: Unit,
    index: int,
    measure: Measure,
    chunks: dict[int, Chunk],
    listing: Listing,
) -> bool:
    above, below = lines[index - 1], lines[index]
    if below.gap and not below.crossing:
        if below.gap == 1 and listing.markers[index] is None and not listing.keys[index]:
            return hangs_over(lines, unit, index)
        return below.gap > 1 and below.indent == above.indent and cut_word(above.text, below.text)
    if above.ending is Ending.SOFT:
        return True
    if not measure.wrapped or (
        above.end > UNWRAPPED and prose(above.text) and several(above.text) and not starts_small(below.text)
    ):
        return False
    if unit.term or index in listing.terms or index in listing.stops or index - 1 in listing.stops:
        return False
    if (
        ruled_off(below.text)
        or ruled_off(above.text)
        or underlines(lines, index)
        or underlines(lines, index - 1)
    ):
        return False
    if titled_rule(above.text)[2]:
        return False
    if unit.marker is not None and above.text.endswith(",") and inside_brackets(lines, unit.start, index):
        return True
    if listing.markers[index] is not None or listing.keys[index] or index in listing.labels:
        return False
    if unit.marker is not None and below.indent < unit.text and _LABEL.fullmatch(below.text):
        return False
    if title_goes_on(lines, unit, index):
        return True
    if (unit.marker is not None and over_plain(lines, unit, index)) or dressed_below(lines, index):
        return False
    if not below.crossing and notice_goes_on(lines[unit.start].text, above.text, below.text):
        return True
    if chunks[index].fixed:
        return False
    if chunks[index - 1].fixed:
        return False
    right = max(chunks[index].right, chunks[index - 1].right) if below.crossing else chunks[index].right
    left = below.crossing and below.indent < above.indent
    if left and (" " not in above.text or typed(above.text)):
        return False  # text below a line that was set off
    if below.crossing and measure.whole_pages:
        return False
    if below.crossing:
        own = closed(above.text) and (
            title_alone(lines, index)
            or over_deeper(lines, index)
            or underlined(lines, index)
            or tagged_alike(lines[unit.start].text, below.text)
        )
        places = indents_after_page(lines, unit, index)
        valued = above.text.endswith(":") and below.indent in places and value_over_page(lines, index, right)
        if valued or hung_over_page(lines, unit, index):
            return True
        return not own and crosses(above, below, right, places)
    if chunks[index].refrain and above.text.endswith(chunks[index].refrain):
        return False
    if chunks[index].opening and answered(above, below, chunks[index].opening):
        return False
    if place_of_entry(below, unit, right) or in_bracket(above, below) or noted(above, below):
        return True
    if " -> " in above.text and behind_arrow(above, below, right):
        return True
    places = {above.indent, above.indent + 1, unit.text, chunks[index].base}
    if below.indent in places and address_in_sentence(above, below, right):
        return True
    if address_between(lines, unit.start, index):
        return True
    if hangs_as_items(lines, unit, index, listing.steps, right):
        return True
    if begins(lines, unit.start, index, chunks[index].end, right):
        return False
    if chunks[index].lined and unit.marker is None and not unit.key:
        return below.indent > above.indent
    if chunks[index].entries.part(above, below, lines[unit.start].indent, right):
        return False
    if unit.start == index - 1 and unit.marker is None and not unit.key:
        if chunks[index].hung and next_entry(above, below):
            return False
        if chunks[index].hung and (
            hangs_below(above, below, right)
            or hangs_as_others(lines[chunks[index].start : chunks[index].end], above, below, right)
        ):
            return True
        if hangs_as_beside(lines, index, right):
            return True
    if not indent_fits(lines, unit, index, right, chunks) and not (
        unit.start == index - 1 and hangs_in_company(lines, unit, index, right)
    ):
        return False
    if shown_in_item(lines, unit, index, listing):
        return False
    if unit.marker is not None and (
        over_its_text(lines, unit, unit.marker, index, listing, right)
        or set_in_below(lines, unit, index, listing, right)
    ):
        return False
    if unit.end - unit.start == 1 and unit.marker is None and not unit.key and is_term(lines, index, right):
        return False
    if unit.marker is None and not unit.key and centred(above, below, right):
        return False
    if (
        unit.marker is None
        and not unit.key
        and (led_to(lines, index, right) or command_below(lines, index, right))
    ):
        return False
    if own_lines(above, below, right) or title_over(lines, unit, index, measure.right(index)):
        return False
    if runs_on(above, below, right):
        return True
    if last_short(lines, unit, index, measure):
        return False
    if "  " in above.text and measure.justified(index) and stretched(above, below, measure.right(index)):
        return True
    full = shortfall(above, below, right) < 0 and (unit.marker is not None or "   " not in above.text)
    if closes_bracket(above.text, below.text, full=full) or through(lines, unit.start, index):
        return True
    if below.indent in {above.indent, unit.text} and (
        quoted_on(lines, index) or names_on(lines, unit.start, index)
    ):
        return True
    if unit.marker is not None and below.indent == unit.text and mid_words(above, below, right):
        return True
    said = above.cells[unit.text :] if unit.key and unit.start == index - 1 else ""
    worded = prose(said) or (said and starts_small(below.text) and not typed(said))
    if set_off(said if worded else above.text, below.text) and not (
        unit.end - unit.start > 1 and worded_on(above, below, right)
    ):
        return False
    if next_label(lines[unit.start], unit.text if unit.key else -1, above, below, right) or too_long(
        above, below, right
    ):
        return False
    listed = unit.marker is not None or unit.key > 0
    if unit.key and above.ending is Ending.HARD and typed_under(unit, above, below):
        return True
    wrapped = unit.end - unit.start > 1 and shortfall(above, below, right) < 0
    wrapped = wrapped and prose(above.text) and prose(below.text)
    if (
        chunks[index].broken
        and not (listed or wrapped)
        and not starts_small(below.text)
        and not hangs(above.text)
    ):
        return False
    if listed and -1 <= below.indent - unit.text <= DEEPER and mid_item(above, below):
        return True
    if second_line(unit, index, above, below, right) or asks_on(lines, unit, index):
        return True
    if last_of_entry(lines, unit, index):
        return True
    if between_keys(lines, unit, index, listing):
        return True
    if below.indent < above.indent and unit.start == index - 1 and set_in_first(lines, index, right):
        return True
    if joins(above, below, right, measure.slack) or left_short(unit, above, below, right):
        return True
    if told_below(lines, unit, index, right):
        return True
    if named_below(lines, unit, index, right) or hangs_in_company(lines, unit, index, right):
        return True
    if loosely_wrapped(unit, above, below, measure):
        return True
    return early_end(lines, unit, index, chunks[index], measure)
