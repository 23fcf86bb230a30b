"""What its own signs show, whatever its lines look like by themselves: boxes, marks, quotation marks, order, bold type."""

from __future__ import annotations

import pytest
from test_document_torn_lines import shape

from fit.document.blocks import Block, Kind
from fit.document.text import read_text
from fit.document.text.signs.code import code

BEFORE = "The second keeper reads these lines in the evening before he goes up the stair to the lamp.\n"
AFTER = (
    "\nThe third keeper reads them at dawn, when the lamp has been put out and the oil has been weighed.\n"
)


def blocks(text: str) -> list[Block]:
    return list(read_text(f"{BEFORE}\n{text}{AFTER}", "a document", "ascii").blocks[1:-1])


ROW = "    +-----------+------+=======+\n    | Lamp Oil  | Wick | Seal  |\n    +-----------+------+=======+\n"


@pytest.mark.parametrize("lead", ["", "A tin of stores has this in it, from the top:\n\n"])
def test_boxes_side_by_side_are_drawn_and_are_neither_a_title_nor_a_program(lead: str) -> None:
    assert blocks(lead + ROW)[-1].kind is Kind.PICTURE


def test_a_bar_between_the_words_in_a_frame_draws_nothing() -> None:
    edge = f"    +{'-' * 47}+\n"
    framed = f"{edge}    | Keepers of the Skerry Light | The Second Book |\n{edge}"
    assert blocks(framed)[-1].note == "box around text"


BESIDE = """\
    +---+---+
    |  Oil  |   Two tins; that is, some of the strokes within the box may
    +---+---+   be missing.
"""


def test_text_that_goes_on_beside_a_box_is_read_by_itself() -> None:
    drawn, text = blocks(BESIDE)
    assert (drawn.kind, text.kind) == (Kind.PICTURE, Kind.PARAGRAPH)
    assert [line.chars.strip() for line in drawn.lines] == ["+---+---+", "|  Oil  |", "+---+---+"]
    assert text.text.chars == "Two tins; that is, some of the strokes within the box may be missing."


def test_a_few_words_beside_a_box_stay_there() -> None:
    (drawn,) = blocks(
        BESIDE.replace("; that is, some of the strokes within the box may", ".")
        .replace("be missing.", "")
        .replace("   \n", "\n")
    )
    assert drawn.kind is Kind.PICTURE
    assert drawn.lines[1].chars.endswith("Two tins.")


ORDERED = """\
   AWL          BELL         CANDLE

   @anchor      @barrel      @bell
   @boat        @candle      @chain
   @davit       @fender      @horn
   @lamp        @oar         @oil
"""


def test_words_in_the_order_of_the_alphabet_have_no_head() -> None:
    (table,) = blocks(ORDERED)
    assert (table.kind, table.header_rows, len(table.rows)) == (Kind.TABLE, 0, 5)


def test_words_in_no_order_have_one() -> None:
    (table,) = blocks(ORDERED.replace("@bell", "@wick").replace("@boat", "@tin").replace("@oar", "@bell"))
    assert (table.kind, table.header_rows, len(table.rows)) == (Kind.TABLE, 1, 5)


CHANCE = """\
  Sets the greatest sum of money that may be spent on the oil of the lamp at
  dusk.  Spending more than this sum does not make the lamp burn any longer
  then.  Setting this sum to less than the price of a tin of oil at the shop
  keeps the lamp from being lit at all, and the keeper then has the chance
  of failing.
"""


def test_sentences_that_begin_at_one_column_by_chance_make_no_table() -> None:
    (text,) = blocks(CHANCE)
    assert text.kind is Kind.PARAGRAPH
    assert text.text.chars == " ".join(CHANCE.split())


def test_keys_with_a_full_stop_whose_texts_all_begin_at_one_column_are_keys() -> None:
    listed = "".join(
        f"  {key}.  {text}\n" for key, text in (("oils", "Weigh them at dusk."), ("lamp", "Light it then."))
    )
    assert all(block.kind is not Kind.PARAGRAPH for block in blocks(listed))


def test_a_mark_with_the_words_of_the_title_below_it_is_no_part_of_the_title() -> None:
    text = "\n".join(f"& {title}\n{title}\n\n  {BEFORE}" for title in ("OIL_WEIGHT", "LAMP", "@BELL"))
    found = [block.text.chars for block in blocks(text) if block.kind is Kind.HEADING]
    assert found == ["& OIL_WEIGHT", "OIL_WEIGHT", "& LAMP", "LAMP", "& @BELL", "@BELL"]


def test_a_title_in_capitals_goes_on_in_other_words() -> None:
    found = blocks(f"& THE LAMP OF THE\nSKERRY LIGHT\n\n  {BEFORE}")
    assert found[0].text.chars == "& THE LAMP OF THE SKERRY LIGHT"


QUOTED = """\
  :"oil": weight of the oil in the tin that stands below the stair, as it was weighed at dawn
                beside the lamp
  :"wicks-in-the-store": list of the wicks that are left for the winter
  :"horn": blasts of the horn in an hour
"""


