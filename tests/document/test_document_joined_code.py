"""Program text with blank lines in it: deeper pieces between others keep their indentation."""

from __future__ import annotations

import pytest
from test_document_torn_lines import PROSE

from fit.document.blocks import Block, Kind
from fit.document.text import read_text
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.running.joined_code import with_joined_code
from fit.document.text.running.placed import Placed

LISTING = """\
    case "$1" in fog|snow)
            if [ -e /skerry/horn ]; then
                sound_horn 3
            fi

            # Trim the wick before the night
            if [ -e /skerry/wick ]; then
                trim_wick
            fi
    esac
"""


def kept(text: str) -> list[list[str]]:
    """The lines of each piece of program text."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    return [[line.chars for line in block.lines] for block in blocks if block.code]


def test_a_piece_between_others_stands_as_deep_as_it_did() -> None:
    first, deeper, last = LISTING.partition("\n\n")[0], LISTING.partition("\n\n")[2], "    esac\n"
    parted = f"{first}\n\n{deeper.removesuffix(last)}\n{last}"
    assert kept(parted) == [[line[4:] for line in parted.splitlines()]]


def test_commands_at_one_column_are_pieces_of_their_own() -> None:
    assert kept("    lamp -o /skerry/oil\n\n    lamp -w /skerry/wick\n") == [
        ["lamp -o /skerry/oil"],
        ["lamp -w /skerry/wick"],
    ]


def test_the_last_line_of_a_listing_right_below_a_deeper_piece_is_one_with_it() -> None:
    assert kept(LISTING) == [[line[4:] for line in LISTING.splitlines()]]


def test_what_a_brace_opens_is_one_listing_up_to_the_brace_that_closes_it() -> None:
    listing = """\
    void light(int lamp)
    {

        /*
         * Trim the wick
         */

        trim(lamp);

        if (dark()) {
            kindle(lamp);
        }

        return;
    }
"""
    assert kept(listing) == [[line[4:] for line in listing.splitlines()]]


def test_what_a_brace_opens_goes_on_over_a_page() -> None:
    head = "Skerry Light                  Keepers' Notes                 Page {}\n\n\n"
    before = "\n    while (fog()) {\n        sound_horn(3);\n\n"
    after = "        wait(horn);\n    }\n\n"
    pages = (PROSE + before, after + PROSE, PROSE)
    text = "\f".join(head.format(number) + page for number, page in enumerate(pages, 1))
    blocks = read_text(text, "log", "ascii").blocks
    assert [[line.chars for line in block.lines] for block in blocks if block.code] == [
        ["while (fog()) {", "    sound_horn(3);", "    wait(horn);", "}"]
    ]


def test_a_label_at_the_head_of_program_text_stands_once() -> None:
    listing = "Old form:  !zone lamp {\n               !source 3\n           }\nNew form:  !zone lamp 3\n"
    blocks = read_text(PROSE + listing + "\n" + PROSE, "log", "ascii").blocks
    words = " ".join(
        f"{block.label.chars} {block.text.chars} {' '.join(line.chars for line in block.lines)}"
        for block in blocks
    )
    assert words.count("Old form:") == 1


def test_a_remark_far_to_the_right_began_beside_a_statement() -> None:
    remark = " " * 44
    listing = f"    if (dark())\n        kindle();\n{remark}/* the lamp by the door,\n{remark} * not the great one\n{remark} */\n"
    assert len(kept(listing)) > 1


def test_statements_that_nobody_knows_inside_what_is_open_are_parts_of_the_listing() -> None:
    listing = """\
if [ -e /skerry/oil ]; then
        umask 077
        touch oil.log
        keep 660 oil.log || exit 1
        give lamp oil.log || exit 1
        umask $old
