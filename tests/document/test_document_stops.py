"""Lines of nothing but a full stop, which part paragraphs; those that end what is typed belong to it."""

from __future__ import annotations

from fit.document.text import read_text

ENTRY = """\
- {name}
        {name} <lamp> <hour>[,<hour>[,...]] [<oil>] [<wick>] <keeper> <log> <page>
        .
        Write the hour at which the lamp is {word} into the log, even before
        the boat is seen!
        .
        The keeper on watch does so, and no other keeper may do it for him
        while the lamp burns.

"""
TYPED = """\
The keeper types what he has to say, and a full stop ends it, as in the
log of the last night, which stands below.

          :a
          The {word} lamp is low.
          Its oil is old.
          .

"""


WORDS = ("lit", "seen", "trimmed")
TEXT = "".join(ENTRY.format(name=word.upper(), word=word) for word in WORDS)


def test_full_stops_part_paragraphs() -> None:
    said = [
        block.text.chars for block in read_text(TEXT, "commands", "ascii").blocks if not block.label.chars
    ]
    assert [text for text in said if text.startswith("Write")] == [
        f"Write the hour at which the lamp is {word} into the log, even before the boat is seen!"
        for word in WORDS
    ]
    assert said.count(".") == 2 * len(WORDS)


def test_a_form_with_many_words_to_put_in_is_typed() -> None:
    blocks = read_text(TEXT, "commands", "ascii").blocks
    assert [block.lines[0].chars.split()[0] for block in blocks if block.code] == [
        word.upper() for word in WORDS
    ]


def test_a_full_stop_that_ends_what_is_typed_stays_with_it() -> None:
    text = "".join(TYPED.format(word=word) for word in ("red", "green", "white"))
    blocks = read_text(text, "lessons", "ascii").blocks
    assert [block.lines[-1].chars for block in blocks if block.lines] == ["."] * 3


def test_two_signs_part_texts_right_below_them() -> None:
    text = "".join(
        f"The keeper on watch reads the barometer at the full hour and writes what\n"
        f"it shows into the log, when the lamp is {word} or the boat is seen\n%%\n\n"
        for word in WORDS
    )
    said = [block.text.chars for block in read_text(text, "help", "ascii").blocks]
    assert said[1::2] == ["%%"] * 3
    assert said[0].endswith("seen")


def test_a_plus_alone_parts_paragraphs_too() -> None:
    texts = [
        f"The keeper lights lamp {number} of the tower and\nwrites it into the log." for number in range(4)
    ]
    told = read_text("\n+\n".join(texts) + "\n", "lamp", "ascii").blocks
    assert [one.text.chars for one in told[::2]] == [text.replace("\n", " ") for text in texts]
    assert {one.text.chars for one in told[1::2]} == {"+"}
