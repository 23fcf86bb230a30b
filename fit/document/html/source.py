"""Prepare HTML for the parser: say where each run of text stands, and bound the depth of nesting.

A parser of HTML5 moves, closes and invents elements, and tells nothing about places. So each run of text
gets its offset written before it, between two noncharacters, and each link and picture an attribute with
its own; the tree then carries them wherever it puts the text. Tokens follow the HTML standard's
"Tokenization"; where this scanner departs from it (a quote that never closes), a mark only lands where
no text is.

Tags nested deeper than `DEEPEST` become blanks: the tree of a page of nested tags costs the square of its
depth, and no page for readers comes near.
"""

from __future__ import annotations

import html
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

DEEPEST: Final = 128
"""Open elements, of those that only an end tag closes."""

OPENING, CLOSING = "\ufdd0", "\ufdd1"
"""Around an offset. Noncharacters of Unicode: no document may hold them."""

PLACE: Final = "data-fit-at"
"""The attribute of links, pictures and fields that holds the offsets of their tag, start and end."""

_TOKEN: Final = re.compile(
    r"""<!--(?:>|->)?+|<[!?]|</(?=[^a-zA-Z>])
    |<(?P<end>/?)(?P<name>[a-zA-Z][^\s/>]*+)
      (?P<rest>(?:[\s/]++|=?[^\s/>=]++(?:\s*+=\s*+(?:"[^"]*+"|'[^']*+'|[^\s>"'][^\s>]*+)?+)?+|=)*+)(?P<close>>|\Z)""",
    re.VERBOSE,
)
_CLOSED_BY_OTHERS: Final = frozenset(
    [
        "p",
        "li",
        "dt",
        "dd",
        "tr",
        "td",
        "th",
        "thead",
        "tbody",
        "tfoot",
        "colgroup",
        "caption",
        "option",
        "optgroup",
        "body",
        "html",
        "head",
        "rb",
        "rt",
        "rp",
        "rtc",
    ]
)
_ENTITY: Final = re.compile(r"&(?:#[xX]?[0-9a-fA-F]+|[a-zA-Z][a-zA-Z0-9]*);?")
_VOID: Final = frozenset(
    [
        "area",
        "base",
        "br",
        "col",
        "embed",
        "hr",
        "img",
        "input",
        "link",
        "meta",
        "param",
        "source",
        "track",
        "wbr",
        "basefont",
        "bgsound",
        "frame",
        "keygen",
    ]
)
_FORMATTING: Final = frozenset(
    ["a", "b", "big", "code", "em", "font", "i", "nobr", "s", "small", "strike", "strong", "tt", "u"]
)
_NOT_SHOWN: Final = frozenset(["script", "style", "title", "iframe", "noembed", "noframes"])
_RAW: Final = frozenset(("textarea", "xmp"))
_FRAMES: Final = frozenset(("frameset", "frame", "noframes"))
"""Tags of a page of frames, of which only what it says to a reader without frames is its own text."""
_FRAMED: Final = re.compile(r"<frameset[\s>]", re.IGNORECASE)


@dataclass(slots=True)
class MarkedSource:
    """A page ready for the parser."""

    html: str
    runs: list[int] = field(default_factory=list)
    """The offset of each run of text, in order."""
    characters: int = 0
    """How long they are together."""
    flattened: int = 0
    """Tags that were nested too deep."""
    unfinished: int | None = None
    """Where a tag begins that never ends; the rest of the page is part of it, and no text."""


class _Nesting:
    """The open elements, as far as the bound needs them."""

    def __init__(self) -> None:
        self._open: list[str] = []
        self._counts: Counter[str] = Counter()
        self._dropped: Counter[str] = Counter()
        self._formatting = 0

    def start(self, name: str) -> bool:
        """Whether a start tag may stay."""
        if name in _VOID or name in _CLOSED_BY_OTHERS:
            return True
        formatting = name in _FORMATTING
        depth = self._formatting if formatting else len(self._open) - self._formatting
        if depth >= DEEPEST:
            self._dropped[name] += 1
            return False
        self._open.append(name)
        self._counts[name] += 1
        self._formatting += formatting
        return True

    def end(self, name: str) -> bool:
        """Whether an end tag may stay."""
        if self._dropped[name]:
            self._dropped[name] -= 1
            return False
        while self._counts[name]:
            closed = self._open.pop()
            self._counts[closed] -= 1
            self._formatting -= closed in _FORMATTING
            if closed == name:
                break
        return True


