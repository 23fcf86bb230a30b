"""Drawings cut into panels."""

from __future__ import annotations

from documents import Maker

from fit.layout.lines import LineFlag
from fit.width import text_cells

TOWER = (
    "   .-------.                 ~~~~~~~~~~~~~~~~~~~~",
    "   | lamp  |     stairs      ~~   north reef   ~~",
    "",
    "   '-------'                 ~~~~~~~~~~~~~~~~~~~~",
)


def test_a_drawing_that_fits_stays_as_it_was() -> None:
    assert Maker().picture(*TOWER).lines(60) == list(TOWER)


def test_a_wide_one_is_cut_where_nothing_stands_and_parted_by_a_rule() -> None:
    layout = Maker().picture(*TOWER).lay_out(30, 20)
    assert [line.text for line in layout.lines] == [
        ".-------.",
        "| lamp  |     stairs",
        "",
        "'-------'",
        "-" * 30,
        "~~~~~~~~~~~~~~~~~~~~",
        "~~   north reef   ~~",
        "",
        "~~~~~~~~~~~~~~~~~~~~",
    ]
    assert "2 panels" in layout.decisions[0].what


def test_panels_put_side_by_side_are_the_drawing() -> None:
    lines = ("ab" * 30, "  " + "cd" * 25, "x")
    for width in (7, 11, 20, 33):
        panels: list[list[str]] = [[]]
        for line in Maker().picture(*lines).lay_out(width, 20).lines:
            if line.flags & LineFlag.RULE:
                panels.append([])
            else:
                panels[-1].append(line.text)
        sizes = [max(map(len, panel)) for panel in panels]
        again = [
            "".join(
                (panel[row] if row < len(panel) else "").ljust(size)
                for panel, size in zip(panels, sizes, strict=True)
            )
            for row in range(3)
        ]
        assert [line.rstrip() for line in again] == list(lines)


def test_no_word_is_cut_where_that_can_be_helped() -> None:
    lines = Maker().picture("lamp room above the gallery and the stairs below").lines(20)
    assert lines == ["lamp room above the", "-" * 20, "gallery and the", "-" * 20, "stairs below"]


def test_words_between_blank_columns_stay_in_one_panel() -> None:
    """No cut parts `hours of burning` where the column before it is blank from top to bottom."""
    rows = (
        "+----------+",
        "|          |     hours of burning   one",
        "+----------+",
        "|          |     oil left behind    two",
    )
    texts = Maker().picture(*rows).lines(28)
    assert "hours of burning   one" in texts
    assert texts[:2] == ["+----------+", "|          |"]


def test_no_panel_more_is_made_for_a_stroke() -> None:
    """A cut at the blank would leave a third panel of one column."""
    rows = ["~~~~~~~~~~ ~~~~~~~~~~~~~~~~~~~"] * 2
    assert "2 panels" in Maker().picture(*rows).lay_out(15, 20).decisions[0].what


def test_no_wide_character_is_cut() -> None:
    for width in (5, 6, 7):
        layout = Maker().picture("灯台守の毎日の仕事", "a灯台守の毎日の仕").lay_out(width, 20)
        shown = "".join(line.text for line in layout.lines if not line.flags & LineFlag.RULE)
        assert sorted(shown.replace(" ", "")) == sorted("灯台守の毎日の仕事a灯台守の毎日の仕")
        assert all(text_cells(line.text) <= width for line in layout.lines)


def test_labels_and_overlap_are_options() -> None:
    plain = Maker().picture("abcdefghij" * 3).lines(20)
    assert plain == ["abcdefghij" * 2, "-" * 20, "abcdefghij"]
    more = Maker().picture("abcdefghij" * 3).lines(20, panel_labels=True, overlap=4)
    assert more == ["[1 of 2]", "abcdefghij" * 2, "-" * 20, "[2 of 2]", "ghijabcdefghij"]


def test_a_drawing_on_a_screen_of_one_column() -> None:
    shown = [line for line in Maker().picture("ab", "cd").lines(1) if line != "-"]
    assert shown == ["a", "c", "b", "d"]
