"""Terms that stand as most terms of their document do, whatever each of them looks like by itself."""

from __future__ import annotations

from textwrap import fill

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = (
    "      The keeper on watch reads the barometer at the full hour and writes what\n"
    "      it shows into the log, whatever the weather may be, before he goes up.\n\n"
)
WORDS = "".join(
    f"   {term}\n      {first}\n      {second}\n\n"
    for term, first, second in (
        ("gallery", "The walk around the lantern, from which the keeper wipes the panes of", "the lamp."),
        ("Mantle", "What glows in the lamp.  It is put in with two fingers, and not touched", "by anything."),
        ("Relief", "The boat that brings the next keeper, with his stores and his letters, on", "the first."),
        ("wick", "What burned in the lamp before it had a mantle.  Some still lie in the", "store."),
    )
)
"""Terms and their texts right of the margin of nearly all lines."""


def read(text: str) -> tuple[Block, ...]:
    return read_text(PROSE + WORDS + text + "\n" + PROSE, "log", "ascii").blocks


def after(text: str) -> list[tuple[Kind, str, str]]:
    """Kind, label and text of the blocks after the four terms, without the last paragraph."""
    blocks = read(text)
    assert [block.label.chars for block in blocks[1:5]] == ["gallery", "Mantle", "Relief", "wick"]
    return [
        (block.kind, block.label.chars, block.text.chars or "\n".join(line.chars for line in block.lines))
        for block in blocks[5:-1]
    ]


@pytest.mark.parametrize(
    ("term", "text"),
    [
        ("FOG", "See: Fog bell"),
        ("ring(times)", "Rings the bell as often as is said, and says so."),
        ("The bell that is rung in fog and at a wreck (FB)", "It hangs at the stair below the lantern."),
        ("oil", "11001"),
    ],
)
def test_a_term_that_looks_like_something_else(term: str, text: str) -> None:
    assert after(f"   {term}\n      {text}\n") == [(Kind.ITEM, term, text)]


def test_terms_in_lines_that_stay() -> None:
    assert after("   AD\n      See: Dome\n   oil\n      See: Lamp oil\n") == [
        (Kind.ITEM, "AD", "See: Dome"),
        (Kind.ITEM, "oil", "See: Lamp oil"),
    ]


def test_what_stands_below_such_a_term_is_set_deeper_than_it() -> None:
    blocks = read(
        "   FOG\n      See: Fog bell\n\n      [Source: the log of the harbour]\n\n   oil\n      See: Lamp\n"
    )
    assert [(block.kind, block.level) for block in blocks[5:8]] == [
        (Kind.ITEM, blocks[4].level),
        (Kind.PARAGRAPH, blocks[4].level + 1),
        (Kind.ITEM, blocks[4].level),
    ]


def test_a_term_below_an_option_with_its_text_beside_it() -> None:
    text = (
        "-oil <cans>           Fill the lamp from that many cans, and write into the log\n"
        "                      how many are left\n"
        "-bell                 Ring the bell until the fog is gone\n\n"
        "-flag <name>          Raise the flag of that name, if it is in the locker, and\n"
        "                      lower the others\n"
        "-watch                Wake the next keeper\n\n"
        "-barometer rising|falling|steady|unknown|broken\n"
        "                      What the glass does\n"
        "-relief boat|none\n"
        "                      Who comes next\n"
    )
    blocks = read_text(f"{PROSE}{text}", "log", "ascii").blocks
    assert [(block.label.chars, block.text.chars) for block in blocks[-2:]] == [
        ("-barometer rising|falling|steady|unknown|broken", "What the glass does"),
        ("-relief boat|none", "Who comes next"),
    ]


@pytest.mark.parametrize(
    "text",
    [
        "   1. FOG\n   ======\n      Ring the bell.\n",
        "   while fog:\n      ring(bell)\n",
        "   oil = two cans $\n      wicks\n   bells = one $\n      rope\n",
        "   can be replaced by\n      ring(bell, 2);\n",
        "      FOG\n         Ring the bell.\n",
    ],
)
def test_what_stays_as_it_was(text: str) -> None:
    assert all(kind is not Kind.ITEM for kind, _, _ in after(text))


def test_headings_over_text_set_deeper_stay_where_no_terms_stand_like_them() -> None:
    text = "".join(f"   {name}\n      {PROSE.strip()}\n\n" for name in ("FOG", "OIL", "WICKS", "FLAGS"))
    blocks = read_text(text, "log", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == [
        "FOG",
        "OIL",
        "WICKS",
        "FLAGS",
    ]


SETTINGS = {
    "FogBell  ( bool ) ring the bell in fog": (
        "If this is set, the bell is rung by hand in fog, by the second keeper or by whoever of the others is at "
        "the landing. The default is set."
    ),
    "HornEach  ( score ) what a blast counts": (
        "This gives the score of each blast of the horn that is heard by the boat on its way to the rock in the "
        "morning. The default is none."
    ),
    "WickAge  ( nat ) hours that a wick burns": (
        "After so many hours of light the wick is cut by the second keeper, who then writes the length of the "
        "rest into the book. The default is nine."
    ),
    "OilLeft  ( nat ) cans that must be there": (
        "With less in store than this the boat is called with a gun, at noon and once more in the evening before "
        "the lamp is lit. The default is four."
    ),
}
LONG = "LampOwnEach  ( score ) score for each own lamp of the two lights"
SAID = (
    "This option gives the score for having one's own lamp lit. If both of them are, this score will be given "
    "twice. The default is none."
)


def settings(last: str) -> list[tuple[Kind, str]]:
    margin = "The keeper on watch reads the barometer at the full hour and writes what\nit shows.\n\n" * 3
    entries = {**SETTINGS, last: SAID}
    text = margin + "".join(
        f"  {term}\n{fill(said, 70, initial_indent='    ', subsequent_indent='    ')}\n\n"
        for term, said in entries.items()
    )
    return [(block.kind, block.label.chars) for block in read_text(text, "log", "ascii").blocks[3:]]


def test_a_term_that_fills_its_line_says_of_what_kind_it_is_like_the_others() -> None:
    assert settings(LONG) == [(Kind.ITEM, term.replace("  ", " ")) for term in (*SETTINGS, LONG)]


def test_a_full_line_that_says_no_kind_goes_on() -> None:
    assert settings(LONG.replace("( score ) ", "is the "))[-1][0] is Kind.PARAGRAPH


BELOW = "What the keeper does then stands in the log of the year."
LAST = "   pilot\n      Who comes with the boat when the sea is high, and goes with it.\n"


@pytest.mark.parametrize("terms", [("ring the bell ...",), ("[bell] .",), ("wake first ...", "[lamp] .")])
def test_what_stands_between_two_terms_of_a_list_is_one_whatever_it_looks_like(
    terms: tuple[str, ...],
) -> None:
    text = "".join(f"   {term}\n      {BELOW}\n\n" for term in terms)
    assert after(text + LAST)[:-1] == [(Kind.ITEM, term, BELOW) for term in terms]
    assert after(text)[0][0] is not Kind.ITEM
