"""The editing keys of function 10.

Source: Digital Research, CP/M Operating System Manual, function 10, Read Console Buffer.
"""

from __future__ import annotations

import pytest

from fit.machine.line_editor import LineEditor, Outcome


def typed(keys: bytes, limit: int = 40, column: int = 2) -> tuple[bytes, bytes]:
    """What the line holds, and what was printed."""
    editor, printed = LineEditor(limit, column), bytearray()
    for key in keys:
        printed += editor.feed(key)[0]
    return bytes(editor.text), bytes(printed)


@pytest.mark.parametrize(
    ("keys", "text", "printed"),
    [
        (b"oil", b"oil", b"oil"),
        (b"oul\b\bil", b"oil", b"oul\b \b\b \bil"),
        (b"\b", b"", b""),
        (b"oik\x7fl", b"oil", b"oikkl"),
        (b"\x7f", b"", b""),
        (b"bad\x18oil", b"oil", b"bad" + b"\b \b" * 3 + b"oil"),
        (b"bad\x15oil", b"oil", b"bad#\r\n  oil"),
        (b"oi\x12l", b"oil", b"oi#\r\n  oil"),
        (b"oi\x05l", b"oil", b"oi\r\nl"),
        (b"a\x01", b"a\x01", b"a^A"),
        (b"a\x01\b", b"a", b"a^A\b \b\b \b"),
        (b"a\tb", b"a\tb", b"a     b"),
        (b"a\t\b", b"a", b"a     " + b"\b \b" * 5),
        (b"a\x03", b"a\x03", b"a^C"),
    ],
)
def test_editing_keys(keys: bytes, text: bytes, printed: bytes) -> None:
    assert typed(keys) == (text, printed)


@pytest.mark.parametrize("end", [b"\r", b"\n"])
def test_cr_and_lf_end_the_line_with_a_cr(end: bytes) -> None:
    editor = LineEditor(10, 0)
    editor.feed(ord("a"))
    assert editor.feed(end[0]) == (b"\r", Outcome.DONE)
    assert editor.text == b"a"


def test_a_full_line_ends_by_itself() -> None:
    editor = LineEditor(2, 0)
    assert editor.feed(ord("a")) == (b"a", Outcome.GOES_ON)
    assert editor.feed(ord("b")) == (b"b\r", Outcome.DONE)


def test_control_c_starts_the_system_again_only_at_the_start() -> None:
    assert LineEditor(9, 0).feed(3) == (b"^C", Outcome.WARM_START)


def test_bit_7_of_a_key_is_dropped() -> None:
    assert typed(b"\xef\xe9\xec")[0] == b"oil"
