"""A program of the host in a pseudo-terminal: started, read, typed into, and always reaped.

Closing hangs up: the program and its group get SIGHUP, as when a terminal is switched off, and SIGKILL where they
outlive it. Should this process be killed, the kernel hangs up for it.
"""

from __future__ import annotations

import contextlib
import os
import signal
import struct
import time
from collections.abc import Iterator, Mapping, Sequence
from types import TracebackType
from typing import Final, NoReturn, Self

from fit.errors import CaptureError
from fit.units import Size

try:
    import fcntl
    import pty
    import termios
    import tty
except ImportError:  # systems without POSIX terminals
    HAS_PSEUDO_TERMINALS = False
else:
    HAS_PSEUDO_TERMINALS = True

GRACE: Final = 2.0
"""Seconds a program has to end after it was hung up on."""
_CHUNK: Final = 1 << 16
_SIZE_VARIABLES: Final = ("COLUMNS", "LINES")  # they would outvote the size of the terminal


class PseudoTerminal:
    """A running program behind a terminal of the given size. A context: leaving it ends the program."""

    def __init__(
        self, command: Sequence[str], size: Size, terminal: str, environment: Mapping[str, str]
    ) -> None:
        """Start the program. Raises `CaptureError` where it cannot be run, or there are no pseudo-terminals."""
        if not HAS_PSEUDO_TERMINALS:
            raise CaptureError(
                "this system has no pseudo-terminals, so no program can be captured here",
                hint="record the session on another computer, or paste what the program prints",
            )
        self.exit_status: int | None = None
        """The program's exit status once it has ended; 128 + the signal that ended it."""
        kept = {name: value for name, value in environment.items() if name not in _SIZE_VARIABLES}
        self._pid, self.fd = _start(command, size, kept | {"TERM": terminal})
        os.set_blocking(self.fd, False)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    @property
    def echoes(self) -> bool:
        """Whether the terminal itself prints what is typed."""
        try:
            return bool(termios.tcgetattr(self.fd)[3] & termios.ECHO)
        except termios.error:  # the program has left
            return False

    def read(self) -> bytes | None:
        """What the program printed, empty where there is nothing now; None at the end."""
        try:
            return os.read(self.fd, _CHUNK) or None
        except BlockingIOError:
            return b""
        except OSError:  # Linux: EIO where nobody holds the other side any more
            return None

    def write(self, data: bytes) -> int:
        """Type as much as the terminal takes now, and say how much that was."""
        try:
            return os.write(self.fd, data)
        except BlockingIOError:
            return 0
        except OSError:  # nobody holds the other side
            return len(data)

    def has_ended(self) -> bool:
        """Whether the program itself has ended, and reap it then."""
        if self.exit_status is None:
            pid, status = os.waitpid(self._pid, os.WNOHANG)
            if pid:
                self._ended(status)
        return self.exit_status is not None

    def wait(self, seconds: float) -> bool:
        """Wait so long for the program to end by itself, and say whether it has."""
        deadline = time.monotonic() + seconds
        while not self.has_ended() and time.monotonic() < deadline:
            time.sleep(0.01)
        return self.has_ended()

    def close(self) -> None:
        """Hang up, and wait until the program is gone."""
        if self.fd < 0:
            return
        if not self.has_ended():
            self._signal(signal.SIGHUP)
            self._signal(signal.SIGCONT)
        os.close(self.fd)
        self.fd = -1
        if not self.wait(GRACE):
            self._signal(signal.SIGKILL)
            self._ended(os.waitpid(self._pid, 0)[1])

    def _signal(self, number: int) -> None:
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(self._pid, number)

    def _ended(self, status: int) -> None:
        code = os.waitstatus_to_exitcode(status)
        self.exit_status = code if code >= 0 else 128 - code


@contextlib.contextmanager
def raw_mode(keyboard: int) -> Iterator[None]:
    """A person's terminal without line editing, echo and signals, so that every key reaches the program."""
    before = termios.tcgetattr(keyboard)
    try:
        tty.setraw(keyboard)
        yield
    finally:
        termios.tcsetattr(keyboard, termios.TCSADRAIN, before)


def forget_typed(keyboard: int) -> None:
    """Throw away what was typed at a person's terminal and nobody has read yet."""
    termios.tcflush(keyboard, termios.TCIFLUSH)


def _start(command: Sequence[str], size: Size, environment: Mapping[str, str]) -> tuple[int, int]:
    """Fork, and say why the program could not be run: its side of the pipe closes when it runs."""
    reading, writing = os.pipe()
    try:
        pid, fd = pty.fork()
    except OSError as error:
        os.close(reading)
        os.close(writing)
        raise CaptureError(f"no pseudo-terminal is free: {error.strerror}") from None
    if pid == 0:
        _become(command, size, environment, writing)
    os.close(writing)
    with open(reading, "rb") as pipe:  # noqa: PTH123  a descriptor is no path
        trouble = pipe.read()
    if trouble:
        os.close(fd)
        os.waitpid(pid, 0)
        reason = os.strerror(int(trouble))
        raise CaptureError(f"cannot be run: {reason}", source=command[0], hint="check the command behind --")
    return pid, fd


def _become(command: Sequence[str], size: Size, environment: Mapping[str, str], writing: int) -> NoReturn:
    """In the child: take the terminal's size and turn into the program."""
    try:
        fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("HHHH", size.rows, size.columns, 0, 0))
        for number in (signal.SIGPIPE, signal.SIGINT, signal.SIGHUP, signal.SIGTERM):
            signal.signal(number, signal.SIG_DFL)
        os.execvpe(command[0], list(command), dict(environment))  # noqa: S606  the user's own command, as typed
    except OSError as error:
        os.write(writing, str(error.errno).encode())
    finally:
        os._exit(127)
