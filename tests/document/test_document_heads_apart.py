"""Heads that a blank line parts from their table, rows whose cells have lines of their own, and what each side does."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

SCENARIO = """\
   The keeper at the rock, R, signals to the shore station, S.  The
   signals sent are marked by an arrow to the right.

      WHAT THE KEEPER DOES                WHAT IS SENT

      light (lamp) rock<CR>          Burn on all four wicks,
                                     with the shutter wide open.
                                     <---- 220 Lamp is seen <END>.
      name Rowan <CR>                NAME Rowan<END>---->
                                     <---- 331 Name is right,
                                               send the watch<END>.
      watch dog <CR>                 WATCH dog<END>---->
                                     <---- 230 Watch is noted<END>.
      order (kind of ship) steam <CR>
      (number of casks) four <CR>    The keeper opens the store book.
      (what is in them) oil <CR>     ORDER four oil<END> ---->
                                     <---- 150 Order is in hand;
                                           about to send the boat
                                           on Friday<END>.
"""


def test_two_columns_of_what_is_done_with_answers_below_are_a_table() -> None:
    blocks = read_text(SCENARIO, "signals", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.TABLE]
    assert rows_of(blocks) == [
        "WHAT THE KEEPER DOES = WHAT IS SENT",
        "light (lamp) rock<CR> | Burn on all four wicks, with the shutter wide open.",
        " | <---- 220 Lamp is seen <END>.",
        "name Rowan <CR> | NAME Rowan<END>---->",
        " | <---- 331 Name is right, send the watch<END>.",
        "watch dog <CR> | WATCH dog<END>---->",
        " | <---- 230 Watch is noted<END>.",
        "order (kind of ship) steam <CR> | ",
        "(number of casks) four <CR> | The keeper opens the store book.",
        "(what is in them) oil <CR> | ORDER four oil<END> ---->",
        " | <---- 150 Order is in hand; about to send the boat on Friday<END>.",
    ]


def test_arrows_between_two_posts_are_a_drawing() -> None:
    drawing = """\
      Rock                 Shore
       |---- 10 LIGHT ------>|
       |<--- 20 SEEN --------|
       |---- 30 ORDER ------>|
"""
    assert [block.kind for block in read_text(drawing, "signals", "ascii").blocks] == [Kind.PICTURE]


def test_lines_of_a_cell_with_fields_one_below_the_other_stay_lines() -> None:
    table = """\
    +---------+---------------------------------------+
    | Asked   | LAMP=main, WATCH=all                  |
    +---------+---------------------------------------+
    | Answer  | main.tower.  8640 AT  LAMP   burning  |
    |         |              8640 AT  HORN   silent   |
    +---------+---------------------------------------+
    | Beside  | house.yard.  1728 AT  BELL   wound up |
    |         |              1728 AT  LAMP   dark     |
    +---------+---------------------------------------+
"""
    assert rows_of(read_text(table, "answers", "ascii").blocks)[1:] == [
        "Answer | main.tower. 8640 AT LAMP burning\n8640 AT HORN silent",
        "Beside | house.yard. 1728 AT BELL wound up\n1728 AT LAMP dark",
    ]


def test_justified_text_in_a_cell_flows() -> None:
    table = """\
    +---------+----------------------------------+
    | Lamp    | It  is lit  at dusk  and put out |
    |         | at  dawn by the  keeper who  has |
    |         | the last watch.                  |
    +---------+----------------------------------+
    | Horn    | It is blown in fog.              |
    +---------+----------------------------------+
"""
    assert rows_of(read_text(table, "rules", "ascii").blocks)[0] == (
        "Lamp | It is lit at dusk and put out at dawn by the keeper who has the last watch."
    )


def test_names_over_several_columns_each_with_a_rule_under_them() -> None:
    table = """\
   Keys of the board:

             Lamp and Shutter             Horn
             _________________________    __________

           L or 1         T U R              H or 4
           D or 2         O P N              J or 5
           S or 3         C L S              K or 6
