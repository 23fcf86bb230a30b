"""Invented text about the Skerry Light, as much as wanted, out of a seeded generator."""

from __future__ import annotations

import random

from gold import GoldBlock

_SUBJECTS = [
    "the keeper",
    "the second keeper",
    "the relief boat",
    "the lamp",
    "the fog signal",
    "the barometer",
    "the oil store",
    "the clockwork",
    "the night watch",
    "the tide table",
    "the landing stage",
    "the log book",
    "a storm petrel",
    "the harbour office",
    "the brass reflector",
    "the spare mantle",
    "the rain gauge",
    "whoever stands the watch",
]
_VERBS = [
    "keeps",
    "must not disturb",
    "is checked before",
    "waits for",
    "was repaired after",
    "turns toward",
    "records",
    "depends on",
    "comes before",
    "is wound twice during",
    "cannot be seen from",
    "carries",
    "needs",
    "replaces",
    "is older than",
    "warns",
]
_OBJECTS = [
    "the evening drill",
    "a well-trimmed wick",
    "the spring tide of 1984",
    "every vessel within twenty-one miles",
    "the north-easterly gale",
    "the read-only register",
    "supplies for ten days",
    "the paraffin pump",
    "a self-locking hatch",
    "the next entry",
    "the half-hourly reading",
    "the granite steps",
    "anyone who is late",
    "two tons of coal",
    "the storeroom key",
    "an undamaged lens",
    "the signal halyards",
    "its own reflection",
    "the weather telegram",
    "page 12 of the station orders",
]
_ENDS = [
    "when the wind backs",
    "although nobody says so",
    "unless the glass is falling",
    "as the regulations require",
    "in spite of the spray",
    "before the boat is lowered",
    "at the turn of the watch",
    "with some difficulty",
    "for the rest of the winter",
    "under the gallery",
    "and then only by daylight",
    "so that the flash is never late",
    "(see section 4)",
]
_TITLES = [
    "The Lamp",
    "Trimming the Wick",
    "Fog and Snow",
    "Supplies",
    "The Relief Boat",
    "Tides",
    "Watch Keeping",
    "The Log Book",
    "Repairs",
    "Signals",
    "Winding the Clockwork",
    "In Case of Fire",
    "Stores and Spares",
    "The Landing",
    "Reading the Barometer",
]
_CODE = (
    ["A>LAMP /T:30", "A>TYPE TIDES.TXT", "A>B:"],
    ["10 REM FLASH THE LAMP", '20 PRINT "FLASH"', "30 FOR I=1 TO 500: NEXT I", "40 GOTO 20"],
    ["LOOP:   LXI  D,LAMP    ; the next flash", "        CALL FLASH", "        JMP  LOOP"],
)
_VERSE = (
    [
        "Trim the wick and wind the spring,",
        "Hear the evening petrel sing;",
        "Keep the flame and keep it bright,",
    ],
    ["The Principal Keeper", "Skerry Light", "by Port Anders"],
)
_PICTURE = ("   +--------+", "   | gallery|", "---+--------+---", "   | lamp   |    N", "   +--------+    ^")


def sentence(rng: random.Random) -> str:
    """One sentence."""
    text = f"{rng.choice(_SUBJECTS)} {rng.choice(_VERBS)} {rng.choice(_OBJECTS)}"
    if rng.random() < 0.6:
        text += f"{rng.choice([',', ''])} {rng.choice(_ENDS)}"
    if rng.random() < 0.15:
        text += f" - {rng.choice(_OBJECTS)}"
    return text[0].upper() + text[1:] + rng.choice([".", ".", ".", ".", "!"])


def paragraph(rng: random.Random, least: int = 2, most: int = 6) -> str:
    """A few sentences."""
    return " ".join(sentence(rng) for _ in range(rng.randint(least, most)))


def manual(seed: int, sections: int = 6) -> list[GoldBlock]:
    """A manual: headings, paragraphs, lists, tables, program text, verse and a picture."""
    rng = random.Random(seed)
    loud = rng.random() < 0.5
    blocks: list[GoldBlock] = []
    for number in range(1, sections + 1):
        title = rng.choice(_TITLES)
        title = f"{number}. {title}" if seed % 3 == 0 else title
        blocks.append(GoldBlock("heading", title.upper() if loud else title, level=1))
        blocks += [GoldBlock("paragraph", paragraph(rng)) for _ in range(rng.randint(1, 3))]
        blocks += rng.choice([_items, _table, _kept, _keys])(rng)
        blocks.append(GoldBlock("paragraph", paragraph(rng)))
    return blocks


def _items(rng: random.Random) -> list[GoldBlock]:
    make = rng.choice(["{n}.", "({n})", "-", "*", "o", "{a})", "{n})"])
    return [
        GoldBlock("item", paragraph(rng, 1, 3), make.replace("{n}", str(n)).replace("{a}", chr(96 + n)))
        for n in range(1, rng.randint(3, 8))
    ]


def _keys(rng: random.Random) -> list[GoldBlock]:
    keys = rng.sample(["LAMP", "FOG", "TIDE", "LOG", "OIL", "BOAT"], 4)
    return [GoldBlock("item", paragraph(rng, 1, 2), key.ljust(6)) for key in keys]


def _table(rng: random.Random) -> list[GoldBlock]:
    head = ["Day", "High water", "Height", "Remarks"]
    days = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"]
    rows = [
        [
            day,
            f"{rng.randint(0, 23):02}:{rng.randint(0, 59):02}",
            f"{rng.randint(1, 5)}.{rng.randint(0, 9)}",
            rng.choice(["landing possible on the lee side only", "calm", "heavy swell", "no landing"]),
        ]
        for day in days
    ]
    return [GoldBlock("table", rows=[head, *rows], header_rows=1)]


def _kept(rng: random.Random) -> list[GoldBlock]:
    kind = rng.choice(["code", "lines", "picture"])
    if kind == "picture":
        return [GoldBlock("picture", lines=list(_PICTURE))]
    return [GoldBlock(kind, lines=list(rng.choice(_CODE if kind == "code" else _VERSE)))]
