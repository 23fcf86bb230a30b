"""Hyphenation against the words that the literature gives."""

from __future__ import annotations

from itertools import pairwise

import pytest

from fit.errors import UsageError
from fit.hyphenation import break_points


def hyphenated(word: str, language: str = "en_US") -> str:
    points = [0, *break_points(word, language), len(word)]
    return "-".join(word[start:end] for start, end in pairwise(points))


@pytest.mark.parametrize(
    "expected",
    [
        # Liang 1983 and the TeXbook's appendix H, recomputed with TeX's patterns; the last from memory.
        "hy-phen-ation",
        "con-cate-na-tion",
        "su-per-cal-ifrag-ilis-tic-ex-pi-ali-do-cious",
        # TeX's list of exceptions.
        "ta-ble",
        "as-so-ciate",
        "present",
        "project",
    ],
)
def test_words_of_the_literature(expected: str) -> None:
    assert hyphenated(expected.replace("-", "")) == expected


@pytest.mark.parametrize(
    "word", ["eBook", "README", "base64", "lamp_oil", "read-only", "ab", "tide", "it's", ""]
)
def test_what_is_no_plain_word_is_left_alone(word: str) -> None:
    assert break_points(word) == ()


def test_two_letters_stay_before_and_three_after() -> None:
    for word in ("analogy", "idea", "every", "obviously", "lighthouse", "keeper"):
        for point in break_points(word):
            assert 2 <= point <= len(word) - 3


def test_a_capital_at_the_start_changes_nothing() -> None:
    assert break_points("Lighthouse") == break_points("lighthouse") == (5,)


def test_other_languages_have_their_own_points() -> None:
    assert hyphenated("Leuchtturm", "de_DE") == "Leucht-turm"
    assert break_points("Lighthouse", "en-gb") == break_points("Lighthouse", "en_GB")


def test_a_point_that_changes_the_spelling_is_no_point() -> None:
    # Hungarian "asszonnyal" breaks as "asz-szony-nyal": letters would be added.
    assert hyphenated("asszonnyal", "hu_HU") == "asszonnyal"


def test_an_unknown_language_is_refused() -> None:
    with pytest.raises(UsageError) as error:
        break_points("lighthouse", "xx")
    assert str(error.value).startswith(
        "there are no hyphenation patterns for the language 'xx'; use one of af, as,"
    )
