"""JSON Lines in, JSON Lines out: the windows on the reader and on the progression core. No store, no network."""

import json
from collections.abc import Callable, Iterable
from typing import IO, Any

from bot import codec
from core import advising
from core.read import reader


def answer_lines(lines: Iterable[str], out: IO[str], answer: Callable[[codec.Json], codec.Json]) -> None:
    """Answer each line in order, flushed; a bad line gives its error and the next is still answered."""
    for line in lines:
        if not line.strip():
            continue
        out.write(json.dumps(_answer(line, answer), ensure_ascii=False) + "\n")
        out.flush()


def read_one(request: codec.Json) -> codec.Json:
    """One message of the reading contract."""
    return codec.reading_out(reader.read(_text(request), codec.setting_in(request.get("setting"))))


def explain_one(request: codec.Json) -> codec.Json:
    """The same with its receipts: what was seen, what was weighed, what was filled in from where."""
    text, setting = _text(request), codec.setting_in(request.get("setting"))
    return {**codec.reading_out(reader.read(text, setting)), "why": codec.plain(reader.explain(text, setting))}


def advise_one(request: codec.Json) -> codec.Json:
    """One question of the advising contract."""
    return codec.advice_out(advising.advise(codec.question_in(request)))


def _text(request: codec.Json) -> str:
    text = request.get("text")
    if not isinstance(text, str):
        raise codec.CodecError("text: a string was expected")
    return text


def _refuse(constant: str) -> None:
    raise codec.CodecError(f"{constant} is not a number")


def _answer(line: str, answer: Callable[[codec.Json], codec.Json]) -> codec.Json:
    given: Any = None
    try:
        request = json.loads(line, parse_constant=_refuse)
        if not isinstance(request, dict):
            return {"id": None, "error": "a JSON object was expected"}
        given = request.get("id")
        return {"id": given, **answer(request)}
    except json.JSONDecodeError as problem:
        return {"id": given, "error": f"not valid JSON: {problem.msg} at column {problem.colno}"}
    except RecursionError:
        return {"id": given, "error": "not valid JSON: nested too deep"}
    except codec.CodecError as problem:
        return {"id": given, "error": str(problem)}
