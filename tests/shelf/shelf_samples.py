"""A small shelf: two programs of the corpus with their text, a session, a document, and things that are none."""

from __future__ import annotations

import os
import shutil
import time
from pathlib import Path

from fit.shelf.entry import Entry, EntryKind
from fit.shelf.finding import Finding

CORPUS = Path(__file__).parents[2] / "corpus"
DISK = CORPUS / "programs" / "disk"


def make_shelf(folder: Path) -> Path:
    """Fill a folder, and return it."""
    disk = folder / "tides"
    disk.mkdir(parents=True)
    for name in ("READ.COM", "LENS.COM", "TIDES.TXT"):
        shutil.copy(DISK / name, disk / name)
    (disk / "READ.OVR").write_bytes(b"an overlay")
    (disk / "NAUGHT.COM").write_text("This is text, and no program at all.\r\n" * 20)
    shutil.copy(CORPUS / "signals" / "session.jsonl", folder / "signals.jsonl")
    (folder / "notes.md").write_text("# Notes\n\nThe lamp is lit at sunset, *always*.\n")
    (folder / "picture.bin").write_bytes(bytes(range(256)))
    (folder / ".hidden.txt").write_text("not to be seen")
    return folder


def entry(name: str) -> Entry:
    return Entry(Path(name), EntryKind.PROGRAM)


def lost(task: int, why: str) -> str:
    return f"{task}: {why}"


def double(task: int) -> str:
    """For workers: some tasks die, some never end."""
    if task == 13:
        os._exit(1)
    if task == 99:
        time.sleep(600)
    return str(task * 2)


def scored(name: str, score: float | None, verdict: str = "comfortable") -> Finding:
    return Finding(name, "session", verdict=verdict, score=score, best_score=score)
