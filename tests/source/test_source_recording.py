"""asciicast recordings, versions 2 and 3, as their published description has them (from memory)."""

from __future__ import annotations

import json
from typing import Any

import pytest

from fit.errors import SourceError
from fit.session import Event, EventKind, Waits
from fit.source.recording import read_recording
from fit.units import Size

V2 = {
    "version": 2,
    "width": 80,
    "height": 25,
    "timestamp": 1504467315,
    "env": {"SHELL": "/bin/sh", "TERM": "vt100"},
}
V3 = {"version": 3, "term": {"cols": 80, "rows": 25, "type": "vt100"}, "command": "tide"}


def recorded(header: dict[str, Any], *lines: object) -> bytes:
    texts = [line if isinstance(line, str) else json.dumps(line) for line in (header, *lines)]
    return "\n".join(texts).encode() + b"\n"


def test_version_2_counts_from_the_start() -> None:
    data = recorded(
        V2,
        [0.5, "o", "Name? "],
        [2, "i", "a\r"],
        [2.25, "o", "a\r\nné"],
        [3.0, "r", "40x8"],
        [4, "m", "dusk"],
    )
    session = read_recording(data, "tide")
    assert session.output == "Name? a\r\nné".encode()
    assert session.events == (
        Event(6, EventKind.INPUT, b"a\r", 2.0),
        Event(12, EventKind.RESIZE, time=3.0, size=Size(8, 40)),
        Event(12, EventKind.NOTE, b"dusk", 4.0),
    )
    assert [session.clock.time_of(offset) for offset in (0, 5, 6)] == [0.5, 0.5, 2.25]
    assert (session.size, session.dialect, session.waits) == (Size(25, 80), "vt100", Waits.INPUTS)
    assert session.encoding == "utf-8"


def test_version_3_counts_from_the_event_before() -> None:
    data = recorded(V3, "# the second watch", [0.5, "o", "a"], [0.5, "o", "b"], [1.0, "x", "3"])
    session = read_recording(data, "tide")
    assert list(session.clock.seconds) == [0.5, 1.0]
    assert (session.command, session.exit_status, session.ending) == ("tide", 3, "exited")
    assert session.waits is Waits.INFERRED


def test_unknown_events_are_kept_and_said() -> None:
    session = read_recording(recorded(V2, [1, "z", "?"], [1, "r", "0x0"], [1, "o", "a"]), "tide")
    assert [event.data for event in session.events] == [b"z ?", b"r 0x0"]
    assert session.remarks == ("Events of unknown kinds were kept as notes: 'r 0x0' (1), 'z' (1).",)


def test_a_character_beyond_the_first_plane_and_a_lone_surrogate() -> None:
    session = read_recording(recorded(V2, '[1, "o", "\\ud83d\\udea2 \\ud800"]'), "tide")
    assert session.output == b"\xf0\x9f\x9a\xa2 \xed\xa0\x80"


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (recorded(V2, '[0.1, "o", "a"'), "t, line 2: is no JSON (expecting ',' delimiter); the file seems cut there; delete this line to read the rest"),
        (recorded(V2, '[0.1, "o", "a"', [1, "o", "b"]), "t, line 2: is no JSON (expecting ',' delimiter); mend or delete this line"),
        (recorded(V2, ["soon", "o", "a"]), 't, line 2: is no event; an event is such as [0.5, "o", "text"]'),
        (recorded(V2, "# no comment in version 2"), "t, line 2: is no JSON (expecting value); the file seems cut there; delete this line to read the rest"),
        (recorded({**V2, "width": 0}), "t, line 1: a screen of 0 columns cannot be measured; rows and columns go from 1 to 500"),
        (recorded({**V2, "height": -25}), "t, line 1: a screen of -25 rows cannot be measured; rows and columns go from 1 to 500"),
        (recorded({**V2, "height": 10**30}), "t, line 1: a screen of 10000000000000000000 rows cannot be measured; rows and columns go from 1 to 500"),
        (recorded({"version": 3, "term": {"cols": 80}}), "t, line 1: the rows are missing; rows and columns go from 1 to 500"),
        (recorded({"version": 1, "width": 80}), "t, line 1: has version 1 of the recording format; versions 2 and 3 can be read"),
        (b'{"version": 2, "wid\n', "t, line 1: is no JSON (unterminated string); the file seems cut there; delete this line to read the rest"),
    ],
)  # fmt: skip
def test_what_cannot_be_read(data: bytes, sentence: str) -> None:
    with pytest.raises(SourceError) as caught:
        read_recording(data, "t")
    assert str(caught.value) == sentence
