"""One raw update in, one value out. The shapes are those of the Bot API (core.telegram.org/bots/api, from memory)."""

import json
from typing import Any

import pytest

from bot.channels.telegram import COMMANDS
from bot.channels.telegram_shape import OURS, Me, next_offset, open_update, raw_update
from bot.ports import Back, Gone, Malformed, Media, Nothing, Opened, Press, Renamed, Words
from core.challenge.spoken import spoken
from tests.bot.api_updates import BOT_ID, USERNAME, edit, membership, message, press, text, us, user

ME = Me(BOT_ID, USERNAME)
GROUP = -1009000001
ANN = 1000001


def opened(update: object, me: Me = ME) -> Opened:
    return open_update(json.dumps(update), me)


def words(update: object, me: Me = ME) -> Words:
    found = opened(update, me)
    assert isinstance(found, Words), found
    return found


def test_words_in_a_private_chat() -> None:
    sender = user(ANN, first_name="Ann", last_name="Q", language_code="de")
    update = {"message": {**text(ANN, "squat 60x8", 7)["message"], "from": sender}}
    assert words(update) == Words(chat=ANN, user=ANN, message_id=7, text="squat 60x8", name="Ann Q", language="de")


def test_an_edit_names_the_message_it_changes() -> None:
    found = words(edit(ANN, "squat 60x9", 7))
    assert (found.edit, found.message_id, found.text) == (True, 7, "squat 60x9")


@pytest.mark.parametrize(
    ("said", "understood", "address"),
    [
        ("morning all", "morning all", False),
        ("/next", "/next", True),
        (f"/next@{USERNAME}", "/next", True),
        (f"/start@{USERNAME} CoDe", "/start CoDe", True),
        (f"/next@{USERNAME.upper()} please", "/next please", True),
        ("/next@another_bot", "/next@another_bot", False),
        ("/roll 20", "/roll 20", False),
        (f"/roll@{USERNAME} 20", "/roll 20", True),
        (f"@{USERNAME} squat 60x8", "squat 60x8", True),
        (f"@{USERNAME.title()}, squat 60x8", "squat 60x8", True),
        (f"squat 60x8 @{USERNAME}", "squat 60x8", True),
        (f"squat 60x8\n@{USERNAME}\nbench 40x8", "squat 60x8\n \nbench 40x8", True),
        (f"write to me@{USERNAME}", f"write to me@{USERNAME}", False),
        (f"@{USERNAME}2 squat 60x8", f"@{USERNAME}2 squat 60x8", False),
        ("60 / 8", "60 / 8", False),
    ],
)
def test_in_a_group_only_what_is_said_to_us_is_for_us(said: str, understood: str, *, address: bool) -> None:
    found = words(text(GROUP, said, sender=ANN))
    assert (found.text, found.address, found.private, found.user) == (understood, address, False, ANN)


def test_a_reply_to_us_is_said_to_us() -> None:
    ours = {"message_id": 3, "date": 0, "chat": {"id": GROUP, "type": "supergroup"}, "from": us()}
    theirs = {**ours, "from": user(7)}
    topic_root = {**ours, "forum_topic_created": {"name": "Week", "icon_color": 0}}
    said = [words(text(GROUP, "60x8", sender=ANN, reply_to_message=root)) for root in (ours, theirs, topic_root)]
    assert [found.address for found in said] == [True, False, False]


def test_a_mention_by_name_needs_no_username() -> None:
    entity = {"type": "text_mention", "offset": 0, "length": 4, "user": us()}
    assert words(text(GROUP, "Test 60x8", sender=ANN, entities=[entity])).address


def test_before_we_know_our_name_no_mention_is_dropped() -> None:
    stranger = Me(BOT_ID)
    entity = {"type": "mention", "offset": 0, "length": 5}
    assert words(text(GROUP, "@some 60x8", sender=ANN, entities=[entity]), stranger).address
    assert words(text(GROUP, "/next@some", sender=ANN), stranger).address
    assert not words(text(GROUP, "hello", sender=ANN), stranger).address


def test_a_thread_counts_only_in_a_forum() -> None:
    assert words(text(GROUP, "/next", sender=ANN, message_thread_id=5, is_topic_message=True)).thread == 5
    assert words(text(GROUP, "/next", sender=ANN, message_thread_id=5)).thread is None


@pytest.mark.parametrize("kind", ["photo", "voice", "sticker", "location", "document"])
def test_media_say_their_kind(kind: str) -> None:
    held: dict[str, Any] = {kind: {"file_id": "x"}}
    assert opened(message(ANN, 4, caption="look", **held)) == Media(
        chat=ANN, user=ANN, message_id=4, kind=kind, caption="look"
    )


def test_an_animation_is_no_document() -> None:
    found = opened(message(ANN, 4, animation={}, document={}))
    assert isinstance(found, Media)
    assert found.kind == "animation"


def test_media_in_a_group_are_ours_only_when_said_to_us() -> None:
    assert opened(message(GROUP, sender=ANN, photo=[{}])) == Nothing()
    captioned = opened(message(GROUP, sender=ANN, photo=[{}], caption=f"@{USERNAME} my form"))
    assert captioned == Media(chat=GROUP, user=ANN, message_id=1, kind="photo", caption="my form", private=False)


def test_a_moving_live_location_is_no_news_but_a_changed_caption_is() -> None:
    def edited(**more: Any) -> Opened:
        return opened({"edited_message": message(ANN, **more)["message"]})

    assert edited(location={"latitude": 1, "longitude": 2}) == Nothing()
    assert isinstance(edited(photo=[{}], caption="60x9"), Media)


