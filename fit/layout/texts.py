"""Texts cut and put together; every character keeps its source."""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Sequence

from fit.document.blocks import Text
from fit.document.characters import cut
from fit.layout.lines import INSERTED


def inserted(chars: str) -> Text:
    """A text that the layout puts in."""
    return Text(chars, array("q", [INSERTED]) * len(chars), bytes(len(chars)))


def join(*texts: Text, between: str = " ") -> Text:
    """The texts that are not empty, with ``between`` put in between."""
    gap = inserted(between)
    whole = Text()
    for text in texts:
        if text.chars:
            whole = add(whole, gap, text) if whole.chars else text
    return whole


def add(*texts: Text) -> Text:
    """The texts one after the other."""
    sources = array("q")
    for text in texts:
        sources.extend(text.sources)
    return Text("".join(text.chars for text in texts), sources, b"".join(map(_marks, texts)))


def _marks(text: Text) -> bytes:
    """The marks, one a character also where a reader left them out."""
    return text.marks or bytes(len(text.chars))


def pick(text: Text, indices: Iterable[int]) -> Text:
    """The characters at ``indices``."""
    chosen = list(indices)
    marks = _marks(text)
    return Text(
        "".join(text.chars[index] for index in chosen),
        array("q", [text.sources[index] for index in chosen]),
        bytes(marks[index] for index in chosen),
    )


def strip_blanks(text: Text) -> Text:
    """Without the blanks at both ends."""
    bare = text.chars.strip(" ")
    start = text.chars.find(bare)
    return cut(text, start, start + len(bare)) if len(bare) < len(text.chars) else text


def in_one_line(text: Text) -> Text:
    """With a blank for each line end."""
    return Text(text.chars.replace("\n", " "), text.sources, text.marks)


def once(rows: Sequence[Sequence[Text]], header_rows: int) -> list[list[Text]]:
    """The rows of a table without the cells that only say again, with no place, what the one to the left or above says."""
    found: list[list[Text]] = []
    for number, row in enumerate(rows):
        above = rows[number - 1] if number > header_rows else [Text()] * len(row)
        found.append(
            [
                Text()
                if cell.chars in (left.chars, over.chars) and max(cell.sources, default=0) < 0
                else cell
                for cell, left, over in zip(row, [Text(), *row], above, strict=False)
            ]
        )
    return found


def spread_tabs(text: Text, every: int = 8) -> Text:
    """With tabs as blanks up to the next column divisible by ``every``; the first of them has the tab's source.

    Only for lines that stay lines; wide characters before a tab count as one column.
    """
    while "\t" in text.chars:
        at = text.chars.index("\t")
        more = inserted(" " * (every - 1 - at % every))
        blank = Text(" ", text.sources[at : at + 1], _marks(text)[at : at + 1])
        text = add(cut(text, 0, at), blank, more, cut(text, at + 1, len(text)))
    return text


def margin(text: Text) -> int:
    """The blanks before the first word."""
    return len(text.chars) - len(text.chars.lstrip(" "))
