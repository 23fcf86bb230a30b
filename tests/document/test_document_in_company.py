"""Terms, rows and lines that their neighbours show: a list of terms at the margin, dashes in a column, lines that begin alike."""

from __future__ import annotations

import pytest
from test_document_torn_lines import PROSE, shape

from fit.document.blocks import Kind
from fit.document.text import read_text

FIGURES = """\
The log of the year has these figures, each of them counted by hand:

tins
\tNumber of tins that came with the boat
oil in the tank
\tGallons of oil that stand in the tank on the first of the year
sum of all blasts
\tNumber of blasts that the horn gave
broken panes
\tNumber of panes that the gulls or the wind broke in the lamp
\troom
unknown ship '?'
\tA ship passed
names of the boats
\tEach boat that came to the rock
"""
ROWS = """\
These are the books on the shelf:

tides.log           - the tides of the year, and the heights of
                      the water at the stair
weather_of_the_year.log
                    - if the barometer fell in the night, all that
                      the second keeper saw
stores.log          - lists what is in store (oil and wicks) with
                      the dates (day, month)
lamps_and_the_burners.log - when each burner was cleaned or lit
                      (see the drill)
boats.log           - the boats that came to the rock
"""


def test_terms_with_small_words_below_texts_without_a_full_stop() -> None:
    found = shape(FIGURES)[1:]
    assert found == [
        "[tins] Number of tins that came with the boat",
        "[oil in the tank] Gallons of oil that stand in the tank on the first of the year",
        "[sum of all blasts] Number of blasts that the horn gave",
        "[broken panes] Number of panes that the gulls or the wind broke in the lamp room",
        "[unknown ship '?'] A ship passed",
        "[names of the boats] Each boat that came to the rock",
    ]


def test_a_sentence_between_deeper_lines_is_no_term() -> None:
    text = (
        "The lamp is lit at dusk, and the keeper looks for the boat with\n"
        "    the glass of the second keeper, which hangs beside the door of\n"
        "the lamp room.\n"
        "    It is cleaned at noon.\n"
    )
    assert not any(block.label.chars for block in read_text(PROSE + text, "log", "ascii").blocks)


def test_rows_with_a_dash_in_a_column() -> None:
    found = shape(ROWS)[1:]
    assert found == [
        "[tides.log -] the tides of the year, and the heights of the water at the stair",
        "[weather_of_the_year.log] - if the barometer fell in the night, all that the second keeper saw",
        "[stores.log -] lists what is in store (oil and wicks) with the dates (day, month)",
        "[lamps_and_the_burners.log -] when each burner was cleaned or lit (see the drill)",
        "[boats.log -] the boats that came to the rock",
    ]


def test_examples_that_begin_alike_stay_apart() -> None:
    text = (
        "  --watch\n"
        "        keep the lamp lit for the hours that are named. Read the table\n"
        "        of the year. 'Mon:4 Sat:6' means:\n"
        "          keep the lamp lit on each Monday for 4 hours\n"
        "          keep the lamp lit on each Saturday for 6 hours\n"
        "          keep the lamp lit on all the days of the week else\n"
        "        with the 'gun flag' do not fire the gun of the rock at noon:\n"
        "          g10 means that no gun is heard for 10 hours of the day\n"
        "        e.g. 'Mon:g4 Sat:6' means:\n"
        "          no gun on Monday\n"
    )
    lines = [
        line.chars
        for block in read_text(PROSE + text, "log", "ascii").blocks
        for line in (*block.lines, block.text)
    ]
    assert "keep the lamp lit on each Monday for 4 hours" in lines
    assert "keep the lamp lit on each Saturday for 6 hours" in lines
    assert "g10 means that no gun is heard for 10 hours of the day" in lines
    assert "e.g. 'Mon:g4 Sat:6' means:" in lines


def test_letters_that_brackets_explain() -> None:
    text = (
        "   * drill   - drill(word/lamp)\n"
        "               word=empty or\n"
        "               r (the lamp is red for the boat)\n"
        "               g (the lamp is green)\n"
        "   * horn    - sounds the horn\n"
    )
    assert shape(text)[2:4] == ["r (the lamp is red for the boat)", "g (the lamp is green)"]


def test_options_that_end_in_what_may_follow_are_terms() -> None:
    text = "".join(
        f"  --{name}\n     Says which lamps of the rock are lit, and in which of the nights of the\n     year.\n\n"
        for name in ("lamps=name,...", "nights=[month:]night,...", "horns=count")
    )
    labels = [block.label.chars for block in read_text(PROSE + text + PROSE, "log", "ascii").blocks]
    assert [label for label in labels if label] == [
        "--lamps=name,...",
        "--nights=[month:]night,...",
        "--horns=count",
    ]


