"""Runs of lines with blank gutters: where the gutters are, and whether the text beside them stands in columns.

Masks are integers with one bit a cell, bit 0 the first column: the union of a run's masks shows its gutters.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from fit.document.text.columns.anchors import anchors, mask
from fit.document.text.columns.run_in_keys import fills, fills_alone, run_in
from fit.document.text.columns.sums import sum_label
from fit.document.text.line import Line
from fit.document.text.signs.code import code, command
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.pictures import ruled_off, segmented
from fit.document.text.signs.titled_rules import rule_behind

GUTTER = 2
"""Cells of blank that part two columns, at least."""
RECENT = 30
"""Lines of a run that show whether it is running text."""
LONGEST = 2000
"""Lines of one run at most: longer ones are tables cut in parts."""
STRAY = 2
"""Wide blanks inside the cells of a row before the last, at most."""
SETTLED = 3
"""Lines whose columns hold for the next one though its key runs into them."""
NEAR = 4
"""Lines around one that show whether it has a column where a sentence starts."""
FULL = 20
"""Cells of a key of several words that fills its column, at most: text is likely to have a word's end anywhere."""
_SENTENCES = re.compile(r"(?:(?<=\S \S)\S*|^ *[a-z]{2,}[)\]\"']?)[.?!][\"')]?( {2,3})(?=\S)")
_WIDE_BLANK = re.compile(r"(?<=\S) {2,}(?=\S)")
_SECTION = re.compile(r"(?:\d+\.|[A-Z]{1,2}\.)\d+(?:\.\d+)* ")
CELLS = re.compile(r"\S+(?: \S+)*")


@dataclass(slots=True)
class Run:
    """Lines ``start <= i < end`` with common gutters."""

    start: int
    end: int
    columns: list[tuple[int, int]]
    """Half-open cells of each column; the last one is open to the right."""
    rules: set[int] = field(default_factory=set)
    """Indices of its lines that are rules."""
    heads: set[int] = field(default_factory=set)
    """Indices of its lines that are running heads or feet between pages of columns."""


def has_gutter(line: Line) -> bool:
    """Whether the line has a blank wide enough inside."""
    return _WIDE_BLANK.search(line.text) is not None


def columns_of(union: int) -> list[tuple[int, int]]:
    """The columns that the gutters of a union part, as half-open cells."""
    columns: list[tuple[int, int]] = []
    start = end = -1
    bits = bin(union)[:1:-1]
    for column, bit in enumerate(bits):
        if bit == "1":
            if start < 0:
                start = column
            elif column - end >= GUTTER:
                columns.append((start, end))
                start = column
            end = column + 1
    if start >= 0:
        columns.append((start, end))
    return columns


