"""Text of a session made safe to print: no control character of it ever reaches the reader's terminal."""

from __future__ import annotations

import unicodedata

from fit.width import SOFT_HYPHEN, clusters, text_cells

_HIDDEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})


def printable(text: str) -> str:
    """The text with every character that is no visible one, and no blank, written as an escape."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_shown(char) for char in text)


def in_cells(row: str) -> str:
    """A row of a screen with as many cells as before: a soft hyphen as a hyphen, another hidden character as U+FFFD."""
    if row.isascii() and row.isprintable():
        return row
    return "".join(_in_cells(char) for char in row)


def clip_start(text: str, cells: int) -> str:
    """As many whole words of the text's end as fit, with ``..`` before them where something was cut.

    Where not even the last word fits, as much of its end as fits.
    """
    if text_cells(text) <= cells:
        return text
    words = [start for start, char in enumerate(text) if char == " "]
    starts = [*(start + 1 for start in words), *(cluster.start for cluster in clusters(text))]
    fits = (text[start:] for start in starts if text_cells(text[start:]) <= cells - 2)
    return ".." + next(fits, "")


def pad(text: str, cells: int, *, right: bool = False) -> str:
    """The text filled up with blanks on its right, or on its left."""
    blanks = " " * max(0, cells - text_cells(text))
    return blanks + text if right else text + blanks


def wrap(text: str, cells: int, *, first: str = "", later: str = "") -> list[str]:
    """Lines of whole words, none wider than ``cells``; a word that is too long for any line is cut.

    ``first`` stands before the first line, ``later`` before each further one. A text without a word gives none.
    """
    lines: list[str] = []
    line, empty = first, True
    for word in text.split():
        while not empty and text_cells(line) + 1 + text_cells(word) > cells:
            lines.append(line)
            line, empty = later, True
        line += word if empty else " " + word
        empty = False
        while text_cells(line) > max(cells, text_cells(later) + 2):
            head = _head(line, cells)
            lines.append(head)
            line = later + line[len(head) :]
    return lines if empty else [*lines, line]


def _head(text: str, cells: int) -> str:
    """The clusters of a text that fit into so many cells, at least one character."""
    used = 0
    for cluster in clusters(text):
        used += cluster.cells
        if used > cells:
            return text[: max(1, cluster.start)]
    return text


def _in_cells(char: str) -> str:
    if char == SOFT_HYPHEN:
        return "-"
    return char if _shown(char) == char else "\ufffd" * text_cells(char)


def _shown(char: str) -> str:
    # Joiners and variation selectors (Cf, Mn) belong to their cluster; alone they are escaped as the rest is.
    if unicodedata.category(char) not in _HIDDEN or char == "\u200d":
        return char
    return f"\\x{ord(char):02x}" if ord(char) < 256 else f"\\u{ord(char):04x}"
