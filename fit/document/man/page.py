"""A manual page, or a cell of one of its tables, under construction: what is open where the next line goes."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

from fit.document.block_maker import LINE_BREAK, BlockMaker
from fit.document.blocks import Block
from fit.document.characters import TextBuilder
from fit.document.man.roff_input import Input
from fit.document.man.roff_text import Line, Printer
from fit.document.preformatted import Stop, preformatted
from fit.document.shown_text import read_shown
from fit.document.text.hyphens import Hyphens

_MOST_SPACES: Final = 40
"""Blanks at the end of a line behind which a break is looked for."""


@dataclass(slots=True)
class Page:
    """The state of a page between two lines; the functions that read lines and macros change it."""

    lines: Input
    """What is still to be read."""
    printer: Printer
    hyphens: Hyphens | None = None
    """The judge of line-end hyphens, for lines that a plain text shows as no program; none in a cell, where lines stay."""
    maker: BlockMaker = field(default_factory=BlockMaker)

    pre: TextBuilder | None = None
    """The lines that stay lines, where filling is off."""
    is_code: bool = False
    """Whether they were announced as an example or a display of code."""
    shows_code: bool = False
    """Whether a line of the block being collected looks like code, its tabs as they stand."""

    item_open: bool = False
    hanging: bool = False
    """Whether a hanging paragraph has begun, and no line of it was read: one of an option, whose label is not told."""
    margins: list[tuple[bool, int]] = field(default_factory=list)
    """For each open ``.RS``: whether an item was open, and the level."""
    indents: int = 0
    """The levels by which ``.in`` has set the margin in."""

    waiting: str = ""
    """The macro whose text is the next line: TP, SH or SS."""
    label: TextBuilder = field(default_factory=TextBuilder)
    """What has been printed for it."""

    font: int = 0
    """Marks for the next line alone, from a font macro without arguments."""
    centred: int = 0
    """The lines to come that are centred: each stays a line."""
    set_in: int = 0
    """The cells by which the next line is set in."""
    stops: tuple[Stop, ...] = ()
    """Where the page has set tab stops, their columns."""
    address: Line | None = None
    """The address of the open link."""

    after_key: bool = False
    """Whether the line being collected began with a key and a tab."""
    break_due: bool = False
    """Whether that line ends, unless the next one begins with a tab."""
    goes_on: bool = False
    """Whether the last line asked that the next one follow without a blank."""
    spaced: bool = False
    """Whether room was asked for since the last text."""
    written: int = 0
    """The lines of the paragraph being collected."""

    def finished(self) -> list[Block]:
        """The blocks, at the end of the page."""
        self.close_pre()
        self.end_items()
        self.maker.end_keys()
        return self.maker.blocks

    # Lines

    def break_line(self) -> None:
        """End the line here, in the middle of a paragraph."""
        if self.pre is not None or self.waiting:
            return
        if self.after_key:
            self.break_due = True
        elif not self.begins_line():
            self.maker.break_line()

    def begins_line(self) -> bool:
        """Whether the next text begins a line that the page has asked for, or a paragraph."""
        if self.break_due:
            return True
        text = self.maker.text
        last = text.since(max(0, len(text) - _MOST_SPACES)).rstrip(" \n")
        return not last or last.endswith(LINE_BREAK)

    def space(self) -> None:
        """Room between lines parts paragraphs, and lines that stay lines."""
        if self.waiting:
            return
        if self.pre is not None:
            self.pre.add_own("\n")
        else:
            self.maker.close()
            self.spaced, self.written = True, 0

    # Lines that stay lines

    def keep_lines(self, *, code: bool) -> None:
        """Turn filling off: what follows is a block of lines."""
        self.break_pre()
        self.maker.close()
        if self.pre is None:
            self.pre = TextBuilder()
        self.is_code = code

    def fill_lines(self) -> None:
        """Turn filling on again."""
        self.close_pre()
        self.pre = None

    def break_pre(self) -> None:
        """End the block of lines, if one is open; what follows is another, as long as filling is off."""
        if self.pre is not None:
            self.close_pre()
            self.pre = TextBuilder()

    def close_pre(self) -> None:
        """Make a block of the lines collected; filling stays off where it is."""
        if self.pre is None:
            return
        text = self.pre.build()
        code, self.shows_code = self.is_code or self.shows_code, False
        block = preformatted(text, level=self.maker.level, code=code)
        self.pre = TextBuilder()
        if block is not None:
            shown = read_shown(block, text, self.hyphens) if self.hyphens is not None else [block]
            for each in shown:
                self.maker.add(each)

    # Items and margins

    def indent(self, levels: int) -> None:
        """Let what follows stand deeper, or where it stood before."""
        if self.pre is None and not self.waiting:
            self.maker.close()
        self.indents += levels
        self.maker.level += levels

    def end_item(self) -> None:
        """Come back to the margin of the items around."""
        self.written = 0
        self.hanging = False
        self.break_pre()
        self.indent(-self.indents)
        self.maker.close()
        if self.item_open:
            self.maker.end_item()
            self.item_open = False

    def end_items(self) -> None:
        """Come back to the margin of the page."""
        self.end_item()
        self.margins.clear()
        self.maker.level = 0
        self.indents = 0
