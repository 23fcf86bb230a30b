"""What is drawn and what only looks so: bars around a name, strokes inside quotation marks, comments of programs."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

BEFORE = "The second keeper reads these lines in the evening before he goes up the stair to the lamp.\n\n"


def kinds(text: str) -> list[Kind]:
    return [block.kind for block in read_text(BEFORE + text, "a document", "ascii").blocks[1:]]


def pictures(text: str) -> list[Block]:
    return [
        block
        for block in read_text(BEFORE + text, "a document", "ascii").blocks
        if block.kind is Kind.PICTURE
    ]


NAMED = """\
|<number of wicks>|
    Eight bits that say how many wicks are in store on the rock. It may be
    zero.

|lamp (0/1)|
    Whether the lamp was lit at dusk, as the second keeper wrote it in the
    book.

|horn (8 bit)|
    The blasts of the horn an hour, in fog and in snow, counted by the
    third keeper.
"""
SETTINGS = r"""
    define-book stores
    with define-page wicks
            suf "\\.wicks$"
            note "^\\s*/\\?--"
            notes "^\\s*/\\?--\\s+/\\?\\s*$"
    end-with
"""
COMMENT = """\
;The keeper writes one line a watch. Example:
;
;      stores
;      ======
;      wicks, fourteen of them,
;      oil in two cans
;
;If the book is wet it looks awful | so dry it over the stove before you
;write the next line in it.
"""
BOXES = [
    " ________\n|  lamp  |\n|________|\n    |\n|  horn  |\n|________|\n",
    ".--------.\n| lamp   |\n'--------'\n    |\n.--------.\n| horn   |\n'--------'\n",
]


def test_names_between_bars_over_what_they_mean_are_terms() -> None:
    blocks = read_text(BEFORE + NAMED, "a document", "ascii").blocks[1:]
    assert [block.kind for block in blocks] == [Kind.ITEM] * 3
    assert blocks[1].label.chars == "|lamp (0/1)|"
    assert blocks[0].text.chars.endswith("It may be zero.")


@pytest.mark.parametrize("text", BOXES)
def test_bars_that_are_sides_draw_a_box(text: str) -> None:
    assert len(pictures(text)) == 1
    assert kinds(text) == [Kind.PICTURE]


def test_strokes_inside_quotation_marks_draw_nothing() -> None:
    blocks = read_text(BEFORE + SETTINGS, "a document", "ascii").blocks[1:]
    assert [block.kind for block in blocks] == [Kind.PREFORMATTED]
    assert len(blocks[0].lines) == 6


def test_lines_that_all_begin_with_a_semicolon_are_one_comment() -> None:
    blocks = read_text(BEFORE + COMMENT, "a document", "ascii").blocks[1:]
    assert [(block.kind, block.code, len(block.lines)) for block in blocks] == [(Kind.PREFORMATTED, True, 9)]


def test_two_lines_with_a_semicolon_are_no_comment() -> None:
    text = "; the lamp was lit at dusk and it burned until the second keeper came up\n; at four\n"
    assert not any(
        block.note.startswith("comment") for block in read_text(BEFORE + text, "a document", "ascii").blocks
    )


def test_a_drawing_goes_on_below_a_blank_line_under_a_parted_rule_with_strokes_over_it() -> None:
    cross = "      |\n      |\n------   ------\n\n      |\n      |  ++++++++\n      |  + lamp +\n      |  ++++++++\n"
    assert [len(block.lines) for block in pictures(cross)] == [8]


def test_a_parted_rule_of_a_table_is_no_part_of_the_drawing_below_it() -> None:
    table = "Stores    Number\nwicks     14\noil       60\n------    ------\n"
    drawing = "\n   |\n   |  ++++++++\n   |  + lamp +\n   |  ++++++++\n"
    assert all(block.lines[0].chars.strip() != "------    ------" for block in pictures(table + drawing))


BESIDE = """\
Skerry Lamp
===========                                             /\\_/\\
                                                       / 0 0 \\
The lamp is lit at dusk by the keeper of the          ====v====
first watch, who goes up the stair with the            \\  W  /
oil and the wicks, trims what has burnt down,          |     |     _
and writes the hour into the book when he has          / ___ \\    /
come down. The horn is sounded in the fog, and        / /   \\ \\  |
the bell is rung when a boat comes to the rock.      (((-----)))-'
"""


def test_a_drawing_beside_a_paragraph_stays_whole_below_it() -> None:
    blocks = read_text(BESIDE + "\n" + BEFORE, "a document", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.HEADING, Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]
    assert "dusk by the keeper of the first watch" in blocks[1].text.chars
    assert len(blocks[2].lines) == 8


def test_words_beside_a_paragraph_are_no_drawing() -> None:
    text = (
        BESIDE.replace("====v====", "the lamp")
        .replace("\\  W  /", "the horn")
        .replace("|     |     _", "bell")
    )
    assert Kind.PICTURE not in [
        block.kind for block in read_text(text.replace("0 0", "may be lit"), "a document", "ascii").blocks[:2]
    ]


SKETCHES = {
    "a chart over its axis": """\
      feet
      40 |              * * *
         |           *        *
      20 |        *              *
         |     *
      10 +--+-----+-----+-----+--
         6 am     8    10    noon
