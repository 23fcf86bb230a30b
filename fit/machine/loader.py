"""A program file to a program, or one sentence on why it cannot be one.

Programs for 16-bit x86 processors have the same file names; they are told by evidence: the software
interrupts 21h and 20h that their operating system uses, against the calls of 0005h that ours uses.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from fit.containers import find_container
from fit.errors import ProgramError
from fit.machine.layout import LARGEST_PROGRAM

_SAMPLE: Final = 4096
_TEXT_SHARE: Final = 0.98
_PADDING: Final = b"\x1a\x00"
_TEXT_BYTES: Final = bytes(range(0x20, 0x7F)) + b"\t\n\r\f\b\x1a\x1b"

_BDOS_CALL: Final = re.compile(rb"[\xcd\xc3\xca\xc2\xda\xd2\xcc\xc4]\x05\x00")
_TOP_WORD: Final = re.compile(rb"[\x2a\x3a][\x06\x07\x01\x02]\x00")
_DOS_CALL: Final = re.compile(
    rb"\xb4.{0,8}\xcd[\x10\x16\x21]|\xb8.[\x09\x4c]\xcd\x21|\xcd\x20(?=\x00|$|\xc3|\x90)", re.DOTALL
)
_SHORT_JUMP: Final = 0xEB
_NEAR_JUMP: Final = 0xE9


@dataclass(frozen=True, slots=True)
class Program:
    """An 8-bit program, to be loaded at 0100h."""

    name: str
    image: bytes
    folder: Path | None = None
    """Where it came from: drive A, unless the user says otherwise. None: drive A is empty."""
    remarks: tuple[str, ...] = ()


def load_program(path: Path) -> Program:
    """Read and recognise a program file. Raises ProgramError with the reason why it is none."""
    source = str(path)
    if path.is_dir():
        raise ProgramError("this is a folder", source=source, hint="name a program file")
    try:
        with path.open("rb") as file:
            image = file.read(LARGEST_PROGRAM + 1)  # a device may have no end
        if len(image) > LARGEST_PROGRAM:
            size = path.stat().st_size
            long = f"{size:,}" if size > LARGEST_PROGRAM else f"more than {LARGEST_PROGRAM:,}"
            raise ProgramError(
                f"the program is {long} bytes long; at most {LARGEST_PROGRAM:,} fit into 64 KiB of memory",
                source=source,
            )
    except OSError as error:
        raise ProgramError(
            f"cannot be read: {error.strerror}", source=source, hint="name a readable program"
        ) from None
    return Program(path.name, image, path.parent, check_image(image, source))


def check_image(image: bytes, source: str) -> tuple[str, ...]:
    """Raise ProgramError where bytes are no 8-bit program; else return remarks on them."""
    if not image.rstrip(_PADDING):
        raise ProgramError("the program is empty", source=source)
    container = find_container(image)
    if container is not None:
        hint = container.todo if container.is_packed else None
        raise ProgramError(f"this is {container.what}, not an 8-bit program", source=source, hint=hint)
    evidence = _x86_evidence(image)
    if evidence:
        raise ProgramError(f"this is a program for 16-bit x86 processors ({evidence})", source=source)
    if _is_text(image):
        raise ProgramError(
            "this is text, not a program", source=source, hint="measure it as a document instead"
        )
    if image[0] == 0xC9 and len(image) > 256:
        return ("It starts with a RET, as programs for a later version of the operating system do.",)
    return ()


def _x86_evidence(image: bytes) -> str:
    """What speaks for an x86 program, where it outweighs what speaks for ours; else empty."""
    theirs = len(_DOS_CALL.findall(image))
    ours = len(_BDOS_CALL.findall(image)) + len(_TOP_WORD.findall(image))
    if theirs <= 3 * ours:
        return ""
    starts = image[0] in (_SHORT_JUMP, _NEAR_JUMP)
    if theirs == 1 and len(image) > 512 and not starts:
        return ""
    jump = "starts with an x86 jump, and " if starts else ""
    times = "once" if theirs == 1 else f"{theirs} times"
    return f"it {jump}calls software interrupts 21h or 20h {times}, 0005h {ours or 'not once'}" + (
        "" if ours == 0 else f" time{'s' if ours > 1 else ''}"
    )


def _is_text(image: bytes) -> bool:
    """Whether it is text. Text holds no zero byte before its padding; a program does, in the first address it calls."""
    sample = image.rstrip(_PADDING)[:_SAMPLE]
    if 0 in sample:
        return False
    try:
        sample.decode("utf-8")
        is_utf8 = any(byte >= 0x80 for byte in sample)
    except UnicodeDecodeError:
        is_utf8 = False
    plain = len(sample) - len(sample.translate(None, _TEXT_BYTES))
    high = sum(byte >= 0x80 for byte in sample) if is_utf8 else 0
    return plain + high >= _TEXT_SHARE * len(sample)
