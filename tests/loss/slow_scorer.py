"""A slow scorer that follows the definitions word by word, to hold the fast one against.

It shares nothing with the program: its own parser for a handful of sequences, a grid of single cells, sets of
glyph ids, and no caches. Glyphs are the byte offsets at which they start; text is ASCII.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

SEQUENCE = re.compile(rb"\x1b\[(\??)([0-9;]*)([A-Za-z])")


@dataclass
class SlowScreen:
    """A grid of cells, each None or ``(glyph id, character)``."""

    rows: int
    columns: int
    row: int = 0
    column: int = 0
    pending: bool = False
    top: int = 0
    bottom: int = 0
    placing: bool = False
    cells: list[list[tuple[int, str] | None]] = field(default_factory=list)
    on_scroll: object = None
    seen: set[int] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.bottom = self.rows - 1
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
        if self.row == self.bottom:
            if callable(self.on_scroll):
                self.on_scroll(self, self.cells[self.top])
            del self.cells[self.top]
            self.cells.insert(self.bottom, [None] * self.columns)
        elif self.row < self.rows - 1:
            self.row += 1

    def control(self, byte: int) -> None:
        if byte == 0x0A:
            self.feed()
        elif byte == 0x0D:
            self.column, self.pending = 0, False
        elif byte == 0x08:
            self.column, self.pending = max(0, self.column - 1), False

    def sequence(self, numbers: list[int], final: str) -> None:
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


@dataclass
class Tokens:
    """The output as steps ``(offset, kind, value)``: a glyph, a control, a sequence."""

    steps: list[tuple[int, str, object]] = field(default_factory=list)

    @classmethod
    def of(cls, output: bytes) -> Tokens:
        found = cls()
        at = 0
        while at < len(output):
            match = SEQUENCE.match(output, at)
            if match:
                numbers = [int(number or 0) for number in match[2].split(b";")] if match[2] else []
                found.steps.append((at, "sequence", (numbers, match[3].decode())))
                at = match.end()
            else:
                byte = output[at]
                found.steps.append((at, "glyph" if 0x20 <= byte < 0x7F else "control", byte))
                at += 1
        return found


@dataclass
class SlowFigures:
    """What the slow scorer finds."""

    needed_shown: float | None
    clean: float | None
    text_kept: float | None
    turns_read: float | None
    placed_share: float | None
    holds: int


def score(
    output: bytes,
    looks: list[tuple[int, str]],
    big: tuple[int, int],
    small: tuple[int, int],
    *,
    hold: bool = False,
) -> SlowFigures:
    """Score a session. ``looks`` are ``(offset, typed)`` ascending, the last at the end; sizes are (rows, columns)."""
    steps = Tokens.of(output).steps
    chars = {at: chr(value) for at, kind, value in steps if kind == "glyph" and isinstance(value, int)}
    words_by_look, shown_new, placed, on_big, decoration = _read_big(steps, looks, big, chars)
    return _read_small(
        steps, looks, small, chars, words_by_look, shown_new, placed, on_big, decoration, hold=hold
    )


def _apply(screen: SlowScreen, step: tuple[int, str, object]) -> None:
    at, kind, value = step
    if kind == "glyph":
        assert isinstance(value, int)
        screen.put(at, chr(value))
    elif kind == "control":
        assert isinstance(value, int)
        screen.control(value)
    else:
        assert isinstance(value, tuple)
        screen.sequence(*value)


def _places(step: tuple[int, str, object]) -> bool:
    """Whether a step is a cursor-addressing operation."""
    if step[1] != "sequence":
        return False
    assert isinstance(step[2], tuple)
    numbers, final = step[2]
    return final in "ABCDGd" or (final in "Hf" and any(number > 1 for number in numbers))


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


def _read_big(steps, looks, size, chars):  # type: ignore[no-untyped-def]
    screen = SlowScreen(*size)
    echo: set[int] = set()
    placed: set[int] = set()
    ever_decoration: set[int] = set()
    shown: set[int] = set()
    words_by_look, new_by_look, on_big = [], [], []
    typed = ""
    placing = False
    waiting = list(steps)
    for at, typed_here in looks:
        while waiting and waiting[0][0] < at:
            step = waiting.pop(0)
            if _places(step):
                placing = True
            if step[1] == "glyph":
                if placing:
                    placed.add(step[0])
                if typed:
                    if chars[step[0]] == typed[0]:
                        echo.add(step[0])
                        typed = typed[1:]
                    else:
                        typed = ""
            _apply(screen, step)
        placing = False
        typed = "".join(char for char in typed_here if char.isprintable())
        words: list[Word] = []
        new: set[int] = set()
        decorated_now: set[int] = set()
        for row in range(size[0]):
            texts = [" " if cell is None else cell[1] for cell in screen.cells[row]]
            decorated = find_decoration(texts)
            for column in decorated:
                glyph = screen.glyph(row, column)
                assert glyph is not None
                ever_decoration.add(glyph)
                decorated_now.add(glyph)
            for start, end in runs(texts):
                glyphs = []
                for column in range(start, end):
                    glyph = screen.glyph(row, column)
                    assert glyph is not None
                    if column not in decorated and glyph not in echo:
                        glyphs.append((glyph, row, column))
                if glyphs:
                    words.append((glyphs, sum(char.isalnum() for char in texts[start:end]) >= 2))
                    new.update(glyph for glyph, _, _ in glyphs if glyph not in shown)
        shown |= new
        words_by_look.append(words)
        new_by_look.append(new)
        neighbours = {}
        for row in range(size[0]):
            for column in range(size[1]):
                glyph = screen.glyph(row, column)
                if glyph is not None:
                    neighbours[glyph] = (_left(screen, row, column), _right(screen, row, column))
        on_big.append((neighbours, decorated_now))
    return words_by_look, new_by_look, placed, on_big, ever_decoration


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


def _read_small(steps, looks, size, chars, words_by_look, new_by_look, placed, on_big, decoration, *, hold):  # type: ignore[no-untyped-def]
    screen = SlowScreen(*size)
    ever_intact: set[int] = set()
    holds = 0
    needed_ratios, clean_ratios = [], []
    shown_before: set[int] = set()
    number = 0

    def mark() -> set[int]:
        standing = screen.standing()
        intact = set()
        for word in words_by_look[number]:
            if is_intact(word, standing, size[1], placed):
                intact.update(glyph for glyph, _, _ in word[0])
        return intact

    def on_scroll(_: SlowScreen, row: list[tuple[int, str] | None]) -> None:
        nonlocal holds
        if hold and any(cell is not None and cell[1] != " " and cell[0] not in screen.seen for cell in row):
            screen.seen.update(screen.standing())
            ever_intact.update(mark())
            if new_by_look[number]:
                holds += 1

    screen.on_scroll = on_scroll
    waiting = list(steps)
    for number, (at, _) in enumerate(looks):
        while waiting and waiting[0][0] < at:
            _apply(screen, waiting.pop(0))
        screen.seen.update(screen.standing())
        intact_now = mark()
        ever_intact |= intact_now
        new = new_by_look[number]
        old_placed = {
            glyph
            for word in words_by_look[number]
            for glyph, _, _ in word[0]
            if glyph in placed and glyph not in new
        }
        if new:
            needed_ratios.append(
                (len(new & ever_intact) + len(old_placed & intact_now)) / len(new | old_placed)
            )
            clean = _clean(screen, on_big[number], decoration, chars)
            if clean is not None:
                clean_ratios.append(clean)
        shown_before |= new
    shown = shown_before
    turns = [new for new in new_by_look if new]
    if not turns:
        return SlowFigures(None, None, None, None, None, 0)
    return SlowFigures(
        needed_shown=sum(needed_ratios) / len(needed_ratios),
        clean=sum(clean_ratios) / len(clean_ratios) if clean_ratios else 1.0,
        text_kept=len(shown & ever_intact) / len(shown),
        turns_read=sum(len(new & ever_intact) >= 0.95 * len(new) for new in turns) / len(turns),
        placed_share=len(shown & placed) / len(shown),
        holds=holds,
    )


def _clean(
    screen: SlowScreen,
    big: tuple[dict[int, tuple[object, object]], set[int]],
    decoration: set[int],
    chars: dict[int, str],
) -> float | None:
    on_big, decorated_now = big
    visible = true = 0
    for row in range(screen.rows):
        texts = [" " if cell is None else cell[1] for cell in screen.cells[row]]
        own = find_decoration(texts)
        for column in range(screen.columns):
            glyph = screen.glyph(row, column)
            if glyph is None:
                continue
            if glyph in decorated_now if glyph in on_big else (column in own or glyph in decoration):
                continue
            visible += 1
            if glyph in on_big:
                left, right = on_big[glyph]
                true += _agree(_left(screen, row, column), left) and _agree(
                    _right(screen, row, column), right
                )
    if visible:
        return true / visible
    return None if all(glyph in decorated_now for glyph in on_big) else 0.0
