"""The bytes of the device's file: line ends, page breaks, padding, parts, names of parts."""

from __future__ import annotations

from array import array

import pytest

from fit.document.blocks import Kind
from fit.errors import UsageError
from fit.layout.lines import Layout, Line, LineFlag
from fit.report.device_file import RECORD, FileForm, device_files, part_names
from fit.units import Span


def line(text: str, block: int = 0) -> Line:
    return Line(
        text, array("q", [-1] * len(text)), block, Kind.PARAGRAPH if block >= 0 else None, LineFlag.NONE
    )


BLANK = Line("", array("q"), -1, None, LineFlag.BLANK)
# Two pages; the blank line between them is on neither.
TWO = Layout((line("a"), line("b"), BLANK, line("c", 1)), (Span(0, 2), Span(3, 4)))


FORMS = [
    (FileForm(), b"a\r\nb\r\n\fc\r\n"),
    (FileForm(line_end="\n"), b"a\nb\n\fc\n"),
    (FileForm(line_end="\r"), b"a\rb\r\fc\r"),
    (FileForm(line_end="\n", page_break=""), b"a\nb\n\nc\n"),
    (FileForm(line_end="\n", page_break="-- more --"), b"a\nb\n-- more --\nc\n"),
    (FileForm(pad=True), b"a\r\nb\r\n\fc\r\n" + b"\x1a" * 118),
]


@pytest.mark.parametrize(("form", "data"), FORMS)
def test_the_file_is_written_as_asked(form: FileForm, data: bytes) -> None:
    assert device_files(TWO, form) == [data]


def test_marks_for_the_layout_are_never_written() -> None:
    one = Layout((line("10\u00a0km so\u00adft\u200b"),), (Span(0, 1),))
    assert device_files(one, FileForm()) == [b"10 km soft\r\n"]


def test_more_than_seven_bits_are_written_where_asked() -> None:
    one = Layout((line("18 °C"),), (Span(0, 1),))
    assert device_files(one, FileForm(encoding="utf-8")) == ["18 °C\r\n".encode()]


def pages(*sizes: int) -> Layout:
    return Layout(
        tuple(line("x" * (size - 2)) for size in sizes), tuple(Span(i, i + 1) for i in range(len(sizes)))
    )


def test_parts_end_at_page_ends_and_are_as_few_as_can_be() -> None:
    parts = device_files(pages(40, 40, 40, 90, 10), FileForm(part_size=100))
    # 40, form feed, 40 fit into 100 bytes; 40 more would not.
    assert [len(part) for part in parts] == [81, 40, 90, 10]
    assert b"\f".join(parts) == device_files(pages(40, 40, 40, 90, 10), FileForm())[0]


def test_a_part_may_be_as_large_as_the_size_and_no_larger() -> None:
    assert [len(part) for part in device_files(pages(50, 49), FileForm(part_size=100))] == [100]
    assert [len(part) for part in device_files(pages(50, 49), FileForm(part_size=99))] == [50, 49]


def test_padding_counts_in_the_size() -> None:
    parts = device_files(pages(100, 100, 100), FileForm(pad=True, part_size=300))
    assert [len(part) for part in parts] == [2 * RECORD, RECORD]


def test_a_page_larger_than_a_part_is_named() -> None:
    with pytest.raises(UsageError) as caught:
        device_files(pages(10, 200), FileForm(part_size=100))
    assert str(caught.value) == (
        "page 2 alone takes 200 bytes, more than a part of 100 can hold; give a larger --part-size, or fewer --rows"
    )


@pytest.mark.parametrize(
    ("name", "count", "names"),
    [
        ("lamp.txt", 2, ["lamp1.txt", "lamp2.txt"]),
        ("lamplist.txt", 2, ["lamplis1.txt", "lamplis2.txt"]),
        ("handbook-of-the-light.txt", 2, ["handbook-of-the-light1.txt", "handbook-of-the-light2.txt"]),
        ("lamp", 10, [f"lamp{number:02}" for number in range(1, 11)]),
        (".lamp", 1, [".lamp1"]),
    ],
)
def test_parts_are_numbered_in_their_names(name: str, count: int, names: list[str]) -> None:
    assert part_names(name, count) == names
