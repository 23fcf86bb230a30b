"""Newspaper columns: where they begin and end, what parts them, and what stands between their pages."""

from __future__ import annotations

from itertools import zip_longest
from textwrap import wrap

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

OIL = "The keepers have asked for a grease-pot that can be filled with one hand, and for a lid that stays shut when the wind is in the north. The office says there is no such pot."
TIDE = "The spring tides of March were the highest for many years. At the landing the water came up to the ninth step, and the winch, which had been standing where it always stands, was taken."
GOAT = "Nobody has told the goat that the lamp room is closed to visitors. It was found on the gallery on Tuesday with half of the list of stores, and it would not say where the other half was."


def beside(*columns: list[str], width: int, gutter: int) -> list[str]:
    """The rows of columns that stand side by side."""
    rows = zip_longest(*columns, fillvalue="")
    return [(" " * gutter).join(text.ljust(width) for text in row).rstrip() for row in rows]


def column(*parts: str, width: int) -> list[str]:
    """The lines of one column, a blank line between its parts, the first lines set in."""
    lines: list[str] = []
    for part in parts:
        lines += [*wrap(part, width, initial_indent="  " * part[0].isupper()), ""]
    return lines[:-1]


def texts(rows: list[str]) -> list[str]:
    """The texts of what is read, the lines that are kept as they stand joined by a bar."""
    document = read_text("\n".join(rows) + "\n", "bulletin.txt", "ascii")
    return [
        block.text.chars or " | ".join(line.chars for line in block.lines)
        for block in document.blocks
        if block.kind is not Kind.FURNITURE
    ]


def test_a_blank_line_across_both_columns_does_not_end_them() -> None:
    left, right = column(OIL, TIDE, width=32), column(OIL, GOAT, width=32)
    assert left.index("") == right.index("")
    assert texts(beside(left, right, width=32, gutter=4)) == [OIL, TIDE, OIL, GOAT]


def test_three_columns_with_two_blanks_between() -> None:
    columns = [column(*parts, width=24) for parts in ((OIL, TIDE), (GOAT, OIL), (TIDE, GOAT))]
    assert texts(beside(*columns, width=24, gutter=2)) == [OIL, TIDE, GOAT, OIL, TIDE, GOAT]


def test_a_column_that_begins_higher_than_the_one_beside_it() -> None:
    left, right = column(OIL, TIDE, GOAT, width=34), column(GOAT, OIL, TIDE, width=34)
    rows = beside(["Of oil", "", *left], ["", *right], width=34, gutter=2)
    assert texts(rows) == ["Of oil", OIL, TIDE, GOAT, GOAT, OIL, TIDE]


def test_the_last_word_of_a_paragraph_at_the_head_of_the_second_column() -> None:
    left, right = column(OIL + " It was", width=34), column("asked.", GOAT, width=34)
    assert texts(beside(left, right, width=34, gutter=4)) == [OIL + " It was asked.", GOAT]


@pytest.mark.parametrize(("width", "gutter"), [(22, 3), (24, 4), (30, 3)])
def test_lines_above_the_columns_with_text_in_both_belong_to_them(width: int, gutter: int) -> None:
    left = ["THE BELL", "", *column(OIL, f"{TIDE[:-1]}, as they", width=width)]
    rows = beside(
        left, ["asked.", "", "THE GOAT", "", *column(GOAT, width=width)], width=width, gutter=gutter
    )
    assert texts(rows) == ["THE BELL", OIL, f"{TIDE[:-1]}, as they asked.", "THE GOAT", GOAT]


def test_a_running_head_between_two_pages_of_columns() -> None:
    pages = [
        (column(OIL, TIDE, width=32), column(GOAT, TIDE, width=32)),
        (column(GOAT, width=32), column(OIL, width=32)),
    ]
    first, second = (beside(*page, width=32, gutter=4) for page in pages)
    head = "The Skerry Bulletin" + "page 2".rjust(68 - 19)
    assert texts([*first, head, "", *second]) == [OIL, TIDE, GOAT, TIDE, GOAT, OIL]


