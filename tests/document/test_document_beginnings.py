"""Lines that show by their beginning that they go on inside a bracket, or that they start something of their own."""

from __future__ import annotations

import pytest
from test_document_kept import shape

from fit.document.text import read_text

PROSE = """\
The keeper on watch trims the lamp at dusk and again at midnight, and he
writes both hours in the log book, so that the relief can see them there.
The boat comes out to the rock when the sea is calm enough for a landing.
The stores are carried up by two men, and the third one counts the boxes.
"""


@pytest.mark.parametrize(
    ("line", "rest"),
    [
        ('("#" is a lamp that is lit, "*" - one that is lit in fog alone, and', '"+" one on the shore)'),
        ('"The lamp goes out when the wind is north... what can be done by one of', "Skerry's keepers?\""),
        ("Set the bell to LOUD  (or if you do not want the boats to", "hear it at all, say OFF)"),
    ],
)
def test_a_line_inside_an_open_bracket_goes_on(line: str, rest: str) -> None:
    column = max(line.rfind("("), 0) + 1
    text = f"{PROSE}\n{line}\n{' ' * column}{rest}\n\n{PROSE}"
    assert f"paragraph: {' '.join(line.split())} {rest}" in shape(text)


def test_a_bracket_that_is_closed_left_of_where_it_was_opened() -> None:
    text = f"{PROSE}\n Then the keeper opens the door of the store (for one\n/lamp/oil), and he writes into the book what was left there by the\nrelief.\n\n{PROSE}"
    assert any("(for one /lamp/oil), and" in line for line in shape(text))


BRACKET = """\
- lamp_t light_lamp (oil_t  tin,
                     int    hours,
                     wick_t wick)

The lamp is lit with it.

- bell_t ring (int times,
               int hours)
- bell_t stop (int times)
"""


def test_what_stands_under_the_open_bracket_of_an_item_goes_on_up_to_where_it_closes() -> None:
    assert shape(f"{PROSE}\n{BRACKET}\n{PROSE}")[1:-1] == [
        "item: - lamp_t light_lamp (oil_t tin, int hours, wick_t wick)",
        "paragraph: The lamp is lit with it.",
        "item: - bell_t ring (int times, int hours)",
        "item: - bell_t stop (int times)",
    ]


def test_a_bracket_that_never_closes_holds_no_lines_of_the_item() -> None:
    found = shape(f"{PROSE}\n{BRACKET.replace('wick)', 'wick')}\n{PROSE}")
    assert "item: - lamp_t light_lamp (oil_t tin, int hours, wick_t wick" not in found


def test_words_behind_an_arrow_go_on() -> None:
    lines = [
        "Light the lamps (and put them out with the same words, NO first):",
        "  Lp = 1 0 7 0  -> use red glass (REDGLAS), from dusk for each",
        "landing, harbour.",
        "  Lp = 8 4 5 2  -> Bell rings left of the mast, tower and bridge,",
        "harbour.",
    ]
    text = "".join(f"          {line}\n" for line in lines)
    assert [line for line in shape(f"{PROSE}\n{text}\n{PROSE}") if "Lp =" in line] == [
        "paragraph: Lp = 1 0 7 0 -> use red glass (REDGLAS), from dusk for each landing, harbour.",
        "paragraph: Lp = 8 4 5 2 -> Bell rings left of the mast, tower and bridge, harbour.",
    ]


def test_a_closed_bracket_holds_nothing() -> None:
    text = f"{PROSE}\n(The first watch)\n Maren\n Tom\n\n{PROSE}"
    assert "paragraph: (The first watch) Maren Tom" not in shape(text)


def test_words_with_numbers_are_entries() -> None:
    text = f"{PROSE}\nBits 0-4 = oil left in the lamp (0 is allowed, 31 has a meaning)\nBits 5-7 = colour:\n"
    assert shape(text)[-2:] == [
        "paragraph: Bits 0-4 = oil left in the lamp (0 is allowed, 31 has a meaning)",
        "paragraph: Bits 5-7 = colour:",
    ]


