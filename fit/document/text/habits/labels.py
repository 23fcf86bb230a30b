"""Labels that come again word for word, `Message: ...`: what most texts behind one were read as, the others are too.

Where the texts of several labels stand right below each other, they make records, whose labels all count together.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, flow_lines, fold
from fit.document.text.running.placed import Placed

LEAST = 4
"""Times that a label comes at one indent, at least."""
MOST = 2
"""Texts behind a label that is in no records, of the one kind for one of the other, at least."""
MIXED = 3
"""Labels among lines that stay for one that begins a paragraph or an item, at most: it shows that none needs its line."""
RARE = 8
"""Texts behind a label for one of its lines that reads as program text, at least: it is what the others are."""
_LABEL = re.compile(r"((?:[^\W\d_][\w'/-]*(?: [\w'/-]+){0,3}:(?=[\s\d])|\d{1,3}:(?=\s)) *)\S")
Name = tuple[str, int]
"""A label in small letters and its indent."""


@dataclass(slots=True)
class _Texts:
    """What stands behind one label."""

    levels: dict[Kind, Counter[int]] = field(
        default_factory=lambda: {Kind.ITEM: Counter(), Kind.PARAGRAPH: Counter()}
    )
    """The levels of the items with that label, and of the paragraphs that begin with it."""
    kept: int = 0
    """Lines with it among lines that stay."""
    hangs: Counter[int] = field(default_factory=Counter)
    """The columns at which their second lines stand."""

    def count(self, kind: Kind) -> int:
        return self.levels[kind].total()


def with_labels(lines: Sequence[Line], placed: Sequence[Placed], hyphens: Hyphens) -> list[Placed]:
    """The blocks in order, the texts behind a label all items or all paragraphs, each of them whole."""
    found = {
        index: label[1]
        for index, line in enumerate(lines)
        if ":" in line.text and (label := _LABEL.match(line.text))
    }
    labelled = {index: (label.rstrip().lower(), lines[index].indent) for index, label in found.items()}
    times = Counter(labelled.values())
    names = {index: name for index, name in labelled.items() if times[name] >= LEAST}
    texts = _texts(lines, placed, names)
    kinds = _kinds(lines, names, texts)
    said = Counter(line.text for line in lines if kinds)
    result: list[Placed] = []
    for one in placed:
        above = result[-1] if result else None
        name = names.get(one.start)
        if above and names.get(above.start) in kinds and _goes_on(lines, above, one, found, texts, names):
            text = names[above.start]
            result[-1] = _made(
                lines, above.start, one.end, text, above.block.kind, above.block.level, hyphens
            )
        elif name not in kinds or name is None:
            result.append(one)
        else:
            result += _alike(lines, one, names, texts, kinds, said, hyphens)
    return result


def _texts(
    lines: Sequence[Line], placed: Sequence[Placed], names: Mapping[int, Name]
) -> defaultdict[Name, _Texts]:
    texts: defaultdict[Name, _Texts] = defaultdict(_Texts)
    for one in placed:
        if one.block.kind is Kind.PREFORMATTED:
            for index in range(one.start, one.end):
                if index in names:
                    texts[names[index]].kept += 1
        elif one.start in names and _begins(one, names[one.start][0]):
            mine = texts[names[one.start]]
            mine.levels[one.block.kind][one.block.level] += 1
            if one.end > one.start + 1:
                mine.hangs[lines[one.start + 1].indent] += 1
    return texts


def _begins(one: Placed, label: str) -> bool:
    """Whether a block is an item with a label or a paragraph that begins with it."""
    if one.block.kind is Kind.ITEM:
        return one.block.label.chars.lower() == label
    return one.block.kind is Kind.PARAGRAPH and one.block.text.chars[: len(label)].lower() == label


def _kinds(
    lines: Sequence[Line], names: Mapping[int, Name], texts: Mapping[Name, _Texts]
) -> dict[Name, Kind]:
    """What the texts behind each label are to be, where most of them are that already."""
    records: set[Name] = set()
    last: Name | None = None
    for index, name in names.items():
        if last and last[1] == name[1] and last[0] != name[0] and not lines[index].apart:
            records |= {last, name}
        last = name
    kinds: dict[Name, Kind] = {}
    for name in texts:
        group = [other for other in records if other[1] == name[1] and other in texts]
        kind = _most(texts, [name], MOST) or (_most(texts, group, 1) if name in records else None)
        if kind:
            kinds[name] = kind
    return kinds


def _most(texts: Mapping[Name, _Texts], group: Sequence[Name], times: int) -> Kind | None:
    """The kind of most texts behind some labels, ``times`` as many as are of the other; none where most are kept lines."""
    items, paragraphs = (
        sum(texts[name].count(kind) for name in group) for kind in (Kind.ITEM, Kind.PARAGRAPH)
    )
    most, least = max(items, paragraphs), min(items, paragraphs)
    if most < LEAST or sum(texts[name].kept for name in group) >= most + least or most < least * times:
        return None
    return Kind.ITEM if items > paragraphs else Kind.PARAGRAPH


def _goes_on(
    lines: Sequence[Line],
    above: Placed,
    one: Placed,
    found: Mapping[int, str],
    texts: Mapping[Name, _Texts],
    names: Mapping[int, Name],
) -> bool:
    """Whether a block stands right under the text behind a label, or where such texts go on: it was torn from it."""
    line = lines[one.start]
    single = above.end == above.start + 1 == one.start == one.end - 1
    if not single or line.apart or one.block.code or _LABEL.match(line.text):
        return False
    name = names[above.start]
    if one.block.kind not in {Kind.PARAGRAPH, Kind.PREFORMATTED} or not _begins(above, name[0]):
        return False
    hangs = texts[name].hangs
    under = name[1] + len(found[above.start])
    usual = hangs[line.indent] > 1 and 2 * hangs[line.indent] > hangs.total()
    return line.indent > name[1] and (line.indent == under or usual)


_KINDS = {Kind.ITEM, Kind.PARAGRAPH}


def _alike(
    lines: Sequence[Line],
    one: Placed,
    names: Mapping[int, Name],
    texts: Mapping[Name, _Texts],
    kinds: Mapping[Name, Kind],
    said: Mapping[str, int],
    hyphens: Hyphens,
) -> list[Placed]:
    """A block that begins with a label as what the others are; lines that stay, taken apart into such texts."""
    name = names[one.start]
    if one.block.kind in _KINDS:
        if one.block.kind is kinds[name] or not _begins(one, name[0]):
            return [one]
        starts = [one.start]
    else:
        starts = [index for index in range(one.start, one.end) if lines[index].indent == name[1]]
        mine = [names.get(index) for index in starts]
        once = max(Counter(each for each in mine if each).values(), default=0) == 1
        again = once and all(index in names or said[lines[index].text] >= LEAST for index in starts)
        mixed = all(
            each in kinds
            and texts[each].kept <= MIXED * (texts[each].count(Kind.ITEM) + texts[each].count(Kind.PARAGRAPH))
            for each in mine
            if each is not None
        )
        whole = all(not (index > one.start and lines[index].gap) for index in range(one.start, one.end))
        coded = one.block.code and not all(_outnumbered(texts[each]) for each in mine if each)
        if one.block.kind is not Kind.PREFORMATTED or coded or not (again and mixed and whole):
            return [one]
    made: list[Placed] = []
    for start, end in zip(starts, [*starts[1:], one.end], strict=True):
        other = names.get(start)
        kind = kinds[other] if other else Kind.PARAGRAPH
        level = texts[other or name].levels[kind].most_common(1)
        made.append(_made(lines, start, end, other, kind, level[0][0] if level else 0, hyphens))
    return made


def _outnumbered(texts: _Texts) -> bool:
    """Whether so few lines with a label stay that one of them is no program text either, as its signs have it."""
    return texts.count(Kind.ITEM) + texts.count(Kind.PARAGRAPH) >= RARE * texts.kept


def _made(
    lines: Sequence[Line], start: int, end: int, name: Name | None, kind: Kind, level: int, hyphens: Hyphens
) -> Placed:
    part = lines[start:end]
    if name is None or kind is Kind.PARAGRAPH:
        return Placed(Block(Kind.PARAGRAPH, flow_lines(part, hyphens), level=level), start, end)
    behind = part[0].indent + len(name[0])
    label = fold(part[0].piece(part[0].indent, behind))
    pieces = [part[0].piece(behind, part[0].end), *(line.piece(0, line.end) for line in part[1:])]
    return Placed(Block(Kind.ITEM, flow(pieces, hyphens), label=label, level=level), start, end)
