"""Output with its control sequences blanked out, every byte where it was: enough to find words and prompts in.

What the sequences do is the dialects' work; this knows the shapes of ECMA-48 alone.
"""

from __future__ import annotations

import re

_SEQUENCE = re.compile(
    rb"\x1b\[[0-?]*[ -/]*[@-~]"  # CSI
    rb"|\x1b[\]P_^X][^\x07\x1b]{0,4096}(?:\x07|\x1b\\)?"  # OSC, DCS, APC, PM, SOS
    rb"|\x1b[ -/]*[0-~]"  # ESC
)
_BLOCK = 1 << 18
_CONTROLS = bytes(byte if (byte >= 0x20 and byte != 0x7F) or byte == 0x0A else 0x20 for byte in range(256))


def blanked(output: bytes) -> bytes:
    """The output with blanks for control sequences and control characters other than LF; of the same length.

    A sequence ends at the latest where a block of lines does; in blocks the replacing takes little memory.
    """
    if b"\x1b" not in output:
        return output.translate(_CONTROLS)
    plain = bytearray()
    while len(plain) < len(output):
        end = output.find(b"\n", len(plain) + _BLOCK) + 1 or len(output)
        plain += _SEQUENCE.sub(_blanks, output[len(plain) : end]).translate(_CONTROLS)
    return bytes(plain)


def _blanks(sequence: re.Match[bytes]) -> bytes:
    return b" " * (sequence.end() - sequence.start())
