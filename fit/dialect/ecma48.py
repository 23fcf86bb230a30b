"""ECMA-48 as programs use it: the dialect of the VT100, the VT220 and their heirs.

Follows ECMA-48, 5th edition (1991), and the parser behaviour of the VT series: controls inside a sequence are
carried out at once, CAN and SUB abandon a sequence, ESC starts a new one. Departures:

* C1 controls are taken in 8-bit encodings that leave 80h to 9Fh free (Latin-1) and, encoded, in UTF-8.
* BEL also ends an operating system command, and ``ESC k`` starts a title (common practice, no source).
* Colon sub-parameters are understood in SGR alone.
* Parameters above 65535 count as 65535.

Feeding the whole output and feeding any split of it give operations with the same effect.
"""

from __future__ import annotations

import re
from typing import Final

from fit.dialect.encoding import TABLES
from fit.dialect.operation import Operation
from fit.dialect.sequences import C1, CONTROLS, CSI, ESCAPE, KNOWN, SIGNED, TAKES_ALL
from fit.dialect.utf8_text import decode_utf8, incomplete_tail
from fit.dialect.vt52_mode import VT52_ESCAPE, vt52_address

_GROUND, _ESCAPE, _CSI, _STRING, _ADDRESS = range(5)
_LARGEST_PARAMETER: Final = 65535
_LONGEST_SEQUENCE: Final = 4096
"""Characters of a control sequence that are kept; what is longer cannot mean anything."""
_LONGEST_TITLE: Final = 1024
_MOST_CACHED: Final = 20_000

_CSI_PATTERN: Final = r"\x1b\[[<=>?]?[0-9;]*[ -/]*[@-~]"
_PARAMETERS: Final = re.compile(r"([<=>?]?)([0-9;:]*)([ -/]*)([@-~])")
_STRING_END: Final = re.compile(r"[\x07\x18\x1a\x1b\x9c]")
_STRINGS: Final = {"]": "OSC", "P": "DCS", "X": "SOS", "^": "PM", "_": "APC", "k": "title"}
_DESIGNATORS: Final = "()*+-./"

_Meaning = tuple[str, tuple[int, ...], bool]


def _token_pattern(text: str, high: str) -> re.Pattern[str]:
    """Groups: 1 text, 2 new line, 3 control sequence, 4 control, 5 bytes to decode, 6 the rest."""
    return re.compile(
        rf"([{text}]+)|(\r\n)|({_CSI_PATTERN})|([\x00-\x1a\x1c-\x1f\x7f])|([{high}]+)|(.)", re.DOTALL
    )


_TEXT, _NEWLINE, _SEQUENCE, _CONTROL, _HIGH = 1, 2, 3, 4, 5
_C1_CHARACTER: Final = re.compile("[\x80-\x9f]")
_UTF8_TOKENS = _token_pattern(r"\x20-\x7e", r"\x80-\xff")
_LATIN_TOKENS = _token_pattern(r"\x20-\x7e\xa0-\xff", r"\x80-\x9f")
_FULL_TOKENS = _token_pattern(r"\x20-\x7e\x80-\xff", r"\u0100")  # no byte is in the high group


