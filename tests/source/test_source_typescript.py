"""Typescripts: made here by the `script` of util-linux itself, and written out as script(1) describes them."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import shutil
import signal
import struct
import subprocess
import termios
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from fit.errors import SourceError
from fit.session import Event, EventKind, Session, Waits
from fit.source import read_session
from fit.source.typescript import read_typescript
from fit.units import Size

HEADER = b'Script started on 2026-01-02 03:04:05+00:00 [COMMAND="./tide.sh" TERM="vt100" TTY="/dev/pts/1" COLUMNS="80" LINES="25"]\n'
FOOTER = b'\nScript done on 2026-01-02 03:05:05+00:00 [COMMAND_EXIT_CODE="3"]\n'
TIDE = HEADER + b"Port? east\r\nHigh water 04:12\r\n" + FOOTER
TIDE_TIMES = b"0.5 6\n1.5 6\n0.25 18\n"
MIXED = HEADER + b"Port? east\reast\r\nHigh\r\n" + FOOTER
MIXED_TIMES = b"""\
H 0.000000 START_TIME 2026-01-02 03:04:05+00:00
H 0.000000 OUTPUT_LOG tide.log
H 0.000000 INPUT_LOG tide.log
O 0.500000 6
I 1.500000 5
O 0.250000 6
S 0.125000 SIGWINCH ROWS=8 COLS=40
O 0.125000 6
S 0.500000 SIGTERM
H 0.000000 DURATION 2.703593
H 0.000000 EXIT_CODE 3
"""


def test_header_and_footer_are_no_output() -> None:
    session = read_typescript(TIDE, "tide")
    assert session.output == b"Port? east\r\nHigh water 04:12\r\n"
    assert (session.size, session.dialect, session.command) == (Size(25, 80), "vt100", "./tide.sh")
    assert (session.ending, session.exit_status, session.remarks) == ("exited", 3, ())


def test_classic_timing() -> None:
    session = read_typescript(TIDE, "tide", "tide.tm", TIDE_TIMES)
    assert list(session.clock.offsets) == [0, 6, 12]
    assert list(session.clock.seconds) == [0.5, 2.0, 2.25]
    assert (session.waits, session.remarks) == (Waits.INFERRED, ())


def test_timing_with_input_in_the_same_file() -> None:
    session = read_typescript(MIXED, "tide", "tide.tm", MIXED_TIMES)
    assert session.output == b"Port? east\r\nHigh\r\n"
    assert session.events == (
        Event(6, EventKind.INPUT, b"east\r", 2.0),
        Event(12, EventKind.RESIZE, time=2.375, size=Size(8, 40)),
        Event(18, EventKind.NOTE, b"SIGTERM", 3.0),
    )
    assert (session.waits, session.remarks) == (Waits.INPUTS, ())


def test_an_input_log_that_is_missing(tmp_path: Path) -> None:
    times = MIXED_TIMES.replace(b"INPUT_LOG tide.log", b"INPUT_LOG /somewhere/keys.log")
    session = read_typescript(
        HEADER + b"Port? east\r\nHigh\r\n" + FOOTER, "tide", tmp_path / "tide.tm", times
    )
    assert session.output == b"Port? east\r\nHigh\r\n"
    assert session.events[0] == Event(6, EventKind.INPUT, b"", 2.0)
    assert session.remarks == (
        (
            "What was typed is not known: the input log keys.log does not stand beside the timing file. "
            "When it was typed is."
        ),
    )


@pytest.mark.parametrize(
    ("data", "times", "remarks"),
    [
        (HEADER + b"Port? ", None, ["The recording was interrupted: the typescript has no end mark."]),
        (
            TIDE,
            b"",
            ["The timing file is empty; what follows has no times."],
        ),
        (
            TIDE,
            b"0.5 6\n1.5 6\n0.2",
            [
                "The recording was interrupted: the timing file ends within a line.",
                "The timing file ends 18 bytes before the typescript; what follows has no times.",
            ],
        ),
        (
            TIDE[: -len(FOOTER) - 4],
            TIDE_TIMES,
            [
                "The recording was interrupted: the typescript has no end mark.",
                "The recording was interrupted: 4 bytes that the timing file names are not there.",
            ],
        ),
    ],
    ids=["no end mark", "empty timing", "timing cut", "typescript cut"],
)
def test_an_interrupted_recording_gives_what_is_there(
    data: bytes, times: bytes | None, remarks: list[str]
) -> None:
    session = read_typescript(data, "tide", None if times is None else "tide.tm", times or b"")
    assert b"Port? east\r\nHigh water 04:12\r\n".startswith(session.output)
    assert list(session.remarks) == remarks


def test_a_typescript_that_was_appended_to() -> None:
    session = read_typescript(TIDE + TIDE, "tide")
    assert session.output == b"Port? east\r\nHigh water 04:12\r\n" * 2
    assert session.remarks == ("2 recordings stand one after the other in the typescript.",)


def test_a_command_of_two_lines_with_brackets() -> None:
    header = HEADER.replace(b"./tide.sh", b'[ "$1" = "east" ]\n./tide.sh')
    session = read_typescript(header + b"High" + FOOTER, "tide")
    assert (session.output, session.command) == (b"High", '[ "$1" = "east" ]\n./tide.sh')


def test_an_old_header_without_fields() -> None:
    session = read_typescript(b"Script started on Fri 02 Jan 2026 03:04:05 AM UTC\n[1] High\r\n", "tide")
    assert (session.output, session.size) == (b"[1] High\r\n", None)


def test_a_serial_line_tells_no_size() -> None:
    header = HEADER.replace(b'"80"', b'"0"').replace(b'"25"', b'"0"')
    assert read_typescript(header + b"x" + FOOTER, "tide").size is None


def test_output_limit() -> None:
    footer = b"\nScript done on 2026-01-02 03:05:05+00:00 [<max output size exceeded>]\n"
    assert read_typescript(HEADER + b"x" + footer, "tide").ending == "limit"


@pytest.mark.parametrize(
    ("data", "times", "sentence"),
    [
        (
            TIDE,
            b"0.5 6\nPort? east\n0.25 18\n",
            "tide.tm, line 2: is no line of a timing file; name the file that `script --log-timing` wrote with this typescript",
        ),
        (
            TIDE,
            TIDE,
            "tide.tm, line 1: is no line of a timing file; name the file that `script --log-timing` wrote with this typescript",
        ),
        (
            TIDE,
            b"\x00\xff",
            "tide.tm, line 1: is no line of a timing file; name the file that `script --log-timing` wrote with this typescript",
        ),
        (
            TIDE,
            b"0.5 9999\n",
            (
                "tide.tm: times 9969 bytes more than the typescript holds; "
                "name the timing file that was written with this typescript"
            ),
        ),
        (
            TIDE,
            b"O 0.5 6\nH 0.0 DURATION 0.5\nH 0.0 EXIT_CODE 0\n",
            (
                "tide.tm: is complete, but times 24 bytes less than the typescript holds; "
                "name the timing file that was written with this typescript"
            ),
        ),
        (
            TIDE.replace(b'"25"', b'"-5"'),
            None,
            "tide, line 1: a screen of '80x-5' cannot be measured; rows and columns go from 1 to 500",
        ),
        (
            TIDE.replace(b'"25"', b'"99999999999"'),
            None,
            "tide, line 1: a screen of '80x99999999999' cannot be measured; rows and columns go from 1 to 500",
        ),
    ],
    ids=[
        "broken line",
        "typescript as timing",
        "bytes",
        "of a longer typescript",
        "of a shorter typescript",
        "negative",
        "huge",
    ],
)
def test_what_cannot_be_read(data: bytes, times: bytes | None, sentence: str) -> None:
    with pytest.raises(SourceError) as caught:
        read_typescript(data, "tide", None if times is None else "tide.tm", times or b"")
    assert str(caught.value) == sentence


# What follows asks the real `script`. It holds the pseudo-terminal that it runs in.

PROGRAM = 'printf "Port? "; read port; echo "High water at $port"; exit 3'
Step = Callable[[int, int], object]


def drive(folder: Path, arguments: list[str], steps: list[Step]) -> None:
    """Run `script` in a pseudo-terminal of 80x25 and take a step each time that it has been quiet."""
    pid, fd = pty.fork()
    if pid == 0:
        fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("HHHH", 25, 80, 0, 0))
        os.chdir(folder)
        os.execvpe("script", ["script", *arguments], {**os.environ, "TERM": "vt100", "SHELL": "/bin/sh"})
    try:
        deadline = time.monotonic() + 20
        while time.monotonic() < deadline:
            if not select.select([fd], [], [], 0.4)[0]:
                if steps:
                    steps.pop(0)(fd, pid)
                continue
            try:
                if not os.read(fd, 4096):
                    break
            except OSError:
                break
    finally:
        os.kill(pid, signal.SIGKILL)
        os.waitpid(pid, 0)
        os.close(fd)


def answer(fd: int, _: int) -> None:
    os.write(fd, b"east\r")


def shrink(fd: int, _: int) -> None:
    fcntl.ioctl(fd, termios.TIOCSWINSZ, struct.pack("HHHH", 8, 40, 0, 0))


def kill(_: int, pid: int) -> None:
    os.kill(pid, signal.SIGKILL)


real_script = [
    pytest.mark.outside,
    pytest.mark.skipif(
        shutil.which("script") is None
        or b"util-linux"
        not in subprocess.run(["script", "--version"], capture_output=True, check=False).stdout,
        reason="this system has no `script` of util-linux",
    ),
]


def recorded(
    folder: Path, arguments: list[str], steps: list[Step], typescript: str, timing: str | None
) -> Session:
    drive(folder, [*arguments, "-c", PROGRAM], steps)
    return read_session(folder / typescript, timing=folder / timing if timing else None)


EXPECTED = b"Port? east\r\nHigh water at east\r\n"


class TestRealScript:
    pytestmark = real_script

    def test_output_alone(self, tmp_path: Path) -> None:
        session = recorded(tmp_path, ["t"], [answer], "t", None)
        assert (session.output, session.exit_status, session.remarks) == (EXPECTED, 3, ())
        assert (session.size, session.dialect, session.command) == (Size(25, 80), "vt100", PROGRAM)

    def test_classic_timing(self, tmp_path: Path) -> None:
        session = recorded(tmp_path, ["--log-timing", "tm", "t"], [answer], "t", "tm")
        assert (session.output, session.remarks) == (EXPECTED, ())
        pause = (session.clock.time_of(6) or 0) - (session.clock.time_of(0) or 0)
        assert pause > 0.3

    def test_input_and_output_in_one_file(self, tmp_path: Path) -> None:
        session = recorded(tmp_path, ["--log-io", "t", "--log-timing", "tm"], [shrink, answer], "t", "tm")
        assert (session.output, session.remarks, session.waits) == (EXPECTED, (), Waits.INPUTS)
        assert [(event.at, event.kind, event.data, event.size) for event in session.events] == [
            (6, EventKind.RESIZE, b"", Size(8, 40)),
            (6, EventKind.INPUT, b"east\r", None),
        ]

    def test_input_in_a_file_of_its_own(self, tmp_path: Path) -> None:
        arguments = ["--log-in", "keys", "--log-out", "t", "--log-timing", "tm"]
        session = recorded(tmp_path, arguments, [answer], "t", "tm")
        assert (session.output, session.remarks) == (EXPECTED, ())
        assert [(event.at, event.data) for event in session.events] == [(6, b"east\r")]

    def test_killed(self, tmp_path: Path) -> None:
        session = recorded(tmp_path, ["--flush", "--log-timing", "tm", "t"], [kill], "t", "tm")
        assert (session.output, session.ending) == (b"Port? ", "interrupted")
        assert session.remarks == ("The recording was interrupted: the typescript has no end mark.",)
