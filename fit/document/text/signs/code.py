"""Whether a line is program text, a command or a dump, which stays as it stands."""

from __future__ import annotations

import re
from functools import lru_cache

from fit.document.text.line import REMEMBERED
from fit.document.text.signs.measure import prose, small_word

_OPCODES = (
    "MOV|LDA|LXI|MVI|JMP|CALL|RET|ORG|EQU|DB|DW|DS|JZ|JNZ|JC|JNC|PUSH|POP|LD|STA|INX|DCX|INR|DCR|CPI|ANI|ORI|XRA|"
    "ANA|ADD|ADI|SUB|SUI|CMP|RST|EI|DI|HLT|IN|OUT|XCHG|NOP|SHLD|LHLD|DAD|END|JR|DJNZ|BIT|SET|RES|EX|EXX|LDIR"
)
_BASIC = (
    "REM|PRINT|LET|GOTO|GOSUB|RETURN|IF|FOR|NEXT|DIM|INPUT|DATA|READ|POKE|OPEN|CLOSE|END|STOP|DEF|LPRINT|ON|WHILE|"
    "WEND|CLS|LINE|RESTORE|RANDOMIZE|FIELD|GET|PUT|CLEAR|WIDTH|CALL"
)
_ASSEMBLER = "ld|lda|sta|ret|jp|jr|jmp|push|pop|inc|dec|inx|dcx|sub|cp|cpi|xor|out|ex|djnz|mov|mvi|lxi|db|dw|ds|equ|org|call|add"
_WORDS = "in|or|and"
"""Instructions that are words too: only with an operand that no sentence has."""
_CODE = re.compile(
    rf"""
      ^\d{{1,5}}\s+(?:{_BASIC}|[A-Z]\w{{0,3}}[$%]?\s*=|'(?![^']*')|\?)          # numbered BASIC lines
    | ^FOR\s+[A-Z]\w?%?\s*=\s*\S+\s+TO\s | ^(?:GOSUB|GOTO)\s+\d+ | ^NEXT\s+[A-Z]\w?%?$ # and statements of it
    | ^(?:RUN|LOAD|SAVE|PRINT|OPEN|INPUT)\s*"[^"]*"\S*$                # BASIC typed without a number
    | ^(?:[A-P]\d{{0,2}}|[A-Z]:\\?[\w\\]*)>                            # operating system prompts
    | ^\#{{1,2}}(?:\s(?!.*\s\#+$).*)?$ | ^\.\\"(?:\s|$) | ^;+\s\S                               # comments, no walls of a map
    | ^(?:print|printf|puts|echo|say)\s"(?:[^"\\]|\\.)*"[,;]?$            # what a program says
    | ^(?:\$|%|>>>|>>(?!.*\s<<(?:\s|$))|\.\.\.|:|ok|Ok|Ready|READY)\s+\S{{2}}.*[^.\s]$|^[$%>]\s\S | ^[$%][a-z]+\s[-+][A-Za-z]
    | ^(?:\S.*\s{{2,}})?//\s | ^\#\s?(?:include|define|undef|if|ifdef|ifndef|else|elif|endif|!)
    | ^\.(?:[a-z]{{2}}|[A-Z]{{2}})(?:\s+[-+\d"'].*|\s*)$                # requests to a formatter
    | ^\.[A-Z]{{3,}}(?:\s[^a-z]*)?$                                   # typed behind a point
    | ^(?:IF|if)\s+(?:(?:NOT|not)\s+)?(?:ERRORLEVEL|errorlevel|EXIST|exist)\s+\S+\s+\S | ^:(?:[A-Z][A-Z\d]+|[a-z][a-z\d]+)$ # batches: tests and labels
    | ^[A-Z][^a-z]*\s:\s*REM\b                                        # a remark behind a statement
    | ^(?:fi|done|esac|endif|end|then|else)$ | ^\w+\s?\(\)\s*\{{?$
    | ^(?:\w+:?\s+)?(?:DB|db|DEFB|defb|DEFM|defm)\s+'                 # text that a program holds
    | ^[0-9A-Fa-f]{{4,8}}[:\s]\s*(?:[0-9A-Fa-f]{{2}}\s+){{2}} | ^[0-9A-Fa-f]{{4,8}}:\s+(?:[0-9A-Fa-f]{{4}}\s+){{2}} | ^0x[\da-f]{{4,16}}\s<[^>]*>:?\s   # dumps
    | ^[A-Z]+\s[a-z]\w*\([A-Z_]+(?:,\s[A-Z_]+)*\);$                      # the form of a call, its types in capitals
    | ^\w+(?:\.\w+)*\((?=[^)\s])(?:[^()]|\([^()]*\))*\);?$ | ^(?:(?:static|const|unsigned|extern)\s)*(?:int|void|char|long|short|double|float|struct)\s\**\w+\s?\(.*\)
    | ^(?:for|while|until|if)\s.*;\s?(?:do|then)\s.*;\s?(?:done|fi)\b
    | ^typedef\s(?:struct|union|enum)(?:\s\w+)?(?:\s?\{{)?$
    | ^for\s\w+(?:,\s\w+)*\sin\s(?:\S+|\w[\w.]*\(.*\)):$ | ^from\s[\w.]+\simport\s\w+(?:,\s\w+)*$ | ^(?:.*\|\s)?(?:for|while|until|if|elif)\s.*;\s?(?:then|do)$
    | ^(?:if|while|elseif|elif|for|switch)\s?\(.*(?:[=<>]|&&|\|\|).*\)\s*\{{?$
    | ^[^\s,]+(?:,[^\s,]*){{4,}}$ | ^[a-z][\w.-]*:(?:[^:\s]+:){{3,}} | ^\+[\w.-]*:(?:[^:\s]*:){{4,}}\S*$            # fields of a line of a file
    | ^dnl(?:\s|$) | ^msg(?:id|str|ctxt|id_plural)(?:\[\d\])?\s" | ^(?:REM|rem)\s(?!.*\.$) | ^\w[^;#]*;\s+\#\s\w                  # remarks, one of them behind a statement
    | ^(?:[A-Z ]+\s)?(?:SUBROUTINE|FUNCTION)\s[A-Z]\w*\s?\([A-Z\d, *]*[),]$ | ^CHARACTER\*\S+\s+[A-Z] | ^CALL\s[A-Z]\w*\s?\(.+\)$  # FORTRAN
    | ^(?:INTEGER|REAL|LOGICAL|COMPLEX)\s(?=\s|.*[,(]|\w{{1,2}}$)\s*[A-Z]\w*(?:\([^()]*\))?(?:,\s*[A-Z]\w*(?:\([^()]*\))?)*$
    | ^</?[A-Za-z]\w*(?:\s[^>]*)?/?>$ | ^\.\w+\s*=
    | ^@echo\s\S | ^[\w-]+(?:\|[\w-]+)+\|\w+(?:\s\w+)+$                   # said by a rule of a makefile; names of one thing
    | ^(?i:insert\s+into\s+\S|delete\s+from\s+\w|select\s.+\sfrom\s+\w|update\s+\w+\s+set\s|(?:create|alter|drop)\s+(?:table|view|index|user|database|procedure|trigger|role)\s|(?:commit|rollback|savepoint)\b)[^;]*;(?:\s+--\s.*)?$ # statements of a database
    | ^(?i:(?:create|alter)\s+(?:view|procedure|trigger)\s.*\sas)$
    | ^\((?:(?:setq|def(?:un|var|custom|macro))\s+[\w(*]|(?:let\*?|lambda|define|while|when|if|cond)\s+\([^()]*\(        # forms of Lisp
        | [a-z]+(?:-[a-z]+){{2,}}\)+$ | (?:require|[a-z]+(?:-[a-z]+)+)\s+(?:'[\w(]|"|\(|(?:\d+|t|nil)\))) | ^'\("
    | ^if\s\w+\(.*\)\sthen(?:\sdo)?$ | ^"[^"]*"(?:,(?:"[^"]*"|[$\d]\w*))+$                              # data of a program
    """,
    re.VERBOSE,
)
_COMMENT = re.compile(r"(?:^|\s)/\*|\*/(?:\s|$)")
_UNLESS_PROSE = re.compile(
    rf"""
      ^[{{}}](?!\w+\}}[a-z]|[\w,.-]*\}}@|[\w.-]+(?:,[\w.-]+)+\}}\s[a-z]) | ^(?:(?:[A-Z][A-Z\d]*|\w+:)\s+)?(?:{_OPCODES})(?:\s+[A-Z0-9'$(][\w',+$()-]*(?:\s{{2,}}|\s;|(?<=,)\s|$)|\s*$)
    | ^(?:\w+:\s+)?(?:{_ASSEMBLER})(?:\s+(?:[a-z]{{1,2}}|[A-Z][A-Z0-9_]*|\w*[^\w\s.;:!?)"'][^\s.]*|\d\w*))\s*$ | ^(?:ret|ldir)$
    | ^(?:\w+:\s+)?(?:{_WORDS})\s+(?:[abcdehlm]|\([a-z\d]+\)(?:,\w+)?|\w+,\S+|[\da-fA-F]*\d[\da-fA-F]*[hH])\s*$
    | ^(?!.*\w[.]\s[A-Z])[^\W\d]\w*(?:\[[^\]]*\]|\.\w+)*\s*(?::=|\+=|=)\s*\S+
    | ^(?:let|set|local|my|var|const)\s[\w:.]+\s*[-+.]?=
    | ^[a-z]+\.[a-z]{{3,}}:(?![\d/:])[^\s()]+\s+\S                          # values of a program behind names in parts
    | ^(?!.*\se\.?g\.?:$)(?!(?:class|while|(?:from|for|function|import|procedure|return)(?:\s[a-z]+(?:,\s[a-z]+)*)?):$)(?:def|class|import|from|while|for|if|elif|else|return|begin|end|procedure|function|var)\b.*[:;({{]$
    | ^(?:echo|print|printf|say|eval|alias|export|setenv)\s(?:.*\s)?["'$(] | ^export\s\w+=\S
    | ^setenv\s+\w+\s+\S+$ | ^call\s\w*[a-z][A-Z]\w*(?:\s['"(].*)?$
    | ^\.(?:byte?|word|dw|db|asc(?:ii|iz)?|text|org|equ|globl?|align|fopt)\s+(?:["$%\#\d]|\w+,\s?\w|\w+\s{(2,)};) | ^\\[^\W_]\w*
    | ^(?:if|elif|while)\s\[+\s | ^\[+\s(?:-\w\s|.*\s-\w{{1,2}}\s|.*=).*\s\]+(?:\s&&|\s\|\||$)
    """,
    re.VERBOSE,
)
"""What program text and a sentence may both begin with."""
_PERHAPS = re.compile(
    r"(?:^|\s);\s?\S.*[^.]$|[;{}]\s*$|\S\s{2,}# \S|\s// \S|(?:[\s,;|]|(?<!\b[A-Za-z]):)\\$|\s\d?>&[\d-](?=[\s;|)]|$)"
)
"""An assembler comment, the end of a statement, a remark, a redirection; or the semicolon of a sentence."""
_WITH_VARIABLE = re.compile(
    r'[a-z][\w.-]*(?: .*)? "\$[A-Z][A-Z_]*"(?: .*)?|[a-z]{2,}(?: [\w.-]+)*(?: \$\(\.?[A-Z][A-Z\d_]*\))+|cd \$[A-Z]+'
)
"""A command with a variable of a shell among its words, or those of a makefile behind them."""
_TWO_WORDS = re.compile(r"[A-Za-z]{2,} [a-z]+ ")
_MEANS = re.compile(
    r"[A-Z\d] = (?:[A-Za-z][a-z'-]+[,.;]?(?: |$)){2,}[a-z ,;.'-]*$|[A-Z][a-z]{2,} = (?:[a-z]+(?:-[a-z]+)* (?:= )?)*[a-z]+\.$"
)
"""One sign and the words that explain it, two at least; a word and what it is, with the full stop of a sentence."""
_FIRST_WORDS = re.compile(r"(?:[A-Z][A-Z\d_]+ )?[A-Z][a-z]+(?: [a-z]+){3} ")
"""A sentence, a name in capitals before it or none."""
_ASIDE = re.compile(r"\{ ?(?:[A-Z][a-z]+ )?'[^']*'(?: [a-z]+){2,} ?\}")
"""Words in braces with what is to be typed among them."""
_SMALL = re.compile(r"(?<=\s)(?:the|a|an|of|to|at|in|is|are|not|that|this|with|by|be)(?=\s)")
_REMARK = re.compile(r"\s{2,}(?:#{1,2}|;|//|/\*|')\s")
"""What comes before a remark beside a statement."""
_SET_OFF = re.compile(r"\s{3,}; (?=[^\W\d])")
"""A semicolon with much blank before it: no sentence has one so, whatever the words behind it."""
_LABELLED = re.compile(r"[^\W\d_][^:;]*:\s{2,}")
_QUOTED_WHOLE = re.compile(r"'[^']+'|\u2018[^\u2018\u2019]+\u2019|`[^`']+['`]")
_CLAUSE_END = re.compile(r"(?:[a-z][a-z'-]*,? )*[a-z][a-z'-]*(?: \"[A-Za-z][a-z' -]*\")?;")
_PROMPT = re.compile(
    r"[A-Z][A-Z\d]{1,9}>  |[A-P]\d{0,2}>|[A-Z]:\\[\w\\]*>|[$%] \S|[$%][a-z]+ [-+][A-Za-z]|>[A-Z]|\.[A-Z]{3,}(?:\s[^a-z]*)?$"
)
_ASKED = re.compile(r"> ?[a-z][a-z'-]*(?:,? [A-Za-z'-]+){0,6}")
_PLAIN = re.compile(r"[A-Z][A-Z' -]+|(?:[A-Z][A-Z0-9',&-]*:? +){2,}[A-Z0-9',&:-]+(?:\.\d+)*")
_OPTION = re.compile(r"\s(?:--?[A-Za-z]|/[A-Z?](?:[A-Z]*$|[\dA-Z]*[:=,\s])|\[[-/A-Z])")
_QUOTED = re.compile(r"\"[^\"]*\"|'[^']*'")
SLOTS = 3
"""Words in angle brackets that a line longer than most commands has, at least."""
_STOP = re.compile(r"[A-Za-z][.:]\s|\d\.\s|^[A-Za-z]+ \d{1,3}:\s")
"""A full stop or colon after a word, a stop after a number, or the number of a title, as no command line has it."""
_COMMAND = re.compile(
    r"""
    ^(?!see\s)(?:[a-z][\w.-]{1,11}|[a-z]\w*_\w+(?=\s)|[A-Z][A-Z0-9][A-Z0-9.-]{0,10}|(?:\.{0,2}|~|[A-Z]:)[/\\][\w./\\-]+)
    (?:\s+(?:-{0,2}/?[\w=?][-\w=?]*
      | [\w*?.:\\/<>=~+-]*[.:\\/*?=\[\]<>~][\w*?.:\\/<>=~\[\]+-]* | --?[a-z][\w-]*=\$\w+
      | [A-Z0-9]{2,} | \[(?:[^\[\]]|\[[^\]]*\])*\] | <[^>]*>(?:\[(?:[^\[\]]|\[[^\]]*\])*\])? | \{[^}]*\} | "[^"]*" | '[^']*' | [-/]{0,2}\w+(?:,\w+)+ | [|&\\]{1,2} | \$\w+ | \w{1,8}))*$
    """,
    re.VERBOSE,
)


