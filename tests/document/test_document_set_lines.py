"""Short lines that stay lines, and titles that ornaments and boxes stand around."""

from __future__ import annotations

import pytest
from test_document_headings import PROSE
from test_document_kept_prose import between

from fit.document.blocks import Kind, Text
from fit.document.text import read_text


@pytest.mark.parametrize(
    "part",
    [
        f"{' ' * 46}The Skerry Light\n{' ' * 46}4 November 1886\n",
        "    A. Berg\n    The Skerry Light\n    (by the relief boat only)\n",
        f"{' ' * 44}The Keepers' House,\n{' ' * 44}2, Quay Street,\n{' ' * 44}Oddy Harbour.\n",
        "          Miss I. Berg\n          c/o The Keepers' House\n          Oddy Harbour\n",
        '          "The lamp, the lamp, the only lamp,\n           It lit the wet and found the damp."\n',
    ],
)
def test_short_lines_stay_lines(part: str) -> None:
    blocks = between(part)
    assert [block.kind for block in blocks] == [Kind.PREFORMATTED]
    assert [line.chars.strip() for line in blocks[0].lines] == [line.strip() for line in part.splitlines()]


def test_text_set_far_right_flows() -> None:
    part = "".join(
        f"{' ' * 40}{line}\n" for line in ("the lamp is lit at dusk and it", "is put out when the sun is up.")
    )
    assert [block.kind for block in between(part)] == [Kind.PARAGRAPH]


@pytest.mark.parametrize(
    ("line", "title"),
    [("----[ Stores ]----------------", "Stores"), ("====[ 2. The oil ]====", "2. The oil")],
)
def test_a_title_in_a_rule(line: str, title: str) -> None:
    blocks = between(f"{line}\n")
    assert [(block.kind, block.text.chars) for block in blocks] == [(Kind.HEADING, title)]


def test_a_title_of_two_lines_with_a_comma() -> None:
    text = f"           ORDERS FOR THE KEEPERS OF THE OUTER LIGHTS,\n              TOGETHER WITH ORDERS FOR THE BOAT\n\n{PROSE}"
    block = read_text(text, "log", "ascii").blocks[0]
    assert block.kind is Kind.HEADING
    assert block.text.chars == "ORDERS FOR THE KEEPERS OF THE OUTER LIGHTS, TOGETHER WITH ORDERS FOR THE BOAT"


def test_centred_lines_of_a_box_stay_lines_below_their_title() -> None:
    inner = ("KEEPERS OF THE SKERRY", "a story game for two keepers", "The book of the year")
    edge = "*" * 40
    blocks = between("\n".join([edge, *(f"*{line:^38}*" for line in inner), edge, ""]))
    assert [block.kind for block in blocks] == [Kind.HEADING, Kind.PREFORMATTED]
    assert [line.chars.strip() for line in blocks[1].lines] == list(inner[1:])


def kept(text: str) -> list[Text]:
    """The lines of all blocks that keep theirs."""
    blocks = read_text(text, "a document", "ascii").blocks
    return [line for block in blocks if block.kind is Kind.PREFORMATTED for line in block.lines]


def test_input_of_a_formatter_stays_as_it_was_typed_below_its_first_request() -> None:
    lines = [
        ".ip lamp",
        "This is the lamp of the rock.",
        "Notice how the keeper",
        "of the first watch trims it before dusk",
        "with the shears from the drawer.",
        ".lp",
        "The tide is noted below.",
    ]
    text = (
        "A word given with the request is printed in the margin of the log, and the text beside it is\n"
        "lined up.  For example, the input:\n\n"
        + "".join(f"    {line}\n" for line in lines)
        + "\nprints two entries of the log, as every keeper who has kept one will know at a glance.\n"
    )
    assert [line.chars.strip() for line in kept(text)] == [line.strip() for line in lines]


def test_remarks_behind_two_strokes_and_redirections_show_program_text() -> None:
    lines = [
        'LAMP "oil.tab" 0  // take all of the oil from the table, the length is taken',
        "                  // from the log",
        'LAMP "gas.tab" 0 10 // take the first ten pints from the table',
        "LIT                 // everything before this line is burnt at dusk",
    ]
    text = (
        "The lamp file is short enough to be typed by hand in the evening, and here is all of it:\n\n"
        + "\n".join(lines)
        + "\n\nIt is read again when the watch ends, as all of the other files of the light are read.\n"
    )
    assert [line.chars.strip() for line in kept(text)] == [line.strip() for line in lines]
    piped = ["exec 3>&1; trim lamp 2>&1 1>&3 3>&- | sort -u 1>&2 3>&-", "trim: lamp: No such wick or burner"]
    shown = read_text("    " + "\n    ".join(piped) + "\n", "a document", "ascii")
    assert [block.text.chars or block.lines[0].chars.strip() for block in shown.blocks] == piped


