"""Titles in capitals at the start of a unit: whether they go on in the next line, or stand over text of their own."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.running.unit import Unit
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.measure import closed, hangs, starts_small
from fit.document.text.signs.rules import ruled_off
from fit.document.text.titles.headings import dressed, loud, nothing_below

TITLE = 12
"""Cells that a title in capitals leaves free at least, though the word below it had room."""


def title_goes_on(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether a line in capitals stands alone, or over a rule, right below a number and a title in capitals: its second line.

    One in small letters does where both are in bold or underlined.
    """
    first, below = lines[unit.start], lines[index]
    return (
        unit.marker is not None
        and not unit.marker.kind.startswith("bullet")
        and unit.start == index - 1
        and first.gap > 0
        and below.gap == 0
        and not below.crossing
        and first.indent <= below.indent <= unit.text
        and (
            (loud(first.cells[unit.text :]) and loud(below.text))
            or (starts_small(below.text) and dressed(first) and below.marked() > 0)
        )
        and (index + 1 == len(lines) or lines[index + 1].gap > 0 or ruled_off(lines[index + 1].text))
    )


def title_over(lines: Sequence[Line], unit: Unit, index: int, right: int) -> bool:
    """Whether a line in capitals, short of the margin, stands first over text in small letters: a title over its own."""
    above, below = lines[index - 1], lines[index]
    first = unit.start == index - 1 and (above.gap > 0 or index == 1) and unit.marker is None and not unit.key
    if not first or " " not in above.text or not loud(above.text) or loud(below.text):
        return False
    return not hangs(above.text.lower()) and shortfall(above, below, right) >= TITLE


def dressed_below(lines: Sequence[Line], index: int) -> bool:
    """Whether a line in bold or underlined stands right below plain text that has ended, with nothing right below it.

    Where the blank line between the lines of a text is taken out, that above a title is, too.
    """
    above, below = lines[index - 1], lines[index]
    if below.resolved is None or not below.marked() or above.marked() or not closed(above.text):
        return False
    titled = below.text[:1].isupper() and not closed(below.text)
    return titled and nothing_below(lines[index + 1] if index + 1 < len(lines) else None)


def over_plain(lines: Sequence[Line], unit: Unit, index: int) -> bool:
    """Whether a number and a title in bold or underlined stand right over plain text that begins no deeper."""
    above, below = lines[index - 1], lines[index]
    if unit.start != index - 1 or above.resolved is None or below.indent > above.indent:
        return False
    return dressed(above) and not below.marked()
