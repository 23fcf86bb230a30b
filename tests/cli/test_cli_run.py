"""``fit run`` as its user meets it: scripts, found keys, a keyboard, and programs that mean harm."""

from __future__ import annotations

import hashlib
import json
import re
import runpy
import subprocess
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from keyboard import at_keyboard

from fit.session import EventKind
from fit.shelf.data import schema
from fit.source import read_session
from fit.source.pseudo_terminal import HAS_PSEUDO_TERMINALS

PROGRAMS = Path(__file__).parents[2] / "corpus" / "programs"
DISK = PROGRAMS / "disk"
FIT = [sys.executable, "-c", "from fit.cli import main; main()", "run"]
BUILD = runpy.run_path(str(PROGRAMS / "build.py"))
HEAD = "bdos equ 5\norg 0x100\n"


def fit(*arguments: str | Path, folder: Path | None = None) -> tuple[int, str, str]:
    """The exit code, what was printed, what was complained of."""
    done = subprocess.run(
        [*FIT, *map(str, arguments)],
        cwd=folder,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    return done.returncode, done.stdout, done.stderr


def found(*arguments: str | Path) -> dict[str, Any]:
    """What was found, as JSON."""
    code, out, err = fit(*arguments, "--json")
    assert (code, err) == (0, "")
    values: dict[str, Any] = json.loads(out)
    return values


def assemble(source: str) -> bytes:
    image: bytes = BUILD["assemble"](HEAD + source, "test")
    return image


def test_a_key_script_is_typed_and_recorded(tmp_path: Path) -> None:
    session = tmp_path / "story.jsonl"
    code, out, err = fit(DISK / "STORY.COM", "--keys", PROGRAMS / "STORY.keys", "-o", session)
    assert (code, err) == (0, "")
    assert "Played with keys from" in out
    assert f"Session written to {session}." in " ".join(out.split())
    read = read_session(session)
    assert b"The Skerry Light is lit." in read.output
    assert read.ending == "warm start"
    assert read.waits == "exact"


def test_steps_that_did_not_come_due_are_told(tmp_path: Path) -> None:
    (tmp_path / "night.keys").write_text("quiet 0 => n<enter>\nsee dragon => e<enter>\n")
    # A short name: a long one would be cut at the width of the report.
    out = " ".join(fit(DISK / "STORY.COM", "--keys", "night.keys", folder=tmp_path)[1].split())
    assert "keys from night.keys, 1 of its 2 steps came due;" in out


def test_saved_keys_play_the_same_session_again(tmp_path: Path) -> None:
    keys, one, two = tmp_path / "keys", tmp_path / "one.jsonl", tmp_path / "two.jsonl"
    assert fit(DISK / "DRIFT.COM", "--steps", "8", "-o", one, "--save-keys", keys)[0] == 0
    assert fit(DISK / "DRIFT.COM", "--keys", keys, "-o", two)[0] == 0
    assert read_session(one).output == read_session(two).output
    assert read_session(one).events == read_session(two).events


def test_found_keys_are_the_same_again_and_others_with_another_seed(tmp_path: Path) -> None:
    sessions = []
    for name, seed in (("a", "1"), ("b", "1"), ("c", "2")):
        assert fit(DISK / "STORY.COM", "--steps", "40", "--seed", seed, "-o", tmp_path / name)[0] == 0
        sessions.append((tmp_path / name).read_bytes())
    assert sessions[0] == sessions[1] != sessions[2]


def test_what_is_known_is_told_as_json() -> None:
    values = found(DISK / "LENS.COM")
    assert (values["form"], values["version"]) == ("fit-run", 1)
    facts = {key: values[key] for key in schema()["$defs"]["program"]["properties"]}
    jsonschema.validate(facts, schema()["$defs"]["program"])
    assert values["processor"] == "needs a Z80"
    assert [0x113, 0xED] in values["opcodes"]
    assert found(DISK / "MARGIN.COM")["patches_bios"] is True
    assert found(DISK / "CHART.COM", "--steps", "5")["terminal"] == "adm3a"


def test_the_command_line_reaches_the_program() -> None:
    assert found(DISK / "READ.COM", "none.txt")["missed"] == ["A:NONE.TXT"]


def test_drives_are_folders(tmp_path: Path) -> None:
    (tmp_path / "note.txt").write_bytes(b"The lamp is lit.\r\n")
    values = found(DISK / "READ.COM", "b:note.txt", "--drive", f"b:={tmp_path}")
    assert (values["opened"], values["drives"]) == (["B:NOTE.TXT"], ["B"])


def test_changed_files_are_kept_where_the_user_says_and_only_there(tmp_path: Path) -> None:
    values = found(DISK / "TALLY.COM", "--keep", tmp_path / "kept")
    assert values["kept"] == [str(tmp_path / "kept" / "A" / "TIDES.BAK")]
    assert (tmp_path / "kept" / "A" / "TIDES.BAK").read_bytes().startswith(b"TIDES AT THE SKERRY LIGHT")
    assert not (DISK / "TIDES.BAK").exists()
    assert "--keep DIR writes them" in fit(DISK / "TALLY.COM")[1]


def test_what_to_do_next_is_said(tmp_path: Path) -> None:
    program = DISK / "CHART.COM"
    tells = " ".join(fit(program)[1].split())
    assert (
        f"How it reads on the small screen: fit score {program} tells, or -o FILE and then fit check FILE."
        in tells
    )
    tells = " ".join(fit(program, "-o", "chart.jsonl", folder=tmp_path)[1].split())
    assert "How it reads on the small screen: fit check chart.jsonl tells." in tells


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        (b"", "the program is empty"),
        (bytes(70_000), "the program is 70,000 bytes long; at most 64,006 fit into 64 KiB of memory"),
        (b"The keeper's log, renamed.\r\n" * 9, "this is text, not a program; measure it as a document instead"),
        (b"\xeb\x10" + bytes(16) + b"\xb4\x09\xba\x20\x01\xcd\x21\xb4\x4c\xcd\x21",
         ("this is a program for 16-bit x86 processors (it starts with an x86 jump, and calls software interrupts "
          "21h or 20h once, 0005h not once)")),
    ],
)  # fmt: skip
def test_what_is_no_program_is_told_in_a_sentence(tmp_path: Path, data: bytes, reason: str) -> None:
    path = tmp_path / "LAMP.COM"
    path.write_bytes(data)
    assert fit(path) == (2, "", f"fit: {path}: {reason}\n")


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--keys", "k", "--find-keys"], "--keys and --find-keys exclude each other; leave one of them out"),
        (["--keys", "none"], "none: does not exist; check the name"),
        (["--keys", "k", "-o", "k"], "k: is also the input; name another file to write to"),
        (["-o", "old"], "old: exists already; name another file, or give --replace"),
        (["--keep", "kept"], "kept/A/LOG.TXT: was kept there before; name another folder, or give --replace"),
        (["--keep", "old"], "old: is no folder; name another folder"),
        (["-o", "n" * 300], f"{'n' * 300}: File name too long; check the name"),
        (["-o", "P.COM", "--replace"], "P.COM: is also the input; name another file to write to"),
        (["-o", "a", "--save-keys", "a"], "--output and --save-keys name the same file; name two"),
        (["--drive", "B"], "--drive B names no folder; write such as --drive B=texts"),
        (["--drive", "Z=."], "'Z' is no drive; drives are the letters A to P"),
        (["--drive", "B=none"], "drive B is to be none, which is no folder; name a folder"),
        (["--drive", "B=.", "--drive", "B:=."], "drive B was given twice; leave one of them out"),
        (["--top", "high"], "--top high is no place where memory can end; give it in hexadecimal, from 0180 to FB06"),
        (["--top", "fff0"], "memory cannot end at FFF0h; choose a top from 0180h to FB06h"),
        (["--processor", "6809"], "no processor is named '6809'; give 8080 or z80"),
        (["--steps", "0"], "--steps 0 leaves nothing to do; give a number above 0"),
        (["--seconds", "-1"], "--seconds -1 leaves nothing to do; give a number above 0"),
    ],
)  # fmt: skip
def test_what_is_refused(tmp_path: Path, arguments: list[str], sentence: str) -> None:
    (tmp_path / "P.COM").write_bytes(b"\xc9")
    (tmp_path / "k").write_text("quiet 0 => x")
    (tmp_path / "old").write_text("an old session")
    (tmp_path / "kept" / "A").mkdir(parents=True)
    (tmp_path / "kept" / "A" / "LOG.TXT").write_text("an old log")
    assert fit("P.COM", *arguments, folder=tmp_path) == (2, "", f"fit: {sentence}\n")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["P.COM", "k", "kept", "old"]
    assert (tmp_path / "old").read_text() == "an old session"
    assert (tmp_path / "kept" / "A" / "LOG.TXT").read_text() == "an old log"


