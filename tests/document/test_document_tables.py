"""Tables and hanging keys of plain text, each rule in a case that can be read aloud."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Block, Kind
from fit.document.text import read_text


def blocks(text: str) -> tuple[Block, ...]:
    return read_text(text, "a document", "ascii").blocks


def shown(text: str) -> list[str]:
    """Rows with bars between their cells, those of heads with ``=``; items with their labels; kept lines."""
    lines = []
    for block in blocks(text):
        lines += rows_of([block])
        if not block.rows and block.lines:
            lines.append(f"{block.kind.value}: " + " / ".join(line.chars for line in block.lines))
        elif not block.rows:
            lines.append((f"[{block.label.chars}] " if block.label.chars else "") + block.text.chars)
    return lines


CASES = {
    "a form in a frame open at its right: its columns, and no row of corners": (
        """
Each watch is entered in two forms.

┌───
    WATCH
        begun: HOUR           hour when the lamp was lit
        keeper: NAME          keeper who climbed the stair
        oil: PINTS            oil in the reservoir
└───
┌───
    RELIEF
        keeper: NAME
        hour: HOUR
└───
        Signed: both keepers
""",
        [
            "Each watch is entered in two forms.",
            "WATCH",
            "begun: HOUR | hour when the lamp was lit",
            "keeper: NAME | keeper who climbed the stair",
            "oil: PINTS | oil in the reservoir",
            "preformatted: ┌─── /     RELIEF /         keeper: NAME /         hour: HOUR / └───",
            "Signed: both keepers",
        ],
    ),
    "cells longer than the columns that a parted rule shows: the next one a blank further, or a line below": (
        """
Setting           Of          Meaning
=======           ==          =======
OilLevel          lamp        [full] Pints in the reservoir.
WickHeight        burner      [2] How far the wick stands above the
                              burner. Less than two smokes.
LanternRotationTime turntable
                              [30] Seconds for one turn of the lens.
FogSignalAirPressureInBar
                  compressor  [7] Pressure of the fog signal.
DoorLock          storeOfTheTower door
                              [shut] Whether the store is locked.
BellRope          bell        [none] Length of the rope.
StormWarningSignalMast  signalsOfTheOuterMast
                              [down] What hangs from the mast. It is
                              taken in at night.

The keepers read the settings aloud at noon.
""",
        [
            "Setting = Of = Meaning",
            "OilLevel | lamp | [full] Pints in the reservoir.",
            "WickHeight | burner | [2] How far the wick stands above the burner. Less than two smokes.",
            "LanternRotationTime | turntable | [30] Seconds for one turn of the lens.",
            "FogSignalAirPressureInBar | compressor | [7] Pressure of the fog signal.",
            "DoorLock | storeOfTheTower door | [shut] Whether the store is locked.",
            "BellRope | bell | [none] Length of the rope.",
            "StormWarningSignalMast | signalsOfTheOuterMast | [down] What hangs from the mast. It is taken in at night.",
            "The keepers read the settings aloud at noon.",
        ],
    ),
    "names of several words over columns of figures, one blank inside": (
        """
     ================================================================
     Storey        New  After 30 days  After 60 days  Scraped by
     ================================================================
     Lantern      2.00           1.71           1.52  gulls
     Watch room   2.00           1.84           1.77  the second
                                                      keeper
     Cellar       2.00           1.97           1.95  nobody
     ================================================================
""",
        [
            "Storey = New = After 30 days = After 60 days = Scraped by",
            "Lantern | 2.00 | 1.71 | 1.52 | gulls",
            "Watch room | 2.00 | 1.84 | 1.77 | the second keeper",
            "Cellar | 2.00 | 1.97 | 1.95 | nobody",
        ],
    ),
    "names over rows that blank lines part, one with an empty cell": (
        """
Symptom            Cause                 Remedy

No light           No oil                Fill the reservoir.

