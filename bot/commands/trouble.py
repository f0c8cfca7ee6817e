"""What is said instead of a traceback."""

import errno
import sys

from bot.settings import SettingError, machine_language
from bot.wording.catalog import catalog
from core.said import Said, say


def plainly(error: Exception) -> str:
    """An error in one short line, in the language of the machine."""
    return catalog(machine_language()).tell(_said(error))


def _said(error: Exception) -> Said:
    if "sqlalchemy" in sys.modules:  # else no store was touched
        from bot.store.trouble import store_trouble  # noqa: PLC0415

        said = store_trouble(error)
        if said is not None:
            return said
    match error:
        case SettingError():
            return error.said
        case OSError(errno=errno.ENOSPC):
            return say("The disk is full. Nothing was stored")
        case OSError(errno=errno.EROFS | errno.EACCES | errno.EPERM):
            return say("No right to write {file}", file=str(error.filename))
        case OSError():
            return say("{file}: {reason}", file=str(error.filename or ""), reason=str(error.strerror or error))
    return say("That failed inside ohmreply. What was answered is kept. OHMREPLY_DEBUG=1 shows where")
