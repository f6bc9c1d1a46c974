"""The commands. Each hands over, and ends with 0 (done), 1 (failed: one line says why) or 2 (the call is off)."""

import asyncio
import sys
from collections.abc import Callable, Coroutine
from enum import StrEnum
from pathlib import Path
from typing import Annotated, Any, Final, NoReturn, TypeVar

import typer

from bot import config, log
from bot.loading import all_at_once
from bot.ports import ChannelRefused, StoreError
from bot.roles import Role

T = TypeVar("T")

app: Final = typer.Typer(
    name="rungbook",
    help="A check-in service that lives in a chat, for strength coaches and the people they train.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
)

StoreUrl = Annotated[str | None, typer.Option("--store", help="The store's URL; RUNGBOOK_STORE when left out.")]


class Form(StrEnum):
    """The forms of an export."""

    JSONL = "jsonl"
    CSV = "csv"


@app.command()
def serve(
    role: Annotated[
        Role, typer.Option("--role", help="One part of a service that is split up, on PostgreSQL.")
    ] = Role.ALL,
) -> None:
    """Run the service against Telegram; RUNGBOOK_TOKEN holds the bot's token."""
    with all_at_once():
        from bot import serving

    _run(serving.serve(_settings(), role))


@app.command()
def chat(
    name: Annotated[str, typer.Option("--as", help="A lifter's name, the coach's, or the group's.")],
    store: StoreUrl = None,
) -> None:
    """Chat in the terminal: every line is a message of that person, every reply is printed."""
    from bot import bootstrap

    _run(bootstrap.chat(_store(store, quiet=True), name))


@app.command()
def page(
    store: StoreUrl = None,
    listen: Annotated[str, typer.Option("--listen", help="Where to serve it, as HOST or HOST:PORT.")] = "127.0.0.1",
    public: Annotated[str | None, typer.Option("--public", help="The https address that leads to it.")] = None,
    login: Annotated[bool, typer.Option("--login", help="Only by a link from `rungbook link`.")] = False,
    clock: Annotated[bool, typer.Option("--clock", help="Its clock can be put forward, to try things out.")] = False,
    show: Annotated[bool, typer.Option("--open", help="Open it in the browser.")] = False,
) -> None:
    """Serve the chats as a page in the browser: all of them on this machine, or each behind a login."""
    from bot import bootstrap, page_call

    asked = page_call.asked_for(listen, public, login=login, clock=clock, show=show)
    if isinstance(asked, str):
        raise typer.BadParameter(asked)
    _run(bootstrap.page(_store(store, quiet=True), asked))


@app.command()
def link(
    name: Annotated[str, typer.Option("--name", help="Whom it lets in.")],
    public: Annotated[str, typer.Option("--public", help="The address of the page.")] = "http://127.0.0.1:8137",
    store: StoreUrl = None,
) -> None:
    """Print a link to the page behind its login, good once and for a day."""
    from bot import page_call

    sys.stdout.write(_run(page_call.link(_store(store), name, public)) + "\n")


@app.command()
def coach(
    name: Annotated[str, typer.Option("--name", help="What the coach is called.")],
    store: StoreUrl = None,
    zone: Annotated[str, typer.Option("--zone", help="The coach's time zone, as in Europe/Rome.")] = "UTC",
) -> None:
    """Print a code, good once and for a week; who sends /start CODE to the bot becomes that coach."""
    from bot import admin

    if not name.strip():
        raise typer.BadParameter("a coach needs a name", param_hint="--name")
    if not admin.is_zone(zone):
        raise typer.BadParameter(f"there is no time zone {zone!r}; write one like Europe/Rome", param_hint="--zone")
    sys.stdout.write(_run(admin.coach_code(_store(store), " ".join(name.split()), zone)) + "\n")


@app.command()
def export(
    lifter: Annotated[str, typer.Option("--lifter", help="The lifter's name or number.")],
    store: StoreUrl = None,
    form: Annotated[Form, typer.Option("--format", help="JSON Lines or CSV.")] = Form.JSONL,
) -> None:
    """Print every set of a lifter, one a line, oldest first, also those that were amended or erased."""
    from bot import admin, exporting

    rows = _run(admin.sets_of(_store(store), lifter))
    exporting.FORMS[form.value](rows, sys.stdout)


@app.command()
def read(
    why: Annotated[bool, typer.Option("--why", help="Also what was seen, weighed and filled in.")] = False,
) -> None:
    """Read lifters' messages: JSON Lines in, JSON Lines out; no store and no network."""
    from bot import lines

    lines.answer_lines(sys.stdin, sys.stdout, lines.explain_one if why else lines.read_one)


@app.command()
def advise() -> None:
    """Give the next target for a history, or forecast given sets: JSON Lines in, JSON Lines out."""
    from bot import lines

    lines.answer_lines(sys.stdin, sys.stdout, lines.advise_one)


