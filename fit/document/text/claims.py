"""What each room claims of the lines of the body, one after the other: no later one asks for the same lines."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from fit.document.blocks import Block
from fit.document.text.boxes.framed import find_frames
from fit.document.text.boxes.left_bars import find_left_bars
from fit.document.text.boxes.open_frames import find_open_frames
from fit.document.text.claimed_blocks import (
    Reader,
    between_marks,
    between_rules,
    drawing,
    drawing_and_text,
    key_beside_program,
    program_text,
    text_and_drawing,
    turns_as_blocks,
)
from fit.document.text.columns.barred_lists import find_barred_lists
from fit.document.text.columns.callouts import find_callouts
from fit.document.text.columns.columns_as_text import read_columns
from fit.document.text.columns.drawn_beside import find_boxes_beside, find_drawn_beside
from fit.document.text.columns.drawn_left import find_drawn_left
from fit.document.text.columns.grammars import find_grammars
from fit.document.text.columns.gutters import Run
from fit.document.text.columns.nested import find_nested
from fit.document.text.columns.pages_of_columns import find_columned_pages
from fit.document.text.columns.programs import find_led_programs, find_programs, join_parts
from fit.document.text.columns.remarks import find_remarked
from fit.document.text.columns.session_remarks import find_session_remarks
from fit.document.text.columns.shown_again import find_shown_again
from fit.document.text.columns.shown_code import find_shown_code, find_signed_lines
from fit.document.text.columns.side_lists import find_side_lists
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.lists.centred_labels import find_centred_labels
from fit.document.text.lists.file_names import find_file_names
from fit.document.text.lists.paired_options import find_paired_options
from fit.document.text.running.definitions import find_definitions
from fit.document.text.running.games import find_games
from fit.document.text.running.logs import find_logs
from fit.document.text.running.marked_terms import find_marked_terms
from fit.document.text.running.own_prompts import find_own_sessions
from fit.document.text.running.transcripts import find_transcripts
from fit.document.text.signs.angled_examples import find_angled
from fit.document.text.signs.commented import find_commented
from fit.document.text.signs.comments import find_comments
from fit.document.text.signs.fenced import find_fenced
from fit.document.text.signs.figure_grids import find_figure_grids
from fit.document.text.signs.fixed_form import find_fixed_form
from fit.document.text.signs.formulas import find_formulas
from fit.document.text.signs.fractions import find_fractions
from fit.document.text.signs.letter_rows import find_letter_rows
from fit.document.text.signs.listing_blocks import find_listing_blocks
from fit.document.text.signs.numbered_listings import find_numbered_listings
from fit.document.text.signs.patches import find_patches
from fit.document.text.signs.pictures import aslant, drawn_on, find_pictures, hollow
from fit.document.text.signs.sections import find_sections
from fit.document.text.signs.trees import find_trees
from fit.document.text.signs.two_colons import find_literal
from fit.document.text.tables.bar_led import find_bar_led
from fit.document.text.tables.between_rules import find_between_rules
from fit.document.text.tables.blank_gutters import find_gutter_tables
from fit.document.text.tables.colon_gutters import find_colon_tables
from fit.document.text.tables.fields import find_fields
from fit.document.text.tables.grouped import find_grouped
from fit.document.text.tables.in_one_column import behind_text, in_one_column
from fit.document.text.tables.matrices import find_marks, find_matrices
from fit.document.text.tables.narrow import find_narrow
from fit.document.text.tables.overflow import find_overflowing
from fit.document.text.tables.right_columns import find_right_columns
from fit.document.text.tables.ruled import find_ruled
from fit.document.text.tables.three_rules import find_three_rules
from fit.document.text.titles.contents import find_contents
from fit.document.text.titles.left_titles import find_left_titles
from fit.document.text.titles.right_titles import find_right_titles
from fit.document.text.titles.ruled_titles import find_ruled_titles
from fit.document.text.titles.set_in_titles import find_set_in_titles
from fit.document.text.titles.titles_again import find_titles_again

Found = tuple[int, int, list[Block]]
"""A half-open run of lines, and its blocks."""


@dataclass(slots=True)
class Claims:
    """What was claimed."""

    taken: list[Found | None]
    """For each line what it is a part of; None where it is running text."""
    shown: dict[int, int] = field(default_factory=dict)
    """Program text that a list may hold: the first line of each and its end."""
    titles: list[Found] = field(default_factory=list)
    """Contents, and titles that come again."""
    keyed: dict[int, int] = field(default_factory=dict)
    """Lines with a key, and the column of the text beside it, as the columns around them have shown."""

    def take(self, found: Sequence[Found]) -> None:
        """Mark the lines of what was found."""
        for one in found:
            self.taken[one[0] : one[1]] = [one] * (one[1] - one[0])


def find_claims(lines: Sequence[Line], hyphens: Hyphens, part: Reader) -> Claims:
    """All claims, in the order in which they are heard; ``part`` gives the blocks of lines that stand in one."""
    claims = Claims([None] * len(lines))
    fenced = find_fenced(lines)
    claims.take([(start, end, [between_marks(lines[start:end])]) for start, end in fenced])
    listed = find_listing_blocks(lines, claims.taken)
    claims.take([(start, end, [between_rules(lines[start:end])]) for start, end in listed])
    claims.take(_kept(lines, find_angled(lines, claims.taken), "example"))
    literal = find_literal(lines, claims.taken)
    claims.take(_kept(lines, literal, "example"))
    claims.take(find_marked_terms(lines, claims.taken, hyphens))
    claims.take(_kept(lines, find_patches(lines, claims.taken), "changes"))
    claims.take(_kept(lines, find_comments(lines, claims.taken), "comment"))
    claims.take(_kept(lines, find_logs(lines, claims.taken), "log"))
    claims.take(_kept(lines, find_letter_rows(lines, claims.taken), "rows of letters"))
    claims.take(_kept(lines, find_trees(lines, claims.taken), "tree"))
    listings = find_fixed_form(lines, claims.taken)
    claims.take(_kept(lines, listings, "listing"))
    numbered = find_numbered_listings(lines, claims.taken)
    claims.take(_kept(lines, numbered, "numbered listing"))
    claims.shown = dict([*literal, *listings, *numbered])
    claims.take(_kept(lines, find_grammars(lines, claims.taken), "rule of a grammar"))
    _claim_framed(lines, claims, hyphens, part)
    _claim_shown(lines, claims, hyphens, part)
    _claim_columns(lines, claims, hyphens, part)
    return claims


def _claim_framed(lines: Sequence[Line], claims: Claims, hyphens: Hyphens, part: Reader) -> None:
    """What its own strokes, bars, leaders and rules show, and pages of newspaper columns."""
    taken, take = claims.taken, claims.take
    take(find_bar_led(lines, taken, hyphens))
    take(_drawn(lines, find_matrices(lines, taken), "values under numbers"))
    take(_drawn(lines, find_marks(lines, taken), "marks in columns"))
    take(_drawn(lines, find_fractions(lines, taken), "fractions"))
    take(_drawn(lines, find_formulas(lines, taken), "formula"))
    take(find_barred_lists(lines, taken, part))
    take(_drawn(lines, find_callouts(lines, taken), "parts of a line marked"))
    beside = find_drawn_beside(lines, taken)
    take([(start, end, text_and_drawing(lines[start:end], column, part)) for start, end, column in beside])
    boxed = find_boxes_beside(lines, taken)
    take([(start, end, drawing_and_text(lines[start:end], column, part)) for start, end, column in boxed])
    left = find_drawn_left(lines, taken)
    take([(start, end, drawing_and_text(lines[start:end], column, part)) for start, end, column in left])
    take(find_left_bars(lines, taken, part))
    ruled = find_ruled(lines, taken, hyphens)
    ruled = [one for one in ruled if not (drawn_on(lines, *one[:2]) or hollow(lines[one[0] : one[1]]))]
    if any(behind_text(lines[start:end]) for start, end, _ in ruled):
        pages = find_columned_pages(lines, taken)
        ruled = [one for one in ruled if not in_one_column(lines, pages, *one[:2])]
    take(ruled)
    take(find_colon_tables(lines, taken, hyphens))
    contents = find_contents(lines, taken, hyphens)
    take(contents)
    again = find_titles_again(lines, taken, hyphens)
    take(again)
    claims.titles = sorted([*contents, *again], key=lambda run: run[0])
    take(find_ruled_titles(lines, taken, hyphens))
    take(find_right_titles(lines, taken, hyphens))
    take(find_set_in_titles(lines, taken, hyphens))
    take(find_left_titles(lines, taken, hyphens))

    def inside(box: Sequence[Line]) -> list[Block]:
        blocks = part(box)
        return [replace(blocks[0], note="box around text"), *blocks[1:]]

    take(find_frames(lines, taken, hyphens, inside))
    take(find_open_frames(lines, taken, inside))
    pages = find_columned_pages(lines, taken)
    take([(run.start, run.end, read_columns(lines, run, part)) for run in pages])


def _claim_shown(lines: Sequence[Line], claims: Claims, hyphens: Hyphens, part: Reader) -> None:
    """What is shown and keeps its lines: program text, sessions, pictures, games; and lists of bare names."""
    taken, take = claims.taken, claims.take
    take(_kept(lines, find_remarked(lines, taken), "remarks beside output"))
    versions = find_shown_again(lines, taken)
    take(_kept(lines, versions, "example"))
    take(find_file_names(lines, taken, hyphens))
    own = find_own_sessions(lines, taken)
    take(_kept(lines, own, "session"))
    led = find_led_programs(lines, taken)
    take([(start, end, key_beside_program(lines[start:end], column)) for start, end, column in led])
    programs = [*find_programs(lines, taken), *find_shown_code(lines, taken), *find_commented(lines, taken)]
    programs += find_sections(lines, taken)
    programs = [(start, end) for start, end in programs if not aslant(lines[start:end])]
    shown = join_parts(lines, programs)
    take(_kept(lines, shown, "example"))
    take(_drawn(lines, find_figure_grids(lines, taken), "grid of figures"))
    take(_drawn(lines, find_pictures(lines, taken), "drawing"))
    take(_kept(lines, find_transcripts(lines, taken), "session"))
    games = find_games(lines, taken)
    take([(game[0][0], game[-1][2], turns_as_blocks(lines, game, part)) for game in games])
    signed = find_signed_lines(lines, taken)
    take(_kept(lines, signed, "example"))
    claims.shown |= dict([*versions, *join_parts(lines, [*own, *shown, *signed])])
    take(_kept(lines, find_nested(lines, taken), "nested lines"))


def _claim_columns(lines: Sequence[Line], claims: Claims, hyphens: Hyphens, part: Reader) -> None:
    """What stands in columns that blanks part: tables, newspaper columns, keys beside their texts."""
    taken, take = claims.taken, claims.take
    take(find_side_lists(lines, taken, part))
    take(find_paired_options(lines, taken, part))
    take(find_session_remarks(lines, taken, hyphens))
    take(find_grouped(lines, taken, hyphens))
    take(find_overflowing(lines, taken, hyphens))
    take(find_between_rules(lines, taken, hyphens))
    take(find_three_rules(lines, taken, hyphens))
    take(find_narrow(lines, taken, hyphens))
    take(find_right_columns(lines, taken, hyphens))
    take(find_fields(lines, taken, hyphens))

    def newspaper(run: Run) -> list[Block]:
        return read_columns(lines, run, part)

    found, claims.keyed = find_gutter_tables(lines, taken, hyphens, newspaper)
    take(found)
    take(find_centred_labels(lines, taken, hyphens))
    take(find_definitions(lines, taken, hyphens))


def _kept(lines: Sequence[Line], runs: Sequence[tuple[int, int]], part: str) -> list[Found]:
    return [(start, end, [program_text(lines[start:end], part)]) for start, end in runs]


def _drawn(lines: Sequence[Line], runs: Sequence[tuple[int, int]], note: str) -> list[Found]:
    return [(start, end, [drawing(lines[start:end], note)]) for start, end in runs]
