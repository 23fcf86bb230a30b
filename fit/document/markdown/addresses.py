"""The addresses of a Markdown document's links, with their places: behind the text, or in a definition."""

from __future__ import annotations

import html
from typing import Final

from fit.document.characters import TextBuilder
from fit.document.links import Links
from fit.document.markdown.places import Places

_LONGEST_LABEL: Final = 1100
"""Characters before the address in a definition of a link; the standard allows a label of 999."""


class Addresses:
    """Finds where addresses are written, for the list of notes."""

    def __init__(self, places: Places, links: Links) -> None:
        self._places = places
        self.links = links
        self._defined: dict[str, int] = {}
        """For each address that a definition gives, where the definition begins."""

    def define(self, references: list[tuple[str, int]]) -> None:
        """Take the addresses that definitions give, each with its line."""
        self._defined = {html.unescape(address): self._places.lines[line] for address, line in references}

    def note(self, address: str, shown: str, end: int) -> None:
        """Note an address of a link with the text ``shown``, in the lines up to ``end``.

        Its place is behind the text, where it is written there rather than by reference.
        """
        chars = html.unescape(address)
        places = self._places
        at = places.find(chars, end)
        if at < 0 and chars in self._defined:
            begin = self._defined[chars]
            at = places.source.find(chars, begin, begin + len(chars) + _LONGEST_LABEL)
        builder = TextBuilder()
        if at >= 0:
            builder.add_run(chars, at)
        else:
            builder.add_own(chars)
        self.links.add(builder.build(), shown)

    def note_unused(self) -> None:
        """Note the addresses that are defined for no link."""
        for address in self._defined:
            self.note(address, "", self._places.cursor)
