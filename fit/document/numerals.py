"""Numbers as letters and Roman numerals, for the labels of lists."""

from __future__ import annotations

from typing import Final

_ROMAN: Final = (
    (1000, "m"), (900, "cm"), (500, "d"), (400, "cd"), (100, "c"), (90, "xc"), (50, "l"),
    (40, "xl"), (10, "x"), (9, "ix"), (5, "v"), (4, "iv"), (1, "i"),
)  # fmt: skip


def written(number: int, style: str) -> str:
    """A number as ``1``, ``a``, ``A``, ``i`` or ``I`` asks; one that a style has no numeral for as digits."""
    if style in ("a", "A") and number > 0:
        letters = ""
        while number > 0:
            number, letter = divmod(number - 1, 26)
            letters = chr(ord(style) + letter) + letters
        return letters
    if style in ("i", "I") and 0 < number < 4000:
        roman = ""
        for value, numeral in _ROMAN:
            count, number = divmod(number, value)
            roman += numeral * count
        return roman if style == "i" else roman.upper()
    return str(number)