""",
    "a rose with a stick": """\
                    N
                    |       * = end of the shadow
              *     |     *      in the morning and
               \\    |    /       in the afternoon
       W - - - -\\---+---/- - - - E
                    O  stick
                    |
                    S
""",
    "labels over two sketches with strokes at the ends of lines": """\
       mouth up             mouth down

      \\         /             __/\\__
   ~~~~\\~~~~~~~/~~~~        /        \\
        \\__ __/          ~~/~~~~~~~~~~\\~~
           V              /    air     \\
""",
    "a name over the sign that a map begins with": """\
           North Cove
              o
               \\___
                   \\__o The Slip
                       \\
                        o Lamp House
""",
}


@pytest.mark.parametrize("name", SKETCHES)
def test_a_sketch_is_one_picture(name: str) -> None:
    prose = "The keeper has drawn what he saw from the lamp room, and it is\nshown here as it stood in his book:\n"
    text = f"{prose}\n{SKETCHES[name]}\nNobody knows what he meant by it.\n"
    _, picture, _ = read_text(text, "log", "ascii").blocks
    assert picture.kind is Kind.PICTURE
    left = min(len(line) - len(line.lstrip()) for line in SKETCHES[name].splitlines() if line)
    assert [line.chars for line in picture.lines] == [line[left:] for line in SKETCHES[name].splitlines()]


def test_a_table_with_bars_over_a_rule_is_no_chart() -> None:
    table = "Oil     | 40 | cans\nWicks   | 20 | boxes\nMatches | 10 | boxes\n--------+----+------\nAll     | 70 |\n"
    (block,) = read_text(table, "stores", "ascii").blocks
    assert block.kind is Kind.TABLE


MENUS = """\
┌─ Lamp ──────┬─ Horn ──────┬─ Book ──────┐
│ Light    F3 │ Sound       │ Open        │
│ Trim        │ Stop        │ Write       │
│ Douse    F5 │ Count       ├─────────────┤
├─────────────┤ Each hour   │ Close       │
│ Turn     F6 │             │ Dry         │
└─────────────┴─────────────┴─────────────┘
"""
NAMED_COLUMNS = """\
┌─ Lamp ──────┬─ Horn ──────┬─ Book ──────┐
│ lit at dusk │ silent      │ written     │
├─────────────┼─────────────┼─────────────┤
│ lit in fog  │ sounded     │ wet         │
├─────────────┼─────────────┼─────────────┤
│ trimmed     │ mended      │ dried       │
└─────────────┴─────────────┴─────────────┘
"""
DOUBLE = """\
╒═════════╤══════════╕
│ Watch   │ Keeper   │
╞═════════╪══════════╡
│ first   │ Second   │
├─────────┼──────────┤
│ middle  │ Third    │
╘═════════╧══════════╛
"""


def test_menus_side_by_side_are_one_picture() -> None:
    assert [len(block.lines) for block in pictures(MENUS)] == [7]


def test_names_in_the_border_of_whole_rows_draw_nothing() -> None:
    assert Kind.TABLE in kinds(NAMED_COLUMNS)


def test_a_frame_of_double_lines_goes_with_the_rules_of_its_table() -> None:
    assert kinds(DOUBLE) == [Kind.TABLE]


def test_a_sign_twice_above_a_drawing_is_a_part_of_it() -> None:
    """The two ends of a wire over the line that a switch closes: no item of a list, though words stand beside them."""
    drawing = [
        "              o  o  switch (in the house)",
        "      +------/ ---------+----------+",
        "      |                 |          |",
        "     ===  12 V        bell       button",
        "      |                 |          |",
        "      +-----------------+----------+",
    ]
    text = "\n".join(
        ["The bell is wired as shown.", "", *drawing, "", "If it does not ring, look for the goat.", ""]
    )
    blocks = read_text(text, "a bell", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]
    assert len(blocks[1].lines) == len(drawing)


def test_the_name_of_a_figure_heads_no_text() -> None:
    """It goes with what is drawn above it, and is no title of what follows."""
    drawing = ["+-----+-----+", "| RDY | ERR |", "+-----+-----+"]
    text = "\n".join(
        ["The box has two bits.", "", *drawing, "", "     Figure 1: The First Byte", "", "Read it first.", ""]
    )
    kinds = [block.kind for block in read_text(text, "a box", "ascii").blocks]
    assert Kind.HEADING not in kinds


CHARTS = """\
   of the oil:              of the wicks:            of the matches:

       |      | |                       |
       |     |||| |                   |||||                    |||||
       |    ||||| |                  ||||||                   ||||||
   ||  | || ||||| || |      ||   |||||||||||||         |  |||||||||||||

   22105122134545042121     22111222234454422211     11211222234444422211
