"""Lines that stay lines, told from running text: program text, usage, frames; in cases that can be read aloud."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text
from fit.document.text.signs.code import code, command


def shape(text: str) -> list[str]:
    """Each block as its kind, its label and text, or its lines with bars between."""
    shown = []
    for block in read_text(text, "a document", "ascii").blocks:
        kind = "code" if block.code else block.kind.value
        body = (
            " / ".join(line.chars for line in block.lines)
            or f"{block.label.chars} {block.text.chars}".strip()
        )
        shown.append(f"{kind}: {body}")
    return shown


@pytest.mark.parametrize(
    "line",
    [
        "or failed.",
        "and oil pumps.",
        "in skerry(1).",
        "in the boathouse:",
        "for this to happen:",
        "if the lamp is out:",
        "IN THE EVENING THE LAMP IS LIT",
        "<http://skerry.example/tides/index>",
        "numbers start at 1, not 0; entry[0] is the same as entry[1];",
        "lamp=oil. Change oil to gas",
        "Lamp = out.",
        "Light = high-lamp = all.",
        "print the keeper's name",
        "or",
        "\\lamp or the oil of the lamp is written here",
        "call the keeper",
        ".profile is read by the keeper",
    ],
)
def test_the_end_of_a_sentence_is_no_program_text(line: str) -> None:
    assert not code(line)


@pytest.mark.parametrize(
    "line",
    [
        "CALL BDOS",
        "ld a,5",
        "and 7fh",
        "or a",
        "MSG: DB 'lamp is lit$'",
        '10 PRINT "LAMP"',
        "if [ -f /lamp/log ]; then",
        'echo "$lamp"',
        "LAMP=$(TOWER)/lamp      # where the lamp is kept at night",
        "int main(void)",
        "for lamp in lamps:",
        ".pl 66",
        "fi",
        "export LAMP=north          ## (in the tower)",
        "setenv LAMP north",
        "call TurnLamp",
        "call AddLamp 'North', 'Tower'",
        "if LampQuery('North') then do",
        '.fopt 2, "lamp 2.1",0',
        ".byt hours           ; of light",
        '"north_lamp",0',
        "\\lamp=\\oil",
    ],
)
def test_program_text(line: str) -> None:
    assert code(line)


@pytest.mark.parametrize(
    "line",
    [
        "./configure -I<path_to_lamp> -L<path_to_oil>",
        'sweep B:\\TIDES\\JUNE.DAT -c "MOUNT Y"',
        "tide update -j 1 {optional files}",
    ],
)
def test_commands(line: str) -> None:
    assert command(line)


def test_a_command_after_a_colon_stands_for_itself_and_the_text_goes_on_after_it() -> None:
    text = (
        "If the tides are wanted on paper, put the paper in first and then type:\n"
        "    tide -p june.dat\n"
        "or\n"
        "    tide -p -w june.dat\n"
        "and wait until the printer has stopped, which takes about a minute in all.\n"
    )
    assert shape(text) == [
        "paragraph: If the tides are wanted on paper, put the paper in first and then type:",
        "code: tide -p june.dat",
        "paragraph: or",
        "code: tide -p -w june.dat",
        "paragraph: and wait until the printer has stopped, which takes about a minute in all.",
    ]


def test_an_item_keeps_the_command_below_it_apart() -> None:
    text = (
        "1. To print the tides of one month, with the winds of it beside them:\n"
        "       tide -p -w june.dat\n"
        "2. To print no tides:\n"
        "       tide -n june.dat\n"
    )
    assert shape(text) == [
        "item: 1. To print the tides of one month, with the winds of it beside them:",
        "code: tide -p -w june.dat",
        "item: 2. To print no tides:",
        "code: tide -n june.dat",
    ]


def test_an_option_above_two_short_sentences_is_their_key() -> None:
    text = "-t type\n      Type of the station.\n      Known are: rock, pier, ship.\n"
    assert shape(text) == [
        "item: -t type Type of the station.",
        "paragraph: Known are: rock, pier, ship.",
    ]


def test_usage_in_several_lines_stays_lines() -> None:
    text = "'-v'\n'--version'\n     Print which tide table this is.  Nothing else is done.\n"
    assert shape(text) == [
        "preformatted: '-v' / '--version'",
        "paragraph: Print which tide table this is. Nothing else is done.",
    ]


def test_short_whole_sentences_are_no_verse() -> None:
    text = "The lamp is lit at dusk.\nThe watch is kept by two.\nNobody sleeps in the lamp room.\n"
    assert [line.split(":")[0] for line in shape(text)] == ["paragraph"] * 3


def test_a_notice_in_a_frame_is_text() -> None:
    text = (
        "*********************************************************************\n"
        "* The stairs are wet in the morning, and whoever carries the oil up *\n"
        "* to the lamp then must hold on.                                    *\n"
        "*                                                                   *\n"
        "* Nobody carries two cans.                                          *\n"
        "*********************************************************************\n"
    )
    assert shape(text) == [
        "paragraph: The stairs are wet in the morning, and whoever carries the oil up to the lamp then must hold on.",
        "paragraph: Nobody carries two cans.",
    ]


LISTED = """\
++++++++++++++++++++++++++++++++++++++++++++++++++++++++
+        FOR THE SECOND KEEPER                         +
+                                                      +
+  The number of a bell can be used in the drill to    +
+  save a word.  Add up the bells which are not rung:  +
+                                                      +
+      0x01    bell of the landing                     +
+      0x02    bell of the store                       +
+      0x04    bell of the stair                       +
+                                                      +
+      0x10    horn                                    +
+                                                      +
+  (This goes before all the other signals)            +
++++++++++++++++++++++++++++++++++++++++++++++++++++++++
"""


@pytest.mark.parametrize("sign", "+*#")
def test_a_notice_with_a_list_in_a_frame_of_one_sign_is_text(sign: str) -> None:
    assert shape(LISTED.replace("+", sign)) == [
        "heading: FOR THE SECOND KEEPER",
        "paragraph: The number of a bell can be used in the drill to save a word. Add up the bells which are not rung:",
        "table: 0x01    bell of the landing / 0x02    bell of the store / 0x04    bell of the stair /  / 0x10    horn",
        "paragraph: (This goes before all the other signals)",
    ]


def test_a_line_right_below_a_frame_does_not_open_it() -> None:
    text = (
        "  **********************************\n"
        "  *       THE LAMP AND BELL        *\n"
        "  *  A bulletin for Skerry Light   *\n"
        "  **********************************\n"
        "  Number 3               March 1986\n"
    )
    assert shape(text)[:2] == ["heading: THE LAMP AND BELL", "paragraph: A bulletin for Skerry Light"]


def test_a_title_in_a_frame_is_a_heading() -> None:
    text = (
        "+-------------------------+\n"
        "| KEEPING THE LAMP ALIGHT |\n"
        "+-------------------------+\n\n"
        "The lamp is looked at each half hour, whatever the weather.\n"
    )
    assert shape(text)[0] == "heading: KEEPING THE LAMP ALIGHT"


@pytest.mark.parametrize(
    "drawing",
    [
        "+---------------------------+\n|The lamp is lit.           |\n|>_                         |\n+---------------------------+\n",
        "+------------+\n| LAMP  ROOM |\n+------------+\n      |\n+------------+\n|  THE STAIR |\n+------------+\n",
        "+------------------+\n|   N        S     |\n|  -----o-----     |\n+------------------+\n",
        "####################\n#  Store  #  Lamp  #\n#    ##########    #\n#    #.............. to the sea\n####+#####\n",
        "  0 1 2 3 4 5 6\n0 . . . * . . . 0   tide   falling\n1 . . . . . . . 1   wind   NW 4\n2 . @ . . # . . 2   oil    12 gal\n",
        "      ___     ___     ___\nLAMP _|   |___|   |___|   |__\n        _______         ____\nHORN ____/       \\_______/    \\_\n",
        " 7 6 5 4 3 2 1\n\\ o o o o o o o /\n \\ o o o o o o /\n  8 9 10 11 12 13\n",
        "Tower                  Boat\n\nLIT  ----------------->\n     <-----------------  SEEN\nOUT  ----------------->\n",
        "0                   1\n0 1 2 3 4 5 6 7 8 9 0 1| Lamp\n+-+-+-+-+-+-+-+-+-+-+-+\n| hour      | oil       |\n+-+-+-+-+-+-+-+-+-+-+-+\n",
    ],
)
def test_a_drawing_with_words_stays_a_picture(drawing: str) -> None:
    blocks = read_text(f"The plan of it is this:\n\n{drawing}", "a document", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE]


def test_dots_and_program_text_are_no_drawing() -> None:
    text = (
        "    C: Root of the tide table\n    . . .\n    C: Argument june\n    . . .\n    C: update\n\n"
        '    eval $1=\\( \\"\\$\\{R\\[@\\]\\}\\" \\)\n    }\n'
    )
    assert all(block.kind is Kind.PREFORMATTED for block in read_text(text, "a document", "ascii").blocks)


def test_a_sentence_that_names_the_blocks_of_a_drawing_is_no_part_of_it() -> None:
    text = (
        "\u2592\u2592\u2592\u2592   \u2592\u2592\u2592\u2592\n\u2592\u2592\u2592\u2592   \u2588\u2588\u2588\u2588\n\n"
        "Each \u2592 in the drawing is a pane of the lamp, and \u2588 is one that the gulls have broken\nsince May.\n"
    )
    drawing, sentence = shape(text)
    assert drawing.startswith("picture: ")
    assert sentence.startswith("paragraph: Each \u2592 in the")


def test_a_map_with_labels_at_its_edges_is_one_picture() -> None:
    text = (
        "Look at the map:\n\n"
        "   N              THE SKERRY                                          sea\n"
        "   ^                                    .-----------.\n"
        "   |        +---------+      +------+   |   GULL    |         ~  ~  ~\n"
        "            | Garden  +------+ Well +---+   ROCK    +---.\n"
        "            +----+----+      +------+   '-----------'     \\\n"
        "                 |                                         \\  +--------+\n"
        "   +-------+-----+-----+                                    '-+ Wreck  |\n"
        "   | Store |  Tower    +--------------------------------------+   X    |\n"
        "   +-------+-----+-----+                                      +--------+\n"
        "                 |\n"
        "              Landing  L\n"
    )
    assert [line.split(":")[0] for line in shape(text)] == ["paragraph", "picture"]


@pytest.mark.parametrize(
    "verse",
    [
        (
            "    One for the ship that is coming in,\n    Two for the rocks below,\n"
            "    Three for the keeper who walks within,\n    And four for the seas that grow.\n"
        ),
        (
            "        What burns and is not eaten,\n        what turns and is not beaten,\n"
            "        what looks at all the sea\n        and never looked at me?\n"
        ),
    ],
)
def test_verse_near_its_own_margin_stays_lines(verse: str) -> None:
    text = (
        "When the game asks for it the player has to say the rhyme by heart, in the old words of\n"
        "the harbour, and no other words will do:\n\n" + verse
    )
    assert shape(text)[1].count(" / ") == 3


def test_a_paragraph_far_from_the_margin_goes_on_in_small_letters() -> None:
    text = (
        "In fact, if you have only just come to the rock, we\n"
        "  would ask you to keep your own lamp for the first days,\n"
        "  because the lamp of the tower has ways of its own.\n\n"
        "Once you know it, you can leave your lamp in the boathouse with the others, and take it along\n"
        "again when the relief comes, which may be a month.\n"
    )
    assert len(shape(text)) == 2


def test_usage_longer_than_a_line_of_text_stays_lines() -> None:
    text = (
        "    TRIM [drive:]name[.type] [FROM line] [TO line] [WITH oldname] [/N] [/W:width]\n"
        "    TRIM ?\n\n"
        "Brackets mark what can be left out; they are not typed. A width\n"
        "of less than 40 is refused, as is one of more than 132. The\n"
        "number of lines is the one that the lamp program prints.\n"
    )
    assert shape(text)[0].endswith("[/W:width] / TRIM ?")


def test_words_quoted_from_a_letter_keep_their_lines() -> None:
    text = (
        "MA> It has to print eighty columns, it must not mind salt, and it should be\n"
        "MA> quieter than the last one,\n\n"
        "There is no such printer. We have had four of them in the last ten years on\n"
        "the rock, and each was louder than the one before.\n"
    )
    assert shape(text)[0].startswith("preformatted: MA> It has")


def test_words_quoted_behind_the_name_of_their_writer_keep_their_lines() -> None:
    around = "On the third of May the keeper of the Gull Stack wrote to us, and we answered.\n\n"
    text = (
        "    ann> The wick was cut first of all to deal with\n"
        "    ann> this new sort of oil\n"
        "    ann> which came with the boat of May.\n"
        "    ann>\n"
        "    ann> The keeper still pays attention to the lamp.\n"
        '    ann> The keeper should not mistake "lamp" for a part of it.\n\n'
    )
    kept = "preformatted: " + " / ".join(line.strip() for line in text.splitlines() if line)
    assert shape(around + text + around)[1] == kept
    one = "oil> is the sign that the lamp shows when it has to be filled.\n\n"
    assert shape(around + one + around)[1].startswith("paragraph")


def test_words_quoted_behind_the_sign_of_a_prompt_are_no_program_text() -> None:
    words = "> I think it was the old keeper. He had a lamp with a\n> crank, and the numbers in the book look as though they\n> had been turned out by one.\n"
    typed = "> WALK TO THE NORTH OF THE ROCK\n> TAKE THE OIL AND THE WICK\n> LOOK AT THE SEA\n"
    kept = [block for block in read_text(words + "\n" + typed, "a letter", "ascii").blocks if block.lines]
    assert [block.code for block in kept] == [False, True]


def test_a_quotation_keeps_its_lines_though_no_blank_line_parts_it_from_the_answer() -> None:
    text = (
        "On the third of May the keeper of the Gull Stack wrote to us:\n"
        ">When the lamp is lit, the mirror turns, but I found no way to stop it again\n"
        ">>The lever is in the drawer below the desk, and it has been there since the\n"
        ">>winter of the ice.\n"
        ">\n"
        ">There is no lever in the drawer.\n"
        "We have sent a second lever with the boat of last Tuesday, and a man who knows\n"
        "where it belongs.\n"
    )
    first, quotation, answer = shape(text)
    assert first.endswith("wrote to us:")
    assert quotation.partition(": ")[2] == " / ".join(text.splitlines()[1:6])
    assert answer.startswith(
        "paragraph: We have sent a second lever with the boat of last Tuesday, and a man"
    )


def test_one_line_behind_a_sign_is_no_quotation() -> None:
    text = (
        ">> Now turn the wheel to the left until you see the mirror move, and stop it as\n"
        "   soon as it faces the harbour.\n"
    )
    assert shape(text) == ["paragraph: " + " ".join(text.split())]


def test_centred_lines_stay_lines() -> None:
    text = (
        "Whoever wants to have a second copy of the game has to ask the keepers for it,\n"
        "and they will ask the inspector, who always says no.\n\n"
        "              Copying this game is forbidden\n"
        "                  between dusk and dawn.\n"
    )
    assert shape(text)[1] == "preformatted: Copying this game is forbidden /     between dusk and dawn."


def test_comments_of_a_settings_file_stay_lines() -> None:
    text = (
        "# The lamp is lit when the sun is at the horizon, or before that when fog is\n"
        "# coming in.  Whoever changes this changes it for the whole station.\n"
        "#\n"
        "lamp_at = 0\n"
    )
    assert shape(text) == ["code: " + " / ".join(text.splitlines())]


def test_an_underlined_heading_over_a_list_starts_no_footnotes() -> None:
    text = (
        "The rock has no more to tell in this number.\n\n"
        "        NEXT NUMBER\n        -----------\n\n"
        "   *  What the pilot saw on the night\n      of the ninth\n"
        "   *  A program that draws the rock, in\n      twenty lines\n"
    )
    assert [line.split(":")[0] for line in shape(text)] == ["paragraph", "heading", "item", "item"]


PARAGRAPH = (
    "The relief comes once a month, weather permitting, and brings the oil and the post with it.\n"
    "Whoever has a letter to send should have it ready by the evening before, and not in the night.\n\n"
)


@pytest.mark.parametrize(
    "text",
    [
        (
            "This lamp is given to the station in the hope that it will be of use,\n"
            "but WITHOUT ANY PROMISE; without even the implied promise of\n"
            "BRIGHTNESS or FITNESS FOR ANY WEATHER.  See the\n"
            "Standing Orders of the Light for more details.\n"
        ),
        (
            "Copy the table TIDES.DAT to a drawer of your\n"
            "choice, rename it to JUNE and set the pointer of the dial\n"
            "CLOCK by hand.\n"
        ),
        "For further help, ask the keeper who keeps the library at\nNordvik for it.\n",
    ],
)
def test_a_paragraph_set_narrow_goes_on_where_a_sentence_does(text: str) -> None:
    assert shape(PARAGRAPH + text)[1:] == ["paragraph: " + " ".join(text.split())]


def test_entries_and_fragments_below_one_another_are_not_joined() -> None:
    text = "[cs] Charts, by the pilot of Nordvik\n[da] Diagrams, by the second keeper\n[de] Dials\n"
    assert len(shape(PARAGRAPH + text)[1].split(" / ")) == 3


def test_an_address_set_off_in_a_sentence_keeps_its_line() -> None:
    text = (
        "An archive of the logs of the last few years can be found at\n"
        "    http://skerry.example/logs/\n"
        "and a second one is kept in the boathouse.\n"
    )
    assert shape(PARAGRAPH + text)[1:] == [
        "paragraph: An archive of the logs of the last few years can be found at",
        "paragraph: http://skerry.example/logs/",
        "paragraph: and a second one is kept in the boathouse.",
    ]


def test_what_a_prompt_brought_stays_below_it() -> None:
    text = (
        "      A>STATUS /NOCOLOUR /EVERY:60 /WARN:BELL,LAMP,SHORE\n      STATUS 1.4   press any key to stop\n"
    )
    assert shape(PARAGRAPH + text)[1].endswith("/ STATUS 1.4   press any key to stop")


def test_a_session_with_another_program_that_asks_by_its_name() -> None:
    """A few words are typed behind its name, twice; its answers end with stops and are no text."""
    lines = [
        "%tide skerry.example",
        "Connected to the rock.",
        "220 The book is open at the page of today, the third.",
        "tide> get high-water",
        "200 It is at four.",
        "tide> quit",
        "221 The book is closed. Fair winds.",
    ]
    text = "".join(f"     {line}\n" for line in lines)
    assert shape(PARAGRAPH + text)[1:] == ["preformatted: " + " / ".join(lines)]
    told = text.replace("It is at four.", f"{PARAGRAPH.strip().split('.')[0]},\n     as it is in the book.")
    assert len(shape(PARAGRAPH + told)) > 2


def test_the_rest_of_what_a_key_means_turns_to_no_program_text() -> None:
    text = (
        "  > ./light [--no-bell] [--no-lamp]\n"
        "      --no-bell:        no sound\n"
        "      --no-lamp:        leave the lamp out of the watch, and use the\n"
        "                        built-in OIL\n"
        "  > light\n"
        "  > ring bell\n"
    )
    assert any(part.endswith("and use the built-in OIL") for part in shape(PARAGRAPH + text))


def test_a_round_bullet_far_from_its_siblings_is_one() -> None:
    assert (
        shape(PARAGRAPH + "  o  Oil:\n\n    o  The oil is in the store.\n\n    o  So is the wick.\n")[1]
        == "item: o Oil:"
    )


def test_the_root_of_a_tree_belongs_to_its_branches() -> None:
    tree = "     /light\n      |\n      +--logs\n      |   |\n      |   +--tides\n      +--lamp\n"
    blocks = read_text(PARAGRAPH + "The drawers are these:\n\n" + tree, "x", "ascii").blocks
    assert next(line.chars for line in blocks[-1].lines) == "/light"
    assert blocks[-1].kind is Kind.PICTURE


def test_answers_of_a_game_stay_under_what_was_typed() -> None:
    text = """
