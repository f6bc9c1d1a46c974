"""The pass of one message: kept first, worked once, in order; a failure touches nobody but its own message."""

import asyncio
import json
from collections.abc import AsyncIterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from bot.intake import TRIES, Intake
from bot.ports import RawUpdate
from bot.store import inbox as inbox_rows
from bot.store.tables import act, inbox, note, outbox, pending
from core.model.book import Book, Incoming, Pending
from core.model.outcome import Button, Given, Keep, Outcome, Replace, Reply
from core.model.reading import Ask, Option
from core.model.target import Target, TargetSet
from tests.bot.shell import CHANNEL, INES, MONDAY, RUTH, TOMAS, Shell, keeping, shell, squat, with_people

TODAY = MONDAY.date()


@pytest.fixture
async def room(each_store: str, tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        yield await with_people(opened)


async def reps_of(room: Shell, state: str = "kept") -> list[int]:
    rows = sorted(await room.rows(act), key=lambda row: (row.place, row.id))
    return [json.loads(row.body)["reps"] for row in rows if row.state == state]


async def test_a_message_is_kept_as_it_came_and_answered_in_its_chat(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8), text="Squat 60 kg: 8 reps.")
    assert await room.say(RUTH, "60x8") == ["Squat 60 kg: 8 reps."]
    (row,) = await room.rows(inbox)
    assert (row.state, row.message_id, row.reader, row.received) == ("done", 1, "test", MONDAY)
    assert json.loads(row.body)["text"] == "60x8"
    (kept,) = await room.rows(act)
    assert (kept.message, kept.origin, kept.on, kept.at, kept.state) == (row.seq, row.seq, TODAY, MONDAY, "kept")
    assert json.loads(kept.body) == {
        "act": "set",
        "exercise": "back-squat",
        "load": {"kind": "total", "kg": 60},
        "reps": 8,
    }
    (said,) = await room.rows(outbox)
    assert (said.state, said.reply_to, said.kind) == ("sent", row.seq, "reply")


async def test_a_redelivery_changes_nothing(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8))
    raw = room.raw(user=RUTH, text="60x8")
    await room.hear(raw, raw)
    await room.hear(raw)
    assert await reps_of(room) == [8]
    assert room.wire.texts(RUTH) == ["kept"]


async def test_the_same_update_id_on_another_channel_is_another_update(room: Shell) -> None:
    raw = room.raw(user=RUTH, text="hello")
    other = RawUpdate("elsewhere", raw.update_id, raw.chat, raw.body)
    await room.intake.keep((raw, other))
    assert len(await room.rows(inbox)) == 2


async def test_what_was_kept_but_not_worked_is_worked_after_a_restart(tmp_path: Path) -> None:
    async with shell(tmp_path) as before:
        await with_people(before)
        raw = before.raw(user=RUTH, text="60x8")
        await before.intake.keep((raw,))
    async with shell(tmp_path) as after:
        after.core.script["60x8"] = keeping(squat(8))
        await after.hear(raw)  # the channel gives it again, since it was never confirmed
        assert await reps_of(after) == [8]
        assert after.wire.texts(RUTH) == ["kept"]


async def test_what_was_answered_but_not_sent_is_sent_after_a_restart(tmp_path: Path) -> None:
    async with shell(tmp_path) as before:
        await with_people(before)
        await before.intake.keep((before.raw(user=RUTH, text="hello"),))
        await before.intake.settle()
        assert before.wire.sent == []
    async with shell(tmp_path) as after:
        await after.post.drain()
        assert after.wire.texts(RUTH) == ["heard hello"]


async def test_each_chat_is_worked_in_its_order(room: Shell) -> None:
    batch = [room.raw(user=user, text=f"{n}") for n in range(12) for user in (RUTH, TOMAS)]
    await room.hear(*batch)
    for chat in (RUTH, TOMAS):
        assert room.wire.texts(chat) == [f"heard {n}" for n in range(12)]


async def test_a_message_means_what_it_meant_when_it_came(room: Shell) -> None:
    """Worked hours later, it still counts for its own moment."""
    room.core.script["60x8"] = keeping(squat(8))
    await room.intake.keep((room.raw(user=RUTH, text="60x8"),))
    room.clock.move(hours=9)
    await room.settle()
    (kept,) = await room.rows(act)
    assert (kept.at, kept.on) == (MONDAY, TODAY)


