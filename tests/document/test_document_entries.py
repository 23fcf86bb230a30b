"""Entries of lists without blank lines: a term above its text, text that hangs by its own habit. Common practice, no source."""

from __future__ import annotations

import pytest
from test_document_listed import PROSE, shape

from fit.document.blocks import Kind
from fit.document.text import read_text

TERMS = """\
The keepers of the light know these books by their names:

   log-book
          What was seen from the gallery, hour by hour, in every one of the watches.
   oil-ledger
          Pints.
   /var/watch/signal-book
          The flags and what they mean, with the answers that the mainland gives to it.
   VISITORS, or GUESTS
          Who came with the boat.

"""


def test_a_term_below_a_full_line_of_text_is_no_part_of_it() -> None:
    items = shape(PROSE + TERMS + PROSE)[2:-1]
    assert items == [
        "item: log-book What was seen from the gallery, hour by hour, in every one of the watches.",
        "item: oil-ledger Pints.",
        "item: /var/watch/signal-book The flags and what they mean, with the answers that the mainland gives to it.",
        "item: VISITORS, or GUESTS Who came with the boat.",
    ]


def test_a_term_below_the_last_paragraph_of_an_entry() -> None:
    text = """\
   _lamp-oil_
          The oil that burns in the great lamp, which is kept in the lower store
          and carried up in cans.
          The gauge on the wall shows it as "Pints of Oil Left for the Night".
   _days-between-two-boats-of-the-relief-if-it-is-calm_
          The days that a boat of the relief stays away.
"""
    assert shape(PROSE + text)[1:] == [
        "item: _lamp-oil_ The oil that burns in the great lamp, which is kept in the lower store and carried up in cans.",
        'paragraph: The gauge on the wall shows it as "Pints of Oil Left for the Night".',
        "item: _days-between-two-boats-of-the-relief-if-it-is-calm_ The days that a boat of the relief stays away.",
    ]


def test_paragraphs_with_a_deep_first_line_stay_whole() -> None:
    text = """\
    "Nobody has lit that lamp since the old keeper left us," said the mate.
    The old man looked at the lamp and at the stair, and then he said it once
more, in a lower voice.
    Nobody answered him, for the wind had got up and the door of the oil store
was open to the sea.
"""
    assert len(shape(PROSE + text)) == 4


def test_text_hangs_by_less_than_the_width_of_its_key() -> None:
    text = """\
    Wind -- The wind as the keeper on watch feels it when he
        stands (with both hands on the rail) in the gallery.

    Glass -- The height of the barometer.  If it drops by
        three, call the principal.  It goes up slowly.

    Oil -- "Enough" says that
        nobody needs to look.
"""
    assert shape(PROSE + text)[1:] == [
        "item: Wind -- The wind as the keeper on watch feels it when he stands (with both hands on the rail) in the gallery.",
        "item: Glass -- The height of the barometer. If it drops by three, call the principal. It goes up slowly.",
        'item: Oil -- "Enough" says that nobody needs to look.',
    ]


def test_text_hangs_under_the_second_column_of_an_item() -> None:
    text = """\
 * wick:         - how many tenths of an inch the wick stands above the ring
                   that holds it. Usual: 4
 * draught:      - how far the valve is open. Usual: 12
                   (less in summer)
 * shutter:      - the seaward shutter is closed as long as the sun stands on
                   the lens.
"""
    assert shape(PROSE + text)[1:] == [
        "item: * wick: - how many tenths of an inch the wick stands above the ring that holds it. Usual: 4",
        "item: * draught: - how far the valve is open. Usual: 12 (less in summer)",
        "item: * shutter: - the seaward shutter is closed as long as the sun stands on the lens.",
    ]


COMMAND = """\
        Set the name of the log.  It can be a list of names with commas between
        (but be sure to quote them where there are commas in it -- for example
"""


def test_a_sentence_goes_on_deeper_after_a_full_line() -> None:
    text = """\
STORES  Do not enter these.  The book of the stores takes one word:
        `spare': whatever came with the relief boat of this month, however much
              it was, unless the store below is too damp or the boat
              was late.
"""
    whole = "item: STORES " + " ".join(text.split()[1:])
    assert shape(PROSE + text)[1:] == [whole]
    deeper = COMMAND + "              define(`LOG', `a,b')\n        to keep two of them.\n"
    assert "preformatted: define(`LOG', `a,b')" in shape(PROSE + deeper)


SEMICOLONS = """\
    trim the wick (or put a new one in, if it is shorter than a thumb);
    wind the clock that turns the lens;
    polish brass, both on the stair and as you go;
    sweep the gallery from the door on.
"""
STATEMENTS = """\
     A: {
         ring;
         line up 1 at the last ring of the lamp;
         line down 1 at the last ring of the lamp;
         lens with .top at last ring .top + (0.2, -0.2);
     }
"""


