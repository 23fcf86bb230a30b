"""Keys that fill their column, texts that hang a cell deeper than they begin, and parameters below the head of a routine."""

from __future__ import annotations

import pytest
from test_document_torn_lines import PROSE, shape

from fit.document.blocks import Kind
from fit.document.text import read_text

FLAGS = (
    "The keeper may add to his order one of these:\n"
    "        OL_DAY          The order is one for the day\n"
    "        OL_NOT          The lamps that are named are those that\n"
    "                         are not to be lit in the night\n"
    '        OL_FOG          The order is for "thick" weather, without\n'
    "                         any word of when the horn has to be\n"
    "                          sounded\n"
    "        OL_TRIM_ALL_BUT The wicks of the lower lamps are left as\n"
    "                         they are.  This saves the second keeper\n"
    "                         an hour of work\n"
)


def test_texts_that_hang_a_cell_deeper_than_their_first_line() -> None:
    assert [one.partition("]")[0] for one in shape(FLAGS)[1:]] == [
        "[OL_DAY",
        "[OL_NOT",
        "[OL_FOG",
        "[OL_TRIM_ALL_BUT",
    ]
    assert shape(FLAGS)[-1].endswith("an hour of work")


def test_parameters_below_the_head_of_a_routine() -> None:
    text = (
        "void light_lamps (LAMP *oldlamp,long watches,char *flags);\n"
        "        oldlamp if not lit, the lamp to fill\n"
        "        watches watches until it is trimmed,\n"
        "         or nothing\n"
        "        flags   what the keeper has set\n"
        "     This routine lights a lamp and gives back what was left of the oil in\n"
        "it, or nothing where it was lit.\n"
    )
    assert shape(text)[1:4] == [
        "[oldlamp] if not lit, the lamp to fill",
        "[watches] watches until it is trimmed, or nothing",
        "[flags] what the keeper has set",
    ]


@pytest.mark.parametrize(
    "text",
    [
        "light_lamps (oldlamp, watches)\n    oldlamp is put out and filled again before the watch.\n    Then the other.\n",
        "trim (wick)\n    wick = 3;\n    lamp = 4;\n",
    ],
)
def test_what_is_no_list_of_parameters(text: str) -> None:
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    assert Kind.ITEM not in [block.kind for block in blocks]
