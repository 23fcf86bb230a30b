"""Manual pages to blocks. The outside: mandoc(1), where it is installed, formats the same words in the same order."""

from __future__ import annotations

import re
import shutil
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest
from gold import read_gold
from hypothesis import given, settings, strategies as st
from plain_blocks import assert_places_hold, plain, plain_gold, shown_words

from fit.document import read_document_bytes
from fit.document.blocks import Kind, Mark
from fit.document.man import read_man
from fit.document.man.roff_characters import NAMED, special_character
from fit.document.man.roff_number import evaluate
from fit.document.man.roff_tabs import tab_stops
from fit.errors import DocumentError

ROOT = Path(__file__).parents[2]
LAMP = ROOT / "corpus/documents/skerry-lamp.7"
HEAD = ".TH T 1\n"
BACKSLASHES = "\\\\"
"""As a definition needs them for what is put in when it is used."""

needs_mandoc = [
    pytest.mark.outside,
    pytest.mark.skipif(shutil.which("mandoc") is None, reason="mandoc is not installed"),
]


def mandoc(source: str) -> str:
    """A page as mandoc shows it, overstrikes, rules and its first and last line taken out."""
    command = ["mandoc", "-man", "-K", "utf-8", "-T", "utf8", "-O", "width=1000"]
    out = subprocess.run(command, input=source.encode(), capture_output=True, check=False).stdout.decode()
    lines = [line for line in re.sub(".\x08", "", out).split("\n") if line.strip()]
    return re.sub("[\u2500-\u257f]", " ", "\n".join(lines[1:-1])).replace("\u00a0", " ")


def blocks(source: str) -> list[tuple[object, ...]]:
    return [
        (
            block.kind.value,
            block.level,
            block.label.chars,
            block.text.chars or [line.chars for line in block.lines],
        )
        for block in read_man(HEAD + source, "t.1", "utf-8").blocks[1:]
    ]


def text(source: str) -> str:
    return " ".join(shown_words(read_man(HEAD + source, "t.1", "utf-8")))


def test_the_lamp_is_read_as_its_gold_says() -> None:
    document = read_man(LAMP.read_text("utf-8"), "skerry-lamp.7", "utf-8")
    gold = read_gold(ROOT / "tests/document/marked_up/skerry-lamp.7.gold")
    assert [plain(block) for block in document.blocks] == [plain_gold(block) for block in gold]
    assert_places_hold(document)


