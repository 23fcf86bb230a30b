"""Sessions over blank lines: one piece, unless running text stands between what is typed."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it shows\n"
    "into the log, whatever the weather may be, before he goes up to the lamp.\n\n"
)
SESSION = (
    "$ tide --today\n\nHigh water   04:12   3.1\nLow water    10:20   0.4\n\n"
    "$ tide --tomorrow\n\nHigh water   05:01   3.3\n\n$ exit\n\n"
)


def kinds(text: str) -> list[Kind]:
    """The kinds of the blocks between two paragraphs."""
    blocks = read_text(PROSE + text + PROSE, "log", "ascii").blocks
    return [block.kind for block in blocks][1:-1]


def test_what_is_typed_and_what_comes_of_it_over_blank_lines() -> None:
    blocks = read_text(PROSE + SESSION + PROSE, "log", "ascii").blocks
    assert [line.chars for line in blocks[1].lines] == SESSION.rstrip("\n").split("\n")
    assert blocks[1].code
    assert kinds(SESSION) == [Kind.PREFORMATTED]


def test_a_game_of_short_answers() -> None:
    game = (
        ">north\n\nLanding\nYou are at the landing.\n\n>get in boat\n\n"
        "(first opening the hatch)\nYou are in the boat.\n\n>row\n\nThe boat goes out.\n\n"
    )
    assert kinds(game) == [Kind.PREFORMATTED]


def test_commands_that_running_text_explains_are_no_session() -> None:
    told = (
        "$ tide --today\n\nThis prints the tides of today, as the harbour sent them.\n\n"
        "$ tide --tomorrow\n\nThis prints those of tomorrow.\n\n$ exit\n\nThis ends the program.\n\n"
    )
    assert Kind.PARAGRAPH in kinds(told)
    remarks = "".join(
        f"% The {name} is read by the keeper\nScore: 20\n\n" for name in ("log", "glass", "tide")
    )
    assert len(kinds(remarks)) > 1
    led = (
        "$ tide --list\n\nTo have the hour of the next of these tides by itself,\ntype\n\n"
        "$ tide --next\n\nand for the one after it, if it is to come today,\ntype\n\n$ tide --second\n\n"
    )
    assert kinds(led).count(Kind.PARAGRAPH) == 2


def test_a_question_with_its_answer_is_no_title() -> None:
    assert Kind.HEADING not in kinds(
        "    Which harbour? Skerry\n\n    Which month? June\n\n    Again? no\n\n"
    )
    assert kinds("The Tides of June\n\n") == [Kind.HEADING]


def test_a_game_whose_answers_were_wrapped_keeps_what_is_typed_and_the_rooms() -> None:
    for sign in ("> ", ">", "-> ", "? "):
        game = (
            f"{sign}look\nLAMP ROOM\nThe lamp is out. With a shriek that turns every head in the house, the\n"
            f"door swings shut behind you.\n{sign}go down\nOIL STORE\nBarrels stand along the wall.\n"
            f"{sign}take lantern\nTaken.\n\n"
        )
        blocks = read_text(PROSE + game + PROSE, "log", "ascii").blocks[1:-1]
        assert [
            (block.code, [line.chars for line in block.lines] or block.text.chars) for block in blocks
        ] == [
            (True, [f"{sign}look", "LAMP ROOM"]),
            (
                False,
                "The lamp is out. With a shriek that turns every head in the house, the door swings shut behind you.",
            ),
            (
                True,
                [
                    f"{sign}go down",
                    "OIL STORE",
                    "Barrels stand along the wall.",
                    f"{sign}take lantern",
                    "Taken.",
                ],
            ),
        ]


def test_a_room_between_blank_lines_is_no_title() -> None:
    game = "".join(
        f"> {typed}\n\n{room}\n\n"
        for typed, room in (("LOOK", "Lamp Room"), ("DOWN", "Oil Store"), ("UP", "Lamp Room"))
    )
    answer = "The lamp is out, and the stair on the other side of the room leads down to\nthe store.\n\n"
    assert Kind.HEADING not in kinds(game.replace("Lamp Room\n\n", f"Lamp Room\n\n{answer}"))


def test_items_behind_arrows_are_no_game() -> None:
    assert kinds("-> trim the wick\n-> fill the lamp\n-> wind the clock\n\n") == [Kind.ITEM] * 3
    hung = "".join(f"-> {what}\n   before the watch begins.\n" for what in ("trim", "fill", "wind"))
    assert kinds(hung + "\n") == [Kind.ITEM] * 3


def test_a_game_that_is_set_in_reaches_from_text_to_text() -> None:
    game = (
        "        LANDING\n        It is raining.  A low iron gate leads up.\n\n"
        "        -> look at gate\n        The gate is ajar, and wants oil.\n\n"
        "        -> open gate then go up\n        With a shriek that turns every head in the\n"
        "        boat, the gate swings open.\n\n        STAIR\n        Thirty steps, all of them wet.\n\n"
    )
    blocks = read_text(PROSE + game + PROSE, "log", "ascii").blocks[1:-1]
    assert [[line.chars for line in block.lines] or block.text.chars for block in blocks] == [
        ["LANDING"],
        "It is raining. A low iron gate leads up.",
        ["-> look at gate", "The gate is ajar, and wants oil.", "", "-> open gate then go up"],
        "With a shriek that turns every head in the boat, the gate swings open.",
        ["STAIR"],
        "Thirty steps, all of them wet.",
    ]


def test_names_and_numbers_typed_at_a_sign_and_a_last_one_without_an_answer() -> None:
    game = (
        "    WATCHES 3.0 - who is it?\n    > Maren\n    Good evening, MAREN. Which night shall it be?\n    > 5\n"
        "    You have not done night 3. Are you sure (y/n)?\n    > y\n    The lamp is lit.\n    > q\n\n"
    )
    blocks = read_text(PROSE + game + PROSE, "log", "ascii").blocks[1:-1]
    assert [(block.kind, len(block.lines)) for block in blocks] == [(Kind.PREFORMATTED, 8)]


def test_a_title_above_a_game_at_the_margin_is_a_title() -> None:
    """What stands deeper above it shows that the game is not set in: it begins with what is typed."""
    game = (
        ">TAKE LAMP\nIt is chained to the wall.\n>NORTH\nThe door is locked.\n>UNLOCK DOOR\nWhich door?\n\n"
    )
    text = f"   - turn the lamp down;\n   - wait.\n\nHOW TO TALK TO THE GAME\n\nType what you want to do.\n\n{game}"
    assert Kind.HEADING in kinds(text)


def test_the_room_above_what_is_typed_first_is_kept_with_the_game() -> None:
    game = (
        "      Landing\n      A bell, a bench, a door to the east.\n\n"
        "      > TAKE BELL\n      Taken. It is heavier than it looks.\n\n"
        "      > OPEN DOOR\n      The lock is better than the key.\n\n"
        "      > E\n      Stair\n      Wet. The lamp is lit.\n\n"
    )
    assert kinds(game) == [Kind.PREFORMATTED]


def test_capitals_below_a_blank_line_at_the_place_of_capitals_above_it_are_more_of_these() -> None:
    wire = (
        "          ROCK TO HARBOUR 0915\n          SEND 14 OIL 9 ROPE\n          BOAT 3 AT 1040\n\n"
        "          HARBOUR TO ROCK 0917\n          ROPE OUT  OIL 14\n\n"
    )
    assert (
        kinds("An example, with what the harbour answers below it, is:\n\n" + wire)[1:]
        == [Kind.PREFORMATTED] * 2
    )
    title = "          THE LAMP OF THE ROCK\n           AND ITS KEEPERS\n\n"
    assert kinds(title) == [Kind.HEADING]
