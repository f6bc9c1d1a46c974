"""The steps that make the tables, oldest first. Each is written once and never changed."""
