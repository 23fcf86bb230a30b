"""Rows of plain-text tables: which lines belong to one, each rule in a case that can be read aloud."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text


def rows(text: str) -> list[str]:
    """The rows of all tables with bars between their cells, those of heads with ``=``."""
    return rows_of(read_text(text, "a document", "ascii").blocks)


CASES = {
    "rows that blank lines part go on under a line that had room": (
        """
Mark    Signal        What it says
----    ------        ------------

0A      ROCK 0A       The lamp is not lit.

0F      ROCK 0F  2    The glass is dirty or has been taken down.
                      F = number of the pane.

10           1 2      No keeper on watch.

11      ROCK 11       The horn has been sounded three times.
                      1: once more, then go on
                      2: stop the horn

12      BELL 12       The bell rope is wet.
        BELL 13       The bell rope is gone.
        BELL 14  2    The bell is gone.

13      HORN 1        Somebody has left the key of the store in the
                      door.
        HORN 2        Nobody has the key.
""",
        [
            "Mark = Signal = What it says",
            "0A | ROCK 0A | The lamp is not lit.",
            "0F | ROCK 0F 2 | The glass is dirty or has been taken down. F = number of the pane.",
            "10 | 1 2 | No keeper on watch.",
            "11 | ROCK 11 | The horn has been sounded three times.\n1: once more, then go on\n2: stop the horn",
            "12 | BELL 12 | The bell rope is wet.",
            " | BELL 13 | The bell rope is gone.",
            " | BELL 14 2 | The bell is gone.",
            "13 | HORN 1 | Somebody has left the key of the store in the door.",
            " | HORN 2 | Nobody has the key.",
        ],
    ),
    "a line without a key on which two cells go on, one of them clearly": (
        """
Week of     Morning           Evening           Remarks

4 Feb.      Miss Berg         Mr Oddy
11 Feb.     Mr Tarn           Miss Berg         Bring oil: the
                                                can is empty
18 Feb.     Dr Holm,          Mr Oddy           No evening
            Mrs Lund                            watch (fog)
25 Feb.     Mr Oddy           Mr Tarn
""",
        [
            "Week of = Morning = Evening = Remarks",
            "4 Feb. | Miss Berg | Mr Oddy | ",
            "11 Feb. | Mr Tarn | Miss Berg | Bring oil: the can is empty",
            "18 Feb. | Dr Holm, Mrs Lund | Mr Oddy | No evening watch (fog)",
            "25 Feb. | Mr Oddy | Mr Tarn | ",
        ],
    ),
    "a line without a key whose cells begin as those of all rows do": (
        """
Week of     Morning           Evening           Remarks

4 Feb.      lamp, horn        bell              next to the lower store
11 Feb.     oil cans,         oil               upper store
            wicks                               cellar
25 Feb.     lamp              bell
""",
        [
            "Week of = Morning = Evening = Remarks",
            "4 Feb. | lamp, horn | bell | next to the lower store",
            "11 Feb. | oil cans, | oil | upper store",
            " | wicks |  | cellar",
            "25 Feb. | lamp | bell | ",
        ],
    ),
    "justified cells between rules, and no head": (
        """
-----------------------------------------------
L w              (wind)         Wind   the clock
                                up.   See   also
                                let, brake, and
                                stop.
-----------------------------------------------
L t,             (trim)         Trim  the  wick,
L T                             which needs the
                                small   scissors
                                and patience.
-----------------------------------------------
L b              (brake)        Let  the   clock
                                go.
-----------------------------------------------
L x,             (leave)        Leave the lamp.
L X
-----------------------------------------------
""",
        [
            "L w | (wind) | Wind the clock up. See also let, brake, and stop.",
            "L t, L T | (trim) | Trim the wick, which needs the small scissors and patience.",
            "L b | (brake) | Let the clock go.",
            "L x, L X | (leave) | Leave the lamp.",
        ],
    ),
    "drawn rows with keys of several lines in their middle": (
        """
+--------------+-----------------------------------------+
| Light        | What it does                            |
+--------------+-----------------------------------------+
| DARK         | Nothing.                                |
+--------------+-----------------------------------------+
|              | * At dusk the lamp is lit.              |
| FIXED        | * At dawn it is put out, unless there   |
| oil: PINTS   |   is fog, or the keeper has forgotten.  |
|              | * The log is written.                   |
+--------------+-----------------------------------------+
|              | * The clock turns the lens.             |
| FLASHING     | * If the clock has stopped, a keeper    |
| every: SECS  |   turns it.                             |
| turned: BOOL | * Keepers are relieved every hour.      |
|              | * No other work is done.                |
+--------------+-----------------------------------------+
""",
        [
            "Light = What it does",
            "DARK | Nothing.",
            (
                "FIXED oil: PINTS | * At dusk the lamp is lit.\n* At dawn it is put out, unless there is fog, "
                "or the keeper has forgotten.\n* The log is written."
            ),
            (
                "FLASHING every: SECS turned: BOOL | * The clock turns the lens.\n* If the clock has stopped, a "
                "keeper turns it.\n* Keepers are relieved every hour.\n* No other work is done."
            ),
        ],
    ),
    "two blanks after a full stop part no columns, nor do a few blanks inside a cell": (
        """
