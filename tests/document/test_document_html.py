"""HTML to blocks. The outside: the text that the standard library's parser finds in the same page."""

from __future__ import annotations

from html.parser import HTMLParser
from pathlib import Path

import pytest
from gold import read_gold
from hypothesis import given, settings, strategies as st
from plain_blocks import assert_places_hold, plain, plain_gold, shown_words

from fit.document.blocks import Kind, Mark
from fit.document.html import read_html
from fit.document.html.source import DEEPEST, OPENING, mark_source
from fit.document.html.table import MOST_REPEATED
from fit.document.text import read_text
from fit.layout.compose import lay_out
from fit.layout.proof import prove_words
from fit.layout.settings import LayoutSettings
from fit.report.device_text import to_seven_bits

ROOT = Path(__file__).parents[2]
NOTICES = ROOT / "corpus/documents/skerry-notices.html"


def blocks(source: str) -> list[tuple[object, ...]]:
    return [plain(block)[:6] for block in read_html(source, "x.html", "utf-8").blocks]


def flow(kind: str, text: str, label: str = "", level: int = 0) -> tuple[object, ...]:
    return (kind, level, label, text, [], [])


def test_the_notices_are_read_as_their_gold_says() -> None:
    document = read_html(NOTICES.read_text("utf-8"), "skerry-notices.html", "utf-8")
    gold = read_gold(ROOT / "tests/document/marked_up/skerry-notices.html.gold")
    assert [plain(block) for block in document.blocks] == [plain_gold(block) for block in gold]
    assert_places_hold(document)


class _Visible(HTMLParser):
    """All character data outside of script, style and title."""

    def __init__(self) -> None:
        super().__init__()
        self.letters = ""
        self._hidden = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._hidden += tag in ("script", "style", "title")
        self.letters += (dict(attrs).get("alt") or "") if tag == "img" else ""

    def handle_endtag(self, tag: str) -> None:
        self._hidden -= tag in ("script", "style", "title")

    def handle_data(self, data: str) -> None:
        self.letters += "" if self._hidden else data


def test_every_letter_comes_through_in_order() -> None:
    page = _Visible()
    page.feed(NOTICES.read_text("utf-8"))
    wanted = "".join(page.letters.split())
    document = read_html(NOTICES.read_text("utf-8"), "x.html", "utf-8")
    found = "".join(
        char
        for block in document.blocks
        if block.kind.value != "note"
        for text in (block.label, block.text, *block.lines, *(cell for row in block.rows for cell in row))
        for char, place in zip(text.chars, text.sources, strict=True)
        if place >= 0 and not char.isspace()
    )
    assert found == wanted


