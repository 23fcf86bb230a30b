"""``fit check`` as its user runs it: what is printed, what is written, and the exit code."""

from __future__ import annotations

import json
import os
import pty
import re
import select
import subprocess
import sys
import time
from pathlib import Path

import jsonschema
import pytest
from typer.testing import CliRunner, Result

from fit.cli import build_app, main
from fit.report.check_json import schema

CORPUS = Path(__file__).parents[2] / "corpus"
STORY = str(CORPUS / "story" / "session.jsonl")
CHART = str(CORPUS / "chart" / "session.jsonl")
LOGBOOK = str(CORPUS / "logbook" / "session.jsonl")
TIDES = b"High water 3.20\r\nLow water 9.41\r\n"


def check(*arguments: str, stdin: bytes = b"") -> Result:
    """Run the command without a terminal."""
    return CliRunner().invoke(build_app("check"), ["check", *arguments], input=stdin)


def refusal(*arguments: str, stdin: bytes = b"") -> str:
    """The one sentence of a run that ends with exit code 2 and prints nothing else."""
    result = check(*arguments, stdin=stdin)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("fit: ")
    assert result.stderr.count("\n") == 1
    return result.stderr.removeprefix("fit: ").strip()


def test_the_summary_says_verdict_and_score() -> None:
    result = check(STORY)
    assert result.exit_code == 0
    assert "WORKABLE WITH HOLDS  score " in result.stdout
    assert "\x1b" not in result.stdout
    assert result.stderr == ""


def test_rows_of_one_sign_are_nothing_to_be_read() -> None:
    """They were shown, and the report does not say that they were not."""
    said = " ".join(check("-", stdin=b"." * 300).stdout.split())
    assert (
        "NOT MEASURED Nothing to be read was shown on the big screen; echo and rows of one sign do not count."
        in said
    )


@pytest.mark.parametrize("name", sorted(path.parent.name for path in CORPUS.glob("*/keys")))
def test_json_follows_the_schema(name: str) -> None:
    small = CORPUS / name / "small.jsonl"
    pair = ["--small-session", str(small)] if small.exists() else []
    result = check(str(CORPUS / name / "session.jsonl"), "--json", *pair)
    assert result.exit_code == 0
    jsonschema.Draft202012Validator(schema()).validate(json.loads(result.stdout))


def test_the_same_input_gives_the_same_bytes() -> None:
    assert check(CHART, "--json").stdout_bytes == check(CHART, "--json").stdout_bytes


def test_standard_input_is_read() -> None:
    for arguments in (("-",), ()):
        result = check(*arguments, stdin=TIDES)
        assert "COMFORTABLE  score 100 of 100" in result.stdout
        assert "looks assumed" in result.stdout


@pytest.mark.parametrize(("bar", "code"), [("0", 0), ("100", 0), ("60", 1)])
def test_fail_under_is_a_bar_for_scripts(bar: str, code: int) -> None:
    stdin = TIDES if bar == "100" else None
    assert check(*(["-"] if stdin else [STORY]), "--fail-under", bar, stdin=stdin or b"").exit_code == code


def test_what_could_not_be_measured_is_below_any_bar() -> None:
    result = check("-", "--fail-under", "0", stdin=b"\r\n\r\n")
    assert "NOT MEASURED" in result.stdout
    assert result.exit_code == 1


@pytest.mark.parametrize("bar", ["-1", "100.5", "nan", "inf"])
def test_a_bar_outside_0_to_100_is_refused(bar: str) -> None:
    assert refusal(STORY, "--fail-under", bar) == (
        f"--fail-under {bar} is no score; give a number from 0 to 100"
    )


def test_a_look_shows_both_screens() -> None:
    result = check(CHART, "--look", "2")
    assert result.exit_code == 0
    assert "big 80x25" in result.stdout
    assert "small 40x8" in result.stdout
    assert refusal(CHART, "--look", "99") == "there is no look 99; the session has looks 1 to 9"


def test_lines_are_listed() -> None:
    result = check(CHART, "--lines")
    assert re.search(r"^byte \d+, look \d+, row \d+: LOST, .+ by byte \d+$", result.stdout, re.MULTILINE)


def test_only_one_of_the_outputs_is_printed() -> None:
    assert refusal(STORY, "--json", "--lines") == (
        "--json, --lines and --look cannot be printed at once; ask for one of them"
    )


def test_text_and_page_are_written(tmp_path: Path) -> None:
    text, page = tmp_path / "story.txt", tmp_path / "story.html"
    assert check(STORY, "--reflow", str(text), "--html", str(page)).exit_code == 0
    lines = text.read_text("utf-8").replace("\f", "\n").splitlines()
    assert max(map(len, lines)) <= 40
    assert "workable with holds" in page.read_text("utf-8")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["story.html", "story.txt"]


@pytest.mark.parametrize("option", ["--reflow", "--html"])
def test_an_input_is_never_overwritten(option: str, tmp_path: Path) -> None:
    session = tmp_path / "session.jsonl"
    session.write_bytes(Path(STORY).read_bytes())
    said = refusal(str(session), option, str(session))
    assert said == f"{session}: is also the input; name another file to write to"
    assert session.read_bytes() == Path(STORY).read_bytes()


def test_two_results_do_not_go_to_one_file(tmp_path: Path) -> None:
    one = str(tmp_path / "out")
    assert refusal(STORY, "--reflow", one, "--html", one) == (
        "--reflow and --html name the same file; name two"
    )


