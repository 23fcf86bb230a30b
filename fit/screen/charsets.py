"""Character sets that a program can designate: what pyte has, corrected, and the United Kingdom set.

Sources: pyte's tables; the VT220 Programmer Reference Manual, chapter 2 (DEC Special Graphics has codes
5/15 to 7/14; ``_`` is a blank, ``h`` the symbol for a new line; the United Kingdom set differs in ``#``).
"""

from __future__ import annotations

from typing import Final

from pyte import charsets as pyte_charsets

_SPECIAL = {code: pyte_charsets.VT100_MAP[code] for code in range(0x60, 0x7F)} | {
    ord("_"): "\u00a0",
    ord("h"): "\u2424",
}

TRANSLATIONS: Final[dict[str, dict[int, str]]] = {
    "0": _SPECIAL,
    "2": _SPECIAL,
    "A": {ord("#"): "£"},
}
"""By the final character of the designation; a set that is not here leaves ASCII as it is."""
