"""Items, legends, transcripts and titles that a page end cuts or that stand close: common practice, no source."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it\n"
    "shows into the log, whatever the weather may be, before he goes up the stair\n"
    "to the lamp room again.\n\n"
)
FOOT = "\n\n                                 - 3 -\n\n\n"


def shape(text: str) -> list[str]:
    """Each block as its kind, its label and its text or its lines; page numbers left out."""
    blocks = read_text(text, "log", "ascii").blocks
    return [
        " ".join(
            filter(
                None,
                (
                    f"{block.kind.value}:",
                    block.label.chars,
                    block.text.chars or " / ".join(line.chars for line in block.lines),
                ),
            )
        )
        for block in blocks
        if block.kind is not Kind.FURNITURE
    ]


@pytest.mark.parametrize("mark", ["", "= "])
@pytest.mark.parametrize("signs", ["1234", "ABCD"])
def test_a_legend_is_a_list(mark: str, signs: str) -> None:
    texts = ["The landing.", "stores, which nobody is to enter;", "or the boat", "Read the drill in the\n"]
    entries = [f"    {sign} {mark}{text}" for sign, text in zip(signs, texts, strict=True)]
    under = " " * (6 + len(mark)) + "lamp room first."
    items = shape(PROSE + "\n".join(entries) + under + "\n\n" + PROSE)[1:-1]
    assert [item.split()[:2] for item in items] == [["item:", sign] for sign in signs]
    assert items[2].endswith("or the boat")
    assert items[3].endswith("Read the drill in the lamp room first.")


@pytest.mark.parametrize("blanks", [" ", "    "])
def test_lines_of_a_legend_may_hang_farther_right_than_its_text(blanks: str) -> None:
    text = (
        f"      1{blanks}The tank. Its cocks are below, and are reached by\n          lying down.\n"
        f"      2{blanks}The stove, upon its legs.\n"
        f"      3{blanks}The keeper's stool. It folds away, and must be\n          folded away at dusk.\n"
    )
    blocks = read_text(text, "plan", "ascii").blocks
    assert [(block.kind, block.label.chars) for block in blocks] == [(Kind.ITEM, sign) for sign in "123"]


def test_a_sentence_that_begins_with_an_article_is_no_legend() -> None:
    text = "A boat came on Monday, in the middle of the night, with no light at all and no\nletters.\n"
    assert shape(text) == [f"paragraph: {' '.join(text.split())}"]


def test_bullets_right_below_the_full_last_line_of_an_item() -> None:
    item = "(1)  Light the lamp at the hour that stands in the tables, whatever is seen;\n"
    nested = "     - Buildings that fell into the sea are written off.\n     - Wash the hands.\n"
    assert shape(PROSE + item + nested + "(2)  Close the door.\n")[1:] == [
        "item: (1) Light the lamp at the hour that stands in the tables, whatever is seen;",
        "item: - Buildings that fell into the sea are written off.",
        "item: - Wash the hands.",
        "item: (2) Close the door.",
    ]


def test_an_item_with_a_star_that_a_page_end_cuts_is_no_footnote() -> None:
    called = "The lamp* is lit at dusk.\n\n"
    items = "  - Take off the boots.\n\n    * Take the chimney off, and never set\n"
    rest = "      it on the log.\n\n    * Wait.\n\n  - Go up.\n\n"
    assert shape(PROSE + called + items + FOOT + rest + PROSE)[2:-1] == [
        "item: - Take off the boots.",
        "item: * Take the chimney off, and never set it on the log.",
        "item: * Wait.",
        "item: - Go up.",
    ]


def test_a_paragraph_at_the_head_of_a_page_is_not_the_rest_of_an_item() -> None:
    item = "  - print their name, and their version number too, when the day is over;\n"
    below = "  The keeper shall not have to think about the codes. He writes as he has\n  always written.\n"
    assert shape(PROSE + item + FOOT + below)[1:] == [
        "item: - print their name, and their version number too, when the day is over;",
        f"paragraph: {' '.join(below.split())}",
    ]


def test_a_loop_on_one_line_is_typed() -> None:
    loop = "for port in skerry hen; do tide --metres --from 1984-11-01 --to 1984-11-30 $port; done"
    assert (
        shape(f"{PROSE}    {loop}\n    lp -n 2 tides\n\n{PROSE}")[1]
        == f"preformatted: {loop} / lp -n 2 tides"
    )


@pytest.mark.parametrize("foot", ["", FOOT])
def test_a_transcript_goes_on_to_the_next_prompt(foot: str) -> None:
    typed = "    A>LAMPLOG SKERRY /PAGES:1-12\n    Reading the log... 312 entries.\n"
    rest = "    Printing to LST:\n    A>\n\n"
    assert shape(PROSE + typed + foot + rest + PROSE)[1] == (
        "preformatted: A>LAMPLOG SKERRY /PAGES:1-12 / Reading the log... 312 entries. / Printing to LST: / A>"
    )


def test_a_title_of_two_lines_in_capitals_with_a_number() -> None:
    title = "5. THE LOG AND WHAT\nIS TO BE DONE ABOUT IT\n\n"
    items = "   1.  Feed the goat.\n   2.  Close the door.\n\n"
    assert shape(PROSE + items + title + PROSE)[3] == "heading: 5. THE LOG AND WHAT IS TO BE DONE ABOUT IT"


def test_a_word_in_braces_at_the_start_of_a_line_is_no_program_text() -> None:
    text = (
        "If the line is noisy, and in a storm from the west it is, you will see things such as\n"
        "{{~{ or x~~. They mean nothing. Nobody here would write to you like that, and the\n"
        "{goat} cannot.\n"
    )
    assert shape(text) == [f"paragraph: {' '.join(text.split())}"]


def test_variables_in_order_are_no_legend() -> None:
    text = "    A = lamp + 1\n    B = wick * A\n    C = glass(B)\n\n"
    assert not any(one.startswith("item") for one in shape(PROSE + text + PROSE))


@pytest.mark.parametrize("capital", [True, False])
def test_verse_goes_on_over_a_page_end(capital: bool) -> None:
    verse = ["Trim the wick and fill the can,", "The night is coming on,", "And never was there yet a man", "Who saw the lamp was gone."]  # fmt: skip
    lines = [line if capital else line[:1].lower() + line[1:] for line in verse]
    above, below = ("\n".join(f"            {line}" for line in part) for part in (lines[:2], lines[2:]))
    assert shape(f"{PROSE}{above}{FOOT}{below}\n\n{PROSE}")[1] == f"preformatted: {' / '.join(lines)}"


def test_the_last_line_of_a_justified_paragraph_has_no_key() -> None:
    items = "".join(
        f"or  the boat is not let down into the sea on day {day}.\n\nor  {PROSE}" for day in range(3)
    )
    text = "October was held in the oil store, the lamp room being taken\nup  by  the lamp.  The ninth keeper of the light was on watch\nand sent his greetings by the speaking tube.\n\n"  # fmt: skip
    assert f"paragraph: {' '.join(text.split())}" in shape(items + text)


def test_an_item_whose_two_lines_have_one_middle_goes_on() -> None:
    text = "\t1.\tThe oil room wants a light. Light the\n\t\tlantern outside, never inside.\n\t2.\tWait.\n\n"
    assert shape(PROSE + text + PROSE)[1] == (
        "item: 1. The oil room wants a light. Light the lantern outside, never inside."
    )


def test_justified_items_between_blank_lines_are_no_table() -> None:
    text = (
        "   3)   Go down. The list begins with seven because the first  six  steps  are\n"
        "        stairs.\n\n   4)   keeps quiet.\n\n"
    )
    assert shape(PROSE + text + PROSE)[1:-1] == [
        "item: 3) Go down. The list begins with seven because the first six steps are stairs.",
        "item: 4) keeps quiet.",
    ]


def test_entries_that_end_in_the_same_word_stay_apart() -> None:
    """A table squeezed to single blanks, as programs print it: each entry ends alike, a long one goes on below."""
    entries = (
        "LAMP The hours at which the lamp is lit and put out (kept)\n"
        "OIL Barrels in the store, and the one that leaks (kept)\n"
        "FOG Nights on which the horn was sounded by hand, and by whom\n(kept)\n"
        "BOAT What came with the boat and went with it again (kept)\n"
        "GOAT Complaints of the keepers about the goat (kept)\n"
        "TIDE The tables of the year, printed by the machine (kept)\n"
    )
    blocks = read_text(
        f"The log has these parts, each with a page of its own:\n{entries}", "log", "ascii"
    ).blocks
    texts = [
        text for block in blocks for text in ([line.chars for line in block.lines] or [block.text.chars])
    ]
    starts = [text.split()[0] for text in texts if text.endswith("(kept)")]
    assert starts == ["LAMP", "OIL", "FOG", "BOAT", "GOAT", "TIDE"]


def test_running_text_whose_lines_end_in_the_same_small_word_goes_on() -> None:
    text = (
        "The keeper of the light and of the book reads the names of the\n"
        "ships and the hours from the log, and whoever comes after the\n"
        "boat has left the landing may ask for the pages that hold the\n"
        "tides and the winds of the year before, which are kept by the\n"
        "second keeper in the drawer of the desk that stands below the\n"
        "window, with the keys.\n"
    )
    blocks = read_text(text, "log", "ascii").blocks
    assert [block.text.chars for block in blocks] == [" ".join(text.split())]


def test_an_item_goes_on_with_a_year_or_between_dashes() -> None:
    items = "4.   Orders of the years before\n     1984 which have not been met are void.\n"
    items += "5.   Both of them\n     - if you ask the principal keeper - are the property of the board.\n"
    assert shape(PROSE + items)[1:] == [
        "item: 4. Orders of the years before 1984 which have not been met are void.",
        "item: 5. Both of them - if you ask the principal keeper - are the property of the board.",
    ]


def test_a_year_alone_ends_its_sentence() -> None:
    text = PROSE.rstrip("\n") + " He has done so\nsince the second year of our Lord\n1984.\n"
    assert [one.rsplit(" ", 3)[1:] for one in shape(text)] == [["our", "Lord", "1984."]]


def test_an_item_whose_sentence_a_blank_line_cuts_goes_on() -> None:
    item = (
        "o  A frame that is not one more than the last is thrown away, and so is\n\n   everything after it.\n"
    )
    assert shape(PROSE + item + "\no  The keeper starts again.\n")[1] == (
        "item: o A frame that is not one more than the last is thrown away, and so is everything after it."
    )


def test_a_sentence_between_numbered_titles_has_no_key() -> None:
    text = "\n\n".join(f"{n}.  Letters\n\nThe keepers sing a verse at dusk." for n in range(1, 6))
    assert [one for one in shape(f"{PROSE}{text}\n\n{PROSE}") if one.startswith("item: The")] == []


def test_keys_whose_leaders_lead_to_words_are_alike() -> None:
    keys = "     SAVE ............. writes the story to disk\n     RESTORE .......... reads it again\n"
    keys += "     SCORE ............ tells how many of the 250 points\n                        you have\n"
    assert shape(f"These are for other things:\n\n{keys}")[1:] == [
        "item: SAVE writes the story to disk",
        "item: RESTORE reads it again",
        "item: SCORE tells how many of the 250 points you have",
    ]


def test_an_appendix_of_the_contents_has_its_name_as_label() -> None:
    text = "1. What you need ........................  2\n2. Commands .............................  4\n"
    text += "Appendix A.  Error messages ............. 12\n"
    assert [block.label.chars for block in read_text(text, "log", "ascii").blocks] == [
        "1.",
        "2.",
        "Appendix A.",
    ]


def test_words_that_a_colon_explains_are_keys() -> None:
    words = "Gallery: the iron balcony around the lamp room, from which the panes are\n   cleaned.\n"
    words += "Glass: the barometer.\nWatch: four hours, or three in\n   summer.\n"
    items = shape(f"{PROSE}{words}\n{PROSE}")[1:-1]
    assert [item.split()[:2] for item in items] == [
        ["item:", "Gallery:"],
        ["item:", "Glass:"],
        ["item:", "Watch:"],
    ]


def test_keys_in_capitals_whose_text_goes_on_flush_left() -> None:
    keys = "FOG     The keeper warns whoever stands on the landing, with some trouble.\n"
    keys += "The spare mantle comes before the gale.\nTIDE    The rain gauge waits for the evening drill.\n"
    keys += "LAMP    The second keeper keeps a hatch open in the lamp room, and then only\nby daylight.\n"
    assert [item.split()[:2] for item in shape(f"{PROSE}{keys}\n{PROSE}")[1:-1]] == [
        ["item:", "FOG"],
        ["item:", "TIDE"],
        ["item:", "LAMP"],
    ]


CONTENTS = """Contents

    STORES AND TACKLE
        Oil
        The boat house,
          and its winch
    THE LAMP
        Trimming the wick
        Cleaning the glass
        The clockwork
        The fog bell
    THE WATCH

