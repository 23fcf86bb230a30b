"""Descriptions in TOML: ours against the terminal database, a user's own, and broken ones."""

from __future__ import annotations

from pathlib import Path

import pytest

from fit.dialect.description import Description
from fit.dialect.description_file import packed_names, parse, read_packed
from fit.dialect.registry import dialect_of, find_description, find_dialect
from fit.dialect.terminfo_database import read_entry
from fit.errors import DialectError

TIDE_STATION = """\
about = "console of the tide station on Skerry"
unknown = "print"

[sources]
handbook = "keeper's handbook, page 12"

[flags]
am = "handbook"

[numbers]
cols = [64, "handbook"]
lines = [16, "handbook"]

[sequences]
cup = ["ESC P column+64 row+64", "handbook"]
clear = "FF"
el = "ESC K"
smso = ["ESC i", "handbook"]
rmso = ["ESC n", "handbook"]
"""
_LEFT_OUT = frozenset({"is2", "rs1", "rs2", "ip", "flash", "sgr"})
"""Initialisation, delays and what is made of other sequences."""
_DEPARTURES = {
    # The database writes two signs where the terminal takes one (both are decoded).
    ("tvi950", "rmacs"): b"\x1b%%",
}


def test_a_machine_that_no_list_has_takes_twenty_lines(tmp_path: Path) -> None:
    assert TIDE_STATION.count("\n") <= 20
    path = tmp_path / "tide.toml"
    path.write_text(TIDE_STATION, "utf-8")
    assert find_dialect(str(path)).feed(b"\x0c\x1bPEBebb\x1bx", 0) == [
        (0, 1, "cursor_position", (1, 1), False),
        (0, 1, "erase_in_display", (2,), False),
        (1, 5, "cursor_position", (3, 6), False),
        (5, 8, "draw", ("ebb", 5), False),
        (8, 9, "debug", (b"\x1b",), False),
        (9, 10, "draw", ("x", 9), False),
    ]


def test_a_code_that_no_name_is_for_does_what_another_does() -> None:
    text = TIDE_STATION + '[more]\n"ESC )" = ["dim", "handbook"]\n"ESC t" = "el"\n'
    description = parse(text, "tide", "tide.toml")
    assert description.more == {b"\x1b)": "dim", b"\x1bt": "el"}
    assert description.sources["ESC )"] == "keeper's handbook, page 12"
    assert dialect_of(description).feed(b"\x1b)ebb\x1bt", 0) == [
        (0, 2, "select_graphic_rendition", (2,), False),
        (2, 5, "draw", ("ebb", 2), False),
        (5, 7, "erase_in_line", (0,), False),
    ]


@pytest.mark.outside
def test_what_ours_knows_beyond_the_database_is_known_of_its_entry() -> None:
    if read_entry("tvi950") is None:
        pytest.skip("this system's terminal database lacks it")
    assert find_description("tvi950").more == read_packed("tvi950").more


def test_every_row_of_ours_names_its_source() -> None:
    assert len(packed_names()) >= 14
    for name in packed_names():
        description = read_packed(name)
        rows = {*description.flags, *description.numbers, *description.fixed, *description.expressions}
        assert rows == {row for row in description.sources if " " not in row}, name
        assert len(description.sources) == len(rows) + len(description.more), name
        assert all(len(source) > 10 for source in description.sources.values()), name


@pytest.mark.outside
@pytest.mark.parametrize("name", [name for name in packed_names() if name != "vt52-small"])
def test_ours_say_what_the_database_says(name: str) -> None:
    entry = read_entry(name)
    if entry is None:
        pytest.skip("this system's terminal database lacks it")
    ours = read_packed(name)
    assert ours.flags == entry.flags
    assert {key: entry.numbers.get(key) for key in ours.numbers} == dict(ours.numbers)
    theirs = {
        key: form for key, form in entry.fixed.items() if form and (key in ours.fixed or key not in _LEFT_OUT)
    }
    assert theirs == {**ours.fixed, **{key: form for (of, key), form in _DEPARTURES.items() if of == name}}
    assert set(entry.expressions) - _LEFT_OUT == set(ours.expressions)
    for key in ours.expressions:
        assert _expanded(ours, key) == _expanded(entry, key), key


