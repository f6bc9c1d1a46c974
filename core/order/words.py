"""The words of orders, as a table: what is typed, and which order it is. Tried from the top.

In a pattern ``<who>`` is a client's name, ``<other>`` another's, ``<text>`` all that follows, ``<rest>`` a few words.
"""

from collections.abc import Mapping
from typing import Final

from core.model.quantities import Way

PATTERNS: Final[tuple[tuple[str, str], ...]] = (
    # yes and no
    ("yes", r"(?:yes|y|yep|yeah|ok|okay|sure|do it|go|in force|put it in force)"),
    ("no", r"(?:no|n|nope|don'?t|leave it|forget it|not now|discard|throw it away)"),
    # people
    (
        "cancel_invite",
        r"(?:cancel|take back|withdraw|revoke)\s+(?:the\s+)?(?:invite|invitation)\s*(?:of|for|to)?\s*<text>",
    ),
    ("cancel_invite", r"uninvite\s+<text>"),
    ("invite", r"(?:invite|add client|new client)\s*:?\s*<text>"),
    ("invite", r"invite"),
    ("clients", r"(?:my\s+|list\s+|the\s+)?(?:clients|lifters|people|roster)"),
    ("hand", r"(?:hand|pass|move|transfer)\s+(?:over\s+)?<who>\s+(?:over\s+)?to\s+<text>"),
    ("hand", r"hand\s+<who>\s+over"),
    ("end", r"(?:end|stop|finish)\s+(?:the\s+)?(?:work|working|coaching)\s*(?:with|of)?\s+<who>"),
    ("end", r"(?:remove|drop)\s+(?:client\s+)?<who>"),
    ("clear_how", r"clear"),
    ("clear", r"clear\s+(?:the\s+)?(?:alarm|hold)\s+(?:of|for)\s+<who>"),
    ("clear", r"clear\s+<who>(?:\s+(?:alarm|hold))?"),
    # words between people
    (
        "tell_all",
        r"(?:tell|write|message|say)\s+(?:to\s+)?(?:everyone|everybody|all(?:\s+(?:of\s+them|clients))?)\s*[,:]?\s+<text>",
    ),
    ("tell", r"(?:tell|write|message|say|ask)\s+(?:to\s+)?<names>"),
    ("notes", r"(?:my\s+)?notes\s+(?:(?:on|of|about|for)\s+)?<who>"),
    ("note", r"(?:private\s+)?note\s+(?:on|about|for|to)\s+<noted>"),
    # plans
    ("old_plan", r"put\s+back\s+(?:the\s+)?(?:old|last|previous)\s+plan"),
    ("copy", r"(?:copy|give)\s+<who>\s+plan\s+(?:to|for)\s+<other>"),
    ("copy", r"copy\s+(?:the\s+)?plan\s+(?:of|from)\s+<who>\s+(?:to|for|onto)\s+<other>"),
    ("copy", r"give\s+<other>\s+<who>\s+plan"),
    ("copy", r"(?:same|the same) plan\s+(?:for|to)\s+<other>\s+as\s+<who>"),
    (
        "old_plan",
        r"(?:put\s+)?(?:back\s+)?(?:the\s+)?(?:old|last|previous)\s+plan\s*(?:back)?\s*(?:of|for)\s+<who>(?:\s+back)?",
    ),
    ("old_plan", r"put\s+(?:back\s+)?<who>\s+(?:old|last|previous)\s+plan\s*(?:back)?"),
    ("new_plan", r"(?:new\s+)?plan\s+for\s+<noted>"),
    ("plan", r"(?:show\s+|see\s+)?(?:the\s+)?plan\s+(?:of\s+|for\s+)?<who>"),
    ("plan", r"(?:show\s+|see\s+)?<who>\s+plan"),
    (
        "swap",
        r"(?:swap|change|replace|exchange)\s+<ex>\s+(?:for|with|by|to|into)\s+<new>\s+(?:for|in)\s+<who>(?:\s+plan)?",
    ),
    ("swap", r"<new>\s+(?:instead\s+of|in(?:\s+the)?\s+place\s+of)\s+<ex>\s+(?:for|in)\s+<who>(?:\s+plan)?"),
    ("swap", r"(?:swap|change|replace|exchange)\s+<whose>\s+(?:for|with|by|to|into)\s+<new>"),
    # looking
    (
        "attention",
        r"(?:who\s+)?(?:needs?|wants?)\s+(?:a\s+word|me|attention|my\s+attention)|attention|digest|morning|who(?:\s+is)?\s+first",
    ),
    ("weeks", r"(?:all\s+|the\s+)?weeks|(?:weekly\s+)?summar(?:y|ies)"),
    ("week", r"(?:show\s+|see\s+)?(?:the\s+)?(?:week|summary)\s+(?:of|for)\s+<who>"),
    ("week", r"(?:show\s+|see\s+)?(?:how(?:'s| is)\s+)<who>(?:\s+doing)?"),
    ("week", r"(?:show\s+|see\s+)?<who>\s+week"),
    ("week", r"week\s+(?!(?:of|for)\b)<who>"),
    ("see", r"(?:see|show)\s+<who>"),
    ("overview", r"(?:the\s+)?(?:overview|picture|chart|everyone at a glance)"),
    ("sheet_of", r"(?:spreadsheet|sheet|csv|table|export)\s+(?:of|for)\s+<who>"),
    ("sheet", r"(?:the\s+)?(?:spreadsheet|sheet|csv|table|export)(?:\s+please)?"),
    ("hour", r"(?:digest|attention|morning(?:\s+word)?)\s+at\s+<rest>"),
    ("week_hour", r"(?:weeks|summar(?:y|ies))\s+(?:on\s+)?<rest>"),
    # the week: sets of a muscle, easier weeks
    (
        "set_range",
        r"<span>\s+(?:weekly\s+)?sets\s+(?:a\s+week\s+)?(?:of|for|on)\s+<muscle>\s+(?:a\s+week\s+)?for\s+<who>",
    ),
    (
        "set_range",
        r"<who>\s*[:,]?\s+<span>\s+(?:weekly\s+)?sets\s+(?:a\s+week\s+)?(?:of|for|on)\s+<muscle>(?:\s+a\s+week)?",
    ),
    ("set_range", r"<muscle>\s+<span>\s+sets(?:\s+a\s+week)?\s+for\s+<who>"),
    ("set_range", r"<who>\s*[:,]?\s+<muscle>\s+<span>\s+sets(?:\s+a\s+week)?"),
    ("set_range", r"<span>\s+(?:weekly\s+)?sets\s+(?:a\s+(?:week|muscle)\s+){0,2}for\s+<who>"),
    ("usual_sets", r"(?:the\s+)?usual\s+(?:weekly\s+)?sets\s+(?:of|for|on)\s+<muscle>\s+for\s+<who>"),
    ("usual_sets", r"(?:the\s+)?usual\s+(?:weekly\s+)?sets\s+(?:a\s+week\s+)?for\s+<who>"),
    ("no_easier", r"no\s+(?:more\s+)?(?:easier|easy|light(?:er)?|deload)\s+weeks?\s+for\s+<who>"),
    ("easier", r"<block>\s+for\s+<who>"),
    ("easier", r"<who>\s*[:,]?\s+<block>"),
    # what if
    ("what_if", r"what\s+if\s+<who>\s+(?:did|does|went|goes|used|tried|takes?|took)\s+<rest>"),
    # targets under the coach's hand
    (
        "next_time",
        r"<loads>\s+(?:next\s+time\s+)?(?:on|in|for|at)\s+<ex>\s+(?:next\s+time\s+)?for\s+<who>(?:\s+next\s+time)?",
    ),
    ("next_time", r"<loads>\s+(?:next\s+time\s+)?for\s+<who>\s+(?:on|in|at)\s+<ex>(?:\s+next\s+time)?"),
    ("next_time", r"(?:next\s+time\s+)?<who>\s*[:,]?\s+<ex>\s+(?:at\s+)?<loads>(?:\s+next\s+time)?"),
    (
        "no_heavier",
        r"(?:no(?:thing)?\s+(?:heavier|more\s+(?:load|weight)))(?:\s+(?:on|in|for)\s+(?:the\s+)?<ex>)?\s+for\s+<who>(?:\s+until\s+<until>)?",
    ),
    (
        "no_heavier",
        r"(?:no(?:thing)?\s+(?:heavier|more\s+(?:load|weight)))\s+(?:for|on)\s+<whose>(?:\s+until\s+<until>)?",
    ),
    (
        "no_heavier",
        r"(?:no(?:thing)?\s+(?:heavier|more\s+(?:load|weight)))(?:\s+(?:on|in)\s+(?:the\s+)?<ex>)?\s+until\s+<until>\s+for\s+<who>",
    ),
    ("ways", r"<ways>\s+(?:for|on|in)\s+<whose>"),
    ("ways", r"<ways>\s+(?:for|on|in)\s+<ex>\s+for\s+<who>"),
    ("ask", r"ask\s+(?:me\s+)?first\s+(?:for|on|about|with)\s+<whose>"),
    ("ask", r"ask\s+(?:me\s+)?first\s+(?:for|on|about)\s+<ex>\s+for\s+<who>"),
    ("ask", r"<whose>\s*[:,]?\s+ask\s+(?:me\s+)?first"),
    ("hold", r"hold\s+<whose>"),
    ("hold", r"hold\s+<ex>\s+for\s+<who>"),
    ("hold", r"<whose>\s*[:,]?\s+hold"),
    ("free", r"(?:free|release|let\s+go\s+(?:of\s+)?)\s*<whose>"),
    ("free", r"free\s+<ex>\s+for\s+<who>"),
    ("free", r"<whose>\s*[:,]?\s+free"),
    ("help", r"(?:help|\?|what can (?:i|you) (?:say|do)|commands|menu)"),
)

