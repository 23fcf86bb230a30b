"""Descriptions of terminals as TOML: ours in ``fit/dialect/terminals``, and a user's own by path.

    about = "the tide station's console"
    [sources]
    manual = "its handbook, page 12"
    [flags]
    am = "manual"                        # or: true
    [numbers]
    cols = [80, "manual"]                # or: 80
    [sequences]
    cup = ["ESC Y row+32 column+32", "manual"]     # or the sequence alone
    [more]
    "ESC )" = ["dim", "manual"]          # it does what dim does, and takes no cell

Names are those of terminfo(5); sequences are written as `fit.dialect.notation` says; ``acsc`` holds pairs of
characters as in terminfo(5). Every error names the file, the line and what was expected.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, replace
from functools import lru_cache
from importlib import resources
from pathlib import Path
from typing import Any, Final

from fit.dialect import notation
from fit.dialect.description import Description, Expression, UnknownRule
from fit.dialect.meanings import EFFECTS
from fit.dialect.terminfo_database import FLAGS, NUMBERS, PARAMETERISED, STRINGS
from fit.errors import DialectError

_FIELDS: Final = ("about", "aliases", "unknown", "sources", "flags", "numbers", "sequences", "more")
_PLACE: Final = re.compile(r" \(at line (\d+), column (\d+)\)$|  ?\(at end of document\)$")


@lru_cache(maxsize=1)
def packed_names() -> tuple[str, ...]:
    """The terminals that come with the program, sorted."""
    folder = resources.files("fit.dialect") / "terminals"
    names = (entry.name.removesuffix(".toml") for entry in folder.iterdir() if entry.name.endswith(".toml"))
    return tuple(sorted(names))


def read_packed(name: str) -> Description:
    """One of `packed_names`."""
    packed = resources.files("fit.dialect") / "terminals" / f"{name}.toml"
    return parse(packed.read_text("utf-8"), name, f"{name}.toml")


def completed(entry: Description) -> Description:
    """An entry of the database, with what ours of that name knows and the database has no row for."""
    if entry.name not in packed_names():
        return entry
    ours = read_packed(entry.name)
    return replace(entry, unknown=ours.unknown, about=entry.about or ours.about, more=ours.more)


def read_file(path: Path) -> Description:
    """A user's description. Raises `DialectError` where it cannot be read or is broken."""
    try:
        text = path.read_text("utf-8")
    except UnicodeDecodeError as error:
        raise DialectError("the file is not UTF-8 text", source=str(path), byte=error.start) from None
    except OSError as error:
        hint = "name a readable .toml file"
        raise DialectError(f"cannot be read: {error.strerror}", source=str(path), hint=hint) from None
    return parse(text, path.stem, str(path))


