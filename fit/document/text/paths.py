"""Paths and addresses that a line end parts at a slash: one word again, where that is clear.

Clear is what stands together elsewhere in the document, and what goes on as only a path does: with a further slash,
a point inside, or letters that are no word. After a whole directory a sentence goes on in plain words. An address with
nothing behind its scheme goes on in any name; one right behind a bracket goes on in the word that closes it, for blanks
inside `<URL: >` were put there by the break (RFC 3986, appendix C).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Container

_STARTS = re.compile(
    r"[(\[{<\"'`]*(?:~?/|\.{1,2}/|(?:URL:)?[a-z]+://|[$~%]\w+/|[A-Za-z]:/|(?:[\w-]+\.)+[a-z]{2,}/)",
    re.IGNORECASE,
)
_SCHEME = re.compile(r"[(\[{<\"'`]*(?:URL:)?[a-z]+://", re.IGNORECASE)
_HOST = re.compile(r"[\w-]+(?:\.[\w-]+)+")
_SITE = re.compile(r"(?:[\w-]+\.)+[a-z]{2,}/")
_COMPOUND = re.compile(r"[a-z]+-[a-z]+(?!\w)")
"""Two words and a hyphen: a directory with such a name and another such name behind it are one path."""
_LOUD = re.compile(r"[(\[\"']*[A-Z]{2,}(?:/[A-Z]{2,})*/")
_LOUD_HEAD = re.compile(r"[A-Z]{2,}(?![\w-])")
"""Words in capitals on both sides of a slash are names for two cases: `ON/OFF`."""
_UNDERSCORED = re.compile(r"[^\W_]+(?:_[^\W_]+)+")
_BRACKETS = {"(": ")", "<": ">", "[": "]", "{": "}"}
_BRACKETED = re.compile(r"<(?:URL: ?)?[a-z]+://[^\s<>]*[^\s<>-]$", re.IGNORECASE)
_CLOSES = re.compile(r"[^\s<>]+>")
OPEN_ENDS = ("/", "#", "=", "&")
"""Signs at which an address may be broken, the next word still a part of it."""
_GOES_ON = re.compile(r"\.?(?!(?:and|or)/|www\.)[\w+~-]+(?:[./][\w+~.-]*[\w/]|/)")
_NAME = re.compile(r"[a-z]{2,}(?=[.,;:!?)\"']*$)")
_SEGMENT = re.compile(r"[\w+~.@-]*$")
_HEAD = re.compile(r"\.?[\w+~@-]+(?:\.[\w+~@-]+)*")
_SLASH = re.compile(rf"/(?=({_HEAD.pattern})?)")


def slashed_words(source: str) -> frozenset[str]:
    """What stands together around a slash on one line of a text: `left/right`, and `left/` alone."""
    found: set[str] = set()
    last = 0
    for match in _SLASH.finditer(source):
        at = match.start()
        before = _SEGMENT.search(source, max(source.rfind("\n", last, at) + 1, last), at)
        left = before[0] if before else ""
        if left or not at or at > last:
            found |= {f"{left}/{match[1] or ''}", f"{left}/"}
        last = match.end()
    return frozenset(found)


def one_address(left: str, right: str) -> bool:
    """Whether the first word of a line goes on with the address at the end of the one above, by the forms of both."""
    scheme = _SCHEME.match(left) or (None if left.endswith("/") else _SITE.match(left))
    if scheme is None or _SCHEME.match(right):
        return False
    if scheme.end() == len(left):
        return _HOST.match(right) is not None
    if not left.endswith("/"):
        return right[0].isalnum()
    closing = _BRACKETS.get(left[0], "")
    closed = closing != "" and closing in right
    return closed or _UNDERSCORED.match(right) is not None


def in_brackets(before: str, after: str) -> bool:
    """Whether a line ends in an address behind `<` or `<URL:`, and the first word of the next has the bracket that closes it."""
    return "://" in before and _BRACKETED.search(before) is not None and _CLOSES.match(after) is not None


def one_path(left: str, right: str, slashed: Container[str], foreign: Callable[[str], bool]) -> bool:
    """Whether the last word of a line and the first of the next are one, the slash between them on either side.

    ``slashed`` has what stands around slashes elsewhere in the document; ``foreign`` tells which names no sentence has.
    """
    if left.endswith("/") == right.startswith("/"):
        return False
    body, rest = left.removesuffix("/"), right.removeprefix("/")
    segment = _SEGMENT.search(body)
    last = segment.group() if segment else ""
    if not rest.strip(".,;:)\"'"):
        return "/" in body and bool(last) and f"{last}/" in slashed
    head = _HEAD.match(rest)
    if head is None or (body and not last):
        return False
    if f"{last}/{head.group()}" in slashed:
        return True
    if right.startswith("/"):
        return False
    if _LOUD.fullmatch(left) and _LOUD_HEAD.match(rest):
        return True
    if _COMPOUND.fullmatch(body) and _COMPOUND.match(rest):
        return True
    path = _STARTS.match(left) is not None and "//" not in rest
    if path and "/" in body and "//" not in left and (name := _NAME.match(rest)) and foreign(name[0]):
        return True
    return path and _GOES_ON.match(rest) is not None
