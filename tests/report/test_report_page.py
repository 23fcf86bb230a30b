"""The HTML page: well formed, whole in one file, and nothing of a session is taken for markup."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from report_samples import REPORT

from fit.loss.figures import Figures, LookView
from fit.loss.verdict import Rating, Verdict
from fit.pipeline import prepare
from fit.report.page import page
from fit.session import Session

VIEW = LookView(1, 10, ("<b>&1   ",), ("- -     ",), ("xy?",), ("  ?",))
VOID = {"meta", "br"}


class Balance(HTMLParser):
    """Follows the tags and complains where one closes that is not the last one opened."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.text = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:  # noqa: ARG002  the parser's protocol
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.text += " " + data


def read(text: str) -> str:
    """The text of a page whose tags are balanced."""
    balance = Balance()
    balance.feed(text)
    assert balance.open == []
    return " ".join(balance.text.split())


def test_the_page_says_what_the_summary_says() -> None:
    text = read(page(REPORT, {1: VIEW}))
    for words in (
        "workable with holds score 54 of 100",
        "34 kept, 6 damaged, 20 lost",
        "Look 1: 38% of 400 new characters read",
        "the small one forgets",
        "Told 40x8, the program adapts and pages",
        "* hold",
        "Where to hold: 2 break points",
        "16% of the cells",
    ):
        assert words in text


def test_what_a_program_printed_is_no_markup() -> None:
    whole = page(replace(REPORT, setup=prepare(Session(b"", name="<script>&\x1b"))), {1: VIEW})
    assert "<script" not in whole
    assert "\x1b" not in whole
    assert "<script>&\\x1b" in read(whole)


def test_marks_are_underlined_stretches() -> None:
    whole = page(REPORT, {1: VIEW})
    assert '<span class="lost">&lt;</span>b<span class="lost">&gt;</span>&amp;1' in whole
    assert 'xy<span class="false">?</span>' in whole


def test_the_page_needs_nothing_else() -> None:
    assert not re.search(r"(src|href)=|https?:|@import|url\(", page(REPORT, {1: VIEW}))


def test_nothing_measured_gives_a_page_without_figures() -> None:
    report = replace(
        REPORT,
        figures=Figures(),
        placed_share=None,
        lost_anyway=0,
        verdict=Verdict(Rating.NOT_MEASURED, "nothing was shown"),
    )
    text = read(page(report, {}))
    assert "not measured" in text
    assert "What would help" not in text


@pytest.mark.parametrize("rating", list(Rating))
def test_every_rating_has_a_page(rating: Rating) -> None:
    assert rating.value in read(page(replace(REPORT, verdict=Verdict(rating, "so it is")), {}))


def test_what_is_wider_than_the_window_shows_that_it_goes_on() -> None:
    """A shadow at the edge, which goes with the end of what is scrolled."""
    text = page(REPORT, {})
    assert re.search(r"\.scroll, pre \{ background:[^}]*local,[^}]*scroll", text)