class TestMandoc:
    pytestmark = needs_mandoc

    def test_the_lamp_has_the_same_words_in_the_same_order(self) -> None:
        # Left out: .MR, which mandoc does not know before its version of 2023.
        source = LAMP.read_text("utf-8").replace(".MR tides 1 .\n", "")
        assert shown_words(read_man(source, "lamp.7", "utf-8")) == mandoc(source).split()

    def test_special_characters_are_the_same(self) -> None:
        names = sorted(name for name in NAMED if special_character(name) is not None)
        source = HEAD + ".nf\n" + "".join(f"{number} X\\[{name}]Y\n" for number, name in enumerate(names))
        shown = dict(re.findall(r"^ *(\d+) X(.*?)Y\s*$", mandoc(source), re.MULTILINE))
        for number, name in enumerate(names):
            # Ligatures and a few Greek variants are not known to every version.
            if shown[str(number)].strip():  # a bar is one of the rules that mandoc() takes out
                assert (name, NAMED[name]) == (name, shown[str(number)])

    @pytest.mark.parametrize(
        "source",
        [
            ".SH A B\nx\n.SH\nC D\ny",
            ".TP\n.B a\nb\n.TP\nc d\ne\n.PP\nf",
            ".IP a 4\nb\n.IP\nc\n.RS\n.IP \\(bu\nd\n.RE\ne",
            '.B a "b  c" d\n.BR e f g\n.I\nh\n.SM i\n.RI ( j )',
            ".nf\na\n  b\n.B c\n.fi\nd",
            "a\\fBb\\fPc \\f(CWd\\fR \\s-2e\\s0 \\s+(12f\\s0 \\m[red]g\\m[]",
            "\\(lqa\\(rq \\(aqb\\(aq \\[u00E9] \\e \\- \\~x \\0y a\\|b\\^c\\&d",
            ".de X\n.B \\\\$1 \\\\$2\nin \\\\n(.$ parts\n..\n.X a b\nc\n.X d",
            '.ds N name\\"\n.as N s\nThe \\*N and \\*[N]',
            ".nr a 3\n.nr a +1\n.if \\na=4 four\n.ie \\na<4 no\n.el yes\n.if !\\na no",
            ".if n \\{\\\na\n.if t b\n.\\}\nc\n.if t \\{\nd\n.if n e\n.\\}\nf",
            ".ie t \\{ a\nb \\}\n.el \\{ c\nd \\}\ne",
            ".if 'a'a' x\n.if 'a'b' y\n.if !'a'b' z",
            ".ig\nno\n..\nyes\n.ig end\nno\n..\n.end\nyes",
            ".TS\nl l.\na\tb\nc\td\n.TE\ne",
            ".TS\ntab(|) allbox;\nl s\nl r.\na\nb|1.5\n_\nc|\\-\n.T&\nl l l.\nd|e|f\n.TE",
            ".TS\nl l.\nT{\na\n.B b\nc\nT}\td\ne\tT{\nf\nT}\n.TE",
            ".UR http://a.b\nc\n.UE .\n.MT d@e\n.ME\nf",
            "a\\c\nb\n.B c\\c\nd",
            'a \\\nb\nc \\" comment\n.\\" comment\n.B d \\" comment',
            ".EX\na  \\e\n.EE\n.PP\n.br\nb\n.sp 2\nc",
            ".tr ab\na\n.tr aa\na",
            "'br\na\n'in 3\nb",
            'a \\\\n"b" \\\\*c \\\\$1',
            ".de X\n\\\\$1 \\\\\\\\n\n..\n.X a",
            ".HP\na\nb\n.LP\nc\n.P\nd",
            ".ce 2\na\nb\nc",
            ".OP -a b\n.SY cmd\nx\n.YS",
            ".TP\n.B keep\\\\fRor\\\\fBdouse\nx",
            ".de X\n\\\\$1\n..\n.X a\\\\fBb",
            ".nf\n.eo\n/\\ \\n\n.ec\n\\fBa\\fR\n.fi",
            ".ec @\n@fBa@fR \\n b\n.ec\n\\fBc\\fR",
            ".rn TP Tp\n.de TP\n.br\n.Tp \\\\$1\n..\n.TP 4\na\nb",
            ".als K IP\n.K a\nb",
            ".de X\n.while \\\\n(.$ \\{\\\n\\\\$1;\n.shift\n.\\}\n..\n.X a b c\nd",
            ".nr i 3\n.while \\ni \\{\\\n\\ni\n.nr i -1\n.\\}\nd",
            ".de X\na\n.if \\\\n(.$ \\{\n.return\n.\\}\nb\n..\n.X c\n.X",
            ".nr n 1 1\n\\nn. a\n\\n+n. b\n\\n+n. c\n.nr m 9 3\n\\n-m",
            ".EQ\ndelim $$\n.EN\na",
            ".ds F B\n.ds G [CB]\n\\f\\*Fwick\\fP and \\f\\*Goil\\fP",
            ".de X\n\\f\\\\$1\\\\$2\\fR\n..\n.X B wick",
            ".ds N 2\na\\s\\*N b\\s0 c\\h'\\*Nm'd",
            ".if !\\w|\\(lq| \\{\\\n.ds Q none\n.\\}\nthe lamp",
        ],
    )  # fmt: skip
    def test_requests_give_the_same_words(self, source: str) -> None:
        assert text(source).split() == mandoc(HEAD + source + "\n").split()


