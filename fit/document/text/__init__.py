"""Plain text, hard-wrapped at any width, to blocks.

lines/     characters to lines: line ends, tabs, overstrikes, attributes
pages/     lines to the text body: furniture out, footnotes aside
parts.py   the body to blocks: boxes/, titles/contents.py, columns/, signs/pictures.py and tables/ first, then the
           running text between them: lists/, running/, and what the document does again and again: habits/
make.py    lines to flowing text: white space, line-end hyphens (hyphens.py), slashes (paths.py)
left_out.py         what of the lines none of the blocks has
signs/     what all of these ask of a line or two: prose, code, a marker, a drawing, going on in the next line
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.blocks import Block, Document, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.left_out import left_out
from fit.document.text.line import Line
from fit.document.text.lines.reading import read_lines
from fit.document.text.make import keep_lines
from fit.document.text.pages.body import Furniture, part_body
from fit.document.text.pages.notes import find_notes, goes_on, note_blocks
from fit.document.text.parts import read_parts
from fit.document.text.running.placed import Placed
from fit.document.text.signs.rules import ruled_off

__all__ = ["left_out", "read_body", "read_text"]


def read_text(source: str, name: str, encoding: str) -> Document:
    """The document that ``source``, a decoded plain text, is."""
    lines, remarks = read_lines(source)
    blocks = read_body(lines, Hyphens(source))
    return Document(source, blocks, "text", encoding, name, tuple(remarks), left_out(lines, blocks))


def read_body(lines: Sequence[Line], hyphens: Hyphens) -> tuple[Block, ...]:
    """The blocks of lines whose characters are resolved; ``hyphens`` are those of the whole document."""
    body, furniture = part_body(list(lines))
    ends = sorted(
        {index for index, line in furniture if not line.aside}
        | {i for i, line in enumerate(body) if line.crossing}
        | {len(body)}
    )
    notes = find_notes(body, [end for end in ends if end])
    kept, moved, shift = _without(body, notes, hyphens)
    placed = read_parts(kept, hyphens)
    return tuple(_merge(placed, moved, [(shift[index], line) for index, line in furniture]))


def _without(
    body: Sequence[Line], notes: Sequence[tuple[int, int]], hyphens: Hyphens
) -> tuple[list[Line], list[tuple[int, Block]], list[int]]:
    """The body without its footnotes; the footnotes with the place they stood at; old indices to new ones."""
    kept: list[Line] = []
    shift: list[int] = []
    place = 0
    whole: list[tuple[int, list[Line]]] = []
    for start, end in [*notes, (len(body), len(body))]:
        for index in range(place, start):
            shift.append(len(kept))
            kept.append(body[index])
        shift.extend([len(kept)] * (end - start))
        note = list(body[start:end])
        if whole and note and goes_on(whole[-1][1], note):
            whole[-1][1].extend(note[1:] if ruled_off(note[0].text) else note)
        elif note:
            whole.append((len(kept), note))
        place = end
    moved = [(at, block) for at, note in whole for block in note_blocks(note, hyphens)]
    shift.append(len(kept))
    return kept, moved, shift


def _merge(placed: Sequence[Placed], moved: Sequence[tuple[int, Block]], furniture: Furniture) -> list[Block]:
    """Blocks in order, footnotes and furniture after the block in which their page ends."""
    aside: list[tuple[int, Block]] = list(moved)
    for index, line in furniture:
        aside.append((index, Block(Kind.FURNITURE, lines=keep_lines([line]))))
    aside.sort(key=lambda entry: entry[0])
    blocks: list[Block] = []
    waiting = 0
    for number, one in enumerate(placed):
        while waiting < len(aside) and aside[waiting][0] <= one.start:
            blocks.append(aside[waiting][1])
            waiting += 1
        blocks.append(one.block)
        last_of_run = number + 1 == len(placed) or placed[number + 1].start != one.start
        while last_of_run and waiting < len(aside) and aside[waiting][0] < one.end:
            blocks.append(aside[waiting][1])
            waiting += 1
    blocks.extend(block for _, block in aside[waiting:])
    return blocks
