"""Sessions of one seeded curses program under many terminal types: ``python curses_sessions.py SEED NAME...``.

The program keeps the log book of the Skerry Light on a screen of 80x24. Each terminal type gets a process of its
own in a pseudo-terminal, because curses loads one terminal a process. One line of JSON a terminal goes
to standard output: its name, the bytes it was sent (base 64), and what curses holds to stand on the screen.
"""

from __future__ import annotations

import base64
import contextlib
import curses
import fcntl
import json
import locale
import os
import pty
import random
import select
import signal
import struct
import sys
import termios

ROWS, COLUMNS = 24, 80
WORDS = (  # noqa: SIM905  words
    "lamp oil tide watch fog signal wick lens rock gull log keeper relief boat wind gale calm swell ebb flood "
    "neap spring stair gallery lantern shutter clockwork brass polish barometer falling steady rising"
).split()


def draw(window: curses.window, seed: int, attributes: bool) -> None:
    """Draw what an editor or a chart program draws: words at places, rules, lines moved, parts erased."""
    chance = random.Random(seed)
    kinds = [0, 0, 0, curses.A_STANDOUT, curses.A_UNDERLINE, curses.A_BOLD] if attributes else [0]
    for page in range(4):
        window.erase() if page % 2 else window.clear()
        window.addstr(0, 2, f"Skerry Light  log {page + 1}")
        _menu(window, chance, kinds)
        for _ in range(8):
            _step(window, chance, kinds)
            window.refresh()
    _no_graphics_row(window)
    window.refresh()


def _menu(window: curses.window, chance: random.Random, kinds: list[int]) -> None:
    """A line of running text with words set off inside it."""
    window.move(ROWS - 2, 1)
    for word in chance.sample(WORDS, 6):
        window.addstr(f" {word} ")
        window.addstr(chance.choice(WORDS), kinds[-1 - chance.randrange(min(3, len(kinds)))])
    window.refresh()


def _step(window: curses.window, chance: random.Random, kinds: list[int]) -> None:
    row, column = chance.randrange(1, ROWS - 1), chance.randrange(COLUMNS - 20)
    for _ in range(chance.randrange(1, 6)):
        text = " ".join(chance.choices(WORDS, k=chance.randrange(1, 5)))[: COLUMNS - column - 1]
        window.addstr(row, column, text, chance.choice(kinds))
        row, column = chance.randrange(1, ROWS - 1), chance.randrange(COLUMNS - 20)
    kind = chance.randrange(7)
    window.move(row, column)
    if kind == 0:
        window.clrtoeol()
    elif kind == 1:
        window.clrtobot()
    elif kind == 2:
        window.deleteln()
    elif kind == 3:
        window.insertln()
    elif kind == 4:
        window.hline(row, 1, curses.ACS_HLINE, COLUMNS - 3)
        window.addch(row, column, curses.ACS_PLUS)
    elif kind == 5:
        window.insstr(row, column, "ebb ")
    else:
        window.delch(row, column)


def _no_graphics_row(window: curses.window) -> None:
    window.move(ROWS - 1, 0)
    window.clrtoeol()
    window.addstr(ROWS - 1, 0, "-- end of the watch --")


def contents(window: curses.window) -> list[str]:
    """The rows as curses holds them; line drawing characters as curses spells them where there are none."""
    plain = {code: ord("-") for code in (curses.ACS_HLINE,)} | {curses.ACS_PLUS: ord("+")}
    rows = []
    for row in range(ROWS):
        cells = [window.inch(row, column) for column in range(COLUMNS)]
        rows.append(
            "".join(
                chr(plain.get(cell & (curses.A_CHARTEXT | curses.A_ALTCHARSET), cell) & 0xFF)
                for cell in cells
            )
        )
    return rows


def child(name: str, seed: int, attributes: bool, report: int) -> None:
    """Draw under one terminal type; curses exits by itself where it cannot."""
    os.environ.update(TERM=name, LINES=str(ROWS), COLUMNS=str(COLUMNS), ESCDELAY="0")
    locale.setlocale(locale.LC_ALL, "C")  # else curses sends line drawing as UTF-8
    curses.setupterm(name)
    window = curses.initscr()
    curses.noecho()
    curses.nonl()  # else the line turns a row or column of 10 into two bytes
    draw(window, seed, attributes)
    termios.tcdrain(1)
    os.write(report, json.dumps(contents(window)).encode())


def record(name: str, seed: int, attributes: bool) -> tuple[bytes, list[str] | None]:
    """The bytes the terminal was sent, and the rows; None where curses refuses the terminal."""
    reader, writer = os.pipe()
    pid, master = pty.fork()
    if pid == 0:
        fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("4H", ROWS, COLUMNS, 0, 0))
        with contextlib.suppress(Exception):
            child(name, seed, attributes, writer)
        os._exit(0)
    os.close(writer)
    output = _drain(master, pid)
    os.close(master)
    with os.fdopen(reader, "rb") as report:
        rows = report.read()
    return output, json.loads(rows) if rows else None


def _drain(master: int, pid: int) -> bytes:
    output = b""
    while True:
        ready, _, _ = select.select([master], [], [], 10)
        if not ready:
            os.kill(pid, signal.SIGKILL)
            break
        try:
            part = os.read(master, 1 << 16)
        except OSError:
            break
        if not part:
            break
        output += part
    os.waitpid(pid, 0)
    return output


def main() -> None:
    """Write one line a terminal."""
    seed, attributes = int(sys.argv[1]), sys.argv[2] == "attributes"
    for name in sys.argv[3:]:
        output, rows = record(name, seed, attributes)
        print(
            json.dumps({"name": name, "output": base64.b64encode(output).decode(), "rows": rows}), flush=True
        )


if __name__ == "__main__":
    main()
