"""Lines that are short, lined up or stretched: which of them go on in the next one."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

BEFORE = (
    "The keeper who goes on watch at midnight takes the log from the shelf below the\n"
    "window and writes the height of the barometer into it before he looks at all the\n"
    "lamps. The reading is copied onto the slate, so that the second keeper finds it\n"
    "there in the morning, and nobody has to climb the stairs for it again by daylight.\n"
)
"""Running text that shows its margin."""


def shown(text: str) -> list[str]:
    """What each block says, kept lines with a bar between them."""
    return [
        block.text.chars or " | ".join(" ".join(line.chars.split()) for line in block.lines)
        for block in read_text(text, "a book", "ascii").blocks
    ]


def test_short_lines_that_a_colon_leads_to_are_a_list() -> None:
    text = (
        f"{BEFORE}Any of the following in the lamp room makes a warden angry on his rounds:\n"
        "  (another) can of oil\n  tins of polish (with a loose lid)\n  box of wicks (with no number on it)\n"
        "It is sometimes possible to hide one of them behind the stairs, if he is not\nlooking.\n"
    )
    listed = [
        "(another) can of oil",
        "tins of polish (with a loose lid)",
        "box of wicks (with no number on it)",
    ]
    assert " | ".join(shown(text)[1:-1]) == " | ".join(listed)


def test_lines_that_a_colon_leads_to_and_that_were_wrapped_are_one_sentence() -> None:
    text = (
        f"{BEFORE}The warden writes in the book:\n"
        "  the can of oil stands on the landing of the stairs, with the lid off, and\n  the box of wicks beside it\n"
    )
    assert shown(text)[-1].endswith("with the lid off, and the box of wicks beside it")


def test_labels_with_their_values_at_one_column_stay_two_lines() -> None:
    text = (
        f"{BEFORE}\n - the great horn, which is sounded by hand. It is of most use to the boats at\n"
        "   night. To be heard from the south side, take the lid off the box of the horn.\n"
        "   On the north landing of the rock:    send the boy to ring the bell for a boat\n"
        "   On the south side and the pier:      row out and tell them yourself of the fog\n"
    )
    found = shown(text)
    assert not any("for a boat On the south" in each for each in found)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("LAMP: Any lamp of the rock that the book of lamps has a name for.", "OIL: A can of it."),
        (
            "lantern(1) - how to light it (the book of it has some forty pages).",
            "horn(1)    - how to blow it",
        ),
    ],
)
def test_labels_beside_a_key_are_a_list(first: str, second: str) -> None:
    text = f"{BEFORE}\nParameters: {first}\n            {second}\nExamples:   none so far\n\n{BEFORE}"
    found = [block.text.chars for block in read_text(text, "a book", "ascii").blocks]
    assert found[1] == first


def test_a_sentence_beside_a_key_goes_on_with_a_word_and_a_colon() -> None:
    text = (
        f"{BEFORE}\nParameters: lamp, which is any of the lamps that the keepers' book has names for: the\n"
        f"            great: the red\nExamples:   none so far\n\n{BEFORE}"
    )
    assert any(each.endswith("names for: the great: the red") for each in shown(text))


def test_a_line_that_blanks_bring_to_the_margin_is_not_the_last() -> None:
    justified = (
        "The  keeper who goes on watch at midnight takes the log from\n"
        "the shelf below the window and  writes  the  height  of  the\n"
        "barometer  into  it  before  he  looks at anything else. The\n"
        "reading is copied onto the slate, so that the second  keeper\n"
        "finds it there in the morning.\n\n"
    )
    text = f"{justified * 3}There  are  three  kinds  of  lamp  on  this  small  island.\nEach has its own wick:\n  * the great one\n  * the small one\n  * the one for fog\n  * the red one\n"
    assert "There are three kinds of lamp on this small island. Each has its own wick:" in shown(text)


def test_the_rest_of_a_remark_hangs_under_it() -> None:
    text = (
        f"{BEFORE}\n/LAMP SAVE <name> - Write the hours of the lamp of this room into the great book\n"
        "/LAMP OPEN <name> - Like /LAMP SAVE, but keep the book, which is on the tall desk,\n"
        f"                    open and write all the new hours to it.\n/LAMP CLOSE - Close it\n\n{BEFORE}"
    )
    entries = [each for each in shown(text) if each.startswith("/LAMP")]
    assert entries[1].startswith("/LAMP OPEN")
    assert entries[1].endswith("on the tall desk, open and write all the new hours to it.")


def test_what_stands_under_a_comma_at_the_margin_goes_on_behind_it() -> None:
    text = (
        f"{BEFORE}\nLAMP ? Pm h\n          Set the lamps (and LAMP ? Pm l puts them out):\n"
        "            Ps = 8 0  -> Lamps of the rock by night (LIT), LT330, LT340, LT350,\n          LT382.\n"
        "            Ps = 1 0 7 0  -> use wicks of its own for each of the lamps of the\n          gallery, lit.\n"
    )
    assert any("LT350, LT382." in each for each in shown(text))


def test_captions_at_the_ends_of_pages_are_no_furniture() -> None:
    """Though they count like the pages, and sentences run on over the ends of other pages."""
    drawn = "   +--------+\n   | a lamp |\n   +--------+\n\n            Figure {0}.\n"
    foot = "\n\n\n[Page {0}]\n\f"
    pages = [
        f"{BEFORE}\n{drawn if number % 3 else 'The lamp is lit by the man who'}{foot}".format(number)
        for number in range(1, 12)
    ]
    hours = ["dusk", "ten", "midnight", "two", "four", "six", "eight", "noon", "three", "five", "seven"]
    text = "".join(
        f"keeps the watch at {hour}, and {hour} is early.\n\n{page}"
        for hour, page in zip(hours, pages, strict=True)
    )
    blocks = read_text(text, "a book", "ascii").blocks
    furniture = [line.chars for block in blocks if block.kind is Kind.FURNITURE for line in block.lines]
    assert [line.split()[0] for line in furniture] == ["[Page"] * len(pages)


@pytest.mark.parametrize(("end", "joined"), [("-r-", "-r- put"), ("--no-", "--no-put")])
def test_an_option_that_ends_in_a_hyphen_is_whole_where_the_document_has_it_so(end: str, joined: str) -> None:
    text = f"The lamp is dark with -r- alone. All the names are written down unless {end}\nput at the end is used.\n"
    assert joined in shown(text)[0]


def test_a_few_words_behind_a_sign_stand_over_what_they_mean() -> None:
    """It is set in from them by one cell, and what was wrapped stands right under them."""
    text = (
        f"{BEFORE}\n* later\n   the keeper does not want to write his name into the book now.\n"
        "* name <x>\n   the book is signed with the name <x>\n"
        "* the lamp that stands on the landing of the stairs, which is not lit by night,\n   and its oil\n"
    )
    assert shown(text)[1:] == [
        "later",
        "the keeper does not want to write his name into the book now.",
        "name <x>",
        "the book is signed with the name <x>",
        "the lamp that stands on the landing of the stairs, which is not lit by night, and its oil",
    ]


def test_a_name_alone_below_an_item_is_shown() -> None:
    text = (
        f"{BEFORE}\n9) The light book will take the names that have the form\n\tlamp.room.hour\n\n"
        "   into the list.\n\n10) The light book will take the names that have the form of any\n    number.\n"
    )
    assert shown(text)[1:] == [
        "The light book will take the names that have the form",
        "lamp.room.hour",
        "into the list.",
        "The light book will take the names that have the form of any number.",
    ]


def test_sentences_on_names_in_small_letters_stay_apart_though_one_fills_its_line() -> None:
    text = (
        f"{BEFORE}\nThe four ropes of the tower do the following :\n\n"
        "dayrope does the ringing of the bell.\n"
        "fogrope does a ringing of the bell and a blowing of the horn in the fog, too.\n"
        "icerope does a ringing of the bell and a lighting of the small lamp.\n"
    )
    assert len(shown(text)) == 5


def test_a_sentence_goes_on_with_a_bracket_below_a_line_with_little_room() -> None:
    text = (
        f"{BEFORE}\nNOTE: the warden lets the second keeper change his mind about a horn he took\n"
        "(W 69); the others do not, and what was claimed is claimed. As one exception to it,\nthey let him add to it.\n"
        "\nNOTE: nobody counts the oil in the morning.\n"
    )
    assert shown(text)[1].endswith("they let him add to it.")


def test_a_word_in_capitals_right_under_what_it_says_something_of_is_no_title() -> None:
    text = f"{BEFORE}\nThe Lamp - light()\n  TBD\n\nThe Lamp - trim() and wipe()\n  TBD\n\n{BEFORE}"
    assert not any(block.kind is Kind.HEADING for block in read_text(text, "a book", "ascii").blocks)


@pytest.mark.parametrize("word", ["when", "if", "whether"])
def test_a_line_that_stops_at_such_a_word_goes_on_with_signs_of_a_program(word: str) -> None:
    text = (
        f"{BEFORE}\nbell         - Asks the second keeper to come up, who is to find out\n"
        f"               whether the boat is in sight from the landing {word}\n"
        "               the bell is rung.  The /*+ ... +*/ remark that he adds is kept\n"
        "               in the log.\n"
    )
    assert shown(text)[-1].endswith(
        f"{word} the bell is rung. The /*+ ... +*/ remark that he adds is kept in the log."
    )


def test_a_statement_and_a_form_that_a_colon_leads_to_are_no_part_of_its_sentence() -> None:
    text = (
        f"{BEFORE}\nThe clock of the tower has a table of its own, and one line in it is enough for all:\n"
        '<hour> "lamp" "lit" <keeper of the watch> <turns and weight>\n'
    )
    assert shown(text)[-1] == '<hour> "lamp" "lit" <keeper of the watch> <turns and weight>'


def test_another_value_of_a_key_stands_on_its_own_line() -> None:
    text = (
        f"{BEFORE}\n{{ turns }}\n"
        "Lamp:               0x1e, which is that of the tower\n"
        "Turns:              0x7f, when the oil is 0xe4\n"
        "                    0x7e, when the oil is 0xf8\n"
        "Weight:             0x00, which is not used\n"
    )
    assert "0x7e, when the oil is 0xf8" in shown(text)


def test_words_and_a_colon_in_the_middle_of_a_sentence_are_no_label_like_the_note_they_stand_in() -> None:
    text = (
        f"{BEFORE}\nNOTE: an empty line in the log has neither an hour nor a name in it. As far as\n"
        "the warden goes it is a line of the night, and it is looked for by this sequence\n"
        "of keys: `night`, `fog`, `*` (in the order in which they stand, and in no\n"
        "other).\n"
    )
    assert len(shown(text)) == 2


@pytest.mark.parametrize(
    ("lines", "apart"),
    [
        (
            [
                "oil: -o1 or -o2 (use -o1 for the lamps, and -o2 for the old stove)",
                "wick: the name of the wick to trim.",
            ],
            True,
        ),
        (["int lamp_out(LAMP *lamp);", "   put out the lamp"], True),
        (
            [
                "The keeper on watch reads what the barometer shows into the log of the rock:",
                "height, wind and the rain.",
            ],
            False,
        ),
    ],
    ids=["names", "a call", "a sentence"],
)
def test_names_and_calls_are_not_run_together_with_what_stands_below(lines: list[str], apart: bool) -> None:
    found = shown(BEFORE + "\n" + "".join(f"{line}\n" for line in lines))[1:]
    assert (" ".join(" ".join(lines).split()) not in found) == apart