CASES = [
    (".SH NAME\na \\- b", [("heading", 1, "", "NAME"), ("paragraph", 0, "", "a - b")]),
    (".TP\n.B a\nb\n.PP\nc", [("item", 0, "a", "b"), ("paragraph", 0, "", "c")]),
    (".TP\na\n.TQ\nb\nc", [("item", 0, "a", []), ("item", 0, "b", "c")]),
    (".IP 1. 4\na\n.IP\nb", [("item", 0, "1.", "a"), ("paragraph", 1, "", "b")]),
    (".IP a\nb\n.RS\n.IP c\nd\n.RE\n.IP e\nf", [("item", 0, "a", "b"), ("item", 1, "c", "d"), ("item", 0, "e", "f")]),
    (".RS +4\na\n.RS -4\nb", [("paragraph", 1, "", "a"), ("paragraph", 0, "", "b")]),
    (".RS\na\n.RE\nb", [("paragraph", 1, "", "a"), ("paragraph", 0, "", "b")]),
    ("\\fB\\-a\\fR\n.RS 4\nb\n.RE", [("item", 0, "-a", "b")]),
    ("\\-p, \\-\\-port\n.RS 4\nb\n.RE", [("item", 0, "-p, --port", "b")]),
    ("For example:\n.RS 4\nb\n.RE", [("paragraph", 0, "", "For example:"), ("paragraph", 1, "", "b")]),
    ("then it is reset with\n.RS 4\nb\n.RE", [("paragraph", 0, "", "then it is reset with"), ("paragraph", 1, "", "b")]),
    (".PP\n\\fB\\-n\\fR (No light after the dawn)\n.RS 4\nb\n.RE", [("item", 0, "-n (No light after the dawn)", "b")]),
    (".PP\nThe \\fIfog\\fP statement\n.RS 4\nb\n.RE", [("item", 0, "The fog statement", "b")]),
    (".PP\nOilMeasuredAtDusk=, OilMeasuredAtDawn=, OilMeasuredAtNoon=, OilSpilt=\n.RS\nb\n.RE",
     [("item", 0, "OilMeasuredAtDusk=, OilMeasuredAtDawn=, OilMeasuredAtNoon=, OilSpilt=", "b")]),
    (".PP\nThus, given a lamp of brass\n.RS 4\nb\n.RE",
     [("paragraph", 0, "", "Thus, given a lamp of brass"), ("paragraph", 1, "", "b")]),
    (".PP\n\\fBtrim\\fR is the same as\n.RS 4\nb\n.RE",
     [("paragraph", 0, "", "trim is the same as"), ("paragraph", 1, "", "b")]),
    (".PP\n\\fB\\-n\\fR (No light\nafter the dawn)\n.RS 4\nb\n.RE",
     [("paragraph", 0, "", "-n (No light after the dawn)"), ("paragraph", 1, "", "b")]),
    (".nf\na  b\n\nc\n.fi", [("preformatted", 0, "", ["a  b", "", "c"])]),
    ("a\n.br\nb", [("preformatted", 0, "", ["a", "b"])]),
    (".RS 4\n.ie n \\{\\\n\\h'-04'\\(bu\\h'+03'\\c\n.\\}\n.el \\{\\\n.IP \\(bu 2\n.\\}\na\n.sp\nb\n.RE\nc",
     [("item", 0, "\u2022", "a"), ("paragraph", 1, "", "b"), ("paragraph", 0, "", "c")]),
    ("\\h'-04' 1.\\h'+01'a\n.br\n\\h'-04' 2.\\h'+01'b", [("item", 0, "1.", "a"), ("item", 0, "2.", "b")]),
    # a hanging paragraph that begins with an option in bold is an item, whose label ends where its words begin
    (".HP\n\\fB-f\\fR METRES, \\fB--fog\\fR=M Sound the horn", [("item", 0, "-f METRES, --fog=M", "Sound the horn")]),
    (".HP\n\\fB-f\\fR   fog horn\n.HP\n.B --bell\n.IP\nRing.", [("item", 0, "-f", "fog horn"), ("item", 0, "--bell", []), ("paragraph", 1, "", "Ring.")]),
    (".HP\n\\fB--of=\\fR<a or b> \\- Lamp", [("item", 0, "--of=<a or b>", "- Lamp")]),
    (".HP\n\\fB-f\\fR \\fIfile\\fR A log", [("item", 0, "-f file", "A log")]),
    (".HP\n\\fB-f\\fR file, \\fB--log=\\fRfile Keep a log", [("item", 0, "-f file, --log=file", "Keep a log")]),
    (".HP\n\\fBlamp\\fR [-f FILE]", [("paragraph", 0, "", "lamp [-f FILE]")]),
    (".HP\n-f is for fog", [("paragraph", 0, "", "-f is for fog")]),
    ("a\\h'-\\w' 'u'b", [("paragraph", 0, "", "ab")]),
    # a blank over what stands there leaves nothing, but a line may end; the second blank is none over it
    ("(fog\\h'-\\w' 'u' |bell)\\h'-1'\\fB  now", [("paragraph", 0, "", "(fog\u200b|bell)\u200b now")]),
    ("fog\\h'-1n'\\ |bell\\h'-.3n' here", [("paragraph", 0, "", "fog|bell here")]),
    (".eo\n.de X\n\\$1 \\fBb\\fR\n..\n.ec\n.X a", [("paragraph", 0, "", "a b")]),
    (".nr n 0 1\n.af n i\n.IP \\n+n.\na\n.IP \\n+n.\nb", [("item", 0, "i.", "a"), ("item", 0, "ii.", "b")]),
    (".nr n 7\n.af n 001\n\\nn", [("paragraph", 0, "", "007")]),
    (".nf\n.eo\n /\\\n.ec\n.fi", [("preformatted", 0, "", [" /\\"])]),
    (".rn TP Tp\n.de TP\n.br\n.Tp \\\\$1\n..\n.TP 4\na\nb", [("item", 0, "a", "b")]),
    (".so man1/x.1\na", [("paragraph", 0, "", "a")]),
    ("Trim the wick.\n.ti +8\nFill the oil.", [("preformatted", 0, "", ["Trim the wick.", "        Fill the oil."])]),
    ("a\n.in +4n\nb\n.in\nc", [("paragraph", 0, "", "a"), ("paragraph", 1, "", "b"), ("paragraph", 0, "", "c")]),
    ("a\n.br\nb\n.bp\nc", [("preformatted", 0, "", ["a", "b"]), ("paragraph", 0, "", "c")]),
    ("a\n.in +4n\nb\n.PP\nc", [("paragraph", 0, "", "a"), ("paragraph", 1, "", "b"), ("paragraph", 0, "", "c")]),
    (".in +4n\n.nf\na\n.fi\n.in\n.RS\n.in +2\nb\n.RE\nc",
     [("preformatted", 1, "", ["a"]), ("paragraph", 2, "", "b"), ("paragraph", 0, "", "c")]),
    ("The whole tower, from the stores to the lamp room, is dark by one of these:\n.br\n\\fB\\-\\-dark\\fR\n.RS\nb\n.RE",
     [("paragraph", 0, "", "The whole tower, from the stores to the lamp room, is dark by one of these:"), ("item", 0, "--dark", "b")]),
    ('.de X\n.B "\\\\$1" \\\\$2\n..\n.X """lamp"" lit" oil', [("paragraph", 0, "", '"lamp" lit oil')]),
    (".nf\n.ta 10n +6n\noil\t2\tpints\nlamp glass\t1\tbox\n.DT\noil\t2\n.fi",
     [("table", 0, "", ["oil       2     pints", "lamp glass      1       box", "oil     2"])]),
    # groff(1) puts these columns there.
    (".nf\n.ta 20R 30C 40\noil\t2\tpints\tred\nwick\t100\tof the best\tflat\nlamp glass, the long one\t1\n.fi",
     [("preformatted", 0, "", ["oil                2        pints       red", "wick             100     of the best    flat",
                               "lamp glass, the long one      1"])]),
    (".nf\n.ta \\w'lamp  'u\n%o\tof oil\n.fi", [("preformatted", 0, "", ["%o    of oil"])]),
    ("if dark {\n.br\n\tlight(lamp)\n.br\n\t\tor exit(1);\n.br\n}",
     [("preformatted", 0, "", ["if dark {", "        light(lamp)", "                or exit(1);", "}"])]),
    ("Trim all lamps of the rock that burn in the night:\n.br\n% trim \\-\\-all > /log/of/the/rock/and/of/the/lamps/that/burn/in/the/night\n.br\n% trim",
     [("paragraph", 0, "", "Trim all lamps of the rock that burn in the night:"),
      ("preformatted", 0, "", ["% trim --all > /log/of/the/rock/and/of/the/lamps/that/burn/in/the/night", "% trim"])]),
    ("The keeper looks at these when it is dark:\n  \\-o gills   the oil\n  \\-w\t\tthe wick\n   * trimmed",
     [("paragraph", 0, "", "The keeper looks at these when it is dark:"),
      ("preformatted", 0, "", ["  -o gills   the oil", "  -w            the wick", "   * trimmed"])]),
    ("lamp [\\-afnqsvx] [\\-o gills of oil] [\\-w width of the wick] [\\-t turns]\n     [\\-k keeper]",
     [("preformatted", 0, "", ["lamp [-afnqsvx] [-o gills of oil] [-w width of the wick] [-t turns]", "     [-k keeper]"])]),
    ("  * oil\n  * wick", [("item", 0, "*", "oil"), ("item", 0, "*", "wick")]),
    (" It is the keeper who trims the wick, and it is the boat that brings the oil to the rock.",
     [("paragraph", 0, "", "It is the keeper who trims the wick, and it is the boat that brings the oil to the rock.")]),
    ("It says:\n.sp\n      http://skerry.example/lamp/oil\n.sp\nb",
     [("paragraph", 0, "", "It says:"), ("paragraph", 0, "", "http://skerry.example/lamp/oil"), ("paragraph", 0, "", "b")]),
    ("lamp\tThe program itself,\nwhich burns.\n.br\n/oil, /wick\t\tData\n.br\n\\(bu\tOr so", [
        ("item", 0, "lamp", "The program itself, which burns."), ("item", 0, "/oil, /wick", "Data"), ("item", 0, "\u2022", "Or so")]),
    ("lamp\tIt burns\n.br\n\t\tat night\n.br\n\tand at dawn.\n.br\nTrim it.\n.br\n\tDaily.", [
        ("item", 0, "lamp", "It burns at night and at dawn."), ("preformatted", 0, "", ["Trim it.", "        Daily."])]),
    (".TP\nwick\nflat\tNot round.\n.br\nlong\tNot short.", [
        ("item", 0, "wick", "flat Not round."), ("item", 1, "long", "Not short.")]),
    ("1\tlamp\toil\n.br\n2\twick\tflat", [("preformatted", 0, "", ["1       lamp    oil", "2       wick    flat"])]),
    ("Trim the\twick.\n.br\nIt burns.\tIt does.",
     [("item", 0, "Trim the", "wick."), ("paragraph", 0, "", "It burns. It does.")]),
    (".TP\nwick\n  flat", [("item", 0, "wick", "flat")]),
    ("  +--------+\n  |  lamp  |\n  +--------+", [("picture", 0, "", ["  +--------+", "  |  lamp  |", "  +--------+"])]),
    ("a\n\tb", [("paragraph", 0, "", "a b")]),
    (".di x\nwidest\n.di\n.rm x\nwick", [("paragraph", 0, "", "wick")]),
    (".di x\nlater\n.B oil\n.di\nnow\n.x\n.da x\nand wick\n.di\n.x", [("paragraph", 0, "", "now later oil later oil and wick")]),
    ("now\n.di x\nwithout end", [("paragraph", 0, "", "now without end")]),
    (".nr n \\w'\\fBlamp\\fR'/\\w'l'\n\\nn", [("paragraph", 0, "", "4")]),
    (".ds : \\h'-1n'.\n.if \\n(.H>23 .if \\n(.V>19 \\\n\\{\\\n.ds : e\n.\\}\nna\\*:", [("paragraph", 0, "", "nae")]),
    ("a \\(la\\(ZZsuch", [("paragraph", 0, "", "a \u27e8such")]),
]  # fmt: skip


