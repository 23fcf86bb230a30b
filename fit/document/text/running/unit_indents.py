"""Whether a line stands where the lines of the unit above it do, and its text may so go on there."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.lists.entries import label_end
from fit.document.text.running.addresses import set_in_address
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.neighbours import (
    closes_bracket,
    inner_column,
    left_open,
    next_key,
    set_in_first,
    stops_short,
)
from fit.document.text.running.unit import Unit
from fit.document.text.signs.code import typed, with_options
from fit.document.text.signs.joins import FAR, NEAR, reads, shortfall
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

DEEPER = 4
"""Cells by which the later lines of an item may stand deeper than its first; two or four times as many in mid-sentence."""
_NAME = re.compile(r"[A-Za-z_$%.][\w$%]*(?:[._:$%][\w$%.:]*\w)[:;]*")
"""A name with signs between its letters: `lamp.oil`, `light_lamp:`."""
_NAME_CALLED = re.compile(r"(?!(?:and|or|the|an?|in|to|of|from|at|on|see|with|by|as|for|is|be)$)[a-z][\w.-]*")
"""The name of a command, no small word of a sentence."""
_GIVEN = re.compile(r"(?:(?:^| )(?:--?[A-Za-z][\w-]*(?:=\S+)?|~?(?:/[\w.-]+){2,}/?))+")
"""Options and paths, and nothing else."""
_BRACKET = re.compile(r"\([a-z]+ [a-z]+ [^()]*\)\.?")
"""A remark in brackets, a line by itself: it belongs to the text above, however deep it stands."""
_SAID_OPTION = re.compile(r"--?[A-Za-z][\w-]*,? (?=[a-z])")
"""An option with small letters behind it, or a comma before them: it may stand in a sentence."""
_DASHES = "-\u2013\u2014"
_LAST_WORDS = re.compile(r" [a-z]+ [a-z]+$")


def indents_after_page(lines: Sequence[Line], unit: Unit, index: int) -> set[int]:
    """Where a unit may go on after a page end: at its continuation, or where its text starts."""
    if unit.end - unit.start > 1:
        return {lines[index - 1].indent}
    if unit.marker:
        return {unit.text}
    if unit.key:
        return {unit.text, lines[index - 1].indent}
    indent = lines[index - 1].indent
    following = lines[index + 1].indent if index + 1 < len(lines) and not lines[index + 1].gap else indent
    return {indent, following} if following <= indent else {indent}


def indent_fits(lines: Sequence[Line], unit: Unit, index: int, right: int, chunks: dict[int, Chunk]) -> bool:
    above, below = lines[index - 1], lines[index]
    full = shortfall(above, below, right) < 0
    if unit.marker is not None and full and closes_bracket(above.text, below.text, full=True):
        return True
    if unit.end - unit.start > 1:
        shift = below.indent - (unit.text if unit.cut and index == unit.start + 2 else above.indent)
        if shift == 0:
            return True
        if chunks[index].first_line or (unit.key and below.indent == lines[unit.start].indent):
            return False
        said = prose(below.text) or closed(below.text)
        near = abs(shift) <= 2 or (said and prose(above.text) and not typed(below.text))
        ends = near and closed(below.text) and reads(above.text, below.text)
        both = prose(above.text) and prose(below.text)
        full = full or ((ends or (both and abs(shift) == 1)) and shortfall(above, below, right) <= FAR)
        full = full or (both and shortfall(above, below, right) <= NEAR)
        if near and _open_end(above, below, right):
            return True
        return near and full and starts_small(below.text) and not closed(above.text)
    if unit.marker is not None or unit.key:
        if unit.marker and (
            _over_its_meaning(unit.text, above, below, right)
            or _shown_below(lines, index, unit.text)
            or _typed_below(lines, index, unit.text, right)
        ):
            return False
        if abs(below.indent - unit.text) <= 1:
            return True
        if below.indent > unit.text:
            if unit.key and _BRACKET.fullmatch(below.text):
                return True
            if above.text.endswith(":") and not (starts_small(below.text) and prose(below.text)):
                return False
            stopped = full and prose(above.text) and hangs(above.text) and above.text[-1].isalpha()
            if stopped and not typed(below.text):
                return True
            if inner_column(above, below.indent):
                return full or stops_short(above, below)
            small = (full and starts_small(below.text)) or stops_short(above, below)
            return small and below.indent - unit.text <= _reach(above, below, right)
        if unit.key and below.indent > above.indent:
            return full or stops_short(above, below)
        if unit.key and below.indent == above.indent:
            open_ = not closed(above.text) and starts_small(below.text)
            both = prose(below.text) and prose(above.text)
            if open_ and both and shortfall(above, below, right) <= FAR:
                return True
            return full and (open_ or both or hangs(above.text))
        if unit.key:
            return False
        dashed = unit.marker is not None and unit.marker.label[0] in _DASHES
        words = (
            below.text if dashed else below.text.lstrip(_DASHES + " ")
        )  # a dash of the sentence may come first
        small = starts_small(words) and not closed(above.text)
        near = shortfall(above, below, right) <= NEAR and prose(above.text) and prose(words)
        if below.indent >= above.indent:
            aside = near and below.text[0] == "(" and not closed(above.text)
            return full or small or aside or (prose(above.text) and hangs(above.text))
        if set_in_first(lines, index, right) or _open_end(above, below, right):
            return True
        return (small or _closes_bracket(above.text, below.text)) and (full or near)
    if below.indent == above.indent:
        return not (chunks[index].first_line and below.indent > chunks[index].base)
    said = prose(below.text) or closed(below.text)
    short = typed(below.text) or " " not in below.text or below.end < right - FAR
    if not said and short and above.text.endswith(":"):
        return False
    if set_in_address(lines, index):
        return False
    if below.indent < above.indent:
        if full and above.text.endswith(",") and _enumerates(above, below):
            return True
        small = starts_small(below.text) and not closed(above.text)
        small = small or _closes_bracket(above.text, below.text)
        shown = index > 1 and not above.gap and lines[index - 2].text.endswith(":")
        leads = below.text.endswith(":") or shortfall(above, below, right) > FAR
        if shown and leads and lines[index - 2].indent == below.indent:
            return False
        if small and shortfall(above, below, right) <= NEAR and not shown and not typed(above.text):
            return reads(above.text, below.text)
        if _open_end(above, below, right):
            return True
        wide = full or set_in_first(lines, index, right)
        return prose(above.text) and (small or (wide and not next_key(lines, index, right)))
    room = not full or below.text.count(" -") > 1
    if room and prose(above.text) and with_options(below.text) and not prose(below.text):
        return False  # a command that a sentence leads to
    near = full or (prose(above.text) and shortfall(above, below, right) <= NEAR)
    if below.indent - above.indent <= DEEPER and _open_end(above, below, right):
        return True
    if inner_column(above, below.indent) and stops_short(above, below) and reads(above.text, below.text):
        return True
    if near and (
        below.indent - above.indent == label_end(above.text) or _hanging(lines, index, chunks[index])
    ):
        return True
    told = prose(above.text) or (_LAST_WORDS.search(above.text) and reads(above.text, below.text))
    sentence = bool(told) and starts_small(below.text) and not closed(above.text)
    return sentence and (prose(below.text) or closed(below.text))


def _reach(above: Line, below: Line, right: int) -> int:
    """Cells by which the second line of an item may stand deeper than its text, where the one above stops in mid-sentence.

    Who sets it in by tabs may go far: the more surely it goes on, the farther.
    """
    if not (reads(above.text, below.text) and starts_small(below.text)):
        return DEEPER
    missing = shortfall(above, below, right)
    if missing < 0 or hangs(above.text):
        return (4 if prose(below.text) or closed(below.text) else 2) * DEEPER
    near = prose(above.text) and prose(below.text) and missing <= FAR
    return 2 * DEEPER if near or (left_open(above.text) and missing <= NEAR) else DEEPER


def _open_end(above: Line, below: Line, right: int) -> bool:
    """Whether a nearly full line of text stops behind a small word that ends no sentence: it goes on, wherever that stands."""
    stops = hangs(above.text) and above.text[-1].isalpha() and shortfall(above, below, right) <= FAR
    said = (prose(below.text) or closed(below.text)) and not typed(below.text)
    return stops and said and reads(above.text, below.text)


def _closes_bracket(above: str, below: str) -> bool:
    """Whether a bracket that stands open at the end of a sentence's line is closed in the next one."""
    opened = above.rfind("(")
    return opened > above.rfind(")") and prose(above) and ")" in below.partition("(")[0]


