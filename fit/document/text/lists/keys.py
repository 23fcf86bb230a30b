"""Hanging keys: ``KEY   meaning``, the meaning hanging under itself, and ``key - meaning``.

Justified text has wide blanks too, so a key needs company: others at its place with their text at the same column.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence

from fit.document.text.line import Ending, Line
from fit.document.text.lists.hung_labels import hung_label
from fit.document.text.lists.legends import find_legends
from fit.document.text.lists.tight_keys import tight_key
from fit.document.text.signs.code import code, prompted
from fit.document.text.signs.joins import cut_word, shortfall
from fit.document.text.signs.markers import Marker, find_dashed, find_marker
from fit.document.text.signs.measure import Measure, closed, hangs, prose, starts_small
from fit.document.text.signs.spaced import spaced

LONGEST_KEY = 34
"""Cells to the text after a hanging key, at most."""
LONGEST_NAME = 44
"""The same for a key of one word with a sign in it."""
NEARBY = 6
"""Lines within which a hanging key must have company."""
SIGN = 3
"""Characters of a key that stands for a word, at most: the L of a map, not the name of a setting."""
_PROGRAM = re.compile(r";$|^[!+@*]|[$\\{}<>|]|\w[(\[]|[\])]\s*$|^[\"'/]|^-?\d+$")
_GLOSS = re.compile(r"[^\W\d_][\w'-]*(?: [a-z][\w'-]*){0,2}: (?=[a-z]+ [a-z])")
"""A word that small letters explain after a colon."""
FLAT = 9
"""Lines to a key in capitals whose text goes on flush left, at most."""
WIDENED = 3
"""Cells of a blank that justified lines have between words, at most."""
ALIKE = 3
"""Such keys that show one another."""
GLOSSARY = 40
"""Lines of such words that no blank line parts, at most."""
_WIDE = re.compile(r"[^\s.!?:]  +\S")
"""Blanks that no end of a sentence explains."""
_WORD = re.compile(r"[^\W_]+(?:[ -][^\W_]+)*|\W{1,3}")
_SWITCH = re.compile(
    r"(?:[-+][\w?][\w-]*|--[\w?][\w-]*|/[\w?]{1,3})(?:(?:[ =]|\[=)[\w<>\[\]{}|:/.-]+)?(?:, ?(?:-{1,2}|/)[\w?][\w-]*(?:(?:[ =]|\[=)[\w<>\[\]{}|:/.-]+)?)*"
)
"""An option with its argument and its other spellings: `-p PORT, --port=PORT`."""
_OPTION = re.compile(r"[-/+][\w?][\w-]*|\^.|<[^<>]{1,12}>|(?:Ctrl|CTRL|Alt|ALT|Shift)[-+ ].{1,3}|F\d{1,2}")
_ONE = re.compile(r"(?:\([^()]+\)|\[[^\[\]]+\]|<[^<>]+>|\S+)(?= \S)")
"""A key of one word, or one in brackets, that one blank parts from its text."""
_KEY = re.compile(r"(?P<key>\S+(?: \S+){0,5}?)(?P<blank> {2,}| ?\.{3,} *|(?: \.){3,} +(?!\.))(?=\S)")


def find_keys(
    lines: Sequence[Line],
    taken: Sequence[object],
    markers: Sequence[Marker | None],
    measure: Measure,
    keyed: Mapping[int, int],
) -> list[int]:
    """For each line the column of the text after the key that starts it; 0 where none does.

    ``keyed`` has those of runs whose columns have shown them.
    """
    keys = [0] * len(lines)
    columns = _hanging_columns(lines, taken, measure)
    legends = find_legends(lines, taken)
    for index in range(len(lines)):
        text = lines[index].text
        if taken[index] is None and markers[index] is None and not spaced(text) and not prompted(text):
            dashed = _dashed(lines, index, measure, keys, markers)
            hanging = keyed.get(index, 0) or _key(lines, index, measure, columns, keys)
            hanging = hanging or _set_apart(lines, index) or _glossed(lines, index)
            hanging = hanging or _loud_key(lines, index) or hung_label(lines, index, measure)
            hanging = hanging or tight_key(lines, index, measure, keys)
            keys[index] = (dashed or hanging) if index in keyed else (hanging or dashed)
            if keys[index] and _mid_sentence(lines, index, measure, keys, markers):
                keys[index] = 0
            keys[index] = legends.get(index, keys[index])
    return keys


def _mid_sentence(
    lines: Sequence[Line],
    index: int,
    measure: Measure,
    keys: Sequence[int],
    markers: Sequence[Marker | None],
) -> bool:
    """Whether a line goes on with the sentence of the paragraph or the item's text that it stands under."""
    if index == 0 or lines[index].gap:
        return False
    above, line = lines[index - 1], lines[index]
    if not _below_text(above, keys[index - 1], markers[index - 1], line.indent):
        return False
    told = prose(above.text) and prose(line.text)
    runs = told and find_marker(line.text) is None and not closed(above.text) and starts_small(line.text)
    return runs and (shortfall(above, line, measure.right(index)) < 0 or hangs(above.text))


