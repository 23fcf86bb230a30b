"""What is decoration and what is not."""

from __future__ import annotations

import pytest

from fit.loss.decoration import find_decoration


def decorated(text: str) -> str:
    """The text with its decoration shown as ``#``."""
    marks = list(text)
    for low, high in find_decoration(text):
        marks[low:high] = "#" * (high - low)
    return "".join(marks)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("====", "####"),
        ("==== OIL ====", "#### OIL ####"),
        ("===OIL===", "===OIL==="),  # three are too few
        ("oil......9", "oil######9"),
        ("____", "####"),
        ("aaaa 1111", "aaaa 1111"),  # letters and digits never are
        ("a -- b --- c", "a ## b ### c"),
        ("a - b", "a - b"),
        ("--no-wick", "--no-wick"),  # the word is more than its dashes
        ("| oil | wick |", "# oil # wick #"),
        ("+--|--+", "#######"),
        ("+--+", "+--+"),  # no bar, and two dashes inside a word
        ("|x|", "|x|"),
        ("\u2500\u2500 \u2588 \u2502oil\u2502", "## # #oil#"),
    ],
)  # fmt: skip
def test_decoration(text: str, shown: str) -> None:
    assert decorated(text) == shown
