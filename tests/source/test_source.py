"""`read_session`: the kind is found from the content, and what cannot be read is said in one sentence."""

from __future__ import annotations

import io
import sys
from pathlib import Path

import pytest

from fit.errors import SourceError, UsageError
from fit.source import SourceKind, find_kind, read_session
from fit.units import Size


@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"High water 04:12\r\n", SourceKind.RAW),
        (b"{not json\n", SourceKind.RAW),
        (b'{"tide": 4}\n', SourceKind.RAW),
        (b'{"version": 1}\n', SourceKind.RAW),
        (b"[1, 2]\n", SourceKind.RAW),
        (b"\x00\xff\xfe", SourceKind.RAW),
        (b'{"form": "fit-session", "version": 1}\n', SourceKind.SESSION),
        (b'{"version": 1, "form": "fit-session"}', SourceKind.SESSION),
        (b'{"form": "fit-session", "ver', SourceKind.SESSION),
        (b'{"version": 2, "width": 80, "height": 25}\n', SourceKind.RECORDING),
        (b'{"version":3,"term":{"cols":80,"rows":25}}\n', SourceKind.RECORDING),
        (b'{"version": 2, "wid', SourceKind.RECORDING),
        (b"Script started on 2026-01-02\n", SourceKind.TYPESCRIPT),
        (b'\xef\xbb\xbf{"form": "fit-session", "version": 1}\n', SourceKind.SESSION),
        (b'# the tide\n{"version":3,"term":{"cols":80,"rows":25}}\n', SourceKind.RECORDING),
        (b"# the tide\n# the lamp\n", SourceKind.RAW),
    ],
)
def test_the_kind_is_found(data: bytes, kind: SourceKind) -> None:
    assert find_kind(data) is kind


def test_standard_input(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"dusk\ndawn\n")))
    session = read_session("-")
    assert (session.output, session.bare_lf, session.name) == (b"dusk\ndawn\n", True, "standard input")


def test_the_kind_can_be_given(tmp_path: Path) -> None:
    path = tmp_path / "log"
    path.write_bytes(b"Script started on a quiet night\nand so on")
    assert read_session(path).output == b"and so on"
    assert read_session(path, kind="raw").output == path.read_bytes()


def test_a_timing_file_makes_it_a_typescript(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"High")
    (tmp_path / "tm").write_bytes(b"0.5 4\n")
    assert read_session(tmp_path / "log", timing=tmp_path / "tm").clock.time_of(0) == 0.5


def test_an_empty_timing_file_is_damage(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"High")
    (tmp_path / "tm").write_bytes(b"")
    session = read_session(tmp_path / "log", timing=tmp_path / "tm")
    assert session.remarks[-1] == "The timing file is empty; what follows has no times."


def test_line_feeds_of_a_recording_can_be_overridden(tmp_path: Path) -> None:
    (tmp_path / "r").write_bytes(b'{"version": 2, "width": 40, "height": 8}\n[1, "o", "a\\nb"]\n')
    assert read_session(tmp_path / "r").size == Size(8, 40)
    assert read_session(tmp_path / "r", bare_lf=True).bare_lf


def test_empty(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"")
    with pytest.raises(SourceError) as caught:
        read_session(tmp_path / "log")
    assert str(caught.value) == f"{tmp_path / 'log'}: is empty; record or paste what the program prints"


def test_a_folder(tmp_path: Path) -> None:
    with pytest.raises(SourceError) as caught:
        read_session(tmp_path)
    assert str(caught.value) == f"{tmp_path}: is a folder; name a file in it"


@pytest.mark.parametrize("name", ["nothing", "x" * 5000])
def test_missing(tmp_path: Path, name: str) -> None:
    with pytest.raises(SourceError) as caught:
        read_session(tmp_path / name)
    assert str(caught.value).startswith(f"{tmp_path / name}: ")


def test_a_missing_timing_file(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"High")
    with pytest.raises(SourceError) as caught:
        read_session(tmp_path / "log", timing=tmp_path / "tm")
    assert str(caught.value) == f"{tmp_path / 'tm'}: does not exist; check the name"


def test_no_permission(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)  # the superuser may read everything
    with pytest.raises(SourceError) as caught:
        read_session(tmp_path / "log")
    assert str(caught.value) == f"{tmp_path / 'log'}: cannot be read: Permission denied"


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="this system has no /dev/zero")
def test_a_source_without_an_end(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys.modules["fit.source.load"], "LARGEST", 1_000_000)
    with pytest.raises(SourceError) as caught:
        read_session("/dev/zero")
    assert str(caught.value) == "/dev/zero: has more than 1,000,000 bytes; give a part of it"
    with Path("/dev/zero").open() as endless:
        monkeypatch.setattr(sys, "stdin", endless)
        with pytest.raises(SourceError) as caught:
            read_session("-")
    assert str(caught.value) == "standard input: has more than 1,000,000 bytes; give a part of it"


def test_an_unknown_kind(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"High")
    with pytest.raises(UsageError) as caught:
        read_session(tmp_path / "log", kind="film")
    assert str(caught.value) == (
        "no kind of source is named 'film'; known are raw, session, typescript, recording"
    )
    with pytest.raises(UsageError) as caught:
        read_session(tmp_path / "log", kind="raw", timing="tm")
    assert (
        str(caught.value) == f"{tmp_path / 'log'}: printed text has no timing file; leave the timing file out"
    )


def test_the_mark_of_utf_8_at_the_front_of_a_session_file(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b'\xef\xbb\xbf{"form": "fit-session", "version": 1}\n{"out": "High"}\n')
    assert read_session(tmp_path / "log").output == b"High"


def test_a_comment_before_the_header_of_a_recording(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b'# tide\n{"version":3,"term":{"cols":40,"rows":8}}\n[0.5, "o", "High"]\n')
    assert read_session(tmp_path / "log").size == Size(8, 40)


def test_a_session_file_has_no_timing_file(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b'{"form": "fit-session", "version": 1}\n{"out": "High"}\n')
    (tmp_path / "tm").write_bytes(b"0.5 4\n")
    with pytest.raises(UsageError) as caught:
        read_session(tmp_path / "log", timing=tmp_path / "tm")
    assert str(caught.value) == f"{tmp_path / 'log'}: a session has no timing file; leave the timing file out"


def test_standard_input_is_not_two_things() -> None:
    with pytest.raises(UsageError) as caught:
        read_session("-", timing="-")
    assert str(caught.value) == "standard input cannot be both typescript and timing file; name a file"


def test_only_printed_text_has_cut_lines(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"Script started on 2026-01-02\nHigh\n")
    with pytest.raises(UsageError) as caught:
        read_session(tmp_path / "log", join=True)
    assert str(caught.value) == (
        f"{tmp_path / 'log'}: only printed text has cut lines to join, and this is a typescript"
    )
