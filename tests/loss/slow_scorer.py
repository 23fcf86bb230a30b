"""A slow scorer that follows the definitions word by word, to hold the fast one against.

It shares nothing with the program: its own parser for a handful of sequences, a grid of single cells, sets of
glyph ids, and no caches. Glyphs are the byte offsets at which they start; text is ASCII.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import NamedTuple

SEQUENCE = re.compile(rb"\x1b\[(\??)([0-9;]*)([A-Za-z])")


@dataclass
class SlowScreen:
    """A grid of cells, each None or ``(glyph id, character)``."""

    rows: int
    columns: int
    row: int = 0
    column: int = 0
    pending: bool = False
    cells: list[list[tuple[int, str] | None]] = field(default_factory=list)
    on_scroll: Callable[[list[tuple[int, str] | None]], None] | None = None
    """Told of the row that is about to leave at the top."""

    def __post_init__(self) -> None:
        self.cells = [[None] * self.columns for _ in range(self.rows)]

    def put(self, glyph: int, char: str) -> None:
        if self.pending:
            self.column = 0
            self.feed()
        self.pending = False
        self.cells[self.row][self.column] = (glyph, char)
        if self.column == self.columns - 1:
            self.pending = True
        else:
            self.column += 1

    def feed(self) -> None:
        self.pending = False
        if self.row < self.rows - 1:
            self.row += 1
            return
        if self.on_scroll is not None:
            self.on_scroll(self.cells[0])
        del self.cells[0]
        self.cells.append([None] * self.columns)

    def control(self, byte: int) -> None:
        if byte == 0x0A:
            self.feed()
        elif byte == 0x0D:
            self.column, self.pending = 0, False
        elif byte == 0x08:
            self.column, self.pending = max(0, self.column - 1), False

    def sequence(self, numbers: tuple[int, ...], final: str) -> None:
        first = numbers[0] if numbers else 0
        count = max(1, first)
        if final in "Hf":
            second = numbers[1] if len(numbers) > 1 else 0
            self.row = min(max(first, 1), self.rows) - 1
            self.column = min(max(second, 1), self.columns) - 1
        elif final == "A":
            self.row = max(0, self.row - count)
        elif final == "B":
            self.row = min(self.rows - 1, self.row + count)
        elif final == "C":
            self.column = min(self.columns - 1, self.column + count)
        elif final == "D":
            self.column = max(0, self.column - count)
        elif final == "G":
            self.column = min(count, self.columns) - 1
        elif final == "d":
            self.row = min(count, self.rows) - 1
        elif final == "J":
            self.erase_page(first)
        elif final == "K":
            self.erase_line(first)
        if final in "HfABCDGdJK":
            self.pending = False

    def erase_page(self, how: int) -> None:
        here = self.row * self.columns + self.column
        for row in range(self.rows):
            for column in range(self.columns):
                place = row * self.columns + column
                if how == 2 or (how == 0 and place >= here) or (how == 1 and place <= here):
                    self.cells[row][column] = None

    def erase_line(self, how: int) -> None:
        for column in range(self.columns):
            if how == 2 or (how == 0 and column >= self.column) or (how == 1 and column <= self.column):
                self.cells[self.row][column] = None

    def standing(self) -> dict[int, tuple[int, int]]:
        """Where each glyph stands that is not blank."""
        return {
            cell[0]: (row, column)
            for row, line in enumerate(self.cells)
            for column, cell in enumerate(line)
            if cell is not None and cell[1] != " "
        }

    def glyph(self, row: int, column: int) -> int | None:
        """The glyph of a cell; None where it is blank."""
        cell = self.cells[row][column]
        return None if cell is None or cell[1] == " " else cell[0]


class Step(NamedTuple):
    """One glyph, control or sequence of the output."""

    at: int
    kind: str
    byte: int = 0
    numbers: tuple[int, ...] = ()
    final: str = ""

    @property
    def places(self) -> bool:
        """Whether it is a cursor-addressing operation."""
        return self.final in tuple("ABCDGd") or (
            self.final in ("H", "f") and any(n > 1 for n in self.numbers)
        )


def steps_of(output: bytes) -> list[Step]:
    """Cut the output into steps."""
    found = []
    at = 0
    while at < len(output):
        match = SEQUENCE.match(output, at)
        if match:
            numbers = tuple(int(number or 0) for number in match[2].split(b";")) if match[2] else ()
            found.append(Step(at, "sequence", 0, numbers, match[3].decode()))
            at = match.end()
        else:
            byte = output[at]
            found.append(Step(at, "glyph" if 0x20 <= byte < 0x7F else "control", byte))
            at += 1
    return found


@dataclass
class SlowFigures:
    """What the slow scorer finds."""

    needed_shown: float | None = None
    clean: float | None = None
    text_kept: float | None = None
    turns_read: float | None = None
    placed_share: float | None = None
    holds: int = 0


def score(
    output: bytes,
    looks: list[tuple[int, str]],
    big: tuple[int, int],
    small: tuple[int, int],
    *,
    hold: bool = False,
) -> SlowFigures:
    """Score a session. ``looks`` are ``(offset, typed)`` ascending, the last at the end; sizes are (rows, columns)."""
    steps = steps_of(output)
    shown = _read_big(steps, looks, SlowScreen(*big))
    shown.rows = big[0]
    return _read_small(steps, looks, SlowScreen(*small), shown, hold=hold)


def _apply(screen: SlowScreen, step: Step) -> None:
    if step.kind == "glyph":
        screen.put(step.at, chr(step.byte))
    elif step.kind == "control":
        screen.control(step.byte)
    else:
        screen.sequence(step.numbers, step.final)


def find_decoration(row: list[str]) -> set[int]:
    """The columns of a row that are decoration."""
    found: set[int] = set()
    for column, char in enumerate(row):
        if char != " " and not char.isalnum() and row[column : column + 4] == [char] * 4:
            found.update(range(column, column + 4))
    for start, end in runs(row):
        word = "".join(row[start:end])
        if word in ("--", "---") or ("|" in word and set(word) <= set("|+-=_:")):
            found.update(range(start, end))
    return found


def runs(row: list[str]) -> list[tuple[int, int]]:
    """The maximal runs of cells that are not blank."""
    found = []
    start = None
    for column, char in enumerate([*row, " "]):
        if char != " " and start is None:
            start = column
        elif char == " " and start is not None:
            found.append((start, column))
            start = None
    return found


Word = tuple[list[tuple[int, int, int]], bool]
"""``([(glyph, row, column), ...], is text)``: the glyphs that count."""


@dataclass
class BigLook:
    """What the big screen shows at a look."""

    words: list[Word] = field(default_factory=list)
    new: set[int] = field(default_factory=set)
    decorated: set[int] = field(default_factory=set)
    neighbours: dict[int, tuple[object, object]] = field(default_factory=dict)
    """For each glyph that stands what is left and right of it."""


@dataclass
class Shown:
    """What the big screen shows in the session."""

    rows: int = 0
    looks: list[BigLook] = field(default_factory=list)
    placed: set[int] = field(default_factory=set)
    ever_decorated: set[int] = field(default_factory=set)


def _read_big(steps: list[Step], looks: list[tuple[int, str]], screen: SlowScreen) -> Shown:
    shown = Shown()
    before: set[int] = set()
    echo: set[int] = set()
    typed = ""
    waiting = list(steps)
    for at, typed_here in looks:
        placing = False
        while waiting and waiting[0].at < at:
            step = waiting.pop(0)
            placing = placing or step.places
            if step.kind == "glyph" and placing:
                shown.placed.add(step.at)
            if step.kind == "glyph" and typed:
                if chr(step.byte) == typed[0]:
                    echo.add(step.at)
                    typed = typed[1:]
                else:
                    typed = ""
            _apply(screen, step)
        typed = "".join(char for char in typed_here if char.isprintable())
        look = _big_look(screen, echo, before)
        before |= look.new
        shown.ever_decorated |= look.decorated
        shown.looks.append(look)
    return shown


def _big_look(screen: SlowScreen, echo: set[int], before: set[int]) -> BigLook:
    look = BigLook()
    for row in range(screen.rows):
        texts = [" " if cell is None else cell[1] for cell in screen.cells[row]]
        decorated = find_decoration(texts)
        for start, end in runs(texts):
            glyphs = []
            for column in range(start, end):
                glyph = screen.glyph(row, column)
                assert glyph is not None
                look.neighbours[glyph] = (_left(screen, row, column), _right(screen, row, column))
                if column in decorated:
                    look.decorated.add(glyph)
                elif glyph not in echo:
                    glyphs.append((glyph, row, column))
            if glyphs:
                look.words.append((glyphs, sum(char.isalnum() for char in texts[start:end]) >= 2))
                look.new.update(glyph for glyph, _, _ in glyphs if glyph not in before)
    return look


EDGE = "edge"


def _left(screen: SlowScreen, row: int, column: int) -> object:
    if column:
        return screen.glyph(row, column - 1)
    return (EDGE, screen.glyph(row - 1, screen.columns - 1) if row else None)


def _right(screen: SlowScreen, row: int, column: int) -> object:
    if column < screen.columns - 1:
        return screen.glyph(row, column + 1)
    return (EDGE, screen.glyph(row + 1, 0) if row < screen.rows - 1 else None)


def _agree(mine: object, its: object) -> bool:
    if isinstance(mine, tuple):
        return True
    if isinstance(its, tuple):
        return mine is None or mine == its[1]
    return mine == its


def is_intact(word: Word, standing: dict[int, tuple[int, int]], columns: int, placed: set[int]) -> bool:
    """Whether a word stands intact."""
    glyphs, is_text = word
    if any(glyph not in standing for glyph, _, _ in glyphs):
        return False
    orders = [standing[glyph][0] * columns + standing[glyph][1] for glyph, _, _ in glyphs]
    if any(orders[index] - orders[0] != column - glyphs[0][2] for index, (_, _, column) in enumerate(glyphs)):
        return False
    if not any(glyph in placed for glyph, _, _ in glyphs):
        return True
    if len({standing[glyph][0] for glyph, _, _ in glyphs}) > 1:
        return False
    return is_text or standing[glyphs[0][0]] == glyphs[0][1:]


def _intact(look: BigLook, screen: SlowScreen, placed: set[int]) -> set[int]:
    """The glyphs in words that stand intact now."""
    standing = screen.standing()
    words = [word for word in look.words if is_intact(word, standing, screen.columns, placed)]
    return {glyph for word in words for glyph, _, _ in word[0]}


def _read_small(
    steps: list[Step], looks: list[tuple[int, str]], screen: SlowScreen, shown: Shown, *, hold: bool
) -> SlowFigures:
    found = SlowFigures()
    ever: set[int] = set()
    seen: set[int] = set()
    needed: list[float] = []
    clean: list[float] = []
    waiting = list(steps)
    for (at, _), look in zip(looks, shown.looks, strict=True):

        def on_scroll(row: list[tuple[int, str] | None], look: BigLook = look) -> None:
            if hold and any(cell is not None and cell[1] != " " and cell[0] not in seen for cell in row):
                seen.update(screen.standing())
                ever.update(_intact(look, screen, shown.placed))
                found.holds += bool(look.new)

        screen.on_scroll = on_scroll
        while waiting and waiting[0].at < at:
            _apply(screen, waiting.pop(0))
        seen.update(screen.standing())
        now = _intact(look, screen, shown.placed)
        ever.update(now)
        if look.new:
            old = {
                glyph for word in look.words for glyph, _, _ in word[0] if glyph in shown.placed
            } - look.new
            needed.append((len(look.new & ever) + len(old & now)) / len(look.new | old))
            clean += _clean(screen, look, shown)
    turns = [look.new for look in shown.looks if look.new]
    if turns:
        glyphs = set().union(*turns)
        found.needed_shown = sum(needed) / len(needed)
        found.clean = sum(clean) / len(clean)
        found.text_kept = len(glyphs & ever) / len(glyphs)
        found.turns_read = sum(len(new & ever) >= 0.95 * len(new) for new in turns) / len(turns)
        found.placed_share = len(glyphs & shown.placed) / len(glyphs)
    return found


def _clean(screen: SlowScreen, look: BigLook, shown: Shown) -> list[float]:
    """The clean share, in a list; none where both screens are empty."""
    visible = true = 0
    first = 0
    if screen.rows > shown.rows:  # what has scrolled off the big screen may still stand above the rest
        standing = [
            row
            for row in range(screen.rows)
            if any(screen.glyph(row, column) in look.neighbours for column in range(screen.columns))
        ]
        first = standing[0] if standing else 0
    for row in range(first, screen.rows):
        own = find_decoration([" " if cell is None else cell[1] for cell in screen.cells[row]])
        for column in range(screen.columns):
            glyph = screen.glyph(row, column)
            if glyph is None:
                continue
            if glyph in look.neighbours:
                if glyph in look.decorated:
                    continue
                left, right = look.neighbours[glyph]
                true += _agree(_left(screen, row, column), left) and _agree(
                    _right(screen, row, column), right
                )
            elif column in own or glyph in shown.ever_decorated:
                continue
            visible += 1
    if visible:
        return [true / visible]
    return [0.0] if set(look.neighbours) - look.decorated else []
