"""What lines are for program text, and whether most of a run of them are: then all of it is.

A label, a remark, a sign at the start of a line and a gap in its middle show nothing by themselves.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.assembler import directive, instruction, listed, unremarked
from fit.document.text.signs.code import code, typed
from fit.document.text.signs.markers import find_dashed, find_marker
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.strokes import strength

STRANGE = 5
"""One of so many lines, at most, may be nothing that program text has."""
DOUBTFUL = frozenset(("like", "strange"))
"""Kinds of lines that stand elsewhere too."""
_QUOTED = re.compile(r">(?:[> ]|$)")
"""The mark of words quoted from a letter."""
_LABEL = re.compile(r"[.@!_]?[A-Za-z_][\w.$@]*:?")
_REMARKED = re.compile(r"\S+(?:\s+\S+){0,2}\s+;|[;#]|//|/\*|\*/|--\s")
"""A few words before a remark, or nothing but one."""
_SIGNS = re.compile(r"[{}=$#%\\|<>@_^]|\(\)|\w\(|::|;$|^[^\w\s(\"'\[]")
_SHORT = re.compile(r"[a-z]\w*(?: \w+){0,2}|(?:return|break|end|else|goto)\b.*|\.\.\.")
"""A few small words, as a statement may be, `exit 1`; a word that ends a part of a program; what is left out."""
_BESIDE = re.compile(r"(\S.*?)\s{2,}//\s")
"""What stands before a remark."""
_NOTED = re.compile(r"(\S.*?)\s{2,}# [A-Z][a-z]")
"""What stands before one that begins as a sentence does."""
_HEADS = re.compile(
    r"(?:if|elif|for|foreach|while|until|unless|with|def|class|switch|case|function)\b.*[(\[=<>'\"].*(?:[:{]| do| then)"
    r"|(?:case [\w.'\\]+|default) ?:|(?:if|while|for|switch|def|sub|function|procedure) ?[\w.:]* ?\(.*\)|(?:while|until|unless|if) \w+(?: \w+)?:"
)
_MEANT = re.compile(r".*\s[-=]>\s+[\"(]?(?:\d+ )?[A-Za-z][a-z'-]*[ ,.\"]")
"""An arrow before words: what a key means."""
_WIDE = re.compile(r" {2,}")
_WORDS = re.compile(r"\(?[A-Za-z][a-z]+(?: [a-z]|[.)]?$)")
_NUMBERED = re.compile(r"\d{1,5} +[A-Z]{2}")
"""How a numbered line of a program begins."""
_STRING = re.compile(r'[a-z]\w*\s{2,}(?:\S+\s+)?"[^"]*"')
"""A word for a program and, behind a wide blank, what it says: `say    5 "The lamp is lit."`"""
_CUT = re.compile(r"[^\W\d_]-$")


def program(part: Sequence[Line]) -> bool:
    """Whether lines without a blank one between are program text, by what most of them are."""
    if all(_QUOTED.match(line.text) for line in part):
        return False
    count = Counter(kinds(part))
    sure = count["sure"] + count["directive"]
    if not count["sure"] or sure < 2 or 2 * sure < len(part) - count["remark"]:
        return False
    if STRANGE * count["strange"] > len(part) or 2 * sum(strength(line.text) == 2 for line in part) >= len(
        part
    ):
        return False
    return not (mostly_items(part) or 2 * sum(keyed(line.text) for line in part) > len(part))


def belongs(part: Sequence[Line]) -> bool:
    """Whether lines beside program text can be a part of it: none is strange or said, and one shows it."""
    if any(ruled_off(line.text) for line in part):
        return False
    found = kinds(part)
    said_any = any(
        kind != "remark" and said(line.text) and not heads(part, index)
        for index, (kind, line) in enumerate(zip(found, part, strict=True))
    )
    return (
        not said_any and "strange" not in found and not DOUBTFUL.issuperset(found) and not mostly_items(part)
    )


def heads(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a statement that opens what stands deeper right below it, though it may read as text."""
    if parted_above(lines, index + 1) or lines[index + 1].indent <= lines[index].indent:
        return False
    return _HEADS.fullmatch(lines[index].text) is not None


def kinds(part: Sequence[Line]) -> list[str]:
    """What each line is for program text; those inside a remark that is open are remarks too."""
    found = []
    inside = False
    for index, line in enumerate(part):
        found.append("remark" if inside else "sure" if heads(part, index) else kind(line.text))
        inside = opens(line.text, inside)
    return found


def opens(text: str, inside: bool) -> bool:
    """Whether a remark is open behind a line."""
    last = text.rfind("*/")
    return text.rfind("/*") > last if last >= 0 or "/*" in text else inside


def kind(text: str) -> str:
    """What a line is for program text: `sure`, a `directive`, `like` it, nothing but a `remark`, or `strange`."""
    head = unremarked(text)
    if not head:
        return "remark"
    if _MEANT.match(head):
        return "strange"
    beside = _BESIDE.match(text)
    if _noted(text):
        return "sure"
    if code(beside[1] if beside else text) or listed(head) or instruction(head) or _braced(text):
        return "directive" if directive(head) else "sure"
    if head != text or _LABEL.fullmatch(head) or typed(text) or (_SIGNS.search(head) and not closed(text)):
        return "strange" if beside and not _SIGNS.search(beside[1]) else "like"
    return "like" if _SHORT.fullmatch(text) else "strange"


def _noted(text: str) -> bool:
    """Whether a remark stands beside something that is no running text."""
    noted = _NOTED.match(text) if "# " in text else None
    return noted is not None


def _braced(text: str) -> bool:
    """Whether a line ends in a brace, or in a string or brackets that are closed, as statements do."""
    return text.endswith(("{", "}", "};", "));", '");'))


def said(text: str) -> bool:
    """Whether a line is running text and no remark of a program, nor one beside a statement or a string in it."""
    if not prose(text) or code(text) or _REMARKED.match(text) or _braced(text) or _STRING.fullmatch(text):
        return False
    return not _noted(text) and not (('"' in text or ";" in text) and instruction(text))


def mostly_items(part: Sequence[Line]) -> bool:
    """Whether half of the lines at the left begin with a list mark or a key and a dash, before no instruction."""
    left = [line.text for line in part if line.indent == part[0].indent]
    marked = 0
    for text in left:
        dashed = find_dashed(text)
        marker = find_marker(text) is not None or (dashed is not None and dashed[1] in {"-", "--"})
        marked += marker and not (instruction(text) or listed(text) or (_NUMBERED.match(text) and code(text)))
    return 2 * marked >= len(left) and marked > 0


def wrapped(part: Sequence[Line]) -> bool:
    """Whether a line ends in a word that goes on in the next."""
    return any(_CUT.search(line.text) for line in part[:-1])


def keyed(text: str) -> bool:
    """Whether a line has words of its own behind a wide blank, and no instruction: a meaning beside its key."""
    head = unremarked(text)
    return not listed(head) and any(
        _WORDS.match(rest) and not instruction(rest) for rest in _WIDE.split(head)[1:]
    )