def _enumerates(above: Line, below: Line) -> bool:
    """Whether what stands less deep than a comma goes on behind it: it ends a sentence, or the comma's line begins one."""
    return closed(below.text) or above.gap > 0


def _hanging(lines: Sequence[Line], index: int, chunk: Chunk) -> bool:
    """Whether the line starts the hanging rest of a paragraph, and not a paragraph with a first-line indent."""
    above, below = lines[index - 1], lines[index]
    if chunk.first_line:
        return False
    if starts_small(below.text) and not closed(above.text):
        return True
    sign = below.text[:1].isdigit() or _SAID_OPTION.match(below.text) is not None
    if sign and prose(above.text) and prose(below.text) and closed(below.text):
        return not closed(above.text)
    following = lines[index + 1] if index + 1 < len(lines) else None
    goes_on = following is not None and following.gap == 0 and following.indent == below.indent
    noted = above.text.endswith(".") and prose(below.text) and label_end(above.text) > 0
    return goes_on and (noted or not closed(above.text))


def _over_its_meaning(text: int, above: Line, below: Line, right: int) -> bool:
    """Whether a few words behind a list mark stop far short of the margin, over what is set in from them by one cell.

    ``text`` is the column at which they begin: what goes on with them stands right below it.
    """
    few = not prose(above.text) and not hangs(above.text) and not left_open(above.text)
    return few and below.indent == text + 1 and shortfall(above, below, right) > FAR


