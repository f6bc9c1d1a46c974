"""WORDS ABOUT ONESELF -> WISHES: answers to the questions at joining, and sentences that change something later.

Doors: answers.read_answer and sentences.read_sentence. Pure; it knows no store, no reader and no wording.
"""