class Ecma48:
    """Output bytes to operations. ``encoding`` is a name of `fit.dialect.encoding`.

    ``bare_lf``: a line feed also returns the carriage, as in text that was pasted from a terminal.
    """

    def __init__(self, encoding: str = "utf-8", *, bare_lf: bool = False) -> None:
        self.name = "ecma48"
        self.encoding = encoding
        self._bare_lf = bare_lf
        self._utf8 = encoding == "utf-8"
        self._table = TABLES.get(encoding)
        self._tokens = (
            _UTF8_TOKENS if self._utf8 else _LATIN_TOKENS if encoding == "latin-1" else _FULL_TOKENS
        )
        self._state = _GROUND
        self._begin = 0
        self._sequence = ""
        self._string = ""
        self._payload = ""
        self._after_string = False
        self._undecoded = ""
        self._vt52 = False
        self._meanings: dict[str, _Meaning] = {}

    # Feeding

    def feed(self, data: bytes, start: int) -> list[Operation]:
        """Take the next bytes of the output, the first of which stands at offset ``start``."""
        chars = (
            data.decode("latin-1")
            if self.encoding != "7bit"
            else data.translate(_SEVEN_BITS).decode("latin-1")
        )
        if self._undecoded:
            chars = self._undecoded + chars
            start -= len(self._undecoded)
            self._undecoded = ""
        operations: list[Operation] = []
        position = 0
        while position < len(chars):
            if self._state == _GROUND:
                position = self._ground(chars, position, start, operations)
            elif self._state == _STRING:
                position = self._in_string(chars, position, start, operations)
            else:
                position = self._in_sequence(chars, position, start, operations)
        return operations

    def finish(self) -> list[Operation]:
        """An unfinished sequence at the end is not understood; an unfinished character is a replacement."""
        if self._undecoded:
            rest, self._undecoded = self._undecoded, ""
            offset = self._end - len(rest)
            return [(offset, self._end, "draw", ("\ufffd", [offset]), False)]
        if self._state != _GROUND:
            self._state = _GROUND
            seen = (self._sequence or self._string + self._payload)[:_LONGEST_SEQUENCE]
            return [(self._begin, self._end, "debug", (b"\x1b" + seen.encode("latin-1", "replace"),), False)]
        return []

    def _ground(self, chars: str, position: int, start: int, operations: list[Operation]) -> int:
        """Read plain text and complete sequences from ``position`` on; stop where the state changes."""
        append = operations.append
        meanings = self._meanings
        table = self._table
        self._end = start + len(chars)
        if self._vt52:
            return self._vt52_ground(chars, position, start, operations)
        for match in self._tokens.finditer(chars, position):
            kind = match.lastindex
            low, high = match.span()
            if kind == _TEXT:
                text = match.group()
                if table is not None and not text.isascii():
                    text = text.translate(table)
                append((start + low, start + high, "draw", (text, start + low), False))
            elif kind == _NEWLINE:
                append((start + low, start + low + 1, "carriage_return", (), False))
                append((start + low + 1, start + high, "linefeed", (), False))
            elif kind == _SEQUENCE:
                sequence = match.group()
                meaning = meanings.get(sequence) or self._meaning(sequence)
                if meaning[0]:
                    append(
                        (start + low, start + high, *meaning)
                        if meaning[0] != "debug"
                        else self._debug(start + low, sequence)
                    )
                if meaning[0] == "reset_mode" and meaning[2] and 2 in meaning[1]:
                    self._vt52 = True
                    return high
            elif kind == _CONTROL:
                self._control(ord(match.group()), start + low, operations)
            elif kind == _HIGH and self._utf8:
                stop = self._decode(match.group(), start + low, high == len(chars), operations)
                if self._state != _GROUND:
                    return low + stop
            elif match.group() == "\x1b":
                self._open(_ESCAPE, start + low, "")
                return high
            else:
                self._c1(ord(match.group()[0]), start + low, operations)
                return low + 1
        return len(chars)

    def _open(self, state: int, begin: int, sequence: str) -> None:
        self._state = state
        self._begin = begin
        self._sequence = sequence

    # Single controls

    def _control(self, code: int, offset: int, operations: list[Operation]) -> None:
        event = CONTROLS.get(code)
        if event is None:
            operations.append((offset, offset + 1, "debug", (bytes([code]),), False))
            return
        if event == "linefeed" and self._bare_lf:
            operations.append((offset, offset + 1, "carriage_return", (), False))
        if event:
            operations.append((offset, offset + 1, event, (), False))

    def _c1(self, code: int, offset: int, operations: list[Operation]) -> None:
        """A C1 control is the escape sequence with the same meaning."""
        self._open(_ESCAPE, offset, "")
        self._escape_byte(C1[code], offset, operations)

    # Decoding UTF-8

    def _decode(self, run: str, offset: int, at_end: bool, operations: list[Operation]) -> int:
        """Draw a run of bytes above 7Fh; give how many were taken. Stops behind a C1 control."""
        raw = run.encode("latin-1")
        cut = incomplete_tail(raw) if at_end else 0
        text, offsets = decode_utf8(raw[:-cut] if cut else raw, offset)
        first = 0
        for control in _C1_CHARACTER.finditer(text):
            index = control.start()
            self._draw_decoded(text[first:index], offsets[first:index], offsets[index], operations)
            self._c1(ord(text[index]), offsets[index], operations)
            if self._state != _GROUND:
                return offsets[index] + 2 - offset
            first = index + 1
        self._undecoded = run[len(raw) - cut :]
        self._draw_decoded(text[first:], offsets[first:], offset + len(raw) - cut, operations)
        return len(raw)

    @staticmethod
    def _draw_decoded(text: str, offsets: list[int], end: int, operations: list[Operation]) -> None:
        if text:
            operations.append((offsets[0], end, "draw", (text, offsets), False))

    # Escape and control sequences, a character at a time

    def _in_sequence(self, chars: str, position: int, start: int, operations: list[Operation]) -> int:
        while position < len(chars):
            char = chars[position]
            offset = start + position
            code = ord(char)
            if self._state == _ADDRESS:
                self._address_byte(char, offset, operations)
            elif char == "\x1b":
                self._abandon(offset, operations)
                self._open(_ESCAPE, offset, "")
            elif code in (0x18, 0x1A):
                self._abandon(offset, operations)
            elif code < 0x20:
                self._control(code, offset, operations)
            elif code == 0x7F:
                pass
            elif code > 0x7F:
                self._abandon(offset, operations)
                self._end = start + len(chars)
                return position
            elif self._state == _ESCAPE:
                self._escape_byte(char, offset, operations)
            else:
                self._csi_byte(char, offset, operations)
            position += 1
            self._end = start + position
            if self._state in (_GROUND, _STRING):
                return position
        return position

    def _abandon(self, offset: int, operations: list[Operation]) -> None:
        """A sequence that another one, or a byte that cannot be in it, cut off. An ESC that ended a string is none."""
        if not self._after_string:
            operations.append((self._begin, offset, *self._not_understood(self._sequence)))
        self._after_string = False
        self._state = _GROUND

    def _escape_byte(self, char: str, offset: int, operations: list[Operation]) -> None:
        if self._vt52:
            self._vt52_byte(char, offset, operations)
        elif " " <= char <= "/":
            if len(self._sequence) < _LONGEST_SEQUENCE:
                self._sequence += char
        elif self._sequence:
            self._sequence += char
            self._state = _GROUND
            self._end_escape(offset, operations)
        elif char == "[":
            self._open(_CSI, self._begin, "[")
        elif char in _STRINGS:
            self._state = _STRING
            self._string, self._payload, self._sequence = char, "", ""
        else:
            self._sequence = char
            self._state = _GROUND
            if char == "\\" and self._after_string:
                self._after_string = False
                return
            self._end_escape(offset, operations)
        self._after_string = False

    def _end_escape(self, offset: int, operations: list[Operation]) -> None:
        sequence = self._sequence
        known = ESCAPE.get(sequence)
        span = (self._begin, offset + 1)
        if known is not None:
            if known[0] != KNOWN and not (self._utf8 and known[0] == "lock_right"):
                operations.append((*span, known[0], known[1], False))
        elif len(sequence) > 1 and sequence[0] in _DESIGNATORS:
            operations.append((*span, "define_charset", (sequence[1:], sequence[0]), False))
        else:
            operations.append((*span, *self._not_understood(sequence)))

    def _csi_byte(self, char: str, offset: int, operations: list[Operation]) -> None:
        if len(self._sequence) < _LONGEST_SEQUENCE or char >= "@":
            self._sequence += char
        if char < "@":
            return
        self._state = _GROUND
        sequence = "\x1b" + self._sequence
        meaning = self._meaning(sequence)
        if meaning[0] == "debug":
            operations.append((self._begin, offset + 1, *self._not_understood(self._sequence)))
        elif meaning[0]:
            operations.append((self._begin, offset + 1, *meaning))
        if meaning[0] == "reset_mode" and meaning[2] and 2 in meaning[1]:
            self._vt52 = True

    # What a control sequence means

    def _meaning(self, sequence: str) -> _Meaning:
        """The event, arguments and private flag of a complete control sequence, ``ESC [`` included."""
        meaning = _csi_meaning(sequence[2:])
        if len(self._meanings) < _MOST_CACHED and len(sequence) < 40:
            self._meanings[sequence] = meaning
        return meaning

    @staticmethod
    def _not_understood(sequence: str) -> tuple[str, tuple[bytes], bool]:
        return "debug", (b"\x1b" + sequence.encode("latin-1", "replace"),), False

    def _debug(self, offset: int, sequence: str) -> Operation:
        return (offset, offset + len(sequence), "debug", (sequence.encode("latin-1", "replace"),), False)

    # Strings

    def _in_string(self, chars: str, position: int, start: int, operations: list[Operation]) -> int:
        """Pass over the payload of a control string to its end."""
        while True:
            match = _STRING_END.search(chars, position)
            stop = len(chars) if match is None else match.start()
            if len(self._payload) < _LONGEST_TITLE:
                self._payload += chars[position : min(stop, position + _LONGEST_TITLE)]
            self._end = start + stop
            if match is None:
                return stop
            char = match.group()
            position = stop + 1
            if (char == "\x07" and self._string not in "]k") or (char == "\x9c" and self._table is None):
                continue
            if char == "\x9c" and self.encoding != "latin-1":
                continue
            self._state = _GROUND
            if char not in "\x18\x1a":
                self._end_string(start + stop + 1, operations)
            if char == "\x1b":
                self._after_string = True
                self._open(_ESCAPE, start + stop, "")
            return position

    def _end_string(self, end: int, operations: list[Operation]) -> None:
        payload = self._payload
        if self._utf8:
            payload = payload.encode("latin-1").decode("utf-8", "replace")
        number, _, text = payload.partition(";")
        events = {"0": ("set_icon_name", "set_title"), "1": ("set_icon_name",), "2": ("set_title",)}
        if self._string == "k":
            operations.append((self._begin, end, "set_title", (payload,), False))
        elif self._string == "]":
            operations.extend((self._begin, end, event, (text,), False) for event in events.get(number, ()))

    # VT52 mode (DECANM)

    def _vt52_ground(self, chars: str, position: int, start: int, operations: list[Operation]) -> int:
        stop = chars.find("\x1b", position)
        end = len(chars) if stop < 0 else stop
        self._vt52 = False
        while position < end and self._state == _GROUND:
            position = self._ground(chars[:end], position, start, operations)
        self._vt52 = True
        self._end = start + len(chars)
        if self._state == _GROUND and stop >= 0:
            self._undecoded = ""
            self._open(_ESCAPE, start + stop, "")
            return stop + 1
        return position

    def _vt52_byte(self, char: str, offset: int, operations: list[Operation]) -> None:
        self._state = _GROUND
        self._after_string = False
        if char == "Y":
            self._open(_ADDRESS, self._begin, "Y")
        elif char == "<":
            self._vt52 = False
        elif char in VT52_ESCAPE:
            operations.extend((self._begin, offset + 1, *meaning, False) for meaning in VT52_ESCAPE[char])
        else:
            operations.append((self._begin, offset + 1, *self._not_understood(char)))

    def _address_byte(self, char: str, offset: int, operations: list[Operation]) -> None:
        self._sequence += char
        if len(self._sequence) == 3:
            self._state = _GROUND
            operations.append(
                (self._begin, offset + 1, "cursor_position", vt52_address(self._sequence), False)
            )


