"""What a line shows by its beginning: that it goes on inside a bracket, or that it starts something of its own."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import code, small_words
from fit.document.text.signs.joins import FAR, NEAR, reads, shortfall
from fit.document.text.signs.measure import closed, hangs, prose, small_word, starts_small
from fit.document.text.signs.postal import whole_address
from fit.document.text.titles.headings import loud

SHORT_TITLE = 5
"""Words of a title in capitals right between two paragraphs, at most."""
NEARBY = 6
"""Lines to another label in capitals, at most."""
CLAUSES = 3
"""Lines below a semicolon that begin with a capital, at least, to be entries of a list."""
SAID_AGAIN = 4
"""Words that two lines have at the same places, at least, where both say the same of something else."""
_CLOSED = {
    "(": re.compile(r"\)"),
    "[": re.compile(r"\]"),
    '"': re.compile(r'"'),
    "'": re.compile(r"\w[.,;:!?]*'(?=[\s.,;:!?)]|$)"),
    "`": re.compile(r"'"),
    "\u201c": re.compile("\u201d"),
    "\u2018": re.compile(r"\w[.,;:!?]*\u2019(?=[\s.,;:!?)]|$)"),
}
"""For each sign that opens what closes it; an apostrophe does not."""
_COUNTED = re.compile(r"([A-Z][a-z]+) #?\d[\d.,-]*\s*[=:]\s")
"""A word with a number: `Bits 5-7 = `."""
_HOUR = re.compile(r"(?:\d\S* )?([0-2]?\d[:.][0-5]\d)(?= )")
"""The hour that an entry of a log begins with, behind its day or below the hour of the entry before."""
_LOUD_LABEL = re.compile(r"[A-Z][A-Z-]+(?: [A-Z-]+){0,2}: \S")
_NOTICE = re.compile(r"(?:Portions )?Copyright\b|\(c\) ?\d|\u00a9", re.IGNORECASE)
_HOLDER = re.compile(r"(?:^|\s)(?:Inc|Ltd|Corp|Co|Foundation|University)\b")
LONGEST_NAME = 6
"""Words of the rest of a name, at most."""
_NOTED = re.compile(r"\s[(\[](?:[A-Z]\w*|[A-Z]\.[A-Z]\.):$")
_ARROW = re.compile(r"\S {1,2}-> +(?:[A-Za-z][\w'/-]*,? ){2}")
"""An arrow and words."""
ASIDE = 2
"""Cells by which the end of such words may stand beside their beginning."""
_SET = re.compile(r"\w+=\*? +\(")
"""A name, and in brackets what it is set to: `h=  (hour of the watch)`."""
_NOTE = re.compile(r"\[(?:[A-Z][\w']* )?[Nn]ote: ")
"""A note that an editor put in brackets."""
_TAG = re.compile(r"\[[^\[\]\s]{1,16}\] ")
_LABEL = re.compile(r"[^\W_]{1,3}[.)] {2,}(?=\S)")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_QUESTION = re.compile(r"Q[.:)] +\S")
_ANSWER = re.compile(r"A[.:)] +\S")
_LETTER = re.compile(r"[A-Za-z] \(.+\)")
"""A letter, and what it means in brackets."""
_OPTION = re.compile(r"--?[A-Za-z][\w-]*(?:[/|]--?\w[\w-]*)*(?=[ =,:]|$)[=,:]*")
"""An option, or several that do the same or the opposite."""
AGAIN = 3
"""Words that two lines begin with, at least, where each says something of its own."""


def in_bracket(above: Line, below: Line) -> bool:
    """Whether a line starts right behind the bracket or quotation mark above it that is still open: it goes on in there."""
    column = below.indent - 1
    if not above.indent <= column < above.end or above.cells[column - 1 : column].strip(" "):
        return False
    closes = _CLOSED.get(above.cells[column])
    still = closes is not None and closes.search(above.cells, column + 1) is None
    whole = still and closes is not None and closes.search(below.text) is not None
    whole = whole and "   " not in above.text and small_words(below.text) > 0
    return still and not code(below.text) and (whole or reads(above.text, below.text))


def noted(above: Line, below: Line) -> bool:
    """Whether a bracket opened before the last word of a line, a word with a colon, and small letters go on in it: `(Note:`."""
    return _NOTED.search(above.text) is not None and starts_small(below.text) and prose(below.text)


def behind_arrow(above: Line, below: Line, right: int) -> bool:
    """Whether words that explain a value behind an arrow fill their line, and their end stands right below: `-> oil of the` `lamp.`."""
    if closed(above.text) or " -> " in below.text or code(below.text):
        return False
    told = _ARROW.search(above.text) is not None and abs(above.indent - below.indent) <= ASIDE
    on = starts_small(below.text)
    return told and on and closed(below.text) and shortfall(above, below, right) <= NEAR


def begins(lines: Sequence[Line], first: int, index: int, end: int, right: int) -> bool:
    """Whether a line starts an entry, a labelled paragraph or a title below the unit that starts at ``first``.

    ``end`` is the end of its chunk.
    """
    above, below = lines[index - 1], lines[index]
    counted = _COUNTED.match(below.text)
    if counted and any(
        (other := _COUNTED.match(line.text)) is not None and other[1] == counted[1]
        for line in (above, lines[first])
    ):
        return True
    if below.text[:1].isdigit() and (hour := _hour(below)) >= 0 and hour == _hour(lines[first]):
        return True
    if below.text[:1] == "A" and lines[first].text[:1] == "Q" and _answer(lines[first].text, below.text):
        return below.indent == lines[first].indent
    if "=" in below.text and _SET.match(below.text):
        around = [*lines[max(0, index - NEARBY) : index], *lines[index + 1 : index + 1 + NEARBY]]
        return any(_SET.match(line.text) for line in around)
    if below.text.endswith(":") and _label_over_value(lines, index):
        return True
    if below.text[:1] == "[" and _NOTE.match(below.text):
        return not prose(above.text) or closed(above.text) or "://" in above.text
    if below.text[:1] == "-" and _options(lines[first], above, below):
        return True
    if first == index - 1 and (_one_of_entries(lines, index) or _of_names(above, below)):
        return True
    if above.text[-1] == ";" and below.text[0].isupper() and _next_clause(lines, index):
        return True
    if first == index - 1 and below.text[:1].isupper() and whole_address(above.text):
        return True
    if not closed(above.text):
        return False
    if _case(lines[first].text, below.text):
        return True
    if _LOUD_LABEL.match(below.text):
        around = [*lines[max(0, index - NEARBY) : index], *lines[index + 1 : index + 1 + NEARBY]]
        return any(line.indent == below.indent and _LOUD_LABEL.match(line.text) for line in around)
    return index + 1 < end and _title(below, lines[index + 1], right)


def _answer(question: str, text: str) -> bool:
    """Whether a line begins the answer to a question, behind the same sign: `Q. ...`, `A. ...`."""
    asked = _QUESTION.match(question) is not None and _ANSWER.match(text) is not None
    return asked and question[1] == text[1]


def _label_over_value(lines: Sequence[Line], index: int) -> bool:
    """Whether a word with a colon stands over one word, as another such label nearby does below a blank line."""
    around = range(max(0, index - NEARBY), min(len(lines) - 1, index + 1 + NEARBY))
    labels = [
        place
        for place in around
        if lines[place].indent == lines[index].indent
        and lines[place].text.endswith(":")
        and " " not in lines[place].text
        and not lines[place + 1].gap
    ]
    value = index in labels and " " not in lines[index + 1].text
    return value and any(lines[place].gap for place in labels)


def _one_of_entries(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is alike the one above it; or stands less deep, below the last of some that are alike.

    A text may go on below with the name that it began with.
    """
    above, below = lines[index - 1], lines[index]
    if below.indent >= above.indent:
        after = lines[index + 1] if index + 1 < len(lines) else None
        last = after is None or after.apart or after.indent != below.indent or not starts_small(after.text)
        again = after is not None and _begins_again(below.text, after.text)
        return (last or again) and below.indent == above.indent and _alike(above.text, below.text)
    return index > 1 and below.text[:1].isupper() and _alike(lines[index - 2].text, above.text)


