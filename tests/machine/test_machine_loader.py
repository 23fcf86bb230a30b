"""What is no 8-bit program is refused with one sentence that says why."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from machine_assembler import assemble, call, text

from fit.errors import ProgramError
from fit.machine.loader import check_image, load_program


def refusal(path: Path) -> str:
    """The sentence with which a file is refused, without its folder."""
    with pytest.raises(ProgramError) as error:
        load_program(path)
    return str(error.value).replace(f"{path.parent}/", "")


def refused(tmp_path: Path, image: bytes) -> str:
    """The sentence with which bytes are refused."""
    path = tmp_path / "X.COM"
    path.write_bytes(image)
    return refusal(path)


def test_a_program_is_loaded_with_its_folder(tmp_path: Path) -> None:
    image = assemble(call(9, "hello") + "ret\n" + text("hello", "Lit."))
    path = tmp_path / "LAMP.COM"
    path.write_bytes(image)
    loaded = load_program(path)
    assert (loaded.name, loaded.image, loaded.folder, loaded.remarks) == ("LAMP.COM", image, tmp_path, ())


@pytest.mark.parametrize("image", [b"", bytes(128), b"\x1a" * 128])
def test_empty(tmp_path: Path, image: bytes) -> None:
    assert refused(tmp_path, image) == "X.COM: the program is empty"


def test_too_large_names_the_size(tmp_path: Path) -> None:
    assert refused(tmp_path, b"\xc3" * 70_000) == (
        "X.COM: the program is 70,000 bytes long; at most 64,006 fit into 64 KiB of memory"
    )


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="this system has no /dev/zero")
def test_a_device_without_an_end() -> None:
    assert refusal(Path("/dev/zero")) == (
        "zero: the program is more than 64,006 bytes long; at most 64,006 fit into 64 KiB of memory"
    )


def test_text_that_was_renamed(tmp_path: Path) -> None:
    text_of_a_log = b"Log of the Skerry Light. Wind NW 6, lamp trimmed at dusk.\r\n" * 9
    assert refused(tmp_path, text_of_a_log) == (
        "X.COM: this is text, not a program; measure it as a document instead"
    )


def test_utf8_text_that_was_renamed(tmp_path: Path) -> None:
    assert "this is text" in refused(
        tmp_path, "Leuchtturmwärter über der Brandung – Öl prüfen.\n".encode() * 20
    )


def test_a_program_that_is_nearly_all_text_is_one() -> None:
    """A page of text and the nine bytes of code that show it."""
    watch_bill = (
        "The watch bill of the Skerry Light: four hours each, the lamp trimmed at the second bell.\r\n" * 12
    )
    image = assemble(call(9, "bill") + "ret\n" + text("bill", watch_bill))
    assert check_image(image, "BILL.COM") == ()
    assert check_image(image + b"\x1a" * 20, "BILL.COM") == ()


@pytest.mark.parametrize("padding", [b"\x00" * 70, b"\x1a" * 70])
def test_text_that_was_renamed_and_padded(tmp_path: Path, padding: bytes) -> None:
    assert "this is text" in refused(tmp_path, b"Log of the Skerry Light. Wind NW 6.\r\n" * 9 + padding)


# An x86 program that prints and leaves: MOV DX,0109h; MOV AH,09h; INT 21h; INT 20h; text.
X86_HELLO = bytes.fromhex("BA0901 B409 CD21 CD20") + b"Hello from elsewhere.$"
# JMP SHORT over data; MOV AH,4Ah; INT 21h; MOV AX,4C00h; INT 21h, among other code.
X86_LARGER = (
    b"\xeb\x20"
    + bytes(32)
    + bytes.fromhex("B44A CD21 7205 B409 BA0001 CD21 B8004C CD21")
    + bytes(range(256)) * 4
)


@pytest.mark.parametrize("image", [X86_HELLO, X86_LARGER])
def test_a_program_for_x86_is_recognised_by_evidence(tmp_path: Path, image: bytes) -> None:
    sentence = refused(tmp_path, image)
    assert "this is a program for 16-bit x86 processors" in sentence
    assert "software interrupts 21h or 20h" in sentence


def test_the_evidence_is_told() -> None:
    with pytest.raises(ProgramError) as error:
        check_image(X86_LARGER, "GAME.COM")
    assert str(error.value) == (
        "GAME.COM: this is a program for 16-bit x86 processors (it starts with an x86 jump, "
        "and calls software interrupts 21h or 20h 3 times, 0005h not once)"
    )


def test_calls_of_addresses_that_look_like_interrupts_are_ours() -> None:
    """CD 21 01 is CALL 0121h."""
    image = assemble("call 0x121\n" * 8 + call(9, "hello") * 3 + "ret\n" + text("hello", "Lit."))
    assert check_image(image, "LAMP.COM") == ()


@pytest.mark.parametrize(
    ("start", "what"),
    [
        (b"MZ", "a program for 16-bit x86 processors (an .EXE file), not an 8-bit program"),
        (b"PK\x03\x04", "a ZIP archive, not an 8-bit program; unpack it first"),
        (b"\x76\xff", "a squeezed file, not an 8-bit program; uncompress it first"),
        (b"\x7fELF", "a program for a modern operating system, not an 8-bit program"),
    ],
)
def test_other_kinds_of_files(tmp_path: Path, start: bytes, what: str) -> None:
    assert refused(tmp_path, start + bytes(range(200))) == f"X.COM: this is {what}"


def test_a_header_of_a_later_version_is_remarked_on() -> None:
    assert "later version" in check_image(b"\xc9" + bytes(range(256)) * 2, "X.COM")[0]


def test_a_folder_and_a_missing_file(tmp_path: Path) -> None:
    (tmp_path / "SHELF").mkdir()
    assert refusal(tmp_path / "SHELF") == "SHELF: this is a folder; name a program file"
    assert (
        refusal(tmp_path / "NONE.COM")
        == "NONE.COM: cannot be read: No such file or directory; name a readable program"
    )


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_no_permission(tmp_path: Path) -> None:
    path = tmp_path / "X.COM"
    path.write_bytes(b"\xc9")
    path.chmod(0)
    assert refusal(path) == "X.COM: cannot be read: Permission denied"