def _shown_below(lines: Sequence[Line], index: int, text: int) -> bool:
    """Whether one word with signs in it stands alone below an item's text, deeper than its column ``text``: a form to be typed."""
    line = lines[index]
    alone = index + 1 == len(lines) or lines[index + 1].apart
    return (
        alone
        and line.indent > text + 2
        and " " not in line.text
        and _NAME.fullmatch(line.text) is not None
        and not closed(lines[index - 1].text)
    )


def _typed_below(lines: Sequence[Line], index: int, text: int, right: int) -> bool:
    """Whether a command stands below an item's text that stops in a sentence, deeper than that, and the lines below do not.

    It has options and paths and nothing else, and its first word had room above. With options a cell is deep enough.
    So do several lines at one column, one of them a command: none reads as text, and there was room above and much in each.
    """
    above, line = lines[index - 1 : index + 1]
    if line.indent <= text or not prose(above.text) or closed(above.text):
        return False
    room = shortfall(above, line, right)
    end = index + 1
    while end < len(lines) and not lines[end].apart and lines[end].indent == line.indent:
        end += 1
    if room < 0 or (end < len(lines) and lines[end].indent >= line.indent):
        return False
    part = lines[index:end]
    if room > NEAR and line.indent > text + 2 and any(typed(one.text) for one in part):
        return not any(prose(one.text) or closed(one.text) or one.end > right - FAR for one in part)
    name, _, given = line.text.partition(" ")
    called = _NAME_CALLED.fullmatch(name) is not None and _GIVEN.fullmatch(given) is not None
    return end == index + 1 and called and (line.indent > text + 2 or given.startswith("-"))
