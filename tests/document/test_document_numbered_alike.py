"""Numbered lines alone between blank lines that count on from each other: all of them are what most of them were read as."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text
from fit.document.text.habits import numbered_alike

PROSE = """\
The keeper on watch trims the lamp at dusk and again at midnight, and he
writes both hours in the log book, so that the relief can see them there.
"""
HUNG = """\
    The keeper on watch trims the lamp at dusk and again at midnight, and
    he writes both hours in the log book.
"""


def blocks_of(lines: Sequence[str], below: str = PROSE) -> list[Block]:
    """The blocks of the numbered lines, each over some text."""
    text = PROSE + "\n" + "\n".join(f"{line}\n\n{below}" for line in lines)
    numbers = tuple(line.split(maxsplit=1)[0] for line in lines)
    return [
        block
        for block in read_text(text, "log", "ascii").blocks
        if (block.label.chars or block.text.chars).startswith(numbers)
    ]


def kinds(lines: Sequence[str], below: str = PROSE) -> set[Kind]:
    return {block.kind for block in blocks_of(lines, below)}


@pytest.mark.parametrize(
    "titles",
    [
        ["3.1. The Lamp", "3.2. The Bell", "3.3. lamps should always be trimmed at dusk!", "3.4. The Horn"],
        ["8a. The Lamp", "8b. The Bell", "8c. What the Horn of the Landing Is for in a Fog (first part)"],
        ["1.) The Lamp", "2.) The Bell", "3.) What the keepers say to the relief, and what it answers them"],
        ["(1) LAMP", "(2) BELL", "(3) HORN (sounded)", "(4) TIDE (tabled)", "(5) WICK (trimmed)"],
    ],
)
def test_titles_among_titles(titles: list[str]) -> None:
    found = blocks_of(titles, f"  bind lamp <hour> <keeper>\n\n{PROSE}" if titles[0][0] == "(" else PROSE)
    assert [block.text.chars for block in found] == titles
    assert {block.kind for block in found} == {Kind.HEADING}
    assert len({block.level for block in found}) == 1


def test_a_question_with_capitals_among_items_is_an_item() -> None:
    questions = [
        "1. Is the Bell Safe?",
        "2. lamps burn whale oil or tallow, and which of them is asked here?",
        "3. the horn gives no sound in the fog, and the relief has to know why.",
        "4. the tide table of the year before is still in the drawer of the store.",
    ]
    assert kinds(questions, HUNG) == {Kind.ITEM}


def test_sentences_among_titles_stay_items() -> None:
    titles = ["1. The Lamp", "2. The Bell", "3. The Horn", "4. lamps are lit at dusk, and the bell is rung."]
    assert [block.kind for block in blocks_of(titles)] == [Kind.HEADING] * 3 + [Kind.ITEM]


def test_the_steps_of_a_list_in_a_section_are_no_titles_of_sections() -> None:
    steps = "1. light the lamp\n\n2. ring the bell\n"
    text = f"1. The Lamp\n\n{PROSE}\n2. The Bell\n\n{PROSE}\n{steps}\n3. The Horn\n\n{PROSE}\n4. The Tide\n\n{PROSE}"
    found = read_text(f"{PROSE}\n{text}", "log", "ascii").blocks
    assert [block.label.chars for block in found if block.kind is Kind.ITEM] == ["1.", "2."]
    assert sum(block.kind is Kind.HEADING for block in found) == len("1234")


def test_of_many_short_lists_each_number_is_compared_with_few(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = 0
    goes_on = numbered_alike._Run.goes_on

    def counted(run: numbered_alike._Run, count: int, indent: int, column: int) -> bool:
        nonlocal asked
        asked += 1
        return goes_on(run, count, indent, column)

    monkeypatch.setattr(numbered_alike._Run, "goes_on", counted)
    lists = 3 * numbered_alike.OPEN
    steps = "1. Trim the wick.\n\n2. Fill the oil.\n\n3. Wind the clock.\n\n"
    read_text((PROSE + "\n" + steps) * lists, "log", "ascii")
    assert lists < asked <= 3 * lists * numbered_alike.OPEN


def test_an_item_without_a_label_below_a_number_is_no_further_number() -> None:
    """Contents whose entries are set in at the margin of the text, and the parts with their lines of hyphens."""
    text = """\
0. On the rock, and what a keeper should know.
        0.1 The watch and the log
        0.2 Lamps