# Programs that mean harm


def fingerprint(folder: Path) -> dict[str, str]:
    """Every file below a folder: what it holds, its mode and its time."""
    return {
        str(path): f"{hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else ''} "
        f"{path.lstat().st_mode} {path.lstat().st_mtime_ns}"
        for path in sorted(folder.rglob("*"))
    }


@pytest.fixture
def house(tmp_path: Path) -> Path:
    """A home with a secret, and in it a shelf with links that lead out."""
    (tmp_path / "secret.txt").write_text("the key of the oil store")
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    (shelf / "log.txt").write_bytes(b"wind NW 6\r\n")
    (shelf / "out.txt").symlink_to(tmp_path / "secret.txt")
    (shelf / "up").symlink_to(tmp_path)
    return tmp_path


def block(label: str, name: str, kind: str) -> str:
    """A control block in assembly."""
    return f'{label}: db 0, "{name:<8}{kind:<3}"\n' + "db 0\n" * 24


def calls(*pairs: tuple[int, str]) -> str:
    return "".join(f"ld de, {parameter}\nld c, {function}\ncall bdos\n" for function, parameter in pairs)


HOSTILE = (
    calls((19, "all"), (22, "path"), (21, "path"), (16, "path"), (22, "link"), (21, "link"), (16, "link"))
    + calls((22, "root"), (21, "root"), (16, "root"), (22, "log"), (21, "log"), (16, "log"), (23, "move"))
    + "ld hl, 0\nwipe: ld (hl), 0xff\ninc hl\nld a, l\ncp 0xf0\njp nz, wipe\njp 0\n"
    + block("all", "????????", "???")
    + block("path", "../SECRE", "TXT")
    + block("root", "/ETC/PAS", "WD ")
    + block("link", "OUT", "TXT")
    + block("log", "LOG", "TXT")
    + block("move", "LOG", "TXT")
)


