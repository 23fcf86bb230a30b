"""Sentences that go on though their line looks like an end: a colon in a name, a short line, a hanging text."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning and puts the
book back on its shelf.

"""


def shape(text: str) -> list[str]:
    """What stands between two such paragraphs, each block with its label."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks[1:-1]
    return [
        f"[{block.label.chars}] {block.text.chars}" if block.kind is Kind.ITEM else block.text.chars
        for block in blocks
    ]


@pytest.mark.parametrize(
    "text",
    [
        (
            "Nobody but the two keepers on the rock writes the wind into W:\n"
            "of the log and the height of the sea into the next one.\n"
        ),
        (
            "For stations such as ours that have no boat to call for help in a great\n"
            "storm,\n"
            "a gun is kept in the store (see the drill) and fired each hour.\n"
        ),
        (
            "Ask the second keeper for the numbers of the wicks in the top drawer, for\n"
            "their use and the\n"
            "marks --lamp-wick, --bell-wick, --day-wick.\n"
        ),
        (
            "The lamp is out when the tank has been dry for an hour, and it goes on\n"
            "again as soon as there is oil and a good wick in it.  At the first:\n"
            "oil=4, wick=2, bell=0.\n"
        ),
        ("Also,\nif the boat is late by more than a day or two, there is oil in the cellar.\n"),
        (
            "Where a boat is to be called from the station at the end of the quay (the\n"
            "old tower), the keeper rings the bell of the quay, number 23\n"
            "(27 chart).  That is B=23.\n"
        ),
    ],
)
def test_a_sentence_goes_on(text: str) -> None:
    assert shape(text) == [" ".join(text.split())]


def test_the_end_of_a_sentence_at_an_odd_indent() -> None:
    text = (
        "              The second keeper, who sleeps below, is called when the\n"
        "              lamp smokes, so that both of them may see at once\n"
        "         what is wrong with it.\n"
    )
    assert shape(text) == [" ".join(text.split())]


@pytest.mark.parametrize("sign", ["", "3. "])
def test_a_first_line_set_in_by_a_cell_over_one_line(sign: str) -> None:
    text = f" {sign}Wicks. This box is opened by the second keeper when a wick is short.\nSee the list of stores (in the drawer)\n"
    assert shape(text) == [f"[{sign.strip()}] " * bool(sign) + " ".join(text.split()).removeprefix(sign)]


def test_a_line_below_a_short_one_that_is_set_in_is_a_paragraph_of_its_own() -> None:
    assert (
        len(shape(" This box is opened by the second keeper.\nSee the list of stores (in the drawer)\n")) == 2
    )


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ("Do not use the new oil, use -nooil.  The tins conflict with L1x", False),
        ("For oil from the store or the boat try:            oil get LP12", True),
    ],
)
def test_two_blanks_in_a_single_line(line: str, *, kept: bool) -> None:
    text = (
        "The lamp of brass\n=================\nYou need tin boxes (not given.)\n"
        "Make an empty oil tin (using a knife for that.)\nSet LAMP_OIL or BELL_OIL to the name of the tin.\n"
        "Use new wicks for the brass lamp.\nDo not use SALT.\nUse OIL-Seven for the lamp of the landing.\n"
    )
    found = read_text(f"{PROSE}{text}{line}\n\nBELL\n\n{PROSE}", "log", "ascii").blocks
    assert (line in [one.chars for block in found for one in block.lines]) is kept
    assert (" ".join(line.split()) in [block.text.chars for block in found]) is not kept


def test_what_a_sentence_leads_to_is_no_key() -> None:
    text = (
        "If no boat is out, the keeper on watch should just hoist\n"
        '"N over C"\n'
        "        The harbour does so only when the mast of the rock is seen.\n"
    )
    assert shape(text)[1] == '"N over C"'


def test_a_place_in_a_program_leads_to_nothing() -> None:
    blocks = read_text(f"{PROSE}1) Light the lamp.\n\tlamp.room..EFN::\n\t\txgdx\n\t\taddd #44\n\t\trts\n\n{PROSE}", "log", "ascii").blocks  # fmt: skip
    (kept,) = (block for block in blocks if block.kind is Kind.PREFORMATTED)
    assert [line.chars.strip() for line in kept.lines] == ["lamp.room..EFN::", "xgdx", "addd #44", "rts"]


def test_entries_that_end_in_commas_stay_apart() -> None:
    text = (
        "the lamp in the tower,\n"
        "the bell that the second keeper sounds when he is told to by the man on\n"
        "first watch,\n"
        "the gun in the store that is fired by the crew of the boat,\n"
    )
    assert len(shape(text)) > 1


def test_one_word_far_below_the_full_line_of_a_key_ends_its_sentence() -> None:
    text = (
        "The signs are these:\n\n"
        "      Sign      What it tells\n"
        "      *         The lamp is lit.\n"
        "      #         The tank of the lamp is read, and no oil has yet been\n"
        "                           found.\n"
        "      !         The bell rings.\n"
    )
    assert "[#] The tank of the lamp is read, and no oil has yet been found." in shape(text)


def test_text_of_an_item_deeper_than_its_first_line() -> None:
    text = (
        "The commands:\n\n"
        "- f:\\  the disk with the log of last year. In most cases that one is\n"
        "         e:\\ or a:\\\n"
        '- 0    the number of the disk drive that is told by the light "disk-on"\n'
        "         (note that this is of use for the second of the two logs only)\n"
    )
    assert shape(text)[1:] == [
        "[-] f:\\ the disk with the log of last year. In most cases that one is e:\\ or a:\\",
        (
            '[-] 0 the number of the disk drive that is told by the light "disk-on" (note that this is of use'
            " for the second of the two logs only)"
        ),
    ]


HUNG = (
    "When the lamp has been lit the keeper goes down to the store and counts\n"
    "  the cans that are left in it, as he did on the night before.\n\n"
)
WHOLE = (
    "The lamp of a tower on a rock is not to be left alone at all.\n"
    "  Each of the keepers takes his watch in turn, and whoever is relieved goes\n"
    "  down to sleep at once.\n"
)


def test_a_text_hangs_below_a_sentence_as_the_one_beside_it_does() -> None:
    assert shape(HUNG + WHOLE)[1:] == [" ".join(WHOLE.split())]


def test_a_text_below_a_sentence_that_nothing_beside_it_is_like_stays_apart() -> None:
    assert len(shape(WHOLE)) == 2


COMMENTED = (
    "The clock of the tower lights each of the lamps at an hour of its own and\n"
    "puts it out when the sun is up, as the keeper on watch did in old times.\n"
    "The table of the lamps is read by the clock of the tower line by line, so\n"
    "to leave a part of it out, put before the first line the plain comment /*\n"
)


def test_words_with_signs_of_a_program_among_them_go_on_in_a_wrapped_paragraph() -> None:
    text = COMMENTED + "LAMP-OFF */ on a line by itself, and what is in the part is not\n"
    text += "read until the line is taken out of the table and the clock is wound again.\n"
    assert shape(text) == [" ".join(text.split())]


def test_program_text_below_a_full_line_without_a_blank_one_stays_apart() -> None:
    told = COMMENTED.replace("the plain comment /*", "mark that is here")
    assert shape(told + "ld a,(lamp)\n")[0] == " ".join(told.split())


BROKEN = "The lamp is out tonight.\nThe bell is still.\nThe gull is asleep.\n"
WRAPPED = (
    "On such a night the second keeper goes up to the lamp room at each full\n"
    "hour, looks at the wick and the tank, and writes down what he sees there.\n"
)


def test_a_wrapped_sentence_among_short_ones_is_followed_by_another() -> None:
    goes = "Nobody else may go up to the lamp.\n"
    assert shape(BROKEN + WRAPPED + goes)[-1] == " ".join((WRAPPED + goes).split())


@pytest.mark.parametrize("below", ["Lamp 12 1911-06-02 Holm\n", "Lamp House\n"])
def test_what_reads_as_no_sentence_begins_anew_among_short_ones(below: str) -> None:
    assert shape(BROKEN + WRAPPED + below)[-1] == below.strip()


def test_the_text_beside_a_key_goes_on_at_the_left_below_a_full_line() -> None:
    text = (
        "lamp - The lamp is lit by the keeper who has the watch when the sun is gone.\n"
        "This is what the board expects.\n"
        "\n"
        "bell - The bell is rung by the clock as long as nobody in the tower is well.\n"
        "Visitors are asked not to touch the rope.\n"
    )
    assert [one.endswith("."[:1]) and "\n" not in one for one in shape(text)] == [True, True]


def test_a_long_word_ends_a_line_early() -> None:
    text = "   Name the greatest number of wicks in a multi-lamp\n   Northern/Southern/Lower-Gallery rooms. Default: 6\n"
    assert shape(text) == [" ".join(text.split())]


@pytest.mark.parametrize(
    "text",
    [
        "To tell the boats for which not all of the signals fit on one\nLAMP sheet, several sheets are hung out.\n",
        (
            "Better take down the glass first. The second ring matches a hook\n"
            "NOT fastened to the wall: the keeper looks for it below the stairs.\n"
        ),
        (
            "If the horn is dry, let the second keeper choose 'a short blast' and then\n"
            "   20.5 (anything he likes, really) in the column for the blasts.\n"
        ),
    ],
)
def test_a_sentence_goes_on_with_a_word_in_capitals_or_a_number(text: str) -> None:
    assert shape(text) == [" ".join(text.split())]


def test_entries_that_all_begin_with_a_word_in_capitals_stay_apart() -> None:
    text = (
        "LAMP is what the keeper has to light in the evening of a day\n"
        "HORN is what the keeper has to sound in the fog of a night\n"
    )
    assert (
        shape(text) == text.splitlines() or len(read_text(PROSE + text, "log", "ascii").blocks[-1].lines) == 2
    )


def test_a_number_deeper_below_the_end_of_a_sentence_is_not_its_rest() -> None:
    text = (
        "If the horn is dry, let the second keeper choose 'a short blast' and enter it.\n"
        "   20.5 is anything he likes, really, in the column for the blasts.\n"
    )
    assert shape(text) == [" ".join(line.split()) for line in text.splitlines()]


def test_words_in_capitals_around_a_slash_are_one() -> None:
    text = "The lever has two places of which the upper one is for the night, ON/\nOFF, and the lower for the day.\n"
    assert "night, ON/OFF, and" in shape(text)[0]


def test_a_word_behind_a_directory_is_another() -> None:
    text = "The sheets that the second keeper wrote on are all to be kept in LOG/\nbelow the slate and nowhere else.\n"
    assert "in LOG/ below" in shape(text)[0]


def _kept(text: str) -> list[list[str]]:
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    return [[line.chars for line in block.lines] for block in blocks if block.code]


def test_a_file_that_is_shown_stays_whole_whatever_its_lines_look_like() -> None:
    records = (
        "        ; north side, corrected in May\n"
        "        LAMP,  612, OIL\n        BELL,  744,\n        HORN,  801, F\n        WELL, 1190, OF\n"
    )
    [lines] = _kept(f"A file of lights that holds the north side looks like this:\n\n{records}")
    assert lines == [line[8:] for line in records.splitlines()]


def test_a_remark_deeper_right_below_program_text_stays_with_it() -> None:
    program = (
        "    LIGHTS NORTH.DAT --no-header --width=60\n    LIGHTS NORTH.DAT SOUTH.DAT >SHEET.LST\n"
        "      (the sheet is now in SHEET.LST)\n"
    )
    [lines] = _kept(program)
    assert len(lines) == 3


def test_numbered_steps_and_sentences_below_program_text_are_none() -> None:
    steps = (
        "    1. To light the lamp and keep it\n       (the bell will be silent):\n       lights -32 north\n"
        "    2. To put it out again:\n       lights -f\n"
    )
    assert _kept(f"Examples of what is typed are:\n\n{steps}") != [[line[4:] for line in steps.splitlines()]]
    told = "    cd /rock/lights\n    ls -lsa\n        to see a number of files that tell of the\n        lamp, each in its hour.\n"
    assert _kept(f"Type this to see them:\n\n{told}") == [["cd /rock/lights", "ls -lsa"]]


def test_keys_with_their_meanings_are_no_listing() -> None:
    keys = (
        "    \\|      either of the two lamps on the rock\n    ?       no lamp or one: same as \\{0,1\\}\n"
        "    \\a      alarm of the bell   (BEL, Ctrl-G)\n    \\t      horizontal beam     (HT, Ctrl-I)\n"
        "    \\v      vertical beam       (VT, Ctrl-K)\n    \\x      north lamp at dusk  (NL, Ctrl-N)\n"
    )
    assert _kept(f"The signs that may stand in a list of lights are:\n\n{keys}") != [
        [line[4:] for line in keys.splitlines()]
    ]


DEEPER = """\
o lamp: a lamp on this rock has the same sense as in
    Law. It is any light that a ship may see, whether it is
    lit or not, as long as the keeper has the key.
o horn: the horn is an instrument that warns. Each horn
    blows at the change of the watch, and it is heard as far
    as the landing.
o wick: the wick is one of those that are cut. The rest
    of them stay in the store until the boat has brought more
    oil.
o bell: the bell is rung where the horn does not blow, by
    one of the two who are on watch.
o oil: the keeper reads how much there is by the glass
    gauge; then
"""


def test_items_hang_deeper_than_their_text_as_others_of_the_document_do() -> None:
    text = DEEPER.replace("gauge; then", "l1.gauge;")
    entries = text.replace("\n    ", " ").replace("o ", "[o] ", 1).replace("\no ", "\n[o] ").splitlines()
    assert shape(text) == entries


def test_a_word_over_what_it_means_is_a_term_though_items_hang_as_deep() -> None:
    found = shape(DEEPER + "o LAMP_DARK\n    Nobody has lit the lamp.\n")
    assert found[-2:] == ["[o] LAMP_DARK", "Nobody has lit the lamp."]
