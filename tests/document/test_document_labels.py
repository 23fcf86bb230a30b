"""Labels whose text hangs right under its first word, or stands around them. Common practice, no source."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from test_document_listed import PROSE, shape

from fit.document.blocks import Kind
from fit.document.text import read_text

CENTRED = """\
Off     The lamp was put out.  This is told to the mainland if the keeper has
        set the flag.
On      The lamp was lit.  This is told to the mainland if the keeper has set
        the flag.
        The hour of the watch has passed and the keeper is to change the wick
Turn    of the lamp. This is told to the mainland if the keeper has set the
        flag for the wick.
        Nobody has seen the lamp from the boat that lies under the southern end
        of the rock for more than an hour, and the keeper is not to be found in
        the lamp room.  If this is told to the mainland, then the boat of the
--relay relief is sent out at once with
        a second keeper and two hands.
        The bell is rung by hand for as long as the fog stands over the rock and
Bell    the boat is out there without
        a light
"""


def test_the_label_of_a_text_stands_beside_its_middle() -> None:
    assert shape(PROSE + CENTRED)[3:] == [
        (
            "item: Turn The hour of the watch has passed and the keeper is to change the wick of the lamp. "
            "This is told to the mainland if the keeper has set the flag for the wick."
        ),
        (
            "item: --relay Nobody has seen the lamp from the boat that lies under the southern end of the rock "
            "for more than an hour, and the keeper is not to be found in the lamp room. If this is told to the "
            "mainland, then the boat of the relief is sent out at once with a second keeper and two hands."
        ),
        (
            "item: Bell The bell is rung by hand for as long as the fog stands over the rock and the boat is out "
            "there without a light"
        ),
    ]


@pytest.mark.parametrize(("turn", "found"), [("turn    ", True), ("the new ", False)])
def test_such_a_label_in_small_letters_is_a_word_with_a_gutter_behind_it(turn: str, found: bool) -> None:
    texts = shape(PROSE + CENTRED.replace("Turn    ", turn))
    assert any(text.startswith(f"item: {turn.strip()} The hour of the watch") for text in texts) is found


def test_a_word_before_a_line_of_verse_that_is_set_in_is_no_label() -> None:
    verse = """\
   Pull for the boat and pull for the goat,
      She stands at the stern and she looks at the rope;
   If she walks to the front we shall all of us float
      Far out where there is no hope.
"""
    _, block = read_text(PROSE + verse, "song", "ascii").blocks
    assert [line.chars.split()[0] for line in block.lines] == ["Pull", "She", "If", "Far"]


def test_a_label_goes_on_beside_its_text() -> None:
    text = """\
Lighted A lamp whose wick has been trimmed before dusk, and which, for as long
lamp    as it burns, is looked after by the keeper on watch. A lighted lamp may
        be moved by two hands, for example.
"""
    assert shape(PROSE + text)[1:] == [
        (
            "item: Lighted lamp A lamp whose wick has been trimmed before dusk, and which, for as long as it burns, "
            "is looked after by the keeper on watch. A lighted lamp may be moved by two hands, for example."
        )
    ]


def test_the_next_key_is_no_label_of_the_text_above_it() -> None:
    text = """\
  --no-lamp     leave out the lamp that is otherwise lit at dusk in every one
                of the rooms; it is useful for the counting of the oil cans
  --keep-the-oil do not count the oil, even where the cans are open.  The store
                will then be slow but correct
  --quiet       no messages but those about the fog
"""
    found = shape(PROSE + text)
    assert sum("--keep-the-oil do not count the oil" in line for line in found) == 1
    assert any(line.endswith("useful for the counting of the oil cans") for line in found)


NUMBERS = """\
   12 The clock is late. Enter what is missing at the head of the page, with
      its sign.
   31 An hour is earlier than the one above it. It is past midnight and you
      have not changed the date.
   40 The pen has no ink.
   99 Nobody knows. Write down everything that can be seen from the gallery
      and go to bed.
"""


def test_texts_hang_behind_numbers_that_rise() -> None:
    found = shape(PROSE + NUMBERS)[1:]
    assert [line.split()[:2] for line in found] == [["item:", number] for number in ("12", "31", "40", "99")]
    assert found[2] == "item: 40 The pen has no ink."


def test_numbers_of_paragraphs_that_hang_and_fall_are_no_labels() -> None:
    """They stand in sentences."""
    text = NUMBERS.replace("12 The", "97 The").replace("40 The", "98 The")
    assert not any(line.startswith(("item: 97", "item: 98")) for line in shape(PROSE + text))


def test_text_hangs_under_its_first_word() -> None:
    text = """\
     The flags of the lamp:
        0x00010000: Use the spare wick to read the level of the oil in the
                    lower store and the can. If this flag is set the lamp
                    is lit late.

        0x00040000: Read 16 cans of the store instead of 96 cans
                    of raw oil that nobody has counted.

        0x00080000: See the drill.

     Note: The lamp must be out before the oil is
           poured.
