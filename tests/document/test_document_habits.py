"""How far in a document sets its commands: what stands in as far is shown as well, though it alone tells too little."""

from __future__ import annotations

import re

import pytest
from test_document_kept import shape

ABOVE = "The keeper on watch trims the lamp at dusk and writes the hour into the book. To have the log printed he types"
HABIT = f"""{ABOVE}

    print -t lamp.log

and takes the sheet to the desk, where it lies until the tender comes. The old sheets are filed by this:

    file -o /lamp/1911 lamp.log

The bell has a log of its own, which is printed and filed with these two:

    print -t bell.log

and, where a day is done,

    file -o /bell/1911 bell.log

"""
"""A text that sets its commands in by four cells."""
MARKED = "The sheets of the year go into the box that stands below the stairs of the tower."


def last(text: str) -> list[str]:
    """The blocks that come after those of the habit."""
    before = len(shape(HABIT))
    return shape(HABIT + text)[before:]


@pytest.mark.parametrize(
    "line",
    [
        "mkdir LOGS",
        "TIDE: spring",
        "lamp, bell and gull all on",
        "Lamp Bell",
        "tide = high",
        "say lamp_lit <hour>.",
        "bell        :  rope wheel",
    ],
)
def test_a_line_set_in_as_the_commands_are_is_shown_as_they_are(line: str) -> None:
    assert last(f"For each year there is this line:\n\n    {line}\n\n{MARKED}\n")[1] == f"code: {line}"


@pytest.mark.parametrize("line", ["light lamp=[1-6] bell=[A-C]", "$lamp %bell"])
def test_signs_show_such_a_line_where_nothing_leads_to_it(line: str) -> None:
    assert last(f"{MARKED}\n\n    {line}\n\n{MARKED}\n")[1] == f"code: {line}"


def test_a_line_right_below_a_colon_is_shown() -> None:
    assert last(f"The new box is made by this:\n    mkdir LOGS\n\n{MARKED}\n")[1] == "code: mkdir LOGS"


@pytest.mark.parametrize(
    "line",
    ["The lamp is lit at dusk by the keeper.", "Lamp oil.", "https://skerry.example/log", "The boats:"],
)
def test_sentences_addresses_and_titles_are_left_alone(line: str) -> None:
    assert last(f"For each year there is this line:\n\n    {line}\n\n{MARKED}\n")[1] == f"paragraph: {line}"


@pytest.mark.parametrize("line", ["[as the book of 1911 has it]", "Maren R. Holm, <maren@skerry.example>"])
def test_remarks_and_names_with_addresses_are_left_alone(line: str) -> None:
    assert last(f"{MARKED}\n\n    {line}\n\n{MARKED}\n")[1] != f"code: {line}"


def test_plain_words_below_a_whole_sentence_are_left_alone() -> None:
    assert last(f"{MARKED}\n\n    mend lamp\n\n{MARKED}\n")[1] == "paragraph: mend lamp"


def test_without_such_a_habit_the_line_is_left_alone() -> None:
    text = f"For each year there is this line:\n\n    lamp, bell and gull all on\n\n{MARKED}\n"
    assert shape(text)[1] == "paragraph: lamp, bell and gull all on"


def test_another_indent_is_no_part_of_the_habit() -> None:
    text = f"For each year there is this line:\n\n        lamp, bell and gull all on\n\n{MARKED}\n"
    assert last(text)[1] == "paragraph: lamp, bell and gull all on"


QUOTED = """The book of 1911 says this of the night:

    The lamp was lit at dusk and went out at two, for the oil was bad and the wick was not trimmed by the
    keeper on watch, who was asleep.

"""


def test_where_paragraphs_are_set_in_as_far_a_place_tells_nothing() -> None:
    text = f"For each year there is this line:\n\n    lamp, bell and gull all on\n\n{MARKED}\n"
    assert last(QUOTED * 2 + text)[-2] == "paragraph: lamp, bell and gull all on"


def test_lines_of_which_some_are_program_text_are_one_piece() -> None:
    text = (
        f'The year is closed by this:\n\n    with the keeper as he:\n        print("the book")\n\n{MARKED}\n'
    )
    assert last(text)[-2] == 'code: with the keeper as he: /     print("the book")'