"""
STORE = """\
             ______
   oil ---> | tank |
            |______|
               |
               V
"""


def _blocks(text: str) -> list[tuple[Kind, int]]:
    return [
        (block.kind, len(block.lines))
        for block in read_text(BEFORE + text + "\n" + BEFORE, "a document", "ascii").blocks[1:-1]
    ]


def test_labels_over_and_under_the_parts_of_a_drawing_stay_with_it() -> None:
    assert _blocks(CHARTS) == [(Kind.PICTURE, 8)]
    fewer = CHARTS.replace("of the matches:", "").replace("     11211222234444422211", "")
    assert (Kind.PICTURE, 4) in _blocks(fewer)


def test_what_the_last_arrow_points_at_belongs_to_the_drawing() -> None:
    assert _blocks(STORE + "             lamp\n") == [(Kind.PICTURE, 6)]
    assert (Kind.PICTURE, 5) in _blocks(STORE + "\n             lamp\n")
    assert (Kind.PICTURE, 5) in _blocks(STORE + "The tank is filled in spring.\n")


def test_the_options_of_a_command_draw_nothing() -> None:
    form = "lamp [-s] [-k] [-i] [-q] [-r] [-d*] [-p#]\n     [-c] [-j]\n     [-m]\n     [-a]\n"
    text = "".join(f"          {line}\n" for line in form.splitlines())
    assert kinds(f"Form:\n{text}\n{BEFORE}")[1] is Kind.PREFORMATTED


def test_a_box_below_the_ends_of_strokes_is_a_part_of_the_drawing() -> None:
    drawing = """\
   +-------------+        +-------------+
   |  LAMP ROOM  +------->|  OIL STORE  |
   +------+------+        +------+------+
          |                      |
          v                      v
   +------+----------------------+------+
   |           the  landing             |
   +------------------------------------+
"""
    assert len(pictures(BEFORE + drawing)) == 1
    assert len(pictures(BEFORE + drawing)[0].lines) == 8


def test_a_box_below_text_is_text() -> None:
    box = "   +--------------------+\n   |    The landing     |\n   +--------------------+\n"
    assert pictures(f"{BEFORE}The keeper sees V\n{box}") == []


def test_the_name_of_a_part_below_the_lowest_stroke_belongs_to_the_drawing() -> None:
    bell = "       +--------+\n       | canons |\n      /----------\\\n     /            \\\n    +--------------+\n"
    (drawn,) = pictures(f"{BEFORE}{bell}        clapper\n\nThe clapper is oiled.\n")
    assert drawn.lines[-1].chars.strip() == "clapper"
    (drawn,) = pictures(f"{BEFORE}{bell}as the keepers call it.\n\nThe clapper is oiled.\n")
    assert len(drawn.lines) == 5


ROCK = """\
                                  Lamp 41
                                    /^\\
                       Gallery     /   \\
                         ___/#####/     \\
           Store        /   (stair)      \\
            ___________/                  \\
   Landing /                               \\
     _____/                                 \\
"""


def test_strokes_aslant_at_line_ends_draw_a_slope_and_continue_nothing() -> None:
    [picture] = pictures(ROCK)
    assert len(picture.lines) == ROCK.count("\n")


def test_lines_of_a_command_that_signs_at_their_ends_continue_are_program_text() -> None:
    text = "    lamp --light \\\n        --oil 3 \\\n        --wick /store/wick \\\n        --watch north\n"
    assert pictures(text) == []


PLAN = """\
     ┌────────┐      ┌────────┐
     │ store  ├──────┤ lamp   │
     └───┬────┘      └───┬────┘
     ════╧═══════╦═══════╧══════
                 ║  to the landing and the water tank
"""


def test_words_beside_a_stroke_under_a_drawing_are_its_last_line() -> None:
    [picture] = [
        block for block in read_text(BEFORE + PLAN, "a plan", "utf-8").blocks if block.kind is Kind.PICTURE
    ]
    assert len(picture.lines) == PLAN.count("\n")


TREE = """\
   rock
     |
     |----> lamp    -- what the keepers light at dusk
     |----> store   -- what they take from the boat
     |        |
     |        |----> oil -- in cans
     |----> bell    -- what they ring when there is fog
     |----> log     -- what they write into the book
