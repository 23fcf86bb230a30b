"""Terms that a blank line parts from their texts, one below the other."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what\n"
    "it shows into the log, whatever the weather may be, before he goes up.\n"
)
BELOW = "".join(f"  {line}\n" for line in PROSE.splitlines())


def read(*terms: str) -> tuple[Block, ...]:
    text = f"{PROSE}\n" + "\n".join(f"{term}\n\n{BELOW}" for term in terms) + f"\n{PROSE}"
    return read_text(text, "log", "ascii").blocks


def labels(*terms: str) -> list[str]:
    return [block.label.chars for block in read(*terms) if block.kind is Kind.ITEM]


def test_words_in_capitals_and_forms_with_brackets() -> None:
    terms = ("RING", "LIGHT <lamp>", "OIL <cans>", "SLEEP", "WAKE <keeper>")
    assert labels(*terms) == list(terms)
    assert {(block.level, block.text.chars) for block in read(*terms)[1:-1]} == {
        (0, PROSE.replace("\n", " ").strip())
    }


def test_what_else_stands_below_such_a_term() -> None:
    blocks = read("RING", "LIGHT <lamp>", f"OIL <cans>\n\n{BELOW}", "SLEEP")
    assert [(block.kind, block.level) for block in blocks[3:6]] == [
        (Kind.ITEM, 0),
        (Kind.PARAGRAPH, 1),
        (Kind.ITEM, 0),
    ]


def test_several_terms_over_one_text() -> None:
    terms = ("RING", "LIGHT <lamp>\nTRIM <wick>\nFILL <oil>", "OIL <cans>", "SLEEP", "WAKE <keeper>")
    assert labels(*terms) == ["RING", "LIGHT <lamp>", "TRIM <wick>", "FILL <oil>", *terms[2:]]


def test_names_with_a_sign_that_no_title_has_need_no_other_kind_among_them() -> None:
    terms = ("LAMP_LIT", "LAMP_OUT", "OIL_LOW", "FOG_SEEN")
    assert labels(*terms) == list(terms)
    assert labels(*terms[:3]) == []
    assert labels("LAMP", "OIL", "FOG", "STORES") == []


def test_words_in_small_letters_among_words_in_capitals() -> None:
    terms = ("FB", "fog bell", "gallery", "LOG", "--lamp=<oil>", "mantle")
    assert labels(*terms) == list(terms)


@pytest.mark.parametrize(
    "terms",
    [
        ("The Lamp", "The Fog Bell", "light(lamp)", "Stores", "Relief", "The Boat"),
        ("RING", "LIGHT", "OIL", "SLEEP", "WAKE"),
        ("RING", "LIGHT <lamp>", "SLEEP"),
        ("From: the keeper", "light(lamp)", "To: the harbour", "RING", "ring the bell:"),
    ],
)
def test_what_is_no_run_of_terms(terms: tuple[str, ...]) -> None:
    assert labels(*terms) == []


def test_program_text_left_of_the_text_that_leads_to_it_is_no_term() -> None:
    shown = ("[lamp]\noil = 12\npath = ~/lamp", "[bell]", "lamp = 1", "light(lamp)", "RING")
    for led in ("", "\n  In the file of the keeper it looks like this:\n"):
        parts = "".join(f"{led}\n{one}\n\n{BELOW}" for one in shown)
        items = [
            block for block in read_text(PROSE + parts, "log", "ascii").blocks if block.kind is Kind.ITEM
        ]
        assert not any("=" in item.label.chars or (led and item.text.chars) for item in items)


def test_options_need_nothing_else_among_them() -> None:
    terms = ("-noglass", "-oil <cans>", "--horn, -h (Sounds it)", "-q")
    assert labels(*terms) == list(terms)
    assert labels(*terms[:2]) == list(terms[:2])
    assert labels(terms[0]) == []
    assert labels("--- glass", "-5 cans") == []


def test_names_in_small_letters_are_no_titles() -> None:
    names = ("lamp", "oil_can", "fog-horn", "log")
    assert labels(*names) == list(names)
    assert labels(*names[:2]) == []
    assert labels("Lamp", "Oil", "Horn", "Log") == []


def test_lines_that_look_like_no_title_are_terms_where_their_texts_stand_at_one_column() -> None:
    names = ("wick (trimmed)", "north-lamp; lamp; l", "( . , . ) list hours")
    assert labels(*names) == list(names)
    assert (
        labels(
            "the keeper of the lamp writes this",
            "he lights it when the boat is seen",
            "it burns for the night",
        )
        == []
    )
    assert labels("-----", "---------", "-------") == []
    assert labels("$ lamp --light", "$ lamp --out", "$ horn --sound") == []


def test_an_option_with_its_text_behind_one_blank_is_no_term_of_the_example_below() -> None:
    terms = (
        "-p <lamp> allows the keeper to light another lamp",
        "-q <horn> allows the sounding of a horn of the rock",
    )
    assert labels(*terms) == []
