"""How long reading and laying out a plain manual takes, beside `textwrap` in the same run.

    python tests/benchmarks/bench_layout.py [BYTES ...]

The bar for 250 kB: under 3 times `textwrap.wrap` of the paragraphs at 40 columns, or under 2 s, whichever is
more. Each further size should take in proportion. Without sizes: 250 kB, 2.5 MB and 10 MB.
"""

from __future__ import annotations

import random
import sys
import textwrap
import time

from fit.document.text import read_text
from fit.layout.compose import lay_out
from fit.layout.proof import prove_words
from fit.layout.settings import LayoutSettings

BAR_SECONDS = 2.0
BAR_TIMES = 3.0

WORDS = str.split(
    "the a of and to in is it was for on with at by from as that this when where after before under over lamp wick "
    "oil keeper lighthouse gallery stairs tide water harbour channel signal boat landing weather barometer lantern "
    "reservoir chimney lens prism shutter clockwork revolving obviously carefully immediately ordinarily "
    "particularly observation instruction requirement replacement arrangement considerable necessary different "
    "morning evening midnight watch log book record entry page column number"
)


def sentence(rng: random.Random) -> str:
    words = rng.choices(WORDS, k=rng.randint(6, 22))
    return " ".join(words).capitalize() + rng.choice("........?:")


def manual(size: int) -> str:
    """A plain manual of about ``size`` bytes: headings, paragraphs of 72 columns, lists."""
    rng = random.Random(8)
    parts: list[str] = []
    written = 0
    chapter = 0
    while written < size:
        text = " ".join(sentence(rng) for _ in range(rng.randint(1, 7)))
        kind = rng.random()
        if kind < 0.1:
            chapter += 1
            part = f"{chapter}. {' '.join(rng.choices(WORDS, k=3)).upper()}"
        elif kind < 0.3:
            part = "\n".join(
                textwrap.fill(f"- {sentence(rng)}", 72, subsequent_indent="  ")
                for _ in range(rng.randint(2, 5))
            )
        else:
            part = textwrap.fill(text, 72)
        parts.append(part)
        written += len(part) + 2
    return "\n\n".join(parts) + "\n"


def run(size: int) -> None:
    source = manual(size)
    start = time.perf_counter()
    document = read_text(source, "manual", "ascii")
    read = time.perf_counter()
    layout = lay_out(document, LayoutSettings())
    laid_out = time.perf_counter()
    for block in document.blocks:
        textwrap.wrap(block.text.chars, 40)
    wrapped = time.perf_counter()
    proof = prove_words(document, layout)
    proved = time.perf_counter()
    reference = wrapped - laid_out
    whole = laid_out - start
    print(
        f"{len(source) / 1e6:6.2f} MB  textwrap {reference:6.2f} s  read {read - start:6.2f} s  "
        f"layout {laid_out - read:6.2f} s  proof {proved - wrapped:6.2f} s  "
        f"whole {whole:6.2f} s = {whole / reference:4.1f} x textwrap, {len(source) / whole / 1e3:4.0f} kB/s"
    )
    after = layout.after
    print(
        f"           {after.lines} lines, slack squared {after.raggedness:.1f}, {after.hyphens} hyphens, "
        f"{after.pages} pages ({layout.naive_pages} naive), {after.page_faults} faults, words kept: {proof.holds}"
    )
    if size <= 300_000:
        bar = max(BAR_SECONDS, BAR_TIMES * reference)
        print(f"           bar {bar:.2f} s: {'kept' if whole < bar else 'MISSED'}")


if __name__ == "__main__":
    for each in [int(argument) for argument in sys.argv[1:]] or [250_000, 2_500_000, 10_000_000]:
        run(each)
