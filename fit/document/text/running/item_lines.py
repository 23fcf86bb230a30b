"""Whether the text of an item, or beside a key, goes on in the next line."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.listing import Listing
from fit.document.text.running.unit import Unit
from fit.document.text.running.unit_indents import DEEPER
from fit.document.text.signs.joins import NEAR, shortfall
from fit.document.text.signs.markers import Marker
from fit.document.text.signs.measure import closed, hangs, prose, small_word, starts_small

_PLACE = re.compile(r"\(?(?:[a-z]+\.? +)?\d+\)?\.?")
_ADDRESS = re.compile(r"[^\s@]+@[\w.-]+(?: \S+)?\.|\w\S*\.\w\S*\.")
"""An address, perhaps with a blank in it, or a name with points, and the stop of a sentence."""
_SETTING = re.compile(r"[a-z]\w*: \S+")
_NUMBER = re.compile(r"0x[\da-f]+|\d+(?:\.\d+)?", re.IGNORECASE)
VALUES = 2
"""Times that the same words stand before a value, at least."""
FORMS = 3
"""Lines that begin with the same word, at least, which no lines of a sentence do."""
SHORT = 4
"""Words of a command without any sign, at most."""
BESIDE = 2
"""Items with a title, at least, and at most on each side that are asked for theirs."""
AROUND = 60
"""Lines to one of these, at most."""
FAR_SHORT = 24
"""Cells that a term leaves free, at least, though a word of its text had room."""
ROOM = 5
"""Cells that a title leaves free, at least, though a word of its text had room."""


def over_its_text(
    lines: Sequence[Line], unit: Unit, own: Marker, index: int, listing: Listing, right: int
) -> bool:
    """Whether the first line of an item is a title over its text, as those of the items around it are, which stop short.

    A term of a few words in small letters behind a number of several parts stops far shorter, and the text that says what
    it means is longer.
    """
    above, below = lines[index - 1], lines[index]
    if index != unit.start + 1 or below.indent != unit.text:
        return False
    title = below.text[:1].isupper() and (closed(above.text) or above.text.endswith(")"))
    parts = own.kind.startswith("number") and "." in own.label.rstrip(".")
    if not title and not (parts and _term_over(above, unit.text, below, right)):
        return False
    titled = 0
    for step in (-1, 1):
        place, seen = index - 1 + step, 0
        while seen < BESIDE and abs(place - index) < AROUND and 0 <= place < len(lines) - 1:
            marker = listing.markers[place]
            if marker is not None and marker.kind == own.kind and lines[place].indent == above.indent:
                if not title and own.ordinal and marker.ordinal != own.ordinal + step * (seen + 1):
                    break  # of another list
                line, text = lines[place], lines[place + 1]
                column = line.indent + marker.text
                if text.apart or text.indent != column:
                    return False
                if title and not (text.text[:1].isupper() and shortfall(line, text, right) >= ROOM):
                    return False
                if not title and not _term_over(line, column, text, right):
                    return False
                titled, seen = titled + 1, seen + 1
            place += step
    return titled >= BESIDE


def _term_over(line: Line, column: int, text: Line, right: int) -> bool:
    """Whether a few words in small letters behind a marker stop far short of the margin, over a longer line in small letters."""
    term = line.cells[column:]
    return (
        starts_small(term)
        and len(term.split()) <= SHORT
        and term[-1].isalnum()
        and not hangs(term)
        and len(text.text) > len(term)
        and shortfall(line, text, right) >= FAR_SHORT
    )


def set_in_below(lines: Sequence[Line], unit: Unit, index: int, listing: Listing, right: int) -> bool:
    """Whether a line below the end of an item, as deep as its text, begins a paragraph: full, it goes on at the marker."""
    below = lines[index]
    if below.indent != unit.text or index + 1 == len(lines) or not closed(lines[index - 1].text):
        return False
    after = lines[index + 1]
    level = (
        after.indent == lines[unit.start].indent and not after.apart and listing.markers[index + 1] is None
    )
    said = below.text[:1].isupper() and prose(below.text) and not listing.keys[index + 1]
    return level and said and not closed(below.text) and shortfall(below, after, right) < 0


def hangs_over(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether an item stops where no sentence can end, and its text goes on in small letters below a blank line."""
    above, below = lines[index - 1], lines[index]
    at_text = below.indent == (above.indent if unit.end - unit.start > 1 else unit.text)
    said = prose(above.text) and (prose(below.text) or closed(below.text)) and not above.text.endswith(",")
    return unit.marker is not None and at_text and said and hangs(above.text) and starts_small(below.text)


def shown_in_item(lines: Sequence[Line], unit: Unit, index: int, listing: Listing) -> bool:
    """Whether a colon in an item leads to a few small words, the last line of it: a command to be typed; or to settings.

    Or forms of one command stand beside a key.
    """
    above, below = lines[index - 1], lines[index]
    if not (unit.marker or unit.key) or below.indent != unit.text:
        return False
    if unit.key and index == unit.start + 1 and _forms(lines, unit):
        return True
    if _SETTING.fullmatch(below.text):
        return _settings(lines, unit, index)
    if not above.text.endswith(":"):
        return False
    after = index + 1
    last = parted_above(lines, after) or bool(listing.markers[after] or listing.keys[after])
    words = below.text.split()
    plain = all(word[:1].islower() and word.isalnum() for word in words)
    return last and plain and 1 < len(words) <= SHORT and not prose(below.text)


