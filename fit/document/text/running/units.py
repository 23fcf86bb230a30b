"""Body lines to units: the lines of one paragraph, one list item, or a line that stands for itself."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from fit.document.text.line import Ending, Line
from fit.document.text.lists.entries import label_end
from fit.document.text.lists.listing import Listing
from fit.document.text.running.addresses import address_in_sentence, set_in_address
from fit.document.text.running.beginnings import begins, in_bracket, notice_goes_on, tagged_alike
from fit.document.text.running.cases import answered
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.hung_entries import hangs_as_beside, hangs_below, next_entry
from fit.document.text.running.neighbours import (
    centred,
    inner_column,
    led_to,
    left_of_key,
    mid_item,
    next_key,
    next_label,
    over_deeper,
    runs_on,
    set_in_first,
    set_off,
    stops_short,
    stretched,
    title_alone,
    too_long,
    worded_on,
)
from fit.document.text.running.own_lines import own_lines
from fit.document.text.running.runs_on import carries
from fit.document.text.running.terms import is_term
from fit.document.text.signs.code import typed
from fit.document.text.signs.joins import FAR, NEAR, crosses, cut_word, joins, reads, shortfall
from fit.document.text.signs.markers import Marker
from fit.document.text.signs.measure import Measure, closed, hangs, prose, starts_small
from fit.document.text.signs.pictures import ruled_off
from fit.document.text.signs.titled_rules import titled_rule
from fit.document.text.signs.underlines import underlines
from fit.document.text.titles.headings import loud, underlined

DEEPER = 4
"""Cells by which the later lines of an item may stand deeper than its first; twice as many in mid-sentence."""
_PLACE = re.compile(r"\(?(?:[a-z]+\.? +)?\d+\)?\.?")
_REST = re.compile(r"[^\W\d_]+(?: [^\W\d_]+){0,2},")
"""Words that were pushed out of a full line onto one of their own."""
_LAST_WORDS = re.compile(r" [a-z]+ [a-z]+$")
SHORT = 4
"""Words of a command without any sign, at most."""
KEYS = 3
"""Keys of a list, at least, whose longest line shows its margin."""
TITLE = 12
"""Cells that a title in capitals leaves free at least, though the word below it had room."""


@dataclass(slots=True)
class Unit:
    """Lines ``start <= i < end`` that belong together."""

    start: int
    end: int
    marker: Marker | None = None
    text: int = 0
    """The column at which an item's text starts."""
    key: int = 0
    """Cells of a hanging key that stands before the text; 0 where there is none."""
    term: bool = False
    """Whether it is nothing but a term, whose text is the next unit."""
    cut: bool = False
    """Whether its second line starts with the rest of its key."""


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
    if key and not left_of_key(lines, index):
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
            return _hangs_over(lines, unit, index)
        return below.gap > 1 and below.indent == above.indent and cut_word(above.text, below.text)
    if above.ending is Ending.SOFT:
        return True
    if unit.term or index in listing.terms:
        return False
    if (
        ruled_off(below.text)
        or ruled_off(above.text)
        or underlines(lines, index)
        or underlines(lines, index - 1)
    ):
        return False
    if titled_rule(below.text)[2] or titled_rule(above.text)[2]:
        return False
    if listing.markers[index] is not None or listing.keys[index] or index in listing.labels:
        return False
    if _title_goes_on(lines, unit, index):
        return True
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
    if below.crossing:
        own = closed(above.text) and (
            title_alone(lines, index)
            or over_deeper(lines, index)
            or underlined(lines, index)
            or tagged_alike(lines[unit.start].text, below.text)
        )
        return not own and crosses(above, below, right, _indents(lines, unit, index))
    if chunks[index].refrain and above.text.endswith(chunks[index].refrain):
        return False
    if chunks[index].opening and answered(above, below, chunks[index].opening, measure.usual):
        return False
    if _place_of_entry(above, below, unit, right) or in_bracket(above, below):
        return True
    if below.indent in {above.indent, unit.text, chunks[index].base} and address_in_sentence(
        above, below, right
    ):
        return True
    if begins(lines, unit.start, index, chunks[index].end, right):
        return False
    if chunks[index].lined and unit.marker is None and not unit.key:
        return below.indent > above.indent
    if unit.start == index - 1 and unit.marker is None and not unit.key:
        if chunks[index].hung and next_entry(above, below):
            return False
        if chunks[index].hung and hangs_below(above, below, right):
            return True
        if hangs_as_beside(lines, index, right):
            return True
    if not _indent_fits(lines, unit, index, right, chunks) or _shown_in_item(lines, unit, index, listing):
        return False
    if unit.end - unit.start == 1 and unit.marker is None and not unit.key and is_term(lines, index, right):
        return False
    if unit.marker is None and not unit.key and centred(above, below, right):
        return False
    if unit.marker is None and not unit.key and led_to(lines, index, right):
        return False
    if own_lines(above, below, right) or _title_over(lines, unit, index, measure.right(index)):
        return False
    if runs_on(above, below, right) or _cut_short(lines, unit, index, right):
        return True
    if "  " in above.text and measure.justified(index) and stretched(above, below, measure.right(index)):
        return True
    if set_off(above.text, below.text) and not (unit.end - unit.start > 1 and worded_on(above, below, right)):
        return False
    if next_label(lines[unit.start], unit.text if unit.key else -1, above, below, right) or too_long(
        above, below, right
    ):
        return False
    listed = unit.marker is not None or unit.key > 0
    if unit.key and above.ending is Ending.HARD and _typed_under(unit, above, below):
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
    if _second_line(unit, index, above, below, right):
        return True
    if (
        listed
        and above.ending is Ending.HARD
        and below.indent == unit.text
        and carries(above.text, below.text)
    ):
        return True
    if _below_longest(lines, unit, index, chunks[index], listing):
        return True
    return joins(above, below, right, measure.slack)


