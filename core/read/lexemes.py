"""Tokens into lexemes: quantities with their units, exercise names, and words with the kinds they can have.

Knows what words can mean, never which of it is meant; that is the patterns' and the grammar's to say.
"""

from collections.abc import KeysView
from dataclasses import dataclass, field
from typing import Final

from core.model.quantities import POUND_KG
from core.read.lexicon import Meaning
from core.read.names import Mention
from core.read.numerals import compose
from core.read.tokens import Token
from core.read.words.languages import Language

_MARKS: Final[dict[str, str]] = {
    ",": "COMMA", ";": "STOP", "!": "STOP", "?": "STOP", "/": "SLASH", ":": "COLON", "(": "OPEN", ")": "CLOSE",
    ">": "ARROW", "~": "ABOUT", "=": "COLON", "|": "COLON", "[": "OPEN", "]": "CLOSE", "✓": "TICK", "✗": "CROSS",
    "•": "BULLET", "·": "BULLET", "_": "BULLET",
}  # fmt: skip
_ABBREVIATED: Final = frozenset({"no", "nr", "conv", "incl", "approx", "vs", "dr"})
"""A full stop behind these ends no sentence."""
_INITIALS: Final = frozenset({"fs", "pc", "hc", "ps", "pp", "bs", "dl", "sq", "gm", "sl", "bp"})
"""Initials that name an exercise only right before a count."""
_JOINING: Final = frozenset({"-", "/", "."})


@dataclass(slots=True)
class Lexeme:
    """A stretch of the message and all that it can mean.

    ``k`` maps each kind to its value. ``value`` is the number of a NUM. ``glued`` as in Token. ``index`` is its place
    in the message's list.
    """

    k: dict[str, object]
    start: int
    end: int
    text: str
    value: float = 0.0
    glued: bool = False
    plural: bool = False
    mention: Mention | None = None
    pair: tuple[str, str] | None = None
    spelled: bool = False
    index: int = field(default=-1, compare=False)
    kinds: KeysView[str] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        self.kinds = self.k.keys()

    def has(self, *kinds: str) -> bool:
        """Whether any of these kinds is among its meanings."""
        return not self.kinds.isdisjoint(kinds)

    def num(self, kind: str) -> float:
        """The value of a kind, as a number."""
        value = self.k[kind]
        return float(value) if isinstance(value, int | float) else 0.0


def mark(tokens: list[Token], tongue: Language) -> list[Lexeme]:
    """Every token as part of one lexeme, in order."""
    words = [token.text for token in tokens]
    out: list[Lexeme] = []
    i = 0
    while i < len(tokens):
        lexeme, j = _at(tokens, words, i, tongue)
        out.append(lexeme)
        i = j
    _settle_commas(out)
    out = _units(out)
    _settle_names(out)
    return out


def _settle_names(out: list[Lexeme]) -> None:
    """A word that is a name or a verdict (clean) is a name before a count; a lacking name swallows the next one."""
    for i, lexeme in enumerate(out):
        follow = out[i + 1] if i + 1 < len(out) else None
        if lexeme.mention is None:
            continue
        if lexeme.text in _INITIALS and (
            follow is None or not follow.has("NUM", "LOADQ", "COLON", "AT", "EMPTYBAR", "DASH")
        ):
            lexeme.k.pop("EX", None)
            lexeme.mention = None
        elif "FORM" in lexeme.k:
            if follow is not None and follow.has("NUM", "LOADQ", "AT"):
                del lexeme.k["FORM"]
            else:
                del lexeme.k["EX"]
                lexeme.mention = None
        elif lexeme.mention.lacking and follow is not None and follow.mention is not None:
            del follow.k["EX"]
            follow.mention = None


