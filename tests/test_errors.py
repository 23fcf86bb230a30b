"""An error is one sentence: where, what, what to do."""

from __future__ import annotations

import inspect

import pytest

from fit import errors
from fit.errors import FitError, SourceError


@pytest.mark.parametrize(
    ("error", "sentence"),
    [
        (FitError("it is dark"), "it is dark"),
        (SourceError("is empty", source="log"), "log: is empty"),
        (SourceError("is no JSON", source="log", line=3, column=9), "log, line 3, column 9: is no JSON"),
        (
            SourceError("is cut", source="log", byte=7, hint="record again"),
            "log, byte 7: is cut; record again",
        ),
    ],
)
def test_the_sentence(error: FitError, sentence: str) -> None:
    assert str(error) == sentence


def test_the_tree_is_drawn_as_it_is() -> None:
    kinds = {name for name, kind in inspect.getmembers(errors, inspect.isclass) if issubclass(kind, FitError)}
    assert errors.__doc__ is not None
    drawn = {line.split()[1] for line in errors.__doc__.splitlines() if "──" in line} | {"FitError"}
    assert drawn == kinds
