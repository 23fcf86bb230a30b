"""Line-end hyphens: part of the word, or put there by the break?

Evidence is asked in this order: what the rest of the document writes, the form of the two fragments (options,
numbers, capitals, chains of hyphens), words hung on a common part ("pre- and post-"), and which of the joined
and the parted form the word list knows.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from enum import Enum
from functools import cached_property
from itertools import chain, pairwise

from fit.document.text.hyphen_words import AFTER, APART, HUNG, PREFIXES, QUARTERS, WITH_HUNG
from fit.document.text.page_names import names_section, writes_sections
from fit.document.text.paths import OPEN_ENDS, in_brackets, one_address, one_path, slashed_words
from fit.hyphenation import break_points
from fit.lexicon import RARE, frequency, is_word

SOFT_HYPHEN = "\u00ad"
BREAKS_OWN = "\u2010"
"""The hyphen that formatters put at line ends, and some of them wherever a hyphen stands."""
_WORDS = re.compile(r"[^\W_]+(?:['\u2019-][^\W_]+)*")
_BROKEN = re.compile(r"(?<!\S)-*[^\s-]\S*[-\u00ad][ \t\r]*\n\s*\S+")
_LINE_END = re.compile(r"-[ \t\r]*\n[ \t]*([^\W\d_]+)")
_MARKED_END = re.compile(r"[^\W\d_][\x1f\u00ad][ \t\r]*\n")
_BREAKS_OWN_END = re.compile(rf"\w{BREAKS_OWN}[ \t\r]*\n")
_BREAKS_OWN_INSIDE = re.compile(rf"{BREAKS_OWN}[ \t]*[^\s]")
_COLUMN_END = re.compile(r"-(?=  |[ \t\r]*\n)")
_COLUMN_START = re.compile(r"(?:^|(?<=  ))[ \t]*([^\W\d_]+)")
_LAST_LETTERS = re.compile(r"[^\W\d_]+$")
OPENED = {"\u201c": "\u201d", "\u2018": "\u2019", "\u00ab": "\u00bb", "(": ")", "[": "]", "<": ">"}
"""What opens a quotation or a bracket, behind which no blank stands, and what closes it."""
SEVERAL = 3
"""Hyphens at line ends, at least, that show whether words are broken there."""
COMMON = 1000
"""The list's count for a word that most readers know, at least."""
RARER = 5
"""How many times as often as a word broken in two one of its parts comes, at most, if it is known for the word it is."""
WHOLE = 0.6
"""The share of them, at least, that stand between two words of the word list."""
ENGLISH = 50
"""Words among which the article comes once, at least, in an English text."""
_SWITCH = re.compile(r"(?<!\S)-\w{1,8}-(?=[^\S\r\n]+\S)")
_SWITCHED_OFF = re.compile(r"(?<![\w-])--no-\w")
_HUNG_PART = re.compile(r"(?<![\w-])([^\W\d_]+)-\s+(?:and|or)\s+[^\W\d_]+-")
_DASH = re.compile(r"- (?=[a-z]{2})(?!(?:and|as|but|nor|of|or|to|versus|vs)\b)")
"""A hyphen with a blank behind it, in a line: right behind a word a dash."""
_BEFORE_DASH = re.compile(r"(?<![\w-])[^\W\d_]{2,}\Z")
REACH = 30
"""Characters of the word before a dash, at most."""
_STRUCK = re.compile(r".\x08")
_LAST = re.compile(r"(\S+)$")
_FIRST = re.compile(r"^(\S+)")
_CORE = re.compile(r"^[^\w-]*(.*?)[^\w]*$")
_ALPHABET = "abcdefghijklmnopqrstuvwxyz"
_PARTS = re.compile(r"[^\w'\u2019-]|_")


class Joint(Enum):
    """How two pieces of a line break come together."""

    SPACE = 0
    CLOSE = 1
    """Nothing between them: the hyphen, if there is one, belongs to the word."""
    DROP = 2
    """The hyphen goes."""


def _plain(source: str) -> str:
    """A text without what was struck over, its hyphens all of one kind."""
    return _STRUCK.sub("", source.replace("\u2010", "-"))


