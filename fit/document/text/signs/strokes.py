"""How much of a drawing a line is, by its own signs."""

from __future__ import annotations

import re

from fit.document.text.signs.code import code
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import any_rule

BOX = re.compile(r"[\u2500-\u259f]")
_BLOCK = re.compile(r"[\u2580-\u259f]")
_LEADERS = re.compile(r"\.{4,}|(?:\. ){3,}")
_STRONG = re.compile(
    r"\+[-=.]{2,}|[-=.]{2,}\+|/\\|\\/|\|_|_\||_{2,}[/\\|]|[/\\|]_{2,}|--+>|<--+|\|\s+\|.*\||^\|.*\|$|\\_+/|/_+\\|-{3,}[|o*]|[|o*]-{3,}"
    r"|[\])]-+[\[(]|[\])]--|--[\[(]|(?:^|\s)\|--+(?:\s|$)|(?:^|\s)--+\||^[#*].*\s[#*]$|~{3,}.*~{3,}|#{2,}.*#{2,}"
    r"|(?:^|\s)o={3,}|={3,}[o/\\](?:\s|$)"
)
_OPTIONS = re.compile(r"(?:[\w.-]+ +)?(?:\[--?\w[^\[\]]*\] *)+")
"""Options that can be left out, perhaps behind their command."""
_BOXED = re.compile(r"(?P<side>[|!*#:])\s.*\s(?P=side)|(?P<bar>[|!]).+(?P=bar)")
ARROW = re.compile(r"(?:^|\s)(?:[-=]+>|<[-=]+)(?=\s|$)")
_FORM = re.compile(r"[^\W_][:?.]?\s*_{4,}")
_EDGE = re.compile(r"_{2,}[/\\|](?!_)|(?<!_)[/\\|]_{2,}")
"""Where a level changes, as no line to be filled in has it."""
_WEAK = re.compile(r"(?:^|\s)[|/\\^!:'`]+(?:\s|$)|^[vV^|]$|\s[|]\s|^[|!]|[|!]$")
_WORDS = re.compile(r"(?:(?:^|(?<= ))[A-Za-z][a-z]+[,.;:]? (?! )){3}")
"""Three words one after the other, as no drawing has them outside a box."""
SIGNS = 6
"""Single signs in a row that make a row of a map, at least."""
CROSSING = re.compile(r"\+(?=-{2})|(?<=--)\+")
"""Where the lines of a chart meet."""
_NO_INK = '"$%&@?;{}'
"""What nobody draws with."""
_QUOTED = re.compile(r'(?<=\w )"[^"\s]+"')
"""A value of a setting, which a program reads: its strokes draw nothing."""
_ADDED = re.compile(r"[A-Za-z][\w.-]* \+= \S+")
"""A setting and a word that is added to it, the strokes of a pattern perhaps."""
_QUOTED_SIGNS = re.compile(r"(?<=[a-z] )'[^'\s-]+'")
_QUOTED_LIST = re.compile(r"[(\[]?'[^'\s]*'(?:, *'[^'\s]*')*[,)\]]*")
"""Names in quotation marks with commas between: the signs in them draw nothing."""
_CURVE = re.compile(r"_{1,3}-{1,3} {2,}-{1,3}_{1,3}|_{1,3}-(?:-|[A-Za-z])-{1,2}_{1,3}")
"""The top of a curve: both its sides, or all of it, with a letter at its highest point perhaps."""
_EITHER = re.compile(r"(?<=[A-Za-z)] )/(?= [A-Za-z(])")
"""A stroke between two words, a blank on either side: one or the other."""
_MESSAGE = re.compile(r"(?:^|(?<=  ))<-{2,} (?=[\w(\"'])|(?<=[\w>)\"'.,;!?]) ?-{2,}>$")
"""An arrow before words or behind them: it says who sends what, and draws nothing by itself."""


