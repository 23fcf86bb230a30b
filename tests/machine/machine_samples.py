"""Small programs of the kinds that are played: a story in rooms, a menu, a guessing game, a pager, a repaint."""

from __future__ import annotations

from machine_assembler import call, text

ROOMS = (
    "You stand on the landing stage. Steps lead north.",
    "You are at the foot of the tower. A door leads east, the steps south.",
    "You are in the oil store. A can of oil stands here. The door leads west, a stair up.",
    "You are in the lamp room. The lamp is dark. The stair leads down.",
)
MOVES = ("N", "SE", "WU", "D")
TARGETS = ((1,), (0, 2), (1, 3), (2,))


def story(title: str = "The Skerry Light") -> str:
    """A story in four rooms; it reads lines with function 10."""
    source = call(9, "title") + "show: " + call(9, "feed") + _lookup("rooms") + "ld c, 9\ncall bdos\n"
    source += "ask: " + call(9, "prompt") + call(10, "line") + call(9, "feed")
    source += "ld a, (word)\nand 0x5f\nld b, a\n"
    for room, (letters, targets) in enumerate(zip(MOVES, TARGETS, strict=True)):
        source += f"ld a, (here)\ncp {room}\njp nz, not{room}\n"
        for letter, target in zip(letters, targets, strict=True):
            source += (
                f"ld a, b\ncp {ord(letter)}\njp nz, no{room}{letter}\nld a, {target}\nld (here), a\njp show\n"
            )
            source += f"no{room}{letter}:\n"
        source += f"not{room}:\n"
    source += f"ld a, b\ncp {ord('L')}\njp z, show\ncp {ord('Q')}\njp z, 0\n"
    source += call(9, "huh") + "jp ask\n"
    source += "here: db 0\nrooms: dw " + ", ".join(f"room{i}" for i in range(len(ROOMS))) + "\n"
    source += "".join(text(f"room{i}", room + "\r\n") for i, room in enumerate(ROOMS))
    source += text("title", title + "\r\n") + text("feed", "\r\n") + text("prompt", "What now? ")
    return (
        source
        + text("huh", "You cannot do that here.\r\n")
        + "line: db 40\ncount: db 0\nword: db "
        + ", ".join(["0"] * 40)
    )


def _lookup(table: str) -> str:
    return f"ld a, (here)\nadd a, a\nld e, a\nld d, 0\nld hl, {table}\nadd hl, de\nld e, (hl)\ninc hl\nld d, (hl)\n"


def menu() -> str:
    """A menu read with function 1."""
    source = (
        "again: "
        + call(9, "menu")
        + call(1)
        + "and 0x5f\nld b, a\n"
        + call(9, "feed").replace("ld c", "ld c")
    )
    source = "again: " + call(9, "menu") + call(1) + "ld (key), a\n" + call(9, "feed")
    for letter, name in (("T", "tides"), ("O", "oil"), ("L", "log")):
        source += (
            f"ld a, (key)\nand 0x5f\ncp {ord(letter)}\njp nz, not{letter}\n"
            + call(9, name)
            + f"jp again\nnot{letter}:\n"
        )
    source += f"cp {ord('X')}\njp nz, again\nret\nkey: db 0\n"
    source += text("menu", "\r\nT) Tide tables\r\nO) Oil\r\nL) Log book\r\nX) Exit\r\nYour choice: ") + text(
        "feed", "\r\n"
    )
    source += text("tides", "High water 04:12 and 16:40.\r\n") + text("oil", "Oil for 12 nights.\r\n")
    return source + text("log", "Wind NW 6. A ship passed.\r\n")


def guess() -> str:
    """A number is guessed; it comes from a counter in the loop that polls for the first key."""
    source = (
        call(9, "start")
        + "again: ld hl, (seed)\ninc hl\nld (seed), hl\n"
        + call(6, 0xFF)
        + "or a\njp z, again\n"
    )
    source += "ld a, (seed)\nand 7\nadd a, 49\nld (number), a\n"
    source += (
        "ask: " + call(9, "prompt") + call(1) + "ld b, a\nld a, (number)\ncp b\njp z, right\njp c, less\n"
    )
    source += (
        call(9, "more") + "jp ask\nless: " + call(9, "fewer") + "jp ask\nright: " + call(9, "found") + "ret\n"
    )
    source += "seed: dw 0\nnumber: db 0\n" + text("start", "How many barrels? Press any key.\r\n")
    source += text("prompt", "\r\nA number (1-8): ") + text("more", "\r\nMore than that.")
    return source + text("fewer", "\r\nFewer than that.") + text("found", "\r\nThat is right.\r\n")


def pager() -> str:
    """Forty lines, a page at a time."""
    source = (
        "ld b, 8\nagain: push bc\n"
        + call(9, "page")
        + call(9, "more")
        + call(1)
        + "pop bc\ndec b\njp nz, again\nret\n"
    )
    lines = "".join(f"Line of the tide table for hour {hour}\r\n" for hour in range(5))
    return source + text("page", "\r" + lines) + text("more", "-- more --")


def repaint() -> str:
    """A clock that is drawn again and again until Q is typed."""
    source = "again: ld hl, (ticks)\ninc hl\nld (ticks), hl\n" + call(9, "frame") + call(6, 0xFF)
    source += "and 0x5f\ncp 81\njp nz, again\nret\nticks: dw 0\n"
    return source + text("frame", "\x1b=  Watch of the night\x1b=! Q to quit")


def stream() -> str:
    """Lines without end, and a look at the keyboard after each; a key is read and ends it."""
    source = (
        "again: " + call(9, "line") + call(11) + "or a\njp z, again\n" + call(1) + call(9, "seen") + "ret\n"
    )
    return source + text("line", "Nothing but fog.\r\n") + text("seen", "A boat!\r\n")


class Typist:
    """Types a key at each wait, and after some looks at the keyboard where the program runs on."""

    def __init__(self, keys: list[bytes]) -> None:
        self.keys = keys
        self.seen = b""
        self.looks = 0

    def show(self, output: bytes) -> None:
        self.seen += output

    def read(self, seconds: float | None) -> bytes | None:
        self.looks += 1
        if seconds is not None and self.looks % 5:
            return b""
        return self.keys.pop(0) if self.keys else None


ALL = {"story": story, "menu": menu, "guess": guess, "pager": pager, "repaint": repaint}
