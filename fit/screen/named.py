"""Screens by name (``desk``, ``desk24``, ``pocket``), by size (``40x8``) or by a TOML file of the user's.

A file holds ``rows`` and ``columns`` and may hold the rules of the screen; `FIELDS` names them all.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, field
from importlib import resources
from pathlib import Path
from typing import Any

from fit.errors import ScreenError, UsageError
from fit.screen.rules import DecalnRule, PendingRule, Rules, SelectiveRule, WrapRule
from fit.units import LARGEST_SIDE, Size

FIELDS = (
    "about",
    "rows",
    "columns",
    "terminal",
    "memory_top",
    "wrap",
    "pending",
    "decaln",
    "selective_erase",
    "insert_lines_home",
    "back_wrap",
)
"""Every field a screen's file may hold."""


@dataclass(frozen=True, slots=True)
class NamedScreen:
    """A screen as the user names it."""

    name: str
    size: Size
    rules: Rules = field(default_factory=Rules)
    terminal: str | None = None
    """The dialect it understands; None where it does not insist on one."""
    memory_top: int | None = None
    """The address of the first byte above the programs' memory, None where it is not known."""
    about: str = ""


def parse_size(text: str) -> Size:
    """Read ``COLUMNSxROWS`` as people write it, such as ``80x25``.

    Raises `UsageError` where the text is no size or a side is not from 1 to 500.
    """
    columns, cross, rows = text.strip().lower().partition("x")
    if not cross or not _is_whole(columns) or not _is_whole(rows):
        raise UsageError(f"'{text}' is no screen size", hint="write columns x rows, such as 40x8")
    # int() refuses numbers of thousands of digits, so the length decides first.
    size = Size(*(int(side) if len(side) < 9 else LARGEST_SIDE + 1 for side in (rows, columns)))
    if not all(1 <= side <= LARGEST_SIDE for side in size):
        raise UsageError(
            f"a screen of '{text[:40]}' cannot be measured",
            hint=f"rows and columns go from 1 to {LARGEST_SIDE}",
        )
    return size


def screen_names() -> list[str]:
    """The names of the screens that come with the program, sorted."""
    folder = resources.files("fit.screen") / "screens"
    return sorted(
        entry.name.removesuffix(".toml") for entry in folder.iterdir() if entry.name.endswith(".toml")
    )


def find_screen(text: str) -> NamedScreen:
    """The screen of a name, a size or the path of a TOML file.

    Raises `ScreenError` where the name is unknown or the file is broken, `UsageError` for a bad size.
    """
    if text in screen_names():
        packed = resources.files("fit.screen") / "screens" / f"{text}.toml"
        return _from_toml(packed.read_text("utf-8"), text, text)
    if text.endswith(".toml"):
        return _from_file(Path(text))
    if text[:1].isdigit() or text[:1] in "+-":
        return NamedScreen(text, parse_size(text))
    known = ", ".join(screen_names())
    raise ScreenError(
        f"no screen is named '{text[:40]}'", hint=f"known are {known}, a size such as 40x8, or a .toml file"
    )


def _is_whole(text: str) -> bool:
    return text.isascii() and text.isdigit()


def _from_file(path: Path) -> NamedScreen:
    try:
        text = path.read_text("utf-8")
    except UnicodeDecodeError as error:
        raise ScreenError("the file is not UTF-8 text", source=str(path), byte=error.start) from None
    except OSError as error:
        raise ScreenError(
            f"cannot be read: {error.strerror}", source=str(path), hint="name a readable .toml file"
        ) from None
    return _from_toml(text, path.stem, str(path))


def _from_toml(text: str, name: str, source: str) -> NamedScreen:
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise ScreenError(f"is no TOML: {error}", source=source) from None
    unknown = sorted(set(table) - set(FIELDS))
    if unknown:
        raise ScreenError(
            f"has an unknown field '{unknown[0]}'", source=source, hint=f"known are {', '.join(FIELDS)}"
        )
    rows, columns = (_number(table, side, 1, LARGEST_SIDE, source) for side in ("rows", "columns"))
    if rows is None or columns is None:
        raise ScreenError(
            "lacks rows or columns", source=source, hint="write both, such as rows = 8 and columns = 40"
        )
    rules = Rules(
        wrap=WrapRule(
            _choice(table, "wrap", [rule.value for rule in WrapRule], WrapRule.DEFERRED.value, source)
        ),
        pending=PendingRule(
            _choice(table, "pending", [rule.value for rule in PendingRule], PendingRule.ERASE.value, source)
        ),
        decaln=DecalnRule(
            _choice(table, "decaln", [rule.value for rule in DecalnRule], DecalnRule.HOME.value, source)
        ),
        selective_erase=SelectiveRule(
            _choice(
                table,
                "selective_erase",
                [rule.value for rule in SelectiveRule],
                SelectiveRule.HONOURED.value,
                source,
            )
        ),
        insert_lines_home=_flag(table, "insert_lines_home", source),
        back_wrap=_flag(table, "back_wrap", source),
    )
    return NamedScreen(
        name,
        Size(rows, columns),
        rules,
        terminal=_text(table, "terminal", source),
        memory_top=_number(table, "memory_top", 0x200, 0xFFFF, source),
        about=_text(table, "about", source) or "",
    )


def _number(table: dict[str, Any], key: str, low: int, high: int, source: str) -> int | None:
    value = table.get(key)
    if value is None:
        return None
    if type(value) is not int or not low <= value <= high:
        raise ScreenError(
            f"has {key} = {value!r}", source=source, hint=f"it must be a whole number from {low} to {high}"
        )
    return value


def _flag(table: dict[str, Any], key: str, source: str) -> bool:
    value = table.get(key, False)
    if not isinstance(value, bool):
        raise ScreenError(f"has {key} = {value!r}", source=source, hint="it must be true or false")
    return value


def _text(table: dict[str, Any], key: str, source: str) -> str | None:
    value = table.get(key)
    if value is not None and not isinstance(value, str):
        raise ScreenError(f"has {key} = {value!r}", source=source, hint="it must be text in quotes")
    return value


def _choice(table: dict[str, Any], key: str, allowed: list[str], default: str, source: str) -> str:
    value = table.get(key, default)
    if value not in allowed:
        raise ScreenError(
            f"has {key} = {value!r}", source=source, hint=f"it must be one of {', '.join(allowed)}"
        )
    return str(value)
