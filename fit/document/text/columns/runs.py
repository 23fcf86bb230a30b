"""Runs of lines with common gutters: from a line on, down as far as these are kept."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from fit.document.text.columns.anchors import anchors, mask
from fit.document.text.columns.gutters import CELLS, Run, columns_of, has_gutter
from fit.document.text.columns.long_keys import beside_name, fills, fills_alone, glued, long_key, tight_cells
from fit.document.text.columns.margin_rests import margin_rest
from fit.document.text.columns.over_gutters import run_in, sum_label, to_fill_in
from fit.document.text.columns.sentence_blanks import between_sentences
from fit.document.text.columns.settled import suits
from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, hangs, prose, sentence
from fit.document.text.signs.rules import ruled_off, segmented
from fit.document.text.signs.titled_rules import rule_behind

RECENT = 30
"""Lines of a run that show whether it is running text."""
LONGEST = 2000
"""Lines of one run at most: longer ones are tables cut in parts."""
NONE: Mapping[int, int] = {}
SETTLED = 3
"""Lines whose columns hold for the next one though its key runs into them."""


def grow(
    lines: Sequence[Line],
    taken: Sequence[object],
    start: int,
    widest_gap: int,
    shown: Mapping[int, int] = NONE,
) -> Run:
    """The longest run from ``start`` that keeps its gutters; after a blank line only what stands in its columns.

    ``shown`` has the column of the text for rows in which one blank may be all that stands before it.
    """
    union = 0
    rules: set[int] = set()
    rests: set[int] = set()
    end = start
    height = 0
    kept: list[tuple[int, int]] = []
    fixed = anchors(lines, taken, start)
    while end < len(lines) and end - start < LONGEST and taken[end] is None:
        line = lines[end]
        gap = line.gap if not line.crossing else 1
        if end > start and gap > widest_gap:
            break
        if ruled_off(line.text) and not to_fill_in(line, kept):
            if kept and (_over_note(lines, end, kept) or _ends_part(lines, end, kept)):
                break
            if not rules and height > 1 and _between_parts(lines, end):
                break
            if not rules:
                fixed = sorted(
                    {*fixed, *anchors(lines, taken, end + 1)}
                )  # the head need not name each column
            rules.add(end)
            end += 1
            continue
        if height >= SETTLED and line.indent < kept[0][0] and not has_gutter(line) and sentence(line.text):
            break
        if len(kept) > 1 and margin_rest(lines, end, kept, end - 1 in rests):
            rests.add(end)
            end += 1
            continue
        tight = (fills(lines, end, kept) or fills_alone(lines, end, kept)) if height >= SETTLED else 0
        wider = union | (
            (_mask(line) | between_sentences(lines, end))
            & ~long_key(line, kept, height)
            & ~(glued(lines[end - 2 : end + 1], kept) if height >= 2 and ":" in line.text else 0)
            & ~tight_cells(line, fixed)
            & ~(beside_name(line, kept) if rules and height >= SETTLED else 0)
            & ~tight
            & ~(run_in(line, kept) if height >= SETTLED else 0)
            & ~(sum_label(lines[end - 1], line, kept) if end - 1 in rules and len(kept) > 2 else 0)
            & ~(1 << shown[end] - 2 if end in shown else 0)
        )
        columns = columns_of(wider)
        if len(columns) < 2 or (
            kept
            and not tight
            and (gap or height > 2)
            and not suits(line, kept, columns, gap, lines[max(start, end - RECENT) : end] if gap else ())
            and not (gap and len(columns) == len(kept) and _key_goes_on(lines, end, kept))
        ):
            break
        if segmented(line.text):
            rules.add(end)
        union, kept = wider, columns
        end += 1
        height += 1
    if end - 2 > start and end - 2 in rules and _heads_text(lines, end - 1, kept):
        end -= 2
    while end > start + 1 and lines[end - 1].gap and end - 1 in rules:
        end -= 1
    return Run(start, end, kept, {index for index in rules if index < end}, rests)


def _mask(line: Line) -> int:
    """The mask of a line, a rule behind a label left out: it goes over the gutters of its table."""
    place = rule_behind(line)
    return mask(line.cells if place < 0 else line.cells[:place])


def _heads_text(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether words below a rule, in the first column only, stand right over what is no row: the rule ended the table.

    So it did where a blank line parts it from the rows, and none from the words.
    """
    if index + 1 == len(lines) or not columns:
        return False
    line, below = lines[index], lines[index + 1]
    alone = line.indent == columns[0][0] and line.end <= columns[0][1] and not has_gutter(line)
    said = not below.gap or prose(below.text) or closed(below.text) or (lines[index - 1].gap > line.gap)
    return alone and said and not below.crossing and below.indent == line.indent


def _key_goes_on(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether the first words of a key stand alone in its column, and the line right below has the rest, and its row."""
    if index + 1 == len(lines) or len(columns) < 3 or lines[index + 1].apart:
        return False
    line, below = lines[index], lines[index + 1]
    alone = line.indent == columns[0][0] == below.indent and "  " not in line.text
    parts = [match.start() for match in CELLS.finditer(below.cells)]
    beside = len(parts) > 1 and {first for first, _ in columns}.issuperset(parts)
    return alone and beside and hangs(line.text)


def _over_note(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a rule is that of a footnote: it ends before the last column, and what follows stands left of the first."""
    below = lines[index + 1] if index + 1 < len(lines) else None
    return lines[index].end <= columns[-1][0] and below is not None and below.indent < columns[0][0]


def _between_parts(lines: Sequence[Line], index: int) -> bool:
    """Whether a rule stands between blank lines: below rows that none has headed so far it ends what they are."""
    return index + 1 < len(lines) and lines[index].gap > 0 < lines[index + 1].gap


def _ends_part(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a rule parted from the rows by a blank line begins left of all columns, and what is right below it does too."""
    line, left = lines[index], columns[0][0]
    return line.gap > 0 and line.indent < left and index + 1 < len(lines) and lines[index + 1].indent < left
