"""Habits of real programs, a small program each: what it prints, where it waits, what is left on the disk.

Source: Digital Research, CP/M Operating System Manual: BDOS functions, BIOS entry points, page zero.
"""

from __future__ import annotations

from pathlib import Path

from machine_assembler import Calls, Probe, call, fcb_data, program, text

from fit.machine.ending import EndingKind
from fit.machine.loader import Program
from fit.machine.run import Run, run_program
from fit.machine.setting import Setting
from fit.session import EventKind

BIOS = (
    "bios: ld hl, (1)\nld d, 0\nadd hl, de\njp (hl)\n"
    "const: ld e, 3\njp bios\nconin: ld e, 6\njp bios\nconout: ld e, 9\njp bios\n"
)
"""Entries of the BIOS table, found as programs find them: counted from the word at 0001h."""

READ_LINE = (
    "getline: ld hl, 0x3000\nld (0x2ffe), hl\n"
    "getkey: call wait\nld hl, (0x2ffe)\ncp 13\njp z, got\ncp 8\njp z, back\n"
    "ld (hl), a\ninc hl\nld (0x2ffe), hl\ncall show\njp getkey\n"
    "back: ld a, l\nor a\njp z, getkey\ndec hl\nld (0x2ffe), hl\nld a, 8\ncall show\nld a, 32\ncall show\nld a, 8\n"
    "call show\njp getkey\n"
    "got: ld (hl), 36\nld a, 13\ncall show\nld a, 10\njp show\n"
)
"""A line editor of the program's own over ``wait`` and ``show``; the text goes to 3000h, up to a dollar sign."""

ASK_TWICE = (
    call(9, "who")
    + "call getline\n"
    + call(9, "greet")
    + call(9, 0x3000)
    + call(9, "why")
    + "call getline\njp 0\n"
)
TEXTS = (
    text("who", "Name of the keeper? ") + text("greet", "Good watch, ") + text("why", ".\r\nWhy so late? ")
)
ASKED = b"Name of the keeper? Hox\b \bb\r\nGood watch, Hob.\r\nWhy so late? fog\r\n"
ANSWERS = [b"Hox\bb\r", b"fog\r"]


def looks(run: Run) -> list[int]:
    """How much was printed at each moment for reading."""
    return [event.at for event in run.session.events if event.kind is EventKind.WAIT and event.is_look]


def check_asked_twice(wait_and_show: str) -> None:
    """A line of five keys is one moment for reading, whichever way it is read."""
    run = run_program(program(ASK_TWICE + READ_LINE + wait_and_show + TEXTS), ANSWERS)
    assert run.session.output == ASKED
    assert looks(run) == [len(b"Name of the keeper? "), ASKED.index(b"fog")]
    assert run.ending.kind is EndingKind.WARM_START


def test_a_line_read_by_direct_console_input() -> None:
    check_asked_twice(
        "wait: ld e, 255\nld c, 6\ncall bdos\nor a\njp z, wait\nret\nshow: ld e, a\nld c, 6\njp bdos\n"
    )


def test_a_line_read_by_the_bios_alone() -> None:
    check_asked_twice("wait: call conin\nret\nshow: ld c, a\njp conout\n" + BIOS)


def test_a_line_polled_by_the_bios_with_a_counter_for_the_random_seed() -> None:
    check_asked_twice(
        "wait: ld hl, (seed)\ninc hl\nld (seed), hl\ncall const\nor a\njp z, wait\njp conin\n"
        "show: ld c, a\njp conout\nseed: dw 0\n" + BIOS
    )


def test_a_line_polled_by_status_and_read_by_function_1_is_echoed_once() -> None:
    """Function 11, then 1, which echoes: the program shows nothing of its own but for the erasing."""
    source = (
        call(9, "who")
        + "again: "
        + call(11)
        + "or a\njp z, again\n"
        + call(1)
        + "cp 13\njp nz, again\nld e, 10\nld c, 2\ncall bdos\n"
    )
    run = run_program(program(source + "ret\n" + text("who", "Name? ")), [b"Hob\r"])
    assert run.session.output == b"Name? Hob\r\n"
    assert looks(run) == [len(b"Name? ")]
    assert run.ending.kind is EndingKind.LEFT


