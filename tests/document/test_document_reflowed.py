"""The corpus through the whole of `fit reflow`: the lines it writes against the gold."""

from __future__ import annotations

from pathlib import Path

import pytest
from gold import parse_gold, read_gold
from scorer import score_lines
from typer.testing import CliRunner

from fit.cli import build_app

CORPUS = Path(__file__).parents[2] / "corpus" / "documents"
DOCUMENTS = sorted(path for path in CORPUS.glob("*.txt") if path.with_suffix(".gold").exists())
WIDTH = 40


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: path.stem)
def test_lines_for_the_small_screen(path: Path) -> None:
    options = ["--page-break", "none", "--no-hyphens", "--keep-characters"]
    result = CliRunner().invoke(build_app("reflow"), ["reflow", str(path), *options])
    assert result.exit_code == 0
    score = score_lines(result.stdout, read_gold(path.with_suffix(".gold")), WIDTH)
    assert score.items > 3
    assert score.examples == []


def test_the_score_counts_each_kind_of_fault() -> None:
    """The scorer itself: a paragraph joined, one split, an item flattened, words lost and added, a long line."""
    gold = parse_gold(
        "p The lamp burns.\np The sea is calm.\n* 1. | Trim the wick.\n* 2. | Wind the clockwork.\n"
    )
    good = "The lamp burns.\n\nThe sea is\ncalm.\n\n1. Trim the wick.\n2. Wind the clock-\nwork.\n"
    bad = "The lamp burns. The sea is\n\ncalm.\n1. Trim the wick. 2. Wind the big wheel.\n"
    assert score_lines(good, gold, 20).total == 0
    assert score_lines(bad, gold, 30).faults == {
        "line over the width": 1,
        "paragraph joined to what is before": 1,
        "paragraph split": 1,
        "item joined to what is before": 1,
        "word lost": 1,
        "word added": 2,
    }
