"""Sentences that lead to program text with no blank line between: they are paragraphs, and the program stays whole."""

from __future__ import annotations

import pytest
from test_document_torn_lines import PROSE

from fit.document.blocks import Kind
from fit.document.text import read_text


def shape(text: str) -> list[str]:
    """The blocks between two paragraphs: the lines of program text, and each paragraph."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks[1:-1]
    return [
        "\n".join(line.chars for line in block.lines) if block.kind is Kind.PREFORMATTED else block.text.chars
        for block in blocks
    ]


def test_a_sentence_of_several_lines_over_settings() -> None:
    text = (
        "To light only a part of the rock the keeper names another list, and\n"
        "the list low.set of the lamps then contains\n"
        " path = stair/low\n path = door\n include common\n"
    )
    assert shape(text) == [
        "To light only a part of the rock the keeper names another list, and the list low.set of the lamps then contains",
        "path = stair/low\npath = door\ninclude common",
    ]


@pytest.mark.parametrize(
    ("sentence", "program"),
    [
        ("For example:", "$ lamp --list /skerry\n$ lamp --trim /skerry/wick"),
        ("Check hidden lamps (the second list):", "lamp --list | grep '^/skerry' |\\\n sed -e 's|:$||g'"),
    ],
)
def test_words_with_a_colon_over_commands(sentence: str, program: str) -> None:
    assert shape(f"{sentence}\n{program}\n") == [sentence, program]


def test_words_to_the_left_of_the_commands_on_both_sides() -> None:
    text = (
        "  the wick says in its first file:\n      trim /skerry/wick\n  and in its second file it says:\n"
        "      lamp-update --now -q\n"
    )
    assert shape(text)[1:] == ["trim /skerry/wick", "and in its second file it says:", "lamp-update --now -q"]


@pytest.mark.parametrize(
    "program",
    [
        "while (fog) {\n    sound(horn);\n}",
        "trim the wick by hand    # one way\nlamp -e '/oil/d;p' log\nlamp -f '/oil/d;p' log",
        "if fog:\n    sound(horn)\nwhile watch:\n    write(log)",
        "LIGHT LAMP AS\nDECLARE OIL INT = 100000;\nBEGIN\n  END\nEND",
        "if (fog) in--;\nelse out++;",
    ],
)
def test_statements_are_no_sentences(program: str) -> None:
    assert shape(program + "\n") == [program]


def test_a_sentence_that_says_what_the_command_above_it_does() -> None:
    assert shape("/skerry/oil.log <days>\nThe number of tins in the store is written to it.\n") == [
        "/skerry/oil.log <days>",
        "The number of tins in the store is written to it.",
    ]


@pytest.mark.parametrize(
    "text",
    [
        "$ lamp --trim /skerry/wick\nThe wick of the lamp is trimmed to the mark.",
        "lamp --say \\\nThe wick of the lamp is trimmed to the mark.",
    ],
)
def test_what_comes_of_a_command_stays_below_it(text: str) -> None:
    assert shape(text + "\n") == [text]


def test_the_name_over_a_letter_that_is_quoted_leads_to_no_program() -> None:
    text = (
        "    John Lamp writes:\n    > Mary Horn writes:\n    > >\n    > >\n    > > I can't find the oil for\n    > > the lamp.\n"
        "    > Is there no book for this?\n    That was of no help, John. Mary,\n    just look into the store by the door.\n"
    )
    assert shape(text) == ["\n".join(line[4:] for line in text.splitlines())]


@pytest.mark.parametrize(
    "first",
    [
        "Lamp = the one at the top of the stair",
        "Light the lamp again ; and say that it is lit",
        "You have: the oil of the last watch",
    ],
    ids=["a setting", "a remark", "an answer"],
)
def test_a_line_with_the_signs_of_a_program_leads_to_nothing(first: str) -> None:
    shown = "".join(
        f"The keeper then writes:\n\n     lamp --trim /skerry/wick{number}\n\n" for number in range(6)
    )
    listing = f"{first}\n    trim(lamp, 3);\n    light(lamp);"
    text = "".join(f"     {line}\n" for line in listing.splitlines())
    assert shape(shown + "The lamp says:\n\n" + text)[-1] == listing


_SETTINGS = (
    "$lamp_number = 9998;\n$lamp_rule{'9998'} = 'DUSK';\n$lamp_bank{'DUSK'} = {\n  burns => 'DUSK',\n};\n"
)
_FOLLOWING = (
    "If you wish to have the lamp lit from the store by the boy of the harbour, the\n"
    "table of the lamp must have a number of its own.  Put the following into\n"
    "lamp.table:\n"
)
_FORM = (
    "    @PAGE{<+day+>,\n        keeper = {<++>},\n        lamp = {<++>},\n        oil = {<++>},\n"
    "        wick = {<++>},\n        year = {<++>},\n        boat = {<++>}\n    }<++>\n    <++>\n"
)
_SHOWN = (
    "When you ask for a page of the log, a form of it is put before you at once.\n"
    "For example, if you ask for the page 'calm' of the log, then the following\n"
    "form will be put there:  >\n"
)


@pytest.mark.parametrize(("sentence", "program"), [(_FOLLOWING, _SETTINGS), (_SHOWN, _FORM)])
def test_a_sentence_of_several_lines_leads_to_program_text(sentence: str, program: str) -> None:
    blocks = read_text(f"{PROSE}{sentence}{program}", "log", "ascii").blocks
    assert blocks[1].text.chars == " ".join(sentence.split())
    assert blocks[2].code
    assert len(blocks[2].lines) == len(program.splitlines())


def test_a_line_that_stops_in_a_sentence_is_no_command() -> None:
    text = (
        "* calling the boat -C /skerry/log/boat.table once a day by the clock\n\n* or (better)\n"
        "change the hour of the lamp in /skerry/log/lamp.table to\n"
        "# hour of dusk\nO LampHour=d\n# d       Dusk (gallery)\n"
    )
    blocks = read_text(f"{PROSE}{text}", "log", "ascii").blocks
    assert [block.code for block in blocks[-2:]] == [False, True]


def test_the_end_of_a_sentence_that_begins_like_a_statement() -> None:
    text = (
        "For the night a new log has to be made where the hours of the boats can be\n"
        "collected. Use the same owner and the same seal of the rock as used\n"
        "for /skerry/log/lamp, e.g:\n"
        "  # mkdir /skerry/log/lamp-two\n"
        "  # chown boy:harbour /skerry/log/lamp-two\n"
        "  # chmod 700 /skerry/log/lamp-two\n"
    )
    blocks = read_text(f"{PROSE}{text}", "log", "ascii").blocks
    assert [len(block.lines) for block in blocks] == [0, 0, 3]


def test_statements_of_a_database_are_program_text() -> None:
    statements = (
        "create table lamps (id integer);\ncommit;\ninsert into lamps values (1);\ncommit;\n"
        "insert into lamps values (2);\nsavepoint dusk;\ndelete from lamps;\n"
        "select * from lamps; -- returns no lamps\nrollback to dusk; \n"
        "select * from lamps; -- returns two lamps\nrollback;\nselect * from lamps; -- returns one lamp\n"
    )
    blocks = read_text(f"{PROSE}Example\n=======\n\n{statements}", "log", "ascii").blocks
    assert [line.chars for line in blocks[-1].lines] == [line.rstrip() for line in statements.splitlines()]


def test_rules_that_begin_with_one_word_and_quote_what_they_are_about_stay_apart() -> None:
    text = (
        'The log may be filled by rules. For example,\n\n\tmatch "^Keeper:.*boy" in lines page "all" continue\n'
        '\tmatch line "%1" of "lamp.*" page "lamps"\n'
    )
    assert len(read_text(text, "log", "ascii").blocks) == 3


def test_a_short_line_that_ends_the_sentence_above_a_deeper_command() -> None:
    text = (
        "  Or, for a lamp that the keeper lights by hand alone\n  anti-clockwise,\n"
        "            cc -DHAND lamp.c wick.c -lm -o lamp.run\n"
    )
    assert shape(text) == [
        "Or, for a lamp that the keeper lights by hand alone anti-clockwise,",
        "cc -DHAND lamp.c wick.c -lm -o lamp.run",
    ]


SHOWN = "Entries such as\n      lamp:1.2.3\n      horn:1.2.*\n\n"


def test_the_first_words_of_a_sentence_that_goes_on_below_what_it_shows() -> None:
    assert shape(SHOWN + "are read from the list when the lamp is lit.\n") == [
        "Entries such as",
        "lamp:1.2.3\nhorn:1.2.*",
        "are read from the list when the lamp is lit.",
    ]


@pytest.mark.parametrize(
    "below", ["The list of the lamps is read by the keeper.", "c=* (the colour of the lamp that is lit)"]
)
def test_words_over_lines_that_no_sentence_goes_on_below_stay_with_them(below: str) -> None:
    assert shape(f"{SHOWN}{below}\n")[0] == "Entries such as\n      lamp:1.2.3\n      horn:1.2.*"