CASES = [
    ("<ul><li><ul><li>a</ul><li></ul>", [flow("item", "a", "-"), flow("item", "", "-")]),
    ("<ol><li>a<li><li> <!-- c --> <li><img src=x><li>b</ol>", [
        flow("item", "a", "1."), flow("item", "", "2."), flow("item", "b", "5.")]),
    ("<p>&nbsp;</p> <p><br></p>a", [flow("paragraph", "a")]),
    ("<p>a<p>b", [flow("paragraph", "a"), flow("paragraph", "b")]),
    ("a<div>b<div>c</div></div>d", [flow("paragraph", text) for text in "abcd"]),
    ("<ul><li>a<ul><li>b</ul><li>c</ul>", [flow("item", "a", "-"), flow("item", "b", "-"), flow("item", "c", "-")]),
    ("<ol reversed start=3><li>a<li>b</ol>", [flow("item", "a", "3."), flow("item", "b", "2.")]),
    ("<ol reversed><li>a<ol><li>b</ol><li>c</ol>", [flow("item", "a", "2."), flow("item", "b", "1."), flow("item", "c", "1.")]),
    ("<ul><li><h3>a</h3>b<li>c<h3>d</h3></ul>", [
        flow("item", "a", "-"), flow("paragraph", "b"), flow("item", "c", "-"), ("heading", 3, "", "d", [], [])]),
    ("a<dialog>b</dialog><dialog open>c</dialog>", [flow("paragraph", "a"), flow("paragraph", "c")]),
    ("<ol type=I start=4><li>a</ol>", [flow("item", "a", "IV.")]),
    ("<ul><li><pre>x</pre></ul>", [flow("item", "", "-"), ("code", 0, "", "", ["x"], [])]),
    ("<dl><dt>k<dd>t</dl>", [flow("item", "t", "k")]),
    ("<dl><dt>k</dl>x", [flow("item", "", "k"), flow("paragraph", "x")]),
    ("<dl><dt>k</dl><h2>x</h2>", [flow("item", "", "k"), ("heading", 2, "", "x", [], [])]),
    ("<dl><dt>k<dd><dl><dt>l<dd>t</dl></dl>", [flow("item", "", "k"), flow("item", "t", "l")]),
    ("<dl><dt>k", [flow("item", "", "k")]),
    ("<dl><dt>k<dd><ul><li>a</ul></dl>", [flow("item", "", "k"), flow("item", "a", "-")]),
    ("<dl><dt>k<dl><dt>l<dd>t</dl><dt>m<dd><p>u<pre>x</pre></dl>", [
        flow("item", "", "k"), flow("item", "t", "l"), flow("item", "u", "m"), ("code", 0, "", "", ["x"], [])]),
    ("<dl><dt>k<dd><pre>x</pre></dl>", [flow("paragraph", "k"), ("code", 0, "", "", ["x"], [])]),
    ("<ol start=7><li>a<li><ol type=i><li>b</ol><li>c</ol>", [
        flow("item", "a", "7."), flow("item", "", "8."), flow("item", "b", "i."), flow("item", "c", "9.")]),
    ("<p>x &lt;b&gt; &#65; &eacute &amp</p>", [flow("paragraph", "x <b> A \u00e9 &")]),
    ("<p>a\n   b\t c</p>", [flow("paragraph", "a b c")]),
    ("<pre>\n\nx\n</pre>", [("code", 0, "", "", ["x"], [])]),
    ("<p>a<br>b<p>c<br><br>d", [("lines", 0, "", "", ["a", "b"], []), flow("paragraph", "c"), flow("paragraph", "d")]),
    ("<pre>a&nbsp;b&nbsp;&nbsp;c</pre>", [("code", 0, "", "", ["a b  c"], [])]),
    ("<table><tr><td>a<tr><td>b</table>", [flow("paragraph", "a"), flow("paragraph", "b")]),
    ("<table>lost<tr><td>a<td>b<tr><td>c<td>d</table>", [flow("paragraph", "lost"), ("table", 0, "", "", [], [["a", "b"], ["c", "d"]])]),
    ("<table><tr><td>a<td><ul><li>b<li>c</ul><tr><td>d<td>e</table>", [
        flow("item", "", "a"), flow("item", "b", "-"), flow("item", "c", "-"), flow("item", "e", "d")]),
    ("<table><tr><th>Lamp<th>Care<tr><td><p>port<td>trim<p>wick<tr><td>main<td>oil<pre>x</pre></table>after", [
        flow("item", "Care", "Lamp"), flow("item", "trim", "port"), flow("paragraph", "wick"), flow("item", "oil", "main"),
        ("code", 0, "", "", ["x"], []), flow("paragraph", "after")]),
    ("<table><tr><td>a<td><ul><li>b<li>c</ul><td>d<tr><td>e<td>f<td>g</table>", [
        ("table", 0, "", "", [], [["a", "- b\n- c", "d"], ["e", "f", "g"]])]),
    ("<table><caption>x<p>y</caption><tr><td><p>a <b>b</b></p> <p>c<td>d<br>e<tr><td>f<td><ul><li><p>g</ul></table>", [
        flow("paragraph", "x"), flow("paragraph", "y"), ("table", 0, "", "", [], [["a b\nc", "d\ne"], ["f", "- g"]])]),
    ("<table><thead><tr><th rowspan=2>a<th colspan=2>b<tr><th>c<th>d<tfoot><tr><td>z<tbody><tr><td>e<td>f<td>g</table>", [
        ("table", 0, "", "", [], [["a", "b", "b"], ["", "c", "d"], ["e", "f", "g"], ["z", "", ""]])]),
    ("<table><tr><th colspan=9>a<tr><td>b<td>c</table>", [flow("paragraph", "a"), ("table", 0, "", "", [], [["b", "c"]])]),
    ("<table><tr><td>a<br>b<td><tr><td>c<p>d<td></table>", [flow("paragraph", text) for text in "abcd"]),
    ("<table><tr><td><ul><li>a<li>b</ul></table>", [flow("item", "a", "-"), flow("item", "b", "-")]),
    ("<table><tr><td>a<p>b<td>c</table>", [flow("paragraph", text) for text in "abc"]),
    ("<table><tr><td>a<td>&nbsp;<tr><td>b<td>&nbsp;</table>", [flow("paragraph", "a"), flow("paragraph", "b")]),
    ("<p>&bull; a<p>\u2022a<p>- b", [flow("item", "a", "\u2022"), flow("paragraph", "\u2022a"), flow("paragraph", "- b")]),
    ("- a<br>- b<p>- c<br>d", [flow("item", "a", "-"), flow("item", "b", "-"), ("lines", 0, "", "", ["- c", "d"], [])]),
    ("<dl><dt>j<br>k<dd>t</dl>", [flow("item", "", "j"), flow("item", "t", "k")]),
    ("a<p hidden>b<p style='color:red; display: none'>c<p style='display:block'>d", [flow("paragraph", "a"), flow("paragraph", "d")]),
    ("a<video>b</video><ruby>c<rp>(<rt>d<rp>)</ruby>", [flow("paragraph", "ac(d)")]),
    ("<a href='http://x.y/'>x.y</a> <a href='mailto:a@b'>a@b</a> <a href='x.html#c'>d</a>", [flow("paragraph", "x.y a@b d")]),
    ("<a rel=next href='z.html'>on</a> <a rel=help href='h.html'>help</a>", [flow("paragraph", "on help"), flow("note", "h.html")]),
    ("<a href='JavaScript:void(0)'>lamp</a>", [flow("paragraph", "lamp")]),
    ("<a href=x>x</a> <a href='#y'>y</a>", [flow("paragraph", "x y")]),
    ("<a href=x&amp;y>z</a>", [flow("paragraph", "z"), flow("note", "x&y")]),
    ("<textarea>a <b>\nc</textarea>", [("code", 0, "", "", ["a <b>", "c"], [])]),
    ("<form>Name: <input value='Old Anselm'> <select><option>first<optgroup><option>dog</select> <textarea>a <b></textarea></form>", [
        flow("paragraph", "Name: [Old Anselm] [first | dog] [a <b>]")]),
    ("<form>Oil: <input placeholder=pints>, <input type=password value=x> <input type=hidden value=h> <input type=submit value=Sign>", [
        flow("paragraph", "Oil: , [Sign]")]),
    ("<ul><li><input type=checkbox checked> oil<li><input type=checkbox>wick</ul><input type=checkbox id=menu><nav>lamp</nav>", [
        flow("item", "[x] oil", "-"), flow("item", "[ ] wick", "-"), flow("paragraph", "lamp")]),
    ("<h3>Lamp<br>room<p>Trim.<p>Fill.</h3>", [("heading", 3, "", "Lamp room", [], []), flow("paragraph", "Trim."), flow("paragraph", "Fill.")]),
    ("<h2><p>Lamp</p></h2><h2><div>Lamp</div><div>room</div></h2>", [
        ("heading", 2, "", "Lamp", [], []), ("heading", 2, "", "Lamp", [], []), ("heading", 2, "", "room", [], [])]),
    ("<table><tr><td><code>--oil</code><td>fills the <b>lamp</b></table>", [flow("item", "fills the lamp", "--oil")]),
    ("<table><tr><td>A key of so many words that none of them is one<td>b</table>", [
        flow("paragraph", "A key of so many words that none of them is one"), flow("paragraph", "b")]),
    ("<table><tr><td>a<td>b<td>c</table>", [flow("paragraph", text) for text in "abc"]),
    ("a<!-- <p>no --->b<!-->c<?no>d</ no>e", [flow("paragraph", "abcde")]),
    ("<xmp><b>&amp;</xmp>", [("code", 0, "", "", ["<b>&amp;"], [])]),
    ("<template><p>no</p></template>yes", [flow("paragraph", "yes")]),
    ("<b>a<p>b</b>c", [flow("paragraph", "a"), flow("paragraph", "bc")]),
    ("<pre>&#13;lamp&#13;\n&#13;oil</pre>a&#13;b", [("code", 0, "", "", [" lamp", " oil"], []), flow("paragraph", "a b")]),
    ("<p>Ring: <input type=image src=bell.gif alt='the bell'>", [flow("paragraph", "Ring: [the bell]")]),
    ("<frameset><frame src=a.html><noframes><p>The log <b>has</b> no frames.</noframes></frameset>", [
        flow("paragraph", "The log has no frames.")]),
    ("a<noframes>b</noframes>c", [flow("paragraph", "ac")]),
    ("10<sup>3</sup> x<sup>2</sup> a<sup>1</sup>", [flow("paragraph", "10^3 x2 a1")]),
]  # fmt: skip