class _Marker:
    def __init__(self, source: str) -> None:
        self._source = source
        self._parts: list[str] = []
        self._nesting = _Nesting()
        self._framed = False
        self.marked = MarkedSource("")

    def run(self, start: int, end: int) -> MarkedSource:
        position = start
        self._framed = _FRAMED.search(self._source, start, end) is not None
        while (token := _TOKEN.search(self._source, position, end)) is not None:
            self._text(position, token.start())
            position = self._token(token, end)
        self._text(position, end)
        self.marked.html = "".join(self._parts)
        return self.marked

    def _text(self, start: int, end: int) -> None:
        run = self._source[start:end]
        blank = len(run) - len(run.lstrip())
        if blank == len(run):
            self._parts.append(run)
            return
        self.marked.runs.append(start + blank)
        self.marked.characters += len(run) - blank
        self._parts += (run[:blank], f"{OPENING}{start + blank}{CLOSING}", run[blank:])

    def _token(self, token: re.Match[str], end: int) -> int:
        """Copy a token; the offset after it."""
        raw = token.group()
        if token["name"] is None:
            return self._skip_comment(token, end)
        if not token["close"]:
            self.marked.unfinished = token.start()
            return end
        name = token["name"].lower()
        if self._framed and name in _FRAMES:
            return token.end()
        stays = self._nesting.end(name) if token["end"] else self._nesting.start(name)
        if not stays:
            self.marked.flattened += 1
            self._parts.append(" ")
        elif name in ("a", "img", "area", "input") and not token["end"]:
            self._parts.append(f'<{name} {PLACE}="{token.start()}-{token.end()}" {token["rest"]}>')
        else:
            self._parts.append(raw)
        if not token["end"] and (name in _NOT_SHOWN or name in _RAW or name == "plaintext"):
            return self._raw(name, token.end(), end)
        return token.end()

    def _skip_comment(self, token: re.Match[str], end: int) -> int:
        raw = token.group()
        if raw in ("<!-->", "<!--->"):
            return token.end()
        closer = "-->" if raw == "<!--" else ">"
        close = self._source.find(closer, token.end(), end)
        after = end if close < 0 else close + len(closer)
        if raw == "<!":
            self._parts.append(self._source[token.start() : after])  # the doctype decides how tables nest
        return after

    def _raw(self, name: str, start: int, end: int) -> int:
        """Elements whose content holds no tags; the offset of their end tag."""
        close = re.compile(rf"</{name}(?=[\s/>])", re.IGNORECASE).search(self._source, start, end)
        stop = end if close is None or name == "plaintext" else close.start()
        if name in _NOT_SHOWN:
            self._parts.append(self._source[start:stop])
        else:
            self._text(start, stop)
        return stop


def mark_source(source: str, start: int = 0, end: int | None = None) -> MarkedSource:
    """Mark the runs of text of ``source[start:end]`` with their offsets in ``source``.

    The source must not hold the noncharacters U+FDD0 and U+FDD1.
    """
    return _Marker(source).run(start, len(source) if end is None else end)


def decoded_places(source: str, start: int, text: str) -> Sequence[int]:
    """Where each character of ``text`` stands, which came from ``source[start:]`` by decoding its entities."""
    if source.startswith(text, start):
        return range(start, start + len(text))
    places: list[int] = []
    at = start
    while len(places) < len(text):
        char = text[len(places)]
        if source[at : at + 1] == "&" and (entity := _ENTITY.match(source, at)) is not None:
            decoded = html.unescape(entity.group())
            if text.startswith(decoded, len(places)) and decoded != entity.group():
                places += [at] * len(decoded)
                at = entity.end()
                continue
            # A name without its semicolon may be shorter than what the pattern took.
            kept = next((k for k in range(1, len(decoded)) if entity.group().endswith(decoded[k:])), 0)
            if kept and text.startswith(decoded[:kept], len(places)):
                places += [at] * kept
                at = entity.end() - (len(decoded) - kept)
                continue
        places.append(min(at, len(source) - 1))
        at += 2 if char == "\n" and source.startswith("\r\n", at) else 1
    return places
