"""What became of every message: kept once, answered, told twice or not. Reads the store and what the chats show."""

import json
from collections import Counter
from dataclasses import dataclass

from sqlalchemy import Connection, select

from bot.store.engine import Store
from bot.store.tables import act, address, inbox, outbox
from tests.faults.gym import CHANNEL, Gym


@dataclass(frozen=True)
class Account:
    """The sum of a trial. All but ``told_twice`` and ``doubtful`` must be 0 at its end."""

    messages: int
    lost: int
    """Reports that the records do not hold."""
    kept_twice: int
    out_of_order: int
    """Lifters whose records are in another order than their messages."""
    unanswered: int
    """Messages without an answer that the chat shows."""
    told_twice: int
    """Times that a chat shows an answer beyond the first."""
    doubtful: int
    """Sends of which the service does not know whether they arrived."""

    @property
    def well(self) -> bool:
        """Nothing lost, nothing twice in the records, everyone answered."""
        return not (self.lost or self.kept_twice or self.out_of_order or self.unanswered)


async def account(gym: Gym) -> Account:
    """Count everything as it stands now."""
    async with await Store.open(gym.url, hold=False, create=False) as store:
        kept, answers = await store.read(lambda conn: (_sets(conn), _answers(conn)))
        doubtful = await store.read(
            lambda conn: len(conn.execute(select(outbox.c.seq).where(outbox.c.attempts > 0)).all())
        )
    expected: dict[int, list[tuple[float, int]]] = {}
    for report in sorted(gym.pushed, key=lambda one: one.number):
        expected.setdefault(report.chat, []).append((report.kg, report.reps))
    lost = twice = disorder = 0
    for chat, wanted in expected.items():
        there = kept.get(chat, [])
        lost += (Counter(wanted) - Counter(there)).total()
        twice += (Counter(there) - Counter(wanted)).total()
        disorder += there != wanted and Counter(there) == Counter(wanted)
    shown = Counter((one.chat, one.text) for one in gym.api.sent)
    meant = Counter((chat, words) for _, chat, words in answers)
    answered = {seq for seq, _, _ in answers} - {seq for seq, chat, words in answers if not shown[chat, words]}
    return Account(
        messages=len(gym.pushed),
        lost=lost,
        kept_twice=twice,
        out_of_order=disorder,
        unanswered=len(gym.pushed) - len(answered),
        told_twice=sum(max(0, times - meant[what]) for what, times in shown.items() if what in meant),
        doubtful=doubtful,
    )


def _sets(conn: Connection) -> dict[int, list[tuple[float, int]]]:
    """Each lifter's standing sets, in the order of the records."""
    query = select(address.c.user, act.c.body).join(address, address.c.person == act.c.person)
    query = query.where(address.c.channel == CHANNEL, act.c.kind == "set", act.c.state == "kept")
    found: dict[int, list[tuple[float, int]]] = {}
    for user, body in conn.execute(query.order_by(act.c.message, act.c.place)):
        one = json.loads(body)
        found.setdefault(user, []).append((one["load"]["kg"], one["reps"]))
    return found


def _answers(conn: Connection) -> list[tuple[int, int, str]]:
    """Each answer to a message: its number, its chat, the words."""
    query = select(inbox.c.seq, inbox.c.chat, outbox.c.text).join(outbox, outbox.c.reply_to == inbox.c.seq)
    return [(seq, chat, words) for seq, chat, words in conn.execute(query.where(inbox.c.channel == CHANNEL))]
