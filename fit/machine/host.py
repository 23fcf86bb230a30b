"""A machine that runs one program: processor, memory, operating system, and the log of its session.

``advance`` runs until the program waits, is over, or a number of frames has passed; ``type_keys``
answers a wait. Everything can be copied and taken back with ``freeze`` and ``thaw``.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from fit.machine.bdos_console import ConsoleFunctions
from fit.machine.bdos_drives import DriveFunctions
from fit.machine.bdos_files import DiskError, FileFunctions, FilesState
from fit.machine.bios import BIOS_PLACE, BiosFunctions, lay_out_disk
from fit.machine.console import Console, ConsoleState
from fit.machine.cpu import BREAKPOINT, FRAME, FRAME_TICKS, MEMORY_SIZE, PC, SP, Cpu, Frozen
from fit.machine.disk import PARAMETERS
from fit.machine.drives import Drives, DrivesState
from fit.machine.ending import Ending, EndingKind
from fit.machine.layout import PROGRAM_START, RESTARTS, first_stack, lay_out
from fit.machine.loader import Program
from fit.machine.memory_access import Memory
from fit.machine.opcodes import OpcodeWatch
from fit.machine.session_log import LogState, SessionLog
from fit.machine.setting import Setting
from fit.machine.signals import Ended, Waiting
from fit.machine.system_calls import CallsState, SystemCalls
from fit.machine.traces import HIGH_MEMORY, Traces
from fit.machine.waits import LONG_SILENCE, TIGHT_POLLS, Place, PollWatch, Trust, WaitKind, WatchState

_RESCAN_FRAMES: Final = 50
_CLOCK_FRAMES: Final = 16
_NEVER: Final = 1 << 62

Expects = Callable[[int], bool]
"""By how many bytes were printed."""


@dataclass(frozen=True, slots=True)
class HostState:
    """A copy of a whole machine and its log."""

    cpu: Frozen
    console: ConsoleState
    drives: DrivesState
    files: FilesState
    calls: CallsState
    watch: WatchState
    log: LogState
    polls: int
    seen: tuple[int, int]
    wait: WaitKind | None
    place: Place | None
    fault: str
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
        self.top = setting.top_for(program)
        self.traces = Traces(self.top)
        self.cpu = Cpu(setting.processor)
        self.memory = Memory(self.cpu, self.traces)
        self.console = Console()
        self.drives = Drives(setting.folders(program), self.limits.written, self.traces)
        lay_out(self.cpu, program.image, setting.arguments, self.top)
        lay_out_disk(self.memory, PARAMETERS)
        self.cpu.words[PC] = PROGRAM_START
        self.opcodes = OpcodeWatch(self.cpu, PROGRAM_START, self.top) if setting.watches_opcodes else None
        self.functions = ConsoleFunctions(self.console, self.memory, self._poll)
        self.files = FileFunctions(self.drives, self.memory, self.console, self.traces)
        self.calls = self._system_calls()
        self.log = SessionLog(self.console.output)
        self.watch = PollWatch(dict(places or {}))
        self.due = -1
        """The number of the poll at which a key is due, where a run is repeated; -1: none is."""
        self.polls = 0
        """Polls, whether or not a key waited: what keys are timed by when a run is repeated."""
        self.ending: Ending | None = None
        self.wait: WaitKind | None = None
        self.place: Place | None = None
        self.expects: Expects | None = None
        """Asked at polls whether a step of a script is due there, though the program does not wait."""
        self.without_keys = EndingKind.SCRIPT_ENDED
        """How it ends where no key will come any more."""
        self.script_detail = ""
        """Why the keys ended before their script did."""
        self._seen, self._seen_frame = 0, 0
        self._fault = ""
        self._started = time.monotonic()
        self._watch_memory()

    def _system_calls(self) -> SystemCalls:
        bios = BiosFunctions(
            cpu=self.cpu,
            memory=self.memory,
            console=self.console,
            functions=self.functions,
            files=self.files,
            drives=self.drives,
            poll=self._poll,
            stack=first_stack(len(self.program.image), self.top),
        )
        return SystemCalls(
            cpu=self.cpu,
            memory=self.memory,
            console=self.console,
            functions=self.functions,
            files=self.files,
            drives=DriveFunctions(self.drives, self.memory, self.files),
            bios=bios,
            traces=self.traces,
            opcodes=self.opcodes,
        )

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
        return len(self.console.output) + self.calls.deeds

    def advance(self, frames: int | None = None) -> WaitKind | None:
        """Run until the program waits; None where it has ended, or after ``frames`` frames."""
        self.wait = self.place = None
        if self.ending is not None:
            return None
        try:
            self._run(_NEVER if frames is None else self.cpu.frames + frames)
        except Waiting as waiting:
            self.ending = self._limit_met()
            if self.ending is not None:
                return None
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
            raise Ended(EndingKind.STOPPED, self._fault)

    def _run_fast(self, last_frame: int) -> None:
        cpu, words, traps = self.cpu, self.cpu.words, self.calls.traps
        run, output, most = cpu.run, self.console.output, self.limits.output or _NEVER
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
                    # Calls take no time here: at the end of the frame it could be far beyond the limit.
                    if len(output) >= most:
                        self._check_limits()

    def _frame_ended(self) -> None:
        cpu, limits = self.cpu, self.limits
        if cpu.is_halted:
            address = cpu.words[PC] - 1 & 0xFFFF
            raise Ended(EndingKind.HALTED, f"it executed HALT at {address:04X}h", address)
        activity = self.activity
        if activity != self._seen:
            self._seen, self._seen_frame = activity, cpu.frames
        elif (
            limits.silent_ticks is not None
            and (cpu.frames - self._seen_frame) * FRAME_TICKS >= limits.silent_ticks
        ):
            raise Ended(EndingKind.SILENT, f"it did nothing for {_many(limits.silent_ticks, 'clock tick')}")
        self._check_limits()
        if cpu.frames % _CLOCK_FRAMES == 0:
            self._check_clock()
        if self.opcodes is not None and cpu.frames % _RESCAN_FRAMES == 0:
            self.opcodes.rescan()

    def _check_limits(self) -> None:
        ending = self._limit_met()
        if ending is not None:
            raise Ended(ending.kind, ending.detail)

    def _limit_met(self) -> Ending | None:
        """The ending by a limit of output or of ticks, at the end of a frame or where the program waits."""
        limits = self.limits
        if limits.output is not None and len(self.console.output) >= limits.output:
            return Ending(EndingKind.OUTPUT, f"it printed {_many(limits.output, 'byte')}")
        if limits.ticks is not None and self.cpu.ticks >= limits.ticks:
            return Ending(EndingKind.TICKS, f"it ran for {_many(limits.ticks, 'clock tick')}")
        return None

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

    def _poll(self, function: int) -> bool:
        """Whether a key waits; raises Waiting where the program can be said to wait for one."""
        self.polls += 1
        if self.console.keys:
            return True
        if self.polls == self.due:
            # The call will be made again once the key is there.
            self.polls -= 1
            raise Waiting(WaitKind.SCHEDULED)
        watch, frame = self.watch, self.cpu.frames
        watch.count(self.activity, frame)
        if self.expects is not None and self.expects(len(self.console.output)):
            self.polls -= 1
            raise Waiting(WaitKind.SCHEDULED)
        if watch.is_proved(self.cpu.has_registers, self.cpu.state):
            self.polls -= 1
            raise Waiting(WaitKind.PROVED, self._place(function))
        if watch.polls % TIGHT_POLLS == TIGHT_POLLS - 1 or frame - watch.quiet_since >= LONG_SILENCE:
            place = self._place(function)
            if watch.is_trial(place, self.console.output, frame):
                self.polls -= 1
                raise Waiting(WaitKind.TRIAL, place)
        if watch.is_realtime(self.console.output, frame):
            self.polls -= 1
            raise Waiting(WaitKind.REALTIME, self._place(function))
        if watch.is_printing(len(self.console.output), frame):
            self.polls -= 1
            raise Waiting(WaitKind.PRINTING, self._place(function))
        return False

    def _place(self, function: int) -> Place:
        stack = self._stack_of(function)
        return Place(function, int.from_bytes(self.memory.read(stack, 2), "little"), stack)

    def _stack_of(self, function: int) -> int:
        stack = self.cpu.words[SP]
        # A relayed poll stands on the system's stack: the program's own place is the relay's.
        return stack if function < BIOS_PLACE or self.calls.relay is None else self.calls.relay.stack

    # Keys

    def type_keys(self, keys: bytes, *, goes_on: bool = False) -> None:
        """Answer a wait, or type ahead while the program runs. The limit of waits ends the run.

        ``goes_on``: the keys belong to those before; where only echo came between, that is no wait of its own.
        """
        goes_on = goes_on and self.log.shows_only_echo
        if self.wait is not None and not goes_on:
            self.log.wait(self.wait)
        self.log.typed(keys, self.polls + 1, goes_on=goes_on)
        self.console.keys.extend(keys)
        self.calls.deeds += 1
        self.watch.key_taken(self.cpu.frames, len(self.console.output))
        self._seen_frame = self.cpu.frames
        self.wait = self.place = None
        waits = len(self.log.kinds)
        if self.limits.waits is not None and waits >= self.limits.waits:
            self.ending = Ending(EndingKind.WAITS, f"it waited {_many(waits, 'time')}")

    def end_script(self) -> None:
        """No keys are left at this wait."""
        self.log.wait(self.wait or WaitKind.KEY)
        self.log.script_ended(self.polls + 1)
        told = Ending(EndingKind.STOPPED, self._fault) if self._fault else None
        self.ending = told or Ending(self.without_keys, self.script_detail)

    # Copies

    def freeze(self) -> HostState:
        """Copy everything, to come back to it."""
        return HostState(
            cpu=self.cpu.freeze(),
            console=self.console.freeze(),
            drives=self.drives.freeze(),
            files=self.files.freeze(),
            calls=self.calls.freeze(),
            watch=self.watch.freeze(),
            log=self.log.freeze(),
            polls=self.polls,
            seen=(self._seen, self._seen_frame),
            wait=self.wait,
            place=self.place,
            fault=self._fault,
            ending=self.ending,
        )

    def thaw(self, state: HostState) -> None:
        """Come back to a copy. What was learnt of places, and the traces, stay."""
        self.cpu.thaw(state.cpu)
        self.console.thaw(state.console)
        self.drives.thaw(state.drives)
        self.files.thaw(state.files)
        self.calls.thaw(state.calls)
        self.watch.thaw(state.watch)
        self.log.thaw(state.log)
        self.polls = state.polls
        self._seen, self._seen_frame = state.seen
        self.wait, self.place = state.wait, state.place
        self._fault, self.ending = state.fault, state.ending


def _many(number: int, what: str) -> str:
    return f"{number:,} {what}{'' if number == 1 else 's'}"
