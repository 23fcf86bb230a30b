"""Typescripts of util-linux `script`, with or without a timing file. Source: script(1) and scriptreplay(1).

The header and footer that `script` writes are no output. The classic timing file has a line
``SECONDS BYTES`` for each piece of output; the multi-stream one has ``O SECONDS BYTES``,
``I SECONDS BYTES`` for what was typed, ``S SECONDS SIGWINCH ROWS=n COLS=n`` and ``H SECONDS NAME VALUE``.
Times are since the entry before. What was typed stands in the same file (``--log-io``), or in a file of its
own (``--log-in``), which is then looked for beside the timing file under the name that the timing file gives.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path, PurePath

from fit.errors import SourceError
from fit.session import EventKind, Session
from fit.source.builder import SessionBuilder
from fit.source.json_lines import seconds
from fit.units import LARGEST_SIDE, Size

START = b"Script started on "

_HEADER = re.compile(rb'Script started on [^\n\[]*(?:\[(?s:.{0,65536}?)[">]\](?=\n))?[^\n]*(?:\n|\Z)')
_FOOTER = re.compile(rb"(?:\n|\A)Script done on [^\n]*\n?\Z")
_BETWEEN = re.compile(rb"\nScript done on [^\n]*\n(?=Script started on )")
_FIELD = re.compile(rb'(TERM|COLUMNS|LINES|COMMAND_EXIT_CODE)="([^"]*)"')
_COMMAND = re.compile(rb'COMMAND="(.*?)" (?:TERM="|TTY="|COLUMNS="|<not executed)', re.DOTALL)
_CLASSIC = re.compile(rb"([0-9]+(?:[.,][0-9]+)?) ([0-9]{1,18})")
_STREAM = re.compile(rb"([IO]) ([0-9]+(?:[.,][0-9]+)?) ([0-9]{1,18})")
_OTHER = re.compile(rb"([HS]) ([0-9]+(?:[.,][0-9]+)?) (\S+) ?(.*)")
_END_MARKS = frozenset((b"DURATION", b"EXIT_CODE"))
"""What `script` writes last into a multi-stream timing file."""
_WINCH = re.compile(rb"ROWS=([0-9]+) COLS=([0-9]+)")


@dataclass(slots=True)
class _Entry:
    """One line of a timing file."""

    kind: str
    time: float
    length: int = 0
    name: bytes = b""
    value: bytes = b""


@dataclass(slots=True)
class _Streams:
    """The bytes still to be given out, and how far each stream has come."""

    output: bytes
    typed: bytes | None
    """None: what was typed stands in ``output``."""
    at: dict[str, int] = field(default_factory=lambda: {"I": 0, "O": 0})

    def take(self, entry: _Entry) -> bytes:
        together = self.typed is None
        stream = "O" if together else entry.kind
        data = self.output if stream == "O" or self.typed is None else self.typed
        start = self.at[stream]
        self.at[stream] = min(len(data), start + entry.length)
        return data[start : start + entry.length]


def read_typescript(data: bytes, name: str, timing: str | Path | None = None, times: bytes = b"") -> Session:
    """The session of a typescript; ``times`` is what the file ``timing`` holds.

    Raises `SourceError` where the timing file is none, or belongs to another typescript.
    """
    builder = SessionBuilder(name)
    header = _HEADER.match(data)
    footer = _FOOTER.search(data, max(0, len(data) - 65536))
    body = data[header.end() if header else 0 : footer.start() if footer else len(data)]
    body = _without_seams(body, builder)
    if not footer:
        builder.remarks.append("The recording was interrupted: the typescript has no end mark.")
    if timing is None:
        builder.out(body)
    else:
        _replay(
            builder, body, _entries(times, str(timing), builder), Path(timing), is_whole=footer is not None
        )
    session = _with_header(builder.build(), header.group() if header else b"", builder)
    return _with_footer(session, footer.group() if footer else b"")


def _without_seams(body: bytes, builder: SessionBuilder) -> bytes:
    """Without the footers and headers inside a typescript that was appended to."""
    parts = _BETWEEN.split(body)
    if len(parts) == 1:
        return body
    builder.remarks.append(f"{len(parts)} recordings stand one after the other in the typescript.")
    return b"".join([parts[0], *(_HEADER.sub(b"", part, count=1) for part in parts[1:])])


def _entries(times: bytes, timing: str, builder: SessionBuilder) -> Iterator[_Entry]:
    now = 0.0
    lines = times.split(b"\n")
    for number, line in enumerate(lines, 1):
        if not line.strip():
            continue
        entry = _entry(line.rstrip(b"\r"))
        if entry is None:
            if number == len(lines) and number > 1:
                builder.remarks.append("The recording was interrupted: the timing file ends within a line.")
                return
            raise SourceError(
                "is no line of a timing file",
                source=timing,
                line=number,
                hint="name the file that `script --log-timing` wrote with this typescript",
            )
        now += entry.time if entry.kind != "H" else 0.0
        entry.time = now
        yield entry


def _entry(line: bytes) -> _Entry | None:
    if match := _CLASSIC.fullmatch(line):
        return _timed("O", match[1], int(match[2]))
    if match := _STREAM.fullmatch(line):
        return _timed(match[1].decode(), match[2], int(match[3]))
    if match := _OTHER.fullmatch(line):
        return _timed(match[1].decode(), match[2], 0, match[3], match[4])
    return None


def _timed(kind: str, text: bytes, length: int, name: bytes = b"", value: bytes = b"") -> _Entry | None:
    # Some locales write a decimal comma.
    time = seconds(float(text.replace(b",", b".")))
    return None if time is None else _Entry(kind, time, length, name, value)


def _replay(
    builder: SessionBuilder, body: bytes, entries: Iterator[_Entry], timing: Path, *, is_whole: bool
) -> None:
    """Put output and input together as the timing file says."""
    names: dict[bytes, bytes] = {}
    streams = _Streams(body, None)
    asked = missing = 0
    for entry in entries:
        if entry.kind == "H":
            names[entry.name] = entry.value
            if entry.name == b"INPUT_LOG" and entry.value != names.get(b"OUTPUT_LOG"):
                streams.typed = _typed(entry.value, timing, builder)
        elif entry.kind == "S":
            _signal(builder, entry)
        else:
            piece = streams.take(entry)
            asked += entry.length
            is_lost_input = entry.kind == "I" and streams.typed == b""
            missing += 0 if is_lost_input else entry.length - len(piece)
            if entry.kind == "I":
                builder.event(EventKind.INPUT, piece, entry.time)
            elif piece:
                builder.out(piece, entry.time)
    if missing and is_whole:
        raise SourceError(
            f"times {missing} bytes more than the typescript holds",
            source=str(timing),
            hint="name the timing file that was written with this typescript",
        )
    if missing:
        builder.remarks.append(
            f"The recording was interrupted: {missing} bytes that the timing file names are not there."
        )
    rest = body[streams.at["O"] :]
    if rest and is_whole and _END_MARKS & names.keys():
        raise SourceError(
            f"is complete, but times {len(rest)} bytes less than the typescript holds",
            source=str(timing),
            hint="name the timing file that was written with this typescript",
        )
    if rest:
        what = (
            "The timing file is empty"
            if not asked
            else f"The timing file ends {len(rest)} bytes before the typescript"
        )
        builder.remarks.append(f"{what}; what follows has no times.")
        builder.out(rest)


def _typed(value: bytes, timing: Path, builder: SessionBuilder) -> bytes:
    """What was typed, from a file of its own beside the timing file; empty where there is none."""
    name = PurePath(value.decode("utf-8", "surrogateescape")).name
    try:
        data = (timing.parent / name).read_bytes()
    except (OSError, ValueError):
        builder.remarks.append(
            f"What was typed is not known: the input log {name} does not stand beside the timing file. When it was typed is."
        )
        return b""
    header, footer = _HEADER.match(data), _FOOTER.search(data)
    return data[header.end() if header else 0 : footer.start() if footer else len(data)]


def _signal(builder: SessionBuilder, entry: _Entry) -> None:
    window = _WINCH.match(entry.value)
    size = _size(window[2], window[1]) if window else None
    if size is not None:
        builder.event(EventKind.RESIZE, time=entry.time, size=size)
    else:
        builder.event(EventKind.NOTE, b" ".join([entry.name, entry.value]).strip(), entry.time)


def _size(columns: bytes, rows: bytes) -> Size | None:
    if not (columns.isdigit() and rows.isdigit() and len(columns) < 9 and len(rows) < 9):
        return None
    size = Size(int(rows), int(columns))
    return size if all(1 <= side <= LARGEST_SIDE for side in size) else None


def _with_header(session: Session, header: bytes, builder: SessionBuilder) -> Session:
    fields = dict(_FIELD.findall(header))
    command = _COMMAND.search(header)
    size = None
    if b"COLUMNS" in fields or b"LINES" in fields:
        columns, rows = fields.get(b"COLUMNS", b""), fields.get(b"LINES", b"")
        size = _size(columns, rows)
        # A serial line tells no size: `script` then writes 0.
        if size is None and {columns, rows} != {b"0"}:
            raise SourceError(
                f"a screen of '{columns.decode(errors='replace')[:20]}x{rows.decode(errors='replace')[:20]}' cannot be measured",
                source=builder.name,
                line=1,
                hint=f"rows and columns go from 1 to {LARGEST_SIDE}",
            )
    return replace(
        session,
        size=size,
        dialect=fields[b"TERM"].decode(errors="replace") if fields.get(b"TERM") else None,
        command=command[1].decode(errors="replace") if command else None,
    )


def _with_footer(session: Session, footer: bytes) -> Session:
    status = dict(_FIELD.findall(footer)).get(b"COMMAND_EXIT_CODE", b"")
    if not footer:
        return replace(session, ending="interrupted")
    return replace(
        session,
        ending="limit" if b"max output size exceeded" in footer else "exited",
        exit_status=int(status) if status.isdigit() and len(status) < 9 else None,
    )
