"""Which terminal each screen speaks, and why."""

from __future__ import annotations

from fit.pipeline import prepare
from fit.screen.rules import WrapRule
from fit.session import Session

HZ1500 = b"~\x1cOil: low~\x11\x05\x65Tide: high~\x0f~\x11\x07\x66Wind~\x18~\x11\x2a\x64Lamp~\x12" * 4
VT52 = b"\x1bH\x1bJOil: low\x1bY%%Tide: high\x1bK\x1bY'!Wind\x1bK\x1bY((Lamp\x1bK" * 4


def test_ecma48_where_nothing_says_otherwise() -> None:
    setup = prepare(Session(b"\x1b[H\x1b[2JOil"))
    assert setup.big.chosen == "ecma48, because nothing says otherwise"
    assert setup.small.chosen == "ecma48, because the small screen does not insist on another"
    assert setup.is_one_dialect


def test_what_is_given_comes_before_what_the_session_says() -> None:
    session = Session(b"Oil", dialect="vt52")
    assert prepare(session).big.terminal == "vt52"
    assert prepare(session, big_terminal="adm3a").big.chosen == "adm3a, because it was given"


def test_an_unknown_name_in_a_session_is_said_and_passed_over() -> None:
    setup = prepare(Session(b"Oil", dialect="skerry-9"))
    assert setup.big.chosen == "ecma48, because the session's terminal 'skerry-9' is unknown here"


def test_two_terminals_after_ecma48_are_one_dialect() -> None:
    assert prepare(Session(b"Oil", dialect="vt220"), small_terminal="vt100").is_one_dialect


def test_a_terminal_that_was_chosen_wraps_in_its_own_way() -> None:
    setup = prepare(Session(b"Oil", dialect="adm3a"))
    assert setup.big.rules.wrap is WrapRule.IMMEDIATE  # terminfo(5): am without xenl
    assert setup.small.rules.wrap is WrapRule.DEFERRED  # nobody says that the reader's screen is one
    assert prepare(Session(b"Oil"), small_terminal="adm3a").small.rules.wrap is WrapRule.IMMEDIATE


def test_a_terminal_of_ecma48s_kind_wraps_in_its_own_way_too() -> None:
    assert prepare(Session(b"Oil", dialect="cons25")).big.rules.wrap is WrapRule.IMMEDIATE  # am without xenl
    assert prepare(Session(b"Oil", dialect="vt100")).big.rules.wrap is WrapRule.DEFERRED  # am and xenl
    assert prepare(Session(b"Oil", dialect="vt220-nam")).big.rules.wrap is WrapRule.DEFERRED  # until DECAWM


def test_a_terminal_that_was_chosen_backs_over_the_edge_in_its_own_way() -> None:
    assert prepare(Session(b"Oil"), small_terminal="wy50").small.rules.back_wrap  # terminfo(5): bw
    assert not prepare(Session(b"Oil"), small_terminal="vt52").small.rules.back_wrap


def test_the_output_shows_an_older_terminal() -> None:
    chosen = prepare(Session(HZ1500)).big.chosen
    assert chosen == "hz1500, because the output clearly shows it ('fit terminals' lists the evidence)"


def test_where_several_older_terminals_explain_it_none_is_guessed() -> None:
    chosen = prepare(Session(VT52)).big.chosen
    assert chosen.startswith("ecma48, because the output does not clearly show another")


def test_damaged_output_is_no_evidence() -> None:
    assert prepare(Session(b"Oil: \x1b low\x1b[\x1b[5\r\nTide\x0b")).big.terminal == "ecma48"
