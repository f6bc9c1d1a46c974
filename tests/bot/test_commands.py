"""The commands as they are called: what they print, where, and how they end."""

import asyncio
import csv
import io
import json
import logging
import os
import re
import sqlite3
import stat
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
import structlog
from sqlalchemy.exc import OperationalError
from typer.testing import CliRunner, Result

from bot import admin, doctor
from bot.commands import app
from bot.ports import StoreError
from bot.store.engine import Store
from bot.store.tables import progress
from core.model.acts import SetAct
from core.model.outcome import Outcome, Replace
from core.model.quantities import Load, Range
from tests.bot.shell import RUTH, TOMAS, keeping, shell, squat, with_people

CODE = re.compile(r"[A-Za-z0-9_-]{16,64}\n")
TOKEN = "123456789:" + "AbCdEf-ghIjKl_mnOpQrStUvWxYz0123456"


@pytest.fixture
def url(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> str:
    for name in [name for name in os.environ if name.startswith("RUNGBOOK_")]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.chdir(tmp_path)
    return f"sqlite+aiosqlite:///{tmp_path / 'gym.db'}"


@pytest.fixture(autouse=True)
def logging_as_before() -> Iterator[None]:
    top = logging.getLogger()
    handlers, level = top.handlers[:], top.level
    yield
    top.handlers[:], top.level = handlers, level
    structlog.reset_defaults()


def call(*words: str, given: str = "") -> Result:
    return CliRunner().invoke(app, list(words), input=given)


def refused(*words: str) -> str:
    """The one line with which a command fails."""
    result = call(*words)
    assert result.exit_code == 1, result.output
    assert result.stdout == ""
    assert re.fullmatch(r"rungbook: [^\n]+\n", result.stderr), result.stderr
    return result.stderr


def filled(folder: Path) -> None:
    """Ruth with two days of training, a correction and an erasure; Tomas with one set."""
    (folder / "gym.db").write_bytes(_gym())


@cache
def _gym() -> bytes:
    async def fill(folder: Path) -> None:
        async with shell(folder) as room:
            await with_people(room)
            drop = squat(4, drop=True, tempo=(2.0, None, 1.0, 0.0), rir=0.5, form="loose")
            room.core.script |= {
                "sets": keeping(squat(8), drop, SetAct("pull-up", Load("band", label="green"), reps=5)),
                "late": keeping(squat(3, range=Range("partial", 4.0), day=-1), on=date(2026, 3, 1)),
                "9": lambda _i, book, _n: Outcome(replace=(Replace(book.kept[0].id, squat(9)),)),
                "scrap": lambda _i, book, _n: Outcome(replace=(Replace(book.kept[2].id, None),)),
            }
            for text in ("sets", "late", "9", "scrap"):
                await room.say(RUTH, text, message_id=500 + room.number)
            await room.say(TOMAS, "sets")
            room.clock.move(days=1)
            await room.say(RUTH, "look")

    with TemporaryDirectory() as place:
        asyncio.run(fill(Path(place)))
        return (Path(place) / "gym.db").read_bytes()


def exported(url: str, name: str = "Ruth") -> list[dict[str, Any]]:
    result = call("export", "--store", url, "--lifter", name)
    assert (result.exit_code, result.stderr) == (0, "")
    return [json.loads(line) for line in result.stdout.splitlines()]


# Export


def test_export_gives_every_set_oldest_first_with_what_became_of_it(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    rows = exported(url)
    assert [(row["on"], row.get("reps"), row["state"], row["message"]) for row in rows] == [
        ("2026-03-01", 3, "kept", 501),
        ("2026-03-02", 8, "amended", 500),
        ("2026-03-02", 9, "kept", 502),
        ("2026-03-02", 4, "kept", 500),
        ("2026-03-02", 5, "erased", 500),
    ]
    assert {row["at"] for row in rows} == {"2026-03-02T17:00:00Z"}
    assert rows[3] == {
        "act": "set",
        "exercise": "back-squat",
        "load": {"kind": "total", "kg": 60},
        "reps": 4,
        "rir": 0.5,
        "tempo": [2, None, 1, 0],
        "form": "loose",
        "drop": True,
        "on": "2026-03-02",
        "at": "2026-03-02T17:00:00Z",
        "message": 500,
        "state": "kept",
    }


@pytest.mark.parametrize("name", ["ruth", "RUTH", str(RUTH), "2"])
def test_a_lifter_may_be_named_or_numbered(url: str, tmp_path: Path, name: str) -> None:
    filled(tmp_path)
    assert len(exported(url, name)) == 5


def test_csv_holds_the_same_in_columns(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    result = call("export", "--store", url, "--lifter", "Ruth", "--format", "csv")
    rows = list(csv.DictReader(io.StringIO(result.stdout)))
    assert len(rows) == len(exported(url))
    assert (rows[0]["range_grade"], rows[0]["range_cm"], rows[0]["drop"]) == ("partial", "4", "")
    drop = rows[3]
    assert (drop["load_kind"], drop["load_kg"], drop["reps"], drop["drop"]) == ("total", "60", "4", "true")
    assert [drop[f"tempo_{phase}"] for phase in ("down", "bottom", "up", "top")] == ["2", "", "1", "0"]
    assert (rows[4]["load_kind"], rows[4]["load_label"], rows[4]["load_kg"]) == ("band", "green", "")


def test_export_names_who_is_there_when_nobody_is_called_so(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    assert "Ruth, Tomas" in refused("export", "--store", url, "--lifter", "Nobody")
    assert "no lifter" in refused("export", "--store", url, "--lifter", "Ines")


def test_export_of_a_store_that_is_not_there(url: str) -> None:
    assert "there is no store" in refused("export", "--store", url, "--lifter", "Ruth")


def test_export_works_beside_a_running_service(url: str, tmp_path: Path) -> None:
    filled(tmp_path)

    async def beside() -> Result:
        async with await Store.open(url):
            return await asyncio.to_thread(call, "export", "--store", url, "--lifter", "Ruth")

    assert asyncio.run(beside()).stdout.count("\n") == 5


# Coach, chat


def test_a_coach_code_is_printed_alone_and_works_in_the_terminal(url: str) -> None:
    made = call("coach", "--store", url, "--name", "Ines", "--zone", "Europe/Rome")
    assert (made.exit_code, made.stderr) == (0, "")
    assert CODE.fullmatch(made.stdout)
    told = call("chat", "--store", url, "--as", "somebody", given=f"/start {made.stdout}invite Ruth\n")
    assert told.exit_code == 0
    assert "You are in, Ines." in told.stdout
    link = told.stdout.split()[-1]
    joined = call("chat", "--store", url, "--as", "someone else", given=f"{link}\n")
    assert "You are in, Ruth. Ines sees" in joined.stdout
    assert "Ruth is in" in call("chat", "--store", url, "--as", "coach").stdout


def test_a_code_can_be_made_beside_a_running_service(url: str) -> None:
    async def beside() -> Result:
        async with await Store.open(url):
            return await asyncio.to_thread(call, "coach", "--store", url, "--name", "Ines")

    assert CODE.fullmatch(asyncio.run(beside()).stdout)


def test_a_newcomer_at_the_terminal_is_a_stranger(url: str, tmp_path: Path) -> None:
    told = call("chat", "--store", url, "--as", "Nobody", given="hello\nhello again\n")
    assert told.exit_code == 0
    assert told.stdout.count("\n") == 1
    assert "newcomer" in told.stderr
    assert b"hello again" not in (tmp_path / "gym.db").read_bytes()


def test_the_end_of_input_ends_the_chat_well(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    assert call("chat", "--store", url, "--as", "Ruth").exit_code == 0


@pytest.mark.parametrize(
    "words",
    [
        ("chat",),
        ("export",),
        ("nonsense",),
        ("export", "--lifter", "Ruth", "--format", "xml"),
        ("coach", "--name", "  "),
        ("coach", "--name", "Ines", "--zone", "Atlantis/Capital"),
    ],
)
def test_a_call_that_is_off_ends_with_2_and_says_so(url: str, words: tuple[str, ...]) -> None:
    result = call(*words)
    assert result.exit_code == 2
    assert result.stdout == ""
    assert "Traceback" not in result.stderr


# Settings


@pytest.mark.parametrize(
    ("name", "value", "remedy"),
    [
        ("RUNGBOOK_LOG", "loud", "RUNGBOOK_LOG takes debug, info, warning or error"),
        ("RUNGBOOK_INTAKE", "carrier pigeon", "RUNGBOOK_INTAKE takes polling"),
        ("RUNGBOOK_API_URL", "http://127.0.0.1:8081/", "RUNGBOOK_API_URL takes an address that ends in /bot"),
        ("RUNGBOOK_STORE", "postgres://gym", "not served"),
        ("RUNGBOOK_TOKEN", "", "RUNGBOOK_TOKEN is not set"),
        ("RUNGBOOK_TOKEN", "no token at all", "RUNGBOOK_TOKEN is no bot token"),
    ],
)
def test_a_wrong_setting_is_named_at_the_start_with_its_remedy(
    url: str, monkeypatch: pytest.MonkeyPatch, name: str, value: str, remedy: str
) -> None:
    monkeypatch.setenv("RUNGBOOK_TOKEN", TOKEN)
    monkeypatch.setenv(name, value)
    said = refused("serve")
    assert remedy in said
    assert TOKEN not in said


def test_settings_may_stand_in_a_file(url: str, tmp_path: Path) -> None:
    (tmp_path / ".env").write_text(f"RUNGBOOK_STORE={url}\nRUNGBOOK_LOG=error\n")
    assert CODE.fullmatch(call("coach", "--name", "Ines").stdout)
    assert (tmp_path / "gym.db").exists()


def test_without_a_word_the_store_lies_in_the_data_folder(url: str, tmp_path: Path) -> None:
    assert call("coach", "--name", "Ines").exit_code == 0
    assert (tmp_path / "data" / "rungbook" / "rungbook.db").exists()


# Backup, restore


def test_a_copy_made_while_the_service_writes_is_whole_and_goes_back(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    copy, again = tmp_path / "copy.db", f"sqlite+aiosqlite:///{tmp_path / 'again.db'}"

    async def beside() -> Result:
        async with await Store.open(url) as store:
            made = await asyncio.to_thread(call, "backup", "--store", url, str(copy))
            await store.write(lambda conn: conn.execute(progress.delete()))
            return made

    assert asyncio.run(beside()).exit_code == 0
    assert stat.S_IMODE(copy.stat().st_mode) == 0o600
    assert call("restore", str(copy), "--store", again).exit_code == 0
    assert exported(again) == exported(url)
    assert call("doctor", "--store", again, "--rebuild").exit_code == 0


def test_restore_refuses_what_would_lose_data(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    copy = tmp_path / "copy.db"
    call("backup", "--store", url, str(copy))
    assert "holds data" in refused("restore", str(copy), "--store", url)
    assert len(exported(url)) == 5


def test_restore_takes_an_empty_store_and_refuses_a_busy_one(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    copy, other = tmp_path / "copy.db", f"sqlite+aiosqlite:///{tmp_path / 'other.db'}"
    call("backup", "--store", url, str(copy))

    async def busy() -> str:
        async with await Store.open(other):
            return await asyncio.to_thread(refused, "restore", str(copy), "--store", other)

    assert "another rungbook process" in asyncio.run(busy())
    assert call("restore", str(copy), "--store", other).exit_code == 0
    assert len(exported(other)) == 5


def damaged(file: Path) -> None:
    raw = bytearray(file.read_bytes())
    raw[4096:12288] = bytes(8192)
    file.write_bytes(raw)


def of_the_future(file: Path) -> None:
    conn = sqlite3.connect(file)
    conn.execute("UPDATE alembic_version SET version_num = '9999'")
    conn.commit()
    conn.close()


@pytest.mark.parametrize(
    ("spoil", "said"),
    [
        (Path.unlink, "there is no file"),
        (lambda file: file.write_text("a letter"), "no whole copy"),
        (damaged, "no whole copy"),
        (of_the_future, "later version"),
    ],
)
def test_restore_refuses_a_copy_that_is_not_whole(
    url: str, tmp_path: Path, spoil: Callable[[Path], object], said: str
) -> None:
    filled(tmp_path)
    copy = tmp_path / "copy.db"
    call("backup", "--store", url, str(copy))
    spoil(copy)
    target = tmp_path / "again.db"
    assert said in refused("restore", str(copy), "--store", f"sqlite+aiosqlite:///{target}")
    assert not target.exists()


def test_backup_does_not_write_over_a_file_nor_invent_a_store(url: str, tmp_path: Path) -> None:
    assert "there is no store" in refused("backup", "--store", url, str(tmp_path / "copy.db"))
    filled(tmp_path)
    (tmp_path / "copy.db").write_text("mine")
    assert "is there already" in refused("backup", "--store", url, str(tmp_path / "copy.db"))
    assert (tmp_path / "copy.db").read_text() == "mine"


# Doctor


def test_the_doctor_finds_a_sound_service_well(url: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    filled(tmp_path)
    monkeypatch.setenv("RUNGBOOK_TOKEN", TOKEN)
    result = call("doctor", "--store", url, "--rebuild")
    assert (result.exit_code, result.stderr) == (0, "")
    assert all(line.startswith("ok  ") for line in result.stdout.splitlines())
    assert "1 estimates of 2 lifters built again from the acts, largest difference 0" in result.stdout
    assert TOKEN not in result.output


@pytest.mark.parametrize(
    ("name", "value", "about"),
    [
        ("RUNGBOOK_LOG", "loud", "settings: RUNGBOOK_LOG takes"),
        ("RUNGBOOK_TOKNE", "1", "settings: unknown: RUNGBOOK_TOKNE"),
        ("RUNGBOOK_TOKEN", "123456789:short", "token: RUNGBOOK_TOKEN takes"),
    ],
)
def test_the_doctor_names_what_to_mend(
    url: str, monkeypatch: pytest.MonkeyPatch, name: str, value: str, about: str
) -> None:
    monkeypatch.setenv(name, value)
    result = call("doctor", "--store", url)
    assert result.exit_code == 1
    assert f"mend  {about}" in result.stdout
    assert "to mend" in result.stderr
    assert "short" not in result.output


def test_the_doctor_sees_a_file_that_others_may_read(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    call("doctor", "--store", url)
    wal = tmp_path / "gym.db-journal"
    wal.touch(mode=0o644)
    result = call("doctor", "--store", url)
    assert result.exit_code == 1
    assert "mend  rights" in result.stdout


def test_the_doctor_finds_an_estimate_that_the_acts_do_not_give_and_drops_it(url: str, tmp_path: Path) -> None:
    filled(tmp_path)
    conn = sqlite3.connect(tmp_path / "gym.db")
    (body,) = conn.execute("SELECT body FROM progress").fetchone()
    changed = json.dumps(json.loads(body) | {"seen": "1999-01-01"})
    conn.execute("UPDATE progress SET body = ?", (changed,))
    conn.commit()
    conn.close()
    result = call("doctor", "--store", url, "--rebuild")
    assert result.exit_code == 1
    assert "mend  estimates: 1 estimates of 2 lifters" in result.stdout
    assert call("doctor", "--store", url, "--rebuild").exit_code == 0


@pytest.mark.parametrize(
    ("one", "other", "apart"),
    [
        ({"a": [1.0, {"b": 2}]}, {"a": [1.0, {"b": 2}]}, 0.0),
        ({"a": [1.0, 2.0]}, {"a": [1.0, 2.5]}, 0.5),
        ({"a": 1}, {"b": 1}, float("inf")),
        ([1.0], [1.0, 2.0], float("inf")),
        ("x", "y", float("inf")),
        (None, 0.0, float("inf")),
        (True, True, 0.0),
        (True, 1, float("inf")),
        ("AAAAAAAA8D8=", "AAAAAAAAAEA=", 1.0),  # base64 of the doubles 1 and 2
    ],
)
def test_the_distance_of_two_estimates(one: object, other: object, apart: float) -> None:
    assert doctor.distance(one, other) == apart


def test_a_zone_is_one_of_the_data_and_no_path() -> None:
    assert admin.is_zone("Europe/Rome")
    assert not admin.is_zone("../../etc/passwd")
    assert not admin.is_zone("")


def test_the_demo_clock_is_not_before_this_version() -> None:
    assert doctor._clock().well is (datetime.now(UTC) > datetime(2026, 11, 1, tzinfo=UTC))  # noqa: TID251


@pytest.mark.parametrize(
    ("bug", "said"),
    [
        (RuntimeError("my left knee"), "RuntimeError at "),
        (ExceptionGroup("several", [ExceptionGroup("inner", [KeyError("my left knee")])]), "KeyError at "),
        (OperationalError("SELECT my left knee", {}, Exception("full")), "the store failed (OperationalError)"),
        (ExceptionGroup("several", [StoreError("it is held: stop it")]), "it is held: stop it"),
    ],
)
def test_what_nobody_foresaw_is_one_line_without_words_of_a_message(
    url: str, monkeypatch: pytest.MonkeyPatch, bug: Exception, said: str
) -> None:
    async def fails(*_: object) -> None:
        raise bug

    monkeypatch.setattr(admin, "coach_code", fails)
    line = refused("coach", "--store", url, "--name", "Ines")
    assert said in line
    assert "knee" not in line
