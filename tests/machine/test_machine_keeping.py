"""The way out of the sandbox, and what a program seems to offer."""

from __future__ import annotations

from pathlib import Path

import pytest
from machine_assembler import Calls, Probe, assemble, call, fcb_data, program, text

from fit.errors import OutputError
from fit.machine.choices import terminal_choice
from fit.machine.drives import ChangedFile
from fit.machine.host import Host
from fit.machine.keeping import check_keeping, keep_changed
from fit.machine.run import report
from fit.machine.setting import Setting
from fit.machine.waits import WaitKind


def changed(tmp_path: Path) -> tuple[ChangedFile, ...]:
    """A file for user 0 and one for user 3."""
    calls: Calls = [(22, "new"), (21, "new"), (32, 3), (22, "new")]
    return Probe(calls, fcb_data("new", "NEW.LOG"), tmp_path).run.changed_files()


def test_changed_files_are_kept_by_drive_and_user(tmp_path: Path) -> None:
    files = changed(tmp_path)
    kept = keep_changed(files, tmp_path / "keep")
    assert [str(path.relative_to(tmp_path)) for path in kept] == ["keep/A/NEW.LOG", "keep/A/3/NEW.LOG"]
    assert [len(path.read_bytes()) for path in kept] == [128, 0]


def test_what_was_kept_before_is_replaced_only_where_somebody_said_so(tmp_path: Path) -> None:
    files, keep = changed(tmp_path), tmp_path / "keep"
    (keep / "A" / "3").mkdir(parents=True)
    (keep / "A" / "3" / "NEW.LOG").write_bytes(b"wind")
    with pytest.raises(OutputError) as error:
        keep_changed(files, keep)
    assert str(error.value) == (
        f"{keep / 'A' / '3' / 'NEW.LOG'}: was kept there before; name another folder, or give --replace"
    )
    assert not (keep / "A" / "NEW.LOG").exists()  # all files, or none
    kept = keep_changed(files, keep, replace=True)
    assert [len(path.read_bytes()) for path in kept] == [128, 0]


@pytest.mark.parametrize("name", ["A/OLD.LOG", "P/OLD.LOG", "A/15/OLD.LOG"])
def test_a_folder_with_kept_files_is_refused_before_anything_runs(tmp_path: Path, name: str) -> None:
    """What the program will write is not known: refused only afterwards, it would be lost."""
    keep = tmp_path / "keep"
    (keep / name).parent.mkdir(parents=True)
    (keep / "A").mkdir(exist_ok=True)
    (keep / "A" / ".index").write_bytes(b"of the host")
    (keep / "README").write_bytes(b"of no drive")
    check_keeping(keep, [])
    (keep / name).write_bytes(b"wind")
    with pytest.raises(OutputError) as error:
        check_keeping(keep, [])
    assert str(error.value) == f"{keep / name}: was kept there before; name another folder, or give --replace"
    check_keeping(keep, [], replace=True)


def test_what_is_no_folder_is_refused_before_anything_runs(tmp_path: Path) -> None:
    (tmp_path / "loop").symlink_to("loop")
    (tmp_path / "file").write_bytes(b"")
    for keep, told in (
        (tmp_path / "loop", tmp_path / "loop"),
        (tmp_path / "file" / "kept", tmp_path / "file"),
    ):
        with pytest.raises(OutputError) as error:
            check_keeping(keep, [])
        assert str(error.value) == f"{told}: is no folder; name another folder"


def test_a_link_in_the_folder_leads_nowhere(tmp_path: Path) -> None:
    (tmp_path / "keep").mkdir()
    (tmp_path / "keep" / "A").symlink_to(tmp_path)
    with pytest.raises(OutputError) as error:
        keep_changed(changed(tmp_path), tmp_path / "keep")
    assert "a link leads out of the folder" in str(error.value)
    assert not (tmp_path / "NEW.LOG").exists()


def test_the_folder_of_a_drive_is_no_place_to_keep(tmp_path: Path) -> None:
    with pytest.raises(OutputError) as error:
        keep_changed(changed(tmp_path), tmp_path, [tmp_path / "A"])
    assert str(error.value).endswith("lies in the folder of a drive; name another folder")


def test_a_folder_below_that_of_a_drive_is_none_of_its_folders(tmp_path: Path) -> None:
    """The drive does not show it, so nothing there is an input."""
    keep = tmp_path / "keep"
    check_keeping(keep, [tmp_path])
    kept = keep_changed(changed(tmp_path), keep, [tmp_path])
    assert [path.is_file() for path in kept] == [True, True]