def _hangs_over(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether an item stops where no sentence can end, and its text goes on in small letters below a blank line."""
    above, below = lines[index - 1], lines[index]
    at_text = below.indent == (above.indent if unit.end - unit.start > 1 else unit.text)
    said = prose(above.text) and (prose(below.text) or closed(below.text)) and not above.text.endswith(",")
    return unit.marker is not None and at_text and said and hangs(above.text) and starts_small(below.text)


def _title_goes_on(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether a line in capitals stands alone right below a number and a title in capitals: its second line."""
    first, below = lines[unit.start], lines[index]
    alone = index + 1 == len(lines) or lines[index + 1].gap > 0
    return (
        unit.marker is not None
        and not unit.marker.kind.startswith("bullet")
        and unit.start == index - 1
        and first.gap > 0
        and alone
        and below.gap == 0
        and not below.crossing
        and first.indent <= below.indent <= unit.text
        and loud(first.cells[unit.text :])
        and loud(below.text)
        and not closed(first.text)
    )


def _title_over(lines: Sequence[Line], unit: Unit, index: int, right: int) -> bool:
    """Whether a line in capitals, short of the margin, stands first over text in small letters: a title over its own."""
    above, below = lines[index - 1], lines[index]
    first = unit.start == index - 1 and (above.gap > 0 or index == 1) and unit.marker is None and not unit.key
    if not first or " " not in above.text or not loud(above.text) or loud(below.text):
        return False
    return not hangs(above.text.lower()) and shortfall(above, below, right) >= TITLE


def _cut_short(lines: Sequence[Line], unit: Unit, index: int, right: int) -> bool:
    """Whether a few words with a comma, the rest of a line that was full, stop in a sentence that the next one goes on with."""
    if unit.end - unit.start < 2 or _REST.fullmatch(lines[index - 1].text) is None:
        return False
    if any(line.text.endswith(",") for line in lines[unit.start : index - 1]):
        return False  # entries that end in commas
    before, above, below = lines[index - 2 : index + 1]
    level = before.indent == above.indent == below.indent
    rest = level and starts_small(above.text) and starts_small(below.text) and prose(below.text)
    return rest and prose(before.text) and not closed(before.text) and shortfall(before, above, right) < 0


def _shown_in_item(lines: Sequence[Line], unit: Unit, index: int, listing: Listing) -> bool:
    """Whether a colon in an item leads to a few small words, the last line of it: a command to be typed."""
    above, below = lines[index - 1], lines[index]
    if not above.text.endswith(":") or not (unit.marker or unit.key) or below.indent != unit.text:
        return False
    after = index + 1
    last = after == len(lines) or lines[after].apart or bool(listing.markers[after] or listing.keys[after])
    words = below.text.split()
    plain = all(word[:1].islower() and word.isalnum() for word in words)
    return last and plain and 1 < len(words) <= SHORT and not prose(below.text)


def _place_of_entry(above: Line, below: Line, unit: Unit, right: int) -> bool:
    """Whether a page or line number alone at the right edge ends an item that has none: an entry of an index."""
    far = below.indent >= right // 2 and below.indent > unit.text + DEEPER
    return (
        unit.marker is not None
        and far
        and bool(_PLACE.fullmatch(below.text))
        and not above.text[-2:-1].isdigit()
    )


def _typed_under(unit: Unit, above: Line, below: Line) -> bool:
    """Whether the text beside a key goes on right under itself in small letters: its lines were ended by hand."""
    under = below.indent == unit.text and starts_small(below.text) and not closed(above.text)
    return under and prose(above.cells[unit.text :])


def _below_longest(lines: Sequence[Line], unit: Unit, index: int, chunk: Chunk, listing: Listing) -> bool:
    """Whether a line stands under the text beside a key, which stops in a sentence in the longest line of its list.

    That list was wrapped there: its own margin is what counts.
    """
    above, below = lines[index - 1], lines[index]
    if not unit.key or below.indent != unit.text or closed(above.text) or not prose(above.cells[unit.text :]):
        return False
    around = range(chunk.start, chunk.end)
    return (
        sum(bool(listing.keys[place]) for place in around) >= KEYS
        and shortfall(above, below, max(lines[place].end for place in around)) < 0
    )


def _second_line(unit: Unit, index: int, above: Line, below: Line, right: int) -> bool:
    """Whether a sentence stands right below the first one of an item after a sign, exactly under it: its text goes on."""
    bullet = unit.marker is not None and unit.marker.kind.startswith("bullet")
    under = index == unit.start + 1 and below.indent == unit.text > above.indent
    told = prose(above.text) and prose(below.text) and closed(above.text) and not above.text.endswith(":")
    return bullet and under and told and shortfall(above, below, right) <= NEAR


def _indents(lines: Sequence[Line], unit: Unit, index: int) -> set[int]:
    """Where a unit may go on after a page end: at its continuation, or where its text starts."""
    if unit.end - unit.start > 1:
        return {lines[index - 1].indent}
    if unit.marker:
        return {unit.text}
    if unit.key:
        return {unit.text, lines[index - 1].indent}
    indent = lines[index - 1].indent
    following = lines[index + 1].indent if index + 1 < len(lines) and not lines[index + 1].gap else indent
    return {indent, following} if following <= indent else {indent}


def _indent_fits(lines: Sequence[Line], unit: Unit, index: int, right: int, chunks: dict[int, Chunk]) -> bool:
    above, below = lines[index - 1], lines[index]
    full = shortfall(above, below, right) < 0
    if unit.end - unit.start > 1:
        shift = below.indent - (unit.text if unit.cut and index == unit.start + 2 else above.indent)
        if shift == 0:
            return True
        if chunks[index].first_line:
            return False
        said = prose(below.text) or closed(below.text)
        near = abs(shift) <= 2 or (said and prose(above.text) and not typed(below.text))
        return near and full and starts_small(below.text) and not closed(above.text)
    if unit.marker is not None or unit.key:
        if abs(below.indent - unit.text) <= 1:
            return True
        if below.indent > unit.text:
            if above.text.endswith(":") and not (starts_small(below.text) and prose(below.text)):
                return False
            if inner_column(above, below.indent):
                return full or stops_short(above, below)
            small = (full and starts_small(below.text)) or stops_short(above, below)
            sure = reads(above.text, below.text) and starts_small(below.text) and (full or hangs(above.text))
            return small and below.indent - unit.text <= (2 * DEEPER if sure else DEEPER)
        if unit.key and below.indent > above.indent:
            return full or stops_short(above, below)
        if unit.key and below.indent == above.indent:
            open_ = not closed(above.text) and (starts_small(below.text) or above.text.endswith("-"))
            return full and (open_ or (prose(below.text) and prose(above.text)))
        if below.indent >= above.indent and not unit.key:
            return full or (starts_small(below.text) and not closed(above.text))
        return full and starts_small(below.text) and not closed(above.text) and not unit.key
    if below.indent == above.indent:
        return not (chunks[index].first_line and below.indent > chunks[index].base)
    said = prose(below.text) or closed(below.text)
    short = typed(below.text) or " " not in below.text or below.end < right - FAR
    if below.indent != unit.text and not said and short and above.text.endswith(":"):
        return False
    if set_in_address(lines, index):
        return False
    if below.indent < above.indent:
        if full and above.text.endswith(",") and _enumerates(above, below):
            return True
        small = starts_small(below.text) and not closed(above.text)
        shown = index > 1 and not above.gap and lines[index - 2].text.endswith(":")
        if small and shortfall(above, below, right) <= NEAR and not shown and not typed(above.text):
            return reads(above.text, below.text)
        wide = full or set_in_first(lines, index, right)
        return prose(above.text) and (small or (wide and not next_key(lines, index, right)))
    near = full or (prose(above.text) and shortfall(above, below, right) <= NEAR)
    if inner_column(above, below.indent) and stops_short(above, below) and reads(above.text, below.text):
        return True
    if near and (
        below.indent - above.indent == label_end(above.text) or _hanging(lines, index, chunks[index])
    ):
        return True
    told = prose(above.text) or (_LAST_WORDS.search(above.text) and reads(above.text, below.text))
    sentence = bool(told) and starts_small(below.text) and not closed(above.text)
    return sentence and (prose(below.text) or closed(below.text))


def _enumerates(above: Line, below: Line) -> bool:
    """Whether what stands less deep than a comma goes on behind it: it ends a sentence, or the comma's line begins one."""
    if typed(below.text):
        return False
    return closed(below.text) or (above.gap > 0 and not typed(above.text))


def _hanging(lines: Sequence[Line], index: int, chunk: Chunk) -> bool:
    """Whether the line starts the hanging rest of a paragraph, and not a paragraph with a first-line indent."""
    above, below = lines[index - 1], lines[index]
    if chunk.first_line:
        return False
    if starts_small(below.text) and not closed(above.text):
        return True
    following = lines[index + 1] if index + 1 < len(lines) else None
    goes_on = following is not None and following.gap == 0 and following.indent == below.indent
    return goes_on and not closed(above.text)
