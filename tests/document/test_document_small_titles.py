"""Titles in small letters: under the number of a part, in the middle of the page, over rules; and what is none."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it shows\n"
    "into the log, whatever the weather may be, before he goes up to the lamp.\n\n"
)


def titles(text: str) -> list[str]:
    """The texts of the headings."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    return [block.text.chars for block in blocks if block.kind is Kind.HEADING]


def middle(*lines: str) -> str:
    """The lines in the middle of the page."""
    return "".join(" " * ((81 - len(line)) // 2) + line + "\n" for line in lines)


@pytest.mark.parametrize("number", ["Part 1.", "CHAPTER IV", "Book two:"])
def test_the_number_of_a_part_over_a_title_of_two_lines(number: str) -> None:
    title = "The Lamp of the Light\nand the Oil it Burns\n"
    assert titles(f"{number}\n\n{title}") == [number, "The Lamp of the Light and the Oil it Burns"]
    assert titles(f"{number}\n{title}") == [f"{number} The Lamp of the Light and the Oil it Burns"]


@pytest.mark.parametrize("number", ["CHAPTER IV.", "APPENDIX.", "Appendix"])
def test_titles_in_capitals_under_the_number_of_a_part_may_end_with_a_full_stop(number: str) -> None:
    assert titles(middle(number, "OF THE LAMP AND ITS OIL.")) == [f"{number} OF THE LAMP AND ITS OIL."]
    assert not any("dusk" in title for title in titles(middle(number, "Light it at dusk, and trim it.")))


def test_text_under_the_number_of_a_part_is_no_title() -> None:
    assert titles("Part 1.\n\nLight it at dusk, and trim\nthe wick.\n") == ["Part 1."]


def test_titles_in_small_letters_in_the_middle_of_the_page() -> None:
    assert titles(middle("the drill of the boat", "in winter")) == ["the drill of the boat in winter"]
    assert titles(middle("The drill of the horn")) == ["The drill of the horn"]


def test_what_stands_in_the_middle_of_a_sentence_or_ends_one_is_no_title() -> None:
    led = PROSE.replace("to the lamp.", "to the lamp:")
    shown = read_text(led + middle("wick and oil") + "\n" + PROSE, "log", "ascii").blocks
    assert not any(block.kind is Kind.HEADING for block in shown)
    assert titles(middle("Light the lamp at dusk.")) == []
    assert titles(middle("the Skerry Light", "5 October 1911")) == []


def test_a_title_of_two_lines_of_which_each_has_its_rule() -> None:
    assert titles("The lamp and\n============\nits wicks\n=========\n") == ["The lamp and its wicks"]
    assert titles("The lamp\n========\nIts wicks\n=========\n") == ["The lamp", "Its wicks"]


def test_a_title_in_small_letters_of_two_lines_over_one_rule() -> None:
    text = "how the lamp is lit\nand how it is put out\n---------------------\n"
    assert titles(text) == ["how the lamp is lit and how it is put out"]


def test_letters_drawn_with_strokes_are_no_table() -> None:
    text = (
        "      _____ _  __\n     / ____| |/ /      S K E R R Y   L I G H T\n"
        "     \\__ \\ | ' /       the keepers' book\n     ____) | . \\\n"
        "    |_____/|_|\\_\\      third printing, 1911\n"
    )
    kinds = [block.kind for block in read_text(text + "\n" + PROSE, "log", "ascii").blocks]
    assert kinds == [Kind.PICTURE, Kind.PARAGRAPH]


SET_IN = (
    "    The iron of the lantern does not move, and it is thought by many that it\n"
    "needs no care. The contrary is true: it rusts from the first winter on, and\n"
    "lifts the glass from its frame.\n"
)


def test_names_at_the_margin_over_a_paragraph_whose_first_line_is_set_in() -> None:
    assert titles(f"Iron Parts\n{SET_IN}") == ["Iron Parts"]
    assert titles(f"{SET_IN}Iron Parts of the Lantern\n{SET_IN}") == ["Iron Parts of the Lantern"]
    short = (
        "    The glass of the lantern is wiped at noon, and nobody is to wipe it after\nthe sun is down.\n"
    )
    assert titles(f"{SET_IN}\nGlass Parts\n{short}") == ["Glass Parts"]
    assert titles(f"{SET_IN}\nGlass Parts\n{short.replace('it after', 'it.').replace('the', 'The')}") == []


def test_the_rest_of_a_sentence_at_the_margin_is_no_title() -> None:
    assert titles(f"{SET_IN}The keeper writes it down for\n{SET_IN}") == []
    assert titles(f"{SET_IN.replace('frame.', 'frame at')}Skerry Light\n{SET_IN}") == []


def test_a_name_in_spaced_capitals_stands_by_itself_over_what_it_names() -> None:
    assert titles(middle("S K E R R Y", "A HANDBOOK FOR THE KEEPERS", "OF THE LAMP")) == [
        "S K E R R Y",
        "A HANDBOOK FOR THE KEEPERS OF THE LAMP",
    ]
    assert len(titles(middle("T H E   S K E R R Y", "L I G H T"))) == 1


def test_the_sign_of_a_section_begins_a_title_and_in_a_sentence_none() -> None:
    """However many small words it has, and whatever stands below it."""
    drawn = "    ______\n   / lamp \\\n  /________\\\n"
    assert titles(f"            \u00a7 1. The Parts of the Lamp House\n\n{drawn}") == [
        "\u00a7 1. The Parts of the Lamp House"
    ]
    assert titles("\u00a7 1. The parts of the lamp are to be cleaned at dusk.\n") == []


NARROW = """\
The keeper on watch reads the barometer at the full hour and writes
what it shows into the log, whatever the weather may be, before he
goes up to the lamp. The second keeper signs the page.

"""


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("How to Keep These Pages in the Upper Lamp Room", True),
        ("The oil of the rock is kept by the first one", False),
    ],
)
def test_a_long_title_of_names_has_less_room_on_either_side(words: str, found: bool) -> None:
    """As in licences whose last part has such a title below another one in capitals."""
    text = f"{NARROW}                     END OF THE LAMP DRILL\n\n           {words}\n\n{NARROW}"
    blocks = read_text(text, "log", "ascii").blocks
    assert (words in [block.text.chars for block in blocks if block.kind is Kind.HEADING]) is found
