"""What was found is kept by content and settings; nothing stale, broken or half written ever comes back."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from shelf_samples import DISK, scored

from fit.shelf import cache as cache_module
from fit.shelf.cache import Cache
from fit.shelf.entry import Entry, EntryKind
from fit.shelf.run import score_shelf
from fit.shelf.settings import ShelfSettings


@pytest.fixture
def lens(tmp_path: Path) -> Entry:
    disk = tmp_path / "disk"
    disk.mkdir()
    shutil.copy(DISK / "LENS.COM", disk / "LENS.COM")
    return Entry(disk / "LENS.COM", EntryKind.PROGRAM)


def key(entry: Entry, folder: Path, settings: ShelfSettings | None = None) -> str:
    cache_module._disk_digest.cache_clear()
    return Cache(folder, settings or ShelfSettings()).key(entry)


def test_the_key_follows_content_settings_and_disk(lens: Entry, tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    keys = [
        key(lens, kept),
        key(lens, kept, ShelfSettings(seed=2)),
        key(lens, kept, ShelfSettings(small="40x10")),
    ]
    (lens.path.parent / "WORDS.DAT").write_bytes(b"words")
    keys.append(key(lens, kept))
    lens.path.write_bytes(lens.path.read_bytes() + b"\x00")
    keys.append(key(lens, kept))
    assert len(set(keys)) == 5
    assert key(lens, kept) == keys[-1]


def test_the_key_does_not_follow_where_the_disk_lies(lens: Entry, tmp_path: Path) -> None:
    before = key(lens, tmp_path / "kept")
    moved = shutil.copytree(lens.path.parent, tmp_path / "elsewhere")
    assert key(replace(lens, path=moved / "LENS.COM"), tmp_path / "kept") == before


def test_a_screen_counts_by_what_its_file_says(lens: Entry, tmp_path: Path) -> None:
    screen = tmp_path / "mine.toml"
    screen.write_text("rows = 8\ncolumns = 40\n")
    before = key(lens, tmp_path / "kept", ShelfSettings(small=str(screen)))
    screen.write_text("rows = 10\ncolumns = 40\n")
    assert key(lens, tmp_path / "kept", ShelfSettings(small=str(screen))) != before


def test_what_was_kept_comes_back_under_its_new_name(tmp_path: Path) -> None:
    cache = Cache(tmp_path, ShelfSettings())
    cache.put("ab12", scored("old", 80.5))
    assert cache.get("ab12", "new") == scored("new", 80.5)
    assert cache.get("ab13", "new") is None


@pytest.mark.parametrize("data", [b"", b"{", b"[]", b'{"name": 1}', b"\xff"])
def test_a_broken_file_is_no_finding(tmp_path: Path, data: bytes) -> None:
    cache = Cache(tmp_path, ShelfSettings())
    cache.put("ab12", scored("old", 80.5))
    (tmp_path / "ab" / "ab12.json").write_bytes(data)
    assert cache.get("ab12", "old") is None


def test_without_a_folder_nothing_is_kept(lens: Entry) -> None:
    cache = Cache(None, ShelfSettings())
    assert cache.key(lens) == ""
    cache.put("", scored("x", 1))
    assert cache.get("", "x") is None


def test_a_folder_that_cannot_be_written_is_told_once(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder")
    cache = Cache(tmp_path / "file", ShelfSettings())
    cache.put("ab12", scored("old", 80.5))
    assert cache.trouble == (
        f"results are not kept: {tmp_path / 'file'}: Not a directory; "
        "--cache names another folder, --no-cache keeps none"
    )


def test_an_interrupted_shelf_goes_on_where_it_was(lens: Entry, tmp_path: Path) -> None:
    text = Entry(DISK / "TIDES.TXT", EntryKind.DOCUMENT)
    cache = Cache(tmp_path / "kept", ShelfSettings())
    seen: list[str] = []

    def interrupted(done: int, name: str) -> None:
        seen.append(name)
        if done == 1:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        score_shelf([text, lens], ShelfSettings(), cache, jobs=1, told=interrupted)
    assert seen == ["", text.name]
    told: list[tuple[int, str]] = []
    findings = score_shelf(
        [text, lens], ShelfSettings(), cache, jobs=1, told=lambda done, name: told.append((done, name))
    )
    assert told == [(1, ""), (2, lens.name)]
    assert [finding.name for finding in findings] == [text.name, lens.name]
    again: list[str] = []
    assert (
        score_shelf([text, lens], ShelfSettings(), cache, told=lambda _, name: again.append(name)) == findings
    )
    assert again == []
