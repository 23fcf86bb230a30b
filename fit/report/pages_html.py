"""The pages of a document as small screens, in one HTML file that needs nothing else."""

from __future__ import annotations

from html import escape
from importlib import resources
from pathlib import PurePath
from typing import Final

from fit.layout.lines import Line, LineFlag
from fit.report.advice import MASTER_COPY
from fit.report.plain import printable
from fit.report.reflow_summary import outcome
from fit.report.reflowed import Reflowed

_CLASSES: Final = ((LineFlag.REPEATED, "again"), (LineFlag.RULE, "drawn"), (LineFlag.ADDED, "added"))


def pages_html(result: Reflowed, rows: int) -> str:
    """The preview; ``rows`` is the height of the screen, of which a prompt may take the last."""
    style = (resources.files("fit.report") / "pages.css").read_text("utf-8")
    title = printable(PurePath(result.document.name).name or "the document")
    width = result.settings.width
    pages = "\n".join(_page(result, number, rows) for number in range(len(result.layout.pages)))
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)} in {width} columns</title>\n"
        f"<style>\n:root {{ --columns: {width}; --rows: {rows}; }}\n{style}</style>\n</head>\n<body>\n"
        f"<header>\n<h1>{escape(title)}</h1>\n<p>{escape(outcome(result))}</p>\n"
        f'<p class="soft">{escape(MASTER_COPY)}</p>\n</header>\n<main>\n{pages}\n</main>\n</body>\n</html>\n'
    )


def _page(result: Reflowed, number: int, rows: int) -> str:
    """One screen; the rows that the page leaves free stay empty, and the last is the prompt's."""
    span = result.layout.pages[number]
    lines = [_line(line) for line in result.layout.lines[span.start : span.end]]
    lines += [""] * max(0, rows - len(lines))
    fault = next((each.what for each in result.layout.faults if each.page == number), "")
    note = f' <span class="fault">{escape(fault)}</span>' if fault else ""
    label = f"Page {number + 1} of {len(result.layout.pages)}"
    text = "\n".join(lines)
    return (
        f'<figure id="p{number + 1}"><figcaption>{label}{note}</figcaption>'
        f'<pre tabindex="0" role="img" aria-label="{label}">{text}\n</pre></figure>'
    )


def _line(line: Line) -> str:
    text = escape(printable(line.text))
    name = next((name for flag, name in _CLASSES if line.flags & flag), "")
    return f'<span class="{name}">{text}</span>' if name else text
