"""Fields of program text with their meanings beside them: one row each, no newspaper columns, no list, no paragraph."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text


def blocks(text: str) -> list[str]:
    """The rows of tables with bars between their cells; of other blocks the kind and the text."""
    found: list[str] = []
    for block in read_text(text, "a document", "ascii").blocks:
        rows = [" | ".join(cell.chars for cell in row) for row in block.rows]
        lines = " / ".join(line.chars for line in block.lines)
        found += rows if block.kind is Kind.TABLE else [f"{block.kind.value}: {lines or block.text.chars}"]
    return found


CASES = {
    "wrapped meanings are no second newspaper column": (
        """
long flags;                     which of the others are valid.  These
                                 are the marks that the keeper gave
                                 when the log was asked for, and they
                                 say which of the other fields hold
                                 anything (if no tide was asked for,
                                 do not believe the tide).
unsigned long messages;         number of messages in the log
unsigned long recent;           number of messages of this watch
unsigned long unseen;           number of messages not yet read
unsigned long nextpage;         next page of the log to be written
unsigned long validity;         validity of the pages if bound
""",
        [
            (
                "long flags; | which of the others are valid. These are the marks that the keeper gave when the log was "
                "asked for, and they say which of the other fields hold anything (if no tide was asked for, do not "
                "believe the tide)."
            ),
            "unsigned long messages; | number of messages in the log",
            "unsigned long recent; | number of messages of this watch",
            "unsigned long unseen; | number of messages not yet read",
            "unsigned long nextpage; | next page of the log to be written",
            "unsigned long validity; | validity of the pages if bound",
        ],
    ),
    "a field may fill its column, or push its meaning to the next line": (
        """
void *data;             used by the lamp as it likes
unsigned short lampuse; use count, this is incremented
unsigned short panecount_of_house;
                        panes of the lamp house
char *next;             next lamp along the coast
""",
        [
            "void *data; | used by the lamp as it likes",
            "unsigned short lampuse; | use count, this is incremented",
            "unsigned short panecount_of_house; | panes of the lamp house",
            "char *next; | next lamp along the coast",
        ],
    ),
    "statements with remarks stay program text": (
        """
    int wick;        /* the wick in use */
    int oil;         /* pints of oil left */
    wick = 0;        // none yet
""",
        [
            (
                "preformatted: int wick;        /* the wick in use */ / "
                "int oil;         /* pints of oil left */ / wick = 0;        // none yet"
            )
        ],
    ),
    "clauses with wide blanks behind them are no fields": (
        """
The lamp was lit at dusk;   the keeper of the watch wrote it down and
then the glass was wiped;   the second keeper rowed out to the buoy
with the lead and line in the small boat that had come that morning.
""",
        [
            (
                "paragraph: The lamp was lit at dusk; the keeper of the watch wrote it down and then the glass was wiped; "
                "the second keeper rowed out to the buoy with the lead and line in the small boat that had come that "
                "morning."
            )
        ],
    ),
}


@pytest.mark.parametrize(("text", "expected"), CASES.values(), ids=CASES.keys())
def test_fields_are_rows(text: str, expected: list[str]) -> None:
    assert blocks(text) == expected
