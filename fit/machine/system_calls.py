"""What happens when the processor reaches a stub: a BDOS or BIOS function is done, and its RET runs next."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from fit.machine.bdos_console import ConsoleFunctions
from fit.machine.bdos_drives import DriveFunctions
from fit.machine.bdos_files import FileFunctions
from fit.machine.bios import BiosFunctions
from fit.machine.console import Console
from fit.machine.cpu import DE, HL, PC, A, B, C, Cpu
from fit.machine.ending import EndingKind
from fit.machine.layout import BDOS_STUB, DEVICE_ENTRIES, RELAY_STUB, Bios, entry, stub
from fit.machine.memory_access import Memory
from fit.machine.opcodes import OpcodeWatch
from fit.machine.relay import RELAYED, Relay
from fit.machine.signals import Ended
from fit.machine.traces import Traces

VERSION: Final = 0x0022
_QUIET_FUNCTIONS: Final = frozenset((25, 29, 31))
"""File functions that change nothing: a program may call them between polls."""
_DISK_FUNCTIONS: Final = frozenset((15, 16, 17, 18, 19, 20, 21, 22, 23, 27, 30, 33, 34, 35, 40))
"""Functions that wait for a disk."""
_DISK_TICKS: Final = 20_000
"""How long they wait, 5 ms at 4 MHz (common practice, no source): endless file work meets the limit of ticks."""


@dataclass(frozen=True, slots=True)
class CallsState:
    """A copy of what calls leave behind."""

    deeds: int
    relay: Relay | None
    is_patched: bool
    disk: tuple[int, int, int]


class SystemCalls:
    """The functions of one machine, by the address of their stub."""

    def __init__(
        self,
        *,
        cpu: Cpu,
        memory: Memory,
        console: Console,
        functions: ConsoleFunctions,
        files: FileFunctions,
        drives: DriveFunctions,
        bios: BiosFunctions,
        traces: Traces,
        opcodes: OpcodeWatch | None,
    ) -> None:
        self._cpu = cpu
        self._memory = memory
        self._console = console
        self._functions = functions
        self._disk_functions = files.table | drives.table
        self._bios_functions = bios
        self._traces = traces
        self._opcodes = opcodes
        self.deeds = 0
        """File calls and keys: what somebody could notice beside printing."""
        self.relay: Relay | None = None
        """A console call that is on its way through a patched BIOS table."""
        self._is_patched = False
        self._table_as_laid = bytes(cpu.memory[DEVICE_ENTRIES])
        self._bdos_functions = self._bdos_table()
        self.traps: dict[int, Callable[[], None]] = {BDOS_STUB: self._bdos, RELAY_STUB: self._relayed}
        """What to do at each stub."""
        for number, function in bios.table.items():
            reads = number in (Bios.SELDSK, Bios.READ)
            self.traps[stub(number)] = self._bios(number, function, _DISK_TICKS if reads else 0)

    def freeze(self) -> CallsState:
        """Copy everything, to come back to it."""
        bios = self._bios_functions
        relay = self.relay.copy() if self.relay else None
        return CallsState(self.deeds, relay, self._is_patched, (bios.disk, bios.track, bios.sector))

    def thaw(self, state: CallsState) -> None:
        """Come back to a copy."""
        bios = self._bios_functions
        self.deeds, self._is_patched = state.deeds, state.is_patched
        self.relay = state.relay.copy() if state.relay else None
        bios.disk, bios.track, bios.sector = state.disk

    def _bdos_table(self) -> list[Callable[[int], int]]:
        table: list[Callable[[int], int]] = [self._unknown] * 256
        table[12] = lambda _: VERSION
        for number, function in self._functions.table.items():
            table[number] = function
        for number, function in self._disk_functions.items():
            ticks = _DISK_TICKS if number in _DISK_FUNCTIONS else 0
            table[number] = function if number in _QUIET_FUNCTIONS else self._as_deed(function, ticks)
        return table

    def _bdos(self) -> None:
        view, words = self._cpu.view, self._cpu.words
        function = view[C]
        if self._traces.is_table_written:
            self._look_at_table()
        if function == 0:
            self._leave()
            return
        if self._is_patched and self.relay is None and function in RELAYED:
            self.relay = Relay(self._cpu, self._console, self._functions)
            self._relay_went(is_over=self.relay.start())
            return
        value = self._bdos_functions[function](words[DE])
        words[HL] = value
        view[A] = value & 0xFF
        view[B] = value >> 8
        words[PC] = BDOS_STUB + 1

    def _look_at_table(self) -> None:
        self._traces.is_table_written = False
        self._is_patched = bytes(self._cpu.memory[DEVICE_ENTRIES]) != self._table_as_laid

    def _relayed(self) -> None:
        if self.relay is None:
            raise Ended(EndingKind.WILD_JUMP, "it ran into the operating system's memory", RELAY_STUB)
        self._relay_went(is_over=self.relay.resume())

    def _relay_went(self, *, is_over: bool) -> None:
        if is_over:
            self.relay = None

    def _bios(self, number: Bios, function: Callable[[], None], ticks: int) -> Callable[[], None]:
        words = self._cpu.words
        after = stub(number) + 1

        def trap() -> None:
            function()
            words[PC] = after
            if ticks:
                self._cpu.pass_time(ticks)

        return trap

    def _leave(self) -> None:
        """Function 0: the BDOS jumps to the warm start in the table, which a program may have patched."""
        target = entry(Bios.WBOOT)
        if int.from_bytes(self._cpu.memory[target + 1 : target + 3], "little") == stub(Bios.WBOOT):
            raise Ended(EndingKind.LEFT, "it called function 0")
        self._cpu.words[PC] = target

    def _unknown(self, _: int) -> int:
        """Functions of later versions: version 2.2 returns 0, and programs go on."""
        function = self._cpu.view[C]
        self._traces.unsupported[function] = self._traces.unsupported.get(function, 0) + 1
        return 0

    def _as_deed(self, function: Callable[[int], int], ticks: int) -> Callable[[int], int]:
        def deed(parameter: int) -> int:
            self.deeds += 1
            if ticks:
                self._cpu.pass_time(ticks)
            value = function(parameter)
            if self._opcodes is not None:
                for address, size in self._memory.loaded:
                    self._opcodes.scan(address, size)
            self._memory.loaded.clear()
            return value

        return deed
