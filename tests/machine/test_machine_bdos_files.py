"""BDOS functions 13 to 40, one test a function, by the numbers of the manual.

Source: Digital Research, CP/M Operating System Manual, the sections on BDOS functions and the file
control block.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from machine_assembler import Calls, Probe, fcb_data

from fit.machine.setting import Setting

RECORD_1 = bytes(range(128))
RECORD_2 = b"wick" * 32
BUFFER = 0x3000


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """A folder with a log of two records and a half, a chart, and tide tables."""
    (tmp_path / "log.txt").write_bytes(RECORD_1 + RECORD_2 + b"oil 80\r\n")
    (tmp_path / "chart.dat").write_bytes(b"")
    (tmp_path / "tide1.tab").write_bytes(b"1" * 128)
    (tmp_path / "tide2.tab").write_bytes(b"2" * 128)
    return tmp_path


def test_function_13_reset_disk_system(shelf: Path) -> None:
    """Function 13, Reset Disk System: drive A, buffer at 80h, all drives writable."""
    calls: Calls = [(14, 1), (28, 0), (26, BUFFER), (13, 0), (25, 0), (29, 0), (15, "file"), (20, "file")]
    probe = Probe(calls, fcb_data("file"), shelf)
    assert probe.a[4:6] == [0, 0]
    assert probe.a[6] in range(4)
    assert probe.a[7] == 0
    assert probe.peek(0x80, 128) == RECORD_1


def test_function_14_select_disk(tmp_path: Path, shelf: Path) -> None:
    """Function 14, Select Disk: names without a drive are looked for there."""
    other = tmp_path / "b"
    other.mkdir()
    (other / "rock.dat").write_bytes(b"x")
    probe = Probe(
        [(14, 1), (15, "file"), (25, 0)],
        fcb_data("file", "ROCK.DAT"),
        setting=Setting(drives={"A": shelf, "B": other}),
    )
    assert probe.a == [0, 0, 1]
    assert probe.peek(4, 1) == b"\x01"
    assert probe.run.drives == ("B",)


def test_function_15_open_file(shelf: Path) -> None:
    """Function 15, Open File: a directory code, and the extent's records and blocks in the control block."""
    probe = Probe(
        [(15, "file"), (15, "none"), "ld hl, file\nld (0x3000), hl"],
        fcb_data("file") + fcb_data("none", "NO.WAY"),
        shelf,
    )
    assert probe.a[0] in range(4)
    assert probe.a[1] == 0xFF
    address = int.from_bytes(probe.peek(0x3000, 2), "little")
    assert probe.peek(address + 15, 1) == b"\x03"
    assert probe.peek(address + 16, 2) != b"\x00\x00"
    assert probe.run.files.opened == ("A:LOG.TXT",)
    assert probe.run.files.missed == ("A:NO.WAY",)


def test_function_15_open_by_wildcard_fills_in_the_name(shelf: Path) -> None:
    """Function 15: a name with question marks opens the first that matches."""
    probe = Probe([(15, "file"), "ld hl, file\nld (0x3000), hl"], fcb_data("file", "TIDE?.TAB"), shelf)
    address = int.from_bytes(probe.peek(0x3000, 2), "little")
    assert probe.peek(address + 1, 11) == b"TIDE1   TAB"


def test_function_16_close_file(shelf: Path) -> None:
    """Function 16, Close File: FFh for a file that is not there."""
    probe = Probe(
        [(15, "file"), (16, "file"), (16, "none")], fcb_data("file") + fcb_data("none", "NO.WAY"), shelf
    )
    assert probe.a[1] in range(4)
    assert probe.a[2] == 0xFF


def test_function_17_search_for_first(shelf: Path) -> None:
    """Function 17, Search for First: the entry stands in the buffer at 32 times the code in A."""
    probe = Probe(
        [(26, BUFFER), (17, "file"), (17, "none")], fcb_data("file") + fcb_data("none", "NO.WAY"), shelf
    )
    entry = probe.peek(BUFFER + 32 * probe.a[1], 32)
    assert entry[:12] == b"\x00LOG     TXT"
    assert entry[15] == 3
    assert probe.a[2] == 0xFF