def test_names_in_quotation_marks_are_keys_wherever_their_texts_begin() -> None:
    found = blocks(QUOTED)
    assert [block.label.chars for block in found] == [':"oil":', ':"wicks-in-the-store":', ':"horn":']
    assert found[0].text.chars == (
        "weight of the oil in the tin that stands below the stair, as it was weighed at dawn beside the lamp"
    )


def test_what_two_keepers_said_is_no_list_of_keys() -> None:
    found = blocks(QUOTED.replace('  :"horn": blasts of the horn in an hour\n', ""))
    assert not any(block.label.chars for block in found)


@pytest.mark.parametrize(
    "text",
    [
        "@echo 'The keeper alone may use this command; it'",
        "lamp|skerry-lamp|the lamp of the rock",
        "rm -f $(.TARGET)",
        "light $(LAMPS) $(HORNS)",
        "cd $ROCK",
        "{ 'keeper', 'lamp' }",
    ],
)
def test_commands_of_a_makefile_and_names_of_one_thing_are_code(text: str) -> None:
    assert code(text)


@pytest.mark.parametrize(
    "text",
    [
        "by the names in $(LAMPS)",
        "the price is $PRICE",
        "on|off|dim",
        "{ 'keeper lamp' for more of it }",
        "@keeper says 'Good night' to all",
    ],
)
def test_words_with_such_signs_are_none(text: str) -> None:
    assert not code(text)


JUSTIFIED = """\
The keeper of the rock  trims  the  lamp  at  dusk
and  winds  the  clock,  then goes down to look at
the landing of the seals, and writes the  hour  in
{last}
The  boat  of the year is kept in the shed by then
and the bell is rung in fog from dusk to dawn, for
there  is  nobody  else  to  ring it from the rock
in a winter night.
"""


@pytest.mark.parametrize(
    ("last", "count"),
    [
        ("the book of stores, if there was time.", 2),
        ("the book of the stores if there was the time then.", 1),
    ],
)
def test_a_line_short_of_the_margin_ends_a_justified_paragraph(last: str, count: int) -> None:
    before = JUSTIFIED.format(last="the book that lies on the table of  the  lamp  oil") + "\n"
    assert len(shape(before * 3 + JUSTIFIED.format(last=last))) == 3 + count


@pytest.mark.parametrize("below", [" NOTE\n", "(1) ", ""], ids=["key", "item", "text"])
def test_a_number_and_a_title_in_bold_are_a_title_over_whatever_begins_no_deeper(below: str) -> None:
    text = f"   \x1b[1m4.  The Lamp Room\x1b[0m\n{below or '   '}{BEFORE}"
    assert (blocks(text)[0].kind, blocks(text)[0].text.chars) == (Kind.HEADING, "4. The Lamp Room")


def test_a_number_and_a_title_in_bold_are_no_beginning_of_the_plain_text_right_below() -> None:
    told = "keeper: a man of few words, who writes down the hour of each lamp that he has lit."
    found = blocks(f"{BEFORE}\n   \x1b[1m4.  The Lamp Room\x1b[0m\n   {told}\n")[-2:]
    assert [(block.kind, block.text.chars) for block in found] == [
        (Kind.HEADING, "4. The Lamp Room"),
        (Kind.PARAGRAPH, told),
    ]


def test_an_item_in_bold_with_its_text_under_it_is_an_item() -> None:
    text = "".join(
        f"   \x1b[1m{place}.  The {name}\x1b[0m\n       {BEFORE}\n"
        for place, name in ((1, "Lamp"), (2, "Horn"))
    )
    assert [block.kind for block in blocks(text)][:1] == [Kind.ITEM]


NAMES = """\
  bell  boat_oar  boat_rope_length  fog  fog_bell_rate  gull_count_at_dawn  horn
  horn_blasts_in_fog  keeper  keeper_name  lamp_hour  lamp_oil_weight  landing
  oil_tins  relief_boat_day  rock_name  seal_count_at_the_landing  stair_steps
  tide_table  wick_length
"""


def test_names_of_a_program_filled_to_the_margin_are_one_list() -> None:
    (listed,) = blocks(NAMES)
    assert (listed.kind, listed.text.chars) == (Kind.PARAGRAPH, " ".join(NAMES.split()))


def test_names_with_room_for_the_next_stay_lines() -> None:
    found = blocks(NAMES.replace("  seal_count_at_the_landing  stair_steps", ""))
    assert not any(block.note == "names and nothing else" for block in found)


def test_a_frame_of_one_sign_all_around_has_no_joints() -> None:
    said = "NOTE: the oil of the lamp has a longer table of its own"
    edge, empty, told = "+" * (len(said) + 8), f"+++{' ' * (len(said) + 2)}+++", f"+++ {said} +++"
    found = blocks("".join(f"    {line}\n" for line in (edge, empty, told, empty, edge)))
    assert [(block.note, block.text.chars) for block in found] == [("box around text", said)]


def test_a_remark_behind_a_statement_shows_program_text_however_it_reads() -> None:
    assert code("RING; # the bell of the rock, in fog")
    assert not code("Ring; the bell of the rock is number #1")


