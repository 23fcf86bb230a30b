"""Whatever a session holds, its report can be printed: every page, at every width, without a control character."""

from __future__ import annotations

import json
import unicodedata

import jsonschema
from hypothesis import example, given, settings, strategies as st

from fit.pipeline import measure, show_look
from fit.report.check_json import report_json, schema
from fit.report.lines import line_list
from fit.report.look import look_page
from fit.report.page import page
from fit.report.style import Style
from fit.report.summary import summary
from fit.report.turns import worst
from fit.session import Session
from fit.width import text_cells

VALIDATOR = jsonschema.Draft202012Validator(schema())
PIECES = [
    b"\x1b[H\x1b[2J",
    b"\x1b[24;70H",
    b"\x1b[9;41H",
    b"\x1b[K",
    b"\x1b7",
    b"\x1b8",
    b"\x1b[5;20r",
    b"\x1b[?1049h",
    b"\x1b[?1049l",
    b"\x1b[3L",
    b"\x1b[9b",
    b"\x1b#8",
    b"\x1b[=3q",
    b"\x1b(0qqq\x1b(B",
    b"lamp ",
    b"<b>&",
    b"x" * 90,
    b"\r\n",
    b"\n",
    b"\t",
    b"\xff",
    b"\x9b",
    "漢字".encode(),
    "e\u0301👩\u200d👩".encode(),
]
OUTPUTS = st.lists(st.one_of(st.sampled_from(PIECES), st.binary(max_size=6)), max_size=120).map(b"".join)
SIZES = st.sampled_from(["40x8", "1x1", "3x2", "100x30"])
HIDDEN = {"Cc", "Cs", "Zl", "Zp"}


@settings(max_examples=25, deadline=None)
@given(OUTPUTS, SIZES)
@example(b"\x1b[24;70H\xad", "40x8")  # a soft hyphen takes one cell
@example("\x1b[24;70H\ue000".encode(), "40x8")  # private use: nothing is known to show it
def test_every_page_can_be_printed(output: bytes, small: str) -> None:
    report = measure(Session(output, name="a\x1bb"), small=small)
    VALIDATOR.validate(json.loads("".join(report_json(report))))
    views = {number: show_look(report, number) for number in {1, report.looks}}
    for width in (40, 80, 140):
        style = Style(width)
        pages = [summary(report, style), *line_list(report, style)]
        pages += [look_page(report, view, style) for view in views.values()]
        for line in "".join(pages).split("\n"):
            assert text_cells(line) <= width
            assert not HIDDEN & {unicodedata.category(char) for char in line}
    assert page(report, {turn.look: show_look(report, turn.look) for turn in worst(report)})
