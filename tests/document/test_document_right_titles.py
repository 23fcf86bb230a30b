"""Names at the right margin over their entries, and heads of pages that say from where to where they go."""

from __future__ import annotations

from fit.document.blocks import Document, Kind
from fit.document.text import read_text

NAMES = ["bell", "day_lamp", "fog", "gun", "horn", "lamp_oil", "lens", "night", "oil", "slate"]


def entry(name: str) -> str:
    """What a reference of the words of the log says of one of them."""
    return (
        f"{name:>72}\n"
        f"WORD   {name}\n"
        f"     The keeper writes {name} into the log where it is what the watch was\n"
        "     about, and he adds the hour behind it.\n"
        "   SEE ALSO: the rules of the log\n\n"
    )


def read(text: str) -> Document:
    return read_text(text, "words", "ascii")


def of_kind(document: Document, kind: Kind) -> list[str]:
    return [block.text.chars for block in document.blocks if block.kind is kind]


def test_names_that_end_at_one_column_over_their_entries_are_headings() -> None:
    assert of_kind(read("".join(map(entry, NAMES))), Kind.HEADING) == NAMES


def test_one_date_at_the_right_over_a_letter_is_no_heading() -> None:
    letter = f"{'Skerry Light, in May':>72}\nDear keepers,\n\nThe boat comes on the next calm day with the oil and the wicks.\n"
    assert of_kind(read(letter), Kind.HEADING) == []


def paged(heads: list[str]) -> Document:
    """Five pages, each with a head at the right and a sentence that the next page goes on with."""
    page = "The keeper writes the word into the log where it is what the watch was\nabout, and he adds the hour behind it.\n\n"
    pages = [
        f"{head:>72}\n\n{page * 8}{name.title()} and lamp are left to the second keeper until the morning, and\n"
        for head, name in zip(heads, NAMES, strict=False)
    ]
    return read("\f".join(pages))


def test_heads_that_say_from_where_to_where_a_page_goes_are_dropped() -> None:
    heads = [f"FROM {first} TO {last}" for first, last in zip(NAMES[::2], NAMES[1::2], strict=True)]
    document = paged(heads)
    kept = [line.chars for block in document.blocks if block.kind is Kind.FURNITURE for line in block.lines]
    assert [line.strip() for line in kept] == heads
    assert sum("morning, and The keeper" in text for text in of_kind(document, Kind.PARAGRAPH)) == 4


def test_titles_of_four_words_over_pages_stay() -> None:
    heads = [
        "The bell in fog",
        "Oil for the night",
        "How horns are cleaned",
        "Day lamp and lens",
        "Guns on the rock",
    ]
    document = paged(heads)
    assert [block for block in document.blocks if block.kind is Kind.FURNITURE] == []