Light too weak     Dirty glass, or a     Clean the glass. If
                   wick that has burnt   that does not help,
                   down                  change the wick.

Smoke                                    Leave by the nearest
                                         stair.

No sound           Valve shut            Open it.
""",
        [
            "Symptom = Cause = Remedy",
            "No light | No oil | Fill the reservoir.",
            (
                "Light too weak | Dirty glass, or a wick that has burnt down"
                " | Clean the glass. If that does not help, change the wick."
            ),
            "Smoke |  | Leave by the nearest stair.",
            "No sound | Valve shut | Open it.",
        ],
    ),
    "a cell that leaves one blank before the next column": (
        """
PORT_LAMP   set the lamp
PORT_HORN   sound the horn
PORT_STATUS read the status of both
PORT_CLOCK  read the clock
""",
        [
            "PORT_LAMP | set the lamp",
            "PORT_HORN | sound the horn",
            "PORT_STATUS | read the status of both",
            "PORT_CLOCK | read the clock",
        ],
    ),
    "the first row leaves one blank": (
        """
PORT_STATUS_B read the status of both
PORT_LAMP     set the lamp
PORT_HORN     sound the horn
""",
        ["PORT_STATUS_B | read the status of both", "PORT_LAMP | set the lamp", "PORT_HORN | sound the horn"],
    ),
    "several columns that one blank parts in some rows": (
        """
Language Place          Set        Folder
English  Rock Station   ASCII      /rock/en
English  Harbour Office ISO 8859-1 /harbour/en
Norse    Rock Station   ASCII      /rock/no
Norse    Outer Banks    ISO 8859-1 /outer/no
""",
        [
            "Language | Place | Set | Folder",
            "English | Rock Station | ASCII | /rock/en",
            "English | Harbour Office | ISO 8859-1 | /harbour/en",
            "Norse | Rock Station | ASCII | /rock/no",
            "Norse | Outer Banks | ISO 8859-1 | /outer/no",
        ],
    ),
    "a head of two lines, and keys that wrap below themselves": (
        """
Part of the     What to do             When
lamp

Burner and      trim the wick and      each evening
chimney         wipe the glass         before dusk
Clockwork       wind it up             every four hours
Lens            polish with a soft     once a week
                cloth
""",
        [
            "Part of the lamp = What to do = When",
            "Burner and chimney | trim the wick and wipe the glass | each evening before dusk",
            "Clockwork | wind it up | every four hours",
            "Lens | polish with a soft cloth | once a week",
        ],
    ),
    "single words under each other are rows, and no wrapped cell": (
        """
 1     0         answer
       #x02      lamp
       #x04      horn
       #x08      door
 4     CARD32    number
""",
        ["1 | 0 | answer", " | #x02 | lamp", " | #x04 | horn", " | #x08 | door", "4 | CARD32 | number"],
    ),
    "the longest phrase of a narrow column does not go on with a capital": (
        """
Bit   Name      Meaning
---   ----      -------
 0    LAMP      Lamp is lit
                Lamp is out if clear
 1    FOG       Horn is sounding
                Set by the keeper
""",
        [
            "Bit = Name = Meaning",
            "0 | LAMP | Lamp is lit",
            " |  | Lamp is out if clear",
            "1 | FOG | Horn is sounding",
            " |  | Set by the keeper",
        ],
    ),
    "ranges of numbers set flush right": (
        """
      0      the lamp is out
    1-9      the lamp burns low
  10-99      the lamp burns as it should
100-255      the lamp burns too high; trim
             the wick
""",
        [
            "0 | the lamp is out",
            "1-9 | the lamp burns low",
            "10-99 | the lamp burns as it should",
            "100-255 | the lamp burns too high; trim the wick",
        ],
    ),
    "labels in the middle of their text, and no head": (
        """
            The lamp is lit at dusk and
Evening     burns until the sun is well
            up.

            The glass is wiped and the
Morning     brass is polished.

            Nothing is done but the log,
