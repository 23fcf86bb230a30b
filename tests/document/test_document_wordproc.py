"""Files of old word processors: returns, bit 7, soft hyphens, print codes, dot commands, padding."""

from __future__ import annotations

from pathlib import Path

import pytest
from gold import read_gold
from prose import manual
from scorer import score_blocks
from survival import lost_and_doubled
from typist import RECORD, type_blocks

from fit.document.blocks import Kind, Mark
from fit.document.wordproc import read_wordproc

CORPUS = Path(__file__).parents[2] / "corpus" / "documents"
PADDING = b"\x1a" * 40


def read(data: bytes) -> list[str]:
    return [
        block.text.chars
        for block in read_wordproc(data, "LAMP.DOC").blocks
        if block.kind is not Kind.FURNITURE
    ]


def test_soft_and_hard_returns() -> None:
    data = b"The lam\xf0 is lit a\xf4\x8d\nsunset.\r\n\r\nThe boa\xf4 comes later.\r\n" + PADDING
    assert read(data) == ["The lamp is lit at sunset.", "The boat comes later."]


def test_a_paragraph_goes_on_however_short_its_line() -> None:
    assert read(b"Short\x8d\nline.\r\n") == ["Short line."]


def test_text_beside_a_key_goes_on_under_itself_below_a_hard_return() -> None:
    data = (
        b"The lam\xf0 is lit a\xf4 dusk by one o\xe6 the two\x8d\nkeepers.\r\n\r\n"
        b"  Hythe    the landing-place; also the boat house next to\r\n           it, and any delay\r\n"
        b"  Quant    a pole\r\n"
        b"  Thwart   the bench that goes across; to sit on it\r\n           is to be in the way\r\n"
    )
    assert read(data)[1:] == [
        "the landing-place; also the boat house next to it, and any delay",
        "a pole",
        "the bench that goes across; to sit on it is to be in the way",
    ]


def test_soft_hyphens() -> None:
    data = b"No key on the key\x1f\x8d\nboard, none on the tele\x1egraph, and a read-\x8d\nonly log.\r\n"
    assert read(data) == ["No key on the keyboard, none on the telegraph, and a read-only log."]


def test_print_codes_become_marks() -> None:
    block = read_wordproc(b"A \x02bold\x02 and an \x13under\x13 word, all\x8d\nright.\r\n", "a").blocks[0]
    marked = {block.text.chars[i]: block.text.marks[i] for i in range(len(block.text))}
    assert block.text.chars == "A bold and an under word, all right."
    assert block.text.marks[2] == Mark.BOLD
    assert block.text.marks[14] == Mark.UNDERLINE
    assert marked["w"] == Mark.NONE


def test_a_raised_number_behind_a_number_is_its_power_and_no_digit_of_it() -> None:
    data = b"The reef is 10\x143\x14 ells long and 2\x14nd\x14 to none, as\x8d\nthe log\x141\x14 says.\r\n"
    assert read(data) == ["The reef is 10^3 ells long and 2nd to none, as the log1 says."]


def test_filling_spaces_of_justified_lines_vanish() -> None:
    assert read(b"The\xa0 lamp \xa0is  lit\xa0at\x8d\nsunset.\r\n") == ["The lamp is lit at sunset."]


def test_a_holding_space_holds() -> None:
    block = read_wordproc(b"Wait 20\x0fmiles off the rock, and no\x8d\nnearer.\r\n", "a").blocks[0]
    place = block.text.chars.index("20 miles") + 2
    assert block.text.marks[place - 1] & Mark.NO_BREAK
    assert block.text.marks[place] & Mark.NO_BREAK


def test_cells_that_tabs_part_become_columns() -> None:
    data = (
        b"Thing\tHow much\tWhere\r\nRope\t20 fathoms\tloft\r\nLamp blac\xeb\t1 tin\tshelf\r\nTar\t2\tshed\r\n"
    )
    (block,) = read_wordproc(data, "a").blocks
    assert [[cell.chars for cell in row] for row in block.rows] == [
        ["Thing", "How much", "Where"],
        ["Rope", "20 fathoms", "loft"],
        ["Lamp black", "1 tin", "shelf"],
        ["Tar", "2", "shed"],
    ]


def test_dot_commands_are_no_text() -> None:
    document = read_wordproc(b".OP\r\n.HE The Light\r\nThe lamp is lit.\r\n.PA\r\nAnd out.\r\n", "a")
    assert [b.lines[0].chars for b in document.blocks if b.kind is Kind.FURNITURE] == [
        ".OP",
        ".HE The Light",
        ".PA",
    ]
    assert "3 lines are commands to the printer and no text." in document.remarks


def test_characters_of_the_eight_bit_set() -> None:
    assert read(b"It is 3\x1b\xf8\x1c cold in the caf\x1b\x82\x1c of the\x8d\nharbour.\r\n") == [
        "It is 3° cold in the café of the harbour."
    ]


def test_text_typed_with_hard_returns_still_flows() -> None:
    line = b"The keeper writes down the hour and the wind and the state of the\r\n"
    assert len(read(line * 8 + b"sea.\r\n")) == 1


@pytest.mark.parametrize("path", sorted(CORPUS.glob("*.doc")), ids=lambda path: path.stem)
def test_corpus(path: Path) -> None:
    data = path.read_bytes()
    assert len(data) % RECORD == 0
    score = score_blocks(read_wordproc(data, path.name).blocks, read_gold(path.with_suffix(".gold")))
    assert score.items > 40
    assert score.examples == []


def test_typed_manuals() -> None:
    faults = items = 0
    for seed in range(12):
        gold = manual(seed)
        document = read_wordproc(type_blocks(gold, 60 + seed, seed), "LAMP.DOC")
        score = score_blocks(document.blocks, gold)
        faults += score.total
        items += score.items
        assert lost_and_doubled(document) == ([], [])
    assert items > 500
    assert faults <= 0.02 * items


def test_keys_between_blank_lines() -> None:
    keys = b"SPACE  the next page\r\n\r\nB  the page before; at the first page the\x8d\n   bell is rung\r\n\r\nESC  leave, and go back\r\n\r\n"
    blocks = read_wordproc(
        b"Keys that the machine knows:\r\n\r\n" + keys + b"So it was in 1984.  It is so still.\r\n", "A.DOC"
    ).blocks
    assert [(block.label.chars, block.text.chars) for block in blocks[1:]] == [
        ("SPACE", "the next page"),
        ("B", "the page before; at the first page the bell is rung"),
        ("ESC", "leave, and go back"),
        ("", "So it was in 1984. It is so still."),
    ]


def test_a_field_that_the_writer_wrapped_goes_on() -> None:
    """Typed under its own text, in the middle of a sentence; a capital there is another line of the field."""
    soft = b"The keepers are to read what follows, an\xe4\x8d\nto sign it.\r\n\r\n"
    data = b"TO:       All keepers\r\nSUBJECT:  Use of the lamp in the watch room and\r\n          in the store\r\n\r\n"
    assert read(soft + data + soft)[1:3] == [
        "All keepers",
        "Use of the lamp in the watch room and in the store",
    ]
    other = data.replace(b"room and", b"room").replace(b"in the store", b"The store")
    assert "Use of the lamp in the watch room" in read(soft + other + soft)