def test_a_program_that_chains_by_a_submit_file(tmp_path: Path) -> None:
    """It writes $$$.SUB, a record with a counted line, and starts the system again."""
    source = (
        call(19, "chain")
        + call(22, "chain")
        + call(26, "line")
        + call(21, "chain")
        + call(16, "chain")
        + "jp 0\n"
    )
    data = fcb_data("chain", "$$$.SUB", 1) + 'line: db 5, "TALLY", 0\n' + "db 0\n" * 121
    run = run_program(program(source + data, tmp_path))
    (changed,) = run.changed_files()
    assert (changed.name, changed.data[:7], len(changed.data)) == ("$$$.SUB", b"\x05TALLY\0", 128)
    assert run.ending.kind is EndingKind.WARM_START
    assert list(tmp_path.iterdir()) == []


def test_an_overlay_is_read_at_random_and_jumped_to(tmp_path: Path) -> None:
    """Record 2 of a file holds code for 2000h: a RET after a character was printed."""
    overlay = b"\x1e\x6f\x0e\x02\xc3\x05\x00".ljust(128, b"\0")
    (tmp_path / "PARTS.OVR").write_bytes(bytes(256) + overlay)
    source = call(15, "parts") + call(26, 0x2000) + "ld hl, 2\nld (number), hl\n" + call(33, "parts")
    source += "call 0x2000\nret\nparts: db 0\ndb " + ", ".join(str(byte) for byte in b"PARTS   OVR") + "\n"
    run = run_program(program(source + "db 0\n" * 21 + "number: dw 0\ndb 0\n", tmp_path))
    assert (run.session.output, run.ending.kind) == (b"o", EndingKind.LEFT)


def test_a_program_moves_itself_below_the_bdos() -> None:
    """It copies code to the page below the word at 6, and goes on there."""
    source = "ld hl, (6)\nld l, 0\ndec h\npush hl\nld de, part\nld b, 16\n"
    source += "copy: ld a, (de)\nld (hl), a\ninc hl\ninc de\ndec b\njp nz, copy\nret\n"
    source += "part: ld e, 109\nld c, 2\ncall bdos\njp 0\nnop\nnop\nnop\nnop\n"
    for top in (None, 0x2006, 0x8000):
        run = run_program(program(source), setting=Setting(top=top))
        assert (run.session.output, run.ending.kind) == (b"m", EndingKind.WARM_START)
        assert run.writes_above_top == ()


def test_the_system_is_entered_and_the_table_found_where_programs_look() -> None:
    """Jumps stand at 0 and 5; the word at 1 is the second entry of a table that starts a page."""
    probe = Probe([])
    assert (probe.peek(0, 1), probe.peek(5, 1)) == (b"\xc3", b"\xc3")
    table = int.from_bytes(probe.peek(1, 2), "little") - 3
    assert table & 0xFF == 0
    assert probe.peek(table, 51)[::3] == b"\xc3" * 17


def test_files_are_deleted_while_they_are_searched(tmp_path: Path) -> None:
    """Each name found is copied out of the buffer at 80h by the code in A, and deleted: none is passed over."""
    for number in range(9):
        (tmp_path / f"LOG{number}.TMP").write_bytes(b"x")
    source = (
        call(17, "all") + "next: inc a\njp z, 0\ndec a\nrrca\nrrca\nrrca\nadd a, 0x81\nld l, a\nld h, 0\n"
    )
    source += "ld de, name\nld b, 11\ncopy: ld a, (hl)\nld (de), a\ninc hl\ninc de\ndec b\njp nz, copy\n"
    source += call(19, "one") + "ld e, 46\nld c, 2\ncall bdos\n" + call(18) + "jp next\n"
    data = fcb_data("all", "????????.TMP") + "one: db 0\nname: db 0\n" + "db 0\n" * 34
    run = run_program(program(source + data, tmp_path))
    assert run.session.output == b"." * 9
    assert len(list(tmp_path.iterdir())) == 9


