"""What stands between two rules and is no title: a file under its name, what is cut out, changes, what is typed."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.
"""
SHORT = "-" * 24
LONG = "-" * 46


def between(text: str) -> list[Block]:
    """The blocks between two paragraphs, the first right above."""
    return list(read_text(f"{PROSE}{text}\n{PROSE}", "log", "ascii").blocks[1:-1])


FILES = [
    "--------- /rock/lamps -----------\n# Light it for the whole of the night\nlamp north south\n",
    "------ /rock/lamps or /rock/oil ------\n# The lamp of the landing\nlamp*\t\twick 3 arp 801\noil*\t\ttin 7 arp 1\n",
    "=========== lamp.tcl ===========\nset lamp north\n\n\nlight $lamp\n",
]


@pytest.mark.parametrize("text", FILES)
def test_a_file_stands_under_its_name_in_a_rule(text: str) -> None:
    sign = text[0]
    (block,) = between(f"{text}{sign * 46}\n")
    assert block.kind is Kind.PREFORMATTED
    assert block.code
    assert [line.chars for line in block.lines] == [*text.expandtabs().splitlines(), sign * 32]


def test_text_under_a_title_in_a_rule_is_no_file() -> None:
    blocks = between(f"\n--------- log/may -----------\n{PROSE}{LONG}\n")
    assert not any(block.code for block in blocks)


def test_a_file_whose_rule_never_comes_is_none() -> None:
    blocks = between("\n--------- /rock/lamps -----------\nThe lamps are told here.\n")
    assert not any(block.code for block in blocks)


CHANGES = """\
--- lamps-old     Wed Feb 18
+++ lamps  Fri Feb 20
@@ -12,4 +12,6 @@
     lamp north
     lamp south

+    # the lamp of the landing
+    lamp landing
     bell fog
"""


@pytest.mark.parametrize("above", ["", "Index: lamps\n", "diff -u lamps-old lamps\n"])
@pytest.mark.parametrize("margin", ["", "    "])
def test_changes_to_a_file_stay_lines(above: str, margin: str) -> None:
    lines = [margin + line for line in (above + CHANGES).splitlines()]
    (block,) = between("\n" + "\n".join(lines) + "\n")
    assert block.code
    assert [line.chars for line in block.lines] == [line[len(margin) :].rstrip() for line in lines]


STARRED = """\
*** lamps-old\tWed Feb 18
--- lamps\tFri Feb 20
***************
*** 3,7 ****
- The lamp of the landing is not lit;
  Let the keeper who wakes wind the clock,
! The lamp on the north side is lit at four.

    so that nobody has to ask him,
--- 3,6 ----
  Let the keeper who wakes wind the clock,
! The lamp on the north side is lit at five.

    so that nobody has to ask him,
***************
*** 12 ****
--- 11,12 ----
    before the bell rings.
+ He signs the page
"""


@pytest.mark.parametrize("names", [0, 2])
@pytest.mark.parametrize("margin", ["", "    "])
def test_changes_shown_one_after_the_other_stay_lines(names: int, margin: str) -> None:
    lines = [(margin + line).rstrip() for line in STARRED.splitlines()[names:]]
    (block,) = between("\n" + "\n".join(lines) + "\n")
    assert block.code
    assert [line.chars.split() for line in block.lines] == [line.split() for line in lines]


def test_changes_shown_one_after_the_other_that_lack_a_line_are_none() -> None:
    blocks = between("\n" + STARRED.replace("*** 3,7", "*** 3,8"))
    assert len(blocks) > 1


def test_changes_that_have_not_the_lines_they_say_are_none() -> None:
    blocks = between("\n" + CHANGES.replace("+12,6", "+12,9"))
    assert len(blocks) > 1


@pytest.mark.parametrize(
    "typed", ["> lamp -r north\n> lamp north\n", "> lamp -v\n", "> which lamp\n/rock/lamp\n"]
)
def test_what_is_typed_between_two_rules_is_no_title(typed: str) -> None:
    (block,) = between(f"{SHORT}\n{typed}{SHORT}\n")
    assert block.kind is Kind.PREFORMATTED
    assert [line.chars for line in block.lines] == [SHORT, *typed.splitlines(), SHORT]


def test_words_between_what_is_typed_twice_are_no_title() -> None:
    blocks = between(
        f"{SHORT}\n> lamp\n{SHORT}\nWhat they write when all of the lamps are lit :\n{SHORT}\n> lamp -a\n{SHORT}\n"
    )
    assert not any(block.kind is Kind.HEADING for block in blocks)


CUT_OUT = """\
if drawn (lamp "north",
          horn :blasts    ["fog"] [".* in the morning",
                                   ".* in the evening"]) {
  ring "bell";

# The other lamps
# light "landing";
}
"The lamp is out, ask the second keeper.
Good watch,
The keeper";
"""
SCISSORS = ["---%<---" + 60 * "-", "---8<---", "-- >8 --", "==8<==8<==" + 30 * "=", "--- \u2702 ---"]


@pytest.mark.parametrize("margin", ["", "    "])
@pytest.mark.parametrize("rule", SCISSORS)
def test_what_stands_between_scissors_is_one_piece(rule: str, margin: str) -> None:
    text = f"{rule}\n{CUT_OUT}{rule}\n"
    (block,) = between("\n" + "\n".join(margin + line for line in text.splitlines()) + "\n")
    assert block.code
    assert [line.chars.rstrip() for line in block.lines] == [rule[:32], *CUT_OUT.splitlines(), rule[:32]]


def test_scissors_are_turned_to_what_they_cut_out() -> None:
    (block,) = between(f"\n----8<----\n{CUT_OUT}---->8----\n")
    assert block.code


def test_a_word_between_two_pieces_that_are_cut_out_is_text() -> None:
    rule = SCISSORS[0]
    piece = f'{rule}\nlamp pipe -  n  n  -  pipe\n  flags=DR arg=/rock/lamp -f "$KEEPER"\n{rule}\n'
    blocks = between(f"\n{piece}\nor\n\n{piece}")
    assert [(block.kind, block.code) for block in blocks] == [
        (Kind.PREFORMATTED, True),
        (Kind.PARAGRAPH, False),
        (Kind.PREFORMATTED, True),
    ]


def test_what_is_cut_out_stands_in_its_item() -> None:
    rule = SCISSORS[0]
    inner = "\n".join("   " + line for line in f"{CUT_OUT}{rule}".splitlines())
    (block, below) = between(f"\n * {rule}\n{inner}\n\n   The bell stands for all of them.\n")
    assert [line.chars for line in block.lines[:2]] == [f"* {rule[:32]}", f"  {CUT_OUT.splitlines()[0]}"]
    assert (below.kind, below.level) == (Kind.PARAGRAPH, 1)


def test_text_between_scissors_is_text() -> None:
    blocks = between(f"\n---8<---\n{PROSE}---8<---\n")
    assert [(block.kind, block.code) for block in blocks[1:2]] == [(Kind.PARAGRAPH, False)]
