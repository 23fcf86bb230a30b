"""Oil for the Long Night: a line-oriented story game of the Skerry Light.

It prints paragraphs broken at 78 columns and waits at a prompt, as programs written for a terminal of
80 columns do. It never moves the cursor. Any Python 3.11 or later; no clock, no chance.
"""

from __future__ import annotations

import sys
import textwrap

WIDTH = 78

PLACES = {
    "watch room": (
        (
            "The watch room is round, as every room is here, and the furniture has had to learn it: a curved bench, "
            "a curved shelf for the signal book, a barometer that leans a little off the wall. The stove ticks. "
            "Maren Oddy should have come up at eight to take the watch from you, and the clock over the shelf now says "
            "twenty past.\n"
            "An iron ladder climbs to the lantern. The stair winds down to the oil store. The lamp above you sounds "
            "wrong tonight; it draws its breath too quickly, like something near the bottom of its cup."
        ),
        {"up": "lantern", "down": "oil store"},
    ),
    "lantern": (
        (
            "Glass on all sides and the dark leaning against it. The lens turns with a noise of small teeth. Its light "
            "goes out over the Gull Rocks, finds nothing, and comes round again. The flame has gone the colour of weak "
            "tea. The gauge on the tank has a brass needle, and the needle lies on its pin.\n"
            "Far out, to the north, somebody answers your light with one of their own: two short, one long, two short."
        ),
        {"down": "watch room"},
    ),
    "oil store": (
        (
            "Nine cans on the shelf, each painted with a number, each with its ring of dust. Number seven is gone and "
            "the dust of its ring is still clean. The door to the landing stands open by the width of a hand, and the "
            "wind has left a line of wet on the flagstones that points at the missing can like a finger."
        ),
        {"up": "watch room", "out": "landing"},
    ),
    "landing": (
        (
            "The sea has the lower steps already and is thinking about the next. The davits are swung out. The small "
            "boat is not in them: the falls hang straight down into the black water, and they are slack.\n"
            "On the top step, set down with care, its handle turned inward as the rule book asks, stands can number "
            "seven. Under it, folded in four, is a page torn from the log."
        ),
        {"in": "oil store"},
    ),
}

NOTE = (
    "The hand is Maren's, large and in a hurry. 'A boat on the Gull Rocks with five in her and no light. Tide turns "
    "at nine and will lift her off or break her, and I know which. I have taken the skiff. The oil is drawn, the can "
    "is full; I had not the time to carry it up. KEEP IT BURNING and I shall find my way by it. If it goes out, do "
    "not look for me before the morning. M. O.'"
)

FILLED = (
    "You pour slowly, as you were taught, with your wrist against the rim so that it cannot shake. The needle lifts "
    "off its pin. For the length of a breath the flame turns blue and thinks about dying; then it stands up white, "
    "and the beam goes out over the water like a thing that has been let off a chain."
)

ENDING = (
    "You do not leave the lantern again. At ten minutes to ten the light in the north answers, closer: two short, "
    "one long, two short, and under it the knock of oars kept in time by somebody with a very loud voice. You count "
    "the heads on the landing as the beam goes over them. Six.\n"
    "'Twenty past eight,' says Maren Oddy from the stair, with the sea running out of her sleeves. 'I am late for "
    "my watch. You may enter that in the log.'\n"
    "You enter it. Then you both sit down on the curved bench and say nothing at all until the sun comes up."
)

HELP = "You may GO up, down, in or out; LOOK; TAKE can; READ page; POUR oil; WAIT; or QUIT."


def say(text: str) -> None:
    """Print paragraphs broken at words, with an empty line after each."""
    for paragraph in text.split("\n"):
        print(textwrap.fill(paragraph, WIDTH), end="\n\n")


def main() -> None:
    """Play until the oil is poured and the night is over, or the player leaves."""
    here, carried, poured = "watch room", False, False
    print("OIL FOR THE LONG NIGHT\nA story of the Skerry Light\n")
    say(
        "The fourth of November, a rising wind, the glass low. You are the third keeper and the youngest. "
        + HELP
    )
    say(PLACES[here][0])
    while True:
        print("> ", end="", flush=True)
        line = sys.stdin.readline()
        words = line.lower().split()
        print()
        match words[:2]:
            case _ if not line or words[:1] == ["quit"]:
                print("You put your coat on the hook. The light can see to itself. (It cannot.)")
                return
            case ["go", way] if way in PLACES[here][1]:
                here = PLACES[here][1][way]
                say(PLACES[here][0])
            case ["go", *_]:
                say("There is wall that way, a yard thick, and then a good deal of water.")
            case ["look", *_]:
                say(PLACES[here][0])
            case ["read", "page"] if here == "landing":
                say(NOTE)
            case ["take", "can"] if here == "landing" and not carried:
                carried = True
                say("Number seven is as heavy as a child. Something in you straightens as you lift it.")
            case ["pour", *_] if here == "lantern" and carried and not poured:
                poured = True
                say(FILLED)
            case ["wait", *_] if here == "lantern" and poured:
                say(ENDING)
                return
            case ["wait", *_]:
                say("The clock moves its hand. The lamp breathes in, and in, and in.")
            case _:
                say("Nobody on this rock has ever done that. " + HELP)


if __name__ == "__main__":
    main()
