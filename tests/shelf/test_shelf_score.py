"""Entries to findings: programs, sessions and documents, and what is none of these."""

from __future__ import annotations

from pathlib import Path

import pytest
from shelf_samples import DISK, make_shelf

from fit.errors import ScreenError
from fit.machine import Processor
from fit.shelf.entry import Entry, EntryKind, find_entries
from fit.shelf.finding import Finding, from_plain
from fit.shelf.notes import notes
from fit.shelf.score import score_entry
from fit.shelf.settings import ShelfSettings


def program(name: str, settings: ShelfSettings | None = None) -> Finding:
    return score_entry(Entry(DISK / f"{name}.COM", EntryKind.PROGRAM), settings or ShelfSettings())


def test_a_program_has_a_score_and_all_that_decides() -> None:
    finding = program("READ")
    assert (finding.verdict, finding.best) == ("tiring", "hold")
    assert finding.score is not None
    assert finding.best_score is not None
    assert finding.score < 60 < finding.best_score
    assert finding.files == ("TIDES.TXT",)
    # 440 bytes take a block of 2,048, the text's 2,855 take two.
    assert (finding.blocks, finding.size) == (3, 440 + (DISK / "TIDES.TXT").stat().st_size)
    assert finding.program is not None
    assert finding.program.opened == ["A:TIDES.TXT"]


def test_a_program_for_a_z80_will_not_run_on_an_8080() -> None:
    finding = program("LENS")
    assert finding.verdict == "will not run"
    assert finding.obstacles[0].startswith("it needs a Z80: it executed 10h, 18h, D9h, EDh from 0113h on")
    assert program("LENS", ShelfSettings(processor=Processor.Z80)).verdict == "tiring"


def test_a_device_with_too_little_memory() -> None:
    finding = program("STORY", ShelfSettings(top=0x0800))
    assert finding.verdict == "will not run"
    assert finding.obstacles == ("its memory must end at 0F06h or above, the device's ends at 0800h",)
    assert program("STORY", ShelfSettings(top=0xC000)).obstacles == ()


def test_the_terminal_is_found_by_its_codes() -> None:
    finding = program("CHART")
    assert finding.program is not None
    assert finding.program.terminal == "adm3a"
    assert "set for adm3a" in notes(finding)
    assert finding.verdict == "broken"


def test_a_session_of_an_old_terminal_is_decoded_by_its_codes(tmp_path: Path) -> None:
    screen = b'\x1bH\x1bJThe tide is high.\x1bY! The oil is low.\x1bY" What now? '
    (tmp_path / "old.raw").write_bytes(screen * 4)
    (tmp_path / "new.raw").write_bytes(
        b"\x1b[2J\x1b[HThe tide is high.\x1b[2;1HThe oil is low.\x1b[3;1HWhat now? " * 4
    )
    old, new = (
        score_entry(Entry(tmp_path / name, EntryKind.SESSION), ShelfSettings())
        for name in ("old.raw", "new.raw")
    )
    assert (old.terminal, old.verdict) == ("vt52", "comfortable")
    assert (new.terminal, new.verdict) == (None, "comfortable")
    assert "set for vt52" in notes(old)


@pytest.mark.parametrize(
    ("code", "told"), [(b"\x00\x76", "halted: it executed HALT at 0101h"), (b"\xc3\x00\xfc", "wild jump: ")]
)
def test_a_bad_end_is_told(tmp_path: Path, code: bytes, told: str) -> None:
    (tmp_path / "LAMP.COM").write_bytes(code)
    found = score_entry(Entry(tmp_path / "LAMP.COM", EntryKind.PROGRAM), ShelfSettings())
    assert any(note.startswith(told) for note in notes(found))


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (1, "no line is too wide; laid out on 1 page, the only word came through"),
        (1100, " pages, all 1,100 words came through"),
    ],
)
def test_one_page_and_one_word_are_told_as_such(tmp_path: Path, words: int, told: str) -> None:
    (tmp_path / "lamp.txt").write_text("dusk. " * words)
    finding = score_entry(Entry(tmp_path / "lamp.txt", EntryKind.DOCUMENT), ShelfSettings())
    assert finding.reason.endswith(told)


def test_a_choice_is_told() -> None:
    assert "speaks of a choice of terminal or screen" in notes(program("LOG"))


def test_a_found_score_is_that_of_a_hand_script() -> None:
    """15 answers by hand show the same share of the story as the found ones, refusals left out."""
    assert program("STORY").score == pytest.approx(92, abs=3)


def test_a_document_has_pages() -> None:
    finding = score_entry(Entry(DISK / "TIDES.TXT", EntryKind.DOCUMENT), ShelfSettings())
    assert finding.verdict == "fits reflowed"
    assert finding.document is not None
    assert (finding.document.words_lost, finding.document.too_wide_after) == (0, 0)
    assert finding.document.pages > 10


def test_a_page_that_only_names_another_is_not_scored_twice(tmp_path: Path) -> None:
    (tmp_path / "light.7").write_text(".so lamp.7\n")
    (tmp_path / "lamp.7").write_text(".TH LAMP 7\n.SH NAME\nlamp \\- burns\n")
    light, lamp = (
        score_entry(Entry(tmp_path / name, EntryKind.DOCUMENT), ShelfSettings())
        for name in ("light.7", "lamp.7")
    )
    assert (light.failed, light.reason) == (True, "says only that the page stands in lamp.7")
    assert (lamp.failed, lamp.verdict) == (False, "fits reflowed")


def test_everything_on_a_shelf_and_what_fails_says_why(tmp_path: Path) -> None:
    root = make_shelf(tmp_path)
    findings = {
        entry.path.name: score_entry(entry, ShelfSettings()) for entry in find_entries([root]).entries
    }
    assert [name for name, finding in findings.items() if finding.failed] == ["NAUGHT.COM"]
    assert findings["NAUGHT.COM"].reason == "this is text, not a program"
    assert findings["READ.COM"].files == ("READ.OVR", "TIDES.TXT")
    assert findings["signals.jsonl"].verdict == "comfortable"
    assert findings["notes.md"].verdict == "fits as it is"


def test_a_finding_comes_back_from_its_plain_form() -> None:
    finding = program("LENS")
    assert from_plain(finding.plain()) == finding


def test_an_unknown_screen_is_refused_at_once() -> None:
    with pytest.raises(ScreenError):
        _ = ShelfSettings(small="no such screen").screen
