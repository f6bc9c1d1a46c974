"""The settings, from the environment or ``.env``. A wrong one is named, with what to do; a secret is never shown."""

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from pydantic import SecretStr, ValidationError, field_validator
from pydantic_settings import BaseSettings, SettingsConfigDict

from bot.addresses import host_and_port

PREFIX: Final = "RUNGBOOK_"
_SECRET: Final = re.compile(r"[A-Za-z0-9_-]{1,256}")

REMEDIES: Final[Mapping[str, str]] = {
    "token": "the bot's token, copied whole, as in 123456789:ABC…",
    "api_url": "an address that ends in /bot, as in http://127.0.0.1:8081/bot; leave it out for Telegram's own",
    "bots": "the file that names several bots, or leave it out",
    "store": "a URL, as in sqlite+aiosqlite:////var/lib/rungbook/rungbook.db or postgresql+psycopg://me@host/gym",
    "intake": "polling or webhook",
    "public_url": "the https address at which Telegram reaches this service, as in https://gym.example/hook",
    "listen": "HOST:PORT, as in 127.0.0.1:8443",
    "secret": "1 to 256 letters, digits, - and _",
    "status_listen": "HOST:PORT for health and metrics, as in 127.0.0.1:9137, or leave it out",
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
    bots: Path | None = None
    api_url: str | None = None
    store: str = ""
    intake: Literal["polling", "webhook"] = "polling"
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

    @field_validator("listen", "status_listen")
    @classmethod
    def _an_address(cls, value: str | None) -> str | None:
        if value is not None and host_and_port(value) is None:
            raise ValueError("no HOST:PORT")
        return value

    @field_validator("public_url")
    @classmethod
    def _a_url(cls, value: str | None) -> str | None:
        if value is not None and not (value.startswith(("https://", "http://")) and value.isprintable()):
            raise ValueError("no address of the web")
        return value

    @field_validator("secret")
    @classmethod
    def _of_these_letters(cls, value: SecretStr | None) -> SecretStr | None:
        if value is not None and _SECRET.fullmatch(value.get_secret_value()) is None:
            raise ValueError("other letters, or too many")
        return value


@dataclass(frozen=True, slots=True)
class Hook:
    """What it takes to have updates brought: the address that Telegram is told, the one served here, the secret."""

    public_url: str
    listen: str
    secret: SecretStr


def hook_of(settings: Settings) -> Hook | None:
    """How updates are brought; None: they are polled for. Raises SettingsError naming every setting that is missing."""
    if settings.intake == "polling":
        return None
    wanted = {"public_url": settings.public_url, "listen": settings.listen, "secret": settings.secret}
    missing = [name for name, value in wanted.items() if value is None]
    if settings.public_url is None or settings.listen is None or settings.secret is None:
        told = "; ".join(f"{PREFIX}{name.upper()} takes {REMEDIES[name]}" for name in missing)
        raise SettingsError(f"RUNGBOOK_INTAKE=webhook needs more: {told}")
    if settings.api_url is None and not settings.public_url.startswith("https://"):
        raise SettingsError(f"RUNGBOOK_PUBLIC_URL takes {REMEDIES['public_url']}: Telegram brings nothing over http")
    return Hook(settings.public_url, settings.listen, settings.secret)


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
