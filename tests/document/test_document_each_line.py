"""Lines that each stand for themselves: commands with comments, data one a line, values, entries that begin alike, keys of one sign."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text
from fit.document.text.signs.code import code

BEFORE = (
    "The second keeper reads these lines in the evening before he goes up the\n"
    "stair to the lamp, and once more when he comes down from it at four.\n"
)
COMMANDS = """\
     open-book
     # This is for the lamp.  It burns until four and then goes out.
     set lamp-colour [red]
     #  The  exceptions  (the horn, the bell) should turn it off again in
     the book of the horn.
     set lamp-in-fog on
     close-book
"""
REMARKS = """\
     # The lamp was lit at dusk and it was put out again at four in the
     morning, when the third keeper came up and the second went down
     to sleep, as he does in every night of the week.
"""
BATCH = """\
REM lamp and horn on the skerry
Watch -lamp -icshost skerry.light -fcp HornAndBell -keeper second -password oil

REM lamp and bell on the skerry
Watch -lamp -icshost skerry.light -fcp BellAndHorn -keeper third -password oil
"""
DATA = """\
    First line of the entry:
day of the watch (counted from the first)
oil
height of the lamp over the sea
number of the wicks in the shed
width of the stair in feet
daily visits
"""
NAMED = """\
Height of the lamp over the sea at low water, feet
Number of the wicks that are in the shed, by the dozen
Oil, gallons
Warmth of the lamp room, degrees
Colour of the light: 1 = red, 2 = white
Days to the next boat; if 0 then the keeper will count them.
"""
FILLED = """\
the lamp is lit at dusk by the keeper of the
first watch. He goes
up the stair with the oil and the wicks, he
trims what has burnt down, and he writes the
hour into the book when he has come down.
"""
VALUES = "    LIT\n    DARK\n    BROKEN\n    SOMEWHATLIT\n"
ALIKE = """\
Putting a dot before an hour means that the lamp was lit then.  (.e)
Putting a horn before an hour means fog. (He)
Putting a bell before an hour means that a boat came to the rock.  (Be)
Putting a star before an hour means that the night was clear. (Se)
"""
KEYS = """\
@
  Show the state of the lamp.

[
  Show the wicks in the shed.

}
  Show the list of the boats.

!
  Write a line into the book.  You can write what you like there.

?:
  Read the book in the lamp room.
"""
PREFIXES = """\
     F[lamp]
          Prefix:  light it again and again until it burns as it should on a
          clear night.

     M[lamp]
          Prefix:  light it once, no wick.

     G[lamp] or horn
          Prefix:  same as the first, but the horn is sounded as well as long
          as the fog lasts.
"""
OPTIONS = """\
  -lampColour red
        The colour in which the lamp burns at night. It is red when it is not
        given. Default: red.

  -lampInTheFog True/False or -fog/-xfog/-nofog
        If this is set the lamp is lit in the fog, even when it is day and
        the keeper sleeps. Default: False.

  -lampHours number
        The hours that the lamp burns before it is put out by the keeper who
        has the last watch.
"""
SETTINGS = """\
  Each of these is applied to the lamp and the horn and the bell that
  have that sign in the book, and it holds only for the changes that were
  made before it on the same page. That is:
    LAMP: ' = red_light
    HORN: ' = silent
    BELL: ' = '.
  and this makes a red light without a sound in the fog, as long as the
  second keeper has not closed the book.
"""
SHOWN = """\
  Examples:

    1. To light the lamp and keep half of the oil
       (the lamp will burn half of the night):
       light lamp
    2. To put out the lamp:
       put out lamp
