"""Word wrap at the small width: a flowing word that does not fit moves to the next row whole."""

from __future__ import annotations

from dataclasses import replace

from fit.screen.rules import Rules, WrapRule


def wrap_words(rules: Rules) -> Rules | None:
    """The rules of a screen that wraps at words; None where the screen does not wrap at all."""
    if rules.wrap is WrapRule.NONE:
        return None
    return replace(rules, wrap=WrapRule.WORD)
