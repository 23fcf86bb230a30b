"""What a program needs, with its evidence: each fact by a program that was written for it."""

from __future__ import annotations

import runpy
from dataclasses import replace
from pathlib import Path

import pytest

from fit.machine import Processor, Program, Setting, run_program
from fit.report.style import Style
from fit.shelf.facts import ProgramFacts, fits_memory, program_facts, runs_on
from fit.shelf.facts_text import facts_text
from fit.shelf.finding import Finding
from fit.shelf.notes import notes
from fit.shelf.settings import ShelfSettings
from fit.shelf.terminal import find_terminal
from fit.shelf.verdict import with_obstacles
from fit.width import text_cells

BUILD = runpy.run_path(str(Path(__file__).parents[2] / "corpus" / "programs" / "build.py"))


def facts(source: str, terminal: str | None = None) -> ProgramFacts:
    program = Program("LAMP.COM", BUILD["assemble"]("bdos equ 5\norg 0x100\n" + source, "test"))
    return program_facts(program, [run_program(program, (), Setting())], terminal)


def told(found: ProgramFacts, width: int = 80) -> str:
    return " ".join(" ".join(facts_text(found, Style(width))).split())


def block(label: str, data: bytes, size: int) -> str:
    """Bytes with a name, zeros up to a size."""
    return f"{label}: db {', '.join(map(str, data.ljust(size, bytes(1))))}\n"


PORTS = "in a, (0x10)\nld a, 7\nout (0x11), a\nret\n"
VIDEO = "ld hl, 0xc000\nld b, 0\ndraw: ld (hl), b\ninc hl\ndec b\njp nz, draw\nret\n"
SAME = "ld b, 2\nagain: ld e, 'x'\npush bc\nld c, 2\ncall bdos\npop bc\njr next\nnext: ret\n"


def test_ports_are_told_with_their_place() -> None:
    found = facts(PORTS)
    assert [port[:3] for port in found.ports] == [[0x10, 1, 1], [0x11, 0, 1]]
    assert "reads 10h 1 x" in told(found).lower()
    assert "uses ports 10h, 11h" in notes(Finding("LAMP", "program", score=80.0, program=found))


def test_memory_written_like_a_screen_is_told() -> None:
    found = facts(VIDEO)
    assert found.video_memory == [[0xC000, 0xC100]]
    assert "C000h to C0FFh is written like a screen" in told(found)


def test_memory_that_was_only_filled_is_no_screen() -> None:
    assert facts(VIDEO.replace("ld (hl), b", "ld (hl), '3'")).video_memory == []


def test_a_disk_read_by_sectors_is_told() -> None:
    """BIOS entry points 9 to 11 and 13 of the table: SELDSK, SETTRK, SETSEC, READ."""
    calls = "ld c, 0\ncall 0xfe1b\nld bc, 0\ncall 0xfe1e\nld bc, 0\ncall 0xfe21\ncall 0xfe27\n"
    found = facts(calls + "ret\n")
    assert found.sectors == 1
    assert "it reads 1 record by track and sector" in told(found).lower()
    assert "reads the disk by track and sector" in notes(
        Finding("LAMP", "program", score=80.0, program=found)
    )


def test_an_error_of_the_operating_system_is_told_before_the_score_is_praised() -> None:
    """CP/M Operating System Manual, BDOS function 28: a write to a protected disk ends in `Bdos Err on d: R/O`."""
    protect = "ld c, 28\ncall bdos\nld de, log\nld c, 22\ncall bdos\nret\n"
    found = facts(protect + block("log", b"\0LOG     TXT", 36))
    said = notes(Finding("LAMP", "program", verdict="comfortable", score=100.0, program=found))
    assert said == ["stopped by the operating system: Bdos Err On A: R/O", "no remedy is needed"]
    assert "ending Stopped by the operating system: Bdos Err On A: R/O." in told(found)


def test_commands_left_to_the_system_are_told() -> None:
    """The last record is the first command; the form is from memory."""
    program = "ld de, fcb\nld c, 22\ncall bdos\n" + "".join(
        f"ld de, {name}\nld c, 26\ncall bdos\nld de, fcb\nld c, 21\ncall bdos\n" for name in ("two", "one")
    )
    data = block("fcb", b"\x01$$$     SUB", 36)
    data += block("one", b"\x09TIDE JUNE", 128) + block("two", b"\x03LOG", 128)
    found = facts(program + "ld de, fcb\nld c, 16\ncall bdos\nret\n" + data)
    assert found.submitted == ["TIDE JUNE", "LOG"]
    assert "it leaves TIDE JUNE, LOG to be run when it has ended" in told(found).replace("It", "it")
    assert "leaves TIDE JUNE, LOG to be run after it" in notes(
        Finding("LAMP", "program", score=80.0, program=found)
    )


def test_devices_beside_the_console_are_told() -> None:
    calls = "".join(f"ld e, 65\nld c, {function}\ncall bdos\n" for function in (5, 5, 4, 3))
    found = facts(calls + "ret\n")
    assert (found.printer, found.punch, found.reader) == (2, 1, 1)
    sentence = (
        "devices It sends 2 bytes to the printer and 1 byte to the punch; it asks the reader 1 x, which holds"
    )
    assert sentence in told(found)
    assert "uses the printer, punch, reader" in notes(Finding("LAMP", "program", score=80.0, program=found))
    assert "devices" not in told(facts("ret\n"))


