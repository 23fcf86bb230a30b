"""Tables of HTML that are drawings: words and strokes in cells."""

from __future__ import annotations

import pytest
from plain_blocks import assert_places_hold

from fit.document.blocks import Kind
from fit.document.html import read_html

ROW = "<tr><td>store<td>-&gt;<td>lamp<td>-&gt;<td>lens"


def figure(table: str) -> list[str]:
    """The lines of the one drawing in a page."""
    document = read_html(f"<p>The light:</p><table>{table}</table><p>End", "t.html", "utf-8")
    assert_places_hold(document)
    lit, *drawn, end = document.blocks
    assert (lit.text.chars, end.text.chars) == ("The light:", "End")
    assert [block.kind for block in drawn] == [Kind.PICTURE]
    return [line.chars for line in drawn[0].lines]


@pytest.mark.parametrize(
    ("table", "lines"),
    [
        (ROW, ["store -> lamp -> lens"]),
        # columns are as wide as their widest cell; cells stand where they are told to
        (
            "<tr><td>oil<td>-&gt;<td align=center>lamp<tr><td>spare wick<td>\\<td align=center>|<tr><td><td><td>v",
            ["oil        -> lamp", "spare wick \\   |", "              v"],
        ),
        # over several columns and rows, in the middle of them
        (
            "<tr><td rowspan=3>keepers<br>and boat<td>&nbsp;<td>/<tr><td>-&gt;<td>rock<tr><td colspan=2>\\",
            ["keepers     /", "and boat -> rock", "         \\"],
        ),
        # a drawing in a cell
        (
            "<tr><td align=center>lamp<td>-&gt;<td>lens<tr><td align=center><table><tr><td>^<br>|<td>|<br>v</table>",
            ["lamp -> lens", "^ |", "| v"],
        ),
    ],
)
def test_words_and_strokes_are_drawn_side_by_side(table: str, lines: list[str]) -> None:
    assert figure(table) == lines


@pytest.mark.parametrize(
    "table",
    [
        "<tr><th>Key<th>Does<tr><td>-&gt;<td>right<tr><td>&lt;-<td>left",  # heads make it a table of data
        "<tr><td>Home<td>|<td>Tides<td>|<td>Log<tr><td>a<td>|<td>b<td>|<td>c",  # no arrow
        "<tr><td>fog &lt; 3<td>=&gt;<td>wait<tr><td>fog &gt; 3<td>=&gt;<td>sail",  # one sign between two columns
        "<tr><td>fog<td>-<td>3<tr><td>wind<td>-<td>4",  # dashes stand for what is empty
        "<tr><td>&lt;=<td>Up<td>+<tr><td>Prev<td>Home<td>Next",  # operators
        "<tr><td>The keeper walks from the store to the lamp room and back<td>-&gt;<tr><td>lens<td>-&gt;",  # a text
    ],
)
def test_other_tables_are_no_drawings(table: str) -> None:
    document = read_html(f"<p>a</p><table>{table}</table>", "t.html", "utf-8")
    assert not any(block.kind is Kind.PICTURE for block in document.blocks)
