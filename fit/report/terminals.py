"""What ``fit terminals`` says: the list, one terminal, and the terminal of a session, at any width."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from fit.dialect.recognise import Ranked, Recognition
from fit.dialect.traits import Traits, spelled
from fit.report.plain import pad, printable, wrap
from fit.session import Session

_WRAPS: Final = {
    "deferred": "wraps with the next glyph",
    "immediate": "wraps at once",
    "none": "does not wrap: the last column is replaced",
}
_SHORT_WRAPS: Final = {"deferred": "next", "immediate": "at once", "none": "never"}
_SIDE_BY_SIDE: Final = 76
_LONG_LIST: Final = 8


def list_lines(terminals: Sequence[Traits], width: int) -> list[str]:
    """One row a terminal: name, cursor address, wrap, cells an attribute takes."""
    if width < _SIDE_BY_SIDE:
        return [line for one in terminals for line in _entry(one, width)]
    rows = [("name", "address of a cell", "wraps", "attribute"), *map(_row, terminals)]
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return ["  ".join(map(pad, row, widths)).rstrip() for row in rows]


def _row(one: Traits) -> tuple[str, str, str, str]:
    return one.name, one.addressing or "none", _SHORT_WRAPS[one.wrap], _cells(one.attribute_cells)


def _entry(one: Traits, width: int) -> list[str]:
    cost = f", attributes take {_cells(one.attribute_cells)}" if one.attribute_cells else ""
    text = f"{one.addressing or 'no cursor address'}; wraps {_SHORT_WRAPS[one.wrap]}{cost}"
    return [one.name, *wrap(text, width, first="  ", later="  ")]


def _cells(count: int) -> str:
    return "free" if not count else "1 cell" if count == 1 else f"{count} cells"


def name_lines(names: Sequence[str], width: int) -> list[str]:
    """Names in columns, read downwards."""
    cell = max(map(len, names)) + 2
    columns = max(1, width // cell)
    rows = -(-len(names) // columns)
    return ["".join(pad(name, cell) for name in names[row::rows]).rstrip() for row in range(rows)]


def description_lines(one: Traits, width: int) -> list[str]:
    """A terminal in words."""
    unknown = (
        "ESC and the next byte disappear"
        if one.unknown == "swallow"
        else "ESC disappears, the rest is printed"
    )
    decoder = (
        "as ECMA-48, with what programs use beyond its description" if one.is_ecma48 else "by its description"
    )
    facts = [
        ("size", f"{one.columns}x{one.rows}"),
        ("cursor", one.addressing or "cannot be addressed"),
        ("last column", _WRAPS[one.wrap] + (", BS goes back over the edge" if one.backs_over_edge else "")),
        (
            "attributes",
            "take no cell" if not one.attribute_cells else f"each change takes {_cells(one.attribute_cells)}",
        ),
        ("status line", "yes, outside the grid" if one.has_status_line else "none"),
        ("unknown codes", unknown),
        ("cannot", "; ".join(_cannot(one)) or "nothing of note"),
        ("decoded", decoder),
        ("from", one.origin),
    ]
    lines = wrap(f"{one.name}: {printable(one.about)}" if one.about else one.name, width)
    margin = max(len(name) for name, _ in facts) + 2 if width >= _SIDE_BY_SIDE else 2
    for name, text in facts:
        if width >= _SIDE_BY_SIDE:
            lines += wrap(printable(text), width, first=pad(name, margin), later=" " * margin)
        else:
            lines += [f"{name}:", *wrap(printable(text), width, first="  ", later="  ")]
    return lines


def _cannot(one: Traits) -> list[str]:
    tilde = [] if one.prints_tilde else ["print a tilde"]
    paper = ["remove what was printed"] if one.overstrikes else []
    return [*one.lacks, *tilde, *paper]


def recognition_lines(found: Recognition, session: Session, width: int) -> list[str]:
    """The terminal of a session with the evidence, the runner-up and how sure it is."""
    lines = wrap(_verdict(found), width)
    if session.dialect:
        lines += wrap(f"The session itself says {printable(session.dialect)}.", width)
    if found.change:
        lines += wrap(
            "{1} up to byte {0}, {2} from there on: read as one, a part of it is lost.".format(*found.change),
            width,
        )
    for place, one in enumerate(found.ranked[:3], 1):
        lines += ["", *wrap(f"{place}. {_names(one)}", width, later="   ")]
        lines += wrap(_evidence(one), width, first="   ", later="   ")
    if found.not_by_second:
        what = ", ".join(f"{spelled(sequence)} ({count})" for sequence, count in found.not_by_second)
        lines += ["", *wrap(f"Understood by the first and not by the second: {what}.", width)]
    return lines


def _verdict(found: Recognition) -> str:
    if not found.ranked:
        return "Plain text: none needed. Every terminal shows it alike."
    best = found.ranked[0].names[0]
    if found.change:
        return "The session changes its terminal half way."
    if found.is_clear:
        return f"{best}: clear."
    return f"{best}, but not clearly: name the terminal yourself where you know it."


def _names(one: Ranked) -> str:
    shown = ", ".join(one.names[:_LONG_LIST])
    more = len(one.names) - _LONG_LIST
    return f"{shown} and {more} more that show it alike" if more > 0 else shown


def _evidence(one: Ranked) -> str:
    evidence = one.evidence
    text = f"{evidence.explained} bytes of sequences explained, {evidence.unexplained} not understood"
    if evidence.moves:
        text += f"; {evidence.moves} cursor addresses, {evidence.outside} outside the screen"
    if evidence.lines:
        text += f"; {evidence.lines} line drawing characters"
    if evidence.cookies:
        text += f"; {evidence.cookies} attributes that took a cell"
    return text + "."
