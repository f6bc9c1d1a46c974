"""What an invented lifter sends in a session: one set a message, of the plan that they have, as the demo writes it."""

from random import Random

from bot.clock import now
from bot.demo import life
from bot.demo.gym import Gym, load_gym
from tests.bench.load.stores import FIRST_USER
from tests.bot import api_updates


def gym_of_today() -> Gym:
    """The gym whose lifters the stores are made of."""
    return load_gym(now().date())


def texts(gym: Gym, number: int, count: int) -> list[str]:
    """The first sets of lifter ``number`` today, in the order of their plan; it begins anew at its end."""
    who = gym.lifters[number % len(gym.lifters)]
    chance = Random(f"talk/{number}")  # invented, nothing secret
    today = who.plan.on(now().astimezone(who.profile.zone).weekday()) or who.plan.days[0]
    lines: list[str] = []
    while len(lines) < count:
        for item in today.exercises:
            done = life.train(who, item.exercise, life.opening(item.aim, item.exercise), 0.0, chance)
            lines += [life.text(who, item.exercise, [one], chance) for one in done]
    return lines[:count]


def update(number: int, words: str, message_id: int) -> api_updates.Update:
    """The words as an update of that lifter."""
    return api_updates.text(FIRST_USER + number, words, message_id)
