"""The figures equal those of a slow scorer that follows the definitions word by word, on random sessions."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
from hypothesis import example, given, settings, strategies as st

from fit.looks import Look, LookKind, LookRule, Looks
from fit.pipeline import measure
from fit.session import Event, EventKind, Session, Waits
from fit.units import Size

sys.path.insert(0, str(Path(__file__).parent))
from slow_scorer import SlowFigures, score

BIG, SMALL = Size(8, 24), Size(3, 11)
WORDS = st.sampled_from(
    [
        "lamp",
        "oil",
        "is",
        "lit.",
        "tide",
        "keeper's",
        "a",
        "--",
        "----",
        "|",
        "+--|",
        "=",
        "....",
        "x|y",
        "12",
        "log:",
    ]
)
PLACES = st.tuples(st.integers(1, 9), st.integers(1, 26))
STEPS = st.one_of(
    WORDS.map(str.encode),
    WORDS.map(str.encode),
    st.just(b" "),
    st.just(b"  "),
    st.just(b"\r\n"),
    st.just(b"\r\n"),
    st.just(b"\r"),
    st.just(b"\b"),
    st.just(b"\x1b[H"),
    st.just(b"\x1b[H\x1b[2J"),
    st.just(b"\x1b[K"),
    st.just(b"\x1b[J"),
    st.sampled_from([b"\x1b[A", b"\x1b[2B", b"\x1b[3C", b"\x1b[2D", b"\x1b[5G", b"\x1b[3d"]),
    PLACES.map(lambda place: f"\x1b[{place[0]};{place[1]}H".encode()),
)
TURNS = st.lists(
    st.tuples(st.lists(STEPS, max_size=25), st.sampled_from(["", "\r", "l", "lamp\r", "oil is\r"])),
    min_size=1,
    max_size=5,
)


def build(turns: list[tuple[list[bytes], str]]) -> tuple[Session, Looks]:
    """The session and its looks: one before each input, and one at the end."""
    output = b""
    typed: dict[int, str] = {}
    for steps, keys in turns:
        output += b"".join(steps)
        if keys:
            typed[len(output)] = typed.get(len(output), "") + keys
    typed.setdefault(len(output), "")
    events = tuple(Event(at, EventKind.INPUT, keys.encode()) for at, keys in typed.items() if keys)
    looks = tuple(Look(at, LookKind.INPUT, keys.encode()) for at, keys in typed.items())
    session = Session(output, events=events, waits=Waits.INPUTS, encoding="utf-8")
    return session, Looks(looks, LookRule.INPUTS, "before each input and at the end")


def slowly(session: Session, looks: Looks, big: Size, small: Size, *, hold: bool = False) -> SlowFigures:
    return score(
        session.output, [(look.at, look.typed.decode()) for look in looks.looks], big, small, hold=hold
    )


def assert_at_least(figure: float | None, bound: float | None) -> None:
    assert figure is not None
    assert bound is not None
    assert figure >= bound - 1e-9


@pytest.mark.parametrize(
    ("big", "small"),
    [((8, 24), (3, 11)), ((6, 20), (2, 10)), ((9, 26), (9, 26)), ((5, 12), (1, 1)), ((5, 12), (9, 11))],
)
@given(turns=TURNS)
@settings(max_examples=60, deadline=None)
def test_figures_equal_the_slow_ones(
    big: tuple[int, int], small: tuple[int, int], turns: list[tuple[list[bytes], str]]
) -> None:
    session, looks = build(turns)
    report = measure(session, Size(*big), Size(*small), looks=looks)
    slow = slowly(session, looks, Size(*big), Size(*small))
    fast = report.figures
    assert (
        fast.needed_shown,
        fast.clean,
        fast.text_kept,
        fast.turns_read,
        report.placed_share,
    ) == pytest.approx((slow.needed_shown, slow.clean, slow.text_kept, slow.turns_read, slow.placed_share))


@given(turns=TURNS)
@settings(max_examples=60, deadline=None)
def test_the_hold_equals_the_slow_one(turns: list[tuple[list[bytes], str]]) -> None:
    session, looks = build(turns)
    report = measure(session, BIG, SMALL, looks=looks)
    slow = slowly(session, looks, BIG, SMALL, hold=True)
    held = report.remedies[0].figures
    assert held.holds == slow.holds
    assert (held.needed_shown, held.text_kept, held.turns_read) == pytest.approx(
        (slow.needed_shown, slow.text_kept, slow.turns_read)
    )


@given(turns=TURNS)
@example(turns=[([b"\r\n", b"lamp", b"\x1b[3;1H", b"=", b"\r\n", b"\r\n"], "")])
@settings(max_examples=60, deadline=None)
def test_planned_holds_reach_the_bound(turns: list[tuple[list[bytes], str]]) -> None:
    session, looks = build(turns)
    report = measure(session, BIG, SMALL, looks=looks)
    bound = next(remedy for remedy in report.remedies if remedy.name == "hold with foresight").figures
    if bound.text_kept is not None and report.best not in ("word wrap", "word wrap with holds"):
        # More than the bound is possible: a placed mark that is no text is intact only before the first
        # scroll, where a planned hold may stand; the hold with foresight waits until text would go.
        assert_at_least(report.planned.text_kept, bound.text_kept)
        assert_at_least(report.planned.needed_shown, bound.needed_shown)
        assert report.planned.holds <= bound.holds
