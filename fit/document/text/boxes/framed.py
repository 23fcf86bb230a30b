"""Boxes around text: a notice or a title in a frame is text, and only a drawing is a picture.

A frame has an edge above and below, and sides at the same columns in every line between; nothing is drawn inside.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above, without_blanks
from fit.document.text.make import flow_lines, keep_lines
from fit.document.text.signs.measure import closed, first_word, prose, starts_small
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.spaced import spaced_part
from fit.document.text.signs.strokes import strength
from fit.document.text.titles.headings import loud

TALLEST = 60
"""Lines of a frame, at most."""
TITLE = 2
"""Lines of a title in a frame, at most; what has more is read like any text."""
_EDGE = re.compile(r"[-+=*#_.,:;|~'`/\\!\u2500-\u257f]{6,}")
_SIDE = re.compile(r"[|*#!:;%/\\+\u2502\u2503\u2551]{1,3}")
_ENDS = re.compile(r"[vV^|](?: +[vV^|])*")
"""Ends of strokes that come from the rest of a drawing."""
_BY = ("by ", "for ", "from ")
"""How a line of small letters begins that says whose a work is."""
_WIDE = re.compile(r"\S {3,}\S")


def find_frames(
    lines: Sequence[Line],
    taken: Sequence[object],
    hyphens: Hyphens,
    read: Callable[[Sequence[Line]], list[Block]],
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are frames around text, each with the blocks of what it holds."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        end = _end(lines, taken, index)
        inner = _inner(lines[index:end]) if end else []
        if inner and not _drawing(lines, index, end, inner):
            found.append((index, end, _blocks(inner, hyphens, read)))
            index = end
        else:
            index += 1
    return found


def _edge(line: Line) -> bool:
    text = line.text
    return _EDGE.fullmatch(text) is not None and max(map(text.count, set(text))) >= 0.6 * len(text)


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The line after the frame whose first edge is at ``start``; 0 where none is."""
    if not _edge(lines[start]) or (start and _edge(lines[start - 1]) and not lines[start].gap):
        return 0
    place = start
    while place < len(lines) and place - start < TALLEST and taken[place] is None:
        line = lines[place]
        if place > start and (line.apart or not _spans(lines[start], line)):
            break
        if _edge(line) and place > start + 1 and not _goes_on(lines, start, place + 1):
            return place + 1
        place += 1
    return 0


def _goes_on(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether a frame goes on right below an edge: with a side, or another edge, where the first one stands."""
    if parted_above(lines, index) or not _spans(lines[start], lines[index]):
        return False
    return _edge(lines[index]) or _SIDE.match(lines[index].text) is not None


def _spans(edge: Line, line: Line) -> bool:
    """Whether a line starts where the edge starts, and ends with it."""
    return abs(line.indent - edge.indent) <= 1 and line.end <= edge.end + 1


def _inner(part: Sequence[Line]) -> list[Line]:
    """What stands between the sides, edges left out; nothing where sides are missing."""
    body = [line for line in part if not _edge(line)]
    lefts = {match[0] for line in body if (match := _SIDE.match(line.text)) is not None}
    if not body or len(lefts) != 1 or any(not _SIDE.match(line.text) for line in body):
        return []
    left = lefts.pop()
    if len({line.indent for line in body}) > 1:
        return []
    right = left[::-1].translate(str.maketrans("/\\", "\\/"))
    both = all(line.text.endswith(right) and len(line.text) >= len(left) + len(right) for line in body)
    if not both or max(line.end for line in body) - min(line.end for line in body) > 1:
        return []
    return without_blanks(
        line.cut(0, 0) if _edge(line) else line.cut(line.indent + len(left), line.end - len(right))
        for line in part
    )


def _drawing(lines: Sequence[Line], start: int, end: int, inner: Sequence[Line]) -> bool:
    """Whether the frame is part of a drawing, or holds one."""
    near = [lines[start - 1]] if start and not lines[start].gap else []
    near += [lines[end]] if end < len(lines) and not lines[end].gap else []
    if any((strength(line.text) and not ruled_off(line.text)) or _ENDS.fullmatch(line.text) for line in near):
        return True
    texts = [line.text for line in inner]
    one_sign = _one_sign(lines[start:end])
    if not one_sign and any(
        sign == "+" and _joint(lines[start:end], at) for at, sign in enumerate(lines[start].cells)
    ):
        return True
    if any(not line.indent for line in inner):
        return True  # text keeps clear of its frame; what touches it is a screen, drawn
    read = any(prose(text) for text in texts)
    titled = _centred(inner) or (len(texts) == 1 and spaced_part(texts[0]) > 0)
    wide = not (read and one_sign) and any(map(_WIDE.search, texts)) and not titled
    if wide:
        return True
    room = sum(len(text.replace(" ", "") if titled else text) for text in texts)
    if sum(char.isalpha() for text in texts for char in text) < 0.5 * room:
        return True
    return not read and bool(start) and lines[start - 1].text.endswith(":")


def _joint(frame: Sequence[Line], column: int) -> bool:
    """Whether a bar stands between the sides below the joint of the edge at a column, in each line: boxes side by side."""
    inner = frame[0].indent + 1 < column < frame[0].end - 1
    return inner and all(line.cells[column : column + 1] in {"|", "+"} for line in frame)


def _one_sign(frame: Sequence[Line]) -> bool:
    """Whether edges and sides are one sign all around, as nobody draws: what it frames may be a list with wide blanks."""
    sign = frame[0].text[0]
    return set(frame[0].text) == {sign} and all(
        (line.text[0], line.text[-1]) == (sign, sign) for line in frame
    )


def _blocks(
    inner: Sequence[Line], hyphens: Hyphens, read: Callable[[Sequence[Line]], list[Block]]
) -> list[Block]:
    note = "box around text"
    centred = _centred(inner)
    titled = centred and _titled(inner[0], inner[1])
    title = len(inner) <= TITLE and not any(line.gap for line in inner) and not closed(inner[-1].text)
    if title and not titled:
        return [Block(Kind.HEADING, flow_lines(inner, hyphens), level=1, note=note)]
    if not centred or (not titled and any(line.gap for line in inner)):
        return read(inner)
    if not titled:
        return [Block(Kind.PREFORMATTED, lines=keep_lines(inner), note=note)]
    head = Block(Kind.HEADING, flow_lines(inner[:1], hyphens), level=1, note=note)
    if len(inner) == TITLE:
        return [head, Block(Kind.PARAGRAPH, flow_lines(inner[1:], hyphens))]
    return [head, Block(Kind.PREFORMATTED, lines=keep_lines(inner[1:]))]


def _titled(line: Line, below: Line) -> bool:
    """Whether a centred line is a title by itself: in capitals over small letters, or short of what was to go in it."""
    if loud(line.text) != loud(below.text):
        return loud(line.text)
    return bool(below.gap) or len(line.text) + 1 + first_word(below.text) <= len(below.text)


def _centred(inner: Sequence[Line]) -> bool:
    """Whether lines of different lengths, or with blank lines between, have one middle, and no sentence goes on from one to the next."""
    middles = [line.indent + line.end for line in inner]
    steps = [(abs(above.indent - below.indent) > 1, below.gap > 0) for above, below in pairwise(inner)]
    apart = any(step for step, _ in steps) and all(map(any, steps))
    runs = any(
        starts_small(below.text)
        and not below.text.startswith(_BY)
        and not loud(above.text)
        and prose(above.text)
        for above, below in pairwise(inner)
    )
    return len(inner) > 1 and max(middles) - min(middles) <= 2 and apart and not runs
