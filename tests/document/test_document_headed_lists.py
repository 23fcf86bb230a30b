"""Lists side by side with a name underlined over each: one after the other; and columns that a parted rule shows."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

LISTS = """\
Each key of the lamp board stands in one of these lists:

    Lamp Keys              Horn Keys
    --------------------   --------------------
    lit()                  sound()
    dark()                 sound_twice()
    turn()                 silence()
    turn_back()            repeat()
    trim_wicks()           fog_signal()
    trim_all_wicks()       wind_up()
    fill()
    drain()                Bell Keys
                           --------------------
    Log Keys               strike()
    --------------------   muffle()
    enter()                count_strokes()
    sign()
    strike_out()           Boat Keys
    close_book()           --------------------
                           lower()
"""


def test_lists_that_begin_beside_the_middle_of_others_are_read_one_after_the_other() -> None:
    blocks = read_text(LISTS, "keys", "ascii").blocks
    heads = [block.text.chars for block in blocks if block.kind is Kind.HEADING]
    assert heads == ["Lamp Keys", "Log Keys", "Horn Keys", "Bell Keys", "Boat Keys"]
    lists = [[line.chars for line in block.lines] for block in blocks if block.lines]
    assert [entries[0] for entries in lists] == ["lit()", "enter()", "sound()", "strike()", "lower()"]
    assert lists[0][-1] == "drain()"


def test_two_lists_of_one_length_under_underlined_names_are_the_columns_of_a_table() -> None:
    table = "".join(f"{line}\n" for line in LISTS.split("\n")[2:10])
    found = rows_of(read_text(table, "keys", "ascii").blocks)
    assert found[0] == "Lamp Keys = Horn Keys"
    assert found[-1] == "trim_all_wicks() | wind_up()"


def test_columns_one_blank_apart_as_the_rule_under_their_names_is() -> None:
    table = """\
   watch1 watch2 watch3 watch4        watch1 watch2 watch3
   ====== ====== ====== ======        ====== ====== ======
      0      1      2      3    oil      0      1      2    full
      3      0      1      2    oil      2      0      1    half
     10     11     12     13    wick    10     11     12    low
"""
    found = rows_of(read_text(table, "watches", "ascii").blocks)
    assert found[0] == "watch1 = watch2 = watch3 = watch4 =  = watch1 = watch2 = watch3 = "
    assert found[3] == "10 | 11 | 12 | 13 | wick | 10 | 11 | 12 | low"


def test_words_that_run_over_a_blank_of_the_rule_keep_their_column_whole() -> None:
    table = """\
   Store room     Left   Short
   ===== ====     ====   =====
   lamp oil       12     yes
   rape oil       4      no
   wick threads   40     no
"""
    found = rows_of(read_text(table, "stores", "ascii").blocks)
    assert found == [
        "Store room = Left = Short",
        "lamp oil | 12 | yes",
        "rape oil | 4 | no",
        "wick threads | 40 | no",
    ]


def test_the_head_of_a_table_printed_again_begins_no_list() -> None:
    head = "No.   Oil       Mark      Where it stands, or stood when it was counted\n---   ------    ----      ----------------------------------------------\n"
    table = (
        f"{head}1     4 tins    E         in the cellar, behind the wicks\n2     5 tins    D         in the cellar, next to the stairs\n"
        f"3     5 tins    C         in the boat-house\n\n{' ' * 57}Page 3\n\f{head}4     7 tins    B         in the lamp room\n"
        f"5     8 tins    A         on the landing\n\n{' ' * 57}Page 4\n\fThe end.\n\n{' ' * 57}Page 5\n"
    )
    found = rows_of(read_text(table, "stores", "ascii").blocks)
    assert found[0] == "No. = Oil = Mark = Where it stands, or stood when it was counted"
    assert found[-1] == "5 | 8 tins | A | on the landing"


SIDES = """\
      LIGHTING                        TRIMMING
      L   the lamp                    Z   all the lamps
      W   the wick alone              Y   the first wick
      A   all of them                 X   the last wick
      R   the lamp on the right       V   takes it all back
"""


def test_keys_with_their_texts_under_two_names_are_lists_side_by_side() -> None:
    blocks = read_text(SIDES, "keys", "ascii").blocks
    words = " ".join(
        block.label.chars + " ".join(cell.chars for row in block.rows for cell in row) for block in blocks
    )
    assert [block.text.chars for block in blocks if not block.rows and not block.label.chars] == [
        "LIGHTING",
        "TRIMMING",
    ]
    assert words.index("the lamp on the right") < words.index("all the lamps")


def test_the_same_keys_under_two_names_are_compared_row_by_row() -> None:
    same = SIDES
    for left, right in ("LZ", "WY", "AX", "RV"):
        same = same.replace(f"  {right}   ", f"  {left}   ")
    (block,) = read_text(same, "keys", "ascii").blocks
    assert block.rows


def test_the_rule_that_ends_a_table_underlines_no_names() -> None:
    """The row right above it has a word over each part of the rule, but these begin no lists."""
    table = """\
    ==================================================
    No.  Task                     Who        Until
    --------------------------------------------------
    1    Scrape the gallery and   Tregear,   26 Sept.
         paint it twice           Hoskin

    2    Find out why the boat    Callow
         leaks at the bow

    3    Wicks                    Pascoe     at once
    ==================================================
"""
    for text in (table, table.replace("\n\n", "\n")):
        found = rows_of(read_text(text, "tasks", "ascii").blocks)
        assert found[0] == "No. = Task = Who = Until"
        assert found[1] == "1 | Scrape the gallery and paint it twice | Tregear, Hoskin | 26 Sept."
        assert found[3] == "3 | Wicks | Pascoe | at once"
