"""What stands set in below `Example:` again and again is shown, a cell deeper though it may be, and words though it has."""

from __future__ import annotations

from fit.document.text import read_text

SET = [
    "Wick: 3",
    "LogDir: /skerry/log",
    "Title[lower]: The Lamp of Our Own Rock",
    "Horn[fog]: three => 3, long => 1",
]


def document(label: str, shown: list[str]) -> str:
    """A reference of words that the keeper may set, each with an example."""
    return "".join(
        f"Entry{number}\n"
        "    Here the keeper sets what his lamp has to know of the rock, and of the\n"
        "    watch that is to come; it holds until he sets it anew.\n\n"
        f"    {label}\n\n     {one}\n\n"
        for number, one in enumerate(shown)
    )


def kept(text: str) -> list[str]:
    """The lines of program text."""
    blocks = read_text(text, "words", "ascii").blocks
    return [line.chars for block in blocks if block.code for line in block.lines]


def test_a_line_below_the_word_example_is_shown() -> None:
    assert kept(document("Example:", SET)) == SET


def test_a_sentence_below_it_stays_one() -> None:
    said = "The lamp is lit at dusk, and the keeper of the watch writes it down."
    assert kept(document("Example:", [*SET, said])) == SET


def test_texts_below_it_are_no_habit() -> None:
    said = [f"the {what} is for the night and is lit in it" for what in ("lamp", "lens", "red lamp", "gun")]
    assert kept(document("Example:", said)) == []


def test_what_stands_below_another_word_is_not_shown() -> None:
    assert kept(document("Remark:", SET)) == []
