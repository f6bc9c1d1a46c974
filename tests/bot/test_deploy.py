"""What deploy/ holds: files that fit each other, settings that exist, a drill that passes, an honest audit."""

import asyncio
import json
import os
import re
import shutil
import stat
import subprocess
import sys
from functools import partial
from pathlib import Path

import pytest

from bot.config import PREFIX, Settings
from bot.store import inbox
from bot.store.engine import Store
from tests.bot.shell import MONDAY, RawUpdate

TOP = Path(__file__).parents[2]
DEPLOY = TOP / "deploy"


def block(text: str, name: str, indent: int) -> dict[str, str]:
    """The parts under a key of a YAML file written in the plain way: two spaces a level."""
    lines = text.split("\n")
    start = lines.index(f"{' ' * indent}{name}:") + 1
    parts: dict[str, str] = {}
    key = ""
    for line in lines[start:]:
        if line.strip() and not line.startswith(" " * (indent + 2)):
            break
        found = re.match(rf" {{{indent + 2}}}([\w<-]+):(.*)", line)
        if found:
            key = found.group(1)
            parts[key] = found.group(2) + "\n"
        elif key:
            parts[key] += line + "\n"
    return parts


def test_compose_runs_every_role_on_a_database_and_publishes_no_port() -> None:
    text = (DEPLOY / "compose.yaml").read_text()
    services = block(text, "services", 0)
    assert set(services) == {"intake", "worker", "sender", "clock", "db"}
    for role in set(services) - {"db"}:
        assert f'["serve", "--role", "{role}"]' in services[role]
        assert "<<: *rungbook" in services[role]
    assert "ports:" not in text
    assert "\t" not in text
    assert all((len(line) - len(line.lstrip())) % 2 == 0 for line in text.split("\n"))
    shared = text.partition("x-rungbook:")[2].partition("\nservices:")[0]
    for hardening in ("read_only: true", "no-new-privileges:true", "- ALL", "condition: service_healthy"):
        assert hardening in shared
    assert "dockerfile: deploy/Containerfile" in shared
    assert "pg_isready" in services["db"]


def test_the_container_runs_without_rights_from_pinned_packages() -> None:
    text = (DEPLOY / "Containerfile").read_text()
    last = text.rpartition("\nFROM ")[2]
    assert re.search(r"^USER [1-9]\d*:[1-9]\d*$", last, re.MULTILINE)
    assert "--require-hashes -r deploy/base.lock" in text
    ignored = (TOP / ".dockerignore").read_text()
    for source in re.findall(r"^COPY (?!--from)(.+) \S+$", text, re.MULTILINE):
        for name in source.split():
            assert (TOP / name).exists()
            assert f"!{name}" in ignored


def test_every_setting_of_the_example_exists_and_every_setting_that_matters_is_in_it() -> None:
    named = set(re.findall(rf"^#?({PREFIX}\w+)=", (DEPLOY / ".env.example").read_text(), re.MULTILINE))
    known = {f"{PREFIX}{name.upper()}" for name in Settings.model_fields}
    assert named <= known
    assert known - named <= {f"{PREFIX}API_URL"}


def test_the_unit_gives_up_all_rights_and_passes_systemds_own_look(tmp_path: Path) -> None:
    text = (DEPLOY / "rungbook@.service").read_text()
    wanted = ("NoNewPrivileges=yes", "ProtectSystem=strict", "CapabilityBoundingSet=\n", "UMask=0077", "Restart=always")
    assert [line for line in wanted if line not in text] == []
    analyze = shutil.which("systemd-analyze")
    if analyze is None:
        return
    shutil.copy(DEPLOY / "rungbook@.service", tmp_path / "rungbook@all.service")
    done = subprocess.run([analyze, "verify", tmp_path / "rungbook@all.service"], capture_output=True, text=True)
    about_ours = [line for line in done.stderr.split("\n") if line.startswith(("rungbook", str(tmp_path)))]
    assert [line for line in about_ours if "is not executable" not in line] == []


FOUND = {"dependencies": [{"name": "x", "version": "1", "vulns": [{"id": "V-1", "fix_versions": ["2"]}]}]}
CLEAN = {"dependencies": [{"name": "x", "version": "1", "vulns": []}, {"name": "y", "skip_reason": "not found"}]}
SKIPPED = {"dependencies": [{"name": "x", "skip_reason": "not found"}]}


@pytest.mark.parametrize(
    ("answer", "status", "words"),
    [
        (json.dumps(FOUND), 1, ["x 1: V-1, mended in 2"]),
        (json.dumps(CLEAN), 0, ["Nothing is known against 1 packages", "LEFT OUT: 1 packages"]),
        (json.dumps(SKIPPED), 0, ["could not be asked", "LEFT OUT"]),
        ("", 0, ["could not be asked", "LEFT OUT"]),
        ('{"depend', 0, ["could not be asked", "LEFT OUT"]),
    ],
)
def test_the_audit_fails_for_what_is_known_and_says_what_it_could_not_ask(
    tmp_path: Path, answer: str, status: int, words: list[str]
) -> None:
    programs = tmp_path / ".venv" / "bin"
    programs.mkdir(parents=True)
    (programs / "python").symlink_to(sys.executable)
    (tmp_path / "answer").write_text(answer)
    fake = programs / "pip-audit"
    fake.write_text('#!/bin/sh\nwhile [ $# -gt 0 ]; do [ "$1" = --output ] && cp answer "$2"; shift; done\nexit 1\n')
    fake.chmod(0o755)
    call = f"set -euo pipefail; . {DEPLOY / 'audit.sh'}; audit some.lock"
    done = subprocess.run(["bash", "-c", call], cwd=tmp_path, capture_output=True, text=True)
    assert done.returncode == status
    assert [part for part in words if part not in done.stdout + done.stderr] == []
    assert "Traceback" not in done.stderr


def test_the_scripts_can_be_run() -> None:
    for name in ("check", "drill", "lock", "try"):
        assert (DEPLOY / name).stat().st_mode & stat.S_IXUSR


@pytest.mark.slow
async def test_the_drill_passes_while_the_service_writes(tmp_path: Path) -> None:
    """Put back and compared from a store that grows meanwhile."""
    url = f"sqlite+aiosqlite:///{tmp_path / 'gym.db'}"
    env = {name: value for name, value in os.environ.items() if not name.startswith(PREFIX)}
    env |= {"RUNGBOOK_PYTHON": sys.executable, "PYTHONPATH": str(TOP), "OPENBLAS_NUM_THREADS": "1"}
    words = ("-m", "bot", "demo", "--store", url, "--lifters", "2", "--weeks", "1")
    filling = await asyncio.create_subprocess_exec(sys.executable, *words, cwd=TOP, env=env)
    assert await filling.wait() == 0
    written = 0
    async with await Store.open(url) as store:
        drill = await asyncio.create_subprocess_exec(
            DEPLOY / "drill", "--store", url, env=env, stdout=asyncio.subprocess.PIPE
        )
        ended = asyncio.ensure_future(drill.communicate())
        while not ended.done():
            written += 1
            raw = RawUpdate("wire", written, 7, json.dumps({"text": "x" * 200}))
            await store.write(partial(inbox.keep, batch=(raw,), now=MONDAY))
            await asyncio.wait({ended}, timeout=0.01)
        out, _ = await ended
    assert drill.returncode == 0, out.decode()
    assert "DRILL PASSED" in out.decode()
    assert written > 20
