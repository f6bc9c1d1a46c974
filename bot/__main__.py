"""``rungbook``, and ``python -m bot``."""

from bot.commands import main

if __name__ == "__main__":
    main()