"""
DIRECTIVES = """\
The following shows how the lamp and the horn and the bell and the boat
could be set if they were not already set by the keeper on his watch.
%%LAMP hours m 0 3 7
%%LAMP hours 7 0 4 7 10
%%LAMP hours m7 0 3 7 10
"""


def blocks(text: str, gap: str = "\n") -> list[Block]:
    """The blocks of a text, those of the paragraph before it left out."""
    return list(read_text(BEFORE + gap + text, "a document", "ascii").blocks)[1:]


def kinds(text: str, gap: str = "\n") -> list[Kind]:
    return [block.kind for block in blocks(text, gap)]


def test_commands_with_comments_among_them_are_one_block() -> None:
    (found,) = blocks(COMMANDS, "")
    assert (found.kind, found.code, len(found.lines)) == (Kind.PREFORMATTED, True, 7)


def test_a_paragraph_behind_a_number_sign_is_text() -> None:
    assert all(block.kind is not Kind.PREFORMATTED for block in blocks(REMARKS, ""))


def test_a_remark_of_a_batch_file_and_its_long_command_stay_lines() -> None:
    assert [(block.kind, block.code, len(block.lines)) for block in blocks(BATCH)] == [
        (Kind.PREFORMATTED, True, 2)
    ] * 2


def test_data_one_a_line_in_small_letters_stay_lines() -> None:
    assert sum(len(block.lines) for block in blocks(DATA)) >= 6


def test_data_one_a_line_with_capitals_stay_lines_though_the_last_is_a_sentence() -> None:
    (found,) = blocks(NAMED)
    assert len(found.lines) == 6


def test_a_narrow_paragraph_with_a_short_line_is_text() -> None:
    assert kinds(FILLED) == [Kind.PARAGRAPH]


def test_four_values_in_capitals_are_no_title() -> None:
    (found,) = blocks(VALUES)
    assert (found.kind, len(found.lines)) == (Kind.PREFORMATTED, 4)


def test_three_lines_in_capitals_may_be_a_title() -> None:
    assert Kind.HEADING in kinds("THE LAMP\nTHE HORN\nTHE BELL\n\nThe keeper lights it at dusk.\n")


def test_lines_that_begin_with_the_same_words_stand_for_themselves() -> None:
    assert [block.text.chars[:14] for block in blocks(ALIKE)] == [
        "Putting a dot ",
        "Putting a horn",
        "Putting a bell",
        "Putting a star",
    ]


def test_keys_of_one_sign_are_terms_as_their_neighbours_are() -> None:
    assert [block.label.chars for block in blocks(KEYS)] == ["@", "[", "}", "!", "?:"]


def test_the_one_line_below_a_term_has_no_key_of_its_own() -> None:
    assert [block.label.chars for block in blocks(PREFIXES)] == ["F[lamp]", "M[lamp]", "G[lamp] or horn"]


def test_a_long_option_is_a_term_among_others() -> None:
    assert kinds(OPTIONS) == [Kind.ITEM] * 3


def test_signs_with_a_point_are_no_sentence_among_settings() -> None:
    assert [len(block.lines) for block in blocks(SETTINGS)] == [0, 3, 0]


def test_settings_below_a_colon_end_an_item_and_keep_their_lines() -> None:
    text = (
        "foghorn:   (on/off) Makes the pull rope of the horn act like another one.  For\n"
        "           example, to have it ring the bell by day and the gong by night, add\n"
        "           these lines to the list:\n"
        "           dayrope: bell\n"
        "           nightrope: gong\n\n"
        "doublehorn: (on/off) Lets it be blown twice when the rope is pulled with both\n"
        "            hands, which spares the second keeper the way down to it.\n"
    )
    (kept,) = [block for block in blocks(text) if block.kind is Kind.PREFORMATTED]
    assert [line.chars for line in kept.lines] == ["dayrope: bell", "nightrope: gong"]


def test_a_command_of_plain_words_below_a_colon_ends_an_item() -> None:
    texts = [block.text.chars or block.lines[0].chars.strip() for block in blocks(SHOWN)]
    assert "light lamp" in texts


def test_the_first_of_several_directives_is_no_end_of_the_sentence_above() -> None:
    found = blocks(DIRECTIVES)
    assert found[0].text.chars.endswith("on his watch.")
    assert sum(len(block.lines) for block in found) == 3


STEPS = """\
     Write the hours of the lamp and of the horn on a piece of paper.
     Write the number of the wicks next to each.
     The number may be crossed out and changed when the keeper counts.
     Go to the lamp room.
"""
DRIVES = """\
  - a:\\ the book of the lamp, on the first shelf. On most days it will
           be b:\\ or c:\\
  - z:\\ the book of the boats, which stands on the shelf below it and is
           read in the winter only.
"""


def test_steps_that_are_sentences_stand_each_on_its_line() -> None:
    assert [block.text.chars.split()[0] for block in blocks(STEPS)] == ["Write", "Write", "The", "Go"]


def test_a_paragraph_with_one_line_in_the_middle_of_a_sentence_is_filled() -> None:
    assert kinds(STEPS.replace("next to each.", "next to each of")) != [Kind.PARAGRAPH] * 4


def test_an_item_goes_on_far_in_below_a_word_that_ends_no_sentence() -> None:
    found = blocks(DRIVES)
    assert [block.kind for block in found] == [Kind.ITEM] * 2
    assert found[0].text.chars.endswith("it will be b:\\ or c:\\")


def test_the_tests_and_labels_of_a_batch_file_are_code_with_the_words_between() -> None:
    lines = (
        "    SAVE B:LOG *.* /S\n    IF ERRORLEVEL 10 GOTO BAD\n    IF ERRORLEVEL 1  ECHO Some hours were left out!\n"
        "    GOTO END\n    :BAD\n    ECHO The log has NOT been saved. Put in a new disk and type LOG.\n    :END\n"
    )
    (found,) = blocks(lines)
    assert (found.kind, found.code, len(found.lines)) == (Kind.PREFORMATTED, True, 7)


@pytest.mark.parametrize(
    "text", ["function:", "for:", "class:", "for example:", "for the lamp, the log, the horn:"]
)
def test_words_of_programs_alone_before_a_colon_are_no_code(text: str) -> None:
    assert not code(text)


@pytest.mark.parametrize(
    "text", ["function lamp(oil) {", "else:", "begin;", "class Lamp:", "for lamp in lamps:"]
)
def test_statements_that_open_others_are_code(text: str) -> None:
    assert code(text)


@pytest.mark.parametrize("text", ["IF NOT the lamp", "IF EXISTING oil is bad", ":-)", ":A", ":End"])
def test_words_that_begin_like_a_batch_file_are_no_code(text: str) -> None:
    assert not code(text)


def test_lines_of_fields_that_colons_part_are_code() -> None:
    """A file of a program; the last field may be words, and a line may be longer than the screen."""
    text = (
        "The lamps are told by a file, of which each line has six parts with colons between them:\n\n"
        "    stair:/dev/lamp0:6:60:on:the lower stair, where nobody goes\n"
        "    store:/dev/lamp1:5:60:on:\n"
        "    tower:/dev/lamp2:7:300:off:frozen, see the log\n\n"
        "It is read when the drill starts.\n"
    )
    blocks = read_text(text, "lamps", "ascii").blocks
    assert [block.code for block in blocks] == [False, True, False]
    assert len(blocks[1].lines) == 3