Mark    Signal        What it says
----    ------        ------------

10           1 2      No keeper on watch.

11           1 2      No keeper at all.

12           1  3     The horn has been heard.  1=go on.

1C        2           The lamp has gone out.  Probably
                      oil.

1E           1  3     The boat is on the rocks.

1F      BOAT   2  3   The boat is not on the rocks.  Look
                      for it.

1H           1 2      The boat is in its house.
""",
        [
            "Mark = Signal = What it says",
            "10 | 1 2 | No keeper on watch.",
            "11 | 1 2 | No keeper at all.",
            "12 | 1 3 | The horn has been heard. 1=go on.",
            "1C | 2 | The lamp has gone out. Probably oil.",
            "1E | 1 3 | The boat is on the rocks.",
            "1F | BOAT 2 3 | The boat is not on the rocks. Look for it.",
            "1H | 1 2 | The boat is in its house.",
        ],
    ),
    "a sentence that starts below a value, and one blank of a justified sentence, make no table": (
        """
  Kind: lamp
  Signs: 0
  Usually, the choice of "Signs:" for the lamp can be left to the keeper
  ashore.  If he does not do this well, write to his keeper, for a lamp that
  shows the wrong signs is a danger.

When this lever is down, a part of the shutter at the foot of the
lens closes the lower half of it, to show the side of the rock on
the  lee side of the tower relative to the whole of the rock that
is above the water (whatever the tide may be, as long as the lamp
is lit).
""",
        [],
    ),
    "single tabs that do not align their cells": (
        """
Thing\tHow much\tWhere
Rope\t20 fathoms\tin the boat house
Lamp black\t1 tin\tsecond shelf
Tar\t\t2 barrels\t\tbehind the door
Chalk\t5
""",
        [
            "Thing = How much = Where",
            "Rope | 20 fathoms | in the boat house",
            "Lamp black | 1 tin | second shelf",
            "Tar | 2 barrels | behind the door",
            "Chalk | 5 | ",
        ],
    ),
    "a label in the middle of the first row, right below the head": (
        """
Bell           Rung by             What it says
               any keeper          dinner; there may be soup
one long                           or fish, and such bread as
                                   there is

two short      the cook            come at once
""",
        [
            "Bell = Rung by = What it says",
            "one long | any keeper | dinner; there may be soup or fish, and such bread as there is",
            "two short | the cook | come at once",
        ],
    ),
    "a box of one row with its legend is a drawing": (
        """
The log of a night is one strip of paper:

      ---------------------------------------
      |*A*|*B*|A|A|B|A|B|#A#|...|B|C|#B#|#C#|
      ---------------------------------------
       dusk                  fog         dawn

and is torn off at dawn.
""",
        [],
    ),
    "a bracket that a cell has opened is closed below": (
        """
Find           F    Looks for a word of the log.
                    (see also
                        Words and Hours)
Change         C    Looks for a word, and puts
                    another in its place. (see also
                    Words and Hours)
Find again     A    Looks for the last one again.
""",
        [
            "Find | F | Looks for a word of the log. (see also Words and Hours)",
            "Change | C | Looks for a word, and puts another in its place. (see also Words and Hours)",
            "Find again | A | Looks for the last one again.",
        ],
    ),
    "a text that mostly goes on does so after a short sentence too": (
        """
OIL_KIND        colza      The oil that is burnt in the
                           lamp when nothing else is said.
OIL_STORE       lower      Where the oil is kept.  Take the
                           stair, not the hoist.
                           Mind the goat.
WICK_WIDTH      two        The width of the wick in inches;
                           see the drawing in the drawer of
                           the watch room.
WATCH_HOURS     four       How long a keeper watches.
                           Almost always four.