@lru_cache(maxsize=REMEMBERED)
def code(text: str) -> bool:
    """Whether a line (without indentation) looks like program text, a dump or a typed command."""
    if _CODE.match(text) or ("*" in text and _COMMENT.search(text) and not _names_comment(text)):
        return True
    head = (
        text if text.endswith("#") else _REMARK.split(text, maxsplit=1)[0]
    )  # between walls stands no remark
    if head not in {text, "#"} and (code(head) or _remarked(text, head)):
        return True
    likely = _PERHAPS.search(text) or _UNLESS_PROSE.match(text)
    if likely is None and "$" in text:
        likely = None if any(map(small_word, text.split())) else _WITH_VARIABLE.fullmatch(text)
    return likely is not None and not prose(text) and not _worded(text) and not _MEANS.match(text)


def _names_comment(text: str) -> bool:
    """Whether a sentence speaks of the marks of a comment: nothing stands between them, or words before the first go on behind it."""
    if "/**/" in text:
        return prose(text)
    at = text.find("/*")
    return at > 0 and not text.endswith("*/") and prose(text[:at])


def _remarked(text: str, head: str) -> bool:
    """Whether a semicolon far behind words that are no sentence and no label with its value begins a remark."""
    return _SET_OFF.match(text, len(head)) is not None and not _LABELLED.match(head)


