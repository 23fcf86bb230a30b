"""Where a run of lines turns from text to program text or back, or from keys to what they mean, with no blank line.

What stands on either side of a turn is judged for itself.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.lists.entries import label_end
from fit.document.text.lists.listing import Listing
from fit.document.text.running.verse import rhymed
from fit.document.text.signs.code import code, prompted, typed
from fit.document.text.signs.joins import SCHEMES
from fit.document.text.signs.measure import closed, hangs, prose, sentence
from fit.document.text.titles.headings import loud

_LEAD = re.compile(r"(?:^|[\s(\"'-])[^\W\d_]+[)\"']*:$")
_ADDRESS = re.compile(rf"<?(?:URL: ?)?(?:{SCHEMES}):\S+>?[,.;]?")
_STATEMENT = re.compile(r"[^\s;][^;]*;(?:\s+(?:/\*.*\*/|//.*))?")
"""A statement with its own end, and the remark beside it."""
LONGEST_EXAMPLE = 3
"""Words of a line below a colon that need not look like program text."""
LONGEST_USAGE = 60
"""Characters of a line above its explanation, at most."""


def find_turns(lines: Sequence[Line], start: int, end: int, listing: Listing) -> set[int]:
    """The places in the run ``start <= i < end``, which no blank line parts, where something else begins."""
    turns: set[int] = set()
    column = -1  # where the program text stands that a sentence led in to
    again = -1  # the line at which it last ended
    for index in range(start + 1, end):
        above, below = lines[index - 1], lines[index]
        if column < 0 and below.indent >= above.indent + 2 and (sung := _sung(lines, index, end)):
            turns |= {index, sung} - {end}
            continue
        if column < 0 and _again(lines, index, end):
            turns.add(index)
            column = below.indent
            continue
        marked = listing.markers[index] is not None or listing.keys[index] > 0
        if column < 0 and 0 < listing.keys[index - 1] == below.indent and hangs(above.text):
            continue
        if column < 0 and not marked and _statements_above(lines, start, index, end):
            turns.add(index)
            break
        if prompted(lines[start].text) and prompted(below.text) and below.indent == lines[start].indent:
            continue
        if column < 0:
            before = lines[index - 2] if index - 2 >= start else None
            deeper = below.indent >= above.indent + 2 and not typed(above.text)
            led = deeper and _LEAD.search(above.text) is not None and prose(above.text)
            if marked or not _set_off(below.text, led or (deeper and again == index - 1)):
                continue
            if (deeper and again == index - 1) or _leads_in(before, above, below.indent):
                turns.add(index)
                column = below.indent
        elif marked or _text_again(below, column):
            turns.add(index)
            column = -1
            again = index
    return turns or _under_usage(lines, start, end, listing)


def _sung(lines: Sequence[Line], index: int, end: int) -> int:
    """The end of the verse, set in, that a colon leads to; 0 where its lines do not rhyme or begin with small letters."""
    if not lines[index - 1].text.endswith(":"):
        return 0
    stop = index
    while stop < end and lines[stop].indent >= lines[index].indent:
        stop += 1
    texts = [line.text for line in lines[index:stop]]
    capital = all(text.lstrip("\"'")[:1].isupper() for text in texts)
    return stop if capital and rhymed(texts) else 0


def _again(lines: Sequence[Line], index: int, end: int) -> bool:
    """Whether a line and the next two begin with the same word behind two signs, and the one above does not: directives."""
    text = lines[index].text
    word = text.partition(" ")[0]
    if index + 2 >= end or len(word) < 3 or any(map(str.isalnum, word[:2])) or not word[2].isalpha():
        return False
    same = all(line.text.startswith(f"{word} ") for line in lines[index : index + 3])
    return same and not lines[index - 1].text.startswith(word) and prose(lines[index - 1].text)


def _statements_above(lines: Sequence[Line], start: int, index: int, end: int) -> bool:
    """Whether a run is statements, each with its end and perhaps a remark, over one sentence that stands to their left."""
    below = lines[index]
    if index + 1 < end or below.indent + 2 > lines[start].indent or typed(below.text):
        return False
    return _said(below.text) and all(
        line.indent >= below.indent + 2 and _STATEMENT.fullmatch(line.text) for line in lines[start:index]
    )


def _set_off(text: str, led: bool) -> bool:
    """Whether a line is program text or an address; or, where a colon leads in to it, anything but a sentence."""
    if typed(text) or _ADDRESS.fullmatch(text):
        return True
    return led and len(text.split()) <= LONGEST_EXAMPLE and not prose(text)


def _leads_in(before: Line | None, line: Line, indent: int) -> bool:
    """Whether program text at ``indent`` can follow a line: a colon after a word, or words and a deeper indent."""
    text = line.text
    if typed(text) or indent < line.indent or (before is not None and typed(before.text)):
        return False
    if indent < line.indent + 2:
        return _LEAD.search(text) is not None and (prose(text) or (before is not None and prose(before.text)))
    return _LEAD.search(text) is not None or prose(text)


def _text_again(line: Line, column: int) -> bool:
    """Whether a line ends the program text at ``column``: it stands to its left, or reads as a sentence beside it."""
    if code(line.text) or _ADDRESS.fullmatch(line.text):
        return False
    return (line.indent < column and not typed(line.text)) or (line.indent <= column and prose(line.text))


def _said(text: str) -> bool:
    """Whether a line says something: it reads as running text, or is a whole sentence."""
    return prose(text) or (sentence(text) and not text.endswith(":"))


def _under_usage(lines: Sequence[Line], start: int, end: int, listing: Listing) -> set[int]:
    """Where the explanation starts that stands further in under lines that are no sentences."""
    indent = lines[start].indent
    index = start
    while index < end and lines[index].indent == indent:
        text = lines[index].text
        marked = listing.markers[index] is not None or listing.keys[index] > 0
        if marked or prose(text) or closed(text) or len(text) > LONGEST_USAGE:
            return set()
        index += 1
    if index == end or any(line.indent < indent + 2 for line in lines[index:end]):
        return set()
    text, label = lines[index].text, label_end(lines[index - 1].text)
    if code(text) or listing.markers[index] is not None or not _said(text):
        return set()
    if loud(text) and loud(lines[index - 1].text):
        return set()  # lines of a title
    if label and lines[index].indent == indent + label:
        return set()  # it goes on with what stands beside a label
    return {index}
