"""What two lines of running text, one right below the other, show of each other."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Ending, Line, parted_above
from fit.document.text.lists.entries import labelled
from fit.document.text.running.runs_on import SPREAD
from fit.document.text.signs.code import clause_end, code, ordered, prompted, small_words, typed, with_options
from fit.document.text.signs.joins import FAR, NEAR, cut_word, reads, shortfall
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

OVER = 10
"""Cells beyond the margin that no wrapped line of several words reaches."""
_ENUMERATED = re.compile(r"\S+(?:, \S+)+[^\W_]\.")
"""Words between commas up to a full stop: the end of a sentence, though each of them may be a setting."""
_SETTING = re.compile(r"[*$]?\w[\w.-]* ?= ?\"[^\"]*\";?")
"""A name that is set to words in quotation marks, and nothing else."""
_QUOTED_ON = re.compile(r"(?P<sign>['\"])[^'\"]+(?P=sign)[.,;]? [a-z]")
"""What is quoted, and words behind it."""
_FORM = re.compile(r"<\w[\w -]*> .*<\w[\w -]*>")
"""Two places that are to be filled in, the first at the start."""
_LINK = re.compile(r"<<[^<>]+>>|\[[^\[\]]+\]\([^()\s]+\)")
"""A link with the words that stand for it, and nothing else."""
_WITH_OPTION = re.compile(r"[a-z][\w.-]* --[a-z][\w-]*(?: <[^<>]+>)*")
"""A command, its option and the places that are to be filled in, and nothing else."""
LED = 20
"""Lines above and below one of a list without signs that are looked at, at most."""
WORDED = 3
"""Small words of a sentence in two lines, at least, that no program text has."""
INDENTED = 8
"""Cells of indentation of a line that stands in the middle, at least."""


def left_of_key(lines: Sequence[Line], index: int) -> bool:
    """Whether a sentence goes on left of the key that it seems to start with: it is the first line of a paragraph."""
    if parted_above(lines, index + 1):
        return False
    line, below = lines[index], lines[index + 1]
    return below.indent < line.indent and prose(line.text) and stops_short(line, below)


def title_alone(lines: Sequence[Line], index: int) -> bool:
    """Whether a line at the top of a page stands alone and ends no sentence, as the last one of a paragraph does."""
    alone = index + 1 == len(lines) or lines[index + 1].gap > 0
    return alone and not closed(lines[index].text)


def over_deeper(lines: Sequence[Line], index: int) -> bool:
    """Whether a line that ends no sentence stands right over one set deeper, which goes on with it or explains it."""
    if index + 1 == len(lines) or closed(lines[index].text):
        return False
    below = lines[index + 1]
    return not below.apart and below.indent >= lines[index].indent + 2


def centred(above: Line, below: Line, right: int) -> bool:
    """Whether two lines short of the margin stand in the middle of one another: each stays a line."""
    middle = abs(above.indent + above.end - below.indent - below.end) <= 1
    deep = min(above.indent, below.indent) >= INDENTED and abs(above.indent - below.indent) > 1
    return middle and deep and shortfall(above, below, right) > NEAR


def stops_short(above: Line, below: Line) -> bool:
    """Whether a line stops in the middle of a sentence, by its words alone."""
    return not closed(above.text) and (starts_small(below.text) or hangs(above.text))


def runs_on(above: Line, below: Line, right: int) -> bool:
    """Whether a full line stops in the middle of a sentence above one that fits it: that one is no program text."""
    if closed(above.text) or prompted(below.text):
        return False
    if code(above.text) and code(below.text):
        return False
    set_off = code(above.text) and not (prose(above.text) or hangs(above.text))
    if set_off and below.text[:1].isupper() and below.indent == above.indent:
        return False
    word = below.text.split(None, 1)[0]
    full = above.ending is Ending.UNKNOWN and above.end + 1 + len(word) > right
    listed = above.text.endswith(",") and closed(below.text) and not typed(below.text)
    return full and (listed or reads(above.text, below.text))


def stretched(above: Line, below: Line, margin: int) -> bool:
    """Whether blanks were widened to bring a line to the margin, as they are in every line of a paragraph but the last."""
    wide = above.end == margin and SPREAD.search(above.text) is not None and prose(above.text)
    return wide and below.indent == above.indent and (prose(below.text) or closed(below.text))


def worded_on(above: Line, below: Line, right: int) -> bool:
    """Whether a full line stops in the middle of words with program text among them, and they go on in the next."""
    if closed(above.text) or shortfall(above, below, right) >= 0 or above.indent != below.indent:
        return False
    first, second = small_words(above.text), small_words(below.text)
    return first > 0 and second > 0 and first + second >= WORDED


def through(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether a sentence that has not ended goes on over program text, one word or one link on the line above.

    Over a path it does where it stopped at a word that ends none. It goes on in small letters right below; ``start`` is where its unit starts.
    """
    if index - start < 2 or not starts_small(lines[index].text):
        return False
    before, above, below = lines[index - 2 : index + 1]
    level = before.indent == above.indent == below.indent and prose(before.text) and prose(below.text)
    if not level or closed(above.text):
        return False
    shown = code(above.text) and not closed(before.text)
    return (
        shown
        or (typed(above.text) and hangs(before.text))
        or not ((" " in above.text and not _LINK.fullmatch(above.text)) or closed(before.text))
    )


