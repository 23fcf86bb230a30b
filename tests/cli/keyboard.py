"""A person at a keyboard: a command in a pseudo-terminal of 80x25, its prompts answered in turn."""

from __future__ import annotations

import os
import pty
import select
import time


def at_keyboard(command: list[str], answers: list[tuple[bytes, bytes]]) -> bytes:
    """Run a command, give each answer once its prompt is shown, and return what the terminal showed."""
    pid, fd = pty.fork()
    if pid == 0:
        os.environ |= {"COLUMNS": "80", "LINES": "25", "TERM": "xterm"}
        os.execvp(command[0], command)
    shown, seen = b"", 0
    deadline = time.monotonic() + 60
    try:
        while time.monotonic() < deadline:
            if not select.select([fd], [], [], 0.2)[0]:
                continue
            try:
                data = os.read(fd, 4096)
            except OSError:
                break
            if not data:
                break
            shown += data
            if answers and answers[0][0] in shown[seen:]:
                seen = len(shown)
                os.write(fd, answers.pop(0)[1])
    finally:
        os.close(fd)
        os.waitpid(pid, 0)
    return shown
