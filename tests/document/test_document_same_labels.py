"""Labels that come again word for word: what stands behind one is read as behind the others."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what\n"
    "it shows into the log, whatever the weather may be, before he goes up.\n\n"
)
LONG = "The bell was rung for so long that the rope wore through, and nobody had put a\nnew one in since the spring.\n"


def read(text: str) -> list[Block]:
    return [
        block
        for block in read_text(f"{PROSE}{text}\n{PROSE}", "log", "ascii").blocks[1:]
        if block.kind is not Kind.FURNITURE
    ][:-1]


def records(*causes: str) -> str:
    return "".join(
        f"Signal: {number}\nMessage: Signal {number} of the fog bell failed.\nWhat it means: {cause}\n"
        for number, cause in enumerate(causes, 10)
    )


def test_records_of_short_and_of_long_texts() -> None:
    blocks = read(records(LONG, "The oil is out.\n", LONG, "Nothing.\n", LONG, LONG, "Nobody knows.\n", LONG))
    assert {block.kind for block in blocks} == {Kind.PARAGRAPH}
    assert [block.text.chars for block in blocks[3:6]] == [
        "Signal: 11",
        "Message: Signal 11 of the fog bell failed.",
        "What it means: The oil is out.",
    ]


def test_a_line_under_the_text_behind_a_label_belongs_to_it() -> None:
    text = records(LONG, LONG, LONG, LONG, LONG).replace(
        "Message: Signal 12 of the fog bell failed.",
        "Message: Signal 12 of the fog bell failed.\n         It was tried again.",
    )
    assert "Message: Signal 12 of the fog bell failed. It was tried again." in [
        block.text.chars for block in read(text)
    ]


def test_a_line_with_a_label_of_its_own_under_the_text_behind_another() -> None:
    text = "".join(
        f"Use: light {lamp}\n     HOUR: when it is lit.\n\n{PROSE}"
        for lamp in ("tower", "pier", "boat", "store")
    )
    assert not any("light tower HOUR" in block.text.chars for block in read(text))


def test_records_whose_lines_all_stay_are_left_alone() -> None:
    text = "".join(f"From: the keeper of the {name} light\nTo: the harbour\n\n{PROSE}" for name in "ABCDEF")
    assert [len(block.lines) for block in read(text) if block.kind is Kind.PREFORMATTED] == [2] * 6


def test_one_label_is_an_item_where_it_mostly_was_one() -> None:
    note = "Note: The boat does not come when the flag at the harbour is\n      down, whatever the tables say of the hour.\n\n"
    text = (note + PROSE) * 4 + "Note: The boat is late.\n\n"
    blocks = [block for block in read(text) if "boat" in block.text.chars]
    assert [(block.kind, block.label.chars) for block in blocks] == [(Kind.ITEM, "Note:")] * 5


def test_lines_with_one_label_that_were_kept_together() -> None:
    drill = "Drill: bell\nDrill: lamp\nDrill: boat\n\n"
    text = "".join(f"Drill: {LONG}\n{PROSE}" for _ in range(5)) + drill
    assert [line.chars for line in read(text)[-1].lines] == ["Drill: bell", "Drill: lamp", "Drill: boat"]


def test_who_speaks_again_begins_an_item_again() -> None:
    talk = (
        "    HOST: Good evening. What is your name?\n    YOU:  MAREN\n"
        "    HOST: There is a message for you, Maren. It was left on Monday by the\n          keeper.\n"
        '    YOU:  READ\n    HOST: "Bring the key."\n'
    )
    blocks = [block for block in read(talk) if block.kind is Kind.ITEM]
    assert [block.label.chars for block in blocks] == ["HOST:", "YOU:", "HOST:", "YOU:", "HOST:"]


def test_one_text_with_the_signs_of_a_program_among_many_others() -> None:
    rule = "Value: !light LAMP, DUSK, DAWN { WICK }\n"
    usual = "Value: the hour at which the lamp was lit, as the log has it\n"
    for times, kind in ((9, Kind.PARAGRAPH), (5, Kind.PREFORMATTED)):
        (block,) = (
            block
            for block in read(f"{usual}\n{PROSE}" * times + f"{rule}\n{PROSE}")
            if any("!light" in text.chars for text in (block.text, *block.lines))
        )
        assert block.kind is kind
