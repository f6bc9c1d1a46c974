"""One comma between digits: a decimal comma, or the parting of two numbers."""

from typing import Final

from core.read.lexeme import Lexeme


def settle_commas(out: list[Lexeme], *, usual: bool = False) -> None:
    """One comma between digits: a decimal comma before a unit, an x or a list; else it parts two numbers.

    ``usual``: the language writes its decimals so.
    """
    i = 0
    while i < len(out):
        lexeme = out[i]
        if lexeme.pair is not None and not _is_decimal(out, i, usual=usual):
            whole, part = lexeme.pair
            cut = min(lexeme.start + len(whole), lexeme.end - 1)  # one sign as typed can be two figures
            then = min(cut + 1, lexeme.end - 1)
            first = Lexeme({"NUM": float(whole)}, lexeme.start, cut, whole, float(whole), lexeme.glued)
            comma = Lexeme({"COMMA": 0}, cut, cut + 1, ",", 0.0, glued=True)
            second = Lexeme({"NUM": float(part)}, then, lexeme.end, part, float(part), glued=True)
            second.plural = lexeme.plural
            if lexeme.plural:
                second.k["PLURAL"] = 0
            out[i : i + 1] = [first, comma, second]
            i += 2
        i += 1


_DECIMALS: Final = frozenset({"5", "25", "75", "50", "0", "00"})
_BEFORE_DECIMAL: Final = ("RPE", "RIR", "AT", "PLUS", "UP", "DOWN", "WEIGHIN", "UPTO", "DASH", "SAME")
_AFTER_DECIMAL: Final = ("KG", "GKG", "LB", "X", "FOR", "MIN", "SEC", "METRE", "CM", "PERSIDE", "PERHAND", "IMPL")


def _is_decimal(out: list[Lexeme], i: int, *, usual: bool) -> bool:
    pair = out[i].pair
    if pair is None or len(pair[0]) > 4 or len(pair[1]) > 2:
        return False
    if len(pair[0]) == 1 and len(pair[1]) == 2 and _of_stature(out, i):
        return True
    if _weigh_in(out, i) and len(pair[0]) > 1:
        return True
    before = out[i - 1] if i else None
    after = out[i + 1] if i + 1 < len(out) else None
    fine = pair[1] in _DECIMALS or (usual and len(pair[1]) == 1 and int(pair[0]) >= 20)
    if out[i].plural or (after is not None and after.has("KG", "LB", "GKG", "CM")):
        return True
    if before is not None and before.has("X") and not (fine and int(pair[0]) >= 20):
        return False
    if after is not None and after.has(*_AFTER_DECIMAL) and fine:
        return True
    if before is not None and before.has(*_BEFORE_DECIMAL):
        return fine
    if before is not None and before.has("COMMA", "SLASH"):
        return False
    return (fine and int(pair[0]) >= 20) or (
        fine and int(pair[0]) >= 10 and (after is None or after.has("NUM", "COLON", "DASH", "EX"))
    )


def _of_stature(out: list[Lexeme], i: int) -> bool:
    """'im 1,78', '1,80 tall': how tall somebody is, in metres."""
    return (i + 1 < len(out) and out[i + 1].is_word("stature")) or (i > 0 and out[i - 1].is_word("who am"))


def _weigh_in(out: list[Lexeme], i: int) -> bool:
    """Whether a body weight is told near here, and no exercise done with it."""
    near = out[max(0, i - 5) : i + 5]
    return any(one.has("WEIGHIN") for one in near) and not any(
        one.mention is not None for one in out[max(0, i - 5) : i]
    )
