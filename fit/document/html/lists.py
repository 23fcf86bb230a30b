"""Labels of HTML lists: a dash, or the number by the list's kind, start and order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from fit.document.numerals import written

BULLET: Final = "-"


@dataclass(slots=True)
class _List:
    ordered: bool
    style: str
    number: int
    step: int


class Lists:
    """The open lists, innermost last."""

    def __init__(self) -> None:
        self._open: list[_List] = []

    def enter(self, tag: str, attributes: Mapping[str, str | None], items: int) -> None:
        """A list of so many items begins; the number of a reversed one says where it starts."""
        reverse = "reversed" in attributes
        start = _whole(attributes.get("start"))
        if start is None:
            start = items if reverse else 1
        style = attributes.get("type") or "1"
        self._open.append(_List(tag == "ol", style, start, -1 if reverse else 1))

    def leave(self) -> None:
        """A list ends."""
        if self._open:
            self._open.pop()

    def label(self, value: str | None) -> str:
        """The label of the next item; ``value`` is its own number, where it has one."""
        if not self._open or not self._open[-1].ordered:
            return BULLET
        top = self._open[-1]
        given = _whole(value)
        number = top.number if given is None else given
        top.number = number + top.step
        return f"{written(number, top.style)}."


def _whole(text: str | None) -> int | None:
    plain = (text or "").strip()
    return int(plain) if len(plain) < 10 and plain.removeprefix("-").isdecimal() and plain.isascii() else None