def test_function_18_search_for_next(shelf: Path) -> None:
    """Function 18, Search for Next: every file that matches, then FFh."""
    calls: Calls = [(26, BUFFER), (17, "file"), (26, BUFFER + 128), (18, 0), (18, 0)]
    probe = Probe(calls, fcb_data("file", "TIDE?.TAB"), shelf)
    first = probe.peek(BUFFER + 32 * probe.a[1] + 1, 11)
    second = probe.peek(BUFFER + 128 + 32 * probe.a[3] + 1, 11)
    assert (first, second) == (b"TIDE1   TAB", b"TIDE2   TAB")
    assert probe.a[4] == 0xFF


def test_function_18_reads_the_control_block_again(shelf: Path) -> None:
    """Function 18: programs search an exact name, put the wildcard in, and go on from there."""
    calls: Calls = [
        (17, "file"),
        "ld a, 63\nld (file+5), a".replace("file+5", "digit"),
        (18, 0),
    ]
    data = "file: db 0\ndb 84, 73, 68, 69\ndigit: db 49\ndb 32, 32, 32, 84, 65, 66\n" + "db 0\n" * 24
    probe = Probe(calls, data, shelf)
    assert probe.peek(0x80 + 32 * probe.a[1] + 1, 11) == b"TIDE2   TAB"


def test_function_17_with_a_wild_drive_gives_every_entry(shelf: Path) -> None:
    """Function 17 with "?" for the drive: every entry of the current drive, whatever its name and user."""
    calls: Calls = [(17, "file"), *[(18, 0)] * 4]
    probe = Probe(calls, fcb_data("file", "NO.WAY", drive=ord("?")), shelf)
    assert [code == 0xFF for code in probe.a] == [False, False, False, False, True]


def test_function_19_delete_file(shelf: Path) -> None:
    """Function 19, Delete File: wildcards too; in the sandbox, not on the host."""
    probe = Probe([(19, "file"), (17, "file"), (19, "file")], fcb_data("file", "????????.???"), shelf)
    assert probe.a[0] in range(4)
    assert probe.a[1:] == [0xFF, 0xFF]
    assert (shelf / "log.txt").exists()
    assert "A:LOG.TXT" in probe.run.files.deleted
    assert probe.run.files.written == ()


def test_a_file_that_the_program_made_itself_is_not_told_as_deleted(shelf: Path) -> None:
    """A scratch file comes and goes: nobody loses it."""
    probe = Probe([(22, "file"), (19, "file")], fcb_data("file", "SCRATCH.TMP"), shelf)
    assert (probe.run.files.written, probe.run.files.deleted) == (("A:SCRATCH.TMP",), ())


def test_a_file_that_is_deleted_to_be_made_anew_is_told_as_written(shelf: Path) -> None:
    probe = Probe([(19, "file"), (22, "file"), (21, "file")], fcb_data("file", "LOG.TXT"), shelf)
    assert (probe.run.files.written, probe.run.files.deleted) == (("A:LOG.TXT",), ())
    assert probe.run.files.emptied == ()


@pytest.mark.parametrize("calls", [[22], [19, 22], [22, 16]])
def test_a_file_that_is_made_over_another_and_holds_nothing_is_told_as_emptied(
    shelf: Path, calls: list[int]
) -> None:
    probe = Probe([(function, "file") for function in calls], fcb_data("file", "LOG.TXT"), shelf)
    assert (probe.run.files.written, probe.run.files.deleted) == ((), ())
    assert probe.run.files.emptied == ("A:LOG.TXT",)


@pytest.mark.parametrize("calls", [[22, 16], [22, 21, 16], [15, 21, 16]])
def test_a_file_that_is_deleted_after_it_was_written_over_is_told_as_deleted(
    shelf: Path, calls: list[int]
) -> None:
    probe = Probe([(function, "file") for function in (*calls, 19)], fcb_data("file", "LOG.TXT"), shelf)
    files = probe.run.files
    assert (files.written, files.emptied, files.deleted) == ((), (), ("A:LOG.TXT",))


def test_a_file_that_is_deleted_under_a_new_name_is_told_by_its_old_one(shelf: Path) -> None:
    data = "new: db 0\n" + "db 76, 79, 71, 32, 32, 32, 32, 32, 84, 88, 84\ndb 0, 0, 0, 0\n"
    data += "db 0\ndb 79, 76, 68, 32, 32, 32, 32, 32, 84, 88, 84\n" + "db 0\n" * 9
    probe = Probe([(23, "new"), (19, "old")], data + fcb_data("old", "OLD.TXT"), shelf)
    assert (probe.run.files.renamed, probe.run.files.deleted) == ((), ("A:LOG.TXT",))


