"""Cases that can be read aloud: a size, bytes, rows, and where the cursor is then.

Sources, named at each group: ECMA-48, 5th edition (1991); VT100 User Guide; VT220 and VT420 Programmer Reference
Manuals. What they leave open is marked "common practice, no source". A case for a mistake is named for the mistake.
"""

from __future__ import annotations

from collections import Counter

import pytest

from fit.dialect.ecma48 import Ecma48
from fit.screen.fates import Fates, Repeats
from fit.screen.named import parse_size
from fit.screen.rules import DecalnRule, PendingRule, Rules, SelectiveRule, WrapRule
from fit.screen.screen import Screen
from fit.units import Size


def play(size: str, data: bytes, rules: Rules | None = None, encoding: str = "utf-8") -> Screen:
    """The screen after the bytes, fed whole, and checked against the same bytes fed one by one."""
    whole, single = (Screen(parse_size(size), rules, Fates(len(data))) for _ in range(2))
    dialect = Ecma48(encoding)
    whole.apply(dialect.feed(data, 0))
    whole.apply(dialect.finish())
    dialect = Ecma48(encoding)
    for offset in range(len(data)):
        single.apply(dialect.feed(data[offset : offset + 1], offset))
    single.apply(dialect.finish())
    assert single.display == whole.display
    assert single.cursor == whole.cursor
    assert single.not_understood == whole.not_understood
    return whole


def rows(screen: Screen) -> list[str]:
    return [row.rstrip() for row in screen.display]


Case = tuple[str, str, bytes, list[str], tuple[int, int]]

CURSOR: list[
    Case
] = [  # ECMA-48, 8.3: CUP CUU CUD CUF CUB CNL CPL CHA HVP VPA HPR VPR HPB VPB CR LF BS HT CHT CBT
    ("CUP counts from 1", "10x3", b"\x1b[2;3Hx", ["", "  x", ""], (1, 3)),
    ("CUP without parameters goes home", "10x3", b"ab\x1b[Hx", ["xb", "", ""], (0, 1)),
    ("CUP beyond the screen stops at its edges", "10x3", b"\x1b[99;99Hx", ["", "", "         x"], (2, 9)),
    ("CUP with a zero is 1", "10x3", b"\x1b[0;0Hx", ["x", "", ""], (0, 1)),
    ("HVP is CUP", "10x3", b"\x1b[2;3fx", ["", "  x", ""], (1, 3)),
    ("CUU stops at the top", "10x3", b"\x1b[3;1H\x1b[9Ax", ["x", "", ""], (0, 1)),
    ("CUD stops at the bottom", "10x3", b"\x1b[9Bx", ["", "", "x"], (2, 1)),
    ("CUF stops at the right", "10x3", b"\x1b[99Cx", ["         x", "", ""], (0, 9)),
    ("CUB stops at the left", "10x3", b"abc\x1b[9Dx", ["xbc", "", ""], (0, 1)),
    ("CNL and CPL go to column 1", "10x3", b"ab\x1b[Ec\x1b[Fd", ["db", "c", ""], (0, 1)),
    ("CHA, VPA", "10x3", b"\x1b[5G\x1b[2dx", ["", "    x", ""], (1, 5)),
    ("HPA is bound to its own final byte", "10x3", b"\x1b[4`x", ["   x", "", ""], (0, 4)),
    ("HPR and VPR", "10x3", b"\x1b[2a\x1b[2ex", ["", "", "  x"], (2, 3)),
    ("HPB and VPB", "10x3", b"\x1b[3;9H\x1b[2j\x1b[2kx", ["      x", "", ""], (0, 7)),
    ("BS stops at the left", "10x3", b"a\b\b\bx", ["x", "", ""], (0, 1)),
    ("LF keeps the column", "10x3", b"ab\nc", ["ab", "  c", ""], (1, 3)),
    ("NEL returns to column 1", "10x3", b"ab\x1bEc", ["ab", "c", ""], (1, 1)),
    ("IND and RI", "10x3", b"ab\x1bDc\x1bMd", ["ab d", "  c", ""], (0, 4)),
    ("LF at the bottom scrolls", "10x3", b"a\r\nb\r\nc\r\nd", ["b", "c", "d"], (2, 1)),
    ("RI at the top scrolls down", "10x3", b"a\r\nb\x1b[H\x1bMz", ["z", "a", "b"], (0, 1)),
    ("HT every eight columns", "20x1", b"\tx\ty", ["        x       y"], (0, 17)),
    ("HT stops in the last column", "20x1", b"\t\t\tx", ["                   x"], (0, 19)),
    ("CHT and CBT", "30x1", b"\x1b[2Ix\x1b[2Zy", ["        y       x"], (0, 9)),
    ("HTS and TBC", "20x1", b"\x1b[4G\x1bH\r\tx\x1b[4G\x1b[g\r\ty", ["   x    y"], (0, 9)),
    ("TBC 3 clears all stops", "20x1", b"\x1b[3g\tx", ["                   x"], (0, 19)),
    ("LNM: a line feed returns", "10x3", b"\x1b[20hab\nc", ["ab", "c", ""], (1, 1)),
    ("VT and FF feed a line", "10x3", b"a\vb\fc", ["a", " b", "  c"], (2, 3)),
]

