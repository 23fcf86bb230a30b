"""Line-end hyphens judged without a document to help."""

from __future__ import annotations

import pytest

from fit.document.text import read_text
from fit.document.text.hyphens import Hyphens, Joint
from fit.lexicon import frequency, is_word


@pytest.mark.parametrize(
    ("before", "after", "joint"),
    [
        ("no key on the key-", "board", Joint.DROP),
        ("a read-", "only file", Joint.CLOSE),
        ("option --no-", "header", Joint.CLOSE),
        ("the Anglo-", "Norse saga", Joint.CLOSE),
        ("PRO-", "GRAM", Joint.DROP),
        ("the lamp -", "and the bell", Joint.SPACE),
        ("the lamp \u00ad", "and", Joint.DROP),
        ("pre-", "and postwar boats", Joint.SPACE),
        ("a thou-", "sand and one", Joint.DROP),
        ("north-", "easterly", Joint.CLOSE),
        ("the organi-", "sation of the watch", Joint.DROP),
        ("light", "house", Joint.SPACE),
        ("the weed Lampys-", "telium grows", Joint.DROP),  # a word that no running text has, by chance
        ("the lamp of the skerryx-", "lantern", Joint.CLOSE),
    ],
)
def test_judgement(before: str, after: str, joint: Joint) -> None:
    assert Hyphens("").joint(before, after) is joint


@pytest.mark.parametrize(
    ("before", "after", "whole", "joint"),
    [
        ("send it to light@re-", "lief.skerry", "The relief is due.", Joint.DROP),
        ('kept in "/log/.for-', 'ward/$u"', "It is set forward.", Joint.DROP),
        ("the macro ${tide_sta-", "tion}", "The station is lit.", Joint.DROP),
        ("press <re-", "turn>", "", Joint.DROP),
        ("the file /log/fog-", "bell", "The fog-bell is rung.", Joint.CLOSE),
        ("the file /log/fog-", "bell", "", Joint.CLOSE),
        ("the command fill\u2010the\u2010", "lamp", "Type fill\u2010the\u2010lamp.", Joint.CLOSE),
        ("write to keeper@re-", "port.skerry", "", Joint.DROP),
        ("write to keeper@fog-", "bell.skerry", "", Joint.CLOSE),
        ("by mail to watch-", "room@skerry.example", "", Joint.CLOSE),
        ("by mail to fog-", "bell@skerry.example", "It is fogbell@skerry.example.", Joint.DROP),
        ("Unset-", "ting it", "They unset it.", Joint.DROP),
        ("option -no-", "header", "", Joint.CLOSE),
        ('("-lamp-', 'light") is', "", Joint.CLOSE),
        ("the `--tide-", "wire'", "", Joint.CLOSE),
        ("[--recur-", "sive]", "", Joint.DROP),
        ("the keys --ver-", "bose", "", Joint.DROP),
        ("--fog-", "bell", "Pull the fogbell.", Joint.DROP),
        ("--no-fog-", "bell", "It is --no-fog-bell.", Joint.CLOSE),
        ("give --no-", "radio to", "Ring with --from-radio --no-echo.", Joint.CLOSE),
        ("give --no-", "radio to", "Ring with --radio.", Joint.DROP),
        ("and -notrimm-", "er is not", "The switch is -trimmer.", Joint.DROP),
        ("and -notrimm-", "er is not", "It is a trimmer.", Joint.CLOSE),
        ("1.2_a_lamp,_in_the_-", "f_position", "", Joint.CLOSE),
        ("the name lamp_oil_-", "tank", "", Joint.DROP),
        ("by ``abcDEFGH-", "IJKL@''", "", Joint.DROP),
    ],
)
def test_judgement_inside_paths_and_signs(before: str, after: str, whole: str, joint: Joint) -> None:
    assert Hyphens(whole).joint(before, after) is joint


@pytest.mark.parametrize(
    ("before", "after", "whole", "joint"),
    [
        ("the state of the lamp_of_-", "night", "", Joint.DROP),
        ("the _lamp_-", "room", "", Joint.SPACE),
        ("call Light-", "Lamp() at dusk", "UnLightLamp() puts it out.", Joint.DROP),
        ("a Great-", "Skerry boat", "The boat is from Great Skerry.", Joint.CLOSE),
        ("the files (fog-", "dir=/c)", "Set oildir=/a first.", Joint.DROP),
        ("the files (fog-", "dir=/c)", "Set lamp-dir=/a or oildir=/a first.", Joint.CLOSE),
    ],
)
def test_names_broken_as_other_names_show(before: str, after: str, whole: str, joint: Joint) -> None:
    assert Hyphens(f"{before}\n{after}\n{whole}\n").joint(before, after) is joint


