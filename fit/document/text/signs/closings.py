"""Ends of letters and their addresses: a name below `Yours,` far in, and lines with one that begins with `c/o`."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

FAR_IN = 16
"""Cells at the left of the end of a letter, at least."""
SHIFT = 4
"""Cells by which the name may stand left or right of the words above it."""
WORDS = 5
"""Words of either, at most."""
PEN = 5
"""Blank lines that leave room for the hand, at most."""
SET_IN = 12
"""The same where the name stands right below those words: letters are printed in columns, too."""
SIGNATURE = 4
"""Lines of it, at most."""
TALLEST = 7
"""Lines of an address, at most."""


def signed_below(above: Line, line: Line) -> bool:
    """Whether a name stands below a few words that end in a comma, both far in and parted by blank lines: one signature."""
    if not (0 < line.gap <= PEN and above.text.endswith(",")) or line.crossing:
        return False
    far = min(above.indent, line.indent) >= FAR_IN and abs(above.indent - line.indent) <= SHIFT
    few = all(len(one.text.split()) <= WORDS and one.text[:1].isupper() for one in (above, line))
    return far and few and not prose(line.text)


def signed_right_below(part: Sequence[Line]) -> bool:
    """Whether names stand right below a few words that end in a comma, all far in and one below the other: one signature."""
    if not (1 < len(part) <= SIGNATURE and part[0].text.endswith(",")):
        return False
    level = part[0].indent >= SET_IN and all(line.indent == part[0].indent for line in part)
    few = all(len(line.text.split()) <= WORDS and line.text[:1].isupper() for line in part)
    names = not any(prose(line.text) and not line.text.isupper() for line in part[1:])
    return level and few and names and not part[0].text.isupper()


def addressed(part: Sequence[Line], around: int) -> bool:
    """Whether short lines are an address: one below the first begins with `c/o`."""
    if not 1 < len(part) <= TALLEST or not any(line.text[:4].lower() == "c/o " for line in part[1:]):
        return False
    return all(2 * len(line.text) <= around for line in part)
