"""A machine that runs one program: processor, memory, operating system, and the log of its session.

``advance`` runs until the program waits, is over, or a number of frames has passed; ``type_keys``
answers a wait. Everything can be copied and taken back with ``freeze`` and ``thaw``.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from fit.errors import ProgramError, UsageError
from fit.machine.bdos_console import ConsoleFunctions
from fit.machine.bdos_files import DiskError, FileFunctions, FilesState
from fit.machine.bios import BIOS_PLACE, BiosFunctions, lay_out_disk
from fit.machine.console import Console, ConsoleState
from fit.machine.cpu import (
    BREAKPOINT,
    DE,
    FRAME,
    FRAME_TICKS,
    HL,
    MEMORY_SIZE,
    PC,
    SP,
    A,
    B,
    C,
    Cpu,
    Frozen,
    Processor,
)
from fit.machine.disk import PARAMETERS
from fit.machine.drives import Drives, DrivesState
from fit.machine.echo import shows_more_than_echo
from fit.machine.ending import Ending, EndingKind, Limits
from fit.machine.layout import (
    BDOS_STUB,
    CONSOLE_ENTRIES,
    HIGHEST_TOP,
    LOWEST_TOP,
    PROGRAM_START,
    RELAY_STUB,
    RESTARTS,
    Bios,
    lay_out,
    stub,
)
from fit.machine.loader import Program
from fit.machine.memory_access import Memory
from fit.machine.opcodes import OpcodeWatch
from fit.machine.relay import RELAYED, Relay
from fit.machine.signals import Ended, Waiting
from fit.machine.traces import HIGH_MEMORY, Traces
from fit.machine.waits import LONG_SILENCE, TIGHT_POLLS, Place, PollWatch, Trust, WaitKind, WatchState
from fit.session import Event, EventKind

VERSION: Final = 0x0022
_RESCAN_FRAMES: Final = 50
_CLOCK_FRAMES: Final = 16
_NEVER: Final = 1 << 62
_QUIET_FUNCTIONS: Final = frozenset((25, 29, 31))
"""File functions that change nothing: a program may call them between polls."""


@dataclass(frozen=True, slots=True)
class Setting:
    """How a program is run."""

    processor: Processor = Processor.Z80
    drives: Mapping[str, Path] | None = None
    """Folders by drive letter; None: the program's own folder is drive A."""
    arguments: str = ""
    top: int | None = None
    """Where memory for programs ends; None: as high as possible."""
    limits: Limits = field(default_factory=Limits)
    watches_opcodes: bool = False


@dataclass(frozen=True, slots=True)
class HostState:
    """A copy of a whole machine and its log."""

    cpu: Frozen
    console: ConsoleState
    drives: DrivesState
    files: FilesState
    watch: WatchState
    disk: tuple[int, int, int]
    events: tuple[Event, ...]
    schedule: tuple[tuple[int, bytes], ...]
    wait_kinds: tuple[WaitKind, ...]
    calls: int
    deeds: int
    marks: tuple[int, int, int]
    typed: bytes
    wait: tuple[WaitKind | None, Place | None]
    relay: Relay | None
    fault: str
    is_patched: bool
    ending: Ending | None


