"""The proof finds what it should find: each test damages a layout by hand."""

from __future__ import annotations

from array import array
from dataclasses import replace

import pytest
from documents import Maker

from fit.document.blocks import Block, Document, Kind, LeftOut, Text
from fit.document.text import read_text
from fit.layout.compose import lay_out
from fit.layout.lines import Layout, Line, LineFlag
from fit.layout.proof import Proof, prove_words
from fit.layout.settings import LayoutSettings


def whole() -> Maker:
    return (
        Maker()
        .heading("The lighthouse of Skerry")
        .paragraph("The lighthouse keeper obviously trims http://skerry.example/wick/lamp_and_oil.txt daily.")
        .item("-", "A well-kept lamp is 3 mm high.")
        .table(("Day", "High water"), ("Monday", "6.12"), ("Tuesday", "17.05"), header_rows=1)
        .table(
            ("Name", "Master and crew", "Cargo then"), ("Petrel", "Old Anselm, boys", "oil"), header_rows=1
        )
        .kept('10 PRINT "THE LAMP IS LIT"', "20 END", code=True)
        .picture("a----------b------------------c", "d          e                  f")
    )


def proof_of(maker: Maker, change: dict[int, Line | None] | None = None, width: int = 20) -> Proof:
    document = maker.document()
    layout = lay_out(document, LayoutSettings(width=width, page_rows=7))
    lines = [(change or {}).get(index, line) for index, line in enumerate(layout.lines)]
    return prove_words(document, replace(layout, lines=tuple(line for line in lines if line is not None)))


def layout_of(maker: Maker, width: int = 20) -> Layout:
    return lay_out(maker.document(), LayoutSettings(width=width, page_rows=7))


@pytest.mark.parametrize("width", [1, 2, 3, 4, 5, 7, 10, 16, 20, 33, 40, 80])
def test_a_layout_as_it_is_proves(width: int) -> None:
    proof = proof_of(whole(), width=width)
    assert proof == Proof(words=proof.words)
    assert proof.holds
    assert proof.words > 40


def test_options_add_no_words_of_the_document() -> None:
    document = whole().document()
    settings = LayoutSettings(20, 7, contents=True, page_numbers=True, panel_labels=True, overlap=3)
    assert prove_words(document, lay_out(document, settings)).holds


def test_furniture_is_no_word_of_the_document() -> None:
    maker = Maker().paragraph("one two")
    maker.blocks.append(Block(Kind.FURNITURE, lines=(maker.text("page 1"),)))
    proof = proof_of(maker)
    assert proof.holds
    assert proof.words == 2


def line_with(layout: Layout, part: str) -> int:
    return next(index for index, line in enumerate(layout.lines) if part in line.text)


@pytest.mark.parametrize(
    "part", ["Skerry", "keeper", "wick", "mm high", "Tuesday", "Cargo then", "Anselm", "20 END", "d  "]
)
def test_a_lost_line_is_found(part: str) -> None:
    index = line_with(layout_of(whole()), part)
    proof = proof_of(whole(), {index: None})
    assert proof.lost


def test_a_word_that_the_reader_lost_is_found() -> None:
    document = replace(Maker().paragraph("one").document(), left_out=LeftOut(("two",)))
    proof = prove_words(document, lay_out(document, LayoutSettings(width=20, page_rows=7)))
    assert proof.lost == ["two"]


@pytest.mark.parametrize("part", ["The lighthouse", "A well-kept", "20 END"])
def test_a_changed_word_is_found(part: str) -> None:
    layout = layout_of(whole())
    index = line_with(layout, part)
    line = layout.lines[index]
    changed = line._replace(text=line.text.swapcase())
    proof = proof_of(whole(), {index: changed})
    assert proof.lost
    assert proof.added


def test_lines_out_of_order_are_found() -> None:
    maker = Maker().paragraph("one two three four five")
    layout = layout_of(maker, 9)
    first, second = layout.lines[0], layout.lines[1]
    assert proof_of(maker, {0: second, 1: first}, 9).out_of_order


def test_blocks_out_of_order_are_found() -> None:
    maker = Maker().paragraph("one").paragraph("two")
    layout = layout_of(maker)
    assert proof_of(maker, {0: layout.lines[2], 2: layout.lines[0]}).out_of_order


def test_a_hyphen_that_was_not_taken_out_is_found() -> None:
    maker = Maker().paragraph("keep the lighthouse lit")
    layout = layout_of(maker, 15)
    line = layout.lines[0]
    assert line.flags & LineFlag.HYPHEN
    forgotten = line._replace(flags=line.flags & ~LineFlag.HYPHEN)
    assert proof_of(maker, {0: forgotten}, 15).lost == ["lighthouse"]


def test_cells_out_of_order_are_found() -> None:
    maker = Maker().table(("Sign", "What it says"), ("red", "keep off the stairs and rocks"))
    layout = layout_of(maker)
    first, second = layout.lines[1], layout.lines[2]
    assert proof_of(maker, {1: second, 2: first}).out_of_order


@pytest.mark.parametrize("width", [40, 64])
def test_underscores_that_fill_the_cells_of_a_drawn_table_are_no_words(width: int) -> None:
    text = (
        " _______________________________________\n"
        "|Kind|Winter_____|Summer_early|Summer___|\n"
        "|0,0_|4_pints____|3_pints_____|3_pints__|\n"
        "|0,1_|5_pints____|3_(4)_pints_|2_pints__|\n"
    )
    document = read_text("What the lamp burns:\n\n" + text, "oil", "ascii")
    assert any(block.kind is Kind.TABLE for block in document.blocks)
    layout = lay_out(document, LayoutSettings(width=width, page_rows=7))
    assert ("4_pints" in "".join(line.text for line in layout.lines)) == (width == 64)
    assert prove_words(document, layout).holds


@pytest.mark.parametrize(
    ("between", "added"),
    [("</td><td>", ["oilfour"]), ("</li>\n<li>", ["oilfour"]), ("<!-- cans --><b>", []), ("<wbr>", [])],
)
def test_words_that_a_reader_ran_together_over_a_tag_are_found(between: str, added: list[str]) -> None:
    source = f"oil{between}four"
    places = array("q", [*range(3), *range(len(source) - 4, len(source))])
    block = Block(Kind.PARAGRAPH, Text("oilfour", places, bytes(7)))
    document = Document(source, (block,), "html", "ascii")
    proof = prove_words(document, lay_out(document, LayoutSettings(width=20, page_rows=7)))
    assert proof.added == added
