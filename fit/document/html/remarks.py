"""What is said of a page that was read: what was left out of it, and what was not understood."""

from __future__ import annotations

from fit.document.html.page import Page
from fit.document.wording import counted


def page_remarks(page: Page) -> list[str]:
    """What was passed over or left out, one sentence each."""
    marked = page.marked
    remarks = []
    if marked.flattened:
        remarks.append(f"{counted(marked.flattened, 'tag')} nested too deep passed over; the text was kept")
    if marked.unfinished is not None:
        where = f"character {marked.unfinished}"
        remarks.append(f"the tag at {where} never ends, so the rest of the page is no text and was left out")
    if page.hidden:
        remarks.append(
            f"{counted(page.hidden, 'piece')} of text left out, which the page hides from its readers"
        )
    if page.handles:
        remarks.append(f"{counted(page.handles, 'mark')} left out that only a browser has a use for")
    missing = len(marked.runs) - page.shown - page.hidden - page.handles
    if missing > 0:
        remarks.append(
            f"{counted(missing, 'piece')} of text left out, no part of the page by the rules of HTML"
        )
    return remarks


def picture_remarks(pictures: int) -> list[str]:
    """What becomes of pictures."""
    if not pictures:
        return []
    return [f"{counted(pictures, 'picture')} cannot be shown; a text given instead stands in its place"]
