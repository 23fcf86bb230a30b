"""Counts what a reader, or the whole of `fit reflow`, did wrong with a document whose gold is known.

`score_blocks` measures blocks, `score_lines` the lines of a reflowed text. Both count by kind of fault and give
the number of items that could go wrong, so that a share can be stated.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from difflib import SequenceMatcher

from gold import GoldBlock

from fit.document.blocks import Block, Kind

_DECORATION = re.compile(r"[\u2500-\u259f]|[^\w\s]{3,}")


@dataclass
class Piece:
    """What starts on a line of its own: a paragraph, an item, a table row, a kept line."""

    kind: str
    words: list[str]
    cells: list[list[str]] = field(default_factory=list)
    label: int = 0
    """How many of the words are an item's label."""


@dataclass
class Score:
    """Faults by kind, and the items that were looked at."""

    faults: Counter[str] = field(default_factory=Counter)
    items: int = 0
    examples: list[str] = field(default_factory=list)

    def add(self, fault: str, example: str) -> None:
        self.faults[fault] += 1
        if len(self.examples) < 60:
            self.examples.append(f"{fault}: {example}")

    @property
    def total(self) -> int:
        return sum(self.faults.values())


def words(text: str) -> list[str]:
    """The words of a text, drawing and leaders left out."""
    kept = []
    for token in text.split():
        bare = _DECORATION.sub("", token)
        if any(char.isalnum() for char in bare):
            kept.append(bare.strip("|"))
    return kept


def _row(cells: Sequence[str]) -> Piece:
    """A row; empty cells at its end do not count, as rows of a table may be filled up with them."""
    kept = [words(cell) for cell in cells]
    while kept and not kept[-1]:
        kept.pop()
    return Piece("row", [word for cell in kept for word in cell], kept)


def gold_pieces(blocks: Iterable[GoldBlock]) -> list[Piece]:
    """The gold's pieces in order, furniture left out."""
    pieces: list[Piece] = []
    for block in blocks:
        if block.kind == "furniture":
            continue
        if block.kind == "table":
            pieces += [_row(row) for row in block.rows]
        elif block.lines:
            kind = {"code": "code line", "lines": "kept line", "picture": "picture line"}[block.kind]
            pieces += [Piece(kind, words(line)) for line in block.lines]
        else:
            pieces.append(
                Piece(block.kind, words(f"{block.label} {block.text}"), [], len(words(block.label)))
            )
    return [piece for piece in pieces if piece.words]


def block_pieces(blocks: Iterable[Block]) -> list[Piece]:
    """The pieces of blocks that a reader made."""
    pieces: list[Piece] = []
    for block in blocks:
        if block.kind is Kind.FURNITURE:
            continue
        if block.kind is Kind.TABLE:
            pieces += [_row([cell.chars for cell in row]) for row in block.rows]
        elif block.kind in {Kind.PREFORMATTED, Kind.PICTURE}:
            kind = "picture line" if block.kind is Kind.PICTURE else "kept line"
            pieces += [Piece(kind, words(line.chars)) for line in block.lines]
        else:
            label = words(block.label.chars)
            pieces.append(Piece(block.kind.value, [*label, *words(block.text.chars)], [], len(label)))
    return [piece for piece in pieces if piece.words]


def score_blocks(blocks: Sequence[Block], gold: Sequence[GoldBlock]) -> Score:
    """Compare blocks with the gold."""
    return _compare(block_pieces(blocks), gold_pieces(gold))


def _compare(found: Sequence[Piece], wanted: Sequence[Piece]) -> Score:
    score = Score(items=len(wanted))
    have = [word for piece in found for word in piece.words]
    want = [word for piece in wanted for word in piece.words]
    starts = _starts(found)
    goal = _starts(wanted)
    owner = [number for number, piece in enumerate(wanted) for _ in piece.words]
    made = [number for number, piece in enumerate(found) for _ in piece.words]
    matched: dict[int, int] = {}
    for tag, i, j, k, m in SequenceMatcher(None, want, have, autojunk=False).get_opcodes():
        if tag == "equal":
            matched.update({i + step: k + step for step in range(j - i)})
            continue
        left, right = want[i:j], have[k:m]
        if "".join(left).replace("-", "") == "".join(right).replace("-", ""):
            score.add("hyphen", f"{' '.join(left)!r} became {' '.join(right)!r}")
            if left and right:
                matched[i] = k
            continue
        for word in left:
            score.add("word lost", f"{word!r} near {' '.join(want[max(0, i - 4) : i + 4])!r}")
        for word in right:
            score.add("word added", f"{word!r} near {' '.join(have[max(0, k - 4) : k + 4])!r}")
    for place in goal:
        if place in matched and matched[place] not in starts:
            kind = wanted[owner[place]].kind
            score.add(f"{kind} joined to what is before", " ".join(want[max(0, place - 5) : place + 6]))
    back = {have_place: want_place for want_place, have_place in matched.items()}
    for place in starts:
        if place in back and back[place] not in goal:
            kind = wanted[owner[back[place]]].kind
            score.add(f"{kind} split", " ".join(have[max(0, place - 5) : place + 6]))
    _kinds(score, found, wanted, made, matched)
    return score


def _starts(pieces: Sequence[Piece]) -> set[int]:
    starts = set()
    place = 0
    for piece in pieces:
        starts.add(place)
        place += len(piece.words)
    return starts