def test_unusable_sources_are_said_in_one_sentence(tmp_path: Path) -> None:
    empty = tmp_path / "empty"
    empty.write_bytes(b"")
    assert refusal(str(empty)).startswith(f"{empty}: is empty")
    assert refusal(str(tmp_path)).startswith(f"{tmp_path}: is a folder")
    assert refusal(str(tmp_path / "none")).startswith(f"{tmp_path / 'none'}: does not exist")
    assert refusal("-", stdin=b"").startswith("standard input: is empty")
    assert refusal("") == "the name of the source is empty; name a file, or - for standard input"


@pytest.mark.parametrize(
    ("option", "value", "said"),
    [
        ("--small", "0x0", "rows and columns go from 1 to 500"),
        ("--small", "-4x8", "is no screen size"),
        ("--big", "99999999999x2", "rows and columns go from 1 to 500"),
        ("--big", "table", "no screen is named 'table'"),
        ("--encoding", "morse", "no encoding is named 'morse'; known are utf-8, cp437, latin-1, 7bit"),
        ("--big-terminal", "lampzz", "no terminal is named 'lampzz'"),
        ("--words-per-minute", "0", "nobody reads 0 words a minute"),
        ("--line-speed", "0", "a line of 0 bit/s sends nothing"),
        ("--kind", "song", "no kind of source is named 'song'"),
        ("--prompt", "(", "regular expression"),
    ],
)
def test_unusable_options_are_said_in_one_sentence(option: str, value: str, said: str) -> None:
    assert said in refusal("-", f"{option}={value}", stdin=TIDES * 40)


def test_the_second_session_shows_what_the_program_does_itself() -> None:
    result = check(LOGBOOK, "--small-session", LOGBOOK.replace("session", "small"))
    assert "Told 40x8, the program adapts and pages" in result.stdout


def on_a_terminal(columns: int, *arguments: str, keys: bytes = b"", **environment: str) -> str:
    """What a terminal of so many columns receives, both streams."""
    pid, fd = pty.fork()
    if pid == 0:
        os.environ.update({"TERM": "xterm", "COLUMNS": str(columns), "LINES": "30", **environment})
        os.execv(
            sys.executable, [sys.executable, "-c", "import fit.cli; fit.cli.main()", "check", *arguments]
        )
    received = b""
    deadline = time.monotonic() + 60
    while time.monotonic() < deadline and select.select([fd], [], [], 60)[0]:
        try:
            data = os.read(fd, 65536)
        except OSError:
            break
        if not data:
            break
        received += data
        if keys and b"Ctrl-D" in received:
            os.write(fd, keys)
            keys = b""
    os.close(fd)
    os.waitpid(pid, 0)
    return received.decode()


@pytest.mark.parametrize("columns", [40, 80])
def test_on_a_terminal_the_page_has_its_width_and_colour(columns: int) -> None:
    text = on_a_terminal(columns, STORY, NO_COLOR="")
    assert "\x1b[1m" in text
    lines = re.sub(r"\x1b\[[0-9;]*m", "", text).splitlines()
    assert max(map(len, lines)) <= columns
    assert max(map(len, lines)) > columns - 4


def test_no_color_is_respected() -> None:
    assert "\x1b" not in on_a_terminal(80, STORY, NO_COLOR="1")


def test_a_paste_is_asked_for_and_read() -> None:
    text = on_a_terminal(80, keys=b"High water 3.20\rLow water 9.41\r\x04", NO_COLOR="1")
    assert "Paste what the program printed, then press Enter and Ctrl-D." in text
    assert "COMFORTABLE  score 100 of 100" in text


def test_a_paste_is_asked_for_in_whole_words_on_a_narrow_terminal() -> None:
    text = on_a_terminal(40, keys=b"High water 3.20\r\x04", NO_COLOR="1")
    assert "Paste what the program printed, then\r\npress Enter and Ctrl-D" in text


def test_ctrl_c_while_a_command_is_imported(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupt(_name: str) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(sys, "argv", ["fit", "check"])
    monkeypatch.setattr("fit.cli.importlib.import_module", interrupt)
    with pytest.raises(SystemExit) as caught:
        main()
    assert caught.value.code == 130
    assert capsys.readouterr().err == "fit: interrupted; nothing was left half written\n"


def test_ctrl_c_leaves_nothing_behind(tmp_path: Path) -> None:
    long = tmp_path / "long"
    long.write_bytes(
        b"The keeper counts the tides and trims the lamp again and again and again.\r\n" * 40_000
    )
    # The signal comes while the session is measured, however slow the machine is.
    code = """
import fit.cli, fit.measuring, os, signal, threading
measure = fit.measuring.Measuring.run
def run(self):
    threading.Timer(0.2, os.kill, (os.getpid(), signal.SIGINT)).start()
    measure(self)
fit.measuring.Measuring.run = run
fit.cli.main()
"""
    running = subprocess.Popen(
        [sys.executable, "-c", code, "check", str(long), "--html", str(tmp_path / "page")],
        stderr=subprocess.PIPE,
        stdout=subprocess.PIPE,
    )
    out, error = running.communicate(timeout=60)
    assert (running.returncode, out) == (130, b"")
    assert error == b"fit: interrupted; nothing was left half written\n"
    assert [path.name for path in tmp_path.iterdir()] == ["long"]
