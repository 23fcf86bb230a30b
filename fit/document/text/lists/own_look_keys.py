"""Keys that their own look shows: between blank lines, in capitals, or a word that a colon explains."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Ending, Line, parted_above
from fit.document.text.lists.key_columns import LONGEST_KEY, WIDE, key_of
from fit.document.text.signs.measure import closed, prose

_GLOSS = re.compile(r"(?:[^\w\s]|(?:\[\w\])?[^\W\d_][\w'-]*(?: [a-z][\w'-]*){0,2}): (?=[a-z]+ [a-z(])")
"""A word, or a sign, that small letters explain after a colon."""
_NAME = re.compile(r"(?P<name>[A-Z]{2,}:) +(?=\S)")
FLAT = 9
"""Lines to a key in capitals whose text goes on flush left, at most."""
ALIKE = 3
"""Such keys that show one another."""
GLOSSARY = 40
"""Lines of such words that no blank line parts, at most."""


def set_apart_key(lines: Sequence[Line], index: int) -> int:
    """The column after a key between blank lines, with another such beside it, where the writer's own blanks are known."""
    column = _own_key(lines[index])
    if not column or not parted_above(lines, index):
        return 0
    before = next((place for place in range(index - 1, -1, -1) if parted_above(lines, place)), index)
    after = next((place for place in range(index + 1, len(lines)) if parted_above(lines, place)), index)
    beside = {before, after} - {index}
    return column if any(_own_key(lines[other]) for other in beside) else 0


def loud_key(lines: Sequence[Line], index: int) -> int:
    """The column after a word in capitals with text at the column of two more such nearby: their texts go on flush left."""
    line = lines[index]
    column = _capital_key(line)
    if not column or not (parted_above(lines, index) or closed(lines[index - 1].text)):
        return 0
    around = lines[max(0, index - FLAT) : index + FLAT + 1]
    alike = sum(one.indent == line.indent and _capital_key(one) == column for one in around)
    return column if alike >= ALIKE else 0


def said_again(lines: Sequence[Line], index: int, keys: Sequence[int]) -> int:
    """The column after a name in capitals and a colon that was one above, its text at the same column: who speaks."""
    line = lines[index]
    match = _NAME.match(line.text) if ":" in line.text[:LONGEST_KEY] else None
    if match is None:
        return 0
    column = line.indent + match.end()
    before = range(max(0, index - FLAT), index)
    return column * any(keys[at] == column and _same(lines[at], line, match["name"]) for at in before)


def _same(above: Line, line: Line, name: str) -> bool:
    return above.indent == line.indent and above.text.startswith(name)


def _capital_key(line: Line) -> int:
    match = key_of(line.text) if line.text[:2].isupper() else None
    if match is None or match.end() > LONGEST_KEY or not match["key"].isupper() or "." in match["blank"]:
        return 0
    rest = line.text[match.end() :]
    said = prose(rest) or closed(rest)
    return line.indent + match.end() if said and WIDE.search(rest) is None and match["key"].isalpha() else 0


def glossed_word(lines: Sequence[Line], index: int) -> int:
    """The column after `Word: `, where lines that no blank line parts explain words so, and the longer ones hang."""
    line = lines[index]
    if _GLOSS.match(line.text) is None:
        return 0
    start = next((place for place in range(index, -1, -1) if parted_above(lines, place)), 0)
    end = next((place for place in range(index + 1, len(lines)) if parted_above(lines, place)), len(lines))
    if end - start > GLOSSARY or lines[start].indent != line.indent:
        return 0
    level = [one for one in lines[start:end] if one.indent == line.indent]
    words = [match for one in level if (match := _GLOSS.match(one.text)) is not None]
    hangs = len(level) < end - start and all(one.indent >= line.indent for one in lines[start:end])
    match = words[level.index(line)] if len(words) == len(level) > 1 and hangs else None
    return line.indent + match.end() if match is not None else 0


def _own_key(line: Line) -> int:
    """The column after two blanks at the start of a line, and nowhere else in it: no word processor puts them in."""
    match = key_of(line.text) if line.ending is not Ending.UNKNOWN else None
    if match is None:
        return 0
    again = WIDE.search(line.text, match.end())
    plain = again is None and not closed(match["key"])
    return line.indent + match.end() if plain else 0
