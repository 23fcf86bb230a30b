"""Notes at the foot of a page: a sentence goes on around them, whatever their mark and with or without a rule."""

from __future__ import annotations

from textwrap import fill, wrap

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

TEXT = (
    (
        "The keeper on watch writes down the hour and the state of the sea and he looks to the lamp{} at every "
        "second hour of the night until the sun is up and the curtains of the lantern are drawn and then "
    )
    + "he goes down to the kitchen and the other one comes up and the lamp is his until the next evening and then "
    * 6
)
NOTE = "The other lamp was never lit, and it went back to the harbour with the boat that brought it."


def page(mark: str, note: str, item: str = "", rule: str = "", end: str = "") -> str:
    """Two pages, with a form feed in a sentence and a note before it."""
    text = wrap(item + TEXT.format(mark) + "he sleeps.", 66, subsequent_indent=" " * len(item))
    foot = [rule, note] if rule else [note]
    head = [" " * 60 + "1", "", ""]
    lines = [*head, *text[:6], text[6] + end, "", *foot, f"\f{' ' * 60}2", "", "", *text[7:]]
    return "\n".join(lines) + "\n\n" + fill(TEXT.format("").replace("keeper", "boatman")) + "\n"


def notes(text: str) -> list[tuple[str, str]]:
    blocks = read_text(text, "a book", "ascii").blocks
    return [(block.label.chars, block.text.chars) for block in blocks if block.kind is Kind.NOTE]


@pytest.mark.parametrize("item", ["", "7.1   "])
@pytest.mark.parametrize(
    ("mark", "label", "rule"),
    [
        ("*", "*", ""),
        ("(*)", "(*)", ""),
        ("+", "+", ""),
        ("1", "1", ""),
        ("1", "  1.", "-" * 66),
        ("^1", "^1", "-" * 30),
    ],
)
def test_a_note_that_cuts_a_sentence(mark: str, label: str, rule: str, item: str) -> None:
    text = page(mark, fill(f"{label} {NOTE}", 60, subsequent_indent=" " * (len(label) + 1)), item, rule)
    assert notes(text) == [(label.strip(), NOTE)]
    first = next(
        block for block in read_text(text, "a book", "ascii").blocks if block.kind is not Kind.FURNITURE
    )
    assert first.label.chars == item.strip()
    assert first.text.chars.startswith("The keeper on watch")
    assert first.text.chars.endswith("then he sleeps.")


def test_a_mark_without_a_blank_stays_a_part_of_its_word() -> None:
    assert notes(page("*", f"*{NOTE}", rule="_" * 20)) == [("", f"*{NOTE}")]


def test_what_stands_below_the_notes_is_none_of_them() -> None:
    text = page("*", f"* {NOTE}\n\n\n\n                    June 27, 1886", rule="-" * 20)
    assert notes(text) == [("*", NOTE), ("", "June 27, 1886")]


@pytest.mark.parametrize(
    "items",
    [
        "1  The lamp is trimmed before the night, and then the other keeper\n   comes.",
        "+ The lamp is trimmed before the night, and then the other keeper\n  comes.",
    ],
)
def test_items_at_the_foot_of_a_page_are_no_notes(items: str) -> None:
    """Nothing above calls them, or no sentence is cut."""
    assert notes(page("", items)) == []
    assert notes(page(items[0], items, end=".")) == []


def test_a_rule_over_a_sum_begins_no_note() -> None:
    text = page(
        "",
        f"{'Oil for the lamp':<52}12.40\n{'Less the tea and the tin for it':<52} 3.10\n{'------':>57}\n{'Carried over':<52}15.50",
    )
    assert notes(text) == []


@pytest.mark.parametrize("marks", [("1", "2"), ("[1]", "[2]")])
@pytest.mark.parametrize("title", ["2.  REPORTS", "4.  Reports of the year"])
def test_a_numbered_section_below_notes_under_a_rule_is_none_of_them(
    marks: tuple[str, str], title: str
) -> None:
    called = " and all of it was landed before the tide had turned for the day. "
    text = fill(
        f"The stores ({marks[0].strip('[]')}) came on Tuesday, ({marks[1].strip('[]')}) {called * 2}", 62
    )
    foot = f"{marks[0]} Oil, biscuit and mail, as the rules\n  of the service have it.\n{marks[1]} Half a sack, damp."
    told = fill(
        "Reports are written in three copies, and one of them is kept in the dry for whoever comes after.", 62
    )
    source = f"1.  STORES\n\n{text}\n\n{'-' * 20}\n{foot}\n\n{title}\n\n{told}\n"
    assert [label for label, _ in notes(source)] == list(marks)
    below = [
        (block.label.chars + " " + block.text.chars).split()
        for block in read_text(source, "a book", "ascii").blocks[-2:]
    ]
    assert below == [title.split(), told.split()]


def test_commands_that_end_a_note_keep_their_lines() -> None:
    note = (
        '5 Who sets the lamp by hand at the slate has these to write:\n  $ LAMP="north,south"\n  $ show LAMP'
    )
    blocks = read_text(page(".5", note, rule="_" * 20), "a book", "ascii").blocks
    at = next(number for number, block in enumerate(blocks) if block.kind is Kind.NOTE)
    assert blocks[at].text.chars.endswith("has these to write:")
    assert [line.chars for line in blocks[at + 1].lines] == ['$ LAMP="north,south"', "$ show LAMP"]


@pytest.mark.parametrize("stop", ["", "."])
def test_a_note_goes_on_at_the_foot_of_the_next_page(stop: str) -> None:
    lines = wrap(TEXT.format("*") + TEXT.format("") + "he sleeps.", 66)
    first, rest = (
        "* The other lamp was never lit, and the keepers of that year",
        "  sent it back to the harbour.",
    )
    rule = "  ----------\n"
    pages = ["\n".join(lines[at : at + 7]) for at in (0, 7, 14)]
    feet = [f"{rule}  {first}{stop}", f"{rule}  {rest}", ""]
    text = "\n\f".join(
        f"{' ' * 60}{number}\n\n{page}\n\n{foot}\n"
        for number, (page, foot) in enumerate(zip(pages, feet, strict=True), 1)
    )
    found = notes(text)
    assert found[0] == ("*", " ".join((first[2:] + ("." if stop else " " + rest)).split()))
