"""Why we believe it: exercises, sources and numbers as rows. No logic."""
