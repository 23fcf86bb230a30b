"""Terms and their texts, as manuals set them: a term that fills the room before its column, names far left of theirs."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text
from fit.document.text.lists.key_columns import key_of

PROSE = (
    "       The keeper on watch reads the barometer at the full hour and writes what\n"
    "       it shows into the log, whatever the weather may be, before he goes up.\n\n"
)


def terms(text: str) -> list[tuple[str, str]]:
    """Label and text of each item."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    return [(block.label.chars, block.text.chars) for block in blocks if block.kind is Kind.ITEM]


def test_a_term_with_one_blank_before_its_column() -> None:
    text = (
        "       lampoil\n              The number of cans that stand in the store.  The keeper counts\n"
        "              them on Monday.\n\n"
        "       LAMPHR A  list of hours, read at dusk if the tables that the harbour sent\n"
        "              are lost.\n\n"
        "       LOG    The book that lies on the desk below the barometer, and that every\n"
        "              keeper signs.\n\n"
        "       wi[ck] Trim it.\n\n"
        "       bo[at] Fly the flag.\n"
    )
    assert terms(text) == [
        ("lampoil", "The number of cans that stand in the store. The keeper counts them on Monday."),
        ("LAMPHR", "A list of hours, read at dusk if the tables that the harbour sent are lost."),
        ("LOG", "The book that lies on the desk below the barometer, and that every keeper signs."),
        ("wi[ck]", "Trim it."),
        ("bo[at]", "Fly the flag."),
    ]


def test_a_long_term_whose_second_word_stands_at_the_column() -> None:
    text = (
        "       -w wick\n          Trim it to the length that the drill gives, no shorter and no longer\n"
        "          than that.\n\n"
        "       -o oil can\n          Fill the lamp.\n\n"
        "       -g glass\n          Wipe it with the leather that hangs at the stair, and with nothing\n"
        "          else.\n"
    )
    assert [term for term, _ in terms(text)] == ["-w wick", "-o oil can", "-g glass"]


def test_a_name_far_left_of_its_text() -> None:
    text = (
        "       lamp-config-keeper-identity:         The name of the keeper who has the\n"
        "                                            watch tonight.\n\n"
        f"{PROSE}"
        "       lamp-config-barometer-last           What the glass showed when the watch\n"
        "                                            before this one ended.\n"
    )
    assert [term for term, _ in terms(text)] == ["lamp-config-keeper-identity:", "lamp-config-barometer-last"]


def headings(text: str) -> list[str]:
    blocks = read_text(text, "log", "ascii").blocks
    return [block.text.chars for block in blocks if block.kind is Kind.HEADING]


STORES: tuple[tuple[str, list[str]], ...] = (
    ("LAMPOIL", ["The number of cans that stand in the store below the tower."]),
    ("WICKS", []),
    ("FOGBELL", ["How often the bell was rung in the last watch, counted", "by the keeper."]),
    ("GLASS", ["What the barometer shows."]),
    ("RELIEF", ["Days to the boat."]),
)


def test_terms_in_capitals_on_lines_of_their_own_in_running_text() -> None:
    text = "".join(
        f"       {term}\n" + ("".join(f"              {line}\n" for line in lines)) + "\n"
        for term, lines in STORES
    )
    assert [term for term, _ in terms(text)] == ["LAMPOIL", "FOGBELL", "GLASS", "RELIEF"]


def test_titles_in_capitals_left_of_all_running_text() -> None:
    text = "".join(f"{term}\n{PROSE}" for term, _ in STORES)
    assert headings(text) == [term for term, _ in STORES]


def test_terms_with_texts_of_one_line_and_no_blank_line_between() -> None:
    text = "".join(
        f"       -D {letter}\n              Keeps {what} by default.\n"
        for letter, what in zip("oOrR", ("oil", "all oil", "rope", "all rope"), strict=True)
    )
    assert [term for term, _ in terms(text)] == ["-D o", "-D O", "-D r", "-D R"]


def test_lines_of_a_program_are_no_terms() -> None:
    text = "".join(
        f"       light tower.{name}\n              wick {name!r} oil 2\n\n"
        for name in ("north", "south", "house")
    )
    assert terms(text) == []