"""


def _sections(titles: list[str]) -> str:
    return "".join(f"{title}\n\n{PROSE}{PROSE}" for title in titles)


def test_an_appendix_of_the_contents_may_have_a_letter_alone() -> None:
    text = "1  The lamp ............ 2\n2  The bell ............ 4\nA  Tide tables ........ 6\n"
    blocks = read_text(text, "contents", "ascii").blocks
    assert [block.label.chars for block in blocks] == ["1", "2", "A"]
    words = read_text(text.replace("A  Tide tables", "A tide table."), "contents", "ascii").blocks
    assert words[-1].label.chars == ""


def test_contents_without_leaders_are_an_item_an_entry() -> None:
    titles = ["STORES AND TACKLE", "Oil", "The boat house", "THE LAMP", "Trimming the wick"]
    titles += ["Cleaning the glass", "The clockwork", "The fog bell", "THE WATCH"]
    blocks = read_text(CONTENTS + _sections(titles), "log", "ascii").blocks
    items = [(block.level, block.text.chars) for block in blocks if block.kind is Kind.ITEM]
    assert items == [
        (0, "STORES AND TACKLE"),
        (1, "Oil"),
        (1, "The boat house, and its winch"),
        (0, "THE LAMP"),
        (1, "Trimming the wick"),
        (1, "Cleaning the glass"),
        (1, "The clockwork"),
        (1, "The fog bell"),
        (0, "THE WATCH"),
    ]


def test_titles_that_come_in_every_section_are_no_contents() -> None:
    titles = ["Stores", "Watch kept", "Lamp", "Fog bell", "Remarks"]
    first = "\n\n".join(titles) + "\n\n"
    assert not any(line.startswith("item:") for line in shape(first + _sections(titles * 2)))


def test_titles_of_the_contents_are_headings_however_they_are_written() -> None:
    titles = ["STORES AND TACKLE", "Oil for the lamp, and where it is kept.", "The boat house", "THE LAMP"]
    titles += ["What is to be done at dusk?", "Cleaning the glass", "The clockwork", "Lamp:"]
    contents = "".join(f"   {title}\n" for title in titles)
    contents += "   ------ \n"
    blocks = read_text(f"Contents\n\n{contents}\n{_sections(titles)}", "log", "ascii").blocks
    headings = [block.text.chars for block in blocks if block.kind is Kind.HEADING]
    assert headings[1:] == [title for title in titles if title != "Lamp:"]


@pytest.mark.parametrize("sign", ["-->", "==>", "**", "~", "1/", "{1}"])
def test_rarer_signs_begin_items_where_they_come_again(sign: str) -> None:
    signs = [sign.replace("1", str(number)) for number in (1, 2, 3)]
    hang = " " * (len(sign) + 1)
    text = (
        f"The boat brings to the rock each month, whatever the weather is like and whoever rows it:\n\n"
        f"{signs[0]} the oil for both of the lamps;\n{signs[1]} wicks for both of the lamps, which are to be cut by the keeper who is on watch, and\n"
        f"{hang}never by the other;\n{signs[2]} the letters for the keepers.\n"
    )
    blocks = read_text(text, "log", "ascii").blocks[1:]
    assert [(block.kind, block.label.chars) for block in blocks] == [(Kind.ITEM, label) for label in signs]
    assert blocks[1].text.chars.endswith("on watch, and never by the other;")


@pytest.mark.parametrize(
    "line", ["(c) 1981 The Board of the Rock.", "~ Lit and out.", "** Not for the night."]
)
def test_a_claim_and_a_sign_that_stands_alone_begin_no_item(line: str) -> None:
    text = f"The keepers of this rock may read this book in the day, when the lamp is out.\n\n{line}\n"
    blocks = read_text(text, "log", "ascii").blocks
    assert blocks[1].kind is Kind.PARAGRAPH
    assert blocks[1].text.chars == line


def test_questions_above_their_answers_are_items_however_short() -> None:
    """Marked as questions and answers they are entries; a question above a paragraph is the title of it."""
    answer = "Because nothing better has been found, and the boat comes only once in a\nfortnight from the landing.\n\n"
    text = (
        f"   Q: Why is the oil kept in tins?\n\n   A: {answer}   Q: What is in the red one?\n\n   A: {answer}"
    )
    assert [item.split()[:2] for item in shape(text)] == [["item:", "Q:"], ["item:", "A:"]] * 2
    titled = f"Q: Why is the oil kept in tins?\n\n{answer}Q: What is in the red one?\n\n{answer}"
    assert [item.split()[0] for item in shape(titled)] == ["heading:", "paragraph:"] * 2


def test_a_value_on_the_page_after_the_words_that_lead_to_it() -> None:
    entries = (
        "oilLeft (number)\n       How many cans are left in the store. Default: The usual value: 9\n\n"
        "wickLeft (number)\n       How many wicks are left in the store. Usual value: 12\n\n"
        "logRoom (name)\n       Where the keepers put the log book when they have signed it. Usual value:"
    )
    after = "~/.skerry\n\nbellTurns (number)\n       How often the bell is rung. Usual value: 3\n\n"
    pages = f"{PROSE}{entries}{FOOT}\f       {after}{PROSE}{FOOT}\f{PROSE}"
    assert any(line.endswith("signed it. Usual value: ~/.skerry") for line in shape(pages))


def test_a_title_of_an_item_that_nearly_fills_its_line() -> None:
    text = (
        "1. The lamp.\n   Light it at dusk and sign for it in the book, and do not go to bed before\n   it burns well.\n"
        "2. The bell of the rock.\n   Ring it by hand when there is fog, once a minute, and look out for boats\n   that answer it.\n"
        "3. What is to be done when the boat of the harbour brings oil or letters.\n   Carry all of it up to the store before the tide comes in again at noon.\n"
    )
    assert [line for line in shape(PROSE + text) if line.startswith("item")] == [
        "item: 1. The lamp.",
        "item: 2. The bell of the rock.",
        "item: 3. What is to be done when the boat of the harbour brings oil or letters.",
    ]


def test_an_item_whose_line_is_full_goes_on_beside_items_that_do() -> None:
    text = (
        "1. The lamp is lit at dusk by the keeper who has the first watch that night.\n   Light it and sign for it.\n"
        "2. The bell is rung by hand when there is fog, once a minute, by the second.\n   Look out for boats.\n"
    )
    assert [line[:12] for line in shape(PROSE + text)] == ["paragraph: T", "item: 1. The", "item: 2. The"]


def test_several_keys_before_one_colon_in_a_list_of_such() -> None:
    text = (
        "  F1 - F8 : lamps one to eight\n  F10 : the lamp of the tower\n  Alt-X : end of the watch\n\n"
        "  PgUp, Wheel, ctrl-R : one lamp up\n  Day keys, Home, End : the lamp room\n  Enter : light it\n"
    )
    assert [line.partition(" :")[0] for line in shape(PROSE + text) if line.startswith("item")] == [
        "item: F1 - F8",
        "item: F10",
        "item: Alt-X",
        "item: PgUp, Wheel, ctrl-R",
        "item: Day keys, Home, End",
        "item: Enter",
    ]


def test_entries_with_a_dash_beside_and_below_a_key() -> None:
    text = (
        "Books:      lamp(1) - the drill, with what is done when the lamp goes out at night.\n"
        "            bell(2)   - the order of the bell\n"
        "            stores(8) - how the boat is let down\n"
    )
    assert shape(PROSE + text)[1:] == [
        "item: Books: lamp(1) - the drill, with what is done when the lamp goes out at night.",
        "item: bell(2) - the order of the bell",
        "item: stores(8) - how the boat is let down",
    ]


def test_the_first_number_under_a_long_title_begins_anew() -> None:
    contents = [
        "        3.0 The lamp, the bell and the horn",
        "            3.1 How the lamp of the rock is to be kept in the cold winter months",
        "                3.1.1 In fog",
        "                3.1.2 In snow",
        "            3.2 The bell",
    ]
    labels = [line.split()[0] for line in contents]
    text = PROSE + "\n".join(contents) + "\n\n" + PROSE
    assert [block.label.chars for block in read_text(text, "log", "ascii").blocks[1:-1]] == labels
