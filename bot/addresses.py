"""Reads the address of this machine that a setting names. Takes nothing and serves nothing."""

import re
from typing import Final

_ADDRESS: Final = re.compile(r"(?:\[(?P<six>[0-9A-Fa-f:.]+)\]|(?P<host>[^\s:\[\]]+)):(?P<port>\d{1,5})")


def host_and_port(address: str) -> tuple[str, int] | None:
    """``HOST:PORT`` or ``[V6]:PORT`` in its two parts; None: it is not of that form."""
    found = _ADDRESS.fullmatch(address.strip())
    if found is None or not int(found["port"]) < 1 << 16:
        return None
    return found["six"] or found["host"], int(found["port"])
