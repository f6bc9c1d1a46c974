"""WEEK -> SUMMARY: what a client did against what was planned, and what of it needs the coach.

The doors are week.week_of and attention.concerns. It knows no words, no stores and no clock; the day is handed in.
"""