def test_the_word_list() -> None:
    assert frequency("keyboard") > 0
    assert frequency("readonly") == 0
    assert is_word("organised")
    assert not is_word("qzxv")


@pytest.mark.parametrize(
    ("before", "after", "whole", "joint"),
    [
        ("copy it to /skerry/", "log/tides.", "", Joint.CLOSE),
        ("copy it to ~/", "tides.txt", "", Joint.CLOSE),
        ("see <http://light.skerry/", "2/7>", "", Joint.CLOSE),
        ("the files of the /", "skerry/log", "/skerry/log is full.", Joint.CLOSE),
        ("a table of date", "/time marks", "Set date/time first.", Joint.CLOSE),
        ("the lamp/", "bell keeper", "The lamp/bell keeper rests.", Joint.CLOSE),
        ("links of the log/nn", "/ folder", "Look in log/nn/ first.", Joint.CLOSE),
        ("files in /skerry/log/", "replace others", "", Joint.SPACE),
        ("in /skerry/log/", "and/or /skerry/old", "", Joint.SPACE),
        ("see http://light.skerry/", "www.tide.skerry/a", "", Joint.SPACE),
        ("oil by the pint /", "gallon", "gallon", Joint.SPACE),
        ("the files are in", "/skerry/log", "", Joint.SPACE),
        ("the log (https://", "log.skerry/tides)", "", Joint.CLOSE),
        ("how to write http://", "before an address", "", Joint.SPACE),
        ("the log (https://light.skerry/", "tides) is kept", "", Joint.CLOSE),
        ("as (https://light.skerry/", "says (at length)", "", Joint.SPACE),
        ("(see https://light.skerry/", "today)", "", Joint.SPACE),
        ("see https://light.skerry/", "lamp_drill for it", "", Joint.CLOSE),
        ("see light.skerry/drill#", "Lighting", "", Joint.CLOSE),
        ("see URL:https://light.skerry/drill?day=", "monday", "", Joint.CLOSE),
        ("they set lamp=", "lit there", "", Joint.SPACE),
        ("<URL: gopher://light.skerry:70/00/drill/", "bell-fog>", "", Joint.CLOSE),
        ("<URL:gopher://light.skerry:70/00%3aLamp", "%20Drill>", "", Joint.CLOSE),
        ("1985 <http://light.skerry/keeping.", "the.lamp/drill.txt>.", "", Joint.CLOSE),
        ("1985 <http://light.skerry/lamp", "and the bell>", "", Joint.SPACE),
        ("1985 <http://light.skerry/lamp>", "bell>", "", Joint.SPACE),
        ("the lamp http://light.skerry/lamp", "<bell>", "", Joint.SPACE),
        ("it is in lamp-room/", "day-watch.", "", Joint.CLOSE),
        ("it is in lamps/", "day-watch.", "", Joint.SPACE),
        ("it is in /skerry/log/", "tidesx. Read", "The lamp and the horn.", Joint.CLOSE),
        ("it is in /skerry/log/", "tidesx. Read", "Look into the tidesx first.", Joint.SPACE),
        ("es wird /skerry/log/", "gelesen. Das", "Die Lampe und das Horn.", Joint.SPACE),
    ],
)
def test_paths_broken_at_a_slash(before: str, after: str, whole: str, joint: Joint) -> None:
    assert Hyphens(whole).joint(before, after) is joint


BETWEEN_WORDS = (
    "The keeper looks at the wind-\ndriven bell, at the time-\nbased drill and at the salt-\nstained log. "
)


def test_a_text_that_breaks_no_word_keeps_every_hyphen() -> None:
    text = f"{BETWEEN_WORDS}The lamp is of non-\nnative glass, lit again and re-\nbuilt.\n"
    flowed = " ".join(block.text.chars for block in read_text(text, "log", "ascii").blocks)
    assert "non-native glass" in flowed
    assert "re-built" in flowed


