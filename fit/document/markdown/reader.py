"""Markdown to blocks: CommonMark with tables and strikethrough.

The parser tells lines but no columns, so each piece of text is looked for in the lines of its block, from
where the last one ended. HTML inside goes through the reader of HTML.
"""

from __future__ import annotations

import html
import re
from collections.abc import Sequence
from pathlib import PurePath
from typing import Final

from fit.document.block_maker import LINE_BREAK, BlockMaker, at_level, cell_text, joined
from fit.document.blocks import Block, Document, Kind, Mark, Text
from fit.document.characters import TextBuilder, cut, fold
from fit.document.html.lists import Lists
from fit.document.html.reader import read_fragment, without_marks
from fit.document.html.remarks import picture_remarks
from fit.document.html.tree import BLOCKS
from fit.document.links import Links
from fit.document.markdown.asides import as_quotations
from fit.document.markdown.parser import DEEPEST, Token, parse
from fit.document.preformatted import preformatted
from fit.document.wording import counted

_MARKS: Final = {"strong_open": Mark.BOLD, "em_open": Mark.UNDERLINE}
_LINE_END: Final = re.compile(r"\r\n?|\n")
_LONGEST_LABEL: Final = 1100
"""Characters before the address in a definition of a link; the standard allows a label of 999."""
_PREFIX: Final = r"[ ]{0,3}(?:>|[-+*](?=[ ])|[0-9]{1,9}[.)](?=[ ]))"
_TOO_DEEP: Final = re.compile(rf"^((?:{_PREFIX}){{{DEEPEST // 3}}})(?:{_PREFIX})+", re.MULTILINE)
_FOOTNOTE: Final = re.compile(r"\s*\[\^[^\]\s]{1,40}\]:")
_STARTS_ANEW: Final = re.compile(
    r"\s*(?:\[\^[^\]\s]{1,40}\]:|[\u2022\u2023\u2043\u25aa\u25ab\u25cf\u25e6][ ])"
)
"""Lines that go on by the standard, but are footnotes or items to a reader."""
_POWER: Final = re.compile(r"<sup>\s*[-+\u2212]?[0-9]", re.IGNORECASE)
_CELL_END: Final = re.compile(r"(?<!\\)\|")
_FRONT: Final = re.compile(r"\A---[ \t]*\n(?:[^\n]*\n)*?(?:---|\.\.\.)[ \t]*(?:\n|\Z)")
_FIELD: Final = re.compile(r"^[A-Za-z][\w -]*:", re.MULTILINE)
_PICTURE: Final = re.compile(r"<img\b", re.IGNORECASE)
_ALT: Final = re.compile(r"\balt\s*=\s*(?:\"([^\"]*)\"|'([^']*)')", re.IGNORECASE)
_HREF: Final = re.compile(r"<a\b[^>]*?\bhref\s*=\s*(?:\"([^\"]*)\"|'([^']*)')", re.IGNORECASE)
_TAG_NAME: Final = re.compile(r"</?([a-zA-Z][a-zA-Z0-9]*)")
_LINE_BREAK_TAG: Final = re.compile(r"<br\s*/?>", re.IGNORECASE)


def read_markdown(source: str, name: str, encoding: str) -> Document:
    """Read a Markdown document. Never raises: any text is Markdown."""
    reader = _Reader(source, name)
    reader.run()
    return Document(source, tuple(reader.finished()), "markdown", encoding, name, tuple(reader.remarks))


