"""UTF-8 to characters, each with the offset of its first byte; what is no UTF-8 becomes U+FFFD.

A cut-off character is one U+FFFD, any other byte one of its own: The Unicode Standard, section 3.9, "U+FFFD
Substitution of Maximal Subparts".
"""

from __future__ import annotations

import re
from typing import Final

_CUT_OFF: Final = (
    rb"\xe0[\xa0-\xbf]|[\xe1-\xec\xee\xef][\x80-\xbf]|\xed[\x80-\x9f]"
    rb"|\xf0[\x90-\xbf][\x80-\xbf]?|[\xf1-\xf3][\x80-\xbf]{1,2}|\xf4[\x80-\x8f][\x80-\xbf]?"
)
_CHARACTER: Final = re.compile(
    rb"[\x00-\x7f]|[\xc2-\xdf][\x80-\xbf]|\xe0[\xa0-\xbf][\x80-\xbf]|[\xe1-\xec\xee\xef][\x80-\xbf]{2}"
    rb"|\xed[\x80-\x9f][\x80-\xbf]|\xf0[\x90-\xbf][\x80-\xbf]{2}|[\xf1-\xf3][\x80-\xbf]{3}|\xf4[\x80-\x8f][\x80-\xbf]{2}"
    rb"|%b|." % _CUT_OFF,
    re.DOTALL,
)
"""The well-formed byte sequences of The Unicode Standard, table 3-7; or the beginning of one; or one byte."""
_INCOMPLETE: Final = re.compile(rb"(?:[\xc2-\xf4]|%b)\Z" % _CUT_OFF)


def incomplete_tail(data: bytes) -> int:
    """The number of bytes at the end that more bytes could make a character of: 0 to 3."""
    found = _INCOMPLETE.search(data, max(0, len(data) - 3))
    return len(data) - found.start() if found else 0


def decode_utf8(data: bytes, first: int) -> tuple[str, list[int]]:
    """The characters, and the offset of each where the first byte stands at ``first``."""
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        found = list(_CHARACTER.finditer(data))
        return "".join(one[0].decode("utf-8", "replace") for one in found), [
            first + one.start() for one in found
        ]
    offsets = []
    for char in text:
        offsets.append(first)
        first += 1 if char < "\x80" else 2 if char < "\u0800" else 3 if char < "\U00010000" else 4
    return text, offsets
