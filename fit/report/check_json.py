"""A report as JSON, described by ``check.schema.json`` beside this file.

The lists that grow with the session (turns, break points, lost lines) are written as they are made, so that a
session of many megabytes needs no copy of them.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from importlib import resources
from typing import Any, Final

from fit.loss.figures import Demands, Figures, LineLoss, LostWord, TurnFigures, Unknown
from fit.remedy.findings import BreakPoint, Pair, Remedy, Report, ScreenFacts
from fit.report.advice import MASTER_COPY
from fit.units import Size

FORM: Final = "fit-check"
VERSION: Final = 1
"""Grows when a field changes its meaning or goes; new fields leave it as it is."""
DIGITS: Final = 6
"""Ratios are rounded to so many digits."""


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) that every report follows."""
    text = (resources.files("fit.report") / "check.schema.json").read_text("utf-8")
    loaded: dict[str, Any] = json.loads(text)
    return loaded


def report_json(report: Report) -> Iterator[str]:
    """The report in pieces of JSON text, 7-bit, one field of the top a line; ended by a new line."""
    yield "{\n"
    for key, value in _head(report).items():
        yield f"{json.dumps(key)}: {json.dumps(value)},\n"
    yield from _array("turns", (_turn(report, turn) for turn in report.figures.turns), ",")
    yield from _array("break_points", map(_break_point, report.break_points), ",")
    yield from _array("lost_lines", map(_line, report.lines), "")
    yield "}\n"


def figures_json(figures: Figures) -> dict[str, Any]:
    """The figures of one screen, or of one remedy on it."""
    return {
        "score": _ratio(figures.score),
        "needed_shown": _ratio(figures.needed_shown),
        "clean": _ratio(figures.clean),
        "text_kept": _ratio(figures.text_kept),
        "turns_read": _ratio(figures.turns_read),
        "lines": figures.lines._asdict(),
        "shown": figures.shown,
        "intact": figures.intact,
        "split_words": figures.split_words,
        "holds": figures.holds,
        "holds_per_turn": _ratio(figures.holds_per_turn),
        "causes": {cause.value: number for cause, number in figures.causes.items()},
        "fates": dict(figures.fates),
    }


def _head(report: Report) -> dict[str, Any]:
    """Everything that does not grow with the session."""
    head: dict[str, Any] = {
        "form": FORM,
        "version": VERSION,
        "verdict": report.verdict.rating.value,
        "reason": report.verdict.reason,
    }
    figures = figures_json(report.figures)
    figures["placed_share"] = _ratio(report.placed_share)
    return (
        head
        | figures
        | {
            "printed": report.printed,
            "lost_anyway": report.lost_anyway,
            "session": _session(report),
            "screens": _screens(report),
            "encoding": {"name": report.encoding, "evidence": report.encoding_evidence},
            "looks": {"count": report.looks, "rule": report.looks_rule, "assumed": report.looks_assumed},
            "demands": demands_json(report.demands),
            "remedies": [_remedy(remedy) for remedy in report.remedies],
            "best": report.best.value if report.best is not None else None,
            "best_reason": report.best_reason,
            "planned": figures_json(report.planned),
            "pair": _pair(report.pair),
            "other_terminal": report.other_terminal,
            "unknown": [_unknown(kind) for kind in report.unknown],
            "unknown_small": [_unknown(kind) for kind in report.unknown_small],
            "remarks": list(report.remarks),
            "advice": MASTER_COPY,
        }
    )


def demands_json(asked: Demands) -> dict[str, Any]:
    """What the program asks of its terminal."""
    return {
        "highest_row": asked.highest_row,
        "highest_column": asked.highest_column,
        "moves": asked.moves,
        "moves_outside": asked.moves_outside,
        "share_outside": _ratio(asked.share_outside),
        "rows_outside": list(asked.rows_outside),
        "columns_outside": list(asked.columns_outside),
        "scroll_regions": [list(region) for region in asked.scroll_regions],
        "reverse_video": asked.reverse_video,
        "line_drawing": asked.line_drawing,
        "alternate_screen": asked.alternate_screen,
        "status_rows": list(asked.status_rows),
        "padded_rows": asked.padded_rows,
    }


def _session(report: Report) -> dict[str, Any]:
    session = report.session
    return {
        "name": session.name,
        "command": session.command,
        "bytes": len(session.output),
        "waits": session.waits.value,
        "ending": session.ending,
        "exit_status": session.exit_status,
        "remarks": list(session.remarks),
    }


def _screens(report: Report) -> dict[str, Any]:
    big, small = report.big.size, report.small.size
    return {
        "big": _screen(report.big),
        "small": _screen(report.small),
        "small_share": {
            "columns": _ratio(small.columns / big.columns),
            "rows": _ratio(small.rows / big.rows),
            "cells": _ratio(small.cells / big.cells),
        },
    }


def _screen(screen: ScreenFacts) -> dict[str, Any]:
    return {"name": screen.name, **_size(screen.size), "terminal": screen.terminal, "chosen": screen.chosen}


def _size(size: Size) -> dict[str, int]:
    return {"columns": size.columns, "rows": size.rows}


def _remedy(remedy: Remedy) -> dict[str, Any]:
    return {
        "name": remedy.name,
        "about": remedy.about,
        "refused": remedy.refused,
        "may_be_best": remedy.may_be_best,
        **figures_json(remedy.figures),
    }


def _pair(pair: Pair | None) -> dict[str, Any] | None:
    if pair is None:
        return None
    return {
        "name": pair.session.name,
        "told": _size(pair.size),
        "judged_on": _size(pair.judged_on),
        "behaviour": list(pair.behaviour),
        "sentence": pair.sentence,
        "figures": figures_json(pair.figures),
        "demands": demands_json(pair.demands),
    }


def _unknown(kind: Unknown) -> dict[str, Any]:
    return {"bytes": kind.data.hex(), "times": kind.times, "first": kind.first}


def _turn(report: Report, turn: TurnFigures) -> dict[str, Any]:
    return {
        "look": turn.look,
        "start": turn.start,
        "end": turn.end,
        "shown": turn.shown,
        "intact": turn.intact,
        "needed": turn.needed,
        "needed_intact": turn.needed_intact,
        "needed_shown": _ratio(turn.needed_shown),
        "clean": _ratio(turn.clean),
        "split_words": turn.split_words,
        "lost_words": [_word(word) for word in report.words_lost_in(turn.look)],
    }


def _word(word: LostWord) -> dict[str, Any]:
    return {"text": word.text, "at": word.at, "cause": word.cause.value, "by": word.by}


def _line(line: LineLoss) -> dict[str, Any]:
    return {
        "text": line.text,
        "at": line.at,
        "look": line.look,
        "row": line.row,
        "state": line.state.value,
        "cause": line.cause.value,
        "by": line.by,
    }


def _break_point(point: BreakPoint) -> dict[str, Any]:
    return {
        "at": point.at,
        "look": point.look,
        "end": point.end.value,
        "words": point.words,
        "rows": list(point.rows),
    }


def _array(key: str, entries: Iterable[dict[str, Any]], after: str) -> Iterator[str]:
    yield f"{json.dumps(key)}: ["
    between = "\n"
    for entry in entries:
        yield between + json.dumps(entry)
        between = ",\n"
    yield f"]{after}\n"


def _ratio(value: float | None) -> float | None:
    return None if value is None else round(value, DIGITS)
