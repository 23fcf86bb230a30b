"""Sentences that go on in mid-sentence though the next line begins with a sign, a path, a bracket or far to the left."""

from __future__ import annotations

from textwrap import fill

import pytest
from test_document_torn_lines import PROSE, shape

from fit.document.blocks import Kind
from fit.document.text import read_text
from fit.document.text.line import Line
from fit.document.text.running.beginnings import begins
from fit.document.text.running.neighbours import closes_bracket
from fit.document.text.signs.code import code


@pytest.mark.parametrize(
    "text",
    [
        (
            "Sound the horn for the boat when the fog is so thick that the skerry to\n"
            "the north cannot be seen from the gallery, and do so until the morning\n"
            "or noon. (The blasts of a watch are all counted modulo\n"
            "12, so one more is 1, two more are 2, and so on.)\n"
        ),
        (
            "The sheets of the year are to be read with a watch of the form of\n"
            "'%d %h' or '%h:%m{2}\n"
            "which the keeper has on his desk.\n"
        ),
        (
            "If the horn cannot be heard look into the list of the blasts, that is in\n"
            "/skerry/log\n"
            "or perhaps in the drawer below the slate, where the second keeper has it.\n"
        ),
        ("For the boat the sheets of the week are put into a file, always wind_NW.\n{log,day} sheets.\n"),
        (
            "If the clock of the tower has no weight of its own then the keeper must put\n"
            "#undef WEIGHT\n"
            "at the top of the first sheet, before it is wound.\n"
        ),
        (
            "For those who read the table by daylight, both\n"
            "24-hour and 12-hour watches are written into it with the same ink.\n"
        ),
        (
            "The sheets of the last year are kept by the harbour master; ask for them here:\n"
            " <https://harbour.example/lists/keepers/of/lamps/and/bells/sheets>.  To bring\n"
            "one back, send the boy with it.\n"
        ),
    ],
)
def test_a_sentence_goes_on(text: str) -> None:
    assert shape(text) == [" ".join(text.split())]


def test_a_bracket_over_a_line_with_the_same_sign_closes_in_a_field() -> None:
    above = "the lamp in the tower (it is the one that has a wick of"
    below = "cotton) and the horn"
    assert closes_bracket(above, below)
    assert not closes_bracket(f"D: {above}", f"D: {below}")


@pytest.mark.parametrize(
    "text",
    [
        (
            "[A] - Of course! Besides the lamp, only the horn, the gun and the\n"
            "NORTH light have been seen by the boat in fog, but it is said that they\n"
            "all are.\n"
        ),
        (
            "    - The oil of the lamp is free for the crew of the boat, but the men who\n"
            "want to give something for the keepers, the box is below the slate.\n"
        ),
        (
            "3.8) When the second keeper let the lamp go out the boat told me\n"
            "     I had to answer for it. What does this mean?\n"
        ),
    ],
)
def test_an_item_goes_on(text: str) -> None:
    shown = shape(text)
    label = text.split(maxsplit=1)[0].strip("[]")
    assert shown == [f"[{label}] " + " ".join(text.split()[1:])] or shown == [
        f"[[{label}]] " + " ".join(text.split()[1:])
    ]


def test_a_line_with_me_first_is_no_rest_of_its_like() -> None:
    text = "I have lost the key of the oil store and the one\nI had before it is in the sea\n"
    assert " ".join(text.split()) not in shape(text)


def test_paragraph_with_lines_that_begin_with_paths() -> None:
    text = (
        "  In the store on the rock the /skerry/log file needs to be in\n"
        '  the drawer that is "wet" of the two. Where the keeper has the\n'
        "  /skerry/log of the other year it goes there - that one has\n"
        "  /skerry/oil in it and says where the oil is if it is there.\n"
    )
    wide = " ".join(PROSE.split()) * 3
    wide = "\n".join(fill(wide, 84).splitlines()) + "\n\n"
    blocks = read_text(wide + text + "\n" + wide, "log", "ascii").blocks
    assert blocks[1].text.chars == " ".join(text.split())


def test_a_setting_below_a_colon_stays_apart() -> None:
    text = 'The slate takes one more word, which is the one for the fog, e.g.:\n*fogword = "two long blasts, and one"\n'
    assert shape(text) == text.splitlines()


