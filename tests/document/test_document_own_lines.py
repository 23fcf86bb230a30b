"""Lines that stand for themselves by what is in them, and sentences that go on though a sign seems to end them."""

from __future__ import annotations

import pytest
from test_document_listed import PROSE, shape

from fit.document.text import read_text
from fit.document.text.line import Line
from fit.document.text.running.own_lines import own_lines


def test_remarks_beside_names_keep_their_lines() -> None:
    text = """\
    gallery # our own lamp
    south # the lamp of the landing
    store.oil # before the store itself
    cistern # the cistern
"""
    assert " / ".join(shape(PROSE + text)[1:]).replace("preformatted: ", "").replace("paragraph: ", "").split(
        " / "
    ) == [
        "gallery # our own lamp",
        "south # the lamp of the landing",
        "store.oil # before the store itself",
        "cistern # the cistern",
    ]
    sentence = """\
The lines of the log with a # sign as the first of all their characters are not
read at all.  Except where a # means the number of the watch, what comes after
it is passed over as well.
"""
    assert len(shape(PROSE + sentence)) == 2


@pytest.mark.parametrize(
    ("lines", "apart"),
    [
        (["[LAMP] wick char [oil] [trimmed]", "[LAMP] wick char ON|OFF"], True),
        (["(light-lamp name colour)       ==>  lit", "(light-lamp (name hours ...))  ==>  lit"], True),
        (["log.skerry.example/lamp/drill.ps (printed)", "log.skerry.example/lamp/drill.txt (flat)"], True),
        (
            [
                "The lamp is told by its numbers, that of its wick and of its glass:",
                ":wick:`LAMP_OLD`, :wick:`LAMP_NEW`, :wick:`LAMP_OF_THE_BOAT`,",
                ":wick:`LAMP_ODD` or",
                ":wick:`LAMP_SMALL`.",
            ],
            False,
        ),
        (
            [
                "The keeper writes all of it into /skerry/log on the evening of the day in",
                "the evening, or at four, when the other keeper comes up.",
            ],
            False,
        ),
    ],
    ids=["commands", "calls", "addresses", "a list with commas", "prose"],
)
def test_two_lines_that_begin_with_one_piece_of_a_program_are_two(lines: list[str], apart: bool) -> None:
    found = shape(PROSE + "".join(f"    {line}\n" for line in lines))[1:]
    kept = [line for block in found for line in block.partition(": ")[2].split(" / ")]
    assert (kept == lines) == apart


def test_fields_of_a_message_keep_their_lines() -> None:
    fields = [
        "Via:FlagsAndLamp/2.0 harbour.skerry.example;",
        " lantern=z9hG4bK74bf3;seen=from-the-pier",
        "To:KeeperOnWatch <watch-of-the-north@skerry.example>;lamp=6",
        "From:Maren <maren@skerry.example>;lamp=1928301774",
        "Call-Number:a84b4c76e66710",
        "Sent:314162 BY LAMP",
        "Contact:<rock@skerry.example>",
        "Length:...",
    ]
    text = "".join(f"          {field}\n" for field in fields)
    assert (
        shape(f"{PROSE}   R->H:  LIT 2.0 200 OK\n{text}\n{PROSE}")[2] == f"preformatted: {' / '.join(fields)}"
    )


def test_lines_that_set_the_same_name_stay_lines() -> None:
    lines = [
        "lamp=NORTH, the lamp",
        "lamp=SOUTH, the lamp of the stairs",
        "lamp=EAST, the lamp of the stairs, that is wound by hand in winter",
        "lamp=WEST, write a report of the lamp for the harbour",
    ]
    found = shape(PROSE + "".join(f"      {line}\n" for line in lines))[1:]
    assert [line for block in found for line in block.partition(": ")[2].split(" / ")] == lines


def test_dots_lead_to_the_value_of_each_line() -> None:
    entries = [
        "Clockwork/Weights (turn the light) : yes (brass)",
        "oil pump (for the great lamp) ..... : yes",
        "bell (rung when the fog is in) .... : yes",
        "stove (in the room of the watch) .. : no",
        "steps to the landing (hewn) ....... : yes (steep)",
    ]
    text = "".join(f"    {entry}\n" for entry in entries)
    assert shape(PROSE + text)[1:] == [f"preformatted: {' / '.join(entries)}"]


def test_a_word_between_two_strokes_is_not_cut() -> None:
    text = "    lamps:   -east-  -north-  -west-  -south-  -stairs-\n    groups:  [ gallery     ][  tower      ][ house ]\n"
    assert "-stairs- / groups:" in shape(PROSE + text)[1]


def test_links_of_a_list_keep_their_lines() -> None:
    text = """\
    the tables of the tide http://skerry.example/tides
    the log of the light https://skerry.example/log
    the letters of the keepers https://skerry.example/letters
"""
    found = shape(PROSE + text)[1:]
    assert all(line.count("http") == 1 for line in found)


