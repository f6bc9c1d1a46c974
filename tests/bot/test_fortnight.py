"""The fortnight at the terminal goes as it is written down, and of who was forgotten the store's file holds nothing."""

from pathlib import Path

import pytest

from tests.bot.desk_scripts import spaced
from tests.bot.fortnight import FILE, played
from tests.bot.scripts import parse


async def test_the_fortnight_goes_as_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    remarks, entries = parse(FILE.read_text(encoding="utf-8"))
    out = await played(entries, tmp_path)
    files = _contents(tmp_path)
    assert {"rungbook-sets.csv", "rungbook-everything.json", "gym.db"} <= set(files)
    assert not any(b"Nele" in content for name, content in files.items() if name.startswith("gym.db"))
    assert spaced(remarks, out) == spaced(remarks, entries)


def _contents(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in folder.iterdir()}
