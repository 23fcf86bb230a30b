"""Program text with blank lines in it: deeper pieces between others keep their indentation."""

from __future__ import annotations

from test_document_torn_lines import PROSE

from fit.document.text import read_text

LISTING = """\
    case "$1" in fog|snow)
            if [ -e /skerry/horn ]; then
                sound_horn 3
            fi

            # Trim the wick before the night
            if [ -e /skerry/wick ]; then
                trim_wick
            fi
    esac
"""


def kept(text: str) -> list[list[str]]:
    """The lines of each piece of program text."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    return [[line.chars for line in block.lines] for block in blocks if block.code]


def test_a_piece_between_others_stands_as_deep_as_it_did() -> None:
    first, deeper, last = LISTING.partition("\n\n")[0], LISTING.partition("\n\n")[2], "    esac\n"
    parted = f"{first}\n\n{deeper.removesuffix(last)}\n{last}"
    assert kept(parted) == [[line[4:] for line in parted.splitlines()]]


def test_commands_at_one_column_are_pieces_of_their_own() -> None:
    assert kept("    lamp -o /skerry/oil\n\n    lamp -w /skerry/wick\n") == [
        ["lamp -o /skerry/oil"],
        ["lamp -w /skerry/wick"],
    ]
