"""``fit capture`` as its user meets it: from a key script, at a keyboard, and when it is interrupted."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from keyboard import at_keyboard

from fit.session import EventKind
from fit.source import read_session
from fit.source.pseudo_terminal import HAS_PSEUDO_TERMINALS
from fit.units import Size

pytestmark = pytest.mark.skipif(not HAS_PSEUDO_TERMINALS, reason="no pseudo-terminals here")

FIT = [sys.executable, "-c", "from fit.cli import main; main()", "capture"]
ASK = 'printf "Port? "; read port; echo "High water at $port"; exit 3'


def run(folder: Path, *arguments: str) -> tuple[int, str]:
    """The exit code and what was said."""
    done = subprocess.run(
        [*FIT, *arguments],
        cwd=folder,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.stdout == ""
    return done.returncode, done.stderr


def test_from_a_key_script(tmp_path: Path) -> None:
    (tmp_path / "port.keys").write_text("see Port => east<enter>\n")
    said = run(tmp_path, "port.session", "--keys", "port.keys", "--tell", "pocket", "--", "sh", "-c", ASK)
    assert said == (0, "port.session: 32 bytes, 1 input, exited, exit status 3\n")
    session = read_session(tmp_path / "port.session")
    assert session.output == b"Port? east\r\nHigh water at east\r\n"
    assert (session.size, session.exit_status) == (Size(8, 40), 3)


def test_nothing_to_type(tmp_path: Path) -> None:
    assert run(tmp_path, "a.session", "--", "echo", "-n", "lamp") == (
        0,
        "a.session: 4 bytes, 0 inputs, exited, exit status 0\n",
    )


def test_a_command_without_a_file_to_record_to_is_not_taken_for_one(tmp_path: Path) -> None:
    code, said = run(tmp_path, "--", "echo", "lamp")
    assert (code, said) == (2, "fit: the file to record to is missing; write fit capture OUT -- COMMAND\n")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["old", "--", "true"], "old: exists already; name another file, or give --replace"),
        ([".", "--", "true"], ".: is a folder; name a file in it"),
        (["no/new", "--", "true"], "no/new: cannot be written: its folder is missing or closed; name another"),
        (["k", "--keys", "k", "--", "true"], "k: is also the input; name another file to write to"),
        (["new", "--keys", "old", "--", "true"], "old, line 1: is no step; write such as: quiet 0.5 => north<enter>"),
        (["new", "--tell", "0x8", "--", "true"], "a screen of '0x8' cannot be measured; rows and columns go from 1 to 500"),
        (["new", "--term", "", "--", "true"], "--term is empty; name a terminal of the terminal database, such as vt100"),
        (["new", "--time-limit", "0", "--", "true"], "--time-limit 0 leaves nothing to record; give a number above 0"),
        (["new", "--", "no-such-lamp"], "no-such-lamp: cannot be run: No such file or directory; check the command behind --"),
    ],
)  # fmt: skip
def test_what_is_refused(tmp_path: Path, arguments: list[str], sentence: str) -> None:
    (tmp_path / "old").write_text("an old capture")
    (tmp_path / "k").write_text("quiet 1 => x")
    assert run(tmp_path, *arguments) == (2, f"fit: {sentence}\n")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["k", "old"]
    assert (tmp_path / "old").read_text() == "an old capture"


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full")
def test_a_recording_that_finds_no_room_is_not_lost(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    code, err = run(tmp_path, "/dev/full", "--", "echo", "High water at ten")
    [saved] = tmp_path.iterdir()
    assert (code, err) == (
        2,
        f"fit: /dev/full: cannot be written: No space left on device; the recording is in {saved} instead\n",
    )
    assert read_session(saved).output == b"High water at ten\r\n"


def test_replacing(tmp_path: Path) -> None:
    (tmp_path / "old").write_text("an old capture")
    assert run(tmp_path, "old", "--replace", "--", "echo", "lamp")[0] == 0
    assert read_session(tmp_path / "old").output == b"lamp\r\n"


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_interrupted(tmp_path: Path, number: signal.Signals) -> None:
    script = f"echo $$ > {tmp_path}/pid; echo the lamp; sleep 60"
    process = subprocess.Popen(
        [*FIT, "a.session", "--", "sh", "-c", script],
        cwd=tmp_path,
        stdin=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    )
    deadline = time.monotonic() + 20
    while not (tmp_path / "pid").exists() and time.monotonic() < deadline:
        time.sleep(0.05)
    time.sleep(0.3)
    process.send_signal(number)
    _, said = process.communicate(timeout=20)
    assert process.returncode == 130
    assert said.splitlines() == [
        "a.session: 10 bytes, 0 inputs, interrupted",
        f"The capture was interrupted ({number.name}); it holds what came until then.",
    ]
    session = read_session(tmp_path / "a.session")
    assert (session.output, session.ending, len(session.remarks)) == (b"the lamp\r\n", "interrupted", 1)
    with pytest.raises(ProcessLookupError):
        os.kill(int((tmp_path / "pid").read_text()), 0)


def test_at_a_keyboard(tmp_path: Path) -> None:
    shown = at_keyboard(
        [*FIT, str(tmp_path / "a.session"), "--tell", "40x8", "--", "sh", "-c", ASK], [(b"Port? ", b"east\r")]
    )
    assert b"The program is told 40x8. Everything you type is recorded, passwords too." in shown
    assert b"Port? east\r\nHigh water at east\r\n" in shown
    session = read_session(tmp_path / "a.session")
    assert session.output == b"Port? east\r\nHigh water at east\r\n"
    assert b"".join(event.data for event in session.events if event.kind is EventKind.INPUT) == b"east\r"
