"""The BIOS table: direct calls, patches, and the disk by sectors.

Source: Digital Research, CP/M Operating System Manual, the BIOS entry points.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from machine_assembler import Calls, Probe, call, program, text

from fit.machine import layout
from fit.machine.ending import EndingKind
from fit.machine.host import Host
from fit.machine.layout import Bios, entry, stub
from fit.machine.run import run_program
from fit.machine.setting import Setting


def bios(function: Bios, before: str = "") -> str:
    """Call a BIOS function by the address at 0001h, as programs do."""
    offset = 3 * (function - 1)
    return f"ld hl, (1)\nld de, {offset}\nadd hl, de\nld de, back{function}\npush de\n{before}\njp (hl)\nback{function}:\n"


def test_page_zero_holds_real_jumps() -> None:
    host = Host(program("ret"), Setting())
    memory = host.cpu.memory
    assert bytes(memory[0:3]) == bytes((0xC3, 0x03, 0xFE))
    assert int.from_bytes(memory[6:8], "little") == host.top
    for function in Bios:
        assert memory[entry(function)] == 0xC3


def test_console_functions() -> None:
    source = bios(Bios.CONST) + "ld (0x3000), a\n" + bios(Bios.CONIN) + "ld (0x3001), a\n"
    source += bios(Bios.CONOUT, "ld c, 33")
    probe = Probe([source], keys=b"k")
    assert probe.peek(0x3000, 2) == b"\x00k"
    assert probe.output == b"!"


def test_devices() -> None:
    source = bios(Bios.LIST, "ld c, 76") + bios(Bios.PUNCH, "ld c, 80")
    source += bios(Bios.READER) + "ld (0x3000), a\n" + bios(Bios.LISTST) + "ld (0x3001), a\n"
    probe = Probe([source])
    assert (probe.run.printer, probe.run.punched) == (b"L", b"P")
    assert probe.peek(0x3000, 2) == b"\x1a\xff"


@pytest.mark.parametrize("function", [Bios.BOOT, Bios.WBOOT])
def test_boot_functions_end_the_run(function: Bios) -> None:
    probe = Probe([f"jp {entry(function)}"])
    assert probe.run.ending.kind is EndingKind.WARM_START


def test_the_directory_can_be_read_by_sectors(tmp_path: Path) -> None:
    (tmp_path / "rock.dat").write_bytes(b"gulls")
    source = bios(Bios.SELDSK, "ld c, 0") + "ld (0x3000), hl\n" + bios(Bios.SETTRK, "ld bc, 0")
    source += bios(Bios.SETSEC, "ld bc, 0") + bios(Bios.SETDMA, "ld bc, 0x3100") + bios(Bios.READ)
    source += "ld (0x3002), a\n"
    probe = Probe([source], folder=tmp_path)
    assert probe.peek(0x3000, 3) == layout.HEADER.to_bytes(2, "little") + b"\x00"
    assert probe.peek(0x3100, 12) == b"\x00ROCK    DAT"
    block = int.from_bytes(probe.peek(0x3110, 2), "little")
    track, sector = divmod(block * 16, 64)
    source += bios(Bios.HOME) + f"ld bc, {track}\ncall {entry(Bios.SETTRK)}\n"
    source += f"ld bc, {sector}\ncall {entry(Bios.SETSEC)}\ncall {entry(Bios.READ)}\n"
    again = Probe([source], folder=tmp_path)
    assert again.peek(0x3100, 5) == b"gulls"


def test_a_drive_without_a_folder_cannot_be_selected() -> None:
    probe = Probe([bios(Bios.SELDSK, "ld c, 3") + "ld (0x3000), hl\n"])
    assert probe.peek(0x3000, 2) == b"\x00\x00"


def test_writing_by_sectors_ends_the_run() -> None:
    probe = Probe([bios(Bios.WRITE)])
    assert probe.run.ending.kind is EndingKind.UNSUPPORTED
    assert "WRITE" in str(probe.run.ending)


PATCH = f"ld hl, mine\nld ({entry(Bios.CONOUT) + 1}), hl\n"
UPPER = f"""
mine: ld a, c
and 0x5f
ld c, a
jp {stub(Bios.CONOUT)}
"""


def test_a_patched_conout_is_honoured_by_every_console_function() -> None:
    calls: Calls = [PATCH, (2, ord("a")), (9, "hello"), (1, 0), (6, ord("z")), (10, "line")]
    probe = Probe(
        calls, UPPER + text("hello", "oil") + "line: db 9\ndb 0, 0, 0, 0, 0, 0\n", steps=[b"k", b"ab\r"]
    )
    assert probe.output == b"AOILKZAB\r".replace(b"\r", bytes((0x0D & 0x5F,)))
    assert probe.run.patches_bios
    assert not probe.run.writes_above_top


def test_a_patched_conin_feeds_the_console_functions() -> None:
    patch = f"ld hl, mine\nld ({entry(Bios.CONIN) + 1}), hl\n"
    mine = "mine: ld a, (0x3f00)\ninc a\nld (0x3f00), a\ncp 67\nret nz\nld a, 13\nret\n"
    calls: Calls = [
        "ld a, 64\nld (0x3f00), a",
        patch,
        (1, 0),
        "ld a, 64\nld (0x3f00), a",
        (10, "line"),
        "ld a, (line+1)".replace("+1", ""),
    ]
    probe = Probe(calls, mine + "line: db 9\ndb 0, 0, 0, 0, 0, 0\n")
    assert probe.a[0] == ord("A")
    assert probe.output == b"AAB\r"


@pytest.mark.parametrize(("function", "device"), [(4, Bios.PUNCH), (5, Bios.LIST)])
def test_patched_devices_are_honoured(function: int, device: Bios) -> None:
    """A printer that shows everything on the console."""
    patch = f"ld hl, {stub(Bios.CONOUT)}\nld ({entry(device) + 1}), hl\n"
    probe = Probe([patch, (function, ord("p")), (2, ord("c"))])
    assert (probe.output, probe.run.printer, probe.run.punched) == (b"pc", b"", b"")


def test_a_patched_reader_is_honoured() -> None:
    patch = f"ld hl, mine\nld ({entry(Bios.READER) + 1}), hl\n"
    assert Probe([patch, (3, 0)], "mine: ld a, 82\nret\n").a == [ord("R")]


@pytest.mark.parametrize("leave", [call(0), "jp 0\n", "ret\n"])
def test_a_patched_warm_start_gets_control_when_the_program_leaves(leave: str) -> None:
    source = f"ld hl, mine\nld ({entry(Bios.WBOOT) + 1}), hl\n" + leave
    source += "mine: ld sp, 0x4000\n" + call(2, ord("!")) + f"jp {stub(Bios.WBOOT)}\n"
    run = run_program(program(source))
    assert (run.session.output, run.ending.kind) == (b"!", EndingKind.WARM_START)


def test_a_wait_inside_a_patched_routine_is_a_wait() -> None:
    patch = f"ld hl, mine\nld ({entry(Bios.CONIN) + 1}), hl\n"
    mine = f"mine: call {stub(Bios.CONIN)}\nand 0x5f\nret\n"
    probe = Probe([patch, (1, 0)], mine, keys=b"q")
    assert probe.a == [ord("Q")]
    assert [kind.value for kind in probe.run.wait_kinds] == ["key"]


def test_a_run_can_be_copied_in_the_middle_of_a_relayed_call() -> None:
    patch = f"ld hl, mine\nld ({entry(Bios.CONIN) + 1}), hl\n"
    mine = f"mine: call {stub(Bios.CONIN)}\nret\nbuffer: db 9\n"
    host = Host(program(patch + call(10, "buffer") + "ret\n" + mine), Setting())
    host.advance()
    host.type_keys(b"ab")
    host.advance()
    copy = host.freeze()
    for _ in range(2):
        host.thaw(copy)
        host.type_keys(b"c\r")
        assert host.advance() is None
        assert bytes(host.console.output) == b"abc\r"


def test_the_word_at_6_may_be_moved_to_a_routine_of_the_program() -> None:
    """Programs that stay in memory put themselves before the BDOS and pass calls on."""
    source = "ld hl, (6)\nld (old), hl\nld hl, mine\nld (6), hl\n" + call(2, ord("x")) + call(9, "hello")
    source += "ret\nmine: ld a, c\ncp 2\njp nz, pass\nld e, 89\npass: db 0xc3\nold: dw 0\n" + text(
        "hello", "ok"
    )
    run = run_program(program(source))
    assert run.session.output == b"Yok"
