"""The terminal database of the operating system: one compiled file a terminal, read as term(5) describes.

The files are read here and not by the standard library's ``curses``, whose `setupterm` loads one terminal a
process, where a check may need two and a ranking all of them. The tests hold the result against ``curses``.
Databases in one hashed file (some BSD systems) are not read.
"""

from __future__ import annotations

import os
import struct
from functools import lru_cache
from pathlib import Path
from typing import Final

from fit.dialect.description import Description, Expression
from fit.dialect.expression import TerminfoExpression, parts_at_padding, strip_padding
from fit.errors import DialectError

FLAGS: Final = dict(
    enumerate("bw am xsb xhp xenl eo gn hc km hs in da db mir msgr os eslok xt hz ul xon nxon mc5i".split())  # noqa: SIM905  words
)
"""Positions in a compiled file, from <term.h> of X/Open Curses, Issue 4; so the two tables below."""
NUMBERS: Final = dict(enumerate("cols it lines lm xmc pb vt wsl nlab lh lw ma wnum colors pairs ncv".split()))  # noqa: SIM905  words
STRINGS: Final = {
    0: "cbt", 1: "bel", 2: "cr", 3: "csr", 4: "tbc", 5: "clear", 6: "el", 7: "ed", 8: "hpa", 10: "cup",
    11: "cud1", 12: "home", 13: "civis", 14: "cub1", 16: "cnorm", 17: "cuf1", 18: "ll", 19: "cuu1",
    20: "cvvis", 21: "dch1", 22: "dl1", 23: "dsl", 24: "hd", 25: "smacs", 26: "blink", 27: "bold",
    28: "smcup", 29: "smdc", 30: "dim", 31: "smir", 32: "invis", 33: "prot", 34: "rev", 35: "smso",
    36: "smul", 37: "ech", 38: "rmacs", 39: "sgr0", 40: "rmcup", 41: "rmdc", 42: "rmir", 43: "rmso",
    44: "rmul", 45: "flash", 46: "ff", 47: "fsl", 48: "is1", 49: "is2", 50: "is3", 52: "ich1", 53: "il1",
    54: "ip", 88: "rmkx", 89: "smkx", 101: "rmm", 102: "smm", 103: "nel", 104: "pad", 105: "dch", 106: "dl", 107: "cud",
    108: "ich", 109: "indn", 110: "il", 111: "cub", 112: "cuf", 113: "rin", 114: "cuu", 119: "mc4", 120: "mc5",
    121: "rep", 122: "rs1", 123: "rs2", 124: "rs3", 126: "rc", 127: "vpa", 128: "sc", 129: "ind", 130: "ri",
    131: "sgr", 132: "hts", 134: "ht", 135: "tsl", 146: "acsc", 151: "smam", 152: "rmam", 155: "enacs",
    269: "el1", 297: "op", 302: "setf", 303: "setb", 311: "sitm", 321: "ritm", 359: "setaf", 360: "setab",
}  # fmt: skip
PARAMETERISED: Final = frozenset(
    "csr hpa cup ech dch dl cud ich indn il cub cuf rin cuu rep vpa sgr tsl setf setb setaf setab".split()  # noqa: SIM905  words
)
_MAGIC_16: Final = 0o432
_MAGIC_32: Final = 0o1036


def folders() -> tuple[Path, ...]:
    """Where the database may stand, in the order in which terminfo(5) searches."""
    return _folders(*(os.environ.get(name, "") for name in ("TERMINFO", "HOME", "TERMINFO_DIRS")))


@lru_cache(maxsize=8)
def _folders(own: str, home: str, listed: str) -> tuple[Path, ...]:
    named = [own, f"{home}/.terminfo" if home else "", *listed.split(os.pathsep)]
    named += [f"{root}/terminfo" for root in ("/etc", "/lib", "/usr/share", "/usr/lib", "/usr/share/misc")]
    named += ["/usr/local/share/terminfo", "/opt/local/share/terminfo"]
    # Path.is_dir would raise where a folder above is closed to us.
    return tuple(Path(name) for name in dict.fromkeys(named) if name and os.path.isdir(name))  # noqa: PTH112