Noon        which is read over by the
            principal keeper.
""",
        [
            "Evening | The lamp is lit at dusk and burns until the sun is well up.",
            "Morning | The glass is wiped and the brass is polished.",
            "Noon | Nothing is done but the log, which is read over by the principal keeper.",
        ],
    ),
    "rules in parts above and below": (
        """
=======  ==========  ======
Day      Work        Keeper
=======  ==========  ======
Monday   Glass       first
Tuesday  Brass and   second
         paint
Friday   Oil         first
=======  ==========  ======
""",
        [
            "Day = Work = Keeper",
            "Monday | Glass | first",
            "Tuesday | Brass and paint | second",
            "Friday | Oil | first",
        ],
    ),
    "all rows ruled, and no head": (
        """
+--------+---------------------+
| lit    | the lamp burns      |
+--------+---------------------+
| out    | the lamp is cold    |
+--------+---------------------+
| horn   | the horn sounds     |
+--------+---------------------+
""",
        ["lit | the lamp burns", "out | the lamp is cold", "horn | the horn sounds"],
    ),
    "all rows ruled, and a head": (
        """
+--------+---------------------+
| Word   | Meaning             |
+--------+---------------------+
| out    | the lamp is cold    |
+--------+---------------------+
| horn   | the horn sounds     |
+--------+---------------------+
""",
        ["Word = Meaning", "out | the lamp is cold", "horn | the horn sounds"],
    ),
    "two rows that stand alone": (
        """
The store holds:

  wicks       in the box under the stair
  matches     in the tin on the shelf

and nothing else.
""",
        [
            "The store holds:",
            "wicks | in the box under the stair",
            "matches | in the tin on the shelf",
            "and nothing else.",
        ],
    ),
    "options with arguments, other spellings and lines of their own": (
        """
-o FILE   Write the tide table to FILE.
-p PORT, --port=PORT
          The port for which the table is made. It must be in the list.
-q        Say nothing.
--height-of-the-gauge HEIGHT
          Use HEIGHT.
""",
        [
            "[-o FILE] Write the tide table to FILE.",
            "[-p PORT, --port=PORT] The port for which the table is made. It must be in the list.",
            "[-q] Say nothing.",
            "[--height-of-the-gauge HEIGHT] Use HEIGHT.",
        ],
    ),
    "options whose text goes on deeper": (
        """
  -d, --days=DAYS      make a table for DAYS days, which must be
                         at least one
  -f, --from=DATE      begin at DATE
      --help           show this text
""",
        [
            "[-d, --days=DAYS] make a table for DAYS days, which must be at least one",
            "[-f, --from=DATE] begin at DATE",
            "[--help] show this text",
        ],
    ),
    "a key of many words with its meaning below": (
        """
The ring of keys
        Six keys on a brass ring. It hangs behind the door of the oil
        store.
The lens
        Turns on rollers.
The clockwork that turns the lens
        Is wound up every four hours.
""",
        [
            "[The ring of keys] Six keys on a brass ring. It hangs behind the door of the oil store.",
            "[The lens] Turns on rollers.",
            "[The clockwork that turns the lens] Is wound up every four hours.",
        ],
    ),
    "keys of which some leave one blank": (
        """
The seal can be in one of five states, and the log must have the one that it was in.

FAIL     the seal was broken, or was set by another keeper
         than the one in the log.
NONE     there is no seal.
BROKEN   the seal is broken.
UNSEALED there never was one.
HARBOURS the seal of the harbour.
""",
        [
            "The seal can be in one of five states, and the log must have the one that it was in.",
            "[FAIL] the seal was broken, or was set by another keeper than the one in the log.",
            "[NONE] there is no seal.",
            "[BROKEN] the seal is broken.",
            "[UNSEALED] there never was one.",
            "[HARBOURS] the seal of the harbour.",
        ],
    ),
    "contents whose leader is blank": (
        """
CONTENTS