def parse(text: str, name: str, source: str) -> Description:
    """Read a description. Raises `DialectError` with the line and what was expected there."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        place = _PLACE.search(str(error))
        line, column = (int(place[1]), int(place[2])) if place and place[1] else (text.count("\n") + 1, None)
        what = f"is no TOML: {_PLACE.sub('', str(error))}"
        raise DialectError(
            what, source=source, line=line, column=column, hint='write rows such as el = "ESC K"'
        ) from None
    return _Reader(text, table, source).description(name)


@dataclass(frozen=True, slots=True)
class _Reader:
    text: str
    table: dict[str, Any]
    source: str

    def description(self, name: str) -> Description:
        for key in self.table:
            if key not in _FIELDS:
                raise self._error(key, f"has an unknown field '{key}'", f"known are {', '.join(_FIELDS)}")
        flags, numbers, sequences = (self._section(key) for key in ("flags", "numbers", "sequences"))
        fixed: dict[str, bytes] = {}
        expressions: dict[str, Expression] = {}
        for key in sequences:
            sequence = self._sequence(key, self._value("sequences", key, str))
            if isinstance(sequence, bytes):
                fixed[key] = sequence
            else:
                expressions[key] = sequence
        return Description(
            name=name,
            about=str(self.table.get("about", "")),
            aliases=tuple(self.table.get("aliases", ())),
            flags=frozenset(key for key in flags if self._flag(key)),
            numbers={key: self._number(key) for key in numbers},
            fixed=fixed,
            expressions=expressions,
            more=self._more(),
            unknown=self._unknown(),
            origin=self.source,
            sources=self._row_sources(),
        )

    def _error(self, key: str, what: str, hint: str) -> DialectError:
        found = re.search(rf"^\s*\[?\s*\"?{re.escape(key)}(?!\w)", self.text, re.MULTILINE)
        line = self.text.count("\n", 0, found.end()) + 1 if found else None
        return DialectError(what, source=self.source, line=line, hint=hint)

    def _section(self, name: str) -> dict[str, Any]:
        section = self.table.get(name, {})
        if not isinstance(section, dict):
            raise self._error(
                name, f"has {name} = {section!r}", f"{name} must be a table that begins with [{name}]"
            )
        known = {"flags": FLAGS.values(), "numbers": NUMBERS.values(), "sequences": STRINGS.values()}.get(
            name
        )
        for key in section:
            if known is not None and key not in known:
                hint = "the names are those of terminfo(5), such as " + {
                    "flags": "am",
                    "numbers": "cols",
                }.get(name, "cup")
                raise self._error(key, f"has an unknown name '{key}' under [{name}]", hint)
        return section

    def _value(self, section: str, key: str, kind: type[Any]) -> Any:
        """The value of a row that may stand in a list with its source."""
        value = self.table[section][key]
        bare = (
            value[0] if isinstance(value, list) and len(value) == 2 and isinstance(value[1], str) else value
        )
        if type(bare) is not kind:
            expected = {str: 'text such as "ESC K"', int: "a whole number such as 80"}[kind]
            raise self._error(
                key, f"has {key} = {value!r}", f"it must be {expected}, or that and its source in a list"
            )
        return bare

    def _flag(self, key: str) -> bool:
        value = self.table["flags"][key]
        if not isinstance(value, bool | str):
            raise self._error(key, f"has {key} = {value!r}", "a flag must be true, or the name of its source")
        return value is not False

    def _number(self, key: str) -> int:
        value: int = self._value("numbers", key, int)
        if not 0 <= value < 1 << 15:
            raise self._error(key, f"has {key} = {value}", "it must be from 0 to 32767")
        return value

    def _sequence(self, key: str, text: str) -> bytes | Expression:
        if key == "acsc":
            return text.encode("latin-1", "replace")
        try:
            sequence = notation.parse(text, key)
        except ValueError as error:
            raise self._error(key, f"has {key} with {error}", "see fit terminals --notation") from None
        if key not in PARAMETERISED or not sequence.has_parameters:
            if key in PARAMETERISED and key != "tsl":
                raise self._error(
                    key,
                    f"has {key} without a parameter",
                    f"it takes {' and '.join(notation.parameters_of(key))}",
                )
            return sequence.expand()
        if missing := sequence.lacks(notation.parameters_of(key)):
            hint = f"it takes {' and '.join(notation.parameters_of(key))}"
            raise self._error(key, f"has {key} without {' and '.join(missing)}", hint)
        return sequence

    def _more(self) -> dict[bytes, str]:
        """The sequences that have no name of their own."""
        found: dict[bytes, str] = {}
        for key in self._section("more"):
            name = self._value("more", key, str)
            if name not in EFFECTS:
                hint = "it must be the name of a sequence without parameters, such as el or dim"
                raise self._error(key, f"has {key} = {name!r}", hint)
            sequence = self._sequence(key, key)
            assert isinstance(sequence, bytes)
            found[sequence] = name
        return found

    def _unknown(self) -> UnknownRule:
        value = self.table.get("unknown", UnknownRule.SWALLOW.value)
        if value not in list(UnknownRule):
            raise self._error("unknown", f"has unknown = {value!r}", f"it must be {' or '.join(UnknownRule)}")
        return UnknownRule(value)

    def _row_sources(self) -> dict[str, str]:
        """The source of each row in full, where it names one under [sources]."""
        named = self.table.get("sources", {})
        rows: dict[str, str] = {}
        for section in ("flags", "numbers", "sequences", "more"):
            for key, value in self.table.get(section, {}).items():
                source = value[1] if isinstance(value, list) else value if section == "flags" else None
                if isinstance(source, str):
                    rows[key] = str(named.get(source, source))
        return rows
