"""Running text: which lines are one paragraph, in cases that can be read aloud."""

from __future__ import annotations

import textwrap

import pytest

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


@pytest.mark.parametrize(
    ("start", "count"), [("-d, or light the lamp yourself.", 2), ("-d   light the lamp", 3)]
)
def test_an_option_in_a_sentence_may_begin_the_rest_that_hangs(start: str, count: int) -> None:
    text = (
        SENTENCES * 3
        + "\nThe lamp is out.  There is no more oil in the tanks of the rock, so that you use\n"
        + f"    {start}\n"
    )
    document = read_text(text, "a document", "ascii")
    assert len(document.blocks) == count


def pages(head: str, heads: int, part: str = "\f") -> str:
    """Sections with a title each, all of them whole sentences; ``#`` in a title is its number."""
    text = (SENTENCES + "Then the keeper wrote the hour into the book on the desk.\n\n") * 9
    return part.join(head.replace("#", str(number)) + "\n\n" + text for number in range(1, heads + 1))


@pytest.mark.parametrize("part", ["\f", "\n\n\n"])
@pytest.mark.parametrize("title", ["LESSON #", "Chapter #: The Oil", "Watch #", "#.  The Oil"])
def test_sections_with_titles_that_are_alike_lose_none(title: str, part: str) -> None:
    shown = flow(pages(title, 6, part))
    assert [title.replace("#.  ", "#. ").replace("#", str(number)) in shown for number in range(1, 7)] == [
        True
    ] * 6


@pytest.mark.parametrize("part", ["\f", "\n\n\n"])
@pytest.mark.parametrize(
    "head", ["Log of the Light" + " " * 40 + "#", "Log of the Light, page #", " " * 36 + "#"]
)
def test_running_heads_go(head: str, part: str) -> None:
    assert sum(line.startswith("(") for line in flow(pages(head, 6, part))) == 6


def test_heads_with_small_roman_numbers_and_the_title_of_their_section() -> None:
    left, right = "{}" + " " * 20 + "The Skerry Light", "{}" + " " * 30 + "{}"
    sections = ["Oil", "Oil", "Wick", "Clock", "Glass", "Rope", "Boat", "Flags"]
    numbers = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii"]
    text = "\f".join(
        (left.format(number) if index % 2 else right.format(section, number)) + "\n\n\n" + SENTENCES * 20
        for index, (section, number) in enumerate(zip(sections, numbers, strict=True))
    )
    assert sum(line.startswith("(") for line in flow(text)) == 8


def test_numbers_at_the_edge_of_a_page_that_are_labels_of_a_drawing_stay() -> None:
    page = "                  - {} -\n\n" + SENTENCES * 20
    text = "\f".join(page.format(number) + ("\n     0.5\n" if number == 4 else "") for number in range(1, 8))
    shown = flow(text)
    assert "0.5" in shown
    assert "(- 4 -)" in shown


def test_an_entry_of_the_contents_is_no_running_head() -> None:
    entries = "".join(
        f"Lamp {name} {'.' * 40}   {number}\n\n" for name, number in zip("abcdefgh", range(1, 9), strict=True)
    )
    assert not [line for line in flow(entries * 3 + SENTENCES * 40) if line.startswith("(")]


def test_numbered_headings_of_one_or_two_lines_and_entries_like_them() -> None:
    text = (
        "   3.1. Oil\n\n      3.1.1. the tank\n\n   3.2. wicks and their drawer\n\n   3.3. Clock\n\n\n"
        "3.1. Oil\n\n"
        + SENTENCES
        + "\n3.1.1. the tank\n\n"
        + SENTENCES
        + "\n3.2. wicks and their drawer (with\n"
        "     the trimmer)\n\n" + SENTENCES
    )
    kinds = [
        (block.kind, block.level)
        for block in read_text(text, "x", "ascii").blocks
        if block.kind is Kind.HEADING
    ]
    assert kinds == [(Kind.HEADING, 2), (Kind.HEADING, 3), (Kind.HEADING, 2)]