def test_a_file_that_another_is_renamed_to_after_it_was_deleted_is_told_as_written(shelf: Path) -> None:
    """As programs save: the new file beside the old one first, then it takes its name."""
    data = "new: db 0\n" + "db 76, 79, 71, 32, 32, 32, 32, 32, 36, 36, 36\ndb 0, 0, 0, 0\n"
    data += "db 0\ndb 76, 79, 71, 32, 32, 32, 32, 32, 84, 88, 84\n" + "db 0\n" * 9
    data += fcb_data("made", "LOG.$$$") + fcb_data("file", "LOG.TXT")
    probe = Probe([(22, "made"), (19, "file"), (23, "new")], data, shelf)
    assert probe.run.files.renamed == (("A:LOG.$$$", "A:LOG.TXT"),)
    assert probe.run.files.written == ("A:LOG.$$$", "A:LOG.TXT")
    assert probe.run.files.deleted == ()


def test_function_20_read_sequential(shelf: Path) -> None:
    """Function 20, Read Sequential: record after record, the last filled up with 1Ah, then 1."""
    calls: Calls = [(15, "file")]
    for index in range(4):
        calls += [(26, BUFFER + 128 * index), (20, "file")]
    probe = Probe(calls, fcb_data("file"), shelf)
    assert [probe.a[i] for i in (2, 4, 6, 8)] == [0, 0, 0, 1]
    assert probe.peek(BUFFER, 384) == RECORD_1 + RECORD_2 + b"oil 80\r\n" + b"\x1a" * 120


def test_function_20_goes_through_several_extents(tmp_path: Path) -> None:
    """Function 20: 300 records are three extents of 128; the control block counts them."""
    records = b"".join(bytes((index & 0xFF,)) * 128 for index in range(300))
    (tmp_path / "big.dat").write_bytes(records)
    loop = "again: ld de, file\nld c, 20\ncall bdos\nor a\njp nz, done\nld hl, (0x3000)\ninc hl\nld (0x3000), hl\n"
    loop += (
        "ld a, (0x80)\nld hl, sum\nadd a, (hl)\nld (hl), a\njp again\ndone: ld a, (extent)\nld (0x3002), a"
    )
    data = (
        "file: db 0\ndb 66, 73, 71, 32, 32, 32, 32, 32, 68, 65, 84\nextent: db 0\n"
        + "db 0\n" * 23
        + "sum: db 0\n"
    )
    probe = Probe([(15, "file"), "ld hl, 0\nld (0x3000), hl", loop], data, tmp_path)
    assert int.from_bytes(probe.peek(0x3000, 2), "little") == 300
    assert probe.peek(0x3002, 1) == b"\x02"


def test_function_21_write_sequential(shelf: Path) -> None:
    """Function 21, Write Sequential: the file in the sandbox equals the records written."""
    fill = f"ld hl, {BUFFER}\nld b, 128\nfill: ld (hl), b\ninc hl\ndec b\njp nz, fill"
    probe = Probe(
        [fill, (26, BUFFER), (22, "new"), (21, "new"), (21, "new"), (16, "new")],
        fcb_data("new", "NEW.LOG"),
        shelf,
    )
    (changed,) = probe.run.changed_files()
    assert changed.name == "NEW.LOG"
    assert changed.data == bytes(range(128, 0, -1)) * 2
    assert not (shelf / "NEW.LOG").exists()


def test_function_21_writes_several_extents(shelf: Path) -> None:
    """Function 21: 200 records come back in order through function 33 and a second opening."""
    loop = "ld b, 200\nagain: push bc\nld a, b\nld (0x80), a\nld de, new\nld c, 21\ncall bdos\npop bc\ndec b\njp nz, again"
    calls: Calls = [(22, "new"), loop, (16, "new"), (35, "new")]
    probe = Probe(calls, fcb_data("new", "NEW.LOG"), shelf)
    (changed,) = probe.run.changed_files()
    assert len(changed.data) == 200 * 128
    assert changed.data[::128] == bytes(range(200, 0, -1))


