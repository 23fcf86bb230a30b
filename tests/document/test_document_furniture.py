"""Running heads and feet: lines that the place and the return on every page tell, whatever they say."""

from __future__ import annotations

import re
from collections.abc import Callable
from textwrap import wrap

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

TEXT = (
    "The keeper on watch writes down the hour and the state of the sea and he looks to the lamp at every "
    "second hour of the night until the sun is up and the curtains of the lantern are drawn and then "
)
NOTICE = "FOR THE KEEPERS OF THE ROCK - DO NOT TAKE IT ASHORE"
SAID = "(c) 1888 by the Board of the Rock. All rights are reserved."
NUMBERS = ["One", "Two", "Three", "Four", "Five", "Six", "Seven"]
CHAPTERS = ["THE LAMP", "THE LAMP", "THE LAMP", "THE BOAT", "THE BOAT", "THE BOAT", "THE ROCK"]
Lines = Callable[[int], list[str]]


def nothing(_: int) -> list[str]:
    return []


def book(head: Lines, foot: Lines, *, feeds: bool) -> str:
    """Seven pages of one sentence after the other, none of which ends with a page."""
    lines = wrap(TEXT * 60, 70)
    pages = []
    for number in range(1, 8):
        text = lines[24 * number : 24 * number + 24]
        above, below = head(number), foot(number)
        margins = (["", ""] if above else [], ["", "", ""] if below else [])
        if not feeds:
            margins = (["", "", ""], ["", "", ""])
        pages.append("\n".join([*above, *margins[0], *text, *margins[1], *below]))
    return ("\n\f" if feeds else "\n\n\n").join(pages) + "\n"


@pytest.mark.parametrize("feeds", [True, False])
@pytest.mark.parametrize(
    ("head", "foot"),
    [
        (nothing, lambda number: [f"          {NOTICE}", f"{number:34}"]),
        (nothing, lambda number: [f"          {SAID}", f"{number:34}"]),
        (nothing, lambda number: [f"{number:34}", f"          {NOTICE}"]),
        (nothing, lambda _: [f"          {NOTICE}"]),
        (nothing, lambda _: [f"          {SAID}"]),
        (nothing, lambda number: [f"          Page {NUMBERS[number - 1]}"]),
        (nothing, lambda number: [f"{'.' * 30} {number} {'.' * 30}"]),
        (lambda number: ["       THE ROCK", "  A book for its keepers", f"       page {number}"], nothing),
        (lambda number: [f"| The Rock | Third printing | {number} |"], nothing),
        (lambda number: [f"PART OF {CHAPTERS[number // 2 + 3]}"], lambda number: [f"{number:60}"]),
    ],
)
def test_what_comes_back_on_each_page_is_no_text(head: Lines, foot: Lines, feeds: bool) -> None:
    blocks = read_text(book(head, foot, feeds=feeds), "a book", "ascii").blocks
    read = [block for block in blocks if block.kind is not Kind.FURNITURE]
    assert len(read) == 1
    bare = read_text(book(nothing, nothing, feeds=feeds), "a book", "ascii").blocks
    assert [block.text.chars for block in bare] == [read[0].text.chars]


def test_a_running_head_with_its_number_on_left_pages_only() -> None:
    lines = wrap(TEXT * 60, 70)
    pages = ["\n".join(lines[24 * number : 24 * number + 24]) for number in range(5)]
    book = "The Book of the Rock"
    heads = ["", f"2{book:>50}", f"{book:>70}", f"4{book:>50}", f"{book:>70}"]
    text = "\n\f".join(f"{head}\n\n\n{page}" for head, page in zip(heads, pages, strict=True))
    blocks = read_text(text, "a book", "ascii").blocks
    assert [block.kind for block in blocks if block.kind is not Kind.FURNITURE] == [Kind.PARAGRAPH]


def test_a_small_number_at_the_foot_of_one_page_touches_the_head_of_the_next() -> None:
    lines = wrap(TEXT * 60, 70)
    pages = ["\n".join(lines[24 * number : 24 * number + 24]) for number in range(5)]
    book, part = "THE BOOK OF THE ROCK", f"{'OF THE LAMP':^70}"
    heads = ["", f"ii       {book}", f"{part}iii", f"iv       {book}", f"{part}  v"]
    feet = [f"\n\n\n{'i':>37}", *["\n\n\n"] * 4]
    text = "\n".join(f"{head}\n\n{page}\n{foot}" for head, page, foot in zip(heads, pages, feet, strict=True))
    blocks = read_text(text, "a book", "ascii").blocks
    assert [block.kind for block in blocks if block.kind is not Kind.FURNITURE] == [Kind.PARAGRAPH]


