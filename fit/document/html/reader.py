"""HTML to blocks.

What a page hides from readers (scripts, styles, the head) is no text of the document. Everything else
comes through in the order of the tree. Tables that only place things on the page come apart into what
they hold; see `fit.document.html.table`.
"""

from __future__ import annotations

import re
from pathlib import PurePath
from typing import Final, NamedTuple

from fit.document.block_maker import LINE_BREAK, BlockMaker, at_level
from fit.document.blocks import Block, Document, Kind, Mark, Text
from fit.document.characters import TextBuilder
from fit.document.html.lists import Lists
from fit.document.html.source import CLOSING, OPENING, PLACE, MarkedSource, decoded_places, mark_source
from fit.document.html.table import TableMaker
from fit.document.html.tree import (
    BLOCKS,
    CELLS,
    MAY_HIDE,
    NOT_SHOWN,
    PLACED,
    PRE,
    Node,
    Tree,
    Visit,
    hides,
    is_first,
    is_labelled,
    is_later,
    is_permalink,
)
from fit.document.links import Links
from fit.document.preformatted import held, preformatted
from fit.document.wording import counted
from fit.document.wrapped_text import read_wrapped

_HIDDEN: Final = frozenset(["head", "script", "style", "title", "template", "iframe", "noembed", "noframes"])
WHOLE: Final = 0.6
"""The share of a page's text that makes preformatted lines of prose its body, and no example in it."""
_MARKS: Final = {
    **dict.fromkeys(("b", "strong", "th", "dt"), Mark.BOLD),
    **dict.fromkeys(("i", "em", "cite", "var", "u", "dfn", "ins"), Mark.UNDERLINE),
    **dict.fromkeys(("code", "kbd", "samp", "tt"), Mark.CODE),
    "nobr": Mark.NO_BREAK,
}
_THROUGH: Final = frozenset(
    ["prev", "previous", "next", "up", "home", "start", "first", "last", "contents", "index"]
)
"""Relations of links that lead through the pages of a set: no address for a reader."""
_RULE: Final = "---"
_TICKED: Final = frozenset(("checkbox", "radio"))
_EMPTY: Final = _TICKED | {"hidden", "password", "file", "image", "color", "range"}
"""Fields that show no words."""
ZERO_WIDTH_SPACE: Final = "\u200b"
"""Where a word may be broken without a hyphen."""
_VALUES: Final = {
    name: re.compile(rf"(?<![\w-]){name}\s*=\s*[\"']?", re.IGNORECASE) for name in ("href", "alt", "value")
}


def read_html(source: str, name: str, encoding: str) -> Document:
    """Read a page. Never raises: the parser makes a tree of anything."""
    links = Links(PurePath(name).name)
    page = read_fragment(without_marks(source), 0, len(source), links)
    remarks = (*links.remarks(), *page.remarks, *picture_remarks(page.pictures))
    return Document(source, (*page.blocks, *links.notes()), "html", encoding, name, remarks)


class Fragment(NamedTuple):
    """What a piece of HTML holds."""

    blocks: list[Block]
    remarks: list[str]
    pictures: int


def read_fragment(source: str, start: int, end: int, links: Links) -> Fragment:
    """Read the HTML in ``source[start:end]``, offsets counted in ``source``; addresses go to ``links``.

    The source must have gone through `without_marks`.
    """
    walk = _Walk(source, mark_source(source, start, end), links, len(source) - (end - start))
    walk.run()
    return Fragment(walk.finished(), walk.remarks(), walk.pictures)


def without_marks(source: str) -> str:
    """The source, as long as it was, without the noncharacters that are used to mark it."""
    return source.replace(OPENING, "\ufffd").replace(CLOSING, "\ufffd")


def picture_remarks(pictures: int) -> list[str]:
    """What becomes of pictures."""
    if not pictures:
        return []
    return [f"{counted(pictures, 'picture')} cannot be shown; a text given instead stands in its place"]


class _Part(NamedTuple):
    """The text of a preformatted block without code in it."""

    at: int
    """Where the block stands among the blocks."""
    text: Text
    level: int


def _bodies(parts: list[_Part], blocks: list[Block]) -> list[list[_Part]]:
    """The parts in groups in which nothing but headings stands between one and the next."""
    groups: list[list[_Part]] = []
    for part in parts:
        between = blocks[groups[-1][-1].at + 1 : part.at] if groups else ()
        if not groups or any(block.kind is not Kind.HEADING for block in between):
            groups.append([])
        groups[-1].append(part)
    return groups