def test_a_key_beside_its_name_in_braces_is_a_term() -> None:
    text = (
        "       ?    {help}\n              Help.  Shows what the lamp program can do in one page.\n\n"
        "       /wick  {trim}\n              Trim the wick, whatever the lamp is doing just now.\n\n"
        "       ^    {raise}\n              Raise the flag.\n"
    )
    assert terms(text) == [
        ("? {help}", "Help. Shows what the lamp program can do in one page."),
        ("/wick {trim}", "Trim the wick, whatever the lamp is doing just now."),
        ("^ {raise}", "Raise the flag."),
    ]


def test_numbers_and_options_alone_on_their_lines_are_terms_of_a_few_words() -> None:
    text = (
        "       10.\n           Lamps and wicks (L)\n\n       11.\n           Boats and flags (B)\n\n"
        "       --with-bell\n           Bell of the harbour (see below)\n\n"
        "       --with-flag\n           Flag of the harbour (see below)\n"
    )
    assert terms(text) == [
        ("10.", "Lamps and wicks (L)"),
        ("11.", "Boats and flags (B)"),
        ("--with-bell", "Bell of the harbour (see below)"),
        ("--with-flag", "Flag of the harbour (see below)"),
    ]


def test_a_key_that_a_hyphen_parts_over_two_lines() -> None:
    text = (
        "       -f, --fog-  The bell is rung at once, unless the keeper of the watch has put\n"
        "           bell    it out.\n"
        "       -l, --lamp- The lamp is lit at once, whatever the hour of the day is, and the\n"
        "           light   keeper\n"
        "                   signs for it.\n"
        "       -x          Nothing is done, and the keeper goes to bed at once as if there\n"
        "                   were no fog.\n"
    )
    assert terms(text) == [
        ("-f, --fog-bell", "The bell is rung at once, unless the keeper of the watch has put it out."),
        (
            "-l, --lamp-light",
            "The lamp is lit at once, whatever the hour of the day is, and the keeper signs for it.",
        ),
        ("-x", "Nothing is done, and the keeper goes to bed at once as if there were no fog."),
    ]


def test_options_that_one_blank_parts_above_those_with_more() -> None:
    text = (
        "       -Axx Set the hour of the first watch, which begins when it is dark\n"
        "       -Bxx Set how many turns the lamp makes in a night, and in one of fog\n"
        "            HOURS=20, lamp.turns=0\n"
        "       -Cxx Set how often the bell is rung (0 = never, 1 = in fog)\n"
        "       -N   Use the new tide table\n"
        "       -P   Use the old tide table\n"
        "       -W   Write the watch into the log\n"
    )
    assert terms(text)[:3] == [
        ("-Axx", "Set the hour of the first watch, which begins when it is dark"),
        ("-Bxx", "Set how many turns the lamp makes in a night, and in one of fog HOURS=20, lamp.turns=0"),
        ("-Cxx", "Set how often the bell is rung (0 = never, 1 = in fog)"),
    ]


def test_keys_that_are_pressed_together_over_two_lines() -> None:
    text = (
        "       Ctrl+Bell   The bell is rung at once, unless the keeper of the watch has put\n"
        "                   it out.\n"
        "       Shift+Ctrl+\n"
        "       Lamp        The lamp is lit at once, whatever the hour of the day is.\n\n"
        "       Log         The book is opened.\n"
    )
    assert [term for term, _ in terms(text)] == ["Ctrl+Bell", "Shift+Ctrl+Lamp", "Log"]


def test_two_terms_that_a_plus_joins_over_one_text() -> None:
    text = (
        "    lamp_by_day         The lamp burns at noon, and the keeper\n"
        "                        of the watch is asked why he lit it.\n\n"
        "    lamp_by_night +     The lamp burns from dusk to dawn, and the\n"
        "    horn_in_fog         horn sounds as long as no ship can see it.\n"
        "          It is the rule of the light.\n\n"
        "    lamp_by_night +     The lamp burns from dusk to dawn, whatever\n"
        "    no_horn             the boat of the harbour says about it.\n"
        "          It is the rule of the boat.\n"
    )
    assert terms(text)[1:] == [
        (
            "lamp_by_night + horn_in_fog",
            "The lamp burns from dusk to dawn, and the horn sounds as long as no ship can see it.",
        ),
        (
            "lamp_by_night + no_horn",
            "The lamp burns from dusk to dawn, whatever the boat of the harbour says about it.",
        ),
    ]


