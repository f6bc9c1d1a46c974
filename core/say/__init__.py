"""FACTS -> SENTENCES. The door is compose.compose: compose says what, wording holds the words, render the figures."""
