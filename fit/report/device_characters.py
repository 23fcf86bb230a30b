"""What a 7-bit device shows for a character it lacks: our own table, before any general one.

ISO/IEC 646 (ASCII) is what these machines print; which sign stands for which is common practice, no source.
Each entry is read aloud as the character is, and nothing in it can be taken for another value.
"""

from __future__ import annotations

import unicodedata
from typing import Final

_SIGNS: Final = {
    # dashes and hyphens
    "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": "-", "\u2014": "--", "\u2015": "--", "\u2212": "-", "\u2043": "-",
    "\u2e3a": "--", "\u00af": "-", "\u203e": "-", "\u23af": "-", "\u23aa": "|", "\u30fc": "-", "\u301c": "~",
    # quotation marks and primes
    "\u2018": "'", "\u2019": "'", "\u201a": "'", "\u201b": "'", "\u2039": "'", "\u203a": "'", "\u2032": "'", "\u00b4": "'",
    "\u02bc": "'", "\u02b9": "'", "\u201c": '"', "\u201d": '"', "\u201e": '"', "\u201f": '"', "\u00ab": '"', "\u00bb": '"',
    "\u2033": '"', "\u300c": '"', "\u300d": '"',
    # dots, bullets, ticks
    "\u2026": "...", "\u2025": "..", "\u2024": ".", "\u2022": "*", "\u2023": ">", "\u00b7": "*", "\u2219": "*", "\u22c5": "*",
    "\u25cf": "*", "\u25cb": "o", "\u25e6": "o", "\u25aa": "*", "\u25ab": "o", "\u25a0": "#", "\u25a1": "o", "\u25c6": "*",
    "\u25c7": "o", "\u2605": "*", "\u2606": "*", "\u2217": "*", "\u2610": "[ ]", "\u2611": "[x]", "\u2612": "[x]",
    "\u2713": "+", "\u2714": "+", "\u2717": "x", "\u2718": "x", "\u2715": "x", "\u25b6": ">", "\u25b8": ">", "\u25ba": ">",
    "\u25c0": "<", "\u25c4": "<", "\u25b2": "^", "\u25bc": "v", "\u25b3": "^", "\u25bd": "v", "\u25ca": "o", "\u261e": "->",
    "\u261c": "<-", "\u2020": "+", "\u2021": "++", "\u2666": "*", "\u2665": "<3",
    "\u2660": "*", "\u2663": "*", "\u263a": ":)", "\u263b": ":)", "\u263c": "*", "\u266a": "*", "\u266b": "*",
    "\u203c": "!!", "\u25ac": "-",
    # arrows
    "\u2190": "<-", "\u2192": "->", "\u2194": "<->", "\u2191": "^", "\u2193": "v", "\u21d0": "<=", "\u21d2": "=>",
    "\u21d4": "<=>", "\u27f5": "<-", "\u27f6": "->", "\u279c": "->", "\u2794": "->", "\u21b5": "<-'", "\u23ce": "<-'",
    "\u21b3": "'->", "\u2195": "^v", "\u21a8": "^v", "\u221f": "angle ",
    # numbers and units
    "\u00d7": "x", "\u00f7": "/", "\u2044": "/", "\u2215": "/", "\u00b1": "+/-", "\u2213": "-/+", "\u2264": "<=", "\u2265": ">=",
    "\u2260": "/=", "\u2248": "~", "\u223c": "~", "\u2243": "~", "\u2245": "~", "\u2261": "==", "\u226a": "<<", "\u226b": ">>",
    "\u221e": "infinity", "\u221a": "sqrt", "\u2211": "sum", "\u222b": "integral", "\u2206": "delta", "\u00ac": "not ",
    "\u2227": " and ", "\u2228": " or ", "\u2208": " in ", "\u2234": "therefore ", "\u2220": "angle ", "\u2300": "diameter ",
    "\u00b5": "u", "\u03bc": "u", "\u2126": "Ohm", "\u212a": "K", "\u212b": "A", "\u2030": " per mille", "\u2103": "deg C",
    "\u2109": "deg F", "\u2116": "No.",
    # money and marks
    "\u20ac": "EUR", "\u00a3": "GBP", "\u00a5": "JPY", "\u00a2": "c", "\u00a4": "$", "\u00a9": "(c)", "\u00ae": "(R)",
    "\u2122": "(TM)", "\u00a7": "sec.", "\u00b6": "par.", "\u00a6": "|", "\u00a1": "!", "\u00bf": "?", "\u00aa": "a", "\u00ba": "o",
    # angle brackets
    "\u27e8": "<", "\u27e9": ">", "\u2329": "<", "\u232a": ">",
    # spaces that a line may break at
    "\u2000": " ", "\u2001": " ", "\u2002": " ", "\u2003": " ", "\u2004": " ", "\u2005": " ", "\u2006": " ", "\u2008": " ",
    "\u2009": " ", "\u200a": " ", "\u205f": " ", "\u3000": " ", "\u2028": " ", "\u2029": " ", "\u0085": " ",
    # blocks and shades
    "\u2588": "#", "\u2593": "#", "\u2592": "%", "\u2591": ".", "\u2580": '"', "\u2584": "_", "\u258c": "|", "\u2590": "|",
}  # fmt: skip