def _set_apart(lines: Sequence[Line], index: int) -> int:
    """The column after a key between blank lines, with another such beside it, where the writer's own blanks are known."""
    column = _own_key(lines[index])
    if not column or not _fresh(lines, index):
        return 0
    before = next((place for place in range(index - 1, -1, -1) if _fresh(lines, place)), index)
    after = next((place for place in range(index + 1, len(lines)) if _fresh(lines, place)), index)
    beside = {before, after} - {index}
    return column if any(_own_key(lines[other]) for other in beside) else 0


def _loud_key(lines: Sequence[Line], index: int) -> int:
    """The column after a word in capitals with text at the column of two more such nearby: their texts go on flush left."""
    line = lines[index]
    column = _capital_key(line)
    if not column or not (_fresh(lines, index) or closed(lines[index - 1].text)):
        return 0
    around = lines[max(0, index - FLAT) : index + FLAT + 1]
    alike = sum(one.indent == line.indent and _capital_key(one) == column for one in around)
    return column if alike >= ALIKE else 0


def _capital_key(line: Line) -> int:
    match = _KEY.match(line.text) if line.text[:2].isupper() and "  " in line.text else None
    if match is None or match.end() > LONGEST_KEY or not match["key"].isupper() or "." in match["blank"]:
        return 0
    rest = line.text[match.end() :]
    said = prose(rest) or closed(rest)
    return line.indent + match.end() if said and _WIDE.search(rest) is None and match["key"].isalpha() else 0


def _glossed(lines: Sequence[Line], index: int) -> int:
    """The column after `Word: `, where lines that no blank line parts explain words so, and the longer ones hang."""
    line = lines[index]
    if _GLOSS.match(line.text) is None:
        return 0
    start = next((place for place in range(index, -1, -1) if _fresh(lines, place)), 0)
    end = next((place for place in range(index + 1, len(lines)) if _fresh(lines, place)), len(lines))
    if end - start > GLOSSARY or lines[start].indent != line.indent:
        return 0
    level = [one for one in lines[start:end] if one.indent == line.indent]
    words = [match for one in level if (match := _GLOSS.match(one.text)) is not None]
    hangs = len(level) < end - start and all(one.indent >= line.indent for one in lines[start:end])
    match = words[level.index(line)] if len(words) == len(level) > 1 and hangs else None
    return line.indent + match.end() if match is not None else 0


def _fresh(lines: Sequence[Line], index: int) -> bool:
    return index == 0 or lines[index].apart


def _own_key(line: Line) -> int:
    """The column after two blanks at the start of a line, and nowhere else in it: no word processor puts them in."""
    match = _KEY.match(line.text) if line.ending is not Ending.UNKNOWN else None
    if match is None or match.end() > LONGEST_KEY:
        return 0
    again = _WIDE.search(line.text, match.end())
    plain = again is None and not closed(match["key"]) and find_marker(line.text) is None
    return line.indent + match.end() if plain else 0


def _hanging_columns(
    lines: Sequence[Line], taken: Sequence[object], measure: Measure
) -> dict[tuple[int, int], int]:
    """How often a key at one indent has its text at one column, with nothing but that column below it."""
    counts: dict[tuple[int, int], int] = defaultdict(int)
    for index, line in enumerate(lines):
        parted = "  " in line.text or "..." in line.text or ". . ." in line.text
        match = _KEY.match(line.text) if parted and taken[index] is None else None
        if match is None or _far(match):
            continue
        column = line.indent + match.end()
        under = _under(lines, index, column)
        if under and not (under == 1 and _widened(lines, index, match, measure)):
            counts[line.indent, column] += under
    return counts


def _widened(lines: Sequence[Line], index: int, match: re.Match[str], measure: Measure) -> bool:
    """Whether a line of justified text is full, or goes on from a full one: its blanks part no key from its text."""
    if len(match["blank"]) > WIDENED or not measure.justified(index):
        return False
    right = measure.right(index)
    above = lines[index - 1] if index and not lines[index].apart else None
    return lines[index].end == right or (above is not None and above.end == right)


def _spacing(lines: Sequence[Line], index: int, column: int, measure: Measure) -> bool:
    """Whether blanks before a column, with no text under it, were widened by justification."""
    match = _KEY.match(lines[index].text)
    if match is None or lines[index].indent + match.end() != column:
        return False
    return _widened(lines, index, match, measure) and _under(lines, index, column) != 2


