"""A status line is a row rewritten in place that never scrolls, wherever it stands; prose on a page drawn anew is none."""

from __future__ import annotations

import pytest

from fit.pipeline import measure
from fit.session import Event, EventKind, Session, Waits

PROSE = (
    "The stove ticks and the lamp draws its breath.",
    "Forty-one steps, and the sea has thirty of them.",
    "She does not turn round; the water talks.",
    "Nine cans on the shelf, each with its ring of dust.",
)


def session(pages: list[str]) -> Session:
    """A session with a look after each page."""
    output, events = b"", []
    for page in pages:
        output += page.encode()
        events.append(Event(len(output), EventKind.INPUT, b"\r"))
    return Session(output, tuple(events[:-1]), waits=Waits.INPUTS)


def rows(pages: list[str]) -> tuple[int, ...]:
    return measure(session(pages)).demands.status_rows


@pytest.mark.parametrize("row", [1, 3, 12, 25])
def test_a_row_that_is_addressed_and_rewritten(row: int) -> None:
    pages = [f"\x1b[{row};1HOil {oil}\x1b[K" for oil in (64, 61, 58, 55)]
    assert rows(pages) == (row,)


def test_labels_with_new_values_on_a_page_drawn_anew() -> None:
    pages = [
        f"\x1b[H\x1b[2JTide: ebb  Oil: {oil}\r\n{prose}\r\nWhat now? "
        for oil, prose in zip((64, 61, 58, 55), PROSE, strict=True)
    ]
    assert rows(pages) == (1,)


def test_lines_that_scroll_are_none() -> None:
    assert rows([f"Oil: {oil}\r\n" * 20 for oil in (64, 61, 58, 55)]) == ()
