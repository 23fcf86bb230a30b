"""The plain-text reader: whole documents against their gold, and each rule in cases that can be read aloud."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from gold import parse_gold, read_gold
from hypothesis import example, given, settings, strategies as st
from plain_blocks import rows_of
from press import press, styles
from prose import manual
from scorer import score_blocks
from survival import lost_and_doubled, out_of_order

from fit.document.blocks import Block, Kind, Mark
from fit.document.text import read_text

CORPUS = Path(__file__).parents[2] / "corpus" / "documents"
DOCUMENTS = sorted(path for path in CORPUS.glob("*.txt") if path.with_suffix(".gold").exists())


def read(text: str) -> tuple[Block, ...]:
    return read_text(text, "a document", "ascii").blocks


def flow(text: str) -> list[str]:
    """Each block as one line: its label in brackets, then its text, or its lines with bars between."""
    shown = []
    for block in read(text):
        if block.kind is Kind.TABLE:
            shown += [" | ".join(cell.chars for cell in row) for row in block.rows]
        elif block.lines:
            shown.append(" / ".join(line.chars for line in block.lines))
        else:
            label = f"[{block.label.chars}] " if block.label.chars else ""
            shown.append(label + block.text.chars)
    return shown


def test_there_is_a_corpus() -> None:
    assert len(DOCUMENTS) >= 8


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: path.stem)
def test_corpus(path: Path) -> None:
    score = score_blocks(read(path.read_bytes().decode("utf-8")), read_gold(path.with_suffix(".gold")))
    assert score.items > 3
    assert score.examples == []


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: path.stem)
def test_nothing_is_lost(path: Path) -> None:
    assert lost_and_doubled(read_text(path.read_bytes().decode("utf-8"), path.name, "utf-8")) == ([], [])


def test_the_score_sees_cells_that_moved() -> None:
    blocks = read(
        "Day        High   Low\n---------  -----  -----\nMonday     04:12\nTuesday    05:01  11:10\n"
    )
    good = "T Day | High | Low\nt Monday | 04:12 |\nt Tuesday | 05:01 | 11:10\n"
    assert score_blocks(blocks, parse_gold(good)).total == 0
    moved = good.replace("| 04:12 |", "|  | 04:12")
    assert score_blocks(blocks, parse_gold(moved)).faults == {"cells moved": 1}


def test_pressed_manuals() -> None:
    """Manuals set in many house styles; the share of faults is the bar for real documents, 2 %."""
    faults = items = 0
    for seed in range(40):
        blocks = manual(seed)
        score = score_blocks(read(press(blocks, styles(seed), seed)), blocks)
        faults += score.total
        items += score.items
    assert items > 1500
    assert faults <= 0.02 * items


def test_pieces_of_documents_thrown_together_lose_nothing() -> None:
    """Runs of lines from two documents, some shuffled: whatever they are read as, each letter comes out once."""
    rng = random.Random(5)
    sources = [path.read_text("utf-8").split("\n") for path in DOCUMENTS]
    for _ in range(150):
        lines: list[str] = []
        for source in rng.sample(sources, 2):
            start = rng.randrange(len(source))
            lines += source[start : start + rng.randrange(1, 30)]
        if rng.random() < 0.3:
            rng.shuffle(lines)
        assert lost_and_doubled(read_text("\n".join(lines), "a mix", "utf-8")) == ([], [])


@settings(max_examples=60, deadline=None)
@given(
    st.text(
        st.sampled_from("abc de. -*|+=_1/\n\n\n    \t\b\r\f\x1b[1mXé\u3042\u0301\u00ad\u00a0─│"), max_size=400
    )
)
@example(" \u0301\r1")
@example("1\t\u0301")
@example("1\r \u0301")
@example("0\n \u0301\n0")
def test_any_text_comes_through(text: str) -> None:
    """Whatever is fed, each letter comes out once; struck ones (backspace, return, escapes) excepted."""
    document = read_text(text, "noise", "utf-8")
    lost, doubled = lost_and_doubled(document)
    assert doubled == []
    if not set(text) & set("\b\r\x1b"):
        assert lost == []


@pytest.mark.parametrize(
    "path", [path for path in DOCUMENTS if path.stem != "columns"], ids=lambda path: path.stem
)
def test_everything_stays_in_order(path: Path) -> None:
    """Newspaper columns are read one after the other; elsewhere a block's characters keep their order."""
    assert out_of_order(read_text(path.read_bytes().decode("utf-8"), path.name, "utf-8")) == []