KEYWORDS: Final = (
    "invite", "invitation", "cancel", "clients", "plan", "copy", "week", "weeks", "tell", "everyone", "note", "notes",
    "hold", "free", "clear", "hand", "what", "attention", "digest", "overview", "spreadsheet", "tempo", "before",
    "heavier", "until", "first", "help", "needs", "word", "next", "time",
    "easier", "every", "swap", "replace", "instead", "sets", "usual", "work", "working", "coaching", "with", "private",
    "about",
)  # fmt: skip
"""Words of orders whose spelling is mended; names are looked up elsewhere."""

FREE_AFTER: Final = frozenset({"tell", "write", "message", "say", "ask", "note", "private", "invite", "uninvite"})
"""First words of orders that carry somebody's own words: those are never put right."""

WAY_WORDS: Final = r"(?:tempo|slower|load|weight|reps?|repetitions|range|rest|density|heavier)"

WAYS: Final[Mapping[str, Way]] = {
    "tempo": "tempo", "slower": "tempo", "load": "load", "weight": "load", "heavier": "load", "rep": "reps",
    "reps": "reps", "repetitions": "reps", "range": "range", "rest": "rest", "density": "rest",
}  # fmt: skip

COUNTED: Final[Mapping[str, str]] = {
    "other": "2", "second": "2", "third": "3", "fourth": "4", "fifth": "5", "sixth": "6", "eighth": "8",
}  # fmt: skip
"""Every how many weeks, in words."""
