"""Lines that stay lines: program texts, verse, addresses."""

from __future__ import annotations

import pytest
from documents import Maker

from fit.document.blocks import Block, Kind
from fit.layout.lines import LineFlag
from fit.layout.proof import prove_words
from fit.layout.texts import join

LONG = '10 FOR I=1 TO 10: PRINT "THE LAMP IS LIT": NEXT I'


def test_lines_that_fit_stay_as_they_were() -> None:
    lines = ("The sea, the sea,", "    the open sea,", "", "  that no man owns")
    assert Maker().kept(*lines).lines(40) == list(lines)


def test_the_margin_shrinks_only_as_far_as_it_must() -> None:
    assert Maker().kept("        trim the wick", "          fill").lines(16) == [
        "   trim the wick",
        "     fill",
    ]


def test_a_long_line_of_verse_hangs() -> None:
    lines = Maker().kept("  the open sea that no man owns", "  and no man sails").lines(20)
    assert lines == ["  the open sea that", "    no man owns", "  and no man sails"]


def test_the_number_of_a_formula_moves_nearer_where_the_line_would_not_fit() -> None:
    lines = Maker().kept("        2 A", "r  =  -------                  (4)", "      1 - k", "").lines(24)
    assert lines[:3] == ["        2 A", "r  =  -------        (4)", "      1 - k"]


def test_a_long_line_of_a_program_goes_on_behind_a_mark() -> None:
    maker = Maker().kept(LONG, "20 END", code=True)
    assert maker.lines(24) == ["10 FOR I=1 TO 10: \\", '  PRINT "THE LAMP IS \\', '  LIT": NEXT I', "20 END"]
    assert "lines longer than the screen" in maker.lay_out(24).decisions[0].what


def test_without_marks_and_indentation_the_program_is_as_it_was() -> None:
    for width in (4, 5, 8, 12, 17, 30):
        again = ""
        for line in Maker().kept(LONG, code=True).lay_out(width).lines:
            text = line.text
            if not line.flags & LineFlag.FIRST:
                text = text[next(i for i, source in enumerate(line.sources) if source >= 0) :]
            again += text[:-1] if line.flags & LineFlag.MARKED else text
        assert again == LONG


@pytest.mark.parametrize("code", [True, False])
def test_lines_that_stay_are_never_hyphenated(code: bool) -> None:
    lines = Maker().kept("LIGHTHOUSE obviously lighthouse", code=code).lines(14)
    assert not any(line.endswith("-") for line in lines)


def test_a_word_of_a_program_is_cut_only_where_it_is_longer_than_a_line() -> None:
    orders = "tee stores/lamps/oil.txt", "tee stores/lamps/of/brass/oil.txt"
    lines = Maker().kept(*orders, code=True).lines(23)
    assert lines == ["tee \\", "  stores/lamps/oil.txt", "tee stores/lamps/of/br\\", "  ass/oil.txt"]


def test_a_word_behind_blanks_that_fill_a_line_stays_whole() -> None:
    maker = Maker().kept("-l LAMP", " " * 14 + "lights the lamp", code=True)
    assert maker.lines(20) == ["-l LAMP", " " * 5 + "lights the lamp"]
    maker = Maker().kept("-l LAMP", " " * 14 + "lights the lamp at dusk", code=True)
    assert maker.lines(20) == ["-l LAMP", " " * 6 + "lights the \\", " " * 6 + "lamp at dusk"]
    maker = Maker().kept("-l LAMP", " " * 8 + "lightshouselamps", code=True)  # there is half a line for it
    assert maker.lines(20)[1] == " " * 8 + "lightshouse\\"


def test_a_blank_of_a_program_that_the_reader_put_in_stays() -> None:
    maker = Maker()
    line = join(maker.text("tee stores/lamps/oil,\\"), maker.text("wick.txt"))
    maker.blocks.append(Block(Kind.PREFORMATTED, lines=(line,), code=True))
    for width in range(4, 36):
        assert prove_words(maker.document(), maker.lay_out(width)).holds


def test_wide_characters_of_a_program_are_not_cut() -> None:
    lines = Maker().kept("PRINT 灯台守灯台守灯台守", code=True).lines(12)
    assert [line.rstrip("\\").strip() for line in lines] == ["PRINT", "灯台守灯", "台守灯台守"]


def test_a_program_on_a_screen_of_one_column() -> None:
    assert "".join(Maker().kept("GO UP", code=True).lines(1)) == "GOUP"


def test_tabs_are_spread() -> None:
    assert Maker().kept("A\tB", "ABC\tD").lines(40) == ["A       B", "ABC     D"]


def test_stanzas_of_one_verse_have_one_margin() -> None:
    first = ("      If that to watch you do come here", "        You must trim well the wick and oil;")
    second = ("      And if a lamp you overthrow", "        Sixpence you pay before you go.")
    assert Maker().kept(*first).kept(*second).lines(38) == [
        "If that to watch you do come here",
        "  You must trim well the wick and oil;",
        "",
        "And if a lamp you overthrow",
        "  Sixpence you pay before you go.",
    ]


def test_lines_with_text_between_are_moved_each_by_itself() -> None:
    wide, narrow = "      If that to watch you do come here", "      And if a lamp"
    maker = Maker().kept(wide, wide).paragraph("It goes on:").kept(narrow, narrow)
    assert maker.lines(36) == [wide[3:], wide[3:], "", "It goes on:", "", narrow, narrow]
