"""``rungbook``, and ``python -m bot``."""

import os
import sys

from bot import commands


def main() -> None:
    """Run a command. One that failed is gone at once, so that whoever supervises it can begin it again.

    Taking a whole interpreter down after a failure can take for ever: what libraries left half open is in its way
    (seen with a store that may not be written: one time in two the process stayed).
    """
    try:
        commands.main()
    except SystemExit as end:
        if not end.code:
            raise
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(end.code if isinstance(end.code, int) else 1)


if __name__ == "__main__":
    main()
