"""The open tables of a page: kept as tables, taken as keys and what they mean, or come apart into what they hold."""

from __future__ import annotations

from fit.document.html.figure import FigureMaker, draws_with_cells
from fit.document.html.page import Page
from fit.document.html.table import TableMaker
from fit.document.html.tree import Node, is_first


def enter_table(page: Page, node: Node) -> None:
    """A table begins; one that stands in lines that stay, or in a cell or key, is text of those."""
    free = page.pre is None and page.in_cell is None and not page.in_key
    inside = page.pre is None and isinstance(page.kept, FigureMaker)
    draws = inside or (free and draws_with_cells(node))
    keyed = free and not draws and page.tree.explains(node)
    compares = free and not draws and not keyed and page.tree.compares(node)
    table = FigureMaker() if draws else TableMaker() if compares else None
    page.keyed.append(keyed)
    page.kept = table or page.kept
    page.tables.append(table)


def leave_table(page: Page) -> None:
    """A table ends; its blocks are added where it was kept."""
    table = page.tables.pop()
    page.keyed.pop()
    if table is not None:
        page.kept = next((around for around in reversed(page.tables) if around is not None), None)
        if isinstance(page.kept, FigureMaker) and isinstance(table, FigureMaker):
            page.kept.put_in(table.drawn())
            return
        for block in table.blocks(page.maker.level):
            page.maker.add(block)


def enter_cell(page: Page, node: Node) -> None:
    """A row or a cell begins."""
    table = page.tables[-1] if page.tables else None
    if table is None:
        page.in_key |= bool(page.keyed) and page.keyed[-1] and node.tag != "tr" and is_first(node)
        return
    if node.tag == "tr":
        table.start_row((node.parent.tag if node.parent else None) or "")
    else:
        table.start_cell(node.tag == "th", node.attributes)


def leave_key(page: Page) -> None:
    """The cell ends whose words are the key of its row: what it means stands a level deeper."""
    page.in_key = False
    page.maker.close_as_label()
    page.maker.level += 1


def leave_row(page: Page) -> None:
    """A row ends; one of a key and what it means comes back to the level of the key."""
    if page.keyed and page.keyed[-1]:
        page.maker.end_keys()
        page.maker.level -= 1