def closes_bracket(above: str, below: str, *, full: bool = False) -> bool:
    """Whether a bracket that the words of one line, or any line that is ``full``, open is still open at its end, and closed in the next."""
    column = above.rfind("(") + 1
    if not column or ")" not in below or above[column : column + 1].isspace() or ")" in above[column:]:
        return False
    opened = below.find("(")
    begun = above.partition(" ")[0] != below.partition(" ")[0]  # no field that goes on behind its sign
    return (
        begun
        and (opened < 0 or below.find(")") < opened)
        and (prose(above) or (above[column - 2 : column - 1] == " " and (full or prose(above[column:]))))
        and not (full and code(below))
    )


def mid_item(above: Line, below: Line) -> bool:
    """Whether an item's text goes on under itself, however short its line was left."""
    if above.ending is not Ending.UNKNOWN or (closed(above.text) and not above.text.endswith(":")):
        return False
    goes_on = below.text[:1].isdigit() and prose(above.text) and prose(below.text)
    return (
        goes_on
        or (left_open(above.text) and not closed(above.text))
        or starts_small(below.text.lstrip("-\u2013\u2014 "))
        or above.text.endswith(",")
    )


def mid_words(above: Line, below: Line, right: int) -> bool:
    """Whether a line is nearly full, or stops in a bracket or where no sentence can end, and small letters of a sentence go on below."""
    if closed(above.text) or not starts_small(below.text) or code(below.text):
        return False
    open_ = hangs(above.text) and not above.text.endswith(",")
    open_ = open_ or left_open(above.text) or shortfall(above, below, right) <= NEAR
    return open_ and (prose(below.text) or closed(below.text))


