"""One entry to a finding, whatever it is. Nothing that goes wrong with one entry stops the shelf."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from fit.dialect.ecma48_likeness import follows_ecma48
from fit.dialect.registry import find_description
from fit.document import read_document
from fit.errors import FitError
from fit.layout.settings import LayoutSettings
from fit.machine import blocks_on_disk
from fit.pipeline import measure
from fit.remedy.findings import Report
from fit.report.numbers import count
from fit.report.reflowed import reflow_document
from fit.shelf.entry import Entry, EntryKind
from fit.shelf.finding import DocumentFacts, Finding
from fit.shelf.program import score_program
from fit.shelf.refusal import session_facts
from fit.shelf.settings import ShelfSettings
from fit.shelf.terminal import find_terminal
from fit.shelf.verdict import from_report
from fit.source import read_session


def score_entry(entry: Entry, settings: ShelfSettings) -> Finding:
    """Score an entry; what fails becomes a finding that says why."""
    try:
        return _SCORES[entry.kind](entry, settings)
    except FitError as error:
        return failed(entry, error.what)
    except RecursionError:
        return failed(entry, "it is nested too deeply")
    except MemoryError:
        return failed(entry, "it takes more memory than this computer has")
    except Exception as error:  # noqa: BLE001  the other entries of the shelf must still be scored
        return failed(entry, f"the scoring itself failed: {type(error).__name__}: {error}")


def failed(entry: Entry, reason: str) -> Finding:
    """The finding of an entry that could not be scored."""
    return Finding(entry.name, entry.kind.value, reason=reason, failed=True)


def _session(entry: Entry, settings: ShelfSettings) -> Finding:
    session = read_session(entry.path)
    terminal = settings.terminal or session.dialect or _other_terminal(session.output)
    report: Report = measure(
        session,
        settings.big,
        settings.small,
        big_terminal=terminal,
        small_terminal=settings.small_terminal,
    )
    facts = session_facts(session, settings.screen.size)
    return from_report(Finding(entry.name, entry.kind.value, terminal=terminal, session=facts), report)


def _other_terminal(output: bytes) -> str | None:
    """The terminal whose codes an output holds, where these are not those of ECMA-48, which are expected."""
    name = find_terminal(output).name
    return None if name is None or follows_ecma48(find_description(name)) else name


def _document(entry: Entry, settings: ShelfSettings) -> Finding:
    size = settings.screen.size
    # A finding is kept by the bytes of its entry alone; the file that a page only names is an entry of its own.
    document = read_document(entry.path, follow=False)
    result = reflow_document(document, LayoutSettings(width=size.columns, page_rows=max(1, size.rows - 1)))
    before, after = result.layout.before, result.layout.after
    facts = DocumentFacts(
        format=document.format,
        words=result.proof.words,
        words_lost=len(result.proof.lost),
        lines=None if before is None else before.lines,
        too_wide=None if before is None else before.lines_over_width,
        pages=after.pages,
        too_wide_after=after.lines_over_width,
        shortfalls=result.shortfalls,
    )
    bytes_there = entry.path.stat().st_size
    return Finding(
        entry.name,
        entry.kind.value,
        verdict=_document_verdict(facts),
        reason=_document_reason(facts),
        size=bytes_there,
        blocks=blocks_on_disk(bytes_there),
        document=facts,
    )


def _document_verdict(facts: DocumentFacts) -> str:
    if facts.shortfalls:
        return "damaged by reflow"
    return "fits as it is" if facts.too_wide == 0 else "fits reflowed"


def _document_reason(facts: DocumentFacts) -> str:
    if facts.shortfalls:
        return f"reflowed to {count(facts.pages, 'page')}: {', '.join(facts.shortfalls)}"
    words = "the only word" if facts.words == 1 else f"all {facts.words:,} words"
    if facts.too_wide == 0:
        return f"no line is too wide; laid out on {count(facts.pages, 'page')}, {words} came through"
    return f"reflowed to {count(facts.pages, 'page')}, {words} came through"


_SCORES: Final[dict[EntryKind, Callable[[Entry, ShelfSettings], Finding]]] = {
    EntryKind.PROGRAM: score_program,
    EntryKind.SESSION: _session,
    EntryKind.DOCUMENT: _document,
}