def test_a_hostile_program_changes_nothing_outside_its_sandbox(house: Path) -> None:
    (house / "shelf" / "EVIL.COM").write_bytes(assemble(HOSTILE))
    before = fingerprint(house)
    values = found(house / "shelf" / "EVIL.COM")
    assert fingerprint(house) == before
    assert "A:LOG.TXT" in values["written"]
    assert {"A:../SECRE.TXT", "A:/ETC/PAS.WD"} <= set(values["refused"])


def test_its_files_are_kept_inside_the_folder_that_was_named(house: Path) -> None:
    (house / "shelf" / "EVIL.COM").write_bytes(assemble(HOSTILE))
    before = fingerprint(house)
    kept = found(house / "shelf" / "EVIL.COM", "--keep", house / "kept")["kept"]
    assert kept
    after = fingerprint(house)
    assert {name: after[name] for name in before} == before
    new = [Path(name) for name in after if name not in before and Path(name).is_file()]
    assert sorted(map(str, new)) == sorted(kept)
    assert all(path.is_relative_to(house / "kept" / "A") for path in new)


WIPES = calls((19, "all")) + "ret\n" + block("all", "????????", "???")
MOVES = (
    calls((19, "old"), (23, "log"))
    + "ret\n"
    + block("old", "NOTES", "TXT")
    + "log: db 0\n"
    + "".join(
        f"db {', '.join(str(ord(char)) for char in name)}\ndb 0, 0, 0, 0, 0\n"
        for name in ("STORES  DAT", "OLD     DAT")
    )
    + "db 0\n" * 20
)


