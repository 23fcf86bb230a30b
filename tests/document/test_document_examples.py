"""Examples of program text that are set in from the text: one piece, whatever their lines look like alone."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

BEFORE = (
    "The keeper on watch reads the barometer at the full hour and writes what it shows\n"
    "into the log, whatever the weather may be, before he goes up to look at the lamp:\n\n"
)
AFTER = (
    "\nThen he signs for the watch, and the next keeper signs below him, so that the\n"
    "harbour can see who was on watch when the lamp went out in the night.\n"
)

EXAMPLES = [
    # the first line reads as a sentence
    "   with open(path, 'log') as book:\n       book.sign()\n       while dark:\n           lamp = light(3)\n           if not lamp:\n               stop()\n",
    # a piece between blank lines that no sign shows
    "    lamp = -Wick\n\n    rule oil\n      command = fill $tank -c $in -o $out\n\n    build lamp: oil tank\n",
    # marks and keys inside
    '    {\n      "lamp" : "lit",\n      "oil" : {\n        "tank" : "full"\n      },\n      "wick" : "new"\n    }\n',
    # words that a program says
    (
        "   {% call say('lamp') %}\n       This is what the keeper of the watch says when\n       the lamp is lit.\n   {% end %}\n"
        "   lamp = say(3);\n"
    ),
    # remarks at a column of their own
    "    light(lamp);             # the lamp is lit\n    oil = fill(tank);        # the tank is full\n    sign(book);\n",
    # the letter before a sign of an assignment is no mark of a list
    "        sin(beam/3)**2\n\n        x := exp(2)\n",
    # no line is program text by itself, but all have signs that words do not have
    "    3/29 * Oil of the Month\n        Stores:Oil:Lamp          $20.50\n        Stores:Tins                  $-3.00\n",
]


@pytest.mark.parametrize("example", EXAMPLES)
def test_an_example_is_one_piece(example: str) -> None:
    blocks = read_text(BEFORE + example + AFTER, "log", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert blocks[1].code
    assert [line.chars.strip() for line in blocks[1].lines if line.chars.strip()] == [
        line.strip() for line in example.split("\n") if line.strip()
    ]


TEXTS = [
    # a list
    "    * oil = tank\n    * wick = drawer\n    * glass = shelf\n",
    # keys and what they mean
    "    ? - asks for the lamp;\n    # - lights the lamp without asking.\n",
    "    %h    the hour of the watch\n    %l    the lamp that is lit\n    \\\\    backslash\n",
    # a table of two columns
    "    ./log/oil             tank\n    ./log/wick            drawer\n    ./log/glass           shelf\n",
    # a form of many parts, wrapped
    "    <lamp> '@' <hour> ':' [ '!' ] <keeper> '=' [ <lamp-room> '/' <OIL-\n    TANK> ] '%' <wick>\n",
    # a paragraph that names a statement
    "    The lamp is lit with light(lamp) and nothing else,\n    and the keeper signs for it in the book on the desk.\n",
    # a paragraph whose first line is set in
    "   For example, given the oil\n     in the tank and the wick\n     in the drawer.\n",
]


@pytest.mark.parametrize("text", TEXTS)
def test_text_that_is_set_in_is_no_example(text: str) -> None:
    blocks = read_text(BEFORE + text + AFTER, "log", "ascii").blocks
    assert not [block for block in blocks if block.code]


def test_text_between_two_examples_is_text() -> None:
    text = "    lamp = light(3);\n    sign(book);\n\n    For example:\n\n    oil = fill(tank);\n    sign(book);\n"
    blocks = read_text(BEFORE + text + AFTER, "log", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.PARAGRAPH][1] == "For example:"
    assert sum(block.code for block in blocks) == 2


SETTINGS = (
    "        ; settings of the lamp\n        glass       = 65\n        wick        = no            ; not for guests\n"
    '        horn ^T     = "two-blasts"\n        horn F1     = "help"        horn F2 = "save"\n'
)


@pytest.mark.parametrize("led", [True, False])
def test_an_example_at_the_top_of_a_page_needs_the_colon_at_the_end_of_the_page_before(led: bool) -> None:
    before = BEFORE.strip() if led else BEFORE.strip().removesuffix(":") + "."
    blocks = read_text(f"{before}\n\f{SETTINGS}{AFTER}", "log", "ascii").blocks
    whole = [len(block.lines) for block in blocks if block.code]
    assert (whole == [SETTINGS.count("\n")]) is led
