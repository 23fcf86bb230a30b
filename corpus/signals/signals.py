"""The signal drill of the Skerry Light: a dialogue of short lines.

Written for a printing terminal: nothing is longer than a line of 40 columns and no answer is longer than
six. A small screen loses nothing of it. Any Python 3.11 or later; no clock, no chance.
"""

from __future__ import annotations

import sys

SIGNALS = (
    ("two short, one long, two short", "boat", "A boat asks for our light."),
    ("one long, then dark", "fog", "Fog with them; sound the charges."),
    ("three short", "doctor", "A doctor is wanted ashore."),
    ("steady, moving left", "wreck", "Someone is carrying a lamp on rocks."),
    ("five strokes of a bell", "bell", "Nobody knows. Enter it as a bell."),
)


def main() -> None:
    """Ask each signal once and count."""
    print("SIGNAL DRILL\nWhat is meant? One word.\n(boat, fog, doctor, wreck, bell)\n")
    right = 0
    for number, (seen, word, meaning) in enumerate(SIGNALS, 1):
        print(f"{number}. You see: {seen}.\n   It means: ", end="", flush=True)
        answer = sys.stdin.readline().strip().lower()
        right += answer == word
        print(f"{'Right.' if answer == word else 'No: ' + word + '.'}\n{meaning}\n")
    print(f"{right} of {len(SIGNALS)}. Maren would nod.")


if __name__ == "__main__":
    main()
