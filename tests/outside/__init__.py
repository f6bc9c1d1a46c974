"""Checks of the core against the world outside it: published figures, standards, other libraries, brute force."""