def test_a_boxed_notice_at_the_foot_of_one_column_and_the_head_of_the_next() -> None:
    rule = "+" + "-" * 30 + "+"
    notice = ["Members who have the tape", "of the fog horn are asked to", "give it back before the boat."]
    above, *below = [f"| {line:<29}|" for line in notice]
    left = [*column(OIL, TIDE, width=32), "", rule, above]
    right = [*below, rule, "", *column(GOAT, OIL, width=32)]
    read = texts(beside(left, right, width=32, gutter=4))
    assert read[:2] == [OIL, TIDE]
    assert read[-2:] == [GOAT, OIL]
    assert "tape" in read[2]


def test_a_title_over_columns_stays_above_them() -> None:
    rows = beside(column(OIL, TIDE, width=32), column(GOAT, OIL, width=32), width=32, gutter=4)
    title = "THE SKERRY BULLETIN".center(68).rstrip()
    assert texts([title, "", *rows])[0] == "THE SKERRY BULLETIN"


def test_two_columns_of_a_table_stay_a_table() -> None:
    rows = [f"{name:<24}  {what}" for name, what in [("Wick, flat", "for lamps of the first order")] * 20]
    document = read_text("\n".join(rows) + "\n", "stores.txt", "ascii")
    assert [block.kind for block in document.blocks] == [Kind.TABLE]


def test_the_longer_first_column_goes_on_alone_below_a_blank_line() -> None:
    left, right = column(OIL, TIDE, width=32), column(GOAT, width=32)
    more = ["", *wrap(GOAT, 32)]
    rows = [*beside(left, [*right, "", *right][: len(left)], width=32, gutter=4), *more, "", *wrap(TIDE, 68)]
    read = texts(rows)
    assert read[:3] == [OIL, TIDE, GOAT]
    assert read[-1] == TIDE


def test_heads_over_columns_set_in_from_the_margin() -> None:
    left = [
        "Barrels are dear.  The board",
        "has found that of ten that",
        "are sent only seven come",
        "back, and that of these one",
    ]
    left += [
        "is as a rule not its own.",
        "",
        "Soap will be blue from",
        "April.  It is not better,",
        "but it is cheaper, and it",
        "floats.",
    ]
    right = [
        "The answer to the letter of",
        "January is no.  The answer",
        "to the one of February is",
        "no, for the same reason.",
        "",
    ]
    right += [
        "The third letter has not",
        "been opened, since the key",
        "to the box of letters is on",
        "the rock.  Send it with the",
        "next boat, with a letter.",
    ]
    rows = ["FOR ALL LIGHTS".ljust(33) + "FOR THE LIGHT", ""]
    rows += [f"{one:33}{other}".rstrip() for one, other in zip(left, right, strict=True)]
    text = "".join(f"{' ' * 8}{row}".rstrip() + "\n" for row in rows)
    found = read_text(text, "a leaf", "ascii").blocks
    assert [block.text.chars for block in found if block.kind is Kind.HEADING] == [
        "FOR ALL LIGHTS",
        "FOR THE LIGHT",
    ]


@pytest.mark.parametrize("bar", ["|", "\u2502"])
def test_columns_with_a_rule_between_are_read_one_after_the_other(bar: str) -> None:
    rows = [
        ("The keepers of the light met twice in", "Nothing heavier than two casks may be"),
        ("the winter, and wrote down what the", "sent up in the basket.  The winch is"),
        ("glass had shown in each of the gales", "turned by two men, who stop when the"),
        ("that they had seen from the gallery.", "basket is under the door."),
        ("", ""),
        ("The list of them hangs in the store,", "The rope is new since the spring, and"),
        ("where it can be read by whoever comes", "the old one was cut up for the boat"),
        ("with the boat.", "that brings the oil."),
    ]
    text = "\n".join(f"{left:<38} {bar}  {right}".rstrip() for left, right in rows)
    found = read_text(f"{text}\n", "a document", "utf-8").blocks
    shown = [block.text.chars for block in found if block.kind is Kind.PARAGRAPH]
    assert [line.split()[1] for line in shown] == ["keepers", "list", "heavier", "rope"]
    assert shown[0].endswith("seen from the gallery.")
    furniture = [block.lines[0].chars for block in found if block.kind is Kind.FURNITURE]
    assert furniture == [bar] * len(rows)


