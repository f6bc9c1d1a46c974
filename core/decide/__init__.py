"""STATE -> TARGET. The door is choose."""
