"""Markdown to blocks: CommonMark with tables and strikethrough; beside it asides, footnotes and front matter."""

from __future__ import annotations

import re
from pathlib import PurePath
from typing import Final

from fit.document.blocks import Document
from fit.document.html.reader import without_marks
from fit.document.html.remarks import picture_remarks
from fit.document.links import Links
from fit.document.markdown.addresses import Addresses
from fit.document.markdown.asides import as_quotations
from fit.document.markdown.block_tokens import take_block
from fit.document.markdown.front_matter import front_matter
from fit.document.markdown.html_tables import whole_tables
from fit.document.markdown.parser import DEEPEST, parse
from fit.document.markdown.places import Places
from fit.document.markdown.state import State
from fit.document.wording import counted

_PREFIX: Final = r"[ ]{0,3}(?:>|[-+*](?=[ ])|[0-9]{1,9}[.)](?=[ ]))"
_TOO_DEEP: Final = re.compile(rf"^((?:{_PREFIX}){{{DEEPEST // 3}}})(?:{_PREFIX})+", re.MULTILINE)


def read_markdown(source: str, name: str, encoding: str) -> Document:
    """Read a Markdown document. Never raises: any text is Markdown."""
    places = Places(without_marks(source))
    links = Links(PurePath(name).name)
    state = State(places, Addresses(places, links))
    front, text = front_matter(places.source)
    if front is not None:
        state.maker.add(front)
        state.remarks.append(f"{counted(len(front.lines), 'line')} of front matter taken out")
    text, flattened = _TOO_DEEP.subn(r"\1", as_quotations(text))
    if flattened:
        state.remarks.append(f"{counted(flattened, 'line')} nested deeper than {DEEPEST // 3} moved out")
    tokens, references = parse(text)
    state.addresses.define(references)
    for token in whole_tables(tokens):
        take_block(state, token)
    state.maker.close()
    state.addresses.note_unused()
    remarks = (*state.remarks, *links.remarks(), *picture_remarks(state.pictures))
    return Document(source, (*state.maker.blocks, *links.notes()), "markdown", encoding, name, remarks)
