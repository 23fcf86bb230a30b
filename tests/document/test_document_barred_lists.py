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
