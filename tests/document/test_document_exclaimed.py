"""Tables whose bars are signs of exclamation: rows like any, and no drawing; the sign in a sentence stays."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

LEAD = "The stores are kept in the cellar, and the book says what there is of each, as it was counted.\n\n"
UNDER_HEAD = """\
    ! Store       ! Tins  ! Where it stands                   !
    !-------------!-------!-----------------------------------!
    ! Oil, colza  !  12   ! in the cellar, behind the wicks   !
    !             !       ! and the rope                      !
    ! Wicks       !   3   ! on the shelf! mind the cat        !
"""
BOXED = """\
    +--------+-------+-----------------------------+
    ! Store  ! Tins  ! Where                       !
    +--------+-------+-----------------------------+
    ! Oil    !  12   ! in the cellar               !
    +--------+-------+-----------------------------+
"""


def test_rows_between_signs_of_exclamation() -> None:
    assert rows_of(read_text(LEAD + UNDER_HEAD, "stores", "ascii").blocks) == [
        "Store = Tins = Where it stands",
        "Oil, colza | 12 | in the cellar, behind the wicks and the rope",
        "Wicks | 3 | on the shelf! mind the cat",
    ]
    assert rows_of(read_text(LEAD + BOXED, "stores", "ascii").blocks) == [
        "Store = Tins = Where",
        "Oil | 12 | in the cellar",
    ]


def test_a_table_as_wide_as_the_screen_keeps_its_signs() -> None:
    (table,) = (
        block for block in read_text(LEAD + BOXED, "stores", "ascii").blocks if block.kind is Kind.TABLE
    )
    assert all("|" not in line.chars for line in table.lines)
    assert any("!" in line.chars for line in table.lines)


def test_signs_that_do_not_stand_under_one_another_part_no_columns() -> None:
    shouted = "".join(f"    ! {word} !\n" for word in ("Oil", "Wicks", "Rope for the boat"))
    assert rows_of(read_text(f"{LEAD}    !-----!-----!\n{shouted}", "stores", "ascii").blocks) == []
