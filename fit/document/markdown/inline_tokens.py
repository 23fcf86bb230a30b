"""Tokens of Markdown inside a block: its text, emphasis, links and pictures, and tags in running text."""

from __future__ import annotations

import html
import re
from collections.abc import Sequence
from typing import Final

from fit.document.block_maker import LINE_BREAK
from fit.document.blocks import Mark
from fit.document.characters import TextBuilder
from fit.document.html.tree import BLOCKS
from fit.document.markdown.footnotes import STARTS_ANEW
from fit.document.markdown.parser import Token
from fit.document.markdown.state import State

_MARKS: Final = {"strong_open": Mark.BOLD, "em_open": Mark.UNDERLINE}
_POWER: Final = re.compile(r"<sup>\s*[-+\u2212]?[0-9]", re.IGNORECASE)
_PICTURE: Final = re.compile(r"<img\b", re.IGNORECASE)
_ALT: Final = re.compile(r"\balt\s*=\s*(?:\"([^\"]*)\"|'([^']*)')", re.IGNORECASE)
_HREF: Final = re.compile(r"<a\b[^>]*?\bhref\s*=\s*(?:\"([^\"]*)\"|'([^']*)')", re.IGNORECASE)
_TAG_NAME: Final = re.compile(r"</?([a-zA-Z][a-zA-Z0-9]*)")
_LINE_BREAK_TAG: Final = re.compile(r"<br\s*/?>", re.IGNORECASE)


def take_inline(state: State, token: Token) -> None:
    """Take the token that holds those of a block's text."""
    if state.cell is None and token.map is not None:
        state.places.go_on(state.places.lines[token.map[0]])
    _pieces(state, token.children or (), state.places.end_of(token))


def _pieces(state: State, tokens: Sequence[Token], end: int) -> None:
    maker, places, target = state.maker, state.places, state.target()
    for token in tokens:
        match token.type:
            case "text":
                places.put(target, token.content, token.content, end, maker.mark)
            case "text_special":
                places.put(target, token.content, token.markup, end, maker.mark)
            case "code_inline":
                places.put(target, token.content, token.content, end, maker.mark | Mark.CODE)
            case "softbreak" if state.cell is None and STARTS_ANEW.match(places.source, places.cursor):
                maker.close()
                target = maker.text
            case "softbreak":
                target.add("\n", (places.cursor,), maker.mark)
            case "hardbreak":
                _break(state, target)
            case "strong_open" | "em_open":
                state.marks.append(maker.mark)
                maker.mark |= _MARKS[token.type]
            case "strong_close" | "em_close":
                maker.mark = state.marks.pop()
            case "link_open":
                state.open_links.append((str(token.attrs.get("href", "")), len(target)))
            case "link_close":
                address, begin = state.open_links.pop()
                state.addresses.note(address, target.since(begin), end)
            case "image":
                _pieces(state, token.children or (), end)
                state.pictures += 1
            case "html_inline" if _LINE_BREAK_TAG.fullmatch(token.content):
                _break(state, target)
            case "html_inline":
                _tag(state, token.content, target, end)
                target = state.target()
            case _:
                pass  # the marks of strikethrough hold no words


def _break(state: State, target: TextBuilder) -> None:
    target.add(LINE_BREAK, (state.places.cursor,))


def _tag(state: State, tag: str, target: TextBuilder, end: int) -> None:
    """A tag in running text: what a picture or a link holds is kept, a block parts words, the others hold none."""
    name = _TAG_NAME.match(tag)
    if name is not None and name[1].lower() in BLOCKS:
        _block_tag(state, tag, name[1].lower())
        return
    if _PICTURE.match(tag):
        state.pictures += 1
    places = state.places
    if (
        len(target)
        and target.since(len(target) - 1).isdigit()
        and _POWER.match(places.source, max(0, places.find(tag, end)))
    ):
        target.add_own("^", state.maker.mark)
    found = (_ALT if _PICTURE.match(tag) else _HREF).search(tag)
    if found is None:
        return
    value = next((group for group in found.groups() if group), "")
    if _PICTURE.match(tag):
        places.put(target, html.unescape(value), value, end, state.maker.mark)
    else:
        state.addresses.note(value, "", end)


def _block_tag(state: State, tag: str, name: str) -> None:
    """A tag that begins or ends a block in running text: a line of a cell, else a paragraph."""
    closes = tag.startswith("</")
    if state.cell is None:
        state.maker.close()
    else:
        _break(state, state.cell)
    if name in ("ul", "ol") and closes:
        state.lists.leave()
    elif name in ("ul", "ol"):
        state.lists.enter(name, {}, 0)
    elif name == "li" and not closes:
        state.target().add_own(f"{state.lists.label(None)} ")