def test_labels_in_capitals_start_paragraphs() -> None:
    text = (
        "Trimming the wick at dusk will give a white flame until the next watch.\n"
        "FOG: If there is fog, the lamp burns all day. As the log book says, the\n"
        "bell is then rung by hand, once a minute, until the fog has gone.\n"
        "DEEP FOG: If there is deep fog, the bell is rung twice a minute.\n"
    )
    assert [line[:24] for line in shape(PROSE + "\n" + text)[1:]] == [
        "paragraph: Trimming the ",
        "paragraph: FOG: If there",
        "paragraph: DEEP FOG: If ",
    ]
    alone = PROSE + "NOTE: The oil is kept below.\n"
    assert len(shape(alone)) == 1


def test_a_title_in_capitals_right_between_two_paragraphs() -> None:
    full = "The relief brings the letters and takes the old log book to the shore.\n"
    shown = shape(f"{PROSE}{full}STORES\n{PROSE}")
    assert [line.partition(": ")[0] for line in shown] == ["paragraph", "heading", "paragraph"]


def test_entries_with_a_tag_start_anew_over_a_page_end() -> None:
    page = PROSE + "\n[LOG7] describes the lamp that was lit here before, and how it was\nturned.\n\n"
    last = "[LOG8] describes the bell of the rock, the boats that can hear it too.\n"
    text = f"{page * 3}{last}\f[LOG9] describes the mast with the two black balls that are hoisted by\nday.\n"
    assert sum(line.startswith("paragraph: [LOG9]") for line in shape(text)) == 1


def test_commands_and_messages_stay_lines() -> None:
    ring = ['/ring -loud *!*fog@skerry.example -twice "/say $0 out" #lamp', "/ring -loud #bell East harbour"]
    assert shape(f"{PROSE}\n{ring[0]}\n{ring[1]}\n")[1] == f"preformatted: {ring[0]} / {ring[1]}"
    told = [
        "Setting the whole station to fog_It",
        "Looking for the lamp in /home/maren/skerry/share/lamps/north/fog_It/",
        "Looking for the bell in /home/maren/skerry/share/bells/north/fog_It/",
        "Guess 1 -- the lamp is lit",
        "Set the lamp to /home/maren/skerry/share/lamps/north/fog_It/",
        "Set the bell to /home/maren/skerry/share/bells/north/fog_It/",
        "Bound the mast to /home/maren/skerry/share/mast",
    ]
    assert " / ".join(told) in shape(f"{PROSE}\n" + "".join(f"   {line}\n" for line in told))[1]


@pytest.mark.parametrize("bullet", "\u25a1\u25c7\u25b8\u25ab\u2606\u2713")
def test_geometric_shapes_are_bullets(bullet: str) -> None:
    text = f"{PROSE}\n {bullet} the lamp, with all its glass and the clockwork that turns it round\n   and the weight\n {bullet} the bell\n"
    assert [line.partition(" ")[0] for line in shape(text)[1:]] == ["item:", "item:"]


def test_points_before_words_are_bullets_and_requests_to_a_formatter_are_none() -> None:
    text = f"The lamp is:\n . Bright\n . Old, with all its glass and the clockwork that turns it\n . Red\n\n{PROSE}"
    assert [line.partition(" ")[0] for line in shape(text)[1:4]] == ["item:", "item:", "item:"]
    text = text.replace("Bright", "bright and clean").replace("Old", "old").replace("Red", "red, mostly")
    assert [line.partition(" ")[0] for line in shape(text)[1:4]] == ["item:", "item:", "item:"]
    for requests in (". lamp is\n. bell is\n. mast is\n", ". lit=2\n. LR\n. BL\n"):
        kept = requests.strip().replace("\n", " / ")
        assert shape(f"{PROSE}\n{requests}")[1:] == [f"preformatted: {kept}"]


STEPS = """\
To wind the clock,
   Open the door of the case with the long key that hangs beside the
      North window.
   Turn the handle to the left, and count the turns.
   [Note: the weight may not reach the floor.]
   Close the door, and write the number of turns and the hour into the
      log book, where the relief can see them.
   Put the key back.
"""


def test_entries_end_where_a_sentence_does_if_what_does_not_fit_hangs_deeper() -> None:
    lines = [" ".join(line.split()) for line in STEPS.splitlines()]
    assert shape(f"{PROSE}\n{STEPS}\n{PROSE}")[1:-1] == [
        f"item: {' '.join(lines[:3])}",
        f"paragraph: {lines[3]}",
        f"paragraph: {lines[4]}",
        f"paragraph: {' '.join(lines[5:7])}",
        f"paragraph: {lines[7]}",
    ]