@pytest.mark.parametrize(
    "line",
    [
        "dnl The lamp of the tower is lit by the keeper, and by no other.",
        'msgid "the lamp is lit"',
        'msgstr[0] ""',
    ],
)
def test_remarks_and_messages_of_a_program_begin_with_their_words(line: str) -> None:
    assert code(line)
    assert not code(line.replace("dnl", "denial").replace("msg", "msg "))


COUNTED = """\
    "blasts": # of blasts that the horn gives
    "bell": Whether the bell is rung
    "lamp": 1 to light the lamp, 0 to put it out
    "boat": "1" for a boat that is due and "0" for none
"""


def test_what_a_name_in_quotation_marks_stands_for_may_begin_with_a_figure() -> None:
    assert [block.label.chars for block in blocks(COUNTED) if block.kind is Kind.ITEM] == [
        '"blasts":',
        '"bell":',
        '"lamp":',
        '"boat":',
    ]


def test_settings_of_a_program_are_no_names_with_their_meaning() -> None:
    settings = '    "blasts": 12,\n    "bell": 4,\n    "lamp": 1,\n    "boat": "1"\n'
    assert not [block for block in blocks(settings) if block.kind is Kind.ITEM]


def test_centred_words_in_a_wide_frame_are_a_title_though_a_blank_in_them_is_wide() -> None:
    said = ["L A M P  B O O K   second edition", "for the use of all the keepers on", "The Skerry Light"]
    width = 64
    rows = [f"    |{text:^{width}}|" for line in said for text in ("", line)]
    edge = f"    +{'-' * width}+"
    found = blocks("\n".join([edge, *rows, f"    |{' ' * width}|", edge]) + "\n")
    assert [block.kind for block in found] == [Kind.HEADING, Kind.PREFORMATTED]
    assert [line.chars.strip() for line in found[1].lines if line.chars] == said[1:]


def test_words_in_a_frame_with_wide_blanks_that_are_not_centred_are_a_screen() -> None:
    said = [
        "Name      Tregear       F1   Help",
        "Watch     the second    F2   Find",
        "Lamp      lit           F3   Next",
    ]
    edge = f"    +{'-' * 44}+"
    rows = [f"    |  {line:<42}|" for line in said]
    assert not any(block.kind is Kind.HEADING for block in blocks("\n".join([edge, *rows, edge]) + "\n"))


def test_the_head_of_a_paper_in_a_frame_is_a_title_with_the_number_of_the_issue() -> None:
    said = "T H E   S K E R R Y   L O G                     No. 31   March"
    rows = [f" {'_' * 70}", f"|{' ' * 70}|", f"|{f'   {said}':<70}|", f"|{'_' * 70}|"]
    (block,) = blocks("\n".join(rows) + "\n")
    assert (block.kind, block.text.chars) == (Kind.HEADING, "T H E  S K E R R Y  L O G  No. 31 March")


def test_a_row_of_words_in_a_frame_is_a_menu() -> None:
    edge = f"    +{'-' * 50}+"
    (block,) = blocks(f"{edge}\n    |{'  Lamp        Horn        Boat':<50}|\n{edge}\n")
    assert block.kind is not Kind.HEADING


def test_arrows_that_point_up_and_down_are_labels_of_one_list() -> None:
    text = f"{BEFORE}\n  \u25a0  The last line has an arrow\n       \u25b2  if there is more above,\n       \u25bc  if there is more below.\n"
    found = blocks(text)[-3:]
    assert [(block.label.chars, block.kind) for block in found] == [
        (sign, Kind.ITEM) for sign in "\u25a0\u25b2\u25bc"
    ]


@pytest.mark.parametrize(
    "line",
    [
        '(setq lamp-heads \'("Lamp:" "Wick:" "Oil:"))',
        '(setq lamp-port "north") ;; The usual is "south" (25)',
        "(setq lamp-lit t)",
        "(defun light (lamp) (strike lamp))",
        '(add-lamp-hook \'dusk "south")',
        "(require 'lamp)",
        "(while (not (equal (lamp-now) last))",
        "(trim-all-wicks)",
        '\'("Lamp:" "Wick:")',
    ],
)
def test_forms_of_lisp_are_code(line: str) -> None:
    assert code(line)


@pytest.mark.parametrize(
    "line",
    [
        "(require the key)",
        "(fog-horn only)",
        "(lamp-oil)",
        "(see the lamp-room)",
        "(let us wait)",
        "('lamp' or 'horn')",
    ],
)
def test_remarks_in_brackets_are_no_forms_of_lisp(line: str) -> None:
    assert not code(line)


def test_settings_in_lisp_stay_lines() -> None:
    text = (
        "The keeper writes these lines, and the lamp has other heads:\n\n"
        '     (setq lamp-heads \'("Lamp:" "Wick:" "Oil:"))\n'
        '     (setq lamp-form "From: %s\\nDate: %s\\n\\n")\n'
    )
    lines = [line.chars for line in blocks(text)[-1].lines]
    assert [line[:16] for line in lines] == ["(setq lamp-heads", "(setq lamp-form "]