def test_a_sentence_that_comes_back_between_others_is_text() -> None:
    """A refrain: it stands a page apart, and alone, but what stands above it has come to its end."""
    lines = book(nothing, nothing, feeds=False).split("\n\n\n\n\n")
    text = "\n\n\n".join(
        f"{page.strip()} {number}.\n\n\nThe light is lit and the sea is dark.\n"
        for number, page in enumerate(lines)
    )
    blocks = read_text(text, "a song", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


def test_what_the_entries_of_a_reference_have_in_common_is_text() -> None:
    """Entries of one length have the same lines at the same distances, between blank lines, and none cuts another."""
    entry = (
        "lamp_{0} ()\n\nIt lights lamp {0}, and the keeper looks to it.\n\nParameters\n\n"
        "room   where the lamp is, or\n       a shelf with its tin.\n\nhour   when it is lit.\n\n"
        "Returns\n\nReturns LAMP_LIT where it burns, or the reason.\n\n"
        "It is lit at dusk, and not before,\nwhen the sun is down.\n"
    )
    text = "\n\n".join(entry.format(number) for number in (17, 4, 28, 11, 3, 21, 9, 35))
    blocks = read_text(text, "a reference", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]
    words = " ".join(f"{b.text.chars} " + " ".join(line.chars for line in b.lines) for b in blocks)
    assert words.count("Returns") == 16


def test_a_line_out_of_step_with_its_like_is_text() -> None:
    """The head of a table stands in the middle of a page where the table begins, and on top of the pages that it fills."""
    pages = book(lambda number: ["KEY  WHAT IT DOES"] if number > 1 else [], nothing, feeds=False)
    lines = pages.split("\n")
    lines[12] = ""
    lines[13] = "KEY  WHAT IT DOES"
    blocks = read_text("\n".join(lines), "a book", "ascii").blocks
    furniture = [block for block in blocks if block.kind is Kind.FURNITURE]
    assert len(furniture) == 6


def test_the_last_line_of_a_manual_page_is_its_foot_at_the_margin_only() -> None:
    page = "LAMP(7)      Lamps      LAMP(7)\n\nNAME\n       lamp - burns\n\n       oil    what it burns\n       wick   what is lit\n"
    for last, gone in (("", 1), ("\nThe Rock      1888-04-01      The Rock\n", 2)):
        blocks = read_text(page + last, "a page", "ascii").blocks
        assert len([block for block in blocks if block.kind is Kind.FURNITURE]) == gone


def test_rows_and_entries_at_the_edges_of_pages_stay() -> None:
    """A row between bars at the foot of each page, and an entry of the contents, count like the pages."""
    rows = "".join(
        f"+------+-----+\n| Oil  |   {number} |\n| Wick |   {number} |\n\f" for number in range(1, 7)
    )
    entries = "".join(f"{CHAPTERS[number]} ...................... {number}\n\f" for number in range(1, 7))
    for text in (rows, entries):
        blocks = read_text(text, "a book", "ascii").blocks
        assert not [block for block in blocks if block.kind is Kind.FURNITURE]


def uneven(heads: list[str]) -> str:
    """One sentence over pages of uneven height: a head of one line parts them, right below the text."""
    lines = [f"    {line}" for line in wrap(TEXT * 60, 60)]
    heights = [27, 31, 27, 30, 24]
    pages = [lines[sum(heights[:number]) :][:height] for number, height in enumerate(heights)]
    return "\n".join(
        "\n".join([*page, head, ""]) for page, head in zip(pages, [*heads, ""], strict=True)
    ).rstrip()


def test_heads_that_alternate_on_uneven_pages_are_no_text() -> None:
    """The same words on every second page, and the count of the pages, are sure signs; so is a first number below."""
    heads = [
        "       RULES OF THE SKERRY LIGHT                14",
        "15       HANDBOOK FOR KEEPERS",
        "       RULES OF THE SKERRY LIGHT                16",
        "17       HANDBOOK FOR KEEPERS",
    ]
    text = uneven(heads).replace(heads[0], f"\n                     [ 13 ]\n{heads[0]}")
    blocks = read_text(text, "a book", "ascii").blocks
    assert [block.kind for block in blocks if block.kind is not Kind.FURNITURE] == [Kind.PARAGRAPH]
    assert [block.lines[0].chars for block in blocks[1:]] == ["[ 13 ]", *(head.strip() for head in heads)]


def test_other_words_beside_numbers_on_uneven_pages_are_text() -> None:
    heads = [
        "       the watches of the first month           14",
        "15       the oil burnt in them",
        "       the ships that went by in fog            16",
        "17       the boats that landed",
    ]
    blocks = read_text(uneven(heads), "a book", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


def stepped(word: str, indent: int, heights: list[int]) -> str:
    """Pages of several heights, at the foot of each a word, the text of the next right below it."""
    lines = wrap(TEXT * 60, 70)
    pages: list[str] = []
    for height in heights:
        text, lines = lines[:height], lines[height:]
        pages.append("\n".join([*text, "", " " * indent + word]))
    return "\n".join(pages) + "\n"


def test_a_word_far_to_the_right_on_every_page_is_no_text_though_the_pages_differ() -> None:
    blocks = read_text(stepped("Page", 64, [20, 24, 19, 23, 21, 25, 22, 20]), "a book", "ascii").blocks
    assert [block.lines[0].chars for block in blocks if block.kind is Kind.FURNITURE] == ["Page"] * 8
    assert len([block for block in blocks if block.kind is not Kind.FURNITURE]) == 1


@pytest.mark.parametrize(
    ("word", "indent", "heights"),
    [("Page", 12, [20, 24, 19, 23, 21, 25, 22, 20]), ("Amen", 64, [20, 5, 40, 9, 21, 33, 16, 60])],
)
def test_a_word_at_the_text_or_now_and_then_is_text(word: str, indent: int, heights: list[int]) -> None:
    blocks = read_text(stepped(word, indent, heights), "a book", "ascii").blocks
    assert all(block.kind is not Kind.FURNITURE for block in blocks)


THINGS = ["Lamps", "Oil", "Wicks", "Bells", "Flags", "Boats", "Ropes", "Birds", "Seals", "Nets", "Kegs"]


def numbered_pages(first: dict[int, str], last: dict[int, str]) -> str:
    """Eleven pages of whole sentences, their number at the foot of each, some with a ``first`` or a ``last`` line."""
    pages = []
    for number, thing in enumerate(THINGS, 1):
        text = "\n".join(f"  {line}" for line in wrap(f"{thing} are kept. {TEXT} they sleep.", 60))
        filled = [*([first[number], ""] if number in first else []), *f"{text}\n\n{text}".split("\n")]
        filled += ["", last[number]] if number in last else []
        pages.append("\n".join([*filled, *[""] * (28 - len(filled)), f"{number:64}", "", ""]))
    return "\n".join(pages) + "\n"


def test_an_entry_of_a_list_that_begins_a_page_now_and_then_is_text() -> None:
    """The entry counted before it stands above it, on the page before: no running head goes on from the text."""
    on = (2, 4, 6)
    entries = numbered_pages(
        {number + 1: "  c. Its oil." for number in on}, dict.fromkeys(on, "  b. Its wick.")
    )
    text = re.sub(r"^  (?=Oil|Bells|Boats)", "  a. ", entries, flags=re.MULTILINE)
    blocks = read_text(text, "a list", "ascii").blocks
    assert [len(block.lines[0].chars) < 3 for block in blocks if block.kind is Kind.FURNITURE] == [True] * 11


@pytest.mark.parametrize(("on", "gone"), [((3, 4, 5, 6, 7), 5), ((3, 5, 6, 9), 0)])
def test_a_line_that_comes_back_is_a_head_on_page_after_page_only(on: tuple[int, ...], gone: int) -> None:
    blocks = read_text(numbered_pages(dict.fromkeys(on, "  Example"), {}), "a book", "ascii").blocks
    assert sum(block.kind is Kind.FURNITURE for block in blocks) == 11 + gone


def test_the_first_line_of_titles_over_a_line_of_its_own_each_time_is_text() -> None:
    """Below the margin of a page stands what all titles begin with, right over what is this one's own."""
    text = numbered_pages({number: f"Annex\nOf {THINGS[number]}." for number in (5, 6, 8, 9, 10)}, {})
    blocks = read_text(text, "a book", "ascii").blocks
    assert sum(block.kind is Kind.FURNITURE for block in blocks) == 11


def test_the_last_row_before_a_blank_line_is_no_head_though_it_stands_a_page_below_the_last() -> None:
    """Rows of a table of signs in groups of eight: each counts on from the one above it, which touches it."""
    signs = [f"{sign:03o}     0x{sign:02x}    no sign of the lamp" for sign in range(128)]
    text = "".join(f"{row}\n" + "\n" * (place % 8 == 7) for place, row in enumerate(signs))
    blocks = read_text("    Signs of the lamp\n\n" + text, "signs", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


@pytest.mark.parametrize("bullet", ["o  ", ""])
@pytest.mark.parametrize("boats", [6, 12])
def test_entries_of_records_of_one_height_are_no_heads(bullet: str, boats: int) -> None:
    """Each boat has the same marks; the last one of each is the same, over the margin of the next boat."""
    text = "\n".join(
        f"  5.{boat}.  The boat of the year {1870 + boat}\n\n\n"
        + "".join(
            f"  {bullet}{thing:14}: {THINGS[(boat * 7 + place) % 11]} seen\n\n"
            for place, thing in enumerate(THINGS)
        )
        + f"  {bullet}Note          : -\n\n\n"
        for boat in range(boats)
    )
    assert not [block for block in read_text(text, "boats", "ascii").blocks if block.kind is Kind.FURNITURE]


def test_a_short_line_above_what_comes_back_is_no_sentence_that_a_page_cuts() -> None:
    """Names with their texts below them, each without a full stop: the next word would have fitted on the line above."""
    said = "\n".join("   " + line for line in wrap(TEXT + "all is well.", 70))
    entry = (
        "   hours\n           The hours of the watch if the lamp is lit\n\n"
        "           from the log book\n\n"
        "   true_hours\n           Whether the keeper counts them by the sun\n\n"
    )
    text = "".join(f"  The {thing}\n\n" + f"{said}\n\n" * 5 + entry for thing in THINGS)
    assert not [block for block in read_text(text, "hours", "ascii").blocks if block.kind is Kind.FURNITURE]


def test_rows_of_a_table_at_the_edges_of_pages_stay() -> None:
    """A tide table, one page a month: its days count on from line to line, and so seem to count the pages."""
    months = [
        f"Tides of month {month}\n\n"
        + "\n".join(
            f"{day:3}   {7 * day % 24:02}:{11 * day % 60:02}   {5 * month % 24:02}:17   {month % 5}.{day % 10}"
            for day in range(month, 27 + month)
        )
        for month in range(1, 8)
    ]
    blocks = read_text("\n\f".join(months) + "\n", "tides", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


def test_rows_built_alike_at_the_edges_of_pages_stay() -> None:
    days = ["Monday", "Tuesday", "Friday", "Sunday"]
    pages = [
        "\n".join(f"{days[(row + page) % 4]:10}    {page}      {row}.5    {page}" for row in range(9))
        for page in range(1, 8)
    ]
    blocks = read_text("\n\f".join(pages) + "\n", "tides", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


@pytest.mark.parametrize("height", [20, 33, 60])
def test_what_comes_back_in_the_middle_of_pages_as_often_is_text_at_their_edges(height: int) -> None:
    """Cards of keepers of seven lines, on pages that now and then begin or end with the same line of one."""
    cards = [
        line
        for keeper in range(60)
        for line in (
            f"Name: keeper {THINGS[keeper % 11]}{keeper}",
            "Rank:   second",
            "Light:  Skerry",
            "",
            "Remarks: none",
            "",
            "",
        )
    ]
    text = "".join(
        "\f" * (not place % height and place > 0) + line + "\n" for place, line in enumerate(cards)
    )
    assert not [block for block in read_text(text, "cards", "ascii").blocks if block.kind is Kind.FURNITURE]


def test_a_number_at_the_edge_of_a_page_from_which_others_on_it_count_on_is_text() -> None:
    """Verses with their numbers, the first of them at the top of a page each time, as page numbers stand there."""
    verses = [
        [
            str(verse),
            "",
            "The lamp is lit",
            f"the {THINGS[verse % 11].lower()} are wet",
            "the sea is grey",
            "",
        ]
        for verse in range(1, 37)
    ]
    text = "\f".join(
        "\n".join(line for verse in verses[first : first + 6] for line in verse) for first in range(0, 36, 6)
    )
    assert not [block for block in read_text(text, "verses", "ascii").blocks if block.kind is Kind.FURNITURE]


@pytest.mark.parametrize("last", ["Signed", "Light        - none", "The Log of {}"])
@pytest.mark.parametrize("height", [30, 60])
def test_sheets_of_one_height_that_cut_no_sentence_lose_nothing(last: str, height: int) -> None:
    """Whole sentences on each sheet, as many lines of them, and the same words at its end: nothing says that it is a page."""
    said = [*wrap("The keeper writes down the state of the sea at noon and at midnight. ", 60), ""]
    sheets = [
        [f"Boat {thing}", "", "", *(said * height)[: height - 7], "", last.format(thing), "", ""]
        for thing in (*THINGS, *THINGS)
    ]
    blocks = read_text("\n".join("\n".join(sheet) for sheet in sheets), "sheets", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


@pytest.mark.parametrize("head", ["The Skerry Light", "LAMP(1)"])
@pytest.mark.parametrize("right", ["Sheet for the Log", "LAMP(1)"])
def test_words_at_both_edges_of_the_text_are_a_head_though_no_page_cuts_a_sentence(
    head: str, right: str
) -> None:
    said = [*wrap("The keeper writes down the state of the sea at noon and at midnight, and signs. ", 60), ""]
    page = [*(said * 10), "", f"{head}{right:>{60 - len(head)}}", "", ""]
    blocks = read_text("\n".join(line for _ in range(6) for line in page), "sheets", "ascii").blocks
    assert sum(block.kind is Kind.FURNITURE for block in blocks) == 6