def test_an_entry_ends_with_its_leaders() -> None:
    text = """\
     Why the sea is white at the rock on a winter morning .......
     This is a long entry of the index, such as might be used for
     a list of all boats.
"""
    assert [line for line in shape(PROSE + text) if "white at" in line and "This is" in line] == []


def test_a_sentence_goes_on_after_a_colon_at_a_full_line() -> None:
    text = """\
The lamp room and the store below it are parted into two main rooms:
the one with the lamp or the oil in it, and the one where the keepers sleep
in turns.  Between these two rooms there is a door that nobody ever shuts at
night, and another.
"""
    assert len(shape(PROSE + text)) == 2
    entries = """\
These values are used by the keeper to sort the oil, present it and burn it:
ts is the time at which the can was filled, as it was written on the label of it
by hand.
"""
    assert len(shape(PROSE + entries)) == 3


def test_a_dash_in_the_text_beside_a_key_makes_no_entry() -> None:
    text = """\
WICK            The wick of the lamp.
LENS            You can set this to let the lens be turned by a
                clock weight -- this gives you a light for
                foggy nights -- but it can make the stair too
                narrow for two.
OIL             The oil of the lamp.
"""
    assert shape(PROSE + text)[2] == (
        "item: LENS You can set this to let the lens be turned by a clock weight -- this gives you "
        "a light for foggy nights -- but it can make the stair too narrow for two."
    )


def test_an_item_goes_on_while_a_quotation_is_open() -> None:
    text = """\
  [1] Rules for keepers of the light, "LAMPS
      AND WHAT THEY BURN", to be found in the store.

  [2] Rules for boats.
"""
    assert shape(PROSE + text)[1] == (
        'item: [1] Rules for keepers of the light, "LAMPS AND WHAT THEY BURN", to be found in the store.'
    )


def test_hanging_text_goes_on_though_its_first_line_has_names_in_it() -> None:
    text = """\
OIL_LEVEL       How the oil of the lamp is counted.  It can be one of:

                OIL_STORE (7) to read /store/oil and interpret it
                       as a string representing a number of cans that
                       are full, as the old keeper did it.
                OIL_CANS (8) to count the cans as the boat brings them
                       to the rock.
"""
    assert any("interpret it as a string representing a number" in line for line in shape(PROSE + text))


def test_each_name_of_a_head_is_a_row_of_its_own() -> None:
    text = """\
Keepers of the Light                                          A. Keeper
Draft:                                                        Dec 8, 1901
Document: draft-keeper-lamp-08
Expires: June 8, 1902
Obsoletes: draft-keeper-lamp-07

"""
    table = read_text(text + PROSE, "draft", "ascii").blocks[0]
    assert [row[0].chars for row in table.rows][2:] == [
        "Document: draft-keeper-lamp-08",
        "Expires: June 8, 1902",
        "Obsoletes: draft-keeper-lamp-07",
    ]


def test_an_address_set_in_below_its_name_keeps_its_line() -> None:
    text = """\
    tide tables for the rock, as the harbour sends them (since 4 June 1984)
        http://www.skerry.example/tides/rock-1.3.tar.gz

    lamp tables
        http://www.skerry.example/lamp/tables/lamp-3_02-r2-small.zip # as numbers
        http://www.skerry.example/lamp/tables/lamp-3_02-r2.zip       # in words
"""
    shown = [line for block in shape(PROSE + text)[1:] for line in block.partition(": ")[2].split(" / ")]
    assert [line.strip() for line in shown] == [line.strip() for line in text.splitlines() if line]


def test_a_sentence_goes_on_behind_an_address_that_is_set_in() -> None:
    text = """\
An archive of all that was written down for the last few years can be read at
  http://www.skerry.example/log/
  at the place that the harbour keeps for it, and nowhere else.
"""
    assert shape(PROSE + text)[1].endswith("be read at http://www.skerry.example/log/")


def test_signs_in_justified_text_are_no_row_of_figures() -> None:
    text = """\
The  keeper  on  watch writes the hour and what the barometer says
into the  log  at the full hour, and again when the  glass  falls.
He  writes  all of the hours in one and the same form, and that is
%-8s  %5s-%1c-%1c-%1c  %1c%1c  %s'  for the lamp  (no  quotes).
In  short:  the  fields are the hour, the wind, and what the glass
showed when he read it, all of them in the order of the old books.
"""
    assert len(shape(PROSE + text)) == 2
    figures = "12  13  14  15  16\nThe figures are read from left to right by the keeper of the watch.\n"
    assert len(shape(PROSE + figures)) == 3


def test_a_rule_behind_the_dash_that_a_letter_put_before_it() -> None:
    shapes = shape(PROSE + "The list ends here.\n- " + "-" * 60 + "\nEnd of the list.\n")
    assert shapes[-1] == "paragraph: End of the list."
    assert shape(PROSE + "- ---oil---\n- lamp\n")[1:] == ["item: - ---oil---", "item: - lamp"]