1.   The rock                                   1
1.1  The landing                                2
2.   The lamp                                   5
2.1  Trimming the wick and cleaning
     the glass                                  7
     Index                                     11
""",
        [
            "CONTENTS",
            "[1.] The rock 1",
            "[1.1] The landing 2",
            "[2.] The lamp 5",
            "[2.1] Trimming the wick and cleaning the glass 7",
            "Index 11",
        ],
    ),
    "leaders of other signs, to words, and a first entry that wraps": (
        """
  The chest, with its lock, its key and a
     strap -----------------------------  31.00
  Strap --------------------------------   2.50

  Sails, made up  . . . . . . . . . . . . on request
  Sailcloth . . . . . . . . . . . . . . .  0.95

  Story ................................. the first keeper
  Drawings .............................. nobody
""",
        [
            "The chest, with its lock, its key and a strap --- 31.00",
            "Strap --- 2.50",
            "Sails, made up ... on request",
            "Sailcloth ... 0.95",
            "Story ... the first keeper",
            "Drawings ... nobody",
        ],
    ),
    "a head over the figures, a key that wraps, and a note under a short rule": (
        """
                                  single    return

  Persons, above twelve years of
  age                               0.40      0.70
  Persons, below                    0.20      0.35
  Machines, in a box that can be
  lifted by two                     1.00
          ----------
* On request also in fresh.
""",
        [
            " = single = return",
            "Persons, above twelve years of age | 0.40 | 0.70",
            "Persons, below | 0.20 | 0.35",
            "Machines, in a box that can be lifted by two | 1.00 | ",
            "preformatted: ----------",
            "* On request also in fresh.",
        ],
    ),
    "an index in two columns": (
        """
Bell, 3, 12                      Lamp, 1, 4-6
  in fog, 13                       trimming of, 5
Boat, 2                          Landing, 2
Brass, 7                         Log, 9, 11
Clockwork, 8                     Oil, 4
Door, 10                         Wick, 5
""",
        [
            "preformatted: Bell, 3, 12 /   in fog, 13 / Boat, 2 / Brass, 7 / Clockwork, 8 / Door, 10",
            "preformatted: Lamp, 1, 4-6 /   trimming of, 5 / Landing, 2 / Log, 9, 11 / Oil, 4 / Wick, 5",
        ],
    ),
    "an index of items whose places stand at the right": (
        """
* Bell:                                Fog signals.         (line   28)
* Bell, in fog:                        Fog signals.         (line   41)
* Boat:                                The boat and its landing place.
                                                            (line   12)
* Brass:                               Polishing.           (line  107)
""",
        [
            "[*] Bell: Fog signals. (line 28)",
            "[*] Bell, in fog: Fog signals. (line 41)",
            "[*] Boat: The boat and its landing place. (line 12)",
            "[*] Brass: Polishing. (line 107)",
        ],
    ),
    "a middle cell of many lines": (
        """
Light     Goods            Arrived
Skerry    two barrels of   4 Nov
          paraffin, one
          funnel, eleven
          cabbages and
          the wrong log
          book
Rock      one goat         9 Nov
          (returned)
Stack     four chimneys    2 Dec
""",
        [
            "Light = Goods = Arrived",
            "Skerry | two barrels of paraffin, one funnel, eleven cabbages and the wrong log book | 4 Nov",
            "Rock | one goat (returned) | 9 Nov",
            "Stack | four chimneys | 2 Dec",
        ],
    ),
    "an empty middle cell beside a key": (
        """
What     | Keeps     | Remarks
---------+-----------+------------------------------------
fish     | one day   | in November two
bread    | nine days | eleven, if nobody looks too closely
biscuits |           | do not spoil
""",
        [
            "What = Keeps = Remarks",
            "fish | one day | in November two",
            "bread | nine days | eleven, if nobody looks too closely",
            "biscuits |  | do not spoil",
        ],
    ),
    "justified text above a head with a rule": (
        """
