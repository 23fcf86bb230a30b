"""The body to blocks: what the rooms claim of it, the running text between, and what the whole of it shows of each."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from fit.document.blocks import Block
from fit.document.text.claims import Found, find_claims
from fit.document.text.habits.asked_titles import with_asked_titles
from fit.document.text.habits.bulleted_titles import with_bulleted_titles
from fit.document.text.habits.counted_titles import with_counted
from fit.document.text.habits.examples import with_examples
from fit.document.text.habits.first_lines import with_first_lines
from fit.document.text.habits.kin import with_kin
from fit.document.text.habits.labels import with_labels
from fit.document.text.habits.level_terms import with_level_terms
from fit.document.text.habits.numbered_alike import with_numbered_alike
from fit.document.text.habits.outline_signs import with_outline
from fit.document.text.habits.parted_terms import with_parted_terms
from fit.document.text.habits.plain_titles import with_plain_titles
from fit.document.text.habits.shown import with_shown
from fit.document.text.habits.stopped_titles import with_stopped_titles
from fit.document.text.habits.terms import with_terms
from fit.document.text.habits.titles import with_titles
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.lists.listing import find_listing
from fit.document.text.running.chunks import find_chunks
from fit.document.text.running.classify import classify
from fit.document.text.running.definitions import with_texts
from fit.document.text.running.hung_entries import item_steps
from fit.document.text.running.joined_code import with_joined_code
from fit.document.text.running.led_code import with_led_code
from fit.document.text.running.listed_titles import listed_titles
from fit.document.text.running.outline import outlined
from fit.document.text.running.placed import Placed
from fit.document.text.running.units import split_units
from fit.document.text.signs.measure import LEAST, Measure, prose


def read_parts(lines: Sequence[Line], hyphens: Hyphens, least: int = LEAST) -> list[Placed]:
    """All blocks of the lines, in order; ``least`` is the margin of a text too short to show its own."""
    if not lines:
        return []

    def part(side: Sequence[Line]) -> list[Block]:
        return [placed.block for placed in read_parts(side, hyphens, 0)]

    claims = find_claims(lines, hyphens, part)
    taken = claims.taken
    measure = Measure(lines, least)
    base = _base(lines, taken)
    listing = find_listing(lines, taken, measure, claims.keyed, base)
    listing.shown = claims.shown
    listing.steps = item_steps(lines, listing.markers)
    for start, end in claims.shown.items():
        taken[start:end] = [None] * (end - start)

    def running(first: int, last: int) -> list[Placed]:
        chunks = find_chunks(lines, first, last, measure, listing)
        units = split_units(lines, first, last, measure, chunks, listing)
        return classify(lines, units, chunks, base, hyphens)

    placed = with_shown(lines, _between(taken, running), base)
    placed = listed_titles(lines, placed, claims.titles, hyphens)
    placed = with_texts(lines, outlined(lines, placed, hyphens), base)
    for by_habit in (
        with_outline,
        with_asked_titles,
        with_bulleted_titles,
        with_titles,
        with_plain_titles,
        with_counted,
        with_numbered_alike,
        with_parted_terms,
    ):
        placed = by_habit(lines, placed)
    placed = with_level_terms(lines, placed, measure, hyphens)
    placed = with_stopped_titles(lines, placed, hyphens)
    placed = with_labels(lines, with_terms(lines, placed, measure, hyphens, running), hyphens)
    placed = with_first_lines(lines, with_kin(lines, placed, hyphens))
    return with_joined_code(lines, with_led_code(lines, with_examples(lines, placed), hyphens))


def _between(taken: Sequence[Found | None], running: Callable[[int, int], list[Placed]]) -> list[Placed]:
    """What was found, and between it the blocks of the running text ``first <= i < last``."""
    placed: list[Placed] = []
    index = 0
    while index < len(taken):
        found = taken[index]
        if found is not None:
            start, end, blocks = found
            placed.extend(Placed(block, start, end) for block in blocks)
        else:
            end = next((place for place in range(index, len(taken)) if taken[place] is not None), len(taken))
            placed.extend(running(index, end))
        index = end
    return placed


def _base(lines: Sequence[Line], taken: Sequence[object]) -> int:
    """The usual left margin: the least indent that a tenth of the lines of running text have."""
    counts: dict[int, int] = {}
    for index, line in enumerate(lines):
        if taken[index] is None and prose(line.text):
            counts[line.indent] = counts.get(line.indent, 0) + 1
    total = sum(counts.values())
    return min((indent for indent, times in counts.items() if times * 10 >= total), default=0)