def test_a_plus_may_be_the_key_that_is_pressed() -> None:
    text = (
        "    lamp_by_day         The lamp burns at noon, and the keeper\n"
        "                        of the watch is asked why he lit it.\n\n"
        "    Bell +              The bell is rung faster, and is heard at\n"
        "    Bell -              the harbour; or it is rung slower.\n"
        "          It is the rule of the light.\n"
    )
    assert [term for term, _ in terms(text)] == ["lamp_by_day", "Bell +", "Bell -"]


def test_a_long_term_that_is_a_name_and_a_bracket() -> None:
    text = (
        "       Lamp (of brass)\n           Burns in the tower from dusk to dawn, and in a fog.\n\n"
        '       Bell (of the harbour: "FOG BELL", as the tables have it; or none)\n'
        "           Rings once a minute until the fog has gone, by hand.\n\n"
        "       Boat\n           Comes out to the rock on Monday if the sea is calm.\n"
    )
    assert [term for term, _ in terms(text)] == [
        "Lamp (of brass)",
        'Bell (of the harbour: "FOG BELL", as the tables have it; or none)',
        "Boat",
    ]


def test_a_key_with_a_hyphen_alone_on_the_first_of_its_lines() -> None:
    text = (
        "       --tide-table-without-\n"
        "          header   The head of the tide table is left out, and so is the rule that\n"
        "                   stands below it.\n"
        "       --lamp      The lamp is lit.\n"
        "       --first-    The first of the two lamps.\n"
        "       Bell        The bell is rung.\n"
    )
    assert terms(text) == [
        (
            "--tide-table-without-header",
            "The head of the tide table is left out, and so is the rule that stands below it.",
        ),
        ("--lamp", "The lamp is lit."),
        ("--first-", "The first of the two lamps."),
        ("Bell", "The bell is rung."),
    ]


DEFINED = (
    " -- Variable: lamp_hour\n     The hour at which it is lit.\n\n"
    " -- Function: void lamp_light (struct lamp *LAMP, size_t HOURS,\n"
    "          const char *KEEPER)\n"
    "     Lights the lamp.  The KEEPER signs for it in the book that lies on the desk,\n"
    "     whatever the hour is.\n\n"
    " -- Command: oil LAMP\n -- Command: wick LAMP\n     (none)\n     Fills the tank.\n"
)


def test_the_head_of_a_definition_is_a_term_with_its_rest_and_its_text_below_it() -> None:
    assert terms(DEFINED) == [
        ("-- Variable: lamp_hour", "The hour at which it is lit."),
        (
            "-- Function: void lamp_light (struct lamp *LAMP, size_t HOURS, const char *KEEPER)",
            "Lights the lamp. The KEEPER signs for it in the book that lies on the desk, whatever the hour is.",
        ),
        ("-- Command: oil LAMP", ""),
        ("-- Command: wick LAMP", "(none)"),
    ]


def test_two_dashes_over_text_right_under_their_words_are_list_marks() -> None:
    text = (
        "  -- Oil: the tank is filled before the lamp is lit, and the keeper of the watch\n"
        "     writes it down.\n"
        "  -- Wick: it is trimmed.\n\n"
        "  -- the first keeper\n"
    )
    assert [label for label, _ in terms(text)] == ["--", "--", "--"]


def test_what_stands_under_a_text_that_had_room_for_it_is_its_own() -> None:
    text = (
        "       lamp            on the nail; never in any other place\n"
        "       long hook       along the wall of the stair\n"
        "       grease          under the bench, in a tin\n"
        "                       Toffee\n"
    )
    assert terms(text)[-1] == ("grease", "under the bench, in a tin")


BOOKS = "       LOG-{}          {}\n"


def test_the_one_line_between_two_keys_that_was_too_long_for_the_first() -> None:
    """Titles of a list, one a line: what stands under one of them, in mid-phrase, is the rest of it."""
    titles = [
        "The Tides of the Sound",
        "A Lamp for the Keepers",
        "Oil for Two Winters at Sea and Ashore in the Fog",
    ]
    rows = [BOOKS.format(number, title) for number, title in enumerate(titles, 12)]
    rows.insert(2, " " * 22 + " On the Rock and Those of the Shore\n")
    assert terms("".join(rows))[1] == (
        "LOG-13",
        "A Lamp for the Keepers On the Rock and Those of the Shore",
    )
    names = [row.replace("On the Rock and Those of the Shore", "Sand Bank") for row in rows]
    assert terms("".join(names))[1] == ("LOG-13", "A Lamp for the Keepers")