The game answers what you type.

     >go north
     You are in the oil store.  It smells.
     There is a can here.

     >pour oil into can
     The can is full already, and so is the floor.

> the keeper wrote that the lamp
> had gone out twice
"""
    assert shape(text)[1:] == [
        "preformatted: >go north / You are in the oil store.  It smells. / There is a can here.",
        "preformatted: >pour oil into can / The can is full already, and so is the floor.",
        "preformatted: > the keeper wrote that the lamp / > had gone out twice",
    ]


@pytest.mark.parametrize("part", ["\n\n\n", "\n\f\n"])
def test_a_command_line_set_off_at_the_foot_of_a_page_ends_there(part: str) -> None:
    above = "The lamp is trimmed at sunset by the keeper of the watch, and never later.\n" * 3
    text = (
        f"{above}\nThe command line has the general form\n\n"
        f"        TIDES [options] [station] [from-date [to-date]]\n{part}"
        "where the station is one of those that the command STATIONS lists, and\ndates are written day first.\n"
    )
    assert "where the station" in shape(text)[-1]
    assert "TIDES" not in shape(text)[-1]


def test_the_room_over_what_was_typed_is_no_key() -> None:
    session = "        Boat House\n          It smells of tar. A boat hangs here.\n\n        >take rope\n        Taken.\n"
    session += "\n        >steps\n        The steps are wet. You slip, and you catch hold of the rope, and you\n        hear it go.\n"
    assert shape(f"The story begins like this in the first of its rooms, before the tide:\n\n{session}")[
        1:
    ] == [
        "preformatted: Boat House",
        "paragraph: It smells of tar. A boat hangs here.",
        "preformatted: >take rope / Taken.",
        "preformatted: >steps",
        "paragraph: The steps are wet. You slip, and you catch hold of the rope, and you hear it go.",
    ]


def test_a_drawing_with_one_sure_line() -> None:
    stair = (
        "            /|\n           / |  100 steps\n          /  |\n         /___|\n        door    cellar\n"
    )
    choice = "        /stair | /ladder\n        /door | /hatch\n        rope [|| |]\n"
    assert [one.split(":")[0] for one in shape(f"The stair:\n\n{stair}")] == ["paragraph", "picture"]
    assert "picture" not in [one.split(":")[0] for one in shape(f"The ways:\n\n{choice}")]


def test_subtitles_centred_by_eye_stay_lines() -> None:
    lines = (
        "                      a story for the long nights\n                        by the second keeper\n"
    )
    assert shape(f"                            THE DROWNED BELL\n\n{lines}")[1:] == [
        "preformatted: a story for the long nights /   by the second keeper"
    ]


def test_names_at_the_right_side_stay_lines() -> None:
    text = "A keeper who uses a barrel of the board as a seat, or a bath,\nor a boat, pays for it.\n\n" * 4
    text += f"{' ' * 40}By order of the Board,\n\n{' ' * 48}L. Marrow\n{' ' * 48}Secretary\n"
    assert shape(text)[-1] == "preformatted: L. Marrow / Secretary"


def test_the_signature_of_a_letter_stays_lines() -> None:
    verse = '       "The lamp will be bright when the sums come out right,\n        And the sums will come out in the end."\n'
    assert shape(f"Write to the keepers at any time.\n\n-- \n{verse}")[-1] == (
        f'preformatted: -- /{" " * 8}"The lamp will be bright when the sums come out right, '
        f'/{" " * 9}And the sums will come out in the end."'
    )


def test_sentences_in_capitals_are_no_title_of_three_lines() -> None:
    text = "The keepers say this:\n\nWHO KEEPS THE LIGHT?\nWE DO.\nIS IT BURNING?\nLOOK UP.\n\nThen the watch is changed.\n"
    assert "preformatted: WHO KEEPS THE LIGHT? / WE DO. / IS IT BURNING? / LOOK UP." in shape(text)


def test_program_text_without_numbers_is_one_block() -> None:
    program = '\tFOR I = 1 TO 4\n\t  PRINT "*";\n\t  GOSUB 500\n\tNEXT I\n'
    assert len(shape(f"There is a way:\n\n{program}\nIt is not the right flash.\n")) == 3


def test_codes_of_dots_and_dashes_are_no_drawing() -> None:
    codes = (
        "     A  .-       H  ....     O  ---      V  ...-\n     B  -...     I  ..       P  .--.     W  .--\n"
    )
    codes += (
        "     C  -.-.     J  .---     Q  --.-     X  -..-\n     D  -..      K  -.-      R  .-.      Y  -.--\n"
    )
    assert [block.kind for block in read_text(codes, "a document", "ascii").blocks] == [Kind.TABLE]


def test_what_two_stations_say_to_one_another_stays_lines() -> None:
    call = (
        "     US>  HARBOUR HARBOUR DE SKERRY\n     THEM>  SKERRY DE HARBOUR K\n     US>  L1 B1 = NEED OIL\n"
    )
    call += "          AND A KEY\n     THEM>  R\n            WAIT\n     US>  (waits)\n"
    assert len(shape(call)) == 1
    assert shape(call)[0].startswith("code: US>  HARBOUR HARBOUR DE SKERRY / THEM>")


def test_the_lines_of_a_form_stay_apart() -> None:
    blank = "_" * 30
    text = f"""
