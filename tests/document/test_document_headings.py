"""Headings of plain text, in the dress that typists gave them."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind, Mark
from fit.document.text import read_text
from fit.document.text.signs.spaced import spaced
from fit.layout.compose import lay_out
from fit.layout.settings import LayoutSettings

PROSE = (
    "     The keeper trims the wick at dusk and writes the hour into the book,\n"
    "and whoever has the first watch reads it before the lamp is lit again.\n"
)


def headings(text: str) -> list[str]:
    return [
        block.text.chars for block in read_text(text, "log", "ascii").blocks if block.kind is Kind.HEADING
    ]


@pytest.mark.parametrize(
    "title",
    [
        "*** Stores ***",
        "== What the boat brings ==",
        "          FOG",
        "2. When the lamp goes out",
        "4  LETTERS",
    ],
)
def test_a_title_between_two_paragraphs(title: str) -> None:
    found = headings(
        f"{PROSE}\n{title}\n\n{PROSE}\n{title.replace('2.', '3.').replace('4 ', '5 ')}\n\n{PROSE}"
    )
    assert found == [
        " ".join(title.split()),
        " ".join(title.replace("2.", "3.").replace("4 ", "5 ").split()),
    ]


def test_a_title_below_a_list_of_prices() -> None:
    prices = "".join(
        f"   {thing} {'.' * (40 - len(thing))} 1.25\n" for thing in ("Wick", "Oil", "Rope", "Soap")
    )
    assert headings(f"{PROSE}\n{prices}\n                      TIDES\n\n{PROSE}") == ["TIDES"]


def test_the_words_of_a_title_in_spaced_letters_stay_whole() -> None:
    document = read_text(
        f"{PROSE}\nW H E N     T H E     L A M P     G O E S     O U T\n\n{PROSE}", "log", "ascii"
    )
    title = next(block.text for block in document.blocks if block.kind is Kind.HEADING)
    assert title.chars == "W H E N  T H E  L A M P  G O E S  O U T"
    held = [bool(mark & Mark.NO_BREAK) for mark in title.marks]
    assert held[:10] == [True] * 6 + [False] * 3 + [True]
    lines = [line.text for line in lay_out(document, LayoutSettings(width=30)).lines]
    assert [line for line in lines if line.isupper()] == ["W H E N  T H E  L A M P", "G O E S  O U T"]


@pytest.mark.parametrize(
    ("text", "is_spaced"),
    [
        ("T H E   L A M P", True),
        ("T H E  3  K E E P E R S !", True),
        ("A B C", False),
        ("a b c d", False),
        ("A BOAT AT 5", False),
        ("The lamp", False),
    ],
)
def test_spaced_letters(text: str, is_spaced: bool) -> None:
    assert spaced(text) is is_spaced


def test_a_numbered_item_with_a_paragraph_of_its_own_is_no_title() -> None:
    items = "".join(f"{number}. Turn the lamp down\n\n   The glass is hot; it wants an hour, and in the\n   frost two, before it can be wiped.\n\n" for number in (1, 2, 3))  # fmt: skip
    assert headings(f"{PROSE}\n{items}") == []


KEYS = "  LAMP      the hours at which it was lit, each on a line of its own, and\n            who lit it\n  OIL       barrels\n  FOG       the nights\n"


@pytest.mark.parametrize("title", ["                         STORES", "S T O R E S", "=== Stores ==="])
def test_a_title_below_hanging_keys(title: str) -> None:
    assert headings(f"{PROSE}\n{KEYS}\n{title}\n\n{PROSE}") == [title.strip()]


@pytest.mark.parametrize("title", ["3.  THE OILS", "III. THE OILS", "* SECTION C: OILS", "TABLE 1.  Oils"])
def test_a_title_above_a_table(title: str) -> None:
    table = "  Mark  Oil       Remarks\n  ----  --------  ----------\n  C     Colza     white\n  S     Seal      smells\n"
    assert headings(f"{PROSE}\n{title}\n\n{table}\n{PROSE}") == [" ".join(title.split())]


def test_the_last_item_of_a_list_above_a_table_is_no_title() -> None:
    table = "  Mark  Oil       Remarks\n  ----  --------  ----------\n  C     Colza     white\n  S     Seal      smells\n"
    assert headings(f"{PROSE}\n1. LIGHT THE LAMP\n\n2. READ THE TABLE\n\n{table}\n{PROSE}") == []


@pytest.mark.parametrize(
    "title", ["3. Lamps and Wicks:", "LAMPS AND WICKS\nfor the keepers", "Lamps", "Part:   How to trim lamps"]
)
def test_a_title_between_two_rules(title: str) -> None:
    rule = "-" * 24
    document = read_text(f"{PROSE}\n{rule}\n{title}\n{rule}\n\n{PROSE}", "log", "ascii")
    assert [block.kind for block in document.blocks] == [Kind.PARAGRAPH, Kind.HEADING, Kind.PARAGRAPH]
    assert document.blocks[1].text.chars == " ".join(title.split())


def test_a_sentence_between_two_rules_is_no_title() -> None:
    rule = "-" * 66
    assert headings(f"{PROSE}\n{rule}\nThe keeper reads the orders of the day before the watch begins.\n{rule}\n\n{PROSE}") == []  # fmt: skip


@pytest.mark.parametrize(
    "title",
    [
        "3.2.2 How does the second keeper ring the bell when the fog comes in?",
        "4.1 The lamp was lit at dusk, but it does not stand in the list of all\n    lamps that are lit. What is wrong?",
        "The bell was rung at noon though there was no fog at all. Who rang it?",
    ],
)
def test_a_long_title_with_a_number_or_a_question_between_two_rules(title: str) -> None:
    rule = "-" * 74
    assert headings(f"{PROSE}\n{rule}\n{title}\n{rule}\n\n{PROSE}") == [" ".join(title.split())]


def test_long_words_between_two_rules_are_no_title() -> None:
    rule = "-" * 74
    words = "Whoever comes to the rock by boat in the dark must show a red light"
    assert headings(f"{PROSE}\n{rule}\n{words}\n{rule}\n\n{PROSE}") == []


def test_words_in_capitals_right_below_program_text_are_no_title() -> None:
    assert headings(f"{PROSE}\n ; what the lamp reads\n ;\n ; at dusk\n OIL\n WICK\n\n{PROSE}") == []


def test_a_name_in_brackets_over_settings_is_no_title() -> None:
    settings = "[LAMP_1]\nshell=c:\\lamp.exe\n\n\n[ALL]\nrem THERE IS NOTHING for all\nrem put what you have to the lamp\n"
    assert headings(f"{PROSE}\n{settings}\n{PROSE}") == []


def test_chapters_under_centred_numerals() -> None:
    chapters = (
        (" " * 35 + "I", 24, "WHAT YOU SHOULD KNOW"),
        (" " * 35 + "II", 29, "HOW TO PLAY"),
        (" " * 34 + "III", 28, "HOW IT ENDED"),
        (" " * 34 + "IV", 32, "TIDES"),
    )
    text = "".join(
        f"{number}\n{' ' * left}{title}\n\n{(PROSE + chr(10)) * 7}\n" for number, left, title in chapters
    )
    assert headings(text) == [f"{number.strip()} {title}" for number, _, title in chapters]


def struck(text: str, over: str = "") -> str:
    """Text struck twice, or over its underlines."""
    return "".join(char if char == " " else f"{over or char}\b{char}" for char in text)


@pytest.mark.parametrize(
    ("line", "title"),
    [
        (struck("A sketch", "_") + " of the second floor", "A sketch of the second floor"),
        ("\x1b[7m B \x1b[0m  \x1b[4mStations heard\x1b[0m", "B Stations heard"),
        ("        " + struck("The machine", "_"), "The machine"),
    ],
)
def test_a_title_that_type_sets_off(line: str, title: str) -> None:
    assert headings(f"{PROSE}\n{line}\n\n{PROSE}") == [title]


def test_type_sets_no_title_off_in_running_text() -> None:
    lines = [
        struck("Never") + " lean on it.",
        struck("copy") + " name of the file",
        struck("Note") + ": the lamp",
    ]
    assert headings(f"{PROSE}\n" + "".join(f"{line}\n\n{PROSE}\n" for line in lines)) == []


def test_a_title_centred_under_one_in_capitals() -> None:
    text = f"{' ' * 12}REMARKS OF A KEEPER UPON THE CARE OF A\n{' ' * 14}LIGHT, FOR HIM WHO COMES AFTER\n"
    assert headings(f"{text}\n{' ' * 30}Contents\n\n{PROSE}")[1:] == ["Contents"]


def test_a_numbered_title_right_over_its_text() -> None:
    parts = "".join(f"1.1.{n} {name}\n{PROSE.lstrip()}\n" for n, name in enumerate(("Oil", "Cleaning"), 1))
    assert headings(f"{PROSE}\n{parts}") == ["1.1.1 Oil", "1.1.2 Cleaning"]


def test_captions_over_text_that_is_set_in() -> None:
    text = (
        "   Station: 8 bits\n\n      The number of the station that sends, and 0 for the\n      harbour.\n\n"
    )
    text += "   Number: 8 bits\n\n      Counts the frames of one message.\n\n   o  A frame that comes twice is answered.\n"
    assert headings(f"{PROSE}\n{text}\n   (Adopted in 1985)\n\n{PROSE}") == [
        "Station: 8 bits",
        "Number: 8 bits",
    ]


def test_a_wide_title_with_a_rule_below_a_blank_line() -> None:
    title = "THE   SKERRY   LIGHT   TIDE   CALCULATOR"
    assert headings(f"        {title}\n\n        {'-' * 41}\n\n{PROSE}") == [" ".join(title.split())]


def test_titles_at_the_left_of_rules() -> None:
    names = ("Oil", "wick(size) [brass]; the lamp")
    parts = "".join(f"----- {name} {'-' * (56 - len(name))}\n\n{PROSE}\n" for name in names)
    together = f"===== THE STORES {'=' * 47}\n\n" + "".join(
        f"----- {name} {'-' * 58}\n" for name in ("Rope", "Tar")
    )
    assert headings(f"{PROSE}\n{parts}{together}\n{PROSE}") == [*names, "THE STORES", "Rope", "Tar"]


def test_a_measure_in_a_drawing_is_no_title() -> None:
    drawing = f"    +{'-' * 44}+\n    |{' ' * 44}|\n    +{'-' * 44}+\n    {'-' * 17} 40 fathoms {'-' * 17}\n"
    assert headings(f"{PROSE}\n{drawing}\n{PROSE}") == []


@pytest.mark.parametrize("terms", [("LAMP_LIT", "LAMP_OUT"), ("'ALL IS WELL'", "'SEND A BOAT'")])
def test_names_of_a_program_and_quotations_in_capitals_are_terms(terms: tuple[str, str]) -> None:
    text = "".join(f"{term}\n       Sent to the harbour when the keeper asks.\n\n" for term in terms)
    blocks = read_text(f"{PROSE}\n{text}{PROSE}", "log", "ascii").blocks
    assert [block.label.chars for block in blocks if block.kind is Kind.ITEM] == list(terms)


def test_titles_in_capitals_over_text_that_is_set_in() -> None:
    text = "".join(
        f"{title}\n       Kept by the keeper on watch in the tower.\n\n" for title in ("LAMP", "LOG")
    )
    assert headings(f"{PROSE}\n{text}{PROSE}") == ["LAMP", "LOG"]


def test_a_numbered_title_left_of_the_text_that_ends_right_above_it() -> None:
    deep = "    The lamp is lit at dusk.  It is put out when the\n    sun is up, and not before.\n"
    text = f"1.1.  Lamp\n\n{deep}1.2.  Oil and wicks\n\n{deep}\n1.3.  Glass\n\n{deep}"
    assert headings(f"{PROSE}\n{text}") == ["1.1. Lamp", "1.2. Oil and wicks", "1.3. Glass"]


@pytest.mark.parametrize("sign", list("=-~*+#^\"'`.:"))
@pytest.mark.parametrize("title", ["1.2   What the boat brings?", "wick option (-w).", "lamp_height"])
def test_a_title_over_one_sign_again_and_again(title: str, sign: str) -> None:
    text = f"{PROSE}\n{title}\n{sign * len(title)}\n\n{PROSE}"
    assert headings(text) == [" ".join(title.split())]
    assert sign * 4 not in "".join(
        block.text.chars + "".join(line.chars for line in block.lines)
        for block in read_text(text, "log", "ascii").blocks
    )


def test_a_rule_below_the_words_of_a_title_behind_its_number() -> None:
    text = f"{PROSE}\n3.2.  Lighting the lamp\n      -----------------\n\n{PROSE}\n3.2.1 The wick\n      ========\n\n{PROSE}"
    found = read_text(text, "log", "ascii").blocks
    titles = [block.text.chars for block in found if block.kind is Kind.HEADING]
    assert titles == ["3.2. Lighting the lamp", "3.2.1 The wick"]
    assert len(found) == 5


@pytest.mark.parametrize("shown", ["light lamp.7\n      ^^^^^^", "north   south\n.............", "oil\n..."])
def test_signs_below_words_that_do_not_stand_apart_or_are_not_as_long(shown: str) -> None:
    assert headings(f"{PROSE}\nThe log shows this:\n{shown}\n{PROSE}") == []


def test_sections_without_text_between_sections_are_titles() -> None:
    text = (
        "2. The light\n\nThe lamp is lit at dusk. It is trimmed every four hours by the keeper of the\n"
        "watch.\n\n3. The boat\n\n3.1 Oars\n\n3.2 Sail\n\n"
        "The sail is set by the mate. It is dried in the boat house when the boat has been\ndrawn up.\n\n"
        "3.3 Anchor\n\nThe anchor is weighed by two men.\n\n3.4 Bell\n\n3.5 Buoy\n\n"
        "The buoy is painted in spring, when the sea lets the boat out to it and the wind is\nlow.\n\n"
        "3.6 Lead\n\nThe lead is cast by the mate.\n\n4. What follows\n\n4.1 Lamps\n\n4.2 Horns\n\n4.3 Flags\n\n"
        "The rest of this book says how each of these is kept in order.\n"
    )
    blocks = read_text(text, "the book of the boat", "ascii").blocks
    titles = [block.text.chars for block in blocks if block.kind is Kind.HEADING]
    assert titles == [
        "2. The light", "3. The boat", "3.1 Oars", "3.2 Sail", "3.3 Anchor", "3.4 Bell", "3.5 Buoy", "3.6 Lead", "4. What follows",
    ]  # fmt: skip
    assert [block.label.chars for block in blocks if block.kind is Kind.ITEM] == ["4.1", "4.2", "4.3"]


TOLD = "The keeper on watch looks to the lamp at every second hour, and writes\ndown what he sees until the sun is up.\n"


@pytest.mark.parametrize("sign", ["\u25a0", "**"])
def test_titles_in_capitals_behind_a_sign(sign: str) -> None:
    """Each alone between blank lines, text or a list between them; one right after another they are a list."""
    titles = [f"{sign} {name}" for name in ("SETTING UP", "THE KEYS", "FAULTS")]
    text = f"{titles[0]}\n\n{TOLD}\n- one\n- two\n\n{titles[1]}\n\n{TOLD}\n{titles[2]}\n\n{TOLD}"
    blocks = read_text(text, "a drill", "utf-8").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == titles
    listed = f"{TOLD}\n" + "\n\n".join(titles) + f"\n\n{TOLD}"
    assert [block.kind for block in read_text(listed, "a drill", "utf-8").blocks[1:4]] == [Kind.ITEM] * 3


def test_a_word_and_a_number_before_the_words_of_a_title() -> None:
    titles = ["ENCLOSURE 1: ANSWERS TO QUESTIONS RAISED ON 9 MARCH", "ENCLOSURE 2: THE BELL"]
    text = "".join(f"     {title}\n\n{TOLD}\n" for title in titles)
    blocks = read_text(text, "a letter", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == titles


@pytest.mark.parametrize(
    "under", ["A Handbook for Keepers", "and for those who relieve them", "A Story to Play"]
)
def test_a_line_in_the_middle_right_under_a_title_adds_to_it(under: str) -> None:
    text = f"{'THE SKERRY LIGHT':^70}\n{under:^70}\n\n{TOLD}"
    blocks = read_text(text, "a book", "ascii").blocks
    assert [(block.kind, block.text.chars) for block in blocks[:2]] == [
        (Kind.HEADING, "THE SKERRY LIGHT"),
        (Kind.HEADING, under),
    ]
    for other in ("by A. Berg", "Release 2, May 1888"):
        kinds = [
            block.kind
            for block in read_text(text.replace(f"{under:^70}", f"{other:^70}"), "a", "ascii").blocks
        ]
        assert kinds.count(Kind.HEADING) == 1


def test_the_small_letters_of_ordinals_are_figures_in_a_title_in_capitals() -> None:
    table = "    Watch     Keeper    Hour\n    north     Maren     four\n    south     Tobias    five\n"
    text = f"{PROSE}\nII. WATCHES, 1st JUNE TO 30th SEPTEMBER\n\n{table}"
    assert headings(text) == ["II. WATCHES, 1st JUNE TO 30th SEPTEMBER"]


KEEPER = "       Maren Holm\n       First keeper\n       Skerry Light, second stair\n       Sound Harbour\n"


def test_capitals_left_of_many_kept_lines_are_their_heading() -> None:
    assert headings(f"{PROSE}\nKEEPER\n{KEEPER}\n{PROSE}") == ["KEEPER"]


def test_capitals_among_kept_lines_at_one_place_head_nothing() -> None:
    level = KEEPER.replace("       ", "")
    assert headings(f"{PROSE}\nSKERRY LIGHT\n{level}\n{PROSE}") == []


def test_the_version_of_a_file_that_a_program_keeps_is_no_title() -> None:
    version = "$Log: lamp.txt,v 1.12 1911/08/12 14:49:15 holm Exp $"
    assert headings(f"{version}\n\n{PROSE}\n{version}\n\n{PROSE}") == []


def numbered(form: str, text: str = PROSE) -> str:
    return "".join(f"{form.format(number):>38}\n\n{text}\n" for number in range(1, 5))


@pytest.mark.parametrize("form", ["{}", "{}."])
def test_numbers_alone_in_the_middle_over_paragraphs_are_titles(form: str) -> None:
    assert headings(f"{PROSE}\n{numbered(form)}") == [form.format(number) for number in range(1, 5)]
    letters = "".join(f"{letter:>38}\n\n{PROSE}\n" for letter in ("I", "II", "III"))
    assert headings(f"{PROSE}\n{letters}") == ["I", "II", "III"]


def test_numbers_alone_that_cut_sentences_or_do_not_count_on_are_no_titles() -> None:
    cut = PROSE.rstrip(".\n") + " by the\n"
    assert headings(f"{cut}\n{numbered('{}', f'light of it. {cut}')}") == []
    assert headings(f"{PROSE}\n{numbered('{}').replace('2', '7')}") == []


def test_bold_capitals_in_the_middle_under_a_salutation_are_a_title() -> None:
    text = f"Keepers,\n\n{' ' * 20}{{}}\n\n{PROSE.lstrip()}"
    assert headings(text.format(struck("ORDERS FOR THE LAMP"))) == ["ORDERS FOR THE LAMP"]
    assert headings(text.format("Orders for the lamp")) == []


def test_two_lines_in_capitals_in_the_middle_are_no_command_with_what_it_does() -> None:
    text = (
        f"{PROSE}\n{' ' * 12}WHAT IS ASKED OF THE LAMPS OF THE ROCK\n{' ' * 22}AND THEIR MANTLES\n\n{PROSE}"
    )
    assert headings(text) == ["WHAT IS ASKED OF THE LAMPS OF THE ROCK AND THEIR MANTLES"]


def test_the_second_line_of_a_numbered_title_in_bold_may_be_in_small_letters() -> None:
    title = f"{PROSE}\n{struck('3.  Of fire, and of the')}\n{{}}\n\n{PROSE.lstrip()}"
    assert headings(title.format(struck("bell on the rock"))) == ["3. Of fire, and of the bell on the rock"]
    assert headings(title.format("Bell on the rock")) == ["3. Of fire, and of the"]
