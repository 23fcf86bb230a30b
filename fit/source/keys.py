r"""Key scripts: what to type into a program, and when. Used wherever a program is run and recorded.

One step a line: what to wait for, ``=>``, what to type. Blank lines and lines that start with ``#`` are passed over.

    # the first watch
    quiet 0.5          => north<enter>
    see What now\?     => take oil<enter>
    see - more -       => <space>
    quiet 1            => <ctrl-d>

* ``quiet SECONDS``: nothing was printed for so long.
* ``see PATTERN``: the pattern, a regular expression, stands in what was printed since the step before, control
  sequences blanked out, and nothing was printed for a tenth of a second.
* ``printed BYTES``: so many bytes were printed since the step before.

Text is typed in UTF-8; blanks at its ends do not count (write ``<space>``). Keys have names in angle brackets:
enter, tab, escape, space, backspace (08h), rubout (7Fh), lt (the sign ``<``), up, down, left, right, home, end,
insert, delete, pageup, pagedown, f1 to f12, ctrl-a to ctrl-z, and 0x00 to 0xff for any byte. A step may type nothing.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from fit.errors import UsageError
from fit.source.stripping import blanked

SETTLE = 0.1
"""Seconds without output after a pattern was seen; a prompt is often printed in pieces."""
LONGEST_WAIT = 3600.0

_PLAIN: Final = {
    "enter": b"\r",
    "tab": b"\t",
    "escape": b"\x1b",
    "space": b" ",
    "backspace": b"\b",
    "rubout": b"\x7f",
    "lt": b"<",
} | {f"ctrl-{letter}": bytes([ord(letter) & 0x1F]) for letter in "abcdefghijklmnopqrstuvwxyz"}

_CURSOR: Final = {"up": "A", "down": "B", "right": "C", "left": "D", "end": "F", "home": "H"}
_EDITING: Final = {"insert": 2, "delete": 3, "pageup": 5, "pagedown": 6}
_FUNCTION: Final = {5: 15, 6: 17, 7: 18, 8: 19, 9: 20, 10: 21, 11: 23, 12: 24}  # VT220 and xterm's practice
_VT52: Final = {name: f"\x1b{_CURSOR[name]}".encode() for name in ("up", "down", "right", "left")}
_ADM3A: Final = {
    "up": b"\x0b",
    "down": b"\n",
    "left": b"\b",
    "right": b"\x0c",
}  # the terminal database's adm3a

_MOST_DIGITS: Final = 15
_When = tuple[float, re.Pattern[bytes] | None, int | None]
"""What a step waits for: quiet, a pattern, a number of bytes."""

_NAME = re.compile(r"<([^<>]*)>")
_BYTE = re.compile(r"0x([0-9a-f]{2})")


def _named() -> dict[str, bytes]:
    """What the keys of an ANSI terminal send in normal mode (VT100 and VT220 manuals, xterm's practice)."""
    named = {name: f"\x1b[{final}".encode() for name, final in _CURSOR.items()}
    named |= {name: f"\x1b[{number}~".encode() for name, number in _EDITING.items()}
    named |= {f"f{number}": f"\x1bO{'PQRS'[number - 1]}".encode() for number in range(1, 5)}
    return named | {f"f{number}": f"\x1b[{code}~".encode() for number, code in _FUNCTION.items()}


NORMAL: Final = _named()
APPLICATION: Final = NORMAL | {name: f"\x1bO{final}".encode() for name, final in _CURSOR.items()}
"""The same while DECCKM is set (VT100 manual): ``ESC O A`` for up."""


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a key script."""

    line: int
    quiet: float
    """Seconds without output before the keys are typed."""
    pattern: re.Pattern[bytes] | None
    """What must have been printed since the step before; None where only quiet is waited for."""
    printed: int | None
    """Bytes that must have been printed since the step before; None where their number does not count."""
    keys: tuple[bytes | str, ...]
    """Bytes as they are, and the names of keys that send different bytes on different terminals."""

    def is_due(self, printed: bytes, quiet: float) -> bool:
        """Whether the keys are due after ``printed`` (since the step before) and ``quiet`` seconds."""
        if quiet < self.quiet or (self.printed is not None and len(printed) < self.printed):
            return False
        return self.pattern is None or self.pattern.search(blanked(printed)) is not None


def read_key_script(data: bytes, source: str) -> list[Step]:
    """The steps of a key script. Raises `UsageError` with the line that is none."""
    try:
        lines = data.decode("utf-8").splitlines()
    except UnicodeDecodeError as error:
        raise UsageError("the key script is not UTF-8 text", source=source, byte=error.start) from None
    steps = [
        _step(line, number, source)
        for number, line in enumerate(lines, 1)
        if line.strip() and not line.lstrip().startswith("#")
    ]
    if not steps:
        raise UsageError(
            "the key script has no step", source=source, hint="write such as: quiet 0.5 => north<enter>"
        )
    return steps


def parse_keys(text: str) -> tuple[bytes | str, ...]:
    """What a text with named keys types. Raises `ValueError` with the name that is unknown."""
    keys: list[bytes | str] = []
    at = 0
    for match in _NAME.finditer(text):
        keys += [text[at : match.start()].encode()] if match.start() > at else []
        keys.append(_key(match[1].lower()))
        at = match.end()
    return (*keys, text[at:].encode()) if at < len(text) else tuple(keys)


def encode_keys(keys: tuple[bytes | str, ...], terminal: str | None = None, output: bytes = b"") -> bytes:
    """The bytes that the terminal sends; after ``output`` its cursor keys may be in application mode."""
    names = key_names(terminal, output)
    return b"".join(key if isinstance(key, bytes) else names[key] for key in keys)


def key_names(terminal: str | None, output: bytes) -> Mapping[str, bytes]:
    """What the named keys send. Terminals other than VT52 and adm3a are taken as ANSI terminals."""
    family = (terminal or "").partition("-")[0]
    if family in ("vt52", "adm3a"):
        return NORMAL | (_VT52 if family == "vt52" else _ADM3A)
    is_application = output.rfind(b"\x1b[?1h") > max(output.rfind(b"\x1b[?1l"), output.rfind(b"\x1bc"))
    return APPLICATION if is_application else NORMAL


def _key(name: str) -> bytes | str:
    if name in _PLAIN:
        return _PLAIN[name]
    if match := _BYTE.fullmatch(name):
        return bytes.fromhex(match[1])
    if name in NORMAL:
        return name
    raise ValueError(name)


def _step(line: str, number: int, source: str) -> Step:
    wait, arrow, text = line.partition("=>")
    word, _, argument = wait.strip().partition(" ")
    kinds: dict[str, Callable[[str], _When]] = {"quiet": _quiet, "see": _see, "printed": _printed}
    try:
        if not arrow or word not in kinds:
            raise UsageError(
                "is no step", source=source, line=number, hint="write such as: quiet 0.5 => north<enter>"
            )
        when = kinds[word](argument.strip())
        return Step(number, *when, parse_keys(text.strip()))
    except re.error as error:
        what, hint = f"'{argument.strip()}' is no regular expression ({error})", "escape its signs with \\"
    except ValueError as error:
        what, hint = _reason(word, argument.strip(), error)
    raise UsageError(what, source=source, line=number, hint=hint)


def _reason(word: str, argument: str, error: ValueError) -> tuple[str, str]:
    name = str(error)
    if word == "quiet" and name == argument:
        return f"'{argument}' is no time", f"give seconds from 0 to {LONGEST_WAIT:g}"
    if word == "printed" and name == argument:
        return f"'{argument}' is no number of bytes", "give one from 0 on"
    return f"no key is named '{name[:20]}'", "such as enter, up, ctrl-c, 0x1b; <lt> types the sign <"


def _quiet(argument: str) -> _When:
    try:
        seconds = float(argument)
    except ValueError:
        seconds = -1.0
    if not 0 <= seconds <= LONGEST_WAIT:
        raise ValueError(argument)
    return seconds, None, None


def _see(argument: str) -> _When:
    if not argument:
        raise re.error("it is empty")
    return SETTLE, re.compile(argument.encode(), re.MULTILINE), None


def _printed(argument: str) -> _When:
    if not (argument.isascii() and argument.isdigit() and len(argument) < _MOST_DIGITS):
        raise ValueError(argument)
    return 0.0, None, int(argument)
