"""Pages: what their edges hold of furniture and of text, and what goes on from one to the next."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

LINES = [
    "The keeper on watch writes down the hour, the wind and the state of the",
    "sea, and he looks to the lamp at every second hour of the night until",
    "the sun is up and the curtains are drawn all the way round the lantern.",
]
ROUND = "\n".join(LINES * 6)
TITLES = ["OF THE OIL", "OF WICKS AND GLASSES", "OF THE CLOCKWORK"]


def parts(text: str) -> tuple[list[str], list[str]]:
    """The texts of what is read, and of the furniture."""
    read: list[str] = []
    furniture: list[str] = []
    for block in read_text(text, "a document", "ascii").blocks:
        shown = block.text.chars or "\n".join(line.chars for line in block.lines)
        (furniture if block.kind is Kind.FURNITURE else read).append(shown)
    return read, furniture


def test_heads_of_two_lines_with_the_chapter_in_the_page_number() -> None:
    """The second line changes with the sections; the words of the first one read as text, and each chapter counts anew."""
    page = f"{ROUND}\nHe trims the wicks when it is dark, and never with the scissors that are"
    heads = [(chapter, number) for chapter in range(1, 9) for number in range(2, 5)]
    text = page + "".join(
        f"\n\f\n   THE CARE OF THE LAMP{' ' * 30}PAGE {chapter}-{number}\n   {TITLES[number - 2]}\n\n\n"
        f"kept for the mails. So says rule {number} of {chapter}.\n\n{page}"
        for chapter, number in heads
    )
    read, furniture = parts(text)
    assert len(furniture) == 2 * len(heads)
    assert sum("scissors that are kept for the mails." in shown for shown in read) == len(heads)


def test_text_that_comes_back_at_page_edges_now_and_then_is_no_furniture() -> None:
    """A caption, a ruler over a diagram: alike on some pages, but not on those one after the other."""
    feet = {1: "Alternates:", 5: "Alternates:", 8: "Alternates:"}
    tops = {2: "Signal 2:", 3: "Signal 3:", 6: "0         1         2         3"} | {
        9: "0         1         2         3"
    }
    days = [
        "Sunday",
        "Monday",
        "Tuesday",
        "Wednesday",
        "Thursday",
        "Friday",
        "Saturday",
        "Lent",
        "Easter",
        "May Day",
        "Whitsun",
    ]
    text = "\f".join(
        f"THE LOG{' ' * 50}Page {number}\n\n{tops.get(number, f'It blew hard on {day}.')}\n\n{ROUND}\n\n"
        f"{feet.get(number, f'By the night of {day} it was calm.')}\n"
        for number, day in enumerate(days, 1)
    )
    read, furniture = parts(text)
    assert all(shown.startswith("THE LOG") for shown in furniture)
    assert len(furniture) == 11
    assert sum(shown == "Alternates:" for shown in read) == len(feet)


@pytest.mark.parametrize("last", ["Combine (op, lamp, oil, wick)", "\n    Remarks:        {0}, oil, wick"])
def test_what_ends_sections_of_one_length_is_no_furniture(last: str) -> None:
    """Neither the last line of each example, right below the others, nor a label with changing text beside it."""
    sizes = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh"]
    text = "".join(
        f"The {size} watch\n\n{ROUND}\n\n    for each {size} lamp\n        Add (lamp, {size})\n"
        f"    {last.format(size)}\n\n{ROUND}\n\n{ROUND}\n\n"
        for size in sizes
    )
    read, furniture = parts(text)
    assert furniture == []
    assert sum(last.format(size).strip().split()[0] in " ".join(read) for size in sizes) == len(sizes)


def test_a_title_at_the_top_of_a_page_is_no_row_of_the_table_before() -> None:
    oil = [
        f"{day:<8}{number}       {number + 3}" for number, day in enumerate(["Mon", "Tue", "Wed", "Thu"], 10)
    ]
    wicks = [line.replace("1", "2") for line in oil]
    rows = ["Day     Oil      Wicks", *oil, "\fB.3     Glasses  Spare", "", "Day     Oil      Wicks", *wicks]
    document = read_text("\n".join(rows) + "\n", "a document", "ascii")
    tables = [block for block in document.blocks if block.kind is Kind.TABLE]
    assert len(tables[0].rows) == 5


@pytest.mark.parametrize(
    ("first", "rows"), [("5.   The stores by shelf", 5), ("wick-trim    Shelf-4   9.9", 6)]
)
def test_a_title_at_the_top_of_a_page_is_no_row_of_a_table_with_long_cells(first: str, rows: int) -> None:
    head = "Part         Shelf     Page\n-----------  --------  ----\n"
    table = "".join(f"wick-{name:<8}Shelf-{name[0]}   3.{len(name)}\n" for name in ("north", "south", "east"))
    text = f"{head}{table}wick-of-the-stair Shelf-9 4.1\n\f{first}\n\n{head}{table}"
    document = read_text(text, "a document", "ascii")
    tables = [block for block in document.blocks if block.kind is Kind.TABLE]
    assert len(tables[0].rows) == rows


def test_a_page_end_that_blank_lines_alone_show() -> None:
    above = "The lamp is lit at dusk, and the keeper who has the watch stays with it the"
    text = f"{ROUND}\n{above}" + "\n" * 12 + f"whole night. He writes down what he sees.\n{ROUND}\n"
    assert "stays with it the whole night." in read_text(text, "a document", "ascii").blocks[0].text.chars


def test_footnotes_under_a_rule_in_the_middle_of_a_sentence() -> None:
    """Several notes, with bare numbers, right below the text; the next page goes on with its sentence."""
    text = (
        f"{ROUND}\nThe oil1 is kept in two tanks2 below the stairs, and the keeper on watch\n"
        "-----------\n  1 Colza oil is no longer used.\n  2 One of them leaks. It was sent back in\n"
        "1886, and came as it was.\n\n\n                       - 2 -\n\n\n"
        f"fills the lamp from the small one.\n{ROUND}\n\n\n                       - 3 -\n\n\n{ROUND}\n"
    )
    blocks = read_text(text, "a document", "ascii").blocks
    notes = [(block.label.chars, block.text.chars) for block in blocks if block.kind is Kind.NOTE]
    assert notes == [
        ("1", "Colza oil is no longer used."),
        ("2", "One of them leaks. It was sent back in 1886, and came as it was."),
    ]
    assert "the keeper on watch fills the lamp from the small one." in blocks[0].text.chars


@pytest.mark.parametrize("mark", ["[+]", "[*]", "[\u2020]", "[a]"])
def test_a_footnote_with_a_sign_in_brackets(mark: str) -> None:
    text = (
        f"{ROUND}\nThe goat is not to be fed from the gallery. When the wind\n\n--------\n"
        f"{mark} But see the log of March.\n\f\nis in the north it comes up by itself.\n{ROUND}\n"
    )
    blocks = read_text(text, "a document", "ascii").blocks
    assert "When the wind is in the north it comes" in blocks[0].text.chars
    assert [block.text.chars for block in blocks if block.kind is Kind.NOTE] == ["But see the log of March."]


def test_a_notice_under_a_rule_at_the_foot_of_a_page() -> None:
    text = (
        f"{ROUND}\nNobody sails to the rock when the wind is in the west, and the boat that\n____________________\n"
        f"   NOTICE: This book is being written anew.\n\f\nbrings the mails then waits.\n{ROUND}\n"
    )
    blocks = read_text(text, "a document", "ascii").blocks
    assert "the boat that brings the mails then waits." in blocks[0].text.chars
    assert [block.text.chars for block in blocks if block.kind is Kind.NOTE] == [
        "NOTICE: This book is being written anew."
    ]


def test_a_title_in_small_words_at_the_top_of_a_page_is_no_part_of_the_text_before() -> None:
    above = "The lantern is painted in every third year, and so are the stairs in it."
    foot = f"\n\n\nTHE LOG{' ' * 50}Page "
    text = f"{ROUND}\n{above}{foot}1\n\fCHANGES IN THE THIRD YEAR\n\n{ROUND}{foot}2\n\f{ROUND}{foot}3\n"
    read, _ = parts(text)
    assert "CHANGES IN THE THIRD YEAR" in read


def test_heads_of_the_later_pages_of_a_letter() -> None:
    head = "The Secretary, Board of Lights\nPage {}\n4th November 1931\n\n\n"
    stores = ["oil", "wicks", "glasses", "ropes"]
    ends = [f"{ROUND}\n\nThe {store} were counted in the store, and\n" for store in stores]
    starts = [f"the list of the {store} was sent.\n\n" for store in stores]
    text = f"The Light on the Rock\n\n4th November 1931\n\n{ends[0]}" + "".join(
        f"\f{head.format(number)}{start}{end}"
        for number, start, end in zip((2, 3, 4), starts, ends[1:], strict=False)
    )
    other = "".join(f"\fOf the {store} more is said.\n\n{ROUND}\n\n{ROUND}\n" for store in stores)
    read, furniture = parts(text + other)
    assert len(furniture) == 9
    assert read[1] == "4th November 1931"
    assert "The oil were counted in the store, and the list of the oil was sent." in read


def test_the_sign_of_a_note_stays_whole() -> None:
    page = f"{ROUND}\n\nThe seat of the board is the rock.1/ It has no other one, and the\n"
    note = "-----\n1/ In the winter months, the Custom House.\n"
    text = f"{page}\n\n{note}\f" + "keepers know of none.\n\n" + f"{ROUND}\n\f{ROUND}\n"
    labels = [
        block.label.chars
        for block in read_text(text, "a document", "ascii").blocks
        if block.kind is Kind.NOTE
    ]
    assert labels == ["1/"]


def test_captions_of_tables_alike_are_no_running_heads() -> None:
    runs = "".join(
        f"## Fog bell ##\n[{mark}]  by hand   by clock\n\n"
        + "".join(f"{run}.      {80 + run}.{mark}      {70 + run}.{mark}\n\n" for run in range(1, 6))
        + "\n"
        for mark in (1, 2, 3)
    )
    log = "".join(
        f"On day {day} the keepers lit the lamp at dusk and put\nit out at dawn, and all was well.\n\n"
        for day in range(60)
    )
    blocks = read_text(log + runs + log, "log", "ascii").blocks
    assert not any(block.kind is Kind.FURNITURE for block in blocks)


def test_heads_of_two_lines_that_begin_with_an_article() -> None:
    """Words that all begin with a capital are a name, though a small word is among them."""
    head = "The Keepers' House\nHandbook for Keepers\n\n\n"
    pages = [
        f"{head}{LINES[0]}\n{LINES[1]}\nas rule {number} has it.\n\n{ROUND}\n\n{' ' * 30}{number}\n"
        for number in range(1, 7)
    ]
    _, furniture = parts("\f".join(pages))
    assert len(furniture) == 3 * len(pages)


CHAPTERS = ["Of the Lamp", "Of Oil and Wicks", "Of the Boat", "Of Stores"]


def chapters(per: int) -> str:
    """Chapters of so many pages, the title of each below the first of its page heads or, of two, below both."""
    pages = [
        f"Page >{number}<\n{CHAPTERS[(number - 1) // per]}\n\n{ROUND}\n\n" for number in range(1, 4 * per + 1)
    ]
    return "\f".join(pages)


def test_titles_of_chapters_below_the_number_of_the_page() -> None:
    """Each stands on one page alone and cuts no sentence: it is no running head."""
    read, furniture = parts(chapters(1))
    assert furniture == [f"Page >{number}<" for number in range(1, 5)]
    assert [shown for shown in read if shown in CHAPTERS] == CHAPTERS


def test_titles_of_chapters_on_each_of_their_pages() -> None:
    read, furniture = parts(chapters(2))
    assert not set(read) & set(CHAPTERS)
    assert sum(shown in CHAPTERS for shown in furniture) == 8


THINGS = ["lamp", "boat", "store", "horn", "tank", "clock", "stove"]


def labels(last: str) -> list[bool]:
    """For each of seven pages whether what begins it is read by itself; one page ends with ``last``."""
    end = "He has the lamp lit at dusk, whatever the weather is and whoever is on\nthe rock, and he trims it before he goes up and then again at midnight.\n"
    pages = [f"{ROUND}\n\n{end}"] * 7
    pages[3] = f"{ROUND}\n\n{last}"
    text = "\f".join(
        f"Page >{number}<\n\nThis is what we say of the {thing}:\n\n{page}"
        for number, (thing, page) in enumerate(zip(THINGS, pages, strict=True), 1)
    )
    read, _ = parts(text)
    return [f"This is what we say of the {thing}:" in read for thing in THINGS]


def test_texts_end_with_their_pages_where_no_page_cuts_a_sentence() -> None:
    assert all(labels("He notes the hour.\n"))


@pytest.mark.parametrize("last", ["to the", "when he has the watch alone", "as he did at dusk"])
def test_texts_go_on_over_pages_where_one_cuts_a_sentence(last: str) -> None:
    """The words at one page end say that nobody ended pages on purpose: below a full line a text may go on anywhere."""
    assert not any(
        labels(f"He notes the hour and the wind, and at midnight he goes up once more {last}\n")[1:]
    )


def test_a_number_of_very_many_figures_at_the_end_of_a_page_is_no_page_number() -> None:
    figures = ["17976931348623159077083915679378", "99792458813451203458813452233409"]
    read, _ = parts(
        f"{ROUND}\n\nIn our figures this is\n\n     {figures[0]}\n\f     {figures[1]}\n\n{ROUND}\n"
    )
    assert all(any(number in shown for shown in read) for number in figures)
