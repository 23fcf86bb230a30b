"""What each element of a page does to its blocks when the walk enters and leaves it."""

from __future__ import annotations

from typing import Final

from fit.document.blocks import Block, Kind, Mark
from fit.document.characters import ZERO_WIDTH_SPACE, TextBuilder
from fit.document.html.forms import field, is_later
from fit.document.html.kept_lines import close_pre
from fit.document.html.open_tables import enter_cell, enter_table, leave_key, leave_row, leave_table
from fit.document.html.page import Page
from fit.document.html.tree import BLOCKS, CELLS, PLACED, PRE, Node

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


def enter(page: Page, node: Node) -> None:
    """An element begins."""
    tag = node.tag or ""
    maker = page.maker
    if _is_list_of_term(page, node):
        maker.close_as_label()
        maker.level += 1
    if tag in BLOCKS:
        page.part(tag)
    if tag == "p" and maker.heading and len(maker.blocks) > page.headed:
        maker.heading = 0  # it was not closed: a heading has no paragraphs below its words
    if tag in _MARKS:
        page.marks.append(maker.mark)
        maker.mark |= _MARKS[tag]
    match tag:
        case "blockquote":
            maker.start_quotation()
        case "dd":
            maker.level += 1
        case "br":
            page.break_line()
        case "wbr":
            page.target().add_own(ZERO_WIDTH_SPACE)
        case "hr":
            _rule(page)
        case "h1" | "h2" | "h3" | "h4" | "h5" | "h6":
            maker.heading, page.headed = int(tag[1]), len(maker.blocks)
            if page.kept is not None:
                page.kept.heading(maker.heading)
        case "ul" | "ol" | "menu" | "dir":
            page.lists.enter(tag, node.attributes, sum(child.tag == "li" for child in node.iter()))
        case "li":
            _item(page, node)
        case "img" | "area":
            _picture(page, node)
        case "input":
            field(page, node)
        case "select":
            page.target().add_own("[", maker.mark)
        case "option" if is_later(node):
            page.target().add_own(" | ", maker.mark)
        case "a":
            page.open_links.append((page.attribute(node, "href"), len(page.target())))
        case "q":
            page.target().add_own('"', maker.mark)
        case "sup":
            _raise(page, node)
        case "table":
            enter_table(page, node)
        case "tr" | "td" | "th":
            enter_cell(page, node)
        case "pre" | "listing" | "plaintext" | "xmp" | "textarea" if page.pre is None:
            page.pre = TextBuilder()


def leave(page: Page, node: Node) -> None:
    """An element ends."""
    tag = node.tag or ""
    maker = page.maker
    if tag in PRE and page.pre is not None:
        close_pre(page, node)
    if tag == "dt" and page.in_cell is None and page.pre is None:
        maker.close_as_label()
    if tag in CELLS and page.in_key:
        leave_key(page)
    if tag in BLOCKS:
        page.part(tag)
    if _is_list_of_term(page, node):
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
            page.lists.leave()
        case "li" if page.in_cell is None:
            maker.end_item(bare=node.child is None)
        case "dl" if page.in_cell is None and page.pre is None:
            maker.end_keys()
        case "a":
            _leave_link(page, node)
        case "q":
            page.target().add_own('"', maker.mark)
        case "select":
            page.target().add_own("]", maker.mark)
        case "table":
            leave_table(page)
        case "td" | "th" if page.tables and page.tables[-1] is not None:
            page.tables[-1].end_cell()
        case "tr":
            leave_row(page)
    if tag in _MARKS:
        maker.mark = page.marks.pop()


def _is_list_of_term(page: Page, node: Node) -> bool:
    """Whether an element is a list right in a term, whose words before it are what the list explains."""
    if node.tag not in ("dl", "ul", "ol") or node.parent is None or node.parent.tag != "dt":
        return False
    return page.in_cell is None and page.pre is None


def _rule(page: Page) -> None:
    builder = TextBuilder()
    builder.add_own(_RULE)
    if page.pre is None and page.in_cell is None:
        page.maker.add(Block(Kind.PREFORMATTED, level=page.maker.level, lines=(builder.build(),)))


def _item(page: Page, node: Node) -> None:
    label = TextBuilder()
    label.add_own(page.lists.label(node.attributes.get("value")))
    cell = page.in_cell
    if cell is None:
        page.maker.start_item(label.build())
    else:
        cell.add_text(label.build())
        cell.add_own(" ")


def _picture(page: Page, node: Node) -> None:
    page.pictures += node.tag == "img"
    text = page.attribute(node, "alt")
    if len(text):
        page.target().add_text(text)


def _raise(page: Page, node: Node) -> None:
    """A power after a digit would read as one number: 10 to the third is no 103."""
    target = page.target()
    before = target.since(len(target) - 1) if len(target) else ""
    content = PLACED.sub("", node.text()).strip()
    if before.isdigit() and content.lstrip("-\u2212+").isdigit():
        target.add_own("^", page.maker.mark)


def _leave_link(page: Page, node: Node) -> None:
    address, begin = page.open_links.pop()
    through = _THROUGH & set((node.attributes.get("rel") or "").lower().split())
    if not through and not address.chars.lower().startswith("javascript:"):
        page.links.add(address, page.target().since(begin))