def test_a_clause_that_was_wrapped_is_not_shown_as_program_text() -> None:
    shown = "For example:\n\n     lamp --wick=3 --oil=4 > log\n\n"
    clause = (
        "For example:\n\n     Help the other keepers of the lights on the skerry-keepers\n     slate;\n\n"
    )
    blocks = read_text(PROSE + shown * 4 + clause + PROSE, "log", "ascii").blocks
    assert (Kind.PARAGRAPH, "Help the other keepers of the lights on the skerry-keepers slate;") in [
        (block.kind, block.text.chars) for block in blocks
    ]


def test_a_key_at_the_margin_of_its_text_goes_on_with_a_name_behind_a_small_word() -> None:
    text = (
        '"north" : The lamp at the north end (lit by the keeper or\nMaren).\n\n'
        '"south" : The lamp at the south end. It is lit in fog by\nthe mate.\n\n'
        '"mole" : The small lamp of the mole, which is lit when one\nof the boats is due in.\n'
    )
    blocks = read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks[1:-1]
    assert [block.text.chars for block in blocks] == [
        " ".join(part.partition(" : ")[2].split()) for part in text.split("\n\n")
    ]


def test_a_sentence_behind_a_name_in_capitals_is_no_statement() -> None:
    assert not code("LAMP_ALT The lamps are lit in pairs from 0; N0S1; N1S0;")
    assert code("LAMP_ALT = lit_lamps(pair, 0); N0S1; N1S0;")


def test_addresses_between_the_words_of_a_sentence() -> None:
    text = (
        "The latest list of the lights is to be had from the office at:\n"
        "http://lights.example/list\n"
        "and the list of the bells at:\n"
        "http://lights.example/bells/all.txt\n"
    )
    assert shape(text) == [" ".join(text.split())]


def test_an_address_below_a_colon_stays_a_line() -> None:
    text = "The latest list of the lights is to be had from the office at:\nhttp://lights.example/list\n"
    assert len(shape(text)) == 2


BOOKS = """\
[1] "The Lamp in Fog", A. Keeper, Proceedings of the Lights, Vol.81,
    No.4 (April 1983), p.58.

[2] "How often is the lamp trimmed?", B. Keeper, posting to
    the.lights newsgroup, 24 July 1981, message-ID
    1981Jul24.05@skerry.light.

[3] "Bells", C. Keeper, posting to the.lights newsgroup, message-ID
    1981Jul25.06@skerry.li ght.
"""


def test_an_address_with_a_stop_is_the_end_of_its_entry() -> None:
    assert [line.rpartition(" message-ID ")[2] for line in shape(BOOKS)][1:] == [
        "1981Jul24.05@skerry.light.",
        "1981Jul25.06@skerry.li ght.",
    ]


def test_an_address_below_the_end_of_an_entry_stays_a_line() -> None:
    text = "1. Write to the office of the lights.\n   office@skerry.light.\n"
    assert len(shape(text)) == 2


def test_clauses_that_end_in_semicolons_are_entries() -> None:
    clauses = [
        "The true hour of the watch and when you have found it all out;",
        "The running number of the lamp, its kind, and the other numbers;",
        "Whether any wick of the store on the rock has been changed;",
        "What lamps were or are lit at the time.",
    ]
    lines = [Line(clause, 0) for clause in clauses]
    assert begins(lines, 0, 1, len(lines), 64)
    assert not begins(lines[:3], 0, 1, 3, 64)


def test_a_point_before_a_name_in_small_letters_marks_an_item() -> None:
    text = (
        "   . Fog is now told with two blasts of the horn, and with one of the\n"
        "     gun.\n\n"
        "   . wick_trim() is now asked twice in a night of fog by the keeper\n"
        "     (1 and 3) or once (2) in another one.\n"
    )
    assert [line.partition("]")[0] for line in shape(text)] == ["[.", "[."]


