"""The page in the browser as a channel: served by the program itself, with chats that live in the store alone."""
