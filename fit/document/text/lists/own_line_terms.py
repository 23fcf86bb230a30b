"""Terms on lines of their own in a list of such terms: each has its text deeper on the next line, all at one column.

Alone such a line could be a title. That the list stands in the running text, below the line that leads to it or a title
farther left, and that nothing but its terms stands at their indent, shows what it is.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from itertools import pairwise

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.code import code, quoted_whole, with_options
from fit.document.text.signs.measure import closed, first_word, hangs, prose, starts_small
from fit.document.text.signs.rules import ruled_off

LEAST = 3
"""Terms of a list, at least."""
LONGEST = 40
"""Characters of a term, at most."""
WORDS = 2
"""Words of a term with a colon, at most: more lead to what stands below them."""
SIGNS = 3
"""Characters of a term that is made of signs, at most: a key to be pressed, which ends no sentence."""
_BRACKETED = re.compile(r"[^\W\d][\w.:-]{0,30} ?\([^()]*(?:\([^()]*\)[^()]*)*\)")
_KEY = re.compile(r"<[A-Za-z][\w -]*>|\.[A-Z]{3,}")
"""The name of a key in angle brackets, or one behind a point; a tag, too, is what its text explains in such a list."""
_OPTION = re.compile(r"--?[A-Za-z?]")
_SIGN_QUOTED = re.compile(r"\s(['\"])[.?!]\1$")
"""A sign in quotation marks, which ends no sentence."""
STEP = (2, 16)
"""Cells from a term to its text."""
ROOM = 6
"""Cells that a writer may leave free at the end of a line of running text."""


def own_line_terms(lines: Sequence[Line], keys: Sequence[int], base: int) -> set[int]:
    """The lines that are such terms; ``base`` is the usual margin of running text, left of which titles stand.

    ``keys`` has the columns of texts beside their terms.
    """
    chain = [0] * len(lines)
    """For each entry how many there are up to it."""
    before = [-1] * len(lines)
    led: set[int] = set()
    columns = [keys[index] or _column(lines, index) for index in range(len(lines))]
    company: set[int] = set()
    open_lines: list[int] = []
    for index, line in enumerate(lines):
        while open_lines and lines[open_lines[-1]].indent > line.indent:
            open_lines.pop()
        above = open_lines[-1] if open_lines else -1
        level = above >= 0 and lines[above].indent == line.indent
        if level:
            open_lines[-1] = index
        else:
            open_lines.append(index)
        if level and chain[above] and _bare(lines, index):
            columns[index] = columns[above]
        if (
            level
            and chain[above]
            and not columns[index]
            and _in_company(lines, index, columns[above], keys[above] > 0)
        ):
            columns[index] = columns[above]
            company.add(index)
            strong = _term(line)
        else:
            strong = True
        column = columns[index]
        if not column or line.indent < base:
            continue
        chain[index] = 1 if strong else 0
        if level and chain[above] and columns[above] == column:
            chain[index] += chain[above]
            before[index] = above
        if before[index] in led or (before[index] < 0 and above >= 0 and (not level or _leads(lines[above]))):
            led.add(index)
    for index in range(len(lines) - 1, -1, -1):
        if before[index] >= 0:
            chain[before[index]] = chain[index]
    terms = {index for index in led if chain[index] >= LEAST and not keys[index]}
    terms = {index for index in terms if index in company or _column(lines, index)}
    return terms - _labels(lines, terms)


def _labels(lines: Sequence[Line], terms: Collection[int]) -> set[int]:
    """Those of some terms with a colon that have too few different ones at their place: `Example:` leads to something."""
    places: dict[int, set[int]] = {}
    for index in terms:
        if _labelled(lines[index].text):
            places.setdefault(lines[index].indent, set()).add(index)
    return {
        index
        for found in places.values()
        if len({lines[index].text for index in found}) < LEAST
        for index in found
    }


def dashes_of_terms(lines: Sequence[Line], keys: Sequence[int], terms: Collection[int]) -> set[int]:
    """The lines below terms that begin with a dash in the column of the one that parts the key before from its text."""
    found: set[int] = set()
    for index in terms:
        line, below = lines[index], lines[min(index + 1, len(lines) - 1)]
        if not below.text.startswith("- "):
            continue
        place = index - 1
        while place > 0 and lines[place].indent > line.indent and not lines[place].gap:
            place -= 1
        key, column = lines[max(place, 0)], below.indent
        if key.indent == line.indent and keys[place] == column + 2 and key.cells[column : column + 2] == "- ":
            found.add(index + 1)
    return found


def _column(lines: Sequence[Line], index: int) -> int:
    """The column of the text on the line below a term; 0 where none stands."""
    column = _deeper(lines, index)
    return column if column and _term(lines[index]) else 0


def _in_company(lines: Sequence[Line], index: int, column: int, keyed: bool) -> bool:
    """Whether a line is a term because it stands below another one whose text begins at a column.

    Right below a text there it may have small words: `oil in the tank`. Where that other one has its text beside it
    (``keyed``), the text of the term begins on the next line, perhaps behind a dash.
    """
    line = lines[index]
    if parted_above(lines, index + 1) or line.apart:
        return False
    below = lines[index + 1]
    if keyed:
        dash = below.indent + 2 == column and below.text.startswith("- ")
        return (below.indent == column or dash) and _term(line)
    at = _deeper(lines, index) == column == lines[index - 1].indent
    return at and prose(line.text) and not hangs(line.text) and _name(line.text)


def _deeper(lines: Sequence[Line], index: int) -> int:
    """The column of the line below one, where it stands deeper by the step of a term's text; else 0."""
    line = lines[index]
    if parted_above(lines, index + 1):
        return 0
    above = lines[index - 1] if index and not line.apart else None
    if above is not None and above.indent <= line.indent and not _over(above, line):
        return 0
    column = lines[index + 1].indent
    if not STEP[0] <= column - line.indent <= STEP[1]:
        return 0
    return 0 if _labelled(line.text) and _leads_to_lines(lines, index + 1) else column


