"""Single lines between blank lines that the sentence around them shows."""

from __future__ import annotations

import pytest
from test_document_kept import shape

ABOVE = "The keeper on watch trims the lamp at dusk, and to have the bell rung he types"
BELOW = "and the bell is rung at once by the clockwork, which has to be wound by day."


@pytest.mark.parametrize(
    "line", ["ring bell", "    bell >& log", "    $*", "    ring b[1-5]", "/RING -loud #bell", "    -e bell"]
)
def test_a_line_that_a_sentence_runs_around_stays_a_line(line: str) -> None:
    indent = line if line.startswith((" ", "/")) else f"    {line}"
    assert shape(f"{ABOVE}\n\n{indent}\n\n{BELOW}\n")[1] == f"code: {line.strip()}"


@pytest.mark.parametrize("below", ["", f"\n{BELOW.capitalize()}\n"])
def test_a_colon_leads_to_a_line(below: str) -> None:
    text = f"{ABOVE.removesuffix(' he types')} there is this:\n\n    bell -r | log\n{below}"
    assert shape(text)[1] == "code: bell -r | log"


@pytest.mark.parametrize(
    "line",
    [
        "    The lamp is lit.",
        "    the light of the north",
        "    The North Light",
        "    Figure 3",
        "    Maren R. Holm*",
        "    *** LIGHTS OF THE NORTH ***",
        "[1]1. Lighting the lamp",
        "    https://skerry.example/log",
        "    ~~~~~~~~~~~~",
    ],
)
def test_words_captions_addresses_and_rules_are_not_shown_as_code(line: str) -> None:
    assert not shape(f"{ABOVE}\n\n{line}\n\n{BELOW}\n")[1].startswith("code")


@pytest.mark.parametrize(
    "line", ["N:north.skerry::bell:9:", "lamp*.log", "boats;flags;visitors", "--lamp=<NAME>"]
)
def test_one_word_with_signs_inside_is_shown_whatever_is_said_around_it(line: str) -> None:
    assert f"code: {line}" in shape(f"{ABOVE} it.\n\n    {line}\n\n{BELOW.capitalize()}\n")


@pytest.mark.parametrize("line", ["Lamps:", "http://skerry.example/?lamp=2", "keeper@skerry.example:25"])
def test_a_word_and_an_address_are_no_program_text(line: str) -> None:
    assert f"code: {line}" not in shape(f"{ABOVE} it.\n\n    {line}\n\n{BELOW.capitalize()}\n")


@pytest.mark.parametrize("typed", ["    lamp --trim --all", "       trim /skerry/lamp/wick"])
def test_a_command_below_an_item_in_mid_sentence_is_not_run_into_it(typed: str) -> None:
    text = (
        " * The keeper who has the watch should see to it that they run\n"
        f"{typed}\n   after the storm; this puts the lamp right again.\n"
        " * The others sleep, and nobody wakes them before the dawn comes up.\n"
    )
    lines = shape(text)
    assert lines[0].endswith("that they run")
    assert lines[1] == f"code: {typed.strip()}"


@pytest.mark.parametrize("deeper", ["up the stair [Maren Holm]", "and --dim", "the /LAMP watch [Holm]"])
def test_words_below_an_item_that_go_on_deeper_are_run_into_it(deeper: str) -> None:
    text = (
        " * The keeper who has the watch should see to it that they run\n"
        f"    {deeper}\n"
        " * The others sleep, and nobody wakes them before the dawn comes up.\n"
    )
    assert shape(text)[0].endswith(f"they run {deeper}")


def test_what_is_said_between_quotation_marks_makes_no_sentence_of_a_command() -> None:
    typed = ["lamp add northern.log Lamps.am ChangeLog version tide.dat stores"]
    typed.append('lamp -z3 send -m "The first set-up of the log."')
    shown = "".join(f"    {line}\n" for line in typed)
    assert (
        shape(f"{BELOW.capitalize()}\n\n{shown}\n{BELOW.capitalize()}\n")[1] == f"code: {' / '.join(typed)}"
    )


@pytest.mark.parametrize("typed", [["lamp -trim", "ring bell"], ["make clean", "lamp Wick.PL", "make"]])
def test_commands_below_a_step_are_not_run_into_it(typed: list[str]) -> None:
    text = (
        "    3.) go up to the lamp room and do\n"
        + "".join(f"            {line}\n" for line in typed)
        + "\n        (to have the wick trimmed for the night)\n\n    4.) go back down to the stores and look whether\n        there is oil\n"
    )
    lines = shape(text)
    assert lines[0].endswith("lamp room and do")
    assert lines[1].partition(": ")[2] == " / ".join(typed)
    assert lines[2] == "paragraph: (to have the wick trimmed for the night)"


@pytest.mark.parametrize(
    "deeper", ["light the lamp of the\n            north", "put oil\n            in the lamp"]
)
def test_words_deeper_below_a_step_are_run_into_it(deeper: str) -> None:
    text = f"    3.) go up to the lamp room and\n            {deeper}\n    4.) go back to the store, for the night\n"
    assert shape(text)[0].endswith("lamp room and " + " ".join(deeper.split()))


@pytest.mark.parametrize("typed", ["lamp -lv", 'lamp "two bells."'])
def test_a_command_right_below_the_sentence_that_leads_to_it_is_shown(typed: str) -> None:
    text = (
        "The keeper has the lamp trimmed before dusk by means of the line\n     lamp -t north\n"
        f"   And he sees to it that the bell is wound by\n     {typed}\n"
        "   The clockwork of the bell runs down in eight hours from then on\nand must be wound again.\n"
    )
    assert f"code: {typed}" in shape(text)


def test_options_in_the_rest_of_an_entry_are_no_command() -> None:
    text = "Light the lamp for the night with all four of its wicks and turn it by\n   lamp -t, as the keeper of the north does.\n"
    assert not any(line.startswith("code") for line in shape(text))
