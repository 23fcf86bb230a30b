"""What the program asks of its terminal, in sentences."""

from __future__ import annotations

from fit.loss.figures import Demands
from fit.remedy.findings import Report
from fit.report.numbers import count, percent, ranges
from fit.report.style import Style
from fit.units import Size


def demands(report: Report, style: Style) -> list[str]:
    """The section of the demands."""
    lines = style.heading("What the program asks of its terminal")
    for sentence in demand_sentences(report.demands, report.small.size):
        lines += style.item(sentence)
    return lines


def demand_sentences(asked: Demands, small: Size) -> list[str]:
    """One sentence for each demand, the heaviest first."""
    said: list[str] = []
    if asked.moves:
        said.append(_moves(asked, small))
    if asked.rows_outside or asked.columns_outside:
        parts = [_named("row", asked.rows_outside)] if asked.rows_outside else []
        parts += [_named("column", asked.columns_outside)] if asked.columns_outside else []
        said.append(f"addressed, though {small} lacks them: {'; '.join(parts)}")
    if asked.status_rows:
        said.append(f"rewritten in place, never scrolled (status lines): {_named('row', asked.status_rows)}")
    if asked.padded_rows:
        said.append(f"padded with blanks past column {small.columns}: {count(asked.padded_rows, 'row')}")
    if asked.scroll_regions:
        regions = ", ".join(f"{top}-{bottom}" for top, bottom in asked.scroll_regions)
        said.append(f"scrolling regions: rows {regions}")
    features = {
        "reverse video": asked.reverse_video,
        "line drawing": asked.line_drawing,
        "the alternate screen": asked.alternate_screen,
    }
    used = [name for name, wanted in features.items() if wanted]
    if used:
        said.append("uses " + ", ".join(used))
    return said or ["nothing but lines: it never moves the cursor"]


def _named(what: str, numbers: tuple[int, ...]) -> str:
    return f"{what}{'s' if len(numbers) > 1 else ''} {ranges(numbers)}"


def _moves(asked: Demands, small: Size) -> str:
    highest = []
    if asked.highest_row is not None:
        highest.append(f"row {asked.highest_row}")
    if asked.highest_column is not None:
        highest.append(f"column {asked.highest_column}")
    reach = f", up to {' and '.join(highest)}" if highest else ""
    return (
        f"{count(asked.moves, 'cursor move')}{reach}; {percent(asked.share_outside)} of them lead out of "
        f"{small}"
    )