\t4.2 Flags
5. NOTES OF THE KEEPER, READ!
------------------------------------------------------------------------------

0. On the rock, and what a keeper should know.
----------------------------------------------

0.1 The watch and the log
-------------------------
          (no boat is seen in the night yet.. it's just a warning)

0.2 Lamps

are met:
1. The oil of the great lamp must be kept in the dry store below the

1. Notes for keepers
--------------------
2. Use of the bell
4. The flags
------------
4.1 Plain
---------
 - The flag of the boat (not flown, shown):
  a red one. (quite small)

4.2 Flags
---------
rules, your flag will do on all later days of the watch.

5. NOTES OF THE KEEPER, READ!
"""
    assert read_text(text, "rules", "ascii").blocks


NAMES = (
    "Words Used.",
    "The Lamp.",
    "Ringing the Bell in Fog.",
    "No Boats After Dark.",
    "Interpretation of Rule 2.",
)


def test_rules_of_a_house_under_titles_with_a_stop() -> None:
    text = "".join(f"  {number}. {name}\n\n{PROSE}\n" for number, name in enumerate(NAMES))
    blocks = read_text(f"{PROSE}\n{text}", "rules", "ascii").blocks
    found = [block.text.chars for block in blocks if block.kind is Kind.HEADING]
    assert found == [f"{number}. {name}" for number, name in enumerate(NAMES)]


def test_names_in_a_list_are_no_titles() -> None:
    for below in ("", "     It stands in the tower.\n\n"):
        text = "".join(f"  {number}. {name}\n\n{below}" for number, name in enumerate(NAMES))
        blocks = read_text(f"{PROSE}\n{text}{PROSE}", "rules", "ascii").blocks
        assert not any(block.kind is Kind.HEADING for block in blocks)


def test_an_underlined_title_over_the_list_of_the_titles_stays_one() -> None:
    text = f"{PROSE}\n0. Pages\n--------\n\n1. Lamp\n2. Bell\n3. Horn\n4. Tide\n5. Boat\n\n{PROSE}"
    blocks = read_text(text, "log", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == ["0. Pages"]


def test_a_title_among_titles_may_stand_right_over_text_that_does_not_hang() -> None:
    titles = ("2.1 The Lamp Room", "2.2 The bell and its rope", "2.3 Landing", "2.4 What is in Store")
    text = "".join(
        f"  {title}\n" + ("\n" if number != 1 else "") + f"   {PROSE}\n"
        for number, title in enumerate(titles)
    )
    found = read_text(f"{PROSE}\n{text}", "log", "ascii").blocks
    assert [block.text.chars for block in found if block.kind is Kind.HEADING] == [*titles]


def test_a_step_whose_text_hangs_below_its_first_line_is_no_title() -> None:
    steps = ("2.1 The Lamp Room", "2.2 The bell and its rope,", "2.3 Landing", "2.4 What is in Store")
    text = "".join(
        f"  {step}\n" + (f"\n   {PROSE}\n" if number != 1 else "      which the keeper rings in fog\n\n")
        for number, step in enumerate(steps)
    )
    found = read_text(f"{PROSE}\n{text}", "log", "ascii").blocks
    assert "2.2" in [block.label.chars for block in found if block.kind is Kind.ITEM]


def test_titles_over_two_lines_among_those_of_other_chapters() -> None:
    long = "2.1.  Setting up the lamp of the tower so that it can be seen from the\nlanding."
    titles = [
        "1.1.  The Lamp",
        "1.2.  The bell.",
        "1.3.  The horn.",
        long,
        "3.1.  The Boat",
        "3.2.  The oil.",
        "3.3.  The tins.",
    ]
    found = blocks_of(titles)
    assert [block.kind for block in found] == [Kind.HEADING] * 7
    assert found[3].text.chars == " ".join(long.split())


def test_sentences_over_two_lines_among_titles_without_a_stop_are_none() -> None:
    long = "2.1.  The lamp of the tower is set up so that it can be seen from the\nlanding."
    titles = ["1.1.  The Lamp", "1.2.  The Bell of the Landing", long, "3.1.  The Horn", "3.2.  The Boat"]
    assert [block.kind for block in blocks_of(titles)] == [
        Kind.HEADING,
        Kind.HEADING,
        Kind.ITEM,
        *[Kind.HEADING] * 2,
    ]
