"""The tree of a page, and what can be told of its elements before they are read. The only door to selectolax.

Its Lexbor parser follows the HTML standard.
"""

from __future__ import annotations

import re
from typing import Final, TypeAlias

from selectolax.lexbor import LexborHTMLParser, LexborNode

from fit.document.html_source import CLOSING, OPENING

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
        "optgroup",
        "option",
        "p",
        "pre",
        "plaintext",
        "search",
        "section",
        "select",
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
_COMPLEX: Final = frozenset(
    [
        "pre",
        *HEADINGS,
        "listing",
        "xmp",
        "hr",
        "textarea",
        "blockquote",
        "dl",
    ]
)
_NO_KEY: Final = "p + p, ul, ol, dl, pre, table, h1, h2, h3, h4, h5, h6, img, hr, blockquote, textarea"
LONGEST_KEY: Final = 40
"""Characters of a cell that can be the key of its row."""
_CODE: Final = frozenset(("code", "kbd", "samp", "tt"))


class Tree:
    """A page as a tree, looked through once before it is read."""

    def __init__(self, marked: str) -> None:
        self._parser = LexborHTMLParser(marked)
        self.root: Node | None = self._parser.root
        self._complex: set[int] = set()
        self._nesting: set[int] = set()
        self._headed: set[int] = set()
        """Tables with heads or a caption of their own."""
        self._listed: set[int] = set()
        """Tables with lists in their cells."""
        self._code: set[int] = set()
        self._shape: dict[int, tuple[int, int]] = {}
        """For each table its rows, and the cells of its longest row."""
        if self.root is not None:
            self._look(self.root)

    def holds_code(self, node: Node) -> bool:
        """Whether a preformatted element has code in it."""
        return node.mem_id in self._code

    def compares(self, table: Node) -> bool:
        """Whether a table has rows of cells of text, rather than to place things on the page."""
        identity = table.mem_id
        # What stands in one row or one column alone compares nothing; tables in tables may do so, where they have heads.
        return (
            identity not in self._complex
            and min(self._shape.get(identity, (0, 0))) > 1
            and (identity not in self._nesting or identity in self._headed)
        )

    def explains(self, table: Node) -> bool:
        """Whether each row of a table is a short key and, in blocks, what it means."""
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
            if tables and tag in _COMPLEX:
                self._complex.add(tables[-1])
            if tables and tag == "table":
                self._nesting.add(tables[-1])
            if tables and tag == "li":
                self._listed.add(tables[-1])
            if tables and tag in _HEADS:
                self._headed.add(tables[-1])
            if pres and tag in _CODE:
                self._code.add(pres[-1])
            if tag == "table" or tag in PRE:
                (tables if tag == "table" else pres).append(node.mem_id)
                stack.append((node, True))
            if node.child is not None:
                stack.append((node.child, False))

    def _count(self, table: int, tag: str, cells: int) -> int:
        """Count a row or a cell of a table; the cells of its row so far."""
        rows, widest = self._shape.get(table, (0, 0))
        if tag == "tr":
            self._shape[table] = (rows + 1, widest)
            return 0
        if tag in ("td", "th"):
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


def _has_keys(table: Node) -> bool:
    """Whether each row of a table is a short key and what it means."""
    rows = 0
    bodies = [node for node in table.iter() if node.tag in ("thead", "tbody", "tfoot")]
    for row in (row for body in bodies for row in body.iter() if row.tag == "tr"):
        cells = [cell for cell in row.iter() if cell.tag in ("td", "th")]
        if len(cells) != 2 or cells[0].css_first(_NO_KEY) is not None:
            return False
        key = " ".join(PLACED.sub("", cells[0].text()).split())
        if not 0 < len(key) <= LONGEST_KEY:
            return False
        rows += 1
    return rows > 1


def is_first(cell: Node) -> bool:
    """Whether a cell is the first of its row."""
    before = cell.prev
    while before is not None and before.tag not in ("td", "th"):
        before = before.prev
    return before is None
