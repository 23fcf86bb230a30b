"""The addresses of a document's links: the text keeps only the words, a list of notes has the addresses."""

from __future__ import annotations

import re
from typing import Final

from fit.document.blocks import Block, Kind, Text
from fit.document.characters import fold
from fit.document.wording import counted, stands

_SCHEME: Final = re.compile(r"(?:mailto:|tel:|(?:https?|ftp):/*)", re.IGNORECASE)


class Links:
    """Collects addresses in the order in which the document names them, each once."""

    def __init__(self, own: str = "") -> None:
        self._own = own
        """The file name of the document: links to it lead to places in it."""
        self._found: dict[str, Text] = {}

    def add(self, address: Text, shown: str) -> None:
        """Note an address, unless the text shows it anyway or it leads to a place in the same document."""
        chars = "".join(address.chars.split())
        file = chars.partition("#")[0]
        if file in ("", self._own) or _told(chars) == _told("".join(shown.split())):
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


def _told(address: str) -> str:
    """What an address tells: neither how it is reached nor a slash at its end."""
    return _SCHEME.sub("", address, count=1).rstrip("/").casefold()