@pytest.mark.parametrize(("source", "expected"), CASES)
def test_cases(source: str, expected: list[tuple[object, ...]]) -> None:
    assert blocks(source) == expected


def test_a_whole_manual_in_preformatted_lines_is_read_as_plain_text() -> None:
    wrapped = (Path(__file__).parents[2] / "corpus/documents/hyphens.txt").read_text("utf-8")
    page = f"<h1>Manual</h1><pre>{wrapped.replace('&', '&amp;').replace('<', '&lt;')}</pre>"
    found = read_html(page, "x", "utf-8")
    alone = read_text(wrapped, "x", "utf-8")
    assert [plain(block) for block in found.blocks[1:]] == [plain(block) for block in alone.blocks]
    assert_places_hold(found)


def test_a_manual_in_parts_between_headings_is_read_as_plain_text() -> None:
    wrapped = (ROOT / "corpus/documents/hyphens.txt").read_text("utf-8")
    chapters = wrapped.replace("&", "&amp;").replace("<", "&lt;").split("\n\n")
    body = "</pre><h2>Lamp</h2><pre>".join(["\n\n".join(chapters[:3]), *chapters[3:]])
    found = read_html(f"<h1>Manual</h1><pre>{body}</pre>", "x", "utf-8")
    kinds = {block.kind for block in found.blocks}
    assert Kind.PREFORMATTED not in kinds
    assert_places_hold(found)
    between = read_html(f"<pre>{body.replace('<h2>Lamp</h2>', '<p>Lamp</p>')}</pre>", "x", "utf-8")
    assert {block.kind for block in between.blocks} == {Kind.PREFORMATTED, Kind.PARAGRAPH}


