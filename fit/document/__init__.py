"""A document to blocks: one file a format. `read_document` finds the format and the encoding."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from importlib import import_module
from pathlib import Path
from typing import Final

from fit.document.blocks import Document
from fit.document.elsewhere import named_page, only_named
from fit.document.encoding import decode
from fit.document.recognise import (
    FORMATS,
    Recognised,
    recognise_bytes,
    recognise_text,
    refuse_containers,
    refuse_sessions,
)
from fit.document.wording import counted
from fit.document.wordproc import read_wordproc
from fit.errors import DocumentError, UsageError

LARGEST: Final = 200_000_000
"""Bytes of a document that are read; no manual for a small machine comes near."""


def read_document(
    path: str | Path,
    format: str | None = None,  # noqa: A002  the word its users know
    encoding: str | None = None,
    *,
    follow: bool = True,
) -> Document:
    """Read a document from a file.

    ``format`` is one of `FORMATS`, ``encoding`` one of `fit.document.encoding.ENCODINGS`; each is found
    from the content where it is None, and the remarks say how. A manual page that is no more than the name of
    another file is read there, where ``follow`` is set and that file lies beside the page or below.

    Raises `DocumentError` for what cannot be read, `UsageError` for an unknown format or encoding.
    """
    data = _content(path)
    given = page = Path(path)
    seen = {page}
    remarks: list[str] = []
    while follow and format in (None, "man") and (named := only_named(data)) is not None:
        other = named_page(named, page, given)
        if other is None or other in seen:  # pages that name each other in a circle hold none
            break
        seen.add(other)
        remarks.append(f"the page {page.name} says only that it stands in {named}, which was read instead")
        data, page = _content(other), other
    document = read_document_bytes(data, str(page) if remarks else str(path), format, encoding)
    return replace(document, remarks=(*document.remarks[:1], *remarks, *document.remarks[1:]))


def _content(path: str | Path) -> bytes:
    try:
        with Path(path).open("rb") as file:
            return file.read(LARGEST + 1)
    except OSError as error:
        raise DocumentError(
            f"cannot be read: {error.strerror}", source=str(path), hint="name a readable document"
        ) from None


def read_document_bytes(
    data: bytes,
    name: str,
    format: str | None = None,  # noqa: A002  the word its users know
    encoding: str | None = None,
) -> Document:
    """Read a document from its bytes, as `read_document` does from a file."""
    if format is not None and format not in FORMATS:
        raise UsageError(f"no format is named '{format[:40]}'", hint=f"known are {', '.join(FORMATS)}")
    if len(data) > LARGEST:
        raise DocumentError(f"has more than {LARGEST} bytes", source=name, hint="give it in parts")
    padding = len(data) - _text_end(data)
    data = data[: len(data) - padding]
    refuse_containers(data, name)
    if format is None:
        refuse_sessions(data, name)
    found = Recognised(format, "as given") if format else recognise_bytes(data)
    if found is not None and found.format == "wordproc":
        document = read_wordproc(data, name)
        remarks: tuple[str, ...] = ()
    else:
        decoded = decode(data, name, encoding)
        if not decoded.text.strip():
            raise DocumentError("is empty", source=name, hint="give a document with text in it")
        found = found or recognise_text(decoded.text, name)
        if found.format == "html" and decoded.encoding == "cp437":
            decoded = decode(data, name, encoding, page=True)
        document = _reader(found.format)(decoded.text, name, decoded.encoding)
        remarks = decoded.remarks
    if padding:
        remarks = (*remarks, f"{counted(padding, 'byte')} of padding at the end left out")
    if not document.blocks:
        raise DocumentError(
            f"holds no text when read as {found.format}",
            source=name,
            hint="give another --format, if it is another",
        )
    head = f"format {found.format}: {found.reason}"
    return replace(document, remarks=(head, *remarks, *document.remarks))


def _text_end(data: bytes) -> int:
    """Where the text ends: old systems count a file in records and fill the last one up, by 1Ah or by zeros."""
    if b"\x1a" in data[-128:]:
        return len(data.rstrip(b"\x1a\x00"))
    end = len(data.rstrip(b"\x00"))
    return len(data) if b"\x00" in data[:end] else end


def _reader(format: str) -> Callable[[str, str, str], Document]:  # noqa: A002  as above
    """The reader of a format of text, imported only now: each brings patterns and libraries of its own."""
    reader: Callable[[str, str, str], Document] = getattr(
        import_module(f"fit.document.{format}"), f"read_{format}"
    )
    return reader
