"""Tables: as drawn, in narrower columns, as hanging text, as records."""

from __future__ import annotations

from dataclasses import replace

import pytest
from documents import Maker, pages_of

from fit.document.blocks import Block, Kind, Mark
from fit.document.characters import cut
from fit.layout.lines import Layout, LineFlag
from fit.layout.proof import prove_words
from fit.layout.texts import inserted, join

TIDES = ("Day", "High", "Low"), ("Monday", "6.12", "12.30"), ("Tuesday", "17.05", "1.5")
SIGNALS = (
    ("Signal", "What it says to a boat"),
    ("red", "Keep off: nobody can land at the stairs today."),
    ("white", "Come in by the north channel."),
)
BOATS = (
    ("Name", "Master and crew", "Cargo landed"),
    ("Petrel", "Old Anselm and two boys", "lamp oil, biscuit and mail"),
    ("Gannet", "", "coal"),
)


def test_a_drawn_table_that_fits_stays_as_it_was() -> None:
    drawn = ("  Day     | High", "  --------+------", "  Monday  | 6.12", "          |", "  Sunday  | 5.40")
    maker = Maker().table(("Day", "High"), ("Monday", "6.12"), ("Sunday", "5.40"), header_rows=1, drawn=drawn)
    assert maker.lines(40) == [line[2:] for line in drawn]


def test_it_is_moved_to_the_left_where_that_is_enough() -> None:
    drawn = ("          oil   wick", "          3 l   4 mm")
    maker = Maker().table(("oil", "wick"), ("3 l", "4 mm"), drawn=drawn)
    assert maker.lines(12) == ["oil   wick", "3 l   4 mm"]


def test_wide_gutters_are_squeezed() -> None:
    drawn = ("Day             High           Low", "Monday          6.12           12.30")
    maker = Maker().table(TIDES[0], TIDES[1], header_rows=1, drawn=drawn)
    assert maker.lines(20) == ["Day     High    Low", "------  ----  -----", "Monday  6.12  12.30"]
    assert "narrower columns" in maker.lay_out(20).decisions[0].what


def test_numbers_stand_under_each_other_by_their_points() -> None:
    assert Maker().table(*TIDES, header_rows=1).lines(40) == [
        "Day       High    Low",
        "-------  -----  -----",
        "Monday    6.12  12.30",
        "Tuesday  17.05   1.5",
    ]


def test_wide_characters_keep_their_columns() -> None:
    lines = Maker().table(("灯", "lamp"), ("sea", "海")).lines(40)
    assert lines == ["灯   lamp", "sea  海"]


def test_two_columns_with_a_short_key_become_hanging_text() -> None:
    maker = Maker().table(*SIGNALS, header_rows=1)
    assert maker.lines(40) == [
        "Signal  What it says to a boat",
        "red     Keep off: nobody can land at the",
        "        stairs today.",
        "white   Come in by the north channel.",
    ]
    assert "hanging text" in maker.lay_out(40).decisions[0].what


LINES_IN_CELLS = ("Watch", "What\nto do"), ("first", "oil\nwick"), ("last\nwatch", "glass")


def test_lines_of_cells_stand_under_each_other_in_columns() -> None:
    layout = Maker().table(*LINES_IN_CELLS, ("dog", "the lamp after dusk"), header_rows=1).lay_out(30)
    assert [line.text for line in layout.lines] == [
        *("Watch  What", "       to do", "-----  -------------------"),
        *("first  oil", "       wick", "last   glass", "watch"),
        *("Watch  What", "       to do", "dog    the lamp after dusk"),
    ]
    assert [bool(line.flags & LineFlag.REPEATED) for line in layout.lines].count(True) == 2


def test_lines_of_cells_end_in_hanging_text_and_in_records() -> None:
    assert Maker().table(*LINES_IN_CELLS[:2], ("last\nwatch", "all of the glasses, of both lamps")).lines(
        28
    ) == [
        *("Watch       What", "            to do", "first       oil", "            wick"),
        *("last watch  all of the", "            glasses, of both", "            lamps"),
    ]
    assert Maker().table(*LINES_IN_CELLS, ("dog", "the lamp after dusk"), header_rows=1).lines(24) == [
        *("Watch:       first", "What to do:  oil", "             wick", ""),
        *("Watch:       last", "             watch", "What to do:  glass", ""),
        *("Watch:       dog", "What to do:  the lamp", "             after dusk"),
    ]


def test_a_key_without_text_and_text_without_a_key() -> None:
    lines = Maker().table(("red", ""), ("", "Keep off the rocks at the stairs")).lines(24)
    assert lines == ["red", "     Keep off the rocks", "     at the stairs"]


def test_more_columns_become_records() -> None:
    maker = Maker().table(*BOATS, header_rows=1)
    assert maker.lines(40, 40) == [
        "Name:             Petrel",
        "Master and crew:  Old Anselm and two",
        "                  boys",
        "Cargo landed:     lamp oil, biscuit and",
        "                  mail",
        "",
        "Name:             Gannet",
        "Cargo landed:     coal",
    ]
    assert "records" in maker.lay_out(40).decisions[0].what


