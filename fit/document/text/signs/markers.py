"""List markers: bullets, numbers and letters, and whether one belongs to a list at all."""

from __future__ import annotations

import re
from dataclasses import dataclass

_MARKER = re.compile(
    r"""(?![(\[][cC][)\]]\ +(?:[Cc]opyright|\d{4}\b))(?P<label>
        (?P<bullet>[-*+o\u2022\u00b7\u25a0-\u25ff\u2023\u2043\u2219\u2666\u2605\u2606\u2610-\u2612\u2192\u2713\u2714\u2794\u27a2\u27a4\u2013\u2014\u00bb\u00fex]
            |--|->|=>|-->|==>|\*\*|~|\(\*\)|\[[ xX*]?\]|\.(?!\ +[A-Z]{2,3}\b)(?=\ +(?:["'(]?[A-Z]|'\S+'\ [a-z]|[a-z]\w*\(\)\ [a-z])|\ [a-z@][\w'-]*,?\ [\w@"'(<`-]))
      | (?P<hex>[(\[][ ]?0x[0-9A-Fa-f]{1,4}[)\]]?|0x[0-9A-Fa-f]{1,4}[.)\]:])
      | (?P<number>[(\[]?(?:[A-Z]?\d{1,3}(?:[.-]\d{1,3}){0,4}(?:\.\)|[.)\]])?|\d{1,3}[a-z]?[.)\]:/]|\{\d{1,3}\}))
      | (?P<letter>[(\[]?[A-Za-z](?:\.\)|[.)\]]))
      | (?P<roman>[(\[]?[ivxlcIVXLC]{2,6}[.)\]])
      | (?P<step>(?:Step|STEP|Note|NOTE|Rule|RULE|Q|A|Item|ITEM)\s?\d{0,3}[.:)])
    )(?P<blank>[ ]+(?=\S)|(?<=\d\))(?=[A-Za-z][a-z]))""",
    re.VERBOSE,
)
WEAK = {"o", "x", "+", "--", "\u2014", "\u2013", "**", "~", "."}
"""Bullets that are words or signs of running text too: one alone is none."""
_POINTED = {"\u25bc": "\u25b2"}
"""The sign of a key, and that of the key which goes the other way: one list says what each does."""
_STRONG = re.compile(r"[(\[]?(?:\d{1,3}|[A-Za-z]|[ivxlc]{2,6})(?:\.\)|[.)\]])|\(\d{1,3}\)|\d+(?:\.\d+)+\.?")
_DASHED = re.compile(
    r"(?P<label>[\w+<>-]+(?: [\w+<>-]+)?(?:(?:, | - )[\w+<>-]+(?: [\w+<>-]+)?){1,5}(?= : )|(?:\S{1,16}(?: \S{1,12})?|[A-Za-z_][\w./-]{16,29})(?<!,)(?= +(?:-|=|:|\u2013) )|\S+(?: \S+){0,3}(?<!,)(?= +-- ))(?P<blank> +(?P<sign>--?|=|:|\u2013) +)(?=\S)"
)
_DASHES = (" - ", " = ", " : ", " -- ", " \u2013 ")
"""What each of these has: far faster to look for than the whole."""
_ROMAN = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100}


@dataclass(frozen=True, slots=True)
class Marker:
    """A possible marker at the start of a line."""

    label: str
    kind: str
    """bullet with its sign, or number, letter, roman, step, with its punctuation: what siblings share."""
    ordinal: int
    """Its place in a sequence; 0 for bullets."""
    text: int
    """Cells from the start of the marker to the text after it."""
    strong: bool
    """Whether it can hardly be the start of a wrapped line."""


def find_marker(text: str) -> Marker | None:
    """The marker at the start of ``text`` (a line without its indentation), if there is one."""
    match = _MARKER.match(text)
    if match is None:
        return None
    label = match["label"]
    core = label.strip("()[]{}.:/")
    if match["bullet"]:
        sign = _POINTED.get(label, label)
        return Marker(label, f"bullet {sign}", 0, match.end(), label not in WEAK | {"-", "*"})
    form = re.sub(r"[A-Za-z0-9]+", "1", label)
    if match["number"]:
        digits = re.findall(r"\d+", core)
        if not digits or (label == core and "." not in core and len(match["blank"]) < 2):
            return None
        if label[0] in "([" and label[-1].isdigit():
            return None  # a bracket that closes behind more than the number
        depth = len(digits)
        return Marker(
            label,
            f"number {form} {depth}",
            int(digits[-1]),
            match.end(),
            _STRONG.fullmatch(label) is not None,
        )
    if match["hex"]:
        return Marker(label, f"hex {form}", int(core.strip(), 16), match.end(), False)
    if match["step"]:
        digits = re.findall(r"\d+", label)
        return Marker(label, "step " + label[0], int(digits[0]) if digits else 0, match.end(), bool(digits))
    kind = "letter" if match["letter"] else "roman"
    case = "A" if core.isupper() else "a"
    ordinal = ord(core.lower()) - 96 if len(core) == 1 else roman(core.lower())
    return Marker(label, f"{kind} {form} {case}", ordinal, match.end(), form != "1." or len(core) > 1)


def roman(core: str) -> int:
    """The value of a Roman numeral in small letters."""
    values = [_ROMAN[char] for char in core]
    return sum(-a if a < b else a for a, b in zip(values, [*values[1:], 0], strict=True))


def follows(first: Marker, second: Marker) -> bool:
    """Whether the second can be the next sibling of the first."""
    if first.kind == second.kind:
        return second.ordinal == 0 or second.ordinal == first.ordinal + 1
    kinds = {first.kind.split()[0], second.kind.split()[0]}
    if kinds == {"letter", "roman"}:
        one, two = first.label.strip("()[]."), second.label.strip("()[].")
        return _roman_or_none(two) is not None and _roman_or_none(two) == (_roman_or_none(one) or 0) + 1
    return False


def first_under(text: str, marker: Marker) -> bool:
    """Whether a number is the first one of the part whose number begins a text: `3.3.1` below `3.3 Oil`."""
    part, point, last = marker.label.rstrip(".").rpartition(".")
    return point == "." and last == "1" and text.startswith((f"{part} ", f"{part}. "))


def _roman_or_none(core: str) -> int | None:
    return roman(core.lower()) if core and all(char in _ROMAN for char in core.lower()) else None


def find_dashed(text: str) -> tuple[str, str, int] | None:
    """``key - meaning``, ``key = meaning``: the key, the sign and the cells to the meaning."""
    match = _DASHED.match(text) if any(sign in text for sign in _DASHES) else None
    return None if match is None else (match["label"], match["sign"], match.end())
