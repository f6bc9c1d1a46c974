"""The slots of a rule's words: loads, rests, tempos and breaks in the lifter's own unit. Knows no rule."""

from core.decide.case import Case, Sets
from core.model.quantities import Load, Unit, from_kg
from core.model.target import Slot


def plain(number: float) -> str:
    """A number without needless decimals: 60, 62.5, 1.25."""
    return f"{round(number, 2):g}"


def load_words(load: Load | None, unit: Unit) -> str:
    """A load as said to a lifter."""
    if load is None:
        return "a load that suits"
    if load.kind == "body":
        return "body weight"
    if load.kg is None:
        return f"the {load.label} band" if load.label else "the band"
    mass = f"{plain(round(from_kg(load.kg, unit), 1 if unit == 'lb' else 2))} {unit}"
    return {"per_hand": f"{mass} a hand", "added": f"{mass} added", "assist": f"{mass} of help"}.get(load.kind, mass)


def values(case: Case, sets: Sets) -> tuple[tuple[str, Slot], ...]:
    """The same slots as values without words, for a language that is said elsewhere."""
    one = sets[0] if sets else (case.base[0] if case.base else None)
    return (
        ("load", one.load if one is not None else None),
        ("rest", one.rest_s if one is not None else None),
        ("down", one.tempo[0] if one is not None and one.tempo is not None else None),
        ("range", one.range if one is not None else None),
        ("least", one.reps[0] if one is not None else None),
        ("where", case.ache_where),
        ("level", case.ache),
        ("weeks", case.days_off // 7),
        ("misses", case.facts.misses),
    )


def slots(case: Case, sets: Sets) -> dict[str, str]:
    """Every slot that a rule's words may hold."""
    one = sets[0] if sets else (case.base[0] if case.base else None)
    down = one.tempo[0] if one is not None and one.tempo is not None else None
    span = one.range if one is not None else None
    deeper = "the full range" if span is None or span.cm is None else f"{plain(span.cm)} cm deeper"
    return {
        "load": load_words(one.load if one is not None else None, case.lifter.unit),
        "rest": f"{plain(one.rest_s)} s" if one is not None and one.rest_s is not None else "as before",
        "down": f"{plain(down)} s" if down is not None else "a slower count",
        "range": deeper,
        "least": _counted(one.reps[0]) if one is not None else "fewer reps",
        "where": case.ache_where.replace("-", " ") or "body",
        "level": plain(case.ache) if case.ache is not None else "0",
        "weeks": str(case.days_off // 7),
        "misses": str(case.facts.misses),
    }


def _counted(reps: int) -> str:
    return "1 rep" if reps == 1 else f"{reps} reps"