def test_signs_alone_on_their_lines_below_a_ruled_title_are_terms() -> None:
    keys = [
        ("?", "The list of all keys."),
        ("Ctrl-L", "Light the lamp."),
        ("#", "Write the log to a file (log.txt)."),
        (":", "Add a note to the log (see the option that takes notes)."),
        ("`", "Ring again"),
        ("{", 'mark a barrel (see the part "Stores")'),
    ]
    text = "".join(f"{key}\n  {meaning}\n\n" for key, meaning in keys)
    blocks = read_text(f"Keys of the lamp room\n---------------------\n\n{text}", "keys", "ascii").blocks
    assert [(block.label.chars, block.text.chars) for block in blocks[1:]] == keys


def test_a_term_of_a_list_of_terms_has_whatever_words_stand_alone_below_it() -> None:
    stores = [
        ("LAMP_OIL", "Oil in barrels"),
        ("LAMP_WICKS", "Wicks"),
        ("'log_time'", "time of the watch"),
        ('"bell"', "ring it once more"),
        ("'none'", "Do not ring"),
    ]
    text = "".join(f"       {term}\n           {said}\n\n" for term, said in stores)
    assert terms(text) == stores


def test_lines_that_stand_below_a_term_together_are_no_meaning_of_it() -> None:
    letter = "           Date: 6 March\n           From: Keeper Orr\n           To: the harbour\n\n"
    text = "".join(f"       {name}\n{letter}" for name in ("Lamp oil", "Fog bell", "Wicks"))
    assert terms(text) == []


def test_keys_that_begin_with_a_figure() -> None:
    """A figure is no number of an item where words stand between it and the column of the texts."""
    text = (
        "4.1  Measure what the battery gives:\n\n"
        "         4.8 to 5.2 V    Good. Go to c.\n"
        "         3.0 to 4.7 V    The cable is too long, or has been\n"
        "                         chewed.\n"
        "         Less            No supply.\n"
    )
    blocks = read_text(text, "a drill", "ascii").blocks
    assert [(block.label.chars, block.text.chars) for block in blocks] == [
        ("4.1", "Measure what the battery gives:"),
        ("4.8 to 5.2 V", "Good. Go to c."),
        ("3.0 to 4.7 V", "The cable is too long, or has been chewed."),
        ("Less", "No supply."),
    ]


def test_numbers_of_items_with_wide_blanks_in_their_text_stay_numbers() -> None:
    text = "1.1 The lamp  is lit at dusk.\n1.2 The horn  is blown in fog.\n1.3 The boat  comes on Monday.\n"
    labels = [block.label.chars for block in read_text(text, "a drill", "ascii").blocks]
    assert "1.1" in " ".join(labels) or not any(labels)
    assert not any(label.startswith("1.1 The") for label in labels)


def test_a_sign_of_a_map_and_the_words_that_explain_it_are_no_program() -> None:
    """`A = the landing` sets no variable, where an expression does."""
    shown = "Key to the map:\n   A = the landing stage\n   C = the tank, where there is a tap that drips\n   F = Lamp House\n"
    blocks = read_text(shown, "a map", "ascii").blocks
    assert [(block.label.chars, block.text.chars) for block in blocks[1:]] == [
        ("A =", "the landing stage"),
        ("C =", "the tank, where there is a tap that drips"),
        ("F =", "Lamp House"),
    ]
    typed = "Type these lines:\n   A = B * 2\n   C = LAMP(3)\n   F = A + C\n"
    assert read_text(typed, "a map", "ascii").blocks[1].code


def test_spaced_dots_lead_to_texts_that_hang_under_themselves() -> None:
    text = """\
       101 . . . . . All well
       110 . . . . . Fog; nobody lands
       117 . . . . . Send the doctor
       122 . . . . . Send a carpenter, and
                     boards
       300 . . . . . The boat has left and
                     is going your way
"""
    assert terms(text) == [
        ("101", "All well"),
        ("110", "Fog; nobody lands"),
        ("117", "Send the doctor"),
        ("122", "Send a carpenter, and boards"),
        ("300", "The boat has left and is going your way"),
    ]


def test_the_last_hour_of_a_day_is_a_key_as_those_above_it() -> None:
    text = """\
       Feb. 11   06.00   Wind NW, 8.  Snow.  Lamp out at 3, lit again.
                 07.15   From the point:  two flashes.
                 07.40   To the harbour:  again.
                 08.05   The harbour answers.  Says "asleep".
       Feb. 12   06.00   Wind N, 4.  Clear.  No boat.
"""
    assert [term for term, _ in terms(text)] == ["Feb. 11", "07.15", "07.40", "08.05", "Feb. 12"]