def _at(tokens: list[Token], words: list[str], i: int, tongue: Language) -> tuple[Lexeme, int]:
    token = tokens[i]
    lexicon = tongue.lexicon
    phrase_end, meanings = lexicon.phrases.longest(words, i)
    if token.text == "/" and not token.glued:
        phrase_end, meanings = i, []
    named = _name(words, tokens, i, tongue)
    if named is not None and named[0] >= phrase_end:
        end, mention = named
        lexeme = Lexeme({"EX": mention}, token.start, tokens[end - 1].end, " ".join(words[i:end]), 0.0, token.glued)
        lexeme.mention = mention
        if phrase_end == end:
            lexeme.k |= dict(meanings)
        return lexeme, end
    if token.kind == "num" and phrase_end <= i + 1:
        return _number(tokens, i)
    if token.kind == "time":
        return Lexeme({"TIME": token.value, "DUR": token.value}, token.start, token.end, token.text, token.value), i + 1
    if token.kind == "word" and phrase_end <= i + 1:
        said = _said_number(tokens, i, tongue)
        if said is not None:
            if meanings:
                said[0].k |= dict(meanings)
            return said
    if phrase_end > i:
        kinds = _kinds(meanings)
        if token.text in _MARKS and phrase_end == i + 1:
            kinds[_MARKS[token.text]] = 0
        return Lexeme(
            kinds, token.start, tokens[phrase_end - 1].end, " ".join(words[i:phrase_end]), 0.0, token.glued
        ), (phrase_end)
    return _plain(tokens, i, tongue), i + 1


def _kinds(meanings: list[Meaning]) -> dict[str, object]:
    out: dict[str, object] = {}
    for kind, value in meanings:
        out.setdefault(kind, value)
    return out


def _name(words: list[str], tokens: list[Token], i: int, tongue: Language) -> tuple[int, Mention] | None:
    if tokens[i].kind not in ("word", "num"):
        return None
    concepts: list[str] = []
    ends: list[int] = []
    j = i
    names = tongue.lexicon.names
    while j < len(words) and len(concepts) < 6:
        end, found = names.longest(words, j)
        if end == j:
            if concepts and words[j] == "(" and names.longest(words, j + 1)[0] > j + 1:
                j += 1
                continue
            if (
                concepts
                and words[j] in _JOINING
                and tokens[j].glued
                and j + 1 < len(words)
                and (words[j] == "." or tokens[j + 1].glued)
            ):
                j += 1
                continue
            break
        concepts.append(str(found[0][1]))
        ends.append(end)
        j = end
    if not concepts:
        return None
    best = tongue.names.find(concepts)
    return None if best is None else (ends[best[0] - 1], best[1])


def _number(tokens: list[Token], i: int) -> tuple[Lexeme, int]:
    token = tokens[i]
    lexeme = Lexeme({"NUM": token.value}, token.start, token.end, token.text, token.value, token.glued)
    lexeme.pair = token.pair
    follow = tokens[i + 1] if i + 1 < len(tokens) else None
    if follow is not None and follow.text == "s" and follow.glued:
        lexeme.plural = True
        lexeme.end = follow.end
        lexeme.k["PLURAL"] = 0
        return lexeme, i + 2
    return lexeme, i + 1


def _said_number(tokens: list[Token], i: int, tongue: Language) -> tuple[Lexeme, int] | None:
    if tokens[i].text not in tongue.lexicon.numerals.starts:
        return None
    said = compose(tongue.lexicon.numerals, tokens, i)
    if said is None:
        return None
    value, end, plural = said
    text = " ".join(token.text for token in tokens[i:end])
    lexeme = Lexeme({"NUM": value}, tokens[i].start, tokens[end - 1].end, text, value, tokens[i].glued)
    lexeme.spelled = True
    if plural:
        lexeme.plural = True
        lexeme.k["PLURAL"] = 0
    return lexeme, end


def _plain(tokens: list[Token], i: int, tongue: Language) -> Lexeme:
    token = tokens[i]
    if token.kind == "line":
        return Lexeme({"NL": 0}, token.start, token.end, "\n")
    if token.kind == "word":
        known = token.text in tongue.lexicon.known
        kind = "FILLER" if token.text in tongue.filler else "KNOWN" if known else "WORD"
        return Lexeme({kind: 0}, token.start, token.end, token.text, 0.0, token.glued)
    if token.text == ".":
        after = tokens[i + 1] if i + 1 < len(tokens) else None
        closes = (after is None or not after.glued) and not (i > 0 and tokens[i - 1].text in _ABBREVIATED)
        return Lexeme({"STOP" if closes else "DOT": 0}, token.start, token.end, ".", 0.0, token.glued)
    kind = _MARKS.get(token.text, "MARK")
    if token.text == ";" and token.glued and i + 1 < len(tokens) and tokens[i + 1].glued:
        kind = "COLON"
    return Lexeme({kind: 0}, token.start, token.end, token.text, 0.0, token.glued)


