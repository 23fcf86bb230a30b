"""Titles alone between blank lines that stand and look as the headings of their document do."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what\n"
    "it shows into the log, whatever the weather may be, before he goes up.\n"
)
SET_IN = "".join(f"   {line}\n" for line in PROSE.splitlines())
TITLES = ("The Lamp", "Fog Bell and Flags", "Stores", "Relief")


def headings(*parts: str, prose: str = PROSE) -> list[str]:
    text = "\n".join(f"{title}\n\n{prose}" for title in TITLES) + "".join(
        f"\n{part}\n\n{prose}" for part in parts
    )
    blocks = read_text(text, "log", "ascii").blocks
    found = [block.text.chars for block in blocks if block.kind is Kind.HEADING]
    assert found[:4] == list(TITLES)
    return found[4:]


@pytest.mark.parametrize(
    "title", ["Trimming the wicks of the lamp", "Wicks, oil, and rope from the harbour", "What to do in fog"]
)
def test_a_title_with_few_capitals(title: str) -> None:
    assert headings(title) == [title]
    assert headings(title, prose=SET_IN) == [title]


def test_a_title_with_a_colon_left_of_its_text() -> None:
    assert headings("Oil lamps:", prose=SET_IN) == ["Oil lamps:"]
    assert headings("Oil lamps:") == []
    assert headings("Example:", prose=SET_IN) == []
    assert headings("Oil lamps:", prose="   light -l north\n   trim -w 4\n") == []


def test_titles_left_of_their_texts_though_there_are_more_of_them() -> None:
    titles = [
        f"Things to do in {month} of every year" for month in ("May", "June", "July", "August", "March")
    ]
    assert headings(*titles, prose=SET_IN) == titles
    assert headings(*titles) == []


@pytest.mark.parametrize(
    "line",
    [
        "Relief is by boat only",
        "The oil in the cans was spilt.",
        "Written for whoever has the watch at the",
        "For all of this the keeper signs, in this order:",
        "Lamp: the one in the tower",
        "light the lamp",
        "Table 2. What burns in the lamp",
        "(see the drill of the lamp)",
        "Copyright the harbour office, all of it",
    ],
)
def test_lines_that_are_no_titles(line: str) -> None:
    assert headings(line) == []


def test_titles_behind_a_sign_only_where_others_have_it() -> None:
    assert headings("** Oil of the lamp") == []
    assert headings("== The Lamp ==", "== Fog Bell ==", "== Oil of the lamp ==")[2:] == [
        "== Oil of the lamp =="
    ]


def test_a_line_over_program_text_leads_to_it() -> None:
    assert headings("To light the lamp at dusk, type\n\n     light(lamp, 2);") == []


def test_two_titles_left_of_their_texts_where_nothing_else_stands_there() -> None:
    titles = (
        "Using the Fog Bell",
        "Using the Lamp",
        "Flags for a fog",
        "Lighting the [tower] lamp",
    )
    text = PROSE + "\n" + "\n".join(f"  {title}\n\n{SET_IN}" for title in titles)
    blocks = read_text(text, "log", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == [*titles]
    text += "".join(f"\n  the {number} lamp,\n\n{SET_IN}" for number in ("first", "second"))
    blocks = read_text(text, "log", "ascii").blocks
    assert len([block for block in blocks if block.kind is Kind.HEADING]) < len(titles)