async def test_a_message_that_cannot_be_worked_is_set_aside_and_its_sender_told(room: Shell) -> None:
    room.core.script |= {"boom": RuntimeError("quotes what was said: boom"), "60x8": keeping(squat(8))}
    await room.hear(room.raw(user=RUTH, text="boom"), room.raw(user=RUTH, text="60x8"), room.raw(user=TOMAS, text="hi"))
    assert [row.state for row in await room.rows(inbox)] == ["dead", "done", "done"]
    assert [row.attempts for row in await room.rows(inbox)] == [TRIES, 0, 0]
    sorry, kept = room.wire.texts(RUTH)
    assert "stumbled" in sorry
    assert kept == "kept"
    assert room.wire.texts(TOMAS) == ["heard hi"]


async def test_nothing_of_a_failed_message_stays(room: Shell) -> None:
    """The first act is written before the second one fails."""
    bad = Outcome(keep=(Keep(squat(8), TODAY),), replace=(Replace(4711, None),), replies=(Reply("never said"),))
    room.core.script["60x8"] = bad
    await room.say(RUTH, "60x8")
    assert await room.rows(act) == []
    assert "never said" not in room.wire.texts(RUTH)


async def test_a_bug_is_logged_without_its_words(room: Shell, capsys: pytest.CaptureFixture[str]) -> None:
    room.core.script["my secret ache"] = RuntimeError("my secret ache")
    await room.say(RUTH, "my secret ache")
    logged = capsys.readouterr().out
    assert logged.count("message_failed") == TRIES
    assert "RuntimeError" in logged
    assert "secret" not in logged


async def test_a_malformed_update_is_set_aside_and_the_rest_goes_on(room: Shell) -> None:
    bad = RawUpdate(CHANNEL, 500, RUTH, "{")
    await room.hear(bad, room.raw(user=RUTH, text="hello"))
    assert [row.state for row in await room.rows(inbox)] == ["aside", "done"]
    assert room.wire.texts(RUTH) == ["heard hello"]


async def test_half_characters_do_not_stop_a_message(room: Shell) -> None:
    room.core.script["half \ufffd"] = Outcome(replies=(Reply("heard"),), notes=("half \ufffd",))
    await room.say(RUTH, "half \ud83d")
    assert room.wire.texts(RUTH) == ["heard"]
    assert [row.text for row in await room.rows(note)] == ["half \ufffd"]


async def test_the_listener_persists_a_batch_before_it_asks_for_the_next(room: Shell) -> None:
    seen: list[int] = []

    class Source:
        async def updates(self) -> AsyncIterator[tuple[RawUpdate, ...]]:
            for n in range(3):
                seen.append(len(await room.rows(inbox)))
                yield (room.raw(user=RUTH, text=str(n)),)
            seen.append(len(await room.rows(inbox)))

    await room.intake.listen(Source())
    assert seen == [0, 1, 2, 3]


async def test_the_running_intake_works_what_was_there_and_what_comes(room: Shell) -> None:
    answers: asyncio.Queue[str] = asyncio.Queue()
    intake = Intake(room.store, room.parts, room.clock, lambda: answers.put_nowait(room.core.asked[-1][0].text))
    await intake.keep((room.raw(user=RUTH, text="before"),))
    running = asyncio.ensure_future(intake.run())
    async with asyncio.timeout(10):
        assert await answers.get() == "before"
        await intake.keep((room.raw(user=TOMAS, text="after"),))
        assert await answers.get() == "after"
        await intake.keep((room.raw(user=TOMAS, text="again"),))
        assert await answers.get() == "again"
    running.cancel()
    with pytest.raises(asyncio.CancelledError):
        await running


# What an answer changes


async def test_an_edit_supersedes_the_acts_of_its_message(room: Shell) -> None:
    room.core.script |= {"60x8": keeping(squat(8)), "60x9 65x3": keeping(squat(9), squat(3, 65.0))}
    await room.say(RUTH, "60x8", message_id=41)
    room.clock.move(minutes=5)
    await room.say(RUTH, "60x9 65x3", message_id=41, edit=True)
    assert await reps_of(room) == [9, 3]
    assert await reps_of(room, "amended") == [8]
    incoming, book = room.core.asked[-1]
    assert (incoming.number, incoming.edit) == (1, True)
    assert [(kept.message, kept.act.reps) for kept in book.kept] == [(1, 8)]  # type: ignore[union-attr]
    assert {row.at for row in await room.rows(act)} == {MONDAY}  # an edit does not move the set in time


