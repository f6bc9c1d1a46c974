"""Spanish, what is said to the service itself, whole. A table; knows no acts and no answers.

Source: common Spanish; no single source.
"""

from collections.abc import Mapping
from typing import Final

PHRASES: Final[Mapping[str, tuple[str, ...]]] = {
    "start": ("cómo empiezo", "por dónde empiezo", "quiero empezar", "cómo se empieza"),
    "begin": ("empezar", "empecemos", "empezamos", "empiezo", "vamos", "venga vamos", "estoy listo",
              "estoy lista", "comenzar", "comencemos"),
    "skip": ("saltar", "sáltalo", "sáltate este", "sáltate ese", "este no", "pasa de este", "el siguiente por favor"),
    "swap": ("cambiar", "cámbialo", "cambia este", "otro ejercicio", "otra cosa", "cambia este ejercicio"),
    "help": ("ayuda", "ayúdame", "cómo funciona esto", "cómo va esto", "qué puedes hacer", "qué puedo decir",
             "comandos", "necesito ayuda"),
    "why": ("por qué", "y por qué", "por qué eso", "por qué tanto", "por qué tan poco", "por qué lo mismo",
            "por qué este peso", "y eso", "por qué no más", "por qué menos"),
    "undo": ("deshacer", "deshaz", "deshazlo", "deshaz eso", "deshacer lo último"),
    "where": ("cómo me fue", "qué tal me fue", "qué tal lo hice", "cómo lo hice",
              "hoy", "por dónde voy", "por dónde iba", "qué llevo hecho", "qué he hecho", "cómo voy", "estado",
              "qué me queda"),
    "hello": ("hola", "buenas", "buenos días", "buenas tardes", "buenas noches", "qué tal", "ey", "hola qué tal",
              "muy buenas"),
    "thanks": ("gracias", "muchas gracias", "mil gracias", "gracias crack", "te lo agradezco", "graciasss"),
    "fine": ("vale", "ok", "okey", "de acuerdo", "entendido", "perfecto", "genial", "bien", "muy bien", "claro", "sí",
             "no", "venga", "dale", "guay", "bueno"),
    "later": ("un momento", "un segundo", "espera", "ahora vuelvo", "dame un minuto", "ya vuelvo", "un minuto",
              "enseguida vuelvo", "espera un momento"),
    "done": ("ya está", "hecho", "listo", "terminado", "acabado", "ya he terminado", "ya he acabado", "todo hecho",
             "eso es todo"),
    "finish": ("terminar", "finalizar", "fin", "termina la sesión", "cierra la sesión", "terminar sesión",
               "acabar la sesión", "fin de la sesión", "cerrar sesión"),
    "moved": ("pásalo a mañana", "muévelo a mañana", "mejor mañana", "lo paso a mañana", "lo dejo para mañana",
              "mañana mejor", "cámbialo a mañana"),
    "off": ("hoy no", "hoy no entreno", "hoy no puedo", "hoy no voy", "hoy no puedo entrenar", "hoy descanso",
            "hoy toca descanso", "hoy libro", "hoy no hay entreno", "hoy imposible"),
    "off_tomorrow": ("mañana no", "mañana no puedo", "mañana no entreno", "mañana no voy", "mañana descanso"),
    "travelling": ("de viaje", "estoy de viaje", "viajando", "estoy viajando", "fuera de casa"),
    "did": ("lo hice", "ya lo hice", "hecho, luego lo escribo", "lo hice, luego lo apunto"),
    "today": ("pásalo a hoy", "muévelo a hoy", "mejor hoy", "hoy mejor"),
    "let_go": ("déjalo", "olvídalo", "da igual", "no importa", "déjalo estar"),
    "well_again": ("ya estoy bien", "estoy bien", "me encuentro bien", "ya me encuentro bien", "ya se me pasó",
                   "ya se me ha pasado", "falsa alarma", "ya estoy mejor", "se me pasó", "ya pasó", "todo bien ya",
                   "ya me siento bien", "me siento mejor"),
}  # fmt: skip

COURTESY: Final = frozenset(
    {"", "perdón", "perdona", "lo siento", "por favor", "vale", "pues", "hoy", "hola", "gracias"}
)
"""Words beside a wish that ask for no answer."""

OPENERS: Final = frozenset({"vale", "bueno", "pues", "pero", "y", "oye", "ok", "eh"})
"""Words before a phrase that change nothing of it."""