Moves are exchanged at ten in  the  evening,  after  the
weather.  Keepers  of other lights are asked not to join
in.

No.   Message      What to do
========================================================
  1   NO ROOM      Delete something. The editor needs
                   twice the size of the file.
  2   READ ONLY    The file is marked.
""",
        [
            "Moves are exchanged at ten in the evening, after the weather. Keepers of other lights are asked not to join in.",
            "No. = Message = What to do",
            "1 | NO ROOM | Delete something. The editor needs twice the size of the file.",
            "2 | READ ONLY | The file is marked.",
        ],
    ),
    "figures at the right of their column, under a head of three lines": (
        """
Mark      Height above   Who may land   Remarks
         the datum, in
                  feet
-----   --------------   ------------   -----------------------
red                 12   nobody         The lower steps are
                                        gone.
white                8   keepers
green              0.5                  seen twice since 1931
""",
        [
            "Mark = Height above the datum, in feet = Who may land = Remarks",
            "red | 12 | nobody | The lower steps are gone.",
            "white | 8 | keepers | ",
            "green | 0.5 |  | seen twice since 1931",
        ],
    ),
    "a narrow middle column beside running text": (
        """
Name         Size  What it is

LAMPLOG.ARC  42k   the log program, version 2.1, with its
                   manual, which is not the manual of
                   version 2.0
TIDE13.ARC   31k   tides
MOON.COM     2k    the age of the moon, in days
""",
        [
            "Name = Size = What it is",
            "LAMPLOG.ARC | 42k | the log program, version 2.1, with its manual, which is not the manual of version 2.0",
            "TIDE13.ARC | 31k | tides",
            "MOON.COM | 2k | the age of the moon, in days",
        ],
    ),
    "bullets with keys of their own": (
        """
* en:    English (lamp)
* no:    Norse (horn)
* sc:    Scots (door)
""",
        ["[*] en: English (lamp)", "[*] no: Norse (horn)", "[*] sc: Scots (door)"],
    ),
    "settings are kept, a legend is a list": (
        """
    DRIVER = tower
    COUNT = 4
    PATH = /rock/lamp

L = lamp
H = horn
D = door to the stair
""",
        [
            "preformatted: DRIVER = tower / COUNT = 4 / PATH = /rock/lamp",
            "[L =] lamp",
            "[H =] horn",
            "[D =] door to the stair",
        ],
    ),
    "a justified paragraph below a table is none of its rows": (
        """
No.   Message      What to do
==========================================================
  1   NO OIL       Fill the tank. The pump needs two men
                   and the long spanner.
  2   LAMP HOT     Turn the wick down and open the vent.
 15                This message is not used.
 99   LAMP OUT     Leave the horn, go up and look.

Sand, not water. The bucket stands behind the  door  and
has  been there since the tower was built. The keeper of
the watch shall see to it that the  sand  is  dry.
""",
        [
            "No. = Message = What to do",
            "1 | NO OIL | Fill the tank. The pump needs two men and the long spanner.",
            "2 | LAMP HOT | Turn the wick down and open the vent.",
            "15 |  | This message is not used.",
            "99 | LAMP OUT | Leave the horn, go up and look.",
            (
                "Sand, not water. The bucket stands behind the door and has been there since the tower was built. "
                "The keeper of the watch shall see to it that the sand is dry."
            ),
        ],
    ),
    "a justified item of one row is no table": (
        """
      2    Lost bells (fog or ice) and a broken rod  or  two
           in the horn.

      3    Other   serious  failures,  shattered  telescopes,
           smashed  galleries and  chimneys   or  tin-plate
           clocks.

      4    Minor failures, out of date tide lists, and  bells
           that ring when nobody has touched the rope.
""",
        [
            "[2] Lost bells (fog or ice) and a broken rod or two in the horn.",
            "[3] Other serious failures, shattered telescopes, smashed galleries and chimneys or tin-plate clocks.",
            "[4] Minor failures, out of date tide lists, and bells that ring when nobody has touched the rope.",
        ],
    ),
    "a row goes on below its head printed again": (
        """
