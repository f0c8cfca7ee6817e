"""Every table. A module added here is known to the migrations."""

from bot.store.columns import Base
from bot.store.tables.files import Attachment
from bot.store.tables.jobs import Guest, HandOver, Job, Unit, WorkingOn
from bot.store.tables.keeping import BackupMade, Setting
from bot.store.tables.log import LoggedMessage, LoggedReply
from bot.store.tables.people import Notice, Technician

__all__ = [
    "Attachment",
    "BackupMade",
    "Base",
    "Guest",
    "HandOver",
    "Job",
    "LoggedMessage",
    "LoggedReply",
    "Notice",
    "Setting",
    "Technician",
    "Unit",
    "WorkingOn",
]