@pytest.mark.parametrize(
    ("left", "right", "joined"),
    [
        ("Give the option --no-", "header and the whole heading of the table goes.", "--no-header"),
        ("It is a read-", "only file and nothing can be changed in it again.", "read-only"),
        ("There is no key on the key-", "board that would change what was written.", "keyboard"),
        ("Print the pages 10-", "20 and no others, for the paper is dear here.", "10-20"),
        ("The harbour asks for 48-", "hour checks all the same, summer and winter.", "48-hour"),
        ("This holds for the in-", "and outgoing boats, and for the mail as well.", "in- and"),
        ("A twenty-", "one mile range is the nominal figure of the light.", "twenty-one"),
        ("The state-of-", "the-art burner needs a look each half hour.", "state-of-the-art"),
        ("It is seen all over the is-", "land, and in the harbour on a clear night.", "island"),
        ("The plate is worn--", "nobody can read it any more, even with a lamp.", "worn--nobody"),
        ("The light is weak -", "nobody can see it any more from the harbour.", "weak - nobody"),
        ("Send the form to station B-", "7, and keep the blue copy of it yourself.", "B-7"),
    ],
)
def test_line_end_hyphens(left: str, right: str, joined: str) -> None:
    """Line-end hyphens that are or are not part of the word (the list of the field's common cases)."""
    assert f" {joined}" in flow(f"Whoever comes to the rock is told this: {left}\n{right}\n")[0]


def test_the_document_itself_decides_about_a_hyphen() -> None:
    text = (
        "The re-entry of the log is done by hand and takes a good hour.\n\n"
        "Whoever has lost a page of it must see to the re-\nentry of all that it held, alone.\n"
    )
    assert flow(text)[1].endswith("must see to the re-entry of all that it held, alone.")


def test_a_year_and_a_dash_start_no_item() -> None:
    text = (
        "The drill was first written down by the keeper of the year\n"
        "1984. It has been followed ever since that time on the rock\n"
        "- where it belongs - and nowhere else that we know anything of.\n"
    )
    assert len(flow(text)) == 1


def test_items_with_flat_continuation() -> None:
    text = "Before sunset:\n\n* Enter the height of the glass, and whether it is falling or\nsteady.\n* Call the keeper.\n"
    assert flow(text) == [
        "Before sunset:",
        "[*] Enter the height of the glass, and whether it is falling or steady.",
        "[*] Call the keeper.",
    ]


def test_right_aligned_numbers() -> None:
    text = " 9. Wind the clockwork.\n10. Call the relief, and do not go before he stands there in\n    his boots.\n11. Sleep.\n"
    assert flow(text) == [
        "[9.] Wind the clockwork.",
        "[10.] Call the relief, and do not go before he stands there in his boots.",
        "[11.] Sleep.",
    ]


def test_first_line_indents_part_paragraphs() -> None:
    text = (
        "     In summer the nights are short and two of us can stand them\n"
        "without being tired in the morning, or not more than usual.\n"
        "     In winter it is another thing. Sixteen hours of darkness are\n"
        "cut into four watches.\n"
    )
    assert [line[:9] for line in flow(text)] == ["In summer", "In winter"]


def test_overstrikes_tabs_and_attributes() -> None:
    document = read_text("N\bNA\bAM\bME\bE\tu_\bn\bn _\bx_\by \x1b[1mbold\x1b[0m e\b'\n", "struck", "ascii")
    (block,) = document.blocks
    line = block.lines[0] if block.lines else block.text
    assert line.chars.split() == ["NAME", "un", "xy", "bold", "é"]
    marks = dict(zip(line.chars, line.marks, strict=True))
    assert marks["N"] == Mark.BOLD
    assert marks["x"] == Mark.UNDERLINE
    assert marks["b"] == Mark.BOLD
    assert marks["é"] == Mark.NONE


def test_blanks_that_hold_alone_on_a_marked_line_are_no_title() -> None:
    assert read("\u00a0\x1b1\u0301")


def test_a_line_struck_twice_by_a_return() -> None:
    assert flow("The lamp burns.\r____\n") == ["The lamp burns."]
    assert flow("The lamp burns.\rThe lamp burns.\n") == ["The lamp burns."]


def test_the_cursor_moved_forward_leaves_blank_cells() -> None:
    source = "the oil\x1b[C\x1b[31mran\x1b[0m out\n\n\x1b[8COil\x1b[5C14\n\x1b[8CWicks\x1b[3C60\n\x1b[8CTea\x1b[5C20\n"
    document = read_text(source, "moved", "ascii")
    assert document.blocks[0].text.chars == "the oil ran out"
    assert rows_of(document.blocks) == ["Oil | 14", "Wicks | 60", "Tea | 20"]
    assert document.remarks == ()


