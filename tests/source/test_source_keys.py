"""Key scripts: steps, names of keys, and what a terminal sends for them."""

from __future__ import annotations

import pytest

from fit.errors import UsageError
from fit.source.keys import SETTLE, encode_keys, parse_keys, read_key_script

SCRIPT = rb"""
# the first watch
quiet 0.5          => north<enter>
see What now\?     => take oil <enter>
  see - more - => <space>
quiet 1 =>
"""


def test_steps() -> None:
    steps = read_key_script(SCRIPT, "watch.keys")
    assert [(step.line, step.quiet, encode_keys(step.keys)) for step in steps] == [
        (3, 0.5, b"north\r"),
        (4, SETTLE, b"take oil \r"),
        (5, SETTLE, b" "),
        (6, 1.0, b""),
    ]


def test_when_a_step_is_due() -> None:
    quiet, see, *_ = read_key_script(SCRIPT, "watch.keys")
    assert not quiet.is_due(b"", 0.4)
    assert quiet.is_due(b"", 0.5)
    assert not see.is_due(b"What now", 9)
    assert not see.is_due(b"What now? ", 0.05)
    assert see.is_due(b"\x1b[1mWhat now?\x1b[m ", 0.1)


def test_a_step_is_due_after_so_many_bytes() -> None:
    (step,) = read_key_script(b"printed 4 => x\n", "watch.keys")
    assert not step.is_due(b"fog", 9)
    assert step.is_due(b"fogs", 0)


@pytest.mark.parametrize(
    ("text", "sent"),
    [
        ("north", b"north"),
        ("n<enter>s<ENTER>", b"n\rs\r"),
        ("<ctrl-a><ctrl-z><escape>", b"\x01\x1a\x1b"),
        ("<0x00><0xff>", b"\x00\xff"),
        ("a <lt> b > c", b"a < b > c"),
        ("dämmern", "dämmern".encode()),
        ("<backspace><rubout>", b"\x08\x7f"),
        ("<up><f1><f12><pagedown>", b"\x1b[A\x1bOP\x1b[24~\x1b[6~"),
    ],
)
def test_what_is_typed(text: str, sent: bytes) -> None:
    assert encode_keys(parse_keys(text)) == sent


@pytest.mark.parametrize(
    ("terminal", "output", "sent"),
    [
        ("vt100", b"", b"\x1b[A\x1b[D"),
        ("vt100", b"\x1b[?1h", b"\x1bOA\x1bOD"),  # DECCKM, VT100 manual
        ("vt100", b"\x1b[?1h\x1b[?1l", b"\x1b[A\x1b[D"),
        ("vt100", b"\x1b[?1h\x1bc", b"\x1b[A\x1b[D"),
        ("vt52", b"\x1b[?1h", b"\x1bA\x1bD"),
        ("adm3a", b"", b"\x0b\x08"),
    ],
)
def test_cursor_keys_of_terminals(terminal: str, output: bytes, sent: bytes) -> None:
    assert encode_keys(parse_keys("<up><left>"), terminal, output) == sent


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        (b"north", "k, line 2: is no step; write such as: quiet 0.5 => north<enter>"),
        (b"wait 1 => north", "k, line 2: is no step; write such as: quiet 0.5 => north<enter>"),
        (b"quiet soon => north", "k, line 2: 'soon' is no time; give seconds from 0 to 3600"),
        (b"quiet -1 => north", "k, line 2: '-1' is no time; give seconds from 0 to 3600"),
        (b"quiet nan => north", "k, line 2: 'nan' is no time; give seconds from 0 to 3600"),
        (b"quiet => north", "k, line 2: '' is no time; give seconds from 0 to 3600"),
        (b"see ( => north", "k, line 2: '(' is no regular expression (missing ), unterminated subpattern at position 0); escape its signs with \\"),
        (b"see => north", "k, line 2: '' is no regular expression (it is empty); escape its signs with \\"),
        (b"quiet 1 => <north>", "k, line 2: no key is named 'north'; such as enter, up, ctrl-c, 0x1b; <lt> types the sign <"),
        (b"quiet 1 => a <> b", "k, line 2: no key is named ''; such as enter, up, ctrl-c, 0x1b; <lt> types the sign <"),
    ],
)  # fmt: skip
def test_a_line_that_is_no_step(line: bytes, sentence: str) -> None:
    with pytest.raises(UsageError) as caught:
        read_key_script(b"# comment\n" + line, "k")
    assert str(caught.value) == sentence


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"# nothing\n\n", "k: the key script has no step; write such as: quiet 0.5 => north<enter>"),
        (b"quiet 1 => \xff", "k, byte 11: the key script is not UTF-8 text"),
    ],
)
def test_no_script(data: bytes, sentence: str) -> None:
    with pytest.raises(UsageError) as caught:
        read_key_script(data, "k")
    assert str(caught.value) == sentence
