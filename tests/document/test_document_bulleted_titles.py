"""Titles behind a bullet, far below the text before them; and lists, which are none."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

TITLES = ["How the lamp is lit", "The horn", "What is in store ?", "Boats and their crews.", "Gulls"]
ANSWER = (
    "-> Does the keeper on watch do it alone, or does he call the second keeper up\n"
    "to the lamp room ?\n\n"
    "He does it alone. The second keeper sleeps until the watch is over, and is\n"
    "called only in fog.\n"
)


def kinds(text: str) -> list[tuple[Kind, str]]:
    blocks = read_text(text, "log", "ascii").blocks
    return [(block.kind, block.text.chars) for block in blocks if any(t in block.text.chars for t in TITLES)]


def test_a_line_behind_a_bullet_far_below_the_text_is_a_title() -> None:
    text = "\n\n".join(f"* {title}\n\n{ANSWER}" for title in TITLES)
    assert kinds(text) == [(Kind.HEADING, f"* {title}") for title in TITLES]


def test_items_with_a_blank_line_between_stay_items() -> None:
    text = ANSWER + "\n" + "\n".join(f"* {title}\n" for title in TITLES) + "\n" + ANSWER
    assert [kind for kind, _ in kinds(text)] == [Kind.ITEM] * len(TITLES)


def test_items_with_their_text_below_them_stay_items() -> None:
    text = "\n\n".join(f"* {title}\n\n  The keeper on watch does it alone at dusk.\n" for title in TITLES)
    assert [kind for kind, _ in kinds(text)] == [Kind.ITEM] * len(TITLES)


def test_names_between_the_marks_of_emphasis_are_items() -> None:
    """What stands between `=` or `~` is shown as typed (common practice, no source): no rule and no title."""
    names = ("=LAMP=", "=BELL=, =HORN=", "~BOAT~")
    text = "".join(f"- {name}\n\n{ANSWER}\n" for name in names)
    blocks = read_text(ANSWER + "\n" + text, "log", "ascii").blocks
    assert [block.text.chars for block in blocks if block.label.chars == "-"] == [*names]
