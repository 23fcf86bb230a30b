"""Echo: what is printed right after an input and equals what was typed."""

from __future__ import annotations

from fit.pipeline import measure
from fit.session import Event, EventKind, Session, Waits


def shown(*turns: tuple[str, str]) -> int:
    """Glyphs that count as shown, for turns of what is printed and then typed."""
    output, events = "", []
    for printed, typed in turns:
        output += printed
        events.append(Event(len(output), EventKind.INPUT, typed.encode()))
    return measure(Session(output.encode(), tuple(events), waits=Waits.INPUTS)).figures.shown


def test_typed_letters_do_not_count() -> None:
    assert shown(("> ", "look\r"), ("look\r\nA lamp.\r\n> ", "")) == len(">Alamp.>")


def test_up_to_the_first_that_differs() -> None:
    assert shown(("> ", "look"), ("loud\r\n", "")) == len(">ud")


def test_without_echo_everything_counts() -> None:
    assert shown(("> ", "q"), ("Goodbye", "")) == len(">Goodbye")


def test_blanks_and_controls_between_do_not_end_it() -> None:
    assert shown(("> ", "go up"), ("\x1b[1mgo\x1b[m up.", "")) == len(">.")


def test_keys_that_print_nothing_are_passed_over() -> None:
    assert shown(("> ", "\tgo\r"), ("go", "")) == len(">")


def test_letter_by_letter() -> None:
    assert shown(("> ", "n"), ("n", "o"), ("o", "\r"), ("\r\nok", "")) == len(">ok")
