"""Manual pages in the man macros to blocks, after man(7). Their tables: `fit.document.man.table`.

The title line and the fonts' sizes are furniture of the printed page. Another macro package (mdoc) is
recognised and refused.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from fit.document.block_maker import LINE_BREAK, BlockMaker, joined
from fit.document.blocks import Block, Document, Kind, Mark, Text
from fit.document.characters import NO_BREAK_SPACE, TextBuilder, cut
from fit.document.man.roff_input import Input
from fit.document.man.roff_lines import request_of
from fit.document.man.roff_number import CHARACTER, evaluate
from fit.document.man.roff_tabs import tab_stops
from fit.document.man.roff_text import Line, Printer, own_line, split_arguments
from fit.document.man.table import TableReader
from fit.document.preformatted import Stop, held, preformatted, untabbed
from fit.document.recognise import ONLY_ELSEWHERE
from fit.document.text.signs.measure import hangs, prose
from fit.errors import DocumentError

_FONT_MACROS: Final = {"B": Mark.BOLD, "I": Mark.UNDERLINE, "R": Mark.NONE, "SM": Mark.NONE, "SB": Mark.BOLD}
_ALTERNATING: Final = {
    first + second: (marks[0], marks[1])
    for first, second, *marks in (
        ("B", "I", Mark.BOLD, Mark.UNDERLINE),
        ("B", "R", Mark.BOLD, Mark.NONE),
        ("I", "B", Mark.UNDERLINE, Mark.BOLD),
        ("I", "R", Mark.UNDERLINE, Mark.NONE),
        ("R", "B", Mark.NONE, Mark.BOLD),
        ("R", "I", Mark.NONE, Mark.UNDERLINE),
    )
}
_IGNORED: Final = frozenset(
    [
        *("PD", "UC", "AT", "ad", "na", "hy", "nh", "ne", "ns", "rs", "ps", "vs", "ss", "cs", "ll", "lt", "pl"),
        *("po", "fam", "fp", "nx", "rd", "tm", "tm1", "ab", "warn", "hw", "hym", "hcode", "mk", "rt", "nm", "nn"),
        *("lf", "ev", "it", "itc", "em", "wh", "ch", "dt", "ul", "cu", "lg", "uf", "bd", "ls", "sv", "os", "pc"),
        *("tl", "tc", "lc", "c2", "cc", "hc", "fc", "return", "break", "close", "open", "write", "ftr"),
        *("hla", "hlm", "hpf", "color", "defcolor", "gcolor", "fcolor", "char", "rchar", "fchar", "schar", "hcode", "\\"),
        *("BT", "PT", "LINKSTYLE", "special", "fspecial", "nop", "minss", "mso", "output", "pso", "psbb", "kern", "hys", "ff"),
    ]
)  # fmt: skip
_CODE: Final = re.compile(r"[{};=<>$#\\/]|--|\(\)| \| |(?:^| )-\w|^ {2,}|^\S+[:>%] ", re.MULTILINE)
_LEFT_OF_MARGIN: Final = re.compile(r"\\h'-[0-9.]+[a-z]?'((?:[^\\]|\\[^hc])+)\\h'[+]?[0-9.]+[a-z]?'")
"""A step to the left, a label, and a step back to the right."""
_SET_UP: Final = re.compile(r"\s*(?:delim|[nt]?define|undef|gsize|gfont|set)\b")
"""Lines of equations that only prepare others."""
_ENDS: Final = r"(?<!\.\.)[.:;!?,]$"
_SENTENCE: Final = re.compile(rf"{_ENDS}| - ")
"""What a key does not have: the end of a sentence or of a part of it, and what the key means."""
_STOPS: Final = re.compile(_ENDS)
_KEY: Final = re.compile(r"(\S(?:[^\t]{0,38}\S)?) *\t[\t ]*(?=[^\t]+\Z)")
"""A key that one tab parts from what it means."""
_BLANKS: Final = re.compile(r"^ +|(?<![.:;!? ]) {2,}")
"""Blanks of a line that stand for columns: those at its beginning, and more than one of them between words."""
_MOST_SPACES: Final = 40
_DEEPEST: Final = 20
"""Cells by which a line is set in."""
_LONGEST_KEY: Final = 60
"""Characters of a line that can be a key."""
_LONGEST_OPTIONS: Final = 200
"""The same for options, which may have many names."""


def read_man(source: str, name: str, encoding: str) -> Document:
    """Read a manual page.

    Raises `DocumentError` where it is written in the mdoc macros, or is no more than the name of another page.
    """
    if re.search(r"^\.[ \t]*Dd\b", source, re.MULTILINE) and not re.search(
        r"^\.[ \t]*TH\b", source, re.MULTILINE
    ):
        hint = "turn it into text first, with a program that formats manual pages"
        raise DocumentError(
            "is a manual page in the mdoc macros, which cannot be read yet", source=name, hint=hint
        )
    elsewhere = ONLY_ELSEWHERE.fullmatch(source)
    if elsewhere is not None:
        raise DocumentError(
            f"says only that the page stands in {elsewhere[1][:80]}", source=name, hint="give that file"
        )
    lines = Input(source)
    reader = _Reader(lines, Printer())
    while (line := lines.next_line()) is not None:
        reader.line(line)
    blocks = reader.finished()
    remarks = tuple(f"{count} x {what}" for what, count in lines.remarks.items())
    return Document(source, tuple(blocks), "man", encoding, name, remarks)


class _Reader:
    def __init__(self, lines: Input, printer: Printer) -> None:
        self._lines = lines
        self._printer = printer
        self._printer.unknown = lambda name: lines.remark(f"special character '{name}' is not known")
        self._maker = BlockMaker()
        self._pre: TextBuilder | None = None
        self._is_code = False
        self._shows_code = False
        """Whether a line of the block being collected looks like code, its tabs as they stand."""
        self._item_open = False
        self._margins: list[tuple[bool, int]] = []
        """For each open ``.RS``: whether an item was open, and the level."""
        self._waiting: str = ""
        """The macro whose text is the next line: TP, SH or SS."""
        self._label = TextBuilder()
        self._font = 0
        """Marks for the next line alone, from a font macro without arguments."""
        self._centred = 0
        self._address: Line | None = None
        self._indents = 0
        self._set_in = 0
        """The cells by which the next line is set in."""
        self._stops: tuple[Stop, ...] = ()
        """Where the page has set tab stops, their columns."""
        self._after_key = False
        """Whether the line being collected began with a key and a tab."""
        self._break_due = False
        """Whether that line ends, unless the next one begins with a tab."""
        self._goes_on = False
        """Whether the last line asked that the next one follow without a blank."""
        self._spaced = False
        """Whether room was asked for since the last text."""
        self._written = 0
        """The lines of the paragraph being collected."""

    def finished(self) -> list[Block]:
        self._close_pre()
        self._end_items()
        self._maker.end_keys()
        return self._maker.blocks

    def line(self, line: Line) -> None:
        """Take one line of the page."""
        name, rest = request_of(line)
        if name is None:
            self._text_line(line)
        elif name:
            self._macro(name, rest)

    # Macros

    def _macro(self, name: str, rest: Line) -> None:
        if name in _ALTERNATING:
            self._alternate(split_arguments(rest), _ALTERNATING[name])
        elif name in _FONT_MACROS:
            self._one_font(split_arguments(rest), _FONT_MACROS[name])
        elif name in ("SH", "SS"):
            self._heading(name, split_arguments(rest))
        elif name in ("PP", "LP", "P", "HP"):
            self._paragraph()
        elif name in ("TP", "TQ"):
            self._end_item()
            self._waiting = "TP"
        elif name == "IP":
            self._indented(split_arguments(rest))
        elif name in ("RS", "RE"):
            self._margin(name)
        elif name in ("nf", "EX", "Vb", "fi", "EE", "Ve"):
            self._fill(name)
        elif name in ("br", "ti", "bp", "sp", "Sp", "ce", "in", "ft", "tr", "ta", "DT"):
            self._request(name, rest)
        elif name in ("UR", "MT", "UE", "ME", "MR", "SY", "YS", "OP"):
            self._reference(name, split_arguments(rest))
        elif name == "TS":
            self._table()
        elif name == "TH":
            self._title(split_arguments(rest))
        elif name in ("EQ", "PS"):
            self._as_written(name)
        elif name == "so":
            self._lines.remark(f"the file {rest.chars[:60]} that the page includes was not read")
        elif name not in _IGNORED and name.strip("."):
            self._lines.remark(f"the macro .{name[:20]} is not known and was passed over with its line")

    def _alternate(self, arguments: list[Line], marks: tuple[int, int]) -> None:
        self._output([(argument, marks[index % 2]) for index, argument in enumerate(arguments)])

    def _one_font(self, arguments: list[Line], mark: int) -> None:
        if not arguments:
            self._font = mark
            return
        self._output(_spaced(arguments, mark))

    def _heading(self, name: str, arguments: list[Line]) -> None:
        self._close_pre()
        self._pre = None
        self._end_items()
        self._waiting = name
        self._printer.set_font("R")
        if arguments:
            self._output(_spaced(arguments, Mark.NONE))

    def _paragraph(self) -> None:
        if self._pre is not None and not self._item_open:
            self._pre.add_own("\n")
            return
        self._end_item()

    def _indented(self, arguments: list[Line]) -> None:
        self._end_item()
        if arguments and arguments[0].chars.strip():
            self._waiting = "TP"
            self._output([(arguments[0], Mark.NONE)])
        elif not self._waiting:
            self._item_open = True
            self._maker.level += 1

    def _margin(self, name: str) -> None:
        self._break_pre()
        self._maker.close()
        if name == "RS":
            self._hang_key()
        self._written = 0
        if name == "RS":
            self._indents = 0
            self._margins.append((self._item_open, self._maker.level))
            self._maker.level += not self._item_open
            self._item_open = False
        elif self._margins:
            self._end_item()
            self._item_open, self._maker.level = self._margins.pop()

    def _hang_key(self) -> None:
        """A short line right before an indented part, bold or no sentence, is the key that the part explains.

        So is a longer one that is a paragraph of its own and begins set off, or is no sentence.
        """
        if self._spaced or self._pre is not None or not self._maker.blocks:
            return
        last = self._maker.blocks[-1]
        if last.kind is not Kind.PARAGRAPH or last.level != self._maker.level:
            return
        begin = last.text.chars.rfind("\n") + 1
        key = cut(last.text, begin, len(last.text))
        if (self._written == 1 and self._names(key)) or self._is_key(key):
            above = [replace(last, text=cut(last.text, 0, begin - 1))] if begin else []
            self._maker.blocks[-1:] = above
            self._maker.hang(key)

    @staticmethod
    def _names(text: Text) -> bool:
        """Whether a line that is a paragraph names something, rather than leads in a sentence to what follows."""
        chars = text.chars
        if len(text) > _LONGEST_OPTIONS or _STOPS.search(chars) or hangs(chars):
            return False
        return bool(text.marks[0]) or not prose(chars) or (any(text.marks) and len(text) <= _LONGEST_KEY)

    @staticmethod
    def _is_key(text: Text) -> bool:
        if len(text) > (_LONGEST_OPTIONS if text.chars.startswith("-") else _LONGEST_KEY):
            return False
        bold = sum(mark & Mark.BOLD > 0 for mark in text.marks)
        if text.marks[0] & Mark.BOLD and 2 * bold >= len(text):
            return True
        return _SENTENCE.search(text.chars) is None and not prose(text.chars)

    def _fill(self, name: str) -> None:
        if name in ("fi", "EE", "Ve"):
            self._close_pre()
            self._pre = None
            return
        self._break_pre()
        self._flow_to_block()
        if self._pre is None:
            self._pre = TextBuilder()
        self._is_code = name != "nf"

    def _request(self, name: str, rest: Line) -> None:
        chars = rest.chars.strip()
        if name == "ft":
            self._printer.set_font(chars)
        elif name == "tr":
            self._translate(rest.chars)
        elif name in ("ta", "DT"):
            self._stops = tab_stops(chars)
        elif name in ("sp", "Sp", "bp"):
            self._space()
        elif name == "in":
            self._indent(1 if chars.startswith("+") else -self._indents)
        elif name == "ti":
            self._break()
            cells = evaluate(chars + "m" * chars[-1:].isdecimal()) / CHARACTER
            self._set_in = min(_DEEPEST, round(cells)) if chars.startswith("+") else 0
        elif name == "ce":
            self._break()
            self._centred = int(chars) if chars.isdecimal() and len(chars) < 6 else 1
        else:
            self._break()

    def _indent(self, levels: int) -> None:
        """Let what follows stand deeper, or where it stood before."""
        if self._pre is None and not self._waiting:
            self._maker.close()
        self._indents += levels
        self._maker.level += levels

    def _reference(self, name: str, arguments: list[Line]) -> None:
        first = arguments[0] if arguments else own_line("")
        if name in ("UR", "MT"):
            self._address = first
        elif name in ("UE", "ME") and self._address is not None:
            address, self._address = self._address, None
            parts = [(own_line("<"), 0), (address, 0), (own_line(">"), 0), *((part, 0) for part in arguments)]
            self._output(parts if address.chars else [(part, 0) for part in arguments])
        elif name == "MR":
            parts = [(own_line("("), 0), (arguments[1], 0), (own_line(")"), 0)] if len(arguments) > 1 else []
            self._output([(first, Mark.BOLD), *parts, *((part, 0) for part in arguments[2:])])
        elif name == "SY":
            self._break()
            self._output([(first, Mark.BOLD)])
        elif name == "YS":
            self._break()
        elif name == "OP" and arguments:
            inside = [(first, Mark.BOLD), *((part, Mark.UNDERLINE) for part in arguments[1:2])]
            parts = [part for item in inside for part in ((own_line(" "), 0), item)][1:]
            self._output([(own_line("["), 0), *parts, (own_line("]"), 0)])

    def _table(self) -> None:
        self._break_pre()
        self._flow_to_block()
        for block in TableReader(self._lines, self._printer, self._cell_text).read(self._maker.level):
            self._maker.add(block)

    def _cell_text(self, lines: list[Line], mark: int) -> Text:
        """A cell is a small page of its own."""
        cell = _Reader(self._lines, self._printer)
        for line in lines:
            if mark and request_of(line)[0] is None:
                cell._font = mark
            cell.line(line)
        texts = [
            text
            for block in cell.finished()
            for text in (
                joined([part for part in (block.label, block.text) if len(part)]),
                *(held(line, Mark.PROGRAM) if block.code else line for line in block.lines),
            )
            if len(text)
        ]
        return joined(texts, "\n")

    def _title(self, arguments: list[Line]) -> None:
        builder = TextBuilder()
        for index, argument in enumerate(arguments):
            if index:
                builder.add_own(" ")
            self._printer.print(argument, builder)
        if len(builder):
            self._maker.add(Block(Kind.FURNITURE, lines=(builder.build(),), note="title line of the page"))

    def _as_written(self, name: str) -> None:
        """Equations and pictures are languages of their own: their lines stay as they are."""
        end = {"EQ": "EN", "PS": "PE"}[name]
        builder = TextBuilder()
        while (line := self._lines.next_raw()) is not None and request_of(line)[0] not in (end, "SH"):
            if not _SET_UP.match(line.chars):
                builder.add(line.chars + "\n", [*line.sources, -1])
        if builder.blank:
            return
        self._lines.remark(f"the lines between .{name} and .{end} stand as written")
        self._flow_to_block()
        block = preformatted(builder.build(), level=self._maker.level, code=True)
        if block is not None:
            self._maker.add(block)

    def _translate(self, chars: str) -> None:
        """``.tr`` gives pairs of characters; one alone prints as a blank."""
        builder = TextBuilder()
        Printer().print(own_line(chars), builder)
        pairs = builder.build().chars
        table = dict(self._printer.translated or {})
        for index in range(0, len(pairs), 2):
            table[pairs[index]] = pairs[index + 1] if index + 1 < len(pairs) else " "
        self._printer.translated = {char: to for char, to in table.items() if char != to}

    # Text

    def _text_line(self, line: Line) -> None:
        if not line.chars.strip():
            self._space()
            return
        set_off = self._begins_set_off(line)
        if (
            self._pre is None
            and not self._waiting
            and (found := _LEFT_OF_MARGIN.match(line.chars)) is not None
        ):
            self._hang_label(line.part(found.start(1), found.end(1)))
            line = line.part(found.end())
        self._output([(line, self._font)], set_off=set_off)

    def _begins_set_off(self, line: Line) -> bool:
        """Whether a filled line is set off by blanks: it begins a new line then, and its columns stay.

        A tab alone begins none.
        """
        if line.chars[0] not in " \t" or self._pre is not None or self._waiting or self._goes_on:
            return False
        if line.chars[0] == " ":
            self._break()
        return self._begins_line()

    def _hang_label(self, label: Line) -> None:
        """What is printed left of the margin is the label of what follows at the margin."""
        self._end_item()
        builder = TextBuilder()
        self._printer.print(label, builder)
        self._maker.level = max(0, self._maker.level - 1)
        self._maker.start_item(builder.folded())
        self._item_open = True

    def _output(self, parts: list[tuple[Line, int]], *, set_off: bool = False) -> None:
        """Print the parts of one line, and put it where text goes now; the columns of a line that is set off stay."""
        out = TextBuilder()
        goes_on = False
        mark, self._font = self._font, 0
        for part, font in parts:
            goes_on = self._printer.print(part, out, font | mark)
        if self._waiting:
            self._label.add_text(out.build())
            if goes_on:
                return
            self._end_label()
            return
        self._spaced = False
        self._written += not self._goes_on
        self._goes_on = goes_on
        if self._pre is None:
            text = self._columns(out.build(), set_off=set_off)
            target = self._maker.text
        else:
            target, text = self._pre, out.build()
            self._shows_code |= bool(_CODE.search(text.chars)) or any(
                mark & Mark.CODE for mark in set(text.marks)
            )
            text = untabbed(text, self._stops) if self._stops else text
        if self._set_in and self._pre is None:
            target.add_own(NO_BREAK_SPACE * self._set_in)
        self._set_in = 0
        target.add_text(text)
        if not goes_on:
            target.add_own("\n")
        if self._centred and not goes_on:
            self._centred -= 1
            self._break()

    def _columns(self, text: Text, *, set_off: bool) -> Text:
        """A filled line whose tabs stand for columns: what stands before the one tab is a key, else its columns stay."""
        if self._break_due and text.chars.startswith("\t"):
            self._break_due = False  # the line before had a key, whose meaning goes on here
            return text
        if self._break_due:
            self._break_due = False
            self._maker.close()
        if not self._begins_line():
            return text
        begins_item = self._maker.labelled and self._maker.text.blank
        tabbed = "\t" in text.chars.strip("\t \n") and not begins_item
        key = _KEY.match(text.chars) if tabbed and not set_off else None
        self._after_key = key is not None and not _SENTENCE.search(key[1])
        if key is not None and self._after_key:
            self._maker.close()
            self._maker.text.add_text(cut(text, 0, key.end(1)))
            self._maker.close_as_label()
            return cut(text, key.end(), len(text))
        return _held(untabbed(text, self._stops)) if set_off or tabbed else text

    def _end_label(self) -> None:
        """The line that a macro waited for is complete."""
        waiting, self._waiting = self._waiting, ""
        text, self._label = self._label.folded(), TextBuilder()
        self._written = 0
        if waiting == "TP":
            self._maker.start_item(text)
            self._item_open = True
        elif len(text):
            self._maker.heading = 1 if waiting == "SH" else 2
            self._maker.text.add_text(text)
            self._maker.close()
            self._maker.heading = 0

    def _break(self) -> None:
        if self._pre is not None or self._waiting:
            return
        if self._after_key:
            self._break_due = True
        elif not self._begins_line():
            self._maker.break_line()

    def _begins_line(self) -> bool:
        if self._break_due:
            return True
        text = self._maker.text
        last = text.since(max(0, len(text) - _MOST_SPACES)).rstrip(" \n")
        return not last or last.endswith(LINE_BREAK)

    def _space(self) -> None:
        """Room between lines parts paragraphs, and lines that stay lines."""
        if self._waiting:
            return
        if self._pre is not None:
            self._pre.add_own("\n")
        else:
            self._flow_to_block()
            self._spaced, self._written = True, 0

    def _flow_to_block(self) -> None:
        self._maker.close()

    # Lines that stay lines, items

    def _break_pre(self) -> None:
        """End the block of lines, if one is open; what follows is another, as long as filling is off."""
        if self._pre is not None:
            self._close_pre()
            self._pre = TextBuilder()

    def _close_pre(self) -> None:
        if self._pre is None:
            return
        text = self._pre.build()
        code, self._shows_code = self._is_code or self._shows_code, False
        block = preformatted(text, level=self._maker.level, code=code)
        self._pre = TextBuilder()
        if block is not None:
            self._maker.add(block)

    def _end_item(self) -> None:
        self._written = 0
        self._break_pre()
        self._indent(-self._indents)
        self._maker.close()
        if self._item_open:
            self._maker.end_item()
            self._item_open = False

    def _end_items(self) -> None:
        """Come back to the margin of the page."""
        self._end_item()
        self._margins.clear()
        self._maker.level = 0
        self._indents = 0


def _spaced(arguments: list[Line], mark: int) -> list[tuple[Line, int]]:
    """The arguments with blanks between them, all in one font."""
    parts: list[tuple[Line, int]] = []
    for argument in arguments:
        if parts:
            parts.append((own_line(" "), mark))
        parts.append((argument, mark))
    return parts


def _held(text: Text) -> Text:
    """The text with no-break spaces for the blanks that stand for columns."""
    return replace(text, chars=_BLANKS.sub(lambda found: NO_BREAK_SPACE * len(found[0]), text.chars))
