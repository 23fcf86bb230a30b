"""Listings whose lines are numbered for the text that speaks of them, and lists that are none."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.
"""


def between(text: str) -> list[Block]:
    """The blocks between two paragraphs."""
    return list(read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks[1:-1])


LISTINGS = [
    "     1   my %lamps;\n\n     2   while (<>) {\n     3     chomp;\n     4     $lamps{$_} = 1;\n     5   }\n",
    "     8   for my $lamp (sort keys %lamps) {\n     9     print $lamp;\n    10     light($lamp);\n    11   }\n",
    "   1 Lamp: north\n   2 Oil: 14\n   3\n   4 Lamp: south\n   5  Lit on holidays, when the keeper\n   6  has time.\n",
]


@pytest.mark.parametrize("text", LISTINGS)
def test_a_listing_with_numbers_keeps_its_lines(text: str) -> None:
    (block,) = between(text)
    assert (block.kind, block.code) == (Kind.PREFORMATTED, True)
    margin = min(len(line) - len(line.lstrip(" ")) for line in text.splitlines() if line)
    assert [line.chars for line in block.lines] == [line[margin:] for line in text.splitlines()]


LISTS = [
    "   1  Trim the wick of the lamp and wipe the glass.\n   2  Light it.\n   3  Write the hour into the log.\n",
    "   0 = dark;\n   1 = lit();\n   2 = broken;\n",
    "   1  light: {lamp} {oil}\n   2  ring: {bell} {rope}\n   3  read: {tide} {log}\n",
]


@pytest.mark.parametrize("text", LISTS)
def test_a_numbered_list_is_no_listing(text: str) -> None:
    assert not any("numbered listing" in block.note for block in between(text))