@pytest.mark.parametrize(
    ("left", "right"), [("any", "thing"), ("bear", "ing"), ("black", "smith"), ("touch", "ing")]
)
def test_one_common_word_in_two_parts_shows_that_words_are_broken(left: str, right: str) -> None:
    text = f"{BETWEEN_WORDS}The log is read-\nonly, and {left}-\n{right} in it stays. The keeper re-\nmembers it.\n"
    flowed = " ".join(block.text.chars for block in read_text(text, "log", "ascii").blocks)
    assert f"{left}{right} in it" in flowed
    assert "wind-driven" in flowed
    assert "read-only" in flowed
    assert "remembers" in flowed


@pytest.mark.parametrize(
    ("said", "whole"), [("pre- and post-\nprocessing", "pre-processing"), ("trimming", "preprocessing")]
)
def test_a_part_with_its_own_hyphen_keeps_it_before_a_whole_word(said: str, whole: str) -> None:
    text = f"The lan-\ntern wants {said} of the wick. The keeper ends the pre-\nprocessing by dusk.\n"
    flowed = read_text(text, "log", "ascii").blocks[0].text.chars
    assert f"ends the {whole} by dusk" in flowed


def test_a_text_that_breaks_words_loses_their_hyphens() -> None:
    text = f"{BETWEEN_WORDS}The lan-\ntern is lit and the tower was re-\nbuilt.\n"
    flowed = " ".join(block.text.chars for block in read_text(text, "log", "ascii").blocks)
    assert "lantern" in flowed
    assert "rebuilt" in flowed


def test_parts_that_happen_to_be_words_are_no_proof_of_whole_words() -> None:
    text = "The keepers under-\nstand the drill, prefer-\nably by night, and the wind-\ndriven bell.\n"
    flowed = read_text(text, "log", "ascii").blocks[0].text.chars
    assert "understand" in flowed
    assert "preferably" in flowed


def test_hyphens_of_their_own_code_break_words_too() -> None:
    text = "The keepers lit the lan\u2010\ntern by the time\u2010\nbased drill and the wind\u2010\ndriven bell.\n"
    assert "lantern" in read_text(text, "log", "utf-8").blocks[0].text.chars


def test_letters_that_stand_for_words_keep_their_hyphen() -> None:
    flowed = read_text(
        "The lan-\ntern and the fog-\nbell of the SLK-\nstation are lit.\n", "log", "ascii"
    ).blocks[0]
    assert "SLK-station" in flowed.text.chars


def test_hyphens_at_line_ends_that_the_document_has_inside_its_lines_break_no_word() -> None:
    torn = (
        "The house of the qorvu-\nbell has a lamp of non-\ncritical use; the qorvu-\nbell was cast long ago. "
    )
    seen = read_text(f"{torn}They ring the qorvu-bell.\n", "log", "ascii").blocks[0].text.chars
    assert "non-critical use" in seen
    unseen = read_text(f"{torn}They ring.\n", "log", "ascii").blocks[0].text.chars
    assert "noncritical use" in unseen


@pytest.mark.parametrize(("left", "right"), [("down", "wards"), ("back", "wards"), ("sun", "shine")])
def test_a_word_no_rarer_than_its_parts_is_joined_where_the_document_breaks_no_other(
    left: str, right: str
) -> None:
    text = f"{BETWEEN_WORDS}The stair leads {left}-\n{right} to the store.\n"
    flowed = " ".join(block.text.chars for block in read_text(text, "log", "ascii").blocks)
    assert f"{left}{right} to" in flowed
    assert "wind-driven" in flowed


def test_words_broken_inside_columns_show_that_the_document_breaks_words() -> None:
    left = [
        "the oil came with the",
        "salt, three barrels for",
        "wicks of every kind, a",
        "rope and a lan-",
        "tern",
    ]
    right = [
        "kept by the wind-",
        "driven bell of the fog-",
        "bell house and the time-",
        "based drill",
        "alone",
    ]
    beside = "".join(f"{one:28}{other}\n" for one, other in zip(left, right, strict=True))
    assert Hyphens(beside).letters("re", "built") is Joint.DROP
    assert Hyphens(beside.replace("lan-", "pot")).letters("re", "built") is Joint.CLOSE