fi
"""
    assert kept(listing) == [listing.splitlines()]


def test_a_sentence_inside_what_is_open_parts_the_listing() -> None:
    said = "The lamp of the rock is lit when the first keeper has called, and it burns until dawn."
    text = f"lamp (oil) {{\n\n    {said}\n\n    oil = 1;\n    wick = 2;\n"
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    assert said in [block.text.chars for block in blocks]


def test_what_may_be_left_out_of_a_command_is_its_rest() -> None:
    command = (
        "    lamp make-log [-lamp nameoflamp] [-oil tinsofoil] [-watch number]\n"
        "    [-min-hours hours] [-min-height height] [-only-fog [-only-rain]]\n    [-uniform] <log> [<year>]\n"
    )
    assert kept(command + "\n    lamp merge-log -in1 log1 [-out file]\n")[0] == [
        line[4:] for line in command.splitlines()
    ]


def test_what_is_asked_and_what_comes_of_it_is_one_listing() -> None:
    listing = "     You have: oil\n     You want: hours\n             oil = 5280 hours\n             oil = (1 / 0.00018939394) hours\n"
    assert kept(listing) == [[line[5:] for line in listing.splitlines()]]


def test_what_leads_to_program_text_is_no_part_of_it() -> None:
    text = "     Where the lamp may be any of them.\n     Example:\n         lamp=stair\n         oil=low\n"
    assert kept(text) == [["lamp=stair", "oil=low"]]


def test_stars_in_the_names_of_files_open_no_comment() -> None:
    assert kept("    lamp -o /skerry/*\n\n        lamp -w /skerry/wick\n") == [
        ["lamp -o /skerry/*"],
        ["lamp -w /skerry/wick"],
    ]


def test_a_listing_in_pieces_below_what_leads_to_it_is_joined_alone() -> None:
    lead = "lamp -s /skerry/light.c\n\n"
    listing = "   void light(int lamp)\n   {\n       /*\n        * Trim the wick\n        */\n       trim(lamp);\n   }\n"
    assert kept(lead + listing) == [["lamp -s /skerry/light.c"], [line[3:] for line in listing.splitlines()]]


def test_a_label_far_to_the_left_of_instructions_is_a_part_of_the_listing() -> None:
    listing = (
        "                LDA     #$00            ; turn the lens\n                STA     REV\n;\n"
        ";       The lamp is lit at dusk and\n;       put out at dawn.\n;\nDONE            JMP     $FF00           ; back to the log\n"
    )
    assert kept(listing) == [listing.splitlines()]


def test_rows_of_columns_beside_what_looks_like_a_command_are_no_listing() -> None:
    def parts(row: str) -> int:
        lines = [Line(row, 0), Line("            oil/lamp filetype", len(row) + 1)]
        blocks = [
            Block(Kind.PREFORMATTED, lines=keep_lines([line]), code=code)
            for line, code in zip(lines, (False, True), strict=True)
        ]
        return len(
            with_joined_code(lines, [Placed(block, index, index + 1) for index, block in enumerate(blocks)])
        )

    assert parts("    --oil=number") == 1
    assert parts("    --oil=number      tins that are left") == 2


ELIDED = """\
...
light(true) // lamp
light(oil or wick) // any oil in the tins of the keepers ?
})", "Lamp" : "north", "Oil" : "low", "Wick" : "new"
, "Bell" : "rung", "Fog" : "thick"});
trim("wick", "lamp");

...
"""


def test_three_points_begin_and_end_a_listing() -> None:
    assert kept(ELIDED) == [ELIDED.splitlines()]


def test_three_points_below_a_blank_line_begin_no_listing_again() -> None:
    said = "The lamp is lit at dusk and the keepers of it go down to the sea.\n"
    assert all(said.strip() not in block for block in kept(ELIDED.replace("\n\n", f"\n\n{said}\n")))


def joined(between: str, kind: Kind = Kind.PARAGRAPH) -> list[str]:
    """The first lines of the blocks of two pieces of program text and what stands between them, blank lines around it."""
    texts = ("    # ring the bell", between, "    # now it was rung")
    lines = [Line(text, 99 * place, gap=int(place > 0)) for place, text in enumerate(texts)]
    blocks = [Block(Kind.PREFORMATTED, lines=keep_lines([line]), code=True) for line in lines]
    blocks[1] = Block(kind, lines=keep_lines([lines[1]]))
    found = with_joined_code(lines, [Placed(block, place, place + 1) for place, block in enumerate(blocks)])
    return [lines[one.start].text for one in found]


def test_what_nobody_knows_between_two_pieces_at_one_column_is_one_listing_with_them() -> None:
    assert joined("    bell.wait()") == ["# ring the bell"]
    assert joined("    oil, wick = Rock::take lamp") == ["# ring the bell"]


@pytest.mark.parametrize(
    "between",
    [
        "    followed by",
        "    Then,",
        "    The oil is in the tank (full).",
        "    Lamps (red):",
        "bell.wait()",
        "        bell.wait()",
    ],
)
def test_words_that_lead_from_one_piece_to_the_next_are_no_part_of_them(between: str) -> None:
    assert joined(between) == ["# ring the bell", between.strip(), "# now it was rung"]


def test_a_title_between_two_pieces_is_no_part_of_them() -> None:
    assert len(joined("    Bell-Rope", Kind.HEADING)) == 3
