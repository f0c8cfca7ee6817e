"""The desk: every channel hands its messages here. It finds technician and job, asks the conversation, keeps the store."""

from bot.desk.documents import Document, document_for
from bot.desk.greeting import standing
from bot.desk.incoming import Incoming, Taken
from bot.desk.just_closed import in_hand
from bot.desk.memory import Memory
from bot.desk.take import take

__all__ = ["Document", "Incoming", "Memory", "Taken", "document_for", "in_hand", "standing", "take"]
