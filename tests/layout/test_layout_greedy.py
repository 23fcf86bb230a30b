"""Greedy breaking. The reference is the standard library's `textwrap`."""

from __future__ import annotations

import textwrap

import pytest
from hypothesis import given, strategies as st

from fit.layout.greedy import wrap_greedy
from fit.width import text_cells


def greedy(text: str, width: int) -> list[str]:
    return [text[span.start : span.end] for span in wrap_greedy(text, width)]


@given(st.text("ab -", max_size=60), st.integers(1, 12))
def test_it_breaks_as_textwrap_does(text: str, width: int) -> None:
    # textwrap keeps blanks at the end of a line that a long word follows; on no line of ours are there any.
    reference = [line.rstrip() for line in textwrap.wrap(text, width, break_on_hyphens=False)]
    assert greedy(text, width) == [line for line in reference if line]


def test_the_example_of_the_literature() -> None:
    # Knuth and Plass 1981 compare such paragraphs; greedy leaves 63 squared cells, the last line's included.
    lines = greedy("To be, or not to be: that is the question", 10)
    assert lines == ["To be, or", "not to be:", "that is", "the", "question"]
    assert sum((10 - len(line)) ** 2 for line in lines) == 63


@pytest.mark.parametrize("width", [1, 2, 3])
def test_narrow_lines_cut_words_and_lose_nothing(width: int) -> None:
    text = "the lamp is lit"
    lines = greedy(text, width)
    assert "".join(lines) == text.replace(" ", "")
    assert max(map(len, lines)) <= width


def test_wide_and_combining_characters_count_in_cells() -> None:
    assert greedy("灯台 の光", 4) == ["灯台", "の光"]
    assert greedy("e\u0301te\u0301 ici", 3) == ["e\u0301te\u0301", "ici"]


def test_a_wide_character_on_a_narrow_line_stands_alone() -> None:
    assert greedy("灯台a", 1) == ["灯", "台", "a"]


def test_blanks_before_the_first_word_stay() -> None:
    assert greedy("  the lamp is lit", 8) == ["  the", "lamp is", "lit"]


@pytest.mark.parametrize("text", ["", "   "])
def test_nothing_to_break(text: str) -> None:
    assert wrap_greedy(text, 10) == []


@given(st.text("ab 灯e\u0301", max_size=40), st.integers(2, 9))
def test_no_line_is_too_wide_and_no_word_is_lost(text: str, width: int) -> None:
    lines = greedy(text, width)
    assert "".join("".join(lines).split()) == "".join(text.split())
    assert all(text_cells(line) <= width for line in lines)