@pytest.mark.parametrize("inside", ["", "<code>", "<span></span>"])
def test_preformatted_lines_go_on_behind_a_mark(inside: str) -> None:
    source = f"<p>Then type<pre>{inside}trim --administration=keeper --lamp=lighthouse --oil</pre>"
    layout = lay_out(read_html(source, "x.html", "utf-8"), LayoutSettings())
    assert [line.text for line in layout.lines[2:]] == [
        "  trim --administration=keeper \\",
        "    --lamp=lighthouse --oil",
    ]


def test_a_quotation_stands_out_however_short_and_apart_from_a_list_above() -> None:
    page = "<dl><dt>wick<dd>Trim it.</dl><blockquote><p>Burn.</p><p>Be seen.</p></blockquote>"
    document = read_html(page + "<ul><li>oil<blockquote>Of rape.</blockquote></ul>", "x.html", "utf-8")
    lines = [line.text for line in lay_out(document, LayoutSettings()).lines]
    assert lines == ["wick  Trim it.", "", "   Burn.", "", "   Be seen.", "", "- oil", "", "     Of rape."]


def test_lines_of_a_cell_come_through_to_the_device() -> None:
    page = "<table><tr><th>Watch<th>Do<tr><td>first<td><p>oil \u2013 <p>wick<tr><td>dog<td>none</table>"
    document = to_seven_bits(read_html(page, "x.html", "utf-8")).document
    layout = lay_out(document, LayoutSettings())
    assert [line.text for line in layout.lines][2:] == ["first  oil -", "       wick", "dog    none"]
    assert prove_words(document, layout).holds


