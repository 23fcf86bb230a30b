"""Terms stacked over one meaning: `-h` and `--help`, each on a line of its own, then the text deeper or beside the last.

Options show it by themselves. Words ask for company: another entry with its term at the same indent and its text at
the same column. Words over a key with its text beside it might be a title: they ask for more of their kind, each
narrower than the column and each over a single entry of its own, as titles of lists and of fields are not.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.hanging_keys import argued_option
from fit.document.text.signs.code import code, prompted, quoted_whole
from fit.document.text.signs.measure import closed, prose

MOST = 3
"""Terms over one meaning, at most."""
LONGEST = 40
"""Characters of a term, at most."""
BESIDE = 3
"""Stacks of words over a key with its text beside it, at least, and more than those that stand over several entries."""
STEP = (2, 16)
"""Cells from a term to its text below it."""
_OPTION = re.compile(
    r"(?:--?[A-Za-z?][\w-]*|/[A-Za-z?])(?:[ =]?[\[<]?[A-Z][\w<>\[\]|:/.-]*|=\S+| [\[<]\S+)?(?:, ?--?[A-Za-z?]\S*)*,?"
)
"""An option, with its argument and other spellings of it."""


def stacked_terms(lines: Sequence[Line], taken: Sequence[object], keys: Sequence[int]) -> set[int]:
    """The lines that are such terms and nothing else; ``keys`` has the columns of texts beside their terms.

    An option with its argument behind wide blanks is one by itself.
    """
    stacks: list[tuple[int, int, int]] = []
    beside: list[tuple[int, int, int]] = []
    places: dict[tuple[int, int], int] = {}
    for index in range(len(lines) - 1):
        line = lines[index]
        if len(line.text) > LONGEST or taken[index] is not None or not _begins(lines, keys, index):
            continue
        end, column = _stack(lines, taken, keys, index)
        if column and keys[end]:
            beside.append((index, end, column))
        if not column or not _said(lines, end, column):
            continue
        places[line.indent, column] = places.get((line.indent, column), 0) + 1
        if end - index > MOST:
            stacks.append((end - 1, end, column))
        elif end - index > 1 or keys[end]:
            stacks.append((index, end, column))
    found = _beside(lines, beside)
    found |= {index for index in range(len(lines)) if not keys[index] and argued_option(lines, index)}
    for start, end, column in stacks:
        last = end + (keys[end] > 0)
        options = all(
            _OPTION.fullmatch(lines[place].cells[:column].strip(" ")) for place in range(start, last)
        )
        company = places[lines[start].indent, column] > 1 and not keys[end]
        if options or company:
            found.update(range(start, end))
    return found


def _beside(lines: Sequence[Line], stacks: Sequence[tuple[int, int, int]]) -> set[int]:
    """The words over keys that have their text beside them, if most such at their indent stand over one entry each."""
    single: dict[int, list[range]] = {}
    several: dict[int, int] = {}
    last = Counter((lines[end].indent, lines[end].cells[:column]) for _, end, column in stacks)
    for start, end, column in stacks:
        indent = lines[start].indent
        own = last[indent, lines[end].cells[:column]] == 1 and _one_entry(lines, end)
        if own and all(line.end < column and line.text[-1] != ":" for line in lines[start:end]):
            single.setdefault(indent, []).append(range(start, end))
        else:
            several[indent] = several.get(indent, 0) + 1
    return {
        place
        for indent, stacked in single.items()
        if len(stacked) >= max(BESIDE, several.get(indent, 0) + 1)
        for places in stacked
        for place in places
    }


def _one_entry(lines: Sequence[Line], index: int) -> bool:
    """Whether a blank line or the end comes before the next line at the indent of an entry or farther left."""
    indent = lines[index].indent
    after = index + 1
    while after < len(lines) and lines[after].indent > indent and not lines[after].gap:
        after += 1
    return after == len(lines) or lines[after].gap > 0


def _begins(lines: Sequence[Line], keys: Sequence[int], index: int) -> bool:
    """Whether a line can begin an entry: below a blank line, another entry or its text, or a title farther left."""
    if parted_above(lines, index) or keys[index - 1]:
        return True
    above, indent = lines[index - 1], lines[index].indent
    return above.indent > indent or (above.indent < indent and not (prose(above.text) or closed(above.text)))


def _stack(
    lines: Sequence[Line], taken: Sequence[object], keys: Sequence[int], start: int
) -> tuple[int, int]:
    """Where terms that begin at a line end, with the column of their text: below them, or beside the last; or 0."""
    end = start
    indent = lines[start].indent
    while end < len(lines) and lines[end].indent == indent and taken[end] is None:
        if end >= start + MOST and not _OPTION.fullmatch(lines[end].text):
            break
        if end > start and (lines[end].apart or keys[end]):
            break
        if keys[end] or not _term(lines[end]):
            return end, 0
        end += 1
    if parted_above(lines, end) or taken[end] is not None:
        return end, 0
    if keys[end] and lines[end].indent == indent:
        return end, keys[end]
    column = lines[end].indent
    return end, column if STEP[0] <= column - indent <= STEP[1] else 0


def _said(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a meaning is running text: the words from the column on in its first line, or up to where it ends."""
    text = lines[index].cells[column:]
    below = lines[index + 1] if index + 1 < len(lines) and not lines[index + 1].apart else None
    on = below is not None and below.indent == column and prose(below.text)
    return (on or prose(text) or closed(text)) and not code(text)


def _term(line: Line) -> bool:
    text = line.text
    return len(text) <= LONGEST and (quoted_whole(text) or _named(text))


def _named(text: str) -> bool:
    return (
        "  " not in text
        and not closed(text)
        and not prose(text)
        and not code(text)
        and not prompted(text)
        and any(map(str.isalnum, text))
    )
