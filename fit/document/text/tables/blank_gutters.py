"""Tables without drawn columns: gutters of blanks, rules under the head, wrapped and empty cells."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import (
    GUTTER,
    Run,
    aligned,
    cell,
    centred,
    filled,
    grow,
    has_gutter,
    raise_run,
    to_fill_in,
)
from fit.document.text.columns.newspaper import index_columns, prose_columns, tail, with_heads
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.code import code
from fit.document.text.signs.markers import Marker, find_marker, follows
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.pictures import ruled_off, segmented
from fit.document.text.tables.heads import is_shorter, names_columns, repeated_heads, without
from fit.document.text.tables.rows import group_rows
from fit.document.text.titles.headings import underlined

Columns = Callable[[Run], list[Block]]
BROAD = 16
"""Cells of blank that part the two sides of a page: two lines show that they are columns."""
ROW_LINES = 5
"""Lines between two rules, on average, at most, where each rule parts two rows and the first of them need be no head."""
_NUMBER = re.compile(r"[-+(]?[$\u00a3]?\d[\d.,:/%h)-]*\s?[%a-zA-Z\u00b0']{0,3}|[-\u2013.]+|n/a")


def find_gutter_tables(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens, newspaper: Columns
) -> tuple[list[tuple[int, int, list[Block]]], dict[int, int]]:
    """The half-open runs of lines that are such tables or newspaper columns, each with its blocks.

    Beside them, of runs that are lists of hanging keys, the column of the text for each line with a key.
    """
    found: list[tuple[int, int, list[Block]]] = []
    keyed: dict[int, int] = {}
    index = 0
    floor = 0
    while index < len(lines):
        if taken[index] is not None or not has_gutter(lines[index]):
            index += 1
            continue
        run = grow(lines, taken, index, 1)
        if _newspaper(lines, run):
            run = with_heads(lines, taken, run, floor)
            run.end = tail(lines, taken, run.columns, run.end)
            found.append((run.start, run.end, newspaper(run)))
            index = floor = run.end
            continue
        raise_run(lines, taken, run, floor)
        blocks = _settle(lines, run, hyphens) if run.end - run.start >= 2 else None
        if blocks == []:
            keyed |= _keyed(lines, run)
            index = run.end
            continue
        if blocks is None:
            index += max(1, (run.end - run.start) // 4) if run.end - run.start > 40 else 1
            continue
        start = run.start
        if blocks[0].kind is Kind.TABLE:
            start, blocks = _with_head(lines, taken, run, blocks, hyphens, floor)
            start, blocks = _with_top_rule(lines, taken, (start, run), blocks, floor)
        found.append((start, run.end, blocks))
        index = floor = run.end
    return found, keyed


def _keyed(lines: Sequence[Line], run: Run) -> dict[int, int]:
    """The lines of a list of two columns that start with a key and its text."""
    if len(run.columns) != 2:
        return {}
    column = run.columns[1][0]
    both = [index for index in range(run.start, run.end) if filled(lines[index], run.columns) == 2]
    return {
        index: column for index in both if index not in run.rules and not _stretched(lines[index], column)
    }


def _stretched(line: Line, column: int) -> bool:
    """Whether a line reads as justified text across the columns."""
    return prose(line.text) and "  " in re.sub(r"(?<=[.!?:])  ", " ", line.cells[column:])


def _newspaper(lines: Sequence[Line], run: Run) -> bool:
    """Whether the columns are read one after the other: running text, or an index."""
    content = [lines[index] for index in range(run.start, run.end) if index not in run.rules]
    return len(content) >= 5 and (prose_columns(content, run.columns) or index_columns(content, run.columns))


def _settle(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> list[Block] | None:
    """The table of a run; None where it is none, and no block where all of it is a list."""
    content = [lines[index] for index in range(run.start, run.end) if index not in run.rules]
    run.columns = _without_chance(content, _parted(content, run.columns))
    if len(run.columns) < 2:
        return None
    beside = [line for line in content if filled(line, run.columns) >= 2]
    headed = any(segmented(lines[index].text) or run.start < index < run.end - 1 for index in run.rules)
    blank = sum(b[0] - a[1] for a, b in pairwise(run.columns))
    broad = (len(run.columns) > 2 and blank >= 8) or blank >= BROAD
    if headed and _text_above(lines, run):
        return None
    labelled = centred(lines, run)
    if len(beside) < (2 if headed or broad or _pair(lines, run) else 3) or len(beside) < (
        _least(content, run, labelled) * len(content)
    ):
        return None
    if not aligned(content, run.columns):
        return None
    if not headed and (_justified(lines, run, content) or _text_beside_keys(content, run)):
        return None
    if sum(code(line.text) for line in content) > 0.35 * len(content):
        return None
    texts = [cell(line, run.columns, index) for line in content for index in range(len(run.columns))]
    if not headed and (
        _bullets(content, run) or (len(run.columns) == 2 and not labelled and _list(content, run))
    ):
        return []
    if not any(any(char.isalnum() for char in text) for text in texts):
        return None
    printed = [
        Block(Kind.FURNITURE, lines=keep_lines(lines[first:last])) for first, last in _again(lines, run)
    ]
    return [_table(_once(lines, run.start, run), run, hyphens), *printed]


def _rule(line: Line, run: Run) -> bool:
    return (ruled_off(line.text) or segmented(line.text)) and not to_fill_in(line, run.columns)


def _again(lines: Sequence[Line], run: Run) -> list[tuple[int, int]]:
    """Where the run's head is printed again."""
    found = repeated_heads(lines[run.start : run.end], lambda line: _rule(line, run))
    return [(run.start + first, run.start + last) for first, last in found]


