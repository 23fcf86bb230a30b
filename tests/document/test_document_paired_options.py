"""Options with two spellings one above the other and one text beside both, and options that only follow each other."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.
"""
LAMP = """\
   -lamp <l>    lights the lamp <l>, which must be one of those on the
   -l <l>       rock: "north" or "south"
                default: north
"""
HOURS = """\
   -hours <h>   counts the hours that a lamp burns as if the sun were to
   -h <h>       rise in <h>, or till noon
                default: 12
"""
OUT = """\
   -outside <o> rings the bell for boats that come from
   -call <o>    the open sea.
                default: off
"""


def between(text: str) -> list[Block]:
    """The blocks between two paragraphs."""
    return list(read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks[1:-1])


def entries(text: str) -> list[tuple[str, str]]:
    """The labels and texts of the items; paragraphs below them have no label."""
    return [(block.label.chars, block.text.chars) for block in between(text)]


def test_both_spellings_have_one_text() -> None:
    found = entries(f"{LAMP}\n{HOURS}\n   -width <w>   of the log\n   -w <w>       default: 72\n\n{OUT}")
    assert found == [
        ("-lamp <l>", ""),
        ("-l <l>", 'lights the lamp <l>, which must be one of those on the rock: "north" or "south"'),
        ("", "default: north"),
        ("-hours <h>", ""),
        ("-h <h>", "counts the hours that a lamp burns as if the sun were to rise in <h>, or till noon"),
        ("", "default: 12"),
        ("-width <w>", ""),
        ("-w <w>", "of the log"),
        ("", "default: 72"),
        ("-outside <o>", ""),
        ("-call <o>", "rings the bell for boats that come from the open sea."),
        ("", "default: off"),
    ]


def test_options_that_follow_each_other_are_two() -> None:
    text = (
        "   -verbose   tells what is done\n   -v         tells the version\n\n"
        "   -quiet     tells nothing\n   -q         leaves\n"
    )
    keys = [row[0].chars for block in between(text) for row in block.rows]
    assert keys == ["-verbose", "-v", "-quiet", "-q"]


def test_a_word_behind_wide_blanks_is_taken_by_the_option_over_its_text() -> None:
    text = (
        "Some of the options are:\n"
        "    -l, --lamp  lamp_name\n       The lamp of that name is lit in the evening, and no other lamp of the\n"
        "       rock is.\n"
        "    -o, --oil +x+y\n       Or -o +x+y. The oil that is burned and the oil that is left over in the\n"
        "       cask.\n"
        "    -q\n       The horn is not sounded, whatever the weather may be in the night.\n"
        "    -v  volume\n       How loud the horn is sounded.\n"
    )
    items = [block for block in read_text(text, "a manual", "ascii").blocks if block.kind is Kind.ITEM]
    assert [block.label.chars for block in items] == [
        "-l, --lamp lamp_name",
        "-o, --oil +x+y",
        "-q",
        "-v volume",
    ]
    beside = text.replace("-v  volume\n       How", "-v     volume\n           How")
    items = [block for block in read_text(beside, "a manual", "ascii").blocks if block.kind is Kind.ITEM]
    assert items[-1].label.chars == "-v"


def test_two_options_with_their_words_right_below_a_title_are_terms() -> None:
    text = (
        "OPTIONS\n  -v  volume\n     How loud the horn is sounded in the night, and also\n     in the morning.\n"
        "  -w  wick\n     What wick is lit.\n"
    )
    items = [
        block for block in read_text(f"{PROSE}\n{text}", "a book", "ascii").blocks if block.kind is Kind.ITEM
    ]
    assert [(block.label.chars, block.text.chars) for block in items] == [
        ("-v volume", "How loud the horn is sounded in the night, and also in the morning."),
        ("-w wick", "What wick is lit."),
    ]
