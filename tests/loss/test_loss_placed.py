"""Which operations make placed what follows them."""

from __future__ import annotations

import pytest

from fit.pipeline import measure
from fit.session import Event, EventKind, Session, Waits


def placed_share(output: bytes, look: int | None = None) -> float | None:
    events = [Event(at, EventKind.INPUT, b"\r") for at in (look, len(output)) if at is not None]
    return measure(Session(output, tuple(events), waits=Waits.INPUTS)).placed_share


@pytest.mark.parametrize(
    "sequence",
    [b"\x1b[3;4H", b"\x1b[3H", b"\x1b[1;9f", b"\x1b[5G", b"\x1b[5`", b"\x1b[3d", b"\x1b[A", b"\x1b[2B", b"\x1b[C",
     b"\x1b[3D", b"\x1b[2E", b"\x1b[F", b"\x1b8", b"\x1b[u"],
)  # fmt: skip
def test_addressing_the_cursor_places(sequence: bytes) -> None:
    assert placed_share(b"ab\r\n\r\n\x1b7\x1b[s" + sequence + b"cd") == 0.5


@pytest.mark.parametrize(
    "sequence",
    [b"\x1b[H", b"\x1b[1;1H", b"\x1b[H\x1b[J", b"\r\n", b"\x1bE", b"\x1bD", b"\x1bM", b"\t", b"\b\b", b"\x1b[7m", b"\x1b7"],
)  # fmt: skip
def test_home_and_the_stream_of_lines_flow(sequence: bytes) -> None:
    assert placed_share(b"\r\n\r\n" + sequence + b"oil") == 0.0


def test_a_look_ends_it() -> None:
    assert placed_share(b"\x1b[3;1Hab\r\ncd", look=8) == 0.5


def test_a_repeated_glyph_is_placed_with_its_operation() -> None:
    assert placed_share(b"\x1b[3;4Ha\x1b[3b") == 1.0
