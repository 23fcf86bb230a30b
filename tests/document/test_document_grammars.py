"""Rules of a grammar, with remarks behind a `;` or with `::=`: they keep their lines, and so do rules beside the former."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = """\
The log of the station is written in lines of one form, which is shown
here so that a keeper who has lost the slate can draw it anew by himself
and send it to the shore with the next boat that comes to the landing.

"""
GRAMMAR = """\
   log-entry =           hour SP "=" weather *( SP signal )
                         [ remark CRLF ]

   hour =                2DIGIT
                         ; the full hour before the
                         ; entry was made

   ; parts of the weather, see the sheet in the store
   weather =             wind / sea / fog
                         ;typically "fog", "swell", or
                         ;"gale"

   wind =                1*DIGIT
"""


def blocks(text: str) -> list[Block]:
    """What stands below the running text."""
    return list(read_text(PROSE + text, "log", "ascii").blocks[1:])


def test_a_rule_keeps_its_lines_with_its_remarks() -> None:
    found = blocks(GRAMMAR)
    assert all(block.kind is Kind.PREFORMATTED and block.code for block in found)
    assert [line.chars for block in found for line in block.lines] == [
        line for line in (one.removeprefix("   ") for one in GRAMMAR.splitlines()) if line
    ]


def test_names_that_are_set_to_words_are_no_grammar() -> None:
    text = (
        "   lamp =                the one in the tower\n"
        "                         ; and no other\n\n"
        "   bell =                the one at the landing\n"
    )
    assert not any(block.code and "lamp =" in line.chars for block in blocks(text) for line in block.lines)


def test_program_text_above_a_name_that_is_set_is_no_grammar() -> None:
    text = (
        "        .wick 23        ; as it is\n        .oil -23        ; less than that\n\n"
        "; the first lamp\n        lda #-3         ; by hand\nnum     = -3\n        lda #+num       ; by its name\n\n"
        "        lda #((lamp >> 10) & $0f)\n        sta $d018\n"
    )
    assert [block.code for block in blocks(text)] == [True]


def test_rules_that_show_what_a_name_stands_for() -> None:
    text = (
        "\tHOUR    ::= '\\000' .. '\\027'\n\tNIGHT   ::= | HOUR+\n\t            | HOUR+ FOG WATCH*\n\n"
        '\tWATCH   ::= any keeper of the rock\n\n<lamp> ::= <oil> | "dark"\n'
    )
    found = blocks(text)
    assert all(block.kind is Kind.PREFORMATTED and block.code for block in found)
    assert [" ".join(line.chars.split()) for block in found for line in block.lines if line.chars] == [
        " ".join(line.split()) for line in text.splitlines() if line
    ]


def test_a_sentence_with_the_sign_of_such_a_rule_is_none() -> None:
    text = "The sign in the rules is\n::= and it says that what stands left of it is\nwritten as what stands right of it.\n"
    assert [block.kind for block in blocks(text)] == [Kind.PARAGRAPH]


def test_bars_before_what_a_name_may_stand_for_rule_no_table() -> None:
    text = (
        "        watch_order_item ::= light_declaration\n             | light_body\n"
        "             | null_light_declaration\n             | oil_function_declaration\n"
        "             | bell_body\n             | fog_clause\n"
    )
    (block,) = blocks(f"{text}\nA rule ends there, and the keeper reads on.\n")[:-1]
    assert [line.chars for line in block.lines] == [line[8:] for line in text.splitlines()]


RULES = """\
      entry ::= hour weather remark?           one line of the log

               |  hour "none"                  nothing was
seen
    weather ::= wind | sea

       hour ::= digit digit
"""


def test_rules_with_their_signs_at_one_column_are_one_piece_over_blank_lines() -> None:
    (block,) = blocks(RULES)
    assert block.code
    assert [line.chars.strip() for line in block.lines] == [line.strip() for line in RULES.splitlines()]


def test_a_sentence_below_the_last_rule_is_no_part_of_it() -> None:
    text = "    entry ::= hour weather\n\n    hour  ::= digit digit\n    watch ::= hour hour\nThe keeper draws this on the slate.\n"
    found = blocks(text)
    assert [block.kind for block in found] == [Kind.PREFORMATTED, Kind.PARAGRAPH]