def test_short_columns_with_the_rule_of_longer_ones() -> None:
    """Nothing but a table by themselves: the bar stands where it did before, and sentences go on below it."""
    long = [
        ("The keepers of the light met twice in", "Nothing heavier than two casks may be"),
        ("the winter, and wrote down what the", "sent up in the basket.  The winch is"),
        ("glass had shown in each of the gales", "turned by two men, who stop when the"),
        ("that they had seen from the gallery,", "basket is under the door, and lift it"),
        ("and what the wind had broken.", "over the sill."),
    ]
    short = [
        ("SMALL NOTICES", "Next Meetings"),
        ("", "-------------"),
        ("FOUND: a glass, hardly used at all,", "10 May: the keepers meet on the sec-"),
        ("with its case.", "ond day of the month, at half past"),
        ("", "seven, in the watch room."),
        ("LOST, between the landing and the", ""),
        ("watch room, a set of keys on a", "14 June: the list of the stores. The"),
        ("brass ring. The finder is asked to", "keeper of it reads it out, for the"),
        ("return them, and not to try them", "first time since the gale, and a rea-"),
        ("first.", "son will follow."),
        ("", ""),
        ("WANTED: a cat.", "12 July: no list, because nobody"),
        ("WANTED: a rope.", "ever asks."),
        ("WANTED: oil.", ""),
    ]
    pages = ["\n".join(f"{left:<38} |  {right}".rstrip() for left, right in rows) for rows in (long, short)]
    between = (
        "The keepers of the light write down what they see and hear in the watch,\nand what the sea does.\n"
    )
    found = read_text(f"{pages[0]}\n\n{between}\n{pages[1]}\n", "a document", "ascii").blocks
    shown = " ".join(block.text.chars for block in found if block.kind is Kind.PARAGRAPH)
    assert "FOUND: a glass, hardly used at all, with its case." in shown
    assert "at half past seven, in the watch room." in shown


def test_short_notices_that_start_alone_in_their_row_are_columns() -> None:
    notices = """\
TO GIVE AWAY                           WANTED

Brass lamp, old, on mahogany           Telescope, any condition, for the
base. At the tower. Keeper.            lamp room.

Box of wicks, most of them good,       Somebody to write the next log. A
some of them very good. Ask the        keeper who can read the tides and
mate.                                  knows the rocks would be welcome,
                                       and so would his boat.
One oilskin, slightly torn.
                                       Chart of the sound that was found
                                       in the boat house.
"""
    found = [block.text.chars for block in read_text(notices, "notices", "ascii").blocks]
    assert found == [
        "TO GIVE AWAY",
        "Brass lamp, old, on mahogany base. At the tower. Keeper.",
        "Box of wicks, most of them good, some of them very good. Ask the mate.",
        "One oilskin, slightly torn.",
        "WANTED",
        "Telescope, any condition, for the lamp room.",
        "Somebody to write the next log. A keeper who can read the tides and knows the rocks would be welcome, and so would his boat.",
        "Chart of the sound that was found in the boat house.",
    ]


STORES = """\
Store      Cans   Wicks
-------    ----   -----
cellar       12      30
landing       4
gallery       1       6""".splitlines()


def test_a_small_table_in_a_column_is_read_with_it() -> None:
    left, right = column(OIL, TIDE, GOAT, width=34), [*column(OIL, width=34), "", *STORES, ""]
    right += column(GOAT, width=34)
    rows = beside(left, right, width=34, gutter=4)
    assert texts(rows)[:4] == [OIL, TIDE, GOAT, OIL]
    assert texts(rows)[-1] == GOAT
    document = read_text("\n".join(rows) + "\n", "bulletin.txt", "ascii")
    table = next(block for block in document.blocks if block.kind is Kind.TABLE)
    assert [cell.chars for cell in table.rows[1]] == ["cellar", "12", "30"]


