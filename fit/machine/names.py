"""File names of the operating system: eight characters, a dot, three. In memory: eleven bytes, padded.

Nothing a program says ever becomes a path: programs name entries of a table in memory. What may be
a name on the host is decided here, for both directions.

Source: the operating system's manual, file names, file control blocks. The tests cite it.
"""

from __future__ import annotations

from typing import Final

ANY: Final = ord("?")
LONGEST_NAME: Final = 8
LONGEST_TYPE: Final = 3

_DELIMITERS: Final = frozenset(" <>.,;:=?*[]|")
_HOST_UNSAFE: Final = frozenset(b'/\\<>.,;:=?*[]|"')
_DRIVES: Final = "ABCDEFGHIJKLMNOP"


def drive_letter(index: int) -> str:
    """``A`` for 0."""
    return _DRIVES[index & 0x0F]


def drive_index(letter: str) -> int | None:
    """0 for ``A`` or ``a``; None for what is no drive."""
    index = _DRIVES.find(letter.upper()) if len(letter) == 1 else -1
    return index if index >= 0 else None


def parse_name(word: str) -> bytes:
    """A word of the command line as the first twelve bytes of a file control block; ``*`` fills with ``?``."""
    drive = 0
    if len(word) > 1 and word[1] == ":":
        index = drive_index(word[0])
        drive, word = (0 if index is None else index + 1), word[2:]
    name, rest = _part(word, LONGEST_NAME)
    kind, _ = _part(rest[1:], LONGEST_TYPE) if rest.startswith(".") else (b"   ", "")
    return bytes((drive,)) + name + kind


def _part(text: str, size: int) -> tuple[bytes, str]:
    """Up to a delimiter, cut or padded to ``size``; and what follows."""
    end = next((i for i, char in enumerate(text) if char in _DELIMITERS - {"*", "?"}), len(text))
    part = text[:end]
    if "*" in part:
        part = part[: part.index("*")].ljust(size, "?")
    return part[:size].ljust(size).encode("latin-1", "replace"), text[end:]


def from_host(name: str) -> bytes | None:
    """The eleven bytes of a host file's name; None where it cannot be a name of the operating system."""
    base, dot, kind = name.partition(".")
    if not 1 <= len(base) <= LONGEST_NAME or len(kind) > LONGEST_TYPE or (dot and not kind):
        return None
    if any(not "!" <= char <= "~" or ord(char) in _HOST_UNSAFE for char in base + kind):
        return None
    return (base.ljust(LONGEST_NAME) + kind.ljust(LONGEST_TYPE)).upper().encode("ascii")


def to_host(field: bytes) -> str | None:
    """The host name of eleven bytes; None where it is no plain name, such as one that tries to be a path."""
    base, kind = field[:LONGEST_NAME].rstrip(b" "), field[LONGEST_NAME:].rstrip(b" ")
    if not base or any(not 0x21 <= byte <= 0x7E or byte in _HOST_UNSAFE for byte in base + kind):
        return None
    return base.decode("ascii") + ("." + kind.decode("ascii") if kind else "")


def shown(field: bytes) -> str:
    """Eleven bytes for people, whatever they hold."""
    text = "".join(chr(byte) if 0x21 <= byte <= 0x7E else "_" if byte != 0x20 else " " for byte in field)
    base, kind = text[:LONGEST_NAME].rstrip(), text[LONGEST_NAME:].rstrip()
    return f"{base}.{kind}" if kind else base


def matches(pattern: bytes, field: bytes) -> bool:
    """Whether eleven bytes match a pattern in which ``?`` stands for any byte."""
    return all(want in (ANY, have) for want, have in zip(pattern, field, strict=True))
