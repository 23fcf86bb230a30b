"""Keys and what they mean, two pairs to a line, too wide for the screen: a pair a line, in the order of the keys."""

from __future__ import annotations

import pytest
from documents import Maker

from fit.layout.proof import prove_words

PAIRS = (
    ("AL", "all well", "LT", "lamp trimmed"),
    ("BR", "bring rope", "NO", "no oil"),
    ("FS", "fog, and snow", "OS", "one step gone"),
    ("HH", "half an hour", "", ""),
)


def test_keys_that_count_on_at_the_head_of_the_next_column_stand_one_below_the_other() -> None:
    maker = Maker().table(*PAIRS)
    assert maker.lines(20) == [
        "AL  all well",
        "BR  bring rope",
        "FS  fog, and snow",
        "HH  half an hour",
        "LT  lamp trimmed",
        "NO  no oil",
        "OS  one step gone",
    ]
    assert "a pair a line" in maker.lay_out(20).decisions[0].what
    assert prove_words(maker.document(), maker.lay_out(20)).holds


def test_where_there_is_room_the_rows_stay_as_they_are() -> None:
    assert Maker().table(*PAIRS).lines(40)[0] == "AL  all well       LT  lamp trimmed"


@pytest.mark.parametrize("width", [1, 5, 12])
def test_on_narrow_screens_no_word_is_lost(width: int) -> None:
    maker = Maker().table(*PAIRS)
    assert prove_words(maker.document(), maker.lay_out(width)).holds


@pytest.mark.parametrize(
    "rows",
    [
        PAIRS[::-1],
        tuple((a, b, c.lower(), d) for a, b, c, d in PAIRS),
        tuple((a, b, c and f"{c} {d}", d) for a, b, c, d in PAIRS),
        PAIRS[:2],
    ],
)
def test_keys_in_no_order_or_of_another_kind_or_few_are_cells_of_rows(
    rows: tuple[tuple[str, ...], ...],
) -> None:
    assert "a pair a line" not in Maker().table(*rows).lay_out(20).decisions[0].what


def test_under_a_header_they_are_rows() -> None:
    maker = Maker().table(("Lamp", "State", "Next", "Crew"), *PAIRS, header_rows=1)
    assert "a pair a line" not in maker.lay_out(20).decisions[0].what


def test_under_the_same_names_one_part_stands_below_the_other() -> None:
    maker = Maker().table(("Key", "Meaning", "Key", "Meaning"), *PAIRS, header_rows=1)
    lines = maker.lines(22)
    assert lines[2:7] == [
        "AL   all well",
        "BR   bring rope",
        "FS   fog, and snow",
        "HH   half an hour",
        "Key  Meaning",
    ]
    assert lines[7:] == ["LT   lamp trimmed", "NO   no oil", "OS   one step gone"]
    assert prove_words(maker.document(), maker.lay_out(22)).holds


def test_keys_that_are_in_order_along_the_lines_are_rows_under_the_same_names_too() -> None:
    rows = [(f"{letter}1", "a lamp", f"{letter}2", "another lamp") for letter in "ABC"]
    maker = Maker().table(("Key", "Meaning", "Key", "Meaning"), *rows, header_rows=1)
    assert "a pair a line" not in maker.lay_out(22).decisions[0].what


def test_keys_that_differ_by_their_numbers_count_on_and_others_stand_behind_them() -> None:
    rows = (
        ("F1", "light", "F4", "turn"),
        ("F2", "trim, and wait", "F6", "wind up"),
        ("F3", "out", "F9", "ring"),
    )
    lines = Maker().table(*rows, ("", "", "Esc", "go to bed")).lines(24)
    assert lines == [
        "F1   light",
        "F2   trim, and wait",
        "F3   out",
        "F4   turn",
        "F6   wind up",
        "F9   ring",
        "Esc  go to bed",
    ]


def test_numbers_that_leap_are_no_keys_that_count_on() -> None:
    rows = (("1", "light", "7", "turn"), ("2", "trim, and wait", "8", "wind up"), ("3", "out", "9", "ring"))
    assert "a pair a line" not in Maker().table(*rows).lay_out(20).decisions[0].what


PRESSED = (
    ("^E", "one step up", "^R", "one floor up"),
    ("^X", "one step down", "^C", "one floor down"),
    ("ESC <", "foot of the stair", "ESC >", "lamp room"),
    ("^L", "lamp", "", ""),
)


def test_keys_to_press_come_in_the_order_of_their_lines() -> None:
    maker = Maker().table(*PRESSED)
    assert maker.lines(30) == [
        "^E     one step up",
        "^R     one floor up",
        "^X     one step down",
        "^C     one floor down",
        "ESC <  foot of the stair",
        "ESC >  lamp room",
        "^L     lamp",
    ]
    assert prove_words(maker.document(), maker.lay_out(30)).holds


@pytest.mark.parametrize(
    "rows",
    [
        tuple((a, b, c.strip("^"), d) for a, b, c, d in PRESSED),
        tuple((a, b, a, d) for a, b, _, d in PRESSED),
        tuple((a, b, c, "") for a, b, c, _ in PRESSED),
    ],
)
def test_other_values_keys_twice_and_keys_without_a_meaning_are_cells_of_rows(
    rows: tuple[tuple[str, ...], ...],
) -> None:
    assert "a pair a line" not in Maker().table(*rows).lay_out(20).decisions[0].what


SIGNS = (
    ("!", "a flask of oil", "?", "a log book"),
    ("#", "a wall", "<>", "a stair"),
    ("s", "a gull", "", ""),
)


def test_signs_come_in_the_order_of_their_lines() -> None:
    assert Maker().table(*SIGNS).lines(22) == [
        "!   a flask of oil",
        "?   a log book",
        "#   a wall",
        "<>  a stair",
        "s   a gull",
    ]


@pytest.mark.parametrize(
    "rows",
    [
        (("a", "a flask", "1", "a log book"), ("b", "a wall", "2", "a stair"), ("c", "a gull", "3", "a hat")),
        tuple((a, "12", c, d) for a, _, c, d in SIGNS),
    ],
)
def test_letters_beside_numbers_and_signs_beside_figures_are_cells_of_rows(
    rows: tuple[tuple[str, ...], ...],
) -> None:
    assert "a pair a line" not in Maker().table(*rows).lay_out(20).decisions[0].what
