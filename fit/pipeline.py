"""Strings the stages together; the only place, with `fit.measuring`, where a screen is replayed."""

from __future__ import annotations

from dataclasses import replace

from fit.dialect.encoding import ENCODINGS, Choice, choose_encoding
from fit.errors import UsageError
from fit.looks import LookRule, Looks, find_looks
from fit.loss.figures import Figures, LookView
from fit.loss.setup import Moment, Setup, Terminal
from fit.loss.stretch import Stretch
from fit.loss.verdict import judge
from fit.measuring import PLANNED, WORD_WRAP_PLANNED, Measuring, Progress
from fit.remedy.choose import ABOUT, choose_best, offer
from fit.remedy.findings import Pair, Remedy, RemedyKind, Report, ScreenFacts
from fit.remedy.second_session import Habit, behaviour, doubts
from fit.remedy.transcript import Recorder, reflow
from fit.screen.fates import Fate, Fates
from fit.screen.grid import Grid, Hooks
from fit.screen.named import NamedScreen, find_screen, parse_size
from fit.screen.pieces import Row, is_fresh
from fit.screen.rules import Rules
from fit.screen.screen import Screen
from fit.session import Session
from fit.terminal_choice import choose_big, choose_small, terminal_at
from fit.units import Position, Size

__all__ = ["Report", "measure", "prepare", "reflow_session", "remedies", "replay", "show_look"]

DEFAULT_BIG = "desk"
DEFAULT_SMALL = "pocket"
_PLACED = 0.5
"""From this share of placed glyphs on a program owns the screen rather than prints a stream."""


def replay(
    session: Session, size: str | Size = "80x25", rules: Rules | None = None, dialect: str | None = None
) -> Screen:
    """Replay a whole session on one screen.

    Args:
        session: what the program printed.
        size: ``COLUMNSxROWS``, the name of a screen or the path of its file, or a `Size`.
        rules: the rules of the screen; those of the named screen where None.
        dialect: the terminal it was written for; what the session says, else ECMA-48, where None.

    Returns:
        The screen after the last byte: ``display``, ``cursor``, and ``fates`` with what became of each glyph.

    Raises:
        FitError: an unknown screen, a bad size, an unknown terminal.

    """
    named = _named(size)
    encoding = session.encoding or choose_encoding(session.output).name
    at = terminal_at(session, encoding, named, choose_big(session, dialect, named, encoding))
    screen = Screen(named.size, rules or at.rules, Fates(len(session.output)))
    for operations in Stretch(at.decoder(), session.output, 0, len(session.output)):
        screen.apply(operations)
    screen.look(len(session.output))
    screen.finish()
    return screen


def prepare(
    session: Session,
    big: str | Size | None = None,
    small: str | Size = DEFAULT_SMALL,
    *,
    big_terminal: str | None = None,
    small_terminal: str | None = None,
    encoding: str | None = None,
    looks: Looks | None = None,
) -> Setup:
    """Choose what was left open: the big screen, both dialects, the encoding, the looks.

    The big screen is the one the program was told, where the session knows it. The small screen's dialect is
    the one given, else the one its file insists on, else that of the big screen.
    """
    big_named = _named(big if big is not None else session.size or DEFAULT_BIG)
    small_named = _named(small)
    given = encoding or session.encoding
    if given is not None and given not in ENCODINGS:
        raise UsageError(f"no encoding is named '{given[:40]}'", hint=f"known are {', '.join(ENCODINGS)}")
    chosen = (
        Choice(given, "It was given." if encoding else "The session says so.")
        if given
        else choose_encoding(session.output)
    )
    big_terminal_chosen = choose_big(session, big_terminal, big_named, chosen.name)
    small_terminal_chosen = choose_small(small_terminal, small_named, big_terminal_chosen)
    big_at = terminal_at(session, chosen.name, big_named, big_terminal_chosen)
    small_at = terminal_at(session, chosen.name, small_named, small_terminal_chosen)
    found = looks or find_looks(session)
    setup = Setup(
        session,
        big_at,
        small_at,
        (),
        found.said,
        found.rule is LookRule.ASSUMED,
        chosen.name,
        chosen.evidence,
    )
    places = _assume(setup) if setup.looks_assumed else []
    moments = [Moment(place) for place in places]
    moments += [
        Moment(look.at, setup.typed(look.typed)) for look in found.looks if look.at not in set(places)
    ]
    return replace(setup, moments=tuple(moments))