def _once(lines: Sequence[Line], start: int, run: Run) -> list[Line]:
    """The lines from ``start`` to the run's end, heads printed again left out."""
    again = [(first - start, last - start) for first, last in _again(lines, run)]
    return without(lines[start : run.end], again)


def _text_above(lines: Sequence[Line], run: Run) -> bool:
    """Whether running text stands above the head, parted from it by a blank line."""
    rule = min(run.rules)
    parted = next((index for index in range(run.start + 1, rule) if lines[index].gap), 0)
    return bool(parted) and any(prose(lines[index].text) for index in range(run.start, parted))


def _least(content: Sequence[Line], run: Run, labelled: bool) -> float:
    """The share of lines with several cells, at least: less where all others are the rest of one cell in its column."""
    starts = {first for first, _ in run.columns[1:]}
    rest = [line for line in content if filled(line, run.columns) < 2]
    under = len(run.columns) > 2 and all(line.indent in starts for line in rest)
    return 0.15 if under else 0.25 if labelled else 0.4


def _pair(lines: Sequence[Line], run: Run) -> bool:
    """Whether two lines that stand by themselves have one blank each, wide and up to the same column."""
    if run.end - run.start != 2 or len(run.columns) != 2:
        return False
    first, last = lines[run.start], lines[run.end - 1]
    above = lines[run.start - 1] if run.start else None
    below = lines[run.end] if run.end < len(lines) else None
    apart = above is None or first.gap or above.indent < first.indent
    apart = apart and (below is None or below.gap or below.indent < first.indent)
    gaps = [re.findall(r"(?<=\S) {2,}(?=\S)", line.text) for line in (first, last)]
    starts = {
        line.cells[: run.columns[1][0]].rstrip() + gap[0]
        for line, gap in zip((first, last), gaps, strict=True)
        if gap
    }
    even = {len(text) for text in starts} == {run.columns[1][0]}
    return bool(apart) and even and all(len(gap) == 1 and len(gap[0]) >= 3 for gap in gaps)


