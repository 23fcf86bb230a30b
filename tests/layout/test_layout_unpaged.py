"""A second pass over an output changes nothing, and a text that others wrapped is laid out."""

from __future__ import annotations

import random
import textwrap
from pathlib import Path

import pytest

from fit.document import read_document, read_document_bytes
from fit.document.blocks import Kind
from fit.document.text import read_text
from fit.layout.compose import lay_out
from fit.layout.settings import LayoutSettings
from fit.layout.unpaged import SAME, as_lines, comes_out_the_same
from fit.report.device_file import FileForm, device_files
from fit.report.reflowed import reflow_document

FOLDER = Path(__file__).parents[2] / "corpus" / "documents"
DOCUMENTS = sorted(path for path in FOLDER.iterdir() if path.suffix != ".gold")
WATCH = (
    "The keeper trims the wick at dusk and fills the lamp, and then he sits down by the window to read. "
    "When the wind goes round to the south-west he shuts the gallery door and winds the clockwork again. "
)


def output(document: str, settings: LayoutSettings, page_break: str) -> str:
    read = read_document_bytes(document.encode(), "skerry.txt", None, None)
    layout = reflow_document(read, settings, page_break=page_break).layout
    return device_files(layout, FileForm("\n", page_break))[0].decode()


def test_there_are_documents() -> None:
    assert len(DOCUMENTS) >= 20


@pytest.mark.parametrize("page_break", ["", "\f", "-- key --"], ids=["none", "form feed", "a line"])
@pytest.mark.parametrize(
    ("width", "rows", "hyphenate"),
    [(40, 7, True), (40, 1, False), (28, 24, True), (20, 7, False), (64, 3, True)],
)
@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: path.name)
def test_a_second_pass_changes_nothing(
    path: Path, width: int, rows: int, hyphenate: bool, page_break: str
) -> None:
    settings = LayoutSettings(width=width, page_rows=rows, hyphenate=hyphenate)
    layout = reflow_document(read_document(str(path)), settings, page_break=page_break).layout
    first = device_files(layout, FileForm("\n", page_break))[0].decode()
    assert output(first, settings, page_break) == first


@pytest.mark.parametrize("width", [30, 36, 38])
def test_a_narrow_text_that_others_wrapped_is_laid_out(width: int) -> None:
    rng = random.Random(1881)
    paragraphs = [" ".join(rng.choices(WATCH.split(), k=60)) for _ in range(9)]
    source = "\n\n".join(textwrap.fill(text, width) for text in paragraphs) + "\n"
    document = read_text(source, "x", "ascii")
    assert not comes_out_the_same(document, lay_out(document, LayoutSettings()), LayoutSettings())
    assert output(source, LayoutSettings(), "") != source


def test_a_text_of_one_page_stays_where_pages_are_asked_for() -> None:
    first = output(WATCH[:99] + "\n", LayoutSettings(), "\f")
    assert "\f" not in first
    assert output(first, LayoutSettings(), "\f") == first


def test_a_text_without_pages_gets_them_where_they_are_asked_for() -> None:
    first = output((WATCH + "\n\n") * 4, LayoutSettings(), "")
    assert as_lines(read_text(first, "x", "ascii"), LayoutSettings(), paged=True) is None
    assert "\f" in output(first, LayoutSettings(), "\f")


def test_the_lines_that_stay_are_said_to_and_have_their_sources() -> None:
    first = output((WATCH + "\n\n") * 4, LayoutSettings(), "")
    result = reflow_document(read_text(first, "x", "ascii"), LayoutSettings(), page_break="")
    assert [block.kind for block in result.document.blocks] == [Kind.PREFORMATTED]
    assert "stay as they are" in result.document.remarks[-1]
    assert result.proof.holds
    assert result.layout.after.page_faults == 0
    for line in result.layout.lines:
        assert [first[place] for place in line.sources] == list(line.text)


def test_furniture_is_never_kept() -> None:
    page = "\n".join(textwrap.wrap(WATCH, 40)) + "\n\n                 Page {}\n\n"
    document = read_text("".join(page.format(number) for number in range(1, 9)), "x", "ascii")
    layout = lay_out(document, LayoutSettings())
    assert any(block.kind is Kind.FURNITURE for block in document.blocks)
    assert not comes_out_the_same(document, layout, LayoutSettings())
    assert 0.5 < SAME < 1
