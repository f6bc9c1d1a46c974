"""ACTS -> STATE, with its doubt."""
