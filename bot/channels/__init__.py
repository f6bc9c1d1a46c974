"""The chat worlds. Each one turns its own shapes into those of bot/ports.py and stops there."""
