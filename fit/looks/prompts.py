"""Prompts in output without times and inputs, such as a pasted transcript: where the program had waited.

The built-in rule (our own, no source): a prompt begins a line, ends in a sign that prompts end in, begins one of
the last lines of the output, stands at least three times, and other lines stand between.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fit.errors import UsageError
from fit.source.stripping import blanked

LONGEST_PROMPT = 60
FEWEST = 3
_LAST_LINES = 4  # the answer to the last prompt may print a farewell
_SIGN = re.compile(rb"[>?:$#%*] *|[!.)\]=](?: +|\Z)")
_STRONG = b">?$#"


@dataclass(frozen=True, slots=True)
class Prompt:
    """One prompt: the offset behind it, and what was typed there."""

    end: int
    answer: bytes


@dataclass(frozen=True, slots=True)
class RepeatedPrompt:
    """A prompt that the built-in rule found."""

    text: str
    places: tuple[Prompt, ...]


def check_prompts(patterns: Sequence[str]) -> list[re.Pattern[bytes]]:
    """The patterns, ready to search with. Raises `UsageError` for what is no regular expression."""
    compiled = []
    for pattern in patterns:
        try:
            compiled.append(re.compile(pattern.encode("utf-8", "surrogateescape"), re.MULTILINE))
        except re.error as error:
            raise UsageError(
                f"the prompt '{pattern}' is no regular expression ({error})", hint="escape its signs with \\"
            ) from None
    return compiled


def prompts_of(output: bytes, patterns: Sequence[str]) -> list[Prompt]:
    """Where the patterns end, ascending. Raises `UsageError` for what is no regular expression."""
    plain = blanked(output)
    ends: set[int] = set()
    for compiled in check_prompts(patterns):
        ends.update(match.end() for match in compiled.finditer(plain) if match.end() > match.start())
    return [Prompt(end, _answer(output, plain, end)) for end in sorted(ends)]


def find_prompt(output: bytes) -> RepeatedPrompt | None:
    """The prompt at the end of the output that repeats through it, or None."""
    plain = blanked(output)
    found = [(text, places) for text in _candidates(plain) if (places := _places(plain, text))]
    if not found:
        return None
    text, places = max(found, key=lambda one: (one[0].rstrip()[-1] in _STRONG, len(one[1]), len(one[0])))
    return RepeatedPrompt(
        text.decode("utf-8", "replace").strip(),
        tuple(Prompt(end, _answer(output, plain, end)) for end in places),
    )


def _candidates(plain: bytes) -> Iterator[bytes]:
    """Beginnings of the last lines that may be prompts; of the last alone, where it has no line end."""
    end = len(plain)
    for _ in range(_LAST_LINES if plain.endswith(b"\n") else 1):
        start = plain.rfind(b"\n", 0, end) + 1
        line = plain[start : min(end, start + LONGEST_PROMPT)]
        for sign in _SIGN.finditer(line):
            yield line[: sign.end()]
        if start == 0:
            return
        end = start - 1


def _places(plain: bytes, text: bytes) -> list[int]:
    """The offsets behind the prompt wherever it begins a line; empty where it cannot be a prompt."""
    places = []
    lines_between = 0
    at = 0 if plain.startswith(text) else plain.find(b"\n" + text) + 1
    if at == 0 and not plain.startswith(text):
        return []
    while True:
        end = at + len(text)
        places.append(end)
        line_end = plain.find(b"\n", end)
        following = plain.find(b"\n" + text, end) + 1
        if not following:
            break
        lines_between += following > line_end + 1
        at = following
    # A list has its sign on one line after the other; a program prints something between its prompts.
    is_prompt = len(places) >= FEWEST and 2 * lines_between >= len(places) - 1
    return places if is_prompt else []


def _answer(output: bytes, plain: bytes, end: int) -> bytes:
    """What stands on the line behind a prompt: what was typed there, with the Enter key."""
    line_end = plain.find(b"\n", end)
    if line_end < 0:
        return plain[end:].rstrip()
    answer = plain[end:line_end].rstrip()
    return answer + b"\r" if output[end : end + len(answer)] == answer else b"\r"
