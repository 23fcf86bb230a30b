"""Record the sessions of all demo programs again, with their key scripts: ``python corpus/record.py [NAME...]``.

The same as ``fit capture`` with ``--keys`` for each, at 80x25, and at 40x8 for the programs that look at the
size. The times are left out of the files: where a program waited is known from the inputs, and without times
a second recording is the same file, byte for byte.
"""

from __future__ import annotations

import argparse
import os
import sys
from dataclasses import replace
from pathlib import Path

from fit.session import Clock, Session
from fit.source.capture import capture
from fit.source.keys import read_key_script
from fit.source.session_file import write_session_file
from fit.units import Size

CORPUS = Path(__file__).parent
TERMINAL = "xterm"
BIG, SMALL = Size(25, 80), Size(8, 40)
LOOK_AT_SIZE = ("drill", "logbook")
"""The programs that ask how large their terminal is; they have a ``small.jsonl`` too."""


def programs() -> list[str]:
    """The names of the demo programs, sorted."""
    return sorted(keys.parent.name for keys in CORPUS.glob("*/keys"))


def record(name: str, size: Size) -> Session:
    """Run a program with its key script on a screen of ``size``; the session has no times."""
    keys = CORPUS / name / "keys"
    steps = read_key_script(keys.read_bytes(), str(keys))
    program = f"corpus/{name}/{name}.py"
    session = capture([sys.executable, program], size=size, terminal=TERMINAL, steps=steps)
    events = tuple(replace(event, time=None) for event in session.events)
    return replace(session, events=events, clock=Clock(), command=f"python3 {program}")


def main() -> None:
    """Record the programs that were named, or all of them."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument(
        "names", nargs="*", metavar="NAME", help=f"of {', '.join(programs())}; all without one"
    )
    names = parser.parse_args().names
    if unknown := sorted({*names} - {*programs()}):
        parser.error(f"no demo program is named {', '.join(unknown)}")
    os.chdir(CORPUS.parent)  # so that the recorded commands are the same wherever the project lies
    for name in names or programs():
        write_session_file(CORPUS / name / "session.jsonl", record(name, BIG))
        if name in LOOK_AT_SIZE:
            write_session_file(CORPUS / name / "small.jsonl", record(name, SMALL))
        print(f"recorded {name}")


if __name__ == "__main__":
    main()