def _options(first: Line, above: Line, below: Line) -> bool:
    """Whether a line begins with an option, as the entry above does at its column, which stops where a sentence may.

    A small word behind it, or nothing, shows that it stands in a sentence.
    """
    if first.indent != below.indent or hangs(above.text) or not _OPTION.match(first.text):
        return False
    option = _OPTION.match(below.text)
    rest = below.text[option.end() :].split() if option is not None else []
    return rest != [] and (rest[0][0].isupper() or not small_word(rest[0]))


def _next_clause(lines: Sequence[Line], index: int) -> bool:
    """Whether several lines nearby end in a semicolon, each above one at its indent that begins with a capital."""
    indent = lines[index].indent
    near = range(max(1, index - NEARBY), min(len(lines), index + NEARBY))
    return (
        sum(
            lines[at].indent == indent
            and lines[at].text[0].isupper()
            and not lines[at].apart
            and lines[at - 1].text[-1] == ";"
            and not code(lines[at].text)
            for at in near
        )
        >= CLAUSES
    )


def _alike(above: str, below: str) -> bool:
    if above.count('"') > 1 and below.count('"') > 1 and above[0].islower():
        return above.partition(" ")[0] == below.partition(" ")[0]  # rules, each with what it is about
    return not (closed(above) or closed(below) or hangs(above) or "   " in above) and (
        _ordered_alike(above, below) or _says_again(above, below) or _begins_again(above, below)
    )


