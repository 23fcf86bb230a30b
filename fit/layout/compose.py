"""A document to lines and pages: the whole of the layout."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from fit.document.blocks import Document, Kind
from fit.layout.before import before_layout
from fit.layout.blocks_to_lines import Setting, set_blocks
from fit.layout.contents import contents_lines
from fit.layout.figures import figures_of, remarks_on
from fit.layout.lines import Decision, Layout, Line, LineFlag
from fit.layout.nests import find_nests
from fit.layout.page_costs import find_spots
from fit.layout.pages import Paging, paginate
from fit.layout.settings import LayoutSettings
from fit.layout.texts import inserted
from fit.units import Span

LARGEST_HEADER = 3
"""A table header is repeated where it takes no more than one in so many lines of a page."""


def lay_out(document: Document, settings: LayoutSettings) -> Layout:
    """Lay a document out for a screen. Raises `UsageError` for a language without hyphenation patterns."""
    setting = set_blocks(document, settings)
    numbered = settings.page_numbers and settings.page_rows > 1
    rows = settings.page_rows - numbered
    headers, refused = _headers_to_repeat(setting, settings, rows)
    repeated = {block: len(lines) for block, lines in headers.items()}
    body = paginate(setting.lines, rows, repeated, find_nests(document.blocks))
    sheaf = _Sheaf(settings.width, numbered)
    front = 0
    if settings.contents:
        front = _add_contents(sheaf, document, settings, setting, body, rows)
    sheaf.add(setting.lines, body, headers)
    faults = tuple(replace(fault, page=fault.page + front) for fault in body.faults)
    return Layout(
        lines=tuple(sheaf.lines),
        pages=tuple(sheaf.pages),
        faults=faults,
        decisions=(*setting.decisions, *refused, *remarks_on(document, setting.lines, settings)),
        before=before_layout(document, settings),
        after=figures_of(sheaf.lines, len(sheaf.pages), faults, settings.width, body.tall),
        naive_pages=front + body.naive,
    )


@dataclass(slots=True)
class _Sheaf:
    """Pages put together."""

    width: int
    numbered: bool
    lines: list[Line] = field(default_factory=list)
    pages: list[Span] = field(default_factory=list)

    def add(self, lines: list[Line], paging: Paging, headers: dict[int, list[Line]]) -> None:
        """Add pages, with the headers and numbers that they need."""
        done = 0
        for page in paging.pages:
            self.lines += lines[done : page.start]
            start = len(self.lines)
            first = lines[page.start]
            if not first.flags & LineFlag.HEADER:
                self.lines += headers.get(first.block, ())
            shown = lines[page.start : page.end]
            if paging.closed_up:
                shown = [line for row, line in enumerate(shown, page.start) if row not in paging.closed_up]
            self.lines += shown
            if self.numbered:
                number = f"- {len(self.pages) + 1} -".center(self.width).rstrip()
                flags = LineFlag.FIRST | LineFlag.LAST | LineFlag.ADDED
                self.lines.append(Line(number, inserted(number).sources, -1, None, flags))
            self.pages.append(Span(start, len(self.lines)))
            done = page.end
        self.lines += lines[done:]


def _headers_to_repeat(
    setting: Setting, settings: LayoutSettings, rows: int
) -> tuple[dict[int, list[Line]], list[Decision]]:
    """The table headers to repeat, by block, and those for which a page is too low."""
    if not settings.repeat_headers:
        return {}, []
    kept: dict[int, list[Line]] = {}
    refused: list[Decision] = []
    highest = _highest_rows(setting)
    for block, lines in setting.headers.items():
        if len(lines) * LARGEST_HEADER > rows or rows - len(lines) < highest.get(block, 0) <= rows:
            what = f"the header is not repeated: its {len(lines)} lines would take too much of each page"
            refused.append(Decision(block, Kind.TABLE, what, degraded=True))
        elif lines:
            kept[block] = [
                line._replace(flags=line.flags & ~LineFlag.HEADER | LineFlag.REPEATED) for line in lines
            ]
    return kept, refused


def _highest_rows(setting: Setting) -> dict[int, int]:
    """By block, the lines of the highest row of a table with a header."""
    highest: dict[int, int] = {}
    if not any(setting.headers.values()):
        return highest
    for spot in find_spots(setting.lines):
        if spot.line.block in setting.headers and not spot.line.flags & LineFlag.HEADER:
            height = spot.unit.end - spot.unit.start
            highest[spot.line.block] = max(height, highest.get(spot.line.block, 0))
    return highest


def _add_contents(
    sheaf: _Sheaf, document: Document, settings: LayoutSettings, setting: Setting, body: Paging, rows: int
) -> int:
    """Add the contents page in front; the number of pages that it takes."""
    own = [
        page
        for page, span in enumerate(body.pages, start=1)
        for line in setting.lines[span.start : span.end]
        if line.kind is Kind.HEADING and line.flags & LineFlag.FIRST
    ]
    front = 0
    if not own:
        return front
    while True:  # more pages in front may take more digits, and these more lines
        lines = contents_lines(document, settings, [page + front for page in own])
        paging = paginate(lines, rows, {})
        if len(paging.pages) <= front:
            break
        front = len(paging.pages)
    sheaf.add(lines, paging, {})
    return front