def strength(text: str) -> int:
    """How much of a drawing a line is: 2 surely, 1 perhaps, 0 not."""
    if "-" in text and "_" in text and _CURVE.fullmatch(text):
        return 2
    if any_rule(text):
        return 0
    if ("[-" in text and _OPTIONS.fullmatch(text)) or (" += " in text and _ADDED.fullmatch(text)):
        return 0
    if kinds := sign_row(text):
        return 2 if kinds > 1 or CROSSING.search(text) else 1
    if (".." in text or ". ." in text) and _LEADERS.search(text):
        if text[0] + text[-1] == "||" and text.count("|") == 2 and " " not in text:
            return 2  # the floor between two walls
        return int(text[0] in "#|+")  # the floor beside a wall
    if not text.isascii() and len(BOX.findall(text)) >= 2:
        return 0 if _names_signs(text) else 2
    if "____" in text and _FORM.search(text) and not (_EDGE.search(text) or text[0] + text[-1] == "||"):
        return 0
    if _BOXED.fullmatch(text):
        return 2
    if (">" in text or "<" in text) and len(ARROW.findall(text)) >= 2:
        return 1
    solid = text.replace(" ", "")
    signs = len(solid) - sum(map(str.isalnum, solid))
    if not solid.strip(".") or (
        signs < 0.25 * len(solid) and any(map(str.isalnum, text.split(maxsplit=1)[0])) and _WORDS.search(text)
    ):
        return 0
    if prose(text) and signs < 0.3 * len(solid):
        return 0
    if _signalled(text):
        return 0
    if '"' in text:
        text = _QUOTED.sub("", text).rstrip()
    if "'" in text:
        if "--" not in text and _QUOTED_LIST.fullmatch(text) and any(map(str.isalnum, text)):
            return 0
        text = _QUOTED_SIGNS.sub("", text).rstrip()
    message = "--" in text and "<!" not in text and _MESSAGE.search(text) is not None
    if message:
        text = _MESSAGE.sub("", text)
    if _STRONG.search(text) and not (code(text) and signs < 0.5 * len(solid)):
        return 2
    if len(solid) >= 3 and signs > 0.6 * len(solid) and not code(text) and not _brief(text):
        return 0 if sum(char in _NO_INK for char in solid) > 1 else 2
    if text[0].isalnum() and text.count(" / ") == 1:
        text = _EITHER.sub("or", text)
    return (
        1
        if message or BOX.search(text) or _WEAK.search(text) or (signs == len(solid) and len(solid) < 3)
        else 0
    )


def _names_signs(text: str) -> bool:
    """Whether a sentence names blocks that a drawing is made of."""
    return prose(text) and text[0].isalpha() and all(map(_BLOCK.fullmatch, BOX.findall(text)))


def sign_row(text: str) -> int:
    """How many kinds of signs a row of a map has that is made of single ones, words perhaps beside it; 0 for others."""
    words = text.split(" ")
    single = [word for word in words if len(word) == 1]
    signs = [word for word in single if not word.isalnum() or word == "o"]
    if len(words[0]) != 1 or len(signs) < SIGNS or len(single) < 0.6 * len(text.split()):
        return 0
    drawn = any(len(word) > 2 and word[0] in "#.=" and not any(map(str.isalnum, word)) for word in words)
    return len(set(signs)) + drawn


def _signalled(text: str) -> bool:
    """Whether a line has letters and codes of dots and dashes, and nothing else."""
    codes = [word for word in text.split() if not word.isalnum()]
    return any(set(word) == {".", "-"} for word in codes) and all(set(word) <= {".", "-"} for word in codes)


def _brief(text: str) -> bool:
    """An option, a key or a bracketed sign, which has many signs but draws nothing; a bullet may stand before it."""
    words = text.split()
    if len(words) == 2 and words[0] in {"*", "-", "+", "o"} and any(map(str.isalnum, words[1])):
        del words[0]
    return len(words) == 1 and len(words[0]) < 8