"""
    assert rows_of(read_text(table, "keys", "ascii").blocks) == [
        "Lamp and Shutter = Lamp and Shutter = Horn",
        "L or 1 | T U R | H or 4",
        "D or 2 | O P N | J or 5",
        "S or 3 | C L S | K or 6",
    ]


def test_first_and_last_rows_whose_keys_of_several_words_fill_their_column() -> None:
    table = """\
                 Signs in the book
l .. d lit until dark       from 4 .. 9 it is l .. d
l[w]   lit in a watch       l[2] is the second
l.o    lit with oil         the lamp burns l.o
d in l dark while lit       never d in l
"""
    low = "$02, $00 pints in the cask\n$e0, $02 pints short\n$ff      lit\n$00, $00 dark\n"
    assert rows_of(read_text(low, "bytes", "ascii").blocks) == [
        "$02, $00 | pints in the cask",
        "$e0, $02 | pints short",
        "$ff | lit",
        "$00, $00 | dark",
    ]
    assert rows_of(read_text(table, "signs", "ascii").blocks) == [
        "l .. d | lit until dark | from 4 .. 9 it is l .. d",
        "l[w] | lit in a watch | l[2] is the second",
        "l.o | lit with oil | the lamp burns l.o",
        "d in l | dark while lit | never d in l",
    ]


def test_words_above_a_list_that_happen_to_fill_its_first_column_are_no_row() -> None:
    text = """\
Kept in the (cold) store room:
- Gannet oil       (two casks)
- Fulmar oil       (one cask)
- Seal oil         (no cask)
- Rape oil v2      (four casks)
"""
    found = read_text(text, "oils", "ascii").blocks
    assert found[0].text.chars == "Kept in the (cold) store room:"
    assert [block.kind for block in found[1:]] == [Kind.ITEM] * 4


def test_a_short_line_of_words_right_above_rows_is_none() -> None:
    text = """\
  the old lamp
  main lamp    lit at dusk     by the first watch
  yard lamp    lit at six      by the boy
  boat lamp    never lit       by nobody
"""
    assert (
        rows_of(read_text(text, "lamps", "ascii").blocks)[0] == "main lamp | lit at dusk | by the first watch"
    )


STORES = """\
     Thing              In hand    To be
                                   ordered

     wicks, flat          130        50
     wicks, round          12
     glass, spare                    24
     lamp oil, casks        3         1
       (both kinds)
"""


def test_a_head_of_two_lines_above_a_blank_line_names_the_keys_too() -> None:
    assert rows_of(read_text(STORES, "stores", "ascii").blocks) == [
        "Thing = In hand = To be ordered",
        "wicks, flat | 130 | 50",
        "wicks, round | 12 | ",
        "glass, spare |  | 24",
        "lamp oil, casks (both kinds) | 3 | 1",
    ]


def test_a_head_of_two_lines_that_are_columns_by_themselves() -> None:
    stores = STORES.replace("In hand    To be", "IN HAND    TO BE").replace(
        " " * 35 + "ordered", " " * 24 + "(casks)    ordered"
    )
    head = rows_of(read_text(stores, "stores", "ascii").blocks)[0]
    assert head == "Thing = IN HAND (casks) = TO BE ordered"


def test_two_lines_above_rows_that_blank_lines_part_are_a_row_of_them() -> None:
    parted = STORES.replace("12\n", "12\n\n").replace("50\n", "50\n\n").replace("24\n", "24\n\n")
    assert "Thing = In hand = To be ordered" not in rows_of(read_text(parted, "stores", "ascii").blocks)


def test_a_row_of_two_lines_with_figures_above_a_blank_line_is_no_head() -> None:
    row = STORES.replace("Thing ", "Soap 2")
    assert not any("=" in one for one in rows_of(read_text(row, "stores", "ascii").blocks))


def test_what_comes_again_below_the_blank_line_is_no_head() -> None:
    keepers = """\
       Rowan Skerry       Post:   rock/north/landing
       (the first)        Bell:   two-and-one

       Ailsa B. Rock      Post:   rock/house/tower
                          Bell:   three
