"""``fit score`` as its user meets it: tables, data, the cache, and shelves on which something goes wrong."""

from __future__ import annotations

import csv
import hashlib
import io
import json
import os
import pty
import runpy
import select
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import jsonschema
import pytest

from fit.shelf.data import schema
from fit.source.pseudo_terminal import HAS_PSEUDO_TERMINALS

CORPUS = Path(__file__).parents[2] / "corpus"
DISK = CORPUS / "programs" / "disk"
BUILD = runpy.run_path(str(CORPUS / "programs" / "build.py"))
FIT = [sys.executable, "-c", "from fit.cli import main; main()", "score"]


def assemble(source: str) -> bytes:
    image: bytes = BUILD["assemble"]("bdos equ 5\norg 0x100\n" + source, "test")
    return image


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """Three programs, one of which is none, with a text; and a folder for the cache beside them."""
    folder = tmp_path / "shelf"
    folder.mkdir()
    for name in ("READ.COM", "LENS.COM", "TIDES.TXT"):
        shutil.copy(DISK / name, folder / name)
    (folder / "NAUGHT.COM").write_text("This is text, and no program at all.\r\n" * 20)
    return folder


def fit(shelf: Path, *arguments: str) -> tuple[int, str, str]:
    """The exit code, what was printed, what was complained of; results are kept beside the shelf."""
    done = subprocess.run(
        [*FIT, str(shelf), "--cache", str(shelf.parent / "cache"), "--jobs", "1", *arguments],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=180,
        check=False,
    )
    return done.returncode, done.stdout, done.stderr


def kept(shelf: Path) -> int:
    return len(list((shelf.parent / "cache").rglob("*.json")))


def test_a_shelf_is_scored_and_what_fails_stops_nothing(shelf: Path) -> None:
    code, out, err = fit(shelf)
    assert (code, err) == (1, "")
    lines = out.splitlines()
    assert lines[0].split() == ["SCORE", "BEST", "NAME", "VERDICT", "CPU", "MEMORY", "BLOCKS", "SECONDS"]
    assert lines[1].split()[2:4] == ["READ.COM", "tiring"]
    assert any(line.split()[2:6] == ["LENS.COM", "will", "not", "run"] for line in lines)
    assert "NAUGHT.COM: this is text, not a program" in " ".join(out.split())
    assert "scored, 1 could not be." in " ".join(out.split())
    assert max(map(len, lines)) <= 80


def test_a_second_look_comes_from_the_cache_and_says_the_same(shelf: Path) -> None:
    first = fit(shelf)
    assert kept(shelf) == 3
    marks = {path: path.stat().st_mtime_ns for path in (shelf.parent / "cache").rglob("*.json")}
    assert fit(shelf) == first
    assert {path: path.stat().st_mtime_ns for path in (shelf.parent / "cache").rglob("*.json")} == marks


def test_no_cache_keeps_nothing(shelf: Path) -> None:
    done = subprocess.run(
        [*FIT, str(shelf / "LENS.COM"), "--no-cache"],
        env=os.environ | {"XDG_CACHE_HOME": str(shelf.parent / "home")},
        capture_output=True,
        check=False,
    )
    assert done.returncode == 0
    assert not (shelf.parent / "home").exists()


def test_the_cache_lies_where_the_system_keeps_such_things(shelf: Path) -> None:
    subprocess.run(
        [*FIT, str(shelf / "LENS.COM")],
        env=os.environ | {"XDG_CACHE_HOME": str(shelf.parent / "home")},
        capture_output=True,
        check=True,
    )
    assert len(list((shelf.parent / "home" / "screenfit" / "score").rglob("*.json"))) == 1


def test_json_and_csv(shelf: Path) -> None:
    code, out, _ = fit(shelf, "--json")
    values = json.loads(out)
    jsonschema.validate(values, schema())
    assert (code, len(values["entries"])) == (1, 4)
    rows = list(csv.DictReader(io.StringIO(fit(shelf, "--csv", "--sort", "name")[1])))
    assert [Path(row["name"]).name for row in rows] == ["LENS.COM", "READ.COM", "TIDES.TXT", "NAUGHT.COM"]


def test_another_device(shelf: Path) -> None:
    _, out, _ = fit(shelf, "--processor", "z80", "--small", "80x25", "--json")
    entries = {Path(entry["name"]).name: entry for entry in json.loads(out)["entries"]}
    assert entries["LENS.COM"]["verdict"] == "comfortable"
    assert entries["READ.COM"]["score"] > 95


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--sort", "beauty"], ("no column is named 'beauty'; known are score, best, keys, name, verdict, kind, "
                                "processor, memory, blocks, seconds, pages")),
        (["--json", "--csv"], "--json and --csv cannot be printed at once; ask for one of them"),
        (["--no-cache"], "--cache and --no-cache exclude each other; leave one of them out"),
        (["--steps", "0"], "--steps 0 leaves nothing to do; give a number above 0"),
        (["--jobs", "0"], "--jobs 0 leaves nothing to do; give a number above 0"),
        (["--line-speed", "0"], "--line-speed 0 leaves nothing to do; give a number above 0"),
        (["--top", "10"], "--top 10 is no place where memory can end; give it in hexadecimal, from 0180 to FB06"),
        (["--processor", "6809"], "no processor is named '6809'; give 8080 or z80"),
    ],
)  # fmt: skip
def test_what_is_refused(shelf: Path, arguments: list[str], sentence: str) -> None:
    assert fit(shelf, *arguments) == (2, "", f"fit: {sentence}\n")


