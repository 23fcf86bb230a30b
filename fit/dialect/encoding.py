"""The encodings of output: their names, their tables, and the choice of one with its evidence.

* ``utf-8``: RFC 3629.
* ``cp437``: the 8-bit code page of 1981 with line drawing; 00h to 1Fh and 7Fh stay control characters.
* ``latin-1``: ISO 8859-1; 80h to 9Fh are the C1 control characters of ECMA-48.
* ``7bit``: ASCII whose eighth bit is parity or a mark of the program's own; it is dropped.

The choice is a rule of our own (no source): UTF-8 is proved by its form over the whole of the data; the others
are told apart by which bytes stand where.
"""

from __future__ import annotations

import codecs
import re
from collections import Counter
from typing import Final, NamedTuple

UTF_8: Final = "utf-8"
CP437: Final = "cp437"
LATIN_1: Final = "latin-1"
SEVEN_BIT: Final = "7bit"
ENCODINGS: Final = (UTF_8, CP437, LATIN_1, SEVEN_BIT)

TABLES: Final = {
    CP437: bytes(range(256)).decode("cp437"),
    LATIN_1: bytes(range(256)).decode("latin-1"),
    SEVEN_BIT: bytes(range(128)).decode("ascii") * 2,
}
"""For each single-byte encoding the character of each byte: 256 characters."""

_BLOCK = 1 << 16
_CONTEXTS = (
    100_000  # so many bytes above 7Fh are looked at in their context; their histogram counts all of them
)
_LOW = bytes(range(0x80))
_BAD = re.compile("[\udc80-\udcff]")
_HIGH_RUN = re.compile(rb"[\x80-\xff]+")
_CSI_8BIT = re.compile(rb"\x9b[0-9;?]*[@-~]")
_WORD_END = re.compile(rb"[A-Za-z][A-Za-z\xc1-\xda\xe1-\xfa](?=[\s.,;:!?)\xa0\x8d])")
_DROPPABLE = frozenset([*b"\r\n\t\b\x1b", *range(0x20, 0x7F)])
_LINES = frozenset(range(0xB0, 0xE0))  # line drawing and shades of cp437


class Choice(NamedTuple):
    """An encoding and the sentence that says why."""

    name: str
    evidence: str


def choose_encoding(data: bytes) -> Choice:
    """Choose the encoding that the data is written in."""
    high = data.translate(None, _LOW)
    if not high:
        return Choice(UTF_8, "No byte is above 7Fh, so every encoding reads the same.")
    return _as_utf_8(data) or _as_seven_bit(data, high) or _as_code_page(data, high)


def _as_utf_8(data: bytes) -> Choice | None:
    """UTF-8 where its sequences are whole, or where broken ones are few beside them."""
    good, bad = _utf_8_sequences(data)
    if good and not bad:
        return Choice(UTF_8, f"The characters above 7Fh ({good}) are all well-formed UTF-8.")
    if good >= 10 * bad and good:
        return Choice(UTF_8, f"{good} characters above 7Fh are well-formed UTF-8; {bad} bytes are damaged.")
    return None


def _utf_8_sequences(data: bytes) -> tuple[int, int]:
    """``(well-formed characters above 7Fh, bytes that are part of none)``; a character cut at an end is neither."""
    decoder = codecs.getincrementaldecoder(UTF_8)("surrogateescape")
    good = bad = 0
    start = next((index for index, byte in enumerate(data[:3]) if not 0x80 <= byte < 0xC0), 3)
    for offset in range(start, len(data), _BLOCK):
        text = decoder.decode(data[offset : offset + _BLOCK])
        if not text.isascii():
            broken = len(_BAD.findall(text))
            bad += broken
            good += len(text) - len(text.encode("ascii", "ignore")) - broken
    return good, bad


def _as_seven_bit(data: bytes, high: bytes) -> Choice | None:
    """ASCII with bit 7 as parity, or as a mark on nearly all bytes or on the ends of words."""
    count, total = len(high), len(data)
    if sum(byte & 0x7F in _DROPPABLE for byte in high[:_CONTEXTS]) < min(count, _CONTEXTS):
        return None
    if count >= 0.95 * total:
        return Choice(SEVEN_BIT, f"{count} of {total} bytes have bit 7 set, and are ASCII without it.")
    sample = data[:_CONTEXTS]
    odd = sum(byte.bit_count() & 1 for byte in sample)
    if count >= 8 and odd in (0, len(sample)):
        name = "odd" if odd else "even"
        return Choice(SEVEN_BIT, f"All bytes have {name} parity, and are ASCII without bit 7.")
    ends = _WORD_END.findall(sample)
    marked = sum(end[-1] >= 0x80 for end in ends)
    if marked >= 3 and marked > 0.5 * len(ends):
        return Choice(
            SEVEN_BIT,
            f"Bit 7 marks the last letter of {marked} words out of {len(ends)}, as some word processors do.",
        )
    return None


def _as_code_page(data: bytes, high: bytes) -> Choice:
    """cp437 or Latin-1, by the bytes that are letters or lines in one and controls or symbols in the other."""
    counts = Counter(high)
    controls = len(_CSI_8BIT.findall(data))
    letters = sum(counts[byte] for byte in range(0x80, 0xA0)) - controls
    lines, latin = _contexts(data)
    if letters + lines > latin:
        return Choice(
            CP437,
            f"Not UTF-8; of {_looked_at(high)}, {letters} are in 80h-9Fh (letters in cp437 alone) and "
            f"{lines} stand as its line drawing, while {latin} stand where Latin-1 has letters.",
        )
    return Choice(
        LATIN_1,
        f"Not UTF-8; of {_looked_at(high)}, {latin} stand where Latin-1 has letters or signs, "
        f"{controls} are its control characters, and {letters + lines} look like cp437.",
    )


def _looked_at(high: bytes) -> str:
    sample = f" (the first {_CONTEXTS} in their context)" if len(high) > _CONTEXTS else ""
    return f"{len(high)} bytes above 7Fh{sample}"


def _contexts(data: bytes) -> tuple[int, int]:
    """``(bytes that stand as cp437 has lines and signs, bytes that stand as Latin-1 has letters and signs)``."""
    lines = latin = seen = 0
    for match in _HIGH_RUN.finditer(data):
        run, start, end = match.group(), match.start(), match.end()
        before, after = data[max(0, start - 1) : start], data[end : end + 1]
        seen += len(run)
        if len(run) > 2 or (len(run) == 2 and _LINES.issuperset(run)):
            lines += sum(byte in _LINES for byte in run)
        elif before.isdigit() and run[0] in b"\xb0\xf8":  # the degree sign of each
            latin, lines = (latin + 1, lines) if run[0] == 0xB0 else (latin, lines + 1)
        elif before.isalpha() or after.isalpha():
            latin += sum(byte >= 0xC0 for byte in run)
            lines += sum(byte in b"\xb3\xba" for byte in run)  # upright lines beside the words of a table
        elif _LINES.issuperset(run) and run not in (b"\xb0", b"\xb7", b"\xbb"):
            lines += 1
        else:
            latin += 1
        if seen >= _CONTEXTS:
            break
    return lines, latin
