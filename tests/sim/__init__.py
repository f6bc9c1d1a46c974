"""Simulated lifters, an outside checker of the advising contract, and the measures that judge the progression core.

Nothing here copies a formula or a number of ``core``: the truth is drawn from published figures, named beside each.
"""
