"""The rules of the house that no linter knows: where things live, how big they may get, what must not be written."""

import re
import subprocess
from pathlib import Path

import pytest

TOP = Path(__file__).parent.parent
CARD = {"README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml", "bot", "core", "tests", "deploy"}
CARD |= {"fixtures"}
BANNED_NAMES = {"utils", "util", "helpers", "helper", "common", "manager", "base", "misc"}
LONGEST_MODULE = 350
"""Lines; past it a module has more than one idea in it. Tables (rows without logic) may be longer."""
TABLES = re.compile(r"core/(evidence|say|model)/|core/read/words/|bot/store/migrations/")


def tracked() -> list[Path]:
    names = subprocess.run(["git", "ls-files"], cwd=TOP, capture_output=True, text=True, check=True).stdout.split("\n")
    return [Path(name) for name in names if name and (TOP / name).exists()]


def product() -> list[Path]:
    return [path for path in tracked() if path.suffix == ".py" and path.parts[0] in {"bot", "core"}]


def test_top_level_is_the_design_card() -> None:
    top = {path.parts[0] for path in tracked()}
    assert {name for name in top if not name.startswith(".")} <= CARD


def test_no_module_is_a_drawer() -> None:
    assert [path for path in product() if path.stem in BANNED_NAMES] == []


def test_modules_stay_small() -> None:
    long = [
        p for p in product() if not TABLES.search(str(p)) and len((TOP / p).read_text().split("\n")) > LONGEST_MODULE
    ]
    assert long == []


@pytest.mark.parametrize("lock", ["deploy/base.lock", "deploy/dev.lock"])
def test_locks_pin_with_hashes_and_name_no_address(lock: str) -> None:
    text = (TOP / lock).read_text()
    assert "://" not in text
    assert "file:" not in text
    pins = re.findall(r"^[a-z0-9].*$", text, re.MULTILINE)
    assert pins
    assert all("==" in pin and "+" not in pin.split(";")[0] for pin in pins)
    assert text.count("--hash=sha256:") >= len(pins)


def test_every_module_says_its_one_job() -> None:
    silent = [p for p in product() if (TOP / p).read_text().strip() and not (TOP / p).read_text().startswith('"""')]
    assert silent == []


def test_nothing_unfinished_and_no_path_of_a_machine() -> None:
    marks = re.compile(r"\b(TO" + r"DO|FIX" + r"ME|XX" + r"X)\b|NotImplemented" + r"Error|/work" + r"/|/ro" + r"ot/")
    found = [
        (str(path), mark.group())
        for path in tracked()
        if path.suffix in {".py", ".md", ".toml", ".sh", ""} and path.name != "LICENSE"
        for mark in marks.finditer((TOP / path).read_text(errors="replace"))
    ]
    assert found == []


def test_readme_opens_with_the_job_in_one_paragraph() -> None:
    lines = (TOP / "README.md").read_text().split("\n")
    assert lines[0].startswith("# rungbook")
    first = next(block for block in "\n".join(lines[1:]).split("\n\n") if block.strip())
    assert not first.lstrip().startswith(("#", "-", "!", "|"))
    assert "coach" in first