The keepers tell the store what they want:

Mark  Oil       Remarks

C     Colza     burns white, smells of cabbage, and is dear
P     Paraffin  burns bright; the wick wants trimming twice
\f
Mark  Oil       Remarks

                in a night
S     Seal      only where nothing else is in the store
X     Unknown   not to be used near the lens
""",
        [
            "The keepers tell the store what they want:",
            "Mark = Oil = Remarks",
            "C | Colza | burns white, smells of cabbage, and is dear",
            "P | Paraffin | burns bright; the wick wants trimming twice in a night",
            "S | Seal | only where nothing else is in the store",
            "X | Unknown | not to be used near the lens",
            "furniture: Mark  Oil       Remarks",
        ],
    ),
    "a column named by an abbreviation": (
        """
+------+----------------+---------+
| No.  | Article        |   Price |
+------+----------------+---------+
| A-1  | Wick, flat,    |    3.40 |
|      | for the lamp   |         |
+------+----------------+---------+
| A-2  | Wick, round    |    3.85 |
+------+----------------+---------+
""",
        ["No. = Article = Price", "A-1 | Wick, flat, for the lamp | 3.40", "A-2 | Wick, round | 3.85"],
    ),
    "a head of three lines without a rule": (
        """
  Mark      Height above   Who may land   Remarks
           the datum, in
                    feet
  red                 12   nobody         The lower steps are gone; the boat turns
                                          back at the second mark of the wall.
  white                8   keepers
  black                4   everybody      Bring the goat in.
  green              0.5                  seen twice in ninety years
""",
        [
            "Mark = Height above the datum, in feet = Who may land = Remarks",
            "red | 12 | nobody | The lower steps are gone; the boat turns back at the second mark of the wall.",
            "white | 8 | keepers | ",
            "black | 4 | everybody | Bring the goat in.",
            "green | 0.5 |  | seen twice in ninety years",
        ],
    ),
    "a column named by some words with a comma": (
        """
+-------+----------------+--------------------------+
| Mark  |   Height above | Remarks                  |
|       |  the datum, in |                          |
|       |           feet |                          |
+-------+----------------+--------------------------+
| red   |             12 | The lower steps are      |
|       |                | gone; the boat turns.    |
+-------+----------------+--------------------------+
| white |              8 | The landing is wet.      |
+-------+----------------+--------------------------+
""",
        [
            "Mark = Height above the datum, in feet = Remarks",
            "red | 12 | The lower steps are gone; the boat turns.",
            "white | 8 | The landing is wet.",
        ],
    ),
    "keys in brackets, the last touching its column": (
        """
To start the lamp:
(Windlass)  wind the clock up and let the brake go
(Pump)      press the handle
(HAND LAMP) light the wick and carry it to the gallery:
            three keepers are enough
""",
        [
            "To start the lamp:",
            "[(Windlass)] wind the clock up and let the brake go",
            "[(Pump)] press the handle",
            "[(HAND LAMP)] light the wick and carry it to the gallery: three keepers are enough",
        ],
    ),
    "blanks of justified text at one column make no keys": (
        """
     The  keepers  of  the rock are represented in the
book  of  the  house by their marks.  The keeper's own
mark is a lamp.

     What they say to one another is written in red by
the  third keeper, who reads well and  has  the  large
\f
hand of a clerk, and who wants his tea at four.

     A second book is kept for the boat, and it is not
one  which  the  keepers  may  read, for they would be
\f
sorry to know what the boat thinks about their hats.

     A third book has the letters.  It lies  with  the
