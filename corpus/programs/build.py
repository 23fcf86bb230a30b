"""Assemble the 8-bit demo programs: ``python corpus/programs/build.py``.

Each ``NAME.asm`` becomes ``disk/NAME.COM``. The assembler of the ``z80`` library does the work; it knows
numbers and names only, so that texts, characters and ``include`` are replaced before. All programs but one keep
to the instructions of the 8080, written in the mnemonics that the assembler has.
"""

from __future__ import annotations

import re
from pathlib import Path

from z80 import Asm, SourceFile

from fit.output import write_file

FOLDER = Path(__file__).parent
DISK = FOLDER / "disk"
START = 0x100

_TEXT = re.compile(r'"([^"]*)"')
_CHARACTER = re.compile(r"'(.)'")
_INCLUDE = re.compile(r"^include (\S+)$", re.MULTILINE)
_COMMENT = re.compile(r"\s*;.*$", re.MULTILINE)


def sources() -> list[Path]:
    """The programs, without what they include."""
    return sorted(path for path in FOLDER.glob("*.asm") if path.stem.isupper())


def expand(source: str) -> str:
    """The source as the assembler takes it."""
    whole = _INCLUDE.sub(lambda found: (FOLDER / found[1]).read_text("ascii"), source)
    parts = re.split(r'("[^"]*")', whole)
    # Comments and characters are looked for outside texts alone.
    parts[::2] = [_CHARACTER.sub(lambda found: str(ord(found[1])), part) for part in parts[::2]]
    plain = _TEXT.sub(lambda found: ", ".join(str(ord(char)) for char in found[1]), "".join(parts))
    return _COMMENT.sub("", plain)


def assemble(source: str, name: str) -> bytes:
    """The bytes of a program that starts at 0100h."""
    code = Asm().assemble(SourceFile(name, expand(source)))
    code.resolve()
    image = bytearray()
    for address, data in code.encode():
        image[address - START :] = bytes(max(0, address - START - len(image)))
        image += data
    return bytes(image)


def main() -> None:
    """Assemble all of them."""
    for path in sources():
        image = assemble(path.read_text("ascii"), path.name)
        write_file(DISK / f"{path.stem}.COM", image)
        print(f"{path.stem}.COM: {len(image):,} bytes")


if __name__ == "__main__":
    main()