def test_a_letter_right_under_one_behind_a_sign() -> None:
    text = (
        "   * drill   - writes the drill of the day into the log, for all that is seen\n"
        "               word = r - take the name of the lamp as one of a horn and\n"
        "                          write the hour of the blast beside it\n"
        "                      g - write all hours, not only the first\n"
        "   * horn    - sounds the horn\n"
    )
    assert shape(text)[1] == "[g -] write all hours, not only the first"


def test_what_is_to_be_tried_goes_on_under_its_words() -> None:
    text = (
        ">> Light the lamp and look at the sea.\n"
        "   Then trim the wick of the lamp.\n\n"
        "The flame is steady now, and smaller.\n"
    )
    assert shape(text)[0] == ">> Light the lamp and look at the sea. Then trim the wick of the lamp."


def test_a_label_over_its_value_as_another_one_nearby() -> None:
    text = (
        "Send the sheets of the log, the list of the stores and all questions to\n"
        "boat:\n"
        "harbour-steps-4\n\n"
        "gull:\n"
        "the keeper of the rock\n"
    )
    blocks = read_text(PROSE + text, "log", "ascii").blocks
    assert blocks[1].text.chars.endswith("all questions to")
    assert [line.chars for line in blocks[2].lines] == ["boat:", "harbour-steps-4"]


@pytest.mark.parametrize(
    "text",
    [
        (
            "* get to know the horn of the rock. Say you want to call the boat to the\n"
            "  steps on the north side. Go to the desk and write\n"
            "  '/send boat_1 n2<Tab> n3<Tab>'\n"
            "  where the last sign is the side of the rock that you want to see it on.\n"
        ),
        (
            "* change the word of the watch when a boat answers too often. Then write\n"
            "  two lines like these : 'alias away {^watch no_ ;//away}'\n"
            "  and 'alias back {//back ;^watch yes,no}' to\n"
            "  '~/.watch'.\n"
        ),
        (
            "* the lamp of the rock has glasses before it for the nights on which the\n"
            "  boat comes, and can have one of these colours : off,red,green,\n"
            "  blue,dark,purple,amber,dim,pale,whitered,\n"
            "  greenred,whiteblue,palered\n"
        ),
    ],
)
def test_an_item_goes_on_with_what_is_quoted_or_named(text: str) -> None:
    assert shape(text) == [f"[*] {' '.join(text.split())[2:]}"]


def test_a_colon_before_what_a_sentence_quotes_first() -> None:
    text = (
        "1) Look at the slate below the clock. The hours of the horn must not be\n"
        "in the list. So if:\n"
        '"cat /skerry/hours" returns "10-12", you can have\n'
        "the hours from 13 to 16 for the drill of the lamp, but no others of the day.\n"
    )
    assert shape(text) == [f"[1)] {' '.join(text.split())[3:]}"]


def test_names_in_quotation_marks_draw_nothing() -> None:
    text = (
        "    --without\n"
        "                do not copy sheets with one of these ends:\n"
        "                ('\\.oil', '\\.wk2', '\\.gn', '\\.tin', '\\.fog', '\\.gull',\n"
        "                 '\\.horn', '\\.tide')\n"
        "                If all of the sheets are wanted, set this\n"
        "                to '.*'\n"
    )
    kinds = [block.kind for block in read_text(PROSE + text, "log", "ascii").blocks]
    assert Kind.PICTURE not in kinds


def test_words_beside_a_bar_that_goes_on_are_a_part_of_the_drawing() -> None:
    side = "   |  ||| |"
    words = [
        "if you still see the lamp, the horn is broken",
        "or the boat is not at the steps of the rock",
        "and if not, you will see the boat at the steps",
        "with the men of the harbour who have come in it",
        "to bring the oil for the lamp and the wicks",
    ]
    rows = ["+" + "-" * 50 + "+" + side, "|" + " " * 50 + "|" + side]
    rows += [f"{text:52}{side}" for text in words] + rows
    blocks = read_text(PROSE + "\n".join(rows) + "\n\n" + PROSE, "log", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]


def test_a_command_with_a_variable_in_quotation_marks_is_code() -> None:
    text = (
        "#! /bin/sh\n"
        "LAMP='north'\n\n"
        'light class add lamp "$LAMP" parent 1 oil 4 wick 2\n\n'
        'light filter add lamp "$LAMP" parent 1: tin ip wick 1 fog oil 1:10\n\n'
        'horn -t north -A "$LAMP" -j BLAST\n'
    )
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks[1:-1]
    assert all(block.kind is Kind.PREFORMATTED for block in blocks)
