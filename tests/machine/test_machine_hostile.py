"""Programs that mean harm, or only run wild: nothing outside the sandbox ever changes."""

from __future__ import annotations

import hashlib
import random
from pathlib import Path

import pytest
from machine_assembler import Calls, Probe, call, fcb_data, program, text

from fit.errors import UsageError
from fit.machine.cpu import Processor
from fit.machine.disk import Drive, Key
from fit.machine.drives import ChangedFile
from fit.machine.ending import EndingKind, Limits
from fit.machine.host import Host
from fit.machine.loader import Program
from fit.machine.run import Run, run_program
from fit.machine.setting import Setting


def fingerprint(folder: Path) -> dict[str, str]:
    """Every file below a folder with what it holds, its mode and its time."""
    found = {}
    for path in sorted(folder.rglob("*")):
        status = path.lstat()
        held = hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else ""
        found[str(path)] = f"{held} {status.st_mode} {status.st_mtime_ns}"
    return found


@pytest.fixture
def house(tmp_path: Path) -> Path:
    """A home with secrets, and in it the folder that is drive A, with a link out and one that stays in."""
    (tmp_path / "secret.txt").write_bytes(b"the key of the oil store")
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    (shelf / "log.txt").write_bytes(b"wind NW 6\r\n\x1a")
    (shelf / "out.txt").symlink_to(tmp_path / "secret.txt")
    (shelf / "in.txt").symlink_to(shelf / "log.txt")
    (shelf / "up").symlink_to(tmp_path)
    (shelf / "a long name.text").write_bytes(b"not visible")
    return tmp_path


def limited(source: str, folder: Path | None = None, limits: Limits | None = None) -> Run:
    """A program that may not run for long."""
    limits = limits or Limits(ticks=200_000_000, silent_ticks=50_000_000, output=100_000)
    return run_program(program(source, folder), (), Setting(limits=limits))


FILL = "ld hl, 0x80\nld b, 128\nfill: ld (hl), 0xee\ninc hl\ndec b\njp nz, fill\n"
NAMES = [
    "../SECRET", "..", "/ETC/PA.SS", "\\ROOT", "UP/SECRE.TXT", ".", "C:X.TXT", "A B.TXT", "X*.TXT", "\x01BAD.TXT",
]  # fmt: skip


def test_a_program_that_tries_everything_changes_nothing(house: Path) -> None:
    """Delete all, overwrite, rename, make and write names that are paths, on all drives and for all users."""
    before = fingerprint(house)
    calls: Calls = [FILL]
    data = (
        fcb_data("all", "????????.???")
        + fcb_data("log")
        + fcb_data("link", "OUT.TXT")
        + fcb_data("inner", "IN.TXT")
    )
    for label in ("log", "link", "inner"):
        calls += [(15, label), (21, label), (34, label), (40, label), (16, label), (30, label)]
    for index, name in enumerate(NAMES):
        label = f"path{index}"
        base, _, kind = name.partition(".") if name not in ("..", "../SECRET", ".") else (name, "", "")
        field = (base.ljust(8)[:8] + kind.ljust(3)[:3]).encode("latin-1")
        data += f"{label}: db 0\ndb {', '.join(str(byte) for byte in field)}\n" + "db 0\n" * 24
        calls += [(22, label), (21, label), (34, label), (16, label), (23, label)]
    for drive in range(16):
        for user in (0, 5, 15):
            calls += [(14, drive), (32, user), (19, "all"), (22, "log"), (21, "log"), (16, "log")]
    probe = Probe(calls, data, house / "shelf")
    assert fingerprint(house) == before
    assert probe.run.ending.kind is EndingKind.WARM_START
    assert "A:LOG.TXT" in probe.run.files.written
    assert len(probe.run.files.refused) >= 6
    for changed in probe.run.changed_files():
        assert_stays_below(changed, house / "keep")


def assert_stays_below(changed: ChangedFile, folder: Path) -> None:
    """A kept file's path leads nowhere but into its folder."""
    path = (folder / changed.path).resolve()
    assert path.is_relative_to(folder)
    assert changed.name not in ("", ".", "..")
    assert not set(changed.name) & set('/\\:*?<>|"\0')


