r"""Our own file form of a session: JSON Lines, byte exact, in the order in which things happened.

The first line is the header; fields that are not known are left out:

    {"form": "fit-session", "version": 1, "rows": 25, "columns": 80, "dialect": "vt100", "encoding": "utf-8",
     "command": "python tide.py", "waits": "inputs", "ending": "exited", "exit_status": 0}

``waits`` says how well the places are known at which the program waited: ``exact``, ``inputs`` or
``inferred``. ``bare_lf`` is true where LF alone means a new line. ``ending`` is ``exited``, ``limit`` or
``interrupted``. ``remarks`` is a list of sentences.

Each further line is one thing that happened, with ``time`` in seconds since the start where it is known:

    {"out": "What now? ", "time": 0.5}             printed by the program
    {"wait": true, "time": 0.6}                    it waited for input; with "look": false nobody can read there
    {"in": "north\r", "time": 2.25}                typed
    {"resize": [8, 40], "time": 3.0}               rows, columns
    {"note": "second watch", "time": 3.5}          a remark of the recorder

Text stands for the bytes of its UTF-8 form. A byte that is not part of UTF-8 is written as the escape of
the lone surrogate U+DC00 + byte: byte B0h is ``\udcb0`` (the rule of Python's PEP 383). So any bytes can be
written, and come back as they were.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

from fit.errors import SourceError
from fit.output import write_file
from fit.session import Event, EventKind, Session, Waits
from fit.source.builder import SessionBuilder
from fit.source.json_lines import checked_size, json_lines, seconds, whole_number

FORM = "fit-session"
VERSION = 1
_FIELDS_NAMED = 5
LONGEST_LINE = 1024
"""Output without times is cut into lines of at most so many bytes, so that an editor can show the file."""

_ENCODER = json.JSONEncoder(ensure_ascii=False)  # json.dumps makes one for each line
_TEXTS = ("dialect", "encoding", "command", "ending")
_KINDS = frozenset(("out", "in", "wait", "resize", "note"))
_KNOWN = _KINDS | {"time", "look"}
_KNOWN_HEADER = frozenset(
    ("form", "version", "rows", "columns", "waits", "bare_lf", "exit_status", "remarks", *_TEXTS)
)


def read_session_file(data: bytes, name: str) -> Session:
    """The session in the bytes of a file. Raises `SourceError` with the line that cannot be read."""
    lines = json_lines(data, name)
    number, header = next(lines, (1, None))
    if not isinstance(header, dict) or header.get("form") != FORM:
        raise SourceError(
            f'the header of a session file ("form": "{FORM}") is missing', source=name, line=number
        )
    frame, waits = _read_header(header, name, number)
    builder = SessionBuilder(name, remarks=list(frame.remarks))
    unknown = Counter(header.keys() - _KNOWN_HEADER)
    for number, entry in lines:
        if not isinstance(entry, dict):
            raise SourceError(
                "is no JSON object", source=name, line=number, hint='write such as {"out": "text"}'
            )
        _take(builder, entry, name, number)
        unknown.update(entry.keys() - _KNOWN)
    if unknown:
        fields = ", ".join(
            f"'{key[:20]}' ({times})" for key, times in sorted(unknown.items())[:_FIELDS_NAMED]
        )
        builder.remarks.append(f"Fields of the session file that are not known were passed over: {fields}.")
    built = builder.build(waits)
    return replace(
        frame,
        output=built.output,
        events=built.events,
        clock=built.clock,
        waits=built.waits,
        remarks=built.remarks,
    )


def write_session_file(path: str | Path, session: Session, *, inputs: Iterable[str | Path] = ()) -> None:
    """Write a session whole or not at all. Raises `OutputError`, also where ``path`` is one of ``inputs``."""
    write_file(path, session_bytes(session), inputs=inputs)


def session_bytes(session: Session) -> bytes:
    """A session in the file form."""
    header: dict[str, Any] = {"form": FORM, "version": VERSION}
    if session.size is not None:
        header |= {"rows": session.size.rows, "columns": session.size.columns}
    header |= {key: getattr(session, key) for key in _TEXTS if getattr(session, key) is not None}
    header["waits"] = session.waits.value
    if session.bare_lf:
        header["bare_lf"] = True
    if session.exit_status is not None:
        header["exit_status"] = session.exit_status
    if session.remarks:
        header["remarks"] = list(session.remarks)
    return b"".join([_line(header), *map(_line, _entries(session))])


def _line(value: dict[str, Any]) -> bytes:
    # A lone surrogate that the UTF-8 form cannot hold becomes the escape that JSON has for it.
    return _ENCODER.encode(value).encode("utf-8", "backslashreplace") + b"\n"


def _entries(session: Session) -> Iterator[dict[str, Any]]:
    """The lines after the header, in order."""
    done = 0
    times = iter(zip(session.clock.offsets, session.clock.seconds, strict=True))
    tick = next(times, None)
    for event in [*session.events, None]:
        here = len(session.output) if event is None else event.at
        while tick is not None and (tick[0] < here or event is None):
            yield from _pieces(session.output, done, tick[0])
            offset, time = tick
            tick = next(times, None)
            done = min(here, tick[0] if tick is not None else here)
            yield {"out": _text(session.output[offset:done]), "time": time}
        yield from _pieces(session.output, done, here)
        done = here
        if event is not None:
            yield _entry(event)


def _pieces(output: bytes, start: int, end: int) -> Iterator[dict[str, Any]]:
    """The output of a span, cut after line ends where there are any."""
    while start < end:
        stop = min(end, start + LONGEST_LINE)
        if stop < end:
            stop = output.rfind(b"\n", start, stop) + 1 or stop
        yield {"out": _text(output[start:stop])}
        start = stop


def _entry(event: Event) -> dict[str, Any]:
    entry: dict[str, Any]
    if event.kind is EventKind.WAIT:
        entry = {"wait": True} if event.is_look else {"wait": True, "look": False}
    elif event.kind is EventKind.RESIZE:
        entry = {"resize": list(event.size or ())}
    else:
        entry = {event.kind.value: _text(event.data)}
    return entry if event.time is None else entry | {"time": event.time}


def _text(data: bytes) -> str:
    return data.decode("utf-8", "surrogateescape")


def _read_header(header: dict[str, Any], name: str, line: int) -> tuple[Session, Waits]:
    version = header.get("version")
    if version != VERSION:
        raise SourceError(
            f"has version {str(version)[:20]} of the session form",
            source=name,
            line=line,
            hint=f"this program reads version {VERSION}",
        )
    size = None
    if "rows" in header or "columns" in header:
        size = checked_size(header.get("columns"), header.get("rows"), name, line)
    for key in _TEXTS:
        _expect(isinstance(header.get(key, ""), str), f"'{key}' is no text", name, line)
    remarks = header.get("remarks", [])
    well_formed = isinstance(remarks, list) and all(isinstance(remark, str) for remark in remarks)
    _expect(well_formed, "'remarks' is no list of sentences", name, line)
    waits = header.get("waits", Waits.INFERRED.value)
    _expect(waits in list(Waits), f"'waits' is none of {', '.join(Waits)}", name, line)
    bare_lf = header.get("bare_lf", False)
    _expect(isinstance(bare_lf, bool), "'bare_lf' is neither true nor false", name, line)
    status = header.get("exit_status")
    _expect(
        status is None or whole_number(status) is not None, "'exit_status' is no whole number", name, line
    )
    frame = Session(
        b"",
        size=size,
        bare_lf=bare_lf,
        exit_status=status,
        name=name,
        remarks=tuple(remarks),
        dialect=header.get("dialect"),
        encoding=header.get("encoding"),
        command=header.get("command"),
        ending=header.get("ending"),
        keeps_inputs=True,
    )
    return frame, Waits(waits)


def _take(builder: SessionBuilder, entry: dict[str, Any], name: str, line: int) -> None:
    """Put one line into the session."""
    time = None
    if "time" in entry:
        time = seconds(entry["time"])
        _expect(time is not None and time >= 0, "'time' is no number of seconds from 0", name, line)
    kinds = _KINDS & entry.keys()
    _expect(
        len(kinds) < 2, f"has more than one of {', '.join(sorted(kinds))}; write a line for each", name, line
    )
    if "out" in entry:
        builder.out(_bytes(entry["out"], name, line), time)
    elif "in" in entry:
        builder.event(EventKind.INPUT, _bytes(entry["in"], name, line), time)
    elif "note" in entry:
        builder.event(EventKind.NOTE, _bytes(entry["note"], name, line), time)
    elif "wait" in entry:
        _expect(entry["wait"] is True, "'wait' is not true", name, line)
        is_look = entry.get("look", True)
        _expect(isinstance(is_look, bool), "'look' is neither true nor false", name, line)
        builder.event(EventKind.WAIT, time=time, is_look=is_look)
    elif "resize" in entry:
        sides = entry["resize"]
        _expect(isinstance(sides, list) and len(sides) == 2, "'resize' is not [rows, columns]", name, line)
        builder.event(EventKind.RESIZE, time=time, size=checked_size(sides[1], sides[0], name, line))
    else:
        _expect(holds=False, what="has none of out, in, wait, resize, note", name=name, line=line)


def _bytes(value: Any, name: str, line: int) -> bytes:
    try:
        return str.encode(value, "utf-8", "surrogateescape")
    except TypeError:
        raise SourceError("has something other than text to print or type", source=name, line=line) from None
    except UnicodeEncodeError:
        raise SourceError("has a surrogate that stands for no byte", source=name, line=line) from None


def _expect(holds: bool, what: str, name: str, line: int) -> None:
    if not holds:
        raise SourceError(what, source=name, line=line)
