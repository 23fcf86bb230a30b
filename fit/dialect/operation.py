"""Terminal operations: the language between dialects and screens.

The names and arguments are the events of `pyte.Screen`, so that any dialect of ours can drive one
and any `pyte.Stream` can drive a screen of ours. Events that pyte lacks are listed in `OUR_EVENTS`.
"""

from __future__ import annotations

from typing import Any, Protocol, TypeAlias

Operation: TypeAlias = tuple[int, int, str, tuple[Any, ...], bool]
"""``(start, end, event, arguments, private)``.

``start`` and ``end`` are the byte span in the session's output that the operation comes from.
``private`` is true where the sequence carried ``?``; the screen then gets ``private=True``.

``draw`` has the arguments ``(text, offsets)``: ``offsets`` is the byte offset of the first character
where each character took one byte, else a list with one offset a character.

``debug`` has the argument ``(bytes,)``: a sequence nobody understood. It is counted and reported.
"""

OUR_EVENTS = frozenset(
    {
        "alternate_charset",  # (slot 0-3): lock G0 to G3 into GL
        "back_index",  # DECBI
        "backward_tab",  # CBT (count)
        "change_attributes_rectangle",  # DECCARA and DECRARA: no glyph changes; kept so that it counts as known
        "copy_rectangle",  # DECCRA (top, left, bottom, right, page, to_top, to_left, to_page)
        "delete_columns",  # DECDC (count)
        "erase_rectangle",  # DECERA (top, left, bottom, right)
        "fill_rectangle",  # DECFRA (code, top, left, bottom, right)
        "forward_index",  # DECFI
        "horizontal_position",  # HPA (column)
        "horizontal_relative",  # HPR, HPB (signed count)
        "vertical_relative",  # VPR, VPB (signed count)
        "line_width",  # DECSWL (1), DECDWL and DECDHL (2)
        "lock_right",  # LS1R, LS2R, LS3R (slot): the set of the bytes above A0h
        "forward_tab",  # CHT (count)
        "insert_columns",  # DECIC (count)
        "next_line",  # NEL
        "repeat",  # REP (count)
        "restore_cursor_position",  # SCORC, CSI u
        "restore_modes",  # private modes as saved (modes...)
        "save_modes",  # private modes (modes...)
        "set_guard",  # SPA and EPA (1 or 0)
        "save_cursor_position",  # SCOSC, CSI s
        "scroll_down",  # SD (count)
        "scroll_up",  # SU (count)
        "selective_erase_in_display",  # DECSED (how)
        "selective_erase_in_line",  # DECSEL (how)
        "selective_erase_rectangle",  # DECSERA (top, left, bottom, right)
        "set_horizontal_margins",  # DECSLRM (left, right)
        "set_protection",  # DECSCA (how)
        "single_shift",  # SS2, SS3 (slot 2 or 3)
        "soft_reset",  # DECSTR
        "status_text",  # (text): text for a status line outside the grid; kept, not drawn
    }
)


class Dialect(Protocol):
    """One family of terminals: output bytes in, operations out."""

    name: str

    def feed(self, data: bytes, start: int) -> list[Operation]:
        """Take the next bytes of the output, the first of which stands at offset ``start``.

        Feeding the whole or any split of it gives operations with the same effect.
        """
        ...

    def finish(self) -> list[Operation]:
        """Give what an unfinished sequence at the end comes to: a ``debug`` operation, or nothing."""
        ...
