"""Tables of Markdown: tokens to rows of cells, with the words of cells beyond the last column."""

from __future__ import annotations

import re
from typing import Final

from fit.document.block_maker import cell_text, joined
from fit.document.blocks import Block, Kind
from fit.document.characters import TextBuilder
from fit.document.markdown.parser import Token
from fit.document.markdown.state import State

_CELL_END: Final = re.compile(r"(?<!\\)\|")


def take_table_token(state: State, token: Token) -> None:
    """Take a token of a table; others do nothing."""
    match token.type:
        case "table_open":
            state.maker.close()
            state.rows, state.header_rows = [], 0
        case "thead_close":
            state.header_rows = len(state.rows)
        case "tr_open":
            state.rows.append([])
            state.row = token
            state.row_begin = state.places.cursor
        case "tr_close":
            _keep_excess(state)
        case "th_open" | "td_open":
            state.cell = TextBuilder()
        case "th_close" | "td_close":
            assert state.cell is not None
            state.rows[-1].append(cell_text(state.cell.build()))
            state.cell = None
        case "table_close":
            rows = tuple(map(tuple, state.rows))
            state.maker.add(
                Block(Kind.TABLE, level=state.maker.level, rows=rows, header_rows=state.header_rows)
            )


def _keep_excess(state: State) -> None:
    """Cells beyond the last column are no part of a table by its rules; their words go into the last cell."""
    if state.row is None or state.row.map is None or not state.rows[-1]:
        return
    begin, end = state.row_begin, state.places.end_of(state.row)
    line = state.places.source[begin:end].rstrip("\r\n| \t")
    first = len(line) - len(line.lstrip(" \t>"))
    first += line.startswith("|", first)
    bars = [first - 1, *(bar.start() for bar in _CELL_END.finditer(line, first)), len(line)]
    columns = len(state.rows[-1])
    if len(bars) - 1 <= columns or not line[bars[columns] :].strip("| \t"):
        return
    excess = TextBuilder()
    excess.add_run(line[bars[columns] :], begin + bars[columns])
    state.rows[-1][-1] = joined([state.rows[-1][-1], excess.folded()])
    state.remarks.append(
        "a table row holds more cells than its table; the words of the others were kept in its last"
    )
