"""Where words are laid out in another order than the document has them in."""

from __future__ import annotations

import pytest

from fit.document import read_document_bytes
from fit.layout.compose import lay_out
from fit.layout.reading_order import moved_blocks
from fit.layout.settings import LayoutSettings

BEFORE = "The lamp of the rock is lit at dusk by the keeper on watch, who writes down the hour.\n\n"
COLUMNS = """\
The oil comes with the boat on the        The horn is sounded by hand in any
first day of the month, and it is         fog that hides the landing from the
carried up the stairs at once, for        gallery, twice in each minute, and
the cans must not stand outside in        the second keeper is woken for it,
the sun.                                  whatever the hour.
"""
CELLS = """\
Lamp        What it needs in winter         What it needs in summer, and who sees
                                            to it on the long days
----------  ------------------------------  -------------------------------------
The great   a new wick each week, and the   a new wick each month, or when the
one         glass wiped by night            warden asks for one
The small   oil                             nothing
one
"""


def moved(text: str, width: int = 40, form: str = "text") -> list[tuple[int, int]]:
    document = read_document_bytes(text.encode(), name="a book", format=form)
    layout = lay_out(document, LayoutSettings(width=width, page_rows=7))
    return [(each.lines.start, each.lines.end) for each in moved_blocks(document, layout)]


def test_columns_stand_side_by_side_and_are_read_one_after_the_other() -> None:
    assert (2, 7) in moved(BEFORE + COLUMNS)


def test_cells_of_several_lines_are_read_one_after_the_other() -> None:
    assert moved(BEFORE + CELLS) == [(2, 9)]


def test_a_table_that_stays_one_is_read_as_it_stands() -> None:
    assert moved(BEFORE + CELLS, width=90) == []


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_words_in_the_order_of_the_lines_are_not_moved(end: str) -> None:
    text = (
        BEFORE + "Stores:\n\n  - oil,\n    in cans\n  - wicks\n\nlamp   what is lit\nhorn   what is heard\n"
    )
    assert moved(text.replace("\n", end)) == []


def test_lines_are_counted_as_an_editor_does() -> None:
    """A form feed ends no line."""
    assert moved(BEFORE + "\f" + BEFORE + CELLS) == [(4, 11)]


def test_the_lines_of_markup_say_nothing() -> None:
    assert moved("Lamp[^1].\n\n[^1]: Of brass.\n\nLit at dusk.\n", form="markdown") == []
