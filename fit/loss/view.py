"""Both screens at one look, with marks for what is not intact and what is not clean."""

from __future__ import annotations

from fit.loss.big import LookFacts
from fit.loss.bits import Flags
from fit.loss.clean import CleanMeter
from fit.loss.figures import LookView
from fit.loss.standing import Standing
from fit.screen.pieces import RIGHT_HALF
from fit.screen.screen import Screen

NOT_INTACT = "-"
NOT_CLEAN = "?"


def view(facts: LookFacts, big: Screen, small: Screen, flags: Flags) -> LookView:
    """Mark the cells of both screens; ``small`` has had the same look."""
    standing = Standing(small.grid, small.size.columns)
    broken: set[int] = set()
    for row in facts.rows:
        whole = set(map(id, standing.intact_on(row)[0]))
        for word in row.words:
            if id(word) not in whole:
                broken.update(g for glyph, count, _ in word.stretches for g in range(glyph, glyph + count))
    unclean = CleanMeter(flags).unclean(small.grid, small.size.columns, facts.page)
    return LookView(
        look=facts.number,
        at=facts.at,
        big_rows=tuple(big.display),
        big_marks=_marks(big, broken, NOT_INTACT),
        small_rows=tuple(small.display),
        small_marks=_marks(small, unclean, NOT_CLEAN),
    )


def _marks(screen: Screen, glyphs: set[int], mark: str) -> tuple[str, ...]:
    """For each row one character a cell; a wide glyph is marked in both of its cells."""
    rows = []
    for row in range(screen.size.rows):
        ids, _ = screen.cells(row)
        cells: list[str] = []
        for glyph in ids:
            cells.append(cells[-1] if glyph == RIGHT_HALF and cells else mark if glyph in glyphs else " ")
        rows.append("".join(cells))
    return tuple(rows)
