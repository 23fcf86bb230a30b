"""Our own session form: any session comes back as it was, and a broken line is named."""

from __future__ import annotations

from array import array
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st

from fit.errors import OutputError, SourceError
from fit.session import Clock, Event, EventKind, Session, Waits
from fit.source import read_session
from fit.source.session_file import read_session_file, session_bytes, write_session_file
from fit.units import Size

HEADER = b'{"form": "fit-session", "version": 1}\n'

LAMP = Session(
    b"Oil 40%\r\nTrim? ok\r\n",
    events=(
        Event(15, EventKind.WAIT, time=0.5),
        Event(15, EventKind.INPUT, b"ok\r", time=2.0),
        Event(17, EventKind.WAIT, is_look=False),
        Event(19, EventKind.RESIZE, size=Size(8, 40), time=2.5),
        Event(19, EventKind.NOTE, "dämmern".encode()),
    ),
    clock=Clock(array("q", [0, 9, 15]), array("d", [0.0, 0.25, 2.1])),
    waits=Waits.EXACT,
    size=Size(25, 80),
    dialect="vt100",
    encoding="cp437",
    command="python lamp.py",
    exit_status=3,
    ending="exited",
    bare_lf=True,
    remarks=("One remark.",),
    name="lamp",
)


def test_everything_comes_back() -> None:
    assert read_session_file(session_bytes(LAMP), "lamp") == LAMP


def test_the_file_can_be_read_by_people() -> None:
    lines = session_bytes(LAMP).decode().splitlines()
    assert lines[1:5] == [
        '{"out": "Oil 40%\\r\\n", "time": 0.0}',
        '{"out": "Trim? ", "time": 0.25}',
        '{"wait": true, "time": 0.5}',
        '{"in": "ok\\r", "time": 2.0}',
    ]


def test_a_byte_that_is_no_utf8_is_an_escape() -> None:
    assert session_bytes(Session(b"\xb0 \xc3\xa9")).endswith('{"out": "\\udcb0 é"}\n'.encode())


@st.composite
def sessions(draw: st.DrawFn) -> Session:
    output = draw(st.binary(max_size=60))
    offsets = st.integers(0, len(output))
    times = st.floats(0, 1e6)
    clock = sorted(draw(st.lists(st.tuples(offsets, times), max_size=6)))
    events = draw(
        st.lists(st.builds(Event, offsets, st.just(EventKind.INPUT), st.binary(max_size=5)), max_size=6)
    )
    seconds = sorted(time for _, time in clock)
    return Session(
        output,
        tuple(sorted(events, key=lambda event: event.at)),
        Clock(array("q", [offset for offset, _ in clock]), array("d", seconds)),
    )


@settings(max_examples=200, deadline=None)
@given(sessions())
def test_any_session_comes_back(session: Session) -> None:
    assert read_session_file(session_bytes(session), "") == session


def test_long_output_is_cut_at_line_ends() -> None:
    session = Session(b"one line of the log\r\n" * 1000)
    data = session_bytes(session)
    assert max(map(len, data.splitlines())) < 1200
    assert all(line.endswith(b'\\r\\n"}') for line in data.splitlines()[1:])
    assert read_session_file(data, "") == session


def test_a_file_written_is_recognised(tmp_path: Path) -> None:
    path = tmp_path / "lamp.session"
    write_session_file(path, LAMP)
    assert read_session(path).output == LAMP.output


def test_it_does_not_overwrite_its_input(tmp_path: Path) -> None:
    path = tmp_path / "lamp.session"
    path.write_bytes(b"typed by hand")
    with pytest.raises(OutputError) as caught:
        write_session_file(path, LAMP, inputs=[path])
    assert str(caught.value) == f"{path}: is also the input; name another file to write to"
    assert path.read_bytes() == b"typed by hand"


