"""Lines that each stand for themselves by what is in them: rows of columns, links of a list, remarks beside names."""

from __future__ import annotations

import re

from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import SCHEMES, cut_word
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

_WIDE_BLANK = re.compile(r"(?<=\S) {2,}(?=\S)")
_ADDRESS_LAST = re.compile(rf"\s<?(?:{SCHEMES}):\S+$")
"""Words, and then an address: two such lines are links of a list."""
_LEADERS = re.compile(r"(?:\.{6,}| \.{4,}|(?: \.){3,})$")
"""Dots that lead to a place that is not filled in yet: nothing of the entry comes after them."""
_FIELD = re.compile(r"[A-Z][A-Za-z]+(?:-[A-Za-z]+)*:(?=[^\s:])(?!//|\\)")
"""The name of a field with its value right behind the colon, as no sentence has it."""
_NAMED = re.compile(r"(?:[a-z]+|From|To|Cc|Date|Subject|Sender|Reply-To|Message-I[Dd]|Received): \S")
"""One small word and a colon, or a field of a letter, which lines of a sentence hardly begin with one below the other."""
_SIGNED = re.compile(r"[\w.+-]+@[\w.-]+\.\w+ {4,}\S")
"""An address of mail and, at the other end of the line, a place: the line of a signature."""
_LABELLED = re.compile(r"[^\s:](?:[^:]*:(?P<blanks> +)|\S*(?: \S+){0,3}?(?P<before> +)[-=] )(?=\S)")
LABEL = 4
"""Words of a label, at most."""
_NUMBER = re.compile(r"\d{8,}\.?")
"""Part of a number of very many figures, which its writer broke where each line has as many of them, or its end."""
_BRACED = re.compile(r"\w+ \{[^{}]*\}")
_SLOTTED = re.compile(r"[\w.-]+(?: <[^<>]+>)+ [=:-] ")
"""A command with the places of its words in angle brackets, and what it does."""
_STROKE = re.compile(r"/[A-Za-z]{2,}")
BEGINNING = 10
"""Characters, at least, with which two lines begin that are two of one kind."""
_PIECE = re.compile(r"[()\[\]<>/=|{}]")
"""A sign of such a piece, as the first words of a sentence seldom have it."""


def own_lines(above: Line, below: Line, right: int) -> bool:
    """Whether two lines, one right below the other, are no running text that the first breaks off."""
    return (
        (above.text.endswith(("...", " .")) and _led(above.text, below.text))
        or (above.text[-1].isdigit() and all(_NUMBER.fullmatch(line.text) for line in (above, below)))
        or _in_columns(above, below, right)
        or (not closed(below.text) and all(_ADDRESS_LAST.search(line.text) for line in (above, below)))
        or (_remarked(above.text) and _remarked(below.text))
        or all(_FIELD.match(line.text) for line in (above, below))
        or _same_name(above.text, below.text)
        or (": " in below.text and all(_NAMED.match(line.text) for line in (above, below)))
        or (below.indent > above.indent and above.text.endswith(");") and code(above.text))
        or _values_lined_up(above, below)
        or (above.text[-1] == "}" and below.indent > above.indent and _explained(above.text, below.text))
        or (" <" in below.text and all(_SLOTTED.match(line.text) for line in (above, below)))
        or _same_request(above.text, below.text)
        or _same_beginning(above.text, below.text)
        or ("@" in above.text + below.text and _signed(above, below))
    )


def _led(above: str, below: str) -> bool:
    """Whether the dots at the end of a line lead to what is missing; in a sentence that goes on they leave something out."""
    few = above.endswith("...") and not above.endswith("." * 5)
    goes_on = few and starts_small(below) and prose(below) and "..." not in below
    return _LEADERS.search(above) is not None and not goes_on


def _signed(above: Line, below: Line) -> bool:
    """Whether one of the lines is that of a signature; text under the place beside an address goes on with what that says."""
    upper = _SIGNED.match(above.text)
    if upper is not None:
        return below.indent != above.indent + upper.end() - 1
    return _SIGNED.match(below.text) is not None


def _values_lined_up(above: Line, below: Line) -> bool:
    """Whether two labels have their values at one column, for which a typist put blanks behind or before a sign of one.

    The upper one may stand beside a key.
    """
    if "  " not in above.text and "  " not in below.text:
        return False
    column = below.indent
    if above.indent != column and _labels_end_alike(above, below):
        return True
    if column and not above.cells[column - 1 : column].isspace():
        return False
    first, second = (_LABELLED.match(line.cells, column) for line in (above, below))
    if first is None or second is None or first.end() != second.end():
        return False
    return first.groups() != second.groups()


def _labels_end_alike(above: Line, below: Line) -> bool:
    """Whether two short labels begin at columns of their own and end at one, with wide blanks before their values."""
    first, second = (_LABELLED.match(line.cells, line.indent) for line in (above, below))
    if first is None or second is None or first.end() != second.end():
        return False
    short = all(len(label[0].split()) <= LABEL for label in (first, second))
    return short and len(first["blanks"] or "") == len(second["blanks"] or "") >= 2


def _explained(above: str, below: str) -> bool:
    """Whether a line is a name and what its braces hold, and a capital begins the next: what it means."""
    return below[:1].isupper() and _BRACED.fullmatch(above) is not None


def _same_request(above: str, below: str) -> bool:
    """Whether two lines begin with the same command behind a stroke, as no two lines of a sentence do: `/join`."""
    name = above.partition(" ")[0]
    return _STROKE.fullmatch(name) is not None and below.startswith(f"{name} ")


def _same_beginning(above: str, below: str) -> bool:
    """Whether two lines, no prose and no list with commas, begin with the same piece of a command, a call or an address."""
    if above[:BEGINNING] != below[:BEGINNING] or "," in above or "," in below:
        return False
    sign = _PIECE.search(above)
    said = prose(above) or prose(below) or hangs(above) or closed(below)
    return sign is not None and not said and below.startswith(above[: sign.end()])


def _same_name(above: str, below: str) -> bool:
    """Whether two lines set the same name to something, whatever words that is: `light=2, the lamp on the stairs`."""
    name, sign, _ = above.partition("=")
    return sign != "" and name.isidentifier() and below.startswith(f"{name}=")


def _remarked(text: str) -> bool:
    """Whether a line that is no sentence has a remark behind a `#`."""
    head, sign, _ = text.partition(" # ")
    return sign != "" and not prose(head)


def _in_columns(above: Line, below: Line, right: int) -> bool:
    """Whether two lines are rows of figures or columns and no running text."""
    if not _columned(above.text) or cut_word(above.text, below.text) or _justified(above, below, right):
        return False
    if closed(above.text) and prose(below.text):
        return False  # signs of a program inside a paragraph
    figures = sum(any(char.isdigit() for char in token) for token in above.text.split())
    return _columned(below.text) or figures >= 3


def _justified(above: Line, below: Line, right: int) -> bool:
    """Whether a line ends at a margin, and its wide blanks do not stand above those of the next: no columns."""
    columns = {match.end() for match in _WIDE_BLANK.finditer(above.cells)}
    shared = columns & {match.end() for match in _WIDE_BLANK.finditer(below.cells)}
    return above.end in {right, below.end} and 2 * len(shared) < len(columns)


def _columned(text: str) -> bool:
    """Whether a line stands in columns: wide blanks between words that are no sentence."""
    return "  " in text and len(_WIDE_BLANK.findall(text)) >= 3 and not prose(text)