def test_links_that_lead_out_are_not_seen(house: Path) -> None:
    probe = Probe(
        [(15, "link"), (15, "inner")],
        fcb_data("link", "OUT.TXT") + fcb_data("inner", "IN.TXT"),
        house / "shelf",
    )
    assert probe.a[0] == 0xFF
    assert probe.a[1] in range(4)
    assert probe.run.hidden_files == ("a long name.text", "out.txt")


def test_links_that_lead_round_in_a_circle_are_not_seen(house: Path) -> None:
    (house / "shelf" / "loop").symlink_to("loop")
    probe = Probe([(15, "name")], fcb_data("name", "LOOP"), house / "shelf")
    assert probe.a == [0xFF]
    assert "loop" in probe.run.hidden_files


def test_a_program_that_deletes_all_files_sees_them_gone_and_the_host_keeps_them(house: Path) -> None:
    before = fingerprint(house)
    probe = Probe([(19, "all"), (17, "all")], fcb_data("all", "????????.???"), house / "shelf")
    assert probe.a[1] == 0xFF
    assert fingerprint(house) == before


def test_a_hundred_megabytes_find_the_disk_full(tmp_path: Path) -> None:
    loop = "again: ld de, new\nld c, 21\ncall bdos\nor a\njp nz, full\nld hl, (0x3000)\ninc hl\nld (0x3000), hl\njp again\nfull: ld (0x3002), a\n"
    limits = Limits(written=1 << 20)
    probe = Probe([(22, "new"), loop], fcb_data("new", "HUGE.DAT"), tmp_path, setting=Setting(limits=limits))
    assert int.from_bytes(probe.peek(0x3000, 2), "little") == 8192
    assert probe.peek(0x3002, 1) == b"\x02"
    assert list(tmp_path.iterdir()) == []


def test_many_files_with_one_far_record_take_little_memory(tmp_path: Path) -> None:
    """A record at 65,535 makes a file of 8 MiB for its program, and one block for us."""
    drive = Drive(tmp_path)
    for index in range(50):
        key = Key(0, f"F{index:<7}DAT".encode())
        drive.make(key)
        assert drive.write(key, 65535, bytes(128))
    assert sum(len(block) for file in drive.files.values() for block in file.changed.values()) == 50 * 2048


def test_a_directory_that_is_full_takes_no_more(tmp_path: Path) -> None:
    source = "ld hl, 0\nnext: ld (name), hl\npush hl\nld de, new\nld c, 22\ncall bdos\npop hl\ninc a\njp z, full\ninc hl\nld a, h\nor 0x40\nld h, a\njp next\n"
    source = source.replace(
        "ld (name), hl",
        "ld a, l\nand 0x1f\nor 0x40\nld (name), a\nld a, l\nrrca\nrrca\nrrca\nrrca\nrrca\nand 7\nor 0x30\nld (name1), a\nld a, h\nand 0x0f\nor 0x50\nld (name2), a",
    )
    data = (
        "new: db 0\nname: db 65\nname1: db 65\nname2: db 65\ndb 32, 32, 32, 32, 32, 32, 32, 32\n"
        + "db 0\n" * 24
    )
    result = limited(source + "full: jp 0\n" + data, tmp_path)
    assert result.ending.kind is EndingKind.WARM_START
    assert len(result.changed_files()) <= 1024


def test_overwriting_page_zero_ends_in_a_wild_jump() -> None:
    source = "ld hl, 0\nld b, 0\nwipe: ld (hl), 0\ninc hl\ndec b\njp nz, wipe\n" + call(2, 65) + "ret\n"
    assert limited(source).ending.kind is EndingKind.WILD_JUMP


def test_overwriting_the_system_ends_with_a_reason() -> None:
    source = "ld hl, (6)\nwipe: ld (hl), 0x76\ninc hl\nld a, h\nor l\njp nz, wipe\n" + call(2, 65) + "ret\n"
    result = limited(source)
    assert result.ending.kind in (EndingKind.WILD_JUMP, EndingKind.HALTED)
    assert result.writes_above_top
    assert "operating system's memory" in result.session.remarks[0]


