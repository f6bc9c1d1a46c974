"""A belief as text and back, exactly: what outlives the day, packed as 64-bit numbers. Knows no rule."""

from base64 import b64decode, b64encode

import numpy as np

from core.estimate.belief import KEPT, Belief, open_day
from core.estimate.normal import Floats
from core.estimate.people import POINTS
from core.estimate.seeing import STATES


def belief_text(belief: Belief) -> str:
    """The belief between two sessions, as text: weights, mean and the upper half of the covariance."""
    rows, columns = np.triu_indices(KEPT)
    parts = (belief.log_weight[None], belief.mean[:KEPT], belief.cov[rows, columns])
    return b64encode(np.ascontiguousarray(np.vstack(parts), dtype="<f8").tobytes()).decode("ascii")


def belief_from(text: str) -> Belief:
    """The belief of that text; ValueError when it is not one."""
    width = 1 + KEPT + KEPT * (KEPT + 1) // 2
    packed = b64decode(text, validate=True)
    if len(packed) != POINTS * width * 8:
        raise ValueError("not a belief of this version")
    table: Floats = np.frombuffer(packed, dtype="<f8").astype(np.float64).reshape(width, POINTS)
    mean, cov = np.zeros((STATES, POINTS)), np.zeros((STATES, STATES, POINTS))
    mean[:KEPT] = table[1 : 1 + KEPT]
    rows, columns = np.triu_indices(KEPT)
    cov[rows, columns] = table[1 + KEPT :]
    cov[columns, rows] = table[1 + KEPT :]
    return open_day(Belief(table[0].copy(), mean, cov))
