"""Runs every trial on a gym of its own, prints the table, and ends with 1 when a row is not well."""

import argparse
import asyncio
import shutil
import socket
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN
from tests.faults import trials
from tests.faults.gym import Gym
from tests.faults.ledger import Account, account

HEAD = ("fault", "store", "messages", "lost", "kept twice", "unanswered", "told twice", "may be", "restarts", "seconds")
SECRET = "faults-secret_0123456789"


@dataclass(frozen=True)
class Result:
    """One line of the table."""

    name: str
    store: str
    found: Account | None
    allowed: int
    restarts: int
    seconds: float
    trouble: str = ""

    @property
    def well(self) -> bool:
        """It came through, and told nothing twice beyond what must be allowed."""
        found = self.found
        return not self.trouble and found is not None and found.well and found.told_twice <= self.allowed

    def cells(self) -> tuple[object, ...]:
        """As it is printed."""
        found = self.found
        counts = (
            ("-",) * 5
            if found is None
            else (found.messages, found.lost, found.kept_twice, found.unanswered, found.told_twice)
        )
        return (self.name, self.store, *counts, self.allowed, self.restarts, f"{self.seconds:.0f}")


async def tried(row: trials.Row, store: str, url: str, folder: Path, given: argparse.Namespace) -> Result:
    """One trial on a gym of its own."""
    begun = time.monotonic()
    found, allowed, trouble = None, 0, ""
    api = await BotApi(TOKEN).start()
    gym = Gym(folder, url, api, given.seed)
    gym.more["FAULTS_KILLS"] = str(given.kills)
    if row.trial is trials.kills:
        gym.lifters, gym.each = 20, 20
    if row.trial is trials.clock_jumps:
        gym.module, gym.more["FAULTS_CLOCK"] = "tests.faults.shifted", str(folder / "clock")
        (folder / "clock").write_text("0")
    if row.trial is trials.brought_while_locked:
        gym.more |= {"RUNGBOOK_INTAKE": "webhook", "RUNGBOOK_PUBLIC_URL": "http://127.0.0.1/hook"}
        gym.more |= {"RUNGBOOK_LISTEN": f"127.0.0.1:{_free_port()}", "RUNGBOOK_SECRET": SECRET}
    if store == "postgres":
        gym.words = tuple(("serve", "--role", role) for role in ("intake", "worker", "worker", "sender", "clock"))
    try:
        await gym.fill()
        try:
            allowed = await row.trial(gym)
        finally:
            await gym.close()
        found = await account(gym)
    except Exception as failure:  # noqa: BLE001  # a trial that fails is a row of the table, and the others go on
        trouble = f"{type(failure).__name__}: {failure}"
    finally:
        await api.stop()
    return Result(row.name, store, found, allowed, gym.restarts, time.monotonic() - begun, trouble)


@contextmanager
def _servers(wanted: str) -> Iterator[dict[str, Any]]:
    """The stores to try: a file, and a real PostgreSQL where one can run."""
    with ExitStack() as stack:
        found: dict[str, Any] = {}
        if wanted in {"sqlite", "both"}:
            found["sqlite"] = None
        if wanted in {"postgres", "both"}:
            from tests.bot import postgres

            try:
                found["postgres"] = stack.enter_context(postgres.serving())
            except postgres.Unavailable as why:
                print(f"LEFT OUT: PostgreSQL ({why})", file=sys.stderr)
        yield found


@contextmanager
def _folder() -> Iterator[Path]:
    folder = Path(tempfile.mkdtemp(prefix="rungbook-faults-"))
    try:
        yield folder
    finally:
        folder.chmod(0o755)
        shutil.rmtree(folder, ignore_errors=True)


def _show(results: list[Result]) -> None:
    rows = [HEAD, *(tuple(str(cell) for cell in one.cells()) for one in results)]
    widths = [max(len(row[at]) for row in rows) for at in range(len(HEAD))]
    for row in rows:
        print("  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip())
    for one in results:
        if not one.well:
            print(f"NOT WELL: {one.name} ({one.store}): {one.trouble or one.found}")


def _free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port: int = taken.getsockname()[1]
        return port


async def _all(given: argparse.Namespace) -> list[Result]:
    results = []
    with _servers(given.store) as servers:
        for store, server in servers.items():
            for number, row in enumerate(trials.ROWS):
                if store not in row.stores or (given.only and given.only not in row.name):
                    continue
                with _folder() as folder:
                    url = f"sqlite+aiosqlite:///{folder / 'gym.db'}"
                    if server is not None:
                        url = server.create(f"faults{number}")
                    results.append(await tried(row, store, url, folder, given))
                    print(f"{'ok ' if results[-1].well else 'BAD'} {row.name} ({store})", file=sys.stderr)
    return results


def main() -> None:
    """Run as ``python -m tests.faults``."""
    options = argparse.ArgumentParser(description=main.__doc__)
    options.add_argument("--kills", type=int, default=20, help="how often the service is killed")
    options.add_argument("--seed", type=int, default=8)
    options.add_argument("--store", choices=("sqlite", "postgres", "both"), default="both")
    options.add_argument("--only", default="", help="trials with this in their name")
    results = asyncio.run(_all(options.parse_args()))
    _show(results)
    sys.exit(0 if results and all(one.well for one in results) else 1)


if __name__ == "__main__":
    main()
