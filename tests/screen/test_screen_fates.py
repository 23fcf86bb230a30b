"""The fate of each glyph: seen outranks the rest, of the rest the first counts, and nothing goes unaccounted."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import example, given, settings, strategies as st

from fit.dialect.ecma48 import Ecma48
from fit.screen.fates import Fate, Fates, Repeats
from fit.screen.grid import Grid, Hooks
from fit.screen.named import parse_size
from fit.screen.pieces import Piece, Row
from fit.screen.rules import Rules, WrapRule
from fit.screen.screen import Screen
from fit.units import Size


def fates_of(size: str, *turns: bytes, rules: Rules | None = None) -> dict[str, Fate]:
    """The fate of each letter printed in the turns, with a look after each turn."""
    data = b"".join(turns)
    fates = Fates(len(data))
    screen = Screen(parse_size(size), rules, fates)
    dialect = Ecma48()
    offset = 0
    for turn in turns:
        screen.apply(dialect.feed(turn, offset))
        offset += len(turn)
        screen.look(offset)
    screen.finish()
    return {
        chr(data[at]): Fate(code)
        for at, code in enumerate(fates.code[: len(data)])
        if code and chr(data[at]).isalpha()
    }


CASES: list[tuple[str, str, list[bytes], dict[str, Fate]]] = [
    ("seen at the end", "3x2", [b"ab"], {"a": Fate.SEEN, "b": Fate.SEEN}),
    ("scrolled off", "3x1", [b"a\r\nb"], {"a": Fate.SCROLLED, "b": Fate.SEEN}),
    ("seen, then scrolled off", "3x1", [b"a", b"\r\nb"], {"a": Fate.SEEN, "b": Fate.SEEN}),
    ("overwritten by a blank", "3x1", [b"a\r b"], {"a": Fate.OVERWRITTEN, "b": Fate.SEEN}),
    ("erased", "3x1", [b"ab\x1b[2Kc"], {"a": Fate.ERASED, "b": Fate.ERASED, "c": Fate.SEEN}),
    (
        "pushed past the edge",
        "3x1",
        [b"abc\x1b[H\x1b[@"],
        {"a": Fate.SEEN, "b": Fate.SEEN, "c": Fate.CLIPPED},
    ),
    ("hidden", "3x1", [b"a\x1b[?1049hb"], {"a": Fate.HIDDEN, "b": Fate.SEEN}),
    ("hidden, then shown again", "3x1", [b"a\x1b[?47h", b"\x1b[?47l"], {"a": Fate.SEEN}),
    ("hidden at first counts", "3x1", [b"a\x1b[?47h\x1b[?47l\x1b[2Jb"], {"a": Fate.HIDDEN, "b": Fate.SEEN}),
    ("deleted line", "3x2", [b"a\r\nb\x1b[H\x1b[M"], {"a": Fate.ERASED, "b": Fate.SEEN}),
    ("pushed off by an inserted line", "3x2", [b"a\r\nb\x1b[H\x1b[L"], {"a": Fate.SEEN, "b": Fate.SCROLLED}),
    (
        "without wrap",
        "2x1",
        [b"\x1b[?7labcd"],
        {"a": Fate.SEEN, "b": Fate.CLIPPED, "c": Fate.CLIPPED, "d": Fate.SEEN},
    ),
    ("DECALN", "2x1", [b"a\x1b#8"], {"a": Fate.OVERWRITTEN}),
    ("reset", "2x1", [b"a\x1bcb"], {"a": Fate.ERASED, "b": Fate.SEEN}),
]


@pytest.mark.parametrize(("size", "turns", "expected"), [c[1:] for c in CASES], ids=[c[0] for c in CASES])
def test_fate(size: str, turns: list[bytes], expected: dict[str, Fate]) -> None:
    assert fates_of(size, *turns) == expected


def test_the_operation_behind_a_loss() -> None:
    data = b"lamp\r\n\x1b[2Joil"
    fates = Fates(len(data))
    screen = Screen(parse_size("9x2"), None, fates)
    screen.apply(Ecma48().feed(data, 0))
    screen.look(len(data))
    assert [fates.loss_of(glyph) for glyph in (0, 3, 10)] == [(Fate.ERASED, 6), (Fate.ERASED, 6), None]


def test_the_glyph_that_wraps_is_behind_the_loss() -> None:
    fates = Fates(5)
    screen = Screen(parse_size("2x1"), None, fates)
    screen.apply(Ecma48().feed(b"abcde", 0))
    assert [fates.loss_of(glyph) for glyph in (0, 2)] == [(Fate.SCROLLED, 2), (Fate.SCROLLED, 4)]


def test_repeated_glyphs_have_names_of_their_own_the_same_on_every_screen() -> None:
    data = b"a\x1b[3b\x1b[2b"
    repeats = Repeats(len(data), Size(8, 40))
    screens = [Screen(parse_size(size), None, Fates(len(data), repeats)) for size in ("9x1", "3x2")]
    operations = Ecma48().feed(data, 0)
    for screen in screens:
        screen.apply(operations)
    first = screens[0].cells(0)[0][:6]
    assert first == [0, 9, 10, 11, 12, 13]
    assert screens[1].cells(0)[0] + screens[1].cells(1)[0] == first
    assert [repeats.origin(glyph) for glyph in first] == [0, 1, 1, 1, 5, 5]


Calls = list[tuple[int, str]]


def recording(size: str, data: bytes, make: Callable[[Calls], Hooks], rules: Rules | None = None) -> Calls:
    calls: Calls = []
    screen = Screen(parse_size(size), rules, Fates(len(data)))
    screen.hooks = make(calls)
    screen.apply(Ecma48().feed(data, 0))
    return calls


def test_before_a_row_scrolls_off() -> None:
    def make(calls: Calls) -> Hooks:
        def note(screen: Grid, row: Row) -> None:
            calls.append((screen.at, row.pieces[0][3]))

        return Hooks(before_scroll_off=note)

    assert recording("3x2", b"ab\r\n\r\nc\r\n", make) == [(5, "ab")]


def test_a_hold_sees_the_screen_as_it_stands_and_is_called_once() -> None:
    def make(calls: Calls) -> Hooks:
        def hold(screen: Grid, _: list[Piece]) -> None:
            assert isinstance(screen, Screen)
            calls.append((screen.at, "/".join(row.rstrip() for row in screen.display)))
            screen.hold()

        return Hooks(before_loss=hold)

    assert recording("5x2", b"ab\r\ncd\x1b[2Jef", make) == [(6, "ab/cd")]
    assert recording("5x2", b"ab\r\ncd\x1b[1;2Hxyz", make) == [(12, "ab/cd")]
    assert recording("4x1", b"abcdef", make) == [(4, "abcd")]
    assert recording("4x2", b"a bcde", make, Rules(wrap=WrapRule.WORD)) == []


def test_wraps_are_told() -> None:
    def make(calls: Calls) -> Hooks:
        return Hooks(on_wrap=lambda screen: calls.append((screen.at, "")))

    assert recording("3x3", b"abcdefg\r\nhij", make) == [(3, ""), (6, "")]


# Whatever comes: no exception, any split is the whole, and each glyph has one fate

PARTS = st.sampled_from(
    [
        *(b"\x1b[%d;%dH" % (row, column) for row, column in ((1, 1), (2, 5), (25, 80), (999, 0))),
        *(
            b"\x1b[" + tail
            for tail in (b"J", b"1J", b"2J", b"K", b"1K", b"@", b"3P", b"2L", b"M", b"4X", b"3b", b"2S")
        ),
        *(
            b"\x1b[" + tail
            for tail in (b"2T", b"1;3r", b"r", b"4h", b"4l", b"?7l", b"?7h", b"?6h", b"?6l", b"!p")
        ),
        *(
            b"\x1b[?" + tail
            for tail in (b"1049h", b"1049l", b"47h", b"47l", b"69h", b"69l", b"45h", b"2l", b"J", b"K")
        ),
        *(
            b"\x1b" + tail
            for tail in (
                b"7",
                b"8",
                b"c",
                b"D",
                b"E",
                b"M",
                b"#8",
                b"(0",
                b"(B",
                b"<",
                b"6",
                b"9",
                b"P",
                b"]2;",
            )
        ),
        *(
            b"\x1b[2;4s",
            b"\x1b[3A",
            b"\x1b[2B",
            b"\x1b[9C",
            b"\x1b[4D",
            b"\x1b['}",
            b"\x1b['~",
            b"\x1b[1;1;2;2;1;2;2$v",
        ),
        *(b"\r\n", b"\n", b"\r", b"\b", b"\t", b"\x0e", b"\x0f", b"\x1b\\", b"\x18", b'\x1b[1"q', b'\x1b["q'),
        *(b"lamp oil ", "海e\u0301".encode(), b"\xe2\x94", b"\xff", b"\x00", b"abcdefghijklmnop"),
    ]
)
STREAMS = st.lists(PARTS | st.binary(max_size=6), max_size=40).map(b"".join)
WRAPS = st.sampled_from(list(WrapRule))


@settings(max_examples=300, deadline=None)
@example(data=b"a ! !", cuts=[], wrap=WrapRule.WORD, size="3x2")
@given(
    data=STREAMS,
    cuts=st.lists(st.integers(0, 400), max_size=6),
    wrap=WRAPS,
    size=st.sampled_from(["80x25", "40x8", "3x2", "1x1"]),
)
def test_any_split_gives_what_the_whole_gives(
    data: bytes, cuts: list[int], wrap: WrapRule, size: str
) -> None:
    screens = []
    for places in ([], sorted(cut for cut in cuts if cut < len(data)), list(range(len(data)))):
        screen = Screen(parse_size(size), Rules(wrap=wrap), Fates(len(data)))
        dialect = Ecma48()
        for start, end in zip([0, *places], [*places, len(data)], strict=True):
            screen.apply(dialect.feed(data[start:end], start))
        screen.apply(dialect.finish())
        screen.look(len(data))
        screen.finish()
        screens.append(screen)
    whole = screens[0]
    for other in screens[1:]:
        assert other.display == whole.display
        assert other.cursor == whole.cursor
        assert other.fates is not None
        assert whole.fates is not None
        assert other.fates.code == whole.fates.code
        assert other.not_understood == whole.not_understood


@settings(max_examples=300, deadline=None)
@given(data=STREAMS, wrap=WRAPS, size=st.sampled_from(["80x25", "40x8", "2x2"]))
def test_every_glyph_that_was_drawn_has_one_fate_and_stands_in_one_place(
    data: bytes, wrap: WrapRule, size: str
) -> None:
    fates = Fates(len(data))
    screen = Screen(parse_size(size), Rules(wrap=wrap), fates)
    dialect = Ecma48()
    drawn: set[int] = set()
    for operation in dialect.feed(data, 0) + dialect.finish():
        screen.apply([operation])
        if operation[2] == "draw":
            text, offsets = operation[3]
            places = range(offsets, offsets + len(text)) if isinstance(offsets, int) else offsets
            drawn |= {
                place for place, char in zip(places, text, strict=True) if char.isalnum() and char.isascii()
            }
    standing = [glyph for row in range(screen.size.rows) for glyph in screen.cells(row)[0] if glyph >= 0]
    assert len(standing) == len(set(standing))
    screen.look(len(data))
    screen.finish()
    assert {glyph for glyph in drawn if not fates.code[glyph]} == set()
    assert all(fates.code[glyph] == Fate.SEEN for glyph in standing)
    for glyph in drawn:
        loss = fates.loss_of(glyph)
        assert (loss is None) == (fates.code[glyph] == Fate.SEEN)


@settings(max_examples=100, deadline=None)
@given(data=STREAMS)
def test_rows_are_exactly_as_wide_as_the_screen(data: bytes) -> None:
    screen = Screen(parse_size("7x3"), None, Fates(len(data)))
    screen.apply(Ecma48().feed(data, 0))
    for index in range(3):
        ids, texts = screen.cells(index)
        assert len(ids) == len(texts) == 7
        assert "".join(texts) == screen.display[index]
    for row in screen.grid:
        edges = [edge for piece in row.pieces for edge in piece[:2]]
        assert edges == sorted(edges)
        assert all(0 <= edge <= 7 for edge in edges)
