"""All entries of a shelf to findings: from the cache where they are known, else on all cores."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import Final

from fit.shelf.cache import Cache
from fit.shelf.entry import Entry
from fit.shelf.finding import Finding
from fit.shelf.refusal import with_refusals
from fit.shelf.score import failed, score_entry
from fit.shelf.settings import ShelfSettings
from fit.shelf.workers import work_on

LONGEST: Final = 300.0
"""Seconds that one entry may take before its process is ended; on one core 3 s are usual."""

Told = Callable[[int, str], None]
"""Is told how many entries are done, and which one was the last."""


def score_shelf(
    entries: Sequence[Entry],
    settings: ShelfSettings,
    cache: Cache,
    *,
    jobs: int | None = None,
    told: Told | None = None,
) -> list[Finding]:
    """The findings, in the order of the entries. ``jobs`` processes, as many as there are cores where None."""
    findings: dict[Entry, Finding] = {}
    keys = {entry: cache.key(entry) for entry in entries}
    for entry, key in keys.items():
        known = cache.get(key, entry.name)
        if known is not None:
            findings[entry] = known
    missing = [entry for entry in entries if entry not in findings]
    if missing:
        if told:
            told(len(findings), "")
        for entry, finding in _score(missing, settings, jobs or os.cpu_count() or 1):
            findings[entry] = finding
            if not finding.failed:
                cache.put(keys[entry], finding)
            if told:
                told(len(findings), entry.name)
    return with_refusals([findings[entry] for entry in entries])


def _score(missing: list[Entry], settings: ShelfSettings, jobs: int) -> Iterator[tuple[Entry, Finding]]:
    return work_on(
        missing,
        partial(score_entry, settings=settings),
        failed,
        jobs=min(jobs, len(missing)),
        longest=LONGEST + (settings.seconds or 0.0),
    )