def test_a_key_in_angle_brackets_too_long_for_its_column_is_a_term_among_keys() -> None:
    keys = (
        "o    Looks at the lamp.  This is explained further in the\n     part on the lamp.\n\n"
        "^R   Draws the rock anew.  Useful if the fog or the horn\n     have made it hard to see.\n\n"
        "<ESCAPE>\n     Takes back what was said, or a number of times.\n\n"
        "!    Goes down to the boat for some of the stores.\n\n"
        "Q    Ends the watch.  Leaves the rock.\n\n"
    )
    prose = "The keys that the keeper can press are told below, each with what it does\nin the night.\n\n"
    blocks = read_text(prose + keys, "a book", "ascii").blocks
    assert [block.label.chars for block in blocks[1:]] == ["o", "^R", "<ESCAPE>", "!", "Q"]


WITH_COLONS = [
    ("Rate:", "Blasts of the horn in an hour.\n"),
    ("Sub horn:", "On and off with the horn below it.\n"),
    ("Wick:", "Length of the wick\n"),
    (
        "OIL:",
        "The oil that the lamp burns in one night of the winter, by the book that lies on\n           the desk below the barometer.\n",
    ),
]


@pytest.mark.parametrize("gap", ["\n", "       \n"])
def test_terms_with_a_colon_over_their_texts(gap: str) -> None:
    text = gap.join(f"       {term}\n           {words}" for term, words in WITH_COLONS)
    assert terms(text) == [(term, " ".join(words.split())) for term, words in WITH_COLONS]


def test_a_word_with_a_colon_over_lines_with_room_for_the_next_leads_to_them() -> None:
    parts = (("Horn 1", "Lamp"), ("Horn 2", "Bell"), ("Horn 3", "Oil"))
    text = "\n".join(
        f"       {term}:\n           Step from low to high.\n           Fine step up and down by seven.\n           {last}.\n"
        for term, last in parts
    )
    assert terms(text) == []


def test_the_title_of_terms_with_colons_may_stand_right_over_the_first() -> None:
    text = (
        "Lamps of the rock:\nNorth lamp:\n"
        "    It was the first one on the rock, and it is lit before all others.  It\n"
        "    burns rape oil.\n"
        "    Although it is old, the second keeper trims it in the evening and at\n    midnight.\n"
        "West lamp:\n    As its name says, it is in the west.\n"
        "Boat lamp:\n    Looks alike, but it is taken down when the boat has come in and the keepers\n"
        "    have left, so that it is dry.\n"
    )
    assert [term for term, _ in terms(text)] == ["North lamp:", "West lamp:", "Boat lamp:"]


def test_one_word_with_a_colon_again_and_again_is_no_term() -> None:
    text = "\n".join(
        f"       Example:\n           {word} burns all night.\n" for word in ("Oil", "Wax", "Peat")
    )
    assert terms(text) == []


def test_names_behind_a_point_right_below_what_leads_to_them_are_terms() -> None:
    text = (
        "       Three names are known to all the keepers of the Skerry Light. They are:\n"
        "          .LAMP\n              The lamp that is lit at dusk.\n"
        "          .HORN\n              The horn that is blown in fog from dusk to dawn, and in a\n              storm of snow.\n"
        "          .BOAT\n              The boat of the year.\n"
    )
    assert [label for label, _ in terms(text)] == [".LAMP", ".HORN", ".BOAT"]


def test_commands_below_words_with_colons_stay_lines() -> None:
    text = "\n".join(
        f"       {word}:\n           lamp -o {word}.log --all\n" for word in ("Oil", "Horn", "Bell")
    )
    assert terms(text) == []


def test_the_pause_of_who_speaks_leads_to_no_text() -> None:
    text = (
        "       'What ... is the light?'\n\n       'A lamp.'\n\n"
        "       'What ... is the hour?'\n\n       'The third.'\n\n"
        "       'What ... is the wind?'\n\n       'None.'\n"
    )
    said = [block.text.chars for block in read_text(PROSE + text, "log", "ascii").blocks][1:]
    assert said[::2] == ["'What ... is the light?'", "'What ... is the hour?'", "'What ... is the wind?'"]


