"""The commands. What a command does not need it does not import."""

import gc
import os
import sys
from pathlib import Path

import click

from bot import one_thread  # noqa: F401  (before anything that loads numpy)
from bot.commands import register
from bot.commands.options import database, technician

EXAMPLES = """\b
Examples:
  ohmreply chat
  ohmreply ask "pri 118V sec 0V pri-ohm open"
  ohmreply ask --json "which tap for 208?"
  echo '{"technician": "t1", "text": "pri 118V sec 0V"}' | ohmreply pipe
  ohmreply replay
  ohmreply jobs --open
  ohmreply report 12 --pdf rtu-3.pdf
  ohmreply backup jobs-friday.sqlite
"""


@click.group(epilog=EXAMPLES, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="ohmreply", prog_name="ohmreply")
def ohmreply() -> None:
    """
    Text the readings of a dead 24 V control circuit, get a verdict, the next test and the caution.

    What to send: a place and a value, in your own shorthand, several at once: "pri 118V sec 0V pri-ohm open". Inside
    a conversation, help shows more.
    """


@ohmreply.command()
@database
@technician
def chat(database: str | None, technician: str | None) -> None:
    """
    Talk in the terminal.

    Jobs are kept: leave in the middle of one, start again, go on. Without a terminal each line of the input is one message.
    Reports and exports are written into the present folder. Ctrl-D leaves.
    """
    from bot.commands.talk import chat  # noqa: PLC0415

    chat(database, technician or user())


@ohmreply.command()
@click.argument("message")
@click.option("--json", "as_json", is_flag=True, help="The whole record instead of the text.")
@technician
def ask(message: str, technician: str | None, *, as_json: bool) -> None:
    """
    Answer one MESSAGE; nothing is stored.

    \b
    ohmreply ask "pri 118V sec 0V pri-ohm open"
    ohmreply ask --json "2 contactors 9va, gas valve .5 amp, what size?"
    """
    from bot.channels.one_shot import ask  # noqa: PLC0415

    reply = ask(message, technician or user())
    if as_json:
        import json  # noqa: PLC0415

        click.echo(json.dumps(reply.record(), ensure_ascii=False, indent=2))
    else:
        click.echo(reply.text)


@ohmreply.command()
@database
def pipe(database: str | None) -> None:
    """
    Answer JSON Lines: one object a line in, one a line out.

    \b
    In:  {"technician": "t1", "text": "pri 118V sec 0V"}
         and, as wanted, "job", "message_id", and "edit": true for a text
         that replaces an earlier one of the same message_id
    Out: the record of the reply, or {"error": "..."} for a line that can't be read

    Jobs live for the run, or in --database.
    """
    from bot.commands.talk import pipe  # noqa: PLC0415

    pipe(database)


@ohmreply.command()
@click.argument("files", nargs=-1, type=click.Path(exists=True, dir_okay=False, path_type=Path), metavar="[FILE...]")
@click.option("--quiet", "-q", is_flag=True, help="Show only what differs.")
@click.option("--write", is_flag=True, hidden=True, help="Write the replies into the files, to be reviewed as a diff.")
def replay(files: tuple[Path, ...], *, quiet: bool, write: bool) -> None:
    """
    Play written conversations: each message beside its reply.

    Without FILE those that come along. Exits 1 where a reply is not what the file expects.
    """
    from bot.channels.replay import replay  # noqa: PLC0415

    sys.exit(replay(files, quiet=quiet, write=write))


register(ohmreply)


def user() -> str:
    """The user of the machine, by any means that it has."""
    import getpass  # noqa: PLC0415

    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):  # a container may run under a number that has no name
        return "technician"


def run() -> int:
    """Run the command of the line; how it ends. Nobody is shown a traceback."""
    try:
        ohmreply()
    except SystemExit as left:
        return left.code if isinstance(left.code, int) else 1 if left.code else 0
    except BrokenPipeError:  # whoever read us has left, as `head` does
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except Exception as error:
        if os.environ.get("OHMREPLY_DEBUG"):
            raise
        from bot.commands.trouble import plainly  # noqa: PLC0415

        click.echo(plainly(error), err=True)
        return 2
    return 0


def main() -> None:
    """
    The program.

    One question is over so soon that looking for garbage on the way, and taking every module apart at the end, would cost a
    quarter of it: there it is left to the system.
    """
    one_question = sys.argv[1:2] == ["ask"]
    if one_question:
        gc.disable()
    left = run()
    if one_question:
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(left)
    sys.exit(left)


if __name__ == "__main__":
    main()
