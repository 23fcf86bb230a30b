"""Info files: their nodes are parted by 1Fh, and a line at the start of each names the nodes around it.

Source: the Texinfo manual, version 6.8, appendix "Info Format Specification". The lines that name nodes, the tables of
places for the reading program and the marks of the directory stand aside: no words of the manual. Its preamble is kept,
though a program need not show it, and so are the words inside the marks of an image.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

_SEPARATOR = re.compile(
    r"\x1f\f?(?=\r?\n(?:(?P<node>File:[^\n]*[ \t]Node:)|Tag Table:|End Tag Table|Indirect:|Local Variables:))",
    re.IGNORECASE,
)
_DIRECTORY = re.compile(r"^(?:INFO-DIR-SECTION .*|(?:START|END)-INFO-DIR-ENTRY)\r?$", re.MULTILINE)
_INDEX = re.compile(r"^\0\x08\[index\0\x08\]", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Nodes:
    """What an Info file has beside its text."""

    text: str
    """The file, as long as it was, with blanks for what parts its nodes and the fields of its tables."""
    aside: frozenset[int]
    """The places at which the lines start that stand aside."""


def find_nodes(source: str) -> Nodes:
    """The nodes of an Info file; of any other text nothing."""
    starts = list(_SEPARATOR.finditer(source)) if "\x1f" in source else []
    if not starts:
        return Nodes(source, frozenset())
    aside = {match.start() for match in _DIRECTORY.finditer(source, 0, starts[0].start())}
    aside.update(match.start() for match in _INDEX.finditer(source))
    parts = [source[: starts[0].start()]]
    for start, after in zip(starts, [*starts[1:], None], strict=True):
        end = after.start() if after else len(source)
        line = source.index("\n", start.end()) + 1
        while line < end:
            aside.add(line)
            line = 0 if start["node"] else source.find("\n", line, end) + 1
            if not line:
                break
        rest = source[start.end() : end]
        parts.append(
            " " * (start.end() - start.start()) + (rest if start["node"] else rest.replace("\x7f", " "))
        )
    return Nodes("".join(parts).replace("\0\x08", "  "), frozenset(aside))