def test_a_line_that_leads_to_a_display_is_no_heading() -> None:
    text = SENTENCES * 3 + "\n     The call\n\n     lamp -on 3\n\nlights the third lamp.\n\n" + SENTENCES
    assert [b.kind for b in read_text(text, "x", "ascii").blocks].count(Kind.HEADING) == 0


def test_a_date_and_a_sentence_above_a_rule_are_no_headings() -> None:
    text = (
        SENTENCES * 3
        + "\n   Date: April 3\n\n   Please look into the log of the year for the rest.\n"
        + "     ________________________________________________\n\n"
        + SENTENCES
    )
    assert [b.kind for b in read_text(text, "x", "ascii").blocks].count(Kind.HEADING) == 0


def test_quoted_words_and_names_start_lines_of_a_paragraph() -> None:
    text = SENTENCES * 3 + (
        "\nThe trouble is that you have a lamp $L that holds the word\n"
        "  `WICK', and a drawer $WICK that holds the word `dry',\n"
        "  or some such thing.  Ask whether the lamp\n"
        "  $L is lit before you trim it.\n"
    )
    assert len(flow(text)) == 2


def test_questions_and_chapters_with_a_number_are_headings() -> None:
    text = (
        "Chapter 9. Keeping your old lamp in order, year after\nyear\n\n"
        + SENTENCES
        + "\nChapter 10. Giving oil to the other keepers of the lights\n\n"
        + SENTENCES
        + "\n10.1. How can I get more oil?\n\n"
        + SENTENCES
        + "\n10.2. Which of the wicks is dry?\n\n"
        + SENTENCES
    )
    headings = [b.text.chars for b in read_text(text, "x", "ascii").blocks if b.kind is Kind.HEADING]
    assert headings == [
        "Chapter 9. Keeping your old lamp in order, year after year",
        "Chapter 10. Giving oil to the other keepers of the lights",
        "10.1. How can I get more oil?",
        "10.2. Which of the wicks is dry?",
    ]


def test_stretches_that_are_set_double_spaced() -> None:
    paragraph = [
        "     It has been proposed by two members of the watch",
        "that the lamp should be lit, tended and put out by a",
        "machine. I have been asked to say what the keepers",
        "think of it. They think nothing of it, and will say",
        "why.",
    ]
    quoted = "    1.  A machine does not see the weather. It lights\n        the lamp at the hour.\n"
    text = "\n\n".join(paragraph * 2) + "\n\n" + quoted + "\n" + "\n\n".join(paragraph) + "\n"
    assert [line.split()[0] for line in flow(text)] == ["It", "It", "[1.]", "It"]


WATCH = (
    "     It has been proposed by two members of the watch that",
    "the lamp should be lit, tended and put out by a machine, and",
    "they have been asked to say what the keepers think of it.",
    "The board, as far as anybody knows, thinks nothing of it, and",
    "it will say so in the hall of the light when it is asked to",
    "by one of the keepers.",
)


EXEMPT = "(1)  the boat, on its own rails;\n(2)  the goat, in charge of a keeper;\n(3)  the bell.\n"


def test_a_set_in_line_below_a_title_begins_its_paragraph_in_a_double_spaced_text() -> None:
    text = "\n\n\n".join("\n\n".join([title, *WATCH]) for title in ("THE LAMP", "THE BELL"))
    blocks = read_text(f"{text}\n\n{EXEMPT}", "typescript", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.PARAGRAPH] == [
        " ".join(WATCH).strip()
    ] * 2
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == [
        "THE LAMP",
        "THE BELL",
    ]


def test_a_title_below_a_full_line_of_a_double_spaced_text_stays_by_itself() -> None:
    full = "by one of the keepers of the light or of the landing stage."
    text = "\n\n".join([*WATCH, *WATCH[:-1], full, "THE BELL", *WATCH, EXEMPT + EXEMPT])
    blocks = read_text(text, "typescript", "ascii").blocks
    assert "THE BELL" in [block.text.chars for block in blocks]