@pytest.mark.parametrize(
    ("width", "expected"),
    [
        (22, ["Day  Morning", "        time  feet", "---  -------  ----", "Mon     4.12   3.9"]),
        (12, ["Day: Mon", "Morning", " time: 4.12", "Morning", " feet: 3.9"]),
    ],
)
def test_a_header_over_two_columns_names_both_in_records(width: int, expected: list[str]) -> None:
    page = "<table><tr><th>Day<th colspan=2>Morning<tr><th><th>time<th>feet<tr><td>Mon<td>4.12<td>3.9</table>"
    document = read_html(page, "x.html", "utf-8")
    layout = lay_out(document, LayoutSettings(width=width))
    assert [line.text for line in layout.lines] == expected
    assert prove_words(document, layout).holds


INDEX = (
    "<table border=0><tr><td><th>Entry<td>&nbsp;<th>Page<tr><td colspan=4><hr>"
    "<tr><th>L<td><td><tr><td><td>lamp<td><td>3<tr><td><td>log<td><td>9<tr><td colspan=4><hr>"
    "<tr><th>W<td><td><tr><td><td>wick<td><td>4</table>"
)
TABLES = [
    # Rows in groups, as "Forming a table" of the HTML standard lets a cell stand over all columns.
    (INDEX, ["p L", "t Entry|Page", "t lamp|3", "t log|9", "p W", "t Entry|Page", "t wick|4"]),
    ("<table><tr><th>Key<th>Does<tr><th colspan=2>Lamp<tr><td>q<td>quits<tr><td colspan=2><h3>Log</h3><tr><td>w<td>writes<tr><td>s<td>saves</table>",
     ["p Lamp", "t Key|Does", "t q|quits", "= Log", "t Key|Does", "t w|writes", "t s|saves"]),
    ("<table><tr><th>Key<th>Does<tr><td colspan=2>No keys yet</table>", ["t Key|Does", "p No keys yet"]),
    ("<table><tr><td colspan=2>No names<tr><td>a<td>b<tr><td>c<td><tr><td>d<td>e</table>", ["p No names", "t a|b", "t c|", "t d|e"]),
    ("<table><tr><td colspan=2>One row below<tr><td>a<td>b</table>", ["p One row below", "t a|b"]),
    ("<table><tr><th>Day<th>Watch<th>Keeper<tr><td rowspan=2>Monday<td>dog<td rowspan=2>Anna<tr><td>first</table>",
     ["t Day|Watch|Keeper", "t Monday|dog|Anna", "t Monday|first|"]),
    ("<table><tr><th>Day<th>Low<th>High<th>Seen<tr><td>Monday<td colspan=2>frozen<td>Anna<tr><td colspan=3>Tuesday: fog<td>Ben</table>",
     ["t Day|Low|High|Seen", "t Monday|frozen|frozen|Anna", "t Tuesday: fog|||Ben"]),
    ("<table><tr><td>Monday<td colspan=2>frozen<tr><td>Tuesday<td>2<td>9</table>", ["t Monday|frozen|", "t Tuesday|2|9"]),
    # What tells a table of data from one that places things, after "The table element" of the HTML standard.
    ("<table border><tr><td>Order<td>Code<td>By<tr><td>1<td><pre>if lit:\n   trim</pre><td>Ben</table>",
     ["t Order|Code|By", "t 1|if lit:\n   trim|Ben"]),
    ("<table><tr><th>Order<th>Code<th>By<tr><td>1<td><dl><dt>lamp<dd>trim</dl><td>Ben</table>",
     ["t Order|Code|By", "t 1|lamp\ntrim|Ben"]),
    ("<table border=0><tr><td>Order<td>Code<td>By<tr><td>x<pre>y</pre><td><pre>z</pre><td>Ben</table>",
     ["p Order", "p Code", "p By", "p x", "c y", "c z", "p Ben"]),
    ("<table border=1><tr><td>a<td><table><tr><td>b<td>c</table><tr><td>d<td>e</table>", ["t a|b c", "t d|e"]),
    ("<table border=1 role=presentation><tr><td>a<td>b<td>c<tr><td>d<td>e<td>f</table>", [f"p {char}" for char in "abcdef"]),
    ("<table border=1><tr><td>a<td><h2>Log</h2>b<td>c<tr><td>d<td>e</table>", ["p a", "= Log", "p b", "p c", "p d", "p e"]),
    ("<table><tr><td><pre>lamp --on\nlamp --off</pre><td>burns<p>or not<tr><td>oil<td><pre>fill</pre></table>",
     ["* lamp --on", "* lamp --off|burns", "p or not", "p oil", "c fill"]),
]  # fmt: skip