def test_lines_that_say_the_same_of_two_names_stay_lines() -> None:
    text = (
        "The keeper orders his wicks from the shore by their number, and any of these does:\n\n"
        "    wick-3-round for lamps that burn in cold nights\n    wick-5-flat for lamps that burn in warm nights\n"
        "The boat brings them.\n"
    )
    said = [block.text.chars for block in read_text(text, "a book", "ascii").blocks]
    assert "wick-5-flat for lamps that burn in warm nights" in said


@pytest.mark.parametrize(
    "text",
    [
        "  fair  weather:  the lamp is trimmed at dusk\n stormy weather:  the lamp or the horn is in use, by watches\n",
        " stormy weather:  the lamp or the horn is in use, by watches\n  fair  weather:  the lamp is trimmed at dusk\n",
        "WEATHER_SEEN { FairByDay, StormyByDay, FoggyByNight, FrostyByNight, Unknown }\n\tWhat the keeper saw:\n\tFairByDay: The log has no wind at noon.\n\tStormyByDay: The horn was in use.\n",
    ],
)
def test_labels_set_to_the_right_and_names_over_their_meaning_stay_lines(text: str) -> None:
    text = (
        f"The watches of the keepers go by the weather, in one of these ways:\n\n{text}\nAll is in the log.\n"
    )
    first = text.splitlines()[2].split()
    blocks = read_text(text, "log", "ascii").blocks[1:-1]
    pieces = [
        piece.chars
        for block in blocks
        for piece in (block.text, *block.lines, *(c for r in block.rows for c in r))
        if piece.chars
    ]
    assert not any(first[-1] in piece and text.splitlines()[3].split()[0] in piece for piece in pieces)


def test_a_bracket_behind_a_formula_is_closed_below_it() -> None:
    text = (
        "How much oil the lamp has at the end of the watch, by its wick:\n\n"
        "0       New = Oil - (Oil >> N)\n"
        "1       New = Lampoil - (Lampoil >> N) (minus an additional 1, if trimming\n"
        "the square wick 1)\n\nwhere N is the number of the watch.\n"
    )
    shown = [f"{block.text.chars}" for block in read_text(text, "log", "ascii").blocks]
    assert any(said.endswith("if trimming the square wick 1)") for said in shown)


@pytest.mark.parametrize(
    ("deeper", "joined"), [("(even if the log is wet or lost)", True), ("(2 * N + watch)", False)]
)
def test_a_remark_in_brackets_right_below_what_a_sign_stands_for_belongs_to_it(
    deeper: str, joined: bool
) -> None:
    text = (
        "The oil that is left at dawn, and what the keeper enters then, are as follows:\n\n"
        f"\tN = actual number of the watches in the log\n\t\t\t  {deeper}\n"
        "\tI = 4 * watch\n\tT = N - I\n\tA = N - (I + T)\n\nAll of it goes into the log.\n"
    )
    shown = [block.text.chars for block in read_text(text, "log", "ascii").blocks]
    assert any(said.endswith(f"in the log {deeper}") for said in shown) == joined


def test_forms_of_one_command_beside_a_key_are_lines() -> None:
    forms = ["show lamp", "show tides", "show log { day | night }", "show oil"]
    text = "Syntax:  " + "\n         ".join(forms) + "\n\nIt tells what is known of the lamp and the tides.\n"
    item, *rest = read_text(text, "a manual", "ascii").blocks[:-1]
    assert item.text.chars == "show lamp"
    assert [line.chars for block in rest for line in block.lines] == forms[1:]
    said = "Light:   the lamp of the north tower, and\n         the lamp of the landing, and also\n         the lamp of the boat house\n"
    (item,) = read_text(said, "a manual", "ascii").blocks
    assert item.text.chars.endswith("and also the lamp of the boat house")


@pytest.mark.parametrize(
    ("above", "below", "own"),
    [
        ("17976931348623159077083915679378", "99792458813451203458813452233409", True),
        ("17976931348623159077083915679378", "467627007.", True),
        ("the lamp was lit for the first time in the winter of", "1811.", False),
        ("and the one in the tin, which the boat brought on day 11012026", "20012026.", False),
    ],
)
def test_a_number_of_very_many_figures_keeps_its_lines(above: str, below: str, own: bool) -> None:
    assert own_lines(Line(above, 0), Line(below, 99), 34) is own


def test_words_in_capitals_under_the_text_beside_a_number_are_no_title() -> None:
    text = (
        "1. Not done on the rock:\n"
        "   6.5.5    LIGHTING\n"
        "            TRIMMING\n"
        "            ROWING\n"
        "   6.10.4   LANDING\n"
        "            SIGNALS-ON\n"
        "            SIGNALS-OFF\n"
        "2. The tide is read at noon alone.\n"
    )
    assert "preformatted: SIGNALS-ON / SIGNALS-OFF" in shape(PROSE + text)


def test_fields_of_a_letter_are_lines_of_their_own() -> None:
    letter = (
        "        From: The keeper of the lamp <lamp@skerry.example.org>\n"
        "        Subject: Warning: the boat could not land for the past four days\n"
    )
    assert len(shape(PROSE + letter)[1:]) == 2
