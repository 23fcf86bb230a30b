"""Forms of HTML as text: what stands in a field, which boxes are ticked, what there is to choose from."""

from __future__ import annotations

from typing import Final

from fit.document.blocks import Text
from fit.document.html.page import Page
from fit.document.html.tree import BLOCKS, Node, runs

_TICKED: Final = frozenset(("checkbox", "radio"))
_EMPTY: Final = _TICKED | {"hidden", "password", "file", "color", "range"}
"""Fields that show no words."""


def field(page: Page, node: Node) -> None:
    """A field of a form: what stands in it, and whether it is ticked."""
    kind = (node.attributes.get("type") or "text").lower()
    target, mark = page.target(), page.maker.mark
    if kind in _TICKED and _is_labelled(node):
        target.add_own("[x] " if "checked" in node.attributes else "[ ] ", mark)
    name = "alt" if kind == "image" else "value"
    text = Text() if kind in _EMPTY else page.attribute(node, name)
    if len(text):
        bracketed(page, text)


def bracketed(page: Page, text: Text) -> None:
    """What stands in a field."""
    target, mark = page.target(), page.maker.mark
    target.add_own("[", mark)
    target.add_text(text)
    target.add_own("]", mark)


def is_later(option: Node) -> bool:
    """Whether another choice stands before this one."""
    before = option.prev
    while before is not None and before.tag not in ("option", "optgroup"):
        before = before.prev
    group = option.parent
    return before is not None or (group is not None and group.tag == "optgroup" and is_later(group))


def _is_labelled(box: Node) -> bool:
    """Whether words stand right behind a box to tick: others only work the page."""
    after = box.next
    while after is not None and not (after.is_element_node or runs(after)):
        after = after.next
    return after is not None and after.tag not in BLOCKS and runs(after) > 0
