"""``rungbook``, and ``python -m bot``."""

from bot.loading import all_at_once

with all_at_once():
    from bot import commands


def main() -> None:
    """Run a command."""
    commands.main()


if __name__ == "__main__":
    main()