@pytest.mark.parametrize(
    ("above", "title"), [("The bell is rung.", True), ("The bell is rung on the", False)]
)
@pytest.mark.parametrize("margin", ["", " " * 10])
def test_an_underlined_title_stays_by_itself_in_a_double_spaced_text(
    margin: str, above: str, title: bool
) -> None:
    lines = [*WATCH, *WATCH[1:-1], above, f"Smoking\r{margin}_______\n", *WATCH]
    text = "\n\n".join(margin + line for line in lines)
    blocks = read_text(text, "typescript", "ascii").blocks
    assert ("Smoking" in [block.text.chars for block in blocks if block.kind is Kind.HEADING]) is title


def test_a_date_goes_on_in_a_double_spaced_text_though_its_first_figures_had_room() -> None:
    right = max(map(len, WATCH))
    above = "is kept in the store, as it was, and it is read on Monday"
    assert 0 <= right - len(f"{above} 30") < 4
    text = "\n\n".join([*WATCH, *WATCH[:-1], above, "30 June by both of them.", *WATCH, EXEMPT * 3])
    blocks = read_text(text, "typescript", "ascii").blocks
    assert any("on Monday 30 June by both" in block.text.chars for block in blocks)


def test_items_of_a_double_spaced_text_go_on_under_their_text() -> None:
    items = [
        "     1.  It is opened on the first day of the year, in the",
        "         presence of two keepers.",
        "     2.  What is found in it apart from oil, such as rags,",
        "         is kept for the next year.",
    ]
    text = "\n\n".join([*WATCH, *WATCH, *items]) + "\n"
    shown = [block for block in read_text(text, "typescript", "ascii").blocks if block.label.chars]
    assert [block.label.chars for block in shown] == ["1.", "2."]
    assert shown[0].text.chars.endswith("in the presence of two keepers.")


def test_one_line_paragraphs_stay_apart() -> None:
    text = "".join(f"Lamp {name} is lit at the hour of dusk and not before it.\n\n" for name in "abcdefghi")
    assert len(flow(text)) == 9


def test_heads_of_reference_manuals_have_one_word_at_both_edges() -> None:
    words = ["LAMP", "LOG", "LOG", "OIL", "WICK"]
    text = "\f".join(word + " " * 60 + word + "\n\n" + SENTENCES * 20 for word in words)
    assert sum(line.startswith("(") for line in flow(text)) == 5


def test_letters_between_dashes_are_headings_of_a_glossary() -> None:
    text = "".join(f"                -{letter}-\n\n{SENTENCES}\n" for letter in "KLMN")
    assert not [line for line in flow(text) if line.startswith("(")]


def test_a_footnote_under_a_drawn_rule_needs_no_mark() -> None:
    page = SENTENCES * 18 + "{}\n\n{}\n\n\n                  - {} -\n\n\n"
    note = "\n__________\n(R) The word is a mark of the board.\n"
    text = "".join(page.format("Then the oil was", note if n == 2 else "", n) + "lit.\n" for n in range(1, 7))
    blocks = read_text(text, "x", "ascii").blocks
    assert [b.text.chars for b in blocks if b.kind is Kind.NOTE] == ["(R) The word is a mark of the board."]


def test_a_sentence_goes_on_left_of_its_first_word() -> None:
    text = (
        "   IV.  The goat is not to be asked, on any day of it.\n   V.   The boat is not to be let.\n"
        "   Oddy himself had very little to say. He was found\n"
        "on the fourth day by the pilot, eleven miles to the\nnorth-east, on the sill.\n"
    )
    assert flow(text)[-1].startswith("Oddy himself had very little to say. He was found on")


def test_a_first_line_set_in_that_ends_a_sentence_is_part_of_its_paragraph_where_it_is_nearly_full() -> None:
    above = (
        "The lamp of the rock has been lit each night since the winter of\n"
        "the ice, and the keepers write in the log book what they saw of\n"
        "the sea and of the ships that went by, and who was on the watch.\n\n"
    )
    below = (
        "This is where you keep the papers that the board asks for.   If\n"
        "you want to begin a new page you would turn the old one over and\n"
        "write the date on it.\n"
    )
    full = "     The very lowest drawer in the desk is the log drawer.\n"
    short = "     The lowest drawer is the drawer of the log.\n"
    assert flow(above + full + below)[1].startswith(f"{full.strip()} This is where you keep")
    assert flow(above + short + below)[1] == short.strip()


