"""Evidence beside printing: ports, video memory, files; and echo, names, blocks, the line's time."""

from __future__ import annotations

from pathlib import Path

import pytest
from machine_assembler import Probe, call, fcb_data, program, text

from fit.machine.echo import shows_more_than_echo
from fit.machine.names import from_host, parse_name, shown, to_host
from fit.machine.run import blocks_on_disk, run_program, seconds_to_send
from fit.machine.setting import Setting

LONG_TEXT = "The lamp is lit and the wind is north-west, force six. " * 6


def copy_text_to(address: int) -> str:
    """A loop that writes 300 characters of text to an address."""
    loop = f"ld hl, words\nld de, {address}\nld bc, 300\ncopy: ld a, (hl)\nld (de), a\ninc hl\ninc de\ndec bc\nld a, b\nor c\njp nz, copy\n"
    return loop + "ret\n" + text("words", LONG_TEXT)


def test_ports_are_told_with_their_direction() -> None:
    run = run_program(program("in a, (0x10)\nin a, (0x10)\nout (0x11), a\nret\n"))
    assert [(use.port, use.is_read, use.times) for use in run.ports] == [(0x10, True, 2), (0x11, False, 1)]
    assert 0x100 <= run.ports[0].address <= 0x102


def test_an_isolated_block_of_text_in_high_memory_suggests_video() -> None:
    (video,) = run_program(program(copy_text_to(0xE000))).video_memory
    assert (video.start, video.end) == (0xE000, 0xE000 + 300)
    assert video.printable == 1.0


def test_text_above_the_top_suggests_video() -> None:
    run = run_program(program(copy_text_to(0xC000)), setting=Setting(top=0xB000))
    assert run.video_memory[0].start == 0xC000
    assert run.writes_above_top[0] == 0xC000


@pytest.mark.parametrize("address", [0x3000, 0x8010, 0xFA00 - 300])
def test_other_blocks_are_no_video(address: int) -> None:
    """Near the program, at the border of what is watched, or under the top, where stacks and buffers lie."""
    assert run_program(program(copy_text_to(address))).video_memory == ()


def test_files_opened_missed_and_written_are_told(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_bytes(b"wind")
    probe = Probe(
        [(15, "log"), (15, "none"), (22, "new"), (21, "new")],
        fcb_data("log") + fcb_data("none", "NONE.TXT", drive=2) + fcb_data("new", "NEW.TXT"),
        tmp_path,
    )
    files = probe.run.files
    assert (files.opened, files.missed, files.written) == (("A:LOG.TXT",), ("B:NONE.TXT",), ("A:NEW.TXT",))
    assert probe.run.drives == ("A", "B")


@pytest.mark.parametrize(
    ("printed", "typed", "shows"),
    [
        (b"", b"a", False),
        (b"a", b"a", False),
        (b"A\r\n", b"a", False),
        (b"lamp\r\n", b"lamp\r", False),
        (b"l", b"lamp", False),
        (b"\x07\b \b", b"x", False),
        (b"a\r\nTaken.", b"a", True),
        (b"b", b"a", True),
        (b"?", b"", True),
    ],
)
def test_more_than_echo(printed: bytes, typed: bytes, shows: bool) -> None:
    assert shows_more_than_echo(printed, typed) is shows


@pytest.mark.parametrize(
    ("host", "field"),
    [
        ("log.txt", b"LOG     TXT"),
        ("LAMP", b"LAMP       "),
        ("tide-1.t", b"TIDE-1  T  "),
        ("longername.txt", None),
        ("log.text", None),
        (".hidden", None),
        ("a.b.c", None),
        ("trailing.", None),
        ("a b.txt", None),
        ("über.txt", None),
        ("a*.txt", None),
    ],
)
def test_host_names(host: str, field: bytes | None) -> None:
    assert from_host(host) == field


@pytest.mark.parametrize(
    "field", [b"../SECRET  ", b"..         ", b"A/B     TXT", b"           ", b"\x00BCDEFGHTXT"]
)
def test_names_that_never_reach_the_host(field: bytes) -> None:
    assert to_host(field) is None


def test_names_for_the_host_and_for_people() -> None:
    assert to_host(b"LOG     TXT") == "LOG.TXT"
    assert to_host(b"LAMP       ") == "LAMP"
    assert shown(b"\x01OG     TXT") == "_OG.TXT"


@pytest.mark.parametrize(
    ("word", "block"),
    [
        ("LOG.TXT", b"\x00LOG     TXT"),
        ("B:LOG", b"\x02LOG        "),
        ("*.*", b"\x00???????????"),
        ("T?DE.T*", b"\x00T?DE    T??"),
        ("", b"\x00           "),
        ("VERYLONGNAME.TYPE", b"\x00VERYLONGTYP"),
    ],
)
def test_words_of_the_command_line(word: str, block: bytes) -> None:
    assert parse_name(word) == block


def test_blocks_and_time() -> None:
    """8N1 sends 10 bits a byte: common practice, no source."""
    assert [blocks_on_disk(size) for size in (0, 1, 2048, 2049)] == [0, 1, 1, 2]
    assert seconds_to_send(960, 9600) == 1.0


def test_the_session_says_what_was_run() -> None:
    run = run_program(program(call(2, 65) + "ret\n"), setting=Setting(arguments="log.txt"))
    session = run.session
    assert (session.command, session.name, session.size, session.dialect) == (
        "TEST.COM log.txt",
        "TEST.COM",
        None,
        None,
    )
    assert session.ending == "left by itself: it returned"