def _far(match: re.Match[str]) -> bool:
    """Whether the text stands too far from a key; it may stand farther from one word with a sign, the name of a setting."""
    word = match.group().split()
    named = len(word) == 1 and not word[0].isalpha()
    return match.end() > (LONGEST_NAME if named else LONGEST_KEY)


def _under(lines: Sequence[Line], index: int, column: int) -> int:
    """Whether the next line stands under a key's text (2), lets it stand (1), or makes it mere spacing (0).

    A key that fills its column, with text under its own, is as good as text under this one.
    """
    if index + 1 >= len(lines) or (lines[index + 1].gap and not lines[index + 1].crossing):
        return 1
    below = lines[index + 1]
    if below.crossing:
        return 2 if below.indent == column else 0 if _goes_on(lines[index], below) else 1
    if below.indent == column:
        return 2
    key = _KEY.match(below.text)
    beside = key is not None and below.indent + key.end() == column
    if _tight_key(lines, index + 1, column):
        return 2
    last = below.indent < lines[index].indent and closed(lines[index].text) and "  " in below.text
    if last and not closed(lines[index].cells[:column].rstrip()):
        return 1  # the entry that these are set in below has ended
    return 1 if beside or _lone_key(lines, index, column) else 0


def _goes_on(line: Line, below: Line) -> bool:
    """Whether a sentence goes on in the next line of a paragraph."""
    small = starts_small(below.text) and not closed(line.text)
    return small and prose(line.text) and (below.indent == line.indent or _opens(line, below))


def _stops(line: Line, below: Line) -> bool:
    """Whether a line stops in the middle of a sentence that small letters go on with in the next."""
    return hangs(line.text) and prose(line.text) and starts_small(below.text)


