"""Units to blocks: which kind each is, in order."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import concat, flow, flow_lines, fold, keep_lines
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.key_lines import is_key_line, key_line, over_another_term
from fit.document.text.running.lone_sentences import lone_sentence
from fit.document.text.running.placed import Levels, Placed
from fit.document.text.running.single_lines import end_of_lines, titles_and_lines
from fit.document.text.running.unit import Unit
from fit.document.text.running.unit_titles import bare_titles, ruled_titles
from fit.document.text.signs.rules import remark_rule, ruled_off

LONGEST_RULE = 32
"""Cells of a rule that are kept: it was as long as the line was wide."""


def classify(
    lines: Sequence[Line], units: Sequence[Unit], chunks: dict[int, Chunk], base: int, hyphens: Hyphens
) -> list[Placed]:
    """The blocks of the units, in order."""
    placed: list[Placed] = []
    levels = Levels(base)
    place = 0
    while place < len(units):
        unit = units[place]
        line = lines[unit.start]
        single = unit.end - unit.start == 1
        if chunks[unit.start].shown:
            end = chunks[unit.start].end
            part = lines[unit.start : end]
            level = levels.of(min(one.indent for one in part), None)
            block = Block(Kind.PREFORMATTED, lines=keep_lines(part), level=level, code=True)
            placed.append(Placed(block, unit.start, end))
            place += len(part)
        elif titles := ruled_titles(lines, unit, hyphens) or bare_titles(
            lines, units, place, chunks, placed, levels, hyphens
        ):
            placed += titles
            while place < len(units) and units[place].start < titles[-1].end:
                place += 1
        elif single and ruled_off(line.text):
            placed.append(Placed(_rule(line), unit.start, unit.end))
            place += 1
        elif over_another_term(lines, units, place):
            level = levels.of(line.indent, lines[unit.start + 1].indent)
            label = fold(line.piece(line.indent, line.end))
            placed.append(Placed(Block(Kind.ITEM, label=label, level=level), unit.start, unit.end))
            place += 1
        elif unit.marker is not None or unit.key:
            placed.append(_item(lines, unit, levels, hyphens))
            place += 1
        elif single and is_key_line(lines, units, place, chunks):
            placed.append(key_line(lines, unit, units[place + 1], levels, hyphens))
            place += 2
        elif single and (chunks[unit.start].fixed or not lone_sentence(lines, unit, chunks)):
            end = end_of_lines(lines, units, place, chunks)
            placed.extend(titles_and_lines(lines, units[place:end], chunks, levels, hyphens))
            place = end
        else:
            part = lines[unit.start : unit.end]
            level = levels.of(min(one.indent for one in part), None)
            block = Block(Kind.PARAGRAPH, flow_lines(part, hyphens), level=level)
            placed.append(Placed(block, unit.start, unit.end))
            place += 1
    return placed


def _item(lines: Sequence[Line], unit: Unit, levels: Levels, hyphens: Hyphens) -> Placed:
    line = lines[unit.start]
    label_end = line.indent + (len(unit.marker.label) if unit.marker else unit.key)
    if unit.key:
        # Three dots may be a pause, or say that more of the kind may follow.
        led = re.sub(r"(?:\s*\.{4,}|(?: \.){3,})$", "", line.cells[line.indent : label_end])
        label_end = line.indent + len(led) if led.strip() else label_end  # dots alone lead from no word
    label = fold(line.piece(line.indent, label_end))
    level = levels.of(line.indent, unit.text)
    pieces = [one.piece(0, one.end) for one in lines[unit.start : unit.end]]
    pieces[0] = line.piece(max(unit.text, label_end), line.end)
    if unit.cut:
        below = lines[unit.start + 1]
        rest = fold(below.piece(below.indent, unit.text))
        tight = label.chars.endswith("+") and not label.chars.endswith(" +")
        label = concat([label, rest]) if tight else flow([label, rest], hyphens)
        pieces[1] = below.piece(unit.text, below.end)
    return Placed(Block(Kind.ITEM, flow(pieces, hyphens), label=label, level=level), unit.start, unit.end)


def _rule(line: Line) -> Block:
    """A rule between parts of the text, no longer than the smallest screens are wide."""
    close = 2 * remark_rule(line.text)
    short = line.piece(line.indent, line.indent + LONGEST_RULE)
    if close and len(line.text) > LONGEST_RULE:
        short = concat(
            [
                line.piece(line.indent, line.indent + LONGEST_RULE - close),
                line.piece(line.end - close, line.end),
            ]
        )
    note = "rule shortened" if len(line.text) > LONGEST_RULE else ""
    return Block(Kind.PREFORMATTED, lines=(short,), note=note)
