"""What a word allows: hyphens, joints, and ties to its neighbours."""

from __future__ import annotations

import pytest

from fit.layout.costs import End
from fit.layout.words import analyse


def parts(word: str) -> str:
    """The word with a bar where a hyphen may be put in and a slash where it may be parted as it is."""
    found = analyse(word, "en_US")
    signs = {at: "|" if kind is End.HYPHEN else "/" for at, kind in found.inside}
    return "".join(signs.get(index, "") + char for index, char in enumerate(word))


@pytest.mark.parametrize(
    ("word", "parted"),
    [
        ("lighthouse", "light|house"),
        ("(lighthouse),", "(light|house),"),
        ("lighthouse's", "light|house's"),
        ("``lighthouse'',", "``light|house'',"),  # quotes of a typewriter
        ("(``lighthouse", "(``light|house"),
        ("*lighthouse*", "*light|house*"),  # stress
        ("*well-kept*.", "*well-/kept*."),
        ("well-kept", "well-/kept"),
        ("lamp-keeper's.", "lamp-/keeper's."),
        ("sea--lighthouse", "sea--/lighthouse"),
        ("sea\u2014or", "sea\u2014/or"),
    ],
)
def test_where_words_may_be_parted(word: str, parted: str) -> None:
    assert parts(word) == parted


@pytest.mark.parametrize(
    "word",
    [
        "--no-header",  # an option
        "-verbose",
        "lamp-drill.txt",  # a file name
        "keepers/lighthouse",  # a path
        "lamp_lighter",  # an identifier
        "lampLighter",
        "LIGHTHOUSE",
        "`lighthouse'",  # more often a command than a quotation
        "lighthouse2",
        "http://lighthouse.example/obviously",
        "keeper@lighthouse.example",
        "10-20",  # a range
        "start-up",  # "startup" is a word too: the hyphen would be taken for one put in
        "--",
        "sea--",
    ],
)
def test_what_is_left_whole(word: str) -> None:
    assert parts(word) == word


@pytest.mark.parametrize(
    "pair",
    [
        "3 mm",
        "12 V,",
        "1,200 kHz",
        "5 %",
        "-o FILE",
        "--rows <n>",
        "--rows 7",
        "J. Ames",
        "J.R. Ames",
        "Mr Ames",
        "Dr. Ames",
        "page 5",
        "Fig. 2",
        "(see p. 12)".removeprefix("(see "),
        "lamp --",
        "lamp \u2013",
        "in 1.",  # a line must not begin as an item would
        "and - ",
        "then b)",
    ],
)
def test_pairs_that_stay_together(pair: str) -> None:
    left, right = pair.split()
    assert analyse(left, "").left & analyse(right, "").right


@pytest.mark.parametrize(
    "pair",
    ["3 lamps", "the lamp", "-v, --verbose", "-o file", "sea. The", "keeper Ames", "lamp 5", "page of"],
)
def test_pairs_that_may_part(pair: str) -> None:
    left, right = pair.split()
    assert not analyse(left, "").left & analyse(right, "").right
