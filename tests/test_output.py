"""Results to files: all or nothing, and never over an input."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path

import pytest

from fit.errors import OutputError
from fit.output import write_file


def test_a_new_file(tmp_path: Path) -> None:
    write_file(tmp_path / "pages.txt", b"High water 04:12\n")
    assert (tmp_path / "pages.txt").read_bytes() == b"High water 04:12\n"
    assert list(tmp_path.iterdir()) == [tmp_path / "pages.txt"]


def test_an_old_file_keeps_its_permissions(tmp_path: Path) -> None:
    path = tmp_path / "pages.txt"
    path.write_bytes(b"old")
    path.chmod(0o640)
    write_file(path, b"new")
    assert path.read_bytes() == b"new"
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").write_bytes(b"old")
    (tmp_path / "link").symlink_to("real")
    write_file(tmp_path / "link", b"new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_bytes() == b"new"


def test_links_that_lead_round_in_a_circle(tmp_path: Path) -> None:
    (tmp_path / "one").symlink_to("two")
    (tmp_path / "two").symlink_to("one")
    with pytest.raises(OutputError) as caught:
        write_file(tmp_path / "one", b"new")
    assert (
        str(caught.value)
        == f"{tmp_path / 'one'}: cannot be written: {os.strerror(errno.ELOOP)}; no half file was left"
    )
    assert sorted(path.name for path in tmp_path.iterdir()) == ["one", "two"]
    assert (tmp_path / "one").is_symlink()


def test_a_device_is_written_to_and_stays_one() -> None:
    write_file("/dev/null", b"gone")
    assert Path("/dev/null").is_char_device()


def test_the_input_by_another_name_is_refused(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"log")
    (tmp_path / "same").symlink_to("log")
    with pytest.raises(OutputError) as caught:
        write_file(tmp_path / "same", b"new", inputs=["-", tmp_path / "log"])
    assert str(caught.value) == f"{tmp_path / 'same'}: is also the input; name another file to write to"
    assert (tmp_path / "log").read_bytes() == b"log"


def test_the_name_of_standard_input(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    with pytest.raises(OutputError) as caught:
        write_file("-", b"x")
    assert str(caught.value) == "-: stands for standard input and is no file; name a file to write to"
    assert list(tmp_path.iterdir()) == []


def test_a_folder(tmp_path: Path) -> None:
    with pytest.raises(OutputError) as caught:
        write_file(tmp_path, b"x")
    assert str(caught.value) == f"{tmp_path}: is a folder; name a file in it"


def test_no_such_folder(tmp_path: Path) -> None:
    path = tmp_path / "no" / "pages.txt"
    with pytest.raises(OutputError) as caught:
        write_file(path, b"x")
    assert str(caught.value) == f"{path}: cannot be written: No such file or directory; no half file was left"


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full")
def test_a_full_device() -> None:
    with pytest.raises(OutputError) as caught:
        write_file("/dev/full", b"x")
    assert str(caught.value) == "/dev/full: cannot be written: No space left on device; no half file was left"


@pytest.mark.parametrize("trouble", [OSError(errno.ENOSPC, "No space left on device"), KeyboardInterrupt()])
def test_nothing_half_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, trouble: BaseException
) -> None:
    def fail(_: int) -> None:
        raise trouble

    (tmp_path / "pages.txt").write_bytes(b"old")
    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises((OutputError, KeyboardInterrupt)):
        write_file(tmp_path / "pages.txt", b"new")
    assert [path.name for path in tmp_path.iterdir()] == ["pages.txt"]
    assert (tmp_path / "pages.txt").read_bytes() == b"old"
