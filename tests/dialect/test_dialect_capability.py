"""What terminals do with the bytes they are sent, by hand: each case can be read aloud.

Sources: the rows of the terminal database named beside the cases; "from memory" where a manual is meant.
"""

from __future__ import annotations

import random
from typing import Any

import pyte
import pytest
from hypothesis import given, settings, strategies as st

from fit.dialect.capability_dialect import CapabilityDialect
from fit.dialect.description import Description, UnknownRule
from fit.dialect.description_file import parse, read_packed
from fit.dialect.encoding import ENCODINGS
from fit.dialect.operation import Operation
from fit.dialect.registry import find_description, find_dialect
from fit.dialect.terminfo_database import entry_names, read_entry
from fit.dialect.traits import traits_of
from fit.errors import DialectError
from fit.screen.pyte_adapter import drive_pyte


def decoder(name: str, encoding: str = "utf-8") -> CapabilityDialect:
    return CapabilityDialect(read_packed(name), encoding)


def decode(name: str, data: bytes, encoding: str = "utf-8") -> list[Operation]:
    dialect = decoder(name, encoding)
    return dialect.feed(data, 0) + dialect.finish()


def events(name: str, data: bytes, encoding: str = "utf-8") -> list[tuple[str, tuple[Any, ...]]]:
    return [(event, arguments) for _, _, event, arguments, _ in decode(name, data, encoding)]


def shown(name: str, data: bytes, rows: int = 4, columns: int = 20) -> list[str]:
    """The rows of a `pyte.Screen` that the dialect drives."""
    screen = pyte.Screen(columns, rows)
    drive_pyte(screen, decode(name, data))
    return [row.rstrip() for row in screen.display]


def test_vt52_addresses_a_cell_with_two_bytes_from_20h() -> None:
    assert decode("vt52", b"\x1bY#%lamp") == [
        (0, 4, "cursor_position", (4, 6), False),
        (4, 8, "draw", ("lamp", 4), False),
    ]


def test_adm3a_draws_at_row_1_column_2() -> None:
    assert shown("adm3a", b'\x1alog\x1b=!"tide\r\nend') == ["log", "  tide", "end", ""]


def test_clear_made_of_home_and_erase_is_carried_out_part_by_part() -> None:
    assert decode("vt52", b"\x1bH\x1bJ") == [
        (0, 2, "cursor_position", (1, 1), False),
        (2, 4, "erase_in_display", (0,), False),
    ]


def test_a_line_feed_scrolls_where_the_cursor_down_of_the_vt52_stops() -> None:
    assert shown("vt52", b"one\r\ntwo\r\nthree\r\nfour\x1bB\x1bB!") == ["one", "two", "three", "four!"]
    assert shown("vt52", b"one\r\ntwo\r\nthree\r\nfour\n\n!")[0] == "three"


def test_the_vt52_scrolls_back_at_the_first_row() -> None:
    assert shown("vt52", b"one\r\ntwo\x1bH\x1bI0") == ["0", "one", "two", ""]


def test_hz1500_columns_below_31_come_from_60h_and_the_others_as_they_are() -> None:
    addresses = [
        arguments
        for event, arguments in events("hz1500", b"~\x11\x60\x60~\x11\x7e\x61~\x11\x1f\x62~\x11\x4f\x77")
    ]
    assert addresses == [(1, 1), (2, 31), (3, 32), (24, 80)]


def test_a_seven_bit_line_drops_the_high_bit_of_a_parameter() -> None:
    # regent100 and others send a column of 0 as NUL; the database writes 80h.
    text = '[sequences]\ncup = "DLE column row"\n'
    dialect = CapabilityDialect(parse(text, "bare", "bare.toml"), "7bit")
    assert dialect.feed(b"\x10\x80\x80\x10\x00\x05\x10\x0a\x0d", 0) == [
        (0, 3, "cursor_position", (1, 1), False),
        (3, 6, "cursor_position", (6, 1), False),
        (6, 9, "cursor_position", (14, 11), False),
    ]


def test_an_address_beyond_the_terminal_is_still_an_address() -> None:
    assert events("vt52", b"\x1bYPz") == [("cursor_position", (49, 91))]