"""


def test_the_branches_of_a_tree_are_one_drawing() -> None:
    [picture] = pictures(TREE)
    assert len(picture.lines) == TREE.count("\n")


PATH = """\
         N
         ^                 Lamp
         |                  o
                           /
       Store o===stairs===/
                \\             . . . winch
                 \\__ Tank o
                       /
       Landing o______/
"""


def test_a_path_of_double_strokes_is_drawn_as_one_of_single_ones() -> None:
    [picture] = pictures(PATH)
    assert len(picture.lines) == PATH.count("\n")


CHART = """\
Here is the chart of the rocks as the second keeper drew it:

   1AB----
  |..O.O..|
  2.......3
  |.......|
  4.......5
  |....O..|
  |.......|
   17--AB-

He draws it anew after every storm, and the third keeper copies it.
"""


def test_a_floor_of_dots_between_walls_is_drawn_and_keeps_its_dots() -> None:
    drawn = pictures(CHART)[0]
    assert [line.chars.strip() for line in drawn.lines] == [line.strip() for line in CHART.splitlines()[2:10]]


@pytest.mark.parametrize("rows", [("Lamp......12", "Horn......14"), ("2.......3", "4.......5")])
def test_dots_that_lead_from_a_word_to_a_page_are_no_floor(rows: tuple[str, str]) -> None:
    assert kinds("\n".join(rows) + "\n") == [Kind.ITEM, Kind.ITEM]


def test_a_stroke_between_two_words_draws_nothing() -> None:
    text = (
        "+-------+\n| Lamps |\n+-------+\n\nlamp(1)/lamp(2)/bell(3) bits\n----------------------------\n"
        "0-3  wick / oil rate\n4    clock\n5    clock off / lamp on\n"
    )
    assert not any("wick" in line.chars for block in pictures(text) for line in block.lines)


def test_an_empty_box_with_words_beside_it_is_drawn_and_no_table() -> None:
    rows = [
        "     7 6 5 4 3 2 1 0     Of what",
        "    +---------------+",
        " 0  |               |    The number of the watch",
        "    +---------------+",
        " 1  |               |    The hour",
        "    +---------------+",
    ]
    (drawn,) = pictures("\n".join(rows) + "\n\nIt is all.\n")
    assert [line.chars for line in drawn.lines] == [row[1:] for row in rows]
    filled = [row.replace("|               |", "| oil   | wick  |") for row in rows[1:]]
    assert not pictures("\n".join(filled) + "\n\nIt is all.\n")


def test_the_top_of_a_curve_is_drawn_and_words_beside_it_belong_to_it() -> None:
    swell = r"""
               B
              *
                            * a bell
        __-x--_
     _--       -_
 A  _-           -          A slow, bar-born swell.
   /              \
                   -        It goes from A to C.
                    \
                     \  C
                      #
"""
    (drawn,) = pictures(swell + "\n" + BEFORE)
    rows = swell.strip("\n").split("\n")
    assert [line.chars for line in drawn.lines] == [row[1:] for row in rows]


def test_an_arrow_behind_the_end_of_a_sentence_draws_nothing_by_itself() -> None:
    text = (
        "   lamp  0, oil 20, after the first call! -->\n"
        "   lamp 50, oil  4, after the second call! -->\n"
        "   lamp 58, oil  4\n"
    )
    assert _blocks(text) == [(Kind.PREFORMATTED, 3)]


def test_strokes_of_a_pattern_that_is_added_to_a_setting_are_no_drawing() -> None:
    text = "The keeper leaves out two logs:\n\n   log-name += !/\\/\\.old/\n   log-name += !/\\/\\.tmp$\\//\n\nHe reads all others.\n"
    assert not any(block.kind is Kind.PICTURE for block in read_text(text, "a book", "ascii").blocks)


def test_a_title_between_two_rules_is_no_part_of_the_drawings_above_and_below_it() -> None:
    rule = "  " + "\u2550" * 60
    box = "     \u2554\u2550\u2550 LAMP \u2550\u2550\u2557\n     \u2551 trimmed  \u2551\n     \u255a\u2550\u2550\u2550\u2550\u2550\u2550\u2550\u2550\u2550\u2550\u255d\n"
    text = f"{BEFORE}{box}\n{rule}\n                     THE LAMP ROOM\n{rule}\n\n{box}"
    first, title, last = read_text(text, "log", "utf-8").blocks[1:]
    assert [block.kind for block in (first, title, last)] == [Kind.PICTURE, Kind.HEADING, Kind.PICTURE]
    assert title.text.chars == "THE LAMP ROOM"
    assert len(first.lines) == len(last.lines) == 3
