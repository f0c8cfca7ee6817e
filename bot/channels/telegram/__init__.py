"""Telegram: reads updates, hands them to the desk, and lays what it answers into the outbox."""

from bot.channels.telegram.serve import serve

__all__ = ["serve"]
