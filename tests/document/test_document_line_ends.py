"""What the end of a line and the start of the next one tell together: whether a sentence, an item or an address goes on."""

from __future__ import annotations

import pytest
from test_document_torn_lines import PROSE, shape

from fit.document.blocks import Kind
from fit.document.text import read_text

BEGUN = """\
The oil of the rock comes in tins of four sizes. Here are the marks
of all of them, as they stand in the list of the mainland. The
V stands for the size of the tin, and the number for its year.
"""
LEFT_OUT = """\
The lamp can be trimmed in the night. Use the small scissors of the
drawer, and say to the second keeper that he is to hold the glass ...
for trimming. He may do it alone when the wind is low and the lamp is
not needed for a while.
"""
LED_TO = """\
The log of every night is kept by the mainland. If a page of it has to be
seen, it can be asked for in a letter. You
can find a copy of all that was written
at https://skerry.example/log.
"""
NUMBER = """\
The horns of the mainland that the keepers have tried are Northern 4.2
(upper landing), Southern 4.1.1 (lower landing), Middle 2.5, and Western
10.3 (store room).  All of these horns have trouble in the cold, in which
they give no more than one blast.
"""


@pytest.mark.parametrize(
    "text", [BEGUN, LEFT_OUT, LED_TO, NUMBER], ids=["begun", "left out", "led to", "number"]
)
def test_a_sentence_goes_on_in_the_next_line(text: str) -> None:
    assert shape(text) == [" ".join(text.split())]


def test_a_number_that_follows_the_last_one_of_a_list_in_the_middle_of_a_sentence_is_no_item() -> None:
    items = "10.1 The horn of the upper landing.\n\n10.2 The horn of the lower landing.\n\n"
    assert shape(items + NUMBER)[2:] == [" ".join(NUMBER.split())]


def test_a_number_below_a_small_word_in_an_item_is_none_of_its_own() -> None:
    text = (
        "-  Northern horn: sounds with valve 5.0.6 and the old bellows, or with\n"
        "                  5.0.7. Nobody knows whether it needs the bellows then.\n\n"
        "-  Southern horn: sounds with all valves.\n"
    )
    assert [line[:3] for line in shape(text)] == ["[-]", "[-]"]


def test_numbers_below_a_small_word_that_count_on_are_items() -> None:
    text = (
        "-  The horn of the northern landing was out of order and\n"
        "   1. gave no blast in the cold, however long the keeper tried.\n"
        "   2. gave two blasts when it was warm again.\n"
    )
    assert [line.split("]")[0] for line in shape(text)] == ["[-", "[1.", "[2."]


def test_a_clause_may_end_in_a_name_in_quotation_marks() -> None:
    text = (
        "      1. the newest copy of the tide table;\n"
        "      2. another and smaller one, of the year before, that the\n"
        '         keepers call "Ripple";\n'
        "      3. the log of the year. This will allow you to see when the\n"
        "         boat has come.\n"
    )
    assert (
        shape(text)[1] == '[2.] another and smaller one, of the year before, that the keepers call "Ripple";'
    )


def test_each_line_is_a_paragraph_where_none_was_wrapped() -> None:
    """Lines wider than any page, none of which begins in the middle of a sentence: common practice, no source."""
    question = "1.{} Who lights the lamp of the rock when the first keeper is ill, and who writes the log of that night, and when is the boat sent for?"
    answer = "The second keeper lights it. He writes the log as well, and signs it with his own name, so that the first one can see in the morning what was done in the night."
    lines = "".join(f"{question.format(number)}\n{answer}\n\n" for number in range(1, 25))
    blocks = read_text(lines, "log", "ascii").blocks
    assert len(blocks) == 48
    assert blocks[-1].text.chars == answer


def test_sentences_each_on_a_line_however_long_are_no_paragraphs() -> None:
    """Sources of manuals in which a blank line ends the paragraph: common practice, no source."""
    line = "The second keeper of the rock lights the lamp at dusk, and writes what he has seen of the sea and of the boats in the night into the log."
    lines = "".join(f"{line}\nFurthermore, {line[0].lower()}{line[1:]}\n\n" for _ in range(12))
    assert len(read_text(lines, "log", "ascii").blocks) < 24