@pytest.mark.parametrize(("source", "expected"), TABLES)
def test_tables(source: str, expected: list[str]) -> None:
    signs = {Kind.HEADING: "=", Kind.PARAGRAPH: "p", Kind.ITEM: "*", Kind.PREFORMATTED: "c", Kind.TABLE: "t"}
    found: list[str] = []
    for block in read_html(source, "x.html", "utf-8").blocks:
        texts = ["|".join(cell.chars for cell in row) for row in block.rows]
        texts = texts or [line.chars for line in block.lines]
        texts = texts or ["|".join(text.chars for text in (block.label, block.text) if len(text))]
        found += (f"{signs[block.kind]} {text}" for text in texts)
    assert found == expected


@pytest.mark.parametrize(
    ("rows", "headers"),
    [
        (["lamp|horn|size of glass|wicks", "l1|h1|40 by 20|1", "l2|h2|80 by 40|2", "l3|h3|10 by 10|1"], 1),
        (["lamp|horn|use", "l1.lmp|h1.hrn|Shows the harbour to boats from the north", "l2.lmp|h2.hrn|For fog alone, by day and night"], 1),
        (["Oil|Wick|Glass", "Rope|Tar|Nails", "Bread|Salt|Beans"], 0),
        (["Lamp|Red", "Horn|Goes three times a minute in fog", "Bell|Rings where the horn is out of order"], 0),
        (["l1|h1|40 by 20|1", "l2|h2|80 by 40|2", "l3|h3|10 by 10|1"], 0),
    ],
)  # fmt: skip
def test_a_first_row_that_names_the_columns_is_a_header_where_no_cell_says_so(
    rows: list[str], headers: int
) -> None:
    cells = "".join(f"<tr>{''.join(f'<td>{cell}' for cell in row.split('|'))}" for row in rows)
    found = read_html(f"<table border>{cells}</table>", "x.html", "utf-8").blocks
    assert sum(block.header_rows for block in found) == headers


