"""A few words in small letters alone between blank lines, at one place again and again: titles."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = """\
   The keeper on watch trims the lamp at dusk and again at midnight,
   and he writes both hours in the log book, so that the relief can
   see them there and need not ask him in the middle of the night.
"""
TABLE = """\
     Lamp      Oil     Wick
     north     9       12
     south     7       11
     landing   2       4
"""
TITLES = "Before the watch", "The lamp at dusk", "Looking after the horn", "The end of the night"


def headings(*parts: str) -> list[str]:
    """The words of each heading of a text made of the parts."""
    blocks = read_text(PROSE + "\n" + "\n".join(parts), "guide", "ascii").blocks
    return [block.text.chars for block in blocks if block.kind is Kind.HEADING]


def over(titles: tuple[str, ...], below: str = PROSE, indent: int = 3) -> list[str]:
    return [f"{' ' * indent}{title}\n\n{below}" for title in titles]


def test_titles_that_come_again() -> None:
    assert headings(*over(TITLES)) == [*TITLES]


def test_titles_over_tables_that_stand_farther_right() -> None:
    assert headings(*over(TITLES, TABLE)) == [*TITLES]


def test_a_title_with_a_verb_beside_as_many_without() -> None:
    assert headings(*over(TITLES), *over(("If you are alone",)))[-1] == "If you are alone"


def test_three_are_too_few() -> None:
    assert headings(*over(TITLES[:3])) == []


@pytest.mark.parametrize("other", ["Maren, first keeper", "On the north side"])
def test_lines_alone_that_stand_over_no_text_are_evidence_against_titles(other: str) -> None:
    closing = [f"   {other}\n\n     - oil for the lamp\n     - wicks for the lamp\n\n" for _ in range(3)]
    assert headings(*over(TITLES), *closing) == []


def test_a_name_with_what_it_stands_for_is_no_title() -> None:
    dated = over(tuple(f"Date: {day} June" for day in range(1, 9)))
    assert headings(*over(TITLES), *dated) == [*TITLES]


def test_a_line_that_leads_to_the_next_is_no_title() -> None:
    led = [f"   The keeper's list says that\n\n{part}" for part in over(("Oil for the lamp",))]
    assert "Oil for the lamp" not in headings(*over(TITLES), *led)
