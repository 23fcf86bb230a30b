"""Lines to flowing `Text`: white space folded, lines joined, line-end hyphens judged."""

from __future__ import annotations

import re
from array import array
from collections.abc import Iterable, Sequence

from fit.document.blocks import Text
from fit.document.characters import cut
from fit.document.text.hyphens import Hyphens, Joint
from fit.document.text.line import Line
from fit.document.text.signs.spaced import WORDS_GAP, hold_words, spaced, spaced_part

_SPACES = re.compile(r" {2,}")
EMPTY = Text()


def concat(parts: Iterable[Text]) -> Text:
    """The parts one after the other, with nothing between."""
    kept = list(parts)
    places = array("q")
    for part in kept:
        places.extend(part.sources)
    return Text(
        "".join(part.chars for part in kept),
        places,
        b"".join(part.marks or bytes(len(part)) for part in kept),
    )


def space() -> Text:
    """A joining space, which stands nowhere in the document."""
    return Text(" ", array("q", [-1]), b"\0")


def fold(text: Text) -> Text:
    """Inner runs of blanks to one, outer blanks gone."""
    chars = text.chars
    start, end = len(chars) - len(chars.lstrip(" ")), len(chars.rstrip(" "))
    if "  " not in chars:
        return text if (start, end) == (0, len(chars)) else cut(text, start, max(start, end))
    parts: list[Text] = []
    for run in _SPACES.finditer(chars, start, end):
        parts.append(cut(text, start, run.start() + 1))
        start = run.end()
    parts.append(cut(text, start, end))
    return concat(parts)


def _folded(piece: Text) -> Text:
    """A line with its blanks folded; a title in spaced letters at its start, and the gap behind that, left open."""
    end = spaced_part(piece.chars)
    if not end:
        return fold(piece)
    rest = fold(cut(piece, end, len(piece)))
    return concat([hold_words(cut(piece, 0, end)), cut(piece, end, end + WORDS_GAP), rest])


def flow(pieces: Sequence[Text], hyphens: Hyphens) -> Text:
    """The pieces of a paragraph, one a line, as one flowing text."""
    parts: list[Text] = []
    for piece in pieces:
        folded = hold_words(piece) if spaced(piece.chars) else _folded(piece)
        if not folded.chars:
            continue
        if parts:
            before = parts[-1]
            match hyphens.joint(before.chars, folded.chars):
                case Joint.DROP:
                    parts[-1] = cut(before, 0, len(before) - 1)
                case Joint.CLOSE:
                    pass
                case Joint.SPACE:
                    parts.append(space())
        parts.append(folded)
    return parts[0] if len(parts) == 1 else concat(parts)


def flow_lines(lines: Sequence[Line], hyphens: Hyphens, start: int = 0) -> Text:
    """The lines as one flowing text; of the first line from cell ``start``."""
    pieces = [line.piece(start if index == 0 else 0, line.end) for index, line in enumerate(lines)]
    return flow(pieces, hyphens)


def keep_lines(lines: Sequence[Line]) -> tuple[Text, ...]:
    """The lines as they stand, blank ones between them, less the indentation that they share."""
    shared = min(line.indent for line in lines)
    kept: list[Text] = []
    for index, line in enumerate(lines):
        kept.extend([EMPTY] * (min(line.gap, 2) if index and not line.crossing else 0))
        kept.append(line.piece(shared, line.end))
    return tuple(kept)
