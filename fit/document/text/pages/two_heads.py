"""Running heads of documents that show two of them only: of two pages that face each other, and of a letter."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.pages.around_heads import margin
from fit.document.text.pages.steps import SHORTEST_PAGE

_LETTER = re.compile(
    r"(?P<to>\S.*?) {3,}(?:Page |page |- ?|\()?(?P<page>\d{1,3})(?: ?-|\))? {3,}(?P<when>\S.*)"
)
_LEFT = re.compile(r"(\d{1,3}) {3,}[A-Z]")
_RIGHT = re.compile(r"[^\W\d] {3,}(\d{1,3})$")


def facing(lines: Sequence[Line], indices: Sequence[int]) -> list[int]:
    """The heads of two pages one after the other: an even number at the left of its page, an odd one at the right.

    Wide margins stand above and below both, and they are all that a short document shows of its pages.
    """
    heads = [index for index in indices if margin(lines, index, both=True)]
    if len(heads) != 2 or heads[1] - heads[0] < SHORTEST_PAGE:
        return []
    first, second = (_on_its_side(lines[index].text) for index in heads)
    return heads if first and second == first + 1 else []


def of_a_letter(lines: Sequence[Line], indices: Sequence[int]) -> bool:
    """Whether two lines are the heads of the second and the third page of a letter: to whom, which page, and when.

    The words are the same in both, the number between them counts on, and wide margins stand above and below.
    """
    if len(indices) != 2 or indices[1] - indices[0] < SHORTEST_PAGE:
        return False
    first, second = (_LETTER.fullmatch(lines[index].text) for index in indices)
    if first is None or second is None or int(second["page"]) != int(first["page"]) + 1:
        return False
    same = first["to"] == second["to"] and first["when"] == second["when"]
    return same and all(margin(lines, index, both=True) for index in indices)


def _on_its_side(text: str) -> int:
    """The number of a page at the edge at which it stands in a book: an even one left, an odd one right; or 0."""
    for side, odd in ((_LEFT.match(text), 0), (_RIGHT.search(text), 1)):
        if side is not None and int(side[1]) % 2 == odd:
            return int(side[1])
    return 0
