"""Rows whose last text goes on at the margin, left of all keys: a screen was too narrow for the list."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

BEFORE = """\
    The lamp of the landing can be lit in several ways, and the keeper
    chooses one of them by a word on the slate in the store:
"""
ROWS = """\
        --no-browser     Shut the window in the upper gallery
        --no-histories   Leave out the saving of all the hours
    and oil levels
        --no-library     Leave out the books that are needed for
    the tide of a year
        --no-mouse       Set no trap
        --no-watch       Sleep through the night
"""


def test_the_rest_of_a_row_left_of_the_keys() -> None:
    assert rows_of(read_text(BEFORE + ROWS, "slate", "ascii").blocks) == [
        "--no-browser | Shut the window in the upper gallery",
        "--no-histories | Leave out the saving of all the hours and oil levels",
        "--no-library | Leave out the books that are needed for the tide of a year",
        "--no-mouse | Set no trap",
        "--no-watch | Sleep through the night",
    ]


def test_the_rest_of_several_lines_where_keys_are_figures() -> None:
    text = """\
bit 5   what the lamp does
-----   ------------------
0       It stays at 0 until the keeper turns it (the light is out).
1       It turns around to 15 by itself (upon the next strike of the
bell). The lamp will then go on to count down in steps, each of them as
long as the one before.

Only a turn by hand sets it to a state that is known for certain.
"""
    blocks = read_text(text, "slate", "ascii").blocks
    assert rows_of(blocks)[2] == (
        "1 | It turns around to 15 by itself (upon the next strike of the bell). "
        "The lamp will then go on to count down in steps, each of them as long as the one before."
    )
    assert [block.kind for block in blocks] == [Kind.TABLE, Kind.PARAGRAPH]


def test_text_below_a_short_row_is_no_rest_of_it() -> None:
    text = BEFORE + ROWS + "    where the night is that of the keeper on watch, who has the lamp to light.\n"
    blocks = read_text(text, "slate", "ascii").blocks
    assert rows_of(blocks)[-1] == "--no-watch | Sleep through the night"
    assert blocks[-1].kind is Kind.PARAGRAPH


def test_a_paragraph_with_wide_blanks_between_its_sentences_has_no_rows() -> None:
    text = """\
   Once you have made sure that you hung up by hand (!)  the right
tins for the lamp of the landing "north", you should also write down a
line with `tins of the north' which will keep the relief from opening
tins that are older (and, as the year goes on, dried out) to light
the right lamp.
"""
    (block,) = read_text(text, "log", "ascii").blocks
    assert block.kind is Kind.PARAGRAPH
    assert block.text.chars == " ".join(text.split())


def test_a_directory_left_of_the_rows_is_no_rest_of_the_one_above() -> None:
    rows = "etc/\n" + "".join(
        f"\tlamp.{name}.conf\t{said}\n"
        for name, said in (
            ("oil", "Sample of the oil table"),
            ("wick", "Sample of the wick table of the lamp"),
            ("bell", "Bell table that is used by default in fog"),
            ("horn", "Horn table that the keeper has made for the year"),
        )
    )
    more = "".join(
        f"\t{name}.in\t\tRings the {name} from the clock, and counts.\n" for name in ("bell", "horn", "gong")
    )
    found = rows_of(read_text(f"{rows}bin/\n{more}", "slate", "ascii").blocks)
    assert not any(row.endswith(" bin/") and "Horn" in row for row in found)
