"""Where sessions come from: one file a kind. `read_session` recognises the kind from the content."""

from __future__ import annotations

from pathlib import Path

from fit.session import Session
from fit.source.load import load
from fit.source.session_file import read_session_file


def read_session(source: str | Path) -> Session:
    """The session in a file, or in standard input where ``source`` is ``-``. Raises `SourceError`."""
    data = load(source)
    if data.startswith(b'{"form"'):
        return read_session_file(data, str(source))
    return Session(data, name=str(source))
