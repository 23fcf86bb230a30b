"""`pyte.Screen` 0.8.2 agrees with our screens on operations written down beforehand, and drives them by its stream.

The list leaves out what pyte 0.8.2 does otherwise than its sources (see the cases of `test_screen_cases`): text
after zero-width characters, alternate pages, NEL, HPA, margins, erasing while a wrap is pending, and what it lacks.
"""

from __future__ import annotations

import pyte
import pytest
from hypothesis import given, settings, strategies as st

from fit.dialect.ecma48 import Ecma48
from fit.screen.fates import Fates
from fit.screen.named import parse_size
from fit.screen.pyte_adapter import drive_pyte
from fit.screen.screen import PYTE_EVENTS, Screen

AGREED = [
    *(b"lamp", b"The tide table ", b"\r\n", b"\r", b"\n", b"\b", b"\t"),
    *(b"\x1b[%d;%dH" % place for place in ((1, 1), (3, 7), (5, 2), (99, 99))),
    *(b"\x1b[2%c" % final for final in b"ABCDEFG"),
    *(b"\x1b[3d", b"\x1bD", b"\x1bM", b"\x1b7\x1b[2;2H*\x1b8"),
    *(b"\x1b[1;1H\x1b[" + how for how in (b"J", b"K", b"2K", b"3X", b"2P", b"2@")),
    *(b"\x1b[4h", b"\x1b[4l", b"\x1b[1m", b"\x1b[0m", b"\x1b]2;lamp\x07"),
]


@settings(max_examples=300, deadline=None)
@given(parts=st.lists(st.sampled_from(AGREED), max_size=12))
def test_agreement(parts: list[bytes]) -> None:
    data = b"\r\n".join(parts)  # a new line cancels a pending wrap, after which the two differ
    ours = Screen(parse_size("20x6"), None, Fates(len(data)))
    theirs = pyte.Screen(20, 6)
    operations = Ecma48().feed(data, 0)
    ours.apply(operations)
    assert drive_pyte(theirs, operations) == 0
    assert ours.display == theirs.display
    assert (ours.cursor.row, ours.cursor.column) == (theirs.cursor.y, min(theirs.cursor.x, 19))


def test_a_stream_of_pyte_drives_a_screen_of_ours() -> None:
    screen = Screen(parse_size("20x3"))
    stream = pyte.Stream(screen)  # type: ignore[arg-type]  # it asks only for the events
    stream.feed("lamp\r\n\x1b[3;3Hoil\x1b[1m!\x1b]2;Skerry\x07\x1b[?25l")
    assert [row.rstrip() for row in screen.display] == ["lamp", "", "  oil!"]
    assert screen.title == "Skerry"


def test_every_event_of_pyte_is_an_event_of_ours() -> None:
    assert pyte.Stream.events <= set(PYTE_EVENTS)


@pytest.mark.parametrize("sequence", [b"\x1b[3b", b"\x1b[2S", b"\x1b[!p", b"\x1b[?J"])
def test_what_pyte_lacks_is_left_out_and_counted(sequence: bytes) -> None:
    assert drive_pyte(pyte.Screen(20, 3), Ecma48().feed(b"x" + sequence, 0)) == 1