def test_a_cell_over_several_rows_stands_once_in_columns_and_again_in_records() -> None:
    page = "<table><tr><th>Day<th>Tide<th>Feet<tr><td rowspan=2>Monday<td>4.12<td>3.9<tr><td>16.40<td>4.1</table>"
    document = read_html(page, "x.html", "utf-8")
    wide, narrow = (lay_out(document, LayoutSettings(width=width)) for width in (40, 12))
    assert [line.text for line in wide.lines][2:] == ["Monday   4.12   3.9", "        16.40   4.1"]
    assert [line.text for line in narrow.lines][4:] == ["", "Day:", " Monday", "Tide:  16.40", "Feet:  4.1"]
    assert prove_words(document, wide).holds
    assert prove_words(document, narrow).holds


def test_lines_of_a_cell_keep_their_margin_and_hang_beside_their_bullet() -> None:
    page = (
        "<table border><tr><th>Order<th>Steps<th>Code<tr><td>first<td><ul><li>trim the wick and wind the clock</ul>"
        "<td><pre>if lit:\n    trim --administration=keeper --oil</pre></table>"
    )
    document = read_html(page, "x.html", "utf-8")
    layout = lay_out(document, LayoutSettings())
    assert [line.text for line in layout.lines] == [
        "Order:  first",
        "Steps:  - trim the wick and wind the",
        "          clock",
        "Code:   if lit:",
        "            trim \\",
        "              --administration=keeper \\",
        "              --oil",
    ]
    assert prove_words(document, layout).holds


def test_prose_in_an_example_stays_as_it_stands() -> None:
    wrapped = (Path(__file__).parents[2] / "corpus/documents/hyphens.txt").read_text("utf-8")
    page = f"<p>{'Read the manual of the lamp. ' * 200}<pre>{wrapped.replace('&', '&amp;').replace('<', '&lt;')}</pre>"
    example = blocks(page)[1]
    assert (example[0], example[4]) == ("lines", wrapped.rstrip().split("\n"))


def test_what_the_page_hides_is_counted() -> None:
    remarks = read_html("a<p hidden>b<b>c</b></p>", "x", "utf-8").remarks
    assert remarks == ("2 pieces of text left out, which the page hides from its readers",)


def test_marks_for_browsers_are_no_text() -> None:
    page = "<h2>Lamp<a href='#lamp'>\u00b6</a></h2><p>See <a href='#note'>#</a><pre>fit<button>Copy</button></pre>"
    page += "<h3>Oil<a class=headerlink href='#oil'>&#xf0c1;</a></h3><h3>No. <a href='#one'>1</a> <a href='#two'>\u2020</a></h3>"
    document = read_html(page, "x", "utf-8")
    assert shown_words(document) == ["Lamp", "See", "#", "fit", "Oil", "No.", "1", "\u2020"]
    assert document.remarks == ("3 marks left out that only a browser has a use for",)


def test_levels_follow_the_nesting() -> None:
    source = "<ul><li>a<p>b<blockquote>c</blockquote><ul><li>d</ul></ul><p>e"
    found = read_html(source, "x", "utf-8").blocks
    assert [(b.text.chars, b.level) for b in found] == [("a", 0), ("b", 1), ("c", 2), ("d", 1), ("e", 0)]
    quoted = read_html(
        "<dl><dt>k<dd>a</dl><blockquote>b<p>c</blockquote><blockquote><ul><li>d<blockquote>e", "x", "utf-8"
    ).blocks
    assert [(b.text.chars, b.level, b.apart) for b in quoted] == [
        ("a", 0, False),
        ("b", 1, True),
        ("c", 1, False),
        ("d", 1, True),
        ("e", 3, True),
    ]
    keyed = read_html(
        "<table><tr><td>k<td>a<p>b<ul><li>c</ul><tr><td>l<td>d</table><p>e", "x", "utf-8"
    ).blocks
    assert [(b.text.chars, b.level) for b in keyed] == [("a", 0), ("b", 1), ("c", 1), ("d", 0), ("e", 0)]


