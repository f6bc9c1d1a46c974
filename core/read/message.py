"""One message taken through every step, and its acts put in order. The only module here that knows all the others."""

from collections.abc import Sequence
from dataclasses import replace

from core.evidence.exercises import EXERCISES
from core.model.acts import Act, AsPlanned, Begin, Finish, Next, SetAct, Skip, Span, Swap
from core.model.reading import About, Ask, Option, Reading, Setting
from core.read.amends import Amender
from core.read.attach import attach
from core.read.belief import believable, chatters, prune, reports
from core.read.days import Spans, day_at, days
from core.read.doubts import Doubt
from core.read.erasing import erasures, taken_back
from core.read.flow import FLOWING, Flow
from core.read.flowed import Flowed, one_of, varied
from core.read.forming import Atomiser
from core.read.grammar import parse
from core.read.groups import Parsed, leads_with_load
from core.read.labels import label
from core.read.lexemes import mark
from core.read.loads import PLATES_ONLY, is_barbell, outside
from core.read.modifiers import remarks
from core.read.moods import mark_undone
from core.read.names import Mention
from core.read.remark import Remark
from core.read.settle import Settler
from core.read.stream import Stream
from core.read.stretches import Stretch, sentences_of, stretches
from core.read.symptoms import symptoms
from core.read.ticks import drop_addresses, drop_labels, unticked
from core.read.unnamed import nothing_to_change, unnamed
from core.read.words.languages import language


def _which_one(flowed: Flowed) -> Doubt:
    """A flow act whose exercise is not settled, with the acts that the names could make of it."""
    doubt = Doubt("exercise")
    for one in flowed.unsure.ids if flowed.unsure is not None else ():
        act = flowed.act
        if isinstance(act, Swap):
            act = replace(act, to=one) if act.to is None else replace(act, from_=one)
        elif isinstance(act, Skip | AsPlanned):
            act = replace(act, exercise=one)
        doubt.readings.append((EXERCISES[one].name, [act]))
    return doubt


MOST_LEXEMES = 1200
"""A message of more pieces than this is no report that a person types (4,096 characters are about 900 words): it is
asked about, and only signs of alarm are read in it."""
TICKING = frozenset({"TICK", "CROSS", "OPEN"})
ERASING = frozenset({"ERASE", "TAKE"})
DATED = frozenset({"DAY", "WEEKDAY", "DAYSAGO"})
AMENDING = frozenset({"AMEND", "NOTWORD", "LAST", "THAT", "CLEARIT"})
POSTURES = frozenset({"seated", "standing", "lying"})
"""How one sits or stands, said away from the name, can make it another exercise."""
MOST_OPTIONS = 6
"""A question offers at most so many answers."""


