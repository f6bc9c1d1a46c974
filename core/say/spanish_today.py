"""Spanish, what is said of today alone: short of time, another kit, nudges, things taken back. Key to template."""
# ruff: noqa: E501 - a row is a sentence as it is sent

from collections.abc import Mapping
from typing import Final

SPANISH_TODAY: Final[Mapping[str, str | tuple[str, str]]] = {
    "undone.again": "Como antes: {sets}.",
    "undone.again.many": "Como antes: {n} series.",
    "trim.fits": "Lo que queda de hoy cabe en {n} minutos tal como está.",
    "trim.stays": "{n} minutos, así que queda lo que más importa: {list}.",
    "trim.gone": '{list}: fuera por hoy. "whole session after all" lo trae de vuelta.',
    "trim.tight": "Ya por sí solo dura más, así que haz las series que quepan.",
    "trim.nothing": "Del plan de hoy no queda nada que recortar.",
    "kit.today": "Solo por hoy: {list}.",
    "kit.today.gym": "Solo por hoy: un gimnasio completo.",
    "kit.today.odd": "No sé qué hacer con {list}.",
    "kit.today.off": 'No se puede con eso: {list}. "swap {one}" muestra lo que sí.',
    "today.all": "Vuelve todo lo de hoy, con tu equipo de siempre.",
    "today.all.already": "Hoy no se había quitado nada.",
    "nudge": "Se acabó la pausa.",
    "about.nudges.on": 'Te aviso cuando acabe una pausa; tu siguiente serie lo cancela. "no nudges" lo apaga.',
    "about.nudges.off": "Sin aviso al acabar una pausa.",
    "about.kit.bands.plain": "bandas",
    "begin.all_off": 'Empezado. Todos los ejercicios de hoy están fuera; escribe lo que hagas en su lugar, o di "swap" y el ejercicio.',
    "list.waits": '{list}: por ahora no. "swap {one}" muestra qué se puede hacer en su lugar.',
    "twice": 'Lo mismo llegó hace un momento. Si se envió dos veces, "undo" quita esta.',
    "kit.today.without": "Solo por hoy: sin {what}.",
    "next.rest_waits": 'El resto de hoy espera. Escribe lo que hagas en su lugar, o di "done" para el resumen.',
    "list.head.day": "{title} el {day} a las {time}, unos {n} minutos.",
    "moved.off.day": "El {day} queda libre. Nada que recuperar.",
    "moved.travelling.day": "Buen viaje. El {day} sale de la lista; lo que hagas, escríbelo y se guarda.",
    "prompt.buttons.off.day": "mañana no",
    "moved.taken": "El {day} ya tiene su sesión, {title}. ¿Qué otro día?",
    "moved.none": "Hoy no hay nada planeado que mover.",
    # the words in pictures
    "picture.reps": "repeticiones",
    "picture.once": "podría levantar una vez, {unit}",
    "picture.sets": "series de la semana (pálido: el margen pedido)",
    "picture.week": ("{title}\n{kept} de {planned} sesión", "{title}\n{kept} de {planned} sesiones"),
    "picture.week.unplanned": ("{title}\n{kept} sesión", "{title}\n{kept} sesiones"),
    "picture.day": "%-d/%-m",
    "picture.way.form": "técnica",
    "picture.way.reps": "reps",
    "picture.way.tempo": "tempo",
    "picture.way.range": "recorrido",
    "picture.way.rest": "pausa",
    "picture.way.load": "carga",
}
