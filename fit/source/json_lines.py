"""JSON Lines for the readers of recordings: one value a line, each with its line number for errors."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator
from typing import Any

from fit.errors import SourceError
from fit.units import LARGEST_SIDE, Size


def json_lines(data: bytes, source: str, *, comment: bytes | None = None) -> Iterator[tuple[int, Any]]:
    """Give ``(line number from 1, value)`` for each line that is not blank and does not start with ``comment``.

    Raises `SourceError` with the line that is no JSON or no UTF-8.
    """
    start = 3 if data.startswith(b"\xef\xbb\xbf") else 0  # the mark of UTF-8 that some editors set
    number = 0
    while start < len(data):
        end = data.find(b"\n", start)
        end = len(data) if end < 0 else end
        number += 1
        line = data[start:end].strip()
        start = end + 1
        if line and not (comment is not None and line.startswith(comment)):
            yield number, _value(line, source, number, is_last=start >= len(data))


def whole_number(value: Any) -> int | None:
    """The value where it is a whole number and no truth value, else None."""
    return value if type(value) is int else None


def seconds(value: Any) -> float | None:
    """The value where it is a finite number of seconds, else None."""
    if type(value) not in (int, float):
        return None
    try:
        return float(value) if math.isfinite(value) else None
    except OverflowError:
        return None


def checked_size(columns: Any, rows: Any, source: str, line: int) -> Size:
    """The size of a header. Raises `SourceError` where a side is no whole number from 1 to 500."""
    for name, side in (("columns", columns), ("rows", rows)):
        number = whole_number(side)
        if number is None or not 1 <= number <= LARGEST_SIDE:
            raise SourceError(
                f"a screen of {str(side)[:20]} {name} cannot be measured"
                if number is not None
                else f"the {name} are missing"
                if side is None
                else f"the {name} are no whole number",
                source=source,
                line=line,
                hint=f"rows and columns go from 1 to {LARGEST_SIDE}",
            )
    return Size(rows, columns)


def _value(line: bytes, source: str, number: int, *, is_last: bool) -> Any:
    try:
        return json.loads(line.decode("utf-8"))  # json.loads would look for UTF-16 and UTF-32
    except UnicodeDecodeError:
        what = "is not UTF-8"
    except (ValueError, RecursionError) as error:
        what = f"is no JSON ({_why(error)})"
    hint = (
        "the file seems cut there; delete this line to read the rest"
        if is_last
        else "mend or delete this line"
    )
    raise SourceError(what, source=source, line=number, hint=hint)


def _why(error: Exception) -> str:
    """What is wrong with the line, in words."""
    if isinstance(error, RecursionError):
        return "it is nested too deep"
    if isinstance(error, json.JSONDecodeError):
        return error.msg.removesuffix(" at").removesuffix(" starting").lower()
    return "a number in it has too many digits"