def _of_names(above: Line, below: Line) -> bool:
    """Whether two sentences say something of two names in small letters: `lamp does ...`, `horn does ...`."""
    if above.indent != below.indent or above.text[-1] != "." or below.text[-1] not in ".)":
        return False
    first, second = above.text.split()[:2], below.text.split()[:2]
    same = len(first) == 2 and first[0] != second[0] and first[1:] == second[1:] and first[1].isalpha()
    return same and above.text[0].islower() and below.text[0].islower()


def _ordered_alike(above: str, below: str) -> bool:
    """Whether two lines begin with one capital word: `Open the vent`, `Open the flue`."""
    word = above.partition(" ")[0]
    order = len(word) > 2 and word.istitle() and word.isalpha() and not small_word(word.lower())
    return order and below.startswith(f"{word} ")


def _says_again(above: str, below: str) -> bool:
    """Whether two lines say the same of two names: `wick-3 for cold nights`, `wick-5 for cold nights`."""
    first, second = above.split(), below.split()
    if len(first) != len(second) or first[-1] != second[-1] or first[0] == second[0]:
        return False
    same = sum(map(str.__eq__, first, second))
    return same >= SAID_AGAIN and 2 * same > len(first)


def _begins_again(above: str, below: str) -> bool:
    """Whether two lines begin with the same few small words, or each with a letter that it explains in brackets."""
    if above[:1] != below[:1]:
        return _LETTER.fullmatch(above) is not None and _LETTER.fullmatch(below) is not None
    first, second = above.split()[:AGAIN], below.split()[:AGAIN]
    return len(first) == AGAIN and first == second and all(map(str.isalpha, first)) and above[0].islower()


def _hour(line: Line) -> int:
    """The column of the hour that a line begins with, or -1."""
    match = _HOUR.match(line.text)
    return line.indent + match.start(1) if match else -1


def _case(first: str, below: str) -> bool:
    """Whether two sentences begin with the same words but for the number that something is set to: `If oil=1, ...` and `If oil=0, ...`."""
    one, other = " ".join(first.split()[:2]), " ".join(below.split()[:2])
    if one == other or one[:1] != other[:1] or not one[:1].isupper() or "=" not in one:
        return False
    return _NUMBER.sub("0", one) == _NUMBER.sub("0", other)


def _title(line: Line, below: Line, right: int) -> bool:
    """Whether a short line in capitals that was not wrapped stands right over the first line of a paragraph."""
    short = len(line.text.split()) <= SHORT_TITLE and not closed(line.text) and not code(line.text)
    begun = below.text[:1].isupper() and prose(below.text) and line.indent == below.indent
    return short and begun and loud(line.text) and shortfall(line, below, right) > FAR


def notice_goes_on(first: str, above: str, below: str) -> bool:
    """Whether the second line of a copyright notice is the rest of the holder's name."""
    return (
        _NOTICE.match(first) is not None
        and _NOTICE.match(below) is None
        and not closed(above)
        and len(below.split()) <= LONGEST_NAME
        and _HOLDER.search(below) is not None
    )


def tagged_alike(first: str, text: str) -> bool:
    """Whether two texts begin with a tag in brackets, as entries of a list of sources do, or with labels equally wide.

    Typists have no figure one: `l3.` and `l4.` are their numbers.
    """
    labels = [_LABEL.match(one) for one in (first, text)]
    alike = len({label and label.end() for label in labels}) == 1 and labels[0] is not None
    return alike or (_TAG.match(first) is not None and _TAG.match(text) is not None)
