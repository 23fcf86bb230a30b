"""Work in several processes, of which any may die or hang without stopping the rest."""

from __future__ import annotations

import signal
import time
from collections.abc import Callable, Generator, Iterator, Sequence
from dataclasses import dataclass
from multiprocessing import get_context
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from typing import Any, Final, Generic, TypeVar

_CONTEXT: Final = get_context("spawn")  # forking a process that has threads is not safe
_TICK: Final = 0.5
"""Seconds between two looks at the clock."""

Task = TypeVar("Task")
Result = TypeVar("Result")


@dataclass(slots=True)
class _Worker(Generic[Task]):
    """A process and the task it is at."""

    process: BaseProcess
    connection: Connection
    is_ready: bool = False
    """Whether it has said that it can take tasks: starting takes its time, which no task is charged with."""
    task: Task | None = None
    since: float = 0.0


def work_on(
    tasks: Sequence[Task],
    function: Callable[[Task], Result],
    lost: Callable[[Task, str], Result],
    *,
    jobs: int,
    longest: float,
) -> Generator[tuple[Task, Result], None, None]:
    """Each task with its result, in the order in which they are done.

    ``function`` must not raise. ``lost`` makes the result of a task whose process died, or took more than
    ``longest`` seconds; it is told which. All processes end with the iteration, however it ends.
    """
    waiting = list(reversed(tasks))
    workers: list[_Worker[Task]] = []
    try:
        while waiting or any(worker.task is not None for worker in workers):
            while len(workers) < min(jobs, len(waiting) + sum(worker.task is not None for worker in workers)):
                workers.append(_start(function))
            for worker in workers:
                if worker.is_ready and worker.task is None and waiting:
                    worker.task, worker.since = waiting.pop(), time.monotonic()
                    worker.connection.send(worker.task)
            yield from _collect(workers, waiting, lost, longest)
    finally:
        for worker in workers:
            _stop(worker)


def _collect(
    workers: list[_Worker[Task]], waiting: list[Task], lost: Callable[[Task, str], Result], longest: float
) -> Iterator[tuple[Task, Result]]:
    """Wait a while for whatever comes: a result, a process that is ready, one that died or takes too long."""
    ready = wait([worker.connection for worker in workers], _TICK)
    for worker in list(workers):
        if worker.connection in ready:
            try:
                answer = worker.connection.recv()
            except (EOFError, OSError):
                yield from _bury(worker, workers, waiting, lost)
                continue
            if worker.is_ready:
                assert worker.task is not None
                task, worker.task = worker.task, None
                yield task, answer
            worker.is_ready = True
        elif worker.task is not None and time.monotonic() - worker.since > longest:
            workers.remove(worker)
            _stop(worker)
            yield worker.task, lost(worker.task, f"scoring it took more than {longest:g} s")


def _bury(
    worker: _Worker[Task],
    workers: list[_Worker[Task]],
    waiting: list[Task],
    lost: Callable[[Task, str], Result],
) -> Iterator[tuple[Task, Result]]:
    """A process died. One that never was ready takes a task with it, so that there is an end of starting anew."""
    workers.remove(worker)
    _stop(worker)
    task = waiting.pop() if worker.task is None and waiting else worker.task
    if task is not None:
        yield task, lost(task, "the process that scored it died")


def _start(function: Callable[[Any], Any]) -> _Worker[Any]:
    ours, theirs = _CONTEXT.Pipe()
    process = _CONTEXT.Process(target=_serve, args=(theirs, function), daemon=True)
    process.start()
    theirs.close()
    return _Worker(process, ours)


def _stop(worker: _Worker[Any]) -> None:
    worker.process.kill()
    worker.process.join()
    worker.connection.close()


def _serve(connection: Connection, function: Callable[[Any], Any]) -> None:
    """In the process: one task after the other, until nobody asks any more."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C is the asker's business
    connection.send(None)
    while True:
        try:
            task = connection.recv()
        except (EOFError, OSError):
            return
        connection.send(function(task))
