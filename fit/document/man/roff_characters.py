r"""Special characters of roff by name: ``\(xx`` and ``\[name]``.

Source: the tables of groff_char(7) and mandoc_char(7), from memory; the tests hold them against mandoc.
"""

from __future__ import annotations

import unicodedata
from typing import Final

_PAIRS: Final = (
    # quotes
    "lq\u201c rq\u201d Bq\u201e bq\u201a oq\u2018 cq\u2019 aq' dq\" Fo\u00ab Fc\u00bb fo\u2039 fc\u203a aa\u00b4 ga`"
    # ASCII under a name
    " Lq\u201c Rq\u201d ti~ ha^ rs\\ sl/ ba| br\u2502 ul_ at@ sh# Do$ lB[ rB] lC{ rC} la\u27e8 ra\u27e9"
    # dashes and marks
    " en\u2013 em\u2014 hy\u2010 mi\u2212 bu\u2022 ci\u25cb sq\u25a1 lz\u25ca OK\u2713 CR\u21b5 dg\u2020 dd\u2021 ps\u00b6"
    " sc\u00a7 lh\u261c rh\u261e de\u00b0 r!\u00a1 r?\u00bf bb\u00a6 co\u00a9 rg\u00ae tm\u2122 fm\u2032 sd\u2033 mc\u00b5"
    # money and fractions
    " ct\u00a2 eu\u20ac Eu\u20ac Po\u00a3 Ye\u00a5 Cs\u00a4 Fn\u0192 12\u00bd 14\u00bc 34\u00be 18\u215b 38\u215c 58\u215d 78\u215e"
    " S1\u00b9 S2\u00b2 S3\u00b3"
    # arrows
    " <-\u2190 ->\u2192 <>\u2194 da\u2193 ua\u2191 va\u2195 lA\u21d0 rA\u21d2 hA\u21d4 dA\u21d3 uA\u21d1 vA\u21d5 an\u23af"
    # mathematics
    " pl+ +-\u00b1 -+\u2213 mu\u00d7 di\u00f7 f/\u2044 eq= ==\u2261 ne\u2262 !=\u2260 ap\u223c |=\u2243 =~\u2245 ~=\u2248 ~~\u2248"
    " <=\u2264 >=\u2265 <<\u226a >>\u226b if\u221e sr\u221a no\u00ac tno\u00ac pc\u00b7 md\u22c5 **\u2217 t+-\u00b1 tmu\u00d7 tdi\u00f7"
    " pt\u221d es\u2205 mo\u2208 nm\u2209 sb\u2282 sp\u2283 ib\u2286 ip\u2287 ca\u2229 cu\u222a AN\u2227 OR\u2228 fa\u2200 te\u2203"
    " 3d\u2234 tf\u2234 gr\u2207 pd\u2202 is\u222b integral\u222b sum\u2211 product\u220f de\u00b0 c*\u2297 c+\u2295 wp\u2118 Re\u211c"
    " Im\u2111 Ah\u2135 /_\u2220 pp\u22a5 nb\u2284 nc\u2285 st\u220b %0\u2030 or| ru_ rn\u203e -h\u210f hbar\u210f lf\u230a rf\u230b lc\u2308 rc\u2309 sqrt\u221a bv\u23aa SP\u2660 CL\u2663"
    " HE\u2665 DI\u2666"
    # letters
    " AE\u00c6 ae\u00e6 OE\u0152 oe\u0153 ss\u00df -D\u00d0 Sd\u00f0 TP\u00de Tp\u00fe AA\u00c5 oA\u00c5 oa\u00e5 /O\u00d8 /o\u00f8 /L\u0141"
    " /l\u0142 IJ\u0132 ij\u0133 .i\u0131 .j\u0237 Of\u00aa Om\u00ba ff\ufb00 fi\ufb01 fl\ufb02 Fi\ufb03 Fl\ufb04"
    # accents on their own
    ' a"\u02dd a-\u00af a.\u02d9 a^^ ab\u02d8 ac\u00b8 ad\u00a8 ah\u02c7 ao\u02da a~~ ho\u02db'
    # Greek
    " *A\u0391 *B\u0392 *G\u0393 *D\u0394 *E\u0395 *Z\u0396 *Y\u0397 *H\u0398 *I\u0399 *K\u039a *L\u039b *M\u039c *N\u039d *C\u039e"
    " *O\u039f *P\u03a0 *R\u03a1 *S\u03a3 *T\u03a4 *U\u03a5 *F\u03a6 *X\u03a7 *Q\u03a8 *W\u03a9"
    " *a\u03b1 *b\u03b2 *g\u03b3 *d\u03b4 *e\u03b5 *z\u03b6 *y\u03b7 *h\u03b8 *i\u03b9 *k\u03ba *l\u03bb *m\u03bc *n\u03bd *c\u03be"
    " *o\u03bf *p\u03c0 *r\u03c1 *s\u03c3 *t\u03c4 *u\u03c5 *f\u03d5 *x\u03c7 *q\u03c8 *w\u03c9 ts\u03c2 +h\u03d1 +f\u03c6 +p\u03d6 +e\u03f5"
)  # fmt: skip

_ACCENTS: Final = {
    "'": "\u0301", "`": "\u0300", "^": "\u0302", "~": "\u0303", ":": "\u0308", ",": "\u0327", "v": "\u030c", "o": "\u030a",
}  # fmt: skip

NAMED: Final = {pair[:-1]: pair[-1] for pair in _PAIRS.split(" ") if len(pair) > 2}
"""Name to character."""


def special_character(name: str) -> str | None:
    """The character of a name, None where it has none; ``u00E9`` and ``u0065_0301`` are code points."""
    if name in NAMED:
        return NAMED[name]
    if len(name) == 2 and name[0] in _ACCENTS and name[1].isalpha():
        composed = unicodedata.normalize("NFC", name[1] + _ACCENTS[name[0]])
        return composed if len(composed) == 1 else None
    if name.startswith("u") and len(name) >= 5:
        return _code_points(name[1:])
    if name.startswith("char") and name[4:].isdecimal() and int(name[4:]) < 0x110000:
        return chr(int(name[4:]))
    return None


def _code_points(text: str) -> str | None:
    chars = []
    for part in text.split("_"):
        if not 4 <= len(part) <= 6 or not all(digit in "0123456789ABCDEFabcdef" for digit in part):
            return None
        point = int(part, 16)
        if point > 0x10FFFF or 0xD800 <= point < 0xE000:
            return None
        chars.append(chr(point))
    return unicodedata.normalize("NFC", "".join(chars))
