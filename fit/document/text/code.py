"""Whether a line is program text, a command or a dump, which stays as it stands."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from fit.document.text.measure import prose

_OPCODES = (
    "MOV|LDA|LXI|MVI|JMP|CALL|RET|ORG|EQU|DB|DW|DS|JZ|JNZ|JC|JNC|PUSH|POP|LD|STA|INX|DCX|INR|DCR|CPI|ANI|ORI|XRA|"
    "ANA|ADD|ADI|SUB|SUI|CMP|RST|EI|DI|HLT|IN|OUT|XCHG|NOP|SHLD|LHLD|DAD|END|JR|DJNZ|BIT|SET|RES|EX|EXX|LDIR"
)
_BASIC = (
    "REM|PRINT|LET|GOTO|GOSUB|RETURN|IF|FOR|NEXT|DIM|INPUT|DATA|READ|POKE|OPEN|CLOSE|END|STOP|DEF|LPRINT|ON|WHILE|"
    "WEND|CLS|LINE|RESTORE|RANDOMIZE|FIELD|GET|PUT|CLEAR|WIDTH|CALL"
)
_CODE = re.compile(
    rf"""
      ^\d{{1,5}}\s+(?:{_BASIC}|[A-Z]\w{{0,3}}[$%]?\s*=|'|\?)          # numbered BASIC lines
    | ^(?:RUN|LOAD|SAVE|PRINT|OPEN|INPUT)\s*"[^"]*"\S*$                # BASIC typed without a number
    | ^(?:[A-P]\d{{0,2}}|[A-Z]:\\?[\w\\]*)>                            # operating system prompts
    | ^(?:\$|%|\#|>>>|>>|\.\.\.|:|ok|Ok|Ready|READY)\s+\S{{2}}.*[^.\s]$|^[$%>]\s\S
    | ^\s*[{{}}] | /\*|\*/ | ^\s*//\s | ^\#\s?(?:include|define|if|ifdef|endif|!)
    | ^(?:\w+:?\s+)?(?:{_OPCODES})(?:\s+[A-Z0-9'$(][\w',+$()-]*|\s*$)(?:\s|$)
    | ^(?:\w+:\s+)?(?:ld|lda|sta|call|ret|jp|jr|jmp|push|pop|inc|dec|inx|add|sub|cp|or|and|xor|out|in|ex|djnz|mov|mvi|lxi|db|dw|ds|equ|org)
        (?:\s+(?:[a-z]{{1,2}}|[A-Z]\S*|\w*[^\w\s]\S*|\d\w*))?\s*$
    | ^[^\W\d]\w*(?:\[[^\]]*\]|\.\w+)*\s*(?::=|\+=|=)\s*\S+
    | ^\w+\([^)\s][^)]*\);?$ | ^(?:def|class|import|from|while|for|if|elif|else|return|begin|end|procedure|function|var)\b.*[:;({{]$
    | ^[0-9A-Fa-f]{{4,8}}[:\s]\s*(?:[0-9A-Fa-f]{{2}}\s+){{2}}           # dumps
    | ^[^\s,]+(?:,[^\s,]*){{4,}}$
    | ^<\/?\w+[^>]*>$ | ^\.\w+\s*= | ^\\\w+
    """,
    re.VERBOSE,
)
_PERHAPS = re.compile(r"(?:^|\s);\s?\S.*[^.]$|[;{}]\s*$|\S\s{2,}# \S|\s\\$")
"""An assembler comment, the end of a statement; or the semicolon of a sentence."""
_CLAUSE_END = re.compile(r"(?:[a-z][a-z'-]*,? )*[a-z][a-z'-]*;")
_PROMPT = re.compile(r"[A-P]\d{0,2}>|[A-Z]:\\[\w\\]*>|[$%] \S|>[A-Z]")
_PLAIN = re.compile(r"[A-Z][A-Z' -]+|(?:[A-Z][A-Z0-9',&-]*:? +){2,}[A-Z0-9',&:-]+")
_COMMAND = re.compile(
    r"^(?:[a-z][\w.-]{1,11}|[A-Z][A-Z0-9][A-Z0-9.-]{0,10})(?:\s+(?:-{0,2}/?[\w=?][-\w=?]*|[\w*?.:\\/<>=~+-]*[.:\\/*?=\[\]<>~][\w*?.:\\/<>=~\[\]+-]*|[A-Z0-9]{2,}|\[[^\]]*\]|<[^>]*>|\w{1,8}))*$"
)


@lru_cache(maxsize=4096)
def code(text: str) -> bool:
    """Whether a line (without indentation) looks like program text, a dump or a typed command."""
    return _CODE.search(text) is not None or (_PERHAPS.search(text) is not None and not prose(text))


def clause_end(text: str) -> bool:
    """Whether a line is plain words up to a semicolon: below a sentence its end, elsewhere perhaps a statement."""
    return _CLAUSE_END.fullmatch(text) is not None


def prompted(text: str) -> bool:
    """Whether a line starts with the prompt of an operating system: part of a transcript."""
    return _PROMPT.match(text) is not None


@lru_cache(maxsize=4096)
def command(text: str) -> bool:
    """Whether a line looks like a command line: a name, then options, file names, short words."""
    return (
        len(text) < 70
        and _COMMAND.match(text) is not None
        and any(char in text for char in ".:\\/*=[]<>-_")
        and not _PLAIN.fullmatch(text)
        and not text.endswith((".", ":"))
    )


def find_comments(texts: Sequence[str], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are one comment of program text, its stars no bullets."""
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(texts):
        end = index + 1
        if taken[index] is None and texts[index].startswith("/*") and "*/" not in texts[index]:
            while end < len(texts) and texts[end].startswith("*") and "*/" not in texts[end]:
                end += 1
            if end < len(texts) and "*/" in texts[end]:
                found.append((index, end + 1))
                end += 1
        index = end
    return found
