"""Checks listed as failing today are strict expected failures, each with its reason; the list may only shrink."""

import tomllib
from pathlib import Path

import pytest

_LIST = Path(__file__).parent / "known_failures.toml"


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark what is listed."""
    known = tomllib.loads(_LIST.read_text(encoding="utf-8"))["known_failures"]
    for item in items:
        if (reason := known.get(item.nodeid)) is not None:
            item.add_marker(pytest.mark.xfail(reason=reason, strict=True))
