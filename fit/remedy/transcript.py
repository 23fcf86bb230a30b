"""The transcript: everything the big screen came to show, as flowing text for the small width.

Rows that the terminal had cut are joined as they were; rows that the program had wrapped are joined to paragraphs
where the first word of the next row would not have fitted any more. Everything else keeps its line ends. A form
feed stands at each break point.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import groupby

from fit.layout.greedy import wrap_greedy
from fit.screen.grid import Grid, Hooks
from fit.screen.pieces import SINGLE, Piece, Row
from fit.screen.screen import Screen

BREAK = "\f"
_ITEM = re.compile(r"\s*(?:[-*+\u2022>#|$%]|\(?(?:\d{1,3}|[A-Za-z])[.)\]:])(?:\s|$)")
_TABLE = re.compile(r"\S\s{3,}\S")
_FEWEST_WORDS = 3
"""A row of fewer words than this begins no paragraph that goes on: headings, prompts and lists are such rows."""
_SHARE = 0.6
"""Of the longest line of all, how long a block's longest line must be before its rows count as wrapped."""


@dataclass(slots=True)
class Line:
    """One row as it was last shown."""

    pieces: list[Piece]
    is_cut: bool
    """Whether the terminal had cut it off the row above, which is full then."""
    columns: int = 0
    """Cells of the row."""
    text: str = ""


@dataclass(slots=True)
class Paragraph:
    """Text to be wrapped, and the byte after each of its characters' glyphs (ascending where text flows)."""

    text: str = ""
    places: list[int] = field(default_factory=list)


class Recorder:
    """Takes the lines from the big screen: at each look, and before rows that nobody saw scroll off."""

    def __init__(self, screen: Screen) -> None:
        self.lines: list[Line] = []
        self.screen = screen
        self._known: dict[int, tuple[Row, Line, list[Piece]]] = {}
        screen.hooks = Hooks(before_scroll_off=self._before_scroll_off)

    def look(self, at: int) -> None:
        """A person reads."""
        self.screen.look(at)
        self._take()

    def _before_scroll_off(self, screen: Grid, _: Row) -> None:
        screen.hold()
        self._take()

    def _take(self) -> None:
        known, self._known = self._known, {}
        blank = False
        for row in self.screen.grid:
            before = known.get(id(row))
            pieces = [piece for piece in row.pieces if not piece[3].isspace()]
            if not pieces:
                blank = True
                continue
            if before is not None and _holds(pieces, before[2]):
                line = before[1]
                line.pieces = pieces
            else:
                if blank and self.lines and self.lines[-1].pieces:
                    self.lines.append(Line([], is_cut=False))
                line = Line(pieces, row.wrapped, self.screen.size.columns)
                self.lines.append(line)
            blank = False
            self._known[id(row)] = (row, line, pieces)


def _holds(pieces: list[Piece], earlier: list[Piece]) -> bool:
    """Whether a row still holds all that it held earlier: then it only grew."""
    starts = {(piece[2], piece[0]): piece[1] for piece in pieces}
    return all(starts.get((piece[2], piece[0]), -1) >= piece[1] for piece in earlier)


def reflow(lines: Sequence[Line], width: int, breaks: Sequence[int], origin: Callable[[int], int]) -> str:
    """The lines as text of at most ``width`` cells a line, each ended by LF, with a form feed at each break."""
    waiting = deque(sorted(breaks))
    parts: list[str] = []
    for paragraph in paragraphs(lines, origin):
        start = 0
        while waiting and paragraph.places and waiting[0] < max(paragraph.places[-1], paragraph.places[0]):
            cut = _word_start(paragraph.text, bisect_right(paragraph.places, waiting.popleft()))
            parts += _wrapped(paragraph.text[start:cut], width)
            if parts and parts[-1] != BREAK:
                parts.append(BREAK)
            start = cut
        parts += _wrapped(paragraph.text[start:], width) if paragraph.text else ["\n"]
    return "".join(parts).rstrip("\n") + "\n"


def _word_start(text: str, index: int) -> int:
    """No word is cut: a break in one comes before the next."""
    while 0 < index < len(text) and not text[index - 1].isspace():
        index += 1
    return index


