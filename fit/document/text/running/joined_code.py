"""Program text in pieces that are one listing: its indentation is what it lives by, so all of it keeps one left column.

Pieces are one listing where no blank line parts them, where what one opens is not closed before the next, where one
stands deeper between two others, and where lines with signs stand between two others, set in as these are. So is a comment of several lines with what stands right below it, or above it at
the same column; and so are lines between three points and three points.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.running.placed import Placed
from fit.document.text.signs.measure import closed, prose, sentence
from fit.document.text.signs.program import opens
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.strokes import strength

DEEPER = 2
"""Cells by which such a piece stands deeper, at least."""
FARTHEST = 12
"""Cells by which a comment stands deeper than statements right over or below it, at most: farther on it began beside one."""
FEW = 4
"""Words of a line that say nothing by themselves, at most: `You have: oil`."""
_STATEMENTS = (Kind.PREFORMATTED, Kind.PARAGRAPH, Kind.ITEM, Kind.TABLE)
"""What statements were taken for."""
_OPTIONS = re.compile(r"\[-(?:(?:[^\[\]]|\[[^\[\]]*\])+\](?: <[^<>]+>)* ?\[?)+(?<!\[)")
"""What may be left out of the command on the line above, and nothing else."""
_ELIDED = "..."
"""A line that says that more of a program stands here."""
_SIGNED = re.compile(r"[^\w\s,'\"]")
_REMARK = re.compile(r"/\*|\*(?:\s|/|$)|//|#|;|--\s")
_OPENING = re.compile(r"^case\s.*\sin\b|;\s(?:then|do)$|^then$")
_CLOSING = re.compile(r"(?:esac|fi|done|end)\b")


def with_joined_code(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with one block of each listing that stands in several."""
    placed = _with_elided(lines, _with_comments(lines, placed))
    found: list[Placed] = []
    index = 0
    while index < len(placed):
        end = _end(lines, placed, index) if _begins(lines, placed, index) else index
        if end > index and any(map(_code, placed[index : end + 1])):
            first, last = placed[index], placed[end]
            level = min(placed[index : end + 1], key=lambda one: _left(lines, one)).block.level
            found.append(_joined(lines, first, last, replace(first.block, level=level, code=True)))
        else:
            found += placed[index : end + 1]
        index = end + 1
    return _with_between(lines, found)


def _joined(lines: Sequence[Line], first: Placed, last: Placed, block: Block) -> Placed:
    """One block, as ``block`` is but for its lines, of all lines from one piece to another."""
    return Placed(replace(block, lines=keep_lines(lines[first.start : last.end])), first.start, last.end)


