"""A document laid out for a screen: what was read, what the device can print of it, its pages and their proof."""

from __future__ import annotations

from dataclasses import dataclass

from fit.document.blocks import Document
from fit.layout.already import FORM_FEED, as_pages, lay_out_as_pages
from fit.layout.compose import lay_out
from fit.layout.lines import Layout
from fit.layout.proof import Proof, prove_words
from fit.layout.settings import LayoutSettings
from fit.layout.unpaged import as_lines, comes_out_the_same, lay_out_as_lines
from fit.report.device_text import Changes, to_seven_bits
from fit.report.numbers import count


@dataclass(frozen=True, slots=True)
class Reflowed:
    """Everything a report tells of a document laid out."""

    document: Document
    """As it was laid out: with the characters of the device, where it has 7 bits."""
    changes: Changes
    """What was written for characters the device lacks; empty where they were kept."""
    layout: Layout
    settings: LayoutSettings
    proof: Proof

    @property
    def shortfalls(self) -> list[str]:
        """What keeps the result below the bar, a sentence each; empty where it is as it should be."""
        proof = self.proof
        told = (
            (len(proof.lost), "word", "lost"),
            (len(proof.added), "word", "added"),
            (len(proof.out_of_order), "word", "out of order"),
            (self.layout.after.lines_over_width, "line", "wider than the screen"),
            (self.changes.lacking.total(), "character", "not to be written in 7 bits"),
        )
        return [f"{count(number, one)} {what}" for number, one, what in told if number]


def reflow_document(
    document: Document, settings: LayoutSettings, *, seven_bits: bool = True, page_break: str = FORM_FEED
) -> Reflowed:
    """Lay a document out for a screen, with the characters the device has.

    A text that has pages which fit (parted by ``page_break``) stays as it is, and so do the lines of one that was laid
    out for the same screen without page breaks.

    Raises `UsageError` for a language without hyphenation patterns.
    """
    paged = as_pages(document, settings, page_break)
    if paged is not None:
        kept = _in_its_pages(paged, settings, seven_bits=seven_bits)
        if kept is not None:
            return kept
    written, changes = _written(document, settings, seven_bits=seven_bits)
    layout = lay_out(written, settings)
    if not changes.counts and comes_out_the_same(written, layout, settings):
        paged = as_pages(document, settings, page_break, sure=True)
        if paged is not None:
            return _in_its_pages(paged, settings, seven_bits=seven_bits) or _result(
                written, changes, layout, settings
            )
        lines = as_lines(written, settings, paged=bool(page_break))
        if lines is not None:
            return _result(lines, changes, lay_out_as_lines(lines, written, settings), settings)
    return _result(written, changes, layout, settings)


def _in_its_pages(paged: Document, settings: LayoutSettings, *, seven_bits: bool) -> Reflowed | None:
    """A text in the pages that it has; None where they fit no longer in the characters of the device."""
    written, changes = _written(paged, settings, seven_bits=seven_bits)
    layout = lay_out_as_pages(written, settings)
    return None if layout is None else _result(written, changes, layout, settings)


def _result(document: Document, changes: Changes, layout: Layout, settings: LayoutSettings) -> Reflowed:
    return Reflowed(document, changes, layout, settings, prove_words(document, layout))


def _written(document: Document, settings: LayoutSettings, *, seven_bits: bool) -> tuple[Document, Changes]:
    if not seven_bits:
        return document, Changes()
    device = to_seven_bits(document, settings.language)
    return device.document, device.changes
