"""Two colons lead to literal text: after "Literal Blocks" of the reStructuredText Markup Specification."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

SONG = """\
The keepers sing of the lamp while they turn its weight up again.  For example::

    | The lamp is lit, the lamp is lit,
    |     and *nobody* has seen it.
    |
    | Who trims the wick?

It has more stanzas than the night has hours.
"""
PAGE = """\
* A page of the log begins with its title, and with what the day was like::

      The Log of the Light
      ====================

      It was a calm day.

  The hours follow below it.

* The last page has the stores.
"""
TOLD = """\
.. note::

   The lamp of the tower may be lit by day as well, where the fog is thick and the
   horn cannot be heard.

Scope::of the lamp is another matter:

   The lamp of the tower may be lit by day as well, where the fog is thick and the
   horn cannot be heard.
"""


def test_two_colons_lead_to_lines_that_are_kept_over_blank_lines() -> None:
    song = read_text(SONG, "log", "ascii").blocks
    assert [block.kind for block in song] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert [line.chars for line in song[1].lines] == [line[4:] for line in SONG.splitlines()[2:6]]
    page = read_text(PAGE, "log", "ascii").blocks
    kinds = [Kind.ITEM, Kind.PREFORMATTED, Kind.PARAGRAPH, Kind.ITEM]
    assert [block.kind for block in page] == kinds
    assert [line.chars for line in page[1].lines][-1] == "It was a calm day."


def test_a_directive_and_one_colon_lead_to_text() -> None:
    assert all(block.kind is Kind.PARAGRAPH for block in read_text(TOLD, "log", "ascii").blocks)
