"""Titles that a line of signs shows because it comes again and again, and titles that are counted on and on."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.

"""
TITLES = ("Lamp", "How the bell is rung", "Stores for the winter")


def headings(text: str) -> list[str]:
    """The text of each heading."""
    blocks = read_text(text, "log", "ascii").blocks
    return [block.text.chars for block in blocks if block.kind is Kind.HEADING]


def test_titles_over_lines_of_one_length() -> None:
    rule = "=" * 40
    text = "".join(f"{title}\n{rule}\n\n{PROSE}" for title in TITLES)
    assert headings(text) == [*TITLES]
    blocks = read_text(text, "log", "ascii").blocks
    assert {block.kind for block in blocks} == {Kind.HEADING, Kind.PARAGRAPH}


def test_one_line_of_signs_that_is_longer_than_the_words_above_it_makes_no_title() -> None:
    assert headings(f"{PROSE}Lamp\n{'=' * 40}\n\n{PROSE}") == []


def test_words_in_capitals_with_a_colon_below_the_same_rule() -> None:
    titles = ("READING THE TIDE TABLES:", "RINGING THE BELL:", "TRIMMING A WICK IN THE DARK:")
    text = "".join(f"{'-' * 10}\n\n {title}\n\n{PROSE}" for title in titles)
    assert headings(text) == [*titles]


def test_lines_of_signs_below_sentences_make_no_titles() -> None:
    text = "".join(f"The {title.lower()} is told here.\n{'-' * 40}\n\n{PROSE}" for title in TITLES)
    assert headings(text) == []


def test_titles_over_carets_with_a_display_right_below() -> None:
    words = ("light", "ring the bell", "fetch")
    text = "".join(f"{word}\n{'^' * len(word)}\n    {word} <lamp> <hour>\n\n{PROSE}" for word in words)
    assert headings(text) == [*words]


def test_carets_that_point_into_a_line_make_no_titles() -> None:
    text = "".join(
        f"light {name} at 9 pm\n      {'^' * len(name)}\n{PROSE}" for name in ("lamp", "oil", "bells")
    )
    assert headings(text) == []


@pytest.mark.parametrize(
    "titles", [TITLES, ("Subject: 1.1. Why is it dark?", "Subject: 1.2. Fog", "Subject: 2. Oil")]
)
def test_titles_below_the_same_line_of_signs(titles: tuple[str, ...]) -> None:
    text = PROSE + "".join(f"{'-' * 30}\n\n{title}\n\n{PROSE}" for title in titles)
    assert headings(text) == [*titles]


def test_lines_of_signs_between_paragraphs_make_no_titles() -> None:
    text = PROSE + f"{'-' * 30}\n\n{PROSE}" * 3 + f"{'-' * 30}\n\nOil\n\n{PROSE}"
    assert len([block for block in read_text(text, "log", "ascii").blocks if block.lines]) == 4


def test_the_letter_of_a_chapter_far_from_its_title_between_rules() -> None:
    rule = "-" * 72
    text = f"{PROSE}{rule}\nB.                        THE LAMP DRILL\n{rule}\n\n{PROSE}"
    assert headings(text) == ["B. THE LAMP DRILL"]


def test_questions_with_a_number_and_a_colon() -> None:
    questions = ("1.1: Who lights the lamp?", "1.2: Why is the bell rung in fog?", "1.3: Is there a boat?")
    assert headings("".join(f"{question}\n\n{PROSE}" for question in questions)) == [*questions]


def test_the_others_of_a_sequence_of_which_most_are_titles() -> None:
    titles = (
        "2.1 Who lights the lamp?",
        "2.2 I am told to ring the bell, but it makes no sound.",
        "2.3 Why is there no oil?",
        "2.4 What is to be done when the boat does not come for a month? Whom do\n    we ask?",
        "2.5 The lamp burns low. What now?",
    )
    text = "".join(f"{title}\n\n{PROSE}" for title in titles)
    assert headings(text) == [" ".join(title.split()) for title in titles]


def test_steps_and_entries_that_are_counted_stay_items() -> None:
    steps = ("1. Go up to the lamp and take the glass off:", "2. The Lamp", "3. The Wick", "4. Oil")
    text = "".join(f"{step}\n\n{PROSE}" for step in steps)
    assert steps[0] not in headings(text)