def _forms(lines: Sequence[Line], unit: Unit) -> bool:
    """Whether all that stands beside a key begins with one small word, three lines at least, and each ends in no sentence."""
    word = lines[unit.start].cells[unit.text :].partition(" ")[0] + " "
    if not starts_small(word):
        return False
    end = unit.start + 1
    while not parted_above(lines, end) and lines[end].indent >= unit.text:
        end += 1
    part = [line.cells[unit.text :] for line in lines[unit.start : end]]
    return len(part) >= FORMS and all(
        text.startswith(word) and not (prose(text) or closed(text) or text.endswith(",")) for text in part
    )


def _settings(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether a line is one of several settings that end an item, one below the other, a colon before the first."""
    end = index
    while index > unit.start and _SETTING.fullmatch(lines[index - 1].text):
        index -= 1
    while not parted_above(lines, end + 1) and _SETTING.fullmatch(lines[end + 1].text):
        end += 1
    return lines[index - 1].text.endswith(":") and end > index


def place_of_entry(below: Line, unit: Unit, right: int) -> bool:
    """Whether a page or line number alone at the right edge ends an item that has none: an entry of an index."""
    far = below.indent >= right // 2 and below.indent > unit.text + DEEPER
    return unit.marker is not None and far and bool(_PLACE.fullmatch(below.text))


def value_over_page(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether a page ends in a full line with words and a colon, `Oil left:`, that elsewhere have their value behind them.

    The value, a word alone, stands on the next page.
    """
    above, below = lines[index - 1], lines[index]
    alone = " " not in below.text and parted_above(lines, index + 1)
    words = above.text.split()[-2:]
    if not alone or len(words) < 2 or shortfall(above, below, right) >= 0:
        return False
    named = re.compile(rf"{re.escape(words[0])} +{re.escape(words[1])} +\S")
    return sum(named.search(line.text) is not None for line in lines if words[1] in line.text) >= VALUES


def typed_under(unit: Unit, above: Line, below: Line) -> bool:
    """Whether the text beside a key goes on right under itself in small letters: its lines were ended by hand."""
    under = below.indent == unit.text and starts_small(below.text) and not closed(above.text)
    return under and prose(above.cells[unit.text :])


def between_keys(lines: Sequence[Line], unit: Unit, index: int, listing: Listing) -> bool:
    """Whether a line with words of a sentence is the only one between the text beside a key, no sentence yet, and the next key.

    All others of the list have one line: this one was too long for its own.
    """
    above, below = lines[index - 1], lines[index]
    if not unit.key or below.indent != unit.text or index != unit.start + 1 or index + 1 >= len(lines):
        return False
    if _same_form(above.cells[unit.text :], below.text):
        return False  # another value of the key
    if closed(above.text) or not all(
        any(map(small_word, text.split())) for text in (above.cells[unit.text :], below.text)
    ):
        return False
    after = listing.keys[index + 1] == unit.text and not lines[index + 1].apart
    before = unit.start > 0 and not above.apart and listing.keys[unit.start - 1] > 0
    return after and before and not closed(below.text)


def _same_form(one: str, other: str) -> bool:
    """Whether two lines are the same but for the numbers in them, and have some: `2, when oil = 0` and `3, when oil = 1`."""
    return (
        one != other and _NUMBER.search(one) is not None and _NUMBER.sub("0", one) == _NUMBER.sub("0", other)
    )


def asks_on(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether a question stands right below the sentence that a number leads to, under it, and ends it: all of it is asked."""
    below = lines[index]
    if not below.text.endswith("?") or unit.marker is None or not unit.marker.kind.startswith("number"):
        return False
    asked = lines[unit.start : index]
    under = below.indent == unit.text and lines[unit.start].apart and parted_above(lines, index + 1)
    return under and prose(asked[0].text) and not any("?" in line.text for line in asked)


def last_of_entry(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether an address with the stop of a sentence is the last line of an item whose sentence has not ended yet."""
    above, below = lines[index - 1], lines[index]
    if unit.marker is None or below.text[-1] != "." or closed(above.text) or above.text[-1] in ":>":
        return False
    at_text = below.indent == (above.indent if unit.end - unit.start > 1 else unit.text)
    return at_text and parted_above(lines, index + 1) and _ADDRESS.fullmatch(below.text) is not None


def second_line(unit: Unit, index: int, above: Line, below: Line, right: int) -> bool:
    """Whether a sentence stands right below the first one of an item after a sign, exactly under it: its text goes on."""
    bullet = unit.marker is not None and unit.marker.kind.startswith("bullet")
    under = index == unit.start + 1 and below.indent == unit.text > above.indent
    told = prose(above.text) and prose(below.text) and closed(above.text) and not above.text.endswith(":")
    return bullet and under and told and shortfall(above, below, right) <= NEAR
