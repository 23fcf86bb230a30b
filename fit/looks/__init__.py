"""A session to its looks: the moments at which a person can read.

The first rule that the session has data for decides:

    exact      the host of the program saw it wait
    inputs     something was typed, so it had waited
    prompts    prompts, where the user gives patterns
    pauses     a pause at least as long as reading the words printed since the last look takes
    prompts    the prompt at the end of the output, where it repeats through the session
    assumed    no look is known before the end: a pass of the big screen has to find them

There is always a look at the end. Words are counted in the output with its control sequences blanked out.
"""

from __future__ import annotations

import re
from array import array
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from math import inf

from fit.errors import UsageError
from fit.looks.prompts import FEWEST, Prompt, check_prompts, find_prompt, prompts_of
from fit.session import Clock, Event, EventKind, Session, Waits
from fit.source.stripping import blanked

WORDS_PER_MINUTE = 238.0
"""Silent reading of English: Brysbaert 2019, Journal of Memory and Language 109, 104047 (from memory)."""
BITS_A_CHARACTER = 10
"""8N1: a start bit, eight data bits, a stop bit (common practice, no source)."""

_CLASSES = bytes(
    0x20 if byte <= 0x20 else 0x61 if byte >= 0x80 or chr(byte).isalnum() else 0x2E for byte in range(256)
)
_TEXT_WORD = re.compile(rb"(?<![a.])\.*a\.*a[a.]*")
"""A word that holds two letters or digits (a) among other signs (.), in the classes of its bytes."""


class LookRule(StrEnum):
    """Where the looks of a session come from."""

    EXACT = "exact"
    INPUTS = "inputs"
    PAUSES = "pauses"
    PROMPTS = "prompts"
    ASSUMED = "assumed"


class LookKind(StrEnum):
    """Why a person can read at a look."""

    WAIT = "wait"
    INPUT = "input"
    PAUSE = "pause"
    PROMPT = "prompt"
    END = "end"


@dataclass(frozen=True, slots=True)
class Look:
    """A person can read before the output byte ``at`` is printed."""

    at: int
    kind: LookKind
    typed: bytes = b""
    """What was typed there."""
    time: float | None = None
    """Seconds since the start, where known."""


@dataclass(frozen=True, slots=True)
class Looks:
    """The looks of a session, ascending, no two at one place; the last is the end."""

    looks: tuple[Look, ...]
    rule: LookRule
    said: str
    """Where the looks stand and how one knows, to be read after "14 looks:"."""


def find_looks(
    session: Session,
    *,
    prompts: Sequence[str] = (),
    words_per_minute: float = WORDS_PER_MINUTE,
) -> Looks:
    """Find the looks. ``prompts`` are regular expressions; a look stands where one of them ends.

    Raises `UsageError` for a pattern that is no regular expression, or a reading rate that is not above 0.
    """
    check_prompts(prompts)
    if not 0 < words_per_minute < inf:
        raise UsageError(
            f"nobody reads {words_per_minute:g} words a minute", hint="give a rate above 0, such as 238"
        )
    typed = _typed(session)
    if session.waits is Waits.EXACT:
        return _looks(
            session, _waits(session, typed), LookRule.EXACT, "where the program waited and at the end"
        )
    if typed:
        inputs = [Look(at, LookKind.INPUT, data, time) for at, (data, time) in typed.items()]
        return _looks(session, inputs, LookRule.INPUTS, "before each recorded input and at the end")
    if prompts:
        places = prompts_of(session.output, prompts)
        if not places:
            return _assumed(session, "no prompt that was asked for was found")
        return _looks(
            session, _at(places), LookRule.PROMPTS, "after each prompt that was asked for and at the end"
        )
    pauses = list(_pauses(session, words_per_minute)) if session.clock else []
    if pauses:
        said = f"in each pause long enough to read the new words at {words_per_minute:g} words a minute, and at the end"
        return _looks(session, pauses, LookRule.PAUSES, said)
    return _without_pauses(session, words_per_minute)


