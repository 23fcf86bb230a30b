"""The house: one-way stages, one door for each outside library, no module that nobody reads."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "fit"

STAGES = [
    "errors",
    "units",
    "output",
    "width",
    "hyphenation",
    "lexicon",
    "containers",
    "session",
    "dialect",
    "source",
    "machine",
    "looks",
    "screen",
    "loss",
    "document",
    "layout",
    "remedy",
    "terminal_choice",
    "measuring",
    "pipeline",
    "report",
    "shelf",
    "cli",
]
"""From left to right: a stage imports itself and what stands before it."""

DOORS = {
    "wcwidth": {"fit/width.py"},
    "typer": {"fit/cli/"},
    "z80": {"fit/machine/cpu.py"},
    "pyphen": {"fit/hyphenation.py"},
    "spellchecker": {"fit/lexicon.py"},
    "markdown_it": {"fit/document/markdown/parser.py"},
    "selectolax": {"fit/document/html/tree.py"},
    "anyascii": {"fit/report/device_text.py"},
    "platformdirs": {"fit/shelf/cache.py"},
    "pyte": {"fit/screen/charsets.py", "fit/screen/pyte_adapter.py"},
}
"""Where each outside library comes in."""


ROOMS = [
    "line",
    "left_out",
    "paths",
    "hyphen_words",
    "page_names",
    "hyphens",
    "signs",
    "make",
    "lines",
    "columns",
    "titles",
    "pages",
    "lists",
    "tables",
    "boxes",
    "running",
    "habits",
    "claimed_blocks",
    "claims",
    "parts",
    "__init__",
]
"""The rooms of plain text, in the same order."""


@cache
def modules() -> dict[str, ast.Module]:
    return {
        str(path.relative_to(ROOT)): ast.parse(path.read_text("utf-8"))
        for path in sorted(PACKAGE.rglob("*.py"))
    }


def imports(tree: ast.Module) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are absolute"
            assert node.module is not None
            names |= {node.module} | {f"{node.module}.{alias.name}" for alias in node.names}
    return names


def stage_of(dotted: str) -> str | None:
    parts = dotted.split(".")
    return parts[1] if parts[0] == "fit" and len(parts) > 1 else None


def test_there_is_a_house() -> None:
    assert len(modules()) > 20


def test_every_file_belongs_to_a_stage() -> None:
    found = {Path(path).parts[1].removesuffix(".py") for path in modules()} - {"__init__"}
    assert found <= set(STAGES)


@pytest.mark.parametrize("path", modules())
def test_a_stage_imports_only_what_stands_before_it(path: str) -> None:
    own = Path(path).parts[1].removesuffix(".py")
    if own == "__init__":
        return
    read = {stage for name in imports(modules()[path]) if (stage := stage_of(name)) in STAGES}
    later = {stage for stage in read if STAGES.index(stage) > STAGES.index(own)}
    assert later == set()


@pytest.mark.parametrize("path", [path for path in modules() if path.startswith("fit/document/text/")])
def test_a_room_of_plain_text_imports_only_what_stands_before_it(path: str) -> None:
    own = Path(path).parts[3].removesuffix(".py")
    read = {
        room
        for name in imports(modules()[path])
        if name.startswith("fit.document.text.")
        for room in [name.split(".")[3]]
        if room in ROOMS
    }
    assert own in ROOMS
    assert {room for room in read if ROOMS.index(room) > ROOMS.index(own)} == set()


@pytest.mark.parametrize("library", DOORS)
def test_each_outside_library_has_one_door(library: str) -> None:
    users = {
        path
        for path, tree in modules().items()
        if any(name.split(".")[0] == library for name in imports(tree))
    }
    strangers = {path for path in users if not any(path.startswith(door) for door in DOORS[library])}
    assert strangers == set()


def test_no_import_hides_in_a_function() -> None:
    hidden = [
        f"{path}:{node.lineno}"
        for path, tree in modules().items()
        for function in ast.walk(tree)
        if isinstance(function, ast.FunctionDef | ast.AsyncFunctionDef)
        for node in ast.walk(function)
        if isinstance(node, ast.Import | ast.ImportFrom)
    ]
    assert hidden == []


def test_modules_do_not_import_each_other_in_circles() -> None:
    names = {path.removesuffix(".py").removesuffix("/__init__").replace("/", "."): path for path in modules()}
    graph = {
        name: {other for other in imports(modules()[path]) if other in names and other not in (name, "fit")}
        for name, path in names.items()
    }
    # Type-checking imports are for mypy alone and run nowhere.
    for name, path in names.items():
        for node in ast.walk(modules()[path]):
            if (
                isinstance(node, ast.If)
                and isinstance(node.test, ast.Name)
                and node.test.id == "TYPE_CHECKING"
            ):
                graph[name] -= imports(ast.Module(node.body, []))
    done: set[str] = set()

    def visit(name: str, way: tuple[str, ...]) -> None:
        assert name not in way, " -> ".join((*way, name))
        if name in done:
            return
        for other in graph[name]:
            # A package's own __init__ may gather its modules; they do not read it back.
            visit(other, (*way, name))
        done.add(name)

    for name in graph:
        visit(name, ())


def test_the_top_level_holds_what_it_should() -> None:
    allowed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "fit", "tests", "corpus", "reports", "LICENSE"}
    extra = {entry.name for entry in ROOT.iterdir() if not entry.name.startswith(".")} - allowed
    assert {
        name for name in extra if not name.endswith(".egg-info") and name not in ("build", "dist")
    } == set()