def test_printing_for_ever_meets_the_limit() -> None:
    assert (
        limited("again: " + call(9, "hello") + "jp again\n" + text("hello", "gull ")).ending.kind
        is EndingKind.OUTPUT
    )


def test_looping_in_silence_meets_the_limit() -> None:
    assert limited("again: jp again\n").ending.kind is EndingKind.SILENT


def test_looking_at_the_disk_for_ever_meets_the_limit(house: Path) -> None:
    """Nothing is printed, and each call is work for the host: it takes time in the machine, too."""
    result = limited(
        "again: " + call(27) + call(17, "all") + "jp again\n" + fcb_data("all", "?.?"), house / "shelf"
    )
    assert result.ending.kind is EndingKind.TICKS


def test_recursing_without_end_ends() -> None:
    """The stack runs down through memory and over the program, which then is other code."""
    assert limited("again: call again\n").ticks <= 200_000_000


def test_interrupts_and_block_moves_over_everything_end() -> None:
    assert limited("di\nld hl, 0\nld de, 1\nld bc, 0xffff\nldir\nret\n").ending is not None


@pytest.mark.parametrize("buffer", [0xFFC0, 0xFE00, 0x0000, 0x0100])
def test_records_read_over_the_system_or_the_program_harm_nobody_else(house: Path, buffer: int) -> None:
    before = fingerprint(house)
    source = call(15, "log") + call(26, buffer) + call(20, "log") + call(2, 65) + "ret\n" + fcb_data("log")
    assert limited(source, house / "shelf").ending is not None
    assert fingerprint(house) == before


def test_control_blocks_at_the_end_of_memory_go_around(house: Path) -> None:
    before = fingerprint(house)
    for address in (0xFFFF, 0xFFF0, 0xFFDD, 0):
        calls = "".join(call(function, address) for function in range(15, 41))
        limited(calls + "ret\n", house / "shelf")
    assert fingerprint(house) == before


def test_every_function_with_every_kind_of_parameter_stays_inside(house: Path) -> None:
    before = fingerprint(house)
    for parameter in (0, 0x5C, 0x100, 0x8000, 0xFFFF):
        calls = "".join(call(function, parameter) for function in range(1, 256) if function not in (1, 10))
        limited(calls + "ret\n", house / "shelf")
    assert fingerprint(house) == before


def test_a_drive_that_is_no_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(UsageError) as error:
        Host(program("ret\n"), Setting(drives={"B": tmp_path / "none"}))
    assert str(error.value) == f"drive B is to be {tmp_path}/none, which is no folder; name a folder"


@pytest.mark.parametrize("letter", ["Q", "1", "AB", ""])
def test_a_letter_that_is_no_drive_is_refused(tmp_path: Path, letter: str) -> None:
    with pytest.raises(UsageError) as error:
        Host(program("ret\n"), Setting(drives={letter: tmp_path}))
    assert str(error.value) == f"{letter!r} is no drive; drives are the letters A to P"


def random_image(rng: random.Random) -> bytes:
    """Calls of functions with parameters of every kind, among bytes of every kind."""
    image = b""
    for _ in range(rng.randrange(3, 60)):
        choice = rng.randrange(4)
        if choice == 0:
            image += rng.randbytes(rng.randrange(1, 5))
        elif choice == 1:
            image += bytes((0xCD, 3 * rng.randrange(17), 0xFE))
        else:
            image += bytes(
                (0x0E, rng.randrange(42), 0x11, rng.randrange(256), rng.choice((0, 1, 0xFF)), 0xCD, 5, 0)
            )
    return image


@pytest.mark.parametrize("seed", range(60))
def test_random_programs_end_and_stay_inside(house: Path, seed: int) -> None:
    before = fingerprint(house)
    rng = random.Random(seed)
    limits = Limits(ticks=20_000_000, silent_ticks=3_000_000, output=50_000, waits=60)
    setting = Setting(limits=limits, processor=rng.choice(list(Processor)), arguments="log.txt *.*")
    loaded = Program("R.COM", random_image(rng), house / "shelf")
    assert run_program(loaded, [rng.randbytes(3) for _ in range(5)], setting).ending is not None
    assert fingerprint(house) == before
