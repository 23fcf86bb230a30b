"""Rules: one sign again and again, whole or in parts, with scissors, between the marks of a remark, with a title in them."""

from __future__ import annotations

import re

from fit.document.text.signs.titled_rules import titled_rule

_RULE = re.compile(
    r"([-=_*~#+\u2500\u2501\u2550])\1{2,}|(?:[-=_*~o] +){2,}[-=_*~o]|([-=_*~])(?!\2)([-=_*~])(?:\2\3)+\2?|- -{6,}|-{24,}>"
)
_REMARK_RULE = re.compile(r"\(\*([-=*])\1{5,}\*?\)|/\*([-=*])\2{5,}\*?/")
_CUT = frozenset("-=_~")
_SEGMENTS = re.compile(
    r"(?:[-=_\u2500\u2501\u2550~]{2,}|\.{3,})(?: +(?:[-=_\u2500\u2501\u2550~]{2,}|\.{3,}))+"
)


_SCISSORS = re.compile(r"(?:(?:[-=_~] ?){2,}(?:[8%]<|>[8%]|[\u2700-\u2704]) ?)+(?:[-=_~] ?){2,}")


def ruled_off(text: str) -> bool:
    """Whether the line is nothing but a rule."""
    return _RULE.fullmatch(text) is not None or remark_rule(text) or scissors(text)


def scissors(text: str) -> bool:
    """Whether the line is a rule with scissors on it, to cut along: `---8<------`, `-- >8 --`."""
    return text[:1] in _CUT and _SCISSORS.fullmatch(text) is not None


def remark_rule(text: str) -> bool:
    """Whether the line is a rule that stands between the marks of a remark: `(*-----*)`."""
    return text[:2] in {"(*", "/*"} and _REMARK_RULE.fullmatch(text) is not None


def segmented(text: str) -> bool:
    """Whether the line is a rule in parts, one a column of a table."""
    return _SEGMENTS.fullmatch(text) is not None


def any_rule(text: str) -> bool:
    return ruled_off(text) or segmented(text) or titled_rule(text)[2] > 0
