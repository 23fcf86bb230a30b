"""Sentences that end early in the lines of a ragged paragraph, in documents that part paragraphs by blank lines or do not."""

from __future__ import annotations

import pytest
from test_document_torn_lines import shape

from fit.document.text.line import without_blanks
from fit.document.text.lines.reading import read_lines
from fit.document.text.signs.measure import Measure, hangs

_APART = [
    (
        "The keeper of the rock trims the lamp at dusk, winds the clock, and goes\n"
        f"down to the landing of the {place} to look for the boat and the oil.\n"
    )
    for place in ("north", "south", "west", "east", "gull", "seal", "upper", "lower", "old", "new")
]
_RAGGED = (
    "The log is written in the evening, when the lamp has been lit and the\n"
    "keeper has seen to the oil, the wick and the bell of the rock.\n"
    "In a fog he writes it at the bell, since the bell is rung from dusk to\n"
    "dawn and nobody else is on the rock to ring it.\n"
)
_FAR = (
    "The boat of the year is kept in\n"
    "the shed above the landing of the seals.\n"
    "When the sea is high it is hauled up to the lamp house, and two men of the\n"
    "village hold the rope.\n"
)
_LIST = (
    "The vane shows the wind at the top of the tower of the rock.\n"
    "The bell is rung in fog from dusk to dawn and in snow.\n"
    "The lamp is lit at dusk and put out at dawn.\n"
)
_NAMES = (
    "LAMP_OLD is the lamp that the keeper found in the tower.\n"
    "LAMP_NEW is the lamp that the boat of the year has brought, and of which the\n"
    "keeper knows nothing yet.\n"
)


@pytest.mark.parametrize("text", [_RAGGED, _FAR], ids=["a little", "no more than a line in mid-sentence"])
def test_a_sentence_ends_early_where_blank_lines_part_all_paragraphs(text: str) -> None:
    assert " ".join(text.split()) in shape("\n".join([*_APART, text]))


def test_the_end_of_a_sentence_is_that_of_a_paragraph_where_no_blank_line_shows_any() -> None:
    assert len(shape(_RAGGED * 6)) == 12


@pytest.mark.parametrize(("text", "count"), [(_LIST, 3), (_NAMES, 2)], ids=["sentences", "names"])
def test_entries_of_a_list_stay_apart(text: str, count: int) -> None:
    assert len(shape("\n".join([*_APART, text]))) == len(_APART) + count


_WIDTHS = (70, 52, 44, 66, 40, 58, 48, 36)
_SAID = (
    "the keeper of the rock trims the lamp at dusk and winds the clock and goes down to the landing to look for the "
    "boat and for the oil that it brings from the harbour and for the men of the village who hold the rope"
)
_COLON = (
    "Each bell of the harbour is rung by one man of the village, for no more than an\nhour of the night, as it is "
    "heavy.  However, that\nman is the *right* man of the village:\n"
    "only those who know the rock in snow as well as in fog\never ring it, so that nobody is sent to it who sleeps.\n"
)
_SHORT = (
    "Anselm sorts wicks\nin bundles by their length, and then within bundles by the day\nof their last use.\n"
)
_CAPITAL = (
    "Beyond these, in accordance with the old rule of the *harbour*,\nthe keepers allow access to the lamp\n"
    "ROOM so that the men of the boat can trim a wick themselves or\nbe shown the clock.\n"
)
_EARLY = (
    "For the boat, each rope is kept as a coil in the\nboat house.  The oars of it are stored\n"
    "as pairs of two on their beam.\nSeveral kinds of oars are allowed:\n"
    "long, short, and for the dinghy, which the keeper\nof the rock has painted.\n"
)
_COMMAND = "%%lamp wick 2\nlights the second wick of the lamp, and the first one goes out when\nthe keeper says so.\n"


def _loose(paragraphs: int = 16) -> str:
    """Paragraphs whose lines were broken anywhere by hand."""
    told = []
    for number in range(paragraphs):
        lines: list[str] = []
        line = f"At hour {number} of the watch"
        for word in _SAID.split():
            if len(line) + len(word) >= _WIDTHS[(number + len(lines)) % len(_WIDTHS)]:
                lines.append(line)
                line = word
            else:
                line += f" {word}"
        told.append("\n".join([*lines, f"{line}."]) + "\n")
    return "\n".join(told)