old  nets, where nobody who reads has ever looked into
\f
it, and where the goat has its bed.
""",
        [
            (
                "The keepers of the rock are represented in the book of the house by their marks. The keeper's own "
                "mark is a lamp."
            ),
            (
                "What they say to one another is written in red by the third keeper, who reads well and has the "
                "large hand of a clerk, and who wants his tea at four."
            ),
            (
                "A second book is kept for the boat, and it is not one which the keepers may read, for they would "
                "be sorry to know what the boat thinks about their hats."
            ),
            (
                "A third book has the letters. It lies with the old nets, where nobody who reads has ever looked "
                "into it, and where the goat has its bed."
            ),
        ],
    ),
    "dashes in a sentence make no keys": (
        """
     However, if you hear a boat which you cannot see  or
hail  --  perhaps the fog is between it and you with the
horn -- a special lamp is lit and the bell on the rock is
rung until it answers.
""",
        [
            (
                "However, if you hear a boat which you cannot see or hail -- perhaps the fog is between it and you "
                "with the horn -- a special lamp is lit and the bell on the rock is rung until it answers."
            ),
        ],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_case(name: str) -> None:
    text, wanted = CASES[name]
    assert shown(text) == wanted


@pytest.mark.parametrize(
    "head",
    [
        "Day        Work          Keeper\n---------  ------------  ---------\n",
        "+---------+----------------+\n| Day     | Work           |\n+---------+----------------+\n",
    ],
)
def test_a_head_printed_again_after_a_page_end_is_furniture(head: str) -> None:
    days = [["Monday", "Glass", "first"], ["Tuesday", "Brass", "second"], ["Friday", "Oil", "first"]]
    rows = [f"{day:11}{work:14}{keeper}" for day, work, keeper in days]
    if head.startswith("+"):
        rows = [f"| {day:8}| {work:15}|" for day, work, _ in days]
    lead = "The keepers share the work of the week, each on his own days:\n\n"
    again = "\n".join([rows[2], rows[0]])
    found = blocks(lead + head + "\n".join(rows) + "\n\f" + head + again + "\n")
    assert [block.kind for block in found] == [Kind.PARAGRAPH, Kind.TABLE, Kind.FURNITURE]
    assert found[1].header_rows == 1
    assert len(found[1].rows) == 6


def test_a_head_whose_longest_name_leaves_one_blank() -> None:
    text = "    KEY WHAT IT DOES\n    --- ------------\n    ^L  lights the lamp on the screen (not the other one,\n"
    text += "        whatever you have been told)\n    ^W  winds\n    ^Q\n    ^X  leaves, and asks first\n"
    assert shown(text) == [
        "KEY = WHAT IT DOES",
        "^L | lights the lamp on the screen (not the other one, whatever you have been told)",
        "^W | winds",
        "^Q | ",
        "^X | leaves, and asks first",
    ]


def test_a_key_of_two_lines_between_blank_lines() -> None:
    text = "     By the glass         What one feels\n\n     10 degrees or        Nothing.  It is a summer\n"
    text += "     more                 night in the wrong month.\n\n     0 to 10              The hands.\n\n"
    text += "     under 0              The whole of it, as far as\n                          it can be felt at all.\n"
    assert shown(text)[1:] == [
        "10 degrees or more | Nothing. It is a summer night in the wrong month.",
        "0 to 10 | The hands.",
        "under 0 | The whole of it, as far as it can be felt at all.",
    ]


def test_rooms_with_an_opening_between_them_are_no_table() -> None:
    plan = "   +-----------------------------------+\n   |  biscuit    |   1    |            |\n"
    plan += "   |-------------+        |   2        |\n   |  flour           stair            |\n"
    plan += "   |-------------+        |------------|\n   |  3          |        |   4   tins |\n"
    plan += "   +-------------+--------+------------+\n"
    assert [block.kind for block in blocks(plan)] == [Kind.PICTURE]
    spanned = plan.replace("  flour           stair            ", "  flour      | stair  |            ")
    assert [block.kind for block in blocks(spanned)] == [Kind.TABLE]


def test_a_cell_goes_on_after_a_short_page() -> None:
    page = "The keepers count the barrels on the first day of each month, in the\nmorning, and write them down.\n\n"
    tanks = "     Tank      Gallons    Rod       Remarks\n\n     A             450    48 in.    for the lamp only\n"
    tanks += "     C             110    31 in.    leaks\n     D              40    11 in.    carried by hand from\n"
    text = f"{page * 9}\f{page * 9}\f{tanks}\f{' ' * 36}the landing\n\n{page * 8}"
    assert "D | 40 | 11 in. | carried by hand from the landing" in shown(text)


def test_a_sign_within_a_word_of_a_drawn_table_crosses_nothing() -> None:
    rule = "+-----------------------+-----------------------+\n"
    rows = [
        ("#", "Sign", "Meaning"),
        ("1", "U+2191", "fog from U+2190"),
        ("2", "U+2193", "clear, U+21D3"),
        ("3", "U+2192", "ship"),
    ]
    text = rule + "".join(f"|{key:>2} | {sign:<18}| {said:<22}|\n{rule}" for key, sign, said in rows)
    assert shown(text)[1:] == [
        "1 | U+2191 | fog from U+2190",
        "2 | U+2193 | clear, U+21D3",
        "3 | U+2192 | ship",
    ]


@pytest.mark.parametrize("gap", ["", "\n"])
def test_words_below_a_rule_and_right_over_text_are_no_row(gap: str) -> None:
    signed = "Maren Holm                   The Rock               Bell:  14 strokes\n"
    signed += "holm@skerry.example          Skerry                 Lamp:  6 flashes\n"
    question = f"Question 4.7\n{gap}Holm (holm@skerry.example) asked what the lamp is for, and was told.\n"
    found = blocks(f"The bell is rung in fog.\n\n{signed}{'-' * 72}\n{question}")
    assert any(block.rows for block in found)
    assert all("Question" not in cell.chars for block in found for row in block.rows for cell in row)
    assert any("Question 4.7" in block.text.chars for block in found)


def test_a_table_at_the_top_of_a_page_after_a_drawing_at_the_foot_of_the_one_before() -> None:
    """Its bars stand elsewhere: it is another, and no part of the drawing."""
    drawing = [
        "           7     6     5     4",
        "        +-----+-----+-----+-----+",
        "  STAT  | RDY | ERR | WET | DRY |",
    ]
    drawing += [drawing[1], "  CTRL  | GO  |  -  |  -  |  -  |", drawing[1]]
    table = ["    +------+--------+----------------+", "    | Addr | Access | Use            |"]
    table += [table[0].replace("-", "="), "    | 0    | R      | Read this one  |"]
    table += ["    |      |        | before others. |", "    | 1    | W      |                |", table[0]]
    text = "\n".join([*drawing, "", "\f", *table, "", "The end.", ""])
    rows = [row for block in read_text(text, "a drill", "ascii").blocks for row in block.rows]
    assert [[cell.chars for cell in row] for row in rows[-3:]] == [
        ["Addr", "Access", "Use"],
        ["0", "R", "Read this one before others."],
        ["1", "W", ""],
    ]


def test_wide_blanks_part_columns_beside_one_drawn_bar() -> None:
    text = (
        "  Horn          Boat         | Answer\n"
        "  ---------------------------+-------------------------\n"
        "  - -           from north   | one stroke of the bell\n"
        "  -- --         from south   | one stroke\n"
        "  - -- -        stores       | three strokes, and light\n"
        "                             | the landing\n"
        "  ---------------------------+-------------------------\n"
    )
    [table] = [block for block in read_text(text, "horns", "ascii").blocks if block.kind is Kind.TABLE]
    assert [cell.chars for cell in table.rows[0]] == ["Horn", "Boat", "Answer"]
    assert [cell.chars for cell in table.rows[-1]] == [
        "- -- -",
        "stores",
        "three strokes, and light the landing",
    ]
