"""Two lists with a bar between them are read one after the other; rows that go across are a table."""

from __future__ import annotations

from fit.document.text import read_text

LISTS = """\
The keys of the store:

 IN THE LIST                     | IN AN ENTRY
                                 |
 UP    last barrel               | TAB   next line
 DOWN  next barrel               | ^U    take back
 HOME  first barrel              | ^D    the date
 F     find a barrel; the        | ESC   leave it as it
       mark may be cut           |       was
       short with *              | F1    help
"""


def shown(text: str) -> list[str]:
    """Items with their labels, rows with bars, other blocks by their text."""
    found = []
    for block in read_text(text, "keys", "ascii").blocks:
        found += [" | ".join(cell.chars for cell in row) for row in block.rows]
        if not block.rows:
            label = f"[{block.label.chars}] " if block.label.chars else ""
            found.append(label + block.text.chars)
    return found


def test_entries_of_different_heights_beside_a_bar() -> None:
    assert shown(LISTS)[1:] == [
        "IN THE LIST",
        "[UP] last barrel",
        "[DOWN] next barrel",
        "[HOME] first barrel",
        "[F] find a barrel; the mark may be cut short with *",
        "IN AN ENTRY",
        "TAB | next line",
        "^U | take back",
        "^D | the date",
        "ESC | leave it as it was",
        "F1 | help",
    ]


def test_entries_that_stand_level_may_be_rows() -> None:
    """Each line begins an entry on both sides, or none: nothing says that they are two lists."""
    level = "\n".join(line for line in LISTS.splitlines() if "may be" not in line and "short" not in line)
    assert any("UP" in row and "TAB" in row for row in shown(level))


NOTES = """\
LANDING NOTES                       |  SOUP
  At the Skerry Light the boat      |
has been hung on new ropes. The     |  The soup of the watch, for
keepers say that it goes down so    |  eight:
easily that one has to be awake.    |  -  half a pound of peas, split
  The horn is silent until the      |     and washed
cellar has been cleared of the      |  -  the same of salt pork and of
barrels. The keeper blows a         |     onions
whistle from the gallery, ten       |  -  four carrots, and as much
times in each hour of fog.          |     cabbage as you can afford
                                    |
                                    |  Boil it for as long as it takes to
                                    |  wind up the lamp twice.

The log is read by the harbour on the first day of each month, and a copy goes to
the owners of the light, who keep it.
"""


def test_a_list_beside_running_text_and_a_bar() -> None:
    found = shown(NOTES)
    assert found[:2] == [
        "LANDING NOTES",
        (
            "At the Skerry Light the boat has been hung on new ropes. The keepers say that it goes down so easily that "
            "one has to be awake."
        ),
    ]
    assert found[3:6] == [
        "SOUP",
        "The soup of the watch, for eight:",
        "[-] half a pound of peas, split and washed",
    ]
    assert found[7] == "[-] four carrots, and as much cabbage as you can afford"


def test_rows_with_a_list_in_a_cell_are_a_table() -> None:
    """Under a rule the lines are rows, whatever begins beside the middle of a sentence."""
    first, rest = NOTES.split("\n", 1)
    assert any("boat" in row and " | " in row for row in shown(f"{first}\n{'-' * 36}+{'-' * 34}\n{rest}"))