def test_who_writes_over_all_memory_puts_no_routine_into_a_table() -> None:
    found = facts("ld hl, 0x4000\nfill: ld (hl), 0\ninc hl\nld a, h\nor l\njp nz, fill\nret\n")
    assert found.writes_above_top[0] == 0xFB06
    assert not found.patches_bios


def test_deletes_and_renames_decide_about_a_program() -> None:
    found = replace(facts("ret\n"), deleted=["A:NOTES.TXT"], renamed=[["A:STORES.DAT", "A:OLD.DAT"]])
    said = notes(Finding("LAMP", "program", score=100.0, program=found))
    assert said[:2] == ["deletes A:NOTES.TXT", "renames A:STORES.DAT to A:OLD.DAT"]


def test_files_that_are_emptied_decide_about_a_program_too() -> None:
    found = replace(facts("ret\n"), emptied=["A:NOTES.TXT"])
    said = notes(Finding("LAMP", "program", score=100.0, program=found))
    assert said[0] == "empties A:NOTES.TXT"
    assert "Emptied, in the sandbox alone, A:NOTES.TXT." in told(found)


def test_functions_of_a_later_version_are_told() -> None:
    assert facts("ld c, 45\ncall bdos\nld c, 45\ncall bdos\nret\n").unsupported == [[45, 2]]


def test_an_opcode_without_a_difference_leaves_the_processor_undecided() -> None:
    found = facts(SAME)
    assert found.processor == "undecided"
    assert runs_on(found, Processor.I8080) is None
    assert runs_on(found, Processor.Z80) is True
    undecided = with_obstacles(Finding("LAMP", "program", verdict="comfortable"), found, ShelfSettings())
    assert undecided.verdict == "comfortable"


def test_memory_that_is_not_known_is_no_obstacle() -> None:
    found = facts("ret\n")
    assert fits_memory(found, None) is None
    assert fits_memory(found, 0xC000) is True
    assert fits_memory(found, 0x0180) is (found.memory_top is not None and found.memory_top <= 0x0180)


@pytest.mark.parametrize("width", [40, 80])
@pytest.mark.parametrize("source", [PORTS, VIDEO, SAME])
def test_no_line_is_wider_than_the_page(source: str, width: int) -> None:
    assert [line for line in facts_text(facts(source), Style(width)) if text_cells(line) > width] == []


def test_nothing_is_claimed_where_nothing_was_seen() -> None:
    text = told(facts("ret\n"))
    for sentence in (
        "ports None was seen.",
        "It prints no codes: any terminal will do.",
        "files None was asked for.",
    ):
        assert sentence in text


def test_a_terminal_that_was_given_is_believed() -> None:
    found = facts("ret\n", "vt52")
    assert (found.terminal, found.terminal_evidence) == ("vt52", "it was given")


DOUBTFUL = b"\x1a\x1bB0Lamp room\x1bC0\r\n" + b"".join(
    b"\x1b=%c$\x1bB2Row\x1bC2" % (32 + row) for row in range(5)
)
"""Codes of a terminal that no description has."""


def test_a_terminal_that_is_not_clear_is_named_with_the_doubt() -> None:
    found = find_terminal(DOUBTFUL)
    assert not found.is_clear
    assert "not clearly, " in found.evidence
    assert "--terminal should name it" in found.evidence


def test_a_terminal_that_is_clear_is_named_without_a_doubt() -> None:
    rows = b"".join(b"~\x11%c%cflood~\x0f~\x1f!~\x19" % (0x61 + row, 0x60 + row) for row in range(20))
    found = find_terminal(rows)
    assert (found.name, found.is_clear) == ("hz1500", True)
    assert "clearly" not in found.evidence


def test_the_shelf_says_the_doubt_about_a_terminal() -> None:
    codes = ", ".join(map(str, DOUBTFUL))
    found = facts(
        f"ld hl, text\nld b, {len(DOUBTFUL)}\nnext: ld e, (hl)\npush bc\npush hl\nld c, 2\ncall bdos\n"
        f"pop hl\npop bc\ninc hl\ndec b\njp nz, next\nret\ntext: db {codes}\n"
    )
    assert not found.terminal_is_clear
    finding = Finding("LAMP", "program", terminal=found.terminal, score=80.0, program=found)
    assert f"set for {found.terminal}, but not clearly" in notes(finding)


@pytest.mark.parametrize(
    ("output", "name"),
    [
        (b"The lamp is lit.\r\n", None),
        (b"\x1b=  The lamp" * 8 + b"\x1a", "adm3a"),
        (b"\x1bH\x1bJ" + b"\x1bY! The lamp" * 8, "vt52"),
        (b"\x1b?", None),
    ],
)
def test_terminals_by_their_codes(output: bytes, name: str | None) -> None:
    assert find_terminal(output).name == name