REGION: list[Case] = [  # VT220 Programmer Reference Manual, chapter 4: DECSTBM, DECOM
    ("DECSTBM homes the cursor", "9x4", b"abc\x1b[2;3rx", ["xbc", "", "", ""], (0, 1)),
    (
        "LF scrolls the region only",
        "9x4",
        b"a\r\nb\r\nc\r\nd\x1b[2;3r\x1b[3;1H\ne",
        ["a", "c", "e", "d"],
        (2, 1),
    ),
    ("LF below the region stays", "9x4", b"\x1b[1;2r\x1b[4;1Ha\nb", ["", "", "", "ab"], (3, 2)),
    (
        "LF below the region moves down to the edge",
        "9x4",
        b"\x1b[1;2r\x1b[3;1Ha\nb\nc",
        ["", "", "a", " bc"],
        (3, 3),
    ),
    ("CUU stops at the top margin", "9x4", b"\x1b[2;4r\x1b[3;1H\x1b[9Ax", ["", "x", "", ""], (1, 1)),
    ("CUU from above the region", "9x4", b"\x1b[3;4r\x1b[2;1H\x1b[9Ax", ["x", "", "", ""], (0, 1)),
    ("CUD stops at the bottom margin", "9x4", b"\x1b[1;2r\x1b[9Bx", ["", "x", "", ""], (1, 1)),
    ("CUD from below the region", "9x4", b"\x1b[1;2r\x1b[3;1H\x1b[9Bx", ["", "", "", "x"], (3, 1)),
    (
        "RI at the top margin",
        "9x4",
        b"a\r\nb\r\nc\r\nd\x1b[2;3r\x1b[2;1H\x1bMe",
        ["a", "e", "b", "d"],
        (1, 1),
    ),
    ("a region of one row is none", "9x4", b"abc\x1b[2;2rx", ["abcx", "", "", ""], (0, 4)),
    ("a region that ends below the screen", "9x3", b"abc\x1b[1;25rx", ["xbc", "", ""], (0, 1)),
    ("a region that starts below the screen", "9x3", b"abc\x1b[24;25rx", ["abcx", "", ""], (0, 4)),
    ("DECOM homes into the region", "9x4", b"\x1b[2;3r\x1b[?6hx", ["", "x", "", ""], (1, 1)),
    (
        "CUP under DECOM stops at the region",
        "9x4",
        b"\x1b[2;3r\x1b[?6h\x1b[9;2Hx",
        ["", "", " x", ""],
        (2, 2),
    ),
    ("VPA under DECOM", "9x4", b"\x1b[2;3r\x1b[?6h\x1b[2dx", ["", "", "x", ""], (2, 1)),
    (
        "IL outside the region does nothing",
        "9x4",
        b"a\r\nb\r\nc\x1b[2;3r\x1b[H\x1b[L",
        ["a", "b", "c", ""],
        (0, 0),
    ),
    ("SU and SD", "9x4", b"a\r\nb\r\nc\r\nd\x1b[S\x1b[2T", ["", "", "b", "c"], (3, 1)),
    ("SU in a region", "9x4", b"a\r\nb\r\nc\r\nd\x1b[2;3r\x1b[S", ["a", "c", "", "d"], (0, 0)),
    ("a huge SU clears", "9x4", b"a\r\nb\x1b[99999S", ["", "", "", ""], (1, 1)),
]

