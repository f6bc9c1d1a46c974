"""The reader's door: a message in, a reading out. It may not know channels, stores or clocks."""

from core.model.reading import Reading, Setting


def read(text: str, setting: Setting) -> Reading:
    """Read one message. Never raises for any text."""
    del setting
    return Reading(leftovers=((0, len(text)),) if text else ())
