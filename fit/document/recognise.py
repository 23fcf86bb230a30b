"""Which format a document has, by what stands in it, with the evidence in words.

A word-processor file shows in its bytes; the others show in their text. A name decides nothing but for
Markdown, of which a page may hold no mark at all, and for HTML, of which a page may hold few.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from fit.containers import find_container
from fit.document.markdown_marks import count_marks
from fit.errors import DocumentError

FORMATS: Final = ("text", "wordproc", "markdown", "html", "man")
"""The formats that can be read."""

_LOOKED_AT: Final = 200_000
"""Characters; a document shows its format long before."""

_OTHER_TEXTS: Final = ((b"{\\rtf", "an RTF document"), (b"%!PS", "a PostScript document"))
_SESSION: Final = re.compile(
    rb'\s*\{\s*"(?:form"\s*:\s*"fit-session"|version"\s*:\s*[1-3]\s*,\s*"(?:width|term)")'
)
"""The header of a session file, or of an asciicast recording."""
_CONTROLS: Final = bytes(code for code in range(32) if code not in (7, 8, 9, 10, 11, 12, 13, 26, 27))
_WORDPROC_CONTROLS: Final = bytes((1, 2, 3, 4, 5, 6, 14, 15, 16, 17, 18, 19, 20, 22, 23, 24, 25, 30, 31))

_HTML_START: Final = re.compile(
    r"\s*(?:<!--.*?-->\s*)*(?:<\?xml[^>]*>\s*)?<(?:!doctype\s+html|html|head|body)\b",
    re.IGNORECASE | re.DOTALL,
)
_HTML_TAG: Final = re.compile(
    r"</?(?:p|h[1-6]|div|table|tr|td|th|ul|ol|li|dl|dt|dd|pre|br|hr|a|b|i|em|strong|code|font|center|span|section)\b[^<>]*>",
    re.IGNORECASE,
)
_HTML_BLOCK_START: Final = re.compile(
    r"\s*<(?:p|h[1-6]|div|table|ul|ol|dl|pre|center|section|article|main)\b[^<>]*>", re.IGNORECASE
)
_MAN: Final = re.compile(r"^\.[ \t]*(?:TH|Dd)[ \t]+\S", re.MULTILINE)
ONLY_ELSEWHERE: Final = re.compile(r"(?:\s|[.']\\\"[^\n]*\n)*\.so[ \t]+(\S+)\s*")
"""A manual page that stands in another file."""
_MAN_OTHER: Final = re.compile(r"^[.'](?:\\\"|(?:SH|SS|PP|TP|IP|B|I|BR|nf|fi|TS)\b)", re.MULTILINE)


class Recognised(NamedTuple):
    """A format and why."""

    format: str
    reason: str


def refuse_containers(data: bytes, name: str) -> None:
    """Raise `DocumentError` for what is no document that can be read, with what it is."""
    container = find_container(data)
    if container is not None:
        lead = "" if container.is_packed else ", which cannot be read"
        raise DocumentError(f"is {container.what}{lead}", source=name, hint=container.todo)
    for start, what in _OTHER_TEXTS:
        if data.startswith(start):
            raise DocumentError(
                f"is {what}, which cannot be read", source=name, hint="turn it into text first"
            )
    strange = len(data) - len(data.translate(None, _CONTROLS))
    ours = len(data) - len(data.translate(None, _WORDPROC_CONTROLS))
    if data and (strange - ours > 0.05 * len(data) or strange > 0.3 * len(data)) and 0 not in data[:4096]:
        share = f"{100 * strange // len(data)} % of its bytes are control codes"
        raise DocumentError(
            f"is no text document: {share}", source=name, hint="give a text, Markdown, HTML or manual page"
        )


def refuse_sessions(data: bytes, name: str) -> None:
    """Raise `DocumentError` for what a program printed, recorded: its lines are no text until they are replayed."""
    if _SESSION.match(data):
        raise DocumentError(
            "is a recorded session and no document", source=name, hint="measure it with fit check"
        )


def recognise_bytes(data: bytes) -> Recognised | None:
    """A word-processor file by its bytes; None where the text has to be looked at."""
    soft = data.count(b"\x8d\n")
    if soft and soft + data.count(b"\r\n") >= 0.9 * data.count(b"\n"):
        return Recognised("wordproc", f"{soft} soft line ends")
    marked = len(re.findall(rb"[a-zA-Z][\xe1-\xfa\xc1-\xda\xac\xae](?= [a-zA-Z])", data[:_LOOKED_AT]))
    plain = len(re.findall(rb"[a-zA-Z]{2}(?= [a-zA-Z])", data[:_LOOKED_AT]))
    if marked > 20 and marked > 4 * plain:
        return Recognised("wordproc", f"{marked} word ends with bit 7 set")
    return None


def recognise_text(text: str, name: str) -> Recognised:
    """The format of a decoded document."""
    sample = text[:_LOOKED_AT]
    if _HTML_START.match(sample):
        return Recognised("html", "it begins as HTML does")
    if name.lower().endswith((".html", ".htm", ".xhtml")) and _HTML_TAG.search(sample):
        return Recognised("html", "its name says so, and it has tags of HTML")
    if "\f" in sample and not name.lower().endswith((".md", ".markdown")):
        return Recognised("text", "it has form feeds, which no markup has")
    if _MAN.search(sample) and _MAN_OTHER.search(sample) and _requests(sample):
        return Recognised("man", "it has the title line and macros of a manual page")
    if ONLY_ELSEWHERE.fullmatch(sample):
        return Recognised("man", "it names the file in which a manual page stands")
    if name.lower().endswith((".md", ".markdown")):
        return Recognised("markdown", "its name says so")
    tags = len(_HTML_TAG.findall(sample))
    if (tags >= 3 and _HTML_BLOCK_START.match(sample)) or tags > 10 + len(sample) / 200:
        return Recognised("html", f"{tags} tags of HTML")
    return _markdown_or_text(sample)


def _requests(sample: str) -> bool:
    """Whether a text is written for a formatter, and does not only show how: requests first, or all over."""
    lines = [line for line in sample.split("\n") if line.strip()]
    return lines[0][0] in ".'" or sum(line[0] in ".'" for line in lines) >= 0.1 * len(lines)


def _markdown_or_text(sample: str) -> Recognised:
    marks = count_marks(sample)
    if marks.markdown():
        return Recognised("markdown", marks.words())
    return Recognised("text", "nothing in it shows another format")
