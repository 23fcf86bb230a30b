"""Work in processes: whatever dies or hangs is told, and the rest is done."""

from __future__ import annotations

from multiprocessing import active_children

from shelf_samples import double, lost

from fit.shelf.workers import work_on


def results(tasks: list[int], jobs: int = 2, longest: float = 60.0) -> dict[int, str]:
    return dict(work_on(tasks, double, lost, jobs=jobs, longest=longest))


def test_every_task_has_its_result() -> None:
    assert results(list(range(8))) == {number: str(2 * number) for number in range(8)}
    assert active_children() == []


def test_a_process_that_dies_takes_only_its_own_task_with_it() -> None:
    found = results([1, 13, 2, 13, 3])
    assert found == {1: "2", 13: "13: the process that scored it died", 2: "4", 3: "6"}


def test_a_process_that_hangs_is_ended() -> None:
    found = results([99, 4, 5], longest=3.0)
    assert found == {99: "99: scoring it took more than 3 s", 4: "8", 5: "10"}
    assert active_children() == []


def test_no_process_outlives_a_reader_who_has_enough() -> None:
    work = work_on([1, 2, 99], double, lost, jobs=2, longest=60.0)
    next(work)
    work.close()
    assert active_children() == []


def test_nothing_to_do() -> None:
    assert results([]) == {}
