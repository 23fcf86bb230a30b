"""BDOS functions 1 to 11: console, printer, reader and punch.

Each method is one function; it takes the parameter in DE and returns the value for HL.

Source: the operating system's manual, BDOS functions. The tests cite it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from fit.machine.console import CTRL_S, Console
from fit.machine.cpu import MEMORY_SIZE
from fit.machine.ending import EndingKind
from fit.machine.layout import IO_BYTE
from fit.machine.line_editor import BS, CR, CTRL_C, LF, TAB, LineEditor, Outcome
from fit.machine.memory_access import Memory
from fit.machine.signals import Ended, Waiting
from fit.machine.waits import WaitKind

END_OF_TEXT: Final = 0x1A
READY: Final = 1
"""Function 11's answer: version 2.2 gives 01h where the manual says FFh; programs test for zero or bit 0."""
DIRECT_INPUT: Final = 0xFF
DIRECT_STATUS: Final = 0xFE
DIRECT_WAIT: Final = 0xFD

_DOLLAR: Final = ord("$")
_CHUNK: Final = 256
_ECHOED: Final = frozenset((BS, TAB, LF, CR))


class ConsoleFunctions:
    """The console functions.

    ``poll(function)`` tells whether a key waits, and judges the question.
    """

    def __init__(
        self,
        console: Console,
        memory: Memory,
        poll: Callable[[int], bool],
    ) -> None:
        self._console = console
        self._memory = memory
        self._bytes = memory.bytes
        self._poll = poll
        self.table: dict[int, Callable[[int], int]] = {
            1: self.read,
            2: self.write,
            3: self.read_tape,
            4: self.punch,
            5: self.print,
            6: self.direct,
            7: self.io_byte,
            8: self.set_io_byte,
            9: self.write_text,
            10: self.read_line,
            11: self.status,
        }

    def read(self, _: int) -> int:
        """1: wait for a key and echo it, unless it is a control character without a picture."""
        key = self.next_key(WaitKind.KEY)
        if is_echoed(key):
            self._console.put(key)
        return key

    def next_key(self, kind: WaitKind) -> int:
        """Take a key; raises Waiting where none was typed."""
        if not self._console.keys:
            raise Waiting(kind)
        return self._console.keys.popleft()

    def write(self, parameter: int) -> int:
        """2: print a character."""
        keys = self._console.keys
        if keys and keys[0] == CTRL_S:
            self.hold()
        self._console.put(parameter & 0xFF)
        return 0

    def hold(self) -> None:
        """^S stops the output until the next key; ^C then means a warm start."""
        keys = self._console.keys
        if len(keys) < 2:
            raise Waiting(WaitKind.PAUSED)
        keys.popleft()
        if keys.popleft() == CTRL_C:
            raise Ended(EndingKind.WARM_START, "^C was typed while the output was stopped")

    def read_tape(self, _: int) -> int:
        """3: nothing is in the reader."""
        self._console.reads += 1
        return END_OF_TEXT

    def punch(self, parameter: int) -> int:
        """4: one byte to the punch."""
        self._console.punched.append(parameter & 0xFF)
        return 0

    def print(self, parameter: int) -> int:
        """5: one byte to the printer."""
        self._console.printer.append(parameter & 0xFF)
        return 0

    def direct(self, parameter: int) -> int:
        """6: a key without echo or nothing (FFh), whether one waits (FEh), a key at any rate (FDh), or print."""
        code = parameter & 0xFF
        if code == DIRECT_INPUT:
            return self._console.keys.popleft() if self._poll(6) else 0
        if code == DIRECT_STATUS:
            return 0xFF if self._poll(6) else 0
        if code == DIRECT_WAIT:
            return self.next_key(WaitKind.KEY)
        self._console.output.append(code)
        return 0

    def io_byte(self, _: int) -> int:
        """7: which devices are assigned."""
        return self._memory.read(IO_BYTE, 1)[0]

    def set_io_byte(self, parameter: int) -> int:
        """8: assign devices; here nothing changes by it."""
        self._memory.write(IO_BYTE, bytes((parameter & 0xFF,)))
        return 0

    def write_text(self, parameter: int) -> int:
        """9: print up to a dollar sign."""
        keys = self._console.keys
        if keys and keys[0] == CTRL_S:
            self.hold()
        # As text_at does it, without a call: programs print most of their text here.
        chunk = self._bytes[parameter : parameter + _CHUNK].tobytes()
        end = chunk.find(_DOLLAR)
        self._console.write(chunk[:end] if end >= 0 else self.text_at(parameter))
        return 0

    def text_at(self, address: int) -> bytes:
        """The bytes before the next dollar sign; all of memory where there is none."""
        for size in (_CHUNK, MEMORY_SIZE):
            chunk = self._memory.read(address, size)
            end = chunk.find(_DOLLAR)
            if end >= 0:
                return chunk[:end]
        return chunk

    def read_line(self, parameter: int) -> int:
        """10: read an edited line; the buffer holds its limit, its length, its text."""
        console = self._console
        if console.editor is None:
            console.editor = self.new_editor(parameter)
        outcome = Outcome.GOES_ON
        while outcome is not Outcome.DONE:
            echo, outcome = console.editor.feed(self.next_key(WaitKind.LINE))
            console.write(echo)
            self.settle(outcome)
        self.store_line(parameter, console.editor)
        console.editor = None
        return 0

    def new_editor(self, parameter: int) -> LineEditor:
        """A line of the length the buffer allows; the manual's least is 1."""
        return LineEditor(max(1, self._memory.read(parameter, 1)[0]), self._console.column)

    def settle(self, outcome: Outcome) -> None:
        """What a key means for more than the line."""
        if outcome is Outcome.PRINTER:
            self._console.is_printing = not self._console.is_printing
        elif outcome is Outcome.WARM_START:
            raise Ended(EndingKind.WARM_START, "^C was typed at the start of a line")

    def store_line(self, parameter: int, editor: LineEditor) -> None:
        """Put a finished line into the buffer."""
        self._memory.write(parameter + 1, bytes((len(editor.text),)) + bytes(editor.text))

    def status(self, _: int) -> int:
        """11: whether a key waits."""
        if not self._poll(11):
            return 0
        if self._console.keys[0] == CTRL_S:
            self.hold()
            return 0
        return READY


def is_echoed(key: int) -> bool:
    """Whether function 1 prints a key."""
    return key >= 0x20 or key in _ECHOED
