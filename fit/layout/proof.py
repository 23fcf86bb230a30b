"""The proof that every word of the document came through the layout, in order.

It trusts nothing of how the lines were made: it puts the words of the lines together again, by what each line
says of its end, and compares them with those of the blocks. What the blocks lack of a plain text, its reader has counted.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from fit.document.blocks import Block, Document, Kind
from fit.document.run_together import run_together
from fit.layout.flowing import NO_BREAK_SPACE
from fit.layout.inside import ZERO_WIDTH_SPACE
from fit.layout.lines import INSERTED, Layout, Line, LineFlag
from fit.layout.tables import is_whole
from fit.width import SOFT_HYPHEN

_NOT_OF_THE_DOCUMENT = LineFlag.BLANK | LineFlag.RULE | LineFlag.REPEATED | LineFlag.ADDED
_INVISIBLE = str.maketrans({SOFT_HYPHEN: None, ZERO_WIDTH_SPACE: None, NO_BREAK_SPACE: " "})

_MARKED_UP: Final = frozenset({"html", "markdown"})
"""Formats in which tags part words."""

_Sourced = list[tuple[str, int]]
"""Characters with their sources."""


@dataclass(slots=True)
class Proof:
    """What the comparison of the document's words with the layout's found."""

    words: int = 0
    """Words of the document, furniture left out."""
    lost: list[str] = field(default_factory=list)
    added: list[str] = field(default_factory=list)
    out_of_order: list[str] = field(default_factory=list)

    @property
    def holds(self) -> bool:
        """Whether nothing was lost, added or out of order."""
        return not (self.lost or self.added or self.out_of_order)


def prove_words(document: Document, layout: Layout) -> Proof:
    """Compare the words of the blocks with the words of the lines, un-hyphenated."""
    proof = Proof()
    if document.left_out is not None:
        proof.lost += document.left_out.words
    if document.format in _MARKED_UP:
        proof.added += run_together(document.source, document.blocks)
    lines: dict[int, list[Line]] = defaultdict(list)
    reached = 0
    for line in layout.lines:
        if line.block >= 0 and not line.flags & _NOT_OF_THE_DOCUMENT:
            lines[line.block].append(line)
            if line.block < reached:
                proof.out_of_order.append(line.text)
            reached = max(reached, line.block)
    for number, block in enumerate(document.blocks):
        if block.kind is Kind.FURNITURE:
            continue
        if block.kind is Kind.TABLE and is_whole(block):
            _compare_table(block, lines[number], proof)
        elif block.kind in (Kind.PICTURE, Kind.TABLE):
            _compare_picture(block, lines[number], proof)
        else:
            texts = block.lines if block.kind is Kind.PREFORMATTED else (block.label, block.text)
            expected = [word for text in texts for word in text.chars.translate(_INVISIBLE).split()]
            _compare(expected, "".join(chars for chars, _ in _parts(lines[number])).split(), proof)
    return proof


def _parts(lines: Sequence[Line]) -> Iterator[tuple[str, Sequence[int]]]:
    """The characters of lines one after the other, with their sources: cut words whole again, a blank between others."""
    glued = True
    for line in lines:
        start, end = 0, len(line.text) - bool(line.flags & (LineFlag.HYPHEN | LineFlag.MARKED))
        if glued:
            while start < end and line.text[start] == " " and line.sources[start] == INSERTED:
                start += 1
        else:
            yield " ", (INSERTED,)
        yield line.text[start:end], line.sources[start:end]
        glued = bool(line.flags & (LineFlag.HYPHEN | LineFlag.MARKED | LineFlag.JOINED))


def _together(lines: Sequence[Line]) -> _Sourced:
    return [each for chars, sources in _parts(lines) for each in zip(chars, sources, strict=True)]


def _compare(expected: list[str], found: list[str], proof: Proof) -> None:
    """Compare words that come in one order."""
    proof.words += len(expected)
    if expected == found:
        return
    wanted, present = Counter(expected), Counter(found)
    proof.lost += (wanted - present).elements()
    proof.added += (present - wanted).elements()
    if wanted == present:
        proof.out_of_order += [word for word, other in zip(found, expected, strict=True) if word != other][:1]


def _compare_table(block: Block, lines: Sequence[Line], proof: Proof) -> None:
    """Compare the words of cells: each there, each cell in its order; those of the header may come again."""
    cell_of = {
        source: (row, column)
        for row, cells in enumerate(block.rows)
        for column, cell in enumerate(cells)
        for char, source in zip(cell.chars, cell.sources, strict=True)
        if source >= 0 and char != " "  # as drawn, an underscore may stand for the blank of a cell
    }
    found: dict[tuple[int, int], _Sourced] = defaultdict(list)
    for char, source in _together(lines):
        if source in cell_of:
            found[cell_of[source]].append((char, source))
    for row, cells in enumerate(block.rows):
        for column, cell in enumerate(cells):
            expected = [each for each in zip(cell.chars, cell.sources, strict=True) if _is_own(each)]
            present = [each for each in found[row, column] if _is_own(each)]
            if row < block.header_rows and expected:
                present = (
                    present[: len(expected)]
                    if present == expected * (len(present) // len(expected))
                    else present
                )
            _compare_sourced(cell.chars, expected, present, proof)


def _compare_picture(block: Block, lines: Sequence[Line], proof: Proof) -> None:
    """Compare the characters of each line of a drawing: all there, from left to right."""
    line_of = {
        source: number for number, text in enumerate(block.lines) for source in text.sources if source >= 0
    }
    found: dict[int, _Sourced] = defaultdict(list)
    for line in lines:
        for char, source in zip(line.text, line.sources, strict=True):
            if source in line_of:
                found[line_of[source]].append((char, source))
    for number, text in enumerate(block.lines):
        expected = _by_source(zip(text.chars, text.sources, strict=True))
        present = _by_source(found[number])
        for source, chars in present.items():
            if source in expected and _holds(chars, expected[source]):
                present[source] = expected[source]  # what an overlap shows again is in its place already
        _compare_sourced(text.chars, _pairs(expected), _pairs(present), proof)


def _by_source(chars: Iterable[tuple[str, int]]) -> dict[int, str]:
    """What stands for each source, in order: more than one character where the device lacks that of the document."""
    found: dict[int, str] = {}
    for char, source in filter(_is_own, chars):
        found[source] = found.get(source, "") + char
    return found


def _holds(chars: str, wanted: str) -> bool:
    """Whether the characters wanted are all there, in order."""
    left = iter(chars)
    return all(char in left for char in wanted)


def _pairs(found: dict[int, str]) -> _Sourced:
    return [(chars, source) for source, chars in found.items()]


def _is_own(each: tuple[str, int]) -> bool:
    """Whether it is a visible character of the document."""
    return each[1] >= 0 and not each[0].isspace() and each[0] not in (SOFT_HYPHEN, ZERO_WIDTH_SPACE)


def _compare_sourced(written: str, expected: _Sourced, present: _Sourced, proof: Proof) -> None:
    """Compare the characters of one cell or line; what differs is named by the whole of it."""
    proof.words += len(written.split())
    if expected == present:
        return
    if sorted(expected) == sorted(present):
        proof.out_of_order.append(written)
    elif Counter(expected) - Counter(present):
        proof.lost.append(written)
    else:
        proof.added.append(written)