def test_three_dots_at_the_end_of_a_term_stay_and_a_leader_goes() -> None:
    """More of the kind may follow where a term ends in three dots; more dots carry the eye to its text."""
    text = (
        "       fill [can...]   Fill the cans named, or all of them.  The\n"
        "                       keeper counts them on Monday.\n\n"
        "       trim wick ...   Trim the wicks named, to the length that\n"
        "                       the drill gives.\n\n"
        "       fly ..........  Fly the flag, if the wind lets it fly, and\n"
        "                       the boat is out.\n"
    )
    assert [term for term, _ in terms(text)] == ["fill [can...]", "trim wick ...", "fly"]


def test_dots_in_an_open_bracket_lead_to_no_text() -> None:
    assert [key_of(text) for text in ("trim wick [ wick ...]", "row n { ... } (the space to N)")] == [
        None,
        None,
    ]
    assert key_of("row [n] ... the space to n") is not None


def test_signs_and_letters_among_words_that_a_colon_explains_are_terms_too() -> None:
    text = (
        "lamp: say how long the lamp has burned\n"
        "^: move to the top of the page, and say its first word\n"
        "[n]b: say the page before, or move back n pages\n"
        "e: read from the page to the end of the log\n"
        "<: search from the page to the top of the log, using the word that was\n"
        "   looked for before.\n"
        "[n]up arrow: move to the line above and read the line.\n"
        "(: go to the watch before\n"
        "): go to the next watch\n"
    )
    assert [term for term, _ in terms(text)] == [
        "lamp:",
        "^:",
        "[n]b:",
        "e:",
        "<:",
        "[n]up arrow:",
        "(:",
        "):",
    ]


def test_a_text_beside_a_key_may_go_on_farther_in_behind_a_comma() -> None:
    text = (
        "where\n"
        "    lamp_incl           names of the lamps to be lit in this night\n"
        "    lamp_excl           names of the lamps to be left out in this night\n"
        "    page_incl           names of the pages to be read in the log,\n"
        "                                        by default all of them\n"
        "    page_excl           names of the pages to be left out of the log\n"
        "    lock                turns of the key, by which the log is locked,\n"
        "                                        in full, one if none are given\n"
        "                                         0 is none\n"
    )
    assert {"lamp_excl", "page_incl", "lock"} <= {term for term, _ in terms(text)}


def test_options_that_a_colon_explains_are_terms_where_there_are_several() -> None:
    options = (
        " options:\n"
        '  -V|S|I: way to the lamp (by "the stair directly"|"the rope"|"the boat")\n'
        "  -A: for trying all ways, all lamps, and hanging one more.\n"
        "  -e [0-2]: hang the extra lamp beside lamp.[0|1|2] (needs -A).\n"
        "  -p lamp: lamp=north|south|east for trying lamps\n"
        "  -PS/PA[list]: Look for the boats of the list\n"
        "  -T|F [1-7]: print Turns|Fog in one of the following ways\n"
        "        way1: data1\n"
        "        way2: data2\n"
        "  -h, -help: print this and go\n"
    )
    assert [term for term, _ in terms(options) if term[0] == "-"] == [
        "-V|S|I:",
        "-A:",
        "-e [0-2]:",
        "-p lamp:",
        "-PS/PA[list]:",
        "-T|F [1-7]:",
        "-h, -help:",
    ]
    few = "The keeper may put a word in:\n\n  -l: lights the lamp at once, and\n  -b: rings the bell.\n"
    assert not any(term[0] == "-" for term, _ in terms(few))


STANDARD = (
    "       2.1  focal plane\n            plane of the light that passes through the middle of the lamp\n"
    "            when the lamp stands as high as it is used\n\n"
    "       2.2  sector\n            part of the horizon in which the colour does not change\n\n"
    "       2.3  character\n            rhythm by which a light may be known\n"
)


def test_a_numbered_term_of_a_standard_stands_over_its_text() -> None:
    found = [("2.1", "focal plane"), ("2.2", "sector"), ("2.3", "character")]
    assert terms(STANDARD) == found


def test_numbered_items_that_run_on_are_no_terms_of_a_standard() -> None:
    """The first line of one of them is full."""
    full = STANDARD.replace("sector\n", "sector of the light in which a boat that keeps clear of all\n")
    assert [label for label, text in terms(full) if len(text.split()) > 2] == ["2.1", "2.2", "2.3"]
