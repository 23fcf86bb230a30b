"""Parameterised strings, against the examples of terminfo(5) and against the standard library's curses."""

from __future__ import annotations

import curses
import os
from pathlib import Path

import pytest

from fit.dialect.expression import TerminfoExpression, strip_padding
from fit.dialect.terminfo_database import entry_names, read_entry

_SAMPLES = [
    (0, 0), (1, 2), (23, 79), (5, 10), (30, 31), (9, 99), (0, 1, 0, 0, 1, 0, 1, 0, 1), (1, 0, 1, 1), (65, 4), (12, 32),
]  # fmt: skip


def expand(text: bytes, *parameters: int) -> bytes:
    return TerminfoExpression(text).expand(*parameters)


@pytest.mark.parametrize(
    ("text", "parameters", "wanted"),
    [
        # terminfo(5), "Parameterized Strings"; the row and column of its first example are 3 and 12.
        (b"\x1b&a%p2%2dc%p1%2dY", (3, 12), b"\x1b&a12c 3Y"),
        (b"\x14%p1%c%p2%c", (3, 12), b"\x14\x03\x0c"),
        (b"\x1b=%p1%' '%+%c%p2%' '%+%c", (3, 12), b"\x1b=#,"),
        (b"\x1b[%i%p1%d;%p2%dH", (3, 12), b"\x1b[4;13H"),
        (b"%p1%02d", (7,), b"07"),
        (b"%p1%2.2X", (31,), b"1F"),
        (b"%?%p1%t1%e%p2%t2%e3%;", (0, 5), b"2"),
        (b"%?%p1%t1%e%p2%t2%e3%;", (0, 0), b"3"),
        (b"%p1%Pa%ga%ga%+%d", (4,), b"8"),
        (b"%{7}%{2}%m%d%{7}%{2}%/%d%%", (), b"13%"),
        (b"%p1%!%d%p1%~%d", (0,), b"1-1"),
    ],
)
def test_examples(text: bytes, parameters: tuple[int, ...], wanted: bytes) -> None:
    assert expand(text, *parameters) == wanted


def test_a_nul_is_sent_as_80h() -> None:
    assert expand(b"\x10%p2%c%p1%c", 0, 5) == b"\x10\x05\x80"


def test_conversions_without_parameters_take_them_in_order_as_in_termcap() -> None:
    assert expand(b"\x1b[%d;%dR", 4, 9) == b"\x1b[4;9R"


def test_padding_is_no_part_of_a_sequence() -> None:
    assert strip_padding(b"\x1bJ$<50/>\x0c$<1.5*>$<x>") == b"\x1bJ\x0c$<x>"


@pytest.mark.outside
def test_every_expression_of_the_database_expands_as_in_curses() -> None:
    names = entry_names()
    if "vt100" not in names:
        pytest.skip("this system has no terminal database")
    with Path(os.devnull).open("w", encoding="ascii") as sink:
        curses.setupterm("vt100", sink.fileno())  # tparm wants any terminal first
    texts = {
        expression.text
        for name in names
        for expression in (read_entry(name) or pytest.fail(name)).expressions.values()
        if isinstance(expression, TerminfoExpression)
        # Variables in capitals keep their value from one sequence to the next, which no decoder can know.
        and not any(bytes([37, 103, letter]) in expression.text for letter in range(65, 91))
    }
    assert len(texts) > 400
    different = [
        (text, sample)
        for text in sorted(texts)
        for sample in _SAMPLES
        if expand(text, *sample) != curses.tparm(text, *sample, *[0] * (9 - len(sample)))
    ]
    assert different == []
