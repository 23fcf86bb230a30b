"""The whole of the layout: any document at any width, the options, the figures."""

from __future__ import annotations

from dataclasses import replace

import pytest
from documents import Maker, pages_of
from hypothesis import given, settings, strategies as st

from fit.document.blocks import Block, Kind
from fit.errors import UsageError
from fit.layout.compose import lay_out
from fit.layout.lines import INSERTED, LineFlag
from fit.layout.proof import prove_words
from fit.layout.settings import LayoutSettings
from fit.width import text_cells

WORDS = st.lists(
    st.sampled_from(
        [
            "the",
            "lighthouse",
            "of",
            "Skerry",
            "3",
            "mm",
            "well-kept",
            "--rows",
            "N",
            "a/b.txt",
            "1.",
            "-",
            "é",
            "灯台守。",
            "(",
            "x" * 50,
        ]
    ),
    max_size=12,
).map(" ".join)
ROWS = st.lists(st.tuples(WORDS, WORDS, WORDS), min_size=1, max_size=3)


@st.composite
def documents(draw: st.DrawFn) -> Maker:
    maker = Maker()
    for kind in draw(st.lists(st.sampled_from(list(Kind)), min_size=1, max_size=6)):
        level = draw(st.integers(0, 3))
        if kind in (Kind.PREFORMATTED, Kind.PICTURE, Kind.FURNITURE):
            lines = draw(st.lists(WORDS, max_size=4))
            maker.kept(*lines, kind=kind, code=draw(st.booleans()), level=level)
        elif kind is Kind.TABLE:
            maker.table(*draw(ROWS), header_rows=draw(st.integers(0, 1)))
        elif kind in (Kind.ITEM, Kind.NOTE):
            maker.item(draw(st.sampled_from(["-", "10.", "--lamp", ""])), draw(WORDS), level, kind)
        else:
            maker.blocks.append(Block(kind, maker.text(draw(WORDS)), level=level))
    return maker


@settings(max_examples=150, deadline=None)
@given(documents(), st.integers(1, 45), st.integers(1, 9))
def test_any_document_at_any_width(maker: Maker, width: int, rows: int) -> None:
    layout = maker.lay_out(width, rows)
    proof = prove_words(maker.document(), layout)
    assert proof.holds, proof
    for line in layout.lines:
        assert text_cells(line.text) <= max(2, width)  # a wide character needs two cells
        assert line.text == line.text.rstrip()
        assert len(line.text) == len(line.sources)
        for char, source in zip(line.text, line.sources, strict=True):
            assert source == INSERTED or maker.source[source] == char
    assert all(page.end - page.start <= rows for page in layout.pages)


@settings(max_examples=30, deadline=None)
@given(documents(), st.integers(12, 45), st.integers(2, 9))
def test_the_options_keep_the_width_and_the_rows(maker: Maker, width: int, rows: int) -> None:
    layout = maker.lay_out(width, rows, contents=True, page_numbers=True, panel_labels=True, overlap=2)
    assert prove_words(maker.document(), layout).holds
    assert all(text_cells(line.text) <= width for line in layout.lines)
    assert all(page.end - page.start <= rows for page in layout.pages)


def book() -> Maker:
    maker = Maker()
    for name in ("The lamp", "The tides", "Signals at sea and on the stairs"):
        maker.heading(name).paragraph("The keeper trims the wick at dusk and fills the lamp. " * 4)
    return maker


def test_a_contents_page_says_where_the_headings_are() -> None:
    layout = book().lay_out(30, 7, contents=True)
    pages = pages_of(layout)
    for line in pages[0][2:]:
        if line[-1].isdigit():
            name, number = line.rstrip("0123456789"), int(line.split()[-1])
            heading = name.rstrip(" .").split()[-1]
            assert any(heading in text for text in pages[number - 1])
    assert all(line.flags & LineFlag.ADDED for line in layout.lines[: layout.pages[0].end])


