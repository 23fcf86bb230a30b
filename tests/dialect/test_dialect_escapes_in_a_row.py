"""Bug: two ESC in a row ended the decoding of encodings that draw all bytes above 7Fh."""

from __future__ import annotations

import pytest

from fit.dialect.ecma48 import Ecma48
from fit.dialect.encoding import ENCODINGS
from fit.screen.screen import Screen
from fit.units import Size


@pytest.mark.parametrize("encoding", ENCODINGS)
@pytest.mark.parametrize("data", [b"\x1b\x1b", b"a\x1b\x1b[2Cb", b"\x1b\x1b\x1b\x1b7z", b"\xb3\x1b\x1b\xb3"])
def test_escapes_in_a_row_are_read_whole_and_byte_by_byte(encoding: str, data: bytes) -> None:
    whole, split = Screen(Size(2, 10)), Screen(Size(2, 10))
    dialect = Ecma48(encoding)
    whole.apply(dialect.feed(data, 0))
    whole.apply(dialect.finish())
    dialect = Ecma48(encoding)
    for start in range(len(data)):
        split.apply(dialect.feed(data[start : start + 1], start))
    split.apply(dialect.finish())
    assert whole.display == split.display
    assert whole.position == split.position
