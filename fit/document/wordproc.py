"""Files of the word processors that ran under the 8-bit operating system and its successors, to blocks.

Their general shape, common practice, no source: text of 7 bits; bit 7 marks what the program put in or moved
(the last letter of a word, a space that fills a line, a line end that is soft); codes below 20h switch print
attributes; a line that starts with a dot is a command; 1Ah fills the last record.

    8D 0A   the program broke the line         0D 0A   the writer ended it
    1E      a place to break, not used         1F      a hyphen the program put in
    0F      a space that holds                 1B c 1C one character of the 8-bit set (here CP437)

Offsets in the blocks are byte offsets: ``Document.source`` is the file with bit 7 taken off.
"""

from __future__ import annotations

import re
from array import array
from collections import Counter

from fit.document.blocks import Document, Mark, Text
from fit.document.text import left_out, read_body
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Ending, Line
from fit.document.text.lines.overstrike import resolve
from fit.document.text.lines.reading import END_OF_FILE
from fit.document.text.lines.tabbed import align_tabs, cells_of

_ESCAPE, _SOFT_BREAK, _SOFT_HYPHEN = 0x1B, 0x1E, 0x1F
_HOLDING_SPACE, _FILLING_SPACE = 0x0F, 0xA0
_SUPERSCRIPT = 0x14
_SWITCHES = {0x02: Mark.BOLD, 0x04: Mark.BOLD, 0x13: Mark.UNDERLINE, 0x19: Mark.UNDERLINE}
_PRINT_CODES = frozenset(
    {0x00, 0x01, 0x03, 0x05, 0x06, 0x07, 0x0B, 0x0E, 0x11, 0x12, 0x14, 0x15, 0x16, 0x17, 0x18}
)
_COMMAND = re.compile(r"\.(?:[A-Za-z]{2}|[A-Za-z]\d|\.|[A-Za-z]+ ?[-+\d])")
_DIGIT = re.compile(rb"[0-9\xb0-\xb9]")
_LINE_END = re.compile(rb"[\r\x8d]?[\n\x8a]|[\r\x8d]|[\x0c\x8c]")


def read_wordproc(data: bytes, name: str) -> Document:
    """The document in ``data``, the bytes of a word-processor file; ``name`` is its file name."""
    text_end = data.find(END_OF_FILE.encode())
    rest = data[text_end:].strip(b"\x1a\0\r\n") if text_end >= 0 else b""
    body = data[:text_end] if text_end >= 0 else data
    source = data.translate(bytes(byte & 0x7F for byte in range(256))).decode("ascii")
    reader = _Reader()
    lines = reader.read(body)
    _distrust(lines)
    remarks = list(reader.remarks())
    if rest:
        remarks.append(f"{len(rest)} bytes after the end-of-file mark 1Ah at {text_end} were left out.")
    blocks = read_body(lines, Hyphens(source))
    return Document(source, blocks, "wordproc", "7-bit", name, tuple(remarks), left_out(lines, blocks))


class _Reader:
    """Bytes to lines; attributes run on from line to line."""

    def __init__(self) -> None:
        self._mark = Mark.NONE
        self._raised = False
        self._codes: Counter[str] = Counter()
        self._unknown: Counter[str] = Counter()
        self._commands = 0
        self._row: list[Text] = []

    def read(self, data: bytes) -> list[Line]:
        """All lines, blank ones too; commands as lines that stand aside."""
        lines: list[Line] = []
        tabbed: dict[int, list[Text]] = {}
        start = 0
        page = False
        while start < len(data):
            match = _LINE_END.search(data, start)
            end, after = (match.start(), match.end()) if match else (len(data), len(data))
            ending = data[end:after]
            line = self._line(data, start, end)
            line.ending = Ending.SOFT if ending[:1] == b"\x8d" else Ending.HARD
            line.page = page
            page = ending in {b"\x0c", b"\x8c"}
            if _COMMAND.match(line.cells):
                self._commands += 1
                line.aside = True
                page = page or line.cells[1:3].upper() == "PA"
            lines.append(line)
            if self._row:
                tabbed[len(lines) - 1] = self._row
            start = after
        align_tabs(tabbed, lines)
        return lines

    def _line(self, data: bytes, start: int, end: int) -> Line:
        chars: list[str] = []
        places: list[int] = []
        marks: list[int] = []
        place = start
        while place < end:
            byte = data[place]
            code = byte & 0x7F
            char = ""
            mark = self._mark
            if code == _ESCAPE and place + 2 < end and data[place + 2] & 0x7F == 0x1C:
                char = data[place + 1 : place + 2].decode("cp437")
                place += 2
            elif code == _SOFT_HYPHEN and place >= end - 1 - (data[end - 1] == _FILLING_SPACE):
                char = "\u00ad"
            elif byte == _FILLING_SPACE:
                filling = bool(chars) and (chars[-1] == " " or data[place + 1 : place + 2] in {b" ", b"\xa0"})
                char = "" if filling and "".join(chars).strip() else " "
            elif code == _HOLDING_SPACE:
                char = "\u00a0"
            elif code in _SWITCHES:
                self._mark ^= _SWITCHES[code]
                self._codes["print attribute"] += 1
            elif code in {_SOFT_BREAK, _SOFT_HYPHEN} or code in _PRINT_CODES:
                self._codes["print attribute" if code in _PRINT_CODES else "unused soft hyphen"] += 1
            else:
                char = chr(code)
            if code == _SUPERSCRIPT:
                self._raised = not self._raised
                if self._raised and "".join(chars[-1:]).isdigit() and _DIGIT.match(data, place + 1, end):
                    char = "^"  # 10 to the third is no 103
            if char:
                chars.append(char)
                places.append(-1 if code == _SUPERSCRIPT else place)
                marks.append(mark)
            place += 1
        self._row = []
        if not chars:
            return Line("", start)
        if "\t" in chars and all(char == "\t" or char.isprintable() for char in chars):
            self._row = cells_of(Text("".join(chars), array("q", places), bytes(marks)))
        return resolve("".join(chars), places, self._unknown, marks)

    def remarks(self) -> list[str]:
        """What was taken out, one sentence a kind."""
        said = [f"{count} codes ({kind}) were carried out." for kind, count in sorted(self._codes.items())]
        if self._commands:
            said.append(f"{self._commands} lines are commands to the printer and no text.")
        said += [
            f"{count} times the control code {code} was taken out: it has no meaning here."
            for code, count in sorted(self._unknown.items())
        ]
        return said


def _distrust(lines: list[Line]) -> None:
    """Where long lines mostly end hard the text was not typed as paragraphs: line ends then say nothing."""
    widest = max((line.end for line in lines), default=0)
    long = [line for line in lines if line.cells and line.end >= 0.8 * widest and not line.aside]
    hard = sum(line.ending is Ending.HARD for line in long)
    if hard > 0.7 * len(long):
        for line in lines:
            if line.ending is Ending.HARD:
                line.ending = Ending.UNKNOWN
