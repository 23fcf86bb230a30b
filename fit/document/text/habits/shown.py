"""How far in from its text a document sets what it shows: a line that stands in as far is shown as well.

One line alone often tells too little: `mkdir logs` may be words, a title or a command. Where the document sets its
commands in by so many cells again and again, and hardly ever a paragraph, its place tells the reader the rest.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.running.displays import no_display
from fit.document.text.running.placed import STEP, Placed
from fit.document.text.signs.code import typed
from fit.document.text.signs.measure import closed, prose, sentence

DEEPER = 2
"""Cells by which what is shown stands in, at least."""
SEVERAL = 2
"""Pieces of program text that make a habit, at least."""
OFTEN = 2
"""How many times as many they are as paragraphs that are set in as far below words that lead to them, at least."""
ALWAYS = 4
"""How many times as many as all paragraphs, where nothing leads to a line or it has words of a sentence."""
LEADING = 3
"""Words of a line that leads to another without a sign, at most: `or`, `then type`."""
SIGNS = 3
"""Signs of program text in a line that are as good as a command that the reader knows."""
_SIGNS = re.compile(r"[$%^=_/\\<>|\[\]{}*#~+]|\w[(-]\w|\w\(\)|^[\"':.-]|\w::?\w|\d\w*,")
"""What program text has, and few words."""
_ASIDE = re.compile(r"\[.*\]|.*<[^<>\s]+@[^<>\s]+>\S?|(?i:or|and|then)")
"""A remark in brackets, a name with an address, a word between two examples."""
_LISTED = re.compile(r"\(?[A-Za-z][.)]|[-*o+]|\(?[ivxIVX]+[.)]")
_LABEL = re.compile(r"\(?[A-Z][a-z]*(?:[ -][A-Za-z\d]+)*:\)?")
"""Words that lead to what stands below them."""
_WORD = re.compile(r"[^\W\d_]{2}")
_PLAIN = re.compile(r"[\"'(]*[A-Za-z]?[a-z]+(?:['-][a-z]+)*[)\"'.,:;!?]*")


@dataclass(slots=True)
class _Run:
    """Blocks from number ``first`` on that no blank line parts, set in from the text above by ``shift`` cells."""

    first: int
    blocks: Sequence[Placed]
    lines: Sequence[Line]
    shift: int
    above: str
    """The last line of the text above where it leads to them, or nothing."""

    @property
    def code(self) -> bool:
        """Whether all of it was read as program text."""
        return all(one.block.code for one in self.blocks)


def with_shown(lines: Sequence[Line], placed: Sequence[Placed], base: int) -> list[Placed]:
    """The blocks in order, with program text made of what stands in as the program text of the document does."""
    kept: Counter[int] = Counter()
    told: Counter[int] = Counter()
    said: Counter[int] = Counter()

    def count(run: _Run) -> bool:
        if run.code:
            kept[run.shift] += 1
        elif _said(run):
            said[run.shift] += 1
            told[run.shift] += bool(run.above)
        return run.code

    def shown(run: _Run) -> bool:
        times = kept[run.shift]
        if run.code or times < max(SEVERAL, OFTEN * told[run.shift]):
            return run.code
        always = times >= ALWAYS * max(1, said[run.shift])
        found = _lines_shown(run, always) if len(run.lines) > 1 else _line_shown(run, always)
        if found:
            result.update(dict.fromkeys(range(run.first, run.first + len(run.blocks))))
            result[run.first] = _kept(run, base)
        return found

    result: dict[int, Placed | None] = {}
    _walk(lines, placed, count)
    if max(kept.values(), default=0) < SEVERAL:
        return list(placed)
    _walk(lines, placed, shown)
    parts = (result.get(index, one) for index, one in enumerate(placed))
    return [one for one in parts if one is not None]


def _walk(lines: Sequence[Line], placed: Sequence[Placed], shown: Callable[[_Run], bool]) -> None:
    """Ask of each run that is set in from a paragraph or an item above it whether it is ``shown``.

    Then that text leads to the next run too. What stands between blank lines at the left of the text is a run as well.
    """
    left, under = -1, 0  # of the text above: its column, and its number
    index = 0
    while index < len(placed):
        one = placed[index]
        line = lines[one.start]
        last = index + 1
        alone = last == len(placed) or placed[last].start > one.start
        if left >= 0 and alone and line.indent >= left + DEEPER and not line.crossing:
            while last < len(placed) and _goes_on(lines, placed[last - 1], placed[last], left):
                last += 1
            part = lines[one.start : placed[last - 1].end]
            shift = min(each.indent for each in part) - left
            if shown(_Run(index, placed[index:last], part, shift, _leading(lines, placed[under]))):
                index = last
                continue
        elif left >= 0 and alone and line.gap and line.indent <= left and _between(lines, one):
            run = _Run(
                index, [one], lines[one.start : one.end], line.indent - left, _leading(lines, placed[under])
            )
            if run.above and shown(run):
                left, index = -1, last
                continue
        left, under = _left(lines, placed[last - 1]), last - 1
        index = last


def _between(lines: Sequence[Line], one: Placed) -> bool:
    """Whether program text, or one line that is no term over its text, stands between blank lines at the left of the text."""
    single = one.end - one.start == 1 and one.block.kind in (Kind.PARAGRAPH, Kind.HEADING)
    if not (single or one.block.code):
        return False
    if one.end == len(lines):
        return True
    after, line = lines[one.end], lines[one.start]
    return after.gap > 0 and (one.block.code or after.indent < line.indent + DEEPER)


def _goes_on(lines: Sequence[Line], one: Placed, after: Placed, left: int) -> bool:
    line = lines[after.start]
    return after.start > one.start and not line.apart and line.indent >= left + DEEPER


def _left(lines: Sequence[Line], one: Placed) -> int:
    """The column at which the text of a block stands; -1 where it is no running text."""
    if one.block.kind not in (Kind.ITEM, Kind.PARAGRAPH):
        return -1
    hung = one.block.kind is Kind.ITEM and one.end - one.start > 1
    return min(line.indent for line in lines[one.start + hung : one.end])


def _leading(lines: Sequence[Line], one: Placed) -> str:
    """The last line of a text that leads to what stands below it by its colon, or because it has no end; or nothing."""
    text = lines[one.end - 1].text
    if text.endswith(":"):
        return text
    words = text.split()
    few = len(words) <= LEADING and all(word.isalpha() and word.islower() for word in words)
    return text if not closed(text) and (prose(text) or one.end - one.start > 1 or few) else ""


def _said(run: _Run) -> bool:
    """Whether paragraphs stand there: half of the lines read as text."""
    reading = sum(prose(line.text) for line in run.lines)
    return 2 * reading >= len(run.lines) and all(one.block.kind is Kind.PARAGRAPH for one in run.blocks)


def _lines_shown(run: _Run, always: bool) -> bool:
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
    if not plain or run.above == "" or any(_ended(text) for text in texts):
        return False
    signed = [typed(text) or _SIGNS.search(text) is not None for text in texts]
    return 2 * sum(signed) >= len(texts) and all(
        sign or not prose(text) for sign, text in zip(signed, texts, strict=True)
    )


def _ended(text: str) -> bool:
    """Whether words end a sentence, and no sign stands first."""
    return closed(text) and text.lstrip("\"'(")[:1].isalpha() and not typed(text)


def _marked(label: str) -> bool:
    """Whether a label is the sign, number or letter of a list."""
    return not any(map(str.isalpha, label)) or _LISTED.fullmatch(label) is not None


def _line_shown(run: _Run, always: bool) -> bool:
    """Whether a line alone is shown: by what leads to it, or by a sign of program text; ``always`` set in for that."""
    one, line, above = run.blocks[0].block, run.lines[0], run.above
    text = line.text
    if one.kind is Kind.ITEM:
        led = always and above != "" and line.gap > 0
        return led and not (_marked(one.label.chars) or prose(text) or closed(text))
    if one.kind not in (Kind.PARAGRAPH, Kind.HEADING):
        return False
    if no_display(text) or _ASIDE.fullmatch(text) or text.endswith(":") or sentence(text):
        return False
    signs = len(_SIGNS.findall(text))
    program = typed(text) or signs >= SIGNS
    if closed(text):
        if run.shift < DEEPER or all(_PLAIN.fullmatch(word) for word in text.split()):
            return False
        return not prose(text) and ((always and above != "") or typed(text))
    if line.gap == 0 and not above.endswith(":"):
        return (above != "" and signs > 0) or (always and typed(text))
    if run.shift < DEEPER:
        return signs > 0 and not prose(text) and _WORD.search(text) is not None
    if above:
        return always or not prose(text)
    return not prose(text) and (program or (always and signs > 0))


def _kept(run: _Run, base: int) -> Placed:
    """A run as one piece of program text, as deep as its first block."""
    first = run.blocks[0]
    indent = min(line.indent for line in run.lines)
    flat = first.block.kind in (Kind.HEADING, Kind.TABLE, Kind.ITEM)
    level = int(indent - base >= STEP) if flat else first.block.level
    block = Block(Kind.PREFORMATTED, lines=keep_lines(run.lines), level=level, code=True)
    return Placed(block, first.start, run.blocks[-1].end)
