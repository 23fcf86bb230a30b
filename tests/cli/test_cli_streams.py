"""Standard streams that are closed or full: one sentence and an exit code, whatever the command."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
import termios
from pathlib import Path

import pytest

CORPUS = Path(__file__).parents[2] / "corpus"
STORY = str(CORPUS / "story" / "session.jsonl")
TALLY = str(CORPUS / "programs" / "disk" / "TALLY.COM")
TIDES = str(CORPUS / "programs" / "disk" / "TIDES.TXT")
FULL = Path("/dev/full")
PRINTING = [
    ["--help"],
    ["check", "--help"],
    ["check", STORY],
    ["screens"],
    ["terminals"],
    ["reflow", TIDES],
    ["run", TALLY],
    ["score", "--no-cache", TALLY],
]


def fit(arguments: list[str], streams: str) -> tuple[int, str, str]:
    """Run a command with redirections of the shell; its exit code and what came out.

    Results are buffered, as they are for most people: then a full disk shows itself last of all.
    """
    done = subprocess.run(
        [
            *("sh", "-c", f'exec "$@" {streams}', "sh"),
            *(sys.executable, "-c", "from fit.cli import main; main()", *arguments),
        ],
        env={name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    return done.returncode, done.stdout, done.stderr


@pytest.mark.skipif(not FULL.exists(), reason="needs /dev/full")
@pytest.mark.parametrize("arguments", PRINTING, ids=" ".join)
def test_a_full_disk_behind_standard_output(arguments: list[str]) -> None:
    code, _, err = fit(arguments, f"> {FULL}")
    said = "what was printed there is not whole: make room, and print it again"
    assert (code, err) == (2, f"fit: standard output: No space left on device; {said}\n")


@pytest.mark.parametrize("arguments", PRINTING, ids=" ".join)
def test_a_closed_standard_output(arguments: list[str]) -> None:
    code, _, err = fit(arguments, ">&-")
    assert (code, err) == (2, "fit: standard output: is closed; open it, such as with > /dev/null\n")


def test_what_prints_no_results_needs_no_standard_output(tmp_path: Path) -> None:
    code, _, err = fit(["capture", str(tmp_path / "log"), "--", "echo", "oil"], ">&-")
    assert (code, err.splitlines()[0]) == (
        0,
        f"{tmp_path / 'log'}: 5 bytes, 0 inputs, exited, exit status 0",
    )


@pytest.mark.parametrize(
    "arguments", [["check"], ["check", "-"], ["reflow", "-"], ["terminals", "-"]], ids=" ".join
)
def test_a_closed_standard_input_is_empty(arguments: list[str]) -> None:
    code, out, err = fit(arguments, "<&-")
    assert (code, out) == (2, "")
    assert err.startswith("fit: standard input: is empty; ")
    assert err.count("\n") == 1


@pytest.mark.parametrize(
    "streams",
    [
        "2>&-",
        pytest.param(f"2> {FULL}", marks=pytest.mark.skipif(not FULL.exists(), reason="needs /dev/full")),
    ],
)
def test_without_standard_error_the_exit_code_says_it(streams: str) -> None:
    assert fit(["check", "no such file"], streams) == (2, "", "")


def test_a_closed_keyboard_lets_keys_be_found() -> None:
    code, out, err = fit(["run", TALLY], "<&-")
    assert (code, err) == (0, "")
    assert "Played with found keys" in out


@pytest.mark.parametrize("arguments", PRINTING[:4], ids=" ".join)
def test_a_reader_that_leaves_is_no_error(arguments: list[str]) -> None:
    code, _, err = fit(arguments, "| true")
    assert (code, err) == (0, "")


def test_an_error_is_broken_between_words_on_a_narrow_terminal() -> None:
    terminal, shown = pty.openpty()
    termios.tcsetwinsize(shown, (24, 40))
    command = [sys.executable, "-c", "from fit.cli import main; main()", "reflow", "no-such-handbook.txt"]
    with subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=shown) as run:
        assert run.wait(120) == 2
    os.close(shown)
    said = os.read(terminal, 4096).decode()
    os.close(terminal)
    lines = said.split("\r\n")
    assert max(map(len, lines)) <= 40
    assert " ".join(lines).strip() == (
        "fit: no-such-handbook.txt: cannot be read: No such file or directory; name a readable document"
    )
