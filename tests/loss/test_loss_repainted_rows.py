"""A row repainted with the same text: its new glyphs are read anew, whatever was read of the old ones."""

from __future__ import annotations

from fit.pipeline import measure
from fit.session import Event, EventKind, Session, Waits

STATUS = "KITCHEN".ljust(60) + "Oil: 64"


def page(text: str) -> bytes:
    """Clear, a status row, a text, the prompt; then the oil again, in place."""
    return f"\x1b[H\x1b[2J{STATUS}\r\n{text}\r\nWhat now? \x1b7\x1b[1;66H61\x1b8".encode()


def test_a_prompt_in_its_old_row_is_intact_though_a_hold_came_after_it() -> None:
    first, second = page("The stove ticks."), page("The lamp draws its breath.")
    session = Session(first + second, (Event(len(first), EventKind.INPUT, b"look\r"),), waits=Waits.INPUTS)
    report = measure(session, "80x25", "40x8")
    lost = [word.text for word in report.words_lost_in(2)]
    assert "What" not in lost
    assert "now?" not in lost
