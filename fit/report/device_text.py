"""A document in the 7 bits that the machine can print, before it is laid out. The only door to anyascii.

Widths change on the way, so the layout must come after. Every character keeps its place in the document;
one that nothing stands for is written `LACKING`, counted and listed, never dropped.
"""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from anyascii import anyascii

from fit.document.blocks import Block, Document, Kind, Mark, Text
from fit.document.characters import TextBuilder, cut, hold_together
from fit.report.device_characters import BY_LANGUAGE, NARROW, OWN, RELATIONS, own_form
from fit.width import char_cells

LACKING: Final = "?"

_NO_BREAK_SPACES: Final = "\u00a0\u202f\u2007"
_KEPT: Final = frozenset("\u00ad\u200b\u00a0")
"""Say where a line may or may not end: for the layout, which writes none of them."""
_TO_WRITE: Final = re.compile("[^ -~\u00ad\u200b\n]")
"""Those of flowing text for which something else is written."""
_AS_IT_STANDS: Final = re.compile("[ -~]+")
_INVISIBLE: Final = frozenset({"Cf", "Mn", "Me"})
"""Categories of characters that take no cell of their own: joiners, marks of direction, accents that combine."""


@dataclass(slots=True)
class Changes:
    """What was written for what."""

    written: dict[str, str] = field(default_factory=dict)
    """For each character that the device lacks, what stands for it where no neighbour matters."""
    counts: Counter[str] = field(default_factory=Counter)
    """How often each of them occurs."""
    lacking: Counter[str] = field(default_factory=Counter)
    """Those that nothing stands for, with how often each occurs."""
    first_lacking: dict[str, int] = field(default_factory=dict)
    """For each of those the offset in the document at which it first occurs."""


@dataclass(frozen=True, slots=True)
class DeviceDocument:
    """A document that the device can print."""

    document: Document
    changes: Changes


def to_seven_bits(document: Document, language: str = "en_US") -> DeviceDocument:
    """Write a document with the characters of ASCII alone; ``language`` decides the spelling of some letters.

    What furniture holds is not written, and stays as it is.
    """
    writer = _Writer(BY_LANGUAGE.get(language[:2].lower(), {}))
    blocks = tuple(writer.block(block) for block in document.blocks)
    return DeviceDocument(replace(document, blocks=blocks), writer.changes)


class _Writer:
    def __init__(self, spelling: Mapping[str, str]) -> None:
        self._spelling = spelling
        self._known: dict[str, str | None] = {}
        self.changes = Changes()

    def block(self, block: Block) -> Block:
        if block.kind is Kind.FURNITURE:
            return block
        keep_columns = block.kind is Kind.PICTURE
        return replace(
            block,
            text=self._flowing(block.text),
            label=self._flowing(block.label),
            lines=tuple(self._line(line, narrow=keep_columns) for line in block.lines),
            rows=tuple(tuple(map(self._flowing, row)) for row in block.rows),
        )

    def _flowing(self, text: Text) -> Text:
        """Text that the layout will break."""
        if text.chars.isascii() and text.chars.isprintable():
            return text
        builder = TextBuilder()
        done = 0
        for match in _TO_WRITE.finditer(text.chars):
            index = match.start()
            builder.add_text(cut(text, done, index))
            form = "\u00a0" if match[0] in _NO_BREAK_SPACES else self._form(text, index)
            self._put(builder, form, text.sources[index], text.marks[index])
            done = index + 1
        builder.add_text(cut(text, done, len(text)))
        return hold_together(builder.build())

    def _line(self, line: Text, *, narrow: bool) -> Text:
        """A line whose columns matter: what gets longer takes its room from the blanks behind it."""
        if line.chars.isascii() and line.chars.isprintable():
            return line
        builder = TextBuilder()
        debt = 0
        index = 0
        while index < len(line.chars):
            if debt == 0:
                plain = _AS_IT_STANDS.match(line.chars, index)
                if plain is not None:
                    builder.add_text(cut(line, index, plain.end()))
                    index = plain.end()
                    continue
            char, source, mark = line.chars[index], line.sources[index], line.marks[index]
            index += 1
            if char in _NO_BREAK_SPACES or char == " ":
                if debt > 0 and line.chars[index : index + 1] in (" ", ""):
                    debt -= 1
                    continue
                builder.add(" ", (source,), mark)
            elif " " < char <= "~":
                builder.add(char, (source,), mark)
            elif char in _KEPT:
                continue
            else:
                spared = char in RELATIONS and line.chars[index : index + 2] == "  "
                tight = narrow and char in NARROW and not spared
                form = NARROW[char] if tight else self._form(line, index - 1)
                self._put(builder, form, source, mark)
                debt += len(form) - char_cells(char)
                if debt < 0:
                    builder.add_own(" " * -debt)
                    debt = 0
        return builder.build()

    @staticmethod
    def _put(builder: TextBuilder, form: str, source: int, mark: int) -> None:
        """Add what stands for one character; no line may end inside it."""
        if len(form) > 1:
            builder.add(form[:-1], (source,) * (len(form) - 1), mark | Mark.NO_BREAK)
        builder.add(form[-1:], (source,) * len(form[-1:]), mark)

    def _form(self, text: Text, index: int) -> str:
        """What stands for the character at ``index``; noted."""
        char = text.chars[index]
        form = self._spelling.get(char)
        if form is None:
            form = own_form(char, text.chars[index - 1 : index], text.chars[index + 1 : index + 2])
        if form is None and unicodedata.category(char) in _INVISIBLE:
            form = ""
        if form is None and char not in self._known:
            self._known[char] = _general_form(char)
        if form is None:
            form = self._known[char]
        if form is None:
            self.changes.lacking[char] += 1
            self.changes.first_lacking.setdefault(char, text.sources[index])
            return LACKING
        self._note(char, form)
        return form

    def _note(self, char: str, form: str) -> None:
        if char not in self.changes.written:
            self.changes.written[char] = (
                form if char in self._spelling else OWN.get(char) or own_form(char, "", "") or form
            )
        self.changes.counts[char] += 1


def _general_form(char: str) -> str | None:
    """What stands for a character by its sound or its shape, None where nothing does."""
    form = anyascii(char)
    if form and form.isascii() and form.isprintable() and form.strip():
        return form
    # A letter with an accent that the table lacks is still its letter.
    base = unicodedata.normalize("NFKD", char)[:1]
    return base if " " < base <= "~" else None