def test_status_text_of_the_h19_stays_off_the_grid() -> None:
    assert events("h19", b"a\x1bj\x1bx5\x1bY8 \x1bo\x1boTIDE 12\x1bk\x1by5b") == [
        ("draw", ("a", 0)),
        ("status_text", ("TIDE 12",)),
        ("draw", ("b", 26)),
    ]


def test_status_text_ends_where_the_program_goes_on_drawing() -> None:
    assert events("wy50", b"\x1bFoil low\x1b=  x") == [
        ("status_text", ("oil low",)),
        ("cursor_position", (1, 1)),
        ("draw", ("x", 13)),
    ]


def test_a_status_end_that_is_a_character_alone_ends_none() -> None:
    # The database has "1" where an escape was lost: it is text, not a code.
    text = '[sequences]\ncup = "ESC Y row+32 column+32"\ntsl = "ESC s"\nfsl = "1"\n'
    dialect = CapabilityDialect(parse(text, "bare", "bare.toml"), "latin-1")
    assert dialect.feed(b"lamp 11", 0) == [(0, 7, "draw", ("lamp 11", 0), False)]


def test_an_attribute_of_the_tvi912_takes_a_cell() -> None:
    assert shown("tvi912", b"\x1a\x1bjFOG\x1bk.") == [" FOG .", "", "", ""]


def test_rmso_that_also_ends_underlining_ends_all_attributes() -> None:
    assert events("viewpoint", b"\x0ex\x0f")[::2] == [
        ("select_graphic_rendition", (7,)),
        ("select_graphic_rendition", (0,)),
    ]


def test_line_drawing_of_the_h19_comes_out_as_lines() -> None:
    assert events("h19", b"\x1bFfaac\x1bGfa") == [("draw", ("┌──┐", 2)), ("draw", ("fa", 8))]


def test_parts_of_an_attribute_are_known_alone() -> None:
    """The terminal database of ncurses 6.4, entry wy50: smso is `ESC ` 6 ESC )`, rmso is `ESC (`."""
    assert events("wy50", b"\x1b)FOG\x1b(.") == [
        ("select_graphic_rendition", (7,)),
        ("draw", ("FOG", 2)),
        ("select_graphic_rendition", (27,)),
        ("draw", (".", 7)),
    ]


def test_half_intensity_takes_no_cell_where_other_attributes_do() -> None:
    """The terminal database of ncurses 6.4, entry tvi912b: dim is `ESC )`, sgr0 is `ESC (`, and xmc is not set."""
    assert shown("tvi912", b"\x1a\x1b)FOG\x1b(.") == ["FOG.", "", "", ""]


def test_the_h19_edits_with_codes_that_the_database_lacks() -> None:
    """From memory: its manual has insert and delete line, save and restore, erase up to the cursor and the line."""
    assert shown("h19", b"one\r\ntwo\x1bH\x1bLnew") == ["new", "one", "two", ""]
    assert shown("h19", b"one\r\ntwo\x1bH\x1bM") == ["two", "", "", ""]
    assert shown("h19", b"oil\x1bj\x1bHO\x1bk!") == ["Oil!", "", "", ""]
    assert shown("h19", b"one\r\ntwo\b\x1bo") == ["one", "", "", ""]
    assert shown("h19", b"one\r\ntwo\r\x1bl") == ["one", "", "", ""]
    assert shown("h19", b"one\r\ntwo\r\x1bb") == ["", " wo", "", ""]
    assert "insert and delete lines" not in traits_of(find_description("h19")).lacks


def test_line_drawing_of_the_wy50_needs_its_switch() -> None:
    assert [
        arguments[0] for event, arguments in events("wy50", b"2:\x1bH\x022:\x1bH\x03") if event == "draw"
    ] == [
        "2:",
        "┌─",
    ]


def test_codes_of_another_terminal_come_out_as_letters() -> None:
    assert events("vt52", b"\x1b[2;5Hlog") == [("debug", (b"\x1b[",)), ("draw", ("2;5Hlog", 2))]