@pytest.mark.parametrize(("source", "expected"), CASES)
def test_cases(source: str, expected: list[tuple[object, ...]]) -> None:
    assert blocks(source) == expected


def test_fonts_are_marks() -> None:
    found = read_man(HEAD + "\\fBa\\fIb\\f(CWc\\fRd", "t.1", "utf-8").blocks[1].text
    assert list(found.marks) == [Mark.BOLD, Mark.UNDERLINE, Mark.CODE, Mark.NONE]


def test_what_a_string_prints_stands_where_it_is_used() -> None:
    source = HEAD + ".ds L \\(lqlamp\n.TS\nl l.\n\\*L\ta \\*L\n.TE"
    (row,) = read_man(source, "t.1", "utf-8").blocks[1].rows
    assert [(cell.chars, [source[place] for place in cell.sources]) for cell in row] == [
        ("\u201clamp", ["\\"] * 5),
        ("a \u201clamp", ["a", " ", *["\\"] * 5]),
    ]
    assert not set(row[0].sources) & set(row[1].sources)


def test_what_a_macro_prints_stands_where_it_is_called() -> None:
    source = (
        HEAD
        + ".de L\n<\\\\$1> lit\n..\n.TS\nl l.\nT{\n.L oil\nT}\tT{\n.L wick\nT}\n.TE\n.di D\nlater\n.di\n.rn D E\n.E"
    )
    _, table, later = read_man(source, "t.1", "utf-8").blocks
    assert [(cell.chars, [source[place] for place in cell.sources]) for cell in table.rows[0]] == [
        ("<oil> lit", [".", "o", "i", "l", *["."] * 5]),
        ("<wick> lit", [".", "w", "i", "c", "k", *["."] * 5]),
    ]
    assert not set(table.rows[0][0].sources) & set(table.rows[0][1].sources)
    assert [source[place] for place in later.text.sources] == [*"later"]


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        (["if (dark) {", "light(lamp, oil);", "}"], True),
        (["int lamp_light(int lamp);", "int lamp_douse(int lamp);"], True),
        (["\\f(CWoil 3\\fP", "\\f(CWwick 1\\fP"], True),
        (["/* It is dark:", "   light it */", "light(lamp);", "wait"], True),
        (["$ trim", "done"], True),
        (["Burn, and be seen;", "be dark;", "be lost"], False),
        (["The Keeper", "Skerry Light"], False),
        (["lamp [\\-q] {on | off} lamp", "lamp \\-h"], False),
    ],
)
def test_lines_of_a_program_parted_by_breaks_are_code(lines: list[str], code: bool) -> None:
    source = HEAD + "\n.br\n".join(lines)
    assert [block.code for block in read_man(source, "t.1", "utf-8").blocks[1:]] == [code]