def test_a_header_over_an_empty_column_is_not_lost() -> None:
    maker = Maker().table(
        ("The name of the boat", "The master of it", "Remarks"), ("Petrel", "Anselm", ""), header_rows=1
    )
    assert maker.lines(30) == [
        "The name of the boat: Petrel",
        "The master of it: Anselm",
        "Remarks:",
    ]


def test_records_read_again_stay_records() -> None:
    maker = Maker()
    for key, text in (("Name:", "Petrel"), ("Crew:", "Anselm"), ("Name:", "Gannet"), ("Crew:", "Ames")):
        maker.item(key, text)
    assert maker.lines(30) == ["Name:  Petrel", "Crew:  Anselm", "", "Name:  Gannet", "Crew:  Ames"]


def test_records_without_a_header() -> None:
    maker = Maker().table(("Petrel of Skerry Bay", "Old Anselm", "oil"), ("Gannet", "Ames", "coal"))
    assert maker.lines(24) == [
        "Petrel of Skerry Bay",
        "   Old Anselm",
        "   oil",
        "",
        "Gannet",
        "   Ames",
        "   coal",
    ]


def test_the_fields_of_a_record_stand_together_also_below_long_headers() -> None:
    rows = (
        ("The duty of the watch", "Its beginning", "What is to be done"),
        ("First", "dusk", "light the lamp, and write the hour into the log"),
        ("", "midnight", "wind the clockwork"),
        ("Last", "four", "put out the lamp\ntrim the wick"),
    )
    assert Maker().table(*rows, header_rows=1).lines(36, rows=20) == [
        "The duty of the watch: First",
        "Its beginning: dusk",
        "What is to be done: light the lamp,",
        "   and write the hour into the log",
        "",
        "Its beginning: midnight",
        "What is to be done: wind the",
        "   clockwork",
        "",
        "The duty of the watch: Last",
        "Its beginning: four",
        "What is to be done: put out the lamp",
        "   trim the wick",
    ]


@pytest.mark.parametrize(
    ("header", "lines"),
    [
        (
            "As typed",
            [
                "Order:     count the oil twice",
                "As typed:  count --all oil | \\",
                "             sort -n | tee \\",
                "             stores/oil.txt",
            ],
        ),
        (
            "As it is typed at dusk",
            [
                "Order: count the oil twice",
                "As it is typed at dusk:",
                "   count --all oil | sort -n | \\",
                "     tee stores/oil.txt",
            ],
        ),
    ],
)
def test_a_program_in_a_record_goes_on_behind_the_mark(header: str, lines: list[str]) -> None:
    maker = Maker()
    heads = (maker.text("Order"), maker.text(header))
    order = (
        maker.text("count the oil twice"),
        maker.text("count --all oil | sort -n | tee stores/oil.txt", Mark.PROGRAM),
    )
    maker.blocks.append(Block(Kind.TABLE, rows=(heads, order), header_rows=1))
    layout = maker.lay_out(34, rows=20)
    assert [line.text for line in layout.lines] == lines
    assert prove_words(maker.document(), layout).holds


def test_a_table_of_headers_alone() -> None:
    assert Maker().table(("The first header", "The second header", "x"), header_rows=1).lines(12) == [
        "The first",
        " header:",
        "The second",
        " header:",
        "x:",
    ]


def test_the_header_comes_again_on_each_page_that_the_table_goes_on_to() -> None:
    rows = [(f"day {number}", f"{number}.30") for number in range(1, 13)]
    layout = Maker().table(("Day", "High"), *rows, header_rows=1).lay_out(40, 7)
    pages = pages_of(layout)
    assert all(page[0].split() == ["Day", "High"] for page in pages)
    assert [line for page in pages for line in page if line.startswith("day")] == [
        f"day {number}".ljust(6) + f"  {number}.30".rjust(7) for number in range(1, 13)
    ]
    assert max(map(len, pages)) <= 7
    repeated = [line for line in layout.lines if line.flags & LineFlag.REPEATED]
    assert len(repeated) == len(pages) - 1


@pytest.mark.parametrize("count", [60, 2000])
def test_a_long_table_takes_the_pages_that_its_headers_need(count: int) -> None:
    rows = [(f"day {number}", f"{number}.30") for number in range(count)]
    layout = Maker().table(("Day", "High"), ("", "water"), *rows, header_rows=2).lay_out(40, 7)
    assert len(layout.pages) >= count // 5
    assert all(page[:2] == layout_header(layout) for page in pages_of(layout))


def layout_header(layout: Layout) -> list[str]:
    return [line.text for line in layout.lines[:2]]


