"""The service with a wall clock that is off by what a file says: ``python -m tests.faults.shifted serve``."""

import os
from datetime import datetime, timedelta
from pathlib import Path

from bot import clock

_true = clock.now


def _now() -> datetime:
    file = Path(os.environ["FAULTS_CLOCK"])
    return _true() + timedelta(seconds=float(file.read_text() or 0))


clock.now = _now

if __name__ == "__main__":
    from bot.__main__ import main

    main()