def test_the_title_line_is_furniture() -> None:
    block = read_man('.TH LAMP 7 "14 March"\n.SH A\nb', "t.7", "utf-8").blocks[0]
    assert (block.kind, block.lines[0].chars) == (Kind.FURNITURE, "LAMP 7 14 March")


def test_what_is_not_known_is_counted() -> None:
    document = read_man(HEAD + ".XX a\n.XX b\n\\[nosuch]c\n.so x.1", "t.1", "utf-8")
    assert document.remarks == (
        "2 x the macro .XX is not known and was passed over with its line",
        "1 x special character 'nosuch' is not known",
        "1 x the file x.1 that the page includes was not read",
    )


def test_a_page_that_stands_elsewhere_says_where() -> None:
    with pytest.raises(DocumentError) as caught:
        read_document_bytes(b'.\\" lamps\n.so man7/lamp.7\n', "light.7")
    assert str(caught.value) == "light.7: says only that the page stands in man7/lamp.7; give that file"


@pytest.mark.parametrize(
    "source",
    [
        ".while 1 \\&\na",
        ".while 1 .nr x 1\na",
        ".rn PP P\n.de PP\n.PP\n..\n.PP\na",
        ".de X\n.X\n..\n.X\na",
        ".ds A \\*A\n\\*A a",
        ".ds A \\*B\\*B\n.ds B \\*A\\*A\n\\*A a",
        ".ds A \\\\*B\n.ds B \\\\*A\\\\*A\n\\*A a",
        ".de X\n.X \\\\$1\\\\$1\n..\n.X b\na",
    ],
)
def test_what_calls_itself_ends(source: str) -> None:
    assert text(source).endswith("a")


