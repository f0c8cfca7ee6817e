"""The commands of the menu: each is a shorter way to type something, or is done here."""

from dataclasses import dataclass

from core.said import Said, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Command:
    """One line of the menu."""

    name: str
    says: Said
    typed: str | None = None
    """What it stands for; None where this channel does it."""
    owner: bool = False
    """Shown to the owner alone."""


COMMANDS = {
    row.name: row
    for row in (
        Command(name="next", says=say("What to test next"), typed="next"),
        Command(name="why", says=say("What speaks for the verdict"), typed="why"),
        Command(name="undo", says=say("Take the last message back"), typed="undo"),
        Command(name="new", says=say("Start a new job"), typed="new job"),
        Command(name="jobs", says=say("Your jobs"), typed="my jobs"),
        Command(name="history", says=say("Readings so far"), typed="history"),
        Command(name="report", says=say("Report of this job"), typed="report"),
        Command(name="done", says=say("Close this job"), typed="job done"),
        Command(name="handover", says=say("Give this job to someone"), typed="hand over"),
        Command(name="export", says=say("All your data as a file"), typed="export"),
        Command(name="settings", says=say("Language, and how long jobs are kept"), typed="settings"),
        Command(name="forget", says=say("Delete everything of yours"), typed="forget everything"),
        Command(name="help", says=say("What it reads"), typed="help"),
        Command(name="start", says=say("What this is, with an example")),
        Command(name="invite", says=say("A code that lets one person in"), owner=True),
        Command(name="members", says=say("Who may write"), owner=True),
        Command(name="remove", says=say("Show someone out"), owner=True),
    )
}
