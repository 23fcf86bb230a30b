"""The sequences of VT52 mode, which a VT100 enters on ``CSI ? 2 l`` and leaves on ``ESC <``.

Source: VT100 User Guide (EK-VT100-UG), chapter 3, "VT52 compatible mode".
"""

from __future__ import annotations

from typing import Final

_Event = tuple[str, tuple[object, ...]]

VT52_ESCAPE: Final[dict[str, tuple[_Event, ...]]] = {
    "A": (("cursor_up", (1,)),),
    "B": (("cursor_down", (1,)),),
    "C": (("cursor_forward", (1,)),),
    "D": (("cursor_back", (1,)),),
    "F": (("define_charset", ("0", "(")),),
    "G": (("define_charset", ("B", "(")),),
    "H": (("cursor_position", (1, 1)),),
    "I": (("reverse_index", ()),),
    "J": (("erase_in_display", (0,)),),
    "K": (("erase_in_line", (0,)),),
    "Z": (("report_device_attributes", (0,)),),
    "=": (),
    ">": (),
}


def vt52_address(sequence: str) -> tuple[int, int]:
    """``Y``, line and column, each plus 31, as a line and column from 1."""
    return max(1, ord(sequence[1]) - 31), max(1, ord(sequence[2]) - 31)