def test_unknown_controls_are_counted() -> None:
    document = read_text("The lamp\x07 burns. \x1b[2JAgain.\n", "noise", "ascii")
    assert document.remarks == (
        "1 times the control code 07h was taken out: it has no meaning here.",
        "1 times the control code ESC [2J was taken out: it has no meaning here.",
    )


def test_padding_and_leftovers_after_the_end() -> None:
    assert read_text("The lamp burns.\r\n\x1a\x1a\x1a", "a", "ascii").remarks == ()
    assert read_text("The lamp burns.\r\n\x1aold text", "a", "ascii").remarks == (
        "8 characters after the end-of-file mark 1Ah at 17 were left out.",
    )


def test_a_formatted_manual_page() -> None:
    text = (
        "LAMP(1)                 Station Programs                LAMP(1)\n\n"
        "NAME\n       lamp - light the lamp\n\n"
        "OPTIONS\n"
        "       -t minutes\n              Burn for so many minutes and go out. Without this option\n"
        "              the lamp burns until sunrise.\n\n"
        "       -q     Quiet.\n\n"
        "Skerry                    March 1987                    LAMP(1)\n"
    )
    kinds = [block.kind.value for block in read(text)]
    assert kinds == ["furniture", "heading", "paragraph", "heading", "item", "item", "furniture"]
    assert flow(text)[4] == (
        "[-t minutes] Burn for so many minutes and go out. Without this option the lamp burns until sunrise."
    )


def test_odd_and_even_running_heads_and_a_word_cut_by_the_page() -> None:
    page = "".join(
        f"The keeper writes down the hour {hour}, the wind and the state of the sea\n" for hour in range(12)
    )
    text = (
        f"THE LOG                                                          1\n\n{page}and sends it with the tele-\n\f"
        f"2                                                        THE RULES\n\ngram of the evening.\n\n{page}\f"
        f"THE LOG                                                          3\n\n{page}"
    )
    blocks = read(text)
    assert [block.lines[0].chars.split()[-1] for block in blocks if block.kind is Kind.FURNITURE] == [
        "1",
        "RULES",
        "3",
    ]
    assert "with the telegram of the evening." in blocks[1].text.chars


def test_wide_characters_keep_their_columns() -> None:
    text = "名前      灯台      高さ\n岩        白い      12\n港        赤い      7\n島        青い      31\n"
    assert flow(text)[0] == "名前 | 灯台 | 高さ"


def test_two_columns_cut_by_a_page() -> None:
    left = [f"left line {number} of the tale runs" for number in range(12)]
    right = [f"right line {number} of it also runs" for number in range(12)]
    rows = [f"{a:<36}{b}" for a, b in zip(left, right, strict=True)]
    text = "\n".join(rows[:6]) + "\n\f" + "\n".join(rows[6:]) + "\n"
    (block,) = read(text)
    numbers = [word for word in block.text.chars.split() if word.isdigit()]
    assert numbers == [*map(str, [0, 1, 2, 3, 4, 5] * 2), *map(str, [6, 7, 8, 9, 10, 11] * 2)]
    assert block.note == "2 newspaper columns read one after the other"


def test_dot_leaders_between_key_and_meaning() -> None:
    text = (
        "     SAVE ............. writes the story to disk\n"
        "     RESTORE .......... reads it again\n"
        "     SCORE ............ tells how many of the 250 points\n"
        "                        you have\n"
    )
    assert flow(text)[2] == "[SCORE] tells how many of the 250 points you have"


def test_a_key_that_leaves_one_blank() -> None:
    text = "Date:    4 March 1987\nWind:    NW 6\nGlass:   29.41\nRemarks: light burning good, and the boat has\n         come at last\n"
    assert flow(text)[3] == "[Remarks:] light burning good, and the boat has come at last"


def test_heads_that_span_columns() -> None:
    text = (
        "+-------+-----------------+-------+\n"
        "|       | Content memory  |       |\n"
        "| Name  +---------+-------+ Share |\n"
        "|       |  type   | limit |       |\n"
        "+-------+---------+-------+-------+\n"
        "| lamp  | static  | 1     | no    |\n"
        "| tide  | dynamic | -     | yes   |\n"
        "+-------+---------+-------+-------+\n"
    )
    assert flow(text) == [
        "Name | Content memory type | limit | Share",
        "lamp | static | 1 | no",
        "tide | dynamic | - | yes",
    ]


