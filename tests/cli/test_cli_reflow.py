"""``fit reflow`` as its user runs it: what is printed, what is written, and the exit code."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest
from typer.testing import CliRunner, Result

from fit.cli import build_app
from fit.report.reflow_json import schema
from fit.width import text_cells

CORPUS = Path(__file__).parents[2] / "corpus" / "documents"
HANDBOOK = str(CORPUS / "skerry-handbook.md")
NOTICES = str(CORPUS / "skerry-notices.html")
LISTS = str(CORPUS / "lists.txt")
PROSE = b"The lamp is lit at dusk.\n\nIt burns until the sun is up.\n"


def reflow(*arguments: str, stdin: bytes = b"") -> Result:
    """Run the command without a terminal."""
    return CliRunner().invoke(build_app("reflow"), ["reflow", *arguments], input=stdin)


def refusal(*arguments: str, stdin: bytes = b"") -> str:
    """The one sentence of a run that ends with exit code 2 and prints nothing else."""
    result = reflow(*arguments, stdin=stdin)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("fit: ")
    assert result.stderr.count("\n") == 1
    return result.stderr.removeprefix("fit: ").strip()


def test_the_pages_go_to_standard_output() -> None:
    result = reflow("-", stdin=PROSE)
    assert result.stdout_bytes == b"The lamp is lit at dusk.\r\n\r\nIt burns until the sun is up.\r\n"
    assert (result.exit_code, result.stderr) == (0, "")


@pytest.mark.parametrize("path", [HANDBOOK, NOTICES, LISTS])
def test_no_line_is_wider_and_no_page_higher_than_the_screen(path: str) -> None:
    pages = reflow(path).stdout_bytes.decode("ascii").split("\f")
    assert len(pages) > 5
    for page in pages:
        lines = page.removesuffix("\r\n").split("\r\n")
        assert len(lines) <= 7
        assert max(map(text_cells, lines)) <= 40


@pytest.mark.parametrize(
    ("screen", "columns", "rows"),
    [("pocket", 40, 7), ("80x25", 80, 24), ("20x4", 20, 3), ("500x500", 500, 499)],
)
def test_the_screen_may_be_named_or_a_size(screen: str, columns: int, rows: int) -> None:
    report = json.loads(reflow(LISTS, "--small", screen, "--json").stdout)
    assert (report["columns"], report["page_rows"]) == (columns, rows)


@pytest.mark.parametrize("size", ["1x1", "1x8", "2x2", "40x1"])
def test_the_smallest_screens_lose_nothing(size: str) -> None:
    result = reflow(NOTICES, "--small", size, "--check")
    assert result.exit_code == 0
    assert "words came through, in order" in " ".join(result.stdout.split())


def test_rows_and_the_prompt_row() -> None:
    def pages(*options: str) -> int:
        return int(json.loads(reflow(LISTS, "--json", *options).stdout)["page_rows"])

    assert pages("--rows", "25") == 24
    assert pages("--no-prompt-row") == 8
    assert pages("--rows", "1") == 1


def test_a_file_is_written_and_the_report_printed(tmp_path: Path) -> None:
    out = tmp_path / "lists.out"
    result = reflow(LISTS, "-o", str(out))
    assert result.exit_code == 0
    assert result.stdout.startswith("lists.txt in 40 columns\n")
    assert result.stdout.endswith(f"Written: {out}\n")
    assert out.read_bytes() == reflow(LISTS).stdout_bytes
    assert list(tmp_path.iterdir()) == [out]


def test_a_second_pass_changes_nothing(tmp_path: Path) -> None:
    out = tmp_path / "once.txt"
    reflow(HANDBOOK, "-o", str(out), "--pad")
    assert reflow(str(out)).stdout_bytes == out.read_bytes().rstrip(b"\x1a")


def test_parts_are_written_under_numbers(tmp_path: Path) -> None:
    result = reflow(HANDBOOK, "-o", str(tmp_path / "handbook.txt"), "--part-size", "1024", "--pad")
    parts = sorted(tmp_path.iterdir())
    assert [part.name for part in parts] == ["handboo1.txt", "handboo2.txt", "handboo3.txt"]
    assert all(part.stat().st_size <= 1024 and part.stat().st_size % 128 == 0 for part in parts)
    assert b"\f".join(part.read_bytes().rstrip(b"\x1a") for part in parts) == reflow(HANDBOOK).stdout_bytes
    assert all(str(part) in result.stdout for part in parts)


@pytest.mark.parametrize(
    ("options", "ending"),
    [
        (["--line-end", "lf"], b"sun is up.\n"),
        (["--line-end", "cr"], b"sun is up.\r"),
        (["--pad"], b"sun is up.\r\n" + b"\x1a" * (128 - 59)),
    ],
)
def test_line_ends_and_padding(options: list[str], ending: bytes) -> None:
    assert reflow("-", *options, stdin=PROSE).stdout_bytes.endswith(ending)


def test_page_breaks() -> None:
    plain = reflow(LISTS, "--page-break", "none").stdout_bytes
    assert b"\f" not in plain
    own = reflow(LISTS, "--page-break", "-- key --").stdout_bytes
    assert own.count(b"\r\n-- key --\r\n") == reflow(LISTS).stdout_bytes.count(b"\f")


def test_options_that_add_to_the_words_add() -> None:
    plain = reflow(LISTS).stdout
    assert "Contents" in reflow(LISTS, "--contents").stdout
    assert "- 2 -" in reflow(LISTS, "--page-numbers").stdout
    assert "- 2 -" not in plain


def test_hyphens_can_be_forbidden() -> None:
    figures = json.loads(reflow(NOTICES, "--no-hyphens", "--json", "--small", "20x8").stdout)
    assert figures["after"]["hyphens"] == 0
    assert figures["language"] is None


def test_seven_bits_or_the_characters_as_they_are() -> None:
    fog = "Nebel über der Brücke – 18 °C\n".encode()
    assert reflow("-", stdin=fog).stdout_bytes == b"Nebel uber der Brucke - 18 deg C\r\n"
    assert (
        reflow("-", "--language", "de", stdin=fog).stdout_bytes == b"Nebel ueber der Bruecke - 18 deg C\r\n"
    )
    assert reflow("-", "--keep-characters", stdin=fog).stdout_bytes == fog.rstrip() + b"\r\n"


def test_the_format_and_encoding_may_be_given() -> None:
    assert reflow("-", "--format", "text", stdin=b"<p>a</p>").stdout_bytes == b"<p>a</p>\r\n"
    assert reflow("-", "--encoding", "cp437", stdin=b"M\x94we").stdout_bytes == b"Mowe\r\n"


def test_check_prints_the_report_alone() -> None:
    result = reflow(HANDBOOK, "--check")
    assert result.exit_code == 0
    assert "The station's motto" not in result.stdout
    for heading in ("Figures", "Words", "What was decided", "Characters", "How it was read"):
        assert f"\n{heading}\n" in result.stdout
    assert "the small one forgets" in " ".join(result.stdout.split())


def test_a_character_that_cannot_be_written_is_below_the_bar() -> None:
    result = reflow("-", stdin="A \ue000 sign.\n".encode())
    assert result.exit_code == 1
    assert result.stdout_bytes == b"A ? sign.\r\n"
    assert result.stderr == (
        "fit: 1 page of 40 columns and 7 rows; not as it should be: 1 character not to be written in 7 bits.\n"
    )


def test_json_follows_the_schema() -> None:
    result = reflow(NOTICES, "--json", "--contents", "--page-numbers")
    jsonschema.Draft202012Validator(schema()).validate(json.loads(result.stdout))


def test_the_preview_is_written(tmp_path: Path) -> None:
    page = tmp_path / "pages.html"
    assert reflow(NOTICES, "--check", "--html", str(page)).exit_code == 0
    assert page.read_text("utf-8").startswith("<!DOCTYPE html>")


REFUSED = [
    (["nowhere.txt"], "nowhere.txt: cannot be read: No such file or directory; name a readable document"),
    ([LISTS, "--small", "huge"], "no screen is named 'huge'; known are desk, desk24, pocket, a size such as 40x8, or a .toml file"),
    ([LISTS, "--rows", "0"], "--rows 0 is no height of a screen; give a number from 1 to 500"),
    ([LISTS, "--line-end", "nel"], "--line-end nel is unknown; give one of crlf, lf, cr"),
    ([LISTS, "--part-size", "100"], "--part-size makes several files; name them with -o, such as -o manual.txt"),
    ([LISTS, "--check", "-o", "x"], "--check writes no pages, so -o has nothing to write; leave out one of them"),
    ([LISTS, "--page-break", "\u2013"], "--page-break has characters beyond 7 bits; use others, or --keep-characters for a device that has them"),
    ([LISTS, "--format", "morse"], "no format is named 'morse'; known are text, wordproc, markdown, html, man"),
    ([LISTS, "--encoding", "morse"], "no encoding is named 'morse'; known are utf-8, ascii, cp437, latin-1, cp1252, utf-16"),
    ([LISTS, "-o", "x", "--html", "x"], "-o and --html both name x; name two files"),
    ([LISTS, "-o", LISTS], f"{LISTS}: is also the input; name another file to write to"),
    ([LISTS, "--html", LISTS], f"{LISTS}: is also the input; name another file to write to"),
]  # fmt: skip


@pytest.mark.parametrize(("arguments", "sentence"), REFUSED)
def test_what_cannot_be_done_is_said_in_one_sentence(arguments: list[str], sentence: str) -> None:
    assert refusal(*arguments) == sentence


@pytest.mark.parametrize("option", ["-o", "--html"])
def test_a_page_that_was_read_instead_is_not_written_over(tmp_path: Path, option: str) -> None:
    light, lamp = tmp_path / "light.7", tmp_path / "lamp.7"
    light.write_text(".so lamp.7\n")
    lamp.write_text(".TH LAMP 7\n.SH NAME\nlamp \\- burns\n")
    before = lamp.read_text()
    assert (
        refusal(str(light), option, str(lamp)) == f"{lamp}: is also the input; name another file to write to"
    )
    assert lamp.read_text() == before
    result = reflow(str(light), "--check")
    assert (result.exit_code, result.stdout.split("\n")[0]) == (0, "lamp.7 in 40 columns")
    said = " ".join(result.stdout.split())
    assert "- The page light.7 says only that it stands in lamp.7, which was read instead." in said


def test_an_unknown_language_is_named() -> None:
    assert "xx" in refusal(LISTS, "--language", "xx")


@pytest.mark.parametrize("data", [b"", b"\n\n", b"\x00\x01\x02", b"PK\x03\x04"])
def test_what_is_no_document_is_refused(data: bytes) -> None:
    assert refusal("-", stdin=data).startswith("standard input")


def test_a_page_too_large_for_a_part_leaves_no_file(tmp_path: Path) -> None:
    sentence = refusal(LISTS, "-o", str(tmp_path / "a.txt"), "--part-size", "20")
    assert sentence.endswith("give a larger --part-size, or fewer --rows")
    assert list(tmp_path.iterdir()) == []


def test_a_folder_without_permission_is_named(tmp_path: Path) -> None:
    tmp_path.chmod(0o500)
    was = os.geteuid()
    try:
        if was == 0:  # root may write anywhere
            os.seteuid(65534)
        sentence = refusal("-", "-o", str(tmp_path / "a.txt"), stdin=PROSE)
    finally:
        os.seteuid(was)
    assert sentence.endswith("a.txt: cannot be written: Permission denied; no half file was left")


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    where = tmp_path / "no" / "a.txt"
    assert (
        refusal(LISTS, "-o", str(where))
        == f"{where}: cannot be written: No such file or directory; no half file was left"
    )


def test_a_reader_that_leaves_early_is_no_error() -> None:
    command = f"{sys.executable} -c 'from fit.cli import main; main()' reflow {LISTS} --small 1x1 | head -c 5"
    done = subprocess.run(["bash", "-c", command], capture_output=True, check=False)
    assert done.stderr == b""
    assert len(done.stdout) == 5


@pytest.mark.slow
@pytest.mark.parametrize("tag", ["<div>", "<b>", "<ul><li>", "<table><tr><td>"])
def test_ten_megabytes_of_nested_tags_end_well(tag: str) -> None:
    result = reflow("-", stdin=tag.encode() * (10_000_000 // len(tag)) + b"lamp")
    assert "lamp" in result.stdout
