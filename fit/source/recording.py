"""Terminal recordings in the asciicast format, versions 2 and 3. Source: its published description, from memory.

The first line is a header object; each further line is ``[TIME, CODE, DATA]``: ``o`` printed, ``i`` typed,
``r`` resized to ``COLUMNSxROWS``, ``m`` a marker, ``x`` (version 3) the exit status. Version 2 counts seconds
since the start, version 3 since the event before; in version 3 a line that starts with ``#`` is a comment.
The text is Unicode, so the session is UTF-8.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from typing import Any

from fit.errors import SourceError
from fit.session import EventKind, Session
from fit.source.builder import SessionBuilder
from fit.source.json_lines import checked_size, json_lines, seconds
from fit.units import LARGEST_SIDE, Size

_SIZE = re.compile(r"([0-9]{1,8})x([0-9]{1,8})")


def read_recording(data: bytes, name: str) -> Session:
    """The session of a recording. Raises `SourceError` with the line that cannot be read."""
    lines = json_lines(data, name, comment=b"#" if _version(data, name) == 3 else None)
    number, header = next(lines)
    is_relative = header["version"] == 3
    frame = _frame(header, name, number)
    builder = SessionBuilder(name)
    unknown: Counter[str] = Counter()
    now = 0.0
    status = None
    for number, value in lines:
        time, code, text = _event(value, name, number)
        now = now + time if is_relative else time
        if code == "x" and is_relative:
            status = int(text) if text.isascii() and text.isdigit() and len(text) < 9 else None
        else:
            _take(builder, now, code, text, unknown)
    if unknown:
        kinds = ", ".join(f"'{code[:20]}' ({count})" for code, count in sorted(unknown.items()))
        builder.remarks.append(f"Events of unknown kinds were kept as notes: {kinds}.")
    built = builder.build()
    return replace(
        built,
        size=frame.size,
        dialect=frame.dialect,
        command=frame.command,
        encoding="utf-8",
        exit_status=status,
        ending="exited" if status is not None else None,
    )


def _version(data: bytes, name: str) -> int:
    """The version in the header."""
    number, header = next(json_lines(data, name, comment=b"#"), (1, None))
    version = header.get("version") if isinstance(header, dict) else None
    if version not in (2, 3):
        raise SourceError(
            f"has version {str(version)[:20]} of the recording format",
            source=name,
            line=number,
            hint="versions 2 and 3 can be read",
        )
    return int(version)


def _frame(header: dict[str, Any], name: str, line: int) -> Session:
    """What the header tells of the terminal and the program."""
    term = header.get("term")
    env = header.get("env")
    if header["version"] == 3:
        term = term if isinstance(term, dict) else {}
        size = checked_size(term.get("cols"), term.get("rows"), name, line)
        dialect = term.get("type")
    else:
        size = checked_size(header.get("width"), header.get("height"), name, line)
        dialect = env.get("TERM") if isinstance(env, dict) else None
    command = header.get("command")
    return Session(
        b"",
        size=size,
        dialect=dialect if isinstance(dialect, str) else None,
        command=command if isinstance(command, str) else None,
    )


def _event(value: Any, name: str, line: int) -> tuple[float, str, str]:
    if isinstance(value, list) and len(value) == 3:
        time = seconds(value[0])
        if time is not None and time >= 0 and isinstance(value[1], str) and isinstance(value[2], str):
            return time, value[1], value[2]
    raise SourceError("is no event", source=name, line=line, hint='an event is such as [0.5, "o", "text"]')


def _take(builder: SessionBuilder, time: float, code: str, text: str, unknown: Counter[str]) -> None:
    data = text.encode("utf-8", "surrogatepass")
    if code == "o":
        builder.out(data, time)
    elif code == "i":
        builder.event(EventKind.INPUT, data, time)
    elif code == "m":
        builder.event(EventKind.NOTE, data, time)
    elif code == "r" and (size := _size(text)) is not None:
        builder.event(EventKind.RESIZE, time=time, size=size)
    else:
        unknown[code if code != "r" else f"r {text}"] += 1
        builder.event(EventKind.NOTE, f"{code} ".encode("utf-8", "surrogatepass") + data, time)


def _size(text: str) -> Size | None:
    match = _SIZE.fullmatch(text)
    if match is None:
        return None
    size = Size(int(match[2]), int(match[1]))
    return size if all(1 <= side <= LARGEST_SIDE for side in size) else None
