"""Lines of roff before their escapes are read: requests, braces, continued lines, and where each line stands."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from fit.document.man.roff_text import Line, join_lines, own_line

CONTROL: Final = ".'"
"""What a line begins with that calls a request or a macro."""
END_OF_MACRO: Final = own_line("\x00")
"""Stands behind a macro's lines; compared by identity."""
_COMMENT: Final = re.compile(r"(?<!\\)((?:\\\\)*)\\[\"#]")


def request_of(line: Line) -> tuple[str | None, Line]:
    """The name of the request or macro a line calls, None where it is text, and the rest of the line."""
    chars = line.chars
    if not chars or chars[0] not in CONTROL:
        return None, line
    at = 1
    while at < len(chars) and chars[at] in " \t":
        at += 1
    start = at
    while at < len(chars) and chars[at] not in " \t\\":
        at += 1
    name = chars[start:at]
    if not name and chars.startswith("\\", at):
        return "\\", line.part(at)
    while at < len(chars) and chars[at] in " \t":
        at += 1
    return name, line.part(at)


def source_lines(source: str) -> Iterator[Line]:
    """The lines of a document, each character with its place."""
    at = 0
    while at < len(source):
        end = source.find("\n", at)
        end = len(source) if end < 0 else end
        stop = end - (end > at and source[end - 1] == "\r")
        yield Line(source[at:stop], range(at, stop))
        at = end + 1


def is_continued(chars: str) -> bool:
    """Whether a line ends in a backslash that no other one holds back."""
    return chars.endswith("\\") and (len(chars) - len(chars.rstrip("\\"))) % 2 == 1


def without_comment(line: Line) -> Line | None:
    """The line without its comment; None where nothing else is in it."""
    if "\\" not in line.chars:
        return line
    found = _COMMENT.search(line.chars)
    if found is None:
        return line
    kept = line.part(0, found.end(1))
    if not kept.chars.strip(CONTROL + " \t") and (found.start() == 0 or kept.chars[:1] in CONTROL):
        return None
    return kept.part(0, len(kept.chars.rstrip())) if kept.chars[:1] in CONTROL else kept


def without_braces(line: Line) -> Line:
    """The line without the braces around the branches of conditions."""
    parts = []
    at = 0
    for found in re.finditer(r"(?<!\\)\\[{}]", line.chars):
        parts.append(line.part(at, found.start()))
        at = found.end()
    parts.append(line.part(at))
    return join_lines(parts)


def braces(chars: str) -> int:
    """Braces that open less those that close, comments left out."""
    comment = _COMMENT.search(chars)
    plain = (chars if comment is None else chars[: comment.start()]).replace("\\\\", "")
    return plain.count("\\{") - plain.count("\\}")