@pytest.mark.parametrize("text", [SEMICOLONS, STATEMENTS])
def test_lines_that_end_in_semicolons_stay_lines(text: str) -> None:
    items = shape(PROSE + "In the first hour of the morning the keeper is to\n\n" + text + "\n" + PROSE)[2:-1]
    told = [part.strip() for item in items for part in item.split(": ", 1)[1].split(" / ")]
    assert told == [line.strip() for line in text.splitlines()]


def test_a_sentence_with_semicolons_is_no_list() -> None:
    text = """\
The lamp is lit at the hour that stands in the tables, whatever the weather is;
if it does not burn with a clear flame within ten minutes, it is put out again;
the spare lamp takes its place, and the principal is called, who writes into the
log what was seen and when.
"""
    assert shape(PROSE + text)[1:] == [f"paragraph: {' '.join(text.split())}"]


def test_lines_that_all_end_short_of_their_own_width_stay_lines() -> None:
    text = """\
      gulls # our own birds
      terns # those of the north rock
      storm.petrels # to see them before the terns come
      terns.young # the other birds of the rock
      rats # the serious pests
      cats # news of them
      dogs # there must be one somewhere
"""
    blocks = shape(PROSE + "This is the order of the bird book:\n\n" + text + "\n" + PROSE)
    assert blocks[2] == "preformatted: " + " / ".join(line.strip() for line in text.splitlines())


def test_steps_of_one_sentence_a_line_stay_apart() -> None:
    text = """\
     If the flame is blue
        Turn the wick down until the flame has its yellow edge back again.
        Write the height of the wick, as it is now, into the lamp's own book.
        Go to step 4.
     If the flame smokes
        Trim the wick, and then set it to the height that the book has here.
        Go to step 4.
"""
    blocks = shape(PROSE + text)[1:]
    assert blocks[1] == "paragraph: Write the height of the wick, as it is now, into the lamp's own book."
    assert [block for block in blocks if block.endswith(" Go to step 4.")] == ["paragraph: Go to step 4."] * 2


def test_labels_right_below_one_another_are_entries() -> None:
    text = """\
           wick: tenths of an inch, by default 4 for the lamps of the tower and
                 6 for hand lamps
           oil: pints in each watch, usually between 1 and 9
           air: holes that are left open, between 1 and 6
           out: hours without a flame, between 1 and 9
"""
    assert [block.split()[1] for block in shape(PROSE + text)[1:]] == ["wick:", "oil:", "air:", "out:"]


def test_a_command_below_an_item_is_no_part_of_it() -> None:
    text = """\
   1. To set the lamp up for a night in June (for those who know it, all values):
          lamp c tower -size 512,127,165,135
   2. To put it out:
          lamp c -off
"""
    assert shape(PROSE + text)[1:] == [
        "item: 1. To set the lamp up for a night in June (for those who know it, all values):",
        "preformatted: lamp c tower -size 512,127,165,135",
        "item: 2. To put it out:",
        "preformatted: lamp c -off",
    ]


def test_a_leader_to_a_long_text_makes_keys_of_all_in_its_column() -> None:
    text = """\
   UP DOWN ....... walk
   G ............. get something
   L ............. light the lamp, if you have oil, a wick and a
                   match, and are in the lantern
   ? ............. help
"""
    assert shape(PROSE + text)[1:] == [
        "item: UP DOWN walk",
        "item: G get something",
        "item: L light the lamp, if you have oil, a wick and a match, and are in the lantern",
        "item: ? help",
    ]


def test_a_command_in_capitals_with_its_options_is_no_title() -> None:
    text = "For instance\n\n      LAMPSORT STATIONS.DAT /K1,20 /K45,4 /R /O:NEW.DAT\n\nsorts the stations by their names.\n"
    assert "preformatted: LAMPSORT STATIONS.DAT /K1,20 /K45,4 /R /O:NEW.DAT" in shape(PROSE + text)


def test_first_words_of_justified_paragraphs_are_no_keys() -> None:
    """The second line of each has its blank at the same column, as a key beside it would."""
    text = """\
   It  is possible to light the lamp before sunset if the sea is dark;
   is  useful  for  a  boat  that  comes  late and has no other light to
   steer by in the sound.

   At  the end of the watch the keeper on duty reads the gauge again and
   if  the  oil  is  low he calls the second keeper, who will fill it to
   the upper mark at once.

   In  a gale the panes on the windward side are closed with the storm
   of  boards  that  hang  on  the  wall, and the keeper writes down the
   hour at which he did so.

"""
    assert [line.split(":")[0] for line in shape(text)] == ["paragraph"] * 3


OPTIONS = """\
Parts in brackets can be left out. The options of the lamp are:

   -l <lamp>    The lamp that is to be lit. If none is given, the one of the
                gallery is lit, as it was in the years before.
   -o <oil>     The oil to be burnt.
   -o <oil>=<pints> The oil "oil" is burnt, and of it no more than so many pints.
   -k<keeper>_<watch> The keeper whose watch it is, and the number of the watch in the
                list that hangs beside the door.
   > <book>     The book.
   > <the other book> If no book "lamp" or "oil" is given for what the keeper
                has seen, it is written into this one.
   -d           Put it out.

"""


