"""Lines of every sort, one below the other in any order: all of them come through, on screens of any width."""

from __future__ import annotations

from documents import pages_of
from hypothesis import example, given, settings, strategies as st

from fit.document.text import read_text
from fit.layout.compose import lay_out
from fit.layout.proof import prove_words
from fit.layout.settings import LayoutSettings
from fit.width import text_cells

DIVIDERS = [
    ".....",
    ". . . . .",
    "-----",
    "=====",
    "* * *",
    "|",
    "+---+",
    "#",
    ">",
    ":",
    "\f",
    "____",
    "^^^^",
]
WORDS = [
    "The keeper trims the wick and fills the lamp before dusk, and",
    "writes the hour into the log book, so that the second keeper",
    "lamp oil",
    "NIGHT WATCH",
    "1. Trim the wick.",
    "a) Fill the lamp.",
    "- a well-",
    "-q   be quiet",
    "o  wicks of the old sort",
    "oil:      two pints",
    "dusk      18.20     low",
    "dawn      6.12      high",
    "| dusk | 18.20 |",
    "..... lamp room",
    "Stairs ............ 7",
    "$ lamp --trim",
    '    10 PRINT "LAMP"',
    "> said the boat, and",
    "1984 was a good year.",
]
LINES = st.tuples(st.sampled_from(["", "", "  ", " " * 8, " " * 30]), st.sampled_from(DIVIDERS + WORDS)).map(
    "".join
)
TEXTS = st.lists(st.one_of(LINES, st.just("")), min_size=1, max_size=24).map("\n".join)


@settings(max_examples=120, deadline=None)
@given(TEXTS, st.sampled_from([1, 2, 3, 4, 5, 8, 12, 20, 40, 64]))
@example(".....\n" * 4, 40)
@example("..... lamp room\n..... stairs\n      and landing\n" * 3, 40)
@example("o  wicks\no  lamp oil in two\n   casks\n\n" * 2, 3)
def test_any_lines_come_through(text: str, width: int) -> None:
    document = read_text(text, "lines", "ascii")
    layout = lay_out(document, LayoutSettings(width, 7))
    assert prove_words(document, layout).holds
    assert max((text_cells(line) for page in pages_of(layout) for line in page), default=0) <= width
