"""Tables whose names one blank parts: each cell begins or ends where its name does. What came of a command is none."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

BEFORE = "The second keeper counts the stores in the evening and writes down what he has found there.\n\n"
COUNTED = """\
                  T  5 10 20 40 80 160 1280+
           TOTAL 34  4  2  5  9 31  57   108
      lamp wicks 20  0  0  1  1  6   6     8
             oil 14  0  0  0  0  0   0     5
"""
ONE_ROW = """\
Light Blasts Strokes  Lamp House             Boat House           (state)
red        0      14  skerry.12              landing.one          LIT
"""
VERSE = """\
The lamp is lit now keeper
The horn is low now keeper
"""
TYPED = """\
$ stores -count
NAME   NUMBER  PLACE
wicks  14      shed
oil    60      cellar
tins   20      pantry
"""
DUMP = """\
  (debug) list 0x1001c2bf 0x1001c2e0
  Dump of lamp code from 0x1001c2bf to 0x1001c2d0:
  0x1001c2bf <lamp_light+1103>:  addl   %eax,0xc(%ebp)
  0x1001c2c2 <lamp_light+1106>:  movl   0xfffffdd4(%ebp),%edx
  0x1001c2c8 <lamp_light+1112>:  btsl   $0x0,0x18(%edx)
  0x1001c2cd <lamp_light+1117>:  call   0x1001819c <__light_lamp>
  End of lamp dump.
"""
KEYS = """\
the keeper of the lamp and the horn:   wicks   14
the keeper of the boat and the oars:   tins    60
the keeper of the stores in winter:    cans    20
The books end here.
"""


def blocks(text: str) -> list[Block]:
    """The blocks of a text, those of the paragraph before it left out."""
    return list(read_text(BEFORE + text, "a document", "ascii").blocks)[1:]


def rows(block: Block) -> list[list[str]]:
    return [[cell.chars for cell in row] for row in block.rows]


def test_figures_under_the_numbers_of_their_columns() -> None:
    (table,) = blocks(COUNTED)
    assert table.kind is Kind.TABLE
    assert table.header_rows == 1
    assert rows(table)[:3] == [
        ["", "T", "5", "10", "20", "40", "80", "160", "1280+"],
        ["TOTAL", "34", "4", "2", "5", "9", "31", "57", "108"],
        ["lamp wicks", "20", "0", "0", "1", "1", "6", "6", "8"],
    ]


def test_a_head_over_one_row_names_its_cells() -> None:
    (table,) = blocks(ONE_ROW)
    assert rows(table) == [
        ["Light", "Blasts", "Strokes", "Lamp House", "Boat House", "(state)"],
        ["red", "0", "14", "skerry.12", "landing.one", "LIT"],
    ]
    assert table.header_rows == 1


def test_words_that_stand_right_under_words_are_no_table() -> None:
    assert all(block.kind is not Kind.TABLE for block in blocks(VERSE))


def test_a_row_whose_cells_stand_elsewhere_leaves_no_half_of_a_table() -> None:
    text = COUNTED + "  and so it was written in the book\n"
    assert all(block.note != "table with narrow columns" for block in blocks(text))


def test_what_came_of_a_command_stays_lines() -> None:
    (found,) = blocks(TYPED)
    assert (found.kind, len(found.lines)) == (Kind.PREFORMATTED, 5)


def test_the_same_lines_below_a_blank_line_are_a_table() -> None:
    assert [block.kind for block in blocks(TYPED.replace("-count\n", "-count\n\n"))][-1] is Kind.TABLE


def test_addresses_of_a_program_are_code_and_its_last_line_stays_last() -> None:
    (found,) = blocks(DUMP)
    assert (found.kind, found.code) == (Kind.PREFORMATTED, True)
    assert found.lines[-1].chars.strip() == "End of lamp dump."


def test_words_below_a_key_with_its_colon_are_no_part_of_it() -> None:
    keys = [row[0] for block in blocks(KEYS) for row in rows(block)]
    assert "the keeper of the stores in winter:" in keys


SHARES = """\
  Year   Tins      Wicks    Running Total  %
   20    4,425        13        4,438     0.7
   35   37,260       220       50,044     7.6
   80  144,158    33,368      343,968    52.3
   95  227,633    86,630      658,231   100.0
"""


def test_figures_that_end_at_the_same_columns_under_longer_names() -> None:
    blocks = read_text(BEFORE + SHARES + "\n" + BEFORE, "a document", "ascii").blocks
    tables = [block for block in blocks if block.kind is Kind.TABLE]
    assert [[cell.chars for cell in row] for row in tables[0].rows] == [
        ["Year", "Tins", "Wicks", "Running Total", "%"],
        *(line.split() for line in SHARES.splitlines()[1:]),
    ]
    assert len(tables) == 1


def test_figures_that_end_elsewhere_or_under_fewer_names_are_no_such_table() -> None:
    for text in (SHARES.replace("  52.3", "52.3  "), SHARES.replace("  %", "")):
        blocks = read_text(BEFORE + text + "\n" + BEFORE, "a document", "ascii").blocks
        assert not any(block.note == "table of figures that end at the same columns" for block in blocks)


RULED = """\
NR Store/shelf address     Tins Left Weeks Spare Last counted
=============================================================
#1 shed.skerry.example        2   6   377    14   14 May[ -15] +/-  3
#2 loft.skerry.example        3   6   377    15  114 May[-125] +/- 12
"""


def test_figures_anywhere_under_the_names_over_a_rule() -> None:
    """The words over no cells belong to the name before them, and cells under no name to the last one."""
    (table,) = blocks(RULED)
    assert table.header_rows == 1
    assert rows(table) == [
        ["NR Store/shelf address", "Tins", "Left", "Weeks", "Spare", "Last counted"],
        ["#1 shed.skerry.example", "2", "6", "377", "14", "14 May[ -15] +/- 3"],
        ["#2 loft.skerry.example", "3", "6", "377", "15", "114 May[-125] +/- 12"],
    ]


def test_the_same_table_right_below_what_was_typed() -> None:
    typed, table = blocks("# stores -count\n" + RULED)
    assert (typed.code, len(rows(table)[0])) == (True, 6)


def test_a_figure_under_two_names_leaves_all_names_in_doubt() -> None:
    text = RULED.replace("  2   6   377", "  2 64444 377").replace("  3   6   377", "  3 65555 377")
    assert all(block.note != "table with narrow columns" for block in blocks(text))
