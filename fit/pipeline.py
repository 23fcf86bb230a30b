"""Strings the stages together; the only place where a screen is replayed."""

from __future__ import annotations

from fit.remedy.findings import LookView, Report

__all__ = ["LookView", "Report"]