"""
    assert rows_of(read_text(keepers, "keepers", "ascii").blocks)[:2] == [
        "Rowan Skerry | Post: | rock/north/landing",
        "(the first) | Bell: | two-and-one",
    ]


def test_names_over_a_rule_with_one_blank_between_begin_where_their_columns_do() -> None:
    text = (
        " Name of it Meaning of it\n---------------------------------------------------\n"
        " oil        What burns in the lamp of the rock\n wick       What draws the oil up\n"
        " shutter    What makes the lamp long or short\n"
    )
    found = rows_of(read_text(text, "stores", "ascii").blocks)
    assert found[:2] == ["Name of it = Meaning of it", "oil | What burns in the lamp of the rock"]


def test_a_title_with_its_own_rule_names_no_columns() -> None:
    text = (
        "The Stores of the rock\n----------------------\noil        What burns in the lamp of the rock\n"
        "wick       What draws the oil up\nshutter    What makes the lamp long or short\n"
    )
    assert not any(" = " in row for row in rows_of(read_text(text, "stores", "ascii").blocks))


def test_a_name_over_the_middle_of_the_texts_below_a_lead() -> None:
    text = (
        "   When the keeper gives a signal, these hold:\n   signalled from shore                 meaning\n"
        "   -L                  the lamp alone (no bell),\n   none                the lamp, and the bell when fog hides it,\n"
        "   -B                  the lamp, the bell and the horn together.\n"
    )
    found = rows_of(read_text(text, "signals", "ascii").blocks)
    assert found[:2] == ["signalled from shore = meaning", "-L | the lamp alone (no bell),"]


def test_names_apart_over_cells_in_the_middle_of_their_columns() -> None:
    cells = [
        ("A", "fog", "T", "K"),
        ("C", "ice", "G", "L"),
        ("T/U", "swell", "A", "M"),
        ("M", "fog or ice", "K", "5"),
        ("V", "fog or ice or swell", "B", "not noted"),
        ("H", "rain or ice or hail", "N", "not noted"),
        ("X/N", "fog or swell", "X", "-/X"),
    ]
    lines = [
        "".join(text.center(22) for text in row).rstrip()
        for row in [("Sign", "Meaning", "Answer", "Log"), *cells]
    ]
    lines.insert(1, "")
    found = rows_of(read_text("\n".join(lines), "signs", "ascii").blocks)
    assert found == ["Sign = Meaning = Answer = Log", *(" | ".join(row) for row in cells)]


def test_a_word_between_two_parts_of_a_cell_parts_no_columns() -> None:
    text = (
        "The keeper is paid for each boat that he sees first:\n\n"
        "  North boat:  20 pence\n  South boat:  50 pence\n  Mail boat:   100 pence  and  1 extra loaf\n"
    )
    assert rows_of(read_text(text, "pay", "ascii").blocks) == [
        "North boat: | 20 pence",
        "South boat: | 50 pence",
        "Mail boat: | 100 pence and 1 extra loaf",
    ] or "100 pence and 1 extra loaf" in [
        block.text.chars for block in read_text(text, "pay", "ascii").blocks
    ]


def test_marks_around_a_label_and_a_word_before_each_value_are_no_columns() -> None:
    text = (
        "*** lamp   , north  ***  12 hours (4 wicks)   Oil used:   1.5\n"
        "*** lamp   , south  ***  11 hours (2 wicks)   Oil used:   0.7\n"
        "*** bell   , quay   ***  14 hours (1 wick)    Oil used:  12.4\n"
        "*** horn   , quay   ***  10 hours (1 wick)    Oil used:   2.0\n"
    )
    assert rows_of(read_text(text, "oil", "ascii").blocks)[:2] == [
        "*** lamp , north *** | 12 hours (4 wicks) | Oil used: 1.5",
        "*** lamp , south *** | 11 hours (2 wicks) | Oil used: 0.7",
    ]
