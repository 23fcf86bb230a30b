"""The log book of the Skerry Light: a reader that looks at the terminal's size.

Told the truth, it breaks lines at the width it finds and stops after each screenful, with a prompt in the
last row. Told 80x25 and shown on a small screen, it prints lines and pages that the small one cannot hold.
Any Python 3.11 or later; no clock, no chance.
"""

from __future__ import annotations

import os
import sys
import textwrap

ENTRIES = (
    (
        "1 November",
        (
            "Wind south-west, moderate. Lamp lit at 4.41. Burned clear all night. Ship's bell heard at 2 from the north "
            "side, five strokes, no ship seen. T. Grieve says a buoy adrift. There is no buoy on that side."
        ),
    ),
    (
        "2 November",
        (
            "Wind west, fresh. Relief boat turned back at the bar. Counted stores and find us good for forty days without "
            "her. I. Sallow is put on the middle watch, his first, and is told the rule: in fog sound twice each minute, "
            "and count the charges."
        ),
    ),
    (
        "3 November",
        (
            "Fog from noon. Sounded 412 charges. Bell again at 2, five strokes, nearer. Whoever rings keeps better time "
            "than our clock. I have set the clock by it and find that we were a minute slow."
        ),
    ),
    (
        "4 November",
        (
            "Gale, north-west. Seas over the gallery, one pane cracked on the weather side and boarded. At 8.20 left the "
            "lamp to I. Sallow and put off in the skiff for a boat on the Gull Rocks. Brought in five. The lamp burned "
            "throughout. He has done well and shall not be told so."
        ),
    ),
    (
        "5 November",
        (
            "Wind falling. Five strangers at table and four chairs. The eldest, a ship's carpenter, has mended the pane "
            "for his supper. Asks who rings the bell. Told him that we thought it was theirs."
        ),
    ),
    (
        "6 November",
        (
            "Calm. Sent the five in with the relief boat at slack water. At 2 went out on the north side with a lantern "
            "and waited. Five strokes, at my elbow. There is nothing there but the rock. I have entered it as a bell."
        ),
    ),
    (
        "7 November",
        "Calm. No bell. We find we miss it.",
    ),
    (
        "8 November",
        (
            "Light airs, south. Cleaned the lens, eleven hours, all three of us. Found behind the third prism a dead "
            "moth, a hairpin and a ship's biscuit of the old pattern. Nobody will own to the biscuit."
        ),
    ),
    (
        "9 November",
        (
            "Wind south-west, rising. T. Grieve has been looking at the reef through the glass at low water, two days "
            "running, and says that he counts seals. There are more of them than there were. He has asked for a day "
            "ashore and did not say what for. Granted."
        ),
    ),
    (
        "10 November",
        (
            "Rain. Oil in hand 9 cans, of which one is the can numbered seven and has been put back on its shelf by "
            "I. Sallow without being told. The dust will find its ring again."
        ),
    ),
)


def screen_size() -> tuple[int, int]:
    """Columns and rows of the terminal; 80 and 25 where there is none."""
    try:
        columns, rows = os.get_terminal_size(sys.stdout.fileno())
    except OSError:
        return 80, 25
    return columns, rows


def pages(columns: int, rows: int) -> list[list[str]]:
    """The whole log as pages of one row less than the screen has; that row is the prompt's."""
    lines: list[str] = []
    for day, text in ENTRIES:
        lines += [day.upper(), *textwrap.wrap(text, columns - 1), ""]
    height = rows - 1
    return [lines[top : top + height] for top in range(0, len(lines), height)]


def main() -> None:
    """Show a page, wait for Return, show the next; q ends."""
    columns, rows = screen_size()
    book = pages(columns, rows)
    for number, page in enumerate(book, 1):
        print("\n".join(page))
        print(f"[{number} of {len(book)}] Return, or q: ", end="", flush=True)
        answer = sys.stdin.readline()
        if not answer or answer.strip().lower() == "q":
            return


if __name__ == "__main__":
    main()
