r"""Run a program with given keys, and say what it did.

program = load_program(path)
run = run_program(program, [b"look\r", b"n"])
run.session.output, run.ending, run.files
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Final, Protocol, runtime_checkable

from fit.machine.conversation import Conversation
from fit.machine.disk_file import BLOCK, RECORD
from fit.machine.drives import ChangedFile
from fit.machine.ending import Ending, EndingKind, Limits
from fit.machine.host import Host
from fit.machine.layout import PROGRAM_START
from fit.machine.loader import Program
from fit.machine.opcodes import Hit
from fit.machine.setting import Setting
from fit.machine.traces import FilesUsed, PortUse, VideoMemory
from fit.machine.waits import Place, Trust, WaitKind
from fit.session import EventKind, Session, Waits

Answer = Callable[[Host], bytes | None]
"""Asked at each wait: what to type, None to end the run there, nothing to let a repainting program go on."""


@runtime_checkable
class Attentive(Protocol):
    """An answer that also knows, while the program runs and polls, whether keys are due."""

    def __call__(self, host: Host) -> bytes | None:
        """As any answer."""

    def expects(self, printed: int) -> bool:
        """Asked at polls, by the number of bytes that were printed."""


Keys = bytes | Iterable[bytes] | Answer | Attentive
"""What to type: bytes, one at each wait; steps, each typed as a whole at a wait; or a function."""
_SLACK_TICKS: Final = 50_000_000
_SLACK_OUTPUT: Final = 2_000

Schedule = tuple[tuple[int, bytes], ...]
"""What was typed, each with the number of the poll that finds it; nothing where the script ended."""


@dataclass(frozen=True, slots=True)
class Run:
    """What a program did."""

    session: Session
    ending: Ending
    files: FilesUsed
    drives: tuple[str, ...]
    """Letters of the drives it used."""
    hidden_files: tuple[str, ...]
    """Host files on its drives that it could not see."""
    changed: tuple[ChangedFile, ...]
    """Files as it left them, in memory only."""
    ports: tuple[PortUse, ...]
    video_memory: tuple[VideoMemory, ...]
    writes_above_top: tuple[int, ...]
    """Addresses at or above the top that it wrote, the BIOS table left out."""
    patches_bios: bool
    """Whether it wrote into the BIOS table, to put routines of its own into it."""
    unsupported: tuple[tuple[int, int], ...]
    """BDOS functions of later versions that it called, and how often."""
    sectors: int
    """Records that it read by track and sector."""
    opcodes: tuple[Hit, ...]
    """Opcodes the 8080 does not define that were executed, where they were watched."""
    printer: bytes
    punched: bytes
    reads: int
    """How often it asked the reader, which holds nothing."""
    ticks: int
    """Clock ticks of the emulated processor."""
    wait_kinds: tuple[WaitKind, ...]
    """The kind of each wait in the session, in order."""
    schedule: Schedule
    places: Mapping[Place, Trust]
    setting: Setting

    def changed_files(self) -> tuple[ChangedFile, ...]:
        """What a command may write into a folder the user named; the names are safe there."""
        return self.changed


def run_program(
    program: Program, keys: Keys = (), setting: Setting | None = None, *, host: Host | None = None
) -> Run:
    """Run a program to its end or until the keys are used up.

    ``host``: a machine made before, with its program loaded. Raises ProgramError where the program does
    not fit, UsageError for a wrong top or drive.
    """
    setting = setting or Setting()
    host = host or Host(program, setting)
    answer = _answer_of(keys)
    if isinstance(keys, Attentive):
        host.expects = keys.expects
    conversation = Conversation(host)
    held: bytes | None = None
    conversation.go_on()
    while host.wait is not None:
        step = held if held is not None else answer(host)
        if step is None:
            if conversation.end():
                break
            continue
        if not step:
            conversation.go_on()
            continue
        held = None if conversation.answer(step) else step
    return report(host)


def keys_of(session: Session) -> list[bytes]:
    """What was typed, a step for each input."""
    return [event.data for event in session.events if event.kind is EventKind.INPUT]


def typed_at(run: Run, kinds: Container[WaitKind]) -> frozenset[int]:
    """Where in the output of a run keys were typed at waits of some kinds."""
    found: set[int] = set()
    remaining = iter(run.wait_kinds)
    kind: WaitKind | None = None
    for event in run.session.events:
        if event.kind is EventKind.WAIT:
            kind = next(remaining)
        elif event.kind is EventKind.INPUT and kind in kinds:
            found.add(event.at)
    return frozenset(found)


def rehearse(program: Program, run: Run) -> Run:
    """The same keys once more, with what the run learnt of the places where the program polls.

    Its polls are far shorter, so that it is the one to be repeated in searches.
    """
    host = Host(program, run.setting, run.places)
    return run_program(program, keys_of(run.session), run.setting, host=host)


def repeat_run(program: Program, schedule: Schedule, setting: Setting) -> Run:
    """Run a program again with the keys of an earlier run, each at the same poll.

    On another processor or with less memory a counter in a polling loop then ends at the same number.
    """
    host = Host(program, setting)
    host.watch.patience = 2
    host.watch.tries_streams = False
    remaining = iter(schedule)
    due = next(remaining, None)
    host.due = due[0] if due else -1
    host.advance()
    while host.wait is not None:
        if due is None or not due[1]:
            host.end_script()
            break
        host.type_keys(due[1])
        due = next(remaining, None)
        host.due = due[0] if due else -1
        host.advance()
    return report(host)


def limits_like(model: Run) -> Limits:
    """Room for the same run, and not much more: on another machine it may print or run for ever.

    A run that met a limit meets the same one again.
    """
    limits, ending = model.setting.limits, model.ending.kind
    return replace(
        limits,
        ticks=limits.ticks if ending is EndingKind.TICKS else model.ticks * 2 + _SLACK_TICKS,
        output=limits.output if ending is EndingKind.OUTPUT else len(model.session.output) + _SLACK_OUTPUT,
    )


def _answer_of(keys: Keys) -> Answer:
    if callable(keys):
        return keys
    steps: Iterator[bytes]
    steps = (keys[i : i + 1] for i in range(len(keys))) if isinstance(keys, bytes) else iter(keys)
    return lambda _: next(steps, None)


def report(host: Host) -> Run:
    """What a host's program did until now. Raises nothing; a run that is not over has no ending yet."""
    ending = host.ending
    assert ending is not None, "the run is over"
    traces = host.traces
    return Run(
        session=session_of(host),
        ending=ending,
        files=traces.files,
        drives=tuple(sorted(traces.drives)),
        hidden_files=host.drives.hidden,
        changed=host.drives.changed_files(),
        ports=traces.ports,
        video_memory=traces.video(host.cpu.memory, PROGRAM_START + len(host.program.image)),
        writes_above_top=tuple(sorted(traces.above)),
        patches_bios=traces.patches_bios,
        unsupported=tuple(sorted(traces.unsupported.items())),
        sectors=traces.sectors,
        opcodes=tuple(host.opcodes.hits) if host.opcodes else (),
        printer=bytes(host.console.printer),
        punched=bytes(host.console.punched),
        reads=host.console.reads,
        ticks=host.cpu.ticks,
        wait_kinds=tuple(host.log.kinds),
        schedule=tuple(host.log.schedule),
        places=dict(host.watch.places),
        setting=host.setting,
    )