SIDES: list[
    Case
] = [  # VT420 Programmer Reference Manual, chapter 5: DECLRMM, DECSLRM, DECIC, DECDC, DECFI, DECBI
    (
        "text wraps at the right margin",
        "9x3",
        b"\x1b[?69h\x1b[3;5s\x1b[1;3Habcd",
        ["  abc", "  d", ""],
        (1, 3),
    ),
    ("DECSLRM homes", "9x3", b"abc\x1b[?69h\x1b[3;5sx", ["xbc", "", ""], (0, 1)),
    (
        "LF scrolls between the margins",
        "6x2",
        b"abcdef\r\nghijkl\x1b[?69h\x1b[3;4s\x1b[2;3H\n",
        ["abijef", "gh  kl"],
        (1, 2),
    ),
    (
        "LF outside the margins does not scroll",
        "6x2",
        b"ab\r\ncd\x1b[?69h\x1b[3;4s\x1b[2;1H\n",
        ["ab", "cd"],
        (1, 0),
    ),
    ("ICH stops at the right margin", "6x1", b"abcdef\x1b[?69h\x1b[2;4s\x1b[1;2H\x1b[@", ["a bcef"], (0, 1)),
    (
        "DCH pulls from the right margin",
        "6x1",
        b"abcdef\x1b[?69h\x1b[2;4s\x1b[1;2H\x1b[P",
        ["acd ef"],
        (0, 1),
    ),
    ("DECIC", "6x2", b"abc\r\ndef\x1b[1;2H\x1b['}", ["a bc", "d ef"], (0, 1)),
    ("DECDC", "6x2", b"abc\r\ndef\x1b[1;2H\x1b['~", ["ac", "df"], (0, 1)),
    ("DECBI at the left margin", "6x2", b"abc\r\ndef\x1b[H\x1b6", [" abc", " def"], (0, 0)),
    ("DECFI at the right margin", "3x2", b"abc\r\ndef\x1b[1;3H\x1b9", ["bc", "ef"], (0, 2)),
    ("without DECLRMM CSI s saves the cursor", "9x3", b"ab\x1b[s\x1b[3;3H\x1b[ux", ["abx", "", ""], (0, 3)),
]

EDIT: list[Case] = [  # ECMA-48, 8.3: ED EL ECH ICH DCH IL DL REP
    ("EL 0", "6x1", b"abcdef\x1b[3G\x1b[K", ["ab"], (0, 2)),
    ("EL 1", "6x1", b"abcdef\x1b[3G\x1b[1K", ["   def"], (0, 2)),
    ("EL 2", "6x1", b"abcdef\x1b[3G\x1b[2K", [""], (0, 2)),
    ("ED 0", "3x3", b"abcdefghi\x1b[2;2H\x1b[J", ["abc", "d", ""], (1, 1)),
    ("ED 1", "3x3", b"abcdefghi\x1b[2;2H\x1b[1J", ["", "  f", "ghi"], (1, 1)),
    ("ED 2 leaves the cursor", "3x3", b"abcdefghi\x1b[2;2H\x1b[2J", ["", "", ""], (1, 1)),
    ("ED 3 leaves the screen", "3x1", b"abc\x1b[3J", ["abc"], (0, 2)),
    ("ECH", "6x1", b"abcdef\x1b[2G\x1b[3X", ["a   ef"], (0, 1)),
    ("ICH, and what passes the edge stays gone", "6x1", b"abcdef\x1b[2G\x1b[2@\x1b[2P", ["abcd"], (0, 1)),
    ("DCH", "6x1", b"abcdef\x1b[2G\x1b[2P", ["adef"], (0, 1)),
    ("DCH of more than there is", "6x1", b"abcdef\x1b[2G\x1b[99P", ["a"], (0, 1)),
    ("IL", "3x3", b"a\r\nb\r\nc\x1b[2;2H\x1b[L", ["a", "", "b"], (1, 1)),
    ("DL", "3x3", b"a\r\nb\r\nc\x1b[2;2H\x1b[M", ["a", "c", ""], (1, 1)),
    (
        "DL leaves no row behind that was never written",
        "3x3",
        b"a\r\n\r\nc\x1b[H\x1b[M",
        ["", "c", ""],
        (0, 0),
    ),
    ("REP", "6x1", b"ab\x1b[3b", ["abbbb"], (0, 5)),
    ("REP wraps", "3x2", b"ab\x1b[3b", ["abb", "bb"], (1, 2)),
    ("REP of a wide character", "6x1", "海".encode() + b"\x1b[b", ["海海"], (0, 4)),
    ("IRM", "6x1", b"abc\x1b[H\x1b[4hxy\x1b[4lz", ["xyzbc"], (0, 3)),
    ("IRM clips at the edge", "4x1", b"abcd\x1b[H\x1b[4hxy", ["xyab"], (0, 2)),
]

