r"""An 8-bit program to a session, in a sandbox.

    program = load_program(Path("LAMP.COM"))            what it is, or why it is no 8-bit program
    run = run_program(program, [b"look\r", b"y"])       with a script: a step at each wait
    played = play(program, seed=1)                      without one: keys are found
    needs = assess(program, played.runs)                its processor, and how much memory it needs

`Run.session` is the session with exact waits; the rest of `Run` is evidence: files, drives, ports, video
memory, opcodes. `Host` is the machine itself, for whoever wants to type while the program runs.

A program can do no harm: it sees folders of the host as disks, and whatever it writes stays in memory.
`keep_changed(run.changed_files(), folder)` is for a command that the user told where to put it.

Typing while it runs: ``host = Host(program, Setting())``; ``wait = host.advance(frames)`` runs for a while
(a frame is 100,000 clock ticks) and returns how it waits, or None; ``host.console.output`` holds what it
printed until then; ``host.type_keys(keys)`` types, at a wait or ahead; ``host.ending`` tells when it is
over, ``host.end_script()`` ends it, and ``report(host)`` gives its `Run`. At a trial poll or where it
repaints, go on with ``advance`` if nobody types: it may be computing. `script_of` makes a key script of what
was typed; `ScriptKeys` types one.
"""

from __future__ import annotations

from fit.machine.assess import Assessment, assess
from fit.machine.choices import terminal_choice
from fit.machine.cpu import Processor
from fit.machine.drives import ChangedFile
from fit.machine.ending import UNLIMITED, Ending, EndingKind, Limits
from fit.machine.host import Host
from fit.machine.keeping import keep_changed
from fit.machine.layout import HIGHEST_TOP, LOWEST_TOP
from fit.machine.loader import Program, load_program
from fit.machine.memory_need import MemoryNeed
from fit.machine.play import PLAY_LIMITS, Budget, Play, play
from fit.machine.processor import ProcessorClass, ProcessorNeed
from fit.machine.run import Run, blocks_on_disk, report, run_program, seconds_to_send, session_of
from fit.machine.script import ScriptKeys, script_of
from fit.machine.setting import Setting
from fit.machine.submitted import submitted
from fit.machine.traces import FilesUsed
from fit.machine.waits import WaitKind

__all__ = [
    "HIGHEST_TOP",
    "LOWEST_TOP",
    "PLAY_LIMITS",
    "UNLIMITED",
    "Assessment",
    "Budget",
    "ChangedFile",
    "Ending",
    "EndingKind",
    "FilesUsed",
    "Host",
    "Limits",
    "MemoryNeed",
    "Play",
    "Processor",
    "ProcessorClass",
    "ProcessorNeed",
    "Program",
    "Run",
    "ScriptKeys",
    "Setting",
    "WaitKind",
    "assess",
    "blocks_on_disk",
    "keep_changed",
    "load_program",
    "play",
    "report",
    "run_program",
    "script_of",
    "seconds_to_send",
    "session_of",
    "submitted",
    "terminal_choice",
]