def small_words(text: str) -> int:
    """How many small words of a sentence stand inside a line: program text has hardly any."""
    return len(_SMALL.findall(text))


def _worded(text: str) -> bool:
    """Whether a line with signs in it is said in words: two plain ones first, and no statement has so many small ones."""
    small = small_words(text)
    if text[0] == "{" and _ASIDE.fullmatch(text):
        return True
    return (small >= 2 and _TWO_WORDS.match(text) is not None) or (
        small >= 1 and _FIRST_WORDS.match(text) is not None
    )


def quoted_whole(text: str) -> bool:
    """Whether a line is one thing to be typed, between quotation marks: whatever sign is last in it, it ends no sentence."""
    return _QUOTED_WHOLE.fullmatch(text) is not None


def clause_end(text: str) -> bool:
    """Whether a line is plain words up to a semicolon: below a sentence its end, elsewhere perhaps a statement."""
    return _CLAUSE_END.fullmatch(text) is not None


def prompted(text: str) -> bool:
    """Whether a line starts with the prompt of an operating system: part of a transcript."""
    return _PROMPT.match(text) is not None


def asked(text: str) -> bool:
    """Whether a line is a few small words behind `>`: typed in a game, or quoted from a letter."""
    return _ASKED.fullmatch(text) is not None


@lru_cache(maxsize=REMEMBERED)
def command(text: str) -> bool:
    """Whether a line looks like a command line: a name, then options, file names, short words."""
    return (
        (len(text) < 70 or text.count("<") >= SLOTS or _OPTION.search(text) is not None)
        and (not text.endswith((".", ":")) or text.endswith(" ."))
        and any(char in text for char in ".:\\/*=[]<>-_")
        and _COMMAND.match(text) is not None
        and not _PLAIN.fullmatch(text)
        and not _STOP.search(_QUOTED.sub("", text))
    )


def ordered(text: str) -> bool:
    """Whether a line is a command line and no sentence; what is said between quotation marks in it does not count."""
    if not command(text):
        return False
    return not prose(text) or ('"' in text and not any(map(small_word, _QUOTED.sub("", text).split())))


def typed(text: str) -> bool:
    """Whether a line is program text, or a command line and no sentence."""
    return code(text) or ordered(text)


def with_options(text: str) -> bool:
    """Whether a line is a command line with options or with parts that can be left out."""
    return _OPTION.search(text) is not None and ordered(text)