def set_in_first(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether a line set in below a blank one, and nearly full, stands over two lines of text at least that are not.

    By a cell or two it may stand over one alone.

    It is the first line of their paragraph, though a sentence ends in it.
    """
    above, below = lines[index - 1], lines[index]
    if not above.gap or index + 1 == len(lines) or shortfall(above, below, right) > NEAR:
        return False
    after = lines[index + 1]
    level = after.indent == below.indent if not after.apart else above.indent - below.indent <= 2
    return level and prose(above.text) and prose(below.text)


def inner_column(line: Line, column: int) -> bool:
    """Whether a word starts at the column after a wide blank or a dash: where the text after a key of an item starts."""
    return (
        line.cells[column - 2 : column] in {"  ", "- ", ": ", "= "}
        and line.cells[column : column + 1].strip(" ") != ""
    )


def led_to(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether a colon right above leads to lines at one deeper column, this one not the first, and all far too short to be wrapped."""
    column = lines[index].indent
    if lines[index - 1].indent > column or shortfall(lines[index - 1], lines[index], right) <= FAR:
        return False
    first = index
    while index - first < LED and first and not lines[first].apart and lines[first].indent == column:
        first -= 1
    if first >= index - 1 or not lines[first].text.endswith(":") or lines[first].indent >= column:
        return False
    end = index + 1
    while end < min(index + LED, len(lines)) and not lines[end].apart and lines[end].indent == column:
        end += 1
    part = lines[first + 1 : end]
    return all(
        shortfall(above, below, right) > FAR and not closed(above.text) for above, below in pairwise(part)
    )


def next_key(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether a line stands between two texts set deeper, as the key of the upper one does: it is the key of the lower."""
    if index < 2 or index + 1 >= len(lines):
        return False
    before, above, line, text = lines[index - 2 : index + 2]
    if text.apart or text.indent != above.indent:
        return False
    if before.indent == above.indent:
        return closed(above.text)
    under = before.indent == line.indent and not above.apart
    return under and not closed(before.text) and shortfall(before, above, right) >= 0


def next_label(first: Line, text: int, above: Line, below: Line, right: int) -> bool:
    """Whether a line begins with a label as the unit's first line does, below one that was not wrapped there.

    The text beside a key begins at the column ``text``, -1 where there is none: the upper label may stand there.
    Some small words below a full line of a sentence are no label like one that begins with a capital.
    """
    words = first.text[:1].isupper() and starts_small(below.text) and " " in below.text.partition(":")[0]
    if words and prose(above.text) and not closed(above.text) and shortfall(above, below, right) <= NEAR:
        return False
    level = (first.indent == below.indent and labelled(first.text)) or (
        text == below.indent and labelled(first.cells[text:])
    )
    wrapped = shortfall(above, below, right) < 0 and (first is not above or prose(above.text))
    short = closed(above.text) or not (wrapped or hangs(above.text))
    return (
        level
        and labelled(below.text)
        and short
        and not above.text.endswith(":")
        and not below.text.endswith(":")
    )


def too_long(above: Line, below: Line, right: int) -> bool:
    """Whether lines without words of a sentence were never wrapped: one of them stands far over the margin."""
    words = [line for line in (above, below) if " " in line.text]  # a long word alone stands over any margin
    over = any(line.end > right + OVER for line in words or (above, below))
    return over and not (prose(above.text) or prose(below.text))


def left_open(text: str) -> bool:
    """Whether a bracket or a quotation that the line opened is still open at its end."""
    opened = max(text.rfind(sign) for sign in ("(", "[", "`", "\u201c", "\u2018"))
    closes = opened < 0 or any(sign in text[opened:] for sign in (")", "]", "'", "\u201d", "\u2019"))
    return not closes or text.count('"') % 2 == 1


def set_off(above: str, below: str) -> bool:
    """Whether one of the lines is a command or program text and the other is not running text."""
    if cut_word(above, below) or (
        prose(above) and not closed(above) and (clause_end(below) or left_open(above))
    ):
        return False
    open_ = prose(above) and hangs(above) and above[-1].isalpha()
    if open_ and (below[0].islower() or (above[0].isalnum() and prose(below)) or _QUOTED_ON.match(below)):
        return False
    if above.endswith(":") and (
        typed(below) or _SETTING.fullmatch(below) or _FORM.fullmatch(below) or _WITH_OPTION.fullmatch(below)
    ):
        return not (prose(above) and _ENUMERATED.fullmatch(below))
    coded = code(below) or code(above)
    commands = (ordered(below) and len(below.split()) < 5 and "  " in below) or (
        ordered(above)
        and (len(above) < 30 or (with_options(above) and not starts_small(below)) or ordered(below))
    )
    if not (coded or commands):
        return False
    return not (prose(above) and (starts_small(below) or not closed(above)) and not code(below))
