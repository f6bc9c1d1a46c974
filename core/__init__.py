"""The pure part of rungbook: text in, sentence out. No I/O, no clock, no await, no randomness."""
