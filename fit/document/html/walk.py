"""The walk through the tree of a page, without recursion: pages nest as deep as they like."""

from __future__ import annotations

from typing import Final

from fit.document.html.page import Page
from fit.document.html.source import decoded_places
from fit.document.html.tree import MAY_HIDE, NOT_SHOWN, PLACED, Node, Visit, hides, is_permalink
from fit.document.html.visits import enter, leave
from fit.document.run_together import parts_words

_HIDDEN: Final = frozenset(["head", "script", "style", "title", "template", "iframe", "noembed", "noframes"])


def walk(page: Page) -> None:
    """Read the elements and texts of the tree, in its order, into ``page``."""
    root = page.tree.root
    if root is None:
        return
    may_hide = MAY_HIDE.search(page.marked.html) is not None
    stack: list[Visit] = [(root, False)]
    while stack:
        node, left = stack.pop()
        if left:
            leave(page, node)
            continue
        if node.next is not None and node is not root:
            stack.append((node.next, False))
        if node.is_text_node:
            _text(page, node.text_content or "")
        elif node.is_element_node and node.tag not in _HIDDEN and not _is_left_out(page, node, may_hide):
            enter(page, node)
            stack.append((node, True))
            if node.child is not None:
                stack.append((node.child, False))


def _is_left_out(page: Page, node: Node, may_hide: bool) -> bool:
    """Whether an element is no text for readers; how many pieces of text it holds is counted."""
    if node.tag in NOT_SHOWN or (may_hide and hides(node)):
        page.hidden += len(PLACED.findall(node.text()))
    elif (node.tag == "button" and page.pre is not None) or (node.tag == "a" and is_permalink(node)):
        page.handles += len(PLACED.findall(node.text()))
    else:
        return False
    return True


def _text(page: Page, text: str) -> None:
    """Add a text node: blanks, and runs that each begin with their place."""
    target, mark = page.target(), page.maker.mark
    parts = PLACED.split(text)
    target.add(parts[0], (page.place,) * len(parts[0]), mark)
    for place, run in zip(parts[1::2], parts[2::2], strict=True):
        page.shown += 1
        # A browser puts what stands between the rows of a table before it, in one run: the tags still part words.
        if page.pre is None and len(target) and parts_words(page.source, page.place, int(place)):
            target.add_own("" if target.since(len(target) - 1).isspace() else " ")
        sources = decoded_places(page.source, int(place), run)
        page.place = sources[-1] + 1 if sources else page.place
        target.add(run.replace("\r", " "), sources, mark)  # a blank like others: CSS Text 3, section 4.1
