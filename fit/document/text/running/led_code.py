"""Running text that leads to program text with no blank line between: the sentence is no part of the program."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines, keep_lines
from fit.document.text.running.placed import STEP, Placed
from fit.document.text.signs.code import code, command, prompted, typed
from fit.document.text.signs.measure import closed, hangs, prose, sentence, starts_small
from fit.document.text.signs.quotes import quotation

TALLEST = 3
"""Lines of program text with a sentence below them that says what they do, at most."""
DEEPER = 2
"""Cells by which kept lines are set in from the words that lead to them, at least."""
_WORDS = re.compile(r"[\"'(]?[A-Za-z][\w'./-]*[),]?(?: [\"'(/]*[A-Za-z][\w'./-]*[\"'),]*)*[.:]?")
"""Words alone, as the rest of a sentence has them."""
_PROMPTS = ">$%#:"
"""Signs before what was typed: a sentence below may be what came of it."""
_BEGINS = re.compile(r"[\"'(]?[^\W\d_]")
_BEGUN = re.compile(r"[A-Z][a-z]*(?: [a-z]+)+")
"""The first words of a sentence, in one line."""
_WIDE = re.compile(r"[^.!?:] {2}")
"""A blank that no sentence has: what stands behind it is a remark."""
_SEVERAL = re.compile(r"[A-Za-z]+(?: [\"'(]*[A-Za-z][\w'./-]*[\"'),]*)+:")
_SIGNS = re.compile(r"\w\s?=|\s;|\w: |;$")
"""A setting, a remark, a value behind its name: no sentence that leads to a program has them."""


def with_led_code(lines: Sequence[Line], placed: Sequence[Placed], hyphens: Hyphens) -> list[Placed]:
    """The blocks in order, with paragraphs of the sentences at the head of program text, or to the left of all beside them."""
    found: list[Placed] = []
    for one in placed:
        block = one.block
        if block.kind is not Kind.PREFORMATTED or one.end - one.start < 2 or block.note:
            found.append(one)
        elif _around(lines, one):
            found += _split(lines, one, hyphens)
        elif block.code:
            found += _parted(lines, one, hyphens)
        elif _all_typed(lines, one):
            found += _parted(lines, replace(one, block=replace(block, code=True)), hyphens)
        else:
            found.append(one)
    return found


def _around(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a sentence begins in a few words over kept lines that are all deeper, and ends below the blank line after them."""
    first, rest = lines[one.start], lines[one.start + 1 : one.end]
    if (
        len(one.block.lines) < one.end - one.start
        or one.end == len(lines)
        or not _BEGUN.fullmatch(first.text)
    ):
        return False
    below = lines[one.end]
    word = below.text.partition(" ")[0]
    goes_on = below.gap < 2 and word.isalpha() and word.islower() and prose(below.text)
    return goes_on and not rest[0].apart and all(line.indent >= first.indent + DEEPER for line in rest)


def _split(lines: Sequence[Line], one: Placed, hyphens: Hyphens) -> list[Placed]:
    """The first line of kept lines as a paragraph, and the others."""
    at, level = one.start + 1, one.block.level
    said = Block(Kind.PARAGRAPH, flow_lines(lines[one.start : at], hyphens), level=level)
    kept = replace(one.block, lines=keep_lines(lines[at : one.end]), level=level + 1, code=True)
    return [Placed(said, one.start, at), Placed(kept, at, one.end)]


def _all_typed(lines: Sequence[Line], one: Placed) -> bool:
    """Whether kept lines are a sentence that leads to commands, all of them deeper than it: the commands alone were to be kept."""
    head = _head(lines, one.start, one.end)
    left = lines[one.start].indent
    return head > 0 and all(line.indent > left and typed(line.text) for line in lines[head : one.end])


def _parted(lines: Sequence[Line], one: Placed, hyphens: Hyphens) -> list[Placed]:
    """Program text, and the sentences in it as paragraphs."""
    found: list[Placed] = []
    left = min(line.indent for line in lines[one.start : one.end])
    start = one.start
    while start < one.end:
        head = _head(lines, start, one.end)
        said = head > 0 or _tells(lines, one.start, start, one.end)
        end = head or _program_end(lines, one.start, start, one.end)
        if (start, end) == (one.start, one.end):
            return [one]
        part = lines[start:end]
        level = one.block.level
        if said:
            found.append(Placed(Block(Kind.PARAGRAPH, flow_lines(part, hyphens), level=level), start, end))
        else:
            level += not level and min(line.indent for line in part) - left >= STEP
            found.append(Placed(replace(one.block, lines=keep_lines(part), level=level), start, end))
        start = end
    return found


def _head(lines: Sequence[Line], start: int, last: int, between: bool = False) -> int:
    """The end of a sentence that leads to the program text below it; or 0. It begins anew, unless it stands ``between`` two pieces."""
    first = lines[start].text
    if first[0].islower() and not (hangs(first) or between):
        return 0
    end = start
    while end < last and (end == start or not lines[end].apart) and _said(lines, start, end):
        end += 1
    if end in {start, last} or lines[end].apart or quotation([lines[end].text]):
        return 0
    if end - start > 1 and not any(starts_small(line.text) for line in lines[start + 1 : end]):
        return 0  # lines that all begin anew
    above, below = lines[end - 1], lines[end]
    if _bare(above.text).endswith(":") or hangs(above.text):
        return end if typed(below.text) or above.indent != below.indent else 0
    leads = not closed(above.text) or (end - start > 1 and above.indent != below.indent)
    return end if leads and code(below.text) and above.text.count('"') % 2 == 0 else 0


def _bare(text: str) -> str:
    """A line without the sign behind its colon that says where an example begins: `as follows: >`."""
    bare = text.removesuffix(">").rstrip()
    return bare if bare.endswith(":") else text


def _said(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether a line is running text, words that lead to what is below, or words that go on with the line above it."""
    text = _bare(lines[index].text)
    if _BEGINS.match(text) is None or text.isupper() or text.count("(") != text.count(")"):
        return False
    if _WIDE.search(text) or _SIGNS.search(text):
        return False
    if code(text):
        return False
    level = lines[index].indent
    if (
        index > start
        and level == lines[index - 1].indent
        and starts_small(text)
        and not closed(lines[index - 1].text)
    ):
        return prose(text) or _WORDS.fullmatch(text) is not None
    if prose(text):
        return not command(text)
    return text[0].isupper() and text.endswith(":") and _SEVERAL.fullmatch(text) is not None


def _program_end(lines: Sequence[Line], first: int, start: int, last: int) -> int:
    """Where program text from ``start`` on ends before a sentence: to its left, leading to more of it, or at its end; or ``last``.

    ``first`` is the first line of the whole block.
    """
    left = lines[start].indent
    for index in range(start + 1, last - 1):
        line = lines[index]
        leads = line.indent < left and not line.apart and lines[index + 1].indent > line.indent
        if leads and _head(lines, index, last, between=True) == index + 1:
            return index
        left = min(left, line.indent)
    return last - 1 if last - start > 1 and _tells(lines, first, last - 1, last) else last


def _tells(lines: Sequence[Line], first: int, index: int, last: int) -> bool:
    """Whether the last line of a block is a sentence that says what the line or two of program text above it do."""
    if index + 1 < last or not 0 < index - first < TALLEST or lines[index].apart:
        return False
    text = lines[index].text
    above = [line.text for line in lines[first:index]]
    if not (sentence(text) and prose(text)) or typed(text):
        return False
    return typed(above[0]) and not any(
        prose(line) or prompted(line) or line[0] in _PROMPTS or line.endswith("\\") for line in above
    )
