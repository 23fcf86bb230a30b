"""The whole of ``fit reflow`` on documents of growing size, format by format: time must grow as they do.

Run by hand: ``python tests/benchmarks/bench_reflow.py [MEGABYTES]`` (4 unless told otherwise). Each size runs in a
process of its own, so that its memory is its own; ``textwrap`` over the same paragraphs stands beside the text.
"""

from __future__ import annotations

import random
import resource
import subprocess
import sys
import tempfile
import textwrap
import time
from pathlib import Path

WORDS = [
    "the",
    "lamp",
    "keeper",
    "of",
    "light",
    "wick",
    "oil",
    "is",
    "trimmed",
    "at",
    "dusk",
    "and",
    "burns",
    "until",
    "sun",
    "rises",
    "over",
    "rock",
    "harbour",
    "boat",
    "comes",
    "on",
    "tuesdays",
    "weather",
    "allowing",
    "signal",
    "gallery",
    "reservoir",
    "glass",
    "falling",
    "wind",
    "from",
    "south-west",
    "clockwork",
    "two",
    "hundred",
    "turns",
]
NESTED = ("<div>", "<ul><li>", "<table><tr><td>")


def paragraphs(size: int) -> list[str]:
    """Sentences of the station, about ``size`` characters of them, always the same."""
    chance = random.Random(14)
    made: list[str] = []
    while size > 0:
        made.append(
            " ".join(chance.choice(WORDS) for _ in range(chance.randrange(40, 120))).capitalize() + "."
        )
        size -= len(made[-1])
    return made


def documents(size: int) -> dict[str, str]:
    """One document a format; and many short lists, and many pieces of HTML in Markdown."""
    texts = paragraphs(size)
    steps = "1. Trim the wick.\n\n2. Fill the oil.\n\n3. Wind the clock."
    return {
        "lists.txt": "\n\n".join(f"{textwrap.fill(text[:70], 76)}:\n\n{steps}" for text in texts),
        "pieces.md": "\n\n".join(f"<p align=left>{text[:70]}</p>\n\n{text[70:200]}" for text in texts),
        "big.txt": "\n\n".join(textwrap.fill(text, 76) for text in texts),
        "big.md": "\n\n".join(f"**{text[:9]}**{textwrap.fill(text[9:], 76)}" for text in texts),
        "big.html": "<!doctype html>" + "\n".join(f"<p>{textwrap.fill(text, 76)}" for text in texts),
        "big.7": ".TH BIG 7\n.SH NAME\n" + "\n.PP\n".join(textwrap.fill(text, 76) for text in texts),
    }


def run(path: Path) -> tuple[float, int]:
    """Processor seconds and the largest memory in MB of one run of the command."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    command = [sys.executable, "-c", "from fit.cli import main; main()", "reflow", str(path)]
    with tempfile.TemporaryFile() as pages:
        subprocess.run(command, stdout=pages, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, after.ru_maxrss // 1024


def main() -> None:
    most = float(sys.argv[1]) if len(sys.argv) > 1 else 4.0
    with tempfile.TemporaryDirectory() as folder:
        for share in (0.25, 0.5, 1.0):
            size = int(most * share * 1e6)
            start = time.process_time()
            for text in paragraphs(size):
                textwrap.wrap(text, 40)
            print(f"{size:>10,} characters   textwrap alone {time.process_time() - start:6.2f} s")
            for name, text in documents(size).items():
                path = Path(folder) / name
                path.write_text(text, "utf-8")
                seconds, memory = run(path)
                print(
                    f"{'':>10}   {name:<10} {seconds:6.2f} s   {seconds / size * 1e6:5.2f} s/MB   at most {memory} MB"
                )
        for tag in NESTED:
            path = Path(folder) / "nested.html"
            path.write_text(tag * int(most * 1e6 / len(tag)) + "lamp", "utf-8")
            seconds, memory = run(path)
            print(f"{'':>10}   {tag} nested  {seconds:6.2f} s   at most {memory} MB")


if __name__ == "__main__":
    main()
