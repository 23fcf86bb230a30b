"""What stands on a shelf: found by name in folders, by content where a file is named itself."""

from __future__ import annotations

import gzip
from collections.abc import Iterator
from pathlib import Path

import pytest
from shelf_samples import make_shelf

from fit.errors import SourceError
from fit.shelf.entry import EntryKind, find_entries


def kinds(paths: list[Path], root: Path) -> dict[str, str]:
    return {str(entry.path.relative_to(root)): entry.kind.value for entry in find_entries(paths).entries}


def test_a_folder_of_programs_with_their_data(tmp_path: Path) -> None:
    root = make_shelf(tmp_path / "shelf")
    assert kinds([root], root) == {
        "notes.md": "document",
        "signals.jsonl": "session",
        "tides/LENS.COM": "program",
        "tides/NAUGHT.COM": "program",
        "tides/READ.COM": "program",
        "tides/TIDES.TXT": "document",
    }
    assert [path.name for path in find_entries([root]).passed_over] == ["picture.bin"]


def test_packed_files_are_said_even_beside_programs(tmp_path: Path) -> None:
    root = make_shelf(tmp_path / "shelf")
    (root / "tides" / "old.zip").write_bytes(b"PK\x03\x04\x14" + bytes(25) + b"LOG.COM")
    (root / "more.tgz").write_bytes(gzip.compress(b"The log of the watch."))
    found = find_entries([root])
    assert [path.name for path in found.passed_over] == ["more.tgz", "picture.bin", "old.zip"]
    assert [path.name for path in found.packed] == ["more.tgz", "old.zip"]


def test_a_file_that_is_named_itself_is_taken_whatever_its_name(tmp_path: Path) -> None:
    (tmp_path / "log").write_text("The keeper's log.\n")
    (tmp_path / "raw").write_bytes(b"\x1b[2J\x1b[HThe lamp is lit.")
    (tmp_path / "lamp.com").write_bytes(b"\xc9")
    found = find_entries([tmp_path / name for name in ("log", "raw", "lamp.com")]).entries
    assert [entry.kind for entry in found] == [EntryKind.DOCUMENT, EntryKind.SESSION, EntryKind.PROGRAM]


def test_nothing_is_listed_twice(tmp_path: Path) -> None:
    root = make_shelf(tmp_path / "shelf")
    assert len(find_entries([root, root / "tides", root / "notes.md"]).entries) == 6


def test_a_path_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(SourceError) as error:
        find_entries([tmp_path / "gone"])
    assert str(error.value) == f"{tmp_path}/gone: is neither a file nor a folder; check the name"


def test_links_to_folders_are_left_alone(tmp_path: Path) -> None:
    root = make_shelf(tmp_path / "shelf")
    (root / "loop").symlink_to(root)
    assert len(find_entries([root]).entries) == 6


def test_a_folder_that_cannot_be_read_stops_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = make_shelf(tmp_path / "shelf")
    listed = Path.iterdir

    def closed(path: Path) -> Iterator[Path]:
        if path.name == "tides":
            raise PermissionError(13, "Permission denied")
        return listed(path)

    monkeypatch.setattr(Path, "iterdir", closed)
    found = find_entries([root])
    assert [entry.path.name for entry in found.entries] == ["notes.md", "signals.jsonl"]
    assert root / "tides" in found.passed_over
