"""A printer of the 1980s: sets gold blocks as plain text in many house styles, so that readers can be tried.

What it sets is known, so the gold of every sheet is exact. All choices come from a seeded generator.
"""

from __future__ import annotations

import random
import textwrap
from dataclasses import dataclass, replace

from gold import GoldBlock

from fit.hyphenation import break_points


@dataclass
class Style:
    """One house style."""

    width: int = 72
    margin: int = 0
    justified: bool = False
    first_line: int = 0
    """Indent of a paragraph's first line; paragraphs then stand without blank lines where ``tight``."""
    tight: bool = False
    hyphenate: bool = False
    item_indent: int = 2
    hanging: bool = True
    loose_items: bool = False
    page: int = 0
    """Lines a page; 0: no pages."""
    feeds: bool = True
    head: str = ""
    foot: str = ""
    """With {n} for the page number."""
    underline: str = ""
    sentence_gap: int = 1


def wrap(text: str, width: int, style: Style, first: int = 0) -> list[str]:
    """Wrap greedily, hyphenating where the style does; ``first`` cells are taken on the first line."""
    lines: list[str] = []
    line = ""
    room = width - first
    pending = text.split()
    while pending:
        word = pending.pop(0)
        gap = style.sentence_gap if line.endswith((".", "?", "!")) else 1
        candidate = f"{line}{' ' * gap}{word}" if line else word
        if len(candidate) <= room:
            line = candidate
            continue
        head, tail = _break(word, room - len(line) - gap, style)
        if head and line:
            lines.append(f"{line}{' ' * gap}{head}")
            pending.insert(0, tail)
        elif line:
            lines.append(line)
            pending.insert(0, word)
        else:
            lines.append(word)
        line = ""
        room = width
    if line:
        lines.append(line)
    return lines


def _break(word: str, room: int, style: Style) -> tuple[str, str]:
    for place in range(min(room, len(word) - 1), 1, -1):
        if word[place - 1] == "-" and word[place].isalnum() and word[place - 2].isalnum():
            return word[:place], word[place:]
    if style.hyphenate and word.isalpha() and word.islower() and len(word) > 5:
        for place in reversed(break_points(word)):
            if place + 1 <= room:
                return word[:place] + "-", word[place:]
    return "", word


def justify(lines: list[str], width: int, first: int, rng: random.Random) -> list[str]:
    """Spread the words of all lines but the last over the measure."""
    out = []
    for number, line in enumerate(lines[:-1]):
        room = width - (first if number == 0 else 0)
        parts = line.split(" ")
        if len(parts) > 4 and room - len(line) <= len(parts) * 2:
            missing = room - len(line)
            while missing > 0:
                spots = list(range(len(parts) - 1))
                rng.shuffle(spots)
                for spot in spots[:missing]:
                    parts[spot] += " "
                missing -= min(missing, len(spots))
        out.append(" ".join(parts))
    return [*out, *lines[-1:]]


def set_blocks(blocks: list[GoldBlock], style: Style, seed: int) -> list[str]:
    """The lines of the sheet, before it is cut into pages."""
    rng = random.Random(seed)
    out: list[str] = []
    pad = " " * style.margin
    measure = style.width - style.margin
    before = ""
    for block in blocks:
        if block.kind == "heading":
            out += ["", "", pad + block.text]
            if style.underline:
                out.append(pad + style.underline * len(block.text))
            out.append("")
        elif block.kind in {"paragraph", "note"}:
            if not (style.tight and before == "paragraph"):
                _blank(out)
            first = style.first_line
            lines = wrap(block.text, measure, style, first)
            if style.justified:
                lines = justify(lines, measure, first, rng)
            out += [pad + (" " * first if number == 0 else "") + line for number, line in enumerate(lines)]
        elif block.kind == "item":
            if before != "item" or style.loose_items:
                _blank(out)
            indent = style.item_indent
            hang = len(block.label) + rng.choice([1, 2]) if len(block.label) < 3 else len(block.label) + 2
            deep = indent + (hang if style.hanging else 0)
            room = measure - deep
            lines = wrap(block.text, room, style, 0 if style.hanging else hang)
            if style.justified:
                lines = justify(lines, room, 0 if style.hanging else hang, rng)
            label = block.label.ljust(hang)
            out += [
                pad + " " * indent + (label if number == 0 else " " * (deep - indent)) + line
                for number, line in enumerate(lines)
            ]
        elif block.kind == "table":
            _blank(out)
            out += [pad + "   " + line for line in set_table(block, rng)]
        else:
            _blank(out)
            out += [pad + "     " + line if line else "" for line in block.lines]
        before = block.kind
        if block.kind != "paragraph":
            continue
    return out