def grow(lines: Sequence[Line], taken: Sequence[object], start: int, widest_gap: int) -> Run:
    """The longest run from ``start`` that keeps its gutters; after a blank line only what stands in its columns."""
    union = 0
    rules: set[int] = set()
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
            if kept and _over_note(lines, end, kept):
                break
            rules.add(end)
            end += 1
            continue
        tight = (fills(lines, end, kept) or fills_alone(lines, end, kept)) if height >= SETTLED else 0
        wider = union | (
            (_mask(line) | between_sentences(lines, end))
            & ~_long_key(line, kept, height)
            & ~_tight(line, fixed)
            & ~(run_in(line, kept) if height >= SETTLED else 0)
            & ~tight
            & ~(sum_label(lines[end - 1], line, kept) if end - 1 in rules and len(kept) > 2 else 0)
        )
        columns = columns_of(wider)
        if len(columns) < 2 or (
            kept
            and not tight
            and (gap or height > 2)
            and not _suits(line, kept, columns, gap, lines[max(start, end - RECENT) : end] if gap else ())
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
    return Run(start, end, kept, {index for index in rules if index < end})


def _mask(line: Line) -> int:
    """The mask of a line, a rule behind a label left out: it goes over the gutters of its table."""
    place = rule_behind(line)
    return mask(line.cells if place < 0 else line.cells[:place])


def _heads_text(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether words below a rule, in the first column only, stand right over what is no row: the rule ended the table.

    So it did where a blank line parts it from the rows, and none from the words.
    """
    if index + 1 == len(lines):
        return False
    line, below = lines[index], lines[index + 1]
    alone = line.indent == columns[0][0] and line.end <= columns[0][1] and not has_gutter(line)
    said = not below.gap or prose(below.text) or closed(below.text) or (lines[index - 1].gap > line.gap)
    return alone and said and not below.crossing and below.indent == line.indent


def between_sentences(lines: Sequence[Line], index: int) -> int:
    """The blanks between two sentences of a line, as a mask: those at whose end no text near it starts."""
    line = lines[index]
    if ".  " not in line.text and "?  " not in line.text and "!  " not in line.text:
        return 0
    near = [lines[other] for other in range(max(0, index - NEAR), min(len(lines), index + NEAR + 1))]
    blanks = 0
    for match in _SENTENCES.finditer(line.cells):
        start, end = match.span(1)
        if not any(_starts_at(other, end) for other in near if other is not line):
            blanks |= (1 << end) - (1 << start)
    return blanks


def runs_through(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is running text in the middle of a paragraph, wide blanks in it only where sentences end."""
    line, above = lines[index], lines[index - 1]
    if not index or line.apart or above.indent != line.indent or not (prose(line.text) and prose(above.text)):
        return False
    return len(columns_of(mask(line.cells) | between_sentences(lines, index))) < 2


def _starts_at(line: Line, column: int) -> bool:
    """Whether text starts at a column, after a gutter or as the first of the line."""
    return line.cells[column : column + 1].strip(" ") != "" and not line.cells[
        max(0, column - GUTTER) : column
    ].strip(" ")


def to_fill_in(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line is an empty line of a form: underscores alone, where a column after the first begins."""
    return set(line.text) == {"_"} and any(line.indent == first for first, _ in columns[1:])


def raise_run(lines: Sequence[Line], taken: Sequence[object], run: Run, floor: int) -> None:
    """Let a run start higher: with rows whose cells one blank parts, or with the text beside a label centred below.

    Let it end lower, too, with rows whose keys fill their column as another one does.
    """
    if len(run.columns) < 2:
        return
    start = run.start
    while start > floor and near(lines, taken, start) and _tight_row(lines[start - 1], run.columns):
        start -= 1
    if start == run.start and start > floor and near(lines, taken, start) and _wrapped_key(lines, run):
        start -= 1
    if start == run.start:
        while start > floor and near(lines, taken, start) and _beside_label(lines[start - 1], run.columns):
            start -= 1
        if start < run.start and not centred(lines, Run(start, run.end, run.columns)):
            return
    run.rules |= {index for index in range(start, run.start) if segmented(lines[index].text)}
    run.start = start
    while run.end < len(lines) and near(lines, taken, run.end) and _full_row(lines, run):
        run.end += 1


def _wrapped_key(lines: Sequence[Line], run: Run) -> bool:
    """Whether the line above is the beginning of the first row's key, which goes on in small letters beside its cells."""
    above, first = lines[run.start - 1], lines[run.start]
    fits = above.indent == run.columns[0][0] and above.end + GUTTER <= run.columns[1][0]
    fits = fits and " " in above.text and not closed(above.text)
    fits = fits and not (code(above.text) or command(above.text))
    return fits and first.indent == above.indent and starts_small(first.text) and not has_gutter(above)


def centred(lines: Sequence[Line], run: Run) -> bool:
    """Whether rows of a run start, after a blank line, with the text beside a label that stands lower: two at least."""
    first = run.start == 0 or _label_below(lines, run.start, run.columns)
    later = (_label_below(lines, index, run.columns) for index in range(run.start + 1, run.end))
    return first and _beside_label(lines[run.start], run.columns) and any(later)


def _over_note(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a rule is that of a footnote: it ends before the last column, and what follows stands left of the first."""
    below = lines[index + 1] if index + 1 < len(lines) else None
    return lines[index].end <= columns[-1][0] and below is not None and below.indent < columns[0][0]


def near(lines: Sequence[Line], taken: Sequence[object], index: int) -> bool:
    """Whether a line that is free stands right below the one above it, which is free too."""
    return taken[index] is None and taken[index - 1] is None and not lines[index].apart


def _tight_row(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line without gutters has a cell at the start of each column, and a single word before the second.

    Several words may stand there that fill the column of the keys up to its last cell but one.
    """
    if len(columns) < 2 or line.indent != columns[0][0] or has_gutter(line):
        return False
    begins = all(
        line.cells[start - 1 : start] == " " and line.cells[start : start + 1] not in {"", " "}
        for start, _ in columns[1:]
    )
    key = line.cells[line.indent : columns[1][0]].rstrip()
    if not begins or " " not in key:
        return begins
    full = len(key) == columns[1][0] - 1 - line.indent <= FULL and line.cells[columns[1][0]].isalnum()
    return full and not (prose(line.text) or closed(line.text))


def _full_row(lines: Sequence[Line], run: Run) -> bool:
    """Whether the line below a run is a row of cells that one blank parts, its key of several words as wide as another's."""
    return _wide_key(lines[run.end], run.columns) and any(
        _wide_key(line, run.columns) for line in lines[run.start : run.end]
    )


def _wide_key(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    return " " in line.cells[line.indent : columns[1][0] - 1].rstrip() and _tight_row(line, columns)


def _label_below(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a row starts with the text beside a label that stands lower."""
    return lines[index].gap > 0 and not lines[index].crossing and _beside_label(lines[index], columns)


def _beside_label(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line has text in the second column, and none in the first."""
    return line.indent == columns[1][0] and columns[1][0] - columns[0][1] >= GUTTER


def _long_key(line: Line, columns: Sequence[tuple[int, int]], height: int) -> int:
    """The last cell of a key so long that one blank alone parts it from the settled second column, as a mask."""
    if height < 2 or len(columns) != 2 or line.indent != columns[0][0]:
        return 0
    start = columns[1][0]
    tight = line.cells[start - 2 : start + 1]
    alone = " " not in line.cells[line.indent : start - 1]
    return 1 << (start - 2) if len(tight) == 3 and tight[1] == " " and alone and tight[2] != " " else 0


def _tight(line: Line, columns: Sequence[int]) -> int:
    """The last cells before columns that one blank alone parts from what stands before them, as a mask."""
    bits = mask(line.cells)
    return sum(
        1 << (start - 2)
        for start in columns
        if start > 1 and bits >> (start - 2) & 7 == 5  # word, blank, word
    )


def _suits(
    line: Line,
    before: Sequence[tuple[int, int]],
    after: Sequence[tuple[int, int]],
    gap: int,
    above: Sequence[Line],
) -> bool:
    """Whether a line stands in the columns of a settled run; after a gap ``above`` are the lines of the run."""
    parts = [(match.start(), match.end()) for match in CELLS.finditer(line.cells)]
    starts = {first for first, _ in before}
    ends = {last for _, last in before}
    placed = sum(first in starts or last in ends for first, last in parts)
    if gap and (parts[0][1] <= before[0][0] or _begins_section(line, above)):
        return False  # a title, or whatever stands to the left of all columns
    if gap and len(after) < len(before) and prose(line.text):
        return False  # a paragraph after the table, justified: its text runs across a gutter
    if len(after) >= len(before) and (
        not gap
        or (
            len(above) > 2
            and _wide(after)
            and sum(prose(one.text) for one in above) >= 0.5 * len(above)
            and any(first in starts and first != before[0][0] for first, _ in parts)
        )
    ):
        return True
    if len(after) == len(before) > 2 and _reaches([first for first, _ in parts], before):
        return True
    if len(parts) == 1:
        return parts[0][0] in starts and parts[0][0] != before[0][0] and len(after) >= len(before)
    return placed >= max(2, len(parts) - 1)


def _begins_section(line: Line, above: Sequence[Line]) -> bool:
    """Whether the number of a section stands at the top of a page, below rows that have none."""
    numbered = line.crossing and _SECTION.match(line.text) is not None
    return numbered and not any(_SECTION.match(one.text) for one in above)


def _reaches(firsts: Sequence[int], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a row begins in the first column and in the last, with a few blanks inside its cells between."""
    last = columns[-1][0]
    inside = [first for first in firsts if first < last]
    return (
        last in firsts and inside != [] and inside[0] < columns[0][1] and len(inside) < len(columns) + STRAY
    )


def _wide(columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a gutter is wider than justified text leaves blank."""
    return max(second[0] - first[1] for first, second in pairwise(columns)) > GUTTER


def cell(line: Line, columns: Sequence[tuple[int, int]], index: int) -> str:
    """The text of one cell."""
    start = columns[index][0]
    end = columns[index + 1][0] if index + 1 < len(columns) else line.end
    return line.cells[start:end].strip(" ")


def filled(line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """How many columns of the line hold text."""
    return sum(bool(cell(line, columns, index)) for index in range(len(columns)))


def aligned(lines: Sequence[Line], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether each column after the first starts, ends, or is centred at one place in most lines."""
    last = columns[-1][0]
    if not all(_stands(lines, columns, index) for index in range(1, len(columns) - (len(columns) > 2))):
        return False
    if len(columns) < 3 or _stands(lines, columns, len(columns) - 1):
        return True
    rest = [
        line for line in lines if line.indent <= last
    ]  # what stands deeper, alone, is set in in its column
    return len(rest) < len(lines) and _stands(rest, columns, len(columns) - 1)


def _stands(lines: Sequence[Line], columns: Sequence[tuple[int, int]], index: int) -> bool:
    first, last = columns[index]
    starts: Counter[int] = Counter()
    ends: Counter[int] = Counter()
    middles: Counter[int] = Counter()
    total = 0
    for line in lines:
        text = line.cells[first : columns[index + 1][0] if index + 1 < len(columns) else line.end]
        if not text.strip():
            continue
        total += 1
        begin, end = len(text) - len(text.lstrip(" ")), len(text.rstrip(" "))
        starts[begin] += 1
        ends[end] += 1
        middles[(begin + end) // 2] += 1
    if total < 2:
        return total == 1 and len(columns) > 2
    share = max(*starts.values(), *ends.values()) / total
    near = max(middles[place] + middles[place + 1] for place in middles) / total
    return share >= 0.7 or (near >= 0.8 and last - first < 20)
