"""Conversations written down as a chat, to be played."""