def test_lines_with_signs_are_not_filled() -> None:
    text = f"The lamps of the rock are these:\n\n    lamp <north> at dusk\n    lamp <south>\n\n{MARKED}\n"
    assert last(text)[-2] == "code: lamp <north> at dusk / lamp <south>"


RECORDS = f"""{ABOVE} a measure, and under it what he has of it:

    Store: Cellar
    Filled: in spring
    What: oil

The same is done for the rope, which comes in coils that nobody can count in the dark, as the book has it:

    Store: Boat House
    Filled: at need
    What: rope

Then for the coal, of which there is never enough on the rock, for the cellar under the tower is damp and small:

    Store: Coal Hole
    Filled: in autumn
    What: coal

The flags of the mast are next, which the tender looks at when it comes round the point in the morning light:

    Store: Mast
    Filled: never
    What: flags

"""
"""A text that sets lines of words in by four cells; they stay lines."""


def last_record(text: str) -> list[str]:
    return shape(RECORDS + text)[len(shape(RECORDS)) :]


@pytest.mark.parametrize("above", ["And the last of them is this:", MARKED])
def test_lines_in_pieces_of_several_kinds_are_one_piece_where_such_lines_stay(above: str) -> None:
    part = ["Store: Mast", "Filled: never", "+ A store of its own.", "What: flags"]
    text = "".join(f"    {line}\n" for line in part)
    assert last_record(f"{above}\n\n{text}\n{MARKED}\n")[1] == f"code: {' / '.join(part)}"
    assert f"code: {' / '.join(part)}" not in shape(f"{above}\n\n{text}\n{MARKED}\n")


def test_words_that_lead_to_a_command_are_not_one_piece_with_it() -> None:
    text = "    The keeper gets these words when the lamp is out:\n         lamp 553 <north>... out\n         lamp 554 <south>... out\n"
    assert (
        last_record(f"Then it is this:\n\n{text}\n{MARKED}\n")[1]
        == "paragraph: The keeper gets these words when the lamp is out:"
    )


def test_running_text_that_leads_to_a_command_is_not_one_piece_with_it() -> None:
    text = "    The book of the lamp is printed at the end of the year by the keeper\n    who was on watch at Yule, and then\n      print -t lamp.log\n"
    assert last_record(f"Then it is this:\n\n{text}\n{MARKED}\n")[1].startswith(
        "paragraph: The book of the lamp"
    )


def test_a_heading_of_an_account_belongs_to_its_rows() -> None:
    rows = [
        "9/29  Oil from the tender",
        "    Stores:Cellar          -3 cans",
        "    Stores:Lamp Room       -5 cans",
    ]
    text = "".join(f"    {line}\n" for line in rows)
    assert last_record(f"Then it is this:\n\n{text}\n{MARKED}\n")[1] == f"code: {' / '.join(rows)}"


def test_what_stands_a_blank_line_below_lines_that_stay_belongs_to_them() -> None:
    text = "    Lamp: north\n    Wick: flat\n\n    Lamp: south\n    Doc:\n    + A lamp of its own.\n    Wick: round\n"
    found = last_record(f"The lamps are these:\n\n{text}\n{MARKED}\n")
    assert "item: + A lamp of its own." not in found


def test_a_table_with_rules_between_its_columns_stays_one() -> None:
    text = "    Store | What\n    ------+------\n    Cellar | oil\n    Mast   | flags\n"
    assert not any(one.startswith("code") for one in last_record(f"Then it is this:\n\n{text}\n{MARKED}\n"))


def test_what_a_program_printed_in_columns_stays_as_it_is() -> None:
    rows = ["lamp     on      12      4.5", "bell     off     3       0.25", "gull     on      111     9.75"]
    text = "".join(f"    {line}\n" for line in rows)
    assert last_record(f"Then it is this:\n\n{text}\n{MARKED}\n")[1] == f"code: {' / '.join(rows)}"


def test_words_that_say_what_each_row_is_for_are_no_such_lines() -> None:
    rows = ["Light the lamp      l     F1", "Put it out                F2", "Ring the bell       r     F3"]
    text = "".join(f"    {line}\n" for line in rows)
    assert last_record(f"Then it is this:\n\n{text}\n{MARKED}\n")[1].startswith("table: Light the lamp")


def test_keys_with_their_meanings_are_no_such_lines() -> None:
    rows = ["lamp     lights the point", "bell     rings in a fog", "gull     cries all the day"]
    text = "".join(f"    {line}\n" for line in rows)
    assert not last_record(f"Then it is this:\n\n{text}\n{MARKED}\n")[1].startswith("code")


