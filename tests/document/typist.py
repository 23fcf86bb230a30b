"""Types gold as an old word-processor file: soft and hard returns, bit 7 on word ends, soft hyphens, dot commands."""

from __future__ import annotations

import random

from gold import GoldBlock

from fit.hyphenation import break_points

RECORD = 128


def type_blocks(blocks: list[GoldBlock], width: int, seed: int) -> bytes:
    """The bytes of a file that holds the blocks, padded to records."""
    rng = random.Random(seed)
    out = bytearray(b".OP\r\n.HE The Skerry Light\r\n")
    for number, block in enumerate(blocks):
        if block.kind == "heading":
            out += b"\x02" + block.text.encode("ascii") + b"\x02\r\n\r\n"
        elif block.kind in {"paragraph", "item"}:
            head = f"{block.label}  " if block.label else ""
            out += _paragraph(head, block.text, width, rng) + b"\r\n\r\n"
        elif block.kind == "furniture":
            continue
        else:
            lines = block.lines or ["   ".join(cell.ljust(22) for cell in row).rstrip() for row in block.rows]
            out += b"".join(line.encode("ascii") + b"\r\n" for line in lines) + b"\r\n"
        if number % 9 == 8:
            out += b".PA\r\n"
    return bytes(out).ljust((len(out) // RECORD + 1) * RECORD, b"\x1a")


def _paragraph(head: str, text: str, width: int, rng: random.Random) -> bytes:
    hang = len(head)
    line = bytearray(head.encode("ascii"))
    column = hang
    out = bytearray()
    pending = text.split()
    while pending:
        word = pending.pop(0)
        if column + len(word) <= width:
            line += _word(word, rng) + b" "
            column += len(word) + 1
            continue
        for place in reversed(break_points(word) if word.isalpha() else []):
            if column + place + 1 <= width:
                line += word[:place].encode("ascii") + b"\x1f"
                word = word[place:]
                break
        out += bytes(line) + b"\x8d\n"
        line = bytearray(b"\xa0" * hang)
        column = hang
        pending.insert(0, word)
    return bytes(out + line).rstrip(b" ")


def _word(word: str, rng: random.Random) -> bytes:
    """A word with bit 7 on its last letter, now and then a filling space or an unused soft hyphen."""
    data = bytearray(word.encode("ascii"))
    data[-1] |= 0x80
    places = break_points(word) if word.isalpha() else []
    if places and rng.random() < 0.2:
        data[places[0] : places[0]] = b"\x1e"
    if rng.random() < 0.2:
        data += b"\xa0"
    return bytes(data)
