"""Examples between a `>` at the end of a line and a `<` in the first column; sentences and tables there are read as such."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

SAMPLES = [
    ["        x= y= lamp= 3;", "        a= b= wick= 4;"],
    ["        1if (dusk) {", "        2    light();", "        3}"],
    ["        ws field ws lamp ws field ws lamp", "        ws field ws wick ws field ws wick"],
    ["        let g:lamp = 'yes'"],
]
BOX = [
    "        +-----+------+",
    "        | oil | wick |",
    "        +-----+------+",
    "        | 2   | 3    |",
    "        +-----+------+",
]
TOLD = [
    "        In the night the lamp is lit by the keeper who",
    "        has the watch, and not by the boy.",
]


def read(*samples: list[str], close: str = "<") -> list[Block]:
    lead = "        The keeper writes the following into the book of the lamp: >\n\n"
    text = "".join(
        f"{lead}{chr(10).join(sample)}\n{close}       All of it is then lined up by the boy.\n\n"
        for sample in samples
    )
    return list(read_text(text, "lamp", "ascii").blocks)


def codes(blocks: list[Block]) -> list[list[str]]:
    return [[line.chars for line in block.lines] for block in blocks if block.code]


def test_samples_keep_their_lines() -> None:
    assert codes(read(*SAMPLES)) == [[line[8:] for line in sample] for sample in SAMPLES]


def test_a_sign_alone_ends_the_sample() -> None:
    text = "Write this: >\n    lamp one\n    lamp two\n<\nand this: >\n    wick one\n<\nand that: >\n    bell\n<\n"
    assert [lines[-1] for lines in codes(list(read_text(text, "lamp", "ascii").blocks))] == ["<", "<", "<"]


def test_sentences_and_tables_between_the_signs_are_read() -> None:
    kinds = [block.kind for block in read(*SAMPLES, BOX)]
    assert Kind.TABLE in kinds or Kind.PICTURE in kinds
    assert " ".join(" ".join(TOLD).split()) in [block.text.chars for block in read(*SAMPLES, TOLD)]


def test_arrows_at_line_ends_alone_show_no_samples() -> None:
    assert codes(read(SAMPLES[2], SAMPLES[2][:1], close=" ")) == []