def test_function_22_make_file(shelf: Path) -> None:
    """Function 22, Make File: an empty file; a name that could be a path on the host is refused."""
    probe = Probe(
        [(22, "new"), (15, "new"), (22, "path")],
        fcb_data("new", "NEW.LOG") + fcb_data("path", "../X.Y"),
        shelf,
    )
    assert probe.a[0] in range(4)
    assert probe.a[1] in range(4)
    assert probe.a[2] == 0xFF
    assert len(probe.run.files.refused) == 1


def test_function_23_rename_file(shelf: Path) -> None:
    """Function 23, Rename File: the second name stands 16 bytes after the first."""
    data = "file: db 0\n" + "db 76, 79, 71, 32, 32, 32, 32, 32, 84, 88, 84\ndb 0, 0, 0, 0\n"
    data += "db 0\ndb 79, 76, 68, 32, 32, 32, 32, 32, 84, 88, 84\n" + "db 0\n" * 9
    probe = Probe([(23, "file"), (23, "file"), (15, "old")], data + fcb_data("old", "OLD.TXT"), shelf)
    assert probe.a[0] in range(4)
    assert probe.a[1] == 0xFF
    assert probe.a[2] in range(4)
    assert (shelf / "log.txt").exists()
    assert probe.run.files.renamed == (("A:LOG.TXT", "A:OLD.TXT"),)
    assert (probe.run.files.written, probe.run.files.deleted) == ((), ())


def test_function_24_return_login_vector(shelf: Path) -> None:
    """Function 24, Return Login Vector: a bit for each drive in use, A in bit 0."""
    probe = Probe([(24, 0), (14, 2), (24, 0)], folder=shelf)
    assert [probe.hl[0], probe.hl[2]] == [0b1, 0b101]


def test_function_25_return_current_disk() -> None:
    """Function 25, Return Current Disk: 0 for A to 15 for P."""
    assert Probe([(14, 15), (25, 0)]).a[1] == 15


def test_function_26_set_dma_address(shelf: Path) -> None:
    """Function 26, Set DMA Address: where the next record goes."""
    probe = Probe([(15, "file"), (26, 0x3456), (20, "file")], fcb_data("file"), shelf)
    assert probe.peek(0x3456, 128) == RECORD_1


def test_function_27_get_allocation_address(shelf: Path) -> None:
    """Function 27, Get Addr (Alloc): a bit a block; 16 of the directory and one for each of the files."""
    probe = Probe([(27, 0)], folder=shelf)
    vector = int.from_bytes(probe.peek(probe.hl[0], 512), "big")
    assert vector.bit_count() == 16 + 3
    assert probe.peek(probe.hl[0], 2) == b"\xff\xff"


def test_function_28_write_protect_disk(shelf: Path) -> None:
    """Function 28, Write Protect Disk: writing then is an error; any key starts the system again."""
    probe = Probe([(28, 0), (22, "new")], fcb_data("new", "NEW.LOG"), shelf, keys=b"x")
    assert probe.output == b"\r\nBdos Err On A: R/O"
    assert str(probe.run.ending) == "stopped by the operating system: Bdos Err On A: R/O"


def test_function_29_get_read_only_vector(shelf: Path) -> None:
    """Function 29, Get Read-Only Vector: a bit for each protected drive."""
    assert Probe([(14, 1), (28, 0), (29, 0)], folder=shelf).hl[2] == 0b10


def test_function_30_set_file_attributes(shelf: Path) -> None:
    """Function 30, Set File Attributes: bit 7 of the type's first byte makes a file read-only."""
    data = "file: db 0\ndb 76, 79, 71, 32, 32, 32, 32, 32\nkind: db 84\ndb 88, 84\n" + "db 0\n" * 24
    calls: Calls = [
        "ld a, 0xd4\nld (kind), a",
        (30, "file"),
        (17, "file"),
        (19, "file"),
    ]
    probe = Probe(calls, data, shelf, keys=b"x")
    assert probe.peek(0x80 + 32 * probe.a[1] + 9, 3) == b"\xd4XT"
    assert probe.output == b"\r\nBdos Err On A: File R/O"