def measure(
    session: Session,
    big: str | Size | None = None,
    small: str | Size = DEFAULT_SMALL,
    *,
    big_terminal: str | None = None,
    small_terminal: str | None = None,
    encoding: str | None = None,
    looks: Looks | None = None,
    small_session: Session | None = None,
    progress: Progress | None = None,
) -> Report:
    r"""Measure what the small screen loses of a session, why, and what would help.

    Args:
        session: what the program printed on the big screen.
        big: ``COLUMNSxROWS``, the name of a screen, the path of its file, or a `Size`; the size that the
            program was told, else 80x25, where None.
        small: the same for the small screen.
        big_terminal: the dialect of the program, by its name in the terminal database; None as in `prepare`.
        small_terminal: the dialect of the small screen, likewise.
        encoding: ``utf-8``, ``cp437``, ``latin-1`` or ``7bit``; found from the data where None.
        looks: from `fit.looks.find_looks`, with its options; found from the data where None.
        small_session: the same program told the small size.
        progress: is told from time to time what share of the work is done, 0 to 1.

    Returns:
        The report. Its ratios go from 0 to 1, its score from 0 to 100; None where nothing was shown.

    Raises:
        FitError: an unknown screen or terminal, a bad size.

    >>> from fit.session import Session
    >>> keeper = Session(b"The lamp is lit. The keeper waits for the tide.\r\n> ")
    >>> report = measure(keeper, big="80x25", small="40x8")
    >>> print(report.verdict, round(report.figures.score))
    comfortable 100

    """
    setup = prepare(
        session,
        big,
        small,
        big_terminal=big_terminal,
        small_terminal=small_terminal,
        encoding=encoding,
        looks=looks,
    )
    measuring = Measuring(setup, progress)
    measuring.run()
    pair = None if small_session is None else _pair(setup, measuring, small_session, small_terminal)
    return _report(setup, measuring, pair)


def remedies(report: Report) -> list[Remedy]:
    """What was tried and measured, the best first; the refused ones last."""
    return sorted(
        report.remedies,
        key=lambda remedy: (
            remedy.refused is not None,
            remedy.kind != report.best,
            -(remedy.figures.score or 0.0),
        ),
    )


def show_look(report: Report, number: int) -> LookView:
    """Both screens at one look, from 1, with marks for what is not intact and not clean.

    Raises `UsageError` where the session has no such look.
    """
    setup = report.setup
    if not 1 <= number <= len(setup.moments):
        raise UsageError(
            f"there is no look {number}", hint=f"the session has looks 1 to {len(setup.moments)}"
        )
    return Measuring(setup).view(number)


def reflow_session(report: Report, width: int | None = None) -> str:
    """The transcript at the width of the small screen, with a form feed at each break point."""
    setup = report.setup
    recorder = Recorder(Screen(setup.big.size, setup.big.rules, Fates(len(setup.session.output))))
    screen = recorder.screen
    dialect = setup.big.decoder()
    start = 0
    for look in setup.moments:
        for operations in Stretch(dialect, setup.session.output, start, look.at):
            screen.apply(operations)
        recorder.look(look.at)
        start = look.at
    assert screen.fates is not None
    places = [point.at for point in report.break_points]
    return reflow(recorder.lines, width or setup.small.size.columns, places, screen.fates.origin)


def _report(setup: Setup, measuring: Measuring, pair: Pair | None) -> Report:
    figures = measuring.figures()
    as_is = figures["as is"]
    tried = _tried(figures, pair)
    best, reason = choose_best(as_is, tried)
    wrapped = best in (RemedyKind.WORD_WRAP, RemedyKind.WORD_WRAP_HOLD)
    reader = measuring.reader
    counts = measuring.big_fates.counts()
    printed = sum(counts.values())
    held = figures[RemedyKind.HOLD]
    return Report(
        setup=setup,
        big=_facts(setup.big),
        small=_facts(setup.small),
        encoding=setup.encoding,
        encoding_evidence=setup.encoding_evidence,
        looks=len(setup.moments),
        looks_rule=setup.looks_rule,
        looks_assumed=setup.looks_assumed,
        verdict=judge(as_is, held, refuses=pair is not None and "refuses" in pair.behaviour),
        figures=as_is,
        placed_share=reader.placed_shown / reader.shown if reader.shown else None,
        printed=printed,
        lost_anyway=printed - counts[Fate.SEEN],
        demands=measuring.demands.demands(setup.small.size, reader.habits),
        remedies=tried,
        best=best,
        best_reason=reason,
        break_points=measuring.breaks(word_wrap=wrapped),
        planned=figures[WORD_WRAP_PLANNED if wrapped else PLANNED],
        losses=measuring.book,
        unknown=measuring.demands.unknown(),
        unknown_small=() if setup.is_one_dialect else measuring.small_demands.unknown(),
        pair=pair,
        other_terminal=None if setup.is_one_dialect else _other_terminal(setup, as_is),
        remarks=(*setup.session.remarks, *_not_repeated(reader.screen)),
    )


def _not_repeated(screen: Screen) -> list[str]:
    """What a hostile session asked for beyond the names that there are for repeated glyphs."""
    number = screen.not_repeated
    return (
        [f"{number:,} operations would repeat more glyphs than can be followed; they drew nothing"]
        if number
        else []
    )


