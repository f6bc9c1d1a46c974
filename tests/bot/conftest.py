"""Stores for tests that hold on every engine."""

from collections.abc import Iterator
from contextlib import nullcontext

import pytest

from tests.bot import postgres, stores


@pytest.fixture(scope="session")
def postgresql() -> Iterator[postgres.Server]:
    """A PostgreSQL that runs while the tests do."""
    try:
        with postgres.serving() as server:
            stores.prepare(server)
            yield server
    except postgres.Unavailable as why:
        pytest.skip(str(why))


@pytest.fixture(params=["sqlite", "postgresql"])
def each_store(request: pytest.FixtureRequest) -> Iterator[str]:
    """The test runs once on each engine; gives the engine's name."""
    server = request.getfixturevalue("postgresql") if request.param == "postgresql" else None
    with nullcontext() if server is None else stores.on(server):
        yield request.param
