"""Keys that a hyphen or a plus parts over two lines, each part in the column of the keys: `--fog-` and `horn` below it.

The text goes on beside the second part, or begins there.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.joins import cut_word
from fit.document.text.signs.measure import hangs, prose, starts_small


def find_cut_keys(lines: Sequence[Line], keys: list[int]) -> set[int]:
    """The lines that start with the rest of the key above; ``keys`` has the columns of texts, and is set right.

    The rest is no key itself; what it goes on is one, though no text may stand beside it.
    """
    found: set[int] = set()
    for index in range(1, len(lines)):
        column = keys[index - 1] or keys[index]
        if not column or index - 1 in found or keys[index] not in {0, column}:
            continue
        bare = " " not in lines[index - 1].text
        if keys[index - 1] == keys[index] and _beside_one_text(lines[index - 1], lines[index], column):
            keys[index] = 0
            found.add(index)
        elif (bare or keys[index - 1]) and _cut(lines[index - 1], lines[index], column, bare=bare):
            keys[index - 1], keys[index] = column, 0
            found.add(index)
    return found


def _cut(above: Line, line: Line, column: int, *, bare: bool) -> bool:
    """Whether what stands before the column in two lines is one key with a hyphen or a plus at the line end.

    A key that is ``bare`` has no text beside it, and may be longer than its column is wide.
    """
    if line.apart or not above.indent <= line.indent < column:
        return False
    head, rest = above.text if bare else above.cells[:column], line.cells[:column]
    parted = bare or head.endswith(" ")
    own = line.end < column or (rest.endswith(" ") and line.cells[column] != " ")
    head, rest = head.strip(" "), rest.strip(" ")
    on = _added(head, rest) or (bare and _pressed_together(head, rest))
    return parted and own and (on or cut_word(head, rest))


def _beside_one_text(above: Line, line: Line, column: int) -> bool:
    """Whether two keys share the text beside them, which stops where none can end and goes on in small letters."""
    if line.apart or line.indent != above.indent or not (above.text[-1].isalpha() and hangs(above.text)):
        return False
    both = all(" = " in one.cells[:column] for one in (above, line))
    return both and prose(above.cells[column:]) and starts_small(line.cells[column:])


def _added(head: str, rest: str) -> bool:
    """Whether a plus behind a name leads to another name; `Key +` over `Key -` are two of one form."""
    return head.endswith(" +") and rest.partition(" ")[0] != head.partition(" ")[0]


def _pressed_together(head: str, rest: str) -> bool:
    """Whether a key alone on its line ends in a plus, and one word stands below it: keys that are pressed at once."""
    return head.endswith("+") and head[-2:-1].isalnum() and rest.isalnum()