async def test_an_edit_that_takes_all_back_leaves_nothing_standing(room: Shell) -> None:
    ask = Pending(Ask("load", (Option("60", (squat(8),)),)), 1, MONDAY, "How heavy?", "squat x 8")
    room.core.script["squat x 8"] = Outcome(keep=(Keep(squat(8), TODAY),), pending=ask, notes=("odd",))
    await room.say(RUTH, "squat x 8", message_id=41)
    assert len(await room.rows(pending)) == len(await room.rows(note)) == 1
    await room.say(RUTH, "never mind", message_id=41, edit=True)
    assert await reps_of(room) == []
    assert await room.rows(pending) == []
    assert await room.rows(note) == []


async def test_an_edit_of_a_message_that_we_never_had_is_a_new_message(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8))
    await room.say(RUTH, "60x8", message_id=41, edit=True)
    incoming, _ = room.core.asked[-1]
    assert (incoming.number, incoming.edit) == (1, False)
    assert await reps_of(room) == [8]


async def test_one_chats_message_ids_are_not_anothers(room: Shell) -> None:
    room.core.script |= {"60x8": keeping(squat(8)), "60x9": keeping(squat(9))}
    await room.say(RUTH, "60x8", message_id=41)
    await room.say(TOMAS, "60x9", message_id=41, edit=True)
    assert await reps_of(room) == [8, 9]


def amending(reps: int) -> object:
    """An answer that changes the last kept set."""

    def answer(_incoming: Incoming, book: Book, _now: object) -> Outcome:
        return Outcome(replace=(Replace(book.kept[-1].id, squat(reps)),), replies=(Reply("changed"),))

    return answer


async def test_an_amended_act_is_superseded_and_its_successor_takes_its_place(room: Shell) -> None:
    room.core.script |= {"two": keeping(squat(8), squat(7)), "6": amending(6), "third": keeping(squat(5))}
    await room.say(RUTH, "two")
    room.clock.move(minutes=3)
    await room.say(RUTH, "6")
    await room.say(RUTH, "third")
    assert await reps_of(room) == [8, 6, 5]
    assert await reps_of(room, "amended") == [7]
    by_reps = {json.loads(row.body)["reps"]: row for row in await room.rows(act)}
    old, new = by_reps[7], by_reps[6]
    assert (old.superseded_by, old.ended_by) == (new.id, 2)
    assert (new.message, new.origin, new.at, new.on) == (2, 1, old.at, old.on)


async def test_an_erased_act_stays_as_erased(room: Shell) -> None:
    room.core.script |= {
        "two": keeping(squat(8), squat(7)),
        "scrap": lambda _i, book, _n: Outcome(replace=(Replace(book.kept[-1].id, None),)),
    }
    await room.say(RUTH, "two")
    await room.say(RUTH, "scrap")
    assert (await reps_of(room), await reps_of(room, "erased")) == ([8], [7])


async def test_an_edited_correction_is_read_anew_on_the_set_as_it_was(room: Shell) -> None:
    room.core.script |= {"60x8": keeping(squat(8)), "make that 9": amending(9), "make that 10": amending(10)}
    await room.say(RUTH, "60x8")
    await room.say(RUTH, "make that 9", message_id=50)
    await room.say(RUTH, "make that 10", message_id=50, edit=True)
    assert [kept.act.reps for kept in room.core.asked[-1][1].kept] == [8]  # type: ignore[union-attr]
    assert await reps_of(room) == [10]
    await room.say(RUTH, "thanks", message_id=50, edit=True)
    assert await reps_of(room) == [8]


async def test_an_edited_erasure_brings_the_set_back(room: Shell) -> None:
    room.core.script |= {
        "60x8": keeping(squat(8)),
        "scrap": lambda _i, book, _n: Outcome(replace=(Replace(book.kept[-1].id, None),)),
    }
    await room.say(RUTH, "60x8")
    await room.say(RUTH, "scrap", message_id=50)
    assert await reps_of(room) == []
    await room.say(RUTH, "thanks", message_id=50, edit=True)
    assert await reps_of(room) == [8]


