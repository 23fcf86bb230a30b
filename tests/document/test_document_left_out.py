"""What stands in no block of a plain text: words that a reader lost, hyphens of line ends, signs of rules and leaders."""

from __future__ import annotations

from pathlib import Path

import pytest

from fit.document import read_document
from fit.document.blocks import Block, Kind, LeftOut
from fit.document.text import left_out, read_text
from fit.document.text.lines.reading import read_lines
from fit.document.wordproc import read_wordproc

DRILL = """\
Lamp drill
==========

The keeper of the first watch lights the lamp at dusk, then he climbs up the lad-
der with the can and trims every wick that has burnt down since the morning.

    Lighting ........................ 3
    Trimming ........................ 12
    Putting out ..................... 20
"""


def left(source: str) -> LeftOut:
    found = read_text(source, "drill.txt", "ascii").left_out
    assert found is not None
    return found


def test_a_rule_below_a_title_the_dots_of_a_list_and_the_hyphen_of_a_line_end_are_counted() -> None:
    found = left(DRILL)
    assert found.words == ()
    assert found.hyphens == 1
    assert found.signs == {"=": 10, ".": 24 + 24 + 21 - 3 * len("...")}  # three dots of each stay


def test_a_hyphen_that_is_part_of_its_word_stays_and_is_not_counted() -> None:
    told = "The book is kept in the watch room, where every keeper finds it open and read-\nonly.\n\n"
    assert left(told + "It is a read-only book.\n").hyphens == 0


@pytest.mark.parametrize(
    "drawn",
    [
        "N\bNA\bAM\bME\bE\n\nThe lamp of the rock is lit at dusk.\n",
        "_\bN_\bA_\bM_\bE\n\nThe lamp of the rock is lit at dusk.\n",
        "NAME\b\b\b\b____\n\nThe lamp of the rock is lit at dusk.\n",
        "\x1b[1mNAME\x1b[0m\n\nThe \x1b[4mlamp\x1b[24m of the rock is lit at dusk.\n",
        "NAME\rNAME\n\nThe lamp\tof the rock is lit at dusk.\n",
    ],
    ids=["bold", "underlined", "underlined after", "attributes", "the line again"],
)
def test_what_a_printer_strikes_twice_is_there_once(drawn: str) -> None:
    assert left(drawn) == LeftOut()


def test_running_heads_are_blocks_and_not_left_out() -> None:
    page = "Skerry Light                    Handbook\n\n" + "The keeper lights the lamp at dusk.\n" * 20
    assert left("\f".join([page] * 4)) == LeftOut()


def test_words_that_no_block_holds_are_named() -> None:
    lines, _ = read_lines("The lamp is lit.\n\nThe wick is long.\n")
    blocks = [
        Block(Kind.PARAGRAPH, text=lines[0].piece(0, 8)),
        Block(Kind.PARAGRAPH, text=lines[2].piece(4, 17)),
    ]
    assert left_out(lines, blocks).words == ("is", "lit.", "The")


def test_a_word_processors_lines_are_counted_too_without_its_commands() -> None:
    data = b".MT 3\r\nThe keeper of the watch climbs the lad\x1f\x8d\nder with the oil.\r\n\x1a"
    assert read_wordproc(data, "drill.doc").left_out == LeftOut(hyphens=1)


def test_markup_has_no_count(tmp_path: Path) -> None:
    page = tmp_path / "drill.html"
    page.write_text("<!DOCTYPE html><title>Drill</title><p>The lamp is lit.</p>")
    assert read_document(str(page)).left_out is None
