"""The Seal-Wife's Debt: a story game of the Skerry Light with a status line.

Every turn clears the screen, prints the page from the top and lets the terminal break its lines. The row
at the top, in reverse video and padded to 80 columns, tells place, tide and oil; the oil burns while the
player thinks, so it is written again in place once the page stands. Any Python 3.11 or later; no clock,
no chance.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass

ROOMS = {
    "GALLERY": (
        (
            "The gallery runs round the lantern, a walk of iron lace with the wind pulled through it. Below, where the "
            "reef shows its back at low water, somebody is sitting. Nobody rowed there: there is no boat, and the reef "
            "will be gone in three hours. From here you see a grey shawl, and a hand that lifts when yours does."
        ),
        {"down": "KITCHEN"},
    ),
    "KITCHEN": (
        (
            "Tam Grieve has left his boots by the range and his supper on it. The window looks east and shows you your "
            "own face. A row of hooks, a row of mugs, and under the bench the long chest that nobody opens, with its "
            "lid not quite shut: the corner of something grey and soft has kept it from closing."
        ),
        {"up": "GALLERY", "down": "STEPS"},
    ),
    "STEPS": (
        (
            "Forty-one steps, and the sea has thirty of them when it wants. Weed marks how far it means to come. At the "
            "foot of the steps the reef begins, black and combed, and along it a line of wet prints comes towards you "
            "and stops. They are the prints of bare feet. They do not go back."
        ),
        {"up": "KITCHEN", "out": "REEF"},
    ),
    "REEF": (
        (
            "She does not turn round. 'He said a year,' she says. 'He said, a year of keeping house, and then I may have "
            "it again. He has counted the year as men count, from the money. I count it by tides.' The water talks in "
            "the cracks. 'There is one left,' says the woman, 'and you may see how much of it.'"
        ),
        {"in": "STEPS"},
    ),
}

TAKEN = "The chest lets go of it with a sigh. It is a skin, heavy and cold, and it smells of no animal you could name."

GIVEN = (
    "She takes it out of your arms as you would take a sleeping child. 'Tell Tam,' she says, 'that the house is "
    "swept.' Then the reef is empty, and out past the last rock a round dark head looks at the light for as long as "
    "the beam needs to come about, and is not there when it does.\r\n\r\nThe oil lasts. It lasts, in fact, until the "
    "spring, and nobody at the depot can account for it."
)

UNKNOWN = "You think better of it. (Try UP, DOWN, IN, OUT, TAKE SKIN, GIVE SKIN, or LEAVE.)"


@dataclass
class Night:
    """Where the night stands. The tide falls for six turns, then comes back; oil burns with each."""

    room: str = "GALLERY"
    turn: int = 0
    oil: int = 64
    carried: bool = False

    @property
    def tide(self) -> str:
        """What the tide does, as the status line says it."""
        return f"ebb, {6 - self.turn}h to low" if self.turn < 6 else f"flood, {self.turn - 5}h past low"

    def status(self) -> str:
        """The top row: 80 columns, the last figures far to the right."""
        return f" {self.room:<24}Tide: {self.tide:<28}Oil: {self.oil:>3} measures{'':<9}"[:80]


def draw(night: Night, text: str) -> None:
    """Clear, status line, page, prompt; then the oil again, because it has burnt meanwhile."""
    out = sys.stdout
    out.write("\x1b[H\x1b[2J\x1b[7m" + night.status() + "\x1b[m\r\n")
    out.write(text + "\r\n\r\nWhat now? ")
    night.oil -= 3
    out.write(f"\x1b7\x1b[1;65H\x1b[7m{night.oil:>3}\x1b[m\x1b8")
    out.flush()


def main() -> None:
    """Play until the skin is given back or the player leaves."""
    night = Night()
    text = ROOMS[night.room][0]
    while True:
        draw(night, text)
        line = sys.stdin.readline()
        words = line.lower().split()
        night.turn += 1
        match words:
            case _ if not line or words == ["leave"]:
                break
            case [way] if way in ROOMS[night.room][1]:
                night.room = ROOMS[night.room][1][way]
                text = ROOMS[night.room][0]
            case ["take", "skin"] if night.room == "KITCHEN" and not night.carried:
                night.carried = True
                text = TAKEN
            case ["give", "skin"] if night.room == "REEF" and night.carried:
                sys.stdout.write("\x1b[H\x1b[2J" + GIVEN + "\r\n")
                return
            case _:
                text = UNKNOWN
    sys.stdout.write("\x1b[H\x1b[2JYou turn your back to the glass. The tide does not.\r\n")


if __name__ == "__main__":
    main()
