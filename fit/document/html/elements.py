"""The elements of HTML by name: what stands between angle brackets is a tag by its name, or else words of the text.

Source: the HTML Living Standard, sections 4 (the elements) and 16.2 (obsolete ones), with the names of the
two vocabularies that it embeds. Read in 2025.
"""

from __future__ import annotations

from typing import Final

_CURRENT: Final = """
a abbr address area article aside audio b base bdi bdo blockquote body br button canvas caption cite code col
colgroup data datalist dd del details dfn dialog div dl dt em embed fieldset figcaption figure footer form h1 h2 h3
h4 h5 h6 head header hgroup hr html i iframe img input ins kbd label legend li link main map mark menu meta meter
nav noscript object ol optgroup option output p picture pre progress q rp rt ruby s samp script search section
select slot small source span strong style sub summary sup table tbody td template textarea tfoot th thead time
title tr track u ul var video wbr
"""
_OBSOLETE: Final = """
acronym applet basefont bgsound big blink center dir font frame frameset image isindex keygen listing marquee
menuitem multicol nextid nobr noembed noframes param plaintext rb rtc spacer strike tt xmp
"""
_EMBEDDED: Final = "math svg"
ELEMENTS: Final = frozenset(f"{_CURRENT} {_OBSOLETE} {_EMBEDDED}".split())
"""All of them, in small letters."""
