"""Numbers of roff: integers with scale letters, worked out from left to right, without precedence.

After "Numerical expressions" of roff(7). Scales count in basic units of a terminal, 240 to the inch.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

CHARACTER: Final = 24
"""Basic units of a character's width."""
_TOKEN: Final = re.compile(
    r"\s*(?:([0-9]+\.?[0-9]*|\.[0-9]+)([icPmnpuvfs]?)|(<=|>=|==|<\?|>\?|[-+*/%<>=&:()]))"
)
_SCALES: Final = {
    "i": 240,
    "c": 94,
    "P": 40,
    "m": CHARACTER,
    "n": CHARACTER,
    "p": 3,
    "u": 1,
    "v": 40,
    "f": 65536,
    "s": 1,
    "": 1,
}
_DEEPEST: Final = 50

_OPERATORS: Final[dict[str, Callable[[int, int], int]]] = {
    "+": lambda left, right: left + right,
    "-": lambda left, right: left - right,
    "*": lambda left, right: left * right,
    "/": lambda left, right: int(left / right) if right else 0,
    "%": lambda left, right: left % right if right else 0,
    "<": lambda left, right: int(left < right),
    ">": lambda left, right: int(left > right),
    "<=": lambda left, right: int(left <= right),
    ">=": lambda left, right: int(left >= right),
    "=": lambda left, right: int(left == right),
    "==": lambda left, right: int(left == right),
    "&": lambda left, right: int(left > 0 and right > 0),
    ":": lambda left, right: int(left > 0 or right > 0),
    "<?": min,
    ">?": max,
}

_LARGEST: Final = 2**31 - 1


def evaluate(text: str) -> int:
    """The value of an expression; what cannot be read counts as 0."""
    tokens = [(match[1] or "", match[2] or "", match[3] or "") for match in _TOKEN.finditer(text[:200])]
    tokens.reverse()
    return _expression(tokens, 0)


def _expression(tokens: list[tuple[str, str, str]], depth: int) -> int:
    value = _operand(tokens, depth)
    while tokens and tokens[-1][2] in _OPERATORS:
        operator = tokens.pop()[2]
        value = _OPERATORS[operator](value, _operand(tokens, depth))
        value = max(-_LARGEST, min(_LARGEST, value))
    if tokens and tokens[-1][2] == ")":
        tokens.pop()
    return value


def _operand(tokens: list[tuple[str, str, str]], depth: int) -> int:
    if not tokens:
        return 0
    number, scale, operator = tokens.pop()
    if number:
        return min(_LARGEST, int(float(number) * _SCALES[scale]))
    if operator in ("-", "+"):
        value = _operand(tokens, depth)
        return -value if operator == "-" else value
    if operator == "(" and depth < _DEEPEST:
        return _expression(tokens, depth + 1)
    return 0
