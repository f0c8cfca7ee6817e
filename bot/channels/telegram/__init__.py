"""Telegram: reads updates, hands them to the desk, and lays what it answers into the outbox."""

from bot.channels.telegram.service import serve

__all__ = ["serve"]
