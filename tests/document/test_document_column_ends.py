"""Where newspaper columns begin and end: heads in their middle, signatures below them, what follows them."""

from __future__ import annotations

from itertools import zip_longest

from fit.document.text import read_text

LEFT = [
    "WANTED: a gull, quiet, with",
    "references. Write to the log.",
    "",
    "FOR SALE: barometer, reads 29",
    "only, otherwise perfect. Will",
    "exchange for boots of any size.",
]
RIGHT = [
    "The fortnight of easterly winds",
    "was followed by the wettest week",
    "that anybody could remember. The",
    "keepers have decided, by a vote",
    "of two to one, to buy the mended",
    "duplicator.",
    "",
    "Anyone with a spare anemometer",
    "is asked to speak to the second",
    "keeper. Members who borrow it are",
    "reminded that it is heavy.",
]
PAGE = "The keepers of the rock read their own paper in the evening, when all has been said.\n\n"


def rows_of(*columns: list[str]) -> str:
    """The rows of two columns side by side."""
    return "".join(f"{a:36}{b}".rstrip() + "\n" for a, b in zip_longest(*columns, fillvalue=""))


def texts(columns: tuple[list[str], list[str]], head: str = "", foot: str = "") -> list[str]:
    """The texts of the blocks of two columns, the paragraph above them left out."""
    rows = rows_of(*columns)
    return [
        block.text.chars or " / ".join(line.chars for line in block.lines)
        for block in read_text(PAGE + head + rows + foot, "a document", "ascii").blocks[1:]
    ]


def test_a_column_that_ends_above_the_next_one_ends_its_paragraph() -> None:
    assert [text.split()[0] for text in texts((LEFT, RIGHT))] == ["WANTED:", "FOR", "The", "Anyone"]


def test_heads_in_the_middle_of_their_columns_are_read_with_them() -> None:
    head = "         SMALL ADS                             LETTERS\n\n"
    assert [text.split()[0] for text in texts((LEFT, RIGHT), head)] == [
        "SMALL",
        "WANTED:",
        "FOR",
        "LETTERS",
        "The",
        "Anyone",
    ]


def test_a_signature_under_the_longer_left_column_belongs_to_it() -> None:
    found = texts(
        (RIGHT, LEFT),
        foot="\n        -- A Keeper\n\nThe relief comes on Thursday, weather permitting, as always.\n",
    )
    assert found.index("-- A Keeper") < next(i for i, text in enumerate(found) if text.startswith("FOR SALE"))
    assert found[-1].startswith("The relief")


def test_a_list_below_the_columns_is_none_of_them() -> None:
    rows = "\n\n[5.1] The counters are these:\n\n      Cutters, red and blue" + " " * 30 + "12\n"
    rows += f"      {'Steamers':<50} 4\n      {'Boats, those that have no oars included':<50}16\n"
    both = rows_of(RIGHT, [*RIGHT[7:], "", *RIGHT[:6]])
    table = read_text(f"{PAGE}{both}{rows}", "a document", "ascii").blocks[-1]
    assert [[cell.chars for cell in row] for row in table.rows] == [
        ["Cutters, red and blue", "12"],
        ["Steamers", "4"],
        ["Boats, those that have no oars included", "16"],
    ]


NOTICES = [
    "WANTED: glasses, red or green,",
    "cracked or whole, for the lamp.",
    "",
    "FOR SALE: one boat, four oars,",
    "with most of her planks and a",
    "sail, for some tins of biscuit.",
    "",
    "LOST near the landing, a cap of",
    "great age and no value. Reward.",
]
OFFERS = [
    "EXCHANGE: the bound volumes of",
    "this paper, for a kettle.",
    "",
    "OFFERED: bed and breakfast for",
    "a keeper on leave who does not",
    "play upon any instrument.",
]


def test_notices_beside_one_another_end_with_their_column() -> None:
    assert [text.split()[0] for text in texts((NOTICES[:6], OFFERS))] == [
        "WANTED:",
        "FOR",
        "EXCHANGE:",
        "OFFERED:",
    ]


def test_a_paragraph_of_two_lines_below_a_blank_row_goes_on_in_the_left_column() -> None:
    assert [text.split()[0] for text in texts((NOTICES, OFFERS))] == [
        "WANTED:",
        "FOR",
        "LOST",
        "EXCHANGE:",
        "OFFERED:",
    ]


def test_two_short_lines_below_the_columns_are_none_of_them() -> None:
    below = ["Skerry Light,", "the first of May."]
    found = texts(([*NOTICES[:6], "", *below], OFFERS))
    assert found[-2].startswith("OFFERED:")
    assert found[-1].startswith("Skerry")


GALE = """\
It began, as such things do, with
a rattle. By nine the stay on the
northern side had parted, and the
mast was going round in circles
which the second keeper, who was
in the hut at the time, put at
four feet. He signed off in good
order. What was then done by the
first keeper and the two brothers
from the mainland has been told
in both of the public houses, and
in the smoking room of the ferry,
and in each of them differently,
as is the way with such stories
when those who tell them were not
there and those who were there do
not tell them; we print here what""".splitlines()
PROVED = """\
can be proved. The boat was at the
end of it. At first light the wind
went down, and it was found that
the mast was upright and that the
boat was not.

The board has been asked to say
that the oil will be limited to

  (a) keepers,
  (b) those who carried things on
      the night of the gale.""".splitlines()
SHOUT = ["", r"         ___  /", r"        |   |/   GOOD", r"        | o-|    NIGHT !", r"        |___|"]


NEW = """\
NEW IN THE STORES

No.  What        Shelf
11   Long wicks  3
12   Lamp oil    4
13   Rope        9
""".splitlines()


def test_a_paragraph_goes_on_from_the_longer_column_to_the_next_one() -> None:
    """What the longer column has alone says nothing against the columns, nor does the small table above it."""
    read = texts(([*NEW, "", *GALE], PROVED))
    assert sum("we print here what can be proved." in text for text in read) == 1
    assert read[-1] == "those who carried things on the night of the gale."


def test_bars_in_one_column_part_no_cells_of_the_other() -> None:
    read = texts((GALE, [*PROVED, *SHOUT]))
    assert "we print here what can be proved." in read[0]
    assert read[-1].endswith(" / | o-|    NIGHT ! / |___|")


def test_a_signature_at_the_foot_of_the_first_column_ends_its_letter() -> None:
    left = [
        "The lamp was dark on Tuesday",
        "and nobody has said why it was",
        "so, nor who was on watch then.",
        "",
        "        (Miss) A. Tregear",
    ]
    for signature in (left[4:], ["        T. Arran,", "        Skerry Quay"]):
        read = texts(([*LEFT, "", *left[:4], *signature], RIGHT))
        assert "The fortnight of easterly winds" in next(
            text for text in read if text.startswith("The fortnight")
        )


def test_a_paragraph_that_begins_set_in_at_the_foot_goes_on_in_the_next_column() -> None:
    left = [*LEFT, "", "     The lamp was dark when"]
    read = texts((left, ["The second keeper came.", *RIGHT]))
    assert "The lamp was dark when The second keeper came." in " ".join(read)


def test_a_sentence_goes_on_in_a_short_column_alone_on_the_next_page() -> None:
    right = [*RIGHT[:-1], "reminded that it is heavy, and"]
    found = texts(
        (LEFT, right),
        foot="\fthat  it  belongs  to nobody\nelse.\n\nWhat follows is set across the whole page.\n",
    )
    assert found[-2].endswith("heavy, and that it belongs to nobody else.")
    assert found[-1].startswith("What follows")