class _Reader:
    def __init__(self, source: str, name: str) -> None:
        self._source = without_marks(source)
        self._lines = [0, *(found.end() for found in _LINE_END.finditer(source)), len(source)]
        self._maker = BlockMaker()
        self._links = Links(PurePath(name).name)
        self._marks: list[int] = []
        self._cell: TextBuilder | None = None
        self._rows: list[list[Text]] = []
        self._header_rows = 0
        self._row: Token | None = None
        self._numbers: list[int | None] = []
        """The open lists: the next number, None where they have bullets."""
        self._lists = Lists()
        """The lists that tags in running text opened."""
        self._open_links: list[tuple[Text, int]] = []
        self._cursor = 0
        self._defined: dict[str, int] = {}
        """For each address that a definition gives, where the definition begins."""
        self._pictures = 0
        self._checked = 0
        """The blocks that were looked at for footnotes."""
        self.remarks: list[str] = []

    def run(self) -> None:
        text = self._source
        front = _FRONT.match(text)
        if front is not None and _FIELD.search(front.group()):
            self._front_matter(front.end())
            # Blank lines in its place keep the numbers of the lines.
            text = "\n" * front.group().count("\n") + text[front.end() :]
        text = as_quotations(text)
        text, flattened = _TOO_DEEP.subn(r"\1", text)
        if flattened:
            self.remarks.append(f"{counted(flattened, 'line')} nested deeper than {DEEPEST // 3} moved out")
        tokens, references = parse(text)
        self._defined = {html.unescape(address): self._lines[line] for address, line in references}
        for token in tokens:
            self._block(token)
        self._maker.close()
        self._finish()

    def _finish(self) -> None:
        """Note the addresses that no link uses, and say what was done."""
        for address in self._defined:
            self._note(_own(address), "", self._cursor)
        self.remarks += self._links.remarks()
        self.remarks += picture_remarks(self._pictures)

    def finished(self) -> list[Block]:
        return [*self._maker.blocks, *self._links.notes()]

    def _front_matter(self, end: int) -> None:
        builder = TextBuilder()
        builder.add_run(self._source[:end].rstrip("\n"), 0)
        lines = tuple(split for split in _as_lines(builder.build()))
        self._maker.add(Block(Kind.FURNITURE, lines=lines, note="front matter"))
        self.remarks.append(f"{counted(len(lines), 'line')} of front matter taken out")

    # Blocks

    def _block(self, token: Token) -> None:
        maker = self._maker
        if token.map is not None and token.type not in ("inline", "th_open", "td_open"):
            self._cursor = max(self._cursor, self._lines[token.map[0]])
        match token.type:
            case "heading_open":
                maker.close()
                maker.heading = int(token.tag[1])
            case "heading_close":
                maker.close()
                maker.heading = 0
            case "paragraph_close":
                maker.close()
                self._footnotes()
            case "blockquote_open":
                maker.start_quotation()
            case "blockquote_close":
                maker.end_quotation()
            case "bullet_list_open" | "ordered_list_open":
                maker.close()
                self._numbers.append(None if token.tag == "ul" else int(token.attrs.get("start", 1)))
            case "bullet_list_close" | "ordered_list_close":
                self._numbers.pop()
            case "list_item_open":
                maker.start_item(self._label(token))
            case "list_item_close":
                maker.end_item()
            case "fence" | "code_block":
                self._code(token)
            case "html_block":
                self._html(token)
            case "hr":
                self._rule(token)
            case "inline":
                self._inline(token)
            case _:
                self._table(token)

    def _footnotes(self) -> None:
        """Make notes of the paragraphs just closed that begin as a footnote does, which the standard does not know."""
        blocks = self._maker.blocks
        while self._checked < len(blocks):
            block = blocks[self._checked]
            mark = _FOOTNOTE.match(block.text.chars) if block.kind is Kind.PARAGRAPH else None
            if mark is not None:
                label, text = cut(block.text, 0, mark.end()), cut(block.text, mark.end(), len(block.text))
                blocks[self._checked] = Block(Kind.NOTE, fold(text), fold(label), block.level)
            self._checked += 1

    def _label(self, token: Token) -> Text:
        """The bullet or number as written."""
        builder = TextBuilder()
        number = self._numbers[-1]
        label = token.markup if number is None else token.info + token.markup
        if number is not None and token.info.isdecimal() and int(token.info) != number:
            # Every item may be written "1."; what a reader of Markdown is shown are the numbers in order.
            label = f"{number}{token.markup}"
        if number is not None:
            self._numbers[-1] = number + 1
        written = token.info + token.markup
        at = self._source.find(written, self._cursor, self._end_of(token))
        if at < 0:
            builder.add_own(label)
        elif label == written:
            builder.add_run(label, at)
        else:
            builder.add(label, [at] * len(label))
        self._cursor = max(self._cursor, at + len(written)) if at >= 0 else self._cursor
        return builder.build()

    def _end_of(self, token: Token) -> int:
        return self._lines[token.map[1]] if token.map is not None else len(self._source)

    def _code(self, token: Token) -> None:
        """Code keeps its lines; each stands in one line of the source, behind what indents or quotes it."""
        assert token.map is not None
        first = token.map[0] + (token.type == "fence")
        builder = TextBuilder()
        for number, line in enumerate(token.content.split("\n")[:-1]):
            if number:
                builder.add_own("\n")
            begin, end = self._lines[first + number], self._lines[first + number + 1]
            at = self._source.rfind(line, begin, end) if line else begin
            builder.add(line, range(at, at + len(line)) if at >= 0 else [begin] * len(line))
        block = preformatted(builder.build(), level=self._maker.level, code=True)
        if block is not None:
            self._maker.add(block)
        self._cursor = max(self._cursor, self._end_of(token))

    def _html(self, token: Token) -> None:
        assert token.map is not None
        begin, end = self._lines[token.map[0]], self._lines[token.map[1]]
        page = read_fragment(self._source, begin, end, self._links)
        for block in page.blocks:
            self._maker.add(at_level(block, self._maker.level))
        self._pictures += page.pictures
        self.remarks += (remark for remark in page.remarks if remark not in self.remarks)
        self._cursor = max(self._cursor, end)

    def _rule(self, token: Token) -> None:
        assert token.map is not None
        begin, end = self._lines[token.map[0]], self._lines[token.map[1]]
        builder = TextBuilder()
        for at in range(begin, end):
            if self._source[at] in "-*_" and len(builder) < 3:
                builder.add_run(self._source[at], at)
        self._maker.add(Block(Kind.PREFORMATTED, level=self._maker.level, lines=(builder.build(),)))

    def _table(self, token: Token) -> None:
        match token.type:
            case "table_open":
                self._maker.close()
                self._rows, self._header_rows = [], 0
            case "thead_close":
                self._header_rows = len(self._rows)
            case "tr_open":
                self._rows.append([])
                self._row = token
            case "tr_close":
                self._keep_excess()
            case "th_open" | "td_open":
                self._cell = TextBuilder()
            case "th_close" | "td_close":
                assert self._cell is not None
                self._rows[-1].append(cell_text(self._cell.build()))
                self._cell = None
            case "table_close":
                rows = tuple(map(tuple, self._rows))
                self._maker.add(
                    Block(Kind.TABLE, level=self._maker.level, rows=rows, header_rows=self._header_rows)
                )

    def _keep_excess(self) -> None:
        """Cells beyond the last column are no part of a table by its rules; their words go into the last cell."""
        if self._row is None or self._row.map is None or not self._rows[-1]:
            return
        begin, end = self._lines[self._row.map[0]], self._lines[self._row.map[1]]
        line = self._source[begin:end].rstrip("\r\n| \t")
        first = len(line) - len(line.lstrip(" \t>"))
        first += line.startswith("|", first)
        bars = [first - 1, *(bar.start() for bar in _CELL_END.finditer(line, first)), len(line)]
        columns = len(self._rows[-1])
        if len(bars) - 1 <= columns or not line[bars[columns] :].strip("| \t"):
            return
        excess = TextBuilder()
        excess.add_run(line[bars[columns] :], begin + bars[columns])
        self._rows[-1][-1] = joined([self._rows[-1][-1], excess.folded()])
        self.remarks.append(
            "a table row holds more cells than its table; the words of the others were kept in its last"
        )

    # Text inside blocks

    def _inline(self, token: Token) -> None:
        end = self._end_of(token)
        if self._cell is None and token.map is not None:
            self._cursor = max(self._cursor, self._lines[token.map[0]])
        self._pieces(token.children or (), end)

    def _pieces(self, tokens: Sequence[Token], end: int) -> None:
        maker, target = self._maker, self._target()
        for token in tokens:
            match token.type:
                case "text":
                    self._put(target, token.content, token.content, end, maker.mark)
                case "text_special":
                    self._put(target, token.content, token.markup, end, maker.mark)
                case "code_inline":
                    self._put(target, token.content, token.content, end, maker.mark | Mark.CODE)
                case "softbreak" if self._cell is None and _STARTS_ANEW.match(self._source, self._cursor):
                    maker.close()
                    target = maker.text
                case "softbreak":
                    target.add("\n", (self._cursor,), maker.mark)
                case "hardbreak":
                    self._break(target)
                case "strong_open" | "em_open":
                    self._marks.append(maker.mark)
                    maker.mark |= _MARKS[token.type]
                case "strong_close" | "em_close":
                    maker.mark = self._marks.pop()
                case "link_open":
                    self._open_links.append((_own(str(token.attrs.get("href", ""))), len(target)))
                case "link_close":
                    self._close_link(target, end)
                case "image":
                    self._pieces(token.children or (), end)
                    self._pictures += 1
                case "html_inline" if _LINE_BREAK_TAG.fullmatch(token.content):
                    self._break(target)
                case "html_inline":
                    self._tag(token.content, target, end)
                    target = self._target()
                case _:
                    pass  # the marks of strikethrough hold no words

    def _tag(self, tag: str, target: TextBuilder, end: int) -> None:
        """A tag in running text: what a picture or a link holds is kept, a block parts words, the others hold none."""
        name = _TAG_NAME.match(tag)
        if name is not None and name[1].lower() in BLOCKS:
            self._block_tag(tag, name[1].lower())
            return
        if _PICTURE.match(tag):
            self._pictures += 1
        if (
            len(target)
            and target.since(len(target) - 1).isdigit()
            and _POWER.match(self._source, self._found(tag, end))
        ):
            target.add_own("^", self._maker.mark)
        found = (_ALT if _PICTURE.match(tag) else _HREF).search(tag)
        if found is None:
            return
        value = next((group for group in found.groups() if group), "")
        if _PICTURE.match(tag):
            self._put(target, html.unescape(value), value, end, self._maker.mark)
        else:
            self._note(_own(value), "", end)

    def _block_tag(self, tag: str, name: str) -> None:
        """A tag that begins or ends a block in running text: a line of a cell, else a paragraph."""
        closes = tag.startswith("</")
        if self._cell is None:
            self._maker.close()
        else:
            self._break(self._cell)
        if name in ("ul", "ol") and closes:
            self._lists.leave()
        elif name in ("ul", "ol"):
            self._lists.enter(name, {}, 0)
        elif name == "li" and not closes:
            self._target().add_own(f"{self._lists.label(None)} ")

    def _target(self) -> TextBuilder:
        """Where text goes now."""
        return self._maker.text if self._cell is None else self._cell

    def _found(self, tag: str, end: int) -> int:
        """Where the next tag of this wording stands."""
        return max(0, self._source.find(tag, self._cursor, end))

    def _break(self, target: TextBuilder) -> None:
        target.add(LINE_BREAK, (self._cursor,))

    def _put(self, target: TextBuilder, chars: str, written: str, end: int, mark: int) -> None:
        """Add a piece of text, found in the source as ``written`` or, where lines were joined, bit by bit."""
        if not chars:
            return
        at = self._source.find(written, self._cursor, end)
        if at >= 0:
            self._cursor = at + len(written)
            target.add(chars, _spread(at, chars, written), mark)
            return
        for char in chars:
            found = self._source.find(char, self._cursor, end) if not char.isspace() else -1
            target.add(char, (found if found >= 0 else self._cursor,), mark)
            self._cursor = found + 1 if found >= 0 else self._cursor

    def _close_link(self, target: TextBuilder, end: int) -> None:
        address, begin = self._open_links.pop()
        self._note(address, target.since(begin), end)

    def _note(self, address: Text, shown: str, end: int) -> None:
        """Note an address with its place: behind the text, where it is written there rather than by reference."""
        chars = address.chars
        at = self._source.find(chars, self._cursor, end)
        if at < 0 and chars in self._defined:
            begin = self._defined[chars]
            at = self._source.find(chars, begin, begin + len(chars) + _LONGEST_LABEL)
        builder = TextBuilder()
        if at >= 0:
            builder.add_run(chars, at)
            address = builder.build()
        self._links.add(address, shown)


def _spread(at: int, chars: str, written: str) -> Sequence[int]:
    """A place for each character of a piece written as ``written``: an escape, an entity, or itself."""
    if chars == written:
        return range(at, at + len(chars))
    return [at + len(written) - 1 if written.startswith("\\") else at] * len(chars)


def _own(chars: str) -> Text:
    builder = TextBuilder()
    builder.add_own(html.unescape(chars))
    return builder.build()


def _as_lines(text: Text) -> list[Text]:
    block = preformatted(text, level=0, code=False)
    return list(block.lines) if block is not None else []