_FAR_IN = [
    (
        "    2)  Set the hand of the clock in the tower to the number corresponding to\n"
        "                 the lamp you have lit: 0 is the first one, and 1 is the second.\n"
    ),
    (
        "5) Ring (as keeper!) bell -v -n /lamp/north/lamp/south  (or wherever\n"
        "        you have put the horn) and see that the boat hears it.\n"
    ),
    (
        "- THE LAMP OF THE NIGHT is lit by the keeper of it at one\n"
        "        hour.  The lamp is put out when the sun is up or the boat is in.\n"
    ),
]


@pytest.mark.parametrize("text", _FAR_IN)
def test_the_rest_of_an_item_may_stand_far_in_in_mid_sentence(text: str) -> None:
    assert len(shape(text)) == 1


def test_what_stands_far_in_below_the_end_of_an_item_is_no_rest_of_it() -> None:
    text = "2)  Set the hand of the clock to one.\n            the lamp is lit by it, and so is the bell.\n"
    assert len(shape(text)) == 2


def test_the_sign_of_a_key_says_nothing_of_the_text_beside_it() -> None:
    text = (
        "    where LAMP:          taken from the sheet of the old watch\n"
        "          {oil}:         Wick1 and Wick2 taken from original\n"
        "                         log sheet\n"
        "          SUM:           all of these, taken together\n"
    )
    assert "[{oil}:] Wick1 and Wick2 taken from original log sheet" in shape(text)


def test_words_far_wider_than_a_page_are_paragraphs_that_nobody_wrapped() -> None:
    text = (
        "The keeper has written this book for the next one, who is to read it from the first page to the last before he "
        "lights anything, and who is to write into it what the lamp, the horn and the bell have done in each night that "
        "he was here, whatever it was; and he may not leave the rock until the one after him has read it as well.\n\n"
        "The lamp is fast. Any faster one is probably made from the glass of this one;-)\n"
        "The keepers of the north rock have put their own glass into the lamp and we have to be thankful to them for it, "
        "since nobody on the skerry knows how to cut any.\n"
    )
    blocks = read_text(text, "log", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH] * 3
    typed = (
        "$ lamp -v --light --seal\nLamp ( https://skerry.example/lamp )\nMaking a key of brass for the lamp of the tower. "
        "Use --key and --seal to have one that is kept for good.\nKey: F0:13:BF:FB:2D\n"
    )
    assert len(read_text(text + "\n" + typed, "log", "ascii").blocks) == 4


def test_a_sentence_across_the_column_of_a_list_has_no_key() -> None:
    text = (
        "    A lamp may burn with one of several oils.  These are known (the last\n"
        "    two are only burned in the spare lamp):\n"
        "    0:  Rape oil\n    1:  Whale oil\n    2:  Paraffin\n    3:  Fish oil\n"
        "    The log of the oils contains many notes that make it\n"
        "    hard to read, or perhaps this is on purpose.\n"
    )
    told = [block.text.chars for block in read_text(text, "log", "ascii").blocks]
    assert told[0].endswith("(the last two are only burned in the spare lamp):")
    assert told[1:5] == ["Rape oil", "Whale oil", "Paraffin", "Fish oil"]
    assert told[5].startswith("The log of the oils contains many notes that make it hard")


def test_a_formula_in_the_text_of_an_item_is_no_key() -> None:
    """The line above stops at a word that ends no sentence: what stands right under the item's text goes on there."""
    text = (
        "   1. The keeper takes a height a (lg(q) < a < q-1) and computes\n"
        "      e = g^a mod q. He writes e and n down.\n\n"
        "   2. He gets the hour p and computes x = TIDE(s | H(n | p)) and\n"
        "      v = g^x mod q. He also computes u in the same way as S. Then C\n"
        "      computes K = (f - v) ^ (a + u * x) mod q.\n"
    )
    assert [line[:4] for line in shape(text)] == ["[1.]", "[2.]"]
    assert "and v = g^x" in shape(text)[1]


def test_a_sentence_of_two_lines_leads_to_what_is_typed() -> None:
    text = (
        "Examples:\n"
        "   To light the lamp and the horn at once (both of these are\n"
        "   equivalent):\n"
        "      /lamp #tank +sw\n"
        "      /lamp #tank +s+w\n\n"
        "   To set the limit of the oil (the number is arbitrary):\n"
        "      /oil #tank +l 35\n"
    )
    assert "To light the lamp and the horn at once (both of these are equivalent):" in shape(text)
