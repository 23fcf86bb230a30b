"""What is known of a program, as a list of labels and sentences."""

from __future__ import annotations

from typing import Final

from fit.report.numbers import count, sentence
from fit.report.plain import pad, printable
from fit.report.style import Style
from fit.shelf.facts import ProgramFacts
from fit.shelf.notes import named

_LABEL: Final = 11
_MOST_OPCODES: Final = 8
_NONE_SEEN: Final = "none was seen"


def facts_text(facts: ProgramFacts, style: Style) -> list[str]:
    """One or more lines for each fact."""
    lines: list[str] = []
    for label, text in _facts(facts):
        first = f"  {pad(label, _LABEL)} "
        lines += style.text(sentence(printable(text)), first, "    " if style.narrow else " " * len(first))
    return lines


def _facts(facts: ProgramFacts) -> list[tuple[str, str]]:
    told = [
        ("ending", "; ".join(facts.endings)),
        ("waits", f"{facts.waits:,}, of them {count(facts.looks, 'look')}"),
        ("files", _files(facts)),
        ("drives", named(facts.drives) if facts.drives else "none was asked for"),
        ("processor", _processor(facts)),
        ("memory", _memory(facts)),
        (
            "terminal",
            f"set for {facts.terminal}: {facts.terminal_evidence}"
            if facts.terminal
            else facts.terminal_evidence,
        ),
        ("a choice", _choice(facts)),
        ("ports", _ports(facts)),
        ("video", _video(facts)),
    ]
    if devices := _devices(facts):
        told.append(("devices", devices))
    if facts.patches_bios:
        told.append(("BIOS table", "the program puts routines of its own into it"))
    if facts.writes_above_top:
        told.append(
            (
                "system",
                f"it wrote into the operating system, the lowest address being {facts.writes_above_top[0]:04X}h",
            )
        )
    if facts.sectors:
        told.append(
            (
                "sectors",
                f"it reads {count(facts.sectors, 'record')} by track and sector: a machine without such disks has none",
            )
        )
    if facts.submitted:
        told.append(("goes on", f"it leaves {named(facts.submitted)} to be run when it has ended"))
    if facts.unsupported:
        calls = ", ".join(f"{function} ({times} x)" for function, times in facts.unsupported)
        told.append(("unsupported", f"functions of a later version, answered with 0: {calls}"))
    return told


def _files(facts: ProgramFacts) -> str:
    parts = [
        f"{what} {named(names)}"
        for what, names in (
            ("opened", facts.opened),
            ("missed", facts.missed),
            ("wrote, in the sandbox alone,", facts.written),
            ("deleted, in the sandbox alone,", facts.deleted),
            ("emptied, in the sandbox alone,", facts.emptied),
            ("renamed, in the sandbox alone,", [f"{old} to {new}" for old, new in facts.renamed]),
            ("was refused names that are none:", facts.refused),
        )
        if names
    ]
    if facts.hidden:
        parts.append(f"could not see {count(len(facts.hidden), 'file')} with names of another form")
    return "; ".join(parts) if parts else "none was asked for"


def _devices(facts: ProgramFacts) -> str:
    """What it uses beside the console; empty where that is nothing."""
    parts = [
        f"{count(sent, 'byte')} to the {device}"
        for device, sent in (("printer", facts.printer), ("punch", facts.punch))
        if sent
    ]
    said = [f"it sends {' and '.join(parts)}"] if parts else []
    if facts.reader:
        said.append(f"it asks the reader {facts.reader:,} x, which holds nothing")
    return "; ".join(said)


def _processor(facts: ProgramFacts) -> str:
    said = f"{facts.processor}: {facts.processor_reason}"
    if facts.opcodes:
        places = [f"{opcode:02X}h at {address:04X}h" for address, opcode in facts.opcodes]
        more = f" and {len(places) - _MOST_OPCODES} more" if len(places) > _MOST_OPCODES else ""
        said += f" ({', '.join(places[:_MOST_OPCODES])}{more})"
    if facts.opcodes_8085:
        said += "; on an 8085 some of these mean something else"
    return said


def _memory(facts: ProgramFacts) -> str:
    if facts.memory_top is None:
        return f"not known: {facts.memory_reason}"
    cut = ", judged by a first part of the run alone" if facts.is_cut else ""
    size = f"{(facts.memory_top - 0x100) / 1024:.1f} KiB from 0100h"
    return f"must end at {facts.memory_top:04X}h or above, {size}{cut}; a page lower {facts.memory_reason}"


def _choice(facts: ProgramFacts) -> str:
    if not facts.choice:
        return "nothing speaks of another terminal or screen size"
    lines = "; ".join(f'"{line}"' for line in facts.choice[:2])
    return f"it may have a setting for another terminal or screen: {lines}"


def _ports(facts: ProgramFacts) -> str:
    if not facts.ports:
        return _NONE_SEEN
    return ", ".join(
        f"{'reads' if is_read else 'writes'} {port:02X}h {times} x, first before {address:04X}h"
        for port, is_read, times, address in facts.ports
    )


def _video(facts: ProgramFacts) -> str:
    if not facts.video_memory:
        return "no memory was written like a screen"
    return ", ".join(
        f"{start:04X}h to {end - 1:04X}h is written like a screen" for start, end in facts.video_memory
    )
