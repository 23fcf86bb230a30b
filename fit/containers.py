"""Files that hold other things packed, or no text at all: known by how they begin, whatever their name.

A session, a document and a program are none of them, so each of these asks here before it takes a file for its own.
The marks are those that the formats define (from memory); those of the 8-bit operating system are common practice.
"""

from __future__ import annotations

import re
from enum import StrEnum
from typing import Final, NamedTuple

HEAD: Final = 512
"""Bytes of a file that show what it is: the mark of a tape archive stands at 257."""


class ContainerKind(StrEnum):
    """What has to be done with a container before anything of it can be used."""

    ARCHIVE = "archive"
    """It holds files."""
    COMPRESSED = "compressed file"
    """It holds one file."""
    DOCUMENT = "document"
    """An office document and its like: its text is packed."""
    MEDIA = "picture, sound or film"
    PROGRAM = "program"
    """For a processor or a system that is not ours."""


class Container(NamedTuple):
    """A file that begins as no session, document or program of ours does."""

    what: str
    """With its article: "a ZIP archive"."""
    kind: ContainerKind

    @property
    def is_packed(self) -> bool:
        """Whether something may be in it that can be used once it is unpacked."""
        return self.kind in (ContainerKind.ARCHIVE, ContainerKind.COMPRESSED)

    @property
    def todo(self) -> str:
        """What to do with it."""
        return _TODO.get(self.kind, "turn it into text first")


_TODO: Final = {ContainerKind.ARCHIVE: "unpack it first", ContainerKind.COMPRESSED: "uncompress it first"}
_NAME: Final = rb"[A-Z0-9$#&@!%'(){}~`^_-]{1,8}(?:\.[A-Z0-9$#&@!%'(){}~`^_-]{0,3})?"
"""A name of the 8-bit operating systems, as their archives hold it."""
_PACKED_PARTS: Final = rb"\[Content_Types\]\.xml|mimetype|_rels/|docProps/|word/"
"""The first file in the archive that an office document or an electronic book is."""

_MARKS: Final = tuple(
    (re.compile(mark, re.DOTALL), Container(what, kind))
    for mark, what, kind in (
        (
            rb"PK\x03\x04.{26}(?:%b)" % _PACKED_PARTS,
            "an office document or electronic book",
            ContainerKind.DOCUMENT,
        ),
        (rb"PK(?:\x03\x04|\x05\x06|\x07\x08)", "a ZIP archive", ContainerKind.ARCHIVE),
        (rb".{257}ustar(?:\0|  \0)", "a tar archive", ContainerKind.ARCHIVE),
        (rb"7z\xbc\xaf\x27\x1c", "a 7z archive", ContainerKind.ARCHIVE),
        (rb"Rar!\x1a\x07", "a RAR archive", ContainerKind.ARCHIVE),
        (rb".{2}-l(?:h[0-9d]|z[s45])-[^\0]{0,15}\0", "an LHA archive", ContainerKind.ARCHIVE),
        (rb"\x1a[\x02-\x0b](?=%b\0).{16}\0.{9}\0" % _NAME, "an ARC archive", ContainerKind.ARCHIVE),
        (rb"\0 {11}\0\0", "a library of several files", ContainerKind.ARCHIVE),
        (rb"!<arch>\n", "an ar archive", ContainerKind.ARCHIVE),
        (rb"\x1f\x8b\x08", "a file compressed with gzip", ContainerKind.COMPRESSED),
        (rb"\x1f\x9d", "a file compressed with compress", ContainerKind.COMPRESSED),
        (rb"BZh[1-9]1AY&SY", "a file compressed with bzip2", ContainerKind.COMPRESSED),
        (rb"\xfd7zXZ\0", "a file compressed with xz", ContainerKind.COMPRESSED),
        (rb"\x28\xb5\x2f\xfd", "a file compressed with zstd", ContainerKind.COMPRESSED),
        (rb"\x76\xff", "a squeezed file", ContainerKind.COMPRESSED),
        (rb"\x76[\xfd\xfe]", "a crunched file", ContainerKind.COMPRESSED),
        (rb"%PDF-", "a PDF document", ContainerKind.DOCUMENT),
        (rb"\xd0\xcf\x11\xe0", "an office document", ContainerKind.DOCUMENT),
        (rb"\x89PNG\r\n|\xff\xd8\xff|GIF8[79]a|(?:II\*\0|MM\0\*)", "a picture", ContainerKind.MEDIA),
        (rb"RIFF.{4}(?:WAVE|AVI )|OggS\0|ID3[\x02-\x04]|fLaC\0", "a sound or film", ContainerKind.MEDIA),
        (rb"\x7fELF", "a program for a modern operating system", ContainerKind.PROGRAM),
        (rb"MZ.{0,26}\0", "a program for 16-bit x86 processors (an .EXE file)", ContainerKind.PROGRAM),
    )
)


def find_container(data: bytes) -> Container | None:
    """What a file is that begins so; None where nothing of this fits."""
    head = data[:HEAD]
    return next((container for mark, container in _MARKS if mark.match(head)), None)
