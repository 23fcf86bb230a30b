"""The text report of a document laid out: what it is like before and after, what was decided, what came through."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import PurePath
from typing import Final

from fit.document.blocks import Kind
from fit.layout.lines import Figures
from fit.layout.pages import most_pages
from fit.layout.reading_order import moved_blocks
from fit.report.advice import MASTER_COPY
from fit.report.ink import Ink
from fit.report.numbers import count, ranges, sentence
from fit.report.plain import printable
from fit.report.reflowed import Reflowed
from fit.report.style import Style
from fit.report.tables import table

_NOUNS: Final = {
    Kind.PREFORMATTED: ("block of kept lines", "blocks of kept lines"),
    Kind.ITEM: ("list item", "list items"),
}
SHOWN: Final = 8
"""Entries of a list that are written out; the others are counted."""


def reflow_summary(result: Reflowed, style: Style) -> str:
    """The whole report, ended by a new line."""
    sections = (_head, _figures, _words, _decisions, _characters, _reading)
    blocks = [lines for section in sections if (lines := section(result, style))]
    blocks.append(style.text(MASTER_COPY, ""))
    return "\n\n".join("\n".join(block) for block in blocks) + "\n"


def outcome(result: Reflowed) -> str:
    """The result in one sentence."""
    pages = count(len(result.layout.pages), "page")
    settings = result.settings
    size = f"{count(settings.width, 'column')} and {count(settings.page_rows, 'row')}"
    if result.shortfalls:
        return f"{pages} of {size}; not as it should be: {', '.join(result.shortfalls)}."
    return f"{pages} of {size}; all {count(result.proof.words, 'word')} came through, in order."


def _head(result: Reflowed, style: Style) -> list[str]:
    name = printable(PurePath(result.document.name).name or "the document")
    lines = style.heading(f"{name} in {count(result.settings.width, 'column')}")
    ink = Ink.RED if result.shortfalls else Ink.GREEN
    return [*lines, *(style.paint(line, ink) for line in style.text(outcome(result), ""))]


def _figures(result: Reflowed, style: Style) -> list[str]:
    before, after = result.layout.before, result.layout.after
    rows = [
        [label, "-" if before is None else value(before), value(after)]
        for label, value in (
            ("lines", lambda figures: f"{figures.lines:,}"),
            ("lines wider than the screen", lambda figures: f"{figures.lines_over_width:,}"),
            ("raggedness of running text", lambda figures: f"{figures.raggedness:.1f}"),
            ("words cut by a hyphen", lambda figures: f"{figures.hyphens:,}"),
            ("pages", lambda figures: f"{figures.pages:,}"),
            ("pages that end badly", _bad_ends),
            ("items taller than a page", lambda figures: f"{figures.tall_items:,}"),
        )
    ]
    lines = style.heading("Figures")
    lines += [f"  {line}" for line in table(["", "as it is", "laid out"], rows, style.width - 2)]
    if before is None:
        lines += style.text("Its source is markup, which nobody reads as it is.")
    if after.tall_items:
        lines += style.text(
            "What is taller than a page cannot stay whole; that it goes on on the next is no bad end."
        )
    naive = result.layout.naive_pages
    if after.page_faults > after.forced_faults and after.pages >= most_pages(naive):
        lines += style.text(
            f"Some pages end badly for want of more: there are at most a tenth above the {naive:,} that full pages make."
        )
    return lines


def _bad_ends(figures: Figures) -> str:
    forced = f" ({figures.forced_faults} forced)" if figures.forced_faults else ""
    return f"{figures.page_faults:,}{forced}"


def _words(result: Reflowed, style: Style) -> list[str]:
    proof = result.proof
    lines = style.heading("Words")
    if proof.holds:
        told = (
            f"Put together again, the lines hold the {count(proof.words, 'word')} of the document, in order."
        )
        return [*lines, *style.text(told), *_left_out(result, style), *_moved(result, style)]
    for what, words in (("lost", proof.lost), ("added", proof.added), ("out of order", proof.out_of_order)):
        if words:
            shown = ", ".join(printable(word) for word in words[:SHOWN])
            lines += style.item(f"{what}: {count(len(words), 'word')}: {shown}{_more(words)}")
    return lines


def _left_out(result: Reflowed, style: Style) -> list[str]:
    """What of a plain text is no word, and does not stand on the pages as it stood."""
    left = result.document.left_out
    if left is None:
        return []
    told = [count(left.hyphens, "hyphen") + " of line ends"] if left.hyphens else []
    if left.signs:
        shown = [printable(sign) for sign, _ in left.signs.most_common()]
        signs = count(left.signs.total(), "sign")
        told.append(f"{signs} of rules, frames and leaders: {' '.join(shown[:SHOWN])}{_more(shown)}")
    return style.text(f"Not set again as they stood: {'; '.join(told)}") if told else []


def _moved(result: Reflowed, style: Style) -> list[str]:
    """Where the document has the words in another order than the pages."""
    moved = moved_blocks(result.document, result.layout)
    if not moved:
        return []
    lines = {line + 1 for each in moved for line in range(each.lines.start, each.lines.end)}
    lines |= {line - 1 for line in lines if line - 2 in lines}  # a blank line between two of them
    parts = ranges(sorted(lines)).split(", ")
    told = (
        "Columns, cells and notes are read one after the other, so that words stand in another order than in the"
        f" document, at its lines {', '.join(parts[:SHOWN])}{_more(parts)}. See there whether they are read right."
    )
    return style.text(told)


def _decisions(result: Reflowed, style: Style) -> list[str]:
    """What was done with tables, pictures, code and furniture, and which rules could not be kept."""
    places: dict[tuple[Kind, str], list[int]] = {}
    for decision in result.layout.decisions:
        places.setdefault((decision.kind, decision.what), []).append(decision.block + 1)
    told = [
        f"{kind.value} ({'block' if len(blocks) == 1 else 'blocks'} {_places(blocks)}): {what}"
        for (kind, what), blocks in places.items()
    ]
    furniture = [block for block in result.document.blocks if block.kind is Kind.FURNITURE]
    if furniture:
        counts = Counter(line.chars.strip() for block in furniture for line in block.lines)
        shown = "; ".join(f"'{printable(text)}'" for text in list(counts)[:SHOWN])
        told.append(f"{count(counts.total(), 'line')} of furniture taken out: {shown}{_more(list(counts))}")
    kinds = Counter(block.kind for block in result.document.blocks if block.kind is not Kind.FURNITURE)
    found = ", ".join(count(number, *_NOUNS.get(kind, (kind.value,))) for kind, number in kinds.items())
    lines = style.heading("What was decided")
    for each in (f"the document has {found}", *told):
        lines += style.item(sentence(each))
    return lines


def _characters(result: Reflowed, style: Style) -> list[str]:
    changes = result.changes
    if not changes.counts and not changes.lacking:
        return []
    lines = style.heading("Characters")
    for char, number in changes.lacking.items():
        where = changes.first_lacking[char]
        place = f", first at character {where}" if where >= 0 else ""
        told = f"{_shown(char)} could not be written: '?' stands in its place, {_times(number)}{place}"
        lines += [style.paint(line, Ink.RED) for line in style.item(sentence(told))]
    told = ", ".join(
        f"{_shown(char)} as {form or 'nothing'} ({number})"
        for char, number in changes.counts.most_common()
        if (form := changes.written[char]) is not None
    )
    return [*lines, *style.text(f"Written in 7 bits: {told}.")] if told else lines


def _reading(result: Reflowed, style: Style) -> list[str]:
    settings = result.settings
    language = f"hyphenated as {settings.language}" if settings.hyphenate else "not hyphenated"
    lines = style.heading("How it was read")
    for remark in (*result.document.remarks, language):
        lines += style.item(sentence(printable(remark)))
    return lines


def _shown(char: str) -> str:
    return f"{printable(char)} U+{ord(char):04X}"


def _times(number: int) -> str:
    return "once" if number == 1 else f"{number:,} times"


def _places(blocks: Sequence[int]) -> str:
    shown = sorted(set(blocks))
    return ranges(shown[:SHOWN]) + (f" and {len(shown) - SHOWN} more" if len(shown) > SHOWN else "")


def _more(entries: Sequence[str]) -> str:
    return f" and {len(entries) - SHOWN:,} more" if len(entries) > SHOWN else ""
