"""Titles that neither capitals nor a rule of their own show: what stands under the number of a part, or in the middle."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.signs.closings import signed_right_below
from fit.document.text.signs.code import typed
from fit.document.text.signs.measure import closed, hangs, prose, small_word, starts_small
from fit.document.text.signs.rules import ruled_off
from fit.document.text.titles.headings import loud

TALLEST = 3
"""Lines of such a title, at most."""
LONGEST = 50
"""Characters of a line of one, at most."""
FAR = 12
"""Cells at the left and the right of a line that nothing but its place in the middle explains."""
LESS = 10
"""The same for a line of names: titles are written so, and sentences are not."""
INSET = 4
"""Cells at the left of a line in the middle, at least."""
BY_EYE = 4
"""Cells by which the middle of a line may miss that of the page."""
_COUNT = r"\d{1,3}|[IVXLC]{1,6}|[A-Z]|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_PART = re.compile(
    rf"(?:chapter|part|section|appendix|lesson|book|canto|act|scene|letter)\s+(?:the\s+)?(?:{_COUNT})[.:]?|appendix[.:]?",
    re.IGNORECASE,
)


def part_title(lines: Sequence[Line], index: int) -> int:
    """The end of the title that begins with the number of a part alone on its line, `Part 1.`; 0 where none does.

    The number is a title of its own where a blank line follows; else what stands right below it belongs to it.
    """
    line = lines[index]
    if len(line.text) > LONGEST or not parted_above(lines, index) or _PART.fullmatch(line.text) is None:
        return 0
    end = part_end(lines, index)
    if end == index + 1:
        return end if " " in line.text else 0
    return end if _title(lines[index + 1 : end]) else 0


def title_under(lines: Sequence[Line], start: int) -> int:
    """The end of the title that begins at a line, under the number of a part and a blank line; 0 where none does."""
    end = part_end(lines, start)
    part = lines[start:end]
    below = end < len(lines) and lines[start].gap > 0 and part[0].text[:1].isupper()
    return end if below and _title(part) else 0


def subtitle(lines: Sequence[Line], start: int) -> int:
    """The end of the lines in the middle, right below a title in capitals with the same middle, that add to it; or 0."""
    above, line = lines[start - 1], lines[start]
    if not start or line.apart or above.indent < INSET or not loud(above.text) or loud(line.text):
        return 0
    end = part_end(lines, start)
    part = lines[start:end]
    if any(char.isdigit() for one in part for char in one.text) or line.text.startswith("by "):
        return 0  # a release, a date, a writer
    middle = above.indent + above.end
    level = all(abs(one.indent + one.end - middle) <= BY_EYE for one in part)
    return end if level and end - start < TALLEST and _title(part) else 0


def _title(part: Sequence[Line]) -> bool:
    """Whether a few short lines end no sentence, unless they are in capitals, and are no program text."""
    short = all(len(line.text) <= LONGEST and "   " not in line.text for line in part)
    plain = not any(typed(line.text) or ruled_off(line.text) for line in part)
    words = all(any(map(str.isalpha, line.text)) for line in part)
    return (
        len(part) <= TALLEST
        and short
        and plain
        and words
        and (loud(part[-1].text) or not closed(part[-1].text))
        and not hangs(part[-1].text)
    )


def over_first_line(lines: Sequence[Line], start: int, below: Sequence[Line]) -> bool:
    """Whether a line of names stands at the margin right over a paragraph of which the first line alone is set in.

    It stands below a blank line or the end of a sentence: no paragraph begins at the margin, and none has gone on.
    """
    line = lines[start]
    if len(below) < 2 or below[0].apart or below[0].indent <= line.indent:
        return False
    if len(below) == 2 and (closed(below[0].text) or not starts_small(below[1].text)):
        return False
    if any(one.indent != line.indent for one in below[1:]):
        return False
    above = lines[start - 1]
    alone = parted_above(lines, start) or (closed(above.text) and above.indent == line.indent)
    named = _names(line.text)
    return alone and line.text[:1].isupper() and below[0].text[:1].isupper() and named and _title([line])


def _names(text: str) -> bool:
    """Whether each word begins with a capital, but for small ones."""
    return all(word[:1].isupper() or small_word(word) for word in text.split())


def middle_title(lines: Sequence[Line], start: int, base: int, right: int) -> int:
    """The end of the lines that stand in the middle of the page, over running text at its left margin; or 0.

    ``base`` and ``right`` are the margins.
    """
    line = lines[start]
    far = LESS if _names(line.text) else FAR
    if line.indent < base + far or not parted_above(lines, start) or closed(line.text) or loud(line.text):
        return 0
    end = part_end(lines, start)
    part = lines[start:end]
    if end == len(lines) or len(part) > TALLEST or not _title(part) or signed_right_below(part):
        return 0
    if any(char.isdigit() for one in part[1:] for char in one.text):
        return 0  # a date, a place
    middle = all(
        abs(one.indent + one.end - base - right) <= 2 * BY_EYE and one.end <= right - far for one in part
    )
    above, below = lines[start - 1] if start else None, lines[end]
    led = above is not None and (
        above.text.endswith((":", ","))
        or (prose(above.text) and not closed(above.text) and not loud(above.text))
    )
    goes_on = starts_small(below.text) or not prose(below.text) or below.indent > base + BY_EYE
    if start == 0 and below.indent >= base + FAR:
        goes_on = False  # the next line of a title page
    return end if middle and not led and not goes_on else 0


def more_capitals(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether lines in capitals stand right where others do above a blank line, all at one place: more of these."""
    if end - start < 2 or start < 2 or lines[start].gap != 1 or lines[start - 1].apart:
        return False
    both = lines[start - 2 : end]
    return len({line.indent for line in both}) == 1 and all(loud(line.text) for line in both)
