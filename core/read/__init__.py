"""TEXT -> ACTS. The door is reader.read."""
