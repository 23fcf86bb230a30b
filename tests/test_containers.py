"""Containers are known by how they begin. Those that Python writes itself come from there; the others from memory."""

from __future__ import annotations

import bz2
import gzip
import io
import lzma
import tarfile
import zipfile

import pytest

from fit.containers import ContainerKind, find_container

LOG = b"Lamp lit at dusk, wind NW 6.\r\n"


def zipped(*names: str) -> bytes:
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w") as archive:
        for name in names:
            archive.writestr(name, LOG)
    return written.getvalue()


def tarred(form: int) -> bytes:
    written = io.BytesIO()
    with tarfile.open(fileobj=written, mode="w", format=form) as archive:
        member = tarfile.TarInfo("watch/log.txt")
        member.size = len(LOG)
        archive.addfile(member, io.BytesIO(LOG))
    return written.getvalue()


ARC = b"\x1a\x02LOG.TXT\0     " + bytes((31, 0, 0, 0)) + b"dtt\1cc" + bytes((31, 0, 0, 0)) + LOG
LIBRARY = b"\0" + b" " * 11 + bytes((0, 0, 1, 0)) + bytes(16) + b"\0LOG     TXT" + bytes((1, 0, 1, 0))
LHA = b"\x1d\x33-lh5-" + bytes((31, 0, 0, 0, 31, 0, 0, 0)) + b"tttt\x20\0\x07LOG.TXTcc" + LOG


@pytest.mark.parametrize(
    ("data", "what"),
    [
        (zipped("log.txt"), "a ZIP archive"),
        (zipped(), "a ZIP archive"),
        (zipped("mimetype", "content.xml"), "an office document or electronic book"),
        (zipped("[Content_Types].xml", "word/document.xml"), "an office document or electronic book"),
        (tarred(tarfile.USTAR_FORMAT), "a tar archive"),
        (tarred(tarfile.GNU_FORMAT), "a tar archive"),
        (gzip.compress(LOG, mtime=0), "a file compressed with gzip"),
        (bz2.compress(LOG), "a file compressed with bzip2"),
        (lzma.compress(LOG), "a file compressed with xz"),
        (ARC, "an ARC archive"),
        (LIBRARY, "a library of several files"),
        (LHA, "an LHA archive"),
        (b"\x76\xff\0\0LOG.TXT\0", "a squeezed file"),
        (b"\x76\xfeLOG.TXT\0", "a crunched file"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_what_is_packed(data: bytes, what: str) -> None:
    container = find_container(data)
    assert container is not None
    assert container.what == what
    assert container.is_packed == (container.kind is not ContainerKind.DOCUMENT)


@pytest.mark.parametrize(
    "data",
    [
        b"",
        LOG * 20,
        b"PK: the pilot's key hangs by the door.\r\n",
        b"MZ: the mark of the zenith, nothing else on this line.\r\n",
        b"BZh! said the buzzer of the fog horn.\r\n",
        b"\x1a\x07LAMP\0\0\0\0\x1b=  \x1a\x07LAMP\0\0\0\0",
        b"GIF8 pictures of the lamp\r\n",
        "vÿ".encode(),
        b"a -lh5- is the mark of a packed file.\r\n",
        b" " * 257 + b"ustar is what the archive is marked with\r\n",
    ],
)
def test_what_only_looks_like_one(data: bytes) -> None:
    assert find_container(data) is None