_FLOW = {"paragraph", "heading", "item", "note"}
_KEPT = {"kept line", "code line", "picture line"}


def _kinds(
    score: Score,
    found: Sequence[Piece],
    wanted: Sequence[Piece],
    made: Sequence[int],
    matched: dict[int, int],
) -> None:
    """Kinds that harm: prose kept as lines, a picture or code flowed, a picture taken apart, cells moved."""
    place = 0
    for piece in wanted:
        if place in matched:
            match = found[made[matched[place]]]
            other = match.kind
            example = f"as {other}: {' '.join(piece.words[:8])}"
            if piece.kind in _FLOW and other in _KEPT and len(piece.words) > 7:
                score.add("prose kept as lines", example)
            if piece.kind == "picture line" and other != "picture line":
                score.add("picture damaged", example)
            if piece.kind == "code line" and other not in _KEPT and len(piece.words) > 1:
                score.add("code damaged", example)
            if piece.kind == "row" and other == "picture line":
                score.add("row in a picture", example)
            if piece.kind == "item" and other in {"paragraph", "heading"}:
                score.add("item flattened", example)
            if piece.kind == "paragraph" and other == "item":
                score.add("item made up", example)
            if piece.kind == "heading" and other in {"paragraph", "item", "kept line"}:
                score.add("heading missed", example)
            if piece.kind in {"paragraph", "kept line", "code line"} and other == "heading":
                score.add("heading made up", example)
            if piece.kind == other == "item" and piece.words == match.words and piece.label != match.label:
                score.add("label wrong", " ".join(match.words[: max(piece.label, match.label) + 2]))
            if piece.kind == other == "row" and piece.words == match.words and piece.cells != match.cells:
                score.add("cells moved", f"{match.cells} for {piece.cells}")
        place += len(piece.words)


def without_heads(gold: Iterable[GoldBlock]) -> list[GoldBlock]:
    """The gold without the head rows of its tables."""
    return [replace(block, rows=block.rows[block.header_rows :], header_rows=0) for block in gold]


def score_lines(text: str, gold: Sequence[GoldBlock], width: int) -> Score:
    """Compare the lines of a reflowed text with the gold: pieces start lines, flowing ones hold no blank line.

    ``text`` has no page breaks. Heads of tables are left out on both sides: records put them before each cell.
    So are pictures wider than the screen: their panels hold the words in another order, and may cut them.
    """
    wide = [block for block in gold if block.kind == "picture" and max(map(len, block.lines)) > width]
    cut = " ".join(part for block in wide for line in block.lines for part in (line, *words(line)))
    wanted = gold_pieces(without_heads(block for block in gold if block not in wide))
    titles = {tuple(words(" ".join(row))) for block in gold for row in block.rows[: block.header_rows]}
    score = Score(items=len(wanted))
    heads = sorted(
        {cell for block in gold for row in block.rows[: block.header_rows] for cell in row if cell}
    )
    known = {word for piece in wanted for word in piece.words}
    have: list[str] = []
    starts: set[int] = set()
    blanks: list[int] = []
    carried = ""
    for line in text.replace("\r", "").split("\n"):
        if len(line) > width:
            score.add("line over the width", line)
        bare = line.strip()
        if not bare:
            blanks.append(len(have))
            continue
        for head in heads:
            bare = bare.removeprefix(f"{head}: ")
        tokens = words(bare)
        if tuple(tokens) in titles:
            continue
        if carried and tokens:
            whole = _joined(carried, tokens[0], known)
            if whole:
                have[-1] = whole
                tokens = tokens[1:]
            else:
                starts.add(len(have))
        else:
            starts.add(len(have))
        have += tokens
        carried = tokens[-1] if tokens and bare.endswith(tokens[-1]) and bare.endswith("-") else ""
    _match_lines(score, wanted, have, starts, blanks, cut)
    return score


def _joined(first: str, second: str, known: set[str]) -> str:
    """The word that a line end cut, as the gold has it; empty where nothing was cut."""
    return next((word for word in (first[:-1] + second, first + second) if word in known), "")


def _match_lines(
    score: Score,
    wanted: Sequence[Piece],
    have: Sequence[str],
    starts: set[int],
    blanks: Sequence[int],
    cut: str,
) -> None:
    want = [word for piece in wanted for word in piece.words]
    matched: dict[int, int] = {}
    for tag, i, j, k, m in SequenceMatcher(None, want, have, autojunk=False).get_opcodes():
        if tag == "equal":
            matched.update({i + step: k + step for step in range(j - i)})
            continue
        for word in want[i:j]:
            score.add("word lost", f"{word!r} near {' '.join(want[max(0, i - 4) : i + 4])!r}")
        for word in have[k:m]:
            if word not in cut:
                score.add("word added", f"{word!r} near {' '.join(have[max(0, k - 4) : k + 4])!r}")
    place = 0
    for piece in wanted:
        first, last = matched.get(place), matched.get(place + len(piece.words) - 1)
        place += len(piece.words)
        if first is None:
            continue
        if first not in starts and piece.kind != "picture line":
            score.add(f"{piece.kind} joined to what is before", " ".join(piece.words[:8]))
        if last is not None and piece.kind in _FLOW and any(first < blank <= last for blank in blanks):
            score.add(f"{piece.kind} split", " ".join(piece.words[:8]))