class Message:
    """Reads one message with its setting."""

    def __init__(self, text: str, setting: Setting) -> None:
        self._setting = setting
        tongue = language(setting.language)
        self._names = tongue.names
        self._concepts = tongue.lexicon.concepts
        self._frames = tongue.frames
        self.stream = Stream(text, mark(tongue.tokens(text), tongue), own=tongue.own)
        self.undone: set[int] = set()
        self.trace: list[tuple[str, str]] = []
        self._acts: list[tuple[int, int, Act]] = []
        self._doubts: list[tuple[int, Doubt, str | None]] = []
        self._order: dict[str, int] = {}

    def reading(self) -> Reading:
        """The acts, the question, the leftovers."""
        s = self.stream
        if s.says(TICKING) or any(lexeme.is_word("done") for lexeme in s.all):
            s.use(unticked(s))
        for heard in symptoms(s, self._frames):
            self._keep(heard.at, heard.act)
        if len(s) > MOST_LEXEMES:
            self._doubts.append((0, Doubt("meaning"), None))
            return self._joined()
        self.undone = mark_undone(s)
        for corrected in erasures(s, self.undone) if s.says(ERASING) else ():
            self._keep(corrected.at, corrected.act)
        for flowed in Flow(s, self._setting, self.undone).read() if s.says(FLOWING) else ():
            if flowed.unsure is None:
                self._keep(flowed.at, flowed.act)
            else:
                self._doubts.append((flowed.at, _which_one(flowed), None))
        drop_labels_after = self._amends_possible()
        spans = days(s, self._setting, self.undone) if s.says(DATED) else []
        s.use(self.undone)
        drop_addresses(s)
        said = remarks(s)
        if drop_labels_after:
            self._amend(said)
        drop_labels(s)
        self._sets(said, spans)
        return self._joined()

    def _keep(self, at: int, act: Act, *, order: int | None = None) -> None:
        if isinstance(act, AsPlanned | Begin | Finish | Next | Skip) and any(
            type(kept) is type(act) and replace(kept, span=None) == replace(act, span=None) for _, _, kept in self._acts
        ):
            return
        if isinstance(act, Swap):
            self._acts = [
                kept for kept in self._acts if not (isinstance(kept[2], Skip) and kept[2].exercise == act.from_)
            ]
        self._acts.append((at if order is None else order, len(self._acts), act))

    def _amends_possible(self) -> bool:
        return self.stream.says(AMENDING)

    def _amend(self, said: list[Remark]) -> None:
        s = self.stream
        used = {i for remark in said for i in range(remark.first, remark.last + 1)}
        s.used -= used
        for corrected in Amender(s, said, self._setting, self.undone).read():
            self._keep(corrected.at, corrected.act)
        taken = set(s.used)
        said[:] = [remark for remark in said if remark.first not in taken]
        s.use(i for remark in said for i in range(remark.first, remark.last + 1))

    # sets

    def _sets(self, said: list[Remark], spans: Spans) -> None:
        s = self.stream
        atomiser = Atomiser(s, said)
        known = self._unnamed() is not None
        found = stretches(s, known=known)
        for stretch in found:
            self._hush(atomiser, stretch, alone=all(one.mention is None for one in found))
        parts = [(stretch, self._parse(atomiser, stretch)) for stretch in found]
        self._share_rounds(parts)
        for stretch, parsed in parts:
            if not any(group.reps or group.like or group.load for group in parsed.groups):
                continue
            if believable(s, stretch, parsed, known=known) and not nothing_to_change(s, self._setting, stretch):
                self._settle(stretch, parsed, spans)

    def _hush(self, atomiser: Atomiser, stretch: Stretch, *, alone: bool) -> None:
        """A sentence of chat beside a report counts nothing: each is weighed as if it stood alone.

        ``alone``: nothing in the message is named; then only what comes before a plain report is beside it.
        """
        s = self.stream
        sentences = sentences_of(s, stretch)
        if alone and len(sentences) == 1 and sentences[0][0] == stretch.ranges[0][0]:
            return  # nothing is beside it

        def parsed(first: int, last: int) -> Parsed:
            return parse(atomiser.atoms(first, last), named=False)

        if alone:
            plain = next((n for n, one in enumerate(sentences) if reports(s, *one, parsed)), None)
            if plain is not None and all(chatters(s, *one, parsed) for one in sentences[:plain]):
                stretch.ranges = [(sentences[plain][0], stretch.ranges[-1][1])]
            return
        for first, last in [one for one in sentences if chatters(s, *one, parsed)]:
            s.use(range(first, last))

    def _parse(self, atomiser: Atomiser, stretch: Stretch) -> Parsed:
        sided = self._sided(stretch)
        ids = stretch.mention.ids if stretch.mention is not None else (self._unnamed() or "",)
        barred = all(is_barbell(one) or one in PLATES_ONLY for one in ids)
        atoms = [
            atom for first, last in stretch.ranges for atom in atomiser.atoms(first, last, sided=sided, barred=barred)
        ]
        loaded = all(one in EXERCISES and outside(EXERCISES[one]) for one in ids)
        parsed = parse(atoms, named=stretch.mention is not None, loaded=loaded)
        held = any(one in EXERCISES and EXERCISES[one].pattern in ("hold", "carry") for one in ids)
        prune(self.stream, stretch, parsed, held=held)
        return parsed

    def _sided(self, stretch: Stretch) -> bool:
        """Whether the exercise is done one side at a time."""
        if stretch.mention is None:
            alone = self._unnamed()
            return alone is not None and EXERCISES[alone].default_side is not None
        ids = stretch.mention.ids
        return all(EXERCISES[one].default_side is not None for one in ids)

    def _share_rounds(self, parts: list[tuple[Stretch, Parsed]]) -> None:
        """Rounds said once, before or behind several exercises, count for all of them."""
        counting = [parsed for _, parsed in parts if any(group.reps for group in parsed.groups)]
        rounds = next((parsed.rounds for _, parsed in parts if parsed.rounds), None)
        if rounds is None and len(counting) > 1 and any(lexeme.has("ROUNDHEAD") for lexeme in self.stream.all):
            behind = counting[-1].groups[-1].sets if counting[-1].groups else None
            rounds = behind if all(group.sets is None for parsed in counting[:-1] for group in parsed.groups) else None
        if rounds is None or len(counting) < 2:
            return
        for parsed in counting:
            for group in parsed.groups:
                if group.sets is None and len(group.reps) - leads_with_load(group) == 1:
                    group.sets = rounds

    def _unnamed(self) -> str | None:
        """The exercise of a set that names none."""
        return unnamed(self.stream, self._setting)

    def _candidates(self, stretch: Stretch, parsed: Parsed) -> tuple[str, ...]:
        """The exercises that the stretch can be of: one, several to ask about, or none known."""
        mention, s = stretch.mention, self.stream
        if mention is None:
            inside = [i for first, last in stretch.ranges for i in range(first, last)]
            alone = self._unnamed()
            return () if alone is None or parsed.unknown_name else (varied(alone, s, inside) or alone,)
        one = one_of(mention, self._setting)
        if one is not None:
            return (self._variant(one, mention, stretch),)
        told = self._qualified(mention, stretch)
        return (told,) if told is not None else self._by_load(mention, parsed)

    def _qualified(self, mention: Mention, stretch: Stretch) -> str | None:
        """A name that fits several, with the word elsewhere that settles it (calf raises 60kg standing)."""
        found: set[str] = set()
        for i in (k for first, last in stretch.ranges for k in range(first, last)):
            concept = self._concepts.get(self.stream.all[i].text)
            twin = self._names.by_words.get(mention.words | {concept}) if concept is not None else None
            if twin is not None and len(twin.ids) == 1 and concept not in mention.words:
                found.add(twin.ids[0])
        return found.pop() if len(found) == 1 else None

    def _variant(self, exercise: str, mention: Mention, stretch: Stretch) -> str:
        """What is said away from the name and makes it another: dumbbells, feet on a box, knees."""
        s = self.stream
        inside = [i for first, last in stretch.ranges for i in range(first, last)]
        other = varied(exercise, s, inside)
        if other is not None:
            return other
        posture = next((self._concepts[s.all[i].text] for i in inside if s.all[i].text in POSTURES), None)
        if posture is not None and posture not in mention.words:
            twin = self._names.by_words.get(mention.words | {posture})
            if twin is not None and len(twin.ids) == 1:
                return twin.ids[0]
        many = any(s.all[i].has("IMPL") and s.all[i].is_word("several") for i in inside)
        if many and EXERCISES[exercise].load_kind == "total" and "barbell" not in mention.words:
            twin = self._names.by_words.get(mention.words | {"dumbbell"})
            if twin is not None and len(twin.ids) == 1 and EXERCISES[twin.ids[0]].load_kind == "per_hand":
                return twin.ids[0]
        return exercise

    def _by_load(self, mention: Mention, parsed: Parsed) -> tuple[str, ...]:
        """Dumbbell loads in the plural make curls, shrugs and lunges those done with dumbbells."""
        plural = any(
            (group.load is not None and (group.load.plural or group.load.way == "per_hand")) or group.lead_plural
            for group in parsed.groups
        )
        if not plural:
            return mention.ids
        for dumbbell in ("dumbbell-curl", "shrug-dumbbell"):
            if dumbbell in mention.ids:
                return (dumbbell,)
        by_hand = tuple(one for one in mention.ids if EXERCISES[one].load_kind == "per_hand")
        return by_hand or mention.ids

    def _settle(self, stretch: Stretch, parsed: Parsed, spans: Spans) -> None:
        s = self.stream
        named = self._candidates(stretch, parsed)
        self.trace.append((s.text[slice(*s.span(stretch.ranges[0][0], stretch.ranges[-1][1] - 1))], " ".join(named)))
        start = stretch.ranges[0][0]
        if len(named) != 1:
            doubt = Doubt("exercise")
            for one in named[:MOST_OPTIONS]:
                acts = self._read_as(one, parsed.copy(), spans)
                if not isinstance(acts, Doubt):
                    doubt.readings.append((EXERCISES[one].name, acts))
            self._doubts.append((start, doubt, None))
            return
        began = parsed.groups[0].first if parsed.groups else start
        acts = self._read_as(named[0], parsed, spans)
        if isinstance(acts, Doubt):
            self._doubts.append((start, acts, named[0]))
            return
        order = self._order.setdefault(named[0], min(began, stretch.at) if stretch.mention is not None else began)
        for act in acts:
            self._keep(began, act, order=order)

    def _read_as(self, exercise: str, parsed: Parsed, spans: Spans) -> list[SetAct] | Doubt:
        """The acts of the stretch as of this exercise; ``parsed`` is settled on the way and is no one else's after."""
        settled = Settler(parsed, exercise, self._setting).settle()
        if settled.doubt is not None:
            done = [
                (told, self._finished(exercise, [act for act in acts if isinstance(act, SetAct)], parsed, spans))
                for told, acts in settled.doubt.readings
            ]
            return Doubt(settled.doubt.about, [(told, acts) for told, acts in done])
        tagged = [
            [replace(act, span=self._span(parsed, n), day=day_at(spans, parsed.groups[n].first)) for act in acts]
            for n, acts in enumerate(settled.sets)
        ]
        return self._finished(exercise, attach(parsed, tagged, EXERCISES[exercise]), parsed, spans)

    def _span(self, parsed: Parsed, n: int) -> Span:
        group = parsed.groups[n]
        return self.stream.span(group.first, group.last)

    def _finished(self, exercise: str, acts: list[SetAct], parsed: Parsed, spans: Spans) -> list[SetAct]:
        side = EXERCISES[exercise].default_side
        first = parsed.groups[0].first if parsed.groups else 0
        span = self.stream.span(first, parsed.groups[-1].last) if parsed.groups else None
        day = day_at(spans, first)
        return [
            replace(act, side=act.side or side, span=act.span or span, day=act.day or day)
            if (side and not act.side) or not act.span or (day and not act.day)
            else act
            for act in acts
        ]

    # the whole

    def _joined(self) -> Reading:
        acts = taken_back(tuple(act for _, _, act in sorted(self._acts, key=lambda kept: kept[:2])))
        ask = self._ask()
        return Reading(acts, ask, self._leftovers(acts))

    def _ask(self) -> Ask | None:
        if not self._doubts:
            return None
        rank: dict[About, int] = {"exercise": 0, "numbers": 1, "load": 2, "reps": 3, "meaning": 4}
        _, doubt, _ = min(self._doubts, key=lambda found: (rank[found[1].about], found[0]))
        options = tuple(
            Option(told or self._label(sets), tuple(sets)) for told, sets in doubt.readings[:MOST_OPTIONS] if sets
        )
        return Ask(doubt.about, options)

    def _label(self, acts: Sequence[Act]) -> str:
        """What an answer would record, in figures: 3 x 8, 60 kg."""
        return label(tuple(act for act in acts if isinstance(act, SetAct)), self._setting.unit)

    def _leftovers(self, acts: tuple[Act, ...]) -> tuple[Span, ...]:
        spans = [act.span for act in acts if act.span is not None]
        out: list[Span] = []
        for lexeme in self.stream.all:
            if "WORD" not in lexeme.k or any(a <= lexeme.start < b for a, b in spans):
                continue
            if out and not self.stream.text[out[-1][1] : lexeme.start].strip():
                out[-1] = (out[-1][0], lexeme.end)
            else:
                out.append((lexeme.start, lexeme.end))
        return tuple(out)