def test_a_header_may_be_kept_from_coming_again() -> None:
    rows = [(f"day {number}", f"{number}.30") for number in range(1, 13)]
    layout = Maker().table(("Day", "High"), *rows, header_rows=1).lay_out(40, 7, repeat_headers=False)
    assert not any(line.flags & LineFlag.REPEATED for line in layout.lines)


def test_a_header_that_takes_too_much_of_a_page_is_not_repeated_and_said_so() -> None:
    rows = [("a", "b")] * 9
    layout = Maker().table(("x", "y"), ("m", "n"), *rows, header_rows=2).lay_out(40, 5)
    assert not any(line.flags & LineFlag.REPEATED for line in layout.lines)
    assert "not repeated" in layout.decisions[0].what
    assert layout.decisions[0].degraded


def test_rows_of_several_lines_are_not_split() -> None:
    layout = Maker().table(*SIGNALS, *[("green", SIGNALS[1][1])] * 8, header_rows=1).lay_out(40, 6)
    assert len(layout.pages) == 4
    assert not layout.faults


def test_drawn_rows_with_wrapped_cells_hold_together() -> None:
    maker = Maker()
    red, stairs = maker.text("red    keep off the"), maker.text("       stairs")
    white, channel = maker.text("white  come in by the"), maker.text("       channel")
    rows = (
        (cut(red, 0, 3), join(cut(red, 7, len(red)), cut(stairs, 7, len(stairs)))),
        (cut(white, 0, 5), join(cut(white, 7, len(white)), cut(channel, 7, len(channel)))),
    )
    maker.blocks.append(Block(Kind.TABLE, lines=(red, stairs, maker.text(""), white, channel), rows=rows))
    assert pages_of(maker.lay_out(40, 3)) == [[red.chars, stairs.chars], [white.chars, channel.chars]]


def test_a_table_whose_cells_lack_words_of_the_drawing_is_set_as_a_drawing() -> None:
    drawn = ("oil        wick       more than the cells hold", "3 l        4 mm")
    maker = Maker().table(("oil", "wick"), ("3 l", "4 mm"), drawn=drawn)
    layout = maker.lay_out(24, 20)
    assert "panels" in layout.decisions[0].what


def test_a_word_without_room_beside_its_header_stands_below_it() -> None:
    maker = Maker().table(("Where it is", "Use"), ("/var/log/skerry/lamp/drill", "the drill"), header_rows=1)
    assert maker.lines(30) == [
        "Where it is:",
        "   /var/log/skerry/lamp/drill",
        "Use:          the drill",
    ]


def test_a_word_without_room_beside_its_key_stands_below_it() -> None:
    maker = Maker().table(("lamp drill", "/var/log/skerry/drill_lamp"), ("tides", "the tide tables"))
    assert maker.lines(30)[:2] == ["lamp drill", "   /var/log/skerry/drill_lamp"]


def test_a_dash_keeps_the_place_of_an_empty_cell_without_headers() -> None:
    """Nothing but its place says of which column a cell is; behind the last one none is missed."""
    maker = Maker().table(
        ("The landing of the rock", "", "11.31 Gannet Bay", "14.21 Gannet Bay"),
        ("The mainland", "9.52 Gannet Bay", "", ""),
    )
    assert maker.lines(24) == [
        "The landing of the rock",
        "   -",
        "   11.31 Gannet Bay",
        "   14.21 Gannet Bay",
        "",
        "The mainland",
        "   9.52 Gannet Bay",
    ]


def test_figures_are_columns_though_one_blank_parts_them() -> None:
    rows = (
        ("Landing", "dep.", "9.40", "11.10"),
        ("Gannet Stack", "", "9.52", ""),
        ("Rock", "arr.", "", "12.09"),
    )
    assert Maker().table(*rows).lines(28) == [
        "Landing      dep. 9.40 11.10",
        "Gannet Stack      9.52",
        "Rock         arr.      12.09",
    ]
    words = (
        ("Landing", "dep.", "boat", "11.10"),
        ("Gannet Stack", "", "none", ""),
        ("Rock", "arr.", "", "all"),
    )
    assert Maker().table(*words).lines(28)[:2] == ["Landing", "   dep."]


def test_a_dash_among_figures_is_a_figure_that_is_missing() -> None:
    rows = (("Rock", "12.5", "9"), ("Landing", "-", "10"), ("Gannet Stack", "114.0", "-"))
    assert Maker().table(*rows).lines(28) == [
        "Rock           12.5   9",
        "Landing         -    10",
        "Gannet Stack  114.0   -",
    ]


def test_a_short_name_of_a_column_is_no_bullet_where_it_is_repeated() -> None:
    head = ("Horn", "Kind", "What it does to the lamp of the station")
    repeated = tuple(map(inserted, head))
    later = Maker().table(head, ("--gap", "seconds", "The gap between two blasts"), header_rows=1)
    later.blocks[0] = replace(later.blocks[0], rows=(repeated, *later.blocks[0].rows[1:]))
    assert later.lines(40)[:2] == ["Horn: --gap", "Kind: seconds"]