def with_line_speed(session: Session, bits_per_second: float) -> Session:
    """The session with the clock of a serial line, 8N1, where it has none of its own.

    Every 16th byte, or every tenth of a second, gets a time. Raises `UsageError` where the speed is not above 0.
    """
    if not 0 < bits_per_second < inf:
        raise UsageError(
            f"a line of {bits_per_second:g} bit/s {'is none' if bits_per_second > 0 else 'sends nothing'}",
            hint="give a speed above 0, such as 9600",
        )
    if session.clock:
        return session
    per_second = bits_per_second / BITS_A_CHARACTER
    offsets = array("q", range(0, len(session.output), max(16, int(per_second / 10))))
    return replace(session, clock=Clock(offsets, array("d", (offset / per_second for offset in offsets))))


def _without_pauses(session: Session, words_per_minute: float) -> Looks:
    """Looks where nothing was recorded that shows a wait."""
    prompt = find_prompt(session.output)
    if prompt is not None:
        said = f"after each '{prompt.text}', the prompt at the end that stands {len(prompt.places)} times, and at the end"
        return _looks(session, _at(prompt.places), LookRule.PROMPTS, said)
    if session.clock:
        return _assumed(session, f"no pause is long enough to read at {words_per_minute:g} words a minute")
    return _assumed(
        session,
        f"no waits, inputs or times were recorded, and no prompt stands {FEWEST} times; --prompt names one",
    )


def _assumed(session: Session, why: str, looks: Sequence[Look] = ()) -> Looks:
    said = f"before a row leaves the big screen unseen, and at the end ({why})"
    return Looks((*looks, *_end(session, looks)), LookRule.ASSUMED, said)


def _looks(session: Session, looks: Sequence[Look], rule: LookRule, said: str) -> Looks:
    if not any(0 < look.at < len(session.output) for look in looks):
        return _assumed(session, "no wait is known before the end", [look for look in looks if look.at])
    return Looks((*looks, *_end(session, looks)), rule, said)


def _end(session: Session, looks: Sequence[Look]) -> list[Look]:
    """The look at the end, where there is none yet."""
    end = len(session.output)
    return [] if looks and looks[-1].at == end else [Look(end, LookKind.END)]


def _typed(session: Session) -> dict[int, tuple[bytes, float | None]]:
    """For each place at which something was typed: what, and when it began."""
    typed: dict[int, tuple[bytes, float | None]] = {}
    for event in session.events:
        if event.kind is EventKind.INPUT:
            before, time = typed.get(event.at, (b"", event.time))
            typed[event.at] = (before + event.data, time)
    return typed


def _waits(session: Session, typed: dict[int, tuple[bytes, float | None]]) -> list[Look]:
    waits: dict[int, Event] = {}
    for event in session.events:
        if event.kind is EventKind.WAIT and event.is_look:
            waits.setdefault(event.at, event)
    return [Look(at, LookKind.WAIT, typed.get(at, (b"",))[0], wait.time) for at, wait in waits.items()]


def _at(places: Sequence[Prompt]) -> list[Look]:
    return [Look(place.end, LookKind.PROMPT, place.answer) for place in places]


def _pauses(session: Session, words_per_minute: float) -> Iterator[Look]:
    """The pauses in which the words printed since the last look can be read."""
    ends = _word_ends(session.output)
    read = 0
    ticks = zip(session.clock.offsets, session.clock.seconds, strict=True)
    for (_, before), (at, after) in pairwise(ticks):
        printed = bisect_right(ends, at)
        if printed > read and (after - before) * words_per_minute >= 60 * (printed - read):
            read = printed
            yield Look(at, LookKind.PAUSE, time=before)


def _word_ends(output: bytes) -> array[int]:
    """The offset behind each word that holds two letters or digits."""
    words = _TEXT_WORD.finditer(blanked(output).translate(_CLASSES))
    return array("q", (word.end() for word in words))