WRAP: list[Case] = [  # VT100 User Guide, chapter 3: DECAWM. The pending wrap: common practice, no source
    ("the wrap waits for the next glyph", "3x2", b"abc", ["abc", ""], (0, 2)),
    ("the next glyph wraps", "3x2", b"abcd", ["abc", "d"], (1, 1)),
    ("CR LF after a full row gives no blank row", "3x3", b"abc\r\nd", ["abc", "d", ""], (1, 1)),
    ("BS cancels the wrap", "3x2", b"abc\bx", ["axc", ""], (0, 2)),
    ("CUU cancels the wrap", "3x2", b"abc\x1b[Ax", ["abx", ""], (0, 2)),
    ("CUF cancels the wrap", "3x2", b"abc\x1b[Cx", ["abx", ""], (0, 2)),
    ("SGR keeps the wrap", "3x2", b"abc\x1b[1mx", ["abc", "x"], (1, 1)),
    ("DECSC keeps the wrap", "3x2", b"abc\x1b7\x1b[H\x1b8x", ["abc", "x"], (1, 1)),
    ("EL acts on the last column while the wrap waits", "3x2", b"abc\x1b[K", ["ab", ""], (0, 2)),
    ("ECH acts on the last column while the wrap waits", "3x2", b"abc\x1b[X", ["ab", ""], (0, 2)),
    ("DCH acts on the last column while the wrap waits", "3x2", b"abc\x1b[P", ["ab", ""], (0, 2)),
    ("ED acts on the last column while the wrap waits", "3x2", b"abc\x1b[J", ["ab", ""], (0, 2)),
    ("without DECAWM the last column is replaced", "3x2", b"\x1b[?7labcde", ["abe", ""], (0, 2)),
    ("a wide glyph that does not fit wraps", "3x2", "ab海".encode(), ["ab", "海"], (1, 2)),
    ("a wide glyph in the last two columns", "4x2", "ab海c".encode(), ["ab海", "c"], (1, 1)),
    ("one column", "1x3", b"abc", ["a", "b", "c"], (2, 0)),
    ("one cell", "1x1", b"abc", ["c"], (0, 0)),
    ("wrapping in the last row scrolls", "3x2", b"abcdefg", ["def", "g"], (1, 1)),
]

