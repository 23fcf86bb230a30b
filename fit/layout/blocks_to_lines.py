"""Blocks to lines: each kind in its way, blank lines in between."""

from __future__ import annotations

import re
from array import array
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import chain

from fit.document.blocks import Block, Document, Kind
from fit.hyphenation import break_points
from fit.layout.breaks import SET_OFF, telling_marks
from fit.layout.costs import Rules
from fit.layout.flowing import Setter, bind
from fit.layout.kept import keep_lines, stanzas
from fit.layout.lines import Decision, Line, LineFlag
from fit.layout.lists import depth_of, find_lists, find_records, hang_of, set_item
from fit.layout.nests import find_terms
from fit.layout.pictures import set_picture
from fit.layout.settings import LayoutSettings
from fit.layout.tables import is_whole, set_table
from fit.lexicon import is_word

_LETTERS = re.compile(r"[^\W\d_]{5,}")
CODE_INDENT = 3
_UNHYPHENATED = frozenset((Kind.HEADING, Kind.PREFORMATTED))
"""Nobody reads a line that stays a line as running text: a hyphen at its end would be taken for one of its own."""
BLANK_LINE = Line("", array("q"), -1, None, LineFlag.BLANK)


@dataclass(slots=True)
class Setting:
    """What setting a document gave."""

    lines: list[Line] = field(default_factory=list)
    headers: dict[int, list[Line]] = field(default_factory=dict)
    """By block the lines of a table to repeat on the pages it goes on to."""
    decisions: list[Decision] = field(default_factory=list)
    stanzas: dict[int, int] = field(default_factory=dict)
    """By block the cells of the widest line of the stanzas that it stands together with."""
    code_indent: int = 0
    """Cells by which program texts are indented: they stood out by markup, and must stand out without it."""


def set_blocks(document: Document, settings: LayoutSettings) -> Setting:
    """All blocks but the furniture, in order."""
    language = settings.language if settings.hyphenate and settings.max_hyphens else ""
    break_points("", settings.language)  # an unknown language is refused even where no word needs it
    rules = Rules(language, _names(document), settings.mark)
    marked_up = document.format not in ("text", "wordproc")
    result = Setting(code_indent=min(CODE_INDENT, settings.width // 8) if marked_up else 0)
    result.stanzas = stanzas(document.blocks, settings.width)
    indents = _Indents(settings.width, meant=marked_up)
    lists = find_lists(document.blocks)
    hangs: dict[int, int] = {}
    begins, bound = find_records(document.blocks, lists)
    bound |= find_terms(document.blocks)
    before: Block | None = None
    for number, block in enumerate(document.blocks):
        if block.kind is Kind.FURNITURE:
            continue
        if number in lists:
            room = settings.width - indents.of(depth_of(block))
            hangs |= dict.fromkeys(lists[number], hang_of(document.blocks, lists[number], room))
        whole = replace(rules, language="") if block.kind in _UNHYPHENATED else rules
        setter = Setter(settings, whole, number, block.kind, block.level if block.kind is Kind.HEADING else 0)
        lines = _set_block(block, setter, indents, hangs.get(number, 0), result)
        if lines and before is not None and not (_is_tight(before, block) and number not in begins):
            result.lines.append(BLANK_LINE)
        result.lines += bind(lines) if number in bound else lines
        before = block if lines else before
    return result


def _set_block(block: Block, setter: Setter, indents: _Indents, hang: int, result: Setting) -> list[Line]:
    """The lines of one block; decisions and table headers are noted in ``result``."""
    if block.kind is Kind.HEADING:
        indents.forget(0)
        return setter.flow(block.text)
    depth = depth_of(block)
    if block.apart:
        indents.forget(depth - 1)
    indent = indents.of(depth)
    indents.forget(depth)
    if block.kind in (Kind.ITEM, Kind.NOTE):
        if hang:
            indents.begin(depth + 1, indent + hang)
        return set_item(block, setter, indent, hang)
    if block.kind is Kind.PARAGRAPH:
        lines = setter.flow(block.text, indent)
        alone = len(lines) == 1 and not indents.belongs(depth)
        return setter.flow(block.text) if alone else lines  # one line shows no margin that a reader could see
    if block.kind is Kind.TABLE and is_whole(block):
        table = set_table(block, setter, indent)
        result.headers[setter.block] = table.header
        _note(result, setter, table.what)
        return table.lines
    if block.kind is Kind.PREFORMATTED:
        indent += result.code_indent * block.code
        kept = keep_lines(block, setter, indent, result.stanzas.get(setter.block, 0))
        longer = len(kept) > len(block.lines)
        _note(result, setter, "lines longer than the screen go on in the next" if longer else "")
        return kept
    picture = set_picture(block, setter, indent)
    _note(result, setter, f"cut into {picture.panels} panels" if picture.panels > 1 else "")
    return picture.lines


def _note(result: Setting, setter: Setter, what: str) -> None:
    if what:
        result.decisions.append(Decision(setter.block, setter.kind, what))


def _is_tight(before: Block, after: Block) -> bool:
    """Whether no blank line parts two blocks: items of a list, and notes, follow each other, and a label what it is of.

    So does a title the mark above it, which has its words behind a sign.
    """
    if before.kind is after.kind is Kind.HEADING:
        mark = before.text.chars.removesuffix(after.text.chars)
        return mark != before.text.chars and mark.strip() != "" and not any(map(str.isalnum, mark))
    if before.kind is Kind.ITEM and not before.text.chars and after.kind is not Kind.HEADING:
        return not after.apart and (after.kind is Kind.ITEM or after.level > before.level)
    return before.kind == after.kind and after.kind in (Kind.ITEM, Kind.NOTE)


def _names(document: Document) -> frozenset[str]:
    """The words of program texts and keys, and those set off, that are no English: they are names elsewhere too."""
    found = {word.lower() for block in document.blocks for word in _words_of_names(block)}
    return frozenset(word for word in found if not is_word(word))


def _words_of_names(block: Block) -> Iterator[str]:
    """The words of a block that may be names: those of a program text or key, and those that marks set off."""
    for text in (*(block.lines if block.code else ()), block.label):
        if text.chars:
            yield from _LETTERS.findall(text.chars)
    for text in (block.text, *chain.from_iterable(block.rows)):
        marks = telling_marks(text.marks)
        if any(marks):
            yield from (word[0] for word in _LETTERS.finditer(text.chars) if marks[word.start()] & SET_OFF)


class _Indents:
    """The cells from the left at which each depth begins: that of the text of the item it belongs to."""

    def __init__(self, width: int, *, meant: bool) -> None:
        self._meant = meant
        self._step = 3 if width >= 24 else 1 if width >= 12 else 0
        self._most = width // 2
        self._by_level: dict[int, int] = {0: 0}

    def of(self, level: int) -> int:
        """The indentation of a depth; three cells a level where no item says otherwise, and never over half a line."""
        known = max(depth for depth in self._by_level if depth <= level)
        return min(self._by_level[known] + (level - known) * self._step, self._most)

    def belongs(self, level: int) -> bool:
        """Whether a depth is meant for more than the eye: by markup, or as that of an item's text."""
        return level > 0 and (self._meant or level in self._by_level)

    def begin(self, level: int, cells: int) -> None:
        """Let a depth begin at ``cells``."""
        self._by_level[level] = cells

    def forget(self, level: int) -> None:
        """Forget all that is deeper than ``level``."""
        self._by_level = {depth: cells for depth, cells in self._by_level.items() if depth <= level}
