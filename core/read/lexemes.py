"""Tokens into lexemes: quantities with their units, exercise names, and words with the kinds they can have.

Knows what words can mean, never which of it is meant; that is the patterns' and the grammar's to say.
"""

from typing import Final

from core.evidence.exercises import EXERCISES
from core.read.decimals import settle_commas
from core.read.lexeme import UNMARKED, Lexeme
from core.read.lexicon import Meaning
from core.read.loads import is_barbell
from core.read.names import Mention
from core.read.numerals import compose
from core.read.tokens import Token
from core.read.units import join_units
from core.read.words.languages import Language

_MARKS: Final[dict[str, str]] = {
    ",": "COMMA", ";": "STOP", "!": "STOP", "?": "STOP", "/": "SLASH", ":": "COLON", "(": "OPEN", ")": "CLOSE",
    ">": "ARROW", "~": "ABOUT", "=": "COLON", "|": "COLON", "[": "OPEN", "]": "CLOSE", "✓": "TICK", "✗": "CROSS",
    "•": "BULLET", "·": "BULLET", "_": "BULLET",
}  # fmt: skip
_ABBREVIATED: Final = frozenset({"no", "nr", "conv", "incl", "approx", "vs", "dr"})
"""A full stop behind these ends no sentence."""
_JOINING: Final = frozenset({"-", "/", "."})


def mark(tokens: list[Token], tongue: Language) -> list[Lexeme]:
    """Every token as part of one lexeme, in order."""
    words = [token.text for token in tokens]
    out: list[Lexeme] = []
    i = 0
    while i < len(tokens):
        lexeme, j = _at(tokens, words, i, tongue)
        lexeme.marks = tongue.marks.get(lexeme.text.replace(" - ", " "), UNMARKED)  # "left-hand" as "left hand"
        out.append(lexeme)
        i = j
    settle_commas(out, usual=tongue.decimal_comma)
    out = join_units(out)
    _settle_names(out)
    _name_again(out, tongue)
    _open(out)
    return out


def _open(out: list[Lexeme]) -> None:
    """'Ok', 'right,' and 'update:' at the start of a sentence open it, and say nothing of form, side or corrections."""
    sided: bool | None = None
    for i, lexeme in enumerate(out):
        if not lexeme.is_word("openers") or i + 1 >= len(out):
            continue
        if i > 0 and not out[i - 1].has("NL", "STOP") and "OPENER" not in out[i - 1].k:
            continue
        follow = out[i + 1]
        opens = follow.has("COMMA", "OPENER", *_SPEAKING) or _two_handed(follow)
        sided = any("LEFT" in one.k for one in out) if sided is None else sided
        tells = {"right": sided or not opens, "update": "COLON" not in follow.k}
        if not tells.get(lexeme.text, False):
            lexeme.k = {"FILLER": 0, "OPENER": 0}
            lexeme.kinds = lexeme.k.keys()


def _two_handed(lexeme: Lexeme) -> bool:
    """An exercise that is never done one side at a time: 'right, bench', said without the comma."""
    ids = lexeme.mention.ids if lexeme.mention is not None else ()
    return bool(ids) and all(is_barbell(one) or EXERCISES[one].load_kind == "body" for one in ids)


_SPEAKING: Final = (
    "FILLER", "SELF", "DONE", "AMEND", "ERASE", "SAME", "LAST", "THAT", "BEGIN", "FINISH", "NEXTQ", "ASKWORD", "UNDONE",
    "SKIP", "SWAPFROM", "DAY", "THEN",
)  # fmt: skip
"""What may follow a 'right' that opens a sentence and is no side."""


_ONES: Final = frozenset({"ones", "version", "versions", "variation", "variations"})


def _name_again(out: list[Lexeme], tongue: Language) -> None:
    """'seated leg curls for lying ones': a word that turns the name said before into its relative."""
    if not any(lexeme.text in _ONES for lexeme in out):
        return
    before: Mention | None = None
    for i, lexeme in enumerate(out):
        before = lexeme.mention or before
        concept = tongue.lexicon.concepts.get(lexeme.text)
        if before is None or lexeme.mention is not None or concept is None or concept in before.words:
            continue
        if i + 1 < len(out) and out[i + 1].text in _ONES:
            twin = _relative(before, concept, tongue)
            if twin is not None:
                lexeme.k["EX"] = twin
                lexeme.mention = before = twin


def _relative(mention: Mention, concept: str, tongue: Language) -> Mention | None:
    """The one exercise whose name is this one's with the word added, or put in the place of another."""
    names = tongue.names.by_words
    for words in (mention.words, *(mention.words - {word} for word in sorted(mention.words))):
        twin = names.get(words | {concept})
        if twin is not None and len(twin.ids) == 1 and twin.ids != mention.ids:
            return twin
    return None