def _parted(content: Sequence[Line], columns: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The columns that a gutter parts in some line at least, and not only by what stands beside a word of the next."""
    kept = columns[:1]
    for index, (first, last) in enumerate(columns[1:], 1):
        apart = any(cell(line, columns, index) and not _touch(line, columns, index) for line in content)
        left = [line for line in content if cell(line, columns, index - 1)]
        if apart and not (left and all(_touch(line, columns, index) for line in left)):
            kept.append((first, last))
        else:
            kept[-1] = (kept[-1][0], last)
    return kept


def _touch(line: Line, columns: Sequence[tuple[int, int]], index: int) -> bool:
    """Whether a cell and the one before it have no gutter between them."""
    start = columns[index][0]
    return bool(cell(line, columns, index)) and line.cells[start - GUTTER : start].strip(" ") != ""


def _without_chance(content: Sequence[Line], columns: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The columns, a last one left out that one line alone reaches: a blank of justified text made it."""
    if len(columns) < 3 or len(content) < 4:
        return columns
    last = len(columns) - 1
    held = [line for line in content if cell(line, columns, last)]
    narrow = columns[last][0] - columns[last - 1][1] == GUTTER
    if len(held) != 1 or held[0] is content[0] or not narrow:
        return columns
    texts = cell(held[0], columns, last - 1), cell(held[0], columns, last)
    if " " not in texts[0] or not starts_small(texts[1]):
        return columns
    return [*columns[: last - 1], (columns[last - 1][0], columns[last][1])]


def _justified(lines: Sequence[Line], run: Run, content: Sequence[Line]) -> bool:
    """Whether the gutter is a chance of justified text: blanks as wide stand elsewhere, sentences run across."""
    if len(content) > 6:
        return False
    widest = max(second[0] - first[1] for first, second in pairwise(run.columns))
    stray = sum(
        "  " in cell(line, run.columns, index) for line in content for index in range(len(run.columns))
    )
    if widest <= 3 and (stray >= max(2, len(content) // 2) or _one_sentence(content)):
        return True
    above = lines[run.start - 1] if run.start else None
    first = lines[run.start]
    runs_on = above is not None and not first.gap and above.indent == first.indent and prose(above.text)
    across = sum(prose(line.text) and not closed(line.text) for line in content)
    return runs_on and widest <= 4 and across >= 0.5 * len(content)


def _one_sentence(content: Sequence[Line]) -> bool:
    """Whether each line is running text that the next one goes on with, a single wide blank in all of them."""
    return sum(map(has_gutter, content)) == 1 and all(
        prose(above.text) and not closed(above.text) and starts_small(below.text)
        for above, below in pairwise(content)
    )


def _text_beside_keys(content: Sequence[Line], run: Run) -> bool:
    """Whether the columns after the first are one justified text, parted by chance, beside its keys."""
    if len(run.columns) < 3 or max(b[0] - a[1] for a, b in pairwise(run.columns[1:])) > 3:
        return False
    under = [line for line in content if not cell(line, run.columns, 0)]
    if len(under) == len(content) - 1 and _hanging_item(content, run):
        return True
    if under and not any(cell(line, run.columns, 1) for line in under):
        return False  # their text would go on where it begins
    rest = [line.cells[run.columns[1][0] :] for line in content]
    if sum("     " in text.strip(" ") for text in rest) > 1:
        return False
    if _counted(content, run):
        rest = [text for text in rest if "  " in text.strip(" ")]
    return sum(prose(text) for text in rest) >= 0.6 * len(rest)


def _hanging_item(content: Sequence[Line], run: Run) -> bool:
    """Whether the first line starts with the marker of a list and all others stand under its text."""
    column = run.columns[1][0]
    marked = find_marker(content[0].text) is not None and bool(cell(content[0], run.columns, 1))
    return marked and all(line.indent == column for line in content[1:])


def _counted(content: Sequence[Line], run: Run) -> bool:
    """Whether the first column counts a list, `3)` and then `4)`, with nothing else in it."""
    firsts = [line for line in content if cell(line, run.columns, 0)]
    markers = [marker for line in firsts if (marker := find_marker(line.text)) is not None and marker.strong]
    alone = all(len(cell(line, run.columns, 0).split()) == 1 for line in firsts)
    return alone and len(markers) == len(firsts) and all(follows(a, b) for a, b in pairwise(markers))


def _bullets(content: Sequence[Line], run: Run) -> bool:
    """Whether every row is an item of one list, its bullet and its first words in one column."""
    firsts = [line for line in content if cell(line, run.columns, 0)]
    kinds = {marker.kind if (marker := find_marker(line.text)) else "" for line in firsts}
    worded = all(len(cell(line, run.columns, 0).split()) > 1 for line in firsts)
    return worded and len(kinds) == 1 and kinds.pop().startswith("bullet")


def _list(content: Sequence[Line], run: Run) -> bool:
    """Whether the two columns are list markers and hanging text, or a hanging key with long text."""
    firsts = [line for line in content if cell(line, run.columns, 0)]
    markers = [find_marker(line.text) for line in firsts]
    strong = any(marker is not None and marker.strong for marker in markers)
    if not strong and (_flush_right(firsts, run) or _key_wrapped(content, run)):
        return False
    marked = [
        marker
        for line, marker in zip(firsts, markers, strict=True)
        if marker is not None and len(cell(line, run.columns, 0).split()) == 1
    ]
    if len(marked) >= 0.6 * len(firsts) and _listed(marked):
        return True
    long = sum(prose(cell(line, run.columns, 1)) for line in content)
    narrow = run.columns[1][0] - run.columns[0][0] <= 28
    labels = all(cell(line, run.columns, 0).endswith(":") for line in firsts)
    return narrow and len(content) > len(firsts) and (labels or long >= 0.3 * len(content))


def _key_wrapped(content: Sequence[Line], run: Run) -> bool:
    """Whether blank lines part the rows and a key goes on, in small letters, beside the rest of its text."""
    if sum(line.gap > 0 for line in content[1:]) < 2:
        return False
    return any(
        not below.gap
        and filled(above, run.columns) == filled(below, run.columns) == 2
        and starts_small(cell(below, run.columns, 0))
        and " " in cell(above, run.columns, 0)
        and not closed(cell(above, run.columns, 0))
        for above, below in pairwise(content)
    )


def _listed(markers: Sequence[Marker]) -> bool:
    """Whether markers count a list: bare numbers that do not follow each other are figures of a table."""
    bare = [marker for marker in markers if not marker.strong and marker.kind.startswith("number")]
    steps = sum(second.ordinal == first.ordinal + 1 for first, second in pairwise(bare))
    return len(bare) < len(markers) or 2 * steps >= len(bare) - 1


def _flush_right(firsts: Sequence[Line], run: Run) -> bool:
    """Whether the keys end at one column, as figures do, and begin at several."""
    keys = [line.cells[: run.columns[1][0]].rstrip() for line in firsts]
    return len(keys) > 2 and len({line.indent for line in firsts}) > 1 and len(set(map(len, keys))) == 1


def _pieces(line: Line, run: Run) -> list[Text]:
    starts = [first for first, _ in run.columns]
    return [
        line.piece(0 if index == 0 else start, starts[index + 1] if index + 1 < len(starts) else line.end)
        for index, start in enumerate(starts)
    ]


def _table(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> Block:
    """The table of a run's lines, those of heads printed again left out."""
    content: list[Line] = []
    fresh: list[bool] = []
    after_rule = False
    rule_after: list[int] = []
    for line in lines:
        if _rule(line, run):
            after_rule = True
            if _across(line, run):
                rule_after.append(len(content))
            continue
        content.append(line)
        fresh.append(after_rule or (line.gap > 0 and not line.crossing))
        after_rule = False
    grid = [[cell(line, run.columns, index) for index in range(len(run.columns))] for line in content]
    head = _tall(grid, fresh, _head(grid, fresh, rule_after))
    groups: list[list[int]] = [list(range(head))] if head else []
    groups += [[head + index for index in group] for group in group_rows(grid[head:], fresh[head:])]
    headed = bool(head) or _headed_rows(grid, fresh, groups)
    pieces = [_pieces(line, run) for line in content]
    rows = tuple(
        tuple(flow([pieces[index][column] for index in group], hyphens) for column in range(len(run.columns)))
        for group in groups
    )
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=rows,
        header_rows=int(headed),
        note="table with blank gutters",
    )


def _across(line: Line, run: Run) -> bool:
    """Whether a rule runs over most of the table's width: one under the head does."""
    return segmented(line.text) or line.end >= run.columns[-1][0]


def _head(grid: Sequence[Sequence[str]], fresh: Sequence[bool], rules: Sequence[int]) -> int:
    """How many lines are the head: those above the first inner rule, or a first line unlike the others."""
    inner = [place for place in rules if 0 < place < len(grid)]
    if inner and inner[0] <= 4:
        top = [" ".join(filter(None, column)) for column in zip(*grid[: inner[0]], strict=True)]
        parting = len(inner) >= 3 and len(inner) * ROW_LINES >= len(grid)
        return 0 if parting and not names_columns(top, grid[inner[0] :]) else inner[0]
    if len(grid) < 3 or not all(grid[0][column] for column in range(1, len(grid[0]))):
        return 0
    first, rest = grid[0], grid[1:]
    if any(_NUMBER.fullmatch(text) for text in first if text):
        return 0
    for column in range(len(first)):
        below = [row[column] for row in rest if row[column]]
        figures = any(char.isdigit() for char in first[column])
        if (
            below
            and not figures
            and sum(_NUMBER.fullmatch(text) is not None for text in below) >= 0.8 * len(below)
        ):
            return 1
    loud = all(text.upper() == text for text in first if text) and any(char.isalpha() for char in first[-1])
    quiet = sum(row[-1].upper() != row[-1] for row in rest if row[-1]) >= 0.5 * len(rest)
    return _head_apart(grid, fresh) or (1 if _named(first, rest) or (loud and quiet) else 0)


def _tall(grid: Sequence[Sequence[str]], fresh: Sequence[bool], head: int) -> int:
    """The lines of the head with those right below, without a key, in which its names go on in small letters."""
    while (
        0 < head < len(grid) - 1
        and not fresh[head]
        and not grid[head][0]
        and all(
            not text or (starts_small(text) and above)
            for text, above in zip(grid[head], grid[head - 1], strict=True)
        )
        and not _above_key(grid, fresh, head)
    ):
        head += 1
    return head


def _above_key(grid: Sequence[Sequence[str]], fresh: Sequence[bool], index: int) -> bool:
    """Whether a text that begins in a line goes on beside the key right below it: that key stands in its middle."""
    text, key, below = grid[index][-1], grid[index + 1][0], grid[index + 1][-1]
    return bool(text and key) and not fresh[index + 1] and starts_small(below) and not closed(text)


def _head_apart(grid: Sequence[Sequence[str]], fresh: Sequence[bool]) -> int:
    """The lines above the only blank line of a table of three columns or more: at most three, without figures."""
    parted = [place for place, new in enumerate(fresh) if new and place]
    if len(parted) != 1 or parted[0] > 3 or parted[0] * 2 > len(grid) or len(grid[0]) < 3:
        return 0
    first = [text for row in grid[: parted[0]] for text in row if text]
    return 0 if any(_NUMBER.fullmatch(text) for text in first) else parted[0]


def _headed_rows(
    grid: Sequence[Sequence[str]], fresh: Sequence[bool], groups: Sequence[Sequence[int]]
) -> bool:
    """Whether blank lines part all rows, some of them wrapped, and the first names columns of longer cells."""
    if len(grid[0]) < 3 or len(groups) < 4 or len(groups[0]) > 1 or len(groups) == len(grid):
        return False
    rest = [
        [" ".join(grid[line][column] for line in group) for column in range(len(grid[0]))] for group in groups
    ]
    parted = all(fresh[group[0]] for group in groups[1:])
    return parted and is_shorter(grid[0], rest[1:]) and names_columns(grid[0], rest[1:])


def _named(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the first row names the columns: capitals first, where the others have figures or small letters."""
    if not first[0] and all(first[1:]) and all(row[0] for row in rest) and len(first) > 2:
        return True
    if not all(text[:1].isupper() and len(text) <= 20 for text in first if text) or not all(first):
        return False
    plain = sum(any(text[:1].islower() or text[:1].isdigit() for text in row) for row in rest)
    return plain >= 0.8 * len(rest)


def _with_head(
    lines: Sequence[Line],
    taken: Sequence[object],
    run: Run,
    blocks: list[Block],
    hyphens: Hyphens,
    floor: int,
) -> tuple[int, list[Block]]:
    """Take a head line just above whose words stand over the columns without keeping to the gutters."""
    above = run.start - 1
    if above < floor or taken[above] is not None or blocks[0].header_rows:
        return run.start, blocks
    line = lines[above]
    parts = [(m.start(), m.end()) for m in re.finditer(r"\S+(?: \S+)*", line.cells)]
    if lines[run.start].gap > 1 or (lines[run.start].gap and not _over_figures(line, parts, run, blocks[0])):
        return run.start, blocks
    if len(parts) == len(run.columns) - 1 and _over_figures(line, parts, run, blocks[0]):
        parts = [(0, 0), *parts]
    elif len(parts) != len(run.columns) or (run.start not in run.rules and not _over(line, parts, run)):
        return run.start, blocks
    head = tuple(flow([line.piece(first, last)], hyphens) for first, last in parts)
    kept = keep_lines(_once(lines, above, run))
    block = replace(blocks[0], lines=kept, rows=(head, *blocks[0].rows), header_rows=1)
    return above, [block, *blocks[1:]]


def _over_figures(line: Line, parts: Sequence[tuple[int, int]], run: Run, block: Block) -> bool:
    """Whether words stand over the columns, with or without one over the keys, and all other cells hold figures."""
    columns = run.columns[len(run.columns) - len(parts) :]
    figures = [row[-1].chars for row in block.rows if row[-1].chars]
    return (
        len(run.columns) - len(parts) in {0, 1}
        and len(parts) > 1
        and not any(_NUMBER.fullmatch(line.cells[first:last]) for first, last in parts)
        and all(
            first < column[1] and last > column[0]
            for (first, last), column in zip(parts, columns, strict=True)
        )
        and all(_NUMBER.fullmatch(text) for text in figures)
    )


def _over(line: Line, parts: Sequence[tuple[int, int]], run: Run) -> bool:
    """Whether words, none of them a number, stand each over its own column of at least three."""
    named = all(line.cells[first].isupper() for first, _ in parts)
    beside = all(
        first < column[1] and last > column[0]
        for (first, last), column in zip(parts, run.columns, strict=True)
    )
    return len(parts) > 2 and named and beside


def _with_top_rule(
    lines: Sequence[Line], taken: Sequence[object], place: tuple[int, Run], blocks: list[Block], floor: int
) -> tuple[int, list[Block]]:
    """Take the rule just above a table that has others; one under a heading is the heading's."""
    start, run = place
    above = start - 1
    if above < floor or taken[above] is not None or lines[start].gap or not ruled_off(lines[above].text):
        return start, blocks
    if not run.rules or (above and underlined(lines, above - 1)) or lines[above].crossing:
        return start, blocks
    return above, [replace(blocks[0], lines=keep_lines(_once(lines, above, run))), *blocks[1:]]
