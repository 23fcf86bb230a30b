"""Terms stacked over one meaning, each on a line of its own, and lines that only look like them."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it\n"
    "shows into the log, whatever the weather may be, before he goes up.\n\n"
)


def terms(text: str) -> list[tuple[str, str]]:
    """Label and text of each item."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    return [(block.label.chars, block.text.chars) for block in blocks if block.kind is Kind.ITEM]


def test_two_spellings_of_an_option_over_their_meaning() -> None:
    text = (
        "OPTIONS\n"
        "  -l\n"
        "  --lamp\n"
        "        Light the lamp.\n\n"
        "  -f FILE\n"
        "  --file=FILE\n"
        "        Read the tides from FILE, which the harbour office sends with the boat\n"
        "        on the first of the month.\n"
    )
    assert terms(text) == [
        ("-l", ""),
        ("--lamp", "Light the lamp."),
        ("-f FILE", ""),
        (
            "--file=FILE",
            "Read the tides from FILE, which the harbour office sends with the boat on the first of the month.",
        ),
    ]


def test_an_option_over_its_long_form_with_the_meaning_beside_it() -> None:
    text = (
        "-h,\n"
        "--help      Print the help of the lamp program and leave, whatever else was asked\n"
        "            for.\n"
        "-q\n"
        "--quiet     Say nothing at all while the lamp is lit, and nothing while it is put\n"
        "            out.\n"
    )
    assert [term for term, _ in terms(text)] == ["-h,", "--help", "-q", "--quiet"]


def test_words_over_one_meaning_in_company() -> None:
    text = (
        "trim\nsnuff\n"
        "    To cut the wick of the lamp, so that it burns with a clear and steady flame\n"
        "    through the night.\n\n"
        "douse\nput out\n"
        "    To end the burning of the lamp at sunrise.\n"
    )
    assert terms(text) == [
        ("trim", ""),
        (
            "snuff",
            "To cut the wick of the lamp, so that it burns with a clear and steady flame through the night.",
        ),
        ("douse", ""),
        ("put out", "To end the burning of the lamp at sunrise."),
    ]


def test_lines_without_company_or_meaning_are_no_terms() -> None:
    alone = "Ansgar\nSkerry Light\n    To be called for at the landing when the boat comes in.\n"
    shown = "-l\n--lamp\n    fit --lamp\n"
    assert terms(alone) == []
    assert terms(shown) == []


def test_many_options_before_the_one_that_has_a_text() -> None:
    options = [f"--lamp{number}{part}" for number in (1, 2, 3) for part in ("Oil", "Wick")]
    text = "".join(f"{option}\n" for option in options)
    text += "--horn\n    Sound the horn of the rock in fog, and each time that a boat is heard.\n"
    said = "Sound the horn of the rock in fog, and each time that a boat is heard."
    assert terms(text) == [("--horn", said)]
    kept = [block for block in read_text(PROSE + text, "log", "ascii").blocks if block.lines]
    assert [line.chars for line in kept[0].lines] == options
    words = "".join(f"{word}\n" for word in ("oil", "wick", "flue", "pane", "gull", "tin"))
    assert ("oil", "") not in terms(words + "horn\n    Sound the horn of the rock in fog, and each time.\n")


def test_keys_over_one_another_share_the_text_beside_the_last() -> None:
    text = (
        "     up\n     Ctrl P        raise the wick by one turn\n\n"
        "     down\n     Ctrl N        lower the wick by one turn\n\n"
        "     Ctrl T        sound the horn once, and not again before the boat has\n                   answered.\n"
        "     F4            sound the bell once\n"
        "     Ctrl Z\n     Ctrl O Y      sound the horn until it is stopped, or until\n"
        "                   the boat has answered.\n\n"
        "     Find\n     F5\n     Ctrl O F      turn the lamp to the landing\n"
    )
    assert [term for term, _ in terms(text)] == [
        "up",
        "Ctrl P",
        "down",
        "Ctrl N",
        "Ctrl T",
        "F4",
        "Ctrl Z",
        "Ctrl O Y",
        "Find",
        "F5",
        "Ctrl O F",
    ]


def test_titles_over_keys_are_no_terms() -> None:
    lists = "".join(
        f"     {title}\n     {first} A        {word} the first of them in the evening\n"
        f"     {first} B        {word} the second of them at midnight\n\n"
        for title, first, word in (
            ("Lamps", "Alt", "light"),
            ("Horns", "Esc", "sound"),
            ("Bells", "Tab", "ring"),
        )
    )
    assert not {"Lamps", "Horns", "Bells"} & {term for term, _ in terms(lists)}
    fields = "".join(
        f"     Code: {code}\n     Meaning:     The {part} of the lamp is not there or it has been\n"
        "                  taken down.\n\n"
        for code, part in (("NOWICK", "wick"), ("NOGLAS", "glass"), ("NOBASE", "base"))
    )
    assert [term for term, _ in terms(fields)] == ["Meaning:"] * 3
