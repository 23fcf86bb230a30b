"""The body to blocks: tables, pictures and columns first, then the running text between them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.boxes.framed import find_frames
from fit.document.text.boxes.open_frames import find_open_frames
from fit.document.text.columns.barred_lists import find_barred_lists
from fit.document.text.columns.callouts import find_callouts
from fit.document.text.columns.drawn_beside import find_drawn_beside
from fit.document.text.columns.gutters import Run
from fit.document.text.columns.headed_lists import headed
from fit.document.text.columns.nested import find_nested
from fit.document.text.columns.newspaper import (
    column_end,
    heads_again,
    heads_over,
    index_columns,
    page_starts,
    side_by_side,
)
from fit.document.text.columns.pages_of_columns import find_columned_pages
from fit.document.text.columns.programs import find_led_programs, find_programs, join_parts
from fit.document.text.columns.remarks import find_remarked
from fit.document.text.columns.shown_again import find_shown_again
from fit.document.text.columns.shown_code import find_shown_code, find_signed_lines
from fit.document.text.habits.labels import with_labels
from fit.document.text.habits.outline_signs import with_outline
from fit.document.text.habits.parted_terms import with_parted_terms
from fit.document.text.habits.terms import with_terms
from fit.document.text.habits.titles import with_titles
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.lists.centred_labels import find_centred_labels
from fit.document.text.lists.file_names import find_file_names
from fit.document.text.lists.listing import Listing, find_listing
from fit.document.text.make import EMPTY, concat, fold, keep_lines, space
from fit.document.text.running.chunks import find_chunks
from fit.document.text.running.classify import Placed, classify
from fit.document.text.running.definitions import find_definitions, with_texts
from fit.document.text.running.games import Turn, find_games
from fit.document.text.running.habits import shown_alike
from fit.document.text.running.listed_titles import listed_titles
from fit.document.text.running.outline import outlined
from fit.document.text.running.own_prompts import find_own_sessions
from fit.document.text.running.transcripts import find_transcripts
from fit.document.text.running.units import split_units
from fit.document.text.signs.code import find_comments
from fit.document.text.signs.commented import find_commented
from fit.document.text.signs.measure import LEAST, Measure, closed, prose
from fit.document.text.signs.pictures import drawn_on, find_pictures
from fit.document.text.tables.blank_gutters import find_gutter_tables
from fit.document.text.tables.colon_gutters import find_colon_tables
from fit.document.text.tables.fields import find_fields
from fit.document.text.tables.grouped import find_grouped
from fit.document.text.tables.matrices import find_matrices
from fit.document.text.tables.narrow import find_narrow
from fit.document.text.tables.overflow import find_overflowing
from fit.document.text.tables.ruled import find_ruled
from fit.document.text.titles.contents import find_contents
from fit.document.text.titles.ruled_titles import find_ruled_titles
from fit.document.text.titles.titles_again import find_titles_again


def read_parts(lines: Sequence[Line], hyphens: Hyphens, least: int = LEAST) -> list[Placed]:
    """All blocks of the lines, in order; ``least`` is the margin of a text too short to show its own."""
    if not lines:
        return []
    taken: list[Placed | None] = [None] * len(lines)
    comments = find_comments([line.text for line in lines], taken)
    _take(taken, [(start, end, [_code(lines[start:end], "comment")]) for start, end in comments])
    matrices = find_matrices(lines, taken)
    _take(
        taken, [(start, end, [_picture(lines[start:end], "values under numbers")]) for start, end in matrices]
    )

    def part(side: Sequence[Line]) -> list[Block]:
        return [placed.block for placed in read_parts(side, hyphens, 0)]

    _take(taken, find_barred_lists(lines, taken, part))
    callouts = find_callouts(lines, taken)
    _take(
        taken,
        [(start, end, [_picture(lines[start:end], "parts of a line marked")]) for start, end in callouts],
    )
    beside = find_drawn_beside(lines, taken)
    _take(taken, [(start, end, _parted(lines[start:end], column, hyphens)) for start, end, column in beside])
    ruled = find_ruled(lines, taken, hyphens)
    _take(taken, [found for found in ruled if not drawn_on(lines, found[0], found[1])])
    _take(taken, find_colon_tables(lines, taken, hyphens))
    contents = find_contents(lines, taken, hyphens)
    _take(taken, contents)
    again = find_titles_again(lines, taken, hyphens)
    _take(taken, again)
    _take(taken, find_ruled_titles(lines, taken, hyphens))

    def inside(box: Sequence[Line]) -> list[Block]:
        blocks = part(box)
        return [replace(blocks[0], note="box around text"), *blocks[1:]]

    _take(taken, find_frames(lines, taken, hyphens, inside))
    _take(taken, find_open_frames(lines, taken, inside))

    def newspaper(run: Run) -> list[Block]:
        return _columns(lines, run, hyphens)

    pages = find_columned_pages(lines, taken)
    _take(taken, [(run.start, run.end, newspaper(run)) for run in pages])
    remarked = find_remarked(lines, taken)
    _take(
        taken, [(start, end, [_code(lines[start:end], "remarks beside output")]) for start, end in remarked]
    )
    versions = find_shown_again(lines, taken)
    _take(taken, [(start, end, [_code(lines[start:end], "example")]) for start, end in versions])
    _take(taken, find_file_names(lines, taken, hyphens))
    own = find_own_sessions(lines, taken)
    _take(taken, [(start, end, [_code(lines[start:end], "session")]) for start, end in own])
    led = find_led_programs(lines, taken)
    _take(taken, [(start, end, _led(lines[start:end], column)) for start, end, column in led])
    programs = [*find_programs(lines, taken), *find_shown_code(lines, taken), *find_commented(lines, taken)]
    shown = join_parts(lines, programs)
    _take(taken, [(start, end, [_code(lines[start:end], "example")]) for start, end in shown])
    pictures = find_pictures(lines, taken)
    _take(taken, [(start, end, [_picture(lines[start:end])]) for start, end in pictures])

    sessions = find_transcripts(lines, taken)
    _take(taken, [(start, end, [_code(lines[start:end], "session")]) for start, end in sessions])
    games = find_games(lines, taken)
    _take(taken, [(game[0][0], game[-1][2], _turns(lines, game, part)) for game in games])
    signed = find_signed_lines(lines, taken)
    _take(taken, [(start, end, [_code(lines[start:end], "example")]) for start, end in signed])
    nested = find_nested(lines, taken)
    _take(taken, [(start, end, [_code(lines[start:end], "nested lines")]) for start, end in nested])
    _take(taken, find_grouped(lines, taken, hyphens))
    _take(taken, find_overflowing(lines, taken, hyphens))
    _take(taken, find_narrow(lines, taken, hyphens))
    _take(taken, find_fields(lines, taken, hyphens))
    found, keyed = find_gutter_tables(lines, taken, hyphens, newspaper)
    _take(taken, found)
    _take(taken, find_centred_labels(lines, taken, hyphens))
    _take(taken, find_definitions(lines, taken, hyphens))
    measure = Measure(lines, least)
    base = _base(lines, taken)
    listing = find_listing(lines, taken, measure, keyed, base)
    listing.shown = dict([*versions, *join_parts(lines, [*own, *shown, *signed])])
    for start, end in listing.shown.items():
        taken[start:end] = [None] * (end - start)
    placed = _between(lines, taken, hyphens, measure, base, listing)
    placed = shown_alike(lines, placed, base)
    placed = listed_titles(lines, placed, sorted([*contents, *again], key=lambda run: run[0]), hyphens)
    placed = with_texts(lines, outlined(lines, placed, hyphens), base)

    def anew(first: int, last: int) -> list[Placed]:
        return _running(lines, first, last, hyphens, measure, base, listing)

    placed = with_parted_terms(lines, with_titles(lines, with_outline(lines, placed)))
    return with_labels(lines, with_terms(lines, placed, measure, hyphens, anew), hyphens)


def _take(taken: list[Placed | None], found: Sequence[tuple[int, int, list[Block]]]) -> None:
    """Mark the lines of what was found; the first of them carries the blocks."""
    for start, end, blocks in found:
        for index in range(start, end):
            taken[index] = Placed(blocks[0], start, end)
        taken[start] = _Found(blocks[0], start, end, blocks)


class _Found(Placed):
    """What a finder found: several blocks where it was newspaper columns."""

    __slots__ = ("blocks",)

    def __init__(self, block: Block, start: int, end: int, blocks: list[Block]) -> None:
        super().__init__(block, start, end)
        self.blocks = blocks


def _between(
    lines: Sequence[Line],
    taken: Sequence[Placed | None],
    hyphens: Hyphens,
    measure: Measure,
    base: int,
    listing: Listing,
) -> list[Placed]:
    placed: list[Placed] = []
    index = 0
    while index < len(lines):
        found = taken[index]
        if isinstance(found, _Found):
            placed.extend(Placed(block, found.start, found.end) for block in found.blocks)
            index = found.end
            continue
        end = index
        while end < len(lines) and taken[end] is None:
            end += 1
        placed.extend(_running(lines, index, end, hyphens, measure, base, listing))
        index = end
    return placed


def _running(
    lines: Sequence[Line],
    first: int,
    last: int,
    hyphens: Hyphens,
    measure: Measure,
    base: int,
    listing: Listing,
) -> list[Placed]:
    chunks = find_chunks(lines, first, last, measure, listing)
    units = split_units(lines, first, last, measure, chunks, listing)
    return classify(lines, units, chunks, base, hyphens)


def _base(lines: Sequence[Line], taken: Sequence[Placed | None]) -> int:
    """The usual left margin: the least indent that a tenth of the lines of running text have."""
    counts: dict[int, int] = {}
    for index, line in enumerate(lines):
        if taken[index] is None and prose(line.text):
            counts[line.indent] = counts.get(line.indent, 0) + 1
    total = sum(counts.values())
    return min((indent for indent, times in counts.items() if times * 10 >= total), default=0)


def _picture(lines: Sequence[Line], note: str = "drawing") -> Block:
    return Block(Kind.PICTURE, lines=keep_lines(lines), note=note)


def _parted(lines: Sequence[Line], column: int, hyphens: Hyphens) -> list[Block]:
    """The text left of a column, and then the drawing that begins at it."""
    text = [replace(line.cut(0, column), crossing=line.crossing) for line in lines]
    drawn = [line.cut(column, line.end) for line in lines]
    rows = [index for index, line in enumerate(drawn) if line.cells]
    blocks = [placed.block for placed in read_parts([line for line in text if line.cells], hyphens, 0)]
    return [*blocks, _picture(drawn[rows[0] : rows[-1] + 1])]


def _code(lines: Sequence[Line], part: str) -> Block:
    return Block(Kind.PREFORMATTED, lines=keep_lines(lines), code=True, note=f"{part} of program text")


def _turns(
    lines: Sequence[Line], game: Sequence[Turn], part: Callable[[Sequence[Line]], list[Block]]
) -> list[Block]:
    """The turns of a game: what keeps its lines, and the answers below it that flow."""
    blocks: list[Block] = []
    kept: list[Line] = []
    for start, flows, end in game:
        kept += lines[start:flows]
        if flows < end:
            answer = [
                replace(block, kind=Kind.PARAGRAPH) if block.kind is Kind.HEADING else block
                for block in part(lines[flows:end])
            ]
            blocks += [_code(kept, "turn of a game"), *answer] if kept else answer
            kept = []
    return [*blocks, _code(kept, "turn of a game")] if kept else blocks


def _led(lines: Sequence[Line], column: int) -> list[Block]:
    """A key and the program text that begins beside it, at a column."""
    first, rest = lines[0], lines[1:]
    key = fold(first.piece(first.indent, column))
    margin = min(column, *(line.indent for line in rest))
    beside = concat([*[space()] * (column - margin), first.piece(column, first.end)])
    below = [EMPTY] * min(rest[0].gap, 2)
    kept = [line.piece(margin, line.end) for line in rest]
    for line, text in zip(rest, kept, strict=True):
        below.extend([*[EMPTY] * (min(line.gap, 2) if line is not rest[0] else 0), text])
    note = "example of program text"
    return [
        Block(Kind.ITEM, label=key),
        Block(Kind.PREFORMATTED, lines=(beside, *below), level=1, code=True, note=note),
    ]


def _index_column(lines: Sequence[Line]) -> Block:
    return Block(Kind.PREFORMATTED, lines=keep_lines(lines), note="column of an index")


def _columns(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> list[Block]:
    """Newspaper columns, page by page and column by column, as running text."""
    part: list[Line] = []
    pages = page_starts(lines, run)
    for first, last in pairwise([*pages, run.end]):
        ends = [column_end(lines, run, number, first, last) for number in range(len(run.columns))]
        begun = first == run.start and heads_over(lines, run)
        for place, (left, _) in enumerate(run.columns):
            right = run.columns[place + 1][0] if place + 1 < len(run.columns) else 10**6
            start = 0 if place == 0 else left
            gap = 0
            fresh = True
            for index in range(first, last):
                if index in run.heads:
                    continue
                gap += lines[index].gap
                piece = lines[index].cut(start, right)
                if index > first and headed(lines, run.columns, place, index - 1):
                    piece = piece.cut(0, part[-1].end)  # a rule as wide as the column underlines its title
                if not piece.cells:
                    gap += 1
                    continue
                ended = fresh and (
                    begun
                    or (
                        place
                        and closed(part[-1].text)
                        and (ends[place] - ends[place - 1] > 1 or side_by_side(lines, run, first, last))
                    )
                    or (headed(lines, run.columns, place, index) if place else heads_again(lines, run, first))
                )
                piece.crossing = fresh and bool(part) and not ended
                piece.gap = int(ended) if fresh else gap
                part.append(piece)
                gap = 0
                fresh = False
    if index_columns([lines[index] for index in range(run.start, run.end)], run.columns):
        starts = [0, *(index for index, line in enumerate(part) if line.crossing), len(part)]
        return [_index_column(part[first:last]) for first, last in pairwise(starts)]
    blocks = [placed.block for placed in read_parts(part, hyphens, 0)]
    note = f"{len(run.columns)} newspaper columns read one after the other"
    furniture = [Block(Kind.FURNITURE, lines=keep_lines([lines[index]])) for index in sorted(run.heads)]
    return [replace(blocks[0], note=note), *blocks[1:], *furniture]
