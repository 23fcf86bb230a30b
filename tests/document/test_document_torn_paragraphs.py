"""Paragraphs, items and remarks torn below their first line: by an option, a second colon, a long sentence, a sign."""

from __future__ import annotations

import pytest
from test_document_torn_lines import shape

from fit.document.blocks import Kind
from fit.document.text import read_text


@pytest.mark.parametrize(
    "text",
    [
        (
            "(Night only) Write down what the keeper sees of the sea with the\n"
            "--far glass.  The hours of the log show when he has looked\n"
            "out, and what he has seen of the boats, of the sea and of the\n"
            "weather in the night.\n"
        ),
        ('Two ways of landing the oil are known on the rock:\nthe "wet" landing and the "dry" one:\n'),
        (
            "NOTE: Some wicks on the rock may burn too fast for a lamp that is old.\n"
            "   If you see one of these, take the oil of the second tin, and write\n"
            "   it down.\n"
        ),
    ],
    ids=["an option before a full stop", "two colons", "a sentence as long as its line"],
)
def test_a_paragraph_goes_on_below_its_first_line(text: str) -> None:
    assert shape(text) == [" ".join(text.split())]


def test_a_title_with_a_label_over_what_is_to_be_done_about_it() -> None:
    text = (
        "LAMP: The light of the old lamp on the rock goes out again and again!\n"
        "   See if the oil of the second tin helps against it, and if it does,\n"
        "   write it down.\n"
    )
    assert len(shape(text)) == 2


def test_numbers_with_a_point_and_a_bracket() -> None:
    text = "1.) On the lower landing, with the boat and the two oars of the year.\n    When the sea is high, nobody lands there, and the boat goes back.\n2.) On the upper one.\n"
    assert [line[:5] for line in shape(text)] == ["[1.)]", "[2.)]"]


def test_the_sign_of_a_remark_comes_again_on_its_next_line() -> None:
    text = "".join(
        f"    {key:<16}\u00a7 {remark}\n"
        for key, remark in (
            ("lamp 3 9", "A lamp of three wicks and nine hours, lit"),
            ("", "  at dusk."),
            ("bell 20", "The bell is rung twenty times."),
            ("oil 5 12", "Five tins of oil for twelve nights, and"),
            ("", "  no more."),
            ("wick", "The wick alone."),
            ("log 7", "Seven pages of the log, all of them"),
            ("", "  of paper."),
        )
    )
    assert [line.partition("]")[0] for line in shape(text)] == [
        "[lamp 3 9",
        "[bell 20",
        "[oil 5 12",
        "[wick",
        "[log 7",
    ]


def test_a_text_under_a_form_is_none_of_a_text_that_was_set_double_spaced() -> None:
    texts = [
        "go through all lamps in the tower",
        "go through all the hours of the watch",
        "go through all the wicks in the box",
        "go to the boats (all of them) in the bay",
    ]
    names = ["fora", "forb", "forc", "ford"]
    text = "".join(
        f"{name} (LAMP, HOUR) {{ drill }}\n\n          {said}\n\n"
        for name, said in zip(names, texts, strict=True)
    )
    last = "ford is the drill that goes through all the boats of the bay, and its"
    blocks = read_text(
        f"{text}   {last}\n   first word is the name of one of them.\n", "forms", "ascii"
    ).blocks
    assert [block.text.chars for block in blocks][1:-1:2] == texts
    assert blocks[-1].text.chars.startswith(last)


STATEMENTS = [
    "    short    lamps;       /* 10: how many of them */\nThe lamps on the rock (mostly two).\n",
    "        short  oil;\n        short  wicks;     // in the store\nThe stores of the lamp.\n",
]


@pytest.mark.parametrize("text", STATEMENTS)
def test_a_sentence_under_statements_is_text(text: str) -> None:
    blocks = read_text(text, "fields", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert blocks[1].text.chars == text.splitlines()[-1]


def test_a_line_under_statements_that_says_nothing_stays_with_them() -> None:
    (block,) = read_text("    short  oil;\n    short  wicks;\n}\n", "fields", "ascii").blocks
    assert block.code


def test_the_end_of_a_sentence_over_statements_that_are_nested() -> None:
    text = (
        "The keeper writes what is to be done in the night into the file\nlog/lamps\n        if dark then\n"
        "                lamp    on\n                bell    off\n                horn    off\n        fi\n"
    )
    first, second = read_text(text, "drill", "ascii").blocks
    assert first.text.chars.endswith("into the file log/lamps")
    assert second.code


def test_a_bracket_of_an_item_is_closed_at_the_margin() -> None:
    text = (
        "  * light the lamp of the landing (and the lamps of the two boats, and that of the\nNORTH)\n"
        "  * ring the bell.  Nobody rings it in clear weather, whatever the harbour says\nabout it.\n"
    )
    blocks = read_text(text, "drill", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.ITEM, Kind.ITEM]
    assert blocks[0].text.chars.endswith("that of the NORTH)")


def test_the_label_of_an_answer_that_nobody_gave_stands_alone() -> None:
    text = "".join(
        f"Q2-0{count}.  Who lights the lamp in watch {count}?\nA2-0{count}.\n" for count in range(1, 4)
    )
    blocks = read_text(text, "questions", "ascii").blocks
    assert not any("A2" in block.text.chars for block in blocks if block.kind is Kind.ITEM)


_COLON = (
    "The watch of the bell may be something more complicated:\n"
    "perhaps a second keeper who counts its strokes.\n"
)
_LINKED = (
    "If the lamp is to be lit for the very first time, go and read the\n"
    "<<_lamp_drill_instructions,drill instructions>>\n"
    "to find out how the keepers do that.  It tells what the signs are for.\n"
)
_ADDRESS = (
    "The keeper of the rock takes the drill of the lamp room with him up the\n"
    "stairs at dusk.  To light the lamp of the north it is best to take the\n"
    "sheet `lamp-room` from\n"
    "link:https://skerry.example/lamp/drill:room/north:lamp[drill:room] as the\n"
    "sheet in the room may be an old one.\n"
)
_BEGUN = (
    "This means that although a lamp may well be lit, certain\n"
    "Northern lamps may not. Northern lamps are never lit in summer, for\n"
    "the nights are too bright.\n"
)


@pytest.mark.parametrize(
    ("text", "count"),
    [
        (_COLON, 1),
        (f"{_COLON}perhaps a third keeper who counts them again.\n", 3),
        ("These are called when the bell is rung:\nanother keeper who counts the strokes of it.\n", 2),
        (_LINKED, 1),
        (_LINKED.replace("go and read the", "read the drill."), 2),
        (_ADDRESS, 1),
        (_BEGUN, 1),
        (_BEGUN.replace("be lit, certain", "not be lit now"), 2),
    ],
    ids=[
        "a colon",
        "entries below a colon",
        "far from the margin",
        "a link",
        "a link after a stop",
        "an address",
        "a clause begun",
        "no clause begun",
    ],
)
def test_a_sentence_is_torn_neither_at_a_colon_nor_at_a_link(text: str, count: int) -> None:
    assert len(shape(text)) == count


def test_a_command_below_a_colon_is_no_rest_of_the_sentence() -> None:
    said = "Look up the list of all the signs that the keepers of the rock may give it:\n"
    assert len(shape(f"{said}skerry-lamp-drill --help <lamp name>\n")) == 2
    assert (
        len(shape("./light --with-oil=$OIL_TIN --with-wick=$WICK_BOX --lamp=$LAMP\nring\nring bell\n")) == 1
    )
    assert "ring" not in shape("./light --with-oil=$OIL --with-wick=$WICK\nring\nring bell\n")[0].split()
