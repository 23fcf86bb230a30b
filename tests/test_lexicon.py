"""The word list read line by line says what its JSON says: against the file itself, which comes with pyspellchecker (MIT)."""

from __future__ import annotations

import gzip
import json
from importlib import resources

import pytest
import spellchecker

from fit.lexicon import entries, frequency, is_word

PACKED = (resources.files(spellchecker) / "resources" / "en.json.gz").read_bytes()
TEXT = gzip.decompress(PACKED).decode()


def test_each_word_has_its_count() -> None:
    words: dict[str, int] = json.loads(TEXT)
    assert len(words) > 100_000
    assert {word: frequency(word) for word in words if word == word.lower()} == {
        word: count for word, count in words.items() if word == word.lower()
    }


def test_what_is_no_word_has_none() -> None:
    for word in ("wicktrimmer", "", '"', 'a": 4', "lamp\\", "zzzz"):
        assert frequency(word) == 0
    assert frequency("LAMP") == frequency("lamp") > 0
    assert is_word("harbour")
    assert not is_word("harbourr")


@pytest.mark.parametrize(
    "text",
    [
        json.dumps({"wick": 50, "lamp": 700, "oil": 9}),
        json.dumps({"wick": 50, "lamp": 700, "oil": 9}, indent=2),
        '{\n"wick": 50,\n"lamp": 700,\n"oil": 9\n}',
    ],
    ids=["in one line", "set in", "out of order"],
)
def test_a_list_in_any_dress_is_in_order(text: str) -> None:
    assert [entry.rstrip(",") for entry in entries(text)] == ['"lamp": 700', '"oil": 9', '"wick": 50']