def test_function_13_logs_the_other_drives_out(tmp_path: Path) -> None:
    """Function 13, Reset Disk System: drive A alone is in use after it."""
    probe = Probe([(14, 1), (24, 0), (13, 0), (24, 0)], folder=tmp_path)
    assert (probe.hl[1], probe.hl[3]) == (0b11, 0b01)


def test_function_37_logs_a_drive_out(tmp_path: Path) -> None:
    """Function 37, Reset Drive: the bits in DE."""
    probe = Probe([(14, 1), (14, 0), (37, 2), (24, 0)], folder=tmp_path)
    assert probe.hl[3] == 0b01


def test_a_file_opened_under_one_user_number_is_read_under_another(tmp_path: Path) -> None:
    """The control block holds the blocks; only opening, searching and closing look for the user number."""
    (tmp_path / "7").mkdir()
    (tmp_path / "7" / "RULES.TXT").write_bytes(b"Trim the wick.")
    calls: Calls = [(32, 7), (15, "file"), (32, 0), (20, "file"), (20, "file"), (15, "file")]
    probe = Probe(calls, fcb_data("file", "RULES.TXT"), tmp_path)
    assert (probe.a[3], probe.a[4], probe.a[5]) == (0, 1, 0xFF)
    assert probe.peek(0x80, 14) == b"Trim the wick."


def test_reading_what_was_never_opened_is_the_end_of_a_file(tmp_path: Path) -> None:
    """Functions 20 and 33 find no record: 1, since programs that test for 1 take other codes for a bad disk."""
    probe = Probe([(15, "file"), (20, "file"), (33, "file")], fcb_data("file"), tmp_path)
    assert probe.a == [0xFF, 1, 1]


def test_a_file_renamed_while_it_is_open_is_read_on(tmp_path: Path) -> None:
    """As an editor does with the text it came from; under its old name it is no longer found."""
    (tmp_path / "RULES.TXT").write_bytes(b"Trim the wick.".ljust(128) + b"Fill the oil.")
    data = fcb_data("file", "RULES.TXT") + fcb_data("both", "RULES.TXT").replace(
        ", ".join(["0"] * 24), "0, 0, 0, 0, 0, " + ", ".join(str(byte) for byte in b"RULES   BAK") + ", 0" * 8
    )
    calls: Calls = [(15, "file"), (20, "file"), (23, "both"), (20, "file"), (16, "file")]
    probe = Probe(calls, data, tmp_path)
    assert (probe.a[1], probe.a[2], probe.a[3], probe.a[4]) == (0, 0, 0, 0xFF)
    assert probe.peek(0x80, 13) == b"Fill the oil."


def test_a_program_with_its_stack_at_the_top_goes_back_to_the_first_and_returns() -> None:
    """The word at 6 is where it sets its own; it keeps the stack it was given, and ends by RET."""
    source = "ld hl, 0\nadd hl, sp\nld (0x3000), hl\nld hl, (6)\nld sp, hl\n"
    source += "ld b, 20\ndeep: push bc\ndec b\njp nz, deep\n" + call(9, "done")
    source += "ld hl, (0x3000)\nld sp, hl\nret\n" + text("done", "Kept.")
    run = run_program(program(source))
    assert (run.session.output, run.ending.kind) == (b"Kept.", EndingKind.LEFT)


def test_a_program_as_large_as_memory_finds_a_return_address() -> None:
    """Where there is no room for more, the stack holds that alone."""
    image = b"\xc9".ljust(0x1F04, b"\x01")
    run = run_program(Program("LARGE.COM", image), setting=Setting(top=0x2006))
    assert run.ending.kind is EndingKind.LEFT
