"""Gutters that make no table: chances of justified text, and lists."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.columns.gutters import GUTTER, Run, cell, filled, has_gutter
from fit.document.text.line import Line
from fit.document.text.signs.markers import Marker, find_marker
from fit.document.text.signs.measure import closed, prose, starts_small

WIDENED = 3
"""Cells of a blank that justified lines have between words, at most."""

FEW = 3
"""Lines that show little."""
WORDS = 3
"""Words below which a line without a key is only the end of a text, and shows nothing."""
SEVERAL = 3
"""Rows, at least, of which no chance puts one word of a text in one column below a name."""


JOINING = {"and", "or", "plus"}
"""Words that stand between two parts of one cell, however wide the blanks around them."""


def text_above(lines: Sequence[Line], run: Run) -> bool:
    """Whether running text stands above the head, parted from it by a blank line."""
    rule = min(run.rules)
    parted = next((index for index in range(run.start + 1, rule) if lines[index].gap), 0)
    return bool(parted) and any(prose(lines[index].text) for index in range(run.start, parted))


def parted_columns(content: Sequence[Line], columns: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The columns that a gutter parts in some line at least, and not only by what stands beside a word of the next."""
    kept = columns[:1]
    for index, (first, last) in enumerate(columns[1:], 1):
        apart = any(cell(line, columns, index) and not _touch(line, columns, index) for line in content)
        left = [line for line in content if cell(line, columns, index - 1)]
        if apart and not (left and all(_touch(line, columns, index) for line in left)):
            kept.append((first, last))
        else:
            kept[-1] = (kept[-1][0], last)
    return kept


def _touch(line: Line, columns: Sequence[tuple[int, int]], index: int) -> bool:
    """Whether a cell and the one before it have no gutter between them."""
    start = columns[index][0]
    return bool(cell(line, columns, index)) and line.cells[start - GUTTER : start].strip(" ") != ""