def _torn_words(source: str) -> Iterator[tuple[str, str]]:
    """The letters before each hyphen at a line end, and those that the next line begins with."""
    used = 0
    for match in _LINE_END.finditer(source):
        start = source.rfind("\n", used, match.start()) + 1
        if left := _LAST_LETTERS.search(source, max(start, used), match.start()):
            yield left[0], match[1]
            used = match.end()


def _torn_in_columns(source: str) -> Iterator[tuple[str, str]]:
    """The letters before each hyphen at the end of a line or before a wide blank, and those that begin a column below."""
    for match in _COLUMN_END.finditer(source):
        start, below = source.rfind("\n", 0, match.start()) + 1, source.find("\n", match.end()) + 1
        if left := _LAST_LETTERS.search(source, start, match.start()):
            end = min(source.find("\n", below) % (len(source) + 1), below + match.end() - start)
            yield from ((left[0], right[1]) for right in _COLUMN_START.finditer(source[below:end]))


def _closed_in(sign: str, after: str) -> bool:
    """Whether what a sign opens at the end of a line is closed in the next one; angle brackets, which compare too, by its first word."""
    return OPENED[sign] in (after.partition(" ")[0] if sign == "<" else after)


class Hyphens:
    """Judges the line-end hyphens of one document."""

    def __init__(self, source: str) -> None:
        self._source = source

    @cached_property
    def words(self) -> Counter[str]:
        """The document's words in small letters, those at hyphened line ends left out."""
        whole = _BROKEN.sub(" ", _plain(self._source))
        return Counter(_WORDS.findall(whole.lower()))

    @cached_property
    def _unbroken(self) -> bool:
        """Whether no line of the document ends in a part of a word: all hyphens there, several, stand between words.

        So do those that the document has inside its lines as well.
        """
        ends = [(left.lower(), right.lower()) for left, right in _torn_words(_plain(self._source))]
        own = {pair for word in self.words if "-" in word for pair in pairwise(word.split("-"))}
        whole = [
            (left, right) in own or (is_word(right) and (is_word(left) or left in PREFIXES))
            for left, right in ends
        ]
        rare = 2 * sum(is_word(left + right) for left, right in ends) <= len(ends)
        if len(ends) < SEVERAL or not rare or sum(whole) < WHOLE * len(ends):
            return False
        in_columns = _torn_in_columns(_plain(self._source).lower())
        return not any(self._surely_broken(*parts) for parts in chain(ends, in_columns))

    def _surely_broken(self, left: str, right: str) -> bool:
        """Whether two parts are a word that nobody writes with a hyphen: `any-` and `thing`, `down-` and `wards`.

        It is common, or not much rarer than one of its parts; or one of them is no word by itself.
        """
        known, parted = frequency(left + right), self.words[f"{left}-{right}"]
        if parted or not is_word(left + right):
            return False
        if not is_word(right) or not is_word(left):
            return True
        apart = left in PREFIXES or left in APART
        rarer = min(frequency(left), frequency(right))
        return not apart and (known >= COMMON or RARER * known >= rarer)

    @cached_property
    def _hung_parts(self) -> frozenset[str]:
        """First parts that the document sets apart with their hyphen, and so before whole words: `pre- and post-processing`."""
        return frozenset(found.lower() for found in _HUNG_PART.findall(self._source))

    @cached_property
    def _switches(self) -> frozenset[str]:
        """The options that end in a hyphen of their own, which switches them off: the document has them inside its lines."""
        return frozenset(_SWITCH.findall(self._source))

    @cached_property
    def _dashes(self) -> bool:
        """Whether the document has dashes right behind words, with a blank behind them, inside its lines."""
        ends = (match.start() for match in _DASH.finditer(self._source))
        return (
            sum(_BEFORE_DASH.search(self._source, max(0, end - REACH), end) is not None for end in ends)
            >= SEVERAL
        )

    @cached_property
    def _slashed(self) -> frozenset[str]:
        return slashed_words(self._source)

    @cached_property
    def _english(self) -> bool:
        """Whether one word of the document in fifty, at least, is the article."""
        return 0 < self.words.total() <= ENGLISH * self.words["the"]

    def _foreign(self, name: str) -> bool:
        """Whether no sentence of an English document has a name: it is no word, and stands nowhere behind a blank."""
        if is_word(name) or not self._english:
            return False
        return re.search(rf"\S[^\S\n]+{name}(?![\w/-])", self._source) is None

    @cached_property
    def _breaks_own(self) -> bool:
        """Whether the hyphens that line breaks put in have this sign, several of them, and the writer's have another."""
        whole = _STRUCK.sub("", self._source)
        return len(_BREAKS_OWN_END.findall(whole)) >= SEVERAL and _BREAKS_OWN_INSIDE.search(whole) is None

    @cached_property
    def _sections(self) -> bool:
        return writes_sections(self._source)

    def joint(self, before: str, after: str) -> Joint:
        """How the end of one line and the start of the next are one text."""
        if before.endswith(SOFT_HYPHEN) or (before.endswith(BREAKS_OWN) and self._breaks_own):
            return Joint.DROP
        if in_brackets(before, after):
            return Joint.CLOSE
        if before[-1:] in OPENED and before[-2:-1] in {"", " "} and _closed_in(before[-1], after):
            return Joint.CLOSE
        if after[:1] == "(" and names_section(before, after) and self._sections:
            return Joint.CLOSE
        hyphen = before.endswith(("-", "\u2010"))
        if not hyphen and not before.endswith(OPEN_ENDS) and not after.startswith("/"):
            return Joint.SPACE
        left = _LAST.search(before)
        right = _FIRST.search(after)
        if left is None or right is None:
            return Joint.SPACE
        if not hyphen:
            first, second = left.group(1), right.group(1)
            whole = one_address(first, second) or one_path(first, second, self._slashed, self._foreign)
            return Joint.CLOSE if whole else Joint.SPACE
        return self._judge(left.group(1).replace("\u2010", "-"), right.group(1).replace("\u2010", "-"))

    def _judge(self, left: str, right: str) -> Joint:
        stem = _CORE.sub(r"\1", left[:-1])
        head = _CORE.sub(r"\1", right)
        if left.endswith("--"):
            return Joint.CLOSE if stem and right[0].isalnum() else Joint.SPACE
        if stem[-1:] == "_" and stem[0].isalnum() and right[0].isalnum():
            # No name has a hyphen there; an option has, where underscores stand for the blanks of a sentence.
            return Joint.CLOSE if ",_" in stem or "._" in stem else Joint.DROP
        if not stem or not stem[-1].isalnum() or not right[0].isalnum():
            return (
                Joint.CLOSE if stem and right[0] in "-\"'([{" and not right.startswith("--") else Joint.SPACE
            )
        if stem[-1].isdigit() or right[0].isdigit():
            return Joint.CLOSE
        last, first = _PARTS.split(stem)[-1], _PARTS.split(head, maxsplit=1)[0]
        if left in self._switches:
            return Joint.SPACE
        if stem.startswith("-"):
            return Joint.DROP if self._one_option(last.lstrip("-"), first) else Joint.CLOSE
        if any(char in stem for char in "/\\_=@.:"):
            return Joint.DROP if self._one_word(last, first) else Joint.CLOSE
        if min(len(last), len(first)) > 1 and (last[-2:] + first[:2]).lower() in _ALPHABET:
            return Joint.DROP
        if self._part_of_name(last, first, head[len(first) :]):
            return Joint.DROP
        if self._dashes and last == stem and not self._writes(last, first):
            return Joint.SPACE
        return self.letters(last, first)

    def _writes(self, left: str, right: str) -> bool:
        """Whether two parts are a word, with a hyphen or without one, of this document or of the word list."""
        whole, parted = f"{left}{right}".lower(), f"{left}-{right}".lower()
        return self.words[whole] + self.words[parted] > 0 or is_word(whole)

    def _part_of_name(self, left: str, right: str, rest: str) -> bool:
        """Whether two parts are a name, or the end of one, as another name of the document shows: `-lamp=` by `oldlamp=`."""
        if right[:1].isupper() and left[-1].islower():
            return left + right in self._source
        if not rest.startswith("=") or f"-{right}=" in self._source:
            return False
        return re.search(rf"[^\W\d_]{re.escape(right)}=", self._source) is not None

    def _one_word(self, left: str, right: str) -> bool:
        """Whether two parts of a path or an address are one word: in this document, or because the first is none alone."""
        whole, parted = f"{left}{right}".lower(), f"{left}-{right}".lower()
        if self.words[whole] or self.words[parted]:
            return self.words[whole] > self.words[parted]
        return is_word(whole) and (left.lower() in PREFIXES or not is_word(left.lower()))

    def _one_option(self, left: str, right: str) -> bool:
        """Whether two parts of an option are one word: as the document has it, or broken where a typesetter breaks one."""
        whole, parted = f"{left}{right}".lower(), f"{left}-{right}".lower()
        if self.words[whole] or self.words[parted]:
            return self.words[whole] > self.words[parted]
        if left.lower() == "no" and _SWITCHED_OFF.search(self._source):
            return False  # as the document switches others off
        if whole.startswith("no") and f"-{whole[2:]}" in self._source:
            return True  # another option, switched off
        tail, head = left.rsplit("-", 1)[-1].lower(), right.lower()
        both = is_word(tail) and is_word(head)
        return not both and is_word(tail + head) and len(tail) in break_points(tail + head)

    def letters(self, stem: str, head: str) -> Joint:
        """How two pieces of words, without the hyphen and without what stands around them, are one."""
        left, right = stem.lower(), head.lower()
        tail, front = left.rsplit("-", 1)[-1], right.split("-", 1)[0]
        joined, parted = self.words[left + right], self.words[f"{left}-{right}"]
        short_joined, short_parted = self.words[tail + front], self.words[f"{tail}-{front}"]
        joined, parted = joined + short_joined, parted + short_parted
        if joined == parted == 0:
            joined, parted = (self._in_number(f"{left}{mark}", right) for mark in ("", "-"))
        if joined != parted and (joined == 0 or parted == 0 or max(joined, parted) > 2 * min(joined, parted)):
            return Joint.DROP if joined > parted else Joint.CLOSE
        if right in HUNG and left + right not in WITH_HUNG:
            return Joint.SPACE
        if self._marked or (left in PREFIXES and left in self._hung_parts):
            return Joint.CLOSE
        if "-" in left and not is_word(tail + front):
            return Joint.CLOSE
        if head[:1].isupper() != stem[-1].isupper() and (
            head[:1].isupper() or (len(stem) > 1 and stem.isupper())
        ):
            return Joint.CLOSE  # a name, or letters that stand for words
        front = front.removesuffix("'s").removesuffix("\u2019s")
        if self._unbroken and not self._surely_broken(tail, front):
            return Joint.CLOSE
        return self._known(tail, front)

    def _in_number(self, left: str, right: str) -> int:
        """How often a word that ends in ``right`` stands in the document in its other number: `bell-ropes` for `bell-rope`."""
        other = right[:-1] if right.endswith("s") else f"{right}s"
        return self.words[left + other]

    @cached_property
    def _marked(self) -> bool:
        """Whether the hyphens that line breaks put in have a sign of their own: all others at line ends are the writer's."""
        return len(_MARKED_END.findall(self._source)) >= SEVERAL

    def _known(self, left: str, right: str) -> Joint:
        whole = left + right
        if frequency(whole) == 0 and not is_word(whole):
            stems = [whole.removesuffix(end) for end in ("s", "es", "ed", "ing", "ly") if whole.endswith(end)]
            stems += [stem[:-1] for stem in stems if stem[-2:-1] == stem[-1:]]  # "unsetting"
            if any(self.words[stem] or (len(stem) > 4 and is_word(stem)) for stem in stems):
                return Joint.DROP
            # Where the first part is none, the second is a word of its own only if some running text has it.
            alone = is_word(right) and (is_word(left) or frequency(right) > RARE)
            if alone and len(left) not in break_points(whole):
                return Joint.CLOSE
            both = is_word(left) and is_word(right)
            apart = left in APART or right in AFTER
            return Joint.CLOSE if apart or (both and min(len(left), len(right)) > 2) else Joint.DROP
        if {left, right} & QUARTERS and frequency(whole) <= RARE * 4 and is_word(right):
            return Joint.CLOSE
        return Joint.DROP
