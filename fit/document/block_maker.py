"""Blocks under construction, for the readers of marked-up formats: text runs in, blocks out."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import groupby
from typing import Final

from fit.document.blocks import Block, Kind, Mark, Text
from fit.document.characters import TextBuilder, cut, fold, strip_start
from fit.document.preformatted import is_picture
from fit.document.text.signs.measure import prose

LINE_BREAK: Final = "\u2028"
"""Unicode's line separator: a line break that the document asks for inside flowing text."""

LONGEST_VERSE: Final = 60
"""Characters. Text broken by hand into lines no longer than this is verse or an address: its lines stay lines."""


_BULLET: Final = re.compile(r"[\u2022\u2023\u2043\u25aa\u25ab\u25cf\u25e6] +(?=\S)")
_STATEMENT: Final = re.compile(r"[{}\\]$|^ *(?:/\*|\*/|//)|[=()<>$\[\]].*;$|^ *[$%#>] \S")
_TYPED_BULLET: Final = re.compile(r" *[-*\u2013\u2022\u2023\u2043\u25aa\u25ab\u25cf\u25e6] +(?=\S)")


class BlockMaker:
    """Collects flowing text and closes it into headings, paragraphs and items."""

    def __init__(self) -> None:
        self.blocks: list[Block] = []
        self.level = 0
        self.mark = Mark.NONE
        self.text = TextBuilder()
        self.heading = 0
        """The level of the heading being collected, 0 where it is no heading."""
        self._quotations: list[int] = []
        """For each open quotation, the blocks before it."""
        self._label: Text | None = None
        self._label_level = 0
        self._is_key = False
        """Whether the label is a word that the text explains, no bullet or number."""

    @property
    def labelled(self) -> bool:
        """Whether a label waits for its text."""
        return self._label is not None

    def start_item(self, label: Text) -> None:
        """Close what stands before; the next text belongs to an item of this label, its content a level deeper."""
        self.close()
        self._emit_bare_label(holds_list=self.level > self._label_level)
        self._is_key = False
        self._label = label
        self._label_level = self.level
        self.level += 1

    def end_item(self, *, bare: bool = False) -> None:
        """Close the item and come back to its level; an item without text keeps its label, one that is ``bare`` any."""
        self.close()
        self._emit_bare_label(before_block=bare)
        self.level -= 1

    def start_quotation(self) -> None:
        """Close what stands before; what follows stands a level deeper, and belongs to no list that has ended."""
        self.close()
        self._quotations.append(len(self.blocks))
        self.level += 1

    def end_quotation(self) -> None:
        """Close the quotation and come back to its level."""
        self.close()
        self.level -= 1
        begin = self._quotations.pop()
        if begin < len(self.blocks) and self.blocks[begin].level > self.level:
            self.blocks[begin] = replace(self.blocks[begin], apart=True)

    def close_as_label(self) -> None:
        """Make the flowing text collected so far the hanging label of what follows; each of its lines is one."""
        text = self.text.build()
        self.text = TextBuilder()
        for group in _groups(text):
            for line in group:
                self._emit_bare_label(holds_list=self.level > self._label_level)
                self.hang(line)

    def hang(self, key: Text) -> None:
        """Let ``key`` be the hanging label, at the level reached, of what follows a level deeper."""
        self._label, self._label_level, self._is_key = key, self.level, True

    def break_line(self, source: int = -1) -> None:
        """End the line here, in the middle of flowing text."""
        self.text.add(LINE_BREAK, (source,))

    def add(self, block: Block) -> None:
        """Append a finished block after what was collected; a paragraph is the text of a bullet or number that waits."""
        self.close()
        if (
            self._label is not None
            and not self._is_key
            and block == Block(Kind.PARAGRAPH, block.text, level=self.level)
        ):
            self.blocks.append(Block(Kind.ITEM, block.text, self._label, self._label_level))
            self._label = None
            return
        self._emit_bare_label(inside=True, before_block=True)
        self.blocks.append(block)

    def close(self) -> None:
        """End the flowing text collected so far."""
        if self.text.blank:
            if len(self.text):
                self.text = TextBuilder()
            return
        text, self.text = self.text.build(), TextBuilder()
        for group in _groups(text):
            self._close_group(group)

    def end_keys(self) -> None:
        """Close the list of keys, or the document: a key that nothing explains stands alone."""
        self.close()
        self._emit_bare_label()

    def _close_group(self, lines: list[Text]) -> None:
        if self.heading and (self._label is None or self._is_key):
            self._emit_bare_label()
            self.blocks.append(Block(Kind.HEADING, joined(lines), level=self.heading))
            return
        if self._label is not None:
            own = 1 if _are_set_off(lines[1:]) else len(lines)
            text = strip_start(joined(lines[:own], "\n"))
            self.blocks.append(Block(Kind.ITEM, text, self._label, self._label_level))
            self._label = None
            lines = lines[own:]
        if len(lines) > 2 and _indented(lines[1:]) and _is_sentence(lines[0].chars):
            self.blocks.append(paragraph(lines[0], self.level))  # it leads to the lines that are set off
            lines = lines[1:]
        typed = [_TYPED_BULLET.match(line.chars) is not None for line in lines]
        if len(lines) > 1 and _is_program(lines):
            self._program(lines)
            return
        if len(lines) > 1 and _stay(lines) and not all(typed):
            kind = Kind.PICTURE if is_picture([line.chars for line in lines]) else Kind.PREFORMATTED
            self.blocks.append(Block(kind, level=self.level, lines=tuple(lines)))
            return
        listed = len(lines) > 1 and all(typed)
        parts: list[list[Text]] = []
        for line in lines:
            # One line shows no margin: running text that is set in begins a paragraph, as one with a bullet an item.
            if not parts or listed or line.chars.startswith(" ") or _BULLET.match(line.chars):
                parts.append([])
            parts[-1].append(strip_start(line))
        self.blocks += (paragraph(joined(part, "\n"), self.level, listed=listed) for part in parts)

    def _program(self, lines: list[Text]) -> None:
        """Lines of a program, and the sentences between them that say what they do."""
        for is_sentence, run in groupby(lines, lambda line: _explains(line.chars)):
            if is_sentence:
                self.blocks += (paragraph(line, self.level) for line in run)
            else:
                self.blocks.append(Block(Kind.PREFORMATTED, level=self.level, lines=tuple(run), code=True))

    def _emit_bare_label(
        self, *, inside: bool = False, before_block: bool = False, holds_list: bool = False
    ) -> None:
        """A label without text of its own; a key before other blocks (``inside``) leads them as a paragraph.

        A bullet that the reader put in itself is worth a line only before a block, a number also over a list.
        """
        if self._label is None:
            return
        own = any(source >= 0 for source in self._label.sources)
        counts = holds_list and any(map(str.isalnum, self._label.chars))
        if inside and self._is_key:
            self.blocks.append(Block(Kind.PARAGRAPH, self._label, level=self._label_level))
        elif own or before_block or counts:
            self.blocks.append(Block(Kind.ITEM, Text(), self._label, self._label_level))
        self._label = None


