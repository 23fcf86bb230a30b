"""Headings behind signs whose number is their depth, and what else stands behind such signs."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "   The keeper on watch reads the barometer at the full hour and writes what\n"
    "   it shows into the log, whatever the weather may be, before he goes up.\n\n"
)
HEADS = "".join(f"*** {name}\n\n{PROSE}" for name in ("The Lamp", "Fog Bell", "Stores", "Relief", "The Boat"))


def headings(text: str) -> list[tuple[str, int]]:
    blocks = read_text(text, "log", "ascii").blocks
    return [(block.text.chars, block.level) for block in blocks if block.kind is Kind.HEADING]


def test_terms_paragraphs_and_bullets_behind_the_signs_of_headings() -> None:
    text = (
        f"* Drill of the lamp\n\n{PROSE}** Before dusk\n*** Trim the wick\n\n{PROSE}{HEADS}"
        f"*** ring(times) <bell>\n{PROSE}*** OIL <cans of the store>\n{PROSE}"
    )
    found = headings(text)
    assert found[:3] == [("* Drill of the lamp", 1), ("** Before dusk", 2), ("*** Trim the wick", 3)]
    assert found[-2:] == [("*** ring(times) <bell>", 3), ("*** OIL <cans of the store>", 3)]
    assert {level for _, level in found[3:]} == {3}


def test_what_stands_below_such_a_term_is_no_part_of_an_item() -> None:
    blocks = read_text(f"{HEADS}*** RING <times>\n   Rings the bell.\n\n{PROSE}", "log", "ascii").blocks
    assert [(block.kind, block.level) for block in blocks[-3:]] == [
        (Kind.HEADING, 3),
        (Kind.PARAGRAPH, 0),
        (Kind.PARAGRAPH, 0),
    ]


def test_lines_behind_two_equal_signs_are_headings_whatever_they_say() -> None:
    titles = ("How is the lamp lit?", "Ring the bell, and row", "[[oil]] oil", "of the boat")
    text = "".join(f"== {title}\n{PROSE}" for title in titles)
    assert headings(PROSE + text) == [(f"== {title}", 2) for title in titles]
    assert headings(f"{PROSE}== of the boat\n\n{PROSE}== oil, and wicks\n\n{PROSE}") == []


def test_bullets_where_no_headings_have_more_of_them() -> None:
    text = f"{PROSE}* Trim the wick of the lamp\n\n* Wipe the glass\n\n** Read the log\n\n{PROSE}"
    assert headings(text) == []


def test_remarks_of_a_program_and_titles_between_signs() -> None:
    remarks = "".join(f"# The {name}\nring(bell)\n\n" for name in ("Lamp", "Boat")) + "".join(
        f"### The {name} ###\n\n{PROSE}" for name in ("Tower", "Store", "Pier", "Rock")
    )
    assert ("# The Lamp", 1) not in headings(remarks)
    between = "".join(f"**** The {name} ****\n\n{PROSE}" for name in ("Tower", "Store", "Pier", "Rock"))
    assert {level for _, level in headings(between)} == {2}


QUESTIONS = (
    "Who lights the lamp?",
    "Very well. What is it that burns in it?",
    "The keeper has seen me at the landing when I was not to be\nthere at all, and he did not like it. What do I do?",
    "That sounds very much like the old lamp.",
    "Why is the bell so loud?",
    "When does the boat come?",
)


def test_questions_behind_the_same_signs_are_titles() -> None:
    asked = "".join(f"*** {one}\n\n{PROSE}" for one in QUESTIONS)
    assert headings(asked) == [(f"*** {one}".replace("\n", " "), 1) for one in QUESTIONS]
    below = f"THE LAMP\n========\n\n{PROSE}{asked}"
    assert {level for title, level in headings(below) if title.startswith("***")} == {2}


def test_few_questions_behind_signs_or_among_others_are_no_titles() -> None:
    assert headings("".join(f"*** {one}\n\n{PROSE}" for one in QUESTIONS[:5])) == []
    told = "".join(
        f"*** The lamp was lit in the evening of day {day} by Maren.\n\n{PROSE}" for day in range(9)
    )
    assert headings("".join(f"*** {one}\n\n{PROSE}" for one in QUESTIONS) + told) == []
    assert headings("".join(f"*** {one}\n{PROSE}" for one in QUESTIONS)) == []


def test_one_sign_is_a_bullet_where_headings_have_three_and_none_has_two() -> None:
    items = "* the keeper who lights it comes first,\n* the lamp that is lit goes with his name.\n* relief goes with the boat.\n"
    assert [level for _, level in headings(f"{HEADS}{PROSE}{items}\n{PROSE}")] == [3] * 5
