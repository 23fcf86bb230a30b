"""Cells and clusters, against the Unicode Character Database where the system has it (Debian: unicode-data)."""

from __future__ import annotations

import gzip
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from fit.width import char_cells, clusters, single, text_cells

UNICODE = Path("/usr/share/unicode")
NEWLY_WIDE = range(0x1D360, 0x1D380)
"""Counting rods: narrow in Unicode 15, which Debian has, wide in wcwidth's newer tables."""


def lines_of(name: str) -> Iterator[str]:
    """The lines of a file of the Unicode Character Database, comments cut off."""
    path = UNICODE / name
    packed = path.with_name(path.name + ".gz")
    if not path.exists() and not packed.exists():
        pytest.skip(f"no {name} on this system; Debian's package unicode-data has it")
    text = path.read_text("utf-8") if path.exists() else gzip.decompress(packed.read_bytes()).decode("utf-8")
    for line in text.splitlines():
        if content := line.partition("#")[0].strip():
            yield content


@pytest.mark.parametrize(
    ("text", "cells"),
    [
        ("lamp", 4),
        ("", 0),
        ("海の光", 6),
        ("e\u0301", 1),
        ("a\u200bb", 2),
        ("\u2500\u2588", 2),
        ("\x07\x1b", 0),
        ("🕯", 1),
    ],
)
def test_cells(text: str, cells: int) -> None:
    assert text_cells(text) == cells


@given(st.text())
def test_clusters_leave_nothing_out(text: str) -> None:
    found = list(clusters(text))
    assert "".join(text[start:end] for start, end, _ in found) == text
    assert all(0 <= cells <= 2 for _, _, cells in found)


def test_single_characters_take_one_cell_of_their_own_whatever_stands_beside_them() -> None:
    alone = [char for char in map(chr, range(0x10000)) if single(char)]
    assert len(alone) > 900
    assert [char for char in alone if char_cells(char) != 1] == []
    assert [char for char in alone if len(list(clusters(f"e{char}e"))) != 3] == []


@pytest.mark.parametrize("text", ["\u00a0", "\u00ad", "a\tb", "e\u0301", "\u6d77", "\u200b", "\x1b"])
def test_what_is_not_single(text: str) -> None:
    assert not single(text)


@pytest.mark.outside
def test_wide_characters_of_east_asian_width_take_two_cells() -> None:
    """Unicode Standard Annex 11: W and F take two cells, N, Na and H one; ambiguous ones are not held."""
    wrong = []
    tested = 0
    for line in lines_of("EastAsianWidth.txt"):
        places, width = (part.strip() for part in line.split(";"))
        first, _, last = places.partition("..")
        for code in range(int(first, 16), int(last or first, 16) + 1):
            char = chr(code)
            if not char.isprintable() or not char.isalnum() or width == "A" or code in NEWLY_WIDE:
                continue
            cells = char_cells(char)
            tested += 1
            if cells and cells != (2 if width in "WF" else 1):
                wrong.append((hex(code), width, cells))
    assert tested > 100_000
    assert wrong == []


@pytest.mark.outside
def test_clusters_are_the_grapheme_clusters_of_unicode() -> None:
    """GraphemeBreakTest of Unicode Standard Annex 29; rules changed since the system's version are not held."""
    tested, wrong = 0, []
    for line in lines_of("auxiliary/GraphemeBreakTest.txt"):
        parts = [re.findall(r"[0-9A-F]+", part) for part in line.strip("÷ ").split("÷")]
        expected = ["".join(chr(int(code, 16)) for code in part) for part in parts]
        text = "".join(expected)
        if text.isascii() or any("\ud800" <= char <= "\udfff" for char in text):
            continue
        tested += 1
        found = [text[start:end] for start, end, _ in clusters(text)]
        if found != expected:
            wrong.append(line)
    assert tested > 500
    # wcwidth's tables are newer than the system's file: U+2701 is no pictograph in them.
    assert set(wrong) <= {"÷ 2701 × 200D × 2701 ÷"}