def test_a_path_that_is_not_there(tmp_path: Path) -> None:
    assert fit(tmp_path / "gone") == (
        2,
        "",
        f"fit: {tmp_path}/gone: is neither a file nor a folder; check the name\n",
    )


def test_a_folder_with_nothing_to_score(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    code, out, err = fit(tmp_path / "empty")
    assert (code, out) == (2, "")
    assert err.startswith(f"fit: {tmp_path}/empty: there is no program, session or document in it; ")


RUNAWAYS = {
    "FOREVER.COM": "again: ld e, 65\nld c, 2\ncall bdos\njp again\n",
    "SILENT.COM": "again: jp again\n",
    "RECURSE.COM": "again: call again\n",
    "ERASE.COM": "ld de, all\nld c, 19\ncall bdos\nld de, all\nld c, 22\ncall bdos\njp 0\n"
    'all: db 0, "???????????"\n' + "db 0\n" * 24,
    "WIPE.COM": "ld hl, 0\nwipe: ld (hl), 0\ninc hl\nld a, h\nor l\njp nz, wipe\n",
}


def test_programs_that_mean_harm_change_nothing_and_each_has_its_row(tmp_path: Path) -> None:
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    (tmp_path / "secret.txt").write_text("the key of the oil store")
    (shelf / "link.txt").symlink_to(tmp_path / "secret.txt")
    for name, source in RUNAWAYS.items():
        (shelf / name).write_bytes(assemble(source))
    (shelf / "EMPTY.COM").write_bytes(b"")
    (shelf / "LARGE.COM").write_bytes(bytes(100_000))
    (shelf / "X86.COM").write_bytes(b"\xeb\x10" + bytes(16) + b"\xb4\x09\xba\x20\x01\xcd\x21")
    before = {path: hashlib.sha256(path.read_bytes()).hexdigest() for path in sorted(shelf.iterdir())}
    code, out, err = fit(shelf, "--json")
    assert (code, err) == (1, "")
    entries = {Path(entry["name"]).name: entry for entry in json.loads(out)["entries"]}
    assert sorted(name for name, entry in entries.items() if entry["failed"]) == [
        "EMPTY.COM",
        "LARGE.COM",
        "X86.COM",
    ]
    assert entries["X86.COM"]["reason"].startswith("this is a program for 16-bit x86 processors")
    assert entries["FOREVER.COM"]["program"]["endings"] == ["limit of output: it printed 400,000 bytes"]
    assert entries["SILENT.COM"]["verdict"] == "not measured"
    assert {path: hashlib.sha256(path.read_bytes()).hexdigest() for path in sorted(shelf.iterdir())} == before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["cache", "secret.txt", "shelf"]


def test_ctrl_c_ends_it_and_leaves_no_process(tmp_path: Path) -> None:
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    for number in range(40):
        (shelf / f"F{number}.COM").write_bytes(assemble(RUNAWAYS["FOREVER.COM"] + f"db {number}\n"))
    process = subprocess.Popen(
        [*FIT, str(shelf), "--cache", str(tmp_path / "cache"), "--jobs", "2"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    deadline = time.monotonic() + 120
    while not list((tmp_path / "cache").rglob("*.json")) and time.monotonic() < deadline:
        time.sleep(0.1)
    os.killpg(process.pid, signal.SIGINT)
    out, err = process.communicate(timeout=60)
    assert (process.returncode, out) == (130, "")
    assert err == "fit: interrupted; nothing was left half written\n"
    assert is_gone(process.pid)
    assert 1 <= len(list((tmp_path / "cache").rglob("*.json"))) < 40


def is_gone(group: int) -> bool:
    """Whether no process of a group is left, after a while for the last one to notice."""
    for _ in range(100):
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return True
        time.sleep(0.1)
    return False


@pytest.mark.skipif(not HAS_PSEUDO_TERMINALS, reason="no pseudo-terminals here")
def test_a_terminal_shows_how_far_it_is(shelf: Path) -> None:
    pid, fd = pty.fork()
    if pid == 0:
        os.execvp(FIT[0], [*FIT, str(shelf), "--cache", str(shelf.parent / "cache"), "--jobs", "1"])
    shown = b""
    deadline = time.monotonic() + 120
    try:
        while time.monotonic() < deadline:
            if select.select([fd], [], [], 0.2)[0]:
                try:
                    shown += os.read(fd, 4096)
                except OSError:
                    break
    finally:
        os.close(fd)
        os.waitpid(pid, 0)
    assert b"\r" + b"." * 20 + b" 0/4 " in shown
    assert b"\r" + b"#" * 20 + b" 4/4 " in shown
