"""The pilot chart of the Skerry Light: a full-screen program that addresses the cursor.

It draws one frame of 80 columns and 24 rows, then only touches what changes: the skiff, its bearing, the
depth under it, and the last row's message. Commands are n, e, s, w (three cells a leg) and q, each with
Return. Any Python 3.11 or later; no clock, no chance.
"""

from __future__ import annotations

import math
import sys

ROWS, COLUMNS = 20, 54  # the water inside the frame
LIGHT = (8, 30)
START = (17, 9)

ROCKS = (
    (3, 12, "Gull Rocks"),
    (6, 40, "The Anvil"),
    (13, 21, "Oddy's Tooth"),
    (15, 38, "Sow and Farrow"),
)

LEGEND = (
    (2, "PILOT CHART"),
    (3, "Skerry Light"),
    (5, "*  the light"),
    (6, "^  rock, dries"),
    (7, "@  the skiff"),
    (8, "7  fathoms"),
    (10, "Bearing"),
    (12, "Depth here"),
    (14, "Run so far"),
    (17, "n e s w  sail"),
    (18, "q  come home"),
)

WAYS = {"n": (-3, 0), "s": (3, 0), "e": (0, 6), "w": (0, -6)}


def at(row: int, column: int, text: str) -> str:
    """The text, placed; rows and columns count from 1."""
    return f"\x1b[{row};{column}H{text}"


def depth(row: int, column: int) -> int:
    """Fathoms: deeper away from the light and from every rock, on a floor that rolls a little."""
    nearest = min(math.hypot(row - r, (column - c) / 2) for r, c, *_ in (*ROCKS, LIGHT))
    return max(0, round(nearest * 1.6 + math.sin(row * 0.9) + math.cos(column * 0.7)))


def frame() -> str:
    """Everything that does not move."""
    parts = ["\x1b[m\x1b[1;25r\x1b[2J", at(1, 1, "+" + "-" * COLUMNS + "+")]
    parts.extend(at(row + 1, 1, "|") + at(row + 1, COLUMNS + 2, "|") for row in range(1, ROWS + 1))
    parts.append(at(ROWS + 2, 1, "+" + "-" * COLUMNS + "+"))
    for row in range(2, ROWS, 3):
        parts.extend(at(row + 1, column + 1, str(depth(row, column))) for column in range(4, COLUMNS, 8))
    for row, column, name in ROCKS:
        parts.append(at(row + 1, column + 1, "^ " + name))
    parts.append(at(LIGHT[0] + 1, LIGHT[1] + 1, "\x1b[7m*\x1b[m"))
    parts.extend(at(row, COLUMNS + 6, text) for row, text in LEGEND)
    return "".join(parts)


def figures(row: int, column: int, run: int) -> str:
    """The skiff and the three readings beside the chart."""
    degrees = round(math.degrees(math.atan2(LIGHT[1] - column, (row - LIGHT[0]) * 2))) % 360
    return (
        at(row + 1, column + 1, "@")
        + at(11, COLUMNS + 6, f"{degrees:>3} degrees")
        + at(13, COLUMNS + 6, f"{depth(row, column):>3} fathoms")
        + at(15, COLUMNS + 6, f"{run:>3} cables")
    )


def message(text: str) -> str:
    """The row under the frame, cleared first, and the prompt after it."""
    return at(24, 1, "\x1b[K" + text) + at(24, 60, "Course: ")


def main() -> None:
    """Sail until the player comes home."""
    row, column = START
    run = 0
    sys.stdout.write(
        frame() + figures(row, column, run) + message("Wind west by north, fresh. The ebb sets south.")
    )
    while True:
        sys.stdout.flush()
        line = sys.stdin.readline()
        key = line.strip().lower()
        if not line or key == "q":
            break
        if key not in WAYS:
            sys.stdout.write(message("The skiff answers to n, e, s and w."))
            continue
        down, right = WAYS[key]
        there = (row + down, column + right)
        if not (1 <= there[0] <= ROWS and 1 <= there[1] < COLUMNS):
            sys.stdout.write(message("That is off the chart, and so is the skiff that sails there."))
            continue
        sys.stdout.write(at(row + 1, column + 1, "."))
        row, column = there
        run += 3
        water = depth(row, column)
        text = "Shoal water. The keel has touched." if water < 2 else f"Clear water, {water} fathoms."
        sys.stdout.write(figures(row, column, run) + message(text))
    sys.stdout.write(message("Made fast at the landing.") + "\r\n")


if __name__ == "__main__":
    main()