@app.command()
def rules(
    challenge: Annotated[bool, typer.Option("--challenge", help="How a group's challenge is scored instead.")] = False,
) -> None:
    """Print the rules that decide a target, with their limits and sources."""
    from core.challenge.page import scoring_page
    from core.decide.page import rules_page

    sys.stdout.write(scoring_page() if challenge else rules_page())


@app.command()
def demo(
    lifters: Annotated[int, typer.Option("--lifters", min=0, help="How many lifters.")] = 6,
    weeks: Annotated[int, typer.Option("--weeks", min=0, help="How many weeks of history, ending yesterday.")] = 6,
    seed: Annotated[int, typer.Option("--seed", help="Another seed invents another history.")] = 1,
    store: StoreUrl = None,
) -> None:
    """Fill an empty store with an invented gym: a coach, lifters with a history, a group."""
    from bot import clock
    from bot.demo import fill

    made = _run(fill.fill(_store(store, quiet=True), fill.Wanted(lifters, weeks, seed), clock.now))
    sys.stderr.write(f"The demo gym stands: {made}.\n")


@app.command()
def backup(file: Annotated[Path, typer.Argument(help="The copy to make.")], store: StoreUrl = None) -> None:
    """Make a consistent copy of the store, also while the service runs."""
    size = _guarded(lambda: _copies(url := _store(store)).back_up(url, file))
    sys.stderr.write(f"{file}: {size} bytes\n")


@app.command()
def restore(file: Annotated[Path, typer.Argument(help="The copy to put back.")], store: StoreUrl = None) -> None:
    """Put a copy in the place of an empty store."""
    _guarded(lambda: _copies(url := _store(store)).restore(file, url))


@app.command()
def move(
    to: Annotated[str, typer.Option("--to", help="The URL of the empty store to move to.")],
    store: StoreUrl = None,
) -> None:
    """Copy the store into an empty one of either kind, as from a file to PostgreSQL, while no service runs on it."""
    from bot.store import moving

    moved = _run(moving.move(_store(store), to))
    sys.stderr.write(f"Moved {sum(moved.values())} rows of {len(moved)} tables; as many are in the new store.\n")
    sys.stderr.write(
        "Set RUNGBOOK_STORE to the new one. The old one is still there: keep it until you trust the new.\n"
    )


@app.command()
def doctor(
    store: StoreUrl = None,
    rebuild: Annotated[bool, typer.Option("--rebuild", help="Also build every estimate again and compare.")] = False,
) -> None:
    """Check settings, store, clock, time zone data and token, and say what to mend."""
    from bot import doctor as checks

    findings = _run(checks.examine(store, rebuild=rebuild))
    for finding in findings:
        sys.stdout.write(f"{'ok  ' if finding.well else 'mend'}  {finding.about}: {finding.words}\n")
    unwell = [finding.about for finding in findings if not finding.well]
    if unwell:
        _fail(f"to mend: {', '.join(unwell)} (see the lines marked mend)")


def main() -> None:
    """The console command."""
    for stream in (sys.stdin, sys.stdout):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    try:
        app()
    except KeyboardInterrupt:
        raise SystemExit(130) from None
    except BrokenPipeError:
        raise SystemExit(1) from None


def _settings(*, quiet: bool = False) -> config.Settings:
    """The settings, and logging set up by them; ``quiet``: only what goes wrong, unless a level was asked for."""
    settings = _guarded(config.load)
    log.set_up("warning" if quiet and "log" not in settings.model_fields_set else settings.log)
    return settings


def _store(url: str | None, *, quiet: bool = False) -> str:
    """The store that was named, else the one of the settings."""
    settings = _settings(quiet=quiet)
    return url or settings.store


def _copies(url: str) -> Any:
    """What makes copies of a store of that kind."""
    from bot.store import backup, urls

    if not urls.is_served(url):
        return backup
    from bot.store import dumps

    return dumps


def _run(work: Coroutine[Any, Any, T]) -> T:
    return _guarded(lambda: asyncio.run(work))


def _guarded(work: Callable[[], T]) -> T:
    """Do the work; a failure is one line on standard error and status 1, without a trace or anybody's words."""
    try:
        return work()
    except (config.SettingsError, StoreError, ChannelRefused) as failure:
        _fail(str(failure))
    except Exception as failure:  # noqa: BLE001  # the last resort of every command
        first = _first(failure)
        _fail(str(first) if isinstance(first, StoreError | ChannelRefused) else _unforeseen(first))


def _first(failure: BaseException) -> BaseException:
    """What began it, when several things failed together."""
    return _first(failure.exceptions[0]) if isinstance(failure, BaseExceptionGroup) else failure


def _unforeseen(failure: BaseException) -> str:
    kind = type(failure)
    if kind.__module__.startswith("sqlalchemy"):
        return f"the store failed ({kind.__name__}): run `rungbook doctor`, and look for room on the disk"
    return f"something failed that should not ({kind.__name__} at {log.place_of(failure)}): please report this line"


def _fail(words: str) -> NoReturn:
    sys.stderr.write(f"rungbook: {log.struck(' '.join(words.split()))}\n")
    raise typer.Exit(1)
