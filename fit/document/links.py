"""The addresses of a document's links: the text keeps only the words, a list of notes has the addresses."""

from __future__ import annotations

from fit.document.blocks import Block, Kind, Text
from fit.document.characters import fold
from fit.document.wording import counted, stands


class Links:
    """Collects addresses in the order in which the document names them, each once."""

    def __init__(self) -> None:
        self._found: dict[str, Text] = {}

    def add(self, address: Text, shown: str) -> None:
        """Note an address, unless the text shows it anyway or it leads to a place in the same document."""
        chars = "".join(address.chars.split())
        if not chars or chars.startswith("#") or shown.strip() in (chars, chars.removeprefix("mailto:")):
            return
        self._found.setdefault(chars, fold(address))

    def notes(self) -> list[Block]:
        """One note an address, for the end of the document."""
        return [Block(Kind.NOTE, text) for text in self._found.values()]

    def remarks(self) -> list[str]:
        """What was done with them."""
        number = len(self._found)
        if not number:
            return []
        return [f"{counted(number, 'link address', 'link addresses')} {stands(number)} as notes at the end"]