def test_a_press_brings_its_data_and_its_token() -> None:
    found = opened(press(ANN, "a:1", 9, token="q7"))
    assert isinstance(found, Press)
    assert (found.chat, found.user, found.message_id) == (ANN, ANN, 9)
    assert (found.data, found.token, found.private) == ("a:1", "q7", True)
    in_group = opened(press(GROUP, "a:1", 9, sender=ANN))
    assert isinstance(in_group, Press)
    assert (in_group.chat, in_group.user, in_group.private) == (GROUP, ANN, False)


@pytest.mark.parametrize(
    ("old", "new", "more", "meaning"),
    [
        ("member", "kicked", {}, Gone(ANN)),
        ("administrator", "left", {}, Gone(ANN)),
        ("member", "restricted", {"is_member": False}, Gone(ANN)),
        ("kicked", "member", {}, Back(ANN)),
        ("left", "administrator", {}, Back(ANN)),
        ("left", "restricted", {"is_member": True}, Back(ANN)),
        ("member", "administrator", {}, Nothing()),
    ],
)
def test_our_standing_in_a_chat(old: str, new: str, more: dict[str, Any], meaning: Opened) -> None:
    assert opened(membership(ANN, old, new, **more)) == meaning


def test_a_group_that_became_a_supergroup_is_told_from_both_ends() -> None:
    renamed = Renamed(chat=-55, new=GROUP)
    assert opened(message(-55, migrate_to_chat_id=GROUP)) == renamed
    assert opened(message(GROUP, migrate_from_chat_id=-55)) == renamed


@pytest.mark.parametrize(
    "update",
    [
        {},
        {"update_id": 3},
        {"update_id": 3, "poll": {"id": "1"}},
        message(GROUP, new_chat_title="New"),
        {"message": {**text(ANN, "beep")["message"], "from": us()}},
        {"message": {"message_id": 1, "date": 0, "chat": {"id": GROUP, "type": "channel"}, "text": "post"}},
        {"callback_query": {"id": "q", "from": user(ANN), "inline_message_id": "x", "data": "a"}},
    ],
)
def test_what_is_not_for_us(update: object) -> None:
    assert opened(update) == Nothing()


MALFORMED: list[object] = [
    None,
    True,
    7,
    "text",
    [],
    [{"update_id": 1}],
    {"update_id": 1, "message": "secret words"},
    {"update_id": 1, "message": []},
    {"update_id": 1, "message": {}},
    {"update_id": 1, "message": {"chat": {"id": "secret words", "type": "private"}}},
    {"update_id": 1, "message": {**text(ANN, "x")["message"], "text": {"secret words": 1}}},
    {"update_id": 1, "message": {**text(ANN, "x")["message"], "message_id": True}},
    {"update_id": 1, "message": {**text(ANN, "x")["message"], "chat": {"id": 2**63, "type": "private"}}},
    {"update_id": 1, "callback_query": {"id": 5}},
    {"update_id": 1, "my_chat_member": {"chat": {"id": ANN, "type": "private"}}},
]


@pytest.mark.parametrize("update", MALFORMED)
def test_another_shape_is_a_value_without_anyones_words(update: object) -> None:
    found = opened(update)
    assert isinstance(found, Malformed)
    assert "secret words" not in found.why


@pytest.mark.parametrize("body", ["", "{", "nonsense", "[" * 100_000, '{"message": "\\ud800"}', "\x00"])
def test_a_body_that_is_no_json_is_a_value(body: str) -> None:
    assert isinstance(open_update(body, ME), Malformed)


@pytest.mark.parametrize("update", [*MALFORMED, text(ANN, "naïve 🏋️ \ud800"), {"update_id": 1.5}, {"update_id": 2**80}])
def test_any_json_can_be_kept_and_keeps_its_identity(update: object) -> None:
    raw = raw_update(update, "telegram")
    assert json.loads(raw.body) == update
    assert raw.body.isascii()
    assert raw == raw_update(update, "telegram")
    assert -(2**63) <= raw.update_id < 2**63


@pytest.mark.parametrize(
    ("update", "chat"),
    [
        (text(GROUP, "x", sender=ANN), GROUP),
        (edit(ANN, "x"), ANN),
        (press(GROUP, "x", sender=ANN), GROUP),
        ({"callback_query": {"from": {"id": ANN}}}, ANN),
        (membership(ANN, "member", "kicked"), ANN),
        ({"message": {"chat": {"id": "1"}}}, 0),
        ({"message": {"chat": {"id": 2**63}}}, 0),
        ({"message": {"chat": {"id": True}}}, 0),
        (None, 0),
    ],
)
def test_the_chat_is_found_without_trusting_the_shape(update: object, chat: int) -> None:
    assert raw_update(update, "telegram").chat == chat


def test_the_offset_comes_from_real_ids_only() -> None:
    batch = tuple(raw_update(update, "telegram") for update in ({"update_id": 7}, None, {"update_id": 5}, {"x": 1}))
    assert next_offset(batch) == 8
    assert next_offset(batch[1:2]) is None
    assert len({raw.update_id for raw in batch}) == 4


def test_the_menus_commands_and_the_challenges_are_ours_in_a_group() -> None:
    assert {word for word, _ in COMMANDS} <= OURS
    openings = ("challenge 3 weeks", "end challenge", "open challenge", "new challenge")
    for said in (*openings, "join as Me", "leave", "pause", "back", "standings", "points"):
        assert spoken(said) is not None
        assert said.split()[0] in OURS
