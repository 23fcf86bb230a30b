"""BDOS functions on drives: 13, 14, 24, 25, 27 to 29, 31, 32, 37.

Each method is one function; it takes the parameter in DE and returns the value for HL.

Source: the operating system's manual, BDOS functions. The tests cite it.
"""

from __future__ import annotations

from collections.abc import Callable

from fit.machine.bdos_files import DEFAULT_BUFFER, OK, FileFunctions
from fit.machine.disk import USERS
from fit.machine.drives import Drives
from fit.machine.layout import ALLOCATION, DRIVE_BYTE, PARAMETERS
from fit.machine.memory_access import Memory


class DriveFunctions:
    """The drive functions; ``files`` is told of a reset."""

    def __init__(self, drives: Drives, memory: Memory, files: FileFunctions) -> None:
        self._drives = drives
        self._memory = memory
        self._files = files
        self.table: dict[int, Callable[[int], int]] = {
            13: self.reset,
            14: self.select,
            24: self.logged_in,
            25: self.current,
            27: self.allocation,
            28: self.protect,
            29: self.protected,
            31: self.parameters,
            32: self.user,
            37: self.reset_drives,
        }

    def reset(self, _: int) -> int:
        """13: every drive logged out and writable again, drive A, buffer at 80h."""
        self._drives.current = self._drives.read_only = self._drives.logged_in = 0
        self._files.buffer = DEFAULT_BUFFER
        self._remember_drive()
        return OK

    def select(self, parameter: int) -> int:
        """14: make a drive the current one."""
        self._drives.current = parameter & 0x0F
        self._drives.drive(self._drives.current)
        self._remember_drive()
        return OK

    def _remember_drive(self) -> None:
        code = self._drives.user << 4 | self._drives.current
        self._memory.write(DRIVE_BYTE, bytes((code & 0xFF,)))

    def logged_in(self, _: int) -> int:
        """24: a bit for each drive in use; A always is."""
        return self._drives.logged_in | 1 << self._drives.current | 1

    def current(self, _: int) -> int:
        """25: the current drive."""
        return self._drives.current

    def allocation(self, _: int) -> int:
        """27: the address of the allocation vector, filled as it is now."""
        vector = self._drives.drive(self._drives.current).allocation()
        self._memory.write_own(ALLOCATION, vector)
        return ALLOCATION

    def protect(self, _: int) -> int:
        """28: the current drive becomes read-only."""
        self._drives.read_only |= 1 << self._drives.current
        return OK

    def protected(self, _: int) -> int:
        """29: a bit for each read-only drive."""
        return self._drives.read_only

    def parameters(self, _: int) -> int:
        """31: the address of the disk parameter block."""
        return PARAMETERS

    def user(self, parameter: int) -> int:
        """32: tell the user number, or set it."""
        number = parameter & 0xFF
        if number == 0xFF:
            return self._drives.user
        self._drives.user = number % USERS
        self._remember_drive()
        return OK

    def reset_drives(self, parameter: int) -> int:
        """37: some drives logged out and writable again."""
        self._drives.read_only &= ~parameter
        self._drives.logged_in &= ~parameter
        return OK