Send this leaf to the supply board, please, with the next boat.

        Name:     {blank}

        Light:    {blank}

                  {blank}

        Oil:      [ ] two casks   [ ] three
"""
    assert shape(text)[1:] == [
        f"item: Name: {blank}",
        f"item: Light: {blank}",
        f"preformatted: {blank}",
        "item: Oil: [ ] two casks [ ] three",
    ]


PLAIN = "The lamp was lit at dusk, and the watch was kept until the sun rose.\n" * 6


@pytest.mark.parametrize(
    "lines",
    [
        (
            "owner-of-the-lamp-and-the-fog-signal: keepers-of-the-rock",
            "keepers-of-the-rock-of-skerry: oddy@harbour",
        ),
        ('lamp log_folder "tides/logs,/usr/share/tides/skerry/rock"', 'reckon "my-lamps.tide"'),
        (
            "Mlamp, P=[LIGHT], F=lsDFMPE9, T=OIL/822/X-Rock, A=LIGHT $u S=10 R=20 E=30 L=40 M=50 N=60",
            "Moil, P=/lights/null, F=su, A=OIL $u",
        ),
    ],
)
def test_lines_that_no_margin_has_wrapped(lines: tuple[str, str]) -> None:
    text = f"{PLAIN}The file of the station has these lines:\n\n          " + "\n          ".join(lines)
    shown = shape(f"{text}\n\n{PLAIN}")
    assert not any(all(line in block for line in lines) and " / " not in block for block in shown)


def test_a_name_that_ends_a_page_and_text_left_of_it() -> None:
    name = "L{Rock}lamp@skerry:/lights/names"
    text = f"{PLAIN}Write this:\n\n          {name}\n\f\nwill fill the table of the lights that can be seen,\nby name.\n"
    assert f"code: {name}" in shape(text + PLAIN)


def test_commands_behind_a_point_and_what_came_of_them_stay_lines() -> None:
    typed = (
        "    .SEARCH FOR PLACE = 'LAMP ROOM'\n    .LIST NAME, BERTH\n    Keeper, B.      14, Tower\n"
        "    Mate, A.        2, Cottage\n    .COUNT\n    2 records\n"
    )
    before = "The stores are kept in a file, which the second keeper searches in the evening with\nthe commands\n\n"
    block = read_text(before + typed + "\nand then puts away.\n", "stores", "ascii").blocks[1]
    assert [line.chars for line in block.lines] == [line[4:] for line in typed.splitlines()]


def test_a_name_behind_a_point_may_begin_a_sentence() -> None:
    text = (
        "The second keeper looks for files in the evening and finds those that have their names\nfrom the lamp:\n\n"
        "    .LAMPROOM and .LOG* (that is .LOG, .LOG1, .LOGBOOK) are files that will be\n"
        "    kept and restored after the winter.\n"
    )
    assert [block.kind for block in read_text(text, "files", "ascii").blocks] == [Kind.PARAGRAPH] * 2
