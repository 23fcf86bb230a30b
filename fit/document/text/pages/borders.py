"""Borders of printed pages: the foot of one page, the head of the next and the rules about them, without a blank line.

What such lines are is told by one of them; the others come back with it, word for word but for their numbers.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from fit.document.text.line import Line
from fit.document.text.pages.edge_lines import page_value, shape
from fit.document.text.pages.repeats import comes_back, few_heads, may_head, of_pages
from fit.document.text.signs.rules import ruled_off

TALLEST = 6
"""Lines of a border, at most: a foot and a head of two lines each, and a rule beside either."""

MIDDLE = 16
"""Cells to the left of words in the middle of a line, at least."""


def page_borders(lines: Sequence[Line]) -> set[int]:
    """Indices of the lines of all borders, with those of the first head and the last foot, which are parts of one."""
    blocks = list(_blocks(lines))
    alike: dict[tuple[str, ...], list[range]] = defaultdict(list)
    for block in blocks:
        if 1 < len(block) <= TALLEST and any(_spread(lines[index]) for index in block):
            alike[tuple(_form(lines[index]) for index in block)].append(block)
    found: list[tuple[list[int], set[int]]] = []  # the lines that tell borders, with all of these
    for forms, borders in alike.items():
        if len(borders) < 2:
            continue
        for place, form in enumerate(forms):
            indices = [border[place] for border in borders]
            fit = form and all(may_head(lines, index) for index in indices)
            told = set(comes_back(lines, form, indices)) if fit else set()
            if of_pages(lines, form, sorted(told), {index for border in borders for index in border}):
                taken = [border for border in borders if border[place] in told]
                around = _head(lines, blocks[0], taken[0], place) | _foot(lines, blocks[-1], forms)
                found.append((sorted(told), around.union(*taken)))
                break
    heads = {index for _, taken in found for index in taken}
    return {index for told, taken in found if few_heads(told, heads) for index in taken}


def _blocks(lines: Sequence[Line]) -> Iterator[range]:
    """The lines between two blank ones."""
    start = 0
    for index in range(len(lines) + 1):
        if index == len(lines) or not lines[index].cells:
            if index > start:
                yield range(start, index)
            start = index + 1


def _spread(line: Line) -> bool:
    """Whether a line has wide blanks in it, stands in the middle, or is a rule: one line of a border does."""
    text = line.text
    return "   " in text or line.indent >= MIDDLE or (text[:1] == text[-1:] and ruled_off(text))


def _form(line: Line) -> str:
    """The shape of a line; rules have none."""
    return "" if ruled_off(line.text) else shape(line.cells)


def _head(lines: Sequence[Line], first: range, border: range, place: int) -> set[int]:
    """The head of the first page: the lines of a border from one on, its number the one before."""
    form = _form(lines[border[place]])
    below = [_form(lines[index]) for index in border]
    own = [_form(lines[index]) for index in first]
    if own != below[len(below) - len(own) :]:
        return set()
    value, following = (page_value(lines[index].cells) for index in (first[own.index(form)], border[place]))
    return set(first) if value is not None and following == value + 1 else set()


def _foot(lines: Sequence[Line], last: range, forms: tuple[str, ...]) -> set[int]:
    """The foot of the last page: the lines of a border up to one."""
    own = tuple(_form(lines[index]) for index in last)
    return set(last) if any(own) and own == forms[: len(own)] else set()