def test_a_terminal_may_print_the_byte_after_an_unknown_escape() -> None:
    description = Description("t", fixed={"el": b"\x1bK"}, unknown=UnknownRule.PRINT)
    operations = CapabilityDialect(description).feed(b"\x1b[K", 0)
    assert operations == [(0, 1, "debug", (b"\x1b",), False), (1, 3, "draw", ("[K", 1), False)]


def test_a_control_character_after_an_unknown_escape_is_carried_out() -> None:
    assert events("vt52", b"\x1b\r\x13") == [
        ("debug", (b"\x1b",)),
        ("carriage_return", ()),
        ("debug", (b"\x13",)),
    ]


def test_fill_characters_leave_no_trace() -> None:
    assert events("adm3a", b"\x1a\0\0\0\x7flog")[2:] == [("draw", ("log", 5))]


def test_a_repetition_gives_the_character_and_its_repeats() -> None:
    text = '[sequences]\ncup = "ESC Y row+32 column+32"\nrep = "ESC r char count+32"\n'
    dialect = CapabilityDialect(parse(text, "t", "t.toml"))
    assert dialect.feed(b"\x1br=%", 0) == [(2, 3, "draw", ("=", 2), False), (0, 4, "repeat", (4,), False)]


def test_utf_8_is_drawn_with_the_offset_of_each_character() -> None:
    assert decode("vt52", "aé€.".encode()) == [(0, 7, "draw", ("aé€.", [0, 1, 3, 6]), False)]


def test_a_character_cut_by_the_end_is_drawn_as_a_replacement() -> None:
    assert events("vt52", b"a\xe2\x82") == [
        ("draw", ("a", [0])),
        ("draw", ("�", [1])),
    ]  # Unicode, section 3.9


@pytest.mark.parametrize(
    "data", [b"\xe2\x82a", b"\xf0\x9f\x98\xff", b"\xed\xa0\x80", b"\xc2\xc2\xa9", b"\xf4\x90"]
)
def test_both_decoders_read_damaged_utf_8_alike(data: bytes) -> None:
    by_description, as_ecma48 = (find_dialect(name) for name in ("vt52", "vt100"))
    wanted = data.decode("utf-8", "replace")  # Python's codec follows the same section
    for dialect in (by_description, as_ecma48):
        operations = dialect.feed(data, 0) + dialect.finish()
        assert "".join(arguments[0] for _, _, _, arguments, _ in operations) == wanted


@pytest.mark.parametrize("data", [b"\x1bY", b"\x1bY!", b"\x1b"])
def test_an_unfinished_sequence_at_the_end_is_reported(data: bytes) -> None:
    assert decode("vt52", b"a" + data)[1:] == [(1, 1 + len(data), "debug", (data,), False)]


def test_a_whole_sequence_that_could_have_become_a_longer_one_is_carried_out_at_the_end() -> None:
    text = '[sequences]\nel = "ESC K"\nel1 = "ESC K 1"\n'
    dialect = CapabilityDialect(parse(text, "t", "t.toml"))
    assert dialect.feed(b"\x1bK", 0) == []
    assert dialect.finish() == [(0, 2, "erase_in_line", (0,), False)]


_PIECES = [
    b"\x1bY", b"!", b"%", b" ", b"\x1b", b"H", b"J", b"K", b"\x1bF", b"a", b"\x1bG", b"\r", b"\n", b"\x1bj\x1bx5", b"~",
    b"\x11", b"\x60", b"\x1b=", b"\xe2", b"\x82", b"\xac", b"\x80", b"\0", b"\x1b[", b"lamp oil", b"\x1bG4", b"\x1bk\x1by5",
    b"\x1bj\x1bx5\x1bY8 \x1bo\x1bo", b"\x1bH\x02", b"\x1b(",
]  # fmt: skip


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.sampled_from(_PIECES) | st.binary(max_size=3), max_size=30).map(b"".join),
    st.lists(st.integers(0, 120), max_size=6),
    st.sampled_from(["vt52", "h19", "hz1500", "wy50", "tvi950", "vt220", "viewpoint"]),
    st.sampled_from(["utf-8", "cp437", "latin-1", "7bit"]),
)
def test_the_whole_and_any_split_of_it_come_to_the_same(
    data: bytes, cuts: list[int], name: str, encoding: str
) -> None:
    whole = decode(name, data, encoding)
    dialect = decoder(name, encoding)
    split: list[Operation] = []
    at = 0
    for cut in sorted({min(cut, len(data)) for cut in cuts} | {len(data)}):
        split += dialect.feed(data[at:cut], at)
        at = cut
    split += dialect.finish()
    assert _joined(split) == _joined(whole)


