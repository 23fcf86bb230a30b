"""Plans and graphs drawn with the bars of a table: what fills a cell, or one sign at many places, is drawn."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

LEAD = "The keeper on watch sees this on the wall of the lamp room, whichever way he looks at it.\n\n"
BERTHS = """\
    +---------+---------+---------+
    |   N1    |   N2    |   N3    |
    |         | (winch) |=========|
    |  free   |  free   |  MAREN  |
    +---------+---------+---------+
     14.20               till 19.00
"""
FOGS = """\
    hours |
       20 |                 *
          |                 *
       15 |      *          *                *
          |      *   *      *                *
       10 |      *   *      * *              *
          |  *   * * *      * *    *         *
          +-------------------------------------
            1   3   5   7   9   12   15   18
"""


def drawn(text: str) -> list[list[str]]:
    blocks = read_text(LEAD + text, "a document", "ascii").blocks
    return [[line.chars.strip() for line in block.lines] for block in blocks if block.kind is Kind.PICTURE]


def test_a_cell_filled_with_double_strokes_makes_a_plan_of_a_box() -> None:
    assert drawn(BERTHS) == [[line.strip() for line in BERTHS.splitlines()]]


def test_a_rule_over_one_column_that_is_drawn_as_all_others_are_parts_its_rows() -> None:
    rows = rows_of(read_text(LEAD + BERTHS.replace("=", "-"), "a document", "ascii").blocks)
    assert rows[-1] == "N1 free | N2 (winch) free | MAREN"


def test_a_sum_under_double_strokes_below_a_double_rule_is_a_table() -> None:
    table = BERTHS.replace(
        "+---------+---------+---------+\n    |   N1", "+=========+=========+=========+\n    |   N1"
    )
    assert rows_of(read_text(LEAD + table, "a document", "ascii").blocks) != []


def test_stars_at_many_places_of_one_cell_are_a_graph() -> None:
    assert drawn(FOGS) == [[line.strip() for line in FOGS.splitlines()]]


def test_one_star_in_a_cell_marks_its_row() -> None:
    rows = "    Lamp | *\n    Oil  |\n    Wick | *\n    Bell | *\n    Boat | **\n"
    table = f"    Part | Due\n    -----+----\n{rows}"
    assert "Boat | **" in rows_of(read_text(LEAD + table, "a document", "ascii").blocks)


ROOMS = """\
   ######################################
   #        :            #       3      #
   #   1    :     2      #   #######  ###
   ####  #################              #
   #     gallery            #   stairs  #
   ######################################
"""


def test_a_plan_with_walls_of_a_sign_that_programs_have_before_their_remarks() -> None:
    assert drawn(ROOMS) == [[line.strip() for line in ROOMS.splitlines()]]


def test_remarks_beside_commands_are_no_walls() -> None:
    commands = (
        "    # once a day\n    trim --all        # the wicks\n    light 3           # the lamp in the north\n"
    )
    assert drawn(commands) == []
