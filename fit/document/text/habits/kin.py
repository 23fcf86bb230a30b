"""Lines built like the items right beside them: an entry among entries is one, whatever it looked like by itself.

One option of a list is too long for the column of the texts, one name looks like program text, one bullet stands before
a word that a wrapped line could begin with: the items above and below, at the same indent, show what they are.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from fit.document.blocks import Block, Kind
from fit.document.text.habits.below import below_term
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import EMPTY, flow, fold
from fit.document.text.running.placed import Placed
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, prose

NEAR = 25
"""Lines to an item that shows what a line is, at most."""
LONGER = 24
"""Characters of a key before a sign that parts it from its text, at most, where those beside it are shorter."""
PASSES = 2
"""Times that all blocks are gone through: what was found shows what stands above it."""
STACKED = 3
"""Lines that stay, each nothing but a key, at most, that are made items."""
LEAST = 2
"""Words that are the text of a key rather than a part of it, at least, where one blank is all that parts them."""
ROWS = 2
"""Items on one side that show what a line is, at least, where blank lines part it from them."""

_LOOSE = {Kind.PARAGRAPH, Kind.PREFORMATTED}
"""What an entry was read as that was not seen for one."""
_FIRST = re.compile(
    r"(?P<bullet>[-*+.\u2022\u00b7](?= +\S))|(?P<option>--?(?=\w))|(?P<sign>[/\\%$:.](?=[\w\\]))"
    r"|(?P<quoted>[\"'`<\[](?=[^\s\"'`<>\[\]]+[\"'>\]]))|(?P<name>[A-Z][A-Z0-9]*_[A-Z0-9_]+(?![\w.]))"
)
"""How a line begins that can be an entry: with a bullet, an option, a sign or a quotation mark before a word, a name."""
_NO_KEY = frozenset("|#>")
"""Signs before a line of a drawing, of a remark, and of a quotation."""
_PARTED = re.compile(r"\S(?: ?\S)*?(?P<sign> *(?:=>|->|::|:|=|--|-))$")
"""A key with the sign that parts it from its text."""
_SIGN = re.compile(r"(?<![^ ])(?:=>|->|::|:|=|--|-)(?= )")
"""The sign that parts a key from its text, before the text."""
_ASIDE = re.compile(r" ?\([^()]*\)$")
"""What is said of a key in brackets behind it."""
_GAP = re.compile(r"(\S+(?: \S+){0,4}) {2,}(?=\S)")
_ARGUMENTS = (
    r"(?:(?: ?=?|, ?| ?\| ?)(?:<[^<>]*>|\[(?:[^][]|\[[^][]*\])*\]|\{[^{}]*\}|--?\w[\w-]*(?![\w(]))|=\S+)*"
)
_KEYS = {
    "option": re.compile(r"--?\w[\w:+|/@-]*" + _ARGUMENTS),
    "sign": re.compile(r"[/\\%$:.]\S+" + _ARGUMENTS),
    "quoted": re.compile(r"\"[^\"]+\"|['`][^'`]+'|<[^<>]+>|\[[^][]+\]"),
    "name": re.compile(r"\w+"),
}
"""Keys without a sign that parts them from their texts."""


@dataclass(frozen=True, slots=True)
class _Shape:
    """How an item is built."""

    first: str
    """How it begins."""
    parting: str
    """The sign between its key and its text; empty where there is none."""
    in_text: bool
    """Whether that sign was read as the first of its text."""
    alone: bool
    """Whether its key is all that stands on its line."""
    column: int
    """Characters from the start of its key to its text on the same line; 0 where that is on another one."""
    level: int


def with_kin(lines: Sequence[Line], placed: Sequence[Placed], hyphens: Hyphens) -> list[Placed]:
    """The blocks in order, those made items that begin as the items beside them at their indent do."""
    offsets = [line.offset for line in lines]
    placed = [
        _own_lines(one, offsets) if _shared(placed[max(number - 1, 0) : number + 2], one) else one
        for number, one in enumerate(placed)
    ]
    for _ in range(PASSES):
        placed = _with_kin(lines, placed, hyphens)
    return list(placed)


def _own_lines(one: Placed, offsets: Sequence[int]) -> Placed:
    """A block of a run that was read as several, with the lines that are its own."""
    block = one.block
    texts = (block.label, block.text, *block.lines, *(cell for row in block.rows for cell in row))
    sources = [place for text in texts for place in text.sources if place >= 0]
    if not sources:
        return one
    start, last = (
        bisect_right(offsets, place, one.start, one.end) - 1 for place in (min(sources), max(sources))
    )
    return replace(one, start=start, end=last + 1)


def _with_kin(lines: Sequence[Line], placed: Sequence[Placed], hyphens: Hyphens) -> list[Placed]:
    result: list[Placed] = []
    number = 0
    while number < len(placed):
        one = placed[number]
        number += 1
        first = _first(lines[one.start].text) if one.block.kind in _LOOSE else ""
        if first and (_shared(result[-1:], one) or _shared(placed[number : number + 1], one)):
            first = ""
        shape = _kin(lines, result, placed, number, first) if first else None
        made = _made(lines, one, shape, hyphens) if shape else []
        result += made or [one]
        if made:
            last = made[-1]
            indent = lines[one.start].indent
            column = lines[last.start + 1].indent if last.end > last.start + 1 else indent + 1
            below = number
            while below < len(placed) and lines[placed[below].start].indent > indent:
                below += 1
            under = below_term(lines, placed[number:below], indent, max(column, indent + 1), last.block.level)
            result += under
            number += len(under)
    return result


def _shared(beside: Sequence[Placed], one: Placed) -> bool:
    """Whether a block was made of the same lines as the one beside it: those of a table of columns, one read after the other."""
    return any(other is not one and other.start < one.end and one.start < other.end for other in beside)


def _first(text: str) -> str:
    """How a line begins that may be an entry: a bullet, an option, a sign, a word; its sign says which."""
    match = _FIRST.match(text)
    if match is None or match.lastgroup is None:
        return "word" if text[0] not in _NO_KEY and ("  " in text or _SIGN.search(text)) else ""
    return f"{match.lastgroup} {match[0]}" if match.lastgroup in {"bullet", "sign"} else match.lastgroup


def _kin(
    lines: Sequence[Line], above: Sequence[Placed], placed: Sequence[Placed], number: int, first: str
) -> _Shape | None:
    """The shape of the items beside the block before ``number``, where those show what it is."""
    one = placed[number - 1]
    before = _beside(lines, reversed(above[-NEAR:]), one, first)
    after = _beside(lines, placed[number : number + NEAR], one, first)
    if not before and not after:
        return None
    shape = (before or after)[0][1]
    if before and after:
        other = after[0][1]
        alike = (shape.parting, shape.in_text) == (other.parting, other.in_text)
        return shape if alike or first != "word" else None
    near = not lines[one.start].apart if before else not lines[after[0][0].start].apart
    if first == "word":
        return replace(shape, parting="") if near and shape.column else None
    return shape if near or len(before) + len(after) >= ROWS else None


def _beside(
    lines: Sequence[Line], blocks: Iterable[Placed], one: Placed, first: str
) -> list[tuple[Placed, _Shape]]:
    """The items on one side of a block that begin at its indent as it does, the nearest first, no other block between."""
    found: list[tuple[Placed, _Shape]] = []
    indent = lines[one.start].indent
    for other in blocks:
        line = lines[other.start]
        if abs(other.start - one.start) > NEAR or other.block.kind is Kind.HEADING:
            break
        if line.indent > indent:
            continue
        if line.indent < indent or other.block.kind is not Kind.ITEM or _first(line.text) != first:
            break
        if first == "word" and find_marker(line.text) is not None:
            break
        found.append((other, _shape(lines, other, first)))
        if len(found) == ROWS:
            break
    return found


def _shape(lines: Sequence[Line], item: Placed, first: str) -> _Shape:
    block = item.block
    line = lines[item.start]
    sources = block.text.sources
    alone = not sources or sources[0] >= line.offset + line.end
    gap = _GAP.match(line.text)
    column = gap.end() if gap and gap[1] == block.label.chars else 0
    parted = _PARTED.match(block.label.chars)
    sign = _SIGN.match(block.text.chars)
    if parted and not first.startswith("bullet"):
        return _Shape(first, parted["sign"].strip(), False, False, column, block.level)
    return _Shape(first, sign[0] if sign else "", sign is not None, alone, column, block.level)


def _made(lines: Sequence[Line], one: Placed, shape: _Shape, hyphens: Hyphens) -> list[Placed]:
    """The items that a block is made of; none where it does not come apart into such."""
    indent = lines[one.start].indent
    kept = one.block.kind is Kind.PREFORMATTED
    starts = [
        index
        for index in range(one.start, one.end)
        if index == one.start
        or (lines[index].indent == indent and (kept or _first(lines[index].text) == shape.first))
    ]
    if kept and one.block.code and len(starts) < one.end - one.start:
        return []
    if kept and any(line.indent < indent for line in lines[one.start : one.end]):
        return []
    made: list[Placed] = []
    said = 0
    for start, end in zip(starts, [*starts[1:], one.end], strict=True):
        line = lines[start]
        over = not parted_above(lines, start + 1) and lines[start + 1].indent > indent
        ends = _key(line.text, shape, over) if _first(line.text) == shape.first else None
        if ends is None or (kept and not _hangs(lines[start:end], ends[1])):
            return []
        said += _words(line.text[ends[1] :]) > 0
        label = fold(line.piece(indent, indent + ends[0]))
        pieces = [
            line.piece(indent + ends[1], line.end),
            *(each.piece(0, each.end) for each in lines[start + 1 : end]),
        ]
        text = flow(pieces, hyphens) if any(piece.chars for piece in pieces) else EMPTY
        made.append(Placed(Block(Kind.ITEM, text, label=label, level=shape.level), start, end))
    if one.block.code and shape.first == "word" and 2 * said <= len(made):
        return []
    return [] if kept and len(made) > STACKED and not any(each.block.text.chars for each in made) else made


def _hangs(part: Sequence[Line], text: int) -> bool:
    """Whether the lines below the first of an entry are its text: at the column of that or deeper, or said in words."""
    if text == len(part[0].text):
        return len(part) == 1 or _words(part[1].text) >= LEAST
    return all(prose(line.text) or line.indent >= part[0].indent + text - 2 for line in part[1:])


def _words(text: str) -> int:
    """How many words of letters alone stand behind a key, before any remark."""
    return sum(word.strip('.,;:()"').isalpha() for word in text.partition("#")[0].split())


def _key(text: str, shape: _Shape, over: bool) -> tuple[int, int] | None:
    """Where the key of an entry ends in its line, and where its text begins; None where the line has no such key.

    ``over`` says that what is set in deeper right below can be its text.
    """
    kind = shape.first.split()[0]
    if kind == "bullet":
        sign = len(shape.first.split()[1])
        return sign, len(text) - len(text[sign:].lstrip(" "))
    if shape.parting:
        blank = " +" if kind == "word" or (shape.parting in "-=" and kind == "option") else " *"
        parted = re.match(rf"(\S(?:.{{0,{LONGER}}}?\S)?)({blank}{re.escape(shape.parting)})(?: +|$)", text)
        if parted is None or (parted.end() == len(text) and (shape.in_text or not over)):
            return None
        before, behind = parted.span(2)
        return (before, behind - len(shape.parting)) if shape.in_text else (behind, parted.end())
    gap = _GAP.match(text)
    if kind == "word" and (gap is None or gap.end() != shape.column or not any(map(str.isalnum, gap[1]))):
        return None
    if gap and (gap.end() == shape.column or kind == "word" or _KEYS[kind].fullmatch(gap[1])):
        return gap.end(1), gap.end()
    key = _KEYS[kind].match(text)
    rest = text[key.end() :].split() if key else []
    few = len(rest) < LEAST or (over and len(rest) == LEAST and not text.endswith(","))
    if (shape.alone or few) and not (prose(_ASIDE.sub("", text)) or closed(text)):
        return len(text), len(text)
    if key is None or shape.alone:
        return None
    return key.end(), len(text) - len(text[key.end() :].lstrip(" "))