TEXT: list[
    Case
] = [  # Unicode Standard Annexes 11 and 29 by way of wcwidth; VT220 manual, chapter 2, for the sets
    ("a combining mark takes no cell", "5x1", "e\u0301x".encode(), ["e\u0301x"], (0, 2)),
    ("a combining mark while the wrap waits", "2x1", "ae\u0301".encode(), ["ae\u0301"], (0, 1)),
    ("a joiner ends no run", "9x1", "a\u200db".encode(), ["a\u200db"], (0, 2)),
    ("a zero-width space ends no run", "9x1", "a\u200bb".encode(), ["a\u200bb"], (0, 2)),
    ("a variation selector ends no run", "9x1", "a\ufe0eb".encode(), ["a\ufe0eb"], (0, 2)),
    ("an encoded C1 control ends no run", "9x2", "a\u0085b".encode(), ["a", "b"], (1, 1)),
    ("an encoded CSI", "9x1", "ab\u009b1Gx".encode(), ["xb"], (0, 1)),
    ("the right half of a wide glyph is overwritten", "5x1", "海\x1b[2Gx".encode(), [" x"], (0, 2)),
    ("the left half of a wide glyph is overwritten", "5x1", "海\x1b[1Gx".encode(), ["x"], (0, 1)),
    ("half a wide glyph is erased", "5x1", "海b\x1b[2G\x1b[X".encode(), ["  b"], (0, 1)),
    ("bytes that are no UTF-8", "9x1", b"a\xff\xe2\x94b", ["a\ufffd\ufffdb"], (0, 4)),
    ("a truncated character at the end", "9x1", b"a\xe2\x94", ["a\ufffd"], (0, 2)),
    ("DEC special graphics as G0", "9x1", b"\x1b(0lqk\x1b(Bq", ["┌─┐q"], (0, 4)),
    ("SO and SI", "9x1", b"\x1b)0q\x0eq\x0fq", ["q─q"], (0, 3)),
    ("SS2 takes one character", "9x1", b"\x1b*0\x1bNqq", ["─q"], (0, 2)),
    ("SS3 takes one character", "9x1", b"\x1b+0\x1bOqq", ["─q"], (0, 2)),
    ("LS2", "9x1", b"\x1b*0\x1bnq\x0fq", ["─q"], (0, 2)),
    ("the United Kingdom set", "9x1", b"\x1b(A#\x1b(B#", ["£#"], (0, 2)),
    ("a blank and a new-line symbol in the graphics set", "9x1", b"\x1b(0a_h", ["▒\u00a0␤"], (0, 3)),
    ("letters below the graphics set", "9x1", b"\x1b(0+,-.0", ["+,-.0"], (0, 5)),
]

STRINGS: list[Case] = [  # ECMA-48, 5.6 and 8.3: OSC DCS APC PM SOS ST CAN SUB
    ("OSC ends with ST", "9x1", b"\x1b]2;lamp\x1b\\x", ["x"], (0, 1)),
    ("OSC ends with BEL", "9x1", b"\x1b]2;lamp\x07x", ["x"], (0, 1)),
    ("DCS", "9x1", b"\x1bP1$qm\x1b\\x", ["x"], (0, 1)),
    ("APC, PM and SOS", "9x1", b"\x1b_a\x1b\\\x1b^b\x1b\\\x1bXc\x1b\\x", ["x"], (0, 1)),
    ("BEL ends no DCS", "9x1", b"\x1bPa\x07b\x1b\\x", ["x"], (0, 1)),
    ("CAN ends a string", "9x1", b"\x1b]2;a\x18x", ["x"], (0, 1)),
    ("CAN abandons a sequence", "9x1", b"\x1b[2\x18x", ["x"], (0, 1)),
    ("ESC starts anew", "9x1", b"\x1b[2\x1b[3Gx", ["  x"], (0, 3)),
    ("controls inside a sequence are carried out", "9x2", b"ab\x1b[2\r\nCx", ["ab", "  x"], (1, 3)),
    ("colon sub-parameters", "9x1", b"\x1b[38:2::1:2:3mx\x1b[4:3my", ["xy"], (0, 2)),
    ("DECSTR is no letter", "9x1", b"\x1b[!px", ["x"], (0, 1)),
    ("DECSCA is no letter", "9x1", b'\x1b["qx', ["x"], (0, 1)),
    ("S7C1T is no letter", "9x1", b"\x1b Fx", ["x"], (0, 1)),
    ("two intermediate bytes are no letters", "9x1", b"\x1b*+0x", ["x"], (0, 1)),
    ("a parameter of many digits", "9x2", b"\x1b[" + b"9" * 5000 + b"Bx", ["", "x"], (1, 1)),
    ("an extra parameter is passed over", "9x1", b"ab\x1b[1;7Gx", ["xb"], (0, 1)),
    ("a private form of a common final is no such move", "9x1", b"ab\x1b[?1Gx", ["abx"], (0, 3)),
]

