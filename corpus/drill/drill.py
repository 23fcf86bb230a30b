"""The lamp drill of the Skerry Light: a panel that refuses a small screen.

It looks at the terminal's size and will not start on fewer than 80 columns and 24 rows. On a screen that is
large enough it draws a form, addresses every field, and answers in the field beside the question. Any
Python 3.11 or later; no clock, no chance.
"""

from __future__ import annotations

import os
import sys

STEPS = (
    ("Trim the wick square", "c"),
    ("Lower the glass, never drop it", "a"),
    ("Open the damper a quarter", "d"),
    ("Light from the left", "b"),
    ("Wait for the flame to stand", "e"),
)

GIVEN = (
    ("a", "so that the chimney does not crack"),
    ("b", "because the draught comes from the right"),
    ("c", "or it burns to one side and smokes"),
    ("d", "more, and it roars; less, and it soots"),
    ("e", "then, and only then, wind the clockwork"),
)


def at(row: int, column: int, text: str) -> str:
    """The text, placed; rows and columns count from 1."""
    return f"\x1b[{row};{column}H{text}"


def screen_size() -> tuple[int, int]:
    """Columns and rows of the terminal; 80 and 25 where there is none."""
    try:
        columns, rows = os.get_terminal_size(sys.stdout.fileno())
    except OSError:
        return 80, 25
    return columns, rows


def form() -> str:
    """The panel: the steps on the left, their reasons on the right, a field for each answer."""
    parts = ["\x1b[2J", at(1, 28, "\x1b[7m LAMP DRILL, THIRD KEEPER \x1b[m")]
    parts.append(at(3, 4, "Step") + at(3, 36, "Reason") + at(3, 44, "The reasons to choose from"))
    for number, (step, _) in enumerate(STEPS):
        parts.append(at(5 + 3 * number, 4, f"{number + 1}  {step}") + at(5 + 3 * number, 36, "[ ]"))
    for number, (letter, reason) in enumerate(GIVEN):
        parts.append(at(5 + 3 * number, 44, f"{letter}  {reason[:34]}"))
        parts.append(at(6 + 3 * number, 47, reason[34:].strip()))
    return "".join(parts)


def main() -> int:
    """Ask for each step's reason; the exit status is the number of wrong ones, 2 where the screen is too small."""
    columns, rows = screen_size()
    if columns < 80 or rows < 24:
        print(
            f"The lamp drill needs a terminal of 80 columns and 24 rows; this one has {columns} and {rows}."
        )
        return 2
    wrong = 0
    sys.stdout.write(form())
    for number, (_, right) in enumerate(STEPS):
        sys.stdout.write(at(22, 4, f"\x1b[KReason for step {number + 1}, a to e: "))
        sys.stdout.flush()
        answer = sys.stdin.readline().strip().lower()
        good = answer == right
        wrong += not good
        sys.stdout.write(
            at(5 + 3 * number, 37, answer[:1]) + at(6 + 3 * number, 36, "right" if good else "no: " + right)
        )
    verdict = "You may light the lamp." if not wrong else f"{wrong} wrong. Not tonight."
    sys.stdout.write(at(22, 4, "\x1b[K" + verdict) + "\r\n")
    return min(wrong, 1)


if __name__ == "__main__":
    raise SystemExit(main())
