"""Lines of text onto a page: into the label, the paragraph or the lines that stay; keys and columns by tabs and blanks."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from fit.document.blocks import Mark, Text
from fit.document.characters import NO_BREAK_SPACE, TextBuilder, cut
from fit.document.man.page import Page
from fit.document.man.roff_text import Line, own_line
from fit.document.preformatted import untabbed

ENDS: Final = r"(?<!\.\.)[.:;!?,]$"
"""The end of a sentence, or of a part of it."""
SENTENCE: Final = re.compile(rf"{ENDS}| - ")
"""What a key does not have: the end of a sentence or of a part of it, and what the key means."""
_CODE: Final = re.compile(r"[{};=<>$#\\/]|--|\(\)| \| |(?:^| )-\w|^ {2,}|^\S+[:>%] ", re.MULTILINE)
_LEFT_OF_MARGIN: Final = re.compile(r"\\h'-[0-9.]+[a-z]?'((?:[^\\]|\\[^hc])+)\\h'[+]?[0-9.]+[a-z]?'")
"""A step to the left, a label, and a step back to the right."""
_KEY: Final = re.compile(r"(\S(?:[^\t]{0,38}\S)?) *\t[\t ]*(?=[^\t]+\Z)")
"""A key that one tab parts from what it means."""
_APART: Final = re.compile(r" {2,}| (?=[-\u2013\u2014]{1,2} )")
"""What parts an option from what it does in one line."""
_OF_OPTION: Final = re.compile(r"(?:-\S+|[A-Z][A-Z0-9_-]+,?|[B-HJ-Z],?|[<[]\S*[]>],?|\|)(?!\S)|\S+, +--?\w")
"""A word of options and their values: any word is one between an option and the next."""
_BLANKS: Final = re.compile(r"^ +|(?<![.:;!? ]) {2,}")
"""Blanks of a line that stand for columns: those at its beginning, and more than one of them between words."""


def text_line(page: Page, line: Line) -> None:
    """Take a line that calls no macro."""
    if not line.chars.strip():
        page.space()
        return
    set_off = _begins_set_off(page, line)
    if page.pre is None and not page.waiting and (found := _LEFT_OF_MARGIN.match(line.chars)) is not None:
        _hang_label(page, line.part(found.start(1), found.end(1)))
        line = line.part(found.end())
    output(page, [(line, page.font)], set_off=set_off)


def output(page: Page, parts: list[tuple[Line, int]], *, set_off: bool = False) -> None:
    """Print the parts of one line, each with its marks, and put it where text goes now.

    The columns of a line that is set off stay.
    """
    out = TextBuilder()
    goes_on = False
    mark, page.font = page.font, 0
    for part, font in parts:
        goes_on = page.printer.print(part, out, font | mark)
    if page.waiting:
        page.label.add_text(out.build())
        if not goes_on:
            _end_label(page)
        return
    page.spaced = False
    page.written += not page.goes_on
    page.goes_on = goes_on
    if page.pre is None:
        text = _option(page, out.build()) if page.hanging else out.build()
        text = _columns(page, text, set_off=set_off)
        target = page.maker.text
    else:
        target, text = page.pre, out.build()
        page.shows_code |= bool(_CODE.search(text.chars)) or any(mark & Mark.CODE for mark in set(text.marks))
        text = untabbed(text, page.stops) if page.stops else text
    if page.set_in and page.pre is None:
        target.add_own(NO_BREAK_SPACE * page.set_in)
    page.set_in = 0
    target.add_text(text)
    if not goes_on:
        target.add_own("\n")
    if page.centred and not goes_on:
        page.centred -= 1
        page.break_line()


def spaced(arguments: list[Line], mark: int) -> list[tuple[Line, int]]:
    """The arguments with blanks between them, all in one font."""
    parts: list[tuple[Line, int]] = []
    for argument in arguments:
        if parts:
            parts.append((own_line(" "), mark))
        parts.append((argument, mark))
    return parts


def _begins_set_off(page: Page, line: Line) -> bool:
    """Whether a filled line is set off by blanks: it begins a new line then, and its columns stay.

    A tab alone begins none.
    """
    if line.chars[0] not in " \t" or page.pre is not None or page.waiting or page.goes_on:
        return False
    if line.chars[0] == " ":
        page.break_line()
    return page.begins_line()


def _hang_label(page: Page, label: Line) -> None:
    """What is printed left of the margin is the label of what follows at the margin."""
    page.end_item()
    builder = TextBuilder()
    page.printer.print(label, builder)
    page.maker.level = max(0, page.maker.level - 1)
    page.maker.start_item(builder.folded())
    page.item_open = True


def _end_label(page: Page) -> None:
    """The line that a macro waited for is complete."""
    waiting, page.waiting = page.waiting, ""
    text, page.label = page.label.folded(), TextBuilder()
    page.written = 0
    if waiting == "TP":
        page.maker.start_item(text)
        page.item_open = True
    elif len(text):
        page.maker.heading = 1 if waiting == "SH" else 2
        page.maker.text.add_text(text)
        page.maker.close()
        page.maker.heading = 0


def _option(page: Page, text: Text) -> Text:
    """The first line of a hanging paragraph, without the options in bold that it begins with: they label what they do."""
    page.hanging = False
    if not text.chars.startswith("-") or not text.marks[0] & Mark.BOLD:
        return text
    parted = _APART.search(text.chars)
    end = parted.start() if parted is not None else 0
    for word in re.finditer(r"\S+", text.chars) if parted is None else ():
        italic = all(mark & Mark.UNDERLINE for mark in text.marks[word.start() : word.end()])
        if not italic and not _OF_OPTION.match(text.chars, word.start()):
            break
        end = word.end()
    builder = TextBuilder()
    builder.add_text(cut(text, 0, end))
    page.maker.start_item(builder.folded())
    page.item_open = True
    return cut(text, end, len(text))


def _columns(page: Page, text: Text, *, set_off: bool) -> Text:
    """A filled line whose tabs stand for columns: what stands before the one tab is a key, else its columns stay."""
    if page.break_due and text.chars.startswith("\t"):
        page.break_due = False  # the line before had a key, whose meaning goes on here
        return text
    if page.break_due:
        page.break_due = False
        page.maker.close()
    if not page.begins_line():
        return text
    begins_item = page.maker.labelled and page.maker.text.blank
    tabbed = "\t" in text.chars.strip("\t \n") and not begins_item
    key = _KEY.match(text.chars) if tabbed and not set_off else None
    page.after_key = key is not None and not SENTENCE.search(key[1])
    if key is not None and page.after_key:
        page.maker.close()
        page.maker.text.add_text(cut(text, 0, key.end(1)))
        page.maker.close_as_label()
        return cut(text, key.end(), len(text))
    return _held(untabbed(text, page.stops)) if set_off or tabbed else text


def _held(text: Text) -> Text:
    """The text with no-break spaces for the blanks that stand for columns."""
    return replace(text, chars=_BLANKS.sub(lambda found: NO_BREAK_SPACE * len(found[0]), text.chars))