_SEVEN_BITS: Final = bytes(code & 0x7F for code in range(256))


def _csi_meaning(body: str) -> _Meaning:
    """The meaning of a control sequence without its introducer."""
    parts = _PARAMETERS.fullmatch(body)
    if parts is None:
        return "debug", (), False
    prefix, numbers, intermediate, final = parts.groups()
    event, most = CSI.get(prefix + intermediate + final, (None, 0))
    if event is None or (":" in numbers and final != "m"):
        return "debug", (), False
    if final == "s" and not prefix and not intermediate and not numbers:
        return "save_cursor_position", (), False
    values = _sgr_values(numbers) if ":" in numbers else tuple(map(_number, numbers.split(";")))
    if event not in TAKES_ALL:
        values = values[:most]
    if final in SIGNED and event.endswith("_relative"):
        values = (SIGNED[final] * (values[0] or 1),)
    return event, values, prefix == "?" and event in ("set_mode", "reset_mode")


def _number(text: str) -> int:
    if len(text) > 5:
        text = text.lstrip("0")
    return 0 if not text else _LARGEST_PARAMETER if len(text) > 5 else min(int(text), _LARGEST_PARAMETER)


def _sgr_values(numbers: str) -> tuple[int, ...]:
    """SGR with colon sub-parameters (ISO/IEC 8613-6), as the same attributes with semicolons."""
    values: list[int] = []
    for group in numbers.split(";"):
        parts = [_number(part) for part in group.split(":")]
        if len(parts) == 1 or parts[0] not in (4, 38, 48, 58):
            values.append(parts[0])
        elif parts[0] == 4:
            values.append(4 if parts[1] else 24)
        elif parts[1] == 2 and len(parts) > 5:
            values += [parts[0], 2, *parts[3:6]]
        else:
            values += parts
    return tuple(values)
