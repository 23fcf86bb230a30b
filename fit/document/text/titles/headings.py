"""Headings: underlined, in capitals, numbered, bold, or short and alone above running text."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Mark
from fit.document.text.line import Line
from fit.document.text.signs.code import code, command
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, names, prose, starts_small
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.spaced import spaced
from fit.document.text.signs.underlines import underlines

LONGEST = 66
"""Characters of a heading on one line, at most."""
DISPLAY = 20
"""Lines of a display in the middle of a sentence, at most."""
CENTRED = 16
"""Cells at the left of a line that nothing but its place in the middle explains."""
LONGEST_LABEL = 4
"""Characters of a letter or number before a title, at most."""
SET_IN = 8
"""Cells at the left of the number and of the title of a chapter, at least, where both stand in the middle."""
TALLEST = 3
"""Lines of a heading, at most."""
BY_EYE = 4
"""Cells by which the two sides of a line in the middle may differ from those of the next, taken together."""
NUMBERED = re.compile(
    r"(?:(?:chapter|part|section|appendix|lesson|book)\s+\w+\b|\d{1,2}(?:\.\d{1,2})*\.?\s+|[A-Z]\.(?:\d+\.?)*\s+|[IVX]+\.\s+)",
    re.IGNORECASE,
)
SECTION = re.compile(r"\d{1,2}(?:\.\d{1,2})+\.? +(?=[A-Z])")
"""The number of a section, with any blank behind it."""
_DECKED = re.compile(
    r"[*=~+#<>]{2,} ?(?=[^\W_])[^*=~#<>]*[\w.?!):] ?[*=~+#<>]{2,}(?P<behind> {3,}[^\W_][^*=~#<>]*\w)?"
)
"""A title between signs, `*** Stores ***`, or its number, and the title behind that."""
_SYNOPSIS = re.compile(r"[a-z]\[[a-z]+\]|^\[[a-z]+\] .*\]$|^[!@] \w|^<[^<>]+>$|\w \* |^[^<]*\w> \w")
"""How a command is typed, or what a program writes: no title."""
_FIELD = re.compile(r"[A-Z][\w-]*:\s")
_ANSWERED = re.compile(r"\? +\w[^?]*$")
"""A question with its answer behind it."""
_FILE = re.compile(r"\S*\w\.[a-z]\S*")
_FIGURE = re.compile(r"(?:Figure|Fig\.) \d{1,3}(?:[.-]\d{1,3})*[.:]?(?: |$)")
"""What a figure is called, above it or below it: it heads no text."""
_CAPTION = re.compile(r"[A-Z][\w'-]*:(?: [\w'-]+)+")
_WORDS = re.compile(r"[^\W\d_]+(?:[ ,'&-]{1,2}[^\W\d_]+)*[.!?]?")
_FEW_WORDS = re.compile(r"[A-Z][\w'-]*(?: [\w'-]+){1,7}")
_NUMERAL = re.compile(r"[IVXLC]{1,6}\.?|\d{1,2}\.?")
_CHAPTER_LABEL = re.compile(r"(?:[A-Z]|\d{1,2}|[IVXLC]{1,6})[.):]? +(?=\S)")
_CHAPTER = re.compile(r"(?:chapter|part|section|appendix|lesson|book|unit|act|scene) [\w-]+", re.IGNORECASE)
_LEVELS = re.compile(r"\d+")
_SIGN = re.compile(r"^[A-Z]{1,2}(?=\d+\.\d)")
_HELD = ("()", "$$")
"""What stands around a remark, and around the version of a file that a program keeps."""
_ORDINAL = re.compile(r"(?<=\d)(?:st|nd|rd|th)\b")
_LETTERED = re.compile(r"[A-Z]{1,2}\.\d")


def underlined(lines: Sequence[Line], index: int) -> bool:
    """Whether the next line is a rule under this line's words, and nothing else."""
    if index + 1 >= len(lines) or lines[index + 1].gap > 1 or lines[index + 1].crossing:
        return False
    if underlines(lines, index + 1):
        return True
    line, rule = lines[index], lines[index + 1]
    if not ruled_off(rule.text) or ruled_off(line.text) or line.text.startswith("> "):
        return False
    if rule.gap:
        return loud(line.text) and rule.indent == line.indent and abs(rule.end - line.end) <= 1
    if "   " in line.text:
        exact = (rule.indent, rule.end) == (line.indent, line.end)
        return exact and "   " not in SECTION.sub("", line.text)
    if line.text.endswith(".") and prose(line.text):
        return (rule.indent, rule.end) == (line.indent, line.end)
    return abs(rule.indent - line.indent) <= 3 and abs(rule.end - line.end) <= 4