def test_a_single_line_set_in_as_first_lines_are_stands_at_the_left_of_its_text() -> None:
    text = "   " + HABIT.replace(" the book. To", " the book.\nTo").replace(
        "\n\nThe bell", "\n\n   The bell has a log\nof its own, and so it is.  The bell"
    )
    assert (
        shape(f"{text}   For each year there is this line:\n\n    TIDE: spring\n\n{MARKED}\n")[-2]
        == "code: TIDE: spring"
    )


def test_a_lead_with_its_list_is_not_one_piece() -> None:
    text = "    The stores:\n    - oil\n    - rope\n    - coal\n"
    assert last_record(f"Then it is this:\n\n{text}\n{MARKED}\n")[2:5] == [
        "item: - oil",
        "item: - rope",
        "item: - coal",
    ]


def test_a_label_leads_to_the_lines_below_it() -> None:
    text = f'The year is closed at the desk:\n\n    Example:\n        print("the book")\n\n{MARKED}\n'
    assert last(text)[-3:-1] == ["paragraph: Example:", 'code: print("the book")']


def test_a_quotation_of_several_lines_stays_text() -> None:
    assert last(HABIT + QUOTED + MARKED)[-2].startswith("paragraph: The lamp was lit at dusk")


def test_a_list_stays_a_list() -> None:
    text = f"The stores of the rock are these:\n\n    - lamp=oil\n    - bell=rope\n\n{MARKED}\n"
    assert last(text)[-3:-1] == ["item: - lamp=oil", "item: - bell=rope"]


FLUSH = re.sub(r"(?m)^    ", "", HABIT)
"""The same text with its commands at the left."""


def test_a_line_with_signs_at_the_left_is_shown_as_those_before_it() -> None:
    text = f"For each year there is this line:\n\nY: year % 3 wicks\n\n{MARKED}\n"
    assert shape(FLUSH + text)[-2] == "code: Y: year % 3 wicks"
    assert shape(text)[1] == "paragraph: Y: year % 3 wicks"


@pytest.mark.parametrize("line", ["The year", "^[2]", "Lamp Book"])
def test_words_at_the_left_are_left_alone(line: str) -> None:
    assert shape(f"{FLUSH}For each year there is this line:\n\n{line}\n\n{MARKED}\n")[-2] != f"code: {line}"


def test_a_line_at_the_left_to_which_nothing_leads_is_left_alone() -> None:
    assert shape(f"{FLUSH}{MARKED}\n\nY: year % 3 wicks\n\n{MARKED}\n")[-2] == "paragraph: Y: year % 3 wicks"


def test_a_term_over_its_text_is_no_command() -> None:
    text = f"For each year there are these:\n\nY: year % 3 wicks\n\n    {MARKED}\n\n{MARKED}\n"
    assert "code: Y: year % 3 wicks" not in shape(FLUSH + text)


@pytest.mark.parametrize("line", ["print everything", "[- $lamp{'oil'} -]", "[+/-/!/$ .... $/!/-/+]"])
def test_the_name_of_a_command_and_signs_in_brackets_show_a_line_to_which_nothing_leads(line: str) -> None:
    assert last(f"{MARKED}\n\n    {line}\n\n{MARKED}\n")[1] == f"code: {line}"


@pytest.mark.parametrize("line", ["bells everywhere", "Print everything", "[see the log]"])
def test_other_words_and_remarks_to_which_nothing_leads_are_left_alone(line: str) -> None:
    assert last(f"{MARKED}\n\n    {line}\n\n{MARKED}\n")[1] != f"code: {line}"


def test_a_remark_in_round_brackets_is_not_shown_though_the_text_leads_on() -> None:
    line = "(to have it on paper for the tender)"
    assert last(f"{ABOVE}\n\n    print -t log\n\n    {line}\n\n{MARKED}\n")[2] == f"paragraph: {line}"


def test_signs_right_below_an_item_with_few_words_are_shown() -> None:
    text = f"1.) at dusk, add\n    <LAMP NAME=north>\n\n2.) or use %lamps\n    $lamps{{'north'}} = lit(%bell)\n\n{MARKED}\n"
    assert "code: $lamps{'north'} = lit(%bell)" in last(text)