@pytest.mark.parametrize(
    ("lines", "title", "kept"),
    [
        (
            ("LAMPS", "A Guide to the Lights, Third Printing"),
            "LAMPS",
            ["A Guide to the Lights, Third Printing"],
        ),
        (("LAMPS AND THEIR OILS", "Third Printing"), "LAMPS AND THEIR OILS", ["Third Printing"]),
        (
            ("LAMPS", "", "A Guide to all the Lights, with Maps", "by the Board of the Rock"),
            "LAMPS",
            ["A Guide to all the Lights, with Maps", "by the Board of the Rock"],
        ),
        (("THE LAMPS OF THE SKERRY", "AND THEIR KEEPERS"), "THE LAMPS OF THE SKERRY AND THEIR KEEPERS", []),
    ],
)
def test_centred_lines_of_a_box_that_had_room_are_lines_of_their_own(
    lines: tuple[str, ...], title: str, kept: list[str]
) -> None:
    edge = f"+{'-' * 44}+"
    blocks = between("\n".join([edge, *(f"|{line:^44}|" for line in lines), edge, ""]))
    assert (blocks[0].kind, blocks[0].text.chars) == (Kind.HEADING, title)
    rest = [text for block in blocks[1:] for text in (block.lines or (block.text,))]
    assert [text.chars.strip() for text in rest] == kept


TURNED = """\
The boat goes out to the end of the
    long grey wall,
  The rope runs over the wheel;
The keeper looks out for a light
    on the water
  And counts the cans and the meal.
"""


def test_verse_whose_long_lines_are_turned_over_stays_lines() -> None:
    (verse,) = read_text(TURNED, "song", "ascii").blocks
    assert [line.chars.strip() for line in verse.lines] == [line.strip() for line in TURNED.splitlines()]


def test_entries_with_hanging_text_are_no_verse_that_is_turned_over() -> None:
    entries = TURNED.replace("  The", "The").replace("  And", "And").replace("water", "water;")
    assert not any(block.lines for block in read_text(entries, "list", "ascii").blocks)


def test_a_name_below_the_last_words_of_a_letter_is_its_signature() -> None:
    letter = f"{' ' * 40}Yours as ever,\n\n\n{' ' * 40}Inger\n"
    (block,) = between(letter)
    assert block.kind is Kind.PREFORMATTED
    assert [line.chars for line in block.lines if line.chars] == ["Yours as ever,", "Inger"]


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("Your obedient servant,", "A. Trewin"),
        ("Your obedient servant,", "THE SKERRY OFFICE"),
        ("Yours,", "Inger"),
        ("T. Arran,", "Skerry Quay"),
    ],
)
def test_a_name_right_below_the_last_words_of_a_letter_is_its_signature(words: str, name: str) -> None:
    (block,) = between(f"{' ' * 34}{words}\n{' ' * 34}{name}\n")
    assert block.kind is Kind.PREFORMATTED
    assert [line.chars for line in block.lines] == [words, name]


def test_the_second_line_of_a_paragraph_far_in_is_no_signature() -> None:
    text = f"{' ' * 34}Of the oil, the wick,\n{' ' * 34}and the lamp room\n"
    assert not any(block.lines for block in between(text))


def test_a_title_far_in_below_a_sentence_that_goes_on_is_no_signature() -> None:
    text = f"{' ' * 20}Lamps, wicks and the oil in the store of the rock,\n\n{' ' * 20}THE STORES\n"
    assert Kind.HEADING in {block.kind for block in between(text)}


def test_an_address_with_a_line_for_the_house_of_somebody_else_stays_lines() -> None:
    lines = ["The Society of the Old Light", "c/o The Bridge Inn", "East Quay"]
    (block,) = between("".join(f"{' ' * 24}{line}\n" for line in lines))
    assert [line.chars for line in block.lines] == lines


def test_rows_of_fields_that_commas_part_stay_lines() -> None:
    rows = (
        "    no more oil,keeper,LAMP (Was: a fine night on the rock!)\n"
        "    Boat unknown,keeper,LAMP (Was: the oil of the year again)\n"
        "    undelivered,keeper,Could you look at this bell of the landing\n"
    )
    (block,) = between(rows)
    assert block.kind is Kind.PREFORMATTED
    assert [line.chars.strip() for line in block.lines] == [line.strip() for line in rows.splitlines()]


def test_a_text_whose_commas_have_no_blank_behind_them_flows() -> None:
    text = (
        "The keeper on watch counts the oil,the wicks,the glass and what else there is in\n"
        "the store of the rock,and he writes it down; the boat takes the list to the\n"
        "village,where the clerk reads it,signs it,and sends what is missing.\n"
    )
    assert [block.kind for block in between(text)] == [Kind.PARAGRAPH]


@pytest.mark.parametrize("room", [".", "_"])
def test_a_form_to_fill_in_stays_lines(room: str) -> None:
    part = (
        "    To all keepers.\n"
        f"    Lamp No. {room * 8} was put out at {room * 9} by\n"
        f"    the keeper {room * 40}\n"
        "    and has been lit again.\n"
    )
    [block] = between(part)
    assert block.kind is Kind.PREFORMATTED
    assert len(block.lines) == 4
