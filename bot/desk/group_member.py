"""One member's words about one challenge: in, out, a pause, a name, how it stands. Each gives its answer."""

from collections.abc import Callable, Mapping

from bot.desk import group_posts, group_words
from bot.desk.rooms import Case
from bot.store import challenges, people
from bot.store.challenges import Open
from bot.store.people import Person
from core.challenge.spoken import NAME_LETTERS, Joining, Kind, Spoken, joining_of, same_name, shown_name
from core.model.challenge import Entrant


class Member:
    """One member's words about one challenge."""

    def __init__(self, case: Case, found: Open, who: Person, name: str) -> None:
        self._case, self._found, self._who, self._name = case, found, who, name
        self._today = case.now.astimezone(people.profile(case.conn, who.id).zone).date()
        self._voice = group_words.voice(found)

    def does(self, said: Spoken) -> str:
        """What was said is done; gives the answer."""
        acts: Mapping[Kind, Callable[[], str]] = {
            "join": lambda: self.join(joining_of(said.rest, self._found.noun.teams)),
            "leave": self.leave,
            "pause": self.pause,
            "back": self.back,
            "standings": self._standings,
        }
        return acts[said.kind]()

    def join(self, wanted: Joining) -> str:
        """Take part, or change the name that is shown."""
        noun, conn, key = self._found.noun, self._case.conn, self._found.id
        was = challenges.entrant_of(conn, key, self._who.id)
        shown = wanted.shown or (was.shown if was else self._own_name())
        team = wanted.team or (was.team if was else None)
        others = [one for one, _ in challenges.entrants(conn, key) if one.who != self._who.id]
        if len(shown) > NAME_LETTERS:
            return self._voice.say("group.name.long", most=NAME_LETTERS)
        if any(same_name(shown, one.shown) for one in others):
            return self._voice.say("group.name.taken", name=shown)
        if noun.teams and team is None:
            return self._voice.say("group.team.which", list=self._voice.listed(list(noun.teams)))
        if was is not None and _is_in(was):
            challenges.show(conn, key, self._who.id, shown, team)
            same = (shown, team) == (was.shown, was.team)
            return self._voice.say("group.joined.again" if same else "group.named", name=shown)
        challenges.enter(conn, key, self._who.id, shown, team, self._today)
        challenges.in_group(conn, self._found.chat, self._who.id)
        return group_words.joined(self._voice, noun, shown, self._today)

    def _own_name(self) -> str:
        """The name that the chat world shows anyway, else a number: what a coach calls someone is not for the group."""
        name = shown_name(self._name)[:NAME_LETTERS].strip()
        return name or f"Member {len(challenges.entrants(self._case.conn, self._found.id)) + 1}"

    def leave(self) -> str:
        """Take part no longer."""
        was = challenges.entrant_of(self._case.conn, self._found.id, self._who.id)
        left = challenges.leave(self._case.conn, self._found.id, self._who.id, self._today)
        return self._voice.say("group.left", name=was.shown) if left and was else self._voice.say("group.left.not")

    def pause(self) -> str:
        """No chances from tomorrow on."""
        was = challenges.entrant_of(self._case.conn, self._found.id, self._who.id)
        if was is None or not _is_in(was):
            return self._voice.say("group.left.not")
        challenges.pause(self._case.conn, self._found.id, self._who.id, self._today)
        return self._voice.say("group.paused", name=was.shown)

    def back(self) -> str:
        """The pause is over."""
        was = challenges.entrant_of(self._case.conn, self._found.id, self._who.id)
        over = challenges.back(self._case.conn, self._found.id, self._who.id, self._today)
        return self._voice.say("group.back", name=was.shown) if over and was else self._voice.say("group.pause.not")

    def _standings(self) -> str:
        return group_posts.now_standing(self._case.conn, self._case.parts, self._found, self._case.now)


def _is_in(one: Entrant) -> bool:
    return any(stay.until is None for stay in one.stays)
