"""Signs of CP437 below 20h: arrows and faces that a screen shows where a printer would obey a control code.

Common practice, no source. As each code is a command, too, a sign is what stands where a sign would: arrows begin
a word, the others touch none, and the commands of printers stand in the middle of a line, blanks around them.
1Eh and 1Fh within or behind a word are the hyphens of word processors; 1Ah that ends a text stands below it.
"""

from __future__ import annotations

import re
from typing import Final

_SIGNS: Final = dict(
    zip(
        "\x01\x02\x03\x04\x05\x06\x07\x0e\x0f\x10\x11\x12\x13\x14\x15\x16\x17\x18\x19\x1a\x1b\x1c\x1d\x1e\x1f",
        "\u263a\u263b\u2665\u2666\u2663\u2660\u2022\u266b\u263c\u25ba\u25c4\u2195\u203c\u00b6\u00a7\u25ac\u21a8"
        "\u2191\u2193\u2192\u2190\u221f\u2194\u25b2\u25bc",
        strict=True,
    )
)
_SIGN: Final = re.compile(
    r"""(?<![^\W_])(?:
        [\x10\x11\x18\x19\x1d-\x1f]
      | [\x01-\x06\x13\x15-\x17\x1c](?![^\W\d_])
      | (?<=\S[ ])[\x0e\x0f\x12\x14](?=[ ,.;:)])
      | (?<=\S[ ])\x1a(?=[ ,.;:)])
      | (?<=[^\S\r\n])\x1b(?=[ ,.;:)])
      | (?<=[ \n])\x07(?=[ ]+\S)
    )""",
    re.VERBOSE,
)


def low_signs(text: str) -> str:
    """A text in CP437 with its codes below 20h written as the signs that they are, a character for each."""
    return _SIGN.sub(lambda found: _SIGNS[found.group()], text)