def test_a_deeper_line_below_a_full_one_is_its_rest_only_where_others_are() -> None:
    lines = [
        "The lamp is lit by the keeper on watch whenever the harbour says so",
        "Drill of the harbour office.",
    ]
    text = "\n   ".join(lines)
    assert shape(f"{PROSE}\n{text}\n\n{PROSE}")[1:-1] == [f"paragraph: {line}" for line in lines]


def test_rules_of_two_signs() -> None:
    text = f"=-=-=-=-=-=\nThe lamp\n=-=-=-=-=-=\n\n{PROSE}\n    STORES\n    -=-=-=\n\n{PROSE}"
    assert [line for line in shape(text) if line.startswith("heading")] == [
        "heading: The lamp",
        "heading: STORES",
    ]


def test_the_rest_of_the_name_in_a_copyright_notice() -> None:
    text = f'Copyright (C) 1987-1989 Keepers of the Lights of the North,\nLtd. ("KLN")\n\n{PROSE}'
    assert (
        shape(text)[0]
        == 'paragraph: Copyright (C) 1987-1989 Keepers of the Lights of the North, Ltd. ("KLN")'
    )


def test_numbers_that_no_blank_parts_from_their_items() -> None:
    text = f"{PROSE}\n1)Light the lamp\n2)Hit 'x' to ring the bell\n3)type the hour\n"
    assert [line.partition(":")[0] for line in shape(text)[1:]] == ["item"] * 3


@pytest.mark.parametrize(
    "line", ["V log/0210* LOG/D * 0 0", "[turns] wi[nd] [count] [lamps]", "! lamp(s)", "<control-W>"]
)
def test_what_a_program_writes_is_no_heading(line: str) -> None:
    assert not any(block.startswith("heading") for block in shape(f"{PROSE}\n{line}\n\n{PROSE}"))


def test_keys_of_a_keyboard_are_terms() -> None:
    text = f"{PROSE}\n<escape>\n     Stop the lamp and take what was typed into the log book.\n\n<line erase>\n     Erase the line.\n"
    assert [line.partition(":")[0] for line in shape(text)[1:]] == ["item", "item"]


def test_an_hour_under_an_hour_begins_an_entry() -> None:
    text = (
        "12/03 18:00 lamp lit, wind SW 4, sea moderate, one boat off the point\n"
        "      22:15 fog, horn started; heard twice by the boat which lay at the\n"
        "      buoy until morning\n"
    )
    assert (
        "paragraph: 22:15 fog, horn started; heard twice by the boat which lay at the buoy until morning"
        in shape(f"{PROSE}\n{text}\n{PROSE}")
    )


def test_an_hour_in_a_sentence_begins_none() -> None:
    text = "The lamp was lit in the evening, the horn was started and the boat was seen at\n12:15 near the buoy, where it lay until the morning.\n"
    assert len(shape(f"{PROSE}\n{text}\n{PROSE}")) == 3


def test_a_remark_in_brackets_that_a_word_with_a_colon_opens_goes_on() -> None:
    line, rest = "The lamp on the stairs is lit. (NOTE:", "not on Sundays.)"
    assert f"paragraph: {line} the one on the landing is {rest}" in shape(
        f"{PROSE}\n{line}\nthe one on the landing is {rest}\n\n{PROSE}"
    )
    shown = shape(f"{PROSE}\n{line}\nlamp -l 3\nlamp -o 4\n\n{PROSE}")
    assert f"paragraph: {line} lamp -l 3 lamp -o 4" not in shown


def test_orders_that_begin_alike_start_anew_though_the_line_was_full() -> None:
    text = (
        "In the evening:\n"
        "   Open the vent of the lantern if it is not open by six o'clock\n"
        "   Open the flue in the kitchen if no boat is out on the sea yet\n"
        "Go up and light the lamp; the second keeper waits below the stairs\n"
        "   (not in the kitchen, unless there is fog.)\n"
    )
    found = " / ".join(block.text.chars for block in read_text(text, "a book", "ascii").blocks)
    assert "clock / Open the flue" in found
    assert "sea yet / Go up" in found


def test_a_sentence_whose_lines_begin_alike_ends_with_its_stop() -> None:
    text = (
        "Skerry Light was built by two brothers who came over the sea to\n"
        "Skerry in a boat of their own, and it has been lit ever since then.\n"
    )
    assert len(read_text(text, "a book", "ascii").blocks) == 1


