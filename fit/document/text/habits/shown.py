"""How far in from its text a document sets what it shows: a line that stands in as far is shown as well.

One line alone often tells too little: `mkdir logs` may be words, a title or a command. Where the document sets its
commands in by so many cells again and again, and hardly ever a paragraph, its place tells the reader the rest.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.habits.set_in_runs import DEEPER, Run, walk
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.running.displays import no_display
from fit.document.text.running.placed import STEP, Placed
from fit.document.text.signs.code import typed
from fit.document.text.signs.measure import closed, prose, sentence, starts_small
from fit.document.text.signs.rules import ruled_off

SEVERAL = 2
"""Pieces of program text that make a habit, at least."""
OFTEN = 2
"""How many times as many they are as paragraphs that are set in as far below words that lead to them, at least."""
ALWAYS = 4
"""How many times as many as all paragraphs, where nothing leads to a line or it has words of a sentence."""
COLUMNS = 3
"""Columns of what a program printed, at least: two may be keys and what they mean."""
SHARE = 4
"""One of so many rows, at most, has such words in what a program printed."""
SIGNS = 3
"""Signs of program text in a line that are as good as a command that the reader knows."""
_SIGNS = re.compile(r"[$%^=_/\\<>|\[\]{}*#~+]|\w[(-]\w|\w\(\)|^[\"':.-]|\w::?\w|\d\w*,")
"""What program text has, and few words."""
_RULES = re.compile(r"[-=]{2,}(?:[+|]| +[-=]{2})")
"""Rules between the columns of a table."""
_ASIDE = re.compile(r"\[[\w\"'].*\]|.*<[^<>\s]+@[^<>\s]+>\S?|(?i:or|and|then)")
"""A remark in brackets, a name with an address, a word between two examples."""
_LISTED = re.compile(r"\(?[A-Za-z][.)]|[-*o+]|\(?[ivxIVX]+[.)]")
_LABEL = re.compile(r"\(?[A-Z][a-z]*(?:[ -][A-Za-z\d]+)*:\)?")
"""Words that lead to what stands below them."""
_WORD = re.compile(r"[^\W\d_]{2}")
_MEANT = re.compile(r"(?<![^\s(])[A-Za-z][a-z]+,? [a-z]{2,}\b")
"""Words that go on in small letters, as what a key means does."""
_PLAIN = re.compile(r"[\"'(]*[A-Za-z]?[a-z]+(?:['-][a-z]+)*[)\"'.,:;!?]*")


def with_shown(lines: Sequence[Line], placed: Sequence[Placed], base: int) -> list[Placed]:
    """The blocks in order, with program text made of what stands in as the program text of the document does."""
    kept: Counter[int] = Counter()
    stay: Counter[int] = Counter()
    rows: Counter[int] = Counter()
    told: Counter[int] = Counter()
    said: Counter[int] = Counter()
    names: set[str] = set()

    def count(run: Run) -> bool:
        if run.code:
            kept[run.shift] += 1
            names.update(line.text.partition(" ")[0] for line in run.lines)
        elif _said(run):
            said[run.shift] += 1
            told[run.shift] += bool(run.above)
        stay[run.shift] += run.kept
        rows[run.shift] += len(run.blocks) == 1 and run.blocks[0].block.kind is Kind.TABLE
        return run.code

    def shown(run: Run) -> bool:
        times = kept[run.shift]
        if run.code:
            return True
        always = stay[run.shift] >= ALWAYS * max(1, said[run.shift])
        found = (
            habit and always and (_torn(run) or (stay[run.shift] >= OFTEN * rows[run.shift] and _output(run)))
        )
        if not found and habit and times >= max(SEVERAL, OFTEN * told[run.shift]):
            always = times >= ALWAYS * max(1, said[run.shift])
            found = _lines_shown(run, always) if len(run.lines) > 1 else _line_shown(run, always, names)
        if found or _torn_program(run):
            found = True
            result.update(dict.fromkeys(range(run.first, run.first + len(run.blocks))))
            result[run.first] = _kept(run, base)
        return found or run.kept

    result: dict[int, Placed | None] = {}
    walk(lines, placed, count)
    habit = max(stay.values(), default=0) >= SEVERAL
    walk(lines, placed, shown)
    parts = (result.get(index, one) for index, one in enumerate(placed))
    return [one for one in parts if one is not None]


def _said(run: Run) -> bool:
    """Whether paragraphs stand there: half of the lines read as text."""
    reading = sum(prose(line.text) for line in run.lines)
    return 2 * reading >= len(run.lines) and all(one.block.kind is Kind.PARAGRAPH for one in run.blocks)


def _lines_shown(run: Run, always: bool) -> bool:
    """Whether lines are shown of which some alone read as a title, a text, an item or a row of a table."""
    line = run.lines[0]
    if not always or (line.gap == 0 and not run.above.endswith(":")):
        return False
    if any(one.block.kind is Kind.ITEM and _marked(one.block.label.chars) for one in run.blocks):
        return False
    texts = [each.text for each in run.lines]
    if _LABEL.fullmatch(texts[0]) or 2 * sum(prose(text) or sentence(text) for text in texts) > len(texts):
        return False
    if any(one.block.code for one in run.blocks):
        return True
    plain = all(one.block.kind in (Kind.PARAGRAPH, Kind.HEADING, Kind.PREFORMATTED) for one in run.blocks)
    if len(run.blocks) == 1 and run.blocks[0].block.kind is Kind.PARAGRAPH:
        plain = not (prose(texts[0]) and starts_small(texts[1]))  # a sentence that was wrapped
    if not plain or run.above == "" or any(_ended(text) for text in texts):
        return False
    signed = [typed(text) or _SIGNS.search(text) is not None for text in texts]
    return 2 * sum(signed) >= len(texts) and all(
        sign or not prose(text) for sign, text in zip(signed, texts, strict=True)
    )


def _torn(run: Run) -> bool:
    """Whether lines that are led to came apart into pieces of several kinds: no list, no table and no text does."""
    line = run.lines[0]
    kinds = {one.block.kind for one in run.blocks}
    if run.shift < DEEPER or len(kinds) < 2 or _LABEL.fullmatch(line.text):
        return False
    first = run.blocks[0]
    if prose(line.text) and run.lines[first.end - first.start - 1].text.endswith(":"):
        return False  # a sentence that leads to the rest by itself
    if not run.above.endswith(":") and (line.gap == 0 or not (run.above or Kind.PREFORMATTED in kinds)):
        return False
    if any(_filled(run, one) for one in run.blocks) or any(_ruled(one.text) for one in run.lines):
        return False
    marked = sum(one.block.kind is Kind.ITEM and _listed(one.block.label.chars) for one in run.blocks)
    texts = [each.text for each in run.lines]
    reading = sum(prose(text) or sentence(text) for text in texts)
    return 2 * reading <= len(texts) and 2 * marked <= len(run.blocks)


def _torn_program(run: Run) -> bool:
    """Whether program text came apart that a colon leads to, or of which all but its first lines stand deeper than these.

    That needs no habit of the document.
    """
    if not any(one.block.code for one in run.blocks) or not _torn(run):
        return False
    if any(_tells(run, one) for one in run.blocks):
        return False
    first = run.blocks[0]
    rest = run.lines[first.end - first.start :]
    deeper = first.block.code and min(line.indent for line in rest) > run.lines[0].indent
    return deeper or run.above.endswith(":")


def _tells(run: Run, one: Placed) -> bool:
    """Whether a block is an item with a number, running text that ends a sentence, or keys with words that say what they mean."""
    start = run.blocks[0].start
    texts = [line.text for line in run.lines[one.start - start : one.end - start]]
    if one.block.kind is Kind.ITEM:
        text = one.block.text.chars
        return text[:1].isalpha() and _MEANT.search(text) is not None
    if one.block.kind is Kind.TABLE:
        return 2 * sum(_MEANT.search(row[-1].chars) is not None for row in one.block.rows) > len(texts)
    return one.block.kind is Kind.PARAGRAPH and texts[-1].endswith(".") and any(map(prose, texts))


def _ruled(text: str) -> bool:
    """Whether a line is a rule, or rules between the columns of a table."""
    return ruled_off(text) or _RULES.search(text) is not None


def _filled(run: Run, one: Placed) -> bool:
    """Whether a block is running text of several lines, each of which reads so."""
    start = run.blocks[0].start
    part = run.lines[one.start - start : one.end - start]
    return one.block.kind is Kind.PARAGRAPH and len(part) > 1 and all(prose(line.text) for line in part)


def _output(run: Run) -> bool:
    """Whether a table without heads that is led to is what a program printed: no words beside a key, and none for one."""
    table = run.blocks[0].block
    if table.kind is not Kind.TABLE or table.header_rows or len(table.rows[0]) < COLUMNS:
        return False
    if run.shift < DEEPER or not run.above.endswith(":"):
        return False
    worded = sum(any(_MEANT.search(cell.chars) for cell in row) for row in table.rows)
    return SHARE * worded <= len(table.rows)


def _ended(text: str) -> bool:
    """Whether words end a sentence, and no sign stands first."""
    return closed(text) and text.lstrip("\"'(")[:1].isalpha() and not typed(text)


def _marked(label: str) -> bool:
    """Whether a label is the sign, number or letter of a list."""
    return not any(map(str.isalpha, label)) or _LISTED.fullmatch(label) is not None


def _listed(label: str) -> bool:
    """Whether a label is the sign of a list, or a key of one word with a dash behind it."""
    return _marked(label) or label.partition(" ")[2] in {"-", "--"}


def _line_shown(run: Run, always: bool, names: set[str]) -> bool:
    """Whether a line alone is shown: by what leads to it, or by a sign of program text; ``always`` set in for that.

    ``names`` are the first words of what is shown elsewhere.
    """
    one, line, above = run.blocks[0].block, run.lines[0], run.above
    text = line.text
    if one.kind is Kind.ITEM:
        led = always and above != "" and line.gap > 0
        return led and not (_marked(one.label.chars) or prose(text))
    if one.kind not in (Kind.PARAGRAPH, Kind.HEADING) or (one.kind is Kind.HEADING and one.note):
        return False  # its like over text say what a title with a note is
    if no_display(text) or _ASIDE.fullmatch(text) or text.endswith(":") or sentence(text):
        return False
    if text[0] == "(" and text[-1] == ")" and prose(text):
        return False
    signs = len(_SIGNS.findall(text))
    program = signs >= SIGNS
    if closed(text):
        if run.shift < DEEPER or all(_PLAIN.fullmatch(word) for word in text.split()):
            return False
        return not prose(text) and (always and above != "")
    if line.gap == 0 and not above.endswith(":"):
        return (above != "" and signs > 0) or (always and program and not prose(text))
    if run.shift < DEEPER:
        return signs > 0 and not prose(text) and _WORD.search(text) is not None
    if above:
        return always or not prose(text)
    named = text[0].islower() and text.partition(" ")[0] in names
    return not prose(text) and (program or (always and (signs > 0 or named)))


def _kept(run: Run, base: int) -> Placed:
    """A run as one piece of program text, as deep as its first block."""
    first = run.blocks[0]
    indent = min(line.indent for line in run.lines)
    flat = first.block.kind in (Kind.HEADING, Kind.TABLE, Kind.ITEM)
    level = int(indent - base >= STEP) if flat else first.block.level
    block = Block(Kind.PREFORMATTED, lines=keep_lines(run.lines), level=level, code=True)
    return Placed(block, first.start, run.blocks[-1].end)
