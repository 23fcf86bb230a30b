"""Headings behind signs whose number is their depth, `** Stores`: where some were read as headings, the others are ones too.

Behind `==` nothing else stands: several lines that begin so are headings, whatever they were read as.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Container, Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line
from fit.document.text.make import fold
from fit.document.text.running.placed import Placed
from fit.document.text.titles.headings import LONGEST

LEAST = 4
"""Headings behind one number of signs, at least."""
SHARE = 4
"""Lines behind them for one of which another was read as a heading: no term and no item has two signs or more."""
DEEPEST = 4
"""The lowest level of headings."""
_SIGNS = re.compile(r"(\*{1,5}|={1,5}) +(?=[\w\[]).*[^*=]$")
Form = tuple[str, int]
"""The signs and their indent."""


def with_outline(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with headings made of the terms, items, paragraphs and kept lines behind the same signs."""
    forms = [_form(lines, one) for one in placed]
    times = Counter(forms)
    heads = Counter(form for form, one in zip(forms, placed, strict=True) if one.block.kind is Kind.HEADING)
    outlined = {
        (form[0][0], form[1])
        for form, count in heads.items()
        if form and len(form[0]) > 1 and count >= max(LEAST, times[form] / SHARE)
    }
    equal = Counter(form[1] for form in forms if form and form[0][:2] == "==")
    outlined |= {("=", indent) for indent, count in equal.items() if count >= LEAST}
    if not outlined:
        return list(placed)
    result: list[Placed] = []
    left = -1
    for form, one in zip(forms, placed, strict=True):
        line = lines[one.start]
        if line.indent <= left:
            left = -1
        if not form or (form[0][0], form[1]) not in outlined or not (form in heads or _titles(form, times)):
            up = int(left >= 0 and one.block.level > 0)
            result.append(replace(one, block=replace(one.block, level=one.block.level - up)) if up else one)
            continue
        last = one.end if one.block.kind is Kind.PREFORMATTED else one.start + 1
        for index in range(one.start, last):
            title = fold(lines[index].piece(lines[index].indent, lines[index].end))
            depth = len(title.chars.split(maxsplit=1)[0])
            block = Block(Kind.HEADING, title, level=min(depth, DEEPEST))
            result.append(Placed(block, index, index + 1))
        if one.end > last:
            result.append(Placed(Block(Kind.PARAGRAPH, one.block.text), one.start + 1, one.end))
        left = line.indent if one.block.kind is Kind.ITEM else left
    return result


def _titles(form: Form, forms: Container[Form | None]) -> bool:
    """Whether signs begin titles: several do, and one where two stand below it; alone it is a bullet."""
    signs, indent = form
    return len(signs) > 1 or (2 * signs, indent) in forms


def _form(lines: Sequence[Line], one: Placed) -> Form | None:
    """The signs that a block begins with, and where: a line of its own below a blank one, deeper text or another one."""
    line, block = lines[one.start], one.block
    signs = _SIGNS.match(line.text)
    if signs is None or len(line.text) > LONGEST:
        return None
    above = lines[one.start - 1]
    if one.start and not line.apart and above.indent <= line.indent and not _SIGNS.match(above.text):
        return None
    if block.kind is Kind.PREFORMATTED:
        below = lines[one.start + 1 : one.end]
        return (signs[1], line.indent) if all(_SIGNS.match(other.text) for other in below) else None
    if one.end > one.start + 1:
        term = block.kind is Kind.ITEM and len(block.label) > len(signs[1])
        if not term or block.text.sources[0] < lines[one.start + 1].offset:
            return None
    elif block.kind not in {Kind.HEADING, Kind.PARAGRAPH, Kind.ITEM}:
        return None
    return signs[1], line.indent
