"""Columns of the texts beside hanging keys: how often a document has each, and whether a line's text has its own."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import Measure, closed, prose, starts_small

LONGEST_KEY = 34
"""Cells to the text after a hanging key, at most."""
LONGEST_NAME = 44
"""The same for a key of one word with a sign in it."""
WIDENED = 3
"""Cells of a blank that justified lines have between words, at most."""
WIDE = re.compile(r"[^\s.!?:]  +\S")
"""Blanks that no end of a sentence explains."""
ONE_WORD = re.compile(r"(?:\([^()]+\)|\[[^\[\]]+\]|<[^<>]+>|\S+)(?= \S)")
"""A key of one word, or one in brackets, that one blank parts from its text."""
_QUOTES, _CLOSING = "\"'\u201c\u2018", "\"'\u201d\u2019"
"""Signs that open a quotation, and that close one."""
_VALUED = re.compile(r"[^\s=]+(?: [^\s=]+){0,4} = \S+(?= \S)")
"""A name with its value."""
_KEY = re.compile(r"(?P<key>\S+(?: \S+){0,5}?)(?P<blank> {2,}| ?\.{3,} *|(?: \.){3,} +(?!\.))(?=\S)")


def key_of(text: str) -> re.Match[str] | None:
    """The few words at the start of a line that wide blanks or dots part from what follows, with these."""
    parted = "  " in text or "..." in text or ". . ." in text
    match = _KEY.match(text) if parted else None
    if (
        match is not None
        and "." in match["blank"]
        and (not match["key"].strip(".|") or text[match.end()] == "|" or _open(match["key"]))
    ):
        return None  # dots, and no word before them that they lead from; or the floor of a drawing, up to its wall
    return match


def _open(key: str) -> bool:
    """Whether a quotation or a bracket is open at the end of a key: the dots behind it are a pause, or stand for more."""
    quoted = key[0] in _QUOTES and not any(sign in key[1:] for sign in _CLOSING)
    return quoted or any(key.count(sign) > key.count(other) for sign, other in ("[]", "{}", "()"))


def filling_key(text: str) -> re.Match[str] | None:
    """A key at the start of a line, of one word, in brackets, or a name with its value, that one blank parts from its text."""
    valued = _VALUED.match(text) if " = " in text else None
    return valued or ONE_WORD.match(text)


def hanging_columns(
    lines: Sequence[Line], taken: Sequence[object], measure: Measure
) -> dict[tuple[int, int], int]:
    """How often a key at one indent has its text at one column, with nothing but that column below it."""
    counts: dict[tuple[int, int], int] = defaultdict(int)
    for index, line in enumerate(lines):
        match = key_of(line.text) if taken[index] is None else None
        if match is None or too_far(match):
            continue
        column = line.indent + match.end()
        under = stands_under(lines, index, column)
        if under and not (under == 1 and is_widened(lines, index, match, measure)):
            counts[line.indent, column] += under
    return counts


def is_widened(lines: Sequence[Line], index: int, match: re.Match[str], measure: Measure) -> bool:
    """Whether a line of justified text is full, or goes on from a full one: its blanks part no key from its text."""
    if len(match["blank"]) > WIDENED or not measure.justified(index):
        return False
    right = measure.right(index)
    above = lines[index - 1] if index and not lines[index].apart else None
    return lines[index].end == right or (above is not None and above.end == right)


def is_spacing(lines: Sequence[Line], index: int, column: int, measure: Measure) -> bool:
    """Whether blanks before a column, with no text under it, were widened by justification."""
    match = key_of(lines[index].text)
    if match is None or lines[index].indent + match.end() != column:
        return False
    return is_widened(lines, index, match, measure) and stands_under(lines, index, column) != 2


def too_far(match: re.Match[str]) -> bool:
    """Whether the text stands too far from a key; it may stand farther from one word with a sign, the name of a setting."""
    word = match.group().split()
    named = len(word) == 1 and not word[0].isalpha()
    return match.end() > (LONGEST_NAME if named else LONGEST_KEY)


def stands_under(lines: Sequence[Line], index: int, column: int) -> int:
    """Whether the next line stands under a key's text (2), lets it stand (1), or makes it mere spacing (0).

    A key that fills its column, with text under its own, is as good as text under this one.
    """
    if index + 1 >= len(lines) or (lines[index + 1].gap and not lines[index + 1].crossing):
        return 1
    below = lines[index + 1]
    if below.crossing:
        return 2 if below.indent == column else 0 if goes_on(lines[index], below) else 1
    if below.indent == column or hung_deeper(lines[index], below, column):
        return 2
    if behind_dash(lines[index], below, column):
        return 2
    if below.indent > column and starts_small(below.text) and lines[index].text[-1] == ",":
        return 1  # the text goes on farther in
    key = key_of(below.text)
    beside = key is not None and below.indent + key.end() == column
    if fills_column(lines, index + 1, column):
        return 2
    last = below.indent < lines[index].indent and closed(lines[index].text) and "  " in below.text
    if last and not closed(lines[index].cells[:column].rstrip()):
        return 1  # the entry that these are set in below has ended
    return 1 if beside or _lone_key(lines, index, column) else 0


def goes_on(line: Line, below: Line) -> bool:
    """Whether a sentence goes on in the next line of a paragraph."""
    small = starts_small(below.text) and not closed(line.text)
    return small and prose(line.text) and (below.indent == line.indent or opens(line, below))


def _lone_key(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key too long for its column follows on a line of its own, with its text at the column below it."""
    if index + 2 >= len(lines) or lines[index + 1].indent != lines[index].indent:
        return False
    return (
        lines[index + 2].indent == column and not lines[index + 2].gap and "  " not in lines[index + 1].text
    )


def fills_column(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key fills the room before the column but for one blank, and its text goes on below at the column."""
    line = lines[index]
    key = filling_key(line.text)
    full = key is not None and line.indent + key.end() == column - 1
    if not full or index + 1 >= len(lines) or lines[index + 1].gap:
        return False
    return lines[index + 1].indent == column


def hung_deeper(line: Line, below: Line, column: int) -> bool:
    """Whether the text beside a key stops in a sentence that goes on in small letters a cell deeper than its column."""
    if below.indent != column + 1 or not starts_small(below.text) or closed(line.text):
        return False
    behind_bracket = not line.cells[column : column + 1].isalnum()
    return not behind_bracket and prose(line.cells[column:])


def behind_dash(line: Line, below: Line, column: int) -> bool:
    """Whether a dash stands before the text beside a key, which goes on in the next line under its words."""
    if below.indent != column + 2 or line.cells[column : column + 2] != "- ":
        return False
    return line.cells[column + 2] != "("  # another name of the key


def has_key(lines: Sequence[Line], places: Iterable[int], indent: int, column: int) -> bool:
    for place in places:
        if lines[place].indent == indent:
            key = key_of(lines[place].text)
            if key is not None and indent + key.end() == column:
                return True
    return False


def opens(above: Line, line: Line) -> bool:
    """Whether a line is the first of a paragraph, set in, above a line of its text."""
    return above.gap > 0 and prose(above.text) and above.indent > line.indent
