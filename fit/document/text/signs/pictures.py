"""Pictures: box drawings, maps and diagrams made of characters, with the words inside them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.titled_rules import titled_rule
from fit.document.text.signs.underlines import underlines

REACH = 3
"""Lines without any drawing that may stand between two drawn ones of one picture."""
BOX = re.compile(r"[\u2500-\u259f]")
_BLOCK = re.compile(r"[\u2580-\u259f]")
_RUN = re.compile(r"[\u2580-\u259f]{2}|[\u2580-\u259f]$")
_RULE = re.compile(
    r"([-=_*~#+\u2500\u2550])\1{2,}|(?:[-=_*~o] +){2,}[-=_*~o]|([-=_*~])(?!\2)([-=_*~])(?:\2\3)+\2?"
)
_REMARK_RULE = re.compile(r"\(\*([-=*])\1{5,}\*?\)|/\*([-=*])\2{5,}\*?/")
_SEGMENTS = re.compile(r"(?:[-=_\u2500\u2550~]{2,}|\.{3,})(?: +(?:[-=_\u2500\u2550~]{2,}|\.{3,}))+")
_LEADERS = re.compile(r"\.{4,}|(?:\. ){3,}")
_STRONG = re.compile(
    r"\+[-=.]{2,}|[-=.]{2,}\+|/\\|\\/|\|_|_\||_{2,}[/\\|]|[/\\|]_{2,}|--+>|<--+|\|\s+\|.*\||^\|.*\|$|\\_+/|/_+\\|-{3,}[|o*]|[|o*]-{3,}"
    r"|[\])]-+[\[(]|[\])]--|--[\[(]|(?:^|\s)\|--+(?:\s|$)|(?:^|\s)--+\||^[#*].*\s[#*]$|~{3,}.*~{3,}|#{2,}.*#{2,}"
)
_BOXED = re.compile(r"(?P<side>[|!*#:])\s.*\s(?P=side)|(?P<bar>[|!]).+(?P=bar)")
_ARROW = re.compile(r"(?:^|\s)(?:[-=]+>|<[-=]+)(?=\s|$)")
_FORM = re.compile(r"[^\W_][:?.]?\s*_{4,}")
_EDGE = re.compile(r"_{2,}[/\\|](?!_)|(?<!_)[/\\|]_{2,}")
"""Where a level changes, as no line to be filled in has it."""
_WEAK = re.compile(r"(?:^|\s)[|/\\^!:'`]+(?:\s|$)|^[vV^|]$|\s[|]\s|^[|!]|[|!]$")


_WORDS = re.compile(r"(?:(?:^|(?<= ))[A-Za-z][a-z]+[,.;:]? (?! )){3}")
"""Three words one after the other, as no drawing has them outside a box."""
_APART = re.compile(r" {5,}")
"""Blanks between labels."""
_PARTS = re.compile(r"\S+(?: {1,4}\S+)*")
"""What stands between such blanks."""
LONGEST_LABEL = 3
"""Words of a label, at most, where several stand side by side."""
SIGNS = 6
"""Single signs in a row that make a row of a map, at least."""
ACROSS = 40
"""Cells from which on a line of `_` is a rule across the text and no part of a drawing."""
TALLEST = 50
"""Lines of a figure between two rules, at most: it stands on one page."""
SLOPE = 3
"""Lines that start with a stroke aslant, at least, in a drawing of which only one line is sure."""
_TWICE = re.compile(r"([^\w\s]|o) +\1 ")
"""A sign twice, which is no bullet: two ends of a wire."""
_CROSSING = re.compile(r"\+(?=-{2})|(?<=--)\+")
"""Where the lines of a chart meet."""
_HEADS = {"v", "V"}
"""Heads of arrows, right under their stroke; elsewhere a letter or a numeral."""
_NO_INK = '"$%&@?;{}'
"""What nobody draws with."""
_QUOTED = re.compile(r'(?<=\w )"[^"\s]+"')
"""A value of a setting, which a program reads: its strokes draw nothing."""
_MESSAGE = re.compile(r"(?:^|(?<=  ))<-{2,} (?=[\w(\"'])|(?<=[\w>)\"']) ?-{2,}>$")
"""An arrow before words or behind them: it says who sends what, and draws nothing by itself."""
_SIDES = set("|+'`.,:/\\!*#-=_~")
"""What a side goes on in, above or below, or the rule that it ends at."""


def ruled_off(text: str) -> bool:
    """Whether the line is nothing but a rule."""
    return _RULE.fullmatch(text) is not None or remark_rule(text)


def remark_rule(text: str) -> bool:
    """Whether the line is a rule that stands between the marks of a remark: `(*-----*)`."""
    return text[:2] in {"(*", "/*"} and _REMARK_RULE.fullmatch(text) is not None


def segmented(text: str) -> bool:
    """Whether the line is a rule in parts, one a column of a table."""
    return _SEGMENTS.fullmatch(text) is not None


def _rule(text: str) -> bool:
    return ruled_off(text) or segmented(text) or titled_rule(text)[2] > 0


def strength(text: str) -> int:
    """How much of a drawing a line is: 2 surely, 1 perhaps, 0 not."""
    if _rule(text):
        return 0
    if kinds := sign_row(text):
        return 2 if kinds > 1 or _CROSSING.search(text) else 1
    if (".." in text or ". ." in text) and _LEADERS.search(text):
        return int(text[0] in "#|+")  # the floor beside a wall
    if not text.isascii() and len(BOX.findall(text)) >= 2:
        return 0 if _names_signs(text) else 2
    if "____" in text and _FORM.search(text) and not (_EDGE.search(text) or text[0] + text[-1] == "||"):
        return 0
    if _BOXED.fullmatch(text):
        return 2
    if (">" in text or "<" in text) and len(_ARROW.findall(text)) >= 2:
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
    message = "--" in text and "<!" not in text and _MESSAGE.search(text) is not None
    if message:
        text = _MESSAGE.sub("", text)
    if _STRONG.search(text) and not (code(text) and signs < 0.5 * len(solid)):
        return 2
    if len(solid) >= 3 and signs > 0.6 * len(solid) and not code(text) and not _brief(text):
        return 0 if sum(char in _NO_INK for char in solid) > 1 else 2
    return (
        1
        if message or BOX.search(text) or _WEAK.search(text) or (signs == len(solid) and len(solid) < 3)
        else 0
    )


def _names_signs(text: str) -> bool:
    """Whether a sentence names blocks that a drawing is made of: each stands for itself, with words around it."""
    return (
        prose(text)
        and text[0].isalpha()
        and all(map(_BLOCK.fullmatch, BOX.findall(text)))
        and not _RUN.search(text)
    )


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


def find_pictures(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are pictures."""
    weights = [
        0
        if taken[index] is not None
        or (line.gap and line.text in _HEADS)
        or underlines(lines, index)
        or _between_bars(lines, index)
        else strength(line.text)
        for index, line in enumerate(lines)
    ]
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        if weights[index] < 2 and (end := _between_rules(lines, weights, taken, index)):
            found.append((index + 1, end))
            index = end
            continue
        if weights[index] < 2:
            index += 1
            continue
        start = _upwards(lines, weights, taken, index, found[-1][1] if found else 0)
        end = _downwards(lines, weights, taken, index)
        if _picture(lines, weights, start, end):
            found.append((start, end))
        index = end
    return found


