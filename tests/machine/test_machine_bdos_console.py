"""BDOS functions 0 to 12, one test a function, by the numbers of the manual.

Source: Digital Research, CP/M Operating System Manual, the section on BDOS functions.
"""

from __future__ import annotations

from machine_assembler import Probe, text

from fit.machine.ending import EndingKind


def test_function_0_system_reset() -> None:
    """Function 0, System Reset: the program has left."""
    probe = Probe([(0, 0), (2, ord("x"))])
    assert probe.run.ending.kind is EndingKind.LEFT
    assert probe.output == b""


def test_function_1_console_input() -> None:
    """Function 1, Console Input: the key comes back in A and is echoed; control keys without a picture are not."""
    probe = Probe([(1, 0), (1, 0), (1, 0), (1, 0)], keys=b"K\r\x01\t")
    assert probe.a == [ord("K"), 13, 1, 9]
    # The column counts from LF: after "K" and CR the TAB goes to column 8 by 7 blanks.
    assert probe.output == b"K\r" + b" " * 7


def test_function_2_console_output() -> None:
    """Function 2, Console Output: TABs are expanded to columns of eight."""
    probe = Probe([(2, ord("a")), (2, 9), (2, ord("b")), (2, 13), (2, 10), (2, 9), (2, 7)])
    assert probe.output == b"a" + b" " * 7 + b"b\r\n" + b" " * 8 + b"\x07"


def test_function_3_reader_input() -> None:
    """Function 3, Reader Input: an empty reader gives the end of a text, 1Ah."""
    assert Probe([(3, 0)]).a == [0x1A]


def test_function_4_punch_output() -> None:
    """Function 4, Punch Output: bytes go to the punch, not to the console."""
    probe = Probe([(4, ord("p")), (4, ord("q"))])
    assert (probe.run.punched, probe.output) == (b"pq", b"")


def test_function_5_list_output() -> None:
    """Function 5, List Output: bytes go to the printer, not to the console."""
    probe = Probe([(5, ord("l"))])
    assert (probe.run.printer, probe.output) == (b"l", b"")


def test_function_6_direct_console_io() -> None:
    """Function 6, Direct Console I/O: FFh a key without echo, FEh the status, FDh waits, else prints unchanged."""
    probe = Probe([(6, 0xFE), (6, 0xFD), (6, 0xFE), (6, 0xFF), (6, 9), (6, 0xFE)], keys=b"ab")
    assert probe.a[1] == ord("a")
    assert probe.output == b"\t"


def test_function_6_polls_until_a_key_comes() -> None:
    """Function 6 with FFh returns 0 while no key waits, and the key once it does."""
    probe = Probe(["again:", (6, 0xFF), "or a\njp z, again", (2, ord("!"))], keys=b"k")
    assert probe.output == b"!"
    assert probe.a[0] == ord("k")


def test_function_6_tells_that_a_typed_key_waits() -> None:
    """Function 6 with FEh is not zero where a key was typed ahead."""
    probe = Probe([(6, 0xFD), (6, 0xFE), (6, 0xFF)])
    assert probe.run.ending.kind is EndingKind.SCRIPT_ENDED
    answered = Probe([(6, 0xFD), (6, 0xFE), (6, 0xFF)], ahead=b"xy")
    assert answered.a == [ord("x"), 0xFF, ord("y")]


def test_function_7_get_io_byte() -> None:
    """Function 7, Get I/O Byte: the byte at 0003h."""
    assert Probe(["ld a, 0x95\nld (3), a", (7, 0)]).a == [0x95]


def test_function_8_set_io_byte() -> None:
    """Function 8, Set I/O Byte."""
    probe = Probe([(8, 0x81), (7, 0)])
    assert probe.a[1] == 0x81
    assert probe.peek(3, 1) == b"\x81"


def test_function_9_print_string() -> None:
    """Function 9, Print String: up to the dollar sign, TABs expanded."""
    probe = Probe([(9, "hello")], text("hello", "Oil\t80\r\n"))
    assert probe.output == b"Oil     80\r\n"


def test_function_9_goes_on_past_the_top_of_a_page() -> None:
    """A text of more than 256 bytes is printed whole."""
    probe = Probe([(9, "long")], text("long", "0123456789" * 60))
    assert probe.output == b"0123456789" * 60


def test_function_10_read_console_buffer() -> None:
    """Function 10, Read Console Buffer: limit, length, text; only CR is echoed at the end."""
    probe = Probe([(10, 0x3000)], keys=b"", steps=[b"lamp\r"], before="ld a, 20\nld (0x3000), a\n")
    assert probe.peek(0x3000, 6) == bytes((20, 4)) + b"lamp"
    assert probe.output == b"lamp\r"


def test_function_10_ends_when_the_buffer_is_full() -> None:
    """Function 10: the line ends without a CR once its limit is reached."""
    probe = Probe([(10, 0x3000), (1, 0)], steps=[b"lampx"], before="ld a, 4\nld (0x3000), a\n")
    assert probe.peek(0x3000, 6) == bytes((4, 4)) + b"lamp"
    assert probe.a[1] == ord("x")
    assert probe.output == b"lamp\rx"


def test_function_10_warm_start() -> None:
    """Function 10: ^C at the start of the line is a warm start."""
    probe = Probe([(10, 0x3000)], steps=[b"\x03"], before="ld a, 20\nld (0x3000), a\n")
    assert probe.run.ending.kind is EndingKind.WARM_START
    assert probe.output == b"^C"


def test_function_10_printer_echo() -> None:
    """Function 10: ^P sends everything to the printer as well, until the next ^P."""
    before = "ld a, 20\nld (0x3000), a\n"
    probe = Probe(
        [(10, 0x3000), (2, ord("p")), (10, 0x3000), (2, ord("n"))],
        steps=[b"\x10a\r", b"\x10\r"],
        before=before,
    )
    assert probe.run.printer == b"a\rp"
    assert probe.output == b"a\rp\rn"


def test_function_11_get_console_status() -> None:
    """Function 11, Get Console Status: zero without a key, not zero with one (01h in version 2.2)."""
    probe = Probe([(11, 0), (1, 0), (11, 0), (1, 0), (11, 0)], ahead=b"ab")
    assert probe.a == [1, ord("a"), 1, ord("b"), 0]


def test_function_11_stops_at_control_s() -> None:
    """^S at a status check stops the program until another key; ^C then starts the system again."""
    probe = Probe([(1, 0), (11, 0), (2, ord("x"))], ahead=b"a\x13\x03")
    assert probe.run.ending.kind is EndingKind.WARM_START
    assert probe.output == b"a"


def test_control_s_stops_the_output() -> None:
    """^S stops output until the next key, which is lost; anything but ^C goes on."""
    probe = Probe([(1, 0), (9, "more")], text("more", "oil"), ahead=b"a\x13", steps=[b"\x11"])
    assert probe.output == b"aoil"
    assert [kind.value for kind in probe.run.wait_kinds] == ["paused"]


def test_function_12_return_version_number() -> None:
    """Function 12, Return Version Number: 0022h; A equals L and B equals H."""
    probe = Probe([(12, 0), "ld a, b\nld (0x3000), a"])
    assert (probe.hl, probe.a, probe.peek(0x3000, 1)) == ([0x22], [0x22], b"\x00")


def test_functions_of_later_versions_return_zero() -> None:
    """Functions past 40 return 0 in version 2.2; the run says which were called."""
    probe = Probe([(105, 0x3000), (45, 0xFF)])
    assert probe.hl == [0, 0]
    assert probe.run.unsupported == ((45, 1), (105, 1))
    assert "45, 105" in probe.run.session.remarks[0]
