"""A promise broken inside core. Nothing that a person can type may raise this; it is always our bug."""


class CoreBug(Exception):
    """An invariant of core does not hold."""
