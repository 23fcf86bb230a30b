r"""sources, processes, 8-bit programs -> session -> dialect -> screens -> loss -> remedy -> report.

Documents take their own way: document -> blocks -> lines -> pages -> report.

The same as the commands give, from Python:

>>> from fit import measure, remedies, replay
>>> from fit.session import Event, EventKind, Session, Waits
>>> output = b"The lamp is lit.\r\n> look\r\nThe tide is high.\r\n> "
>>> look = Event(at=20, kind=EventKind.INPUT, data=b"look\r")
>>> session = Session(output, events=(look,), waits=Waits.INPUTS)
>>> replay(session, "20x3").display
['> look              ', 'The tide is high.   ', '>                   ']
>>> report = measure(session, big="desk", small="20x3")
>>> print(report.verdict, report.figures.lines)
comfortable LineCounts(kept=4, damaged=0, lost=0)
>>> for remedy in remedies(report)[:1]:
...     print(remedy.name, "-", remedy.refused)
hold - waiting changes nothing: no row scrolls off before it can be read

`read_session` reads such a session from a file; `read_document` and `reflow_document` do for a document what
``fit reflow`` does:

>>> from fit import LayoutSettings, reflow_document
>>> from fit.document import read_document_bytes
>>> notice = read_document_bytes(b"The keeper who trims the wick at dusk\nlogs the hour in the book.\n", "notice")
>>> for line in reflow_document(notice, LayoutSettings(width=20)).layout.lines:
...     print(line.text)
The keeper who trims
the wick at dusk
logs the hour in the
book.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from fit.document import read_document
    from fit.layout.settings import LayoutSettings
    from fit.pipeline import Report, measure, remedies, replay
    from fit.report.reflowed import reflow_document
    from fit.source import read_session

__all__ = [
    "LayoutSettings",
    "Report",
    "measure",
    "read_document",
    "read_session",
    "reflow_document",
    "remedies",
    "replay",
]
_ELSEWHERE = {
    "LayoutSettings": "fit.layout.settings",
    "read_document": "fit.document",
    "read_session": "fit.source",
    "reflow_document": "fit.report.reflowed",
}
"""Where a name lives, unless it is in ``fit.pipeline``."""


def __getattr__(name: str) -> Any:
    """Import what is asked for only then: the command line must not load every stage to print its help."""
    if name not in __all__:
        raise AttributeError(f"module 'fit' has no attribute '{name}'")
    return getattr(import_module(_ELSEWHERE.get(name, "fit.pipeline")), name)


def __dir__() -> list[str]:
    """What there is, so that ``help(fit)`` shows it."""
    return [*globals(), *__all__]
