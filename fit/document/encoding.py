"""Bytes to characters: which encoding a document has, found from its bytes or given.

The order of the questions: a byte order mark; UTF-8; 7-bit; what the document says of itself; then CP437 against CP1252 (Latin-1 where no
byte from 80h to 9Fh occurs), by how well each high byte fits between its neighbours. General detectors
know neither line drawing nor short manuals and were wrong on such documents.
"""

from __future__ import annotations

import codecs
import re
import unicodedata
from dataclasses import dataclass
from itertools import islice
from typing import Final

from fit.document.low_signs import low_signs
from fit.document.wording import counted
from fit.errors import DocumentError, UsageError

ENCODINGS: Final = ("utf-8", "ascii", "cp437", "latin-1", "cp1252", "utf-16")
"""The encodings that can be given."""

_SAMPLE: Final = 20_000
"""High bytes that are judged; more do not change the answer."""

_MARKS: Final = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
_SEQUENCE: Final = re.compile(rb"[\xc2-\xdf][\x80-\xbf]|[\xe0-\xef][\x80-\xbf]{2}|[\xf0-\xf4][\x80-\xbf]{3}")
_SAYS: Final = re.compile(
    rb"<meta\b[^>]{0,200}?\bcharset\s*=\s*[\"']?([\w.:-]+)|<\?xml[^>]{0,200}?\bencoding\s*=\s*[\"']([\w.:-]+)"
    rb"|\A[^\n]{0,200}(?:\n[^\n]{0,200})?-\*-[^\n]{0,100}?\bcoding:\s*([\w.:-]+)[^\n]*?-\*-",
    re.IGNORECASE,
)
"""A page's own statement (HTML standard, "Determining the character encoding"), or that of a manual page (preconv(1))."""
_HIGH: Final = re.compile(rb"[\x80-\xff]")
_ALIASES: Final = {
    "7-bit": "ascii",
    "us-ascii": "ascii",
    "utf8": "utf-8",
    "iso-8859-1": "latin-1",
    "latin1": "latin-1",
}


@dataclass(frozen=True, slots=True)
class Decoded:
    """A document's characters and how they were found."""

    text: str
    encoding: str
    remarks: tuple[str, ...] = ()


def decode(data: bytes, name: str, encoding: str | None = None, *, page: bool = False) -> Decoded:
    """Decode a document, in the encoding given or the one its bytes show.

    A ``page`` of HTML that neither is UTF-8 nor names its encoding is CP1252 (HTML standard, "Determining the character
    encoding": the default of most languages of the Latin script).
    Bytes that the encoding lacks become U+FFFD, counted in a remark. Raises `UsageError` for an unknown
    encoding and `DocumentError` where the bytes are no text.
    """
    if encoding is not None:
        return _decode_as(data, _known(encoding), "as given")
    for mark, found in _MARKS:
        if data.startswith(mark):
            return _decode_as(data, found, "by its byte order mark")
    if 0 in data[:4096]:
        wide = _wide_without_mark(data[:4096])
        if wide is None:
            at = data.index(0)
            hint = "give a text, or the encoding with --encoding"
            raise DocumentError("holds zero bytes and is no text document", source=name, byte=at, hint=hint)
        return _decode_as(data, wide, "by its zero bytes")
    return _decode_as(data, *_found(data, page=page))


def _known(encoding: str) -> str:
    plain = encoding.strip().lower().replace("_", "-")
    plain = _ALIASES.get(plain, plain)
    if plain not in ENCODINGS:
        raise UsageError(f"no encoding is named '{encoding[:40]}'", hint=f"known are {', '.join(ENCODINGS)}")
    return plain


def _found(data: bytes, *, page: bool) -> tuple[str, str]:
    """The encoding the bytes show, and why."""
    if data.isascii():
        return "ascii", "no byte above 7Fh"
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        pass
    else:
        return "utf-8", "every high byte is part of a UTF-8 sequence"
    high = len(_HIGH.findall(data))
    good = sum(len(sequence) for sequence in _SEQUENCE.findall(data))
    if good > 0.9 * high:
        return "utf-8", f"{good} of {high} high bytes are UTF-8 sequences"
    said = _said(data[:4096])
    if said is not None:
        return said, "the document says so"
    if page:
        return "cp1252", "the default of HTML"
    old, windows = _fit(data, "cp437"), _fit(data, "cp1252")
    if old > windows:
        return "cp437", f"its high bytes fit CP437 better than CP1252, {round(old)} to {round(windows)}"
    western = "cp1252" if re.search(rb"[\x80-\x9f]", data) else "latin-1"
    return (
        western,
        f"its high bytes fit {western.upper()} better than CP437, {round(windows)} to {round(old)}",
    )


def _said(head: bytes) -> str | None:
    """The encoding that the document names, where it is a known one; a page's Latin-1 means CP1252."""
    found = _SAYS.search(head)
    if found is None:
        return None
    name = next(group for group in found.groups() if group).decode("ascii", "replace").lower()
    try:
        known = codecs.lookup(name).name
        b"lamp".decode(known)
    except (LookupError, ValueError):
        return None
    if known.startswith("utf"):
        return None  # the bytes have shown that it is not
    return "cp1252" if known in ("iso8859-1", "ascii") and found[3] is None else known


