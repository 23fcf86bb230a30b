"""Names of a column: cut where they must be, and never two of them to the same letters."""

from __future__ import annotations

from hypothesis import given, strategies as st

from fit.shelf.clipped_names import clipped_names
from fit.width import text_cells


def test_a_long_name_keeps_its_start() -> None:
    assert clipped_names(["LAMP.COM", "the-log-of-the-first-watch.jsonl"], 16) == {
        "LAMP.COM": "LAMP.COM",
        "the-log-of-the-first-watch.jsonl": "the-log-of-the..",
    }


def test_names_that_start_alike_keep_their_ends_too() -> None:
    names = ["log-of-the-first-watch-1.jsonl", "log-of-the-first-watch-2.jsonl", "log-of-the-dog-watch.jsonl"]
    assert list(clipped_names(names, 18).values()) == [
        "log-of-th..1.jsonl",
        "log-of-th..2.jsonl",
        "log-of-the-dog-w..",
    ]


def test_names_that_neither_start_nor_end_tells_stay_whole() -> None:
    names = ["log-of-the-long-dog-watch-of-june.jsonl", "log-of-the-long-mid-watch-of-june.jsonl"]
    assert list(clipped_names(names, 16).values()) == names


@given(st.lists(st.text("ab灯\u0301", min_size=1, max_size=30), unique=True), st.integers(8, 20))
def test_no_two_are_alike_and_what_is_cut_fits(names: list[str], cells: int) -> None:
    cut = clipped_names(names, cells)
    assert len(set(cut.values())) == len(names)
    assert all(short == name or text_cells(short) <= cells for name, short in cut.items())