@pytest.mark.parametrize(
    ("lines", "sentence"),
    [
        (
            b'{"out": "a"}\n{"out": \n{"out": "b"}\n',
            "s, line 3: is no JSON (expecting value); mend or delete this line",
        ),
        (
            b'{"out": "a"}\n{"ou',
            (
                "s, line 3: is no JSON (unterminated string); "
                "the file seems cut there; delete this line to read the rest"
            ),
        ),
        (b'{"out": "\xff"}\n{}', "s, line 2: is not UTF-8; mend or delete this line"),
        (b"[1]\n", 's, line 2: is no JSON object; write such as {"out": "text"}'),
        (b'{"out": 5}\n', "s, line 2: has something other than text to print or type"),
        (b'{"out": "\\ud800"}\n', "s, line 2: has a surrogate that stands for no byte"),
        (b'{"out": "a", "time": -1}\n', "s, line 2: 'time' is no number of seconds from 0"),
        (b'{"out": "a", "time": NaN}\n', "s, line 2: 'time' is no number of seconds from 0"),
        (b'{"wait": true, "look": 1}\n', "s, line 2: 'look' is neither true nor false"),
        (b'{"resize": 8}\n', "s, line 2: 'resize' is not [rows, columns]"),
        (
            b'{"resize": [8, -1]}\n',
            "s, line 2: a screen of -1 columns cannot be measured; rows and columns go from 1 to 500",
        ),
        (b'{"out": "a", "in": "b"}\n', "s, line 2: has more than one of in, out; write a line for each"),
        (b'{"wait": "yes"}\n', "s, line 2: 'wait' is not true"),
        (
            b'{"out": ' + b"9" * 5000 + b"}\n{}",
            "s, line 2: is no JSON (a number in it has too many digits); mend or delete this line",
        ),
        (b'{"print": "a"}\n', "s, line 2: has none of out, in, wait, resize, note"),
        (b"[" * 100_000 + b"\n{}", "s, line 2: is no JSON (it is nested too deep); mend or delete this line"),
    ],
)
def test_a_broken_line_is_named(lines: bytes, sentence: str) -> None:
    with pytest.raises(SourceError) as caught:
        read_session_file(HEADER + lines, "s")
    assert str(caught.value) == sentence


def test_unknown_fields_are_counted_not_dropped_silently() -> None:
    session = read_session_file(
        b'{"form": "fit-session", "version": 1, "tide": 2}\n{"out": "a", "t": 1}\n{"out": "b", "t": 2}\n', "s"
    )
    assert session.output == b"ab"
    assert session.remarks == (
        "Fields of the session file that are not known were passed over: 't' (2), 'tide' (1).",
    )


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ('"version": 2', "has version 2 of the session form; this program reads version 1"),
        (
            '"version": 1, "rows": 0, "columns": 80',
            "a screen of 0 rows cannot be measured; rows and columns go from 1 to 500",
        ),
        (
            '"version": 1, "rows": "25", "columns": 80',
            "the rows are no whole number; rows and columns go from 1 to 500",
        ),
        (
            '"version": 1, "rows": 25',
            "the columns are missing; rows and columns go from 1 to 500",
        ),
        ('"version": 1, "dialect": 5', "'dialect' is no text"),
        ('"version": 1, "waits": "often"', "'waits' is none of exact, inputs, inferred"),
        ('"version": 1, "bare_lf": 1', "'bare_lf' is neither true nor false"),
        ('"version": 1, "exit_status": "0"', "'exit_status' is no whole number"),
        ('"version": 1, "remarks": "one"', "'remarks' is no list of sentences"),
    ],
)
def test_a_broken_header_is_named(fields: str, sentence: str) -> None:
    with pytest.raises(SourceError) as caught:
        read_session_file(b'{"form": "fit-session", %s}\n' % fields.encode(), "s")
    assert str(caught.value) == f"s, line 1: {sentence}"


def test_no_header() -> None:
    with pytest.raises(SourceError) as caught:
        read_session_file(b'{"out": "a"}\n', "s")
    assert str(caught.value) == 's, line 1: the header of a session file ("form": "fit-session") is missing'


def test_times_that_run_backwards_are_raised_and_said() -> None:
    session = read_session_file(HEADER + b'{"out": "a", "time": 5}\n{"out": "b", "time": 4}\n', "s")
    assert list(session.clock.seconds) == [5.0, 5.0]
    assert session.remarks == ("1 times ran backwards and were raised to the time before.",)