def test_new_heads_over_both_columns_begin_new_columns() -> None:
    rows = beside(column(OIL, GOAT, width=34), column(TIDE, OIL, width=34), width=34, gutter=4)
    heads = beside(["OF THE LAMP"], ["OF THE SEA"], width=34, gutter=4)
    again = beside(column(GOAT, width=34), column(TIDE, width=34), width=34, gutter=4)
    assert texts([*rows, "", "", *heads, "", *again]) == [
        *(OIL, GOAT, TIDE, OIL),
        *("OF THE LAMP", GOAT),
        *("OF THE SEA", TIDE),
    ]


def test_text_beside_nothing_but_a_table_is_no_column_of_a_newspaper() -> None:
    rows = beside(column(OIL, TIDE, width=34), ["", *STORES, *STORES[2:]], width=34, gutter=4)
    document = read_text("\n".join(rows) + "\n", "bulletin.txt", "ascii")
    assert not any("newspaper" in block.note for block in document.blocks)


def test_an_index_with_leaders_beside_a_paragraph() -> None:
    """Each is read by itself, the entry beside the last words of the paragraph and the one below it too."""
    titles = [f"{name} ".ljust(33, ".") for name in ("The lamp is lit", "Fog on the rock", "A boat comes in")]
    titles += [
        f"{name} ".ljust(33, ".") for name in ("The goat and the stores", "Oil", "When I was a keeper")
    ]
    entries = ["FIRST LINES", "", *(f"{title} {number}" for number, title in enumerate(titles, 3))]
    thanks = "To the men of the boat, of whom four are left, and to the keeper who wrote down what they sang at the winch."
    rows = beside(entries, ["THANKS", "", *wrap(thanks, 30)], width=37, gutter=4)
    read = texts(rows)
    assert read[0] == "FIRST LINES"
    assert read[1:7] == [f"{title.rstrip('. ')} ... {number}" for number, title in enumerate(titles, 3)]
    assert read[7:] == ["THANKS", thanks]


def test_what_stands_beside_each_price_of_a_list_stays_with_it() -> None:
    """Leaders to numbers with words behind wide blanks, which go on nowhere: one row each."""
    rows = [
        "Colza oil .............. 4    in the cellar",
        "Wicks .................. 12   in the lamp room",
        "Soap ................... 2    in the kitchen",
    ]
    read = texts(rows)
    assert not any(text.startswith("in the") for text in read)


def test_small_titles_over_the_columns_of_two_letters() -> None:
    """Each column has its own, and the second does not go on with the first letter."""
    left = ["From Mrs. Ash, Crag End", "", *column(OIL, width=32)]
    right = ["From the Boatman", "", *column(TIDE, width=32)]
    blocks = read_text("\n".join(beside(left, right, width=34, gutter=3)) + "\n", "letters", "ascii").blocks
    assert [(block.kind, block.text.chars) for block in blocks] == [
        (Kind.HEADING, "From Mrs. Ash, Crag End"),
        (Kind.PARAGRAPH, OIL),
        (Kind.HEADING, "From the Boatman"),
        (Kind.PARAGRAPH, TIDE),
    ]


def test_two_blank_lines_part_spreads_that_are_read_one_after_the_other() -> None:
    first = beside(column(OIL, TIDE, width=34), column(GOAT, OIL, width=34), width=34, gutter=4)
    second = beside(column(GOAT, width=34), column(TIDE, width=34), width=34, gutter=4)
    assert texts([*first, "", "", *second]) == [OIL, TIDE, GOAT, OIL, GOAT, TIDE]


