"""The tree of a page, and what can be told of its elements before they are read. The only door to selectolax.

Its Lexbor parser follows the HTML standard.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final, TypeAlias

from selectolax.lexbor import LexborHTMLParser, LexborNode

from fit.document.html.source import CLOSING, OPENING

Node: TypeAlias = LexborNode
Visit: TypeAlias = tuple[Node, bool]
"""A node, and whether it is left rather than entered."""

PLACED: Final = re.compile(f"{OPENING}([0-9]+){CLOSING}")
"""Before each run of text: where it stands."""
HEADINGS: Final = frozenset(["h1", "h2", "h3", "h4", "h5", "h6"])
BLOCKS: Final = frozenset(
    [
        "address",
        "article",
        "aside",
        "blockquote",
        "body",
        "center",
        "details",
        "dialog",
        "dir",
        "div",
        "dl",
        "dd",
        "dt",
        "fieldset",
        "figcaption",
        "figure",
        "footer",
        "form",
        *HEADINGS,
        "header",
        "hgroup",
        "hr",
        "li",
        "legend",
        "listing",
        "main",
        "menu",
        "nav",
        "ol",
        "p",
        "pre",
        "plaintext",
        "search",
        "section",
        "summary",
        "table",
        "ul",
        "xmp",
        "caption",
        "tr",
        "td",
        "th",
    ]
)
"""Elements that begin and end a line."""
CELLS: Final = frozenset(("td", "th"))
PRE: Final = frozenset(["pre", "listing", "plaintext", "xmp", "textarea"])
NOT_SHOWN: Final = frozenset(["audio", "canvas", "datalist", "video"])
"""Elements whose text is only for programs that do not know them."""
_HIDING: Final = re.compile(r"(?:^|;)\s*display\s*:\s*none\b", re.IGNORECASE)
MAY_HIDE: Final = re.compile(r"\shidden\b|display\s*:\s*none\b|<dialog\b", re.IGNORECASE)
"""What any page holds that hides elements; most need not be asked one by one."""
_NOTED: Final = "*\u2020\u2021"
"""Signs of footnotes."""
_LONGEST_MARKED: Final = 20
"""Characters of a permalink with the place of its text."""
_NAMED: Final = HEADINGS | {"dt", "caption", "figcaption"}
"""What a permalink stands in."""
_HEADS: Final = frozenset(("th", "caption"))
_APART: Final = frozenset(["pre", "listing", "xmp", "blockquote", "dl"])
"""What stands in the cells of pages as often as in those of data."""
_NO_KEY: Final = "p + p, ul, ol, dl, table, h1, h2, h3, h4, h5, h6, img, hr, blockquote, textarea"
_NO_PAIR: Final = f"p, div, br, pre, form, input, select, textarea, {_NO_KEY}"
LONGEST_KEY: Final = 40
"""Characters of a cell that can be the key of its row."""
_CODE: Final = frozenset(("code", "kbd", "samp", "tt"))


class Tree:
    """A page as a tree, looked through once before it is read."""

    def __init__(self, marked: str) -> None:
        self._parser = LexborHTMLParser(marked)
        self.root: Node | None = self._parser.root
        self._complex: set[int] = set()
        """Tables whose cells hold parts of a page."""
        self._nesting: set[int] = set()
        """Tables with tables, quotations or lines that stay in their cells."""
        self._headed: set[int] = set()
        """Tables with heads or a caption of their own, or a border."""
        self._listed: set[int] = set()
        """Tables with lists or lines that stay in their cells."""
        self._code: set[int] = set()
        self._shape: dict[int, tuple[int, int]] = {}
        """For each table its rows, and the cells of its longest row."""
        if self.root is not None:
            self._look(self.root)

    def holds_code(self, node: Node) -> bool:
        """Whether a preformatted element has code in it."""
        return node.mem_id in self._code

    def compares(self, table: Node) -> bool:
        """Whether a table has rows of cells of text, rather than to place things on the page.

        What tells them apart where cells hold more than text is named in the HTML standard, "The table element".
        """
        identity = table.mem_id
        # What stands in one row or one column alone compares nothing.
        if identity in self._complex or min(self._shape.get(identity, (0, 0))) < 2:
            return False
        if table.attributes.get("role") in ("presentation", "none"):
            return False
        return identity not in self._nesting or (identity in self._headed and _full_rows(table) > 1)

    def explains(self, table: Node) -> bool:
        """Whether each row of a table is a short key and, in blocks, what it means."""
        if self._shape.get(table.mem_id) == (1, 2):
            return _is_pair(table)
        return (not self.compares(table) or table.mem_id in self._listed) and _has_keys(table)

    def _look(self, root: Node) -> None:
        """Find the tables that hold more than cells of text, and the preformatted elements that hold code."""
        tables: list[int] = []
        pres: list[int] = []
        cells = 0
        stack: list[Visit] = [(root, False)]
        while stack:
            node, left = stack.pop()
            tag = node.tag or ""
            if left:
                ended = (tables if tag == "table" else pres).pop()
                if tables and ended in self._complex:
                    self._complex.add(tables[-1])
                continue
            if node.next is not None and node is not root:
                stack.append((node.next, False))
            if not node.is_element_node:
                continue
            if tables:
                cells = self._count(tables[-1], tag, cells)
            if tables and tables[-1] not in self._complex:
                self._look_in_cell(tables[-1], node, tag)
            if tag == "table" and (node.attributes.get("border", "0") or "1").strip() != "0":
                self._headed.add(node.mem_id)
            if pres and tag in _CODE:
                self._code.add(pres[-1])
            if tag == "table" or tag in PRE:
                (tables if tag == "table" else pres).append(node.mem_id)
                stack.append((node, True))
            if node.child is not None:
                stack.append((node.child, False))

    def _look_in_cell(self, table: int, node: Node, tag: str) -> None:
        """Note what an element says of the table around it."""
        if (
            tag == "textarea"
            or (tag in HEADINGS and not _fills_row(node))
            or (tag == "hr" and not _rules_row(node))
        ):
            self._complex.add(table)
        elif tag in _APART and table not in self._nesting and not _fills_row(node):
            self._nesting.add(table)
            self._listed.add(table)
        elif tag == "table":
            self._nesting.add(table)
        elif tag == "li":
            self._listed.add(table)
        elif tag in _HEADS:
            self._headed.add(table)

    def _count(self, table: int, tag: str, cells: int) -> int:
        """Count a row or a cell of a table; the cells of its row so far."""
        rows, widest = self._shape.get(table, (0, 0))
        if tag == "tr":
            self._shape[table] = (rows + 1, widest)
            return 0
        if tag in CELLS:
            self._shape[table] = (rows, max(widest, cells + 1))
            return cells + 1
        return cells


def hides(node: Node) -> bool:
    """Whether an element is hidden by its attributes; a dialogue is where they do not open it."""
    attributes = node.attributes
    if node.tag == "dialog" and "open" not in attributes:
        return True
    return "hidden" in attributes or _HIDING.search(attributes.get("style") or "") is not None


def is_permalink(link: Node) -> bool:
    """Whether a link in a heading or a term leads to that very place: a mark to take its address from."""
    if not (link.attributes.get("href") or "").startswith("#") or len(link.text()) > _LONGEST_MARKED:
        return False
    shown = PLACED.sub("", link.text()).strip()
    if not shown or any(char.isalnum() or char in _NOTED for char in shown):
        return False  # themes take any sign, often one of the private use area of Unicode
    above = link.parent
    while above is not None and above.tag in ("span", "b", "strong", "code", "em"):
        above = above.parent
    return above is not None and above.tag in _NAMED


def rows_of(table: Node) -> Iterator[list[Node]]:
    """The cells of each row of a table."""
    for body in table.iter():
        if body.tag in ("thead", "tbody", "tfoot"):
            for row in body.iter():
                if row.tag == "tr":
                    yield [cell for cell in row.iter() if cell.tag in CELLS]


def runs(node: Node) -> int:
    """The runs of text in an element."""
    return len(PLACED.findall(node.text()))


def _full_rows(table: Node) -> int:
    """The rows with text in two cells or more."""
    return sum(sum(runs(cell) > 0 for cell in row) > 1 for row in rows_of(table))


def _fills_row(node: Node) -> bool:
    """Whether all text of a row of a table is in this element of one of its cells."""
    row = node.parent
    while row is not None and row.tag not in ("tr", "table"):
        row = row.parent
    return row is not None and row.tag == "tr" and runs(row) == runs(node)


def _rules_row(rule: Node) -> bool:
    """Whether a rule stands in a cell without text: it parts rows."""
    return rule.parent is not None and rule.parent.tag in CELLS and not runs(rule.parent)


def _has_keys(table: Node) -> bool:
    """Whether each row of a table is a short key and what it means."""
    rows = 0
    for cells in rows_of(table):
        if len(cells) != 2 or cells[0].css_first(_NO_KEY) is not None:
            return False
        key = " ".join(PLACED.sub("", cells[0].text()).split())
        if not 0 < len(key) <= LONGEST_KEY:
            return False
        rows += 1
    return rows > 1


def _is_pair(table: Node) -> bool:
    """Whether the one row of a table is a short key and a text, both without blocks in them."""
    for cells in rows_of(table):
        texts = [" ".join(PLACED.sub("", cell.text()).split()) for cell in cells]
        plain = all(cell.css_first(_NO_PAIR) is None for cell in cells)
        return plain and 0 < len(texts[0]) <= LONGEST_KEY and bool(texts[-1])
    return False


def is_first(cell: Node) -> bool:
    """Whether a cell is the first of its row."""
    before = cell.prev
    while before is not None and before.tag not in CELLS:
        before = before.prev
    return before is None
