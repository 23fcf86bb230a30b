"""Output with remarks beside it stays lines, remarks and all."""

from __future__ import annotations

import pytest
from test_document_kept import shape

LEAD = "The clockwork of the lamp writes down what it finds when it is wound in the evening:"
REPORTS = {
    "remarks": [
        "oil in tank:     14 gallons           <- what the float shows",
        "turns:           0x0A00               <- of the drum, counted from the",
        "or",
        "turns:           unknown              <- where the drum was wound by hand",
    ],
    "a remark that goes on": [
        "The lamp is turning on the rock       <- or not, as the keeper has set it",
        "                                         (the clockwork does not look whether",
        "                                          the glass is in its place)",
    ],
    "strokes": [
        "oil in tank:     14 gallons           <- what the float shows",
        "kind of oil:     rape (from the barrel that was opened last)",
        "wick length:     23 inches            spare wicks:  5",
        "                 ^                    ^- counted by the keeper on watch",
        "                 |--------------------- what is left of it in the evening",
        "glass:           clean                <- since the last watch",
    ],
}


@pytest.mark.parametrize("name", REPORTS)
def test_output_with_remarks_beside_it_stays_lines(name: str) -> None:
    report = REPORTS[name]
    left = min(len(line) - len(line.lstrip()) for line in report)
    text = f"{LEAD}\n\n" + "".join(f"    {line}\n" for line in report) + f"\n{LEAD}\n"
    kept = " / ".join(line[left:] for line in report)
    assert shape(text) == [f"paragraph: {LEAD}", f"code: {kept}", f"paragraph: {LEAD}"]


def test_text_right_above_such_output_is_none_of_it() -> None:
    text = f"{LEAD}\n" + "".join(f"    {line}\n" for line in REPORTS["remarks"])
    assert shape(text)[0] == f"paragraph: {LEAD}"


def test_one_arrow_in_a_text_shows_nothing() -> None:
    text = f"{LEAD}\nthe oil, the turns   <- both at dusk, and the wick in the morning, when the lamp\nis put out.\n"
    assert all(not block.startswith("code") for block in shape(text))
