"""HTML to blocks: whole pages, and pieces of HTML in other documents.

What a page hides from readers (scripts, styles, the head) is no text of the document. Everything else
comes through in the order of the tree. Tables that only place things on the page come apart into what
they hold; see `fit.document.html.table`.
"""

from __future__ import annotations

from pathlib import PurePath
from typing import NamedTuple

from fit.document.blocks import Block, Document
from fit.document.html.kept_lines import read_bodies
from fit.document.html.page import Page
from fit.document.html.remarks import page_remarks, picture_remarks
from fit.document.html.source import CLOSING, OPENING, mark_source
from fit.document.html.tree import Tree
from fit.document.html.walk import walk
from fit.document.links import Links


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


def read_fragment(source: str, start: int, end: int, links: Links, *, rows: bool = False) -> Fragment:
    """Read the HTML in ``source[start:end]``, offsets counted in ``source``; addresses go to ``links``.

    ``rows`` says that it stands in a table.

    The source must have gone through `without_marks`.
    """
    marked = mark_source(source, start, end)
    page = Page(source, marked, Tree(f"<table>{marked.html}" if rows else marked.html), links)
    walk(page)
    page.maker.end_keys()
    outside = len(source) - (end - start)
    read_bodies(page, marked.characters + outside)
    return Fragment(page.maker.blocks, page_remarks(page), page.pictures)


def without_marks(source: str) -> str:
    """The source, as long as it was, without the noncharacters that are used to mark it."""
    return source.replace(OPENING, "\ufffd").replace(CLOSING, "\ufffd")