def _blank(out: list[str]) -> None:
    if out and out[-1]:
        out.append("")


def set_table(block: GoldBlock, rng: random.Random) -> list[str]:
    """A table in one of four makes: gutters alone, a rule under the head, a grid, bars."""
    make = rng.choice(["gutters", "rule", "grid", "bars"] if block.header_rows else ["gutters", "grid"])
    limit = 22
    widths = [min(limit, max(len(row[column]) for row in block.rows)) for column in range(len(block.rows[0]))]
    lines: list[str] = []
    rule = "+" + "+".join("-" * (width + 2) for width in widths) + "+"
    if make == "grid":
        lines.append(rule)
    for number, row in enumerate(block.rows):
        cells = [textwrap.wrap(cell, width) or [""] for cell, width in zip(row, widths, strict=True)]
        for height in range(max(map(len, cells))):
            parts = [
                (cell[height] if height < len(cell) else "").ljust(width)
                for cell, width in zip(cells, widths, strict=True)
            ]
            if make == "grid":
                lines.append("| " + " | ".join(parts) + " |")
            elif make == "bars":
                lines.append(" | ".join(parts).rstrip())
            else:
                lines.append("   ".join(parts).rstrip())
        if make == "grid":
            lines.append(rule)
        elif number + 1 == block.header_rows and make == "rule":
            lines.append("   ".join("-" * width for width in widths))
        elif number + 1 == block.header_rows and make == "bars":
            lines.append("-+-".join("-" * width for width in widths))
    return lines


def paginate(lines: list[str], style: Style) -> str:
    """Cut the sheet into pages with heads and feet."""
    if not style.page:
        return "\n".join(lines).strip("\n") + "\n"
    depth = style.page - (3 if style.head else 0) - (3 if style.foot else 0)
    out: list[str] = []
    number = 1
    place = 0
    while place < len(lines):
        while place < len(lines) and not lines[place]:
            place += 1
        part = lines[place : place + depth]
        place += depth
        if style.head:
            out += ["", style.head.replace("{n}", str(number)), ""]
        out += part
        if style.foot:
            out += [""] * (depth - len(part))
            out += ["", style.foot.replace("{n}", str(number)).center(style.width).rstrip(), ""]
        if style.feeds and place < len(lines):
            out.append("\f")
        number += 1
    return "\n".join(out).replace("\f\n", "\f") + "\n"


def press(blocks: list[GoldBlock], style: Style, seed: int) -> str:
    """The document that a printer makes of the blocks in one style."""
    return paginate(set_blocks(blocks, style, seed), style)


def styles(seed: int) -> Style:
    """A style drawn by a seed."""
    rng = random.Random(seed)
    style = Style(
        width=rng.choice([58, 64, 65, 70, 72, 76, 79]),
        margin=rng.choice([0, 0, 3, 5, 8]),
        justified=rng.random() < 0.4,
        hyphenate=rng.random() < 0.4,
        item_indent=rng.choice([0, 2, 4, 5]),
        hanging=rng.random() < 0.8,
        loose_items=rng.random() < 0.4,
        underline=rng.choice(["", "", "-", "="]),
        sentence_gap=rng.choice([1, 1, 2]),
    )
    if rng.random() < 0.35:
        style = replace(style, first_line=rng.choice([2, 3, 5]), tight=rng.random() < 0.6)
    if rng.random() < 0.6:
        style = replace(
            style,
            page=rng.choice([54, 58, 60, 66]),
            feeds=rng.random() < 0.7,
            head=rng.choice(
                ["", "Keeper's Manual                              Page {n}", "The Skerry Light"]
            ),
            foot=rng.choice(["{n}", "- {n} -", "Page {n}", "[{n}]"]),
        )
    return style
