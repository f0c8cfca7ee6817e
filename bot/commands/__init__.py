"""Commands beside talking. Each module declares its own; what a command does is imported when it runs."""

import click

from bot.commands.crew import jobs, report, stats
from bot.commands.invite import invite
from bot.commands.keeping import backup, check, restore, retention
from bot.commands.serve import serve


def register(group: click.Group) -> None:
    """Add every command to the group."""
    for command in (serve, invite, jobs, report, stats, backup, restore, check, retention):
        group.add_command(command)