class Host:
    """One program on one machine."""

    def __init__(
        self, program: Program, setting: Setting, places: Mapping[Place, Trust] | None = None
    ) -> None:
        """``places``: what earlier runs learnt of the places where this program polls.

        Raises ProgramError where the program does not fit below the top, UsageError for the top or a drive.
        """
        self.program = program
        self.setting = setting
        self.limits = setting.limits
        self.top = _checked_top(program, setting.top)
        self.traces = Traces(self.top)
        self.cpu = Cpu(setting.processor)
        self.memory = Memory(self.cpu, self.traces)
        self.console = Console()
        own = {} if program.folder is None else {"A": program.folder}
        folders = own if setting.drives is None else setting.drives
        self.drives = Drives(folders, self.limits.written, self.traces)
        self.files = FileFunctions(self.drives, self.memory, self.console, self.traces)
        self.functions = ConsoleFunctions(self.console, self.memory, self._poll, self._check_output)
        self.bios = BiosFunctions(
            cpu=self.cpu,
            memory=self.memory,
            console=self.console,
            functions=self.functions,
            files=self.files,
            drives=self.drives,
            poll=self._poll,
            top=self.top,
        )
        self.watch = PollWatch(dict(places or {}))
        self.due = -1
        """The number of the poll at which a key is due, where a run is repeated; -1: none is."""
        self.schedule: list[tuple[int, bytes]] = []
        """What was typed, each with the number of the poll that finds it; nothing where the script ended."""
        self.events: list[Event] = []
        self.ending: Ending | None = None
        self.wait: WaitKind | None = None
        self.place: Place | None = None
        self.wait_kinds: list[WaitKind] = []
        self.calls = 0
        """Polls, whether or not a key waited: what keys are timed by when a run is repeated."""
        self.script_detail = ""
        """Why the keys ended before their script did."""
        self._deeds = 0
        self._seen, self._seen_frame = 0, 0
        self._looked_at = 0
        self._typed = bytearray()
        self._relay: Relay | None = None
        self._fault = ""
        self._is_patched = False
        self._started = time.monotonic()
        lay_out(self.cpu, program.image, setting.arguments, self.top)
        lay_out_disk(self.memory, PARAMETERS)
        self.cpu.words[PC] = PROGRAM_START
        self._table_as_laid = bytes(self.cpu.memory[CONSOLE_ENTRIES])
        self._call_table = self._bdos_table()
        self._traps = self._trap_table()
        self._watch_memory()
        self.opcodes = OpcodeWatch(self.cpu, PROGRAM_START, self.top) if setting.watches_opcodes else None

    # Wiring

    def _bdos_table(self) -> list[Callable[[int], int]]:
        table: list[Callable[[int], int]] = [self._unknown_function] * 256
        table[0] = self._leave
        table[12] = lambda _: VERSION
        for number, function in self.functions.table.items():
            table[number] = function
        for number, function in self.files.table.items():
            table[number] = function if number in _QUIET_FUNCTIONS else self._as_deed(function)
        return table

    def _trap_table(self) -> dict[int, Callable[[], None]]:
        traps: dict[int, Callable[[], None]] = {
            BDOS_STUB: self._bdos,
            RELAY_STUB: self._relayed,
        }
        for number, function in self.bios.table.items():
            traps[stub(number)] = self._bios(number, function)
        return traps

    def _watch_memory(self) -> None:
        start = max(HIGH_MEMORY, PROGRAM_START + len(self.program.image))
        if start < self.top:
            self.cpu.watch_writes(start, self.top - start)
        self.cpu.watch_writes(self.top, MEMORY_SIZE - self.top)
        self.cpu.on_write(self.traces.wrote)
        self.cpu.on_ports(self.traces.read_port, self.traces.write_port)

    # Running

    @property
    def activity(self) -> int:
        """Grows with everything the program does that somebody could notice."""
        return len(self.console.output) + self._deeds

    def advance(self, frames: int | None = None) -> WaitKind | None:
        """Run until the program waits; None where it has ended, or after ``frames`` frames."""
        self.wait = self.place = None
        if self.ending is not None:
            return None
        try:
            self._run(_NEVER if frames is None else self.cpu.frames + frames)
        except Waiting as waiting:
            self.wait = waiting.kind
            # A blocking call stands at its stub: that tells it from others.
            self.place = waiting.place or self._place(self.cpu.words[PC])
        except Ended as ended:
            self.ending = ended.ending
        return self.wait

    def _run(self, last_frame: int) -> None:
        while True:
            try:
                self._settle_fault()
                self._run_fast(last_frame)
            except DiskError as error:
                # The operating system tells the user, waits for a key and starts again.
                self._fault = str(error)
                self.console.write(b"\r\n" + self._fault.encode("ascii"))
            else:
                return

    def _settle_fault(self) -> None:
        if self._fault:
            self.functions.next_key(WaitKind.KEY)
            raise Ended(EndingKind.WARM_START, self._fault)

    def _run_fast(self, last_frame: int) -> None:
        cpu, words, traps = self.cpu, self.cpu.words, self._traps
        run = cpu.run
        while True:
            events = run()
            if events & FRAME:
                cpu.frames += 1
                self._frame_ended()
                if cpu.frames >= last_frame:
                    return
            if events & BREAKPOINT:
                trap = traps.get(words[PC])
                if trap is None:
                    self._reached(words[PC])
                else:
                    trap()

    def _frame_ended(self) -> None:
        cpu, limits = self.cpu, self.limits
        if cpu.is_halted:
            address = cpu.words[PC] - 1 & 0xFFFF
            raise Ended(EndingKind.HALTED, f"it executed HALT at {address:04X}h", address)
        activity = self.activity
        if activity != self._seen:
            self._seen, self._seen_frame = activity, cpu.frames
            self._check_output()
        elif (
            limits.silent_ticks is not None
            and (cpu.frames - self._seen_frame) * FRAME_TICKS >= limits.silent_ticks
        ):
            raise Ended(EndingKind.SILENT, f"it did nothing for {limits.silent_ticks:,} clock ticks")
        if limits.ticks is not None and cpu.frames * FRAME_TICKS >= limits.ticks:
            raise Ended(EndingKind.TICKS, f"it ran for {limits.ticks:,} clock ticks")
        if cpu.frames % _CLOCK_FRAMES == 0:
            self._check_clock()
        if self.opcodes is not None and cpu.frames % _RESCAN_FRAMES == 0:
            self.opcodes.rescan()

    def _check_output(self) -> None:
        limit = self.limits.output
        if limit is not None and len(self.console.output) >= limit:
            raise Ended(EndingKind.OUTPUT, f"it printed {limit:,} bytes")

    def _check_clock(self) -> None:
        seconds = self.limits.seconds
        if seconds is not None and time.monotonic() - self._started >= seconds:
            raise Ended(EndingKind.SECONDS, f"it ran for {seconds:g} s on this computer")

    def _reached(self, address: int) -> None:
        """A breakpoint that is no trap: an opcode to be noticed, or a place where no program runs."""
        if self.opcodes is not None and self.opcodes.reached(address):
            return
        if address in RESTARTS:
            if self.cpu.memory[address] != 0:
                self.cpu.unbreak(RESTARTS.start, len(RESTARTS))
                return
            what = "an empty restart vector"
        else:
            what = "the operating system's memory"
        raise Ended(EndingKind.WILD_JUMP, f"it ran into {what} at {address:04X}h", address)

    # Calls

    def _bdos(self) -> None:
        view, words = self.cpu.view, self.cpu.words
        function = view[C]
        if self.traces.is_table_written:
            self._look_at_table()
        if self._is_patched and self._relay is None and function in RELAYED:
            self._relay = Relay(self.cpu, self.console, self.functions)
            self._relay_went(is_over=self._relay.start())
            return
        value = self._call_table[function](words[DE])
        words[HL] = value
        view[A] = value & 0xFF
        view[B] = value >> 8
        words[PC] = BDOS_STUB + 1

    def _look_at_table(self) -> None:
        self.traces.is_table_written = False
        self._is_patched = bytes(self.cpu.memory[CONSOLE_ENTRIES]) != self._table_as_laid

    def _relayed(self) -> None:
        if self._relay is None:
            raise Ended(EndingKind.WILD_JUMP, "it ran into the operating system's memory", RELAY_STUB)
        self._relay_went(is_over=self._relay.resume())

    def _relay_went(self, *, is_over: bool) -> None:
        if is_over:
            self._relay = None

    def _bios(self, number: Bios, function: Callable[[], None]) -> Callable[[], None]:
        words = self.cpu.words
        after = stub(number) + 1

        def trap() -> None:
            function()
            words[PC] = after

        return trap

    def _leave(self, _: int) -> int:
        raise Ended(EndingKind.LEFT, "it called function 0")

    def _unknown_function(self, _: int) -> int:
        """Functions of later versions: version 2.2 returns 0, and programs go on."""
        function = self.cpu.view[C]
        self.traces.unsupported[function] = self.traces.unsupported.get(function, 0) + 1
        return 0

    def _as_deed(self, function: Callable[[int], int]) -> Callable[[int], int]:
        def deed(parameter: int) -> int:
            self._deeds += 1
            value = function(parameter)
            if self.opcodes is not None:
                for address, size in self.memory.loaded:
                    self.opcodes.scan(address, size)
            self.memory.loaded.clear()
            return value

        return deed

    def _poll(self, function: int) -> bool:
        """Whether a key waits; raises Waiting where the program can be said to wait for one."""
        self.calls += 1
        if self.console.keys:
            return True
        if self.calls == self.due:
            # The call will be made again once the key is there.
            self.calls -= 1
            raise Waiting(WaitKind.SCHEDULED)
        watch, frame = self.watch, self.cpu.frames
        watch.count(self.activity, frame)
        if watch.is_proved(self.cpu.has_registers, self.cpu.state):
            self.calls -= 1
            raise Waiting(WaitKind.PROVED, self._place(function))
        if watch.polls % TIGHT_POLLS == TIGHT_POLLS - 1 or frame - watch.quiet_since >= LONG_SILENCE:
            place = self._place(function)
            if watch.is_trial(place, frame):
                self.calls -= 1
                raise Waiting(WaitKind.TRIAL, place)
        if watch.is_realtime(self.console.output, frame):
            self.calls -= 1
            raise Waiting(WaitKind.REALTIME, self._place(function))
        return False

    def _place(self, function: int) -> Place:
        stack = self._stack_of(function)
        return Place(function, int.from_bytes(self.memory.read(stack, 2), "little"), stack)

    def _stack_of(self, function: int) -> int:
        stack = self.cpu.words[SP]
        # A relayed poll stands on the system's stack: the program's own place is the relay's.
        return stack if function < BIOS_PLACE or self._relay is None else self._relay.stack

    # Keys and the log

    def type_keys(self, keys: bytes) -> None:
        """Answer a wait, or type ahead while the program runs. The limit of waits ends the run."""
        if self.wait is not None:
            self.log_wait()
        at = len(self.console.output)
        self.events.append(Event(at, EventKind.INPUT, keys))
        self.schedule.append((self.calls + 1, keys))
        self.console.keys.extend(keys)
        self._typed += keys
        self._deeds += 1
        self.watch.key_taken(self.cpu.frames, at)
        self._seen_frame = self.cpu.frames
        self.wait = self.place = None
        waits = len(self.wait_kinds)
        if self.limits.waits is not None and waits >= self.limits.waits:
            self.ending = Ending(EndingKind.WAITS, f"it waited {waits:,} times")

    def log_wait(self) -> None:
        """Note that the program waits here, and whether a person would read now."""
        output = self.console.output
        shows = shows_more_than_echo(bytes(output[self._looked_at :]), bytes(self._typed))
        is_look = self.wait is not WaitKind.REALTIME and shows
        self.events.append(Event(len(output), EventKind.WAIT, is_look=is_look))
        self.wait_kinds.append(self.wait or WaitKind.KEY)
        if is_look:
            self._looked_at = len(output)
            self._typed.clear()

    def end_script(self) -> None:
        """No keys are left at this wait."""
        self.log_wait()
        self.schedule.append((self.calls + 1, b""))
        self.ending = Ending(EndingKind.SCRIPT_ENDED, self.script_detail)

    # Copies

    def freeze(self) -> HostState:
        """Copy everything, to come back to it."""
        return HostState(
            self.cpu.freeze(),
            self.console.freeze(),
            self.drives.freeze(),
            self.files.freeze(),
            self.watch.freeze(),
            (self.bios.disk, self.bios.track, self.bios.sector),
            tuple(self.events),
            tuple(self.schedule),
            tuple(self.wait_kinds),
            self.calls,
            self._deeds,
            (self._seen, self._seen_frame, self._looked_at),
            bytes(self._typed),
            (self.wait, self.place),
            self._relay.copy() if self._relay else None,
            self._fault,
            self._is_patched,
            self.ending,
        )

    def thaw(self, state: HostState) -> None:
        """Come back to a copy. What was learnt of places, and the traces, stay."""
        self.cpu.thaw(state.cpu)
        self.console.thaw(state.console)
        self.drives.thaw(state.drives)
        self.files.thaw(state.files)
        self.watch.thaw(state.watch)
        self.bios.disk, self.bios.track, self.bios.sector = state.disk
        self.events[:] = state.events
        self.schedule[:] = state.schedule
        self.calls = state.calls
        self.wait_kinds[:] = state.wait_kinds
        self._deeds = state.deeds
        self._seen, self._seen_frame, self._looked_at = state.marks
        self._typed[:] = state.typed
        self.wait, self.place = state.wait
        self._relay = state.relay.copy() if state.relay else None
        self._fault, self._is_patched, self.ending = state.fault, state.is_patched, state.ending


def _checked_top(program: Program, top: int | None) -> int:
    """Where memory ends. Raises UsageError for an impossible top, ProgramError where the program does not fit."""
    if top is None:
        top = HIGHEST_TOP
    if not LOWEST_TOP <= top <= HIGHEST_TOP:
        raise UsageError(
            f"memory cannot end at {top:X}h",
            hint=f"choose a top from {LOWEST_TOP:04X}h to {HIGHEST_TOP:04X}h",
        )
    room = top - PROGRAM_START - 2
    if len(program.image) > room:
        raise ProgramError(
            f"the program is {len(program.image):,} bytes long, and memory up to {top:04X}h holds {room:,}",
            source=program.name,
        )
    return top
