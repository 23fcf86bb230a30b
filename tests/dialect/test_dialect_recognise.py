"""Which terminal a session was written for: sessions drawn by one seeded curses program under each type.

Two terminals count as one where the session decodes to the same text at the same places under both.
"""

from __future__ import annotations

import pytest
from test_dialect_round_trip import sessions, with_addressing

from fit.dialect.alternate_font import font_of
from fit.dialect.ecma48_likeness import follows_ecma48
from fit.dialect.evidence import gather, heads, same_text
from fit.dialect.recognise import recognise
from fit.dialect.registry import find_description, find_dialect
from fit.dialect.terminfo_database import find_entry
from fit.units import Size

_LATIN = "latin-1"
_VT52_LOG = b"".join(b"\x1bY%c%cebb %d\x1bK" % (33 + line, 40 + line, line) for line in range(20))
_HZ1500_LOG = b"".join(b"~\x11%c%cflood~\x0f~\x1f!~\x19" % (0x61 + line, 0x60 + line) for line in range(20))


def place(name: str, output: bytes) -> int | None:
    """Where in the ranking the terminal stands, from 0; None where it is not ranked."""
    dialect = find_dialect(name, _LATIN)
    right = same_text(dialect.feed(output, 0) + dialect.finish())
    ranked = recognise(output, _LATIN, Size(24, 80)).ranked
    return next((index for index, one in enumerate(ranked) if same_text(one.operations) == right), None)


def places(names: list[str], seed: int) -> dict[str, int | None]:
    """Of each terminal's own session; those after ECMA-48, which decode alike, by one of each way to draw lines."""
    alike: dict[object, list[str]] = {}
    for name in names:
        description = find_description(name)
        alike.setdefault(font_of(description) if follows_ecma48(description) else name, []).append(name)
    found = {
        name: place(name, output)
        for name, output, _ in sessions([group[0] for group in alike.values()], seed=seed, attributes=True)
    }
    return {name: found[group[0]] for group in alike.values() if group[0] in found for name in group}


@pytest.mark.outside
@pytest.mark.parametrize(
    "name", ["vt52", "adm3a", "hz1500", "wy50", "h19", "tvi912", "tvi950", "adm31", "viewpoint", "vt100"]
)
def test_the_terminals_that_come_with_the_program_find_themselves(name: str) -> None:
    if find_entry(name) is None:
        pytest.skip("this system's terminal database lacks it")
    [(_, output, _)] = sessions([name], seed=3, attributes=True)
    assert place(name, output) == 0


@pytest.mark.slow
@pytest.mark.outside
@pytest.mark.parametrize("seed", [7, 1881, 1902])
def test_of_all_terminals_95_in_100_come_first_and_all_among_the_first_three(seed: int) -> None:
    names = with_addressing()
    if len(names) < 300:
        pytest.skip("this system's terminal database is a small one")
    found = places(names, seed)
    assert sum(index == 0 for index in found.values()) >= 0.95 * len(found)
    assert [name for name, index in found.items() if index is None or index > 2] == []


def test_plain_text_needs_none() -> None:
    found = recognise(b"The lamp is lit.\r\nTab\there, bell\a, \b and NUL \0.\r\n")
    assert (found.best, found.ranked, found.change, found.is_clear) == (None, (), None, False)


def test_an_empty_session_needs_none() -> None:
    assert recognise(b"").best is None


def test_a_clear_case_names_what_the_second_does_not_understand() -> None:
    found = recognise(_HZ1500_LOG)
    assert found.best == "hz1500"
    assert found.is_clear
    assert found.ranked[0].evidence.unexplained == 0
    assert found.ranked[0].evidence.weight > found.ranked[1].evidence.weight


def test_whether_attributes_take_a_cell_makes_no_case_unclear() -> None:
    pieces = [b"\x1b=%c%c\x1bG4lamp\x1bG0oil low" % (33 + row, 40 + row) for row in range(20)]
    found = recognise(b"".join(pieces))
    assert {one.evidence.weight for one in found.ranked[:2]} == {found.ranked[0].evidence.weight}
    assert found.agreement == 1.0
    assert found.is_clear


def _watch_bill(clear: bytes, erase: bytes) -> bytes:
    """A title in half intensity and six lines at their places, as programs for such terminals draw them."""
    rows = b"".join(
        b"\x1b=%c%cKeeper %d of the watch%b" % (34 + row, 70 + row, row, erase) for row in range(6)
    )
    return clear + b"\x1b= 4\x1b)Skerry Light\x1b(" + rows


