"""Items: labels, hanging text, depth, narrow screens."""

from __future__ import annotations

from documents import Maker

from fit.document.blocks import Kind
from fit.layout.proof import prove_words


def test_bullets_hang_by_two() -> None:
    lines = Maker().item("-", "Trim the wick of the lamp.").item("-", "Fill it.").lines(16)
    assert lines == ["- Trim the wick", "  of the lamp.", "- Fill it."]


def test_numbers_of_one_list_hang_alike() -> None:
    lines = Maker().item("9.", "Trim the wick.").item("10.", "Fill the lamp.").lines(20)
    assert lines == ["9.  Trim the wick.", "10. Fill the lamp."]


def test_keys_hang_by_the_longest_that_is_worth_it() -> None:
    lines = Maker().item("-q", "be quiet").item("-v", "say more").item("--lamp-room", "go up").lines(30)
    assert lines == ["-q           be quiet", "-v           say more", "--lamp-room  go up"]


def test_a_key_that_is_too_long_stands_on_its_own_line() -> None:
    lines = Maker().item("-q", "be quiet").item("--go-up-to-the-lamp-room", "and light it").lines(30)
    assert lines == ["-q  be quiet", "--go-up-to-the-lamp-room", "    and light it"]


def test_nested_items_and_their_paragraphs_stand_under_the_text_they_belong_to() -> None:
    maker = Maker().item("1.", "Before dusk:").item("a)", "trim", 1).item("b)", "fill", 1)
    maker.paragraph("Spilt oil is wiped up.", 2).item("2.", "At dusk: light.")
    assert maker.lines(30) == [
        "1. Before dusk:",
        "   a) trim",
        "   b) fill",
        "",
        "      Spilt oil is wiped up.",
        "",
        "2. At dusk: light.",
    ]


def test_a_list_of_another_sort_hangs_by_its_own_labels() -> None:
    lines = Maker().item("-", "oil").item("10.", "wick").lines(20)
    assert lines == ["- oil", "10. wick"]


def test_indentation_shrinks_on_a_narrow_screen() -> None:
    maker = Maker()
    for level in range(8):
        maker.item("-", "deep", level)
    lines = maker.lines(10)
    assert max(len(line) - len(line.lstrip()) for line in lines) <= 6
    assert max(map(len, lines)) <= 10


def test_on_the_narrowest_screen_the_label_begins_the_text() -> None:
    assert "".join(Maker().item("10.", "oil").lines(1)) == "10.oil"


def test_an_item_without_text_is_its_label() -> None:
    assert Maker().item("*", "").lines(10) == ["*"]


def test_keys_hang_by_what_takes_fewest_lines_with_all_that_is_deeper() -> None:
    maker = Maker().item("--lamp", "trim it").item("--fog", "Horn")
    assert maker.lines(24)[0] == "--lamp  trim it"
    maker.paragraph("The keeper sounds the horn in fog, and rings the bell too. " * 4, level=1)
    assert maker.lines(24)[:6] == ["--lamp", "    trim it", "--fog", "    Horn", "", "    The keeper sounds"]


def test_labels_alone_ask_for_no_room_beside_them() -> None:
    maker = Maker().item("1. The lamp", "").item("1.1. The wick", "", level=1)
    assert maker.lines(40) == ["1. The lamp", "    1.1. The wick"]


def test_no_blank_line_parts_keys_that_share_a_text() -> None:
    maker = Maker().item("-f", "").item("--fog", "").paragraph("sounds the horn", level=1)
    maker.item("-b", "").item("--bell", "rings")
    assert maker.lines(24) == ["-f", "--fog", "        sounds the horn", "", "-b", "--bell  rings"]


def test_notes_follow_each_other() -> None:
    maker = Maker().item("[1]", "the north stair", kind=Kind.NOTE).item("[2]", "the reef", kind=Kind.NOTE)
    assert maker.lines(30) == ["[1] the north stair", "[2] the reef"]


def test_entries_without_labels_stand_below_one_another_and_deeper_ones_deeper() -> None:
    maker = (
        Maker()
        .item("", "Lamps ... 1")
        .item("", "Wicks ... 2", 1)
        .item("", "Oil ... 3", 1)
        .item("", "Clock ... 4")
    )
    assert maker.lines(30) == ["Lamps ... 1", "   Wicks ... 2", "   Oil ... 3", "Clock ... 4"]


def test_a_line_ends_in_an_item_where_the_document_ends_it() -> None:
    maker = Maker().item("*", "trim the lamp\nCut the wick square, and wipe the glass.").item("*", "fill")
    assert maker.lines(24) == [
        "* trim the lamp",
        "  Cut the wick square,",
        "  and wipe the glass.",
        "* fill",
    ]
    assert prove_words(maker.document(), maker.lay_out(24)).holds


def test_what_a_label_is_of_stands_right_below_it() -> None:
    maker = (
        Maker().item("1.", "").kept("wind 40", code=True, level=1).item("2.", "").paragraph("Rest.", level=1)
    )
    assert maker.lines(24) == ["1.", "   wind 40", "", "2.", "   Rest."]
    assert Maker().item("1.", "").paragraph("Rest.").lines(24) == ["1.", "", "Rest."]


def test_a_title_stands_right_below_the_mark_that_has_its_words() -> None:
    lines = Maker().heading("& LAMP OIL").heading("LAMP OIL").heading("THE OIL").heading("OIL").lines(20)
    assert lines == ["& LAMP OIL", "LAMP OIL", "", "THE OIL", "", "OIL"]
