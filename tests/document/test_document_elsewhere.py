"""Manual pages that only name another file: read there where it lies beside the page or below, and nowhere else."""

from __future__ import annotations

from pathlib import Path

import pytest

from fit.document import read_document
from fit.document.blocks import Document
from fit.document.elsewhere import LONGEST, only_named
from fit.errors import DocumentError

LAMP = ".TH LAMP 7\n.SH NAME\nlamp \\- burns at night\n"


def write(folder: Path, **pages: str) -> None:
    """Pages by their paths, ``__`` for a slash and ``_`` for a dot."""
    for name, text in pages.items():
        path = folder / name.replace("__", "/").replace("_", ".")
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, "utf-8")


def words(document: Document) -> str:
    return document.blocks[-1].text.chars


@pytest.mark.parametrize("lamp", ["man7__lamp_7", "lamp_7"])
def test_a_page_is_read_where_it_stands(tmp_path: Path, lamp: str) -> None:
    write(tmp_path, light_7='.\\" the lamp\n.so man7/lamp.7\n', **{lamp: LAMP})
    document = read_document(tmp_path / "light.7")
    assert words(document) == "lamp - burns at night"
    assert document.source == LAMP
    assert Path(document.name).name == "lamp.7"
    assert document.remarks[:2] == (
        "format man: it has the title line and macros of a manual page",
        "the page light.7 says only that it stands in man7/lamp.7, which was read instead",
    )


def test_a_page_may_stand_two_steps_away(tmp_path: Path) -> None:
    write(tmp_path, light_1=".so man7/light.7\n", man7__light_7=".so man7/lamp.7\n", man7__lamp_7=LAMP)
    document = read_document(tmp_path / "light.1")
    assert words(document) == "lamp - burns at night"
    assert document.remarks[1:3] == (
        "the page light.1 says only that it stands in man7/light.7, which was read instead",
        "the page light.7 says only that it stands in man7/lamp.7, which was read instead",
    )


def test_a_page_may_stand_in_the_section_beside_its_own(tmp_path: Path) -> None:
    for folder in ("man1", "man7", "shelf"):
        write(tmp_path, **{f"{folder}__light_1": ".so man7/lamp.7\n"})
    write(tmp_path, man7__lamp_7=LAMP)
    assert words(read_document(tmp_path / "man1" / "light.1")) == "lamp - burns at night"
    assert "give that file" in refusal(tmp_path / "shelf" / "light.1")


@pytest.mark.parametrize(
    "named", ["man7/../lamp.7", "man7/link.7", "../man7/lamp.7", "man8/lamp.7", "shelf/lamp.7"]
)
def test_nothing_outside_of_the_sections_is_read(tmp_path: Path, named: str) -> None:
    write(tmp_path, lamp_7=LAMP, man1__light_1=f".so {named}\n", shelf__lamp_7=LAMP, man7__lamp_7=LAMP)
    (tmp_path / "man7" / "link.7").symlink_to(tmp_path / "lamp.7")
    (tmp_path / "man8").symlink_to(tmp_path / "shelf")
    assert "give that file" in refusal(tmp_path / "man1" / "light.1")


def refusal(path: Path) -> str:
    with pytest.raises(DocumentError) as caught:
        read_document(path)
    return str(caught.value).replace(f"{path.parent}/", "")


@pytest.mark.parametrize(
    "named",
    ["../lamp.7", "man1/../../lamp.7", "{top}/lamp.7", "link.7", "folder/lamp.7", "gone.7", "x" * 300],
)
def test_nothing_outside_of_its_directory_is_read(tmp_path: Path, named: str) -> None:
    rock = tmp_path / "rock"
    write(tmp_path, lamp_7=LAMP, rock__light_7=f".so {named.format(top=tmp_path)}\n")
    (rock / "link.7").symlink_to(tmp_path / "lamp.7")
    (rock / "folder").symlink_to(tmp_path)
    said = f"light.7: says only that the page stands in {named.format(top=tmp_path)[:80]}; give that file"
    assert refusal(rock / "light.7") == said


def test_a_page_that_is_not_found_is_named_by_the_last_that_names_it(tmp_path: Path) -> None:
    write(tmp_path, light_1=".so light.7\n", light_7=".so lamp.7\n")
    assert (
        refusal(tmp_path / "light.1") == "light.7: says only that the page stands in lamp.7; give that file"
    )


def test_pages_that_name_each_other_end(tmp_path: Path) -> None:
    write(tmp_path, light_7=".so lamp.7\n", lamp_7=".so light.7\n")
    assert (
        refusal(tmp_path / "light.7") == "lamp.7: says only that the page stands in light.7; give that file"
    )


def test_a_page_with_text_of_its_own_is_read_itself(tmp_path: Path) -> None:
    write(tmp_path, light_7=f"{LAMP}.so oil.7\n", oil_7=".TH OIL 7\n.SH OIL\nIt burns.\n")
    document = read_document(tmp_path / "light.7")
    assert words(document) == "lamp - burns at night"
    assert document.remarks[-1] == "1 x the file oil.7 that the page includes was not read"


def test_nobody_follows_who_does_not_want_to(tmp_path: Path) -> None:
    write(tmp_path, light_7=".so lamp.7\n", lamp_7=LAMP)
    assert words(read_document(tmp_path / "light.7", "text")) == ".so lamp.7"
    with pytest.raises(DocumentError):
        read_document(tmp_path / "light.7", follow=False)


@pytest.mark.parametrize(
    ("page", "named"),
    [
        (".so lamp.7", "lamp.7"),
        ('\n.\\" a\n\'\\" b\n.so\tman7/lamp.7 \r\n\n', "man7/lamp.7"),
        (".so lamp.7\nIt burns.", None),
        (".so lamp.7\n.so oil.7", None),
        ("See .so lamp.7", None),
        (".so la\0mp.7", None),
        (".so lamp.7" + "\n" * LONGEST, None),
    ],
)
def test_what_only_names_a_file(page: str, named: str | None) -> None:
    assert only_named(page.encode()) == named
