"""Where sessions come from: one file a kind. `read_session` recognises the kind from the content."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from enum import StrEnum
from pathlib import Path

from fit.errors import UsageError
from fit.session import Session
from fit.source.load import STANDARD_INPUT, STANDARD_INPUT_NAME, load
from fit.source.no_output import refuse_what_is_none
from fit.source.raw import read_raw
from fit.source.recording import read_recording
from fit.source.session_file import FORM, read_session_file
from fit.source.typescript import START, read_typescript

_COMMENTS = re.compile(rb"(?:\xef\xbb\xbf)?(?:#[^\n]*\n)*+")
"""What may stand before the header: the mark of UTF-8 that some editors set, and comments of a recording."""
_LONGEST_HEADER = 1 << 16  # bytes; the header of a recording takes a few hundred


class SourceKind(StrEnum):
    """What a file that a session is read from can be."""

    RAW = "raw"
    """The program's bytes as they are, or pasted text."""
    SESSION = "session"
    """Our own file form."""
    TYPESCRIPT = "typescript"
    """util-linux `script`."""
    RECORDING = "recording"
    """asciicast, version 2 or 3."""


def read_session(
    source: str | Path,
    *,
    timing: str | Path | None = None,
    kind: SourceKind | str | None = None,
    bare_lf: bool | None = None,
    join: bool | None = None,
) -> Session:
    """The session in a file, or in standard input where ``source`` is ``-``.

    ``timing`` is the timing file of a typescript. ``kind`` is found from the content where it is None.
    ``bare_lf`` says that LF alone means a new line, ``join`` that lines which a terminal had cut in two are
    to be joined; None decides both from the data.

    Raises `SourceError` where the file cannot be read or is a program, an archive or other binary data, `UsageError` where ``kind`` is unknown or does not
    go with ``timing``.
    """
    name = STANDARD_INPUT_NAME if str(source) == STANDARD_INPUT else str(source)
    if timing is not None and str(timing) == str(source) == STANDARD_INPUT:
        raise UsageError("standard input cannot be both typescript and timing file", hint="name a file")
    data = load(source)
    if kind is None:
        kind = find_kind(data)
        if kind is SourceKind.RAW and timing is None:
            refuse_what_is_none(data, name)
        # Some versions of `script` write no header, so the bytes of a typescript may look like any others.
        kind = SourceKind.TYPESCRIPT if timing is not None and kind is SourceKind.RAW else kind
    elif kind not in list(SourceKind):
        raise UsageError(f"no kind of source is named '{kind}'", hint=f"known are {', '.join(SourceKind)}")
    if timing is not None and kind != SourceKind.TYPESCRIPT:
        what = "printed text" if kind == SourceKind.RAW else f"a {kind}"
        raise UsageError(f"{what} has no timing file", source=name, hint="leave the timing file out")
    if join and kind != SourceKind.RAW:
        raise UsageError(f"only printed text has cut lines to join, and this is a {kind}", source=name)
    if kind == SourceKind.RAW:
        session = read_raw(data, name, bare_lf=bare_lf, join=join)
    elif kind == SourceKind.SESSION:
        session = read_session_file(data, name)
    elif kind == SourceKind.RECORDING:
        session = read_recording(data, name)
    else:
        times = b"" if timing is None else load(timing, may_be_empty=True)
        session = read_typescript(data, name, timing, times)
    session = replace(session, read_as=_READ_AS[SourceKind(kind)])
    return session if bare_lf is None else replace(session, bare_lf=bare_lf)


_READ_AS = {
    SourceKind.RAW: "printed text",
    SourceKind.SESSION: "a session file",
    SourceKind.TYPESCRIPT: "a typescript",
    SourceKind.RECORDING: "an asciicast recording",
}


def find_kind(data: bytes) -> SourceKind:
    """What kind of file the data is, from its first line."""
    if data.startswith(START):
        return SourceKind.TYPESCRIPT
    start = _COMMENTS.match(data).end()  # type: ignore[union-attr]  # it matches nothing, too
    end = data.find(b"\n", start, start + _LONGEST_HEADER) + 1 or start + _LONGEST_HEADER
    head = data[start:end].strip()
    if head.startswith(b'{"form": "%s"' % FORM.encode()):
        return SourceKind.SESSION
    if head.startswith(b"{"):
        return _kind_of_header(head)
    return SourceKind.RAW


def _kind_of_header(head: bytes) -> SourceKind:
    try:
        header = json.loads(head)
    except (ValueError, RecursionError):
        # A recording's header that is broken must be named as such, not measured as text.
        return SourceKind.RECORDING if head.startswith(b'{"version":') else SourceKind.RAW
    if header.get("form") == FORM:
        return SourceKind.SESSION
    if "version" in header and ("width" in header or "term" in header):
        return SourceKind.RECORDING
    return SourceKind.RAW
