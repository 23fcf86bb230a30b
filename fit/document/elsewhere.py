"""Manual pages that are no more than the name of another file, after `.so` in groff(7): the file to read instead.

Such names count from the top of a tree of pages: `man7/lamp.7`. Looked for are that file below the directory of the
document, and one of its last name beside the page. Nothing outside of that directory is ever read, whatever a name or
a symbolic link says.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

from fit.document.recognise import ONLY_ELSEWHERE

LONGEST: Final = 20_000
"""Bytes of a page that only names another: a line, and the comments above it."""


def only_named(data: bytes) -> str | None:
    """The file that a page names and no more; None for every other document."""
    if len(data) > LONGEST or b".so" not in data:
        return None
    found = ONLY_ELSEWHERE.fullmatch(data.decode("utf-8", "replace"))
    return None if found is None or "\0" in found[1] else found[1]


def named_page(named: str, page: Path, document: Path) -> Path | None:
    """Where the file lies that ``page`` names; None where it is not in the directory of ``document`` or below."""
    top = Path(os.path.realpath(document.parent))
    for path in (document.parent / named, page.parent / named.rpartition("/")[2]):
        try:
            if Path(os.path.realpath(path)).is_relative_to(top) and path.is_file():
                return path
        except OSError:  # a name that no file can have
            continue
    return None
