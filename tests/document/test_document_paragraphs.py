"""Running text: which lines are one paragraph, in cases that can be read aloud."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text


def flow(text: str) -> list[str]:
    """Each block as one line: its label in brackets, then its text, or its lines with bars between."""
    shown = []
    for block in read_text(text, "a document", "ascii").blocks:
        if block.kind is Kind.FURNITURE:
            shown.append(f"({block.lines[0].chars.strip()})")
        elif block.lines:
            shown.append(" / ".join(line.chars for line in block.lines))
        else:
            shown.append((f"[{block.label.chars}] " if block.label.chars else "") + block.text.chars)
    return shown


SENTENCES = "The lamp was lit at dusk, and the watch was kept until the sun stood over the sea.\n"


def test_the_last_words_of_a_sentence_are_no_program_text() -> None:
    text = (
        SENTENCES * 3
        + "\n"
        + (
            "When the keeper speaks of one lamp he gives its number; he says lamp for the lamps\n"
            "in general.\n\n"
            "The names of the lights that can be seen from the gallery are kept on the tide disk\n"
            "in /lights/names.\n\n"
            "The key of the wick drawer was put beside the log in the box with the flags (see\n"
            "{flag locker}).\n\n"
            "The clock runs for eight hours with a full weight, and the man on watch sets the value of\n"
            "wound=yes in the table.\n"
        )
    )
    assert flow(text)[-4:] == [
        "When the keeper speaks of one lamp he gives its number; he says lamp for the lamps in general.",
        "The names of the lights that can be seen from the gallery are kept on the tide disk in /lights/names.",
        "The key of the wick drawer was put beside the log in the box with the flags (see {flag locker}).",
        (
            "The clock runs for eight hours with a full weight, and the man on watch sets the value of wound=yes"
            " in the table."
        ),
    ]


def test_a_word_that_no_line_can_hold_is_part_of_its_sentence() -> None:
    text = (
        SENTENCES * 3
        + "\n"
        + (
            "If you use this\n"
            "colza-or-paraffin-but-never-both-of-them-in-one-tank-of-the-old-lamp setting, then the\n"
            "log says so.\n"
        )
    )
    assert flow(text)[-1] == (
        "If you use this colza-or-paraffin-but-never-both-of-them-in-one-tank-of-the-old-lamp setting, then the"
        " log says so."
    )


def test_text_goes_on_flush_left_under_a_key() -> None:
    text = SENTENCES * 2 + (
        "\nKEEPERS = A list of the people who may wind the clockwork of the lamp with-\n"
        "out the leave of the first keeper.\n\n"
        "OIL = The name of the tank that is filled from the landing, when the hose is\n"
        "long enough for it.\n"
    )
    assert flow(text)[-2:] == [
        (
            "[KEEPERS =] A list of the people who may wind the clockwork of the lamp without the leave of the"
            " first keeper."
        ),
        "[OIL =] The name of the tank that is filled from the landing, when the hose is long enough for it.",
    ]


def test_a_paragraph_may_hang_from_a_first_line_that_is_nearly_full() -> None:
    text = SENTENCES * 3 + (
        "\n(The rules for oil hold for wicks too, of course.)  Other rules have\n"
        "  been taken from the book of the mainland lights, with the $hours of the watch\n"
        "  and the number of men.\n"
    )
    assert len(flow(text)) == 2
