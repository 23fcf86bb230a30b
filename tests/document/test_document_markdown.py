"""Markdown to blocks. The outside: CommonMark's rules as markdown-it-py renders them to HTML."""

from __future__ import annotations

from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest
from gold import read_gold
from markdown_it import MarkdownIt
from plain_blocks import assert_places_hold, plain, plain_gold, rows_of, shown_words

from fit.document.blocks import Kind, Mark, Text
from fit.document.markdown import read_markdown

ROOT = Path(__file__).parents[2]
HANDBOOK = ROOT / "corpus/documents/skerry-handbook.md"


def kinds(source: str) -> list[tuple[str, int, str, str]]:
    blocks = read_markdown(source, "x.md", "utf-8").blocks
    return [(block.kind.value, block.level, block.label.chars, block.text.chars) for block in blocks]


def test_the_handbook_is_read_as_its_gold_says() -> None:
    document = read_markdown(HANDBOOK.read_text("utf-8"), "skerry-handbook.md", "utf-8")
    gold = read_gold(ROOT / "tests/document/marked_up/skerry-handbook.md.gold")
    assert [plain(b) for b in document.blocks if b.kind is not Kind.FURNITURE] == [
        plain_gold(b) for b in gold
    ]
    assert_places_hold(document)


class _Words(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.text: list[str] = []

    def handle_data(self, data: str) -> None:
        self.text.append(data)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in ("p", "li", "td", "th", "br", "h1", "h2", "h3", "h4", "pre", "div"):
            self.text.append(" ")
        if tag == "img":
            self.text.append(dict(attrs).get("alt") or "")


def test_the_words_are_those_of_the_rendered_page() -> None:
    source = HANDBOOK.read_text("utf-8").split("---\n", 2)[2]
    page = _Words()
    page.feed(MarkdownIt("commonmark").enable(["table", "strikethrough"]).render(source))
    # The words that a table without room for them leaves out are kept by us.
    wanted = "".join(page.text).replace("\u00a0", " ").split()
    document = read_markdown(source, "x.md", "utf-8")
    kept = [block for block in document.blocks if block.kind is not Kind.NOTE and plain(block)[4] != ["***"]]
    unlabelled = replace(document, blocks=tuple(replace(block, label=Text()) for block in kept))
    found = shown_words(unlabelled)
    assert [w for w in found if w not in ("|", "and", "wait")] == [
        w for w in wanted if w not in ("|", "and", "wait")
    ]


CASES = [
    ("# One #\n\nTwo\n---", [("heading", 1, "", "One"), ("heading", 2, "", "Two")]),
    ("a\nb\n\nc", [("paragraph", 0, "", "a b"), ("paragraph", 0, "", "c")]),
    ("* a\n\n  b\n* c", [("item", 0, "*", "a"), ("paragraph", 1, "", "b"), ("item", 0, "*", "c")]),
    ("3) a\n4) b", [("item", 0, "3)", "a"), ("item", 0, "4)", "b")]),
    ("- - a", [("item", 0, "-", ""), ("item", 1, "-", "a")]),
    ("> a\n> > b", [("paragraph", 1, "", "a"), ("paragraph", 2, "", "b")]),
    ("- # a\n\n  b", [("item", 0, "-", "a"), ("paragraph", 1, "", "b")]),
    ("- a\n\n  <p>b</p>", [("item", 0, "-", "a"), ("paragraph", 1, "", "b")]),
    ("1984 was\n1985. was", [("paragraph", 0, "", "1984 was 1985. was")]),
    ("&copy; \\* &nope; a\\b", [("paragraph", 0, "", "\u00a9 * &nope; a\\b")]),
    ("a<br>b" + "c" * 70, [("paragraph", 0, "", "a\nb" + "c" * 70)]),
    ("a  \nb" + "c" * 70 + "\\\nd", [("paragraph", 0, "", "a\nb" + "c" * 70 + "\nd")]),
    ("a<br>b" + "c" * 70 + "<br><br>d", [("paragraph", 0, "", "a\nb" + "c" * 70), ("paragraph", 0, "", "d")]),
    ("a" * 70 + "<br>&nbsp; b<br>c", [("paragraph", 0, "", "a" * 70), ("paragraph", 0, "", "b\nc")]),
    ("* trim<br>\nCut the wick.\n<br>\n* fill<br>\nPour.", [("item", 0, "*", "trim\nCut the wick."), ("item", 0, "*", "fill\nPour.")]),
    ("* trim:<br>- cut<br>- burn", [("item", 0, "*", "trim:"), ("item", 1, "-", "cut"), ("item", 1, "-", "burn")]),
    ("* trim:<br>`cut $wick`<br>`burn $wick`", [("item", 0, "*", "trim:"), ("preformatted", 1, "", "")]),
    ("Trim the wick of the lamp.<br>Fill the can.", [("paragraph", 0, "", "Trim the wick of the lamp.\nFill the can.")]),
    ("Burn, and be seen<br>by the ships of the night.", [("preformatted", 0, "", "")]),
    ("oil<p>wick</p>glass", [("paragraph", 0, "", "oil"), ("paragraph", 0, "", "wick"), ("paragraph", 0, "", "glass")]),
    ("![alt](x.png)", [("paragraph", 0, "", "alt")]),
    ("<http://a.b>", [("paragraph", 0, "", "http://a.b")]),
    ("a <img src=x alt='b &amp; c'> <a href='http://d.e'>f</a>", [("paragraph", 0, "", "a b & c f"), ("note", 0, "", "http://d.e")]),
    ("<p><a href='http://d.e'>f</a></p>\n\ng", [("paragraph", 0, "", "f"), ("paragraph", 0, "", "g"), ("note", 0, "", "http://d.e")]),
    # what is set in below a footnote goes on with it
    ("a[^1]\n\n[^1]: b b\n\n    c\n    d\n\n    e\n\nf", [("paragraph", 0, "", "a[^1]"), ("note", 0, "[^1]:", "b b"), ("paragraph", 1, "", "c d"), ("paragraph", 1, "", "e"), ("paragraph", 0, "", "f")]),
    ("a[^1]\n\n[^1]: b c\n[^x]: d e\nf", [("paragraph", 0, "", "a[^1]"), ("note", 0, "[^1]:", "b c"), ("note", 0, "[^x]:", "d e f")]),
    ("2<sup>64</sup> x<sup>2</sup>", [("paragraph", 0, "", "2^64 x2")]),
    ("a:\n\u2022 b\n\u2022 c", [("paragraph", 0, "", "a:"), ("item", 0, "\u2022", "b"), ("item", 0, "\u2022", "c")]),
    ("#<lamp>@<room>, [a=<lamp>]:b(<room>)", [("paragraph", 0, "", "#<lamp>@<room>, [a=<lamp>]:b(<room>)")]),
    ("<lamp-room>\n\n</oil>", [("paragraph", 0, "", "<lamp-room>"), ("paragraph", 0, "", "</oil>")]),
    ("a <Oil full>b</Oil> <wick by='c'>", [("paragraph", 0, "", "a b")]),
    ("- [ ] a\n- [x] b", [("item", 0, "-", "[ ] a"), ("item", 0, "-", "[x] b")]),
    ("[a](http://a.b)", [("paragraph", 0, "", "a"), ("note", 0, "", "http://a.b")]),
]  # fmt: skip


ASIDES = [
    ("!!! note\n    Trim the\n    wick.\n\n    - oil\n\nb", [
        ("paragraph", 0, "", "!!! note"), ("paragraph", 1, "", "Trim the wick."), ("item", 1, "-", "oil"), ("paragraph", 0, "", "b")]),
    ('a\n\n??? tip "Oil"\n\n    ```\n    !!! fill\n        oil\n    ```\n', [
        ("paragraph", 0, "", "a"), ("paragraph", 0, "", '??? tip "Oil"'), ("preformatted", 1, "", ["!!! fill", "    oil"])]),
    ('- a\n\n    !!! note\n        b\n\n        === "Lamp"\n            c  \n            d\n', [
        ("item", 0, "-", "a"), ("paragraph", 1, "", "!!! note"), ("paragraph", 2, "", "b"), ("paragraph", 2, "", '=== "Lamp"'),
        ("preformatted", 3, "", ["c", "d"])]),
    ("a\n\n    !!! note\n        b", [("paragraph", 0, "", "a"), ("preformatted", 0, "", ["!!! note", "    b"])]),
    ("```\n!!! note\n    b\n```", [("preformatted", 0, "", ["!!! note", "    b"])]),
    ("!!! note\nb", [("paragraph", 0, "", "!!! note b")]),
    ("Stop!!! note\n\n    b", [("paragraph", 0, "", "Stop!!! note"), ("preformatted", 0, "", ["b"])]),
]  # fmt: skip


@pytest.mark.parametrize(("source", "expected"), ASIDES)
def test_asides_are_quotations(source: str, expected: list[tuple[str, int, str, str | list[str]]]) -> None:
    document = read_markdown(source, "x.md", "utf-8")
    assert [
        (
            block.kind.value,
            block.level,
            block.label.chars,
            [line.chars for line in block.lines] or block.text.chars,
        )
        for block in document.blocks
    ] == expected
    assert_places_hold(document)


@pytest.mark.parametrize(("source", "blocks"), CASES)
def test_cases(source: str, blocks: list[tuple[str, int, str, str]]) -> None:
    assert kinds(source) == blocks


def test_marks_say_how_words_are_set_off() -> None:
    text = read_markdown("a **b** *c* `d`", "x.md", "utf-8").blocks[0].text
    assert text.chars == "a b c d"
    assert [text.marks[i] for i in (0, 2, 4, 6)] == [Mark.NONE, Mark.BOLD, Mark.UNDERLINE, Mark.CODE]


def test_an_entity_points_at_its_ampersand_and_an_escape_behind_its_backslash() -> None:
    text = read_markdown("x &amp; \\*y", "x.md", "utf-8").blocks[0].text
    assert list(text.sources) == [0, 1, 2, 7, 9, 10]


def test_words_beyond_the_last_column_of_a_table_are_kept() -> None:
    document = read_markdown("| a | b |\n|---|---|\n| 1 | 2 | 3 | 4 |\n", "x.md", "utf-8")
    assert [cell.chars for cell in document.blocks[0].rows[1]] == ["1", "2 | 3 | 4"]
    assert document.remarks[0].startswith("a table row holds more cells")


CELLS = [
    ("oil<br>wick<br/>glass", "oil\nwick\nglass"),
    ("<ul><li>oil</li><li>*wick*</li></ul>", "- oil\n- wick"),
    ("To do: <ol><li>oil</li><li>wick</li></ol> daily", "To do:\n1. oil\n2. wick\ndaily"),
    ("<p>Trim it.</p><p>Wind it.</p>", "Trim it.\nWind it."),
    ("the <b>wi</b>ck", "the wick"),
]


@pytest.mark.parametrize(("written", "cell"), CELLS)
def test_lines_of_a_cell(written: str, cell: str) -> None:
    document = read_markdown(f"| a | b |\n|---|---|\n| 1 | {written} |\n", "x.md", "utf-8")
    assert document.blocks[0].rows[1][1].chars == cell


@pytest.mark.parametrize("source", [">" * 3000 + " deep", "- " * 3000 + "deep", "1. " * 3000 + "deep"])
def test_text_nested_too_deep_is_kept(source: str) -> None:
    document = read_markdown(source, "x.md", "utf-8")
    assert document.blocks[-1].text.chars == "deep"
    assert "moved out" in document.remarks[0]


def test_line_ends_of_other_systems_are_line_ends() -> None:
    assert kinds("# a\r\n\r\nb\rc") == [("heading", 1, "", "a"), ("paragraph", 0, "", "b c")]


PARTED_ROWS = """\
<table>

<tr><td>oil</td><td>four cans</td></tr>

<tr><td>wick</td><td>two</td></tr>

</table>
"""
PARTED_CELLS = """\
<table>
<tr><th>What</th><th>How much</th></tr>

<tr><td>oil</td><td>four cans</td></tr>
<tr><td>wick</td>
<td>

*two* of them

</td></tr>
<tr><td>rope</td><td>forty fathoms</td></tr>

</table>
"""


def test_a_table_of_html_goes_on_over_blank_lines() -> None:
    """CommonMark 0.31, 4.6: a piece of HTML that a block element begins ends at a blank line."""
    (block,) = read_markdown(PARTED_ROWS, "stores", "utf-8").blocks
    assert rows_of([block]) == ["oil | four cans", "wick | two"]


def test_cells_of_a_table_that_markdown_parts_are_not_run_together() -> None:
    words = shown_words(read_markdown(PARTED_CELLS, "stores", "utf-8"))
    for word in ("oil", "cans", "wick", "two", "rope", "fathoms"):
        assert word in words


QUOTED_HTML = """\
> <p>Words of
> the keeper</p>
>
> <table><tr><td>oil</td><td>four</td></tr>
>
> <tr><td>wick</td><td>two</td></tr></table>

- <div>In an
  item</div>
7. <table><tr><td>rope</td><td>one</td></tr><tr><td>bell</td><td>two</td></tr></table>
"""


def test_marks_around_html_are_no_words_of_it() -> None:
    """The lines of a piece of HTML in quotations and items begin behind the marks of these."""
    blocks = read_markdown(QUOTED_HTML, "stores", "utf-8").blocks
    assert [(block.kind, block.label.chars, block.text.chars) for block in blocks] == [
        (Kind.PARAGRAPH, "", "Words of the keeper"),
        (Kind.TABLE, "", ""),
        (Kind.ITEM, "-", "In an item"),
        (Kind.ITEM, "7.", ""),
        (Kind.TABLE, "", ""),
    ]
    assert rows_of(list(blocks)) == ["oil | four", "wick | two", "rope | one", "bell | two"]


def test_a_table_in_the_line_of_a_number_has_the_cells_it_shows() -> None:
    for source in (
        "1. | Oil | Cans |\n   |---|---|\n   | colza | 4 |",
        "- > | Oil | Cans |\n  > |---|---|\n  > | colza | 4 |",
    ):
        document = read_markdown(source, "stores", "utf-8")
        assert rows_of(list(document.blocks)) == ["Oil = Cans", "colza | 4"]
        assert document.remarks == ()