@pytest.fixture
def stores(tmp_path: Path) -> Path:
    """A folder with two files of the keepers."""
    folder = tmp_path / "stores"
    folder.mkdir()
    (folder / "NOTES.TXT").write_text("Trim the wicks.\n")
    (folder / "STORES.DAT").write_text("oil 12\n")
    return folder


def test_what_was_deleted_is_not_told_as_written(stores: Path) -> None:
    (stores / "WIPE.COM").write_bytes(assemble(WIPES))
    out = " ".join(fit(stores / "WIPE.COM")[1].split())
    assert "Deleted, in the sandbox alone, A:NOTES.TXT, A:STORES.DAT, A:WIPE.COM." in out
    assert "In your folders nothing was deleted, emptied or renamed." in out
    assert "rote, in the sandbox" not in out
    assert "--keep DIR" not in out
    kept = " ".join(fit(stores / "WIPE.COM", "--keep", stores.parent / "kept")[1].split())
    assert "Nothing was kept: at its end there was no file that it had made, changed or renamed." in kept
    assert sorted(path.name for path in stores.iterdir()) == ["NOTES.TXT", "STORES.DAT", "WIPE.COM"]


def test_deletes_and_renames_are_told_apart(stores: Path) -> None:
    (stores / "MOVE.COM").write_bytes(assemble(MOVES))
    values = found(stores / "MOVE.COM", "--keep", stores.parent / "kept")
    assert (values["deleted"], values["renamed"]) == (["A:NOTES.TXT"], [["A:STORES.DAT", "A:OLD.DAT"]])
    assert (values["written"], values["missed"]) == ([], [])
    assert [Path(name).name for name in values["kept"]] == ["OLD.DAT"]


def test_the_folder_of_a_drive_is_no_place_to_keep_files(house: Path) -> None:
    (house / "shelf" / "EVIL.COM").write_bytes(assemble(HOSTILE))
    before = fingerprint(house)
    code, _, err = fit(house / "shelf" / "EVIL.COM", "--keep", house / "shelf")
    assert (code, err.endswith("lies in the folder of a drive; name another folder\n")) == (2, True)
    assert {name: mark for name, mark in fingerprint(house).items() if Path(name).is_file()} == {
        name: mark for name, mark in before.items() if Path(name).is_file()
    }


RUNAWAYS = {
    "prints for ever": (
        "again: ld e, 65\nld c, 2\ncall bdos\njp again\n",
        "limit of output: it printed 400,000 bytes",
    ),
    "loops in silence": (
        "again: jp again\n",
        "limit of silent time: it did nothing for 200,000,000 clock ticks",
    ),
    "halts": ("ld a, 1\nhalt\n", "halted: it executed HALT at 0102h"),
    "overwrites page zero": (
        "ld hl, 0\nwipe: ld (hl), 0\ninc hl\nld a, h\nor a\njp z, wipe\nld c, 2\ncall bdos\n",
        "wild jump: it ran into an empty restart vector at 0008h",
    ),
}


@pytest.mark.parametrize("what", RUNAWAYS)
def test_a_runaway_ends_with_its_reason(tmp_path: Path, what: str) -> None:
    source, ending = RUNAWAYS[what]
    (tmp_path / "RUN.COM").write_bytes(assemble(source))
    assert found(tmp_path / "RUN.COM")["endings"] == [ending]


@pytest.mark.parametrize(
    ("option", "ending", "most"),
    [
        ("--tick-limit", "limit of clock ticks: it ran for 1 clock tick", 500),
        ("--output-limit", "limit of output: it printed 1 byte", 100),
        ("--wait-limit", "limit of waits: it waited 1 time", 500),
    ],
)
def test_a_limit_ends_what_is_over_in_a_moment(option: str, ending: str, most: int) -> None:
    assert found(DISK / "CHART.COM")["printed"] > 500
    values = found(DISK / "CHART.COM", option, "1")
    assert values["endings"] == [ending]
    assert values["printed"] < most