def test_verse_alone() -> None:
    text = "Trim the wick and wind the spring,\nHear the evening petrel sing;\nKeep the flame and keep it bright.\n"
    assert flow(text)[0].count(" / ") == 2


def test_double_spaced_text() -> None:
    lines = [f"This is line {number} of a text that was typed with double spacing" for number in range(20)]
    text = "\n\n".join(lines) + ".\n"
    assert len(read(text)) == 1


def test_bare_returns_end_lines_where_there_are_no_line_feeds() -> None:
    assert flow("The lamp burns.\r\rThe sea is calm.\r") == ["The lamp burns.", "The sea is calm."]


def test_empty_and_blank() -> None:
    assert read("") == ()
    assert read(" \n\f\n \x1a") == ()


SENTENCES = "The lamp was lit at dusk, and the watch was kept until the sun stood over the sea.\n"


def test_running_heads_of_which_one_side_stays() -> None:
    heads = ["THE LAMP", "THE TIDES", "THE LOG", "SIGNALS", "STORES", "THE BOAT"]
    pages = [
        f"\n\nSkerry Light Handbook          {head}\n\n{SENTENCES * 20}\n\n\n               {number}\n\n"
        for number, head in enumerate(heads, 1)
    ]
    for text in ("".join(pages), "\f".join(pages)):
        kept = [block for block in read(text) if block.kind is not Kind.FURNITURE]
        assert not any("Handbook" in line.chars for block in kept for line in (*block.lines, block.text))


def test_what_comes_back_at_any_distance_is_no_running_head() -> None:
    """A list of changes: titles alike but for their numbers, sentences that come back, a form feed before each part."""
    parts = [
        f"version 1.{number} - the keepers, 1986-0{number}-1{number}\n\n{SENTENCES * (4 + 59 * (number % 3))}\n"
        f"See also the lamp drill 2.{number}.\n\n* Mended.\n\n"
        for number in range(1, 8)
    ]
    for text in ("".join(parts), "\f".join(parts)):
        assert not any(block.kind is Kind.FURNITURE for block in read(text))


def test_a_sentence_goes_on_in_small_letters_however_short_its_line() -> None:
    assert flow(
        "The lamp that was\nbrought up the stair by twelve men in the spring of the year is lit at dusk.\n"
    ) == ["The lamp that was brought up the stair by twelve men in the spring of the year is lit at dusk."]


def test_a_transcript_typed_after_an_angle_has_no_headings() -> None:
    blocks = read("Here is how a game begins:\n\n   >LOOK\n   It is dark.\n\n   >TAKE LAMP\n   Taken.\n")
    assert not any(block.kind is Kind.HEADING for block in blocks)


def test_a_second_stanza_keeps_its_lines() -> None:
    verse = "The lamp is lit and the tide is in,\n  And the boat is on the bar,\nAnd the keeper sits,\n  And wonders.\n"
    blocks = read(f"{SENTENCES * 5}\n{verse}\nThe lamp is out and the tide is out,\n  And the boat is far.\n")
    kept = [line.chars for block in blocks for line in block.lines]
    assert kept[-2:] == ["The lamp is out and the tide is out,", "  And the boat is far."]


@pytest.mark.parametrize(
    ("good", "bad", "fault"),
    [
        ("* 1. | Trim the wick.", "p 1. Trim the wick.", "item made up"),
        ("* 1. | Trim the wick.", "* | 1. Trim the wick.", "label wrong"),
        ("= 1 Stores", "p Stores", "heading made up"),
        ("p The lamp is lit.", "= 1 The lamp is lit.", "heading missed"),
        ("p The lamp is lit.", "* The | lamp is lit.", "item flattened"),
    ],
)
def test_the_score_sees_what_is_taken_for_something_else(good: str, bad: str, fault: str) -> None:
    blocks = read("STORES\n\nThe lamp is lit.\n\n1. Trim the wick.\n\n2. Fill the lamp.\n")
    gold = "= 1 Stores\np The lamp is lit.\n* 1. | Trim the wick.\n* 2. | Fill the lamp.\n".replace(
        "Stores", "STORES"
    )
    good, bad = good.replace("Stores", "STORES"), bad.replace("Stores", "STORES")
    assert score_blocks(blocks, parse_gold(gold)).total == 0
    assert score_blocks(blocks, parse_gold(gold.replace(good, bad))).faults == {fault: 1}