def session_of(host: Host) -> Session:
    """The session until now; exact waits, no size and no dialect, since the program was told none."""
    remarks = list(host.program.remarks)
    if host.traces.unsupported:
        numbers = ", ".join(str(number) for number in sorted(host.traces.unsupported))
        remarks.append(f"It called BDOS functions of later versions, which were answered with 0: {numbers}.")
    if host.traces.above:
        first = min(host.traces.above)
        remarks.append(
            f"It wrote into the operating system's memory, the lowest address being {first:04X}h: what it did then may be accident."
        )
    return Session(
        output=bytes(host.console.output),
        events=tuple(host.log.events),
        waits=Waits.EXACT,
        keeps_inputs=True,
        command=f"{host.program.name} {host.setting.arguments}".rstrip(),
        ending=str(host.ending) if host.ending else None,
        name=host.program.name,
        remarks=tuple(remarks),
    )


def blocks_on_disk(size: int) -> int:
    """How many blocks of 2,048 bytes a file of ``size`` bytes takes; records of 128 bytes are padded."""
    return -(-(-(-size // RECORD) * RECORD) // BLOCK)


def seconds_to_send(size: int, bits_per_second: int) -> float:
    """How long a file takes over a serial line of 8N1: 10 bits a byte (common practice, no source)."""
    return size * 10 / bits_per_second


def with_memory(setting: Setting, top: int) -> Setting:
    """The same setting with another top."""
    return replace(setting, top=top)
