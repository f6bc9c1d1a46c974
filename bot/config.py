"""The settings, from the environment or ``.env``. A wrong one is named, with what to do; a secret is never shown."""

import os
from collections.abc import Mapping
from pathlib import Path
from typing import Final, Literal

from pydantic import SecretStr, ValidationError, field_validator
from pydantic_settings import BaseSettings, SettingsConfigDict

PREFIX: Final = "RUNGBOOK_"

REMEDIES: Final[Mapping[str, str]] = {
    "token": "the bot's token, copied whole, as in 123456789:ABC…",
    "api_url": "an address that ends in /bot, as in http://127.0.0.1:8081/bot; leave it out for Telegram's own",
    "store": "a URL, as in sqlite+aiosqlite:////var/lib/rungbook/rungbook.db",
    "intake": "polling (webhook is not served by this version)",
    "public_url": "the https address at which Telegram reaches this service",
    "listen": "HOST:PORT",
    "secret": "1 to 256 letters, digits, - and _",
    "status_listen": "HOST:PORT, or leave it out",
    "page_listen": "HOST:PORT of the page behind its login, or leave it out",
    "page_public": "the https address that leads to the page",
    "log": "debug, info, warning or error",
}
"""What each setting takes."""


class SettingsError(Exception):
    """One or more settings are wrong; the message names each with its remedy."""


def default_store() -> str:
    """A SQLite file in the data folder of the person who runs the service."""
    folder = Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share")
    return f"sqlite+aiosqlite:///{folder / 'rungbook' / 'rungbook.db'}"


class Settings(BaseSettings):
    """All settings, checked."""

    model_config = SettingsConfigDict(
        env_prefix=PREFIX,
        env_file=".env",
        env_ignore_empty=True,
        extra="ignore",
        frozen=True,
        hide_input_in_errors=True,
    )

    token: SecretStr | None = None
    api_url: str | None = None
    store: str = ""
    intake: Literal["polling"] = "polling"
    public_url: str | None = None
    listen: str | None = None
    secret: SecretStr | None = None
    status_listen: str | None = None
    page_listen: str | None = None
    page_public: str | None = None
    log: Literal["debug", "info", "warning", "error"] = "info"

    @field_validator("store")
    @classmethod
    def _somewhere(cls, value: str) -> str:
        return value or default_store()

    @field_validator("log", mode="before")
    @classmethod
    def _any_case(cls, value: object) -> object:
        return value.lower() if isinstance(value, str) else value

    @field_validator("api_url")
    @classmethod
    def _in_the_librarys_form(cls, value: str | None) -> str | None:
        if value is not None and not (value.startswith(("http://", "https://")) and value.endswith("/bot")):
            raise ValueError("not in the client library's form")
        return value


def load() -> Settings:
    """Read the settings. Raises SettingsError naming every wrong one."""
    try:
        settings = Settings()
    except ValidationError as problem:
        names = dict.fromkeys(str(error["loc"][0]) for error in problem.errors(include_input=False))
        raise SettingsError("; ".join(f"{PREFIX}{name.upper()} takes {REMEDIES[name]}" for name in names)) from None
    return settings if settings.store else settings.model_copy(update={"store": default_store()})


def unknown_names() -> list[str]:
    """Names in the environment that look like settings and are none: most likely misspelt."""
    known = {f"{PREFIX}{name.upper()}" for name in Settings.model_fields}
    return sorted(name for name in os.environ if name.startswith(PREFIX) and name not in known)
