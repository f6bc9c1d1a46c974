"""The look-up of a template: by language, key and count. No words here, no conditions in the words."""

from collections.abc import Mapping
from typing import Final

from core.say.english import ENGLISH
from core.say.english_about import ENGLISH_ABOUT
from core.say.english_desk import ENGLISH_DESK
from core.say.english_group import ENGLISH_GROUP
from core.say.english_today import ENGLISH_TODAY
from core.say.german import GERMAN
from core.say.german_about import GERMAN_ABOUT
from core.say.german_desk import GERMAN_DESK
from core.say.german_group import GERMAN_GROUP
from core.say.german_names import GERMAN_NAMES
from core.say.german_rules import GERMAN_RULES
from core.say.german_today import GERMAN_TODAY
from core.say.spanish import SPANISH
from core.say.spanish_about import SPANISH_ABOUT
from core.say.spanish_desk import SPANISH_DESK
from core.say.spanish_group import SPANISH_GROUP
from core.say.spanish_names import SPANISH_NAMES
from core.say.spanish_rules import SPANISH_RULES
from core.say.spanish_today import SPANISH_TODAY

Template = str | tuple[str, str]
"""The words with their slots; a pair is the form for one and the form for any other number."""

FALLBACK: Final = "en"

LANGUAGES: Final[Mapping[str, Mapping[str, Template]]] = {
    FALLBACK: {**ENGLISH, **ENGLISH_DESK, **ENGLISH_GROUP, **ENGLISH_ABOUT, **ENGLISH_TODAY},
    "es": {
        **SPANISH,
        **SPANISH_DESK,
        **SPANISH_GROUP,
        **SPANISH_ABOUT,
        **SPANISH_TODAY,
        **SPANISH_NAMES,
        **SPANISH_RULES,
    },
    "de": {**GERMAN, **GERMAN_DESK, **GERMAN_GROUP, **GERMAN_ABOUT, **GERMAN_TODAY, **GERMAN_NAMES, **GERMAN_RULES},
}
"""Every language has the same keys and slots as the first one (a test sees to it)."""


def template(language: str, key: str, count: float | None = None) -> str:
    """The template of a key; what a language lacks is said in the first one. An unknown key is our bug."""
    spoken = LANGUAGES.get(language, LANGUAGES[FALLBACK])
    found = spoken[key] if key in spoken else LANGUAGES[FALLBACK][key]
    if isinstance(found, str):
        return found
    return found[0] if count == 1 else found[1]


def has(language: str, key: str) -> bool:
    """Whether a key is there."""
    return key in LANGUAGES.get(language, LANGUAGES[FALLBACK])
