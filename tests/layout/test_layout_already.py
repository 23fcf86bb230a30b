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


HAND = (
    "the keeper of the lamp has to be up\nat dusk and to stay on his watch in\nthe gallery until the sun is seen to\n"
    "rise from the sea and the lamp can\n\f"
)


@pytest.mark.parametrize(
    ("page", "why"),
    [
        (HAND, "wrapped at 36 columns"),
        (HAND.replace("\n", " and so\n").replace(" of ", "  of  ").replace(" to ", "  to  "), "justified"),
        ("The keeper                      Page 7\nis up.\n\f", "page numbers"),
    ],
)
def test_a_text_that_only_happens_to_fit_is_laid_out(page: str, why: str) -> None:
    settings = LayoutSettings(width=46, page_rows=7)
    assert as_pages(read_text(page * 4, "x", "ascii"), settings) is None, why


def test_our_own_pages_stay_whatever_they_hold() -> None:
    settings = LayoutSettings(width=36, page_rows=7)
    assert as_pages(read_text(HAND * 4, "x", "ascii"), settings) is not None