def test_page_numbers_stand_in_the_last_line() -> None:
    pages = pages_of(book().lay_out(30, 7, page_numbers=True))
    assert [page[-1].strip() for page in pages] == [f"- {number} -" for number in range(1, len(pages) + 1)]


def test_by_default_nothing_is_added() -> None:
    layout = book().lay_out(30, 7)
    assert not any(line.flags & (LineFlag.ADDED | LineFlag.REPEATED) for line in layout.lines)


def test_furniture_is_left_out() -> None:
    maker = Maker().paragraph("one")
    maker.blocks.append(Block(Kind.FURNITURE, lines=(maker.text("page 1"),)))
    assert maker.paragraph("two").lines(20) == ["one", "", "two"]


def test_the_figures_before_and_after() -> None:
    maker = Maker().paragraph("The keeper trims the wick at dusk and fills the lamp to the brim.")
    layout = maker.lay_out(40, 7)
    assert layout.before is not None
    assert (layout.before.lines, layout.before.lines_over_width, layout.before.pages) == (2, 1, 1)
    assert layout.before.raggedness == 0
    assert (layout.after.lines, layout.after.lines_over_width, layout.after.pages) == (2, 0, 1)
    assert layout.after.raggedness == layout.lines[0].slack ** 2


def test_headings_cells_and_kept_lines_are_no_running_text() -> None:
    maker = Maker().heading("Signals at sea and on the stairs of the station").kept("the lamp " * 9)
    layout = maker.table(("Name", "What it is"), ("lamp", "the lamp " * 9), header_rows=1).lay_out(30, 7)
    assert any(line.flags & LineFlag.FLOWING and line.slack for line in layout.lines)
    assert layout.after.raggedness == 0


def test_the_faults_of_the_document_as_it_was_are_counted() -> None:
    maker = Maker().paragraph("one").paragraph("two").heading("Tides").paragraph("six")
    layout = maker.lay_out(20, 3)
    assert layout.before is not None
    assert layout.before.page_faults == 1
    assert layout.after.page_faults == 0


def test_hyphens_of_the_source_that_are_no_part_of_a_word_are_counted() -> None:
    maker = Maker()
    whole = maker.text("the light-\nhouse is well-\nkept")
    kept = [index for index in range(len(whole)) if index not in (9, 10)]
    text = type(whole)(
        "".join(whole.chars[index] for index in kept).replace("\n", ""),
        whole.sources[:9] + whole.sources[11:25] + whole.sources[26:],
        bytes(len(kept) - 1),
    )
    maker.blocks.append(Block(Kind.PARAGRAPH, text))
    layout = maker.lay_out(40, 7)
    assert layout.before is not None
    assert layout.before.hyphens == 1


def test_a_format_that_nobody_reads_as_it_is_has_no_figures_before() -> None:
    document = Maker().paragraph("one").document()
    layout = lay_out(replace(document, format="html"), LayoutSettings())
    assert layout.before is None


@pytest.mark.parametrize(
    ("settings", "sentence"),
    [
        ({"width": 0}, "width is 0; give a number from 1 to 500"),
        ({"page_rows": 0}, "page rows is 0; give a number from 1 to 500"),
        ({"overlap": 21}, "panels of 40 columns cannot overlap by 21; give at most half the width"),
        ({"mark": "灯"}, "the mark '灯' does not take one cell; give one character"),
        (
            {"width": 8, "contents": True},
            "8 columns are too few for a contents page, page numbers or panel labels; leave them out, or give at least 12 columns",
        ),
    ],
)
def test_settings_that_no_screen_has_are_refused(settings: dict[str, int], sentence: str) -> None:
    with pytest.raises(UsageError) as error:
        LayoutSettings(**settings)  # type: ignore[arg-type]  # as a caller might
    assert str(error.value) == sentence


def test_a_language_without_patterns_is_refused() -> None:
    with pytest.raises(UsageError):
        Maker().paragraph("one").lay_out(language="xx")
