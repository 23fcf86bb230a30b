"""The BIOS functions that a program reaches through the table: console, devices, and reading a disk.

Each method is one function. It reads its parameter from the registers and sets A or HL; the caller
then lets the stub's RET run.

Source: the operating system's manual, the BIOS entry points. The tests cite it.
"""

from __future__ import annotations

from collections.abc import Callable

from fit.machine.bdos_console import END_OF_TEXT, ConsoleFunctions
from fit.machine.bdos_files import FileFunctions
from fit.machine.console import Console
from fit.machine.cpu import BC, HL, SP, A, C, Cpu
from fit.machine.disk import TRACK_RECORDS
from fit.machine.drives import Drives
from fit.machine.ending import EndingKind
from fit.machine.layout import ALLOCATION, DIRECTORY_BUFFER, HEADER, PARAMETERS, Bios
from fit.machine.memory_access import Memory
from fit.machine.signals import Ended
from fit.machine.waits import WaitKind

BIOS_PLACE = 256
"""Added to a BIOS function's number, to tell its polls from those of BDOS functions."""

_YES = 0xFF
_DIRECTORY_BUFFER_AT = 8
_PARAMETERS_AT = 10
_ALLOCATION_AT = 14


class BiosFunctions:
    """The table's functions for one machine."""

    def __init__(
        self,
        *,
        cpu: Cpu,
        memory: Memory,
        console: Console,
        functions: ConsoleFunctions,
        files: FileFunctions,
        drives: Drives,
        poll: Callable[[int], bool],
        stack: int,
    ) -> None:
        self._cpu = cpu
        self._memory = memory
        self._console = console
        self._functions = functions
        self._files = files
        self._drives = drives
        self._poll = poll
        self._stack = stack
        self.disk = 0
        self.track = 0
        self.sector = 0
        self.table: dict[Bios, Callable[[], None]] = {
            Bios.BOOT: self.boot,
            Bios.WBOOT: self.warm_boot,
            Bios.CONST: self.console_status,
            Bios.CONIN: self.console_input,
            Bios.CONOUT: self.console_output,
            Bios.LIST: self.list,
            Bios.PUNCH: self.punch,
            Bios.READER: self.reader,
            Bios.HOME: self.home,
            Bios.SELDSK: self.select_disk,
            Bios.SETTRK: self.set_track,
            Bios.SETSEC: self.set_sector,
            Bios.SETDMA: self.set_buffer,
            Bios.READ: self.read,
            Bios.WRITE: self.write,
            Bios.LISTST: self.list_status,
            Bios.SECTRAN: self.translate,
        }

    def boot(self) -> None:
        """A cold start."""
        raise Ended(EndingKind.WARM_START, "it called the BIOS cold start")

    def warm_boot(self) -> None:
        """A warm start; where the first stack is empty and held 0, the program simply returned."""
        stack = self._stack
        if self._cpu.words[SP] == stack + 2 and not any(self._cpu.memory[stack : stack + 2]):
            raise Ended(EndingKind.LEFT, "it returned")
        raise Ended(EndingKind.WARM_START)

    def console_status(self) -> None:
        """FFh where a key waits."""
        self._cpu.view[A] = _YES if self._poll(BIOS_PLACE + Bios.CONST) else 0

    def console_input(self) -> None:
        """Wait for a key."""
        self._cpu.view[A] = self._functions.next_key(WaitKind.KEY)

    def console_output(self) -> None:
        """Print the byte in C as it is."""
        self._console.output.append(self._cpu.view[C])

    def list(self) -> None:
        """The byte in C to the printer."""
        self._console.printer.append(self._cpu.view[C])

    def punch(self) -> None:
        """The byte in C to the punch."""
        self._console.punched.append(self._cpu.view[C])

    def reader(self) -> None:
        """Nothing is in the reader."""
        self._console.reads += 1
        self._cpu.view[A] = END_OF_TEXT

    def home(self) -> None:
        """Track 0."""
        self.track = 0

    def select_disk(self) -> None:
        """The address of the disk's header; 0 where there is no such disk."""
        disk = self._cpu.view[C]
        self.disk = disk & 0x0F
        if disk > 0x0F or not self._drives.has_folder(self.disk):
            self._cpu.words[HL] = 0
            return
        self._memory.write_own(ALLOCATION, self._drives.drive(self.disk).allocation())
        self._cpu.words[HL] = HEADER

    def set_track(self) -> None:
        """Track in BC."""
        self.track = self._cpu.words[BC]

    def set_sector(self) -> None:
        """Sector in BC, from 0."""
        self.sector = self._cpu.words[BC]

    def set_buffer(self) -> None:
        """Buffer in BC."""
        self._files.buffer = self._cpu.words[BC]

    def read(self) -> None:
        """Read one record by track and sector."""
        record = self._drives.raw_record(self.disk, self.track * TRACK_RECORDS + self.sector)
        self._memory.load(self._files.buffer, record)
        self._cpu.view[A] = 0

    def write(self) -> None:
        """Files are no sectors here: what a program writes past the directory cannot be kept."""
        raise Ended(EndingKind.UNSUPPORTED, "BIOS function 14, WRITE: it writes to the disk by sectors")

    def list_status(self) -> None:
        """The printer is always ready."""
        self._cpu.view[A] = _YES

    def translate(self) -> None:
        """Sectors are in order."""
        self._cpu.words[HL] = self._cpu.words[BC]


def lay_out_disk(memory: Memory, parameters: bytes) -> None:
    """The disk parameter block and the one disk header, in the system's memory."""
    header = bytearray(16)
    for at, address in (
        (_DIRECTORY_BUFFER_AT, DIRECTORY_BUFFER),
        (_PARAMETERS_AT, PARAMETERS),
        (_ALLOCATION_AT, ALLOCATION),
    ):
        header[at : at + 2] = address.to_bytes(2, "little")
    memory.write_own(PARAMETERS, parameters)
    memory.write_own(HEADER, bytes(header))
