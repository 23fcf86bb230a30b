"""Whether a line is an instruction of an assembler, or a row of what it lists: where, which bytes, from what.

Asked of lines that stand in a run of others, for the names of instructions are short words, some of them of the
language too: what comes behind such a name, and nothing else, makes an instruction of it.
"""

from __future__ import annotations

import re

from fit.document.text.signs.measure import prose

_NAMES = (
    "adc and asl bcc bcs beq bit bmi bne bpl bra brk bvc bvs clc cld cli clv cmp cpx cpy dec dex dey eor inc inx iny "
    "jmp jsr lda ldx ldy lsr nop ora pha php pla plp rol ror rti rts sbc sec sed sei sta stx sty stz tax tay tsx txa txs tya "
    "mov lxi mvi call ret org equ db dw ds jz jnz jc jnc jp jm push pop ld stax ldax inr dcr cpi ani ori xra xri ana add adi "
    "sub sui rst ei di hlt in out xchg shld lhld dad end jr djnz set res ex exx ldir ldi cp inc dec or xor neg scf ccf daa "
    "rlc rrc rla rra rl rr sla sra srl halt im int je jne jb ja jl jg loop lea test shl shr sar movsb stosb lodsb rep "
    "clr com tst tstb mul div bsr bsf move moveq lsl asr swap rte trap dc cmpa adda suba ldaa staa ldab stab psha pula "
    "ldd std lbra lbsr lbeq lbne leax leay tfr exg macro endm include incbin rmb fcb fdb fcc"
)
_NAME = "|".join(sorted(set(_NAMES.split()), key=lambda name: (-len(name), name)))
_OPERAND = r"(?:\"[^\"]*\"|'[^']{1,2}'?|[^\s;\"']+(?:'[^']'?)?)"
_INSTRUCTION = re.compile(
    rf"""
    (?:(?:[.@!_]?[A-Za-z_]?[\w.$@]*:?|[-+]{{1,3}}|\d+\$:?)\s+)?
    (?:(?:{_NAME}|{_NAME.upper()})(?:\.[bwlBWL])?(?:\s+{_OPERAND}(?:\s*[-+*/&|,]\s*{_OPERAND})*)?
      | [.!][a-z]\w*(?:\s+\S.*)? | \*?\s*:?=\s*\S+)
    """,
    re.VERBOSE,
)
_WORDS = re.compile(r"[a-z]{2,}[,;]? [a-z]{2,}[,;]? [a-z]{2,}[,;]? ")
"""Words in a row, as no operand has them."""
_STRING = re.compile(r"\"[^\"]*\"")
_DIRECTIVE = re.compile(r"(?:[-+]{1,3}\s+)?[.!][a-z]\w*(?:\s+[^\"$#%\d,<>({=]*)?")
_REMARK = re.compile(r"(?:^|\s+);.*|;(?=\S).*|(?<=[^A-Za-z\s]);.*")
_ROW = re.compile(
    r"(?:\d+\s+)?[.>:$]?(?P<place>[0-9A-F]{4,8}|[0-9a-f]{4,8}):?\s+(?:(?:[0-9A-F]{2}){1,8}|(?:[0-9a-f]{2}){1,8})(?:\s[0-9A-Fa-f]{2})*(?:\s+(?P<rest>\S.*))?"
)
_GAP = re.compile(r"\s{2,}")


def instruction(text: str) -> bool:
    """Whether a line is an instruction, perhaps with a label before it and a remark behind it."""
    head = unremarked(text)
    if _INSTRUCTION.fullmatch(head) is None:
        return False
    bare = _STRING.sub("", head)
    return not (prose(bare) or _WORDS.search(bare))


def directive(text: str) -> bool:
    """Whether a line is a word behind a point, with nothing behind it that words do not have: perhaps only a name."""
    return _DIRECTIVE.fullmatch(text) is not None


def unremarked(text: str) -> str:
    """A line without the remark behind its semicolon; nothing is left of one that is all remark."""
    return _REMARK.sub("", text, count=1) if ";" in text else text


def listed(text: str) -> bool:
    """Whether a line is a row of a listing: a place, bytes, and perhaps the instruction or the text they come from."""
    match = _ROW.fullmatch(unremarked(text))
    if match is None:
        return False
    rest = match["rest"]
    return rest is None or any(map(instruction, _GAP.split(rest)))