STEPS = """\
light the lamp
write the hour into the log, and behind it the name of the keeper that has
lit it
write the weather into the log, and the wind
ring the bell
"""


def test_steps_in_small_letters_that_end_far_too_early_stand_for_themselves() -> None:
    assert shape(PROSE + "\n" + STEPS + "\n" + PROSE)[1:-1] == [
        "light the lamp",
        "write the hour into the log, and behind it the name of the keeper that has lit it",
        "write the weather into the log, and the wind",
        "ring the bell",
    ]


def test_a_paragraph_in_small_letters_with_one_short_line_is_one() -> None:
    text = (
        "which is the end of the story\n"
        "and so the keepers sat in the kitchen until the morning came, as it always\n"
        "does, and until the boat was seen from the gallery with its two sails up\n"
    )
    assert len(shape(PROSE + "\n" + text + "\n" + PROSE)) == 3


def test_an_address_below_a_notice_ends_before_the_sentence_below_it() -> None:
    """The last line of an address: "Last Line of the Address", Publication 28, Postal Addressing Standards (from memory)."""
    text = (
        " Copyright (C) 1984, 1989 The Keepers of the Skerry Light\n"
        " 12 Harbour Street, Upper Landing, Skerry, SK  01234-5678  ROCK\n"
        " Everyone is permitted to copy these pages and to hand them on\n"
        " as they are, but changing them is not allowed.\n\n"
    )
    blocks = read_text(text + PROSE, "log", "ascii").blocks
    assert [line.chars for line in blocks[1].lines] == [text.splitlines()[1].strip()]
    assert blocks[2].text.chars == " ".join("".join(text.splitlines()[2:]).split())


def test_an_address_in_capitals_in_the_middle_is_no_title() -> None:
    text = "\n                   ANNA HOLM\n                   12 HARBOUR ST.\n                   SKERRY, SK  01234\n\n"
    blocks = read_text(PROSE + text + PROSE, "log", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert len(blocks[1].lines) == 3


def test_names_and_what_they_do_stand_one_a_line() -> None:
    text = (
        "    light_lamp lights the lamp of the upper room\n"
        "    trim_wick slowly trims the wick of the lamp when it burns too high for the glass\n"
        "    ring_bell rings the bell of the landing,\n"
        "        until the boat is seen\n"
    )
    assert shape(text) == [
        "light_lamp lights the lamp of the upper room",
        "trim_wick slowly trims the wick of the lamp when it burns too high for the glass",
        "ring_bell rings the bell of the landing, until the boat is seen",
    ]


def test_a_paragraph_with_one_such_line_among_others_is_one() -> None:
    text = (
        "keeper lights the lamp of the upper room and goes\n"
        "down to the kitchen, where the second keeper\n"
        "sits reading the log of the night in the dark\n"
    )
    assert len(shape(text)) == 1


def test_an_item_that_stops_behind_a_small_word_goes_on_however_far_in() -> None:
    text = (
        "1. LAMP_LIGHT and LAMP_TRIM, the two drills of the upper room, to be used with\n"
        "\tNight-time watch oil only\n\n"
        "2. LAMP_OUT, the drill of the morning.\n"
    )
    assert shape(text)[0].endswith("to be used with Night-time watch oil only")


def test_a_command_set_in_below_a_sentence_that_leads_to_it_is_none_of_its_words() -> None:
    text = (
        "  turn the lamp\n"
        "        drill --turn-lamp 270 --tin oil\n\n"
        "  turn the lamps by the tags of their tins (no real turning will be done)\n"
        "        drill --no-turn --time --lamp-angle=90 --only-tags *.LAMP\n\n"
        "  set the clock of the lamp by the tag of its tin, when the tags are wrong\n"
        "        drill --time *.LAMP\n"
    )
    assert "turn the lamps by the tags of their tins (no real turning will be done)" in shape(text)
