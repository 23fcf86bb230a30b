"""A played run without the answers that led nowhere: the same lines, fewer turns."""

from __future__ import annotations

import runpy

from shelf_samples import DISK

from fit.machine import Budget, Program, Run, Setting, load_program, play, run_program
from fit.machine.play import lines_seen
from fit.session import EventKind
from fit.shelf.shorten import representative, shortened

BUILD = runpy.run_path(str(DISK.parent / "build.py"))
STORY = load_program(DISK / "STORY.COM")


def inputs(run: Run) -> list[bytes]:
    return [event.data for event in run.session.events if event.kind is EventKind.INPUT]


def typed(*lines: bytes) -> Run:
    return run_program(STORY, [line + b"\r" for line in lines], Setting())


def test_refusals_go_and_what_leads_on_stays() -> None:
    run = typed(b"x", b"x", b"n", b"n", b"x", b"e", b"x", b"q")
    assert inputs(shortened(STORY, run)) == [b"x\r", b"n\r", b"n\r", b"e\r", b"q\r"]


def test_a_way_back_that_leads_somewhere_new_stays() -> None:
    run = typed(b"n", b"e", b"w", b"w")
    assert inputs(shortened(STORY, run)) == [b"n\r", b"e\r", b"w\r", b"w\r"]


def test_every_line_of_a_played_run_is_kept() -> None:
    best = play(STORY, budget=Budget(steps=40)).best
    short = shortened(STORY, best)
    assert lines_seen(short.session) >= lines_seen(best.session)
    assert len(inputs(short)) < len(inputs(best))
    assert shortened(STORY, short).session.output == short.session.output


def test_a_run_without_inputs_stays() -> None:
    run = typed()
    assert shortened(STORY, run) is run


def test_a_program_that_addresses_the_cursor_stays_as_it_was_played() -> None:
    run = typed(b"x", b"x", b"x")
    assert representative(STORY, run, "vt52") is run
    assert len(inputs(representative(STORY, run, None))) == 1


def test_a_program_that_prints_lines_over_lines_stays_as_it_was_played() -> None:
    """Each refresh is the same text and another screen, where the line is longer than a row."""
    line = ", ".join(map(str, b"\rOil 80  Wind NW 6  Glass 1004$"))
    source = f"again: ld de, line\nld c, 9\ncall 5\nld c, 1\ncall 5\njp again\nline: db {line}\n"
    glass = Program("GLASS.COM", BUILD["assemble"]("org 0x100\n" + source, "glass"))
    run = run_program(glass, b"     ", Setting())
    assert representative(glass, run, None) is run
    assert len(inputs(run)) == 5