@pytest.mark.parametrize("value", ["oil", ""])
def test_strings_that_double_each_other_end(value: str) -> None:
    strings = "".join(f".ds {to} {f'{BACKSLASHES}*{of}' * 10}\n" for of, to in pairwise("abcdefghi"))
    document = read_man(f"{HEAD}.ds a {value}\n{strings}\\*i\na", "t.1", "utf-8")
    assert document.blocks[-1].text.chars.endswith("a")
    assert "a string or argument was left out: it calls itself, or others without end" in document.remarks[-1]


def test_strings_may_stand_in_strings() -> None:
    strings = "".join(f".ds s{at} {BACKSLASHES}*[s{at + 1}]\n" for at in range(40))
    assert text(strings + ".ds s40 wick\nthe \\*[s0]") == "the wick"


@pytest.mark.parametrize(
    ("source", "remark"),
    [
        (
            "a\n.de X Y\nb\nc",
            "1 x .de X has no end: what follows it is not shown (lines: 2)",
        ),
        ("a\n.ig\nb", "1 x .ig has no end: what follows it is not shown (lines: 1)"),
        (
            "a\n.if t \\{\nb",
            "1 x a condition that does not hold has no end: what follows it is not shown (lines: 1)",
        ),
        (".while 1 .nr x 1\na", "1 x a loop was left that has no end"),
        (".de X\n.X\n..\n.X\na", "1 x a macro was not called: it calls itself, or others without end"),
    ],
)
def test_what_has_no_end_is_said(source: str, remark: str) -> None:
    document = read_man(HEAD + source, "t.1", "utf-8")
    assert document.blocks[-1].text.chars == "a"
    assert document.remarks == (remark,)