@pytest.mark.parametrize(
    ("output", "name"),
    [
        (_watch_bill(b"\x1b+", b"\x1bT"), "wy50"),
        (_watch_bill(b"\x1b*", b"\x1bt"), "tvi950"),
        (_watch_bill(b"\x1a", b"\x1bT"), "tvi912"),
        (_watch_bill(b"\x1b*", b"\x1bT").replace(b"\x1b)", b"\x1bG4").replace(b"\x1b(", b"\x1bG0"), "adm31"),
    ],
)
def test_a_familiar_terminal_comes_before_rare_ones_that_explain_as_much(output: bytes, name: str) -> None:
    found = recognise(output, _LATIN)
    assert name in found.ranked[0].names
    assert found.ranked[0].is_familiar
    assert found.ranked[0].evidence.unexplained == 0
    assert found.ranked[0].evidence.cookies == 0
    assert found.is_clear


@pytest.mark.outside
def test_a_rare_terminal_that_leads_by_a_trifle_is_not_clear() -> None:
    """The terminal database of ncurses 6.4: entry tvi912b has `ESC A` (mc4), entry tvi912 has not."""
    if find_entry("tvi912b") is None:
        pytest.skip("this system's terminal database lacks it")
    found = recognise(_watch_bill(b"\x1a", b"\x1bT") + b"\x1bA", _LATIN)
    first, familiar = found.ranked[0], next(one for one in found.ranked if one.is_familiar)
    assert not first.is_familiar
    assert 0 < first.evidence.weight - familiar.evidence.weight < 12
    assert not found.is_clear


def test_who_leaves_nothing_over_comes_before_who_explains_a_little_more_and_leaves_something() -> None:
    """The page of a watch bill: some descriptions lack ``CSI 2 J``, and take a digit of the text for a code."""
    rows = b"".join(b"\x1b[%d;4HRow %d of the watch bill" % (row, row) for row in range(1, 23))
    found = recognise(b"\x1b[2J\x1b[H" + rows + b"\x1b[24;1HAny key:", _LATIN)
    assert found.best == "vt100"
    assert (found.ranked[0].evidence.unexplained, found.is_clear) == (0, True)


def test_a_remainder_matters_little_beside_much_that_is_explained() -> None:
    log = _VT52_LOG + b"\x1b~"
    found = recognise(log, _LATIN)
    assert found.ranked[0].evidence.unexplained > 0
    assert _is_like(found.ranked[0].names[0], "vt52", log)


def test_a_session_of_three_bytes_is_not_clear() -> None:
    assert not recognise(b"\x1bKlog").is_clear


def test_moves_out_of_the_screen_speak_against_a_terminal() -> None:
    output = b"\x1bYPzlog"
    operations = find_dialect("vt52").feed(output, 0)
    evidence = gather(operations, output, Size(25, 80))
    assert (evidence.moves, evidence.outside, evidence.explained, evidence.letters) == (1, 1, 4, 3)


def test_codes_as_text_speak_against_a_terminal() -> None:
    output = b"\x1b[2;5Hlog"
    evidence = gather(find_dialect("vt52").feed(output, 0), output, Size(25, 80))
    assert (evidence.explained, evidence.unexplained, evidence.letters) == (0, 2, 7)


@pytest.mark.parametrize(
    ("first", "second", "names"),
    [(_VT52_LOG, _HZ1500_LOG, ("vt52", "hz1500")), (_HZ1500_LOG, _VT52_LOG, ("hz1500", "vt52"))],
)
def test_a_change_half_way_is_found(first: bytes, second: bytes, names: tuple[str, str]) -> None:
    found = recognise(first + second)
    assert found.change is not None
    at, before, after = found.change
    # The lead-in of the second may still pass for text of the first.
    assert len(first) <= at <= len(first) + 2
    assert _is_like(before, names[0], first)
    assert _is_like(after, names[1], second)
    assert not found.is_clear


def _is_like(name: str, wanted: str, output: bytes) -> bool:
    one, two = (same_text(find_dialect(each).feed(output, 0)) for each in (name, wanted))
    return one == two


@pytest.mark.parametrize("output", [_VT52_LOG, _HZ1500_LOG, b"\x1b[2J\x1b[1;1Hlog\x1b[K" * 20])
def test_one_language_is_no_change(output: bytes) -> None:
    assert recognise(output).change is None


def test_kinds_of_sequences_are_counted_without_their_numbers() -> None:
    assert heads(b"a\x1b[12;1H\x1b[3;44H\x1bYab~\x11\r\n\x0c!") == {
        b"\x1b[#;#H": 2, b"\x1bY": 1, b"~\x11": 1, b"\x0c!": 1,
    }  # fmt: skip


def test_spellings_of_the_same_text_are_one() -> None:
    home_and_erase = find_dialect("vt52").feed(b"\x1bH\x1bJlog\r\n", 0)
    one_code = find_dialect("adm3a").feed(b"\x1alog\r\n", 0)
    assert same_text(home_and_erase) == same_text(one_code)
