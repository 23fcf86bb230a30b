"""The control sequences of ECMA-48 and of the VT family, as terminal operations.

Sources: ECMA-48, 5th edition (1991), section 8.3; VT220 Programmer Reference Manual (1984), chapter 4; VT420
Programmer Reference Manual, chapter 5, for rectangles and horizontal margins. What is marked "practice" is common
practice, no source.
"""

from __future__ import annotations

from typing import Final

KNOWN: Final = ""
"""Stands for an event: the sequence is understood and changes nothing that can be read."""

CSI: Final[dict[str, tuple[str, int]]] = {
    "@": ("insert_characters", 1),  # ICH
    "A": ("cursor_up", 1),  # CUU
    "B": ("cursor_down", 1),  # CUD
    "C": ("cursor_forward", 1),  # CUF
    "D": ("cursor_back", 1),  # CUB
    "E": ("cursor_down1", 1),  # CNL
    "F": ("cursor_up1", 1),  # CPL
    "G": ("cursor_to_column", 1),  # CHA
    "H": ("cursor_position", 2),  # CUP
    "I": ("forward_tab", 1),  # CHT
    "J": ("erase_in_display", 1),  # ED
    "K": ("erase_in_line", 1),  # EL
    "L": ("insert_lines", 1),  # IL
    "M": ("delete_lines", 1),  # DL
    "P": ("delete_characters", 1),  # DCH
    "S": ("scroll_up", 1),  # SU
    "T": ("scroll_down", 1),  # SD
    "X": ("erase_characters", 1),  # ECH
    "Z": ("backward_tab", 1),  # CBT
    "^": ("scroll_down", 1),  # SD, by a misprint in the first printing of the standard (practice)
    "`": ("horizontal_position", 1),  # HPA
    "a": ("horizontal_relative", 1),  # HPR
    "b": ("repeat", 1),  # REP
    "c": ("report_device_attributes", 1),  # DA
    "d": ("cursor_to_line", 1),  # VPA
    "e": ("vertical_relative", 1),  # VPR
    "f": ("cursor_position", 2),  # HVP
    "g": ("clear_tab_stop", 1),  # TBC
    "h": ("set_mode", 0),  # SM
    "i": (KNOWN, 0),  # MC: printing on paper
    "j": ("horizontal_relative", 1),  # HPB
    "k": ("vertical_relative", 1),  # VPB
    "l": ("reset_mode", 0),  # RM
    "m": ("select_graphic_rendition", 0),  # SGR
    "n": ("report_device_status", 1),  # DSR
    "q": (KNOWN, 0),  # DECLL: lamps on the keyboard
    "r": ("set_margins", 2),  # DECSTBM
    "s": ("set_horizontal_margins", 2),  # DECSLRM; without parameters SCOSC, see `SAVE_POSITION`
    "t": (KNOWN, 0),  # window manipulation (practice)
    "u": ("restore_cursor_position", 0),  # SCORC (practice)
    "x": (KNOWN, 0),  # DECREQTPARM
    # With "?": the DEC private forms. The first letter of the key is the prefix.
    "?J": ("selective_erase_in_display", 1),  # DECSED
    "?K": ("selective_erase_in_line", 1),  # DECSEL
    "?W": (KNOWN, 0),  # DECST8C: tab stops every 8 columns, handled in the dialect
    "?c": (KNOWN, 0),  # cursor shapes (practice)
    "?h": ("set_mode", 0),  # DECSET
    "?l": ("reset_mode", 0),  # DECRST
    "?i": (KNOWN, 0),
    "?m": (KNOWN, 0),
    "?n": (KNOWN, 0),  # DECDSR
    "?r": ("restore_modes", 0),  # XTRESTORE (practice)
    "?s": ("save_modes", 0),  # XTSAVE (practice)
    "?u": (KNOWN, 0),
    "?S": (KNOWN, 0),
    "?$p": (KNOWN, 0),  # DECRQM
    "$p": (KNOWN, 0),  # DECRQM, of ECMA-48 modes
    ">c": (KNOWN, 0),  # DA2
    "=c": (KNOWN, 0),  # DA3
    ">m": (KNOWN, 0),
    ">n": (KNOWN, 0),
    ">p": (KNOWN, 0),
    ">q": (KNOWN, 0),
    ">t": (KNOWN, 0),
    ">T": (KNOWN, 0),
    ">u": (KNOWN, 0),
    "<u": (KNOWN, 0),
    "=u": (KNOWN, 0),
    # With intermediate bytes, which stand before the final byte in the key.
    "!p": ("soft_reset", 0),  # DECSTR
    '"p': (KNOWN, 0),  # DECSCL: the conformance level
    '"q': ("set_protection", 1),  # DECSCA
    " q": (KNOWN, 0),  # DECSCUSR: cursor style
    " @": (KNOWN, 0),  # SL, which moves pixels on no text screen of this family
    " A": (KNOWN, 0),  # SR
    "#p": (KNOWN, 0),
    "#q": (KNOWN, 0),
    "#P": (KNOWN, 0),
    "#Q": (KNOWN, 0),
    "#{": (KNOWN, 0),
    "#}": (KNOWN, 0),
    "$r": ("change_attributes_rectangle", 0),  # DECCARA
    "$t": ("change_attributes_rectangle", 0),  # DECRARA
    "$v": ("copy_rectangle", 8),  # DECCRA
    "$w": (KNOWN, 0),  # DECRQPSR
    "$x": ("fill_rectangle", 5),  # DECFRA
    "$z": ("erase_rectangle", 4),  # DECERA
    "${": ("selective_erase_rectangle", 4),  # DECSERA
    "$|": (KNOWN, 0),  # DECSCPP
    "*x": (KNOWN, 0),  # DECSACE
    "*y": (KNOWN, 0),  # DECRQCRA
    "*|": (KNOWN, 0),  # DECSNLS
    "'}": ("insert_columns", 1),  # DECIC
    "'~": ("delete_columns", 1),  # DECDC
    "'z": (KNOWN, 0),  # DECELR
    "'{": (KNOWN, 0),  # DECSLE
    "'|": (KNOWN, 0),  # DECRQLP
    "$}": (KNOWN, 0),  # DECSASD
    "$~": (KNOWN, 0),  # DECSSDT
    " t": (KNOWN, 0),  # DECSWBV
    " u": (KNOWN, 0),  # DECSMBV
}
"""Prefix and intermediate bytes and final byte -> event and the most parameters it takes (0: all, or none)."""