def test_an_item_goes_on_with_several_addresses_in_braces_and_with_one_cut_behind_its_scheme() -> None:
    text = (
        "The keeper asks for help in many places, and he writes to the others:\n\n"
        "  * Letters in other languages such as those sent to skerry-light-\n"
        "    {north,south,landing,harbour}@letters.example.org or\n"
        "    skerry@example.org. (Full list of them at http://\n"
        "    letters.example.org/list and http://letters.example.org/\n"
        "    keepers.html)\n\n"
        "The older keepers will help, as they did in all the years of the old lamp.\n"
    )
    assert flow(text)[1] == (
        "[*] Letters in other languages such as those sent to skerry-light-"
        "{north,south,landing,harbour}@letters.example.org or skerry@example.org. (Full list of them at "
        "http://letters.example.org/list and http://letters.example.org/keepers.html)"
    )


LEFT = [
    "THE LAMP",
    "",
    "   The new lamp has been lit",
    "for three weeks, and none of",
    "us has a word to say against",
    "it. It gives more light than",
    "the old one, and it needs no",
    "more oil than that one did.",
    "",
    "   The clock, on the other",
    "hand, is what it always was,",
    "and the office knows it.",
]
RIGHT = [
    "   The spring tides were the",
    "highest for many years. At",
    "the landing the water came to",
    "the ninth step, and the winch",
    "was taken.",
    "",
    "WANTED",
    "",
    "   A winch, and a man who is",
    "able to lift it up the steps",
    "of the landing by himself.",
]


def test_columns_whose_headings_and_blank_lines_stand_at_different_heights() -> None:
    text = "\n".join(f"{left:<36}{right}".rstrip() for left, right in zip(LEFT, RIGHT, strict=False))
    assert [line.split(".")[0][:28] for line in flow(text + "\n\n" + SENTENCES * 2)][:6] == [
        "THE LAMP",
        "The new lamp has been lit fo",
        "The clock, on the other hand",
        "The spring tides were the hi",
        "WANTED",
        "A winch, and a man who is ab",
    ]


def test_two_lines_in_the_middle_of_one_another_stay_lines() -> None:
    text = (
        SENTENCES * 3
        + "\n"
        + " " * 24
        + "Copying this page is forbidden\n"
        + " " * 28
        + "between dusk and dawn.\n"
    )
    assert not any("forbidden between" in line for line in flow(text))


def test_a_title_over_columns_comes_first() -> None:
    sentence = (
        "The keeper looks at the sky and reads the name of the boat by day, and by night from the log. "
    )
    columns = [textwrap.wrap(sentence[shift:] + sentence * 4, 22)[:10] for shift in (0, 4, 11)]
    rows = ["   ".join(f"{cell:22}" for cell in row).rstrip() for row in zip(*columns, strict=True)]
    title = [line.center(72).rstrip() for line in ("THE SKERRY NEWS", "-" * 15)]
    blocks = read_text("\n".join([*title, "", *rows, ""]), "news", "ascii").blocks
    assert (blocks[0].kind, blocks[0].text.chars) == (Kind.HEADING, "THE SKERRY NEWS")


def test_running_heads_that_change_sides_over_a_rule() -> None:
    part = "\n".join((SENTENCES * 3).splitlines()[:-1]) + "\nthen the keepers go\n"
    heads = [f"Page {n}{' ' * 22}STORES OF THE STATION{' ' * 9}Skerry Light" for n in (2, 4)]
    heads.insert(1, f"Skerry Light{' ' * 9}STORES OF THE STATION{' ' * 22}Page 3")
    heads.append(f"Skerry Light{' ' * 14}Appendix A{' ' * 20}Page A-1")
    places = ("board by the boat.", "harbour and hear it there.", "master", "office in the town and wait.")
    text = (
        SENTENCES * 4
        + part
        + "".join(
            f"\f{head}\n{'-' * 64}\n\nto the {place}\n\n{part}"
            for head, place in zip(heads, places, strict=True)
        )
    )
    shown = flow(f"{text}home.\n")
    assert [line for line in shown if "Skerry Light" in line and "(" not in line[:1]] == []
    assert [any(f"go to the {place}" in line for line in shown) for place in places] == [True] * 4


