"""Paths and addresses that a line end parts at a slash: one word again, where that is clear.

Clear is what stands together elsewhere in the document, and what goes on as only a path does: with a further slash,
a point inside, or figures. After a whole directory a sentence goes on in plain words.
"""

from __future__ import annotations

import re

_STARTS = re.compile(r"[(\[{<\"'`]*(?:~?/|\.{1,2}/|[a-z]+://|[$~%]\w+/|[A-Za-z]:/)", re.IGNORECASE)
_GOES_ON = re.compile(r"\.?(?!(?:and|or)/|www\.)[\w+~-]+(?:[./][\w+~.-]*[\w/]|/)")
_FIGURES = re.compile(r"\d+(?:\.\d+)*(?![\w:)])")
_SEGMENT = re.compile(r"[\w+~.@-]*$")
_HEAD = re.compile(r"\.?[\w+~@-]+(?:\.[\w+~@-]+)*")


def one_path(left: str, right: str, source: str) -> bool:
    """Whether the last word of a line and the first of the next are one, the slash between them on either side."""
    if left.endswith("/") == right.startswith("/"):
        return False
    body, rest = left.removesuffix("/"), right.removeprefix("/")
    segment = _SEGMENT.search(body)
    last = segment.group() if segment else ""
    if not rest.strip(".,;:)\"'"):
        return "/" in body and bool(last) and _stands(f"{last}/", source)
    head = _HEAD.match(rest)
    if head is None or (body and not last):
        return False
    if _stands(f"{last}/{head.group()}", source):
        return True
    if right.startswith("/"):
        return False
    if last.isdigit() and _FIGURES.match(rest):
        return True
    path = _STARTS.match(left) is not None and "//" not in rest
    return path and (_GOES_ON.match(rest) is not None or ("//" in left and _FIGURES.match(rest) is not None))


def _stands(joined: str, source: str) -> bool:
    """Whether the words with the slash between them stand on one line of the document."""
    before = r"(?<![\w./~-])" if joined[0] == "/" else r"(?<![\w-])"
    after = "" if joined[-1] == "/" else r"(?![\w-])"
    return re.search(before + re.escape(joined) + after, source) is not None