def without_chance(content: Sequence[Line], columns: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The columns, without those at the right that one line alone reaches: blanks of justified text made them, or a word between two cells."""
    while len(columns) > 2 and len(content) > 2 and _chance(content, columns):
        columns = [*columns[:-2], (columns[-2][0], columns[-1][1])]
    return columns


def without_labels(content: Sequence[Line], columns: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The columns, those made one of which all rows have the same word and a colon before a value, or marks around a label."""
    if len(columns) < SEVERAL or len(content) < SEVERAL:
        return columns
    kept = columns[:1]
    named = False
    for index, column in enumerate(columns[1:], 1):
        texts = {cell(line, columns, index) for line in content}
        text = texts.pop()
        again = not texts and text != ""
        if again and not any(map(str.isalnum, text)) and all(line.text.startswith(text) for line in content):
            kept = [(columns[0][0], column[1])]  # what stands between two such marks is one label
        elif named:
            kept[-1] = (kept[-1][0], column[1])
        else:
            kept.append(column)
        named = again and text.endswith(":")
    return kept


def _chance(content: Sequence[Line], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether one line reaches the last column, with small letters there; the first one, or one of few, is running text."""
    last = len(columns) - 1
    held = [line for line in content if cell(line, columns, last)]
    if len(held) != 1 or columns[last][0] - columns[last - 1][1] != GUTTER:
        return False
    before, text = cell(held[0], columns, last - 1), cell(held[0], columns, last)
    if before in JOINING or text.split()[0] in JOINING:
        return True
    if (" " not in before and last < 3) or not starts_small(text):
        return False
    likely = len(content) > FEW and held[0] is not content[0]
    return likely or prose(held[0].cells[columns[1][0] :].strip(" "))


def justified_text(lines: Sequence[Line], run: Run, content: Sequence[Line]) -> bool:
    """Whether the gutter is a chance of justified text: blanks as wide stand elsewhere, sentences run across."""
    if len(content) > 6:
        return False
    widest = max(second[0] - first[1] for first, second in pairwise(run.columns))
    stray = sum(
        "  " in cell(line, run.columns, index) for line in content for index in range(len(run.columns))
    )
    if widest <= 3 and (stray >= max(2, len(content) // 2) or _one_sentence(content)):
        return True
    above = lines[run.start - 1] if run.start else None
    first = lines[run.start]
    level = above is not None and not first.gap and above.indent == first.indent
    runs_on = level and above is not None and (prose(above.text) or _flush([above, *content]))
    across = sum(prose(line.text) and not closed(line.text) for line in content)
    return runs_on and widest <= 4 and across >= 0.5 * len(content)


def _flush(part: Sequence[Line]) -> bool:
    """Whether all lines but the last, which may end a paragraph, end at one column."""
    return len({line.end for line in part[:-1]}) == 1


def _one_sentence(content: Sequence[Line]) -> bool:
    """Whether each line is running text that the next one goes on with, a single wide blank in all of them."""
    return sum(map(has_gutter, content)) == 1 and all(
        prose(above.text) and not closed(above.text) and starts_small(below.text)
        for above, below in pairwise(content)
    )


def widened_start(lines: Sequence[Line], index: int) -> bool:
    """Whether a line begins a paragraph whose lines were filled up with blanks: its sentence goes on right below, flush."""
    line = lines[index]
    below = lines[index + 1] if index + 1 < len(lines) else None
    if below is None or not line.apart or below.apart or below.indent != line.indent or below.end > line.end:
        return False
    goes_on = starts_small(below.text) and not closed(line.text) and prose(line.text)
    return goes_on and not has_gutter(below) and " " * (WIDENED + 1) not in line.text


def text_beside_keys(content: Sequence[Line], run: Run) -> bool:
    """Whether the columns after the first are one justified text, parted by chance, beside its keys."""
    if len(run.columns) < 3 or max(b[0] - a[1] for a, b in pairwise(run.columns[1:])) > 3:
        return False
    if _values(content, run) or _figures(content, run):
        return False
    under = [line for line in content if not cell(line, run.columns, 0)]
    if len(under) == len(content) - 1 and _hanging_item(content, run):
        return True
    if under and not any(cell(line, run.columns, 1) for line in under):
        return False  # their text would go on where it begins
    keyed = [line for line in content if cell(line, run.columns, 0) or len(line.text.split()) >= WORDS]
    rest = [line.cells[run.columns[1][0] :] for line in keyed]
    if sum("     " in text.strip(" ") for text in rest) > 1:
        return False
    return sum(prose(text) for text in rest) >= 0.6 * len(rest)


def _values(content: Sequence[Line], run: Run) -> bool:
    """Whether a head has three names, and each row a key, one word, and a text: a value, and no text.

    The word has a figure in it, or the texts all begin in one column, under a name that is one word as well.
    """
    names, *cells = [cell(line, run.columns, 1) for line in content]
    keyed = len(cells) >= SEVERAL and all(cell(line, run.columns, 0) for line in content)
    if not keyed or not names.isalpha() or not all(text and " " not in text for text in cells):
        return False
    if all(any(map(str.isdigit, text)) for text in cells):
        return True
    column = run.columns[2][0]
    named = content[0].text.split()
    level = all(
        line.cells[column - GUTTER : column + 1].startswith("  ") and line.end > column for line in content
    )
    level = level and all(line.cells[column] != " " for line in content)
    return level and len(named) == len(run.columns) and all(name[0].isupper() for name in named)


def _figures(content: Sequence[Line], run: Run) -> bool:
    """Whether a figure of one length stands in the second column of each line that is no rest of a text: hours, years, codes."""
    first, last = run.columns[1][0], run.columns[-1][0]
    cells = [
        (cell(line, run.columns, 1), line.cells[first - GUTTER :]) for line in content if line.indent < last
    ]
    return (
        len(cells) >= SEVERAL
        and all(text.isdigit() and rest.startswith(f"{' ' * GUTTER}{text}") for text, rest in cells)
        and len({len(text) for text, _ in cells}) == 1 < len(cells[0][0])
    )


def one_key(content: Sequence[Line], run: Run) -> bool:
    """Whether what stands under the first row, without a key, has wide blanks beside those of the columns: what a program told.

    Such lines have values with their names, as many as there is room for, and are no rest of the cells above them.
    """
    under = content[1:]
    if len(under) < 2 or any(cell(line, run.columns, 0) for line in under):
        return False
    inner = [[cell(line, run.columns, index) for index in range(1, len(run.columns))] for line in under]
    stray = [any("  " in text and any(map(str.isdigit, text)) for text in texts) for texts in inner]
    return sum(stray) > 1


def _hanging_item(content: Sequence[Line], run: Run) -> bool:
    """Whether the first line starts with the marker of a list and all others stand under its text."""
    column = run.columns[1][0]
    marked = find_marker(content[0].text) is not None and bool(cell(content[0], run.columns, 1))
    return marked and all(line.indent == column for line in content[1:])


def bullets(content: Sequence[Line], run: Run) -> bool:
    """Whether every row is an item of one list, its bullet and its first words in one column."""
    firsts = [line for line in content if cell(line, run.columns, 0)]
    kinds = {marker.kind if (marker := find_marker(line.text)) else "" for line in firsts}
    worded = all(len(cell(line, run.columns, 0).split()) > 1 for line in firsts)
    return worded and len(kinds) == 1 and kinds.pop().startswith("bullet")


def keyed_list(content: Sequence[Line], run: Run) -> bool:
    """Whether the two columns are list markers and hanging text, or a hanging key with long text."""
    firsts = [line for line in content if cell(line, run.columns, 0)]
    markers = [find_marker(line.text) for line in firsts]
    strong = any(marker is not None and marker.strong for marker in markers)
    if not strong and (_flush_right(firsts, run) or _key_wrapped(content, run)):
        return False
    marked = [
        marker
        for line, marker in zip(firsts, markers, strict=True)
        if marker is not None and len(cell(line, run.columns, 0).split()) == 1
    ]
    if len(marked) >= 0.6 * len(firsts) and _listed(marked):
        return True
    long = sum(prose(cell(line, run.columns, 1)) for line in content)
    narrow = run.columns[1][0] - run.columns[0][0] <= 28
    labels = all(cell(line, run.columns, 0).endswith(":") for line in firsts)
    return narrow and len(content) > len(firsts) and (labels or long >= 0.3 * len(content))


def _key_wrapped(content: Sequence[Line], run: Run) -> bool:
    """Whether blank lines part the rows and a key goes on, in small letters, beside the rest of its text."""
    if sum(line.gap > 0 for line in content[1:]) < 2:
        return False
    return any(
        not below.gap
        and filled(above, run.columns) == filled(below, run.columns) == 2
        and starts_small(cell(below, run.columns, 0))
        and " " in cell(above, run.columns, 0)
        for above, below in pairwise(content)
    )


def _listed(markers: Sequence[Marker]) -> bool:
    """Whether markers count a list: bare numbers that do not follow each other are figures of a table."""
    bare = [marker for marker in markers if not marker.strong and marker.kind.startswith("number")]
    steps = sum(second.ordinal == first.ordinal + 1 for first, second in pairwise(bare))
    return len(bare) < len(markers) or 2 * steps >= len(bare) - 1


def _flush_right(firsts: Sequence[Line], run: Run) -> bool:
    """Whether the keys end at one column, as figures do, and begin at several."""
    keys = [line.cells[: run.columns[1][0]].rstrip() for line in firsts]
    return len(keys) > 2 and len({line.indent for line in firsts}) > 1 and len(set(map(len, keys))) == 1