def test_two_blank_lines_in_the_middle_of_a_sentence_part_no_spreads() -> None:
    left = wrap(OIL.rstrip("."), 34), wrap(TIDE[0].lower() + TIDE[1:], 34)
    height = len(left[0])
    right = wrap(GOAT, 34)[:height], wrap(GOAT, 34)[height:] + wrap(OIL, 34)
    rows = [
        *beside(left[0], right[0], width=34, gutter=4),
        "",
        "",
        *beside(left[1], right[1], width=34, gutter=4),
    ]
    assert texts(rows)[-2:] == [GOAT, OIL]


def test_a_table_below_two_blank_lines_is_not_drawn_into_columns() -> None:
    spread = beside(column(OIL, TIDE, width=34), column(GOAT, OIL, width=34), width=34, gutter=4)
    table = [
        "HOURS OF THE BELL",
        "",
        "    Date       Keeper      Hour        Bell",
        "    8 March    Maren       Four        North, with the heavy clapper",
        "    9 March    Tobias      Five        South",
        "    10 March   Maren       Eight       North; mind the step below it",
    ]
    read = texts([*spread, "", "", *table])
    assert read[:5] == [OIL, TIDE, GOAT, OIL, "HOURS OF THE BELL"]
    assert "Date" in read[5]
    assert "Bell" in read[5]


def test_what_stands_below_the_last_title_of_a_longer_column_is_read_with_it() -> None:
    left = [
        *column(OIL, TIDE, width=34),
        "",
        "LEFT IN THE STORE",
        "",
        "  Ropes ........ 9",
        "  Lamps ....... 31",
    ]
    right = column(GOAT, OIL, width=34)
    right += [*wrap(GOAT, 34)[: len(left) - 3 - len(right)], "keeper."]
    rows = beside(left, right, width=34, gutter=4)
    read = texts(rows)
    assert read.index("Lamps ... 31") < read.index(GOAT)


def test_a_name_nearer_to_the_column_above_than_to_the_text_below_is_its_last_line() -> None:
    left, right = column(TIDE, OIL, width=34), column(GOAT, TIDE, width=34)
    while len(left) < len(right):
        left.append("")
    rows = [*beside(left, right, width=34, gutter=4), "", "Tobias, Sound Harbour", "", "", "STORES", "", OIL]
    read = texts(rows)
    assert read.index("Tobias, Sound Harbour") < read.index(GOAT)
    near = [*beside(left, right, width=34, gutter=4), "", "Tobias, Sound Harbour", "", OIL]
    assert texts(near).index("Tobias, Sound Harbour") > texts(near).index(GOAT)


def test_a_paragraph_goes_on_from_the_foot_of_the_last_column_to_the_next_page() -> None:
    left, right = column(OIL, TIDE, width=32), column(GOAT, f"{OIL[:-1]}, and", width=32)
    goes_on = wrap(f"that {TIDE[0].lower()}{TIDE[1:]}", 32)
    first, second = (
        beside(*page, width=32, gutter=4) for page in ((left, right), (goes_on, column(GOAT, width=32)))
    )
    head = "The Skerry Bulletin" + "page 2".rjust(68 - 19)
    rows = [f"   {row}".rstrip() for row in (*first, head, "", *second)]
    assert texts(rows) == [OIL, TIDE, GOAT, f"{OIL[:-1]}, and that {TIDE[0].lower()}{TIDE[1:]}", GOAT]


def test_a_box_in_the_right_column_does_not_end_the_rule_between() -> None:
    box = [
        "+------------------------+",
        "|  S U P P E R           |",
        "|  Friday, in the store. |",
        "+------------------------+",
    ]
    left = column(OIL, TIDE, GOAT, width=34)
    right = [*column(GOAT, width=34), "", *box, "", *column(OIL, width=34)]
    rows = [f"{row[:36]:<36}|{row[37:]}" for row in beside(left, right, width=34, gutter=6)]
    read = texts(rows)
    assert read[:4] == [OIL, TIDE, GOAT, GOAT]
    assert read[-1] == OIL
    assert not any(text.endswith("|") for text in read[:3])
