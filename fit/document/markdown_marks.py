"""What in a text speaks for Markdown, and what against it: a mark alone proves nothing.

A line after a number sign is a heading in Markdown and a comment elsewhere; plain texts quote with backquotes, and
set running text in from the margin, where Markdown would see program text. The two sides are weighed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

from fit.document.html.elements import ELEMENTS
from fit.document.text.signs.measure import prose

INDENTED: Final = 4
"""Cells of indentation at which Markdown (CommonMark 0.31, section 4.4) sees program text."""
NEEDED: Final = 5
"""Points that make Markdown of a text whose name does not say so."""
HEADINGS: Final = 3
"""Headings alone that do so, where nothing speaks against them."""
RARE: Final = 0.02
"""Marks for each line of running text below which they are accidents."""

_HEADING = re.compile(r"#{1,6}[ \t]+\S")
_FENCE = re.compile(r" {0,3}(`{3,}|~{3,})[^`]*$")
_LIST = re.compile(r"(?:[-*+]|\d{1,9}[.)])[ \t]+\S")
_LINK = re.compile(r"\[[^\]\n]+\]\([^)\s]+(?: \"[^\"\n]*\")?\)")
_REFERENCE = re.compile(r" {0,3}\[[^\]\n]+\]:[ \t]+\S+")
_BOLD = re.compile(r"(?<![\w*])\*\*[^\s*](?:[^*\n]*[^\s*])?\*\*(?![\w*])")
_CODE = re.compile(r"(?<![`\w])`[^`'\s](?:[^`'\n]*[^`'\s])?`(?![`\w])")
_TABLE = re.compile(r"\|?[ \t]*:?-{3,}:?[ \t]*(?:\|[ \t]*:?-{3,}:?[ \t]*)+\|?[ \t]*$")
_QUOTE = re.compile(r"`[^`'\n]{1,40}'|``[^`\n]+(?:''|``)")
_DIRECTIVE = re.compile(r"\.\. [\w-]+::")
_PLACEHOLDER = re.compile(r"`[^`]*`|</?([A-Za-z][\w-]*)(?: [\w -]+)?>")
_JUSTIFIED = re.compile(r"[a-z,] {2,}[a-z]")

HEADING: Final = "headings with number signs"
FENCE: Final = "fenced code"
LINK: Final = "links in brackets"
REFERENCE: Final = "references to links"
BOLD: Final = "words between asterisks"
CODE: Final = "words between backquotes"
TABLE: Final = "a table with a rule of bars"
WEIGHTS: Final = {HEADING: 2, FENCE: 3, LINK: 3, REFERENCE: 2, BOLD: 2, CODE: 1, TABLE: 3}
"""Points of a mark; each kind counts twice at most."""
_INLINE: Final = ((LINK, _LINK), (BOLD, _BOLD), (CODE, _CODE))
_SIGNS: Final = frozenset("[*`|")
"""What marks inside a line are made of: most lines have none."""

_NO_TERM: Final = frozenset(" \t<>|:")
"""What begins a line under which text that stands deeper is no hanging text: set in itself, or marked up."""


@dataclass(slots=True)
class Marks:
    """What was counted in a text."""

    found: dict[str, int] = field(default_factory=dict)
    comments: int = 0
    """Lines after a number sign that are no headings."""
    running: int = 0
    """Lines of running text."""
    indented: int = 0
    """Those of them that Markdown would take for program text."""
    justified: int = 0
    """Those with wide blanks between small letters."""
    quotes: int = 0
    """Words between a backquote and an apostrophe, or between two of each."""
    hanging: int = 0
    """Lines of running text set in under a term, where Markdown would run both together."""
    placeholders: int = 0
    """Words between angle brackets that no tag of HTML has, which Markdown would not show."""
    directives: int = 0
    """Directives of another markup."""

    def count(self, what: str, times: int = 1) -> None:
        """Count a mark."""
        if times:
            self.found[what] = self.found.get(what, 0) + times

    @property
    def points(self) -> int:
        """What speaks for Markdown, less what speaks against it."""
        points = sum(WEIGHTS[what] * min(times, 2) for what, times in self.found.items())
        points -= 5 * (self.comments > self.found.get(HEADING, 0))
        points -= 5 * (self.indented >= 3 and self.indented > 0.05 * self.running)
        points -= 5 * (self.hanging >= 3 and self.hanging > 0.05 * self.running)
        points -= 5 * (self.placeholders > sum(self.found.values()))
        points -= 5 * (self.justified > 0.05 * self.running)
        points -= 3 * (self.quotes > 2 * (1 + self.found.get(CODE, 0)))
        return points - 5 * (self.directives > 1)

    def markdown(self) -> bool:
        """Whether the text is Markdown."""
        if sum(self.found.values()) < RARE * self.running:
            return False
        headings = self.found.get(HEADING, 0)
        alone = headings >= HEADINGS and self.running >= headings and not self.comments
        return (self.points >= NEEDED and len(self.found) > 1) or (alone and self.points > 0)

    def words(self) -> str:
        """The evidence in words."""
        return ", ".join(f"{times} {what}" for what, times in self.found.items())


def count_marks(text: str) -> Marks:
    """What speaks for and against Markdown in ``text``."""
    marks = Marks()
    lines = text.split("\n")
    fence = ""
    blank, listed = True, False
    for index, line in enumerate(lines):
        bare = line.strip()
        opened = _FENCE.match(line) if blank or "`" in line else None  # else a rule of tildes under a title
        if fence:
            if bare.startswith(fence) and not bare.strip(fence[0]):
                marks.count(FENCE)
                fence = ""
            continue
        if opened:
            fence = opened[1]
        elif not bare:
            blank = True
        else:
            listed = _line(marks, lines, index, blank=blank, listed=listed)
            blank = False
    return marks


def _line(marks: Marks, lines: list[str], index: int, *, blank: bool, listed: bool) -> bool:
    """Count one line; whether a list is open after it."""
    line = lines[index]
    bare = line.strip()
    spread = line.expandtabs(4)
    indent = len(spread) - len(spread.lstrip())
    item = _LIST.match(bare) is not None
    listed = item or (listed and not (blank and indent == 0))
    if line.startswith("#"):
        beside = (lines[index - 1] if index else "", lines[index + 1] if index + 1 < len(lines) else "")
        heads = _HEADING.match(line) and blank and not bare.endswith((".", ",", ";"))
        if heads and not any(other.startswith("#") for other in beside):
            marks.count(HEADING)
        else:
            marks.comments += 1
    if not _SIGNS.isdisjoint(line):
        for what, pattern in _INLINE:
            marks.count(what, len(pattern.findall(line)))
        marks.count(REFERENCE, int(_REFERENCE.match(line) is not None))
        marks.count(TABLE, int(_TABLE.match(line) is not None))
        marks.quotes += len(_QUOTE.findall(line))
    if "<" in line and (indent < INDENTED or listed):
        marks.placeholders += sum(
            bool(name) and name.lower() not in ELEMENTS for name in _PLACEHOLDER.findall(line)
        )
    marks.directives += _DIRECTIVE.match(bare) is not None
    if prose(bare):
        marks.running += 1
        marks.justified += _JUSTIFIED.search(bare) is not None
        marks.indented += indent >= INDENTED and not listed
        marks.hanging += indent > 0 and not (blank or listed) and _under_term(lines[index - 1], line)
    return listed


def _under_term(above: str, line: str) -> bool:
    """Whether a line ends early, at the margin, where the next one would have had room for a word more."""
    return above[:1] not in _NO_TERM and len(above.rstrip()) + 1 + len(line.split(None, 1)[0]) < len(line)
