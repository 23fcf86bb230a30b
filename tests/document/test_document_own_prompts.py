"""Sessions at a prompt of the document's own, and answers that an arrow leads to: one piece, and no items."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it shows\n"
    "into the log, whatever the weather may be, before he goes up to the lamp.\n\n"
)
OWN = (
    "==> oil := (1, 2, 3).\n-: (1, 2, 3)\n\n==> for k := 1 to 2 do\n        lamp := oil[k];\n    end.\n-: 3\n\n"
    "The second tin is what is left in the store:\n\n==> oil[2].\n-: 2\n\n"
)


def test_a_prompt_of_the_documents_own() -> None:
    blocks = read_text(PROSE + OWN + "==> lamp.\n\n" + PROSE, "log", "ascii").blocks
    kept = [[line.chars for line in block.lines] for block in blocks if block.kind is Kind.PREFORMATTED]
    assert kept == [
        ["==> oil := (1, 2, 3).", "-: (1, 2, 3)", "", *OWN.split("\n")[3:7]],
        ["==> oil[2].", "-: 2", "", "==> lamp."],
    ]
    assert Kind.ITEM not in {block.kind for block in blocks}


def test_an_arrow_before_what_is_said_is_no_prompt() -> None:
    items = "".join(f"==> The {name} is looked after by the keeper.\n\n" for name in ("lamp", "bell", "boat"))
    blocks = read_text(PROSE + items + PROSE, "log", "ascii").blocks
    assert {block.kind for block in blocks[1:-1]} == {Kind.ITEM}


def test_lines_that_signs_set_off_are_no_session() -> None:
    titles = "".join(f"--- Stores of 19{year} ---\n- {year} tins\n\n" for year in (11, 12, 13, 14))
    assert not any(block.code for block in read_text(PROSE + titles + PROSE, "log", "ascii").blocks)


def test_answers_that_an_arrow_leads_to() -> None:
    pairs = (("(sum one two)", "3"), ("(all of the oil)", '"tank"'), ("(not dark)", '""'))
    shown = "".join(f"show {typed}\n  ==> {answer}\n\n" for typed, answer in pairs)
    blocks = read_text(PROSE + "The words of it are few:\n" + shown + PROSE, "log", "ascii").blocks
    kept = [[line.chars for line in block.lines] for block in blocks if block.kind is Kind.PREFORMATTED]
    assert kept == [shown.strip().split("\n")]


def test_what_is_to_be_done_behind_an_arrow_is_no_answer() -> None:
    cases = (
        ("The lamp is out", "Light the lamp."),
        ("No oil in tank 3", "Fill it."),
        ("Fog", "Ring the bell."),
    )
    listed = "".join(f"{case}\n  ==> {deed}\n" for case, deed in cases)
    blocks = read_text(PROSE + listed + "\n" + PROSE, "log", "ascii").blocks
    assert not any(block.code for block in blocks)


def test_the_first_line_of_a_script_is_no_prompt() -> None:
    scripts = "".join(
        f"     #! /bin/sh\n     # the {name} of the night\n     # read from a file\n     watch -n 3 < {name} | log\n\n{PROSE}"
        for name in ("lamp", "bell", "boat")
    )
    blocks = read_text(PROSE + scripts, "log", "ascii").blocks
    assert [len(block.lines) for block in blocks if block.kind is Kind.PREFORMATTED] == [4, 4, 4]


def test_a_prompt_with_the_number_of_a_version_and_remarks_on_what_is_typed() -> None:
    shown = (
        "# Ask what is left of the oil in all of the tins, and write it down at once\nlamp2.1-b> ask [oil left]\n36\n\n"
        "# Or:\n\nlamp2.1-b> ask [oil]\n36\n\nlamp2.1-b> ask [lamp]\nlit\n\n"
    )
    blocks = read_text(PROSE + shown + PROSE, "log", "ascii").blocks
    kept = [[line.chars for line in block.lines] for block in blocks if block.kind is Kind.PREFORMATTED]
    assert kept == [shown.strip().split("\n")]


def test_a_title_behind_a_sign_over_a_session_is_no_remark_on_it() -> None:
    shown = "".join(f"# Oil {number}\n\nlamp2.1-b> ask [oil {number}]\n36\n\n" for number in (1, 2, 3))
    blocks = read_text(PROSE + shown + PROSE, "log", "ascii").blocks
    kept = [[line.chars for line in block.lines] for block in blocks if block.code]
    assert ["lamp2.1-b> ask [oil 2]", "36"] in kept


def test_a_prompt_that_is_no_mark_of_anything_else_needs_no_answer() -> None:
    rows = "N: LAMP_NORTH  : oil 0, wick 9\nB: LAMP_BELL   : no lamp at all\nD: LAMP_STAIRS: no lamp on the stairs at all"
    shown = f"#> lamp -n 3\n\n{PROSE}Lit at dusk:\n#> lamp -R -n 5 -e bell tide.log\n\n{PROSE}#> lamp -r\n{rows}\n\n"
    blocks = read_text(PROSE + shown + PROSE, "log", "ascii").blocks
    kept = [[line.chars for line in block.lines] for block in blocks if block.code]
    assert kept == [
        ["#> lamp -n 3"],
        ["#> lamp -R -n 5 -e bell tide.log"],
        ["#> lamp -r", *rows.split("\n")],
    ]
    assert {block.kind for block in blocks} == {Kind.PARAGRAPH, Kind.PREFORMATTED}


def test_what_is_said_below_a_prompt_is_no_answer() -> None:
    shown = "".join(
        f"#> lamp -n {number}\nThe lamp is lit with this for the night.\n\n" for number in (1, 2, 3)
    )
    blocks = read_text(PROSE + shown + PROSE, "log", "ascii").blocks
    assert [len(block.lines) for block in blocks if block.code] == [1, 1, 1]


def test_remarks_and_what_is_typed_behind_the_name_of_a_machine() -> None:
    shown = (
        "TOWER> # The lamp of the tower, with both of its wicks.\nTOWER> # N.B. - The keeper has to fill the tank by hand,\n"
        "TOWER> #        before the first of these is typed.\nTOWER> #      - It goes out in a gale, and then it\n"
        "TOWER> #        has to be lit from the start.\nTOWER> lamp -wicks 2 -o north.log\n\n"
        "LANDING> # The bell of the landing.\nLANDING> ring bell.log -n 3\nLANDING> ring horn.log -n 1\n\n"
    )
    blocks = read_text(PROSE + shown + PROSE, "log", "ascii").blocks
    assert [block.kind for block in blocks[1:-1]] == [Kind.PREFORMATTED]
    assert [line.chars for line in blocks[1].lines] == shown.strip().split("\n")


def test_what_somebody_said_behind_a_name_is_no_session() -> None:
    said = (
        "Tom> # 3 is the tin that was opened on the last night of the month, I\n"
        "Tom> should say, and there were two left in the store when I went to bed.\n"
        "Tom> The rest of them came with the boat.\n\n"
    )
    assert not any(block.code for block in read_text(PROSE + said + PROSE, "log", "ascii").blocks)