def _settle_commas(out: list[Lexeme]) -> None:
    """One comma between digits: a decimal comma before a unit, an x or a list; else it parts two numbers."""
    i = 0
    while i < len(out):
        lexeme = out[i]
        if lexeme.pair is not None and not _is_decimal(out, i):
            whole, part = lexeme.pair
            cut = lexeme.start + len(whole)
            first = Lexeme({"NUM": float(whole)}, lexeme.start, cut, whole, float(whole), lexeme.glued)
            comma = Lexeme({"COMMA": 0}, cut, cut + 1, ",", 0.0, glued=True)
            second = Lexeme({"NUM": float(part)}, cut + 1, lexeme.end, part, float(part), glued=True)
            second.plural = lexeme.plural
            if lexeme.plural:
                second.k["PLURAL"] = 0
            out[i : i + 1] = [first, comma, second]
            i += 2
        i += 1


_DECIMALS: Final = frozenset({"5", "25", "75", "50", "0", "00"})
_BEFORE_DECIMAL: Final = ("RPE", "RIR", "AT", "PLUS", "UP", "DOWN", "WEIGHIN", "UPTO", "DASH", "SAME")
_AFTER_DECIMAL: Final = ("KG", "GKG", "LB", "X", "FOR", "MIN", "SEC", "METRE", "CM", "PERSIDE", "PERHAND", "IMPL")


def _is_decimal(out: list[Lexeme], i: int) -> bool:
    pair = out[i].pair
    if pair is None or len(pair[0]) > 4 or len(pair[1]) > 2:
        return False
    if _weigh_in(out, i) and len(pair[0]) > 1:
        return True
    before = out[i - 1] if i else None
    after = out[i + 1] if i + 1 < len(out) else None
    fine = pair[1] in _DECIMALS
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


def _weigh_in(out: list[Lexeme], i: int) -> bool:
    return any(one.has("WEIGHIN") for one in out[max(0, i - 5) : i + 5])


def _units(lexemes: list[Lexeme]) -> list[Lexeme]:
    """Numbers joined with the unit that follows them."""
    out: list[Lexeme] = []
    i, last = 0, len(lexemes)
    while i < last:
        lexeme = lexemes[i]
        follow = lexemes[i + 1] if i + 1 < last else None
        if (
            "NUM" in lexeme.k
            and follow is not None
            and not _set_label(lexemes, i)
            and _join(lexeme, follow, lexemes, i)
        ):
            i += 1
        elif lexeme.text == "half" and i + 2 < last and lexemes[i + 1].text == "a" and lexemes[i + 2].has("MIN"):
            lexeme = Lexeme({"DUR": 30.0, "NUMDUR": 1}, lexeme.start, lexemes[i + 2].end, "half a min", 30.0)
            i += 2
        elif lexeme.text in ("a", "an", "half a") and follow is not None and follow.has("MIN") and follow.text != "m":
            lexeme = Lexeme({"DUR": 60.0, "NUMDUR": 1}, lexeme.start, follow.end, "a minute", 60.0)
            i += 1
        elif lexeme.has("REPS", "SETS") and lexeme.text in ("reps", "sets") and _labelled(lexemes, i):
            count = lexemes[i + 2] if lexemes[i + 1].has("COLON") else lexemes[i + 1]
            kind = "REPQ" if lexeme.text == "reps" else "SETQ"
            lexeme = Lexeme({"NUM": count.value, kind: count.value}, lexeme.start, count.end, lexeme.text, count.value)
            i = lexemes.index(count, i)
        if "DUR" in lexeme.k and [one.text for one in lexemes[i + 1 : i + 4]] == ["and", "a", "half"]:
            lexeme.k["DUR"] = lexeme.num("DUR") + 30
            lexeme.end = lexemes[i + 3].end
            i += 3
        out.append(lexeme)
        i += 1
    return _long_durations(out)


