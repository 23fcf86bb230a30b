"""The reports of a document laid out: text, JSON against its schema, and the preview."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from pathlib import Path

import jsonschema
import pytest

from fit.document import read_document, read_document_bytes
from fit.layout.settings import LayoutSettings
from fit.report.device_file import FileForm, device_files
from fit.report.pages_html import pages_html
from fit.report.reflow_json import reflow_json, schema, source_runs
from fit.report.reflow_summary import outcome, reflow_summary
from fit.report.reflowed import Reflowed, reflow_document
from fit.report.style import Style
from fit.width import text_cells

CORPUS = Path(__file__).parents[2] / "corpus/documents"
DOCUMENTS = sorted(path for path in CORPUS.iterdir() if path.suffix not in (".gold", ".md5"))
WIDTHS = [1, 7, 16, 40, 64, 80]


def test_there_are_documents() -> None:
    assert len(DOCUMENTS) >= 10


def laid_out(path: Path, width: int = 40, rows: int = 7) -> Reflowed:
    return reflow_document(read_document(path), LayoutSettings(width=width, page_rows=rows))


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: path.name)
class TestEachDocument:
    @pytest.mark.parametrize("width", WIDTHS)
    def test_every_word_comes_through_in_lines_that_fit(self, path: Path, width: int) -> None:
        result = laid_out(path, width)
        assert result.shortfalls == []
        assert all(text_cells(line.text) <= width for line in result.layout.lines)
        assert all(page.end - page.start <= 7 for page in result.layout.pages)

    @pytest.mark.parametrize("width", [20, 40])
    def test_a_second_pass_changes_nothing(self, path: Path, width: int) -> None:
        once = device_files(laid_out(path, width).layout, FileForm())[0]
        again = reflow_document(
            read_document_bytes(once, "once.txt"), LayoutSettings(width=width, page_rows=7)
        )
        assert device_files(again.layout, FileForm())[0] == once

    def test_the_json_follows_its_schema_and_its_sources_are_right(self, path: Path) -> None:
        result = laid_out(path)
        report = json.loads("".join(reflow_json(result)))
        jsonschema.validate(report, schema(), cls=jsonschema.Draft202012Validator)
        assert len(report["lines"]) == len(result.layout.lines)
        source = result.document.source
        for line in report["lines"]:
            at = 0
            for start, length in line["sources"]:
                run = line["text"][at : at + length]
                if (
                    start >= 0
                    and run == run.strip()
                    and run.isascii()
                    and run.isalnum()
                    and source[start].isascii()
                ):
                    # An entity, an escape, or the call of a macro that prints it.
                    assert source[start : start + 1] in (run[0], "&", "\\", ".") or run.isdigit(), (
                        run,
                        source[start : start + 9],
                    )
                at += length
            assert at == len(line["text"])

    @pytest.mark.parametrize("columns", [40, 80])
    def test_the_summary_fits_its_columns(self, path: Path, columns: int) -> None:
        page = reflow_summary(laid_out(path), Style(columns))
        assert max(map(text_cells, page.splitlines())) <= columns
        assert "words came through, in order." in " ".join(page.split())


def test_the_schema_is_a_schema_and_every_field_is_there() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    report = json.loads("".join(reflow_json(laid_out(CORPUS / "skerry-notices.html"))))
    assert set(report) == set(schema()["properties"])


def test_runs_of_sources_say_where_each_character_stands() -> None:
    assert source_runs([4, 5, 6, -1, -1, 9, 9, 10]) == [[4, 3], [-1, 2], [9, 1], [9, 2]]
    assert source_runs([]) == []


def test_the_outcome_names_what_is_missing() -> None:
    lacking = reflow_document(read_document_bytes("a \ue000 b".encode(), "x"), LayoutSettings())
    assert outcome(lacking) == (
        "1 page of 40 columns and 7 rows; not as it should be: 1 character not to be written in 7 bits."
    )
    kept = reflow_document(
        read_document_bytes("a \ue000 b".encode(), "x"), LayoutSettings(), seven_bits=False
    )
    assert kept.shortfalls == []


def test_the_summary_says_where_more_pages_would_end_better() -> None:
    entry = "- Trim the wick of the lamp, fill the oil, wind the clock, wipe the glass and write the hour of it in the log before the watch ends, or the keeper will ask for it at supper and at tea."
    many = reflow_document(read_document_bytes("\n".join([entry] * 90).encode(), "x"), LayoutSettings())
    few = reflow_document(read_document_bytes("\n".join([entry] * 4).encode(), "x"), LayoutSettings())
    told = "for want of more: there are at most a tenth above the"
    assert told in " ".join(reflow_summary(many, Style(80)).split())
    assert told not in " ".join(reflow_summary(few, Style(80)).split())


def test_the_summary_lists_what_was_written_for_what() -> None:
    page = reflow_summary(
        reflow_document(read_document_bytes("½ – \ue000".encode(), "x"), LayoutSettings()), Style(80)
    )
    assert "½ U+00BD as 1/2 (1)" in page
    assert (
        "\\ue000 U+E000 could not be written: '?' stands in its place, once, first at character 4."
        in " ".join(page.split())
    )


def test_the_summary_lists_furniture_and_says_when_nothing_was_done() -> None:
    notes = reflow_summary(laid_out(CORPUS / "skerry-lamp.7"), Style(80))
    assert "1 line of furniture taken out: 'LAMP 7 14 March 1986" in notes
    once = device_files(laid_out(CORPUS / "lists.txt").layout, FileForm())[0]
    again = reflow_document(read_document_bytes(once, "once.txt"), LayoutSettings())
    assert "pages fit the screen already, and stay as they are" in " ".join(
        reflow_summary(again, Style(80)).split()
    )


@pytest.mark.parametrize(
    ("source", "told"),
    [
        (
            "Lamp\n====\n\nThe keeper of the first watch lights the lamp of the rock.\n",
            "Not set again as they stood: 4 signs of rules, frames and leaders: =",
        ),
        (
            "Lamp\n====\n\nThe keeper of the watch lights the lamp, then climbs the lad-\nder with the can.\n",
            "Not set again as they stood: 1 hyphen of line ends; 4 signs of rules, frames and leaders: =",
        ),
        ("The lamp is lit.\n", None),
    ],
)
def test_the_summary_counts_what_is_no_word_and_not_set_again(source: str, told: str | None) -> None:
    result = reflow_document(read_document_bytes(source.encode(), "lamp.txt"), LayoutSettings())
    summary = " ".join(reflow_summary(result, Style(80)).split())
    assert (told in summary) if told else "Not set again" not in summary


def test_pages_that_do_not_fit_another_screen_are_laid_out_anew() -> None:
    once = device_files(laid_out(CORPUS / "lists.txt").layout, FileForm())[0]
    again = reflow_document(read_document_bytes(once, "once.txt"), LayoutSettings(width=30))
    assert again.layout.after.lines_over_width == 0
    assert again.proof.holds


def test_the_preview_has_a_screen_for_each_page_and_nothing_from_elsewhere() -> None:
    result = laid_out(CORPUS / "skerry-notices.html")
    page = pages_html(result, 8)
    assert "font-weight" not in page  # the pages of the device have no bold letters
    assert page.count("<figure") == len(result.layout.pages)
    assert "--columns: 40; --rows: 8" in page
    assert not re.search(r"(?:src|href)=|@import|url\(|<script", page)
    assert "&lt;falling&gt;" in page


def test_control_characters_never_reach_the_reader() -> None:
    result = reflow_document(read_document_bytes(b"a\x07\x1b[31mb\n", "x\x1b[2J"), LayoutSettings())
    for text in (reflow_summary(result, Style(80)), pages_html(result, 8), outcome(result)):
        assert "\x1b" not in text
        assert "\x07" not in text


@pytest.mark.browser
@pytest.mark.skipif(shutil.which("chromium") is None, reason="chromium is not installed")
@pytest.mark.parametrize(("columns", "rows"), [(40, 8), (80, 25)])
@pytest.mark.parametrize("window", [500, 1200])  # the browser makes no window narrower than 500
def test_every_page_of_the_preview_is_seen_whole(
    tmp_path: Path, columns: int, rows: int, window: int
) -> None:
    result = laid_out(CORPUS / "skerry-notices.html", columns, rows - 1)
    measure = (
        "<script>const all=[...document.querySelectorAll('pre')];document.title=[document.documentElement.scrollWidth"
        " - innerWidth, ...all.map(p => Math.max(p.scrollWidth - p.clientWidth, p.scrollHeight - p.clientHeight))].join()"
        "</script></body>"
    )
    page = tmp_path / "pages.html"
    page.write_text(pages_html(result, rows).replace("</body>", measure), "utf-8")
    command = [
        "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync", f"--user-data-dir={tmp_path}",
        f"--window-size={window},900", "--dump-dom", page.as_uri(),
    ]  # fmt: skip
    shown = subprocess.run(command, capture_output=True, text=True, timeout=120, check=True).stdout
    title = re.search(r"<title>([-0-9.,]+)</title>", shown)
    assert title is not None
    beyond = [float(number) for number in title[1].split(",")]
    assert len(beyond) == 1 + len(result.layout.pages)
    assert max(beyond) <= 1, beyond


@pytest.mark.parametrize("width", [8, 20, 40, 80])
def test_a_table_as_drawn_holds_what_its_cells_do(width: int) -> None:
    table = "Flag        Meaning…          Answer\n----------  ----------------  --------\nred         send → boat       £1 gun\nwhite       hurt – 2½         °C\n"
    result = reflow_document(read_document_bytes(table.encode(), "x"), LayoutSettings(width=width))
    assert [block.kind.value for block in result.document.blocks] == ["table"]
    assert result.shortfalls == []


@pytest.mark.parametrize("width", [2, 5, 40])
@pytest.mark.parametrize("overlap", [0, 1])
def test_a_sign_of_a_drawing_may_take_more_than_one_character(width: int, overlap: int) -> None:
    drawing = "+------------+\n| £5 → €3 °C |\n| µ ± ½ … 🦀 |\n+------------+\n"
    document = read_document_bytes(drawing.encode(), "x")
    result = reflow_document(document, LayoutSettings(width=width, overlap=overlap))
    assert {block.kind.value for block in result.document.blocks} == {"picture"}
    assert result.shortfalls == []
