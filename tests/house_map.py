"""The map in DEVELOPERS.md: one line a file, the first sentence of its docstring.

``python tests/house_map.py`` writes it anew.
"""

from __future__ import annotations

import ast
from pathlib import Path

ROOT = Path(__file__).parent.parent
DEVELOPERS = ROOT / "DEVELOPERS.md"
START, END = "<!-- map -->\n", "<!-- end of map -->\n"


def sentence(path: Path) -> str:
    """The first paragraph of a file's docstring, on one line."""
    text = ast.get_docstring(ast.parse(path.read_text("utf-8"))) or ""
    return " ".join(text.partition("\n\n")[0].split()).replace("``", "`").replace("|", "\\|")


def map_text() -> str:
    """The map as a Markdown table."""
    files = sorted((ROOT / "fit").rglob("*.py"))
    rows = [f"| `{path.relative_to(ROOT).as_posix()}` | {sentence(path)} |" for path in files]
    return "\n".join(["| file | what it does |", "|---|---|", *rows]) + "\n"


def parts() -> tuple[str, str, str]:
    """DEVELOPERS.md before the map, the map, and what follows."""
    text = DEVELOPERS.read_text("utf-8")
    before, _, rest = text.partition(START)
    inside, _, after = rest.partition(END)
    return before, inside, after


if __name__ == "__main__":
    head, _, tail = parts()
    DEVELOPERS.write_text(f"{head}{START}{map_text()}{END}{tail}", "utf-8")
