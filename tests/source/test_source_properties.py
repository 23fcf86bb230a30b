"""Any bytes at all are a session or one sentence; what is read can be written, and comes back."""

from __future__ import annotations

import contextlib
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st

from fit.errors import SourceError, UsageError
from fit.looks import find_looks
from fit.session import Session
from fit.source.keys import read_key_script
from fit.source.raw import read_raw
from fit.source.recording import read_recording
from fit.source.session_file import read_session_file, session_bytes
from fit.source.typescript import read_typescript

HEADS = [
    b"",
    b'Script started on 2026-01-02 [COMMAND="x" COLUMNS="80" LINES="25"]\n',
    b'{"form": "fit-session", "version": 1}\n',
    b'{"version": 2, "width": 80, "height": 25}\n',
    b'{"version": 3, "term": {"cols": 80, "rows": 25}}\n',
]  # fmt: skip
PIECES = st.sampled_from(
    [b"\r", b"\n", b"\r\n", b"\x1b[", b"\x1b]", b"> ", b"? ", b"x" * 80, b"\xc3", b"\xa9", b"\0", b"Script done on ",
     b'{"out": "a"}\n', b'{"in": "a", "time": 1}\n', b'[1, "o", "a"]\n', b'[0.5, "i", "\\udc80"]\n', b"0.5 3\n", b"I 0.5 3\n",
     b"O 1e5 3\n", b"H 0 INPUT_LOG x\n", b"S 1 SIGWINCH ROWS=0 COLS=9\n", b"9" * 5000, b'"]\n', b"[" * 3000]
)  # fmt: skip
DATA = st.builds(
    lambda head, pieces: head + b"".join(pieces),
    st.sampled_from(HEADS),
    st.lists(PIECES | st.binary(max_size=8), max_size=12),
)


def read(reader: object, data: bytes, times: bytes | None) -> Session | None:
    try:
        if reader is read_typescript:
            return read_typescript(data, "t", None if times is None else Path("/nowhere/tm"), times or b"")
        return reader(data, "t")  # type: ignore[no-any-return,operator]  # one of the readers
    except SourceError:
        return None


@pytest.mark.parametrize("reader", [read_raw, read_typescript, read_session_file, read_recording])
@settings(max_examples=150, deadline=None)
@given(data=DATA, times=st.none() | DATA)
def test_any_bytes(reader: object, data: bytes, times: bytes | None) -> None:
    session = read(reader, data, times)
    if session is None:
        return
    offsets, seconds = list(session.clock.offsets), list(session.clock.seconds)
    assert (offsets, seconds) == (sorted(offsets), sorted(seconds))
    assert all(0 <= event.at <= len(session.output) for event in session.events)
    assert read_session_file(session_bytes(session), session.name) == session
    looks = [look.at for look in find_looks(session).looks]
    assert looks == sorted(set(looks))
    assert looks[-1] == len(session.output)


@settings(max_examples=100, deadline=None)
@given(st.binary(max_size=60))
def test_any_key_script(data: bytes) -> None:
    with contextlib.suppress(UsageError):
        assert read_key_script(data, "k")
