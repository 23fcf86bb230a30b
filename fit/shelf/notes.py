"""What decides about an entry beside its score, in short sentences; the weightiest first."""

from __future__ import annotations

from fit.machine import ProcessorClass
from fit.machine.ending import LIMITED, EndingKind
from fit.report.numbers import count, points, rate
from fit.shelf.facts import NOT_KNOWN, ProgramFacts
from fit.shelf.finding import Finding

_BAD_ENDINGS = (EndingKind.STOPPED, EndingKind.WILD_JUMP, EndingKind.HALTED, EndingKind.UNSUPPORTED)
"""How programs end that failed: said before any score is praised."""
_CUT_SHORT = tuple(LIMITED)
"""How programs end that would have gone on."""
_MOST = 4
"""Names of a list that are written out."""


def notes(finding: Finding) -> list[str]:
    """Short sentences without a full stop."""
    if finding.failed:
        return [finding.reason]
    if finding.document is not None:
        return [finding.reason]
    said = [*finding.obstacles]
    if finding.program is not None:
        said += _endings(finding.program, _BAD_ENDINGS)
        said += _changes(finding.program)
    said.append(_remedy(finding))
    if finding.terminal:
        doubt = "" if finding.program is None or finding.program.terminal_is_clear else ", but not clearly"
        said.append(f"set for {finding.terminal}{doubt}")
    if finding.session is not None and finding.session.is_small and finding.score is not None:
        said.append(f"recorded at {finding.session.told} already")
    if finding.program is not None:
        said += _program(finding.program)
    return said


def _remedy(finding: Finding) -> str:
    if finding.score is None:
        return finding.reason
    if finding.best is None:
        return "no remedy is needed" if finding.verdict == "comfortable" else "no remedy helps"
    cost = f" for {rate(finding.keys_per_turn)} keys a turn" if finding.keys_per_turn else ""
    return f"{finding.best}: {points(finding.best_score)}{cost}"


def _endings(facts: ProgramFacts, kinds: tuple[EndingKind, ...]) -> list[str]:
    return [ending for ending in facts.endings if ending.startswith(kinds)]


def _changes(facts: ProgramFacts) -> list[str]:
    """What it would do to the files of its disk: said before any score is praised."""
    said = []
    if facts.deleted:
        said.append(f"deletes {named(facts.deleted)}")
    if facts.emptied:
        said.append(f"empties {named(facts.emptied)}")
    if facts.renamed:
        said.append(f"renames {named([f'{old} to {new}' for old, new in facts.renamed])}")
    return said


def _program(facts: ProgramFacts) -> list[str]:
    said = _endings(facts, _CUT_SHORT)
    if facts.processor == ProcessorClass.UNDECIDED:
        said.append(f"processor undecided: {facts.processor_reason}")
    elif facts.processor == NOT_KNOWN:
        said.append("processor not known")
    if facts.opcodes_8085:
        said.append("on an 8085 some of its opcodes mean something else")
    if facts.missed:
        said.append(f"misses {named(facts.missed)}")
    if further := [drive for drive in facts.drives if drive != "A"]:
        said.append(f"wants drive {named(further)}")
    if facts.choice:
        said.append("speaks of a choice of terminal or screen")
    if facts.video_memory:
        said.append(f"writes what looks like video memory at {facts.video_memory[0][0]:04X}h")
    if facts.ports:
        said.append(f"uses ports {named([f'{port[0]:02X}h' for port in facts.ports])}")
    devices = {"printer": facts.printer, "punch": facts.punch, "reader": facts.reader}
    if used := [device for device, times in devices.items() if times]:
        said.append(f"uses the {named(used)}")
    if facts.writes_above_top:
        said.append("writes into the operating system")
    if facts.sectors:
        said.append("reads the disk by track and sector")
    if facts.submitted:
        said.append(f"leaves {named(facts.submitted)} to be run after it")
    if facts.patches_bios:
        said.append("patches the BIOS table")
    if facts.unsupported:
        said.append(
            f"calls {count(len(facts.unsupported), 'function')} of a later version of the operating system"
        )
    return said


def named(names: list[str]) -> str:
    """Names as a list, the later ones counted."""
    unique = list(dict.fromkeys(names))
    more = f" and {len(unique) - _MOST} more" if len(unique) > _MOST else ""
    return ", ".join(unique[:_MOST]) + more