def loud_lines(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether two or three lines in capitals, which read on, stand alone in the middle: one title."""
    part = lines[start:end]
    if not 1 < len(part) <= TALLEST or part[0].indent < SET_IN or not all(loud(line.text) for line in part):
        return False
    apart = (not start or part[0].gap > 0) and (end == len(lines) or lines[end].gap > 0)
    middles = [line.indent + line.end for line in part]
    level = max(middles) - min(middles) <= BY_EYE and all(line.indent >= SET_IN for line in part)
    return apart and level and not any(gap(line.text) for line in part) and not closed(part[-1].text)


def gap(text: str) -> bool:
    """Whether a wide blank stands in a line, other than one behind the letter or number of a chapter."""
    label = _CHAPTER_LABEL.match(text)
    return "   " in (text[label.end() :] if label is not None else text)


def dressed(line: Line) -> bool:
    """Whether bold or underlined type makes a title of a line: of all but its number, or of the first of a few words."""
    held = line.resolved
    if held is None or not any(held.marks) or not (line.text[:1].isupper() or line.text[:1].isdigit()):
        return False
    words: list[bool] = []
    for match in re.finditer(r"\S+", held.chars):
        marks = held.marks[match.start() : match.end()]
        words.append(all(mark & (Mark.BOLD | Mark.UNDERLINE) for mark in marks))
    first = line.text.split(maxsplit=1)[0]
    numbered = not words[0] and len(first) <= LONGEST_LABEL and first[-1] not in ":,"
    if len(words) > 1 and all(words[1:]) and (words[0] or numbered):
        return not closed(line.text)
    return words[0] and _FEW_WORDS.fullmatch(line.text) is not None


def loud(text: str) -> bool:
    """Whether the text is in capitals; the small letters of `1st` count as figures do."""
    letters = sum(map(str.isalpha, text))
    solid = len(text) - sum(map(str.isspace, text))
    if letters < max(3, 0.4 * solid):
        return False
    capitals = sum(map(str.isupper, text))
    small = 2 * len(_ORDINAL.findall(text)) if 0.5 * letters < capitals < 0.9 * letters else 0
    return capitals >= 0.9 * (letters - small)


def decked(text: str) -> bool:
    """Whether a line is words between two runs of signs, as titles and their numbers stand."""
    match = _DECKED.fullmatch(text) if text.startswith(tuple("*=~+#<>")) else None
    return match is not None and (len(text) <= LONGEST or match["behind"] is not None)


def leads(text: str) -> bool:
    """Whether the words between two runs of signs end in a colon: a title, and no sentence."""
    return decked(text) and text.rstrip("*=~+#<> ").endswith(":")


def heading(line: Line, following: Line | None) -> int:
    """The level of the heading that a line alone is, or 0; ``following`` is the line after it."""
    text = line.text
    if spaced(text):
        return 1
    titled = dressed(line) and nothing_below(following)
    deck = _DECKED.fullmatch(text)
    if deck and (len(text) <= LONGEST or deck["behind"]) and nothing_below(following):
        return 2
    if (
        len(text) > LONGEST
        or ("   " in text and not titled)
        or text.startswith(">")
        or text.lstrip("'`\"").startswith("-")
        or code(text)
        or not any(char.isalpha() for char in text)
    ):
        return 0
    if (text.endswith((".", ",", ";", "!")) or text[0] + text[-1] in _HELD) and not loud(text):
        return 0
    if _SYNOPSIS.search(text):
        return 0
    numbered = NUMBERED.match(text)
    if command(text) and not loud(text):
        return 0
    if loud(text) and not text.endswith((",", ";")):
        return section_level(text) if numbered else 1
    if deck and line.gap and leads(text) and following is not None and following.text[:1] != text[0]:
        return 2
    if (titled or line.marked() & (Mark.BOLD | Mark.UNDERLINE)) and not text.endswith(":"):
        return section_level(text) if numbered else 2
    alone = nothing_below(following)
    words = text.split()
    title = sum(word[:1].isupper() or word[:1].isdigit() for word in words) >= 0.5 * len(words)
    if numbered and alone and title and text[:1].isupper() | text[:1].isdigit():
        return section_level(text)
    over = following is not None and following.indent >= line.indent + 2
    field = _FIELD.match(text) is not None and not (over and _CAPTION.fullmatch(text))
    short = title and len(words) <= 8 and not text.endswith(":") and not field
    short = (
        short
        and _ANSWERED.search(text) is None
        and names(text)
        and "____" not in text  # a blank to fill in
        and _FILE.fullmatch(text) is None
        and " = " not in text
        and _FIGURE.match(text) is None
    )
    if alone and following is not None and line.gap and short:
        return 2
    return 0


def chapter_number(line: Line, below: Line) -> bool:
    """Whether a line is the number of a chapter, centred over its title: in capitals, or of any kind below its word."""
    middle = abs(line.indent + line.end - below.indent - below.end) <= 3 and below.gap == 0
    if _NUMERAL.fullmatch(line.text):
        return middle and loud(below.text)
    named = _CHAPTER.fullmatch(line.text) is not None and min(line.indent, below.indent) >= SET_IN
    return named and middle and below.text[:1].isupper() and not closed(below.text)


def nothing_below(following: Line | None) -> bool:
    """Whether nothing follows right below."""
    return following is None or following.apart


def around_display(lines: Sequence[Line], index: int) -> bool:
    """Whether a line leads to a display below it, after which its sentence goes on in small letters."""
    after = index + 1
    while after < min(len(lines), index + DISPLAY) and lines[after].indent >= lines[index + 1].indent:
        after += 1
    if not index + 1 < after < len(lines) or lines[index + 1].indent < lines[index].indent:
        return False
    text = lines[after].text
    return lines[after].gap > 0 and starts_small(text) and find_marker(text) is None


def heading_may_follow(above: Line, line: Line) -> bool:
    """Whether a heading can stand below a line: not an indented one below a sentence that leads to it, unless it is in bold capitals.

    Nor one right under a line in capitals, of which it is the next, or right under program text. One word a little deeper
    right under a line in small letters is what that line is said to be.
    """
    under = not line.apart and line.indent == above.indent and not ruled_off(above.text)
    if under and (loud(above.text) or (code(above.text) and not prose(above.text))):
        return False
    if line.indent <= above.indent or line.gap > 1 or ruled_off(above.text):
        return True
    if spaced(line.text) or decked(line.text) or loud(above.text):
        return True
    if above.text.endswith((":", ",")):
        return line.apart and loud(line.text) and line.marked() > 0
    if not line.apart and " " not in line.text and line.indent < CENTRED:
        return False
    return (
        (loud(line.text) and line.indent >= CENTRED and _WORDS.fullmatch(line.text) is not None)
        or closed(above.text)
        or not prose(above.text)
    )


def section_level(text: str) -> int:
    """1 for a chapter, and one more for each further number: 2.3 is level 2, and so are A.3 and Q2.3."""
    head = _SIGN.sub("", text.split(maxsplit=1)[0])
    letters = _LETTERED.match(head) is not None
    return max(1, min(4, len(_LEVELS.findall(head)) + letters)) if head[:1].isdigit() or letters else 1
