"""Everyday words to the service itself, and what kind of text a message is. Tables; knows no acts and no answers."""

import re
import unicodedata
from collections.abc import Mapping
from typing import Final, Literal

from core.evidence.plausible import BOUNDS
from core.model.quantities import Unit, from_kg

Phrase = Literal[
    "start",
    "help",
    "why",
    "undo",
    "where",
    "hello",
    "thanks",
    "fine",
    "later",
    "well_again",
    "begin",
    "skip",
    "swap",
    "done",
    "finish",
    "moved",
    "off",
    "off_tomorrow",
    "travelling",
    "did",
    "today",
    "let_go",
]
Shape = Literal["empty", "emoji", "marks", "script", "noise", "words"]

PHRASES: Final[Mapping[Phrase, tuple[str, ...]]] = {
    "start": ("/start", "get started", "how do i start"),
    "begin": ("start", "lets start", "lets go", "start now", "ready", "im ready", "lets begin"),
    "skip": ("skip", "skip it", "skip this", "skip this one", "skip that", "leave it out", "next one please"),
    "swap": ("swap", "swap it", "swap this", "swap this one", "something else"),
    "help": ("/help", "help", "help me", "how does this work", "what can you do", "what can i say", "commands", "?"),
    "why": ("/why", "why", "why that", "why so", "how come", "why this", "what for", "why so light", "why so heavy",
            "why the same", "why not more", "why less"),
    "undo": ("/undo", "undo", "undo that", "take that back", "take it back", "undo last"),
    "where": ("/today", "today", "where am i", "where was i", "how far am i", "what have i done", "status",
              "what did i do", "show today"),
    "hello": ("hi", "hello", "hey", "good morning", "good evening", "morning", "evening", "hi there", "hello there"),
    "thanks": ("thanks", "thank you", "thx", "ta", "cheers", "thanks a lot", "many thanks", "ty"),
    "fine": ("ok", "okay", "k", "right", "got it", "sure", "alright", "great", "good", "cool", "nice", "will do", "yep",
             "yes", "no", "nope", "perfect"),
    "later": ("brb", "one sec", "one moment", "wait", "hold on", "back in a bit"),
    "done": ("done", "finished", "im done", "i am done", "all done", "done now", "thats it", "thats all",
             "finished now"),
    "finish": ("finish", "/finish", "finish session", "finish the session", "end session", "end the session", "end",
               "close the session", "wrap it up", "session over", "session done", "close it", "finish here"),
    "moved": ("moved to tomorrow", "move to tomorrow", "move it to tomorrow", "moved", "move it", "tomorrow instead"),
    "off": ("not today", "no training today", "not training today", "cant make it today", "skip today", "day off",
            "i cant today", "cant train today", "no gym today", "rest day today", "taking today off", "not tonight"),
    "off_tomorrow": ("not tomorrow", "no training tomorrow", "not training tomorrow", "cant make it tomorrow",
                     "skip tomorrow", "cant train tomorrow", "i cant tomorrow"),
    "travelling": ("travelling", "traveling", "im travelling", "im traveling", "travelling today", "on the road"),
    "did": ("did it, will write it", "did it will write it", "did it", "i did it"),
    "today": ("moved to today", "move to today", "today instead"),
    "let_go": ("let it go", "never mind", "forget it"),
    "well_again": ("im fine now", "i am fine now", "its fine now", "it is fine now", "all good now", "all fine now",
                   "im ok now", "i am ok now", "im okay now", "it passed", "its gone", "it is gone", "feeling fine now",
                   "feel fine now", "i feel fine", "im fine", "i am fine", "feeling better", "im better now",
                   "clear me", "unlock", "lift the hold", "it went away", "false alarm", "its ok now", "its okay now",
                   "i feel better now", "im good now", "feeling ok now"),
}  # fmt: skip
"""What is said, whole, for each of them; case, apostrophes and marks at the end don't count."""

_BY_WORDS: Final = {words: phrase for phrase, all_words in PHRASES.items() for words in all_words}

COMMANDS: Final[Mapping[str, tuple[str, str]]] = {
    "/begin": ("starting now", "starting now"),
    "/next": ("what's next?", "what's next?"),
    "/done": ("that's me done", "that's me done"),
    "/skip": ("skip", "skipping {rest} today"),
    "/swap": ("swap", "what can I do instead of {rest}?"),
    "swap": ("swap", "what can I do instead of {rest}?"),
}
"""What people look for in a menu, as the plain sentence that it stands for: alone, and with words behind it."""

_SWAP_FOR: Final = frozenset({"for", "with", "to", "and", "by"})
"""With one of these in it, a swap names both exercises and is a sentence already."""

NOISE_FROM: Final = 400
"""Characters from which a text without a single set is called noise rather than answered as talk. Choice of ours."""


def plain(text: str) -> str:
    """Lower case, no apostrophes, no marks at the end, single spaces."""
    folded = unicodedata.normalize("NFKC", text).casefold().replace("’", "").replace("'", "")
    folded = " ".join(folded.split())
    return folded.rstrip("!.?… ") or folded


def phrase_of(text: str) -> Phrase | None:
    """The everyday phrase that a whole message is, if it is one."""
    words = plain(text)
    return _BY_WORDS.get(words) or _BY_WORDS.get(re.sub(r"^(ok|so|but|and|hey),? ", "", words))


_COURTESY: Final = frozenset({"", "sorry", "please", "im afraid", "ok", "so", "today", "hi", "hello", "thanks"})


def is_courtesy(text: str) -> bool:
    """Words beside a wish that ask for no answer and are no news to a coach."""
    parts = [plain(part) for part in text.split(",")]
    return all(words in _COURTESY or phrase_of(words) is not None for words in parts)


def command_as_sentence(text: str) -> str:
    """A menu's word as the sentence that it stands for, with what follows it; any other text as it is."""
    head, _, rest = text.strip().partition(" ")
    alone_and_more = COMMANDS.get(head.split("@")[0].casefold())
    if alone_and_more is None or _SWAP_FOR & set(rest.casefold().split()):
        return text
    alone, more = alone_and_more
    return more.replace("{rest}", rest.strip().rstrip("?!. ")) if rest.strip() else alone


def is_unlikely(text: str, unit: Unit) -> bool:
    """A number in the text is past what anyone lifts, whatever it counts."""
    most = from_kg(BOUNDS["most_total_kg"].value, unit)
    return any(float(figure) > most for figure in re.findall(r"\d+", text))


def shape_of(text: str) -> Shape:
    """What kind of text it is when nothing was found in it."""
    letters = [char for char in text if char.isalpha()]
    if not text.strip():
        return "empty"
    if not letters:
        if any(char.isdigit() for char in text):
            return "noise"
        return "emoji" if any(unicodedata.category(char) == "So" for char in text) else "marks"
    latin = sum("LATIN" in unicodedata.name(char, "") for char in letters[:NOISE_FROM])
    if latin * 2 < len(letters[:NOISE_FROM]):
        return "script"
    return "noise" if len(text) > NOISE_FROM else "words"
