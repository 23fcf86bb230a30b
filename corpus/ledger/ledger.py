"""The stores ledger of the Skerry Light: a listing longer than the screen.

Rows of 79 columns, blank-padded to the edge of each field, printed in one go as listing utilities do. The
oil list is longer than any screen of 25 rows: what scrolls away there is lost on the big screen too. Any
Python 3.11 or later; no clock, no chance.
"""

from __future__ import annotations

import sys

STORES = (
    ("Paraffin oil, best", "oil store, upper shelf", "cans", 9),
    ("Wicks, flat, two-inch", "lantern locker", "dozen", 4),
    ("Mantles, spare", "lantern locker, felt box", "each", 11),
    ("Chamois leathers", "lantern locker", "each", 6),
    ("Spirit for the lens", "oil store, lower shelf", "bottles", 3),
    ("Rouge powder", "oil store, lower shelf", "tins", 2),
    ("Fog charges", "magazine", "each", 240),
    ("Detonators", "magazine, red box", "each", 260),
    ("Ship's biscuit", "pantry", "pounds", 56),
    ("Flour", "pantry, bin one", "stone", 7),
    ("Oatmeal", "pantry, bin two", "stone", 5),
    ("Salt pork", "pantry, cask", "pounds", 88),
    ("Tea", "pantry, high shelf", "pounds", 12),
    ("Sugar", "pantry, high shelf", "pounds", 20),
    ("Lamp black", "paint locker", "pounds", 4),
    ("White lead", "paint locker", "pounds", 28),
    ("Linseed oil", "paint locker", "gallons", 3),
    ("Rope, two-inch manila", "landing store", "fathoms", 120),
    ("Blocks, double", "landing store", "each", 4),
    ("Oars, ash", "landing store", "pairs", 3),
)

KEEPERS = ("M. Oddy", "T. Grieve", "I. Sallow")


def heading(title: str, columns: str) -> None:
    """A title, the names of the columns and a rule, each to the full width."""
    print(f"{title:<79}\n{columns:<79}\n{'-' * 79}")


def list_stores() -> None:
    """Twenty rows: they fit a screen of 25 rows, and only just."""
    heading("STORES OF THE SKERRY LIGHT", f"{'Article':<28}{'Where kept':<30}{'Unit':<12}{'On hand':>9}")
    for article, place, unit, count in STORES:
        print(f"{article:<28}{place:<30}{unit:<12}{count:>9}")


def list_oil() -> None:
    """Fifty-two weeks: more than twice what the big screen can hold."""
    heading(
        "OIL BURNT, WEEK BY WEEK",
        f"{'Week':<8}{'Dark hours':>12}{'Pints':>10}{'Pints an hour':>18}   {'Drawn by':<28}",
    )
    for week in range(1, 53):
        dark = 56 + abs(26 - week) * 2
        pints = dark * 3 // 2 + week % 4
        keeper = KEEPERS[week % 3]
        print(f"{week:<8}{dark:>12}{pints:>10}{pints / dark:>18.2f}   {keeper:<28}")


def list_boats() -> None:
    """A short list, with the one thing one comes for at the end of each row."""
    heading("RELIEF BOATS DUE", f"{'Boat':<20}{'Out of':<24}{'Brings':<24}{'Day':>11}")
    for boat, port, cargo, day in (
        ("Patient Anne", "Harrow Sound", "oil, flour", "Monday"),
        ("Kittiwake", "Port Ellory", "post, the doctor", "Thursday"),
        ("Three Brothers", "Harrow Sound", "coal", "in ten days"),
    ):
        print(f"{boat:<20}{port:<24}{cargo:<24}{day:>11}")


LISTS = {"stores": list_stores, "oil": list_oil, "boats": list_boats}


def main() -> None:
    """Ask which list, print it, ask again."""
    print("Ledger of the Skerry Light. Lists: stores, oil, boats. An empty line ends.")
    while True:
        print("List: ", end="", flush=True)
        name = sys.stdin.readline().strip().lower()
        if not name:
            return
        if name in LISTS:
            LISTS[name]()
        else:
            print(f"The ledger has no list '{name}'.")


if __name__ == "__main__":
    main()
