"""Words made alike before they are looked up: lower case, no apostrophes, no marks at the ends, single spaces."""

import unicodedata


def plain(text: str) -> str:
    """The words without what doesn't change their meaning."""
    folded = unicodedata.normalize("NFKC", text).casefold().replace("’", "").replace("'", "")
    return " ".join(folded.split()).strip(' !.?…¡¿,;:"')
