"""Names with their values as keys: `Left = 8`, two of them beside one text, and one that fills its column."""

from __future__ import annotations

from test_document_torn_lines import shape

SETTINGS = (
    "  Glass = Clear          Defines the glass of the lamp that is lit first.\n\n"
    "  Oil = ST:4 Pints       Defines the oil that is filled in at dusk.\n\n"
    "  Horn = 3               The blasts of the horn and of the gun, in parts of the\n"
    "  Gun = 8                full hour and of the half hour, as the log has them.\n\n"
    "  Watch time = 1         The time (in hours) how long a watch of a keeper may be\n"
    "                         in the winter. The usual one is four.\n\n"
    "  Trim wicks first = yes Defines whether the wicks that are burnt down are to be\n"
    "                         trimmed before the lamp is lit.\n\n"
    "  Bell = 2               The turns of the clock of the bell, which is wound up by\n"
    "                         the second keeper.\n"
)


def test_names_with_their_values_are_the_keys() -> None:
    assert [one.partition("]")[0] for one in shape(SETTINGS) if one.startswith("[")] == [
        "[Glass = Clear",
        "[Oil = ST:4 Pints",
        "[Horn = 3 Gun = 8",
        "[Watch time = 1",
        "[Trim wicks first = yes",
        "[Bell = 2",
    ]
    assert (
        "[Horn = 3 Gun = 8] The blasts of the horn and of the gun, in parts of the full hour"
        in shape(SETTINGS)[2]
    )


def test_a_line_of_several_words_and_a_value_closes_each_entry() -> None:
    entry = (
        "-{}        Light the lamp of that name before the others, and trim its wick\n"
        "          first.  The other keeper is told of it when he has slept.\n"
        "          Log book keyword: Lamp{}\n\n"
    )
    shown = shape("".join(entry.format(sign, sign.upper()) for sign in "abcd"))
    assert [one for one in shown if "keyword" in one] == [f"Log book keyword: Lamp{sign}" for sign in "ABCD"]


def test_such_words_in_mid_sentence_are_no_label() -> None:
    text = "When a lamp is out write in the book what it is, and behind it the\nLog book keyword: Lamp\n"
    assert shape("".join(f"{text}\n" for _ in range(4))) == [" ".join(text.split())] * 4