def test_sections_that_are_counted_over_a_line_that_stands_elsewhere_too() -> None:
    rule = "-" * 60
    sections = ("1.1\tThe Lamp", "1.2\tThe Bell", "1.3\tThe Oil")
    parts = "".join(f"{section}\n{rule}\n\n{PROSE}" for section in sections)
    text = f"{rule}\n1\tTHE ROCK\n{rule}\n\n{parts}{rule}\n2\tTHE SEA\n{rule}\n\n{PROSE}"
    assert headings(text) == [
        "1 THE ROCK",
        *(section.replace("\t", " ") for section in sections),
        "2 THE SEA",
    ]


def test_a_section_that_is_counted_over_a_rule_of_its_length() -> None:
    text = f"{PROSE}1.2.1\tFields of the log\n{'-' * 25}\n        short lamps;     /* of all */\n{PROSE}"
    assert headings(text) == ["1.2.1 Fields of the log"]


@pytest.mark.parametrize("sign", ["--", "==", "**", "~~"])
def test_titles_alone_between_two_signs(sign: str) -> None:
    text = "".join(f"{sign} {title} {sign}\n\n{PROSE}" for title in TITLES)
    assert headings(text) == [f"{sign} {title} {sign}" for title in TITLES]


@pytest.mark.parametrize("line", ["-- This is a draft! --", "-- wick, oil and bell --", "-- Lamp -- Bell =="])
def test_sentences_and_other_lines_between_two_signs_are_no_titles(line: str) -> None:
    assert headings(f"{PROSE}{line}\n\n{PROSE}") == []


@pytest.mark.parametrize("sign", ["-", "=", "*"])
def test_banners_of_three_lines(sign: str) -> None:
    rule = sign * 80
    banners = [f"{rule}\n{f' {title} '.center(80, sign)}\n{rule}\n" for title in TITLES]
    text = "".join(f"{banner}\n{PROSE}" for banner in banners)
    assert headings(text) == [*TITLES]
    kinds = {block.kind for block in read_text(text, "log", "ascii").blocks}
    assert kinds == {Kind.HEADING, Kind.PARAGRAPH}
    assert headings(f"{PROSE}{banners[1]}{PROSE}") == [TITLES[1]]


def test_a_measure_in_a_rule_of_another_length_is_no_banner() -> None:
    measure = f"{'-' * 20} 40 cells {'-' * 20}"
    assert headings(f"{PROSE}{'-' * 60}\n{measure}\n{'-' * 60}\n\n{PROSE}") == []


def test_a_rule_much_longer_or_shorter_than_its_title_among_others() -> None:
    lengths = (78, 73, 4, 77)
    text = "".join(
        f"{title}\n{'-' * length}\n{PROSE}" for title, length in zip((*TITLES, "Fog"), lengths, strict=False)
    )
    assert headings(PROSE + text)[:3] == [*TITLES][:3]
    rows = "".join(f"What is left\n{'-' * 40}\n{PROSE}{'-' * 40}\n{PROSE}" for _ in range(4))
    assert headings(PROSE + rows) == []


def test_a_title_between_two_rules_that_end_in_arrows() -> None:
    arrow = "-" * 60 + ">"
    told = "The keeper writes this into the log, as he has always done."
    blocks = read_text(f"{told}\n\n{arrow}\nUSES OF the lamp\n{arrow}\n\n{told}\n", "log", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == ["USES OF the lamp"]


def test_who_wrote_it_stands_below_the_title_between_the_same_rules() -> None:
    rule = "=" * 68
    made = ("\t\tTHE LAMP DRILL, THIRD EDITION", "\t\tAnna Holm  <anna@skerry.example>")
    assert headings(f"{rule}\n{made[0]}\n{made[1]}\n{rule}\n\n{PROSE}") == [
        " ".join(line.split()) for line in made
    ]


def test_the_title_of_a_section_of_two_lines_over_a_rule_nearly_as_long() -> None:
    title = "3.2.5. Boats that come to the landing but should bring no stores (in the\nwinter)"
    assert headings(f"{PROSE}{title}\n{'-' * 74}\n\n{PROSE}") == [title.replace("\n", " ")]
    assert headings(f"{PROSE}{title.replace('3.2.5. ', '- ')}\n{'-' * 74}\n\n{PROSE}") == []


def test_titles_over_a_long_rule_with_the_text_right_below() -> None:
    titles = ("I.  LIGHTING THE LAMP", "II.  THE BELL", "III.  WHAT IS IN STORE FOR THE WINTER")
    text = "".join(f"{title}\n{'-' * 72}\n{PROSE}\n" for title in titles)
    other = f" {'-' * 74}\n The Keepers of the Skerry Light\n {'-' * 74}\n\n"
    assert [title for title in headings(other + text) if title[0] == "I"] == [
        " ".join(title.split()) for title in titles
    ]
