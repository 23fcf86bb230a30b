"""Titles that their numbers or their words show, and what stands alone and is none."""

from __future__ import annotations

import pytest
from test_document_headings import PROSE, headings

from fit.document.blocks import Kind
from fit.document.text import read_text

TABLE = "  Mark  Oil       Remarks\n  ----  --------  ----------\n  C     Colza     white\n  S     Seal      smells\n"


@pytest.mark.parametrize(
    ("title", "below", "level"),
    [
        ("2.3. Oils in the store", TABLE, 2),
        ("B.2 Oils in the store", TABLE, 2),
        ("AL.1.2  The .oil Command", PROSE, 3),
        ("AL.2  OIL STORE COMMANDS", PROSE, 2),
        ("3.61. fill-the-lamp (ESC ?)", PROSE, 2),
        ("Appendix C. Words that the keepers use", PROSE, 1),
        ("CHANGES IN VERSION 4.3", PROSE, 1),
        ("1   SCOPE", "    The lamp is lit at dusk, and it is put out when the sun is up.\n", 1),
        ("9  Letters", "[1] The oil, its kinds\n\n[2] The wick, its care\n", 1),
    ],
)
def test_a_title_with_a_number(title: str, below: str, level: int) -> None:
    document = read_text(f"{PROSE}\n{title}\n\n{below}\n{PROSE}", "log", "ascii")
    found = [(block.text.chars, block.level) for block in document.blocks if block.kind is Kind.HEADING]
    assert found == [(" ".join(title.split()), level)]


def test_entries_with_numbers_of_several_parts_below_one_another_are_no_titles() -> None:
    assert (
        headings(f"{PROSE}\nA.1 Oil for the first lamp\n\nA.2 Oil for the second\n\n{TABLE}\n{PROSE}") == []
    )


def test_numbers_with_a_dash_before_underlined_titles_are_no_keys() -> None:
    titles = ["5 - Other lamps", "5.1 - Of the rock"]
    ruled = "\n".join(f"{title}\n{'-' * len(title)}\n" for title in titles)
    assert headings(f"{PROSE}\n{ruled}\n{PROSE}") == titles


def test_a_title_in_the_sequence_of_titles() -> None:
    under = "   The lamp is filled at noon, and the wick is trimmed when the oil has\n   been wiped off; what is left goes back into the can.\n"
    text = f"1. The Lamp\n\n{under}\n2. What the keeper does when the boat brings oil\n\n{under}\n3. The Oil\n\n{under}"
    assert headings(text) == ["1. The Lamp", "2. What the keeper does when the boat brings oil", "3. The Oil"]
    assert (
        headings(
            text.replace("3. The Oil", "3. oil of the year").replace("1. The Lamp", "1. lamp of the year")
        )
        == []
    )


UNDER = "   The lamp is filled at noon, and the wick is trimmed when the oil has\n   been wiped off; what is left goes back into the can.\n"


@pytest.mark.parametrize(
    "titles",
    [
        ["A.  THE LAMP", "B.  THE OIL AND THE WICKS", "C.  STORES ON THE ROCK\nFOR THE LAMP AND THE BOAT"],
        ["Q2.1 The lamp", "Q2.2 The lamp goes out an hour early.", "Q2.3 Where is the oil?"],
        ["13. Pasties", "14. Soup, from the Tin", "15. Eggs, Hard"],
    ],
)
def test_titles_in_turn_with_letters_signs_or_lists_between(titles: list[str]) -> None:
    steps = "1. Melt the butter, and put in what there is.\n2. Add the water, and wait.\n"
    text = "\n".join(f"{title}\n\n{UNDER}\n{steps}" for title in titles)
    assert headings(f"{PROSE}\n{text}\n{PROSE}") == [" ".join(title.split()) for title in titles]


def test_a_long_title_in_the_sequence_of_numbers_of_several_parts() -> None:
    titles = ["2.1  The lamp smokes", "2.2  The bell sounds flat"]
    long = "2.3  The horn stops in the middle of the night and says something like this:"
    text = (
        "".join(f"{title}\n\n{UNDER}\n" for title in titles)
        + f"{long}\n\n        Phut\n        Phut\n\n{UNDER}"
    )
    assert headings(text)[-1] == long.replace("  ", " ")


def test_items_that_count_on_from_the_number_of_a_title_are_none() -> None:
    steps = "1. Melt the butter\n\n2. Add the water\n\n3. Stir\n"
    assert headings(f"{PROSE}\n1. Soup of the House\n\n{UNDER}\n{steps}\n{PROSE}") == ["1. Soup of the House"]


def test_an_item_with_the_number_of_the_next_title_is_none() -> None:
    items = "".join(f"{number}. Turn the lamp down\n\n   The glass is hot; it wants an hour, and in the\n   frost two, before it can be wiped.\n\n" for number in (1, 2, 3))  # fmt: skip
    text = f"1. The Lamp\n\n{PROSE}\n2. The Glass\n\n{PROSE}\n{items}{PROSE}"
    assert headings(text) == ["1. The Lamp", "2. The Glass"]


