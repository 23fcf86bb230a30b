"""A pane of tmux, fed byte for byte: a terminal nobody here wrote.

The pane runs this file as a program. It puts its side of the pane into raw mode, takes chunks from a
socket, writes each to the pane, asks the terminal for its status (ECMA-48 8.3.35, DSR 5) and passes on
that the answer came: everything before the question has been drawn then.
"""

from __future__ import annotations

import os
import shutil
import socket
import struct
import subprocess
import sys
import tempfile
import tty
from pathlib import Path
from types import TracebackType
from typing import Self

ASK = b"\x1b[5n"
ANSWER = b"\x1b[0n"
PATIENCE = 20.0  # seconds; an answer takes milliseconds
CONFIGURATION = """\
set -g status off
set -g history-limit 10
set -g default-terminal tmux-256color
set -g remain-on-exit off
set -g escape-time 0
"""


class TmuxPane:
    """A server of its own with one pane of exactly ``columns`` x ``rows``; it ends with the ``with`` block."""

    def __init__(self, columns: int, rows: int) -> None:
        self.folder = Path(tempfile.mkdtemp(prefix="pane"))
        self._tmux_command = [
            "tmux",
            "-u",
            "-S",
            str(self.folder / "server"),
            "-f",
            str(self.folder / "conf"),
        ]
        (self.folder / "conf").write_text(CONFIGURATION, "ascii")
        listener = socket.socket(socket.AF_UNIX, socket.SOCK_STREAM)
        listener.settimeout(PATIENCE)
        with listener:
            listener.bind(str(self.folder / "feed"))
            listener.listen(1)
            feeder = [sys.executable, __file__, str(self.folder / "feed")]
            self._tmux("new-session", "-d", "-x", str(columns), "-y", str(rows), *feeder)
            self._feed, _ = listener.accept()
        self._feed.settimeout(PATIENCE)
        size = self._tmux("display-message", "-p", "#{pane_width}x#{pane_height}").strip()
        assert size == f"{columns}x{rows}", f"tmux made a pane of {size}"

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._tmux("kill-server")
        self._feed.close()
        shutil.rmtree(self.folder)

    def feed(self, data: bytes) -> None:
        """Write the bytes to the pane and wait until the terminal has drawn them."""
        self._feed.sendall(struct.pack("!I", len(data)) + data)
        assert self._feed.recv(1) == b"k", "the pane's program has ended"

    def rows(self) -> list[str]:
        """What stands on the pane, blanks at the ends of rows left out."""
        return [row.rstrip() for row in self._tmux("capture-pane", "-p").split("\n")[:-1]]

    def cursor(self) -> tuple[int, int]:
        """Row and column of the cursor, from 0."""
        row, column = self._tmux("display-message", "-p", "#{cursor_y} #{cursor_x}").split()
        return int(row), int(column)

    def _tmux(self, *arguments: str) -> str:
        environment = {**os.environ, "LC_ALL": "C.UTF-8", "TMUX": ""}
        done = subprocess.run(
            [*self._tmux_command, *arguments],
            capture_output=True,
            env=environment,
            timeout=PATIENCE,
            check=True,
        )
        return done.stdout.decode()


def _serve(path: str) -> None:
    """Run inside the pane: chunks in, drawn, acknowledged, until the socket closes."""
    tty.setraw(0)
    with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM) as feed:
        feed.connect(path)
        while head := feed.recv(4, socket.MSG_WAITALL):
            (length,) = struct.unpack("!I", head)
            data = feed.recv(length, socket.MSG_WAITALL) if length else b""
            _write(data + ASK)
            answer = b""
            while not answer.endswith(ANSWER):
                answer += os.read(0, 64)
            feed.sendall(b"k")


def _write(data: bytes) -> None:
    while data:
        data = data[os.write(1, data) :]


if __name__ == "__main__":
    _serve(sys.argv[1])
