"""Sentences that go on in small letters below a line that was left short, or has names of programs in it."""

from __future__ import annotations

import pytest
from test_document_torn_lines import shape

_KEYS = (
    "wick -- shows how far the wick was turned up by the keeper of the watch\n"
    "oil -- shows how much of it there is\n"
    "tide range -- tells how far the sea goes down on the rock\n"
    "at a spring tide.\n"
)
_SEMICOLON = (
    "      * lamp.log.hourly - Written to /rock/log.hourly/lamp;\n"
    "        read once an hour.\n"
    "      * bell.log.hourly - Written to /rock/log.hourly/bell;\n"
    "        read once a day.\n"
)
_NAMES = (
    "The second keeper lights what is above the landing.  Thus, the first one has\n"
    "C<skerry>, and the C<south> of lamps\n"
    "are seen from afar by all of the boats.  In fog there is a bell, and the lamp\n"
    "is lit by day.\n"
)
_ONE_WORD = (
    "The log of the tower, which is kept below the lamp in a box of\n"
    ":lead:`TOWER`\n"
    "that stands at the top of the stairs, has the number of each wick in the\n"
    "order in which they burned, and the date at which each was put in.\n"
)
_BRACKET = (
    "(1)  'lamp.day'  (if ROCK_TIME is set to 'day', SKERRY\n"
    "                  takes this as 'lamp.day/dim')\n"
    "(2)  'lamp.night'\n"
)
_FULL_ITEM = (
    "4) Use ;!LAMP, (or ;!SLAMP), ;!WICKS, ;!OIL (or ;!TIN), ;!ENDL for any\n"
    "   lamplighter variables and old wicks.  The lamp\n"
    "   has the rest.\n"
)
_BLANK = (
    "The keeper looks to the lamp, and when it is dark he lights it, since the\n"
    "night is long, and then he looks for the log in the box below\n"
    " and writes into it.  When it is day he puts the lamp out and goes to bed in\n"
    "the room below.\n"
)


@pytest.mark.parametrize(
    ("text", "count"),
    [(_KEYS, 3), (_SEMICOLON, 2), (_NAMES, 1), (_ONE_WORD, 1), (_BRACKET, 2), (_FULL_ITEM, 1), (_BLANK, 1)],
    ids=["at the key", "a semicolon", "names", "one word", "a bracket", "a full line", "a blank too many"],
)
def test_small_letters_go_on(text: str, count: int) -> None:
    assert len(shape(text)) == count


def test_what_is_typed_over_what_it_does() -> None:
    text = "skerry lamp\nlights the lamp of the tower at dusk of that day.\n"
    assert " ".join(text.split()) not in shape(text)


def test_entries_in_small_letters_one_below_the_other() -> None:
    text = "four new wicks\nthe oil of the lamp\nsix ropes for the winch\na new log\n"
    assert " ".join(text.split()) not in shape(text)


_CHANGES = (
    "    Cleaned the glass of the lamp on the side of the sea and put it back\n"
    "      in its frame.\n"
    "    bell: a new rope was hung from the beam, since the old one was worn\n"
    "      through at the ring.\n"
    "    Painted the rail of the gallery and the stairs, all but three steps.\n"
    "    light is now the word for dusk.  w is for wind.\n"
    "    horn: the reed was taken out of it and dried over the stove for a day\n"
    "      and a night.\n"
)


def test_where_all_that_does_not_fit_hangs_deeper_each_line_at_the_margin_is_an_entry() -> None:
    assert [line.split()[0] for line in shape(_CHANGES)] == ["Cleaned", "bell:", "Painted", "light", "horn:"]


def test_a_full_line_goes_on_at_the_margin_of_such_entries() -> None:
    full = (
        "    Painted the rail of the gallery, and the stairs that lead down to the\n    door of the store.\n"
    )
    assert shape(_CHANGES + full)[-1].endswith("lead down to the door of the store.")


def test_a_small_word_alone_between_two_lines_that_are_set_in_is_no_key() -> None:
    text = (
        "   Each of the rules should end with all of them, or with none, to be\n   clear.  Write:\n"
        "     pass good none\n   or\n     pass good !bad all\n"
        "   The rest of them go to the landing, and to the boat when it is there.\n"
    )
    assert not any(told.startswith("[or") for told in shape(text))


def test_commands_with_places_in_angle_brackets_and_what_they_do_are_one_a_line() -> None:
    text = (
        "  light_lamp <tower number> = light the lamp of that tower (and no other)\n"
        "  light_again <tower number> = light it once more for the rest of a night\n"
        "  put_out <tower number> = put it out\n"
    )
    assert not any("put_out" in told and "light_" in told for told in shape(text))


def test_a_command_whose_long_name_has_an_underscore_ends_an_item() -> None:
    text = "- run the lamp as one of the keepers who may see the log of the tower:\n  lamp_of_skerry_rock -i south -c lamp.conf\n"
    assert shape(text)[0].endswith("of the tower:")


_FAULTS = (
    "address of the boat not known\n"
    "    write down where it came from when the boat is at the landing of the rock,\n"
    "    and not before it has left\n"
    "can't get the length of\n"
    "    this wick has no length that the rule of the store can show, or is wet\n"
    "can't get the oil of\n"
    "    it isn't possible to draw oil from this can, for the can has neither a tap\n"
    "    nor a lid that opens\n"
    "horn out of range\n"
    "    too far for the fog\n"
    "more than a single flash\n"
    "    no more than a single flash is allowed for a lamp that turns in its frame\n"
)


def test_each_line_at_the_margin_with_deeper_ones_below_it_is_a_term() -> None:
    assert [told.partition("]")[0] for told in shape(_FAULTS)] == [
        "[address of the boat not known",
        "[can't get the length of",
        "[can't get the oil of",
        "[horn out of range",
        "[more than a single flash",
    ]
