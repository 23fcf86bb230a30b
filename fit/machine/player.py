"""Choosing keys: at each prompt what was not tried yet, then what paid best.

Reward is lines that were not seen before; numbers alone make none new but in a table. A program that only echoes a first key reads
a line key by key: it then gets the rest of the answer and a CR.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, field
from itertools import takewhile
from typing import Final, NamedTuple

from fit.machine.host import Host
from fit.machine.prompts import Prompt, PromptKind, read_prompt
from fit.machine.screen_text import lines_of, masked_line
from fit.machine.waits import WaitKind

_CR: Final = "\r"
_WINDOW: Final = 4000
"""Bytes of output before a wait in which its prompt and menu are looked for."""
_LEAST_LIKELY: Final = 0.4
"""How likely the last answer of a prompt is thought to be, where the first is 1."""
_REWARD_WEIGHT: Final = 0.5
_MOST_REWARD: Final = 3.0
_WEAR: Final = 1.5
"""Exponent with which an answer wears off."""
_REFRESH: Final = 0.3
"""What remains of the wear once something new was seen: the same words may mean more there."""
_JITTER: Final = 0.15
_TABLE: Final = 3
"""Lines printed at one go that differ by their numbers alone, at least, which are a table."""


class Situation(NamedTuple):
    """What makes two waits the same for choosing a key."""

    kind: WaitKind
    caller: int
    prompt: str


@dataclass(slots=True)
class Trial:
    """What is known of an answer in a situation."""

    times: int = 0
    lines: int = 0
    """New lines that it brought, in all."""
    wear: float = 0.0
    """How worn it is: grows when it is given, shrinks when anything brings something new."""


@dataclass
class Memory:
    """What both ways of playing have learnt of one program."""

    lines: set[str] = field(default_factory=set)
    trials: dict[Situation, dict[str, Trial]] = field(default_factory=dict)
    line_readers: dict[int, bool] = field(default_factory=dict)
    """Callers that read key by key, and whether they read lines in that way."""


class Player:
    """Answers waits of one host, and learns from what comes."""

    def __init__(self, memory: Memory, seed: int, files: tuple[str, ...] = ()) -> None:
        self.memory = memory
        self._random = random.Random(seed)  # noqa: S311  a repeatable choice, no secret
        self._files = files

    def situation(self, host: Host) -> tuple[Situation, Prompt]:
        """The wait at which the host stands."""
        prompt = read_prompt(lines_of(bytes(host.console.output[-_WINDOW:])), self._files)
        caller = host.place.caller if host.place else 0
        assert host.wait is not None
        return Situation(host.wait, caller, masked_line(prompt.text)), prompt

    def choose(self, situation: Situation, prompt: Prompt, avoid: set[str] | None = None) -> str:
        """An answer without its CR: likely, little worn, and if possible none of ``avoid``."""
        trials = self.memory.trials.setdefault(situation, {})
        allowed = [answer for answer in prompt.answers if not avoid or answer not in avoid]
        answers = allowed or list(prompt.answers)
        step = (1 - _LEAST_LIKELY) / max(1, len(prompt.answers) - 1)

        def score(answer: str) -> float:
            trial = trials.get(answer, Trial())
            reward = min(_MOST_REWARD, trial.lines / trial.times) if trial.times else 0.0
            likely = 1 - step * prompt.answers.index(answer)
            jitter = 1 + _JITTER * self._random.uniform(-1, 1)
            return (likely + _REWARD_WEIGHT * reward) * jitter / math.pow(1 + trial.wear, _WEAR)

        return max(answers, key=score)

    def keys(self, situation: Situation, prompt: Prompt, answer: str) -> list[bytes]:
        """The steps to type for an answer: each at its own wait."""
        if prompt.kind is PromptKind.ANY_KEY and situation.kind is not WaitKind.LINE:
            return [answer.encode("ascii")]
        reads_lines = situation.kind is WaitKind.LINE or self.memory.line_readers.get(situation.caller)
        whole = answer.rstrip(_CR).encode("ascii") + b"\r"
        if reads_lines:
            return [whole]
        if reads_lines is False:
            return [whole[:1]]
        # Not known yet: the first key will show it.
        return [whole[:1], whole[1:]] if len(whole) > 1 else [whole]

    def note_reading(self, situation: Situation, *, only_echoed: bool) -> None:
        """Learn from a first key whether the program reads a line key by key."""
        if situation.kind is not WaitKind.LINE:
            self.memory.line_readers.setdefault(situation.caller, only_echoed)

    def reward(self, situation: Situation, answer: str, printed: bytes) -> int:
        """Count the new lines that an answer brought, its echo aside, and remember them."""
        new = seen_lines(printed, answer.encode("ascii")) - self.memory.lines
        self.memory.lines |= new
        trials = self.memory.trials.setdefault(situation, {})
        if new:
            for other in trials.values():
                other.wear *= _REFRESH
        trial = trials.setdefault(answer, Trial())
        trial.times += 1
        trial.wear += 1
        trial.lines += len(new)
        return len(new)


def seen_lines(printed: bytes, typed: bytes = b"") -> set[str]:
    """The different lines of an output, the echo of what was typed aside.

    Numbers are aside too, unless they are all that tells the lines of a table: a count of turns makes no line
    new, the next page of a tide table is nothing but new ones.
    """
    pairs = zip(printed.upper(), typed.upper(), strict=False)
    start = sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], pairs))
    alike: dict[str, set[str]] = {}
    for line in lines_of(printed[start:]):
        alike.setdefault(masked_line(line), set()).add(line)
    lines: set[str] = set()
    for masked, several in alike.items():
        lines |= several if len(several) >= _TABLE else {masked}
    return lines
