"""`ohmreply ask`: one message, one reply, nothing stored."""

from datetime import UTC, datetime

from bot.conversation import Turn, answer
from bot.reply import Reply


def ask(text: str, technician: str) -> Reply:
    """The reply to a text that nothing came before."""
    sent = Turn(number=1, text=text, message_id="1", sent_at=datetime.now(UTC), technician=technician)
    return answer((), sent)