PAGES: list[
    Case
] = [  # private modes 47, 1047, 1048, 1049: common practice, no source; DECSC, RIS, DECSTR: VT220 manual
    ("1049 hides and brings back", "5x1", b"ab\x1b[?1049hxy\x1b[?1049lc", ["abc"], (0, 3)),
    ("1049 shows a blank page", "5x1", b"ab\x1b[?1049hx", ["  x"], (0, 3)),
    ("47 keeps the other page", "5x1", b"a\x1b[?47h\rx\x1b[?47l\x1b[?47h", ["x"], (0, 1)),
    ("1047 clears on leaving", "5x1", b"\x1b[?1047hx\x1b[?1047l\x1b[?1047h", [""], (0, 1)),
    ("1048 saves the cursor", "5x1", b"ab\x1b[?1048h\r\x1b[?1048lx", ["abx"], (0, 3)),
    ("DECSC is one slot", "5x1", b"a\x1b7b\x1b7\x1b8\x1b8x", ["abx"], (0, 3)),
    ("DECRC without DECSC goes home", "5x1", b"ab\x1b8x", ["xb"], (0, 1)),
    (
        "each page has its save point",
        "5x2",
        b"a\x1b7\x1b[?47h\x1b[2;3H\x1b7\x1b[?47l\x1b8x",
        ["ax", ""],
        (0, 2),
    ),
    ("DECSC saves the set", "5x1", b"\x1b(0\x1b7\x1b(B\x1b8q", ["─"], (0, 1)),
    ("RIS forgets save points", "5x1", b"ab\x1b7\x1bc\x1b8x", ["x"], (0, 1)),
    ("RIS brings back tab stops", "20x1", b"\x1b[3g\x1bc\tx", ["        x"], (0, 9)),
    ("DECSTR leaves the text", "5x2", b"ab\x1b[?6h\x1b[4h\x1b[!p\x1b[Hx", ["xb", ""], (0, 1)),
    ("DECALN fills and homes", "3x2", b"\x1b[2;2H\x1b#8", ["EEE", "EEE"], (0, 0)),
    ("DECCOLM clears and homes, the width stays", "3x2", b"abcd\x1b[?3h", ["", ""], (0, 0)),
    ("XTSAVE and XTRESTORE", "3x2", b"\x1b[?7s\x1b[?7l\x1b[?7rabcd", ["abc", "d"], (1, 1)),
]

PROTECTED: list[
    Case
] = [  # VT220 manual, chapter 4: DECSCA DECSED DECSEL; VT420 manual, chapter 5: rectangles
    ("DECSEL spares", "6x1", b'a\x1b[1"qb\x1b[0"qc\x1b[?2K', [" b"], (0, 3)),
    ("DECSED spares", "6x1", b'a\x1b[1"qb\x1b[0"qc\x1b[?2J', [" b"], (0, 3)),
    ("EL spares nothing", "6x1", b'a\x1b[1"qb\x1b[2K', [""], (0, 2)),
    ("ED spares what SPA guards", "6x1", b"a\x1bVb\x1bWc\x1b[2J", [" b"], (0, 3)),
    ("DECFRA", "4x3", b"\x1b[88;2;2;3;3$x", ["", " XX", " XX"], (0, 0)),
    ("DECERA", "3x2", b"abcdef\x1b[1;2;2;2$z", ["a c", "d f"], (1, 2)),
    ("DECSERA", "3x1", b'\x1b[1"qa\x1b[0"qb\x1b[1;1;1;3${', ["a"], (0, 2)),
    ("DECCRA", "4x2", b"ab\x1b[1;1;1;2;1;2;3$v", ["ab", "  ab"], (0, 2)),
]

