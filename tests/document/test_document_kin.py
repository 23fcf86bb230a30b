"""Lines built like the items right beside them are items too."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what\n"
    "it shows into the log, whatever the weather may be, before he goes up.\n"
)


def read(text: str) -> tuple[Block, ...]:
    return read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks[1:-1]


def labels(text: str) -> list[str]:
    """The labels of the items; other blocks by their kind."""
    return [block.label.chars if block.kind is Kind.ITEM else block.kind.value for block in read(text)]


def test_a_bullet_before_a_word_that_a_wrapped_line_could_begin_with() -> None:
    text = (
        "- the lamp is lit at dusk and burns until it is day, with two wicks in\n"
        "  winter\n"
        "- looking after the oil - either the cans of the store or the tank - is\n"
        "  for who has the watch\n"
        "- the horn is blown in fog\n"
    )
    assert labels(text) == ["-", "-", "-"]


@pytest.mark.parametrize(
    "second", ["--bell rings before each watch.", "BELL rings at noon.", "`bell' rings."]
)
def test_a_full_stop_that_is_the_bullet_of_its_list(second: str) -> None:
    text = f"  . the lamp is lit at dusk.\n  . {second}\n  . the oil is measured at noon.\n"
    assert labels(text) == [".", ".", "."]
    assert read(text)[1].text.chars == second


def test_what_looks_like_program_text_among_names_before_an_arrow() -> None:
    text = (
        "    LOG           =>  The log of the watch\n"
        "    TIDE          =>  The table of tides\n"
        "    tide.c        =>  Tides in program text\n"
        "    LAMP.MARK     =>  Mark of the lamp (see below)\n"
    )
    assert labels(text) == ["LOG", "TIDE", "tide.c", "LAMP.MARK"]
    assert {block.level for block in read(text)} == {0}


def test_a_sign_right_behind_a_key_where_others_have_a_blank_before_it() -> None:
    text = (
        "     %N - The name of the rock, or of the tower where that has its own,\n"
        "          as the chart has it\n"
        "     %Y- the year\n"
        "     %K- the keeper\n"
        "     %T - Time of the watch\n"
        "     %D - Day of the month\n"
    )
    assert labels(text) == ["%N -", "%Y-", "%K-", "%T -", "%D -"]
    assert [block.text.chars for block in read(text)][1:3] == ["the year", "the keeper"]


def test_terms_stacked_over_one_text_with_an_aside_each() -> None:
    text = (
        "  -bell\n        Rings the bell before each watch.\n\n"
        "  -lamp\n        Lights the lamp at dusk.\n\n"
        "  -horn (the small horn of the gallery)\n"
        "  -horn_big (the big horn on the roof of the store)\n"
        "  -horn_off (no horn at all)\n"
        "        Sounds a horn in fog, or none, whoever has the watch.\n"
    )
    assert labels(text) == [
        "-bell",
        "-lamp",
        "-horn (the small horn of the gallery)",
        "-horn_big (the big horn on the roof of the store)",
        "-horn_off (no horn at all)",
    ]
    assert read(text)[-1].text.chars == "Sounds a horn in fog, or none, whoever has the watch."


def test_an_entry_that_goes_on_in_a_second_line_among_those_of_one_line() -> None:
    text = (
        "LAMP      the lamp of the tower, with two wicks in winter and with one in\n"
        "          summer, when the nights are short\n"
        "OIL_LEFT  what is in the tank\n"
        "lamp.out  =  no oil at all\n"
        "HORN      the horn of the gallery, for fog and for ships that come too near\n"
        "          to the rock\n"
    )
    assert labels(text) == ["LAMP", "OIL_LEFT", "lamp.out", "HORN"]


def test_what_stands_below_such_an_entry_is_a_part_of_it() -> None:
    text = (
        "-a  Light the lamp at dusk.\n\n"
        "-b<n> - Ring the bell so many times, if there is one in the tower.\n\n"
        "    The bell is rung by hand.\n\n"
        "-c  Close the shutters of the gallery.\n"
    )
    blocks = read(text)
    assert [(block.kind, block.level) for block in blocks] == [
        (Kind.ITEM, 0),
        (Kind.ITEM, 0),
        (Kind.PARAGRAPH, 1),
        (Kind.ITEM, 0),
    ]


@pytest.mark.parametrize(
    "text",
    [
        (
            "'lamp' lights the lamp of the tower and keeps it burning through the night.\n\n"
            "'oil'\n     how much oil is left\n\n'wicks'\n     how many wicks are left\n"
        ),
        (
            "The log names each lamp by its letter. Of the letters there are four.\n\n"
            "A = the lamp of the tower\n"
        ),
    ],
    ids=["a sentence above terms in quotation marks", "a sentence above one entry"],
)
def test_what_no_item_beside_it_speaks_for_stays(text: str) -> None:
    assert read(text)[0].kind is Kind.PARAGRAPH


def test_code_of_several_depths_beside_an_item_stays() -> None:
    text = (
        "-l  light the lamp\n"
        "-o  fill the tank\n\n"
        "-x lamp_init(&lamp);\n"
        "      if (lamp.lit) {\n"
        "          lamp.out = 0;\n"
        "      }\n"
    )
    assert labels(text)[-1] == "preformatted"


@pytest.mark.parametrize(
    "lines",
    [
        ["/log/tides/", "  high.txt", "  low.txt", "  ..."],
        ["| lamp.cfg    # the lamp", "| tide.cfg    # the tides", "| README      # this text"],
        [">   light(lamp);", ">       trim(wick);"],
    ],
    ids=["names of files below a folder", "a box that is open at its right", "quoted lines"],
)
def test_lines_that_are_no_entries_though_they_begin_as_one_beside_them(lines: list[str]) -> None:
    text = "/log/        what the keepers write\n" + "\n".join(lines) + "\n/lamp/       the lamp\n"
    blocks = read(text)
    kept = [line.chars for block in blocks for line in block.lines]
    assert all(line in kept for line in lines)


def test_settings_with_an_aside_each_beside_one_that_was_seen_for_an_entry() -> None:
    text = (
        "wicks=first/second/third      (try 30/30/30)\n"
        "oil=left/right                (fills BEFORE the lamp is lit!)\n"
        "lamp=keeper                   (try 200)\n"
    )
    assert labels(text) == ["wicks=first/second/third", "oil=left/right", "lamp=keeper"]
    coded = "data_a  0x300       # the lamp\ndata_b  lamp        # the horn\n"
    assert not any(block.kind is Kind.ITEM for block in read(coded))


def test_a_line_further_left_is_no_part_of_an_entry() -> None:
    text = (
        "Anna of the North Rock (light@rock.example)\n"
        "    - lights the lamp at dusk, winter and summer\n"
        "    - fix `Wick not found' - see the log/of/the/lamp\n"
        "Bert of the Boat (boat@rock.example)\n"
        "    - brings the oil when the sea allows it\n"
    )
    assert not any("Bert" in block.text.chars for block in read(text) if block.kind is Kind.ITEM)
