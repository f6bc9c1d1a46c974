"""The terminal: every line is a message, every reply is printed, answers are pressed by number or by their words."""

import io
from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from sqlalchemy import Connection

from bot.channels import screen
from bot.channels.terminal import NAME, Buttons, Seat, Terminal, open_update
from bot.desk.seats import sit_down
from bot.ports import Malformed, Opened, Parcel, Press, RawUpdate, StoreError, Words
from bot.store import people
from bot.store.tables import person
from tests.bot.shell import INES, MONDAY, Shell, shell, with_people

YES_NO: Buttons = (("one set of 10", "a:1:0"), ("ten sets", "a:1:1"))


class Typed:
    """Lines typed one after the other; before a line, what the service says."""

    def __init__(self, *lines: str) -> None:
        self.lines = lines
        self.shown: list[tuple[str, Buttons]] = []
        self.says: dict[int, Parcel] = {}
        self.here: Terminal | None = None

    async def source(self) -> AsyncIterator[str]:
        for number, line in enumerate(self.lines):
            if number in self.says and self.here is not None:
                await self.here.send(self.says[number])
            yield line

    async def opened(self, seat: Seat, first: int = 1) -> list[Opened]:
        self.here = Terminal(seat, self.source(), lambda text, buttons: self.shown.append((text, buttons)), first)
        return [self.here.open(raw) async for batch in self.here.updates() for raw in batch]


async def test_every_line_is_a_message_of_the_one_who_sits_there() -> None:
    opened = await Typed("60x8", "", "  two words ").opened(Seat(7, 7), first=40)
    assert opened == [Words(7, 7, 40, "60x8"), Words(7, 7, 41, ""), Words(7, 7, 42, "  two words ")]


@pytest.mark.parametrize(
    ("typed", "data"),
    [("1", "a:1:0"), ("[2]", "a:1:1"), (" 2 ", "a:1:1"), ("Ten Sets", "a:1:1"), ("one set of 10", "a:1:0")],
)
async def test_an_answer_is_pressed_by_its_number_or_its_words(typed: str, data: str) -> None:
    talk = Typed("10x10", typed)
    talk.says[1] = Parcel(7, "Two ways to read that:", YES_NO)
    _, pressed = await talk.opened(Seat(7, 7))
    assert isinstance(pressed, Press)
    assert pressed.data == data
    assert talk.shown == [("Two ways to read that:", YES_NO)]


@pytest.mark.parametrize("typed", ["3", "0", "12", "sets", ""])
async def test_anything_else_is_text(typed: str) -> None:
    talk = Typed("10x10", typed)
    talk.says[1] = Parcel(7, "Two ways to read that:", YES_NO)
    assert (await talk.opened(Seat(7, 7)))[1] == Words(7, 7, 2, typed)


async def test_answers_are_offered_for_the_next_line_only() -> None:
    talk = Typed("10x10", "hm", "1")
    talk.says[1] = Parcel(7, "Two ways to read that:", YES_NO)
    assert (await talk.opened(Seat(7, 7)))[2] == Words(7, 7, 3, "1")


async def test_in_a_group_a_line_is_the_first_members_or_the_named_ones() -> None:
    seat = Seat(-3, 7, private=False, members={"Ruth": 7, "Tomas": 8})
    opened = await Typed("60x8", "tomas: 60x9", "Ruth : hi: there", "note: nobody").opened(seat)
    assert [(one.user, one.text) for one in opened if isinstance(one, Words)] == [
        (7, "60x8"),
        (8, "60x9"),
        (7, "hi: there"),
        (7, "note: nobody"),
    ]
    assert {one.private for one in opened if isinstance(one, Words)} == {False}


@pytest.mark.parametrize(
    "body", ["", "{", "[]", "{}", '{"user": "x", "private": true, "message": 1, "text": ""}', "null"]
)
def test_a_line_that_is_not_one_is_malformed(body: str) -> None:
    assert isinstance(open_update(RawUpdate(NAME, 1, 7, body)), Malformed)


async def test_lines_through_a_pipe_end_with_the_input() -> None:
    source = io.StringIO("one\r\ntwo\n\nlast without end")
    assert [line async for line in screen.piped_lines(source)] == ["one", "two", "", "last without end"]


def test_plain_lines_number_the_answers(capsys: pytest.CaptureFixture[str]) -> None:
    screen.show_plain("Two ways:", YES_NO)
    assert capsys.readouterr().out == "Two ways:\n[1] one set of 10\n[2] ten sets\n"


def test_a_watched_reply_shows_brackets_and_marks_as_they_are(capsys: pytest.CaptureFixture[str]) -> None:
    screen.show_rich("60 kg [bold] :smile: 8", YES_NO)
    out = capsys.readouterr().out
    assert "60 kg [bold] :smile: 8" in out
    assert "[2] ten sets" in out


# Who sits there


@pytest.fixture
async def room(tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        await with_people(opened)

        def group(conn: Connection) -> None:
            members = [one.id for one in people.lifters(conn)]
            people.add_group(conn, "Early Birds", people.coaches(conn)[0].id, members)

        await opened.store.write(group)
        yield opened


@pytest.mark.parametrize(
    ("name", "who"), [("Ruth", "Ruth"), ("tomas", "Tomas"), ("coach", "Ines"), (str(INES), "Ines")]
)
async def test_a_name_is_a_persons(room: Shell, name: str, who: str) -> None:
    first = await room.store.write(lambda conn: sit_down(conn, NAME, name))
    again = await room.store.write(lambda conn: sit_down(conn, NAME, name))
    assert first == again
    assert (first.name, first.private, first.known) == (who, True, True)
    known = await room.store.read(lambda conn: people.by_user(conn, NAME, first.user))
    assert known is not None
    assert known.name == who


@pytest.mark.parametrize("name", ["early birds", "group"])
async def test_a_name_is_a_groups(room: Shell, name: str) -> None:
    sitting = await room.store.write(lambda conn: sit_down(conn, NAME, name))
    assert (list(sitting.members), sitting.private) == (["Ruth", "Tomas"], False)
    assert sitting.user == sitting.members["Ruth"]
    chat = await room.store.read(lambda conn: people.chat_of(conn, NAME, sitting.chat))
    assert chat is not None
    assert (chat.person, chat.crew) == (None, 1)


async def test_an_unknown_name_is_a_newcomer_and_leaves_no_trace(room: Shell) -> None:
    sitting = await room.store.write(lambda conn: sit_down(conn, NAME, "Zebulon"))
    other = await room.store.write(lambda conn: sit_down(conn, NAME, "Quill"))
    assert not sitting.known
    assert sitting.user != other.user
    assert len(await room.rows(person)) == 3


async def test_a_name_that_several_have_asks_for_a_number(room: Shell) -> None:
    await room.store.write(lambda conn: people.add(conn, "Ruth", "UTC", MONDAY))
    with pytest.raises(StoreError, match=r"2, 4"):
        await room.store.write(lambda conn: sit_down(conn, NAME, "ruth"))


async def test_an_empty_group_is_refused_in_words(room: Shell) -> None:
    await room.store.write(lambda conn: people.add_group(conn, "Nobodies", 1, []))
    with pytest.raises(StoreError, match="nobody takes part"):
        await room.store.write(lambda conn: sit_down(conn, NAME, "Nobodies"))
