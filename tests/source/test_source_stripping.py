"""Control sequences blanked out, every byte where it was."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from fit.source import stripping
from fit.source.stripping import blanked


@pytest.mark.parametrize(
    ("output", "plain"),
    [
        (b"\x1b[1mlamp\x1b[m", b"    lamp   "),
        (b"a\x1b]0;title\x07b", b"a          b"),
        (b"a\x1bP1$r\x1b\\b", b"a       b"),
        (b"a\x1b(0b\x1bDc", b"a   b  c"),
        (b"a\r\nb\tc\x7f", b"a \nb c "),
        (b"\xc3\xa9\x9b", b"\xc3\xa9\x9b"),
        (b"cut\x1b[12", b"cut  12"),
    ],
)
def test_blanks(output: bytes, plain: bytes) -> None:
    assert blanked(output) == plain


@settings(max_examples=100, deadline=None)
@given(st.lists(st.sampled_from([b"\x1b[1m", b"\n", b"lamp", b"\x1b", b"\x1b]x"])).map(b"".join))
def test_no_byte_moves(output: bytes) -> None:
    plain = blanked(output)
    assert len(plain) == len(output)
    assert all(new in (old, 0x20) for new, old in zip(plain, output, strict=True))


def test_blocks_end_at_line_ends(monkeypatch: pytest.MonkeyPatch) -> None:
    output = b"\x1b[1mthe lamp\x1b[m is lit\r\n" * 20
    whole = blanked(output)
    monkeypatch.setattr(stripping, "_BLOCK", 7)
    assert blanked(output) == whole