def _are_set_off(lines: list[Text]) -> bool:
    """Whether the lines below the first of an item are more than that goes on: a list, a program, lines set in."""
    if not lines:
        return False
    if all(_TYPED_BULLET.match(line.chars) for line in lines):
        return True
    if any(line.chars.startswith(" ") or _BULLET.match(line.chars) for line in lines):
        return True
    return len(lines) > 1 and (_is_program(lines) or is_picture([line.chars for line in lines]))


def _stay(lines: list[Text]) -> bool:
    """Whether lines broken by hand are short enough for verse, no sentences each, or set off by their indentation."""
    if max(map(len, lines)) <= LONGEST_VERSE:
        return not all(line.chars.endswith(".") and _is_sentence(line.chars) for line in lines)
    return _indented(lines[1:]) and (len(lines) > 2 or not prose(lines[0].chars))


def _indented(lines: list[Text]) -> bool:
    return all(line.chars.startswith(" ") for line in lines)


def _is_program(lines: list[Text]) -> bool:
    """Whether at least half of the lines are those of a program or typed behind a prompt, or are set as such."""
    if is_picture([line.chars for line in lines]):
        return False
    told = sum(
        _STATEMENT.search(line.chars) is not None or all(mark & Mark.CODE for mark in line.marks)
        for line in lines
    )
    return 2 * told >= len(lines)


def _explains(chars: str) -> bool:
    """Whether a line among those of a program is running text."""
    long = len(chars) > LONGEST_VERSE and not _STATEMENT.search(chars) and prose(chars)
    return chars[:1].isalpha() and (long or _is_sentence(chars))


def _is_sentence(chars: str) -> bool:
    return not chars.startswith(" ") and chars.endswith((".", ":")) and prose(chars)


def paragraph(text: Text, level: int, *, listed: bool = False) -> Block:
    """A paragraph, or the item of a list where it begins with a bullet.

    A dash or an asterisk is one only in company (``listed``).
    """
    bullet = (_TYPED_BULLET if listed else _BULLET).match(text.chars)
    if bullet is None:
        return Block(Kind.PARAGRAPH, text, level=level)
    return Block(Kind.ITEM, cut(text, bullet.end(), len(text)), cut(text, 0, 1), level)


def at_level(block: Block, level: int) -> Block:
    """A block read apart from the document, where it stands so deep in it."""
    return block if block.kind is Kind.HEADING else replace(block, level=block.level + level)


def joined(texts: list[Text], between: str = " ") -> Text:
    """The texts with a blank, or whatever else of ours, between them."""
    builder = TextBuilder()
    for index, text in enumerate(texts):
        if index:
            builder.add_own(between)
        builder.add_text(text)
    return builder.build()


def cell_text(text: Text) -> Text:
    """The text of a cell of a table: its lines as `Block.rows` has them; a label of ours stands before the line it is of."""
    builder = TextBuilder()
    parts_words = False
    for group in _groups(text):
        for line in group:
            if len(builder):
                builder.add_own(" " if parts_words else "\n")
            builder.add_text(line)
            parts_words = all(source < 0 for source in line.sources)
    return builder.build()


def _groups(text: Text) -> list[list[Text]]:
    """The lines of flowing text, grouped where an empty line parts them."""
    if LINE_BREAK not in text.chars:
        line = fold(text)
        return [[line]] if len(line) else []
    groups: list[list[Text]] = [[]]
    begin = 0
    breaks = [found.start() for found in re.finditer(LINE_BREAK, text.chars)]
    for index in (*breaks, len(text)):
        line = fold(cut(text, begin, index))
        begin = index + 1
        if len(line):
            groups[-1].append(line)
        elif groups[-1]:
            groups.append([])
    return [group for group in groups if group]