@pytest.mark.parametrize(
    "text", [_COLON, _SHORT, _CAPITAL, _EARLY], ids=["colon", "short", "capital", "early"]
)
def test_a_text_wrapped_loosely_all_through_goes_on_below_short_lines(text: str) -> None:
    found = shape(_loose() + "\n" + text)
    assert len(found) == 17
    assert found[-1] == " ".join(text.split())


def test_a_command_over_what_it_does_stays_apart_in_a_loosely_wrapped_text() -> None:
    assert len(shape(_loose() + "\n" + _COMMAND)) == 18


_CASES = (
    "If oil=1, then the lamp burns until the keeper of the rock comes up the\n"
    "stair and puts it out with the cap, as the log of the year has it.\n"
    "If oil=0, then the lamp is out before the boat of the village is seen\n"
    "from the gallery, and the keeper rings the bell until the boat is in.\n"
)
_LOUD = (
    "The lamp of the rock was lit for the first time by the keeper who built it,\n"
    "and nobody from the village of the seals had ever seen one.\n"
    "KEEP NO FIRE in the lamp room, whatever the weather is, and take no lamp\ndown to the oil.\n"
)


@pytest.mark.parametrize("text", [_CASES, _LOUD], ids=["cases by number", "in capitals"])
def test_what_begins_like_the_case_above_or_in_capitals_is_a_paragraph_of_its_own(text: str) -> None:
    assert len(shape("\n".join([*_APART, text]))) == len(_APART) + 2


_ENTRIES = (
    "the lamp of the tower is turned by the weight of the clock, so that it is seen from the landing of the seals and "
    "from the harbour\n"
    "new rule for the boats\n"
    "the bell is rung\n"
    "wicks and oils are counted by the boy, who writes them into the book of the store and has the keeper sign it at noon\n"
)


@pytest.mark.parametrize(("text", "loose"), [(_ENTRIES * 30, False), (_loose(), True)])
def test_lines_wider_than_any_page_were_not_wrapped_at_all(text: str, loose: bool) -> None:
    lines, _ = read_lines(text)
    assert (Measure(without_blanks(lines)).loose > 0) is loose


def test_an_item_that_stops_at_a_comma_goes_on_however_short_its_line_is() -> None:
    item = (
        "- (P)LAMP - is the same as (P)BELL,\nexcept that the length of the wick has to be given, which thus also\n"
        "allows one that was cut.\n"
    )
    kinds = shape(
        "".join(f"{part}\n" for part in _APART[:4])
        + item
        + "\n"
        + "".join(f"{part}\n" for part in _APART[4:])
    )
    assert [kind for kind in kinds if "(P)LAMP" in kind or "except" in kind] == [
        "[-] (P)LAMP - is the same as (P)BELL, except that the length of the wick has to be given, which thus also allows one that was cut."
    ]


LOUD = """\
THE KEEPERS ON THE ROCK ARE NOT LIABLE TO ANYBODY FOR OIL THAT IS
SPILT, FOR A WICK THAT IS CUT TOO SHORT FOR THE NIGHT
BEFORE IT IS LIT, OR FOR A BELL THAT NOBODY HEARS IN THE STORM.
"""


def test_a_sentence_all_in_capitals_goes_on_below_a_short_line() -> None:
    assert shape(LOUD) == [" ".join(LOUD.split())]


def test_a_first_line_set_in_that_stops_at_a_small_word_goes_on_however_short_it_is() -> None:
    text = (
        "   The lamp needs a clean wick.  If you do not have a\n"
        "North-3 wick for the night, you may be able to borrow one from the boat\n"
        "that comes each week with the oil and the letters for the keepers.\n"
    )
    assert shape(text) == [" ".join(text.split())]


def test_a_few_words_in_capitals_are_a_name_whatever_they_end_with() -> None:
    assert hangs("NOBODY TAKES OIL OUT OF THE STORE AND")
    assert not hangs("OIL FOR THE LAMP AND")
    assert not hangs("NOBODY ON THE ROCK OPENS THE OIL CAN")