@pytest.mark.parametrize("lone", ["Or", "0x4C 'L'", "U <log>", "Skerry-'year'-log.tar", "OR"])
def test_what_stands_alone_without_a_name_is_no_title(lone: str) -> None:
    assert headings(f"{PROSE}\n{lone}\n\n{PROSE}") == []


@pytest.mark.parametrize(
    ("title", "rule"), [("THE LAMP AND THE OIL", "=== ==== === === ==="), ("Wicks and oil", "----- --- ---")]
)
def test_a_title_with_a_rule_under_each_word(title: str, rule: str) -> None:
    document = read_text(f"{PROSE}\n{title}\n{rule}\n\n{PROSE}", "log", "ascii")
    assert [block.kind for block in document.blocks] == [Kind.PARAGRAPH, Kind.HEADING, Kind.PARAGRAPH]
    assert document.blocks[1].text.chars == title


def test_a_number_that_ends_in_nothing_begins_the_part_whose_texts_are_counted() -> None:
    text = (
        f"{PROSE}\n\n[3.0]  MOVES\n\n[3.1] The boat moves first, and the keepers\nmove when it has landed.\n\n"
        "[3.2] The gull moves as it likes.\n\n\n4.0  The Sea\n\n4.1 The sea is at rest in the first turn of the game.\n\n"
        "4.2 It rises in the second.\n"
    )
    blocks = read_text(text, "game", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING][-2:] == [
        "[3.0] MOVES",
        "4.0 The Sea",
    ]
    assert [block.label.chars for block in blocks if block.kind is Kind.ITEM] == [
        "[3.1]",
        "[3.2]",
        "4.1",
        "4.2",
    ]


def test_a_title_in_capitals_over_its_second_line_in_small_letters() -> None:
    text = f"NOTES ON THE OILS OF THE SKERRY\nfor the use of the new keepers\n\n{PROSE}"
    blocks = read_text(text, "notes", "ascii").blocks
    assert [(block.kind, block.text.chars) for block in blocks[:2]] == [
        (Kind.HEADING, "NOTES ON THE OILS OF THE SKERRY"),
        (Kind.PARAGRAPH, "for the use of the new keepers"),
    ]


@pytest.mark.parametrize("word", ["LESSON TWO", "Chapter 3", "CHAPTER IV"])
def test_a_title_in_small_letters_centred_below_the_number_of_its_chapter(word: str) -> None:
    text = f"{PROSE}\n{word:^70}\n{'Lighting, and Putting Out':^70}\n\n{PROSE}"
    assert headings(text) == [f"{word} Lighting, and Putting Out"]
    assert headings(text.replace("Lighting, and Putting Out", "it is said in the old log.")) != [
        f"{word} it is said in the old log."
    ]


def test_words_in_capitals_that_fill_their_line_or_stop_in_a_sentence_are_no_title() -> None:
    for first in (
        "NO KEEPER OF THIS ROCK OR OF ANY OTHER MAY TAKE THE OIL OR THE",
        "NOTICE TO THE KEEPERS OF THE",
    ):
        blocks = read_text(
            f"{first}\nlight ashore with him, whoever asks for it.\n\n{PROSE}", "log", "ascii"
        ).blocks
        assert blocks[0].kind is Kind.PARAGRAPH
        assert blocks[0].text.chars.startswith(f"{first} light ashore")


@pytest.mark.parametrize(
    ("title", "rule"),
    [
        (
            "            THE DUTIES OF THE KEEPERS IN\n              THE STORE AND THE HALL",
            "            " + "=" * 28,
        ),
        ("         THE DUTIES OF KEEPERS\nIN RESPECT OF THE STORE AND THE HALL", "-" * 36),
        ("THE DUTIES OF THE KEEPERS IN\nTHE STORE AND THE HALL", "-" * 28),
        ("Duties of the Keepers in the\nStore and in the Hall", "-" * 28),
        ("3. THE DUTIES OF THE KEEPERS IN THE WINTER\n   IN THE STORE AND THE HALL", "   " + "-" * 25),
    ],
)
def test_a_title_of_two_lines_over_one_rule(title: str, rule: str) -> None:
    """The rule is as long as the longer line, or as the last one in capitals: both are its title, flush or in the middle."""
    assert headings(f"{PROSE}\n{title}\n{rule}\n\n{PROSE}") == [" ".join(title.split())]


@pytest.mark.parametrize(
    ("first", "second", "titles"),
    [
        ("TABLE OF THE", "WICKS BURNT, 1885", ["TABLE OF THE WICKS BURNT, 1885"]),
        ("THE WICKS BURNT", "THE OIL", ["THE WICKS BURNT", "THE OIL"]),
    ],
)
def test_a_title_in_capitals_with_two_rules_goes_on_behind_a_small_word(
    first: str, second: str, titles: list[str]
) -> None:
    ruled = "".join(f"{line}\n{'-' * len(line)}\n" for line in (first, second))
    assert headings(f"{PROSE}\n{ruled}\n{PROSE}") == titles


def test_a_setting_shown_alone_is_no_title() -> None:
    """A sign of equality between words gives a name its value."""
    assert headings(f"{PROSE}\n        Other Keepers = The Whole House\n\n{PROSE}") == []


