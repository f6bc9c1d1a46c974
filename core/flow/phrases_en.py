"""English, what is said to the service itself, whole. A table; knows no acts and no answers.

Source: common English; no single source.
"""

from collections.abc import Mapping
from typing import Final

PHRASES: Final[Mapping[str, tuple[str, ...]]] = {
    "start": ("/start", "get started", "how do i start"),
    "begin": ("start", "lets start", "lets go", "start now", "ready", "im ready", "lets begin"),
    "skip": ("skip", "skip it", "skip this", "skip this one", "skip that", "leave it out", "next one please"),
    "swap": ("swap", "swap it", "swap this", "swap this one", "something else"),
    "help": ("/help", "help", "help me", "how does this work", "what can you do", "what can i say", "commands", "?"),
    "why": ("/why", "why", "why that", "why so", "how come", "why this", "what for", "why so light", "why so heavy",
            "why the same", "why not more", "why less"),
    "undo": ("/undo", "undo", "undo that", "take that back", "take it back", "undo last"),
    "where": ("/today", "today", "where am i", "where was i", "how far am i", "what have i done", "status",
              "what did i do", "show today", "whats today", "what is today", "whats on today", "whats for today",
              "what have i got today", "what do i have today", "what are we doing today", "whats the plan today",
              "whats the session today", "what am i doing today", "how did i do", "how did i do today", "how was that",
              "how did that go", "how was my session", "how did it go", "did i do ok", "did i do well"),
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
                   "clear me", "unlock", "lift the hold", "it went away", "false alarm", "was just a stitch",
                   "it was just a stitch", "just a stitch", "it was nothing",
                   "was nothing", "its ok now", "its okay now",
                   "i feel better now", "im good now", "feeling ok now"),
}  # fmt: skip

COURTESY: Final = frozenset({"", "sorry", "please", "im afraid", "ok", "so", "today", "hi", "hello", "thanks"})
"""Words beside a wish that ask for no answer."""

OPENERS: Final = frozenset({"ok", "so", "but", "and", "hey"})
"""Words before a phrase that change nothing of it."""