def _lone_key(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key too long for its column follows on a line of its own, with its text at the column below it."""
    if index + 2 >= len(lines) or lines[index + 1].indent != lines[index].indent:
        return False
    return (
        lines[index + 2].indent == column and not lines[index + 2].gap and "  " not in lines[index + 1].text
    )


def _tight_key(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key fills the room before the column but for one blank, and its text goes on below at the column."""
    line = lines[index]
    key = _ONE.match(line.text)
    full = key is not None and line.indent + key.end() == column - 1
    return full and index + 1 < len(lines) and not lines[index + 1].gap and lines[index + 1].indent == column


def _key(
    lines: Sequence[Line],
    index: int,
    measure: Measure,
    columns: dict[tuple[int, int], int],
    keys: Sequence[int],
) -> int:
    """The column of the text after a hanging key at the start of a line, or 0."""
    line = lines[index]
    match = _KEY.match(line.text)
    if code(line.text) or (index and _word_goes_on(lines[index - 1], line)):
        return 0
    if match is None or _far(match):
        column = _long_key(lines, index, columns, measure)
        return 0 if column and _inside(lines, index, measure, column, keys) else column
    if _justified(lines, index, match, measure):
        return 0
    column = line.indent + match.end()
    under = _under(lines, index, column)
    inside = _inside(lines, index, measure, column, keys)
    if under == 2 and not (inside and prose(line.text) and columns.get((line.indent, column), 0) < 4):
        return column
    if not inside and (_SWITCH.fullmatch(match["key"]) or (under and _OPTION.fullmatch(match["key"]))):
        return column
    if not under or inside or columns.get((line.indent, column), 0) < 3:
        return 0
    return column if _company(lines, index, column) else 0


def _word_goes_on(above: Line, line: Line) -> bool:
    """Whether a line begins with the rest of a word of running text, and not of an option alone on its line."""
    alone = " " not in above.text and _SWITCH.fullmatch(above.text) is not None
    return cut_word(above.text, line.text) and not alone


def _justified(lines: Sequence[Line], index: int, match: re.Match[str], measure: Measure) -> bool:
    """Whether a full line goes on in the next, and blanks as wide as the one after its first word stand in either."""
    if (
        len(match["blank"]) > 2
        or not match["key"].rstrip(",:").isalpha()
        or index + 1 == len(lines)
        or _fresh(lines, index + 1)
    ):
        return False
    line, below = lines[index], lines[index + 1]
    full = below.indent == line.indent and shortfall(line, below, measure.right(index)) < 0
    wide = _WIDE.search(line.text, match.end()) is not None or _WIDE.search(below.text) is not None
    return full and wide and _goes_on(line, below)


def _company(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a key with its text at the same column stands nearby."""
    return _has_key(lines, range(max(0, index - NEARBY), index), lines[index].indent, column) or _has_key(
        lines, range(index + 1, min(len(lines), index + NEARBY + 1)), lines[index].indent, column
    )


def _has_key(lines: Sequence[Line], places: Iterable[int], indent: int, column: int) -> bool:
    for place in places:
        if lines[place].indent == indent:
            key = _KEY.match(lines[place].text)
            if key is not None and indent + key.end() == column:
                return True
    return False


def _inside(lines: Sequence[Line], index: int, measure: Measure, column: int, keys: Sequence[int]) -> bool:
    """Whether the line goes on from a full one above, which is no key itself."""
    line = lines[index]
    if index == 0 or (line.gap and not line.crossing) or keys[index - 1] == column:
        return False
    above = lines[index - 1]
    if code(above.text) and _has_key(lines, range(index - 1, index), line.indent, column):
        return False  # a key among the others, of a program
    apart = above.indent != column or (starts_small(line.text) and not closed(above.text))
    if above.indent != line.indent and not (_opens(above, line) and apart):
        return False
    return shortfall(above, line, measure.right(index)) < 0


def _opens(above: Line, line: Line) -> bool:
    """Whether a line is the first of a paragraph, set in, above a line of its text."""
    return above.gap > 0 and prose(above.text) and above.indent > line.indent


def _numbered(line: Line) -> bool:
    """Whether a line starts with a number as sections and items do, which no key stands beside."""
    marker = find_marker(line.text)
    return marker is not None and marker.strong and marker.kind.startswith("number")


def _long_key(
    lines: Sequence[Line], index: int, columns: dict[tuple[int, int], int], measure: Measure
) -> int:
    """The column after a key so long that only one blank was left before its text."""
    line = lines[index]
    key = _ONE.match(line.text)
    column = line.indent + key.end() + 1 if key is not None else 0
    if key is None or _far(key) or columns.get((line.indent, column), 0) < 3:
        return 0
    if index and not line.gap:
        above = lines[index - 1]
        match = _KEY.match(above.text)
        beside = match is not None and above.indent + match.end() == column
        if above.indent != column and not (above.indent == line.indent and beside):
            return 0
    around = range(max(0, index - NEARBY), min(len(lines), index + NEARBY + 1))
    near = [
        place
        for place in around
        if not _numbered(lines[place]) and not _spacing(lines, place, column, measure)
    ]
    before = _has_key(lines, [place for place in near if place < index], line.indent, column)
    after = _has_key(lines, [place for place in near if place > index], line.indent, column)
    after = after or (line.gap == 0 and index > 0 and lines[index - 1].indent == column)
    after = after or _tight_key(lines, index, column)
    return column if before and after and _under(lines, index, column) else 0


def _dashed(
    lines: Sequence[Line],
    index: int,
    measure: Measure,
    keys: Sequence[int],
    markers: Sequence[Marker | None],
) -> int:
    """The same for ``key - meaning``, where a neighbour has the form too."""
    line = lines[index]
    found = find_dashed(line.text)
    if found is None:
        return 0
    column = line.indent + found[2]
    beside = [*_beside(lines, range(index - 1, max(-1, index - 1 - NEARBY), -1), line.indent)]
    beside += _beside(lines, range(index + 1, min(len(lines), index + 1 + NEARBY)), line.indent)
    near = [
        other for other in beside if (form := find_dashed(other.text)) is not None and form[1] == found[1]
    ]
    if not near or (found[1] == "=" and _assigns(line, near)):
        return 0
    if index and not line.gap and not keys[index - 1] and _goes_on(lines[index - 1], line):
        return 0
    if index and not line.gap and keys[index - 1] == line.indent and _stops(lines[index - 1], line):
        return 0
    if index == 0 or line.gap or shortfall(lines[index - 1], line, measure.right(index)) >= 0:
        return column
    return 0 if _below_text(lines[index - 1], keys[index - 1], markers[index - 1], line.indent) else column


def _beside(lines: Sequence[Line], places: range, indent: int) -> Iterator[Line]:
    """The two lines next to one, in the order of the places, that start at its indent; deeper ones belong to them."""
    found = 0
    for place in places:
        if lines[place].indent < indent or found == 2:
            return
        if lines[place].indent == indent:
            found += 1
            yield lines[place]


def _assigns(line: Line, near: Sequence[Line]) -> bool:
    """Whether ``name = value`` sets a variable and explains no word, by its own signs and those of its neighbours."""
    own = _setting(line)
    return own is None or any(_setting(other) is None for other in near) or (own and all(map(_setting, near)))


def _setting(line: Line) -> bool | None:
    """None where ``name = value`` has signs of a program; else whether one word explains a long name."""
    name, _, value = line.text.partition("=")
    name, value = name.strip(" "), value.strip(" ")
    if _PROGRAM.search(value) or not _WORD.fullmatch(name):
        return None
    return len(name) > SIGN and " " not in value


def _below_text(above: Line, key: int, marker: Marker | None, indent: int) -> bool:
    """Whether a line at ``indent`` stands under the text of the one above: under an item's or a key's text, if any."""
    if key:
        return key == indent
    if marker is not None:
        return above.indent + marker.text == indent
    return above.indent == indent
