"""The nouns, frozen: quantities, acts, readings, lifters, plans, targets, the book and the outcome."""
