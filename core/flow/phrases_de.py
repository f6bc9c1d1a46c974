"""German, what is said to the service itself, whole. A table; knows no acts and no answers.

Source: common German; no single source.
"""

from collections.abc import Mapping
from typing import Final

PHRASES: Final[Mapping[str, tuple[str, ...]]] = {
    "start": ("wie fange ich an", "wie fang ich an", "wie starte ich", "womit fange ich an", "ich will anfangen"),
    "begin": ("anfangen", "los", "los gehts", "auf gehts", "starten", "fangen wir an", "bereit", "ich bin bereit",
              "bin bereit", "beginnen", "leg los"),
    "skip": ("überspringen", "auslassen", "lass aus", "lass das aus", "das nicht", "die nicht", "lass die aus",
             "nächste bitte"),
    "swap": ("tauschen", "tausch", "tausch das", "tausch die", "was anderes", "etwas anderes", "andere übung",
             "eine andere übung"),
    "help": ("hilfe", "hilf mir", "hilfe bitte", "wie geht das", "wie funktioniert das", "was kannst du",
             "was kann ich sagen", "befehle", "ich brauche hilfe"),
    "why": ("warum", "wieso", "weshalb", "warum das", "warum so viel", "warum so wenig", "warum dasselbe",
            "warum so leicht", "warum so schwer", "wieso das", "warum nicht mehr", "warum weniger"),
    "undo": ("rückgängig", "mach rückgängig", "rückgängig machen", "mach das rückgängig", "nimm das zurück"),
    "where": ("wie war ich", "wie lief es", "wie war das", "wie hab ich mich geschlagen",
              "heute", "wo bin ich", "wo war ich", "was habe ich gemacht", "was hab ich gemacht", "stand",
              "wie weit bin ich", "zeig heute"),
    "hello": ("hallo", "hi", "hey", "moin", "servus", "guten morgen", "guten tag", "guten abend", "grüß dich",
              "morgen zusammen", "moin moin", "hallo zusammen", "grüezi"),
    "thanks": ("danke", "dankeschön", "vielen dank", "danke dir", "merci", "danke schön", "tausend dank",
               "besten dank"),
    "fine": ("ok", "okay", "alles klar", "passt", "verstanden", "geht klar", "in ordnung", "perfekt", "gut", "super",
             "klar", "ja", "nein", "nee", "jo", "jep", "top", "prima", "schön", "na gut", "mach ich", "schon gut so"),
    "later": ("moment", "einen moment", "moment mal", "warte", "warte kurz", "sekunde", "gleich zurück",
              "bin gleich da",
              "eine sekunde", "kurz warten", "komme gleich wieder"),
    "done": ("fertig", "ich bin fertig", "bin fertig", "erledigt", "alles fertig", "das wars", "das war alles",
             "jetzt fertig", "geschafft"),
    "finish": ("beenden", "ende", "schluss", "training beenden", "einheit beenden", "beende das training",
               "training fertig", "mach schluss", "schließ ab"),
    "moved": ("auf morgen verschieben", "verschieb auf morgen", "verschieb es auf morgen", "lieber morgen",
              "verschiebe auf morgen", "morgen stattdessen", "dann eben morgen", "ich mach es morgen"),
    "off": ("heute nicht", "heute kein training", "kann heute nicht", "heute gehts nicht", "heute trainiere ich nicht",
            "heute frei", "heute pause", "heute ruhetag", "schaffe es heute nicht", "ich kann heute nicht"),
    "off_tomorrow": ("morgen nicht", "morgen kein training", "kann morgen nicht", "ich kann morgen nicht",
                     "morgen trainiere ich nicht", "morgen gehts nicht"),
    "travelling": ("verreist", "auf reisen", "bin verreist", "bin unterwegs", "unterwegs", "auf dienstreise"),
    "did": ("habs gemacht", "hab ich gemacht", "gemacht, schreibs noch", "schon gemacht"),
    "today": ("auf heute verschieben", "verschieb auf heute", "lieber heute", "doch heute"),
    "let_go": ("lass gut sein", "egal", "vergiss es", "schon gut", "ist egal"),
    "well_again": ("mir gehts gut", "mir gehts wieder gut", "mir geht es gut", "mir geht es wieder gut", "geht wieder",
                   "alles wieder gut", "fehlalarm", "ist vorbei", "mir gehts besser", "wieder alles gut",
                   "es geht mir gut", "es geht mir besser", "bin wieder fit"),
}  # fmt: skip

COURTESY: Final = frozenset({"", "sorry", "tut mir leid", "bitte", "leider", "ok", "also", "heute", "hallo", "danke"})
"""Words beside a wish that ask for no answer."""

OPENERS: Final = frozenset({"ok", "also", "aber", "und", "hey", "na", "gut", "ja"})
"""Words before a phrase that change nothing of it."""
