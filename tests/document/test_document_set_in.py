"""Displays that a sentence leads to and that stay lines as a whole, and lines set in that go on with a sentence."""

from __future__ import annotations

import pytest
from test_document_beginnings import PROSE
from test_document_kept import shape

from fit.document.blocks import Kind
from fit.document.text import read_text


def kept(text: str) -> list[str]:
    """The lines that stay lines, of all blocks."""
    blocks = read_text(text, "book", "utf-8").blocks
    return [line.chars.strip() for block in blocks if block.kind is Kind.PREFORMATTED for line in block.lines]


@pytest.mark.parametrize(
    "shown",
    [
        ["Oil in the tank: 12 cans", "Oil for a night: can", "* 4.25", "/ 0.235"],
        [
            "for each lamp on the rock",
            "do",
            "if lamp is lit continue",
            "if the tank is empty continue",
            "done",
        ],
        [
            '.\\" The keeper puts the lamp of the day, which has a red glass, before',
            '.\\" the mirror.',
            ".lamp red",
        ],
        ["lamp_files =", "/skerry/red.key,", "/skerry/white.key", "## read at dusk"],
        [
            "$ log",
            "# The 'a' command puts a line into the log book of the keepers on watch",
            "a",
            "The wind is north.",
        ],
        [
            "LOGHOUR",
            "^Q ^entry$/entry/g",
            "NEXT M",
            "NEXT X; NEXT P          ; the semicolon parts commands and starts",
            "REPEAT 20",
        ],
    ],
)
def test_a_display_stays_as_a_whole(shown: list[str]) -> None:
    text = PROSE + "The watch then reads:\n\n" + "".join(f"     {line}\n" for line in shown) + "\n" + PROSE
    assert kept(text) == shown


def test_a_display_goes_on_below_a_blank_line() -> None:
    shown = ["Oil in the tank: 12 cans", "Oil for a night: can", "* 4.25", "/ 0.235"]
    part = "".join(f"     {line}\n" for line in shown)
    assert kept(f"{PROSE}The watch then reads:\n\n{part}\n{part}\n{PROSE}") == shown * 2


def test_text_that_was_wrapped_is_no_display() -> None:
    quoted = "".join(
        f"     {line}\n" for line in ("The lamp is lit at dusk and the", "keeper on watch writes it down.")
    )
    assert kept(f"{PROSE}The log book says:\n\n{quoted}\n{PROSE}") == []
    listed = "   * the red lamp of the\n     keeper\n   * the white lamp\n"
    assert kept(f"{PROSE}There are two:\n\n{listed}\n{PROSE}") == []
    terms = "   lamp 1\n       Lit.\n\n   lamp 2\n       Dark.\n"
    assert kept(f"{PROSE}There are two:\n\n{terms}\n{PROSE}") == []


@pytest.mark.parametrize(
    ("above", "below"),
    [
        ("The hours of the tides are printed at", "<https://skerry.example/tables/of/all/the/tides>."),
        (
            "The lamp drill has been written down in Skerry Letter",
            "(https://skerry.example/letters/12.txt) (May).",
        ),
        (
            "   All of the drills are explained on the page at",
            "<https://skerry.example/drills.html>.  Read it.",
        ),
    ],
)
def test_an_address_that_had_no_room_goes_on_with_its_sentence(above: str, below: str) -> None:
    text = f"{PROSE}\n{above}\n{below}\n\n{PROSE}"
    assert f"paragraph: {' '.join(f'{above} {below}'.split())}" in shape(text)


def test_an_address_on_a_line_of_its_own_stays_there() -> None:
    text = f"{PROSE}\nThe tides:\nhttps://skerry.example/tables/of/all/the/tides\n\n{PROSE}"
    assert "The tides: https" not in " ".join(shape(text))


def test_the_last_line_of_an_item_is_no_key() -> None:
    text = (
        "D               Lights the lamp that stands nearest to the\n"
        "                door.  Mnemonic: the door of the lamp room\n\n"
        "E               Lights the lamp that stands at the end of\n"
        "                the stairs.\n\n"
        "F               Lights the fog lamp, which is never used in\n"
        "                summer.\n"
    )
    assert shape(PROSE + "\n" + text)[1] == (
        "item: D Lights the lamp that stands nearest to the door. Mnemonic: the door of the lamp room"
    )


def test_a_first_line_that_stops_at_a_comma_goes_on() -> None:
    text = (
        f"   {PROSE}\n"
        "   The stores of the rock hold many things, e.g., lamps, oil, wicks, bells,\n"
        "linen towels, glass chimneys, and brass polish.  The keeper counts them on\n"
        "the first day of the month, and the relief counts them on the last.\n"
    )
    assert "wicks, bells, linen towels" in shape(text)[-1]


def test_a_display_left_of_its_sentence() -> None:
    set_in = "".join(f"   {line}\n" for line in PROSE.splitlines())
    text = (
        f"{set_in}\n   To light the fog lamp by hand, type\nlamp fog <now\n\n   in the lamp room.\n\n{set_in}"
    )
    assert "type lamp fog" not in " ".join(shape(text))


def test_a_second_sentence_exactly_under_an_item_goes_on() -> None:
    text = (
        "* The white lamp burns all night and is put out by hand each day.\n"
        "  The keeper writes the hour of both into the log book.\n\n"
        "* The red lamp burns in fog alone.\n"
    )
    assert len(shape(PROSE + "\n" + text)) == 3


MEASURED = """\
The keepers measure, at the full hour of every watch and by
the order of the board:
- the wind, by the vane on the gallery or by opinion, which
  are written side by side;
- the sea, with the bucket that was left in the old boat.
  The canvas bucket was lost in the gale of the ninth, and a
new one of another sort has been asked for at the landing.
"""


def test_a_paragraph_set_in_like_the_text_of_the_item_above_goes_on_at_the_margin() -> None:
    blocks = read_text(MEASURED, "log", "ascii").blocks
    assert [block.text.chars[:11] for block in blocks[2:]] == ["the sea, wi", "The canvas "]
    assert blocks[-1].text.chars.endswith("and a new one of another sort has been asked for at the landing.")


@pytest.mark.parametrize(
    "last", ["- new wicks have been asked for.\n", "  new one has been asked for.\n", ""]
)
def test_an_item_goes_on_under_its_text_where_nothing_goes_on_at_the_margin(last: str) -> None:
    text = MEASURED.rsplit("\n", 2)[0] + "\n" + last
    blocks = read_text(text, "log", "ascii").blocks
    assert "in the old boat. The canvas bucket" in blocks[2].text.chars
