"""Commands that a program leaves to the system: a file on drive A that the system reads line by line when it has ended.

The last record is the first command: the length, the characters, a zero. The form is from memory; that the file is
run is in the operating system's manual, under SUBMIT.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from fit.machine.disk_file import RECORD
from fit.machine.drives import ChangedFile

_DRIVE: Final = "A"
_NAME: Final = "$$$.SUB"


def submitted(changed: Iterable[ChangedFile]) -> tuple[str, ...]:
    """The commands among the files as a program left them, in the order in which they would be run."""
    for file in changed:
        if (file.drive, file.name.upper(), file.user) == (_DRIVE, _NAME, 0):
            data = file.data
            records = [data[start : start + RECORD] for start in range(0, len(data), RECORD)]
            lines = (record[1 : 1 + min(record[0], RECORD - 1)] for record in reversed(records))
            return tuple(line.decode("latin-1").strip() for line in lines if line.strip())
    return ()
