"""Tokens of Markdown that begin, end or are blocks. HTML inside goes through the reader of HTML."""

from __future__ import annotations

from typing import Final

from fit.document.block_maker import at_level
from fit.document.blocks import Block, Kind, Text
from fit.document.characters import TextBuilder
from fit.document.html.reader import read_fragment
from fit.document.markdown.footnotes import goes_on_with_note, take_footnotes
from fit.document.markdown.html_tables import has_cells, open_tables
from fit.document.markdown.inline_tokens import take_inline
from fit.document.markdown.parser import Token
from fit.document.markdown.state import State
from fit.document.markdown.table import take_table_token
from fit.document.preformatted import preformatted
from fit.document.shown_text import read_shown
from fit.document.text.hyphens import Hyphens

_PLAIN: Final = {"", "ascii", "none", "plain", "plaintext", "text", "txt"}
"""What a fence is said to hold where it is no program text, or may be none."""


def take_block(state: State, token: Token) -> None:
    """Take a token of the document; one of a block's text has the tokens in it as its children."""
    maker = state.maker
    if token.map is not None and token.type not in ("inline", "th_open", "td_open"):
        state.places.go_on(state.places.lines[token.map[0]])
    match token.type:
        case "heading_open":
            maker.close()
            maker.heading = int(token.tag[1])
        case "heading_close":
            maker.close()
            maker.heading = 0
        case "paragraph_close":
            maker.close()
            take_footnotes(state)
        case "blockquote_open":
            maker.start_quotation()
        case "blockquote_close":
            maker.end_quotation()
        case "bullet_list_open" | "ordered_list_open":
            maker.close()
            state.numbers.append(None if token.tag == "ul" else int(token.attrs.get("start", 1)))
        case "bullet_list_close" | "ordered_list_close":
            state.numbers.pop()
        case "list_item_open":
            maker.start_item(_label(state, token))
        case "list_item_close":
            maker.end_item()
        case "fence" | "code_block":
            _code(state, token)
        case "html_block":
            _html(state, token)
        case "hr":
            _rule(state, token)
        case "inline":
            take_inline(state, token)
        case _:
            take_table_token(state, token)


def _label(state: State, token: Token) -> Text:
    """The bullet or number as written."""
    builder = TextBuilder()
    number = state.numbers[-1]
    label = token.markup if number is None else token.info + token.markup
    if number is not None and token.info.isdecimal() and int(token.info) != number:
        # Every item may be written "1."; what a reader of Markdown is shown are the numbers in order.
        label = f"{number}{token.markup}"
    if number is not None:
        state.numbers[-1] = number + 1
    written = token.info + token.markup
    at = state.places.find(written, state.places.end_of(token))
    if at < 0:
        builder.add_own(label)
        return builder.build()
    if label == written:
        builder.add_run(label, at)
    else:
        builder.add(label, [at] * len(label))
    state.places.go_on(at + len(written))
    return builder.build()


def _code(state: State, token: Token) -> None:
    """Code keeps its lines; each stands in one line of the source, behind what indents or quotes it."""
    assert token.map is not None
    places = state.places
    first = token.map[0] + (token.type == "fence")
    builder = TextBuilder()
    for number, line in enumerate(token.content.split("\n")[:-1]):
        if number:
            builder.add_own("\n")
        begin, end = places.lines[first + number], places.lines[first + number + 1]
        at = places.source.rfind(line, begin, end) if line else begin
        builder.add(line, range(at, at + len(line)) if at >= 0 else [begin] * len(line))
    if token.type == "code_block" and goes_on_with_note(state, builder.build()):
        places.go_on(places.end_of(token))
        return
    text = builder.build()
    block = preformatted(text, level=state.maker.level, code=True)
    if block is not None:
        plain = token.info.strip().lower() in _PLAIN
        for each in read_shown(block, text, Hyphens(places.source)) if plain else [block]:
            state.maker.add(each)
    places.go_on(places.end_of(token))


def _html(state: State, token: Token) -> None:
    begin, end = state.places.span(token)
    # Text of Markdown parts the rows of a table, or its cells: those of this piece are read as rows.
    rows = state.html_tables > 0 and has_cells(token.content)
    page = read_fragment(state.places.bare(token), begin, end, state.addresses.links, rows=rows)
    state.html_tables = open_tables(token.content, state.html_tables)
    for block in page.blocks:
        state.maker.add(at_level(block, state.maker.level))
    state.pictures += page.pictures
    state.remarks += (remark for remark in page.remarks if remark not in state.remarks)
    state.places.go_on(end)


def _rule(state: State, token: Token) -> None:
    begin, end = state.places.span(token)
    source = state.places.source
    builder = TextBuilder()
    for at in range(begin, end):
        if source[at] in "-*_" and len(builder) < 3:
            builder.add_run(source[at], at)
    state.maker.add(Block(Kind.PREFORMATTED, level=state.maker.level, lines=(builder.build(),)))