"""
    assert shape(PROSE + text)[2:] == [
        (
            "item: 0x00010000: Use the spare wick to read the level of the oil in the lower store and the can. "
            "If this flag is set the lamp is lit late."
        ),
        "item: 0x00040000: Read 16 cans of the store instead of 96 cans of raw oil that nobody has counted.",
        "item: 0x00080000: See the drill.",
        "item: Note: The lamp must be out before the oil is poured.",
    ]


def test_verse_below_a_word_and_a_colon_stays_verse() -> None:
    text = """\
Chorus: And round, and round, and round it goes,
        And nobody has seen
        The man who every evening knows
        How dark it might have been.
"""
    assert len(shape(text)) == 1


OUTER = """\
{0}.  Before the winter

    {2}.  The lamp has to be looked at from the boat with a telescope, and then from
        the inside.

    {3}.  The cellar must be cleared.

{1}.  After the winter

    {2}.  Taps.

    {3}.  Floors.

"""


@pytest.mark.parametrize("labels", ["12ab", "AB12", ("I", "II", "A", "B")])
def test_an_item_with_a_few_words_over_a_list_of_its_own_is_no_title(labels: Sequence[str]) -> None:
    found = read_text(PROSE + OUTER.format(*labels) + PROSE, "drill", "ascii").blocks
    items = [(block.label.chars[:-1], block.level) for block in found if block.kind is Kind.ITEM]
    first, second, one, two = labels
    assert items == [(first, 0), (one, 1), (two, 1), (second, 0), (one, 1), (two, 1)]


def test_a_title_over_a_list_and_the_next_one_over_a_text_stay_titles() -> None:
    text = OUTER.format(*"12ab").replace("    a.  Taps.\n\n    b.  Floors.\n\n", "")
    found = read_text(PROSE + text + PROSE, "drill", "ascii").blocks
    assert [block.text.chars for block in found if block.kind is Kind.HEADING] == [
        "1. Before the winter",
        "2. After the winter",
    ]


def test_bullets_below_a_number_and_a_few_words_leave_them_a_title() -> None:
    text = OUTER.format(*"12--").replace("-.", "- ")
    found = read_text(PROSE + text + PROSE, "drill", "ascii").blocks
    assert [block.kind for block in found].count(Kind.HEADING) == 2


def test_a_label_that_begins_a_line_in_each_entry() -> None:
    """The sentence above it may fill its line: the label still begins what is to be done."""
    text = (
        "L1   No light\n     The wick is wet, or the tank is empty, or nobody lit the lamp.\n"
        "     Action: Look into the tank.\n\n"
        "L2   No horn\n     There is no steam.\n     Action: Light the fire below the boiler.\n\n"
        "L3   No boat\n     The sea is too high, and it will come on another day of the week.\n"
        "     Action: Wait, and write it down in the log.\n"
    )
    texts = [block.text.chars for block in read_text(text, "faults", "ascii").blocks]
    assert [text for text in texts if text.startswith("Action:")] == [
        "Action: Look into the tank.",
        "Action: Light the fire below the boiler.",
        "Action: Wait, and write it down in the log.",
    ]
    once = text.replace("Action: Look", "Then: Look").replace("Action: Light", "Then: Light")
    first = " ".join(block.text.chars for block in read_text(once, "faults", "ascii").blocks)
    assert "lamp. Then: Look into the tank." in first


@pytest.mark.parametrize(("times", "alone"), [(12, 13), (2, 0)], ids=["one of many", "one of few"])
def test_a_label_below_a_line_with_another_end(times: int, alone: int) -> None:
    """It stays on its own line in each entry, where one line above it in many ends as no sentence does."""
    text = "".join(
        f"-{chr(97 + number)}   Lights the lamp of the landing with that number, and writes it down in\n"
        f"     the log of the rock as well.  This is what the keeper does at dusk every day.\n"
        f"     Name in the log: Landing{number}\n\n"
        for number in range(times)
    )
    text += (
        "-z   Lights all lamps, and writes into the log which of them the keeper lit ;)\n"
        "     Name in the log: Landings\n\n"
    )
    texts = [block.text.chars for block in read_text(text, "lamps", "ascii").blocks]
    assert sum(text.startswith("Name in the log:") for text in texts) == alone
