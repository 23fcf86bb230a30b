"""Raw bytes and pasted text: what LF means, and lines that a terminal had cut in two."""

from __future__ import annotations

import textwrap

import pytest
from hypothesis import given, settings, strategies as st

from fit.source.raw import read_raw

LOG = (
    "The wind backed to the north-west towards midnight and the sea got up so quickly that the landing "
    "stage was under water before the second watch had come up the stairs with the oil. "
    "We trimmed the wick twice and kept the lens clear of salt until the morning."
)


def hard_cut(text: str, columns: int = 80) -> str:
    """As a terminal does it."""
    return "\n".join(text[start : start + columns] for start in range(0, len(text), columns)) + "\n"


@pytest.mark.parametrize(
    ("data", "bare_lf"),
    [
        (b"dusk\ndawn\n", True),
        (b"dusk\r\ndawn\r\n", False),
        (b"dusk\n\rdawn\n\r", False),
        (b"dusk\r\n\r\ndawn\r\n\r\n", False),
        (b"no line end", False),
        (b"dusk\ndawn\nnoon\r\n", True),
        (b"dusk\r\ndawn\r\nnoon\n", False),
        (b"\x1b[2;1Hdusk\ndawn\n", True),
        (b"\x1b[2;1Hdusk\n\n\rdawn\rnoon\n\n", False),
    ],
)
def test_what_a_line_feed_means(data: bytes, bare_lf: bool) -> None:
    session = read_raw(data, "log")
    assert (session.output, session.bare_lf) == (data, bare_lf)


def test_it_is_said() -> None:
    assert read_raw(b"dusk\ndawn\n", "").remarks == (
        "A line feed alone starts a new line, because 2 of 2 have no carriage return.",
    )
    assert read_raw(b"a\r\nb\r\nc\n", "").remarks == (
        "1 of 3 line feeds have no carriage return; they move down and keep the column.",
    )


def test_it_can_be_overridden() -> None:
    assert read_raw(b"dusk\ndawn\n", "", bare_lf=False).remarks == ()
    assert not read_raw(b"dusk\ndawn\n", "", bare_lf=False).bare_lf
    assert read_raw(b"dusk\r\n", "", bare_lf=True).bare_lf


def test_cut_lines_are_joined_and_no_byte_moves() -> None:
    pasted = hard_cut(LOG).encode()
    session = read_raw(pasted, "log")
    assert session.output.replace(b"\0", b"") == LOG.encode() + b"\n"
    assert len(session.output) == len(pasted)
    assert all(new in (old, 0) for new, old in zip(session.output, pasted, strict=True))
    assert session.remarks[-1] == "3 lines that a terminal of 80 columns had cut in two were joined."


def test_with_carriage_returns_too() -> None:
    session = read_raw(hard_cut(LOG).replace("\n", "\r\n").encode(), "log")
    assert session.output.replace(b"\0", b"") == LOG.encode() + b"\r\n"


def test_a_blank_lost_at_the_end_of_a_row_comes_back() -> None:
    rows = [row.rstrip() for row in hard_cut(LOG + " " + LOG[5:] + LOG).splitlines()]
    assert {len(row) for row in rows[:-1]} == {79, 80}
    session = read_raw("\n".join(rows).encode(), "log")
    assert session.output.replace(b"\0", b"").decode() == LOG + " " + LOG[5:] + LOG


@pytest.mark.parametrize(
    "text",
    [
        textwrap.fill(LOG * 9, 80) + "\n",  # wrapped at words by the program
        textwrap.fill(LOG * 9, 72) + "\n",
        LOG + "\n" + hard_cut(LOG),  # a longer line shows that no terminal of 80 columns cut it
        "=" * 80 + "\nTides\n" + "=" * 80 + "\n",
        "\n".join(f"{number:<40}{'high':>40}" for number in range(20)),
        hard_cut(LOG[:120]),  # one cut proves nothing
        "\x1b[1m" + hard_cut(LOG),
    ],
    ids=["wrapped at 80", "wrapped at 72", "longer line", "rulers", "columns", "one cut", "not text"],
)
def test_what_is_left_alone(text: str) -> None:
    assert read_raw(text.encode(), "log").output == text.encode()


def test_one_cut_is_enough_where_the_word_stands_elsewhere() -> None:
    text = LOG[:78] + " lighthouse stood.\nThe lighthouse is on a rock.\n"
    pasted = text[:80] + "\n" + text[80:]
    assert read_raw(pasted.encode(), "").output.replace(b"\0", b"").decode() == text


def test_joining_can_be_overridden() -> None:
    assert read_raw(hard_cut(LOG).encode(), "", join=False).output == hard_cut(LOG).encode()
    assert read_raw(hard_cut(LOG[:120]).encode(), "", join=True).output.count(b"\0") == 1


@settings(max_examples=200, deadline=None)
@given(st.binary(max_size=300), st.none() | st.booleans(), st.none() | st.booleans())
def test_any_bytes_keep_their_places(data: bytes, bare_lf: bool | None, join: bool | None) -> None:
    output = read_raw(data, "", bare_lf=bare_lf, join=join, columns=8).output
    assert len(output) == len(data)
    assert all(new == old or old in b"\r\n" for new, old in zip(output, data, strict=True))
