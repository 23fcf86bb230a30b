"""Words in alphabetical order in columns too wide for the screen: fewer columns, read as they were."""

from __future__ import annotations

from documents import Maker

from fit.layout.proof import prove_words

DOWN = (
    ("ALARM_OFF", "FOGHORN_OFF", "LAMPS_ALL"),
    ("ALARM_ON", "FOGHORN_ON", "LAMPS_NONE"),
    ("BELL", "GALLERY", "OIL"),
    ("BOAT", "GLASS", ""),
)
ACROSS = (("bell", "Boat", "clock"), ("glass", "horn", "lamp"), ("lens", "oil", "wick"))


def test_words_in_order_down_their_columns_stand_in_panels_of_columns() -> None:
    maker = Maker().table(*DOWN)
    assert maker.lines(24) == [
        "ALARM_OFF  FOGHORN_OFF",
        "ALARM_ON   FOGHORN_ON",
        "BELL       GALLERY",
        "BOAT       GLASS",
        "",
        "LAMPS_ALL",
        "LAMPS_NONE",
        "OIL",
    ]
    assert "words in order" in maker.lay_out(24).decisions[0].what
    assert prove_words(maker.document(), maker.lay_out(24)).holds


def test_words_in_order_across_go_on_in_the_next_line() -> None:
    assert Maker().table(*ACROSS).lines(12) == [
        "bell   Boat",
        "clock  glass",
        "horn   lamp",
        "lens   oil",
        "wick",
    ]


def test_at_one_cell_no_word_has_room_and_the_rows_are_records() -> None:
    maker = Maker().table(*ACROSS)
    assert prove_words(maker.document(), maker.lay_out(1)).holds
    assert prove_words(maker.document(), maker.lay_out(5)).holds


def test_words_in_no_order_are_rows() -> None:
    rows = (("lamp", "bell", "horn"), ("oil", "boat", "north"), ("wick", "gallery", "clock"))
    assert Maker().table(*rows).lines(10)[:4] == ["lamp", " bell", " horn", ""]


def test_under_a_header_words_in_order_are_rows() -> None:
    lines = Maker().table(*ACROSS, header_rows=1).lines(12)
    assert lines[0].startswith("bell:")