""",
        [
            "OIL_KIND | colza | The oil that is burnt in the lamp when nothing else is said.",
            "OIL_STORE | lower | Where the oil is kept. Take the stair, not the hoist. Mind the goat.",
            (
                "WICK_WIDTH | two | The width of the wick in inches; see the drawing in the drawer of the watch "
                "room."
            ),
            "WATCH_HOURS | four | How long a keeper watches. Almost always four.",
        ],
    ),
}


def test_a_box_of_one_row_has_its_legend() -> None:
    text, _ = CASES["a box of one row with its legend is a drawing"]
    (picture,) = [
        block for block in read_text(text, "a document", "ascii").blocks if block.kind is Kind.PICTURE
    ]
    assert [len(picture.lines), picture.lines[-1].chars.split()] == [4, ["dusk", "fog", "dawn"]]


@pytest.mark.parametrize("name", CASES)
def test_case(name: str) -> None:
    text, wanted = CASES[name]
    assert rows(text) == wanted


def test_a_key_runs_into_the_text_beside_it() -> None:
    text = """\
Wick          The wick of the lamp, which is trimmed before dusk
Glass         The glass around it, wiped with a dry cloth
Oil           The oil that it burns, from the lower store
MirrorsOfGlassSpare mirrors, and the frame they hang in
Can           The can that the oil is carried in
"""
    table = read_text(text, "lamp", "ascii").blocks[0]
    assert [cell.chars for cell in table.rows[3]] == [
        "MirrorsOfGlass",
        "Spare mirrors, and the frame they hang in",
    ]
    assert len(table.rows) == 5


def test_items_in_a_cell_stand_on_lines_of_their_own() -> None:
    box = """
+-------+------------------+------------------------------+
| Sign  | What it is       | What it says                 |
+=======+==================+==============================+
| E     | Time of the      | Set by the keeper. It says:  |
|       | test             |                              |
|       |                  | * 14 every second week, when |
|       |                  |   the boat is in             |
|       |                  | * 7 every week               |
+-------+------------------+------------------------------+
| F     | The fog bell     | 1. Strokes in a minute, as   |
|       |                  | they were counted.           |
|       |                  | 2. The hour.                 |
+-------+------------------+------------------------------+
"""
    assert rows(box) == [
        "Sign = What it is = What it says",
        "E | Time of the test | Set by the keeper. It says:\n* 14 every second week, when the boat is in\n* 7 every week",
        "F | The fog bell | 1. Strokes in a minute, as they were counted.\n2. The hour.",
    ]


def test_a_dash_and_figures_at_the_start_of_wrapped_lines_are_no_items() -> None:
    box = """
+-------+------------------------------+
| Lamp  | What it burns, as we counted |
+=======+==============================+
| East  | Oil for the year 19 and then |
|       | 20 and part of the next, a   |
|       | - as it seems - large share. |
+-------+------------------------------+
| West  | Less.                        |
+-------+------------------------------+
"""
    assert rows(box)[1] == (
        "East | Oil for the year 19 and then 20 and part of the next, a - as it seems - large share."
    )


def test_what_the_values_of_a_cell_mean_stands_on_lines_of_their_own() -> None:
    text = """\
Code    Name     What it says
----    ----     ------------
LO      LAMPOUT  The lamp is out, and does not light by itself.
                   xx = number of the lamp
                   1 = light it by hand and go on

LE      LENS     The lens is fogged, as it is on every morning when
                 w = 2 was set.

LH      HORN     The horn is frozen.

LO      LENS     The lens is cold.
"""
    assert rows(text)[1:3] == [
        "LO | LAMPOUT | The lamp is out, and does not light by itself.\nxx = number of the lamp\n1 = light it by hand and go on",
        "LE | LENS | The lens is fogged, as it is on every morning when w = 2 was set.",
    ]


LOG = (
    "The log is read at dawn by the keeper and is then printed by him as it stands here, for\n"
    "the harbour and for the board, which has asked for it again and again.\n\n"
    "  3 NOV  {}  JK  Wind north-west, sea choppy, and the sky overcast\n"
    "         {}  JK  Lamp smoking, and trimmed. Swell from the west,\n"
    "                   heavy, and a bell heard\n"
    "         {}  ML  Nothing to report\n"
    "  4 NOV  {}  ML  Nothing to report\n"
)


def test_hours_in_every_line_are_a_column_beside_texts() -> None:
    assert rows(LOG.format("0400", "0415", "0800", "0400")) == [
        "3 NOV | 0400 | JK | Wind north-west, sea choppy, and the sky overcast",
        " | 0415 | JK | Lamp smoking, and trimmed. Swell from the west, heavy, and a bell heard",
        " | 0800 | ML | Nothing to report",
        "4 NOV | 0400 | ML | Nothing to report",
    ]
    assert rows(LOG.format("once", "then", "here", "also")) == []
