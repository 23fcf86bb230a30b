"""Furniture of documents without form feeds: lines that stand alone and come back at a distance of a page."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence, Set as AbstractSet
from itertools import pairwise
from statistics import median

from fit.document.text.line import Line
from fit.document.text.pages.around_heads import (
    FULL_PAGE,
    apart,
    beyond,
    margin,
    over_the_page,
    sentences_cut,
)
from fit.document.text.pages.edge_lines import (
    EDGE_NUMBER,
    LEADER,
    LISTED,
    NUMBER,
    ONLY_NUMBER,
    TITLE,
    after_entry,
    drawn,
    page_value,
    parts,
    shape,
    stands_alone,
    tabular,
    tight,
)
from fit.document.text.pages.steps import PAGE_STEP, alike, even, far, level, paged
from fit.document.text.pages.two_heads import facing, of_a_letter
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.rules import ruled_off

EDGE = "number at the edge"
"""What lines of any shape share that have a number at one edge, set off by wide blanks."""
PART = "part "
"""Before the constant part of a line that changes otherwise."""
MOST_HEADS = 8
"""Lines of furniture of a page without form feeds, at most."""
MANY = 6
"""Lines that count on, from which on they may be the heads of a part of the document only."""
SPANNED = 0.3
"""Share of the document over which fewer of them must be spread."""
CUT = 0.4
"""Share of the places at which a sentence that comes back cuts another, at least."""
SEVERAL = 2
"""Sentences cut by one line that comes back, which are no chance."""
SIGNS = 2
"""Of three signs of a running head without a number, at least: margins, a sentence that it cuts, nothing that touches it."""
FAR_RIGHT = 40
"""Columns before a word, at least, that stands at the right edge of its page."""
_FAR_NUMBER = re.compile(r"^\W{0,2}\d+\W{0,2} {8}|[^\d\s]\W{0,2} {8,}\W{0,2}\d+\W{0,2}$")


def at_distance(lines: Sequence[Line], known: set[int]) -> set[int]:
    """Lines of one shape that stand alone and come back at a page's distance."""
    places: dict[str, list[int]] = defaultdict(list)
    for index, line in enumerate(lines):
        if line.cells and index not in known and _alone_or_paired(lines, index) and may_head(lines, index):
            form = shape(line.cells)
            places[form].append(index)
            for part in parts(line.cells):
                if not part.endswith(":"):  # a label: what changes beside it is its text
                    places[PART + part].append(index)
            digits = any(char.isdigit() for char in line.text)
            if (
                "   " in line.text
                and EDGE_NUMBER.search(line.text)
                and (digits or stands_alone(lines, index) or _below_number(lines, index))
            ):
                places[EDGE].append(index)
    found = [(form, comes_back(lines, form, indices)) for form, indices in places.items() if len(indices) > 1]
    all_found = {index for _, indices in found for index in indices}
    paged = [indices for form, indices in found if of_pages(lines, form, indices, all_found)]
    heads = {index for indices in paged for index in indices}
    return {index for indices in paged if few_heads(indices, heads) for index in indices}


def few_heads(indices: list[int], heads: AbstractSet[int]) -> bool:
    """Whether a page, from one line to the next of a form, has few such lines: records of one height have many."""
    return sum(indices[0] <= head <= indices[-1] for head in heads) <= MOST_HEADS * len(indices)


def of_pages(lines: Sequence[Line], form: str, indices: list[int], heads: AbstractSet[int]) -> bool:
    """Whether lines that come back are those of pages, and not of records of one height.

    A number alone is, or one far from its words, and what says so; what stands at both edges; two heads that face
    each other; and what cuts a sentence.
    """
    if len(indices) < 3 or ONLY_NUMBER.fullmatch(form) or "page" in lines[indices[0]].text.lower():
        return bool(indices)
    counting = len(_counting(lines, indices)) == len(indices)
    far_off = counting and all(_FAR_NUMBER.search(lines[index].text) for index in indices)
    far_off = far_off or all(over_the_page(lines, index) for index in indices)
    return far_off or _words_at_right(lines, indices) or sentences_cut(lines, indices, heads) > 0


def may_head(lines: Sequence[Line], index: int) -> bool:
    """Whether a line can be a running head or foot by what is in it: no code, no drawing, no leader, no rule."""
    text = lines[index].text
    return not (
        lines[index].aside
        or code(text)
        or drawn(lines, index)
        or LEADER.match(text) is not None
        or ruled_off(text)
    )


def comes_back(lines: Sequence[Line], form: str, indices: list[int]) -> list[int]:
    """Those lines of one form that stand a page apart and count the pages, or come back word for word."""
    indices = [index for index in indices if not tabular(lines, index)]
    after = sum(after_entry(lines, index) is True for index in indices)
    if len(indices) < 2 or _titles(lines, form, indices) or after >= max(2, LISTED * len(indices)):
        return []
    if form == EDGE and (pair := facing(lines, indices)):
        return pair
    if "#" in form and of_a_letter(lines, indices):
        return indices
    if form.startswith(PART):
        alone = all(stands_alone(lines, index) for index in indices)
        return _unnumbered(lines, indices) if alone else []
    if "#" in form or form == EDGE:
        return _numbered(lines, form, indices)
    return _unnumbered(lines, indices)


def _titles(lines: Sequence[Line], form: str, indices: list[int]) -> bool:
    """Whether lines are titles that are alike but for a number, no two the same."""
    if TITLE.fullmatch(form) is None and not (
        tight(lines[indices[0]].cells) and not sentences_cut(lines, indices)
    ):
        return False
    return len({lines[index].text for index in indices}) == len(indices)