PROGRAMME = """\
             THE KEEPERS OF THE SKERRY LIGHT
                   Letter to the Shore
                   -------------------

"""


def test_titles_in_the_middle_of_which_the_last_alone_has_its_rule_are_one_each() -> None:
    assert headings(PROGRAMME + PROSE) == ["THE KEEPERS OF THE SKERRY LIGHT", "Letter to the Shore"]


def test_a_sentence_in_the_middle_over_a_title_with_its_rule_is_no_title() -> None:
    said = PROGRAMME.replace("THE KEEPERS OF THE SKERRY LIGHT", "It is read to all at the landing.")
    assert "It is read to all at the landing." not in headings(said + PROSE)


def test_lines_in_capitals_of_one_length_in_the_middle_are_one_title() -> None:
    title = "                  STATIONS OF THE LONG SHORE,\n                  WITH THEIR LAMPS AND HORNS.\n"
    assert headings(f"{PROSE}\n{title.replace('HORNS.', 'HORNS')}\n{PROSE}") == [
        "STATIONS OF THE LONG SHORE, WITH THEIR LAMPS AND HORNS"
    ]
    assert headings(f"{PROSE}\n{title}\n{PROSE}") == []


def test_a_title_of_two_lines_in_capitals_with_a_colon_between() -> None:
    title = "THE STORY OF THE ROCK:\nPART THE SECOND\n"
    assert headings(f"{PROSE}\n{title}\n{PROSE}") == ["THE STORY OF THE ROCK: PART THE SECOND"]
    assert headings(f"{PROSE}\nSEE THE LIST:\n{title}\n{PROSE}") == []


INDEX = """\
7.  Index
---------

    boat, the, 2, 4, 5
    lamp, 4
        how it is filled, 4-6
    oil, 5
    wick, 3
        not trimmed, 4

"""


def test_a_number_and_a_title_over_one_rule_are_no_columns() -> None:
    assert headings(INDEX + PROSE) == ["7. Index"]


def test_entries_of_an_index_stay_lines() -> None:
    index = next(
        block for block in read_text(INDEX + PROSE, "log", "ascii").blocks if block.kind is Kind.PREFORMATTED
    )
    assert [line.chars for line in index.lines] == [
        line[4:] for line in INDEX.splitlines() if line.startswith("    ")
    ]


def test_lines_of_which_one_has_no_number_of_a_page_are_text() -> None:
    text = "    The lamp was lit in the year of the flood, 12\n    keepers stood by, and the boat came in with 9,\n    whereof 3 were drowned, 4\n"
    assert all(
        block.kind is not Kind.PREFORMATTED for block in read_text(PROSE + "\n" + text, "log", "ascii").blocks
    )


def test_a_name_over_a_paragraph_whose_first_line_is_set_in_is_no_key() -> None:
    text = (
        f"{PROSE}\nTimber Frames\n    Oak moves, and in a dry summer the joints of the lamp room open by the\n"
        "thickness of a penny. This is natural and no cause for alarm to a keeper who\nhas seen it.\n"
    )
    blocks = read_text(text, "log", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.ITEM]
    assert blocks[-1].text.chars.startswith("Oak moves")


@pytest.mark.parametrize(("sign", "level"), [("-", 2), ("=", 1), ("", 1)])
def test_a_number_and_a_title_of_two_lines_in_capitals(sign: str, level: int) -> None:
    title = "5. HINTS FOR THE KEEPERS WHO TRIM THEIR OWN\n   WICKS AND FILL THEIR OWN LAMPS\n"
    text = f"{UNDER}\n{title}{sign * 42}\n\n{UNDER}\n"
    heads = [block for block in read_text(text, "log", "ascii").blocks if block.kind is Kind.HEADING]
    words = "5. HINTS FOR THE KEEPERS WHO TRIM THEIR OWN WICKS AND FILL THEIR OWN LAMPS"
    assert [(head.text.chars, head.level) for head in heads] == [(words, level)]


def test_a_number_and_a_title_of_two_lines_above_a_table() -> None:
    title = "IX.  WHERE THE LOG IS KEPT,\n     AND WHAT MAY BE THROWN AWAY\n"
    blocks = read_text(f"{UNDER}\n{title}\n{TABLE}\n{UNDER}", "log", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == [
        "IX. WHERE THE LOG IS KEPT, AND WHAT MAY BE THROWN AWAY"
    ]


@pytest.mark.parametrize("end", ["!", "?", ""])
def test_a_title_of_two_lines_with_a_number_of_two_parts_may_end_in_a_sign(end: str) -> None:
    text = (
        "8 Other common troubles\n\n"
        "8.1 When I fill the lamp from the tin below the stair, the oil runs over the\n"
        f"rim of the lamp and down to the landing{end}\n\n"
        "   Shut the tap of the tin first, and then wait with the match until the oil\n   has stopped.\n"
    )
    found = [
        block.text.chars
        for block in read_text(text, "a document", "ascii").blocks
        if block.kind is Kind.HEADING
    ]
    assert found[-1].endswith("down to the landing" + end)
