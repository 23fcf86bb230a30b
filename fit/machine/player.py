"""Choosing keys: at each prompt what was not tried yet, then what paid best.

Reward is lines that were not seen before, numbers aside. A program that only echoes a first key reads
a line key by key: it then gets the rest of the answer and a CR.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from fit.machine.host import Host
from fit.machine.prompts import Prompt, PromptKind, read_prompt
from fit.machine.screen_text import lines_of, masked_line
from fit.machine.waits import WaitKind

_CR: Final = "\r"
_WINDOW: Final = 4000
"""Bytes of output before a wait in which its prompt and menu are looked for."""
_SWAP_CHANCE: Final = 0.25


class Situation(NamedTuple):
    """What makes two waits the same for choosing a key."""

    kind: WaitKind
    caller: int
    prompt: str


@dataclass(slots=True)
class Trial:
    """How often an answer was given in a situation, and how many new lines it brought."""

    times: int = 0
    lines: int = 0


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

    def choose(self, situation: Situation, prompt: Prompt) -> str:
        """An answer without its CR."""
        trials = self.memory.trials.setdefault(situation, {})
        if prompt.kind is PromptKind.ANY_KEY:
            return prompt.answers[0] if self._random.random() > _SWAP_CHANCE else prompt.answers[-1]
        fresh = [answer for answer in prompt.answers if answer not in trials]
        if fresh:
            # Mostly in order of likelihood, now and then the next one, so that seeds differ.
            swap = len(fresh) > 1 and self._random.random() < _SWAP_CHANCE
            return fresh[1] if swap else fresh[0]
        best = max(trial.lines / trial.times for trial in trials.values())
        good = [answer for answer, trial in trials.items() if trial.lines / trial.times >= best / 2]
        return self._random.choice(good)

    def untried(self, situation: Situation, prompt: Prompt) -> int:
        """How many answers were never given in a situation."""
        trials = self.memory.trials.get(situation, {})
        return sum(answer not in trials for answer in prompt.answers)

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
        """Count the new lines that an answer brought, and remember them."""
        lines = {masked_line(line) for line in lines_of(printed)}
        new = lines - self.memory.lines
        self.memory.lines |= new
        trial = self.memory.trials.setdefault(situation, {}).setdefault(answer, Trial())
        trial.times += 1
        trial.lines += len(new)
        return len(new)