def _expanded(description: Description, key: str) -> list[bytes]:
    """Over the whole grid, as a line of seven bits carries it."""
    expression = description.expressions[key]
    places = (
        [(row, column) for row in range(24) for column in range(80)]
        if key == "cup"
        else [(1, 2), (9, 23), (12, 20)]
    )
    return [bytes(byte & 0x7F for byte in expression.expand(*place)) for place in places]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "about = \n",
            't.toml, line 1, column 9: is no TOML: Invalid value; write rows such as el = "ESC K"',
        ),
        (
            "[sequences\n",
            "t.toml, line 1, column 11: is no TOML: Expected ']' at the end of a table declaration; write rows such as el = \"ESC K\"",
        ),
        (
            "\ncolour = 3\n",
            "t.toml, line 2: has an unknown field 'colour'; known are about, aliases, unknown, sources, flags, numbers, sequences, more",
        ),
        (
            '[sequences]\nel = "ESC K"\ncpu = "ESC Y"\n',
            "t.toml, line 3: has an unknown name 'cpu' under [sequences]; the names are those of terminfo(5), such as cup",
        ),
        (
            "[sequences]\nel = 4\n",
            't.toml, line 2: has el = 4; it must be text such as "ESC K", or that and its source in a list',
        ),
        (
            '[sequences]\ncup = "ESC Y row+32 colum+32"\n',
            "t.toml, line 2: has cup with 'colum+32', where row, column or a control character such as ESC was expected; see fit terminals --notation",
        ),
        (
            '[sequences]\ncup = "ESC Y"\n',
            "t.toml, line 2: has cup without a parameter; it takes row and column",
        ),
        (
            '[sequences]\ncup = "ESC Y row+32"\n',
            "t.toml, line 2: has cup without column; it takes row and column",
        ),
        (
            '[sequences]\nel = ""\n',
            "t.toml, line 2: has el with an empty sequence; leave the row out where the terminal has none; see fit terminals --notation",
        ),
        (
            "[numbers]\ncols = -1\n",
            "t.toml, line 2: has cols = -1; it must be from 0 to 32767",
        ),
        (
            "[numbers]\ncols = true\n",
            "t.toml, line 2: has cols = True; it must be a whole number such as 80, or that and its source in a list",
        ),
        (
            "[flags]\nam = 1\n",
            "t.toml, line 2: has am = 1; a flag must be true, or the name of its source",
        ),
        (
            '[more]\n"ESC )" = "half"\n',
            "t.toml, line 2: has ESC ) = 'half'; it must be the name of a sequence without parameters, such as el or dim",
        ),
        (
            '[more]\n"ESC row" = "el"\n',
            "t.toml, line 2: has ESC row with 'row', where count or a control character such as ESC was expected; see fit terminals --notation",
        ),
        (
            "flags = 1\n",
            "t.toml, line 1: has flags = 1; flags must be a table that begins with [flags]",
        ),
        (
            'unknown = "eat"\n',
            "t.toml, line 1: has unknown = 'eat'; it must be swallow or print",
        ),
    ],
)
def test_a_broken_description_is_answered_with_its_line(text: str, message: str) -> None:
    with pytest.raises(DialectError) as caught:
        parse(text, "t", "t.toml")
    assert str(caught.value) == message


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(DialectError) as caught:
        find_dialect(str(tmp_path / "gone.toml"))
    assert str(caught.value) == (
        f"{tmp_path / 'gone.toml'}: cannot be read: No such file or directory; name a readable .toml file"
    )


def test_a_file_that_is_no_text(tmp_path: Path) -> None:
    path = tmp_path / "t.toml"
    path.write_bytes(b"about = '\xff'")
    with pytest.raises(DialectError) as caught:
        find_dialect(str(path))
    assert str(caught.value) == f"{path}, byte 9: the file is not UTF-8 text"
