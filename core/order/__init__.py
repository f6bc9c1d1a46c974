"""A COACH'S WORDS -> AN ORDER. The door is read.read_order: text and the names of the coach's own clients in, a value out.

It carries nothing out and knows no store; what it cannot place comes back as a question or as unknown.
"""  # noqa: E501
