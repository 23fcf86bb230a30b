"""BDOS calls to devices by way of the BIOS table, for programs that patched its entries.

The program's own routine is then called for each character, as the operating system would call it,
on a stack of the system's. The call is a small machine of states, so that a run can be copied in
the middle of it.
"""

from __future__ import annotations

from collections import deque
from typing import Final

from fit.machine.bdos_console import (
    DIRECT_INPUT,
    DIRECT_STATUS,
    DIRECT_WAIT,
    READY,
    ConsoleFunctions,
    is_echoed,
)
from fit.machine.console import Console
from fit.machine.cpu import DE, HL, PC, SP, A, B, C, Cpu
from fit.machine.layout import BDOS_STUB, RELAY_STACK, RELAY_STUB, Bios, entry
from fit.machine.line_editor import LineEditor, Outcome

DEVICES: Final = {3: Bios.READER, 4: Bios.PUNCH, 5: Bios.LIST}
RELAYED: Final = frozenset((1, 2, *DEVICES, 6, 9, 10, 11))


class Relay:
    """One BDOS call on its way through the table."""

    def __init__(self, cpu: Cpu, console: Console, functions: ConsoleFunctions) -> None:
        self._cpu = cpu
        self._console = console
        self._functions = functions
        self._function = cpu.view[C]
        self._parameter = cpu.words[DE]
        self.stack = cpu.words[SP]
        self._called = Bios.CONOUT
        self._pending: deque[int] = deque()
        self._editor: LineEditor | None = None
        self._value = 0

    def copy(self) -> Relay:
        """The same call at the same point, to come back to it."""
        twin = object.__new__(Relay)
        twin.__dict__.update(self.__dict__)
        twin._pending = deque(self._pending)
        twin._editor = self._editor.copy() if self._editor else None
        return twin

    def start(self) -> bool:
        """Make the first call; returns whether the whole is over already."""
        code = self._parameter & 0xFF
        if self._function in DEVICES:
            return self._call(DEVICES[self._function], code)
        if self._function == 2:
            self._pending.extend(self._console.expand(bytes((code,))))
        elif self._function == 9:
            self._pending.extend(self._console.expand(self._functions.text_at(self._parameter)))
        elif self._function == 10:
            self._editor = self._functions.new_editor(self._parameter)
        elif self._function == 6 and code not in (DIRECT_INPUT, DIRECT_STATUS, DIRECT_WAIT):
            self._pending.append(code)
        else:
            reads = self._function == 1 or code == DIRECT_WAIT
            return self._call(Bios.CONIN if reads and self._function != 11 else Bios.CONST)
        return self._proceed()

    def resume(self) -> bool:
        """The routine has returned; returns whether the whole is over."""
        answer = self._cpu.view[A]
        if self._called is Bios.CONIN:
            self._take(answer)
        elif self._called is Bios.CONST:
            if self._function == 6 and self._parameter & 0xFF == DIRECT_INPUT and answer:
                return self._call(Bios.CONIN)
            self._value = READY if answer and self._function == 11 else answer
        elif self._called is Bios.READER:
            self._value = answer
        return self._proceed()

    def _take(self, key: int) -> None:
        if self._editor is None:
            self._value = key
            if self._function == 1 and is_echoed(key):
                self._pending.extend(self._console.expand(bytes((key,))))
            return
        echo, outcome = self._editor.feed(key)
        self._pending.extend(self._console.expand(echo))
        self._functions.settle(outcome)
        if outcome is Outcome.DONE:
            self._functions.store_line(self._parameter, self._editor)
            self._editor = None

    def _proceed(self) -> bool:
        if self._pending:
            byte = self._pending.popleft()
            if self._console.is_printing and self._function != 6:
                self._console.printer.append(byte)
            return self._call(Bios.CONOUT, byte)
        if self._editor is not None:
            return self._call(Bios.CONIN)
        self._finish()
        return True

    def _call(self, function: Bios, byte: int = 0) -> bool:
        cpu = self._cpu
        self._called = function
        stack = RELAY_STACK - 2
        cpu.memory[stack : stack + 2] = RELAY_STUB.to_bytes(2, "little")
        cpu.words[SP] = stack
        cpu.view[C] = byte
        cpu.words[PC] = entry(function)
        return False

    def _finish(self) -> None:
        cpu = self._cpu
        cpu.words[SP] = self.stack
        cpu.words[HL] = self._value
        cpu.view[A] = self._value & 0xFF
        cpu.view[B] = self._value >> 8
        cpu.words[PC] = BDOS_STUB + 1