def test_a_hundred_megabytes_find_the_disk_full(tmp_path: Path) -> None:
    source = (
        calls((22, "new"))
        + "again: ld de, new\nld c, 21\ncall bdos\nor a\njp z, again\nld de, full\nld c, 9\ncall bdos\njp 0\n"
        + 'full: db "The disk is full.$"\n'
        + block("new", "HUGE", "DAT")
    )
    (tmp_path / "HUGE.COM").write_bytes(assemble(source))
    values = found(tmp_path / "HUGE.COM")
    assert values["printed"] == len("The disk is full.")
    assert [path.name for path in tmp_path.iterdir()] == ["HUGE.COM"]


@pytest.mark.skipif(not HAS_PSEUDO_TERMINALS, reason="no pseudo-terminals here")
def test_at_a_keyboard(tmp_path: Path) -> None:
    session, keys = tmp_path / "tide.jsonl", tmp_path / "tide.keys"
    command = [
        *FIT,
        str(DISK / "TIDEWTCH.COM"),
        "--terminal",
        "vt52",
        "-o",
        str(session),
        "--save-keys",
        str(keys),
    ]
    shown = at_keyboard(command, [(b"Press Enter", b"\r"), (b"Q leave", b"s"), (b"groans", b"q")])
    assert b"The program runs in a sandbox" in shown
    # The codes of the VT52 never reach the terminal; ECMA-48 does.
    assert b"\x1bY" not in shown
    assert b"\x1b[1;1HTide  8 feet, rising" in shown
    read = read_session(session)
    assert (read.dialect, read.ending) == ("vt52", "warm start")
    assert [event.data for event in read.events if event.kind is EventKind.INPUT] == [b"s", b"q"]
    assert keys.read_text() == "quiet 0 => s\nquiet 0 => q\n"
    assert re.search(rb"processor +Safe for an 8080", shown)


@pytest.mark.skipif(not HAS_PSEUDO_TERMINALS, reason="no pseudo-terminals here")
def test_what_a_person_played_is_written_before_it_is_judged(tmp_path: Path) -> None:
    """Who interrupts the judging, which takes seconds, still has the session."""
    line = "again: ld de, line\nld c, 9\ncall bdos\nld c, 11\ncall bdos\nor a\njp z, again\nld c, 1\ncall bdos\nret\n"
    line = (
        line.removesuffix("ret\n")
        + "ld b, 64\nwait: dec hl\nld a, h\nor l\njp nz, wait\ndec b\njp nz, wait\nret\n"
    )
    (tmp_path / "FOG.COM").write_bytes(assemble(line + 'line: db "Fog. $"\n'))
    session, keys = tmp_path / "fog.jsonl", tmp_path / "fog.keys"
    command = [*FIT, str(tmp_path / "FOG.COM"), "-o", str(session), "--save-keys", str(keys)]
    answers = [(b"Press Enter", b"\r"), (b"Fog. Fog.", b"x"), (b"being judged", b"\x03")]
    shown = b" ".join(at_keyboard(command, answers).split())
    assert b"It is tried for a moment" in shown[: shown.index(b"Press Enter")]
    assert b"interrupted" in shown
    assert read_session(session).output.endswith(b"Fog. x")
    assert keys.read_text().startswith("printed ")


@pytest.mark.skipif(not HAS_PSEUDO_TERMINALS, reason="no pseudo-terminals here")
def test_a_person_need_not_know_the_terminal_of_a_program() -> None:
    command = [*FIT, str(DISK / "CHART.COM")]
    shown = at_keyboard(command, [(b"Press Enter", b"\r"), (b"H J K L", b"\x1c")])
    told = b" ".join(shown.split())
    assert b"as on the terminal adm3a, whose codes it printed when it was tried for a moment" in told
    assert b"\x1b=" not in shown
