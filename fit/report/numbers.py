"""Numbers as people read them; a rounded one never says more than the number it stands for."""

from __future__ import annotations

from collections.abc import Sequence

from fit.loss.verdict import said_rate, said_score

NOT_MEASURED = "-"


def percent(share: float | None) -> str:
    """A share from 0 to 1 as ``61%``: 0 and 100 only where nothing and everything is meant."""
    if share is None:
        return NOT_MEASURED
    rounded = round(share * 100)
    if rounded == 0 and share > 0:
        return "<1%"
    if rounded == 100 and share < 1:
        return ">99%"
    return f"{rounded}%"


def points(score: float | None) -> str:
    """A score from 0 to 100 as ``54``."""
    return NOT_MEASURED if score is None else said_score(score)


def rate(value: float | None) -> str:
    """Key presses a turn as ``1.2``."""
    return NOT_MEASURED if value is None else said_rate(value)


def count(number: int, one: str, many: str | None = None) -> str:
    """A number and its noun: ``1 line``, ``2,400 lines``."""
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def sentence(text: str) -> str:
    """A text that may begin small and lack its full stop, as a sentence."""
    text = text.strip()
    return text[:1].upper() + text[1:] + ("" if text[-1:] in ".?!:" or text.endswith(".)") else ".")


def ranges(numbers: Sequence[int]) -> str:
    """Ascending whole numbers as ``1, 9-24``."""
    parts: list[str] = []
    start = 0
    for index, number in enumerate(numbers):
        if index + 1 < len(numbers) and numbers[index + 1] == number + 1:
            continue
        first = numbers[start]
        parts.append(str(number) if first == number else f"{first}-{number}")
        start = index + 1
    return ", ".join(parts)
