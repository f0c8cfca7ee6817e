"""Every table. A module added here is known to the migrations."""

from bot.store.columns import Base
from bot.store.tables.delivery import Inbox, Outbox, Question
from bot.store.tables.files import Attachment
from bot.store.tables.jobs import Guest, HandOver, Job, Unit, WorkingOn
from bot.store.tables.keeping import BackupMade, Setting
from bot.store.tables.log import LoggedMessage, LoggedReply
from bot.store.tables.members import Invite, Member, Stranger
from bot.store.tables.people import Notice, Technician

__all__ = [
    "Attachment",
    "BackupMade",
    "Base",
    "Guest",
    "HandOver",
    "Inbox",
    "Invite",
    "Job",
    "LoggedMessage",
    "LoggedReply",
    "Member",
    "Notice",
    "Outbox",
    "Question",
    "Setting",
    "Stranger",
    "Technician",
    "Unit",
    "WorkingOn",
]