def test_marks_say_how_words_are_set_off() -> None:
    text = read_html("<b>a</b><i>b</i><code>c</code><nobr>d</nobr>", "x", "utf-8").blocks[0].text
    assert list(text.marks) == [Mark.BOLD, Mark.UNDERLINE, Mark.CODE, Mark.NO_BREAK]


def test_every_character_knows_its_place() -> None:
    text = read_html("<p>a &amp; b\r\n&#x41;</p>", "x", "utf-8").blocks[0].text
    assert (text.chars, list(text.sources)) == ("a & b A", [3, 4, 5, 10, 11, 12, 14])


def test_a_tag_without_end_takes_the_rest_and_that_is_said() -> None:
    document = read_html("<p>a <b title='no end", "x", "utf-8")
    assert document.remarks == (
        "the tag at character 5 never ends, so the rest of the page is no text and was left out",
    )


def test_the_noncharacters_of_the_marks_cannot_be_smuggled_in() -> None:
    assert shown_words(read_html("<p>a\ufdd07\ufdd1b", "x", "utf-8")) == ["a\ufffd7\ufffdb"]


@pytest.mark.parametrize(
    "tag", ["<div>", "<b>", "<ul><li>", "<table><tr><td>", "<blockquote>", "<p><font color=1>", "<a href=x>"]
)
def test_deep_nesting_keeps_the_text_and_its_order(tag: str) -> None:
    source = "".join(f"{tag} w{number} " for number in range(5 * DEEPEST))
    words = [word for word in shown_words(read_html(source, "x", "utf-8")) if word.startswith("w")]
    assert sorted(words, key=lambda word: int(word[1:])) == [f"w{number}" for number in range(5 * DEEPEST)]


def test_cells_that_reach_far_do_not_multiply() -> None:
    source = "<table>" + "<tr><td rowspan=1000 colspan=1000>a<td>b" * 300
    (table,) = read_html(source, "x", "utf-8").blocks
    assert sum(len(cell) for row in table.rows for cell in row) < 1200
    source = "<table><tr><th>n<th>m" + "<tr><td>k<td rowspan=1000 colspan=1000>a<td>b" * 300
    (table,) = read_html(source, "x", "utf-8").blocks
    assert sum(len(cell) for row in table.rows for cell in row) < 300 * 2 * (MOST_REPEATED + 3)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.sampled_from(
            ["<p>", "</p>", "<b>", "</b>", "<table>", "<tr>", "<td>", "</table>", "<ul>", "<li>", "</ul>", "<div>", "</div>",
             "<pre>", "</pre>", "<a href='q'>", "</a>", "<!--", "-->", "<h1>", "</h1>", "<dl>", "<dt>", "<dd>", "<", "&amp;",
             "&", "<br>", " ", "\n", "<select>", "<svg>", "</svg>", "<title>", "</title>", '"', "'", "=", "aa", "bb", "cc"]
        )
    )
)  # fmt: skip
def test_no_page_is_too_broken(pieces: list[str]) -> None:
    source = "".join(pieces)
    document = read_html(source, "x", "utf-8")
    assert_places_hold(document)
    marked = mark_source(source)
    assert marked.html.count(OPENING) == len(marked.runs)


def test_a_table_in_a_cell_of_a_table_of_data_is_text_of_the_cell() -> None:
    inner = "<table><tr><td>blue<td>red</table>"
    data = f"<table><tr><th>Flag<th>Seen<tr><td>day<td>two {inner} ones<tr><td>night<td>none</table>"
    (table,) = read_html(data, "x.html", "utf-8").blocks
    assert [[cell.chars for cell in row] for row in table.rows] == [
        ["Flag", "Seen"],
        ["day", "two\nblue red\nones"],
        ["night", "none"],
    ]


def test_words_between_the_rows_of_a_table_are_not_run_together() -> None:
    source = "<table><tr><td></td>oil</tr><tr><td></td>wick</tr><tr><td>rope</td></tr></table>"
    document = read_html(source, "stores", "utf-8")
    assert shown_words(document) == ["oil", "wick", "rope"]
