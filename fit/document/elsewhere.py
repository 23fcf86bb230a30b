"""Manual pages that are no more than the name of another file, after `.so` in groff(7): the file to read instead.

Such names count from the top of a tree of pages: `man7/lamp.7`. Looked for are that file below the directory of the
document, one of its last name beside the page, and, where the document lies in a section of such a tree (`man1`), the
file in the section beside it. Nothing outside of these directories is ever read, whatever a name or a symbolic link says.
"""

from __future__ import annotations

import os
import re
from pathlib import Path
from typing import Final

from fit.document.recognise import ONLY_ELSEWHERE

LONGEST: Final = 20_000
"""Bytes of a page that only names another: a line, and the comments above it."""

_SECTION = re.compile(r"man\d\w*")
"""The directory of a section of a tree of manual pages."""


def only_named(data: bytes) -> str | None:
    """The file that a page names and no more; None for every other document."""
    if len(data) > LONGEST or b".so" not in data:
        return None
    found = ONLY_ELSEWHERE.fullmatch(data.decode("utf-8", "replace"))
    return None if found is None or "\0" in found[1] else found[1]


def named_page(named: str, page: Path, document: Path) -> Path | None:
    """Where the file lies that ``page`` names; None where it is in none of the directories that may be read."""
    folder = document.parent
    tops = [Path(os.path.realpath(folder))]
    paths = [folder / named, page.parent / named.rpartition("/")[2]]
    section = Path(os.path.realpath(folder.parent / named.partition("/")[0]))
    if (
        _SECTION.fullmatch(tops[0].name)
        and _SECTION.fullmatch(section.name)
        and section.parent == tops[0].parent
    ):
        tops.append(section)
        paths.append(folder.parent / named)
    for path in paths:
        try:
            real = Path(os.path.realpath(path))
            if any(real.is_relative_to(top) for top in tops) and path.is_file():
                return path
        except OSError:  # a name that no file can have
            continue
    return None