async def test_an_edit_of_the_first_message_also_supersedes_what_a_correction_made_of_it(room: Shell) -> None:
    room.core.script |= {"60x8": keeping(squat(8)), "9": amending(9), "60x12": keeping(squat(12))}
    await room.say(RUTH, "60x8", message_id=41)
    await room.say(RUTH, "9")
    await room.say(RUTH, "60x12", message_id=41, edit=True)
    assert await reps_of(room) == [12]


async def test_the_answer_to_a_question_belongs_to_the_message_that_raised_it(room: Shell) -> None:
    ask = Pending(Ask("load", (Option("60", (squat(8),)),)), 1, MONDAY, "How heavy?", "squat x 8")
    room.core.script |= {
        "squat x 8": Outcome(pending=ask, replies=(Reply("How heavy?", (Button("60", "a:1:0"),)),)),
        "": Outcome(keep=(Keep(squat(8), TODAY, message=1),), answered=True, replies=(Reply("kept"),)),
        "squat 60x7": keeping(squat(7)),
    }
    await room.say(RUTH, "squat x 8", message_id=41)
    assert room.wire.sent[-1].buttons == (("60", "a:1:0"),)
    await room.hear(room.raw(kind="press", user=RUTH, message_id=900, data="a:1:0", token="t"))
    incoming, book = room.core.asked[-1]
    assert incoming.press == "a:1:0"
    assert book.pending == ask
    assert await room.rows(pending) == []
    assert await reps_of(room) == [8]
    await room.say(RUTH, "squat 60x7", message_id=41, edit=True)
    assert await reps_of(room) == [7]


async def test_targets_come_back_as_given_last_and_one_can_be_taken_back(room: Shell) -> None:
    def target(reps: int) -> Target:
        return Target("reps", (TargetSet(squat(1).load, (reps, reps), 2.0, (2.0, None, 1.0, 0.0), 120.0),))

    room.core.script |= {
        "one": Outcome(given=(Given("back-squat", TODAY, target(8)), Given("dip", TODAY, target(5)))),
        "two": Outcome(given=(Given("back-squat", TODAY, target(9)), Given("dip", TODAY, None))),
    }
    for text in ("one", "two", "look"):
        await room.say(RUTH, text)
    assert room.core.asked[-1][1].targets == {"back-squat": target(9)}


async def test_what_is_no_text_is_named_and_one_lifters_book_is_not_anothers(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8))
    await room.say(RUTH, "60x8")
    body = {"is": "media", "chat": TOMAS, "user": TOMAS, "message_id": 3, "kind": "photo", "caption": "see"}
    await room.hear(RawUpdate(CHANNEL, 70, TOMAS, json.dumps(body)))
    incoming, book = room.core.asked[-1]
    assert (incoming.text, incoming.media, book.profile.name, book.kept) == ("see", "photo", "Tomas", ())


async def test_alerts_and_notes_reach_the_coach(room: Shell) -> None:
    room.core.script["chest"] = Outcome(
        replies=(Reply("Stop now."), Reply("Ruth reports chest pain.", to="coach", kind="alert")),
        notes=("and moonwalks",),
    )
    assert await room.say(RUTH, "chest") == ["Stop now."]
    alert, told = room.wire.texts(INES)
    assert alert == "Ruth reports chest pain."
    assert "Ruth" in told
    assert "and moonwalks" in told


async def test_recent_acts_are_in_the_book_and_old_ones_are_not(room: Shell) -> None:
    def on(days: int) -> date:
        return TODAY - timedelta(days=days)

    room.core.script |= {f"{days}": keeping(squat(days or 1), on=on(days)) for days in (0, 7, 8, 9)}
    for text in ("9", "8", "7", "0", "look"):
        await room.say(RUTH, text)
    assert sorted(kept.on for kept in room.core.asked[-1][1].kept) == [on(8), on(7), on(0)]


async def test_lanes_know_only_what_waits(room: Shell) -> None:
    await room.intake.keep((room.raw(user=RUTH, text="a"), room.raw(user=TOMAS, text="b")))
    assert await room.store.read(inbox_rows.waiting_lanes) == [(CHANNEL, RUTH), (CHANNEL, TOMAS)]
    await room.settle()
    assert await room.store.read(inbox_rows.waiting_lanes) == []
