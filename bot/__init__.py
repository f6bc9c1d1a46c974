"""The async shell of rungbook: it moves things and decides nothing."""