def _settle_names(out: list[Lexeme]) -> None:
    """A word that is a name or a verdict (clean) is a name before a count; a lacking name swallows the next one."""
    for i, lexeme in enumerate(out):
        if lexeme.mention is None:
            continue
        follow = out[i + 1] if i + 1 < len(out) else None
        if lexeme.is_word("bp") and _blood_pressure(out[i + 1 : i + 4]):
            lexeme.k = {"CHAT": 0}
            lexeme.kinds = lexeme.k.keys()
            lexeme.mention = None
        elif lexeme.is_word("initials") and (
            follow is None
            or not follow.has("NUM", "LOADQ", "COLON", "AT", "EMPTYBAR", "DASH", "NL", "WARMUP", "WORKING", "PLATE")
        ):
            lexeme.k.pop("EX", None)
            lexeme.mention = None
        elif lexeme.is_word("furniture") and i > 0 and out[i - 1].is_word("some one"):
            if follow is None or not follow.has("NUM", "LOADQ", "COLON", "AT", "EMPTYBAR"):
                del lexeme.k["EX"]
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


def _blood_pressure(follow: list[Lexeme]) -> bool:
    """122/78 behind 'bp': two pressures and no bench press."""
    if len(follow) < 3 or not (follow[0].has("NUM") and follow[1].has("SLASH") and follow[2].has("NUM")):
        return False
    return follow[0].value > follow[2].value >= LEAST_PRESSURE and not follow[1].has("X")


LEAST_PRESSURE: Final = 40.0
"""The lower pressure of a person at rest is not below this (common practice, no source)."""


def _at(tokens: list[Token], words: list[str], i: int, tongue: Language) -> tuple[Lexeme, int]:
    token = tokens[i]
    phrase_end, meanings = i, _NOTHING
    if token.text in tongue.lexicon.phrases.root.after:
        phrase_end, meanings = _phrase(tokens, words, i, tongue)
    named = _name(words, tokens, i, tongue) if token.text in tongue.lexicon.names.root.after else None
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
        text = " ".join(words[i:phrase_end])
        return Lexeme(kinds, token.start, tokens[phrase_end - 1].end, text, 0.0, token.glued), phrase_end
    return _plain(tokens, i, tongue), i + 1


_NOTHING: Final[list[Meaning]] = []


def _plural_behind(tokens: list[Token], i: int) -> bool:
    """'all 5s': the number belongs to the s behind it."""
    return i < len(tokens) and tokens[i].glued and tokens[i].text == "s"


def _phrase(tokens: list[Token], words: list[str], i: int, tongue: Language) -> tuple[int, list[Meaning]]:
    """The longest phrase of the tables from here, unless its last word begins a longer name."""
    if tokens[i].text == "/" and not tokens[i].glued:
        return i, []
    phrases = tongue.lexicon.phrases
    end, meanings = phrases.longest(words, i)
    if end > i + 1 and tokens[end - 1].kind == "num" and _plural_behind(tokens, end):
        return phrases.longest(words[: end - 1], i)
    if end > i + 1:
        within = _name(words, tokens, end - 1, tongue)
        if within is not None and within[0] > end:
            return phrases.longest(words[: end - 1], i)
    return end, meanings


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
    best = tongue.names.find(tuple(concepts))
    if best is not None and best[0] > 1 and _complains(words, ends[best[0] - 2], ends[best[0] - 1], tongue):
        best = tongue.names.find(tuple(concepts[: best[0] - 1])) or best
    return None if best is None else (ends[best[0] - 1], best[1])


def _complains(words: list[str], start: int, end: int, tongue: Language) -> bool:
    """'skip the press shoulder is cranky': the part of the body begins what is said of it, and ends no name."""
    phrases = tongue.lexicon.phrases
    part = any(kind == "PART" for kind, _ in phrases.longest(words[:end], start)[1])
    return part and any(kind in ("PAIN", "BE", "FEEL") for kind, _ in phrases.longest(words, end)[1])


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


def _reports(tokens: list[Token], i: int) -> bool:
    """Whether a set starts here (140x3): then the word before the full stop was no 'number'."""
    return (
        i + 1 < len(tokens) and tokens[i].kind == "num" and tokens[i + 1].text in ("x", "kg", "kgs", "lb", "lbs", "for")
    )


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
        short = i > 0 and tokens[i - 1].text in _ABBREVIATED and not _reports(tokens, i + 1)
        closes = (after is None or not after.glued) and not short
        return Lexeme({"STOP" if closes else "DOT": 0}, token.start, token.end, ".", 0.0, token.glued)
    kind = _MARKS.get(token.text, "MARK")
    if token.text == ";" and token.glued and i + 1 < len(tokens) and tokens[i + 1].glued:
        kind = "COLON"
    return Lexeme({kind: 0}, token.start, token.end, token.text, 0.0, token.glued)