def test_names_with_what_they_are_set_to_in_brackets_start_anew() -> None:
    text = (
        "Watch\n   h=  (hour at which the watch begins)\n   k=* (keepers on watch)\n"
        '   One or more lines of the log ("l=" and "t=" lines; see below)\n   z=* (changes of the watch)\n'
    )
    found = [
        (block.text.chars, [line.chars.strip() for line in block.lines])
        for block in read_text(text, "a book", "ascii").blocks
    ]
    assert not any("z=*" in said and "One or more" in said for said, _ in found)


def test_the_line_of_a_signature_and_the_note_below_it_stand_apart() -> None:
    text = (
        "Hope this helps,\n\nAnna Keeper        \nanna@skerry.example                               North Landing\n"
        "http://www.skerry.example/~anna/lamps.html (Lamps, horns and bells)\n"
        "[Editor's note:  The above is a VERY useful page, and it is packed\n with more than you find here!!]\n"
    )
    first, *_, last = [block.text.chars for block in read_text(text, "a book", "ascii").blocks]
    assert first == "Hope this helps,"
    assert last.startswith("[Editor's note:")
    assert last.endswith("find here!!]")


OPTIONS = """\
THE LAMP:
  --wick <length>: Turn up the wick of the lamp to a length at dusk
  --horn/--bell: Sound the horn in fog, or let the bell sound instead of it
     that stands in the store
  -q: Say nothing of what is done with the oil, the wick and the lamp at all
  --log=BOOK: Write the hours in the book that is kept at the landing
"""


def test_a_line_that_begins_with_an_option_below_one_that_does_is_the_next_entry() -> None:
    assert len(shape(OPTIONS + "\n" + PROSE)) == 6


def test_an_option_in_mid_sentence_stands_where_its_line_was_broken() -> None:
    text = "-q is what the keeper of the first watch types if he wants to hear neither\n-v nor -x.\n"
    assert len(shape(f"{PROSE}\n{text}")) == 2


ASKED = """\
Q. The lamp has burnt blue all through the night, and it smokes too.
A. You have filled it with the wrong oil. Empty it at once.
"""


def test_an_answer_begins_below_its_question_though_the_line_was_full() -> None:
    lines = ASKED.splitlines()
    assert shape(f"{PROSE}\n{ASKED}\n{PROSE}")[1:-1] == [f"paragraph: {line}" for line in lines]
    written = ASKED.replace("Q. The", "By Q. The").replace("too.\n", "with\n")
    assert shape(f"{PROSE}\n{written}\n{PROSE}")[1:-1] == [f"paragraph: {' '.join(written.split())}"]


TERMS = """\
    Clear, of the air when the tower can be seen from the mainland at
        noon, and from the boats.
    Dirty, of weather that nobody on the rock goes out into of his own
        will.
    Relief, see Chapter I.
    Turning, of the wind that goes round to the north in the morning.
        Also called backing.
    Wick, see Chapter II.
"""


def test_a_sentence_hangs_below_a_full_one_where_the_rest_of_other_entries_hangs() -> None:
    assert shape(f"{PROSE}\n{TERMS}\n{PROSE}")[-3].endswith("in the morning. Also called backing.")
    short = TERMS.replace(" to the north in the morning.", ".")
    assert shape(f"{PROSE}\n{short}\n{PROSE}")[-3].endswith("paragraph: Also called backing.")


def test_what_stands_beside_an_address_goes_on_under_its_words() -> None:
    text = (
        "The lists of the rock are kept on the big computer:\n\n"
        "    requests@skerry.example     Where to send requests to get on or off the\n"
        "                                list of keepers.  The body of the letter should\n"
        "                                contain a single line.\n"
    )
    last = read_text(text, "a book", "ascii").blocks[-1]
    assert last.label.chars == "requests@skerry.example"
    assert last.text.chars.startswith("Where to send requests to get on or off the list of keepers. The body")


def test_whom_a_letter_is_to_is_no_key_of_what_it_says() -> None:
    note = "[He is right: there were none in\nthe store. -- Ed.]\n"
    letter = "Sirs, -- I have to report that\nthe lamp was dark for an hour:\n"
    found = shape(f"{note}\n{letter}\n{PROSE}")
    assert "paragraph: Sirs, -- I have to report that the lamp was dark for an hour:" in found