def _wrapped(text: str, width: int) -> list[str]:
    return [f"{text[span.start : span.end]}\n" for span in wrap_greedy(text.rstrip(), width)]


def paragraphs(lines: Sequence[Line], origin: Callable[[int], int]) -> Iterator[Paragraph]:
    """Join what was only wrapped. A blank line comes as an empty paragraph."""
    for line in lines:
        line.text = _text(line.pieces)
    limits = _limits(lines)
    open_one: Paragraph | None = None
    before: Line | None = None
    for line, limit in zip(lines, limits, strict=True):
        if open_one is not None and line.is_cut:
            missing = 0 if before is None else line.columns - len(before.text)
            _extend(open_one, line, origin, glue=" " * missing)
        elif (
            open_one is not None and before is not None and limit and _goes_on(before.text, line.text, limit)
        ):
            _join(open_one)
            _extend(open_one, line, origin, unindent=True)
        else:
            if open_one is not None:
                yield open_one
            open_one = Paragraph()
            _extend(open_one, line, origin)
        before = line
    if open_one is not None:
        yield open_one


def _limits(lines: Sequence[Line]) -> list[int]:
    """For each line the width at which its block was wrapped: its longest line; 0 where it was not.

    A block was wrapped where its lines are long, and one of them goes on with a small letter.
    """
    least = max((max(_SHARE * len(line.text), line.columns / 2) for line in lines), default=0)
    limits: list[int] = []
    for has_text, block in groupby(lines, key=lambda line: bool(line.text)):
        texts = [line.text for line in block]
        longest = max(map(len, texts)) if has_text else 0
        is_wrapped = longest >= least and any(text.lstrip()[:1].islower() for text in texts[1:])
        limits += [longest if is_wrapped else 0] * len(texts)
    return limits


def _goes_on(text: str, following: str, limit: int) -> bool:
    """Whether the next row continues the paragraph: its first word would not have fitted in this one."""
    words = following.split()
    if not words or len(text.split()) < _FEWEST_WORDS or _ITEM.match(following):
        return False
    if _TABLE.search(text) or _TABLE.search(following) or _indent(following) > _indent(text):
        return False
    return len(text) + 1 + len(words[0]) > limit and not _ends_block(text, following)


def _ends_block(text: str, following: str) -> bool:
    return text.rstrip().endswith(":") and following[:1].isupper()


def _indent(text: str) -> int:
    return len(text) - len(text.lstrip())


def _text(pieces: list[Piece]) -> str:
    parts: list[str] = []
    reached = 0
    for column, end, _, text, _ in pieces:
        parts.append(" " * (column - reached) + text)
        reached = end
    return "".join(parts).rstrip()


def _join(paragraph: Paragraph) -> None:
    """Part the next row by a blank; after a hyphen in a word it goes on at once."""
    text = paragraph.text.rstrip()
    del paragraph.places[len(text) :]
    if not (text[-1:] == "-" and text[-2:-1].isalnum()):
        text += " "
        paragraph.places.append(paragraph.places[-1])
    paragraph.text = text


def _extend(
    paragraph: Paragraph,
    line: Line,
    origin: Callable[[int], int],
    *,
    glue: str = "",
    unindent: bool = False,
) -> None:
    text, places = _spelled(line.pieces, origin)
    if unindent:
        text, places = _unindented(text, places)
    last = paragraph.places[-1] if paragraph.places else 0
    paragraph.text += glue + text
    paragraph.places += [last] * len(glue) + places


def _unindented(text: str, places: list[int]) -> tuple[str, list[int]]:
    indent = _indent(text)
    return text[indent:], places[indent:]


def _spelled(pieces: list[Piece], origin: Callable[[int], int]) -> tuple[str, list[int]]:
    """A row's text, and for each character the byte after its glyph's first."""
    parts: list[str] = []
    places: list[int] = []
    reached = last = 0
    for column, end, glyph, text, kind in pieces:
        parts.append(" " * (column - reached) + text)
        places += [last] * (column - reached)
        if kind & SINGLE:
            places += [origin(glyph) + 1] * len(text)
        else:
            places += [origin(glyph + index) + 1 for index in range(len(text))]
        last = places[-1]
        reached = end
    text = "".join(parts).rstrip()
    return text, places[: len(text)]