def test_a_first_line_indent_whose_line_has_no_small_words() -> None:
    text = (
        SENTENCES * 3
        + "\n     Lamp keepers' rule nine allows keepers reading log books late hot black coffee\n"
        + "and to leave the gallery for the length of one turn of the light.\n\n"
        + SENTENCES
        + "This is what he calls down:\n"
        + "     Lamps seven, eight, nine, ten, eleven, twelve, thirteen, fourteen, fifteen, six\n"
        + "or when the wind is from the north:\n"
    )
    shown = flow(text)
    assert shown[1].endswith(
        "late hot black coffee and to leave the gallery for the length of one turn of the light."
    )
    assert shown[-1] == "or when the wind is from the north:"


def test_wide_blanks_of_justified_lines_are_no_columns() -> None:
    text = (
        SENTENCES * 3
        + "\n"
        + "The keeper on watch enters  all lights  that can be seen  from the  gallery: the\n"
        + "Skerry Light (white, fixed), Oddy Rock (red), North  Holm  (white,  green),  Ram\n"
        + "Skerries (red), Tarn Ness  (white),  South  Holm (red, white),  Gull Head (red),\n"
        + "Mirk Sound (green)  and the boats that lie in the roads.\n"
    )
    assert len(flow(text)) == 2


def test_words_between_dashes_at_the_top_of_a_page() -> None:
    text = (
        SENTENCES * 6
        + "The keeper said to the others that there are two ways indeed of doing the lamps\n\f\n"
        + "- the right way, which takes an hour or more - and the quick way, which the boy\ntook.\n"
        + SENTENCES * 6
    )
    assert any("of doing the lamps - the right way" in line for line in flow(text))


def test_what_explains_the_words_before_a_colon_goes_on_with_them() -> None:
    text = (
        "Each lamp program looks for the tables of the hours in the places\n"
        "that the harbour names, in the order of the list there:\n"
        "i.e. on the disk of the lamp, then on that of the bell, and last in\n"
        "the log book.\n"
    )
    assert [block.text.chars for block in read_text(text, "a", "ascii").blocks] == [" ".join(text.split())]


def test_words_with_apostrophes_and_hyphens_are_plain_words() -> None:
    text = SENTENCES * 2 + (
        "\n     * The keeper's well-kept log-book doesn't say whose turn it isn't;\n"
        "       Mary's father-in-law can't tell either.\n\n"
    )
    assert flow(text)[1:] == [
        "[*] The keeper's well-kept log-book doesn't say whose turn it isn't; Mary's father-in-law can't tell either.",
    ]


def test_items_set_far_from_the_margin_go_on_below_the_end_of_a_sentence() -> None:
    """No line of such a list had room for the word below it: what hangs there is the rest of its item."""
    text = (
        "The keeper on watch looks to the lamp at every second hour of the night, and writes\n"
        "down what he sees until the sun is up and the curtains of the lantern are drawn. He\n"
        "then goes down to the kitchen, and the other one comes up and has the lamp until the\n"
        "next evening, when the first one comes up again and both of them light it, as always.\n\n"
        "  (1) The lake. Water is drawn from\n      here.\n"
        "  (2) The stairs, two flights that\n      share one rail.\n"
        "  (3) The store: 1 lamp, 200 wicks.\n      There is no oil in it.\n"
        "  (4) Nobody goes there.\n"
    )
    items = [(b.label.chars, b.text.chars) for b in read_text(text, "a map", "ascii").blocks[1:]]
    assert items == [
        ("(1)", "The lake. Water is drawn from here."),
        ("(2)", "The stairs, two flights that share one rail."),
        ("(3)", "The store: 1 lamp, 200 wicks. There is no oil in it."),
        ("(4)", "Nobody goes there."),
    ]
    roomy = text.replace(" Water is drawn from\n      here.\n", "\n      The tap drips.\n")
    texts = [b.text.chars for b in read_text(roomy, "a map", "ascii").blocks]
    assert "There is no oil in it." in texts
