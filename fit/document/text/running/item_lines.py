"""Whether the text of an item, or beside a key, goes on in the next line."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.listing import Listing
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.unit import Unit
from fit.document.text.running.unit_indents import DEEPER
from fit.document.text.signs.joins import NEAR, shortfall
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

_PLACE = re.compile(r"\(?(?:[a-z]+\.? +)?\d+\)?\.?")
SHORT = 4
"""Words of a command without any sign, at most."""
KEYS = 3
"""Keys of a list, at least, whose longest line shows its margin."""


def hangs_over(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether an item stops where no sentence can end, and its text goes on in small letters below a blank line."""
    above, below = lines[index - 1], lines[index]
    at_text = below.indent == (above.indent if unit.end - unit.start > 1 else unit.text)
    said = prose(above.text) and (prose(below.text) or closed(below.text)) and not above.text.endswith(",")
    return unit.marker is not None and at_text and said and hangs(above.text) and starts_small(below.text)


def shown_in_item(lines: Sequence[Line], unit: Unit, index: int, listing: Listing) -> bool:
    """Whether a colon in an item leads to a few small words, the last line of it: a command to be typed."""
    above, below = lines[index - 1], lines[index]
    if not above.text.endswith(":") or not (unit.marker or unit.key) or below.indent != unit.text:
        return False
    after = index + 1
    last = parted_above(lines, after) or bool(listing.markers[after] or listing.keys[after])
    words = below.text.split()
    plain = all(word[:1].islower() and word.isalnum() for word in words)
    return last and plain and 1 < len(words) <= SHORT and not prose(below.text)


def place_of_entry(above: Line, below: Line, unit: Unit, right: int) -> bool:
    """Whether a page or line number alone at the right edge ends an item that has none: an entry of an index."""
    far = below.indent >= right // 2 and below.indent > unit.text + DEEPER
    return (
        unit.marker is not None
        and far
        and bool(_PLACE.fullmatch(below.text))
        and not above.text[-2:-1].isdigit()
    )


def typed_under(unit: Unit, above: Line, below: Line) -> bool:
    """Whether the text beside a key goes on right under itself in small letters: its lines were ended by hand."""
    under = below.indent == unit.text and starts_small(below.text) and not closed(above.text)
    return under and prose(above.cells[unit.text :])


def below_longest(lines: Sequence[Line], unit: Unit, index: int, chunk: Chunk, listing: Listing) -> bool:
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


def second_line(unit: Unit, index: int, above: Line, below: Line, right: int) -> bool:
    """Whether a sentence stands right below the first one of an item after a sign, exactly under it: its text goes on."""
    bullet = unit.marker is not None and unit.marker.kind.startswith("bullet")
    under = index == unit.start + 1 and below.indent == unit.text > above.indent
    told = prose(above.text) and prose(below.text) and closed(above.text) and not above.text.endswith(":")
    return bullet and under and told and shortfall(above, below, right) <= NEAR
