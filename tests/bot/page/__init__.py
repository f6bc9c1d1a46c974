"""The page in the browser: its server, its clock, and what a newcomer does with it in a real browser."""
