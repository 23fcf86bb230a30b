"""Paragraphs, items and remarks torn below their first line: by an option, a second colon, a long sentence, a sign."""

from __future__ import annotations

from textwrap import fill

import pytest
from test_document_torn_lines import PROSE, shape

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


def test_a_full_line_leaves_a_bracket_open_that_the_next_closes() -> None:
    line = "4.06    * New lamp, `landing' (dark by day, since it burns too much"
    rest = "          Skerry oil otherwise.)"
    (found,) = shape(f"{line}\n{rest}\n")
    assert found.endswith("burns too much Skerry oil otherwise.)")


def test_a_bracket_in_a_line_that_had_room_is_another_matter() -> None:
    assert len(shape("4.06    * New lamp, `landing' (Berg\n          Oddy trumpet.)\n")) > 1


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


GLOSSARY = """\
@lamp
Lamp of the rock   The light that stands on the highest place of the
   skerry, and that all boats of these waters know by its two flashes.
@great horn
Great Horn of the gallery   For the fog the keeper has the Great Horn
   Horn of the gallery, which is blown by the same clock that turns the
   lamp, and which is heard at the landing. Its tone is that of the bell.
   In the summer it is blown by hand, whenever a boat is looked for, as
   the clock is then mended. It was made on the mainland.
   There it is called the old one, which it is by now, as all keepers of
   the rock know.
@oil
Oil for the lamp   What the boat brings to the landing in tins, each of
   these for nine days of the winter or for twelve days of the summer at
   the most.
@wicks
Wicks of the lamp   What the oil rises in and what burns; a wick has to
   be trimmed before it is lit.
@log
Log of the keepers   What was seen in a watch, with the hour of it and
   the hand of the keeper.
"""


def test_what_hangs_as_the_rest_of_other_entries_does_goes_on() -> None:
    """Other paragraphs begin at the margin: a name at the start of a line, or a sentence that ends in one, begins none."""
    entries = [entry for entry in shape(PROSE + GLOSSARY)[1:] if "The light" in entry or "Horn" in entry]
    assert [" ".join(entry.split())[-24:] for entry in entries if not entry.startswith("@")] == [
        "know by its two flashes.",
        "all keepers of the rock know."[-24:],
    ]


def test_what_hangs_in_one_entry_alone_begins_below_a_sentence() -> None:
    """No other entry shows that its rest hangs there."""
    text = "Great Horn of the gallery   For the fog the keeper has the Great\n   Horn it is.\n"
    assert len(shape(PROSE + text)) == 3


@pytest.mark.parametrize(
    ("second", "name", "count"),
    [
        ("of the rock; if it is not found there, ask at the Harbour", "Office", 1),
        ("of the rock; if it is not there, ask at it.", "Office", 2),
        ("of the rock; if it is not found there, ask at the harbour", "Use the office", 2),
    ],
    ids=["as short as the one above", "a sentence ends", "a sentence begins"],
)
def test_a_sentence_goes_on_with_a_name_below_a_line_as_short_as_another(
    second: str, name: str, count: int
) -> None:
    wide = fill(" ".join(PROSE.split()), 78) + "\n\n"
    first = "Whoever looks for the lamp should find it at the northern end"
    third = f"{name}, Inc., 59 Longest Row - Room 330, Mainland, MA  02111-1307, the same."
    assert len(shape(f"{wide * 3}{first}\n{second}\n{third}\n\n{wide}")) == 4 + count