SIGNED: Final = {"a": 1, "e": 1, "j": -1, "k": -1}
"""Final bytes whose event takes a signed count."""

TAKES_ALL: Final = frozenset(
    {"set_mode", "reset_mode", "select_graphic_rendition", "save_modes", "restore_modes"}
)
"""Events that take every parameter there is."""

ESCAPE: Final[dict[str, tuple[str, tuple[int, ...]]]] = {
    "6": ("back_index", ()),  # DECBI
    "7": ("save_cursor", ()),  # DECSC
    "8": ("restore_cursor", ()),  # DECRC
    "9": ("forward_index", ()),  # DECFI
    "=": (KNOWN, ()),  # DECKPAM
    ">": (KNOWN, ()),  # DECKPNM
    "<": (KNOWN, ()),  # leave VT52 mode
    "D": ("index", ()),  # IND
    "E": ("next_line", ()),  # NEL
    "F": (KNOWN, ()),  # cursor to lower left corner, on terminals that no one has (practice)
    "H": ("set_tab_stop", ()),  # HTS
    "M": ("reverse_index", ()),  # RI
    "N": ("single_shift", (2,)),  # SS2
    "O": ("single_shift", (3,)),  # SS3
    "V": ("set_guard", (1,)),  # SPA
    "W": ("set_guard", (0,)),  # EPA
    "Z": ("report_device_attributes", (0,)),  # DECID
    "\\": (KNOWN, ()),  # ST without a string before it
    "c": ("reset", ()),  # RIS
    "l": (KNOWN, ()),
    "m": (KNOWN, ()),
    "n": ("alternate_charset", (2,)),  # LS2
    "o": ("alternate_charset", (3,)),  # LS3
    "|": ("lock_right", (3,)),  # LS3R
    "}": ("lock_right", (2,)),  # LS2R
    "~": ("lock_right", (1,)),  # LS1R
    "#3": ("line_width", (2,)),  # DECDHL, the upper half
    "#4": ("line_width", (2,)),  # DECDHL, the lower half
    "#5": ("line_width", (1,)),  # DECSWL
    "#6": ("line_width", (2,)),  # DECDWL
    "#8": ("alignment_display", ()),  # DECALN
    " F": (KNOWN, ()),  # S7C1T
    " G": (KNOWN, ()),  # S8C1T
    " L": (KNOWN, ()),  # ANSI conformance levels
    " M": (KNOWN, ()),
    " N": (KNOWN, ()),
    "%@": (KNOWN, ()),  # leave UTF-8, which the encoding decides here
    "%G": (KNOWN, ()),
}
"""Intermediate bytes and final byte -> event and arguments."""

CONTROLS: Final[dict[int, str]] = {
    0x00: KNOWN,  # NUL fills time
    0x05: KNOWN,  # ENQ
    0x07: "bell",
    0x08: "backspace",
    0x09: "tab",
    0x0A: "linefeed",
    0x0B: "linefeed",  # VT
    0x0C: "linefeed",  # FF
    0x0D: "carriage_return",
    0x0E: "shift_out",
    0x0F: "shift_in",
    0x11: KNOWN,  # XON
    0x13: KNOWN,  # XOFF
    0x18: KNOWN,  # CAN outside a sequence
    0x1A: KNOWN,  # SUB outside a sequence
    0x7F: KNOWN,  # DEL fills time
}
"""C0 -> event. What is not here is not understood."""

C1: Final[dict[int, str]] = {code: chr(code - 0x40) for code in range(0x80, 0xA0)}
"""C1 -> the final byte of the escape sequence that means the same (ECMA-48, section 5.3)."""
