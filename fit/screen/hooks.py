"""What a remedy, or the search for assumed looks, hears of a screen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from fit.screen.pieces import Piece, Row

if TYPE_CHECKING:
    from fit.screen.grid import Grid


@dataclass(slots=True)
class Hooks:
    """Functions that are called before a change, while the screen still stands as it is.

    ``before_scroll_off(screen, row)``: a row that holds an unseen glyph is about to leave the screen.
    ``before_loss(screen, pieces)``: unseen pieces are about to be scrolled off, overwritten or erased.
    ``on_wrap(screen)``: a line is about to go on in the next row.

    In them ``screen.at`` is the byte offset of the glyph or sequence at work, and ``screen.hold()`` marks
    what stands as seen. Blanks do not count as unseen.
    """

    before_scroll_off: Callable[[Grid, Row], None] | None = None
    before_loss: Callable[[Grid, list[Piece]], None] | None = None
    on_wrap: Callable[[Grid], None] | None = None
