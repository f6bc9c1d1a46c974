"""Which bots this service serves: one by its token, or several by a file that names them. Shows no token.

Each bot is a business of its own: its own store (a schema of the database, or a file beside the others), so that no
query of one can meet the people of another.
"""

import os
import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Final

from pydantic import BaseModel, ConfigDict, Field, SecretStr, ValidationError, model_validator

from bot.config import Settings, SettingsError
from bot.store.urls import BOT, file_of, is_served, parsed

_FORM: Final = 'a file of [[bot]] tables, each with name = "north" and token_env = "VARIABLE" or token_file = "PATH"'


@dataclass(frozen=True, slots=True)
class Bot:
    """One bot: its name (``""`` where it is the only one), its token, and the URL of its store."""

    name: str
    token: SecretStr
    store: str


class _Row(BaseModel):
    model_config = ConfigDict(extra="forbid", hide_input_in_errors=True)

    name: Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{0,31}$")]
    token_env: str | None = None
    token_file: Path | None = None

    @model_validator(mode="after")
    def _one_of_both(self) -> "_Row":
        if (self.token_env is None) == (self.token_file is None):
            raise ValueError("a bot takes token_env or token_file")
        return self


class _File(BaseModel):
    model_config = ConfigDict(extra="forbid", hide_input_in_errors=True)

    bot: Annotated[list[_Row], Field(min_length=1)]


def all_of(settings: Settings, environment: Mapping[str, str] = os.environ) -> tuple[Bot, ...]:
    """The bots that the settings name. Raises SettingsError with the remedy; StoreError for a store's wrong URL."""
    if settings.bots is None:
        if settings.token is None:
            raise SettingsError("RUNGBOOK_TOKEN is not set: it takes the bot's token, in the environment or in .env")
        return (Bot("", settings.token, settings.store),)
    rows = _rows(settings.bots)
    names = [row.name for row in rows]
    twice = sorted({name for name in names if names.count(name) > 1})
    if twice:
        raise SettingsError(f"RUNGBOOK_BOTS names {twice[0]} twice: give each bot its own name")
    found = tuple(Bot(row.name, _token(row, environment), store_of(settings.store, row.name)) for row in rows)
    if len({bot.token.get_secret_value() for bot in found}) < len(found):
        raise SettingsError("RUNGBOOK_BOTS gives two bots the same token: a bot has one store only")
    return found


def store_of(url: str, name: str) -> str:
    """The URL of a bot's own store: a schema of the database, or a file beside the one that is named."""
    if is_served(url):
        return parsed(url).update_query_dict({BOT: name}).render_as_string(hide_password=False)
    file = file_of(url)
    own = file.with_name(f"{file.stem}-{name}{file.suffix}")
    return parsed(url).set(database=str(own)).render_as_string(hide_password=False)


def _rows(file: Path) -> list[_Row]:
    try:
        return _File.model_validate(tomllib.loads(file.read_text(encoding="utf-8"))).bot
    except (OSError, UnicodeDecodeError) as problem:
        raise SettingsError(
            f"RUNGBOOK_BOTS: {file} cannot be read ({type(problem).__name__}); it takes {_FORM}"
        ) from None
    except tomllib.TOMLDecodeError as problem:
        raise SettingsError(f"RUNGBOOK_BOTS: {file} is no TOML ({problem}); it takes {_FORM}") from None
    except ValidationError as problem:
        where = ".".join(str(part) for part in problem.errors(include_input=False)[0]["loc"])
        raise SettingsError(f"RUNGBOOK_BOTS: {file} is off at {where or 'the top'}; it takes {_FORM}") from None


def _token(row: _Row, environment: Mapping[str, str]) -> SecretStr:
    if row.token_env is not None:
        found, where = environment.get(row.token_env, ""), f"the variable {row.token_env}"
    else:
        found, where = _content(row.token_file), f"the file {row.token_file}"
    if _TOKEN.fullmatch(found.strip()) is None:
        raise SettingsError(f"RUNGBOOK_BOTS: {where} holds no token for the bot {row.name}")
    return SecretStr(found.strip())


def _content(file: Path | None) -> str:
    try:
        return "" if file is None else file.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        return ""


_TOKEN: Final = re.compile(r"\d{3,12}:[A-Za-z0-9_-]{30,}")
