"""Playing without a script: prompts, the two ways, and what was covered."""

from __future__ import annotations

from pathlib import Path

import pytest
from machine_assembler import call, program, text
from machine_samples import ALL, ROOMS, guess, menu, pager, repaint, story, stream

from fit.machine.assess import assess
from fit.machine.ending import EndingKind
from fit.machine.play import Budget, Play, lines_seen, play
from fit.machine.player import seen_lines
from fit.machine.processor import ProcessorClass
from fit.machine.prompts import PromptKind, read_prompt
from fit.machine.run import repeat_run
from fit.machine.screen_text import lines_of, masked_line
from fit.session import EventKind


@pytest.mark.parametrize(
    ("prompt", "kind", "first"),
    [
        ("Do you want instructions (Y/N)?", PromptKind.YES_NO, "Y"),
        ("Again (yes or no)", PromptKind.YES_NO, "y"),
        ("Press any key to go on", PromptKind.ANY_KEY, "\r"),
        ("Hit SPACE to continue", PromptKind.ANY_KEY, " "),
        ("-- more --", PromptKind.ANY_KEY, "\r"),
        ("Level (1-5)?", PromptKind.RANGE, "1"),
        ("A number from 10 to 20:", PromptKind.RANGE, "10"),
        ("Command (T,O,L)?", PromptKind.MENU, "T"),
        ("Columns of your screen (40 or 80)?", PromptKind.MENU, "40"),
        ("[easy/hard]:", PromptKind.MENU, "easy"),
        ("Do you stay or go?", PromptKind.MENU, "stay"),
        ("How many barrels?", PromptKind.NUMBER, "1"),
        ("What is your name?", PromptKind.NAME, "KEEPER"),
        ("What now?", PromptKind.WORDS, "LOOK"),
    ],
)
def test_prompts(prompt: str, kind: PromptKind, first: str) -> None:
    found = read_prompt(["The Skerry Light", prompt])
    assert (found.kind, found.answers[0]) == (kind, first)


def test_a_menu_above_the_prompt() -> None:
    lines = ["T) Tide tables", "O) Oil", "<L> Log book", "X - Exit", "Your choice:"]
    assert read_prompt(lines).answers == ("T", "O", "L", "X")


@pytest.mark.parametrize(
    "line",
    ["T trim the wick, F fill from the store, Q leave:", "(T)rim, (F)ill or (Q)uit?", "<T>rim <F>ill <Q>uit"],
)
def test_a_menu_in_one_line(line: str) -> None:
    assert read_prompt(["The lamp smokes.", line]).answers == ("T", "F", "Q")


@pytest.mark.parametrize(
    "lines",
    [
        ["Which screen? 1 narrow  2 wide  3 the lamp room's"],
        ["Which screen (1 narrow, 2 wide, 3 lamp room)?"],
        ["You have 1 screen.", "1=narrow 2=wide 3=lamp room"],
        ["1  narrow", "2  wide", "3  lamp room", "Which screen?"],
    ],
)
def test_digits_that_a_prompt_names_come_first(lines: list[str]) -> None:
    found = read_prompt(lines)
    assert (found.kind, found.answers) == (PromptKind.MENU, ("1", "2", "3"))


def test_a_count_from_0_is_a_choice_too() -> None:
    assert read_prompt(["0 none  1 narrow  2 wide"]).answers == ("0", "1", "2")


@pytest.mark.parametrize(
    "lines",
    [
        ["You carry 1 lamp and 2 cans.", "What now?"],
        ["1 lamp", "2 cans", "What now?"],
        ["At 4 bells 6 ships passed, 7 with lamps lit. What now?"],
    ],
)
def test_things_that_are_counted_are_no_choice(lines: list[str]) -> None:
    assert read_prompt(lines).kind is PromptKind.WORDS


def test_a_file_that_is_there_is_offered() -> None:
    found = read_prompt(["Which file?"], ("LOG.TXT",))
    assert (found.kind, found.answers[0]) == (PromptKind.FILE, "LOG.TXT")


def test_words_on_the_screen_become_nouns() -> None:
    answers = read_prompt(["A can of oil stands here.", "What now?"]).answers
    assert {"STANDS", "TAKE OIL", "EXAMINE OIL"} <= set(answers)


def test_lines_are_found_whatever_the_terminal() -> None:
    assert lines_of(b"\x1b=  Oil\x1bY!!80\x1b[2;5HWind\r\nNW\xa06") == ["Oil", "80", "Wind", "NW 6"]
    assert masked_line("Oil 80 of 100") == "Oil # of #"


def test_echo_is_no_new_line() -> None:
    assert seen_lines(b"take oil\r\nTaken.\r\nWhat now? ", b"TAKE OIL\r") == {"Taken.", "What now?"}
    assert seen_lines(b"t\r\nTaken.\r\n", b"TRIM\r") == {"Taken."}


