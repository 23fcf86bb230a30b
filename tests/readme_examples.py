"""The examples of README.md: console blocks are run, and their output is held against what stands there.

``python tests/readme_examples.py`` writes the outputs anew. A line of ``...`` at the end of a block stands for the
rest of the output, and a number behind it (``... 12``) for how many lines are shown when it is written anew.
"""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"
BLOCK = re.compile(r"```console\n\$ (?P<command>[^\n]+)\n(?P<output>.*?)```", re.DOTALL)
SHOWN = 24
"""Lines that an example shows of an output that it cuts short."""


def run(command: str) -> str:
    """What a command prints, in a folder that holds the corpus and nothing else; 80 columns, plain."""
    words = shlex.split(command)
    environment = os.environ | {"NO_COLOR": "1", "COLUMNS": "80", "LANG": "C.UTF-8"}
    environment["PATH"] = f"{Path(sys.executable).parent}{os.pathsep}{environment['PATH']}"
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "corpus").symlink_to(ROOT / "corpus")
        done = subprocess.run(
            [str(Path(sys.executable).parent / words[0]), *words[1:]],
            capture_output=True,
            cwd=folder,
            env=environment,
            text=True,
            check=True,
        )
    return done.stdout + done.stderr


def blocks() -> list[tuple[str, str]]:
    """Each command of the README with the output that stands there."""
    return [(match["command"], match["output"]) for match in BLOCK.finditer(README.read_text("utf-8"))]


def agrees(output: str, shown: str) -> bool:
    """Whether the output is what is shown, or begins so where it was cut short."""
    cut = shown.removesuffix("...\n")
    return output.startswith(cut) if cut != shown else output == shown


def rewrite() -> None:
    """Write the outputs of all examples anew."""

    def renewed(match: re.Match[str]) -> str:
        output = run(match["command"])
        if match["output"].endswith("...\n"):
            output = "".join(output.splitlines(keepends=True)[:SHOWN]) + "...\n"
        return f"```console\n$ {match['command']}\n{output}```"

    README.write_text(BLOCK.sub(renewed, README.read_text("utf-8")), "utf-8")


if __name__ == "__main__":
    rewrite()
