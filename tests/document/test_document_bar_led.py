"""Tables as AsciiDoc has them in its source: `|===` above and below, a bar before each cell."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

BEFORE = "The second keeper counts the stores in the evening and writes down what he has found there.\n\n"
LEVEL = """\
[options="header"]
|==========================
|                 3+| Tank
| *Lamp*     | A   | B   | C
| North      | yes | yes | no
| Landing    | no  | no  | yes
|==========================
"""
LOOSE = """\
|=====
| Store  |  Tins | In the shed
| oil and wicks |14| some
| bread|  3 |  none at all
|=====
"""


def blocks(text: str) -> list[Block]:
    """The blocks of a text, those of the paragraph before it left out."""
    return list(read_text(BEFORE + text, "a document", "ascii").blocks)[1:]


def rows(block: Block) -> list[list[str]]:
    return [[cell.chars for cell in row] for row in block.rows]


def test_a_name_over_several_columns_belongs_to_each_of_them() -> None:
    table, number = blocks(LEVEL)[-2:]
    assert table.header_rows == 1
    assert rows(table) == [
        ["*Lamp*", "Tank A", "Tank B", "Tank C"],
        ["North", "yes", "yes", "no"],
        ["Landing", "no", "no", "yes"],
    ]
    assert (number.kind, [line.chars for line in number.lines]) == (Kind.FURNITURE, ["3"])
    assert table.lines[1].chars == "|                   | Tank"


def test_bars_that_do_not_stand_below_each_other() -> None:
    (table,) = blocks(LOOSE)
    assert table.header_rows == 1
    assert rows(table) == [
        ["Store", "Tins", "In the shed"],
        ["oil and wicks", "14", "some"],
        ["bread", "3", "none at all"],
    ]


def test_a_blank_line_below_the_first_row_makes_it_the_head() -> None:
    (table,) = blocks("|===\n| 14 | 3\n\n| oil | tins\n| bread | none\n|===\n")
    assert table.header_rows == 1


def test_rows_of_unlike_many_cells_and_a_table_without_its_lower_edge_are_left_alone() -> None:
    for text in (LOOSE.replace("|14|", "14"), LOOSE.removesuffix("|=====\n")):
        assert all(block.note != "table with a bar before each cell" for block in blocks(text))


def test_a_cell_over_no_column_is_none() -> None:
    assert blocks("|===\n2+| x\n0+| a | b | c\n| d | e\n|===\n")