def test_options_too_long_for_their_column() -> None:
    items = shape(PROSE + OPTIONS + PROSE)[2:-1]
    assert [item.split()[1] for item in items] == ["-l", "-o", "-o", "-k<keeper>_<watch>", ">", ">", "-d"]
    assert items[2].endswith("no more than so many pints.")
    assert items[3].endswith("watch in the list that hangs beside the door.")
    assert items[5].endswith("has seen, it is written into this one.")


def test_an_option_in_the_middle_of_a_paragraph_is_none_of_a_list() -> None:
    text = "The lamp is lit with the word fit and with one more of them behind it, as\n-l <lamp> The other words are not needed for it, nor is the key of the door.\n\n"
    assert not any(one.startswith("item") for one in shape(PROSE + text + PROSE))


def test_figures_behind_dots_among_keys_with_longer_texts_are_what_those_mean() -> None:
    text = (
        "Name of the rock ............. Skerry\n"
        "Number of lamps .............. 8\n"
        "Weight of the bell ........... 14 cwt 2 qr\n"
        "Landing ...................... Tuesday, but not in winter or when it is\n"
        "                               wet\n"
    )
    lead = (
        "The lights of the sound are described here, each with its lamps, as they were found in spring.\n\n"
    )
    blocks = [block for block in read_text(lead + text, "log", "ascii").blocks if block.kind is Kind.ITEM]
    assert [(block.label.chars, block.text.chars) for block in blocks[1:3]] == [
        ("Number of lamps", "8"),
        ("Weight of the bell", "14 cwt 2 qr"),
    ]
    priced = "\n".join(text.split("\n")[1:3]) + "\n"
    blocks = [block for block in read_text(lead + priced, "log", "ascii").blocks if block.kind is Kind.ITEM]
    assert [block.text.chars for block in blocks] == [
        "Number of lamps ... 8",
        "Weight of the bell ... 14 cwt 2 qr",
    ]


FLAGS = """\
      Doctor . . . . . . . . . . . . yellow over white
      Water  . . . . . . . . . . . . white over blue
      Mutiny, or trouble on board  . red at the dip
      Mails  . . . . . . . . . . . . a white ball

"""


def test_a_leader_with_room_for_one_dot_leads_to_the_column_of_those_around_it() -> None:
    items = [one for one in shape(PROSE + FLAGS + PROSE) if one.startswith("item")]
    assert len(items) == 4
    assert items[2].endswith("Mutiny, or trouble on board . red at the dip")


def test_a_stop_before_another_column_is_no_leader() -> None:
    text = FLAGS.replace("on board  . red at the dip", "on board . red at the dip")
    assert len([one for one in shape(PROSE + text + PROSE) if one.startswith("item")]) == 3


def test_what_an_option_takes_are_entries_below_it() -> None:
    text = (
        "   --lamp [options]   Lights a lamp, and takes these of the rock:\n"
        "                      `north`  The lamp above the landing, which is lit\n"
        "                               before all others.\n"
        "                      `call`  Whom to wake when it goes out.\n"
        "                      `hours`  How long it may burn.\n"
        "   --bell             Rings the bell.\n"
    )
    assert shape(PROSE + text + PROSE)[2:-2] == [
        "item: `north` The lamp above the landing, which is lit before all others.",
        "item: `call` Whom to wake when it goes out.",
        "item: `hours` How long it may burn.",
    ]


def test_what_is_to_be_typed_is_a_term_whatever_sign_ends_it() -> None:
    """Items of `@table @samp` as the Texinfo manual has them, "@samp": between single quotation marks (from memory)."""
    terms = (
        (
            "\u2018set glass\u2019",
            '\u2018set horn "BLASTS [PAUSE ...]"\u2019',
            "\u2018-!\u2019",
            "\u2018[:fog:]\u2019",
        ),
        ("'set glass'", "'set lamp OIL ...'", "'-_'", "'[.'"),
    )
    for names in terms:
        text = "".join(
            f"{name}\n     What the keeper of the lamp types here is written down.\n\n" for name in names
        )
        assert shape(PROSE + text + PROSE)[1:-1] == [
            f"item: {name} What the keeper of the lamp types here is written down." for name in names
        ]


def test_two_spellings_of_what_is_to_be_typed_stand_over_one_text() -> None:
    text = "".join(
        f"'{short}'\n'{long}'\n     The lamp is lit, and the keeper writes it down.\n\n"
        for short, long in (("-l", "--lamp"), ("-!", "--now"), ("-%", "--half"))
    )
    assert [line.split()[1] for line in shape(PROSE + text + PROSE)[1:-1]] == [
        "'-l'",
        "'--lamp'",
        "'-!'",
        "'--now'",
        "'-%'",
        "'--half'",
    ]
