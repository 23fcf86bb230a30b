"""Figures in rows that are read down as well as across stay as they are drawn: common practice, no source."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

BEFORE = "The keepers of the light set up the days of the month so that they can be read down:\n\n"
AFTER = "\nEach of them is crossed out when the lamp goes out on the morning after it.\n"
TURNED = """\
      1  4  7 10        1  2  3  4
      2  5  8 11   =>   5  6  7  8
      3  6  9  X        9 10 11  X
"""
MOVED = """\
          1  2  3
       4  5  6  7
       8  9  10 11
            ||
            \\/
       1  2  3  4
       5  6  7  8
       9  10 11
"""
ROCKS = """\
        X          X X
       X 1        4 3 1
      5 4 2        5 2
       6 3
        7
"""
FLASHES = """\
lamp-north     ..ooooOOOOOOOOOooo.oooOOOOOOOOOOooooooOooo.........oooOOO
lamp-south     112224444444444222122244444444442222224222111111111222444
"""
SUMS = """\
lamp-log     0f343b0931126a20f133d67c2b018a3b2e1c9d40
bell-log     9e107d9d372bb6826bd81d3542a419d6aa7f4c13
"""
CODES = """\
    32 (nothing)   64 @    96 `
    33 !           65 A    97 a
    34 "           66 B    98 b
    35 #           67 C    99 c
"""
TICKED = """\
Keeper    Lamp    Bell    Boat

Anna      *       *
Jon               *       *
Mads      *               *
Ole       *       *       *
"""
HEADED = """\
Day    Hour   Oil

1      2      14
2      4      15
3      6      16
"""


@pytest.mark.parametrize(
    "drawn",
    [TURNED, MOVED, ROCKS, FLASHES],
    ids=["with an arrow", "with a stroke", "staggered", "codes in line"],
)
def test_grids_of_figures_stay_as_they_are_drawn(drawn: str) -> None:
    blocks = read_text(BEFORE + drawn + AFTER, "log", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]
    left = min(len(line) - len(line.lstrip()) for line in drawn.splitlines())
    assert [line.chars for line in blocks[1].lines] == [line[left:] for line in drawn.splitlines()]


@pytest.mark.parametrize(
    "table",
    [CODES, HEADED, SUMS, TICKED],
    ids=["cells of two parts", "with a head", "sums of files", "marks under a head"],
)
def test_tables_with_short_cells_and_sums_of_files_are_no_grids(table: str) -> None:
    kinds = {block.kind for block in read_text(BEFORE + table + AFTER, "log", "ascii").blocks}
    assert Kind.PICTURE not in kinds
    assert Kind.TABLE in kinds or Kind.ITEM in kinds


def test_rows_under_a_ruled_head_with_some_left_out_are_a_table() -> None:
    text = """\
block #         long #  bit #
-------------------------------
2               0       0
3               0       1
...
33              0       31
34              1       0
...
880             27      14
881             27      15
"""
    (table,) = read_text(BEFORE + text + AFTER, "a book", "ascii").blocks[1:-1]
    assert table.kind is Kind.TABLE
    assert table.header_rows == 1
    assert [row[0].chars for row in table.rows] == [
        "block #",
        "2",
        "3",
        "...",
        "33",
        "34",
        "...",
        "880",
        "881",
    ]


def test_figures_with_dots_for_those_left_out_keep_their_places() -> None:
    (row,) = read_text(
        f"{BEFORE}        11      10      9     .....     1\n{AFTER}", "a book", "ascii"
    ).blocks[1:-1]
    assert [line.chars for line in row.lines] == ["11      10      9     .....     1"]


SIGNS = """\
       +0 +1 +2 +3 +4 +5 +6 +7 +8 +9 +A +B +C
 20       !  "  #  $  %  &  '  (  )  *  +  ,
 30    0  1  2  3  4  5  6  7  8  9  :  ;  <
 40    @  A  B  C  D  E  F  G  H  I  J  K  L
"""


def test_a_chart_of_signs_with_many_cells_evenly_spaced_stays_drawn() -> None:
    (block,) = read_text(f"{BEFORE}{SIGNS}{AFTER}", "lamp", "ascii").blocks[1:-1]
    assert block.kind is Kind.PICTURE
    assert [line.chars.split() for line in block.lines] == [line.split() for line in SIGNS.splitlines()]


def test_rows_of_few_signs_are_no_chart() -> None:
    few = "".join(f"{line[:25]}\n" for line in SIGNS.splitlines()).replace("2 ", "two")
    blocks = read_text(f"{BEFORE}{few}{AFTER}", "lamp", "ascii").blocks[1:-1]
    assert not any(block.kind is Kind.PICTURE for block in blocks)
