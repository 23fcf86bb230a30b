"""Comments of program text: several lines between two marks, beside the text that they explain."""

from __future__ import annotations

from test_document_torn_lines import PROSE

from fit.document.blocks import Block
from fit.document.text import read_text

HEAD = """\
/*
* @name The name of the report without the
ending. The list of reports shows it.
* @page Where it goes: log | slate |
book | board | etc.

What follows is for the keepers.
*/
"""


def between(text: str) -> list[Block]:
    """The blocks between two paragraphs."""
    return list(read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks[1:-1])


def kept(text: str) -> list[list[str]]:
    """The lines of each piece of program text."""
    return [[line.chars for line in block.lines] for block in between(text) if block.code]


def test_a_comment_between_two_marks_is_one_piece() -> None:
    assert kept(HEAD) == [HEAD.splitlines()]


def test_a_comment_over_a_statement_stays_with_it() -> None:
    text = "    /*\n     * Trim the wick first:\n     * a long one smokes.\n     */\n    trim_wick(lamp);\n    light_lamp(lamp);\n"
    assert kept(text) == [[line[4:] for line in text.splitlines()]]


def test_a_comment_inside_a_listing_parts_it_not() -> None:
    text = (
        "  while (lamp_is_lit(lamp)) {\n    look_at(lamp);\n    turn_lens(lens);\n\n        /*\n        The wick is trimmed by hand.\n"
        "        */\n    trim_wick(lamp);\n    write_log(book);\n  }\n"
    )
    assert kept(text) == [[line[2:] for line in text.splitlines()]]


def test_a_mark_in_running_text_opens_no_comment() -> None:
    assert (
        kept(
            "A star in the log is written\n/*\nwhere the keeper has seen the boat himself, and no other way.\n"
        )
        == []
    )


def test_the_cases_of_a_choice_are_parts_of_it() -> None:
    text = (
        "                    break;\n\n                case FLAG_OIL:\n                    send(stores, OIL);\n                    break;\n\n"
        "                case FLAG_FOG:\n                    (void) ring(bell, FOG);\n                    break;\n\n"
        "                default:\n                        /* nothing is answered here, etc */\n                    break;\n                }\n"
        "            }\n            return (DONE);\n        }\n"
    )
    assert kept(text) == [[line[8:] for line in text.splitlines()]]


def test_a_remark_that_began_beside_a_statement_stands_at_the_left() -> None:
    text = (
        "    light(lamp);\n    trim(wick);\n\n                                  /* Without this the wick\n"
        "                                   * would smoke in the night\n                                   */\n    look_at(lamp);\n"
    )
    assert not any(line.startswith(" " * 20) for lines in kept(text) for line in lines)


def test_a_comment_that_begins_beside_a_statement_goes_on_below_it() -> None:
    text = (
        "    fog = watch();        /* If nobody had called the keeper\n"
        "                           * we would wait for the horn\n"
        "                           * before it is heard            */\n"
        "    sound(fog);\n"
    )
    assert kept(text) == [[line[4:] for line in text.splitlines()]]


def test_stars_elsewhere_below_an_open_mark_are_items() -> None:
    text = "    store = oil;    /* what the log has:\n\n* oil for the lamp\n* rope for the boat\n"
    assert [block.label.chars for block in between(text)][-2:] == ["*", "*"]


HANGING = """\
/* Setting up the lamp that is lit from the shore.
   NORTH,...,WEST are merely the names of its sides.
   They can be others as long as no two are the same. */
LAMPSUB4(NORTH,north,EAST,SOUTH,WEST)
"""


def test_a_comment_that_hangs_below_its_mark_is_one_piece_with_what_it_explains() -> None:
    lead = "3. Each side of the lamp has to be set up but once in its life, e.g.\n"
    assert kept(lead + HANGING) == [HANGING.splitlines()]


def test_a_sentence_behind_the_mark_that_opens_a_comment_flows() -> None:
    text = "/* is what begins a remark in the log, and the words behind it\n   go on up to the end of the paragraph.\n"
    assert kept(text) == []


def test_a_comment_that_tells_a_story_over_no_program_flows() -> None:
    text = (
        "/* DOCUMENT light, on\n\n     without anything behind it, lights the lamp of the tower or puts it out;\n"
        "     with a number, lights the lamp of that number.  Generally, the keeper\n     should ring the bell before.\n   SEE ALSO: bell\n */\n"
    )
    assert not any("without anything" in line for lines in kept(text) for line in lines)
