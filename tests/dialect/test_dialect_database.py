"""The terminal database as it is read here, against the standard library's curses, and where it is broken."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from fit.dialect.expression import TerminfoExpression, strip_padding
from fit.dialect.registry import find_description, find_dialect
from fit.dialect.terminfo_database import FLAGS, NUMBERS, STRINGS, find_entry, read_entry
from fit.errors import DialectError

_ASK_CURSES = """
import curses, json, os, sys
curses.setupterm(sys.argv[1], os.open(os.devnull, os.O_WRONLY))
names = json.loads(sys.argv[2])
print(json.dumps({
    "flags": [name for name in names["flags"] if curses.tigetflag(name) == 1],
    "numbers": {name: curses.tigetnum(name) for name in names["numbers"] if curses.tigetnum(name) >= 0},
    "strings": {name: curses.tigetstr(name).hex() for name in names["strings"] if curses.tigetstr(name)},
}))
"""
_NEEDS_DATABASE = pytest.mark.skipif(
    find_entry("vt52") is None, reason="this system has no terminal database"
)
_SOURCE = """\
rock|the keepers' terminal,
    am, xmc#1, cols#40, lines#8,
    clear=^L$<5>, cr=^M, cup=\\EP%p2%'@'%+%c%p1%'@'%+%c, el=\\EK, cud1=^J, ind=^J, home=^A,
flat|a terminal without cursor addressing,
    cols#80, cr=^M, ind=^J,
same|a terminal whose rows cannot be told apart,
    cols#80, lines#24, cup=\\EP%p2%'@'%+%c, clear=^L,
"""


@pytest.fixture
def own_database(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Three terminals compiled from a description of our own; skips where there is no compiler."""
    tic = shutil.which("tic")
    if tic is None:
        pytest.skip("tic is not installed")
    source = tmp_path / "own.ti"
    source.write_text(_SOURCE, "ascii")
    subprocess.run([tic, "-o", tmp_path / "db", source], check=True, capture_output=True)
    monkeypatch.setenv("TERMINFO", str(tmp_path / "db"))
    return tmp_path / "db"


@_NEEDS_DATABASE
@pytest.mark.outside
@pytest.mark.parametrize(
    "name", ["vt52", "h19", "tvi950", "hz1500", "xterm-256color", "linux", "wy50", "vt220"]
)
def test_an_entry_reads_as_in_curses(name: str) -> None:
    entry = read_entry(name)
    assert entry is not None
    names = {"flags": [*FLAGS.values()], "numbers": [*NUMBERS.values()], "strings": [*STRINGS.values()]}
    asked = subprocess.run(
        [sys.executable, "-c", _ASK_CURSES, name, json.dumps(names)],
        check=True, capture_output=True, env={"LINES": "", "COLUMNS": ""},
    )  # fmt: skip
    wanted = json.loads(asked.stdout)
    strings = dict(entry.fixed)
    for key, expression in entry.expressions.items():
        assert isinstance(expression, TerminfoExpression)
        strings[key] = expression.text
    assert entry.flags == set(wanted["flags"])
    # curses fills in a size where an entry has none.
    assert entry.numbers == {key: number for key, number in wanted["numbers"].items() if key in entry.numbers}
    assert set(wanted["numbers"]) - set(entry.numbers) <= {"lines", "cols"}
    assert {key: text for key, text in strings.items() if text} == {
        key: stripped
        for key, text in wanted["strings"].items()
        if (stripped := strip_padding(bytes.fromhex(text)))
    }


@pytest.mark.usefixtures("own_database")
def test_a_terminal_of_our_own_database_is_decoded() -> None:
    dialect = find_dialect("rock")
    assert dialect.feed(b"\x0c\x1bPAClog", 0) == [
        (0, 1, "cursor_position", (1, 1), False),
        (0, 1, "erase_in_display", (2,), False),
        (1, 5, "cursor_position", (4, 2), False),
        (5, 8, "draw", ("log", 5), False),
    ]
    description = find_description("rock")
    assert (description.about, description.lines, description.columns) == ("the keepers' terminal", 8, 40)


@pytest.mark.usefixtures("own_database")
def test_a_terminal_without_cursor_addressing_is_decoded_by_what_it_has() -> None:
    assert find_dialect("flat").feed(b"a\r\n", 0)[1:] == [
        (1, 2, "carriage_return", (), False),
        (2, 3, "linefeed", (), False),
    ]


def test_an_ambiguous_address_is_refused_with_its_reason(own_database: Path) -> None:
    with pytest.raises(DialectError) as caught:
        find_dialect("same")
    assert str(caught.value) == (
        f"{own_database / 's' / 'same'}: terminal 'same' cannot be decoded: its cursor addressing is ambiguous: "
        "its parameters (0, 0) and (1, 0) give the same bytes, b'\\x1bP@'"
    )


def test_an_unknown_name_is_answered_with_the_nearest() -> None:
    with pytest.raises(DialectError) as caught:
        find_dialect("adm3aa")
    assert str(caught.value).startswith("no terminal is named 'adm3aa'; the nearest names are adm3a,")


def test_a_damaged_entry_is_refused(own_database: Path) -> None:
    entry = own_database / "r" / "rock"
    entry.write_bytes(entry.read_bytes()[:40])
    with pytest.raises(DialectError) as caught:
        read_entry("rock")
    assert str(caught.value) == (
        f"{entry}: is no compiled terminal description, or a damaged one; compile it again with tic"
    )


def test_an_entry_that_may_not_be_read_is_refused(
    own_database: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def closed(_: Path) -> bytes:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "read_bytes", closed)  # the superuser may read everything
    with pytest.raises(DialectError) as caught:
        read_entry("rock")
    assert str(caught.value) == (
        f"{own_database / 'r' / 'rock'}: the terminal database cannot be read: Permission denied; "
        "correct its permissions, or give a description of your own as a .toml file"
    )


@pytest.mark.parametrize("name", ["", "../etc/passwd", "a\0b"])
def test_a_name_is_never_a_path(name: str) -> None:
    assert find_entry(name) is None