def _numbered(lines: Sequence[Line], form: str, indices: list[int]) -> list[int]:
    """Those lines of a form whose numbers count the pages, or all where they stand a page apart."""
    counting = _counting(lines, indices)
    most = len(counting) >= 3 and (form == EDGE or len(counting) >= 0.6 * len(indices))
    if "page #" in form and len(counting) >= 2 and paged(counting, far):
        return counting
    if ONLY_NUMBER.fullmatch(form):
        most = most and paged(_on_full_pages(lines, counting), even)
        return counting if most and not _over_titles(lines, counting) else []
    spread = len(counting) >= MANY or (counting and counting[-1] - counting[0] >= SPANNED * len(lines))
    at_edge = spread and all(EDGE_NUMBER.search(lines[index].text) for index in counting)
    if most and at_edge and paged(counting, even if _come_back(lines, counting) else level):
        return counting
    return _unnumbered(lines, indices) if form != EDGE else []


def _on_full_pages(lines: Sequence[Line], indices: list[int]) -> list[int]:
    """The lines without the one that ends the document: it is the foot of the last page, which may be shorter."""
    shorter = len(indices) > 2 and indices[-1] - indices[-2] < indices[-2] - indices[-3]
    return indices[:-1] if shorter and not beyond(lines, indices[-1], 1) else indices


def _come_back(lines: Sequence[Line], indices: list[int]) -> bool:
    """Whether the words beside the numbers are the same every time, or on every second page.

    Notes and tables that fit no more make pages of different heights, but no words come back so by chance.
    """
    words = [NUMBER.sub("", lines[index].text.lower()).split() for index in indices]
    return len(words) > 3 and all(words) and words[2:] == words[:-2]


def _over_titles(lines: Sequence[Line], indices: list[int]) -> bool:
    """Whether each of the numbers stands right over words of its own: chapters are numbered so, and no pages."""
    below = [lines[index + 1].text for index in indices if index + 1 < len(lines)]
    return all(below) and len(set(below)) == len(indices)


def _unnumbered(lines: Sequence[Line], indices: list[int]) -> list[int]:
    """Running heads among lines without a number: a page apart, and set off by margins, or in the middle of sentences.

    Below a margin, what stands right over another line each time is the first line of a title: `Appendix`.
    Sentences too where they come back word for word and mostly stand in the middle of others. What the entries of
    a reference have in common (`Returns`, `flags`) comes back as regularly where these are of one length, but
    stands between them like any other line of theirs, and cuts nothing.
    """
    if _words_at_right(lines, indices):
        return indices
    text = lines[indices[0]].text
    said = closed(text) or (prose(text) and "   " not in text)
    cut = sentences_cut(lines, indices)
    if said and cut < max(2, CUT * len(indices)):
        return []
    margins = sum(margin(lines, index) for index in indices) >= 0.6 * len(indices)
    if margins + (cut > 0) + apart(lines, indices) < SIGNS:
        return []
    alone = cut >= SEVERAL and all(stands_alone(lines, index) for index in indices)
    least = 3 if margins or alone else 5
    full = _on_full_pages(lines, indices) if cut or len(indices) > least else indices
    if len(indices) < least or not paged(full, level):
        return []
    spread = len(indices) >= MANY or indices[-1] - indices[0] >= SPANNED * len(lines)
    tall = median(b - a for a, b in pairwise(indices)) >= FULL_PAGE
    return _in_step(lines, indices) if spread or tall or cut else []


def _words_at_right(lines: Sequence[Line], indices: list[int]) -> bool:
    """Whether one word stands far to the right in one column, all through the document, on pages about as tall.

    It is where the number of the page stands, or stood: no text begins there, and what is above and below matters
    little, for an editor may have closed the gaps.
    """
    first = lines[indices[0]]
    return (
        first.indent >= FAR_RIGHT
        and len(indices) >= MANY
        and first.text.isalpha()
        and all(lines[index].indent == first.indent for index in indices)
        and indices[-1] - indices[0] >= SPANNED * len(lines)
        and paged(indices, alike)
    )


def _in_step(lines: Sequence[Line], indices: list[int]) -> list[int]:
    """Those lines that have another one of them a page, or some pages, away; the last page may be shorter."""
    steps = [b - a for a, b in pairwise(indices)]
    usual = median(steps)
    paged = [
        abs(step - usual * max(1, round(step / usual))) <= PAGE_STEP * round(step / usual) for step in steps
    ]
    paged[-1] = paged[-1] or not beyond(lines, indices[-1], 1)
    return [
        index for index, *near in zip(indices, [False, *paged], [*paged, False], strict=True) if any(near)
    ]


def _below_number(lines: Sequence[Line], index: int) -> bool:
    """Whether a line has nothing beside it but a number right above: the foot of one page over the head of the next."""
    if index < 2 or not ONLY_NUMBER.fullmatch(shape(lines[index - 1].cells)):
        return False
    return stands_alone(lines, index, {index - 1}) and not lines[index - 2].cells


def _alone_or_paired(lines: Sequence[Line], index: int) -> bool:
    """A blank line on one side at least: heads of two lines stand together."""
    return (index == 0 or not lines[index - 1].cells) or (
        index + 1 >= len(lines) or not lines[index + 1].cells
    )


def _counting(lines: Sequence[Line], indices: list[int]) -> list[int]:
    """The longest run of these lines whose last or first numbers go up by one."""
    best: list[int] = []
    for number in (page_value, _first_value):
        runs: dict[int, list[int]] = {}
        for index in indices:
            value = number(lines[index].cells)
            if value is None:
                continue
            run = runs.pop(value - 1, [])
            run.append(index)
            runs[value] = run
            if len(run) > len(best):
                best = run
    return best


def _first_value(text: str) -> int | None:
    found = NUMBER.search(text.lower())
    return int(found.group()) if found and found.group().isdigit() and len(found.group()) < 6 else None