def test_the_other_macro_package_is_refused() -> None:
    with pytest.raises(DocumentError) as caught:
        read_man(".Dd March 14, 1986\n.Dt LAMP 7\n.Os\n", "lamp.7", "utf-8")
    assert str(caught.value) == (
        "lamp.7: is a manual page in the mdoc macros, which cannot be read yet; "
        "turn it into text first, with a program that formats manual pages"
    )


@pytest.mark.parametrize(
    ("expression", "value"),
    [("3+4*2", 14), ("3+(4*2)", 11), ("-2", -2), ("1i", 240), ("7/2", 3), ("7%4", 3), ("1>0&1", 1), ("0:1", 1), ("x", 0), ("(((", 0)],
)  # fmt: skip
def test_numbers_are_worked_out_from_left_to_right(expression: str, value: int) -> None:
    assert evaluate(expression) == value


@pytest.mark.parametrize(
    ("arguments", "stops"),
    [
        ("", ()),
        ("8 16", (8, 16)),
        ("4n +4n +1i", (4, 8, 18)),
        ("240u 20nC", (10, (20, "C"))),
        ("20 10 x", (20,)),
        ("T 0.5i", tuple(range(5, 205, 5))),
        ("4n T 80nR", (4, (84, "R"), (164, "R"), (244, "R"))),
    ],
)
def test_tab_stops_are_columns(arguments: str, stops: tuple[int | tuple[int, str], ...]) -> None:
    assert tab_stops(arguments) == tuple((stop, "L") if isinstance(stop, int) else stop for stop in stops)


@settings(max_examples=80, deadline=None)
@given(
    st.lists(
        st.sampled_from(
            [".TP\n", ".SH x\n", ".RS\n", ".RE\n", ".nf\n", ".fi\n", ".TS\n", ".TE\n", "l l.\n", "a\tb\n", ".de Q\n", "..\n",
             ".Q\n", ".if n \\{\n", ".\\}\n", ".ie t x\n", ".el y\n", "w\\fBw\n", "\\*(", "\\n[", "\\s", "\\h'", "T{\n", "T}\n",
             ".ig\n", ".ds Q \\*Q\n", ".IP\n", ".B\n", "\\c\n", "\\\n", "\\", "\n", ".EQ\n", ".EN\n", ".UR u\n", ".ta 4 T 3\n", ".di x\n", ".di\n", ".x\n",
             ".UE\n", ".in +4\n", ".ce 3\n", "'", ".", '\\"', "x"]
        )
    )
)  # fmt: skip
def test_no_page_is_too_broken(pieces: list[str]) -> None:
    assert_places_hold(read_man(HEAD + "".join(pieces), "t.1", "utf-8"))