@lru_cache(maxsize=8)
def _names_in(places: tuple[Path, ...]) -> tuple[str, ...]:
    names: set[str] = set()
    for place in places:
        for initial in _readable_folder(place):
            if len(initial.name) in (1, 2) and initial.is_dir():
                names.update(entry.name for entry in _readable_folder(initial))
    return tuple(sorted(names))


def _readable_folder(folder: Path) -> list[Path]:
    try:
        return sorted(folder.iterdir())
    except OSError:
        return []  # a folder that cannot be listed may still hold a readable entry: `read_entry` says so


def entry_names() -> tuple[str, ...]:
    """Every name and alias that has a file of its own, sorted; none without a database."""
    return _names_in(folders())


def find_entry(name: str) -> Path | None:
    """The file of an entry, None where no database has it."""
    if not name or "/" in name or "\0" in name:
        return None
    for folder in folders():
        # Linux files entries under their first letter, macOS under its code in hexadecimal.
        for initial in (name[0], f"{ord(name[0]):02x}"):
            path = folder / initial / name
            try:
                path.stat()
            except (FileNotFoundError, NotADirectoryError):
                continue
            except OSError:
                return path  # it may be there; reading it gives the reason
            return path
    return None


def read_entry(name: str) -> Description | None:
    """The description of a terminal; None where no database has that name.

    Raises `DialectError` where its file cannot be read or is damaged.
    """
    path = find_entry(name)
    if path is None:
        return None
    try:
        data = path.read_bytes()
    except OSError as error:
        raise DialectError(
            f"the terminal database cannot be read: {error.strerror}",
            source=str(path),
            hint="correct its permissions, or give a description of your own as a .toml file",
        ) from None
    try:
        return parse_entry(data, name, str(path))
    except (struct.error, IndexError, ValueError):
        raise DialectError(
            "is no compiled terminal description, or a damaged one",
            source=str(path),
            hint="compile it again with tic",
        ) from None


def parse_entry(data: bytes, name: str, origin: str) -> Description:
    """Read a compiled file. Raises `struct.error`, `IndexError` or `ValueError` where it is damaged."""
    magic, name_size, flag_count, number_count, string_count, table_size = struct.unpack_from("<6H", data)
    if magic not in (_MAGIC_16, _MAGIC_32):
        raise ValueError
    number_size = 4 if magic == _MAGIC_32 else 2
    at = 12
    names = data[at : at + name_size].rstrip(b"\0").decode("latin-1").split("|")
    at += name_size
    flags = data[at : at + flag_count]
    at += flag_count
    at += at % 2
    numbers = struct.unpack_from(f"<{number_count}{'i' if number_size == 4 else 'h'}", data, at)
    at += number_count * number_size
    offsets = struct.unpack_from(f"<{string_count}h", data, at)
    at += string_count * 2
    table = data[at : at + table_size]
    raw = {
        STRINGS[index]: table[offset : table.index(b"\0", offset)]
        for index, offset in enumerate(offsets)
        if offset >= 0 and index in STRINGS
    }
    strings = {key: strip_padding(text) for key, text in raw.items()}
    expressions: dict[str, Expression] = {
        key: TerminfoExpression(text)
        for key, text in strings.items()
        if key in PARAMETERISED and b"%" in text
    }
    return Description(
        name=name,
        about=names[-1] if len(names) > 1 else "",
        aliases=tuple(alias for alias in names[: max(1, len(names) - 1)] if alias != name),
        flags=frozenset(FLAGS[index] for index, flag in enumerate(flags) if flag == 1 and index in FLAGS),
        numbers={
            NUMBERS[index]: value for index, value in enumerate(numbers) if value >= 0 and index in NUMBERS
        },
        fixed={key: text for key, text in strings.items() if key not in expressions},
        expressions=expressions,
        padded={
            key: _parts(parts, has_parameters=key in expressions)
            for key, parts in ((key, parts_at_padding(text)) for key, text in raw.items())
            if len(parts) > 1
        },
        origin=origin,
    )


def _parts(parts: tuple[bytes, ...], *, has_parameters: bool) -> tuple[bytes | Expression, ...]:
    if not has_parameters:
        return parts
    return (TerminfoExpression(parts[0]), *(TerminfoExpression(part).expand() for part in parts[1:]))
