"""Kept lines in markup that a plain text would show as a table, a drawing, a list of keys or a song."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from plain_blocks import assert_places_hold, rows_of

from fit.document.blocks import Block, Document, Kind
from fit.document.html import read_html
from fit.document.man import read_man
from fit.document.markdown import read_markdown

STORES = """\
Item            Place             Stock    Use per month   Next boat
--------------  ----------------  -------  --------------  ----------
Lamp oil        lower tank          1,200             180  June
Wicks           lamp room drawer       44               6  August
Flour           kitchen, big bin      310              45  June
"""
KEYS = """\
^A      go to the beginning of the line, or of the page where the line is the first
^E      go to the end
^K      strike the line out
ESC     leave the log without writing
"""
ROCK = r"""
            /\                          ___
           /  \          ~~~~~~~       /   \      ~~~
    ______/ || \________          ____/ []  \____
   /      | || |        \   ~~~~ /    |__|       \
  /_______|_||_|_________\      /_________________\
~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~
"""
SONG = """\
When the wind is in the west and the tide is running high,
  There is oil upon the water, there is gold upon the sky,
And the keeper climbs the stair
  With the salt upon his hair.
"""
LETTER = """\
Dear keeper,

  when you read this the tender will have left the harbour, and with her the
oil and the flour which you asked for in your letter of the third of May.

  1. Count the barrels before the boat has left, and write the number
     into the log.
  2. Sign the paper.
"""
RULES = """\
* The lamp is lit at dusk and burns until it is day, with two wicks in the
  winter and with one in the summer.
* The bell is rung in fog.
* The oil is measured at noon, and the log says how much is left of it.
"""
PROGRAM = """\
lamp_t *lamp = lamp_new(LAMP_OIL);      /* the lamp of the tower */
lamp_light(lamp);                       /* at dusk */
lamp_free(lamp);                        /* when it is day */
"""
FORMS = """\
(light 'lamp)                       => #t
(and (light? lamp) (out? lamp))     => #f
(if (light? lamp) 'night 'day)      => night
"""
LISTING = """\
drwxr-xr-x  2 keeper  light     4096 May  3 09:14 log
-rw-r--r--  1 keeper  light    12044 May  3 09:15 tides.txt
-rw-r--r--  1 keeper  light      210 May  4 04:02 lamp.cfg
"""


OPTIONS = """\
--turns NUMBER                  Turns a minute of the lamp in thick
                                weather (default is 3), or "still"
--dimmed                        Light the lamp dimmed at dusk (default)
                                (Alias: --no-bright)
--bright                        Do not light the lamp dimmed
                                (Alias: --no-dimmed)
--signals-from-the-harbour [NAME:]PATTERN
                                Which signals are answered, such as
                                "NW:*" for those of the boats
-q, --quiet                     --bell "%(none)s"
"""


def html(lines: str) -> Document:
    kept = lines.replace("&", "&amp;").replace("<", "&lt;")
    return read_html(f"<p>As follows:\n<pre>\n{kept}</pre>\n<p>The boat brings it.", "log", "utf-8")


def markdown(lines: str) -> Document:
    return read_markdown(f"As follows:\n\n```\n{lines}```\n\nThe boat brings it.\n", "log", "utf-8")


def man(lines: str) -> Document:
    kept = lines.replace("\\", "\\e").replace("\n.", "\n\\&.")
    source = f".TH LAMP 7\n.SH STORES\nAs follows:\n.PP\n.nf\n{kept}.fi\n.PP\nThe boat brings it.\n"
    return read_man(source, "log", "utf-8")


Reader = Callable[[str], Document]
IN_ALL = pytest.mark.parametrize("read", [html, markdown, man])


def between(document: Document) -> list[Block]:
    """The blocks between the first paragraph and the last one."""
    assert_places_hold(document)
    first = next(n for n, block in enumerate(document.blocks) if block.text.chars == "As follows:")
    return list(document.blocks[first + 1 : -1])


@IN_ALL
def test_a_table_with_a_rule_below_its_head(read: Reader) -> None:
    assert rows_of(between(read(STORES))) == [
        "Item = Place = Stock = Use per month = Next boat",
        "Lamp oil | lower tank | 1,200 | 180 | June",
        "Wicks | lamp room drawer | 44 | 6 | August",
        "Flour | kitchen, big bin | 310 | 45 | June",
    ]


@IN_ALL
def test_keys_with_their_texts_beside_them(read: Reader) -> None:
    blocks = between(read(KEYS))
    assert [block.kind for block in blocks if block.kind is not Kind.ITEM] in ([], [Kind.TABLE])
    words = " ".join(rows_of(blocks) or [f"{block.label.chars} | {block.text.chars}" for block in blocks])
    assert (
        words.split(" ^E | ")[1]
        == "go to the end ^K | strike the line out ESC | leave the log without writing"
    )


@IN_ALL
def test_a_drawing_whose_strokes_are_slanting(read: Reader) -> None:
    (block,) = between(read(ROCK))
    assert block.kind is Kind.PICTURE
    assert [line.chars for line in block.lines] == ROCK.splitlines()[1:]


@IN_ALL
@pytest.mark.parametrize("lines", [SONG, LETTER], ids=["song", "letter"])
def test_words_that_stay_lines_are_no_program(read: Reader, lines: str) -> None:
    blocks = between(read(lines))
    assert {(block.kind, block.code) for block in blocks} == {(Kind.PREFORMATTED, False)}
    assert [line.chars for block in blocks for line in block.lines if line.chars] == [
        line for line in lines.splitlines() if line
    ]


@IN_ALL
def test_items_in_words_are_a_list(read: Reader) -> None:
    assert [(block.kind, block.label.chars, block.text.chars) for block in between(read(RULES))] == [
        (Kind.ITEM, "*", text.replace("\n", "").replace("  ", " ").strip()) for text in RULES.split("*")[1:]
    ]


@pytest.mark.parametrize("read", [html, markdown])
@pytest.mark.parametrize("lines", [PROGRAM, FORMS, LISTING], ids=["statements", "forms", "names of files"])
def test_program_text_stays_whatever_columns_it_has(read: Reader, lines: str) -> None:
    (block,) = between(read(lines))
    assert (block.kind, block.code) == (Kind.PREFORMATTED, True)
    assert [line.chars for line in block.lines] == lines.splitlines()


def test_what_the_markup_says_is_program_text() -> None:
    fence = read_markdown(f"As follows:\n\n```sh\n{STORES}```\n\nThe boat brings it.\n", "log", "utf-8")
    (block,) = between(fence)
    assert block.code
    page = read_html(f"<p>As follows:<pre><code>{STORES}</code></pre><p>So.", "log", "utf-8")
    (block,) = between(page)
    assert block.code


@IN_ALL
def test_options_are_a_list_whatever_their_texts_look_like(read: Reader) -> None:
    kept = between(read(OPTIONS))
    assert not any(block.kind is Kind.PREFORMATTED for block in kept)
    said = [block.label.chars for block in kept] + rows_of(kept)
    for option in ("--turns NUMBER", "--dimmed", "--bright", "-q, --quiet"):
        assert any(each.startswith(option) for each in said)