@pytest.mark.parametrize("drive", ["A", "P"])
def test_a_place_that_a_drive_shows_is_refused_before_anything_runs(tmp_path: Path, drive: str) -> None:
    with pytest.raises(OutputError) as error:
        check_keeping(tmp_path, [tmp_path / drive])
    assert str(error.value).endswith("lies in the folder of a drive; name another folder")


def test_a_link_to_a_file_of_a_drive_is_not_followed(tmp_path: Path) -> None:
    """The folder holds the drive as well, so that the link does not lead out of it."""
    disk = tmp_path / "disk"
    disk.mkdir()
    (disk / "NEW.LOG").write_bytes(b"wind")
    files = changed(disk)
    (tmp_path / "A").mkdir()
    (tmp_path / "A" / "NEW.LOG").symlink_to(disk / "NEW.LOG")
    with pytest.raises(OutputError):
        keep_changed(files, tmp_path, [disk])
    assert (disk / "NEW.LOG").read_bytes() == b"wind"


def test_a_folder_that_cannot_be_made(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(OutputError):
        keep_changed(changed(tmp_path), tmp_path / "file")


def test_words_of_a_terminal_are_evidence() -> None:
    image = assemble(
        "ret\n" + text("menu", "\r\nSelect your terminal:\r\n1) VT52\r\n2) a chart of tides\r\n")
    )
    assert terminal_choice(image, [b"Screen width (40-80)? "]) == (
        "Screen width (40-80)?",
        "Select your terminal:",
    )


def test_words_are_quoted_without_the_codes_and_the_texts_around_them() -> None:
    image = assemble("ret\n" + text("second", "\x1b[11;11HSecond") + text("menu", "Which terminal? 1 narrow"))
    assert terminal_choice(image, [b"\x1b[2;1HWhich terminal? 1 narrow\x1b[K"]) == (
        "Which terminal? 1 narrow",
    )


def test_other_words_are_none() -> None:
    assert terminal_choice(b"The lamp is determined to go out. The rock stands.") == ()


# A run by hand: what an interactive command does.


def test_a_run_can_be_taken_in_slices() -> None:
    host = Host(program("again: ld a, (0x3000)\ninc a\nld (0x3000), a\njp again\n"), Setting())
    assert host.advance(3) is None
    assert (host.ending, host.cpu.frames) == (None, 3)
    host.advance(2)
    assert host.cpu.frames == 5


def test_keys_may_be_typed_while_the_program_runs() -> None:
    delay = "ld b, 20\nouter: ld hl, 0\ninner: dec hl\nld a, h\nor l\njp nz, inner\ndec b\njp nz, outer\n"
    host = Host(program(delay + call(1) + call(2, 33) + "ret\n"), Setting())
    host.advance(1)
    host.type_keys(b"k")
    assert host.advance() is None
    assert bytes(host.console.output) == b"k!"
    assert host.log.kinds == []


def test_a_program_that_repaints_goes_on_without_a_key() -> None:
    source = "again: " + call(9, "frame") + call(6, 0xFF) + "jp again\n" + text("frame", "\x1b=  Tide")
    host = Host(program(source), Setting())
    assert host.advance() is WaitKind.REALTIME
    printed = len(host.console.output)
    assert host.advance() is WaitKind.REALTIME
    assert len(host.console.output) > printed


def test_a_copied_machine_goes_on_as_the_first(tmp_path: Path) -> None:
    """Memory, screen, files, keys and the log come back."""
    (tmp_path / "log.txt").write_bytes(b"wind")
    source = (
        call(15, "log")
        + call(21, "log")
        + call(9, "prompt")
        + call(1)
        + call(20, "log")
        + call(2, 33)
        + call(10, "line")
    )
    source += call(16, "log") + "ret\n" + text("prompt", "Key? ") + fcb_data("log") + "line: db 20\n"
    host = Host(program(source, tmp_path), Setting())
    host.advance()
    copy = host.freeze()
    sessions = []
    for _ in range(3):
        host.thaw(copy)
        for keys in (b"k", b"lam", b"p\r"):
            host.type_keys(keys)
            host.advance()
        sessions.append((report(host).session, report(host).ticks, report(host).changed[0].data))
    assert sessions[0] == sessions[1] == sessions[2]
    assert sessions[0][0].output == b"Key? k!lamp\r"
