"""The 8-bit demo programs: current, within the rules of their disk, and each doing what it was written for."""

from __future__ import annotations

import runpy
from pathlib import Path
from typing import Any

import pytest

from fit.machine import (
    EndingKind,
    ProcessorClass,
    Run,
    ScriptKeys,
    Setting,
    WaitKind,
    assess,
    load_program,
    run_program,
    terminal_choice,
)
from fit.session import EventKind
from fit.source.keys import read_key_script

FOLDER = Path(__file__).parents[2] / "corpus" / "programs"
DISK = FOLDER / "disk"
NAMES = sorted(path.stem for path in DISK.glob("*.COM"))
SEEN = {
    "CHART": b"fathoms here: ",
    "DRIFT": b"There is no such cove.",
    "LENS": b"North-west, clear   80 seconds after north",
    "LOG": b"(any key, Q to close the book)",
    "MARGIN": b"Nobody keeps a pig on the rock",
    "READ": b"(end of the file)",
    "STORY": b"The Skerry Light is lit.",
    "TALLY": b"23 records, 38 lines, copied",
    "TIDEWTCH": b"You pinch the crust off the wick",
}


def build() -> dict[str, Any]:
    return runpy.run_path(str(FOLDER / "build.py"))


def run(name: str, setting: Setting | None = None) -> Run:
    """A program with its key script."""
    keys = FOLDER / f"{name}.keys"
    steps = read_key_script(keys.read_bytes(), keys.name) if keys.exists() else []
    return run_program(load_program(DISK / f"{name}.COM"), ScriptKeys(steps), setting or Setting())


def test_there_are_programs_and_each_has_its_note() -> None:
    assert sorted(SEEN) == NAMES
    assert len(NAMES) >= 8
    readme = (FOLDER / "README.md").read_text("utf-8")
    assert [name for name in NAMES if f"| `{name}` |" not in readme] == []


def test_every_program_is_what_its_source_gives() -> None:
    building = build()
    made = {
        path.stem: building["assemble"](path.read_text("ascii"), path.name) for path in building["sources"]()
    }
    assert {name: (DISK / f"{name}.COM").read_bytes() for name in NAMES} == made, (
        "run: python corpus/programs/build.py"
    )


def test_the_disk_holds_names_of_eight_and_three() -> None:
    for path in DISK.iterdir():
        base, _, kind = path.name.partition(".")
        assert 1 <= len(base) <= 8, path.name
        assert len(kind) <= 3, path.name
        assert path.name.isupper(), path.name


@pytest.mark.parametrize("name", NAMES)
def test_its_script_leads_to_its_end(name: str) -> None:
    result = run(name)
    assert SEEN[name] in result.session.output
    assert result.ending.kind is EndingKind.WARM_START


@pytest.mark.parametrize("name", NAMES)
def test_all_but_one_are_safe_for_an_8080(name: str) -> None:
    needs = assess(load_program(DISK / f"{name}.COM"), [run(name)])
    wanted = ProcessorClass.NEEDS_Z80 if name == "LENS" else ProcessorClass.SAFE_8080
    assert needs.processor.kind is wanted
    assert needs.memory.top is not None


def test_the_lens_names_the_opcodes_of_its_z80() -> None:
    needs = assess(load_program(DISK / "LENS.COM"), [run("LENS")])
    assert {hit.opcode for hit in needs.processor.hits} == {0x10, 0x18, 0xD9, 0xED}


def test_the_first_key_of_drift_is_waited_for_in_a_poll_and_its_check_eats_none() -> None:
    result = run("DRIFT")
    assert result.wait_kinds[0] is WaitKind.TRIAL
    assert result.session.output.count(b"~~~~~~~~~~~~") == 3
    typed = b"".join(event.data for event in result.session.events if event.kind is EventKind.INPUT)
    assert typed == b" 4965q"


def test_margin_breaks_all_lines_through_its_own_routine_but_the_last() -> None:
    result = run("MARGIN")
    assert result.patches_bios
    *lines, last, empty = result.session.output.split(b"\r\n")
    assert max(map(len, lines)) <= 40 < len(last)
    assert empty == b""


def test_what_tally_copied_is_the_records_that_it_read() -> None:
    result = run("TALLY")
    (copy,) = result.changed_files()
    text = (DISK / "TIDES.TXT").read_bytes()
    assert copy.name == "TIDES.BAK"
    assert copy.data == text + b"\x1a" * (-len(text) % 128)
    assert not (DISK / "TIDES.BAK").exists()


def test_the_log_offers_a_choice() -> None:
    result = run("LOG")
    assert any("Columns of your screen" in line for line in terminal_choice(b"", [result.session.output]))


def test_the_chart_polls_and_the_poll_is_proved() -> None:
    assert set(run("CHART").wait_kinds) == {WaitKind.PROVED}
