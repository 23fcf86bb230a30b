"""Whether a line goes on in the next one: the one question that running text turns on.

A wrapped line is *full*: the next word had no room before the right margin. Where that is not clear, the words
speak: a small letter at the start, no full stop at the end.
"""

from __future__ import annotations

import re

from fit.document.text.line import Ending, Line
from fit.document.text.signs.measure import LONG_WORD, closed, first_word, hangs, prose, shouts, starts_small

SCHEMES = "https?|ftp|gopher|file|mailto|news"
"""What addresses begin with, before their colon."""
_ADDRESS = re.compile(rf"<?(?:{SCHEMES})://|[\w.-]+@[\w-]+\.|[A-Za-z]:\\\S+$|/\w+/\S+$")
_LAST_NUMBER = re.compile(r"\d+\.")
_ARTICLE = re.compile(r"(?:the|an?|this|these|its|their|your|one|if|when|in|on|by|to|for|of|it|there) ")
"""Small words that the rest of a sentence begins with rather than an entry of a list."""
_THAT_IS = re.compile(r"(?:i\. ?e|e\. ?g|viz)\.,? ")
"""What explains the words before it."""
_LOUD_WORD = re.compile(r"[A-Z]{2,}[^\w\s]* ")
_LOUD_START = re.compile(r"[A-Z]{2,} [a-z]")
"""A word in capitals and then small letters: in the middle of a sentence it looks no other than at its start."""
_MYSELF = re.compile(r"I(?: |'[a-z]+ )[a-z]")
"""The word that is a capital anywhere."""
_BEGUN = re.compile(r"\w, [a-z]+$")
"""A comma and one word behind it: a clause has only begun."""
_CUT = re.compile(r"(?<!\s-)\b\w+[-\u2010]$")
"""A hyphen behind a letter; a word between two, as a bus of a drawing has it, is whole."""
NEAR = 4
"""Cells by which a line may miss the margin and still be a wrapped one: margins are estimates."""
FAR = 12
"""Cells by which a line typed by hand may miss it in the middle of a sentence."""


def cut_word(above: str, below: str) -> bool:
    """Whether a line ends in a hyphen after a letter and the next goes on in small letters."""
    return above.endswith(("-", "\u2010")) and below[:1].islower() and _CUT.search(above) is not None


def shortfall(above: Line, below: Line, right: int) -> int:
    """Cells that were still free after the first word of the next line; below 0 where it had no room."""
    blank = 2 if closed(above.text) else 1  # typists set two blanks after a full stop
    return right - (above.end + blank + first_word(below.text))


def reads(above: str, below: str) -> bool:
    """Whether a line reads as running text, by itself or with the one that follows."""
    return prose(above) or (len(above.split()) >= 3 and prose(f"{above} {below}"))


def joins(above: Line, below: Line, right: int, slack: int = 0) -> bool:
    """Whether running text goes on from one line to the next, by the words and the margin alone."""
    if above.ending is Ending.HARD:
        return False
    return score(above, below, right, slack) > 0


def score(above: Line, below: Line, right: int, slack: int = 0) -> int:
    """Evidence that the text goes on: above 0 for, below against. ``slack`` is what lines of this document miss."""
    first, second = above.text, below.text
    missing = shortfall(above, below, right)
    if _ADDRESS.match(second) and (_ADDRESS.match(first) or missing > -LONG_WORD):
        text = reads(first, second) or len(second.split()) > 2
        return 1 if hangs(first) or (text and not closed(first)) else -1
    aside = second[0] == "(" and closed(second)  # what a bracket explains, and no entry of a list
    both = prose(first) and (prose(second) or len(second.split()) < 4 or aside)
    points = (
        3
        if missing < 0
        else 2
        if missing <= max(1, slack)
        else 1
        if missing <= NEAR
        else -1
        if missing <= FAR
        else -3
    )
    if starts_small(second):
        dotted = (
            first.endswith("..") and ".." not in second
        )  # a sentence may go on behind what dots leave out
        open_ = not closed(first) or dotted
        points += 2 if open_ else 0
        clause = first[-1] == "," and first[-2:-1].isalpha() and prose(second)  # alone on its line: `Also,`
        points += 0 if not (open_ and (both or clause)) else 2 if prose(second) else 1
    elif closed(first):
        points -= 1
    elif both and (
        not second[:1].isupper()
        or (_LOUD_START.match(second) and not _LOUD_WORD.match(first))
        or (_MYSELF.match(second) and not _MYSELF.match(first))
        or (shouts(first) and shouts(second))
    ):
        points += 1
    if hangs(first):
        runs = both or prose(second) or (prose(first) and starts_small(second))
        points += 4 if runs and first[-1].isalpha() else 2 if both or missing < FAR else 1
    elif not closed(first) and both and missing <= FAR:
        points += 2 if second[:1].isupper() and _BEGUN.search(first) else 1
    if first.endswith(("-", "\u2010")) and _CUT.search(first) and second[:1].isalnum():
        points += 4
    if _LAST_NUMBER.fullmatch(second) and prose(first):
        points += 4
    if _THAT_IS.match(second) and prose(first):
        points += 4
    if first.endswith(":") and missing >= 0 and not (missing <= NEAR and both and _ARTICLE.match(second)):
        points += 4 if both and second.endswith(":") and _ARTICLE.match(second) else -2
    return points


def crosses(above: Line, below: Line, right: int, continued: set[int]) -> bool:
    """Whether a paragraph runs over the end of a page. ``continued`` are the indents it may go on at."""
    if above.ending is Ending.HARD:
        return False
    if above.text.endswith(("-", "\u2010")) and not above.text.endswith("--") and starts_small(below.text):
        return True
    same = below.indent in continued
    if starts_small(below.text) and not closed(above.text):
        return same or shortfall(above, below, right) <= NEAR
    if not same:
        return False
    missing = shortfall(above, below, right)
    if closed(above.text):
        return missing < 0 and prose(above.text) and prose(below.text) and not above.text.endswith(":")
    return (missing <= NEAR and prose(above.text)) or (hangs(above.text) and missing <= FAR)