_ROOT: Final = "\u221a"
_FRACTIONS: Final = {
    "\u00bc": "1/4", "\u00bd": "1/2", "\u00be": "3/4", "\u2153": "1/3", "\u2154": "2/3", "\u2155": "1/5", "\u2156": "2/5",
    "\u2157": "3/5", "\u2158": "4/5", "\u2159": "1/6", "\u215a": "5/6", "\u215b": "1/8", "\u215c": "3/8", "\u215d": "5/8",
    "\u215e": "7/8",
}  # fmt: skip
_RAISED: Final = dict(
    zip(
        "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079\u207a\u207b\u207f",
        "0123456789+-n",
        strict=True,
    )
)
_LOWERED: Final = dict(
    zip(
        "\u2080\u2081\u2082\u2083\u2084\u2085\u2086\u2087\u2088\u2089\u208a\u208b",
        "0123456789+-",
        strict=True,
    )
)

BY_LANGUAGE: Final = {
    "de": {"\u00e4": "ae", "\u00f6": "oe", "\u00fc": "ue", "\u00c4": "Ae", "\u00d6": "Oe", "\u00dc": "Ue", "\u00df": "ss"},
    "da": {"\u00e5": "aa", "\u00c5": "Aa", "\u00f8": "oe", "\u00d8": "Oe", "\u00e6": "ae", "\u00c6": "Ae"},
    "nb": {"\u00e5": "aa", "\u00c5": "Aa", "\u00f8": "oe", "\u00d8": "Oe", "\u00e6": "ae", "\u00c6": "Ae"},
    "sv": {"\u00e5": "aa", "\u00c5": "Aa", "\u00e4": "ae", "\u00c4": "Ae", "\u00f6": "oe", "\u00d6": "Oe"},
}  # fmt: skip
"""Letters that a language spells in its own way where it lacks them, by the language's first two letters."""

NARROW: Final = {
    "\u2014": "-",
    "\u2015": "-",
    "\u2192": ">",
    "\u2190": "<",
    "\u2026": ".",
    "\u21d2": ">",
    "\u2264": "<",
    "\u00b1": "+",
    "\u221a": "v",
    "\u263a": "o",
    "\u263b": "o",
    "\u2665": "*",
    "\u2194": "-",
    "\u2195": "|",
    "\u21a8": "|",
    "\u221f": "L",
    "\u203c": "!",
    "\u00a7": "s",
    "\u00b6": "p",
}
"""Signs of drawings, where a column is worth more than a second character."""
RELATIONS: Final = frozenset("\u21d2\u2264\u00b1")
"""Those of them that one character makes another sign of the same kind: they have two where a blank can be spared."""


def _box_drawing() -> dict[str, str]:
    """The characters U+2500 to U+257F by their names in the Unicode standard."""
    drawn = {}
    for code in range(0x2500, 0x2580):
        name = unicodedata.name(chr(code))
        ways = {
            way for way in ("HORIZONTAL", "VERTICAL", "LEFT", "RIGHT", "UP", "DOWN") if way in name.split()
        }
        if "DIAGONAL" in name:
            drawn[chr(code)] = "X" if "CROSS" in name else "/" if "UPPER RIGHT" in name else "\\"
        elif ways <= {"HORIZONTAL", "LEFT", "RIGHT"}:
            drawn[chr(code)] = "=" if "DOUBLE" in name and "DASH" not in name else "-"
        elif ways <= {"VERTICAL", "UP", "DOWN"}:
            drawn[chr(code)] = "|"
        else:
            drawn[chr(code)] = "+"
    return drawn


OWN: Final = _SIGNS | _box_drawing()


def own_form(char: str, before: str, after: str) -> str | None:
    """What stands for a character between its neighbours (empty at the ends); None where the table lacks it."""
    if char in _FRACTIONS:
        return ("-" if before.isdecimal() else "") + _FRACTIONS[char]
    if char in _RAISED:
        # 10 to the third is no 103; behind a letter (m2) nothing can be mistaken.
        return ("^" if before.isascii() and before.isdigit() else "") + _RAISED[char]
    if char in _LOWERED:
        return _LOWERED[char]
    if char == _ROOT:
        return OWN[char] + (" " if after.isalnum() else "")
    if char == "\u00bb" and not before and after in ("", " "):
        return ">"  # a bullet: as a quotation mark it stands at a word
    if char == "\u00b0":
        return (" " if before.isdigit() else "") + "deg" + (" " if after.isalnum() else "")
    return OWN.get(char)