def _tried(figures: dict[str, Figures], pair: Pair | None) -> tuple[Remedy, ...]:
    """Every remedy that was measured, and why the others were not."""
    as_is = figures["as is"]
    tried = []
    for kind in _TRIED:
        if kind in figures:
            may_be_best = kind not in (RemedyKind.FORESIGHT, RemedyKind.EACH_WRAP)
            tried.append(offer(kind, as_is, figures[kind], may_be_best=may_be_best))
        else:
            tried.append(Remedy(kind, ABOUT[kind], refused="the small screen does not wrap lines at all"))
    if pair is not None:
        refused = "the program refuses the small size" if "refuses" in pair.behaviour else None
        remedy = offer(RemedyKind.SECOND_SESSION, as_is, pair.figures)
        tried.append(remedy if refused is None else replace(remedy, refused=refused))
    return tuple(tried)


_TRIED = (
    RemedyKind.HOLD,
    RemedyKind.WORD_WRAP,
    RemedyKind.WORD_WRAP_HOLD,
    RemedyKind.FORESIGHT,
    RemedyKind.EACH_WRAP,
)


def _pair(setup: Setup, measuring: Measuring, small_session: Session, small_terminal: str | None) -> Pair:
    """Measure the second session. A program that prints a stream is held against a screen as high as the big
    one, so that what scrolls off counts; one that owns the screen is held against the screen it was told.
    """
    size, recorded = setup.small.size, small_session.size
    if recorded is not None and (recorded.rows > size.rows or recorded.columns > size.columns):
        raise UsageError(
            f"is no session of a program that was told {size}: it was told {recorded}",
            source=small_session.name,
            hint=f"record it with fit capture --tell {size}",
        )
    tall = Size(max(setup.big.size.rows, size.rows), size.columns)
    for judged_on in (tall, size):
        other = prepare(
            small_session,
            judged_on,
            size,
            small_terminal=small_terminal,
            big_terminal=small_session.dialect or setup.big.terminal,
        )
        other = replace(other, small=replace(other.small, rules=setup.small.rules))
        told = Measuring(other)
        told.run()
        shown = told.reader.shown
        if not shown or told.reader.placed_shown < _PLACED * shown:
            break
    figures = told.figures()["as is"]
    before, after = _habit(measuring, size), _habit(told, size)
    found, sentence = behaviour(setup.session, small_session, before, after, size)
    demands = told.demands.demands(size, told.reader.habits)
    sentence = doubts(setup.session, small_session) + sentence
    return Pair(small_session, size, figures, demands, found, sentence, judged_on)


def _habit(measuring: Measuring, small: Size) -> Habit:
    turns = len(measuring.turns)
    habits = measuring.reader.habits
    highest = measuring.demands.demands(small, habits).highest_row or 0
    return Habit(turns, habits.widest, highest, measuring.reader.shown / turns if turns else 0.0)


def _other_terminal(setup: Setup, as_is: Figures) -> str:
    """What the wrong terminal setting costs: the score were the program set for the small screen's terminal."""
    same = replace(
        setup.small, decoder=setup.big.decoder, terminal=setup.big.terminal, is_ecma48=setup.big.is_ecma48
    )
    right = Measuring(replace(setup, small=same))
    right.run()
    score = right.figures()["as is"].score
    now = "nothing was shown" if as_is.score is None else f"the score is {as_is.score:.0f}"
    then = "" if score is None else f"; were it set right, it would be {score:.0f}"
    if score is not None and as_is.score is not None and f"{score:.0f}" == f"{as_is.score:.0f}":
        then = ", and it would be the same were it set right"
    return (
        f"The program is set for the terminal {setup.big.terminal}, but the small screen understands "
        f"{setup.small.terminal}: {now}{then}."
    )


def _assume(setup: Setup) -> list[int]:
    """Where the big screen is about to lose a row that was not seen: it scrolls off, or the page is cleared.

    Rewriting or erasing a single line loses no row of a page: a progress line is no page.
    """
    places: list[int] = []
    screen = Screen(setup.big.size, setup.big.rules)

    def look(at: int) -> None:
        if not places or places[-1] < at:
            places.append(at)
        screen.look(at)

    def before_scroll_off(at_work: Grid, _: Row) -> None:
        look(at_work.at)

    screen.hooks = Hooks(before_scroll_off=before_scroll_off)
    for operations in Stretch(setup.big.decoder(), setup.session.output, 0, len(setup.session.output)):
        done = 0
        for index, (start, _, event, arguments, _) in enumerate(operations):
            if event not in _CLEARING:
                continue
            screen.apply(operations[done:index])
            done = index
            from_top = arguments[:1] in _WHOLE or screen.position == Position(0, 0)
            if from_top and any(is_fresh(piece) for row in screen.grid for piece in row.pieces):
                look(start)
        screen.apply(operations[done:])
    return places


_CLEARING = frozenset({"erase_in_display", "reset"})
_WHOLE = ((2,), (3,))


def _named(screen: str | Size) -> NamedScreen:
    return (
        NamedScreen(str(screen), parse_size(str(screen))) if isinstance(screen, Size) else find_screen(screen)
    )


def _facts(terminal: Terminal) -> ScreenFacts:
    return ScreenFacts(terminal.name, terminal.size, terminal.terminal, terminal.chosen)