@pytest.mark.parametrize(
    ("whole", "joint"),
    [
        ("Lamp-lighters are paid by the night.", Joint.CLOSE),
        ("Lamplighters are paid by the night.", Joint.DROP),
        ("Lamp-lighters are lamplighters.", Joint.DROP),
        ("The lamps are lit.", Joint.DROP),
    ],
)
def test_a_word_in_its_other_number_shows_its_hyphen(whole: str, joint: Joint) -> None:
    assert Hyphens(f"{whole} The clock-maker comes.").joint("the old clock-", "makers") is Joint.CLOSE
    assert Hyphens(whole).joint("a lazy lamp-", "lighter") is joint


@pytest.mark.parametrize("sign", ["\x1f", "\u00ad"])
def test_where_the_hyphens_of_breaks_have_a_sign_all_others_are_the_writer_s(sign: str) -> None:
    breaks = "".join(
        f"the {left}{sign}\n{right} of the rock\n" for left, right in (("cap", "stan"), ("lan", "tern"))
    )
    third = f"the ba{sign}\nrometer\n"
    assert Hyphens(breaks + third).joint("it has to be re-", "entered") is Joint.CLOSE
    assert Hyphens(breaks).joint("it has to be re-", "entered") is Joint.DROP
    assert Hyphens(breaks + third).joint("the pre-", "and postwar boats") is Joint.SPACE


DASHES = "The lamp- see below- is lit. Oil- what is left of it- is in the store."


@pytest.mark.parametrize(
    ("before", "after", "whole", "joint"),
    [
        ("take the other wick-", "You can use it again.", DASHES, Joint.SPACE),
        ("take the other wick-", "it burns for longer", DASHES, Joint.SPACE),
        ("take the other wick-", "it burns for longer", "", Joint.CLOSE),
        ("no key on the key-", "board", DASHES, Joint.DROP),
        (
            "take the other wick-",
            "it burns for longer",
            "It is -mostly- lit, -mostly- dim, -mostly- out.",
            Joint.CLOSE,
        ),
        ("ring the fog-", "bell", DASHES + " The fog-bell is rung.", Joint.CLOSE),
    ],
)
def test_a_dash_right_behind_a_word_is_none_of_its_hyphens(
    before: str, after: str, whole: str, joint: Joint
) -> None:
    """Typists who set a dash so do it inside their lines too: common practice, no source."""
    assert Hyphens(whole).joint(before, after) is joint


@pytest.mark.parametrize(
    ("before", "after", "joint"),
    [
        ("in the file called \u201c", "lamp.log\u201d", Joint.CLOSE),
        ("the landing (", "lower and upper) is wet", Joint.CLOSE),
        ("write to <", "keeper@skerry.example> for it", Joint.CLOSE),
        ("the sign of less, <", "and that of more, >", Joint.SPACE),
        ("neither | nor [", "stand in a name", Joint.SPACE),
        ("press f(", "and then)", Joint.SPACE),
    ],
)
def test_no_blank_stands_behind_what_opens_a_quotation_or_a_bracket(
    before: str, after: str, joint: Joint
) -> None:
    assert Hyphens("").joint(before, after) is joint


def test_a_sign_that_stands_only_at_line_ends_is_no_hyphen_of_a_name() -> None:
    whole = "the cap\u2010\nstan of the rock\nthe lan\u2010\ntern\nit is in ~/log/tw\u2010\nbell\n"
    assert Hyphens(whole).joint("it is in ~/log/tw\u2010", "bell") is Joint.DROP
    assert Hyphens(whole + "the fog\u2010bell").joint("it is in ~/log/tw\u2010", "bell") is Joint.CLOSE


PAGES = "See lamp(1), wick(1), oil(8), horn(3x) and bell(1)."


@pytest.mark.parametrize(
    ("before", "after", "whole", "joint"),
    [
        ("read tide", "(8) first", PAGES, Joint.CLOSE),
        ("as in tide", "(1)).", PAGES, Joint.CLOSE),
        ("read tide", "(8) first", "See lamp(1) and wick(1).", Joint.SPACE),
        ("read tide", "(8) first", f"{PAGES} The tide (1) and the wind (2) were read.", Joint.SPACE),
        ("the first or", "(2) the second", PAGES, Joint.SPACE),
        ("the harbour office", "(617) has it", PAGES, Joint.SPACE),
    ],
)
def test_the_section_of_a_page_stands_behind_its_name_as_elsewhere(
    before: str, after: str, whole: str, joint: Joint
) -> None:
    assert Hyphens(whole).joint(before, after) is joint
