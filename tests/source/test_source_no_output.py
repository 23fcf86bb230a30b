"""Programs, archives and binary data are no output: they are refused with what to do, unless somebody says that they are."""

from __future__ import annotations

import gzip
import random
from pathlib import Path

import pytest

from fit.errors import SourceError
from fit.source import read_session
from fit.source.no_output import refuse_what_is_none

DISK = Path(__file__).parents[2] / "corpus" / "programs" / "disk"
RUN = "is an 8-bit program and not what one prints; run it: fit run PROGRAM -o OUT, then fit check OUT; or give --kind raw"
CAPTURE = "is a program and not what one prints; record it: fit capture OUT -- COMMAND; or give --kind raw"


@pytest.mark.parametrize("path", sorted(DISK.glob("*.COM")), ids=lambda path: path.name)
def test_an_8_bit_program_whatever_its_name(path: Path, tmp_path: Path) -> None:
    other = tmp_path / "lamp"
    other.write_bytes(path.read_bytes())
    for place in (path, other):
        with pytest.raises(SourceError) as caught:
            read_session(place)
        assert str(caught.value) == f"{place}: {RUN}"
    assert read_session(path, kind="raw").output == path.read_bytes()


@pytest.mark.parametrize(
    ("data", "name", "said"),
    [
        (b"\x7fELF\x02\x01\x01" + bytes(9), "lamp", CAPTURE),
        (b"\x3e\x00\xc9", "LAMP.COM", RUN),
        (b"\x0e\x09\xc3\x05\x00", "lamp", RUN),
    ],
)
def test_other_programs(data: bytes, name: str, said: str) -> None:
    with pytest.raises(SourceError) as caught:
        refuse_what_is_none(data, name)
    assert str(caught.value) == f"{name}: {said}"


@pytest.mark.parametrize(
    ("data", "name"),
    [
        (b"High water 3.20\r\n", "TIDES.COM"),
        (b"\x1bY\x20\x20\x00\x00\x00The lamp is lit.\r\n", "lamp"),
        (b"\x05\x00\x05\x00 who is there\r\n", "lamp"),
        ("═══ the lamp ═══\r\n".encode("cp437"), "lamp"),
        (b"MZ: the mark of the zenith\r\n", "lamp"),
        (b"#!/bin/sh\necho dusk\n", "lamp"),
        (bytes(range(256)), "lamp"),
        (
            (
                "\u2554\u2550 the stores \u2550\u2557\r\n".encode("cp437")
                + b"K\x03 7\x06 A\x05 Q\x04 \x01\x02\r\n"
            )
            * 40,
            "lamp",
        ),
        (b"\x1a\x07LAMP\0\0\0\0\x1b=  The lamp is lit.\r\n", "lamp"),
        (b"PK: the pilot's key\r\n", "lamp.zip"),
    ],
)
def test_what_may_be_output_is_measured(data: bytes, name: str) -> None:
    refuse_what_is_none(data, name)


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (
            b"PK\x03\x04\x14" + bytes(25) + b"log.txt",
            "is a ZIP archive and not what a program prints; unpack it first, or give --kind raw",
        ),
        (
            gzip.compress(b"The lamp is lit.\r\n", mtime=0),
            "is a file compressed with gzip and not what a program prints; uncompress it first, or give --kind raw",
        ),
        (
            b"%PDF-1.4\n",
            "is a PDF document and not what a program prints; turn it into text first, or give --kind raw",
        ),
        (
            random.Random(1).randbytes(600),
            "holds binary data and not what a program prints; give its output, or give --kind raw",
        ),
    ],
    ids=("archive", "compressed", "document", "noise"),
)
def test_archives_and_binary_data(data: bytes, said: str, tmp_path: Path) -> None:
    path = tmp_path / "watch.out"
    path.write_bytes(data)
    with pytest.raises(SourceError) as caught:
        read_session(path)
    assert str(caught.value) == f"{path}: {said}"
    assert read_session(path, kind="raw").output == data
