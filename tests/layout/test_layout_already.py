"""A text that has its pages already stays as it is, and any other does not."""

from __future__ import annotations

import pytest

from fit.document.text import read_text
from fit.layout.already import as_pages, lay_out_as_pages
from fit.layout.proof import prove_words
from fit.layout.settings import LayoutSettings

SCREEN = LayoutSettings(width=10, page_rows=3)

PAGED = [
    ("one\ntwo\n\fthree\n", [["one", "two"], ["three"]]),
    ("one\r\n\fthree\r\n", [["one"], ["three"]]),
    ("one\n\n  two  \n\fthree", [["one", "", "  two"], ["three"]]),
    ("one\fthree", [["one"], ["three"]]),
    ("1234567890\n\f2\n\f3\n", [["1234567890"], ["2"], ["3"]]),
    ("\fone\n\ftwo\n", [["one"], ["two"]]),
]


@pytest.mark.parametrize(("source", "pages"), PAGED)
def test_pages_that_fit_stay(source: str, pages: list[list[str]]) -> None:
    document = as_pages(read_text(source, "x", "ascii"), SCREEN)
    assert document is not None
    layout = lay_out_as_pages(document, SCREEN)
    assert layout is not None
    assert [[line.text for line in layout.lines[page.start : page.end]] for page in layout.pages] == pages
    assert prove_words(document, layout).holds
    for line in layout.lines:
        assert [source[place] for place in line.sources] == list(line.text)


OTHERS = {
    "no form feed": "one\ntwo\n",
    "a line too wide": "12345678901\n\ftwo\n",
    "a page too high": "1\n2\n3\n4\n\ftwo\n",
    "only one page": "one\n\f",
    "an overstrike": "o\bone\n\ftwo\n",
}


@pytest.mark.parametrize("source", OTHERS.values(), ids=OTHERS.keys())
def test_anything_else_is_to_be_laid_out(source: str) -> None:
    assert as_pages(read_text(source, "x", "ascii"), SCREEN) is None


def test_a_line_of_the_users_may_part_the_pages() -> None:
    document = as_pages(read_text("one\n-- key --\ntwo\n", "x", "ascii"), SCREEN, "-- key --")
    assert document is not None
    assert [[line.chars for line in block.lines] for block in document.blocks] == [["one"], ["two"]]
    assert as_pages(read_text("one\ntwo\n", "x", "ascii"), SCREEN, "") is None