def _wide_without_mark(sample: bytes) -> str | None:
    """UTF-16 without its mark: text in the Latin script has a zero in every second byte."""
    even, odd = sample[0::2], sample[1::2]
    for zeros, others, name in ((odd, even, "utf-16-le"), (even, odd, "utf-16-be")):
        if zeros.count(0) > 0.7 * len(zeros) and others.count(0) < 0.02 * len(others):
            return name
    return None


def _decode_as(data: bytes, encoding: str, reason: str) -> Decoded:
    mark = next((mark for mark, _ in _MARKS if data.startswith(mark)), b"")
    if not encoding.startswith("utf"):
        mark = b""
    if encoding == "utf-16":
        encoding = "utf-16-be" if mark == codecs.BOM_UTF16_BE else "utf-16-le"
    text = data[len(mark) :].decode(encoding, "replace")
    text = low_signs(text) if encoding == "cp437" else text
    remarks = [f"encoding {encoding}: {reason}"]
    bad = text.count("\ufffd")
    if bad:
        where = text.index("\ufffd")
        remarks.append(
            f"{counted(bad, 'character')} not decoded, shown as U+FFFD, the first at character {where}"
        )
    return Decoded(text, encoding, tuple(remarks))


def _fit(data: bytes, encoding: str) -> float:
    """How well the high bytes fit between their neighbours when read in an encoding; higher is better."""
    total = 0.0
    for found in islice(_HIGH.finditer(data), _SAMPLE):
        at = found.start()
        before, char, after = (
            data[index : index + 1].decode(encoding, "replace") if 0 <= index < len(data) else "\n"
            for index in (at - 1, at, at + 1)
        )
        total += _fit_of(before, char, after)
    return total


def _fit_of(before: str, char: str, after: str) -> float:
    if char == "\ufffd" or unicodedata.category(char) == "Cc":
        return -3
    if char == "\u00a0":
        return 0.5 if before.isspace() or after.isspace() or before.isalnum() else -0.5
    if "\u2500" <= char <= "\u25a0" or char in "\u2310\u2320\u2321":
        return _fit_of_drawing(before, char, after)
    if char == "\u00b5":  # micro: 5 \u00b5s
        return -2 if before.isalpha() else 1
    if char.isalpha():
        return _fit_of_letter(before, char, after)
    return _fit_of_sign(before, char, after)


def _fit_of_drawing(before: str, char: str, after: str) -> float:
    if before.isalpha() and after.isalpha():
        return -2
    name = unicodedata.name(char)
    across = " AND HORIZONTAL" in name
    if (across or " LEFT" in name) and not _carries_on(before):
        return -1  # an end of a stroke that is not there: a note's number or a micro sign of Latin-1
    if (across or " RIGHT" in name) and not _carries_on(after):
        return -1
    if any("\u2500" <= side <= "\u25a0" for side in (before, after)):
        return 1
    return 0.4 if before.isspace() and after.isspace() else 0


def _carries_on(side: str) -> bool:
    return "\u2500" <= side <= "\u25a0" or side in "-=+"


def _fit_of_letter(before: str, char: str, after: str) -> float:
    latin = "\u00c0" <= char <= "\u024f"
    neighbours = [side for side in (before, after) if side.isalpha()]
    if not latin:
        # Greek letters, ordinals and the like do not stand inside a word of the Latin script.
        return -2 if neighbours else 0
    if not neighbours:
        return 0
    if char.isupper():
        if char in neighbours:
            return -1  # a rule of CP437 read as letters: no word has the same accented capital twice in a row
        return -2 if before.islower() or (after.islower() and before.isalpha()) else 1
    return -1 if before.isupper() and after.isupper() else 1


def _fit_of_sign(before: str, char: str, after: str) -> float:
    opens, closes = before.isspace() or before in "([-", after.isspace() or after in ".,;:!?)]-\"'"
    if char in "\u201c\u2018\u00ab\u00bf\u00a1":
        return 1 if opens and not after.isspace() else -1
    if char in "\u201d\u00bb":
        return 1 if closes and not before.isspace() else -1
    if char == "\u2019":
        return 1 if before.isalnum() or (closes and not before.isspace()) else -1
    if char in "\u2013\u2014":
        # A text whose only accented letters are u-circumflex and u-grave is rarer than one with dashes.
        return 1.1 if before.isspace() == after.isspace() or before.isalnum() else -0.5
    if char == "\u2026":
        return 0.7 if closes or opens else -0.5
    if char in "\u2022\u00b7":
        return 1 if after.isspace() else -0.5
    if char in "\u00a3\u20ac\u00a5\u00a7\u00a9\u00ae\u2122\u00b1\u00d7":
        return 0.5 if before.isspace() or after.isdigit() or after.isspace() else -0.5
    if char in "\u00b2\u00b3\u00b9":
        return 0.5 if before.isalnum() or closes or (before == "\n" and after == " ") else -0.5
    if char == "\u00b4":  # an accent stands for an apostrophe
        return 0.5 if before.isalnum() else -0.5
    if char in "\u00b0\u00bd\u00bc\u00be\u00ba\u00aa":
        return 0.5 if before.isdigit() or before.isspace() else -0.5
    return -1 if before.isalpha() and after.isalpha() else -0.2