def _joined(operations: list[Operation]) -> list[tuple[Any, ...]]:
    """Glyph by glyph, since a split may cut a run of text; each sequence with its span."""
    glyphs: list[tuple[Any, ...]] = []
    for start, end, event, arguments, private in operations:
        if event == "draw":
            text, offsets = arguments
            places = range(offsets, offsets + len(text)) if isinstance(offsets, int) else offsets
            glyphs += [("draw", char, place) for char, place in zip(text, places, strict=True)]
        elif event == "debug" and arguments[0] < b" " and len(arguments[0]) == 1:
            glyphs.append((event, start, arguments))
        else:
            glyphs.append((start, end, event, arguments, private))
    return glyphs


@pytest.mark.parametrize(
    "rows",
    [
        # A sequence with parameters that begins an initialisation string (found in wyse75ap).
        'csr = "ESC [ top+1:d ; bottom+1:d r"\nis2 = "ESC [1;24r ESC [?10l"',
        # A row address that begins the cursor address (found in c300).
        'vpa = "ESC X row+32"\ncup = "ESC X row+32 ESC Y column+32"',
        # Line drawing without a switch, in bytes above 7Fh and below (found in mach-gnu).
        "acsc = 'q\xc4~#'",
    ],
)
def test_byte_by_byte_is_the_same_as_the_whole(rows: str) -> None:
    description = parse(f"[sequences]\n{rows}\n", "t", "t.toml")
    data = b"\x1b[1;24r\x1b[?10l#\xc4\x1b[1;24r\x1b[?\x1bX!\x1bY!~\xc4#\x1bX!log"
    whole = CapabilityDialect(description, "latin-1")
    bytewise = CapabilityDialect(description, "latin-1")
    operations = [one for at in range(len(data)) for one in bytewise.feed(data[at : at + 1], at)]
    assert _joined(operations + bytewise.finish()) == _joined(whole.feed(data, 0) + whole.finish())


@pytest.mark.outside
def test_a_cursor_address_that_begins_another_waits_for_what_follows() -> None:
    """Found in viewdata-rv: its address is home and as many line feeds and tabs as it takes."""
    description = read_entry("viewdata-rv")
    if description is None:
        pytest.skip("this terminal database has no viewdata-rv")
    for data in (b"x\x1e\n\nlog", b"\x1e", b"\x1e\n", b"\x1e\t\x1e\n\x1e"):
        whole, split = (CapabilityDialect(description, "latin-1") for _ in range(2))
        operations = [one for at in range(len(data)) for one in split.feed(data[at : at + 1], at)]
        assert _joined(operations + split.finish()) == _joined(whole.feed(data, 0) + whole.finish())


@pytest.mark.slow
@pytest.mark.outside
def test_whole_and_split_are_the_same_under_every_entry_of_the_database() -> None:
    chance = random.Random(1881)
    for name in entry_names():
        description = read_entry(name)
        assert description is not None
        pieces = [form for form in description.fixed.values() if form]
        pieces += [
            one.expand(chance.randrange(24), chance.randrange(80), 3)
            for one in description.expressions.values()
        ]
        pieces += [form[:size] for form in pieces for size in (1, 2)] + [
            b"lamp oil",
            b"\x1b",
            b"\r\n",
            b"\xe2\x82\xac",
            b"~",
        ]
        data = b"".join(chance.choices(pieces, k=30)) + chance.randbytes(20)
        encoding = chance.choice(ENCODINGS)
        try:
            whole, split = (CapabilityDialect(description, encoding) for _ in range(2))
        except DialectError:
            continue
        cut = chance.randrange(len(data))
        operations = split.feed(data[:cut], 0) + split.feed(data[cut:], cut) + split.finish()
        assert _joined(operations) == _joined(whole.feed(data, 0) + whole.finish()), name