def _over(above: Line, line: Line) -> bool:
    """Whether a line with a colon leads to one right below that stands deeper, or is the title of several with colons.

    A title without one may stand farther left right over an option.
    """
    if above.text.endswith(":"):
        return above.indent < line.indent or (above.apart and _labelled(line.text))
    title = above.indent < line.indent and not (prose(above.text) or closed(above.text))
    return title and _OPTION.match(line.text) is not None


def _leads_to_lines(lines: Sequence[Line], first: int) -> bool:
    """Whether below a word with a colon a command stands, or lines of which one had room for the first word of the next.

    Those are no text of a term. In one that goes on from line to line a sentence may begin a line, and few cells be left.
    """
    if code(lines[first].text) or with_options(lines[first].text):
        return True
    end = first + 1
    while not parted_above(lines, end) and lines[end].indent >= lines[first].indent:
        end += 1
    part = lines[first:end]
    right = max(line.end for line in part)
    pairs = list(pairwise(part))
    if any(
        prose(above.text) and not closed(above.text) and starts_small(below.text) for above, below in pairs
    ):
        pairs = [(above, below) for above, below in pairs if not closed(above.text)]
        right -= ROOM
    return any(above.end + 1 + first_word(below.text) <= right for above, below in pairs)


def _bare(lines: Sequence[Line], index: int) -> bool:
    """Whether a line stands alone as a term whose text is parted from it, or that shares the text of the next one."""
    apart = index + 1 < len(lines) and lines[index].gap > 0 and lines[index + 1].gap > 0
    return apart and _term(lines[index])


def _term(line: Line) -> bool:
    text = line.text
    if len(text) <= LONGEST and quoted_whole(text):
        return True
    if len(text) <= SIGNS and not any(map(str.isalnum, text)) and text.strip(".-"):
        return True
    return not prose(text) and _name(text)


def _name(text: str) -> bool:
    short = len(text) <= LONGEST or bracketed(text)
    named = _labelled(text) and len(text.split()) <= WORDS
    ended = closed(text) and not named and _SIGN_QUOTED.search(text) is None
    whole = "  " not in text
    return short and whole and not ended and (not code(text) or _KEY.fullmatch(text) is not None)


def _labelled(text: str) -> bool:
    """Whether a text ends in a colon, and is more than a sign."""
    return text[-1] == ":" and any(map(str.isalnum, text))


def bracketed(text: str) -> bool:
    """Whether a text is one name and all the rest in a bracket: what it takes, or what holds without it."""
    return text.endswith(")") and _BRACKETED.fullmatch(text) is not None


def _leads(line: Line) -> bool:
    """Whether a line is running text, or the end of it, or the rule under a title."""
    return closed(line.text) or prose(line.text) or ruled_off(line.text)
