"""Words that the word list does not know: hyphens only between words that it does."""

from __future__ import annotations

from itertools import pairwise

import pytest

from fit.hyphenation import break_points
from fit.layout.unknown_words import known_points
from fit.lexicon import is_word


def hyphenated(word: str, language: str = "en_US") -> str:
    points = [0, *known_points(word, language), len(word)]
    return "-".join(word[start:end] for start, end in pairwise(points))


@pytest.mark.parametrize(
    "expected",
    [
        "su-per-user",  # not supe-ruser
        "name-spaces",  # not names-paces
        "re-sig-nal",  # a prefix before a word
        "pre-pend-ing",  # a prefix rather than a word
        "jour-nal-ing",  # a word with an ending
        "light-house-keeper",
    ],
)
def test_unknown_words_are_parted_where_known_ones_are(expected: str) -> None:
    word = expected.replace("-", "")
    assert not is_word(word)
    assert hyphenated(word) == expected


@pytest.mark.parametrize("word", ["errno", "wickulator", "Skerryvore", "protover", "nostrictatime"])
def test_names_are_left_whole(word: str) -> None:
    assert break_points(word)
    assert known_points(word, "en_US") == ()


@pytest.mark.parametrize("word", ["lighthouse", "Lighthouse", "colouring", "unlit", "spaces"])
def test_known_words_have_the_points_of_the_patterns(word: str) -> None:
    assert known_points(word, "en_US") == break_points(word)


def test_other_languages_have_the_points_of_their_patterns() -> None:
    assert hyphenated("Leuchtturm", "de_DE") == "Leucht-turm"