DOUBLE: list[Case] = [  # VT100 User Guide, chapter 3: DECDWL, DECDHL, DECSWL
    ("half as many glyphs fit in a row of double width", "6x2", b"\x1b#6abcd", ["abc", "d"], (1, 1)),
    ("what stood right of the middle is lost", "6x2", b"abcdef\x1b#6", ["abc", ""], (0, 2)),
    ("the cursor stays left of the middle", "6x2", b"\x1b#6\x1b[1;6Hx", ["  x", ""], (0, 2)),
    ("single width again", "6x2", b"\x1b#3ab\x1b#5cdef", ["abcdef", ""], (0, 5)),
    ("erasing the screen ends double width", "6x2", b"\x1b#6\x1b[2Jabcd", ["abcd", ""], (0, 4)),
]

MODE_VT52: list[Case] = [  # VT100 User Guide, chapter 3: VT52 compatible mode
    ("ESC Y addresses the cursor", "9x3", b'\x1b[?2l\x1bY"#x', ["", "", "   x"], (2, 4)),
    ("ESC < leads back", "9x3", b"\x1b[?2l\x1bH\x1b<\x1b[2;2Hx", ["", " x", ""], (1, 2)),
    ("ESC J and ESC K", "3x2", b"abcdef\x1b[?2l\x1bH\x1bC\x1bK\x1bB\x1bJx", ["a", "dx"], (1, 2)),
]

ALL = CURSOR + REGION + SIDES + EDIT + WRAP + TEXT + STRINGS + PAGES + PROTECTED + DOUBLE + MODE_VT52


@pytest.mark.parametrize(("size", "data", "shown", "cursor"), [c[1:] for c in ALL], ids=[c[0] for c in ALL])
def test_case(size: str, data: bytes, shown: list[str], cursor: tuple[int, int]) -> None:
    screen = play(size, data)
    assert (rows(screen), (screen.cursor.row, screen.cursor.column)) == (shown, cursor)


def test_eight_bit_controls_in_latin_1() -> None:
    assert rows(play("9x3", b"ab\x9b2;2Hx\x85y", encoding="latin-1")) == ["ab", " x", "y"]


def test_code_page_437_has_letters_where_others_have_controls() -> None:
    assert rows(play("9x1", b"\x80\x9b\xc4\xb3", encoding="cp437")) == ["Ç¢─│"]


def test_seven_bit_drops_bit_7() -> None:
    assert rows(play("9x2", b"lam\xf0\x8d\x8aoil", encoding="7bit")) == ["lamp", "oil"]


def test_g1_in_the_right_half_of_an_8_bit_set() -> None:
    assert rows(play("9x1", b"\x1b)0\x1b~\xf1", encoding="latin-1")) == ["─"]


def test_immediate_wrap_leaves_a_blank_row_after_a_full_one() -> None:
    screen = play("3x3", b"abc\r\nd", Rules(wrap=WrapRule.IMMEDIATE))
    assert rows(screen) == ["abc", "", "d"]


def test_without_wrap_later_glyphs_replace_the_last() -> None:
    assert rows(play("3x2", b"abcde", Rules(wrap=WrapRule.NONE))) == ["abe", ""]


def test_word_wrap_moves_the_word_that_does_not_fit() -> None:
    screen = play("9x3", b"oil the lamp now", Rules(wrap=WrapRule.WORD))
    assert rows(screen) == ["oil the", "lamp now", ""]


def test_word_wrap_leaves_placed_words() -> None:
    screen = play("9x3", b"\x1b[1;5Hoil lamp", Rules(wrap=WrapRule.WORD))
    assert rows(screen) == ["    oil l", "amp", ""]


def test_word_wrap_cuts_a_word_longer_than_the_row() -> None:
    assert rows(play("4x3", b"ab lighthouse", Rules(wrap=WrapRule.WORD))) == ["ligh", "thou", "se"]


def test_keep_rule_at_a_pending_wrap() -> None:
    assert rows(play("3x2", b"abc\x1b[K", Rules(pending=PendingRule.KEEP))) == ["abc", ""]