def _labelled(lexemes: list[Lexeme], i: int) -> bool:
    """reps: 12, sets: 2: the count behind its word."""
    rest = lexemes[i + 1 : i + 3]
    return len(rest) == 2 and rest[0].has("COLON") and "NUM" in rest[1].k and not rest[1].plural


def _set_label(lexemes: list[Lexeme], i: int) -> bool:
    """The number of 'set 3 reps were 6' names the set."""
    return i > 0 and lexemes[i - 1].text == "set" and lexemes[i + 1].has("REPS") and lexemes[i].value <= 12


def _join(lexeme: Lexeme, unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    value, k = lexeme.value, lexeme.k
    kinds = unit.k
    if lexeme.plural and not unit.glued:
        return False
    done = True
    if "KG" in kinds or ("GKG" in kinds and unit.glued):
        k["LOADQ"] = value
    elif "LB" in kinds:
        k["LOADQ"] = value * POUND_KG
    elif "METRE" in kinds:
        k["DIST"] = value * unit.num("METRE")
        if "MIN" in kinds:
            k["DUR"] = value * 60
    elif "SEC" in kinds:
        k["DUR"] = value
    elif "MIN" in kinds:
        k["DUR"] = value * 60
    elif "HOUR" in kinds and (unit.glued or len(unit.text) > 1):
        k["LONG"] = value * 3600
    elif "CM" in kinds and (unit.glued or unit.text not in ("in", '"')):
        k["LEN"] = value * unit.num("CM")
    elif "CLOCK" in kinds:
        k["CLOCKTIME"] = value
    elif "PERCENT" in kinds:
        k["PCT"] = value
    elif "FAR" in kinds:
        k["FARQ"] = value
    elif "STRIDES" in kinds:
        k["STRIDEQ"] = value
    elif "REPS" in kinds and not (unit.text == "r" and not unit.glued):
        k["REPQ"] = value
    elif "SETS" in kinds:
        follow = lexemes[i + 2] if i + 2 < len(lexemes) else None
        if unit.text in ("set", "round") and value != 1 and follow is not None and follow.has("NUM") and not unit.glued:
            return False
        k["SETQ"] = value
    elif "TIMES" in kinds:
        k["TIMESQ"] = value
    else:
        done = False
    if done:
        lexeme.end = unit.end
        lexeme.text += " " + unit.text
        if not {"REPQ", "SETQ", "TIMESQ"} & k.keys():
            k.pop("NUM", None)
    return done


def _long_durations(lexemes: list[Lexeme]) -> list[Lexeme]:
    """Minutes with the seconds behind them: 1 min 30, a minute ten, 2m30s, one and a half minutes."""
    out: list[Lexeme] = []
    for i, lexeme in enumerate(lexemes):
        before = out[-1] if out else None
        minute = before is not None and "DUR" in before.k and "TIME" not in before.k and before.num("DUR") % 60 == 0
        if minute and before is not None and before.text.split(" ")[-1][:1] == "m" and _adds_seconds(lexemes, i):
            extra = lexeme.num("DUR") if "DUR" in lexeme.k else lexeme.value
            before.k["DUR"] = before.num("DUR") + extra
            before.k.pop("DIST", None)
            before.end = lexeme.end
            before.text += " " + lexeme.text
            continue
        out.append(lexeme)
    for i, lexeme in enumerate(out):
        lexeme.index = i
    return out


def _adds_seconds(lexemes: list[Lexeme], i: int) -> bool:
    lexeme = lexemes[i]
    if "DUR" in lexeme.k:
        return 0 < lexeme.num("DUR") < 60
    whole_minutes = lexemes[i - 1].text.split(" ")[-1]
    if "NUM" not in lexeme.k or not 5 <= lexeme.value < 60 or lexeme.plural:
        return False
    if lexeme.has("REPQ", "SETQ", "LOADQ", "TIMESQ"):
        return False
    follow = lexemes[i + 1] if i + 1 < len(lexemes) else None
    if follow is not None and follow.has("X", "NUM", "SLASH"):
        return False
    return lexeme.glued or whole_minutes in ("minute", "minutes", "min", "mins")
