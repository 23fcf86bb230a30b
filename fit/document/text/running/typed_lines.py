"""What is typed at one sign again and again, with what comes of it between."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from fit.document.text.line import Line


def typed_lines(
    lines: Sequence[Line], taken: Sequence[object], start: int, sign_of: Callable[[str], str], reach: int
) -> tuple[list[int], int]:
    """The lines at the indent of ``start`` with the sign that it begins with, and the end of what may come of the last.

    ``sign_of`` gives the sign of a line; ``reach`` are the lines from one to the next, at most.
    """
    first = lines[start]
    sign = sign_of(first.text)
    typed = [start]
    end = start + 1
    while end < len(lines) and taken[end] is None and end - typed[-1] <= reach:
        line = lines[end]
        if line.indent < first.indent or line.gap > 2:
            break
        if line.indent == first.indent and sign_of(line.text) == sign:
            typed.append(end)
        end += 1
    return typed, end
