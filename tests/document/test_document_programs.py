"""Program text between blank lines, at any margin: one piece, and what only looks like it stays what it is."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

BEFORE = (
    "The lamp is turned by a motor, and a small program in the lamp room counts the turns\n"
    "of it. A keeper who wants to change the flashes changes the program as shown here:\n\n"
)
AFTER = (
    "\nAfter that the lamp has to be watched for an hour, and the hour of the change is\n"
    "written into the log, so that the next keeper knows what was done and by whom.\n"
)


def between(text: str) -> list[Block]:
    """The blocks between two paragraphs."""
    return list(read_text(BEFORE + text + AFTER, "log", "ascii").blocks[1:-1])


PROGRAMS = [
    # labels at the margin, instructions set in, remarks beside them
    "turns   lda counter     ; turns since dusk\n        cmp #12\n        bne turns\n        rts\n",
    # labels that are signs, and a place that is set
    "*       = $1000\n        ldy #4\n-       ldx #0\n-       inx\n        bcc +\n        bne -\n+       dey\n        bne --\n",
    # a blank line, and one instruction beside a label
    "flash   .macro\n        lda #\\1         ;length of the flash\n        .endmacro\n\nlong    .word 0\n\n        #flash 23       ;a long one\n",
    # a listing: place, bytes, instruction, source
    (
        '.0000    a9 61          lda #$61        lda #lamp\n\n>0002    31 61 41                       .text "1aA"\n'
        '>0005    7b 63 6c 65 61 72 7d 74        .text "the lamp is lit"\n>000e    65 78 74 7b\n'
    ),
    "3       .1000   a2 00           ldx #$00                ldx #0\n4       .1002   ca              dex             dim     dex\n",
    # remarks at the margin, one that reads as a sentence
    (
        ";Lengths of the flashes, from the first to the last of the night.\n        .byte 128 + 127 * sin(range(256))\n"
        ";Rows of the panel\n_       := $400 + range(0, 1000, 40)\nrowlo   .byte <_\nrowhi   .byte >_\n"
    ),
    # a remark over several lines, with stars that are no bullets
    (
        "int main()\n{       light(lamp);                    /* If the oil is low\n"
        "                                         * the keeper has to fill the tank\n"
        "                                         * before it goes out */\n        sign(book);\n}\n"
    ),
    # a first line that reads as text, and remarks among the rest
    (
        "with open(path, 'log') as book:\n    oil = lamp.Tank()\n    # Reads size(3) when it takes data from the\n"
        "    # tank.\n    with oil.reader(book, size=3) as reader:\n        ...\n"
    ),
    # braces below what they belong to, and a label that is left of what it marks
    'if (dark)\n  {\n    light (_\n           ("The lamp that stands in the lamp room."));\n  }\n',
    # statements with gaps inside
    "To Cc: lamp-room      { SAVE lamp };\nTo Cc: stores         { SAVE oil };\n",
    # forms in brackets: a string that is a sentence, a form between blank lines
    (
        '(define (light-lamp)\n  "Light the lamp and sign for it in the book."\n  (if (and (dark) (oil-in-tank))\n'
        "      (light lamp)\n      (ring bell)))\n\n(add-watch light-lamp)\n"
    ),
    # what a routine takes, in capitals, its first line over two
    (
        "      SUBROUTINE LIGHT (LAMP, OIL,\n     1                  WICK)\n      INTEGER LAMP, OIL\n      REAL    WICK(3)\n"
    ),
    "SUBROUTINE RING (N)\nINTEGER N\n",
    "INTEGER FUNCTION TIDE(DAY)\nCHARACTER*(*) DAY\n",
    # parts of a file of settings, with remarks
    "[LAMP_1]\nshell=c:\\skerry\\lamp.exe @c:\\skerry\\lamp.par\nrem  The second lamp is lit by hand.\nrem  So is the third one\n",
    # an answer in brackets that begins with a number
    "> (list 4 5 6)\n(4 5 6)\n> (push 5 lamps)\n(5 4)\n> (head lamps)\n5\n",
    # between two lines that say what it is
    "#+begin_src sql\n--\n-- The LAMPS table holds the lamps of the rock.\n--\nCREATE TABLE lamps (\n  name text, -- As the keepers call it\n);\n\nCREATE INDEX lamp_names on lamps (name);\n#+end_src\n",
    # numbered lines with several blanks, and what came of them
    (
        '10  REM  *** flashes of the lamp ***\n20  INPUT "How many";N\n30  FOR I=1 TO N\n40    SOUND 1,-15,P(I),5\n'
        "50  NEXT I\nRUN\nHow many? 6\nReady\n"
    ),
    # names with values, lined up before their signs
    "title   = The Skerry Light\nkeeper  = nobody\nlamps   = 9\n[sounds]\nhorn    = 220\nbell    = 440\n",
    # what is to be cut out, between two lines that say so
    (
        "------------------ Cut here ------------------\n\n#! /bin/sh\n# the lamp of the rock\nLAMP=north\n\n"
        "light $LAMP\n\nhorn north 4 lamp\n\n------------------ Cut here ------------------\n"
    ),
    # messages of a program, each behind its name
    (
        "say.lamp:ALL->ALL %i (%S) was lit %?%d>0%{%k%!AT DUSK%} for %u\nsay.fog:%N->%Z We are in fog and hear %i who is %d%% away.\n"
        "say.horn:%N->%Z %N blown by %i (%T%c)\nsay.bell:%N->%O %N rung by %i (%T%c)\n"
    ),
    # settings with comments over them, the first right below nothing
    "# by day: w = watch, t = tide\ndaykeys:    w2t#e%\n# put others in their place, by the weather\ndaykeys-fog:    w4\ndaykeys-ice:    w3\n",
    # a type whose parts blank lines keep apart
    "typedef struct\n\n{\n\n    tide_t high;\n\n    tide_t low;\n\n} tide_day;\n",
    # a value in brackets over two lines, a string that is a sentence in it
    "keepers = ('maren', 'tom', 'isak',\n    \"the one that has the keeper's key\")\n",
    # names taken from elsewhere, calls of parts of a name, two names in one loop, with blank lines between
    (
        'import tide\nfrom lamp import oil, wick, glass\n\nrock.add("Lamp", oil.Tin, full=(1,))\nrock.add("Bell", list, of=rock.Lamp)\n\n'
        "def burn(night):\n    return sum(night),\n\nwatch = rock.Watch(hours=3)\n\n"
        "for lamp, bell in zip(lamps, bells):\n    lamp.oil = bell\nlog = watch.read(of=3)\n"
    ),
    # between braces, as wikis have it, with what reads as text and a rule in it
    (
        "{{{\n# Oil\n\nlamp.count(1)\n    light(lamp)\n-------------------\nAll lamps were lit in the first hour of the night\n\nLit\n}}}\n"
    ),
    # between angles, as printed pages have it, with a remark that reads as text
    (
        "<<\n  type lamp = {\n    wicks : int;\n      (*\n         The lamp of the rock has four of them,\n         and the one at the landing has two.\n"
        "      *)\n\n    oil : int;\n      (* No more than a cask. *)\n  }\n>>\n"
    ),
    # rows with remarks that begin as sentences do
    (
        "Log:    ftp://skerry.example/log/\nFile:   lamp-1.18.log       # What was lit, from the year of the log\n"
        "File:   bell-1.18.log       # What was rung, in the form of the log\nFile:   tide-1.18.log       # Water\nFile:   horn-1.18.log       # The whole log.\n"
    ),
    # sections of settings, values that read as text or as what a key means among them, and one that goes on deeper
    (
        "[north]\n    comment = The lamp that is lit at dusk (all night long)\n    path = /var/lamp\n    keeper name = maren\n"
        "    lit = yes\n    log command = lp -l %p\n; for the fog\n[bell]\n    comment = The bell that hangs at the landing\n    rung = yes\n\n"
        "[stores]\noil = 14 tins\n    3 of them open\nwicks = yes\n"
    ),
]


@pytest.mark.parametrize("margin", ["", "    "])
@pytest.mark.parametrize("text", PROGRAMS)
def test_a_program_is_one_piece(text: str, margin: str) -> None:
    lines = [margin + line if line else "" for line in text.split("\n")[:-1]]
    blocks = between("\n".join(lines) + "\n")
    assert [block.kind for block in blocks] == [Kind.PREFORMATTED]
    assert blocks[0].code
    assert [line.chars.strip() for line in blocks[0].lines] == [line.strip() for line in lines]


TEXTS = [
    # a list of names behind points
    "-   .lamp\n-   .oil\n-   .wick\n",
    # instructions with what they mean beside them
    "LDA     Load the lamp\nSTA     Stow the lamp\nDEX     Dim the lamp by one\n",
    # words quoted from a letter
    "> I lit the lamp at dusk and it went out, so I\n> lit it once more and went to bed.\n",
    # words in brackets, with brackets inside
    "(see the lamp drill (page 3), the tide tables (page 4), and the\nlog of the year (page 5))\n",
    # where more is told
    "see Lamp.LOG for more\n",
    # what hangs below a term that is named by a directive
    ".lamp <number>\n.oil <number>\n    Counts the lamps or the tins of oil that are in the store.\n",
    # words in capitals that are names of types too
    "REAL TIME\n\nCHARACTER CLASSES\n",
    # a name that a sentence explains in brackets
    "light = (that is the lamp of the landing, which burns all night, as the\n   harbour asked for it last year) or what stands for it.\n",
    # where a sentence says where something is from
    "from here on, and for all of the night, the lamp is lit\nfor keepers, boats in the fog:\n",
    # a word in quotation marks, and small words around it
    'for .lamp and .bell only 7 bit "signs" are of use in the log\nof the lamp and on "boats" at all.\n',
    # keys with what they mean behind a sign
    "lamp      # light the lamp of the tower\nbell      # ring the bell\nhorn      # sound the horn\n",
    # names in brackets over what is said of them
    "[north]\n    the lamp = the one that is lit at dusk, whatever the weather, and\n    at noon in the fog.\n\n[bell]\n    This one hangs at the landing and is rung by hand, in the fog.\n",
    # a sentence that goes on with a name behind a point
    ".w respectively; they can be written as .l, .o and .w as well, where\nthe keeper has no room for more.\n",
]


@pytest.mark.parametrize("text", TEXTS)
def test_what_only_looks_like_a_program(text: str) -> None:
    assert not any(block.code and len(block.lines) > 1 for block in between(text))


def test_a_word_over_a_program_is_no_part_of_it() -> None:
    blocks = between("Example:\n        LDA #12\n        STA lamp\n")
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED]


def test_a_program_beside_a_key() -> None:
    text = (
        "Purpose:        Turn the lamp.\nExamples:       ldx #.end - .start\n        -               lda .start - 1, x\n"
        "                sta .lamp - 1, x\n                bne -\n        .end\n\nAliases:        none\n"
    )
    blocks = between(text)
    assert "Examples:" in [block.label.chars for block in blocks if block.kind is Kind.ITEM]
    (code,) = (block for block in blocks if block.code)
    assert [line.chars for line in code.lines] == [
        "        ldx #.end - .start",
        "-               lda .start - 1, x",
        "        sta .lamp - 1, x",
        "        bne -",
        ".end",
    ]


def test_a_sentence_beside_a_key_is_none() -> None:
    blocks = between(
        "Note:   the lamp is lit;\n        the keeper signs for it;\n        the bell is rung;\n"
    )
    assert not any(block.code for block in blocks)


def test_a_rule_that_is_a_remark_parts_the_text_and_has_a_title_below_it() -> None:
    rule = "(*" + "-" * 60 + "*)"
    part = "The {0} is looked after by the keeper on watch, who writes into\nthe log what he finds.\n\n"
    text = "".join(f"{rule}\n{name}\n\n{part.format(name)}" for name in ("lamp", "bell", "boat"))
    blocks = read_text(
        BEFORE + text + f"{rule}\n{part.format('store')}{rule}\n\n{AFTER}", "log", "ascii"
    ).blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == ["lamp", "bell", "boat"]
    rules = [line.chars for block in blocks if block.kind is Kind.PREFORMATTED for line in block.lines]
    assert rules == ["(*" + "-" * 28 + "*)"] * 2
    assert not any(block.kind is Kind.PICTURE for block in blocks)


LED = "Type the following on the small computer in the lamp room, which turns the lamp:\n\n"
SHOWN = [
    # remarks behind statements, one that is a sentence
    '    LOAD "LAMP"\n    RUN\n    OUT 97,1 : REM starts it. Not for long, as the motor gets hot\n    OUT 97,0 : REM stops it\n',
    # labels in small letters, and lines to be printed that are sentences
    (
        "    echo off\n    lamp -x log.dat > copy.txt\n    if errorlevel 1 goto bad\n    goto end\n    :bad\n"
        "    echo the log was not copied; look into the cellar and tell the keeper\n    echo nothing was changed\n    :end\n"
    ),
    # words for a program, down to the one that closes them
    (
        '    watch 10\n     title  "The second night"\n     lamps  6\n    body\n'
        "     turns  x.16.x.16.x.12   ; as they are written in the log of the year\n"
        '     say    5 "Now you are at the lamp. Look for the key."\n    end\n'
    ),
]


@pytest.mark.parametrize("text", SHOWN)
def test_a_program_below_what_leads_to_it_is_one_piece(text: str) -> None:
    blocks = read_text(BEFORE + LED + text + AFTER, "log", "ascii").blocks[2:-1]
    assert [(block.kind, block.code, len(block.lines)) for block in blocks] == [
        (Kind.PREFORMATTED, True, text.count("\n"))
    ]


def test_words_that_a_list_explains_are_no_program_without_its_end() -> None:
    listed = "    watch 10\n     title  the name of the night\n     lamps  how many are lit\n     body   what is done\n"
    assert not any(block.code for block in read_text(BEFORE + LED + listed + AFTER, "log", "ascii").blocks)
    numbers = "1  LAMP  is filled;\n2  HORN  is wound up;\n3  BELL  is rung;\n"
    assert not any(block.code for block in between(numbers))


def test_the_head_of_a_routine_goes_on_with_its_parameters() -> None:
    head = (
        "Answer LightLamp(Lamp *lamp, Oil *oil, const Wick *wick, Hour hour, Tin *tin,\n"
        "    Keeper *keeper, Page *page, Line *line, Glass *glass, int again, Flag *flag,\n"
        "    Bell *bell, Landing *landing);\n"
    )
    (block,) = between(head)
    assert block.code
    assert [line.chars for line in block.lines] == head.splitlines()


def test_words_in_brackets_after_a_name_are_no_head_of_a_routine() -> None:
    text = "The light (the lamp and its glass, the oil,\n    the wick and the tin, the log,\n    the bell);\n"
    assert not any(block.code for block in between(text))


def test_what_a_program_says_is_a_part_of_it() -> None:
    text = (
        'print "The lamp of the rock is lit at dusk and put out at dawn, whatever the"\n'
        'print "weather may be, and the keeper writes the hour into the log."\n'
        'print ""\nreset lamp\n'
    )
    (block,) = between(text)
    assert [line.chars for line in block.lines] == text.splitlines()


def test_words_that_are_only_quoted_are_said_by_no_program() -> None:
    text = 'On the first page of the log the keepers of the rock have to\nprint "the lamp is lit" by hand.\n'
    blocks = read_text(f"{AFTER}\n{text}{AFTER}", "log", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH] * 3


def test_commands_that_hand_on_what_they_say_are_no_table() -> None:
    text = (
        '    echo fog | horn "/\\(a\\)*/d"      # nothing is heard\n    echo fog | horn "/\\(a\\)+/d"      # nothing is heard\n'
        '    echo fog | horn "s/\\(a\\)*/\\1B/"  # the horn is heard\n'
    )
    (block,) = between(text)
    assert block.code
    assert [line.chars for line in block.lines] == [line[4:] for line in text.splitlines()]


def test_a_bar_between_a_quantity_and_what_it_stands_for_parts_two_columns() -> None:
    text = "    L = oil / q        |   V = speed of the wind\n    D = wick / q       |   v = height of the sea\n    M = lamp / q       |   r = weight of the air\n"
    (block,) = between(text)
    assert block.kind is Kind.TABLE


HEADS = [
    # the type on a line of its own, what it takes lined up
    "lamp_error\nlamp_read( lamp_oil *oil, const char *name,\n           size_t length )\n",
    # a type that is no word of the language, on one line and over several
    "tide_t get_tide( tide_day *day )\n",
    "tide_error tide_of_day( tide_day *day,\n                        int *height,\n                        tide_table *table )\n",
    # a pointer, an open bracket at the end of a line, nothing taken
    "lamp_error (*lamp_error_hook)(\n  lamp_error error, const char *form )\n",
    "lamp_oil* lamp_alloc( void )\n",
    # a list cut in the middle of a parameter
    "lamp_err_t lamp_open(LAMP *self, const char *name, const\nchar *kind, const char *glass)\n",
    # one below the other
    "tide_word\ntide_high( tide_day day )\nconst tide_byte*\ntide_low( tide_day day )\n",
    # types behind colons
    "procedure Light (Lamp : in  Burner;\n                 Oil, Wick : out Store_Number;\n                 Glass     : Pane := Clear);\n",
]


@pytest.mark.parametrize("text", HEADS)
def test_the_head_of_a_routine_keeps_its_lines(text: str) -> None:
    blocks = read_text(f"{AFTER}\n{text}{AFTER}", "log", "ascii").blocks[1:-1]
    assert [block.kind for block in blocks] == [Kind.PREFORMATTED]
    assert [line.chars for line in blocks[0].lines] == text.splitlines()


@pytest.mark.parametrize(
    "text",
    [
        "The lamp (oil, wick, glass)\n",
        "Ring the bell (or sound the horn,\nif it is broken)\n",
        "Ask the keeper (the man at the lamp, who knows\nthe tides)\n",
        "The tide is high\nlow_water (at noon) follows it.\n",
    ],
)
def test_words_with_words_in_brackets_are_no_routine(text: str) -> None:
    blocks = read_text(f"{AFTER}\n{text}{AFTER}", "log", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH] * 3


def test_a_sentence_that_speaks_of_the_marks_of_a_remark_is_no_program() -> None:
    said = (
        "The log uses the sign with two strokes, though some of the machines do not know of it, and then it\n"
        "/**/ with no blank between the strokes, and no other sign before the words that are\nto be joined, e.g.\n"
    )
    shown = "#define join(a,b) a/**/b\nmain()\n{\n  join(la,mp)(lit);   /* e.g. */\n}\n"
    rest = (
        "N.B. In a log without strokes /**/ does not work at all, nor what begins with /*, and the keeper has\n"
        "to write the words by hand.\n"
    )
    blocks = between(said + shown + rest)
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert [line.chars for line in blocks[1].lines] == shown.strip().split("\n")


def test_words_before_a_remark_that_is_closed_on_their_line_are_a_statement() -> None:
    shown = "begin /* the watch of the night */\nlight lamp if it is dark /* and ring the bell */\nend /* of it */\n"
    assert [block.kind for block in between(shown)] == [Kind.PREFORMATTED]


def test_the_end_of_a_program_is_set_in_as_it_is_up_to_where_text_goes_on_to_its_left() -> None:
    shown = (
        "            LAMPS = $ROCK/lamps # where the lamps are\n            INCLUDE = $LAMPS/north.log\n\n"
        "            :0 :\n            * OIL ?? no\n            stores.log\n"
    )
    text = "    The keeper reads it at dusk, and when there is no more oil the boat has to come.\n"
    blocks = between(f"{text}\n{shown}\n{text}")
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert [line.chars for line in blocks[1].lines] == [line[12:] for line in shown.split("\n")[:-1]]


def test_items_set_in_as_the_program_above_them_are_no_part_of_it() -> None:
    shown = (
        "            LAMPS = $ROCK/lamps # where the lamps are\n            INCLUDE = $LAMPS/north.log\n\n"
    )
    listed = "            * wicks/oil\n            * glass\n"
    text = "    The keeper reads it at dusk, and when there is no more oil the boat has to come.\n"
    blocks = between(f"{text}\n{shown}{listed}\n{text}")
    assert [block.kind for block in blocks[2:-1]] == [Kind.ITEM, Kind.ITEM]


def test_an_option_with_the_remark_of_the_settings_above_it_is_one_of_them() -> None:
    shown = (
        'wicks   = "3"     %% all of them\n\noil     = "14"    %% tins\ntins    = "12"    %% whole\n\n'
        "-no-fog   %% do not ring the bell\n"
    )
    blocks = between(shown)
    assert [block.kind for block in blocks] == [Kind.PREFORMATTED]
    assert [line.chars for line in blocks[0].lines] == shown.split("\n")[:-1]


def test_an_option_that_words_explain_is_no_setting_of_the_program_above_it() -> None:
    shown = 'wicks = "3"       %% all of them\noil   = "14"      %% in the store\n\n-no-fog   do not ring the bell\n'
    assert between(shown)[-1].kind is Kind.ITEM


def test_a_word_of_which_braces_hold_the_first_letter_is_text() -> None:
    said = (
        "The name of the rock is set as {S}kerry in the log of the harbour, where it stands as\n"
        "{S}kerry {L}ight, and below that the printer has set the name of the keeper on watch,\nand his hours.\n"
    )
    assert [block.kind for block in between(said)] == [Kind.PARAGRAPH]


def test_a_call_in_capitals_is_a_statement_and_no_text_of_a_term() -> None:
    blocks = between(
        "C LAMPS\n      CALL LAMP1(1,'the lamp of the tower',100,0.,5.)\n/* C*/\n"
        '           LAMP1(1,"the lamp of the tower",100,0.,5.);\n'
    )
    assert [line.chars.strip()[:10] for line in blocks[-1].lines][-3:] == [
        "CALL LAMP1",
        "/* C*/",
        'LAMP1(1,"t',
    ]
    assert Kind.ITEM not in {block.kind for block in blocks}
