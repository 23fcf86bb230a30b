"""Samples shown one after the other with the same letters in them: how their lines end, or their signs, is what they show."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line

BETWEEN = 4
"""Lines of text between two such samples, at most."""
LETTERS = 12
"""Letters and digits of a sample, at least: fewer come again by chance."""
BLANK = 2
"""Blank lines inside a sample, at most."""


def find_shown_again(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines, set in below a colon, that differ from the sample before them in lines or signs alone."""
    found: set[tuple[int, int]] = set()
    above, known = (0, 0), ""
    for index in range(1, len(lines)):
        if index < above[1] or taken[index] is not None or not _led(lines[index - 1], lines[index]):
            continue
        sample = (index, _end(lines, taken, index))
        letters = _letters(lines[slice(*sample)])
        near = known != "" and index - above[1] <= BETWEEN and lines[above[0]].indent == lines[index].indent
        if near and letters == known and _lines(lines, above) != _lines(lines, sample):
            found |= {above, sample}
        above, known = sample, letters if len(letters) >= LETTERS else ""
    return sorted(found)


def _led(above: Line, line: Line) -> bool:
    """Whether a line is set in below a blank one, and text that ends in a colon leads to it."""
    return line.gap > 0 and above.indent < line.indent and above.text.endswith(":")


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """Where the lines end that stand at least as deep as the first."""
    end = start + 1
    while (
        end < len(lines)
        and taken[end] is None
        and lines[end].indent >= lines[start].indent
        and lines[end].gap <= BLANK
    ):
        end += 1
    return end


def _letters(part: Sequence[Line]) -> str:
    """The letters and digits of the lines, one after the other."""
    return "".join(char for line in part for char in line.text.lower() if char.isalnum())


def _lines(lines: Sequence[Line], part: tuple[int, int]) -> list[str]:
    return [line.text for line in lines[slice(*part)]]