def _with_comments(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, each comment that stands at the left column of program text beside it in one block with that."""
    found: list[Placed] = []
    for index, one in enumerate(placed):
        above = placed[index - 1] if index else None
        if above is not None and _comment(above) != _comment(one) and _one_listing(lines, found[-1], one):
            last = found[-1]
            found[-1] = _joined(lines, last, one, one.block if _comment(last) else last.block)
        else:
            found.append(one)
    return found


def _with_elided(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with one block of each piece of a program that begins and ends with three points."""
    found: list[Placed] = []
    index = 0
    while index < len(placed):
        first = placed[index]
        end = _elided_end(lines, placed, index) if first.block.kind is Kind.PREFORMATTED else index
        if end > index and any(map(_code, placed[index : end + 1])):
            found.append(_joined(lines, first, placed[end], replace(first.block, code=True)))
        else:
            found.append(first)
        index = end + 1
    return found


def _with_between(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with what stands between two pieces of program text, set in as they are, in one block with them."""
    found: list[Placed] = []
    index = 0
    while index < len(placed):
        one = placed[index]
        if found and index + 1 < len(placed) and _between(lines, found[-1], one, placed[index + 1]):
            found[-1] = _joined(lines, found[-1], placed[index + 1], found[-1].block)
            index += 1
        else:
            found.append(one)
        index += 1
    return found


def _between(lines: Sequence[Line], above: Placed, one: Placed, below: Placed) -> bool:
    """Whether lines of which none is said, at most a blank line from program text above and below, stand at its left column."""
    if _code(one) or one.block.kind not in (Kind.PREFORMATTED, Kind.PARAGRAPH):
        return False
    if not (_code(above) and _code(below) and above.end == one.start and one.end == below.start):
        return False
    left = _left(lines, one)
    if not left == _left(lines, above) == _left(lines, below) or left < DEEPER:
        return False
    part = lines[one.start : one.end]
    if any(line.gap > 1 or line.crossing for line in (*part, lines[below.start])):
        return False
    if any(prose(line.text) or closed(line.text) for line in part):
        return False
    return any(
        _SIGNED.search(line.text) for line in part
    )  # plain words may lead from one example to the next


def _elided_end(lines: Sequence[Line], placed: Sequence[Placed], first: int) -> int:
    """The block with the three points at which the piece ends that begins with them in the block ``first``; or ``first``.

    No blank line parts its lines but perhaps the last one.
    """
    one = placed[first]
    head = [line.text == _ELIDED for line in lines[one.start : one.end]]
    if True not in head[:2] or head[-1]:
        return first
    for index in range(first + 1, len(placed)):
        above, below = placed[index - 1], placed[index]
        line = lines[below.start]
        alone = line.text == _ELIDED and line.gap == 1 and below.end - below.start == 1
        joined = below.start == above.end and below.block.kind in _STATEMENTS and not line.crossing
        if not joined or (line.apart and not alone):
            return first
        if lines[below.end - 1].text == _ELIDED:
            return index
    return first


def _one_listing(lines: Sequence[Line], above: Placed, below: Placed) -> bool:
    """Whether a comment stands right over program text, or a blank line below it, where its left column is."""
    line = lines[below.start]
    if not (_code(above) and _code(below)):
        return False
    return line.gap <= _comment(below) and _left(lines, above) == _left(lines, below)


def _comment(one: Placed) -> bool:
    """Whether a block is a comment of several lines and no more."""
    return one.block.note.startswith("comment ")


def _begins(lines: Sequence[Line], placed: Sequence[Placed], index: int) -> bool:
    """Whether a listing can begin with a block: it is program text, or lines that touch what is."""
    one = placed[index]
    if _code(one):
        return _whole(lines, one)
    return _bare(lines, one) and one.end < len(lines) and not lines[one.end].apart


def _end(lines: Sequence[Line], placed: Sequence[Placed], first: int) -> int:
    """The last block of the listing that begins with the block ``first``."""
    left = _left(lines, placed[first])
    last, deeper = first, False
    open_, comment = _open(lines, placed[first], 0), _comment_open(lines, placed[first], inside=False)
    for index in range(first + 1, len(placed)):
        above, one = placed[index - 1], placed[index]
        starred = comment and _starred(lines, one)
        if not (starred or _follows(lines, above, one, open_)):
            break
        column = _left(lines, one)
        far = abs(column - left) > FARTHEST and not starred
        if far and _remarked(lines, one if column > left else placed[first]):
            break
        if starred or _OPTIONS.fullmatch(one.block.text.chars):
            last = index
        elif one.block.kind is not Kind.PREFORMATTED:
            if column <= left:
                break
        elif column == left if deeper else open_ or not lines[one.start].apart:
            last, deeper, left = index, False, min(left, column)
        elif column >= left + DEEPER:
            deeper = True
        else:
            break
        open_, comment = _open(lines, one, open_), _comment_open(lines, one, inside=comment)
    return last


def _code(one: Placed) -> bool:
    """Whether a block is nothing but lines of program text."""
    return one.block.kind is Kind.PREFORMATTED and one.block.code


def _follows(lines: Sequence[Line], above: Placed, below: Placed, open_: int) -> bool:
    """Whether program text, or lines inside what is open behind a block, stand at most a blank line below it."""
    line = lines[below.start]
    if below.start != above.end or not (open_ if line.crossing else line.gap <= 1):
        return False
    if not line.apart and _OPTIONS.fullmatch(below.block.text.chars):
        return True
    if open_ and not _code(below):
        return _inside(lines, below)
    return _code(below) or (not line.apart and _bare(lines, below))


def _remarked(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block is nothing but remarks."""
    return all(_REMARK.match(line.text) for line in lines[one.start : one.end])


def _bare(lines: Sequence[Line], one: Placed) -> bool:
    """Whether lines were kept of which none is said, nor drawn: beside program text they are a part of it."""
    if one.block.kind is not Kind.PREFORMATTED or not _whole(lines, one):
        return False
    texts = [line.text for line in lines[one.start : one.end]]
    if any("   " in text for text in texts):
        return False  # a row of columns
    said = any(closed(text) or (prose(text) and len(text.split()) > FEW) for text in texts)
    return not said and not any(strength(text) or ruled_off(text) for text in texts)


def _inside(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block can be statements that the reader did not know: no rule, no heading, and nothing in it is said."""
    texts = [line.text for line in lines[one.start : one.end]]
    if one.block.kind not in _STATEMENTS or ruled_off(texts[0]):
        return False
    return not any(sentence(text) or (prose(text) and text[0].isupper()) for text in texts)


def _whole(lines: Sequence[Line], one: Placed) -> bool:
    """Whether the first line of kept lines is in the block from its start: no label stands before it."""
    first, line = one.block.lines[0], lines[one.start]
    kept, whole = (
        first.sources[len(first) - len(first.chars.lstrip()) :],
        line.piece(line.indent, line.end).sources,
    )
    return kept[:1] == whole[:1]


def _open(lines: Sequence[Line], one: Placed, before: int) -> int:
    """How much is open behind a block: braces and words of a shell that others close, and ``before`` of them above it."""
    for line in lines[one.start : one.end]:
        text = line.text
        if "{" in text or "}" in text:
            before += text.count("{") - text.count("}")
        if text.endswith(("then", "do")) or text.startswith("case "):
            before += _OPENING.search(text) is not None
        elif text[0] in "edf" and _CLOSING.match(text):
            before -= 1
        before = max(before, 0)
    return before


def _comment_open(lines: Sequence[Line], one: Placed, *, inside: bool) -> bool:
    """Whether a comment is open behind a block; ``inside`` it was above."""
    for line in lines[one.start : one.end]:
        inside = opens(line.text, inside)
    return inside


def _starred(lines: Sequence[Line], below: Placed) -> bool:
    """Whether lines below an open comment go on with it: each has its star, which is no bullet there."""
    part = lines[below.start : below.end]
    return all(line.text[0] == "*" and not line.apart for line in part)


def _left(lines: Sequence[Line], one: Placed) -> int:
    """The left column of a block."""
    return min(line.indent for line in lines[one.start : one.end])