def test_decaln_may_leave_the_cursor() -> None:
    screen = play("3x2", b"\x1b[2;2H\x1b#8", Rules(decaln=DecalnRule.STAY))
    assert (screen.cursor.row, screen.cursor.column) == (1, 1)


@pytest.mark.parametrize(
    ("rule", "shown"),
    [(SelectiveRule.HONOURED, " b"), (SelectiveRule.PLAIN, ""), (SelectiveRule.IGNORED, "abc")],
)
def test_selective_erase_rules(rule: SelectiveRule, shown: str) -> None:
    assert rows(play("6x1", b'a\x1b[1"qb\x1b[0"qc\x1b[?2K', Rules(selective_erase=rule))) == [shown]


def test_insert_line_may_return_to_column_1() -> None:
    assert play("3x3", b"abc\x1b[L", Rules(insert_lines_home=True)).cursor.column == 0


def test_sequences_that_nobody_understands_are_kept() -> None:
    screen = play("9x1", b"a\x1b[5;5yb\x1b)\x1b%Q\x02c")
    assert rows(screen) == ["abc"]
    assert screen.not_understood == Counter([b"\x1b[5;5y", b"\x1b)", b"\x1b%Q", b"\x02"])


def test_an_unfinished_sequence_at_the_end_is_kept() -> None:
    assert play("9x1", b"a\x1b[12;").not_understood == {b"\x1b[12;": 1}
    assert play("9x1", b"a\x1b]2;lamp").not_understood == {b"\x1b]2;lamp": 1}


def test_an_escape_that_another_one_cuts_off_is_counted() -> None:
    assert play("9x1", b"\x1b" * 5 + b"[2Cx").not_understood == {b"\x1b": 4}
    assert play("9x1", b"\x1b]2;a\x1b\\\x1b[2Cx").not_understood == {}


def test_hostile_repeats_end() -> None:
    screen = play("9x3", b"a" + b"\x1b[9999b" * 3)
    assert rows(screen)[:2] == ["a" * 9] * 2
    fates = Fates(3, Repeats(3, Size(3, 9)))
    screen = Screen(parse_size("9x3"), None, fates)
    screen.draw("a", 0)
    for at in range(200_000):
        screen.at = at
        screen.repeat(9999)
    assert screen.not_repeated > 0


@pytest.mark.parametrize(
    ("is_wrapping", "wanted", "cursor"), [(True, ["abcX", "e"], (0, 3)), (False, ["abcd", "X"], (1, 1))]
)
def test_bs_in_column_1_goes_to_the_row_above_where_the_terminal_has_bw(
    is_wrapping: bool, wanted: list[str], cursor: tuple[int, int]
) -> None:
    """terminfo(5): bw, cub1 wraps from column 0 to the last column."""
    screen = play("4x2", b"abcd\r\ne\b\bX", Rules(back_wrap=is_wrapping))
    assert rows(screen) == wanted
    assert (screen.row, screen.column) == cursor
    assert rows(play("4x2", b"\b\bab", Rules(back_wrap=is_wrapping))) == ["ab", ""]


def test_only_a_step_of_one_goes_back_over_the_edge() -> None:
    """terminfo(5): bw says that cub1 wraps; ECMA-48 has no such CUB, and programs send a great one to reach column 1."""
    rules = Rules(back_wrap=True)
    assert rows(play("4x2", b"abcd\r\ne\x1b[200DX", rules)) == ["abcd", "X"]
    assert rows(play("4x2", b"abcd\r\n\x1b[DX", rules)) == ["abcX", ""]


def test_resize_drops_blank_rows_below_then_rows_above() -> None:
    screen = play("5x4", b"a\r\nb\r\nc")
    screen.resize(3, 5)
    assert rows(screen) == ["a", "b", "c"]
    screen.resize(2, 5)
    assert rows(screen) == ["b", "c"]
    screen.resize(3, 1)
    assert rows(screen) == ["b", "c", ""]


def test_resize_wider_ends_a_pending_wrap() -> None:
    screen = play("3x2", b"abc")
    screen.resize(2, 5)
    screen.draw("d", 0)
    assert rows(screen) == ["abcd", ""]
