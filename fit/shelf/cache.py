"""Findings that are kept, by the content they rest on; the only door to platformdirs.

A key is a digest of the entry's bytes, of its disk, of the settings and of this program's own code: whatever
changes any of them makes another key. Each finding is a file of its own, written whole, so that an
interrupted shelf goes on where it was.
"""

from __future__ import annotations

import hashlib
import json
from functools import cache
from pathlib import Path
from typing import Final

from platformdirs import user_cache_path

from fit.errors import OutputError
from fit.output import write_file
from fit.shelf.entry import Entry, EntryKind
from fit.shelf.finding import Finding, from_plain
from fit.shelf.settings import ShelfSettings

PACKAGE: Final = Path(__file__).parent.parent
LARGEST_READ: Final = 8 << 20
"""Bytes of a file that a program can read; beyond it only the size counts."""


def default_folder() -> Path:
    """Where this system keeps what can be made again."""
    return user_cache_path("screenfit", appauthor=False) / "score"


class Cache:
    """Findings on disk; without a folder it keeps none."""

    def __init__(self, folder: Path | None, settings: ShelfSettings) -> None:
        self._folder = folder
        self._base = f"{_code_digest()} {settings.identity()}" if folder is not None else ""
        self.trouble = ""
        """Why nothing can be kept, where that is so."""

    def key(self, entry: Entry) -> str:
        """The key of an entry; empty where nothing is kept or the entry cannot be read."""
        if self._folder is None:
            return ""
        try:
            # A program is known by its name on its disk; a document's name may tell its format.
            parts = [self._base, entry.kind.value, entry.path.name, _file_digest(entry.path)]
            if entry.kind is EntryKind.PROGRAM:
                parts.append(_disk_digest(entry.path.parent))
        except OSError:
            return ""
        return hashlib.sha256("\n".join(parts).encode("utf-8", "surrogateescape")).hexdigest()

    def get(self, key: str, name: str) -> Finding | None:
        """The finding of a key, by the name it has now; None where there is none, or a broken one."""
        if self._folder is None or not key:
            return None
        try:
            values = json.loads(self._path(key).read_bytes())
            return from_plain(values | {"name": name})
        except (OSError, ValueError, TypeError, KeyError):
            return None

    def put(self, key: str, finding: Finding) -> None:
        """Keep a finding; where that cannot be done, say so once and go on."""
        if self._folder is None or not key or self.trouble:
            return
        path = self._path(key)
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            write_file(path, json.dumps(finding.plain()).encode())
        except (OSError, OutputError) as error:
            why = error.what if isinstance(error, OutputError) else error.strerror
            self.trouble = f"results are not kept: {self._folder}: {why}; --cache names another folder, --no-cache keeps none"

    def _path(self, key: str) -> Path:
        assert self._folder is not None
        return self._folder / key[:2] / f"{key}.json"


@cache
def _code_digest() -> str:
    """What this program's own files hold: a changed rule must not meet an old finding."""
    digest = hashlib.sha256()
    for path in sorted(PACKAGE.rglob("*")):
        if path.suffix in (".py", ".toml", ".json"):
            digest.update(str(path.relative_to(PACKAGE)).encode() + b"\0" + path.read_bytes())
    return digest.hexdigest()


def _file_digest(path: Path) -> str:
    with path.open("rb") as file:
        data = file.read(LARGEST_READ)
        return f"{hashlib.sha256(data).hexdigest()} {path.stat().st_size}"


@cache
def _disk_digest(folder: Path) -> str:
    """What a program sees as its disk: the files of its folder and of the user numbers below it."""
    digest = hashlib.sha256()
    for path in _seen(folder):
        digest.update(
            f"{path.relative_to(folder)}\n{_file_digest(path)}\n".encode("utf-8", "surrogateescape")
        )
    return digest.hexdigest()


def _seen(folder: Path) -> list[Path]:
    users = [folder, *(folder / str(user) for user in range(1, 16))]
    return [path for part in users if part.is_dir() for path in sorted(part.iterdir()) if path.is_file()]
