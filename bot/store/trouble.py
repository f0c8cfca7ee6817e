"""What can go wrong with a store, in a line that a person can act on."""

from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError

from bot.store.schema import NewerStoreError
from core.said import Said, say

SQLITE = (
    ("locked", say("The store is locked by another program. Nothing is lost: try again")),
    ("readonly", say("The store can't be written: it is read-only. Nothing was stored")),
    ("disk is full", say("The disk is full. Nothing was stored")),
    ("disk i/o error", say("The disk does not take or give data. Nothing was stored")),
    ("unable to open", say("The store can't be opened: no such folder, or no right to it")),
    ("not a database", say("That file is no store of ohmreply")),
    ("malformed", say("The store is damaged. Restore a backup")),
)
"""What SQLite says, in the order asked, and what we say."""

POSTGRES = (
    ("53100", say("The disk is full. Nothing was stored")),
    ("25006", say("The store can't be written: it is read-only. Nothing was stored")),
    ("55P03", say("The store is locked by another program. Nothing is lost: try again")),
)
"""The same by PostgreSQL's codes (PostgreSQL documentation, appendix A)."""


def store_trouble(error: BaseException) -> Said | None:
    """What to tell a person about a store that failed; None where the error is no matter of the store."""
    match error:
        case NewerStoreError():
            return say("The store is from a later ohmreply: update this one")
        case ArgumentError() | NoSuchModuleError():
            return say("That is no database URL. Example: {example}", example="sqlite:////home/me/jobs.sqlite")
        case DBAPIError():
            return _from_driver(error)
        case ModuleNotFoundError() if not str(error.name).startswith(("bot", "core", "grammar")):
            return say("The driver for that database is not installed: {driver}", driver=str(error.name))
    return None


def _from_driver(error: DBAPIError) -> Said:
    code = getattr(error.orig, "sqlstate", None)
    for known, said in POSTGRES:
        if code == known:
            return said
    text = str(error.orig).lower()
    for sign, said in SQLITE:
        if sign in text:
            return said
    if error.connection_invalidated or "connect" in text:
        return say("The database can't be reached")
    return say("The store failed: {reason}", reason=text.strip().split("\n", maxsplit=1)[0][:120] or type(error.orig).__name__)
