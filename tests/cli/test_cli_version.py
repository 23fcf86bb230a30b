"""``fit --version``: the version of the project's own file."""

from __future__ import annotations

import tomllib
from importlib.metadata import PackageNotFoundError
from pathlib import Path

import pytest
from typer.testing import CliRunner

from fit.cli import build_app, version as module

PROJECT = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text("utf-8"))["project"]


def test_the_version_is_that_of_the_project(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "version", lambda name: PROJECT["version"] if name == PROJECT["name"] else "")
    done = CliRunner().invoke(build_app(None), ["--version"])
    assert (done.exit_code, done.output) == (0, f"fit, of screenfit {PROJECT['version']}\n")


def test_a_program_that_is_not_installed_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(name: str) -> str:
        raise PackageNotFoundError(name)

    monkeypatch.setattr(module, "version", missing)
    assert module.told() == "fit, of screenfit, run without being installed"


def test_without_a_command_help_is_shown() -> None:
    done = CliRunner().invoke(build_app(None), [])
    assert "--version" in done.output
    assert "reflow" in done.output
