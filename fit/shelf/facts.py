"""What a program did and needs, beside what a screen loses of it: each with its evidence, or "not known"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from fit.machine import (
    HIGHEST_TOP,
    Assessment,
    FilesUsed,
    Processor,
    ProcessorClass,
    Program,
    Run,
    assess,
    blocks_on_disk,
    submitted,
    terminal_choice,
)
from fit.session import EventKind
from fit.shelf.terminal import FoundTerminal, find_terminal

NOT_KNOWN = "not known"

_Item = TypeVar("_Item", str, int, tuple[str, str])


@dataclass(frozen=True, slots=True)
class ProgramFacts:
    """Plain values alone, so that they can be kept as JSON. Addresses are numbers."""

    endings: list[str]
    """Of each run."""
    waits: int
    looks: int
    opened: list[str]
    missed: list[str]
    written: list[str]
    deleted: list[str]
    """Files of its folders, deleted in the sandbox alone."""
    emptied: list[str]
    """Files of its folders, in the sandbox alone, that are there and hold nothing any more."""
    renamed: list[list[str]]
    """Old and new name, in the sandbox alone."""
    refused: list[str]
    hidden: list[str]
    drives: list[str]
    processor: str
    """One of `ProcessorClass`, or not known."""
    processor_reason: str
    opcodes: list[list[int]]
    """Address and opcode of each undefined opcode that was executed."""
    opcodes_8085: bool
    """Whether one of them means something else on an 8085."""
    memory_top: int | None
    memory_reason: str
    judged_keys: int
    """Steps by which processor and memory were judged."""
    is_cut: bool
    """Whether these are fewer than were typed."""
    ports: list[list[int]]
    """Port, 1 for reading or 0, how often, address."""
    video_memory: list[list[int]]
    """Start and end of blocks written like a screen."""
    writes_above_top: list[int]
    patches_bios: bool
    unsupported: list[list[int]]
    sectors: int
    """Records read by track and sector, by the run that read most."""
    submitted: list[str]
    """Commands that it leaves to the system, to go on with when it has ended."""
    printer: int
    """Bytes sent to the printer, by the run that sent most."""
    punch: int
    """The same for the punch."""
    reader: int
    """How often the reader was asked, likewise."""
    terminal: str | None
    terminal_evidence: str
    terminal_is_clear: bool
    """Whether it was given or its codes show it clearly."""
    choice: list[str]
    """Lines that speak of a choice of terminal or screen."""
    size: int
    blocks: int
    remarks: list[str]

    @property
    def needs_z80(self) -> bool:
        """Whether an 8080 cannot run it."""
        return self.processor == ProcessorClass.NEEDS_Z80


def program_facts(
    program: Program,
    runs: Sequence[Run],
    terminal: str | FoundTerminal | None = None,
    *,
    repeatable: Run | None = None,
) -> ProgramFacts:
    """Everything that is known of a program after its runs, which all had one setting.

    ``terminal`` is the one it was said to be set for, or what `terminal_of` said. Processor and memory are judged by repeating the runs, or
    the ``repeatable`` one in their place.
    """
    needs = _assess(program, runs if repeatable is None else [repeatable])
    outputs = [run.session.output for run in runs]
    found = terminal if isinstance(terminal, FoundTerminal) else terminal_of(runs, terminal)
    processor = needs.processor if needs else None
    return ProgramFacts(
        endings=list(dict.fromkeys(str(run.ending) for run in runs)),
        waits=sum(len(run.wait_kinds) for run in runs),
        looks=sum(
            event.kind is EventKind.WAIT and event.is_look for run in runs for event in run.session.events
        ),
        opened=_joined(run.files.opened for run in runs),
        missed=_joined(set(run.files.missed) - _changed_names(run.files) for run in runs),
        written=_joined(run.files.written for run in runs),
        deleted=_joined(run.files.deleted for run in runs),
        emptied=_joined(run.files.emptied for run in runs),
        renamed=[list(pair) for pair in _joined(run.files.renamed for run in runs)],
        refused=_joined(run.files.refused for run in runs),
        hidden=_joined(run.hidden_files for run in runs),
        drives=_joined(run.drives for run in runs),
        processor=str(processor.kind) if processor else NOT_KNOWN,
        processor_reason=processor.reason if processor else _NOT_REPEATED,
        opcodes=[[hit.address, hit.opcode] for hit in processor.hits] if processor else [],
        opcodes_8085=bool(processor and processor.hits_8085),
        memory_top=needs.memory.top if needs else None,
        memory_reason=needs.memory.reason if needs else _NOT_REPEATED,
        judged_keys=needs.keys if needs else 0,
        is_cut=bool(needs and needs.is_cut),
        ports=_ports(runs),
        video_memory=_unique([block.start, block.end] for run in runs for block in run.video_memory),
        writes_above_top=_joined(run.writes_above_top for run in runs),
        patches_bios=any(run.patches_bios for run in runs),
        unsupported=_unique(list(pair) for run in runs for pair in run.unsupported),
        sectors=max((run.sectors for run in runs), default=0),
        submitted=list(dict.fromkeys(command for run in runs for command in submitted(run.changed))),
        printer=max((len(run.printer) for run in runs), default=0),
        punch=max((len(run.punched) for run in runs), default=0),
        reader=max((run.reads for run in runs), default=0),
        terminal=found.name,
        terminal_evidence=found.evidence,
        terminal_is_clear=found.is_clear,
        choice=list(terminal_choice(program.image, outputs)),
        size=len(program.image),
        blocks=blocks_on_disk(len(program.image)),
        remarks=list(dict.fromkeys(remark for run in runs for remark in run.session.remarks)),
    )


def terminal_of(runs: Sequence[Run], terminal: str | None = None) -> FoundTerminal:
    """The terminal that was given, or else the one whose codes the runs printed."""
    if terminal:
        return FoundTerminal(terminal, "it was given")
    return find_terminal(max((run.session.output for run in runs), key=_coded_bytes))


def _changed_names(files: FilesUsed) -> set[str]:
    """Names that a program misses by its own doing: asked for before the file is made, or after it is gone."""
    return {
        *files.written,
        *files.deleted,
        *files.emptied,
        *(name for pair in files.renamed for name in pair),
    }


_NOT_REPEATED = "its runs could not be repeated"


def _assess(program: Program, runs: Sequence[Run]) -> Assessment | None:
    return assess(program, runs) if runs else None


def _coded_bytes(output: bytes) -> int:
    """How much there is to tell a terminal by."""
    return len(output) - len(output.translate(None, b"\x1b\x1a\x0c\x0b\x1e"))


def _joined(parts: Iterable[Iterable[_Item]]) -> list[_Item]:
    return sorted({item for part in parts for item in part})


def _unique(parts: Iterable[Sequence[int]]) -> list[list[int]]:
    return [list(part) for part in sorted({tuple(part) for part in parts})]


def _ports(runs: Sequence[Run]) -> list[list[int]]:
    """Each port once, as the last run that used it says."""
    used = {(port.port, port.is_read): port for run in runs for port in run.ports}
    return [[port, int(is_read), use.times, use.address] for (port, is_read), use in sorted(used.items())]


def runs_on(facts: ProgramFacts, processor: Processor) -> bool | None:
    """Whether a device's processor can run it; None where that is undecided."""
    if processor is Processor.Z80 or facts.processor == ProcessorClass.SAFE_8080:
        return True
    return False if facts.needs_z80 else None


def fits_memory(facts: ProgramFacts, top: int | None) -> bool | None:
    """Whether memory that ends at ``top`` is enough; None where one of both is not known."""
    if facts.memory_top is None or top is None:
        return None
    return facts.memory_top <= min(top, HIGHEST_TOP)