def test_numbers_tell_the_lines_of_a_table_and_make_no_other_line_new() -> None:
    tides = b"".join(b"%02d:00 high water\r\n" % hour for hour in range(3))
    assert seen_lines(tides) == {"00:00 high water", "01:00 high water", "02:00 high water"}
    assert seen_lines(b"Oil 80\r\nOil 79\r\nWind 6\r\n") == {"Oil #", "Wind #"}


def found(source: str, steps: int = 60) -> Play:
    """A program that was played."""
    return play(program(source), budget=Budget(steps=steps))


def test_a_story_is_explored_to_its_last_room() -> None:
    played = found(story())
    seen: set[str] = set()
    for run in played.runs:
        seen |= lines_seen(run.session)
    assert set(ROOMS) <= seen
    assert played.lines >= len(ROOMS) + 3
    assert played.looks <= played.waits


def test_every_entry_of_a_menu_is_chosen() -> None:
    seen = lines_seen(found(menu()).best.session)
    assert {"High water #:# and #:#.", "Oil for # nights.", "Wind NW #. A ship passed."} <= seen


def test_a_guessing_game_is_won() -> None:
    assert any("That is right." in lines_seen(run.session) for run in found(guess()).runs)


def test_a_pager_is_read_to_its_end() -> None:
    run = found(pager()).best
    assert run.ending.kind is EndingKind.LEFT
    assert run.session.output.count(b"-- more --") == 8


def test_a_repainting_program_is_left() -> None:
    run = found(repaint()).runs[0]
    waits = [event for event in run.session.events if event.kind is EventKind.WAIT]
    assert waits
    assert not any(event.is_look for event in waits[:-1])


def test_a_line_read_key_by_key_is_learnt() -> None:
    """After a first key with nothing but echo comes the rest of the word and CR."""
    source = (
        "again: "
        + call(9, "prompt")
        + "more: "
        + call(1)
        + "cp 13\njp nz, more\n"
        + call(9, "answer")
        + "jp again\n"
    )
    played = found(source + text("prompt", "What now? ") + text("answer", "\r\nNothing happens.\r\n"), 10)
    typed = [event.data for event in played.runs[0].session.events if event.kind is EventKind.INPUT]
    assert [len(keys) for keys in typed[:1]] == [1]
    assert all(keys.endswith(b"\r") for keys in typed[1:])


@pytest.mark.parametrize("name", list(ALL))
def test_the_same_seed_plays_the_same(name: str) -> None:
    first, second = (play(program(ALL[name]()), seed=7, budget=Budget(steps=20)) for _ in range(2))
    assert [run.session for run in first.runs] == [run.session for run in second.runs]
    assert (first.lines, first.steps) == (second.lines, second.steps)


@pytest.mark.parametrize("name", list(ALL))
def test_every_path_that_was_played_can_be_repeated_from_the_start(name: str) -> None:
    """Exploring goes back to copies of the machine; what it shows is what the program does without them."""
    loaded = program(ALL[name]())
    for run in play(loaded, seed=3, budget=Budget(steps=40)).runs:
        assert repeat_run(loaded, run.schedule, run.setting).session.output == run.session.output


def test_steps_are_a_budget() -> None:
    played = found(story(), 10)
    assert played.steps <= 20


def test_a_program_that_never_waits_is_run_once() -> None:
    played = found(call(9, "hello") + "ret\n" + text("hello", "Lit."))
    assert (played.steps, played.waits, len(played.runs), played.lines) == (0, 0, 1, 1)


def test_files_of_the_drive_stay_as_they_are(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_bytes(b"wind")
    played = play(program(story(), tmp_path), budget=Budget(steps=5))
    assert all(run.drives == () for run in played.runs)
    assert [path.name for path in tmp_path.iterdir()] == ["log.txt"]


def test_processor_and_memory_of_a_played_program() -> None:
    loaded = program(story())
    result = assess(loaded, found(story()).runs)
    assert result.processor.kind is ProcessorClass.SAFE_8080
    assert result.memory.top is not None
    assert 0x300 < result.memory.top <= 0x506
    assert not result.is_cut


@pytest.mark.parametrize("source", ["again: jp again\n", "again: " + call(2, 65) + "jp again\n"])
def test_a_program_that_runs_for_ever_is_assessed_within_limits(source: str) -> None:
    """Both processors are compared as far as the slower one came."""
    loaded = program("ex af, af'\n" + source)
    result = assess(loaded, play(loaded).runs)
    assert result.processor.kind is ProcessorClass.UNDECIDED
    assert result.memory.top == 0x206


def test_assessing_needs_a_run() -> None:
    with pytest.raises(ValueError, match="there must be a run to be repeated"):
        assess(program("ret\n"), [])


def test_a_stream_that_only_a_key_ends_is_ended_by_one() -> None:
    best = play(program(stream())).best
    assert best.ending.kind is EndingKind.LEFT
    assert best.session.output.endswith(b"A boat!\r\n")
