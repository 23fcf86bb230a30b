"""Lists of keys with dashes before what they mean: keys that fill their column, long names, a title over the list."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

STORES = """\
Where it is
-----------

T/  - Tower
        lamp*.*    - Lamp of the tower
        oil.*      - Oil for the lamp
        wick*.*    - Wicks (cut), round wicks and flat wicks
        glass.*    - Glass for the lamp (thin)
        lanterns.* - Lanterns for the landing (thin glass)
        bell.h     - Bell rope
        log.*      - Log book
        slate.*    - Slate of the watch
        lens.*     - Cloth for the lens
"""


def read(text: str) -> list[Block]:
    return list(read_text(text, "stores", "ascii").blocks)


def test_a_list_below_its_title_is_one_table_whatever_its_longest_key() -> None:
    (table,) = (block for block in read(STORES) if block.kind is Kind.TABLE)
    assert [row[0].chars for row in table.rows] == [line.split()[0] for line in STORES.splitlines()[4:]]
    assert all(row[1].chars.startswith("- ") for row in table.rows)


def test_a_row_with_all_its_cells_is_no_title() -> None:
    text = "NORTH   lamp   - lit\n        bell   - rung\n        horn   - blown\n        glass  - wiped\n"
    (table,) = (block for block in read(text) if block.kind is Kind.TABLE)
    assert [cell.chars for cell in table.rows[0]] == ["NORTH", "lamp", "- lit"]


def test_a_name_that_begins_with_a_low_line_may_be_long_before_its_dash() -> None:
    names = ["_LIGHT_ON", "_ON_THE_LOWER_LANDING", "_TO_BE_SEEN_BY_ALL"]
    text = "".join(f"{name} - Set this where the lamp is lit for the boat.\n\n" for name in names)
    assert [block.label.chars for block in read(text)] == [f"{name} -" for name in names]


def test_a_call_in_a_call_is_program_text() -> None:
    text = (
        "   The keeper reads what the lamp says, in words that both of them\n"
        "   know and that stand in the log. For example, the call\n   lamp(lit)\n\n"
        "   , where lit is the hour, says when it was lit, and writes it into\n"
        "   the log of the tower. On the other hand, the call\n   set(oil, measure(tin))\n\n"
        "   keeps the oil that is left in the tin, but it says nothing of the\n   wick, and nothing is written.\n"
    )
    assert [block.lines[0].chars for block in read(text) if block.code] == [
        "lamp(lit)",
        "set(oil, measure(tin))",
    ]


def test_the_form_of_a_call_is_program_text_though_its_types_read_as_words() -> None:
    text = "   NONE trim(WICK, LAMP, ANY);\n\n          trim one wick of a lamp\n\n   WICK take(BOX);\n\n          take a wick\n"
    assert [block.lines[0].chars for block in read(text) if block.code] == [
        "NONE trim(WICK, LAMP, ANY);",
        "WICK take(BOX);",
    ]


HABIT = "".join(
    f"The keeper types this to see the {word} of the night:\n\n  show {word} --all | lines > {word}.txt\n\n"
    for word in ("log", "oil", "bell", "boats", "wind")
)


def test_commands_with_two_dashes_are_program_text() -> None:
    typed = "A call of the bell looks like this:\n\n  ring 'h/hour' 'o/oil' -- $log\n  ring --least=1 -- $log\n  ring\n\nThe bell is rung.\n"
    assert [len(block.lines) for block in read(HABIT + typed) if block.code][-1] == 3


def test_keys_with_dashes_inside_a_list_with_letters_are_no_program() -> None:
    fields = (
        "Each line of the log begins with the hour and goes on with these fields:\n\n  (a) the hour,\n  (b) one letter or more:\n"
        "      L -- lit\n      O -- out of oil\n      B -- bell rung\n      F -- fog\n      D -- dusk, and\n  (c) what was seen.\n\nThe log is kept in the tower.\n"
    )
    blocks = read(HABIT + fields)
    assert [block.label.chars for block in blocks if block.label.chars] == [
        "(a)",
        "(b)",
        *(f"{letter} --" for letter in "LOBFD"),
        "(c)",
    ]