def test_function_31_get_disk_parameters() -> None:
    """Function 31, Get Addr (Disk Parms): 2,048-byte blocks, 4,096 of them, 1,024 entries."""
    probe = Probe([(31, 0)])
    block = probe.peek(probe.hl[0], 15)
    assert block[2:5] == bytes((4, 15, 0))
    assert int.from_bytes(block[5:7], "little") == 4095
    assert int.from_bytes(block[7:9], "little") == 1023
    assert block[9:11] == b"\xff\xff"


def test_function_32_set_get_user_code(shelf: Path) -> None:
    """Function 32, Set/Get User Code: each user number has its own files."""
    (shelf / "7").mkdir()
    (shelf / "7" / "seven.txt").write_bytes(b"7")
    probe = Probe(
        [(32, 7), (32, 0xFF), (15, "seven"), (15, "file")],
        fcb_data("seven", "SEVEN.TXT") + fcb_data("file"),
        shelf,
    )
    assert probe.a[1] == 7
    assert probe.a[2] in range(4)
    assert probe.a[3] == 0xFF


def random(record: int) -> str:
    """Set the random record number of ``file``, at ``place``."""
    return f"ld hl, {record & 0xFFFF}\nld (place), hl\nld a, {record >> 16}\nld (place2), a"


RANDOM_FCB = (
    "file: db 0\ndb 76, 79, 71, 32, 32, 32, 32, 32, 84, 88, 84\n"
    + "db 0\n" * 20
    + "current: db 0\nplace: dw 0\nplace2: db 0\n"
)


def test_function_33_read_random(shelf: Path) -> None:
    """Function 33, Read Random: codes 0, 1 (unwritten), 4 (no extent), 6 (past the end); the sequence stays there."""
    calls: Calls = [
        (15, "file"), random(1), (33, "file"), (26, BUFFER), (20, "file"),
        random(3), (33, "file"), random(500), (33, "file"), random(65536), (33, "file"),
    ]  # fmt: skip
    probe = Probe(calls, RANDOM_FCB, shelf)
    assert probe.peek(0x80, 128) == RECORD_2
    assert probe.peek(BUFFER, 128) == RECORD_2
    assert [probe.a[i] for i in (1, 4, 5, 6)] == [0, 1, 4, 6]


def test_function_34_write_random(shelf: Path) -> None:
    """Function 34, Write Random: one record is replaced, and one far behind the end is reached."""
    calls: Calls = [
        (15, "file"), "ld a, 88\nld (0x80), a", random(1), (34, "file"), random(200), (34, "file"), (35, "file"),
    ]  # fmt: skip
    probe = Probe(calls, RANDOM_FCB + "\n", shelf)
    (changed,) = probe.run.changed_files()
    assert changed.data[:128] == RECORD_1
    assert changed.data[128:129] == b"X"
    assert len(changed.data) == 201 * 128
    assert (shelf / "log.txt").read_bytes().startswith(RECORD_1 + RECORD_2)


def test_function_35_compute_file_size(shelf: Path) -> None:
    """Function 35, Compute File Size: one past the last record, in the random record field."""
    probe = Probe([(35, "file"), "ld hl, (place)\nld (0x3000), hl"], RANDOM_FCB, shelf)
    assert probe.peek(0x3000, 2) == b"\x03\x00"


def test_function_36_set_random_record(shelf: Path) -> None:
    """Function 36, Set Random Record: where the sequence stands."""
    calls: Calls = [
        (15, "file"), (20, "file"), (20, "file"), (36, "file"), "ld hl, (place)\nld (0x3000), hl",
    ]  # fmt: skip
    assert Probe(calls, RANDOM_FCB, shelf).peek(0x3000, 2) == b"\x02\x00"


def test_function_37_reset_drive(shelf: Path) -> None:
    """Function 37, Reset Drive: a drive is writable again."""
    assert Probe([(28, 0), (37, 1), (29, 0)], folder=shelf).hl[2] == 0


def test_function_40_write_random_with_zero_fill(shelf: Path) -> None:
    """Function 40, Write Random with Zero Fill: the rest of a new block reads as zeros."""
    calls: Calls = [
        (15, "file"),
        random(40),
        (40, "file"),
        random(39),
        (26, BUFFER),
        (33, "file"),
    ]
    probe = Probe(calls, RANDOM_FCB, shelf)
    assert [probe.a[1], probe.a[3]] == [0, 0]
    assert probe.peek(BUFFER, 128) == bytes(128)
