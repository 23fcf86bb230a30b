"""Whether a description is of ECMA-48's kind: its sequences, read as ECMA-48, do what it says they do."""

from __future__ import annotations

from typing import Any, Final

from fit.dialect.alternate_font import AlternateFont
from fit.dialect.description import Description, Expression
from fit.dialect.ecma48 import Ecma48
from fit.dialect.encoding import LATIN_1
from fit.dialect.meanings import CONTROLS, FIXED, PARAMETERISED
from fit.dialect.operation import Operation

_CURSOR_ADDRESSES: Final = ((0, 0), (1, 4), (22, 70))
_COMPARED: Final = FIXED.keys() - set("smir rmir smam rmam civis cvvis cnorm tbc hts bel nel ll".split())  # noqa: SIM905  words
"""Not modes, which many descriptions bundle and which move no text; nor what is always made of other sequences."""
_COUNTED: Final = frozenset("csr hpa vpa cuu cud cuf cub il dl ich dch ech".split())  # noqa: SIM905  words
_GRAPHICS: Final = frozenset({b"\x0e", b"\x1b(0", b"\x1b)0\x0e", b"\x1b[m\x0e", b"\x1b[0m\x0e"})
_AS_GOOD: Final[dict[str, list[list[tuple[str, tuple[Any, ...]]]]]] = {
    "ind": [[("scroll_up", (1,))]],
    "ri": [[("scroll_down", (1,))]],
    "cuu1": [[("reverse_index", ())]],
    "cud1": [[("index", ())]],
    "ht": [[("forward_tab", (1,))]],
}
"""What descriptions have instead, doing the same where curses uses it."""
_IGNORED: Final = frozenset(
    {"select_graphic_rendition", "shift_in", "shift_out", "define_charset", "set_mode", "reset_mode"}
)
_SAME: Final = {
    "horizontal_position": "cursor_to_column",
    "linefeed": "index",
    "save_cursor_position": "save_cursor",
    "restore_cursor_position": "restore_cursor",
}


def follows_ecma48(description: Description) -> bool:
    """Whether `Ecma48` decodes what a program sends to this terminal.

    False where the cursor is addressed otherwise, attributes take a cell, line drawing is switched otherwise,
    or any other sequence means something else in ECMA-48 or nothing.
    """
    cup = description.expressions.get("cup")
    if cup is None or description.numbers.get("xmc", 0) > 0:
        return False
    for row, column in _CURSOR_ADDRESSES:
        if _done(cup.expand(row, column)) != [("cursor_position", (row + 1, column + 1))]:
            return False
    return (
        _draws_alike(description)
        and "debug" not in {event for event, _ in _done(description.fixed.get("ll", b""))}
        and all(_agrees(name, form) for name, form in description.fixed.items() if form and name in _COMPARED)
        and all(
            _agrees_for(name, expression)
            for name, expression in description.expressions.items()
            if name in _COUNTED
        )
    )


def _agrees_for(name: str, expression: Expression) -> bool:
    sample = (1, 22) if name == "csr" else (3,)
    wanted = [(event, arguments) for event, arguments, _ in PARAMETERISED[name](*sample)]
    return _done(expression.expand(*sample)) == wanted


def _draws_alike(description: Description) -> bool:
    switch = description.fixed.get("smacs", b"")
    return (
        not (switch and description.fixed.get("acsc"))
        or switch in _GRAPHICS
        or switch in AlternateFont.SWITCHES
    )


def _agrees(name: str, form: bytes) -> bool:
    if form in CONTROLS:
        return True
    wanted = [(_SAME.get(event, event), _counted(event, arguments)) for event, arguments, _ in FIXED[name]]
    done = _done(form)
    if name == "clear":
        # Home and erase, as several sequences or one, in either order; or a reset.
        return sorted(event for event, _ in done) in (["cursor_position", "erase_in_display"], ["reset"])
    return done == wanted or done in _AS_GOOD.get(name, [])


def _counted(event: str, arguments: tuple[Any, ...]) -> tuple[Any, ...]:
    """A count or place that is left out or 0 is 1 (ECMA-48, 5.4.2)."""
    if event.startswith("erase_in"):
        return arguments
    given = tuple(argument or 1 for argument in arguments)
    return (*given, 1, 1)[:2] if event == "cursor_position" else given


def _done(form: bytes) -> list[tuple[str, tuple[Any, ...]]]:
    operations: list[Operation] = Ecma48(LATIN_1).feed(form, 0)
    return [
        (_SAME.get(event, event), _counted(event, arguments))
        for _, _, event, arguments, _ in operations
        if event not in _IGNORED
    ]