class _Walk:
    """One walk through the tree, without recursion: pages nest as deep as they like."""

    def __init__(self, source: str, marked: MarkedSource, links: Links, outside: int) -> None:
        self._source = source
        self._hides = MAY_HIDE.search(marked.html) is not None
        self._length = marked.characters + outside
        """Characters of the document, those around this piece of it counted in."""
        self._marked = marked
        self._tree = Tree(marked.html)
        self._maker = BlockMaker()
        self._lists = Lists()
        self._links = links
        self._tables: list[TableMaker | None] = []
        """The open tables, innermost last; None for one that comes apart, or is text of another's cell."""
        self._kept: TableMaker | None = None
        self._keyed: list[bool] = []
        """For each open table whether each row is a key and what it means, in blocks."""
        self._in_key = False
        self._headed = 0
        """The blocks before the last heading."""
        self._marks: list[int] = []
        self._open_links: list[tuple[Text, int]] = []
        self._pre: TextBuilder | None = None
        self._kept_lines: list[_Part] = []
        self._shown = self._hidden = self._handles = 0
        self.pictures = 0
        self._place = 0

    def run(self) -> None:
        root = self._tree.root
        if root is None:
            return
        stack: list[Visit] = [(root, False)]
        while stack:
            node, left = stack.pop()
            if left:
                self._leave(node)
                continue
            if node.next is not None and node is not root:
                stack.append((node.next, False))
            if node.is_text_node:
                self._text(node.text_content or "")
            elif node.is_element_node and node.tag not in _HIDDEN and not self._is_left_out(node):
                self._enter(node)
                stack.append((node, True))
                if node.child is not None:
                    stack.append((node.child, False))

    def _is_left_out(self, node: Node) -> bool:
        """Whether an element is no text for readers; how many pieces of text it holds is counted."""
        if node.tag in NOT_SHOWN or (self._hides and hides(node)):
            self._hidden += len(PLACED.findall(node.text()))
        elif (node.tag == "button" and self._pre is not None) or (node.tag == "a" and is_permalink(node)):
            self._handles += len(PLACED.findall(node.text()))
        else:
            return False
        return True

    def finished(self) -> list[Block]:
        self._maker.end_keys()
        blocks = self._maker.blocks
        for parts in reversed(_bodies(self._kept_lines, blocks)):
            # Manual pages turned into HTML have headings between the parts of their one preformatted body.
            if sum(len(part.text) for part in parts) >= WHOLE * self._length:
                read = read_wrapped([part.text for part in parts], self._source)
                for part, wrapped in reversed([*zip(parts, read, strict=False)]):
                    blocks[part.at : part.at + 1] = [at_level(block, part.level) for block in wrapped]
        return blocks

    def remarks(self) -> list[str]:
        remarks = []
        if self._marked.flattened:
            remarks.append(
                f"{counted(self._marked.flattened, 'tag')} nested too deep passed over; the text was kept"
            )
        if self._marked.unfinished is not None:
            where = f"character {self._marked.unfinished}"
            remarks.append(
                f"the tag at {where} never ends, so the rest of the page is no text and was left out"
            )
        if self._hidden:
            remarks.append(
                f"{counted(self._hidden, 'piece')} of text left out, which the page hides from its readers"
            )
        if self._handles:
            remarks.append(f"{counted(self._handles, 'mark')} left out that only a browser has a use for")
        missing = len(self._marked.runs) - self._shown - self._hidden - self._handles
        if missing > 0:
            remarks.append(
                f"{counted(missing, 'piece')} of text left out, no part of the page by the rules of HTML"
            )
        return remarks

    # Elements

    def _enter(self, node: Node) -> None:
        tag = node.tag or ""
        maker = self._maker
        if self._is_list_of_term(node):
            maker.close_as_label()
            maker.level += 1
        if tag in BLOCKS:
            self._part(tag)
        if tag == "p" and maker.heading and len(maker.blocks) > self._headed:
            maker.heading = 0  # it was not closed: a heading has no paragraphs below its words
        if tag in _MARKS:
            self._marks.append(maker.mark)
            maker.mark |= _MARKS[tag]
        match tag:
            case "blockquote":
                maker.start_quotation()
            case "dd":
                maker.level += 1
            case "br":
                self._break()
            case "wbr":
                self._target().add_own(ZERO_WIDTH_SPACE)
            case "hr":
                self._rule()
            case "h1" | "h2" | "h3" | "h4" | "h5" | "h6":
                maker.heading, self._headed = int(tag[1]), len(maker.blocks)
                if self._kept is not None:
                    self._kept.heading(maker.heading)
            case "ul" | "ol" | "menu" | "dir":
                self._lists.enter(tag, node.attributes, sum(child.tag == "li" for child in node.iter()))
            case "li":
                self._item(node)
            case "img" | "area":
                self._picture(node)
            case "input":
                self._field(node)
            case "select":
                self._target().add_own("[", maker.mark)
            case "option" if is_later(node):
                self._target().add_own(" | ", maker.mark)
            case "a":
                self._open_links.append((self._attribute(node, "href"), len(self._target())))
            case "q":
                self._target().add_own('"', maker.mark)
            case "sup":
                self._raise(node)
            case "table":
                self._enter_table(node)
            case "tr" | "td" | "th":
                self._enter_cell(node)
            case "pre" | "listing" | "plaintext" | "xmp" | "textarea" if self._pre is None:
                self._pre = TextBuilder()

    def _leave(self, node: Node) -> None:
        tag = node.tag or ""
        maker = self._maker
        if tag in PRE and self._pre is not None:
            self._close_pre(node)
        if tag == "dt" and self._in_cell is None and self._pre is None:
            maker.close_as_label()
        if tag in CELLS and self._in_key:
            self._in_key = False
            maker.close_as_label()
            maker.level += 1
        if tag in BLOCKS:
            self._part(tag)
        if self._is_list_of_term(node):
            maker.end_keys()
            maker.level -= 1
        match tag:
            case "blockquote":
                maker.end_quotation()
            case "dd":
                maker.level -= 1
            case "h1" | "h2" | "h3" | "h4" | "h5" | "h6":
                maker.heading = 0
            case "ul" | "ol" | "menu" | "dir":
                self._lists.leave()
            case "li" if self._in_cell is None:
                maker.end_item(bare=node.child is None)
            case "dl" if self._in_cell is None and self._pre is None:
                maker.end_keys()
            case "a":
                address, begin = self._open_links.pop()
                through = _THROUGH & set((node.attributes.get("rel") or "").lower().split())
                if not through and not address.chars.lower().startswith("javascript:"):
                    self._links.add(address, self._target().since(begin))
            case "q":
                self._target().add_own('"', maker.mark)
            case "select":
                self._target().add_own("]", maker.mark)
            case "table":
                self._leave_table()
            case "td" | "th" if self._tables and self._tables[-1] is not None:
                self._tables[-1].end_cell()
            case "tr" if self._keyed and self._keyed[-1]:
                maker.end_keys()
                maker.level -= 1
        if tag in _MARKS:
            maker.mark = self._marks.pop()

    def _is_list_of_term(self, node: Node) -> bool:
        """Whether an element is a list right in a term, whose words before it are what the list explains."""
        if node.tag not in ("dl", "ul", "ol") or node.parent is None or node.parent.tag != "dt":
            return False
        return self._in_cell is None and self._pre is None

    @property
    def _in_cell(self) -> TextBuilder | None:
        """The text of the cell being read, where a table is kept as one."""
        return None if self._kept is None else self._kept.cell

    def _target(self) -> TextBuilder:
        """Where text goes now."""
        if self._pre is not None:
            return self._pre
        return self._maker.text if self._kept is None else self._kept.cell

    def _part(self, tag: str) -> None:
        """A block begins or ends: close the paragraph; inside a cell, only the line; in a key, only part the words."""
        cell = self._in_cell
        if self._pre is not None:
            pass
        elif self._in_key:
            self._maker.text.add_own(" ")
        elif cell is not None:
            cell.add_own(
                " " if tag in CELLS else LINE_BREAK
            )  # cells of a table in a cell stand beside each other
        else:
            self._maker.close()

    def _break(self) -> None:
        if self._pre is not None:
            self._pre.add_own("\n")
        elif self._in_key:
            self._maker.text.add_own(" ")
        else:
            self._target().add_own(LINE_BREAK)

    def _rule(self) -> None:
        builder = TextBuilder()
        builder.add_own(_RULE)
        if self._pre is None and self._in_cell is None:
            self._maker.add(Block(Kind.PREFORMATTED, level=self._maker.level, lines=(builder.build(),)))

    def _item(self, node: Node) -> None:
        label = TextBuilder()
        label.add_own(self._lists.label(node.attributes.get("value")))
        cell = self._in_cell
        if cell is None:
            self._maker.start_item(label.build())
        else:
            cell.add_text(label.build())
            cell.add_own(" ")

    def _picture(self, node: Node) -> None:
        self.pictures += node.tag == "img"
        text = self._attribute(node, "alt")
        if len(text):
            self._target().add_text(text)

    def _field(self, node: Node) -> None:
        """A field of a form: what stands in it, and whether it is ticked."""
        kind = (node.attributes.get("type") or "text").lower()
        target, mark = self._target(), self._maker.mark
        if kind in _TICKED and is_labelled(node):
            target.add_own("[x] " if "checked" in node.attributes else "[ ] ", mark)
        text = Text() if kind in _EMPTY else self._attribute(node, "value")
        if len(text):
            target.add_own("[", mark)
            target.add_text(text)
            target.add_own("]", mark)

    def _raise(self, node: Node) -> None:
        """A power after a digit would read as one number: 10 to the third is no 103."""
        target = self._target()
        before = target.since(len(target) - 1) if len(target) else ""
        content = PLACED.sub("", node.text()).strip()
        if before.isdigit() and content.lstrip("-\u2212+").isdigit():
            target.add_own("^", self._maker.mark)

    def _enter_table(self, node: Node) -> None:
        free = self._pre is None and self._in_cell is None and not self._in_key
        keyed = free and self._tree.explains(node)
        table = TableMaker() if free and not keyed and self._tree.compares(node) else None
        self._keyed.append(keyed)
        self._kept = table or self._kept
        self._tables.append(table)

    def _enter_cell(self, node: Node) -> None:
        table = self._tables[-1] if self._tables else None
        if table is None:
            self._in_key |= bool(self._keyed) and self._keyed[-1] and node.tag != "tr" and is_first(node)
            return
        if node.tag == "tr":
            table.start_row((node.parent.tag if node.parent else None) or "")
        else:
            table.start_cell(node.tag == "th", node.attributes)

    def _leave_table(self) -> None:
        table = self._tables.pop()
        self._keyed.pop()
        if table is not None:
            self._kept = None
            for block in table.blocks(self._maker.level):
                self._maker.add(block)

    def _close_pre(self, node: Node) -> None:
        assert self._pre is not None
        text, self._pre = self._pre.build(), None
        block = preformatted(text, level=self._maker.level, code=True)
        if block is None:
            return
        if node.tag == "textarea" and len(block.lines) == 1:
            self._target().add_own("[", self._maker.mark)
            self._target().add_text(block.lines[0])
            self._target().add_own("]", self._maker.mark)
            return
        if self._in_key or self._in_cell is not None:
            for line in block.lines:
                self._target().add_text(held(line, Mark.PROGRAM))
                self._target().add_own(LINE_BREAK)
            return
        self._maker.add(block)
        if not self._tree.holds_code(node):
            self._kept_lines.append(_Part(len(self._maker.blocks) - 1, text, self._maker.level))

    # Text

    def _text(self, text: str) -> None:
        """Add a text node: blanks, and runs that each begin with their place."""
        target, mark = self._target(), self._maker.mark
        parts = PLACED.split(text)
        target.add(parts[0], (self._place,) * len(parts[0]), mark)
        for place, run in zip(parts[1::2], parts[2::2], strict=True):
            self._shown += 1
            sources = decoded_places(self._source, int(place), run)
            self._place = sources[-1] + 1 if sources else self._place
            target.add(run, sources, mark)

    def _attribute(self, node: Node, name: str) -> Text:
        """The value of an attribute, with its places."""
        value = node.attributes.get(name) or ""
        builder = TextBuilder()
        start, _, end = (node.attributes.get(PLACE) or "0-0").partition("-")
        found = _VALUES[name].search(self._source, int(start), int(end))
        if value and found is not None:
            builder.add(value, decoded_places(self._source, found.end(), value), self._maker.mark)
        return builder.build()
