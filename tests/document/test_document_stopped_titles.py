"""Titles in the middle of the page that end in a full stop."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = """\
   The keeper on watch trims the lamp at dusk and again at midnight,
and he writes both hours in the log book, so that the relief can see
them there and need not ask him in the middle of the night.
"""
WIDTH = 68


def headings(*titles: str) -> list[str]:
    """The words of each heading of a text in which the titles stand over paragraphs."""
    text = "\n".join(f"{title}\n\n{PROSE}" for title in titles)
    blocks = read_text(PROSE + "\n" + text, "rules", "ascii").blocks
    return [block.text.chars for block in blocks if block.kind is Kind.HEADING]


def middle(*rows: str) -> str:
    return "\n".join(row.center(WIDTH).rstrip() for row in rows)


TITLES = "Of Fog.", "Of the Lamp and its Oil.", "Of Visitors."


def test_several_short_lines_in_the_middle_are_titles() -> None:
    assert headings(*map(middle, TITLES)) == [*TITLES]


def test_a_title_of_two_lines() -> None:
    tall = middle("Of the Relief, and of the", "Custody of the Keys.")
    assert headings(*map(middle, TITLES), tall)[-1] == "Of the Relief, and of the Custody of the Keys."


def test_one_such_line_is_no_title() -> None:
    assert headings(middle(TITLES[0])) == []


def test_lines_at_one_indent_stand_in_no_middle() -> None:
    assert headings(*(" " * 24 + title for title in TITLES)) == []


def test_a_sentence_in_the_middle_is_no_title() -> None:
    assert "The lamp is out." not in headings(*map(middle, TITLES), middle("The lamp is out."))
