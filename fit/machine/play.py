"""Playing a program without a script, in two ways that do well on different programs.

    linear      one run, straight on
    exploring   goes back to waits where much was new, and answers otherwise there

Both share what they have seen. The same seed and budget give the same runs, unless seconds end them.
"""

from __future__ import annotations

import math
import time
from dataclasses import dataclass, field
from typing import Final

from fit.machine.conversation import Conversation
from fit.machine.echo import shows_more_than_echo
from fit.machine.ending import Limits
from fit.machine.host import Host, HostState
from fit.machine.loader import Program
from fit.machine.player import Memory, Player, Situation, seen_lines
from fit.machine.prompts import Prompt
from fit.machine.run import Run, report
from fit.machine.setting import Setting
from fit.session import EventKind, Session

PLAY_LIMITS: Final = Limits(ticks=2_000_000_000, silent_ticks=200_000_000, output=400_000, waits=2_000)
"""A played program is one of many: it may not print or compute for ever."""

MOST_PATHS: Final = 3
"""Explored paths that are kept beside the linear run."""


@dataclass(frozen=True, slots=True)
class Budget:
    """What playing may take. Steps are answers given; each way has its own."""

    steps: int = 300
    idle_steps: int = 60
    """A way ends after so many steps without a new line."""
    seconds: float | None = None
    """For both ways together; where it ends one, the result is not repeatable."""


@dataclass(frozen=True, slots=True)
class Play:
    """What was found by playing."""

    runs: tuple[Run, ...]
    """The linear run, then explored paths that showed lines which those before did not."""
    lines: int
    """Different lines seen on all paths, as `seen_lines` counts them."""
    linear_lines: int
    waits: int
    looks: int
    steps: int
    seed: int

    @property
    def best(self) -> Run:
        """The run that showed most different lines."""
        return max(self.runs, key=lambda run: len(lines_seen(run.session)))


@dataclass
class _Node:
    """A wait to come back to."""

    state: HostState
    situation: Situation
    prompt: Prompt
    value: float
    tried: set[str] = field(default_factory=set)


def play(
    program: Program, setting: Setting | None = None, *, seed: int = 1, budget: Budget | None = None
) -> Play:
    """Play a program in both ways. Raises ProgramError and UsageError as `run_program` does."""
    setting = setting or Setting(limits=PLAY_LIMITS)
    budget = budget or Budget()
    host = Host(program, setting)
    Conversation(host).go_on()
    start, memory = host.freeze(), Memory()
    linear = _Way(host, memory, seed, budget)
    first = linear.go_straight()
    seen = len(memory.lines)
    host.thaw(start)
    explorer = _Way(host, memory, seed + 1, budget)
    paths = explorer.explore()
    runs = _worthwhile(first, paths)
    return Play(
        runs=tuple(runs),
        lines=len(memory.lines),
        linear_lines=seen,
        waits=sum(len(run.wait_kinds) for run in runs),
        looks=sum(
            event.is_look for run in runs for event in run.session.events if event.kind is EventKind.WAIT
        ),
        steps=linear.steps + explorer.steps,
        seed=seed,
    )


def _worthwhile(first: Run, paths: list[Run]) -> list[Run]:
    """The linear run and the few paths that add most lines to it."""
    runs, seen = [first], lines_seen(first.session)
    rest = [(lines_seen(path.session), path) for path in paths]
    while rest and len(runs) <= MOST_PATHS:
        lines, path = max(rest, key=lambda pair: len(pair[0] - seen))
        if not lines - seen:
            break
        runs.append(path)
        seen |= lines
    return runs


def lines_seen(session: Session) -> set[str]:
    """The different lines that a session showed, as `seen_lines` counts them."""
    lines: set[str] = set()
    start, typed = 0, b""
    for event in session.events:
        if event.kind is EventKind.INPUT:
            lines |= seen_lines(session.output[start : event.at], typed)
            start, typed = event.at, event.data
    return lines | seen_lines(session.output[start:], typed)


class _Way:
    """One way of playing, from the wait at which a host stands."""

    def __init__(self, host: Host, memory: Memory, seed: int, budget: Budget) -> None:
        self.host = host
        self.steps = 0
        self._conversation = Conversation(host)
        self._memory = memory
        self._budget = budget
        # Either way has half of the time.
        self._deadline = math.inf if budget.seconds is None else time.monotonic() + budget.seconds / 2
        self._idle = 0
        # A program that asks for a file seldom means a program.
        names = sorted(host.drives.names(0), key=lambda name: name.endswith(".COM"))
        self._player = Player(memory, seed, tuple(names))
        memory.lines |= seen_lines(bytes(host.console.output))

    def go_straight(self) -> Run:
        """Answer one wait after the other."""
        while self.host.wait is not None and not self._is_used_up():
            situation, prompt = self._player.situation(self.host)
            self._answer(situation, prompt)
        return self._finish()

    def explore(self) -> list[Run]:
        """Go back to the most promising wait again and again; returns the paths that ended in new lines."""
        if self.host.wait is None:
            return []
        nodes = [self._node(1.0)]
        ends: list[HostState] = []
        while not self._is_used_up():
            node = max(nodes, key=self._promise)
            if self._promise(node) <= 0:
                break
            self.host.thaw(node.state)
            new = self._answer(node.situation, node.prompt, node.tried)
            if new:
                ends.append(self.host.freeze())
            if self.host.wait is not None and (new or self._is_unknown()):
                nodes.append(self._node(new + node.value / 2))
        return [self._run_at(state) for state in ends]

    def _node(self, value: float) -> _Node:
        situation, prompt = self._player.situation(self.host)
        return _Node(self.host.freeze(), situation, prompt, value)

    def _promise(self, node: _Node) -> float:
        if len(node.tried) >= len(node.prompt.answers):
            return 0.0
        return (node.value + 0.1) / (1 + len(node.tried))

    def _is_unknown(self) -> bool:
        situation, _ = self._player.situation(self.host)
        return situation not in self._memory.trials

    def _answer(self, situation: Situation, prompt: Prompt, tried: set[str] | None = None) -> int:
        """Give one answer, all its keys, and return how many new lines it brought."""
        host, player = self.host, self._player
        answer = player.choose(situation, prompt, tried)
        if tried is not None:
            tried.add(answer)
        keys = player.keys(situation, prompt, answer)
        start = len(host.console.output)
        self._conversation.answer(keys[0])
        if len(keys) > 1:
            only_echoed = not shows_more_than_echo(bytes(host.console.output[start:]), keys[0])
            player.note_reading(situation, only_echoed=only_echoed)
            if only_echoed and host.wait is not None:
                self._conversation.answer(keys[1])
        new = player.reward(situation, answer, bytes(host.console.output[start:]))
        self.steps += 1
        self._idle = 0 if new else self._idle + 1
        return new

    def _is_used_up(self) -> bool:
        if self.steps >= self._budget.steps or self._idle >= self._budget.idle_steps:
            return True
        return time.monotonic() >= self._deadline

    def _finish(self) -> Run:
        if self.host.ending is None:
            self.host.end_script()
        return report(self.host)

    def _run_at(self, state: HostState) -> Run:
        self.host.thaw(state)
        return self._finish()
