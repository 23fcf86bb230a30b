"""The proof that every word of the document came through the layout, in order."""

from __future__ import annotations

from dataclasses import dataclass

from fit.document.blocks import Document
from fit.layout.lines import Layout


@dataclass(frozen=True, slots=True)
class Proof:
    """What the comparison of the document's words with the layout's found."""

    words: int
    """Words of the document, furniture left out."""
    lost: tuple[str, ...] = ()
    added: tuple[str, ...] = ()
    out_of_order: tuple[str, ...] = ()

    @property
    def holds(self) -> bool:
        """Whether nothing was lost, added or out of order."""
        return not (self.lost or self.added or self.out_of_order)


def prove_words(document: Document, layout: Layout) -> Proof:
    """Compare the words of the blocks with the words of the lines, un-hyphenated."""
    raise NotImplementedError