def _between_bars(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is words between two bars of which the right one is no side: nothing goes on above or below it."""
    line = lines[index]
    text = line.text
    if text[:1] != "|" or text[-1] != "|" or text.count("|") != 2 or not any(map(str.isalnum, text)):
        return False
    above = index > 0 and not line.apart and _side(lines[index - 1], line.end - 1)
    below = index + 1 < len(lines) and not lines[index + 1].apart and _side(lines[index + 1], line.end - 1)
    return not (above or below)


def _side(line: Line, column: int) -> bool:
    """Whether a line has a stroke at a column or right beside it; a rule that runs on beyond it is none."""
    near = line.cells[max(0, column - 1) : column + 2]
    rest = line.cells[column + 2 :].lstrip("-=_~")
    return (
        not prose(line.text)
        and any(sign in _SIDES or BOX.match(sign) for sign in near)
        and not (len(near) == 3 and _rule(near) and len(rest) < len(line.cells[column + 2 :]))
    )


def _between_rules(lines: Sequence[Line], weights: Sequence[int], taken: Sequence[object], start: int) -> int:
    """The end of a figure below a rule, down to one of the same length, with strokes and labels only; 0 for none."""
    rule = lines[start].cells
    if len(lines[start].text) < ACROSS or set(lines[start].text) != {"_"} or taken[start] is not None:
        return 0
    for end in range(start + 1, min(start + TALLEST, len(lines))):
        line = lines[end]
        if line.cells == rule:
            return end if any(weight == 2 for weight in weights[start:end]) else 0
        drawn = weights[end] or _rule(line.text) or _label(lines, end)
        if taken[end] is not None or line.crossing or not drawn:
            return 0
    return 0


def drawn_on(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether a drawing goes on right above or below the lines ``start <= i < end``: they are a part of it."""
    above = all(_drawn_at(lines, start - step, start - step + 1) for step in (1, 2))
    below = all(_drawn_at(lines, end + step, end + step) for step in (0, 1))
    return above or below or _axis(lines, start - 1, start, start) or _axis(lines, end, end - 1, end)


def _axis(lines: Sequence[Line], index: int, beside: int, joint: int) -> bool:
    """Whether a line has a crossing of strokes, and more than these, right where the line ``beside`` it has a bar."""
    if not 0 <= index < len(lines) or lines[joint].apart or _rule(lines[index].text):
        return False
    cells, near = lines[index].cells, lines[beside].cells
    return any(near[match.start() : match.start() + 1] == "|" for match in _CROSSING.finditer(cells))


def _drawn_at(lines: Sequence[Line], index: int, joint: int) -> bool:
    """Whether a line is drawn, with no blank line above the one at ``joint``."""
    if not 0 <= index < len(lines) or joint >= len(lines):
        return False
    return strength(lines[index].text) == 2 and not lines[joint].apart


def _picture(lines: Sequence[Line], weights: Sequence[int], start: int, end: int) -> bool:
    drawn = sum(weight == 2 for weight in weights[start:end])
    marked = sum(weight > 0 for weight in weights[start:end])
    coded = sum(code(line.text.rstrip(" \\")) for line in lines[start:end])  # a stroke may end a drawn line
    sloping = sum(line.text[:1] in "/\\" for line in lines[start:end])
    thin = drawn == 1 and sloping >= SLOPE and marked >= 0.8 * (end - start)
    if any(_boxed(lines, weights, index) for index in range(start + 1, end - 1)):
        return True
    sure = drawn >= 2 or thin or (drawn == 1 and _crossed(lines, weights, start, end))
    return sure and marked >= 0.3 * (end - start) and coded <= 0.4 * (end - start)


def _crossed(lines: Sequence[Line], weights: Sequence[int], start: int, end: int) -> bool:
    """Whether bars stand right above and below the crossing of the only line that is surely drawn."""
    index = next(index for index in range(start, end) if weights[index] == 2)
    return start < index < end - 1 and _axis(lines, index, index - 1, index)


def _boxed(lines: Sequence[Line], weights: Sequence[int], index: int) -> bool:
    """Whether a drawn line stands between two rules: a box of one row."""
    below = lines[index + 1]
    ruled = ruled_off(lines[index - 1].text) and ruled_off(below.text)
    return weights[index] == 2 and ruled and not lines[index].gap and not below.gap


def _downwards(lines: Sequence[Line], weights: Sequence[int], taken: Sequence[object], index: int) -> int:
    end = index + 1
    while end < len(lines) and taken[end] is None and not lines[end].crossing:
        gap = lines[end].gap
        if (weights[end] and gap <= 1) or (gap == 0 and _rule(lines[end].text)):
            end += 1
        elif gap <= 1 and (reach := _next_drawn(lines, weights, taken, end)):
            end = reach
        elif gap == 0 and _label(lines, end):
            end += 1
        else:
            break
    return end


def _next_drawn(lines: Sequence[Line], weights: Sequence[int], taken: Sequence[object], start: int) -> int:
    """The end of the next drawn line that the one at ``start`` stands together with, or 0."""
    for index in range(start, min(start + REACH + 1, len(lines))):
        line = lines[index]
        if taken[index] is not None or line.crossing or line.gap > 1 or (prose(line.text) and line.gap):
            return 0
        if index > start and line.gap and not weights[index]:
            return 0
        if weights[index]:
            return index + 1
    return 0


def _upwards(
    lines: Sequence[Line], weights: Sequence[int], taken: Sequence[object], index: int, floor: int
) -> int:
    start = index
    while start > floor and taken[start - 1] is None and not lines[start].crossing and lines[start].gap <= 1:
        above = lines[start - 1]
        near = weights[start - 1] > 0 or (
            (_rule(above.text) or _root(above, lines[start]))
            if lines[start].gap == 0
            else _under_strokes(lines, weights, start - 1)
        )
        near = near or _heads(lines, start) or _unit(lines, start) or _names_sign(lines, start)
        if near or (lines[start].gap == 0 and _label(lines, start - 1)):
            start -= 1
        else:
            break
    return start


def _under_strokes(lines: Sequence[Line], weights: Sequence[int], index: int) -> bool:
    """Whether a parted rule stands right under strokes: it is no rule of a table, and a drawing goes on below it."""
    drawn = index > 0 and weights[index - 1] > 0 and not lines[index].apart
    return drawn and segmented(lines[index].text)


def _heads(lines: Sequence[Line], start: int) -> bool:
    """Whether the line above stands alone and has labels, far apart, over both ends of an arrow or each over strokes."""
    above, below = lines[start - 1], lines[start]
    labels = [match.span() for match in _PARTS.finditer(above.cells)]
    if not (start == 1 or above.gap) or len(labels) < 2 or above.indent < below.indent:
        return False
    if any(len(above.cells[first:last].split()) > LONGEST_LABEL for first, last in labels):
        return False
    drawn = [line.cells for line in lines[start : start + REACH] if not line.apart or line is below]
    over = all(any(cells[first:last].strip() for cells in drawn) for first, last in labels)
    return _ARROW.search(below.text) is not None or (over and above.indent > 0)


def _unit(lines: Sequence[Line], start: int) -> bool:
    """Whether the line right above has a word or two that end over the first bar of a chart: what its figures count."""
    above, below = lines[start - 1], lines[start]
    bar = below.cells.find("|")
    few = above.apart and above.indent and len(above.text.split()) < LONGEST_LABEL
    return bool(few) and not below.gap and below.text[:1].isdigit() and abs(bar - above.end) <= LONGEST_LABEL


def _names_sign(lines: Sequence[Line], start: int) -> bool:
    """Whether a few words stand apart right over the one sign that a drawing begins with: they name what it shows."""
    above, below = lines[start - 1], lines[start]
    over = below.gap == 0 and len(below.text) <= 1 and above.indent <= below.indent < above.end
    few = over and len(above.text.split()) <= LONGEST_LABEL and above.indent > 0
    return few and (start == 1 or above.gap > 0) and not closed(above.text)


def _root(line: Line, below: Line) -> bool:
    """Whether a line is the name that the branches of a tree come down from: a stroke stands under it."""
    stroke = below.text[:1] in {"|", "+", "`", "\u2502", "\u251c"} and below.indent < line.end
    return stroke and " " not in line.text and line.indent <= below.indent


def _label(lines: Sequence[Line], index: int) -> bool:
    """A line of words set apart by wide blanks or far in: labels at the edge of a drawing."""
    text = lines[index].text
    tokens = text.split()
    if text and len(text) <= 3 and lines[index].indent > 0:
        return True
    if len(tokens) > 5 and all(len(token) < 3 for token in tokens[:-1]):
        return True
    if _TWICE.match(text):
        return True
    apart = _APART.split(text)
    if len(apart) > 1 and all(len(label.split()) <= LONGEST_LABEL for label in apart):
        return True
    return not prose(text) and not text.endswith(":") and ("   " in text or lines[index].indent >= 12)
