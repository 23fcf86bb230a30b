"""Titles left of all running text, right over it, and lists of terms that only look like them."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

TEXT = """\
    The keeper on watch reads the barometer at the full hour and writes what
    it shows into the log, whatever the weather may be, before he goes up to
    the lamp.

    The second keeper signs the page in the morning, and reads what has been
    written there since the last boat came.
"""


def headings(text: str) -> list[tuple[str, int]]:
    blocks = read_text(text, "log", "ascii").blocks
    return [(block.text.chars, block.level) for block in blocks if block.kind is Kind.HEADING]


def test_titles_in_small_letters_at_several_columns() -> None:
    text = (
        f"The lamp\n{TEXT}\n  How it is lit\n{TEXT}\nFog\n  The bell\n   Who rings it?\n{TEXT}\n"
        f"  What is to be done with the boat when the wind turns to the north\nbefore dawn?\n{TEXT}"
    )
    assert headings(text) == [
        ("The lamp", 1),
        ("How it is lit", 2),
        ("Fog", 1),
        ("The bell", 2),
        ("Who rings it?", 3),
        ("What is to be done with the boat when the wind turns to the north before dawn?", 2),
    ]
    levels = {block.level for block in read_text(text, "log", "ascii").blocks if block.kind is Kind.PARAGRAPH}
    assert levels == {0}


def test_terms_have_one_paragraph_each() -> None:
    terms = "".join(
        f"{term}\n    The keepers say so of what is {term} on the rock, and of nothing else.\n\n"
        for term in (
            "dim",
            "dark",
            "lit",
            "wet",
            "lost",
            "late",
            "low",
            "loud",
            "full",
            "foul",
            "fair",
            "found",
        )
    )
    assert headings(terms) == []


def test_other_lines_left_of_the_text_are_none() -> None:
    text = "".join(f"The {name}\n{TEXT}\n" for name in ("lamp", "bell", "boat", "log"))
    assert len(headings(text)) == 4
    more = "The stores are read once more.\nThen they are written down.\n\n"
    assert ("The stores are read once more.", 1) not in headings(text + more * 4)
