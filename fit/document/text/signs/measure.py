"""What running text looks like in this document: where its lines end, and whether a line reads as prose."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from fit.document.text.line import REMEMBERED, Line

WINDOW = 40
"""Lines on either side in which the right margin is looked for: a document may change its width."""
_SMALL_WORDS = {
    "the", "a", "an", "of", "to", "and", "in", "is", "it", "that", "for", "on", "with", "as", "be",
    "are", "this", "or", "by", "from", "at", "you", "your", "if", "will", "can", "not", "when", "which",
    "was", "has", "have", "but", "then", "there", "they", "its", "all", "may", "any", "one", "no", "so",
    "do", "up", "out", "into", "only", "after", "before", "each", "he", "she", "we", "his", "her",
    "were", "been", "more", "than", "these", "those", "must", "should", "use", "used", "i", "my", "me",
    "our", "their", "them", "who", "what", "der", "die", "das", "und", "ist", "nicht", "ein", "eine",
    "zu", "den", "mit", "von", "le", "la", "les", "des", "est", "un", "une", "et", "que", "en", "pour",
}  # fmt: skip
_OTHER_SMALL = {
    "how", "why", "where", "while", "till", "until", "since", "because", "though", "yet", "nor", "upon", "over", "once",
    "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "twelve",
}  # fmt: skip
"""Words that show no running text by themselves, and are no names either."""
_HANGING = {
    "the", "a", "an", "of", "to", "and", "in", "is", "for", "with", "as", "or", "by", "your", "that", "which",
    "from", "into", "than", "because", "are", "was", "were", "has", "have", "his", "their", "its", "our", "my",
    "at", "but", "will", "must", "should", "can", "when", "if", "whether", "whose", "both",
}  # fmt: skip
_BEGINS = frozenset(word.capitalize() for word in _HANGING)
"""Small words at the start of a sentence: behind the stop of another, it has only begun."""
_LOUD_HANGING = frozenset(word.upper() for word in _HANGING if len(word) > 1) - {"CAN", "WILL", "HAS"}
"""The same in a text all in capitals, but for what may be a thing or a name there."""
LOUD = 7
"""Words of a line in capitals, at least, that is a sentence rather than a name."""
FEW = 4
"""Wrapped lines below which a document does not show its margin."""
LEAST = 60
"""The margin that is then assumed: documents are rarely set narrower."""
JUSTIFIED = 12
"""Wrapped lines in a neighbourhood that show whether it is justified, at least."""
PARAGRAPHS = 8
"""Paragraphs below a blank line that show how a document parts them, at least."""
EARLY = 2
"""Such paragraphs for each sentence that begins below a short line, at least."""
SHORT = 4
"""Cells that a line leaves free, at least, to be short."""
WIDEST = 100
"""Cells of a page, at most, whose lines were wrapped."""
UNWRAPPED = 200
"""Cells beyond which a line is a paragraph that nobody wrapped, whatever its document does."""
MANY = 0.3
"""The share of lines with several sentences, at least, where each line is a paragraph."""
SEEN = 8
"""Lines right above others, at least, of which none goes on where each line is a paragraph."""
LOOSE = 40
"""Lines that stop in mid-sentence which show how loosely a text is wrapped, at least."""
ROOM = 9
"""Cells in which most words have room."""
LONG_WORD = 20
"""Cells beyond which a word is an address or a path, which writers set on a line of its own."""
_INSIDE = re.compile(r"[a-z)][.!?] +[A-Z]")
_TOKEN = re.compile(r"\S+")
_PLAIN_WORD = re.compile(
    r"[(\"'`\u201c\u2018*_]*[^\W\d_]+(?:['\u2019][^\W\d_]+|-[a-z]+)*[)\"'\u201d\u2019*_.,;:!?-]*"
)
_ABBREVIATIONS = (
    " p.", " pp.", " vol.", " No.", " no.", " Mr.", " Mrs.", " Dr.", " St.", " e.g.", " i.e.", " cf.", " fig.",
    " Fig.", " sec.", " vs.", ",...",
)  # fmt: skip
"""What ends in a full stop and no sentence; the last one says that more of a list may follow."""
_TAG = re.compile(r"\[\w{1,4}\] ")
"""A tag in brackets, as entries begin with."""
_LETTER = re.compile(r" [A-Z]:$")
"""The name of a field or a drive, which has its colon in mid-sentence too."""
_CLOSERS = "\"')]\u201d\u2019*_"


@lru_cache(maxsize=REMEMBERED)
def prose(text: str) -> bool:
    """Whether a line reads as running text: mostly plain words, some of them the small words of a language."""
    tokens = _TOKEN.findall(text)
    if len(tokens) < 3 or sum(map(len, tokens)) < 2.6 * len(tokens):
        return False
    words = [token for token in tokens if _PLAIN_WORD.fullmatch(token)]
    small = sum(token.strip(".,;:()\"'").lower() in _SMALL_WORDS for token in tokens)
    return (
        len(words) >= 0.7 * len(tokens)
        and small >= max(1, len(tokens) // 8)
        and not (text[:1].isupper() and _named(words))
    )


def _named(words: Sequence[str]) -> bool:
    """Whether all words begin with a capital and go on in small letters, or are names in one: `The Lamp House`."""
    return all(word.lstrip("\"'`(\u201c\u2018*_")[:1].isupper() for word in words) and any(
        not word.isupper() for word in words
    )


def small_word(word: str) -> bool:
    """Whether a word, its case and what is drawn together with it left out, is one of those that every text has."""
    bare = word.strip(".,;:()\"'").lower()
    return bare in _SMALL_WORDS or bare.partition("'")[0] in _SMALL_WORDS or bare in _OTHER_SMALL


def names(text: str) -> bool:
    """Whether a word of the text begins with a capital and is more than a small word of its language."""
    words = (word.lstrip("\"'(`[\u201c\u2018").rstrip(".,;:()\"'") for word in text.split())
    return any(len(word) > 1 and word[0].isupper() and word.lower() not in _SMALL_WORDS for word in words)


@lru_cache(maxsize=REMEMBERED)
def sentence(text: str) -> bool:
    """Whether a line is a whole sentence: plain words from a capital to a full stop."""
    tokens = _TOKEN.findall(text)
    plain = sum(_PLAIN_WORD.fullmatch(token) is not None for token in tokens)
    return (
        closed(text)
        and text[:1].isupper()
        and len(tokens) >= 3
        and (prose(text) or plain >= 0.8 * len(tokens))
    )


def closed(text: str) -> bool:
    """Whether the text ends a sentence."""
    if not text.rstrip(_CLOSERS).endswith((".", "!", "?", ":", "\u2026")) or text.endswith(_ABBREVIATIONS):
        return False
    return text[-1:] != ":" or _LETTER.search(text) is None


def starts_small(text: str) -> bool:
    """Whether the text goes on in the middle of a sentence: a small letter first."""
    first = text.lstrip("\"'([{\u201c\u2018*_`")[:1]
    return first.islower() and _TAG.match(text) is None


def hangs(text: str) -> bool:
    """Whether the end of the text cannot end a sentence: a comma, an opening, a small word."""
    if text.endswith((",", ";", "(", "-")) and not text.endswith("--"):
        return True
    words = text.rsplit(None, 2)[-2:]
    if not words:
        return False
    last = words[-1]
    if last in _LOUD_HANGING:
        return shouts(text)
    return last in _HANGING or (last in _BEGINS and len(words) > 1 and words[0][-1] in ".!?")


def shouts(text: str) -> bool:
    """Whether words enough for a sentence are all in capitals: where one stands in its sentence they do not show."""
    return text.isupper() and text.count(" ") >= LOUD - 1


def first_word(text: str) -> int:
    """The cells that the first word of a text takes; an address says nothing about the margin."""
    word = text.split(None, 1)[0] if text.strip() else ""
    return min(len(word), LONG_WORD)


PAGES = 6
"""Page ends, at least, of which none stands in a sentence where pages are ended on purpose."""


class Measure:
    """Right margins of the running text, line by line."""

    def __init__(self, lines: Sequence[Line], least: int = LEAST) -> None:
        self._inner = [
            index
            for index, (line, following) in enumerate(pairwise(lines))
            if following.gap == 0 and abs(line.indent - following.indent) <= 8 and prose(line.text)
        ]
        self._ends = [lines[index].end for index in self._inner]
        ordered = sorted(self._ends)
        widest = max((line.end for line in lines), default=0)
        self.usual = ordered[int(len(ordered) * 0.9)] if len(ordered) >= FEW else max(widest, least)
        """The right edge of running text in the whole document."""
        self.slack = _slack(lines, self._inner, self.usual)
        """Cells that wrapped lines of this document leave free although the next word had room."""
        self.loose = _loose(lines, self._inner, self.usual)
        """Cells that nearly all such lines leave free in a text that was wrapped loosely all through; else 0."""
        self.parted = _parted(lines, self._inner, self.usual, max(SHORT, self.loose))
        """Whether blank lines part the paragraphs of the document: sentences that end early in a line are few beside them."""
        self.wrapped = (
            self.usual <= WIDEST
            or len(self._inner) < SEEN
            or any(starts_small(lines[index + 1].text) for index in self._inner)
            or not _several_each(lines)
        )
        """Whether lines are parts of paragraphs: no wider than a page, or some begin in the middle of a sentence, or each is one."""
        self.whole_pages = _whole_pages(lines)
        """Whether no sentence goes on over a page end of the document: the writer ended each page, and every text with it."""
        self._nearest: list[int] = []
        place = 0
        for index in range(len(lines)):
            while place < len(self._inner) and self._inner[place] < index:
                place += 1
            self._nearest.append(place)
        self._cache: dict[int, tuple[int, bool]] = {}

    def right(self, index: int) -> int:
        """The right edge of running text around a line: where most lines end, or the third longest in its neighbourhood."""
        return self._around(index)[0]

    def justified(self, index: int) -> bool:
        """Whether most lines of running text around a line end at one column: their blanks were widened for it."""
        return self._around(index)[1]

    def _around(self, index: int) -> tuple[int, bool]:
        place = self._nearest[index] if index < len(self._nearest) else len(self._inner)
        if place not in self._cache:
            around = sorted(self._ends[max(0, place - WINDOW) : place + WINDOW])
            middle = around[len(around) // 2] if around else 0
            if len(around) >= JUSTIFIED and 2 * around.count(middle) > len(around):
                self._cache[place] = (middle, True)
            elif len(around) < FEW:
                self._cache[place] = (max(self.usual, around[-1]) if around else self.usual, False)
            else:
                self._cache[place] = (around[-1 - min(2, len(around) // 8)], False)
        return self._cache[place]


def _whole_pages(lines: Sequence[Line]) -> bool:
    """Whether none of several page ends stands in the middle of a sentence, by the words around it."""
    ends = [(above.text, below.text) for above, below in pairwise(lines) if below.crossing]
    return len(ends) >= PAGES and all(
        closed(above) or not (starts_small(below) or hangs(above) or prose(above)) for above, below in ends
    )


def _several_each(lines: Sequence[Line]) -> bool:
    """Whether many lines wider than any page hold several sentences: paragraphs, of which nobody has set each sentence on its line."""
    wide = [line.text for line in lines if line.end > WIDEST and prose(line.text)]
    return sum(map(several, wide)) >= MANY * len(wide)


def several(text: str) -> bool:
    """Whether a sentence ends inside a text, and another one begins."""
    return _INSIDE.search(text) is not None


def _slack(lines: Sequence[Line], inner: Sequence[int], usual: int) -> int:
    """What nine tenths of the lines that surely go on leave free; more where text was broken by hand."""
    free = sorted(value for value in _free(lines, inner, usual) if value < 16)
    return max(0, min(10, free[int(len(free) * 0.9)])) if len(free) >= 10 else 0


def _loose(lines: Sequence[Line], inner: Sequence[int], usual: int) -> int:
    """What nearly all of the many lines that surely go on leave free, where one in five leaves room for most words.

    Where lines are wider than any page, nothing was wrapped: each line is an entry, and some are long.
    """
    free = sorted(_free(lines, [index for index in inner if prose(lines[index + 1].text)], usual))
    if usual > WIDEST or len(free) < LOOSE or free[int(len(free) * 0.8)] < ROOM:
        return 0
    return free[int(len(free) * 0.95)]


def _free(lines: Sequence[Line], inner: Sequence[int], usual: int) -> list[int]:
    """The cells that lines which stop in mid-sentence leave free behind the first word of the next one."""
    return [
        usual - lines[index].end - 1 - first_word(lines[index + 1].text)
        for index in inner
        if lines[index].indent == lines[index + 1].indent
        and starts_small(lines[index + 1].text)
        and not closed(lines[index].text)
    ]


def _parted(lines: Sequence[Line], inner: Sequence[int], usual: int, short: int) -> bool:
    """Whether many sentences begin below a blank line and few right below one that ends early."""
    below = sum(
        one.gap == 1
        and one.text[:1].isupper()
        and one.indent == above.indent
        and closed(above.text)
        and prose(above.text)
        and prose(one.text)
        for above, one in pairwise(lines)
    )
    if below < PARAGRAPHS:
        return False
    early = 0
    for index in inner:
        above, one = lines[index], lines[index + 1]
        if one.text[:1].isupper() and one.indent == above.indent and closed(above.text) and prose(one.text):
            early += usual - above.end - 2 - first_word(one.text) > short
    return EARLY * early <= below
