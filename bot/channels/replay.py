"""`ohmreply replay`: plays written conversations and compares."""

import sys
from collections.abc import Iterator, Sequence
from difflib import unified_diff
from pathlib import Path

import click

import demo_conversations
from bot.script.play import Played, differences, play
from bot.script.scene import Scene, SceneError, read_scene, written
from bot.settings import machine_language
from bot.wording.catalog import catalog
from core.said import Said, say

SUFFIX = ".chat"
NARROW = 100
"""A terminal at least this wide shows message and reply side by side. [columns]"""


def replay(files: Sequence[Path], *, quiet: bool = False, write: bool = False) -> int:
    """Play conversations and show them; 1 where one differs from what is written, 2 where one can't be read, else 0."""
    tell = catalog(machine_language()).tell
    worst = 0
    for file in files or demos():
        try:
            scene = read_scene(file.read_text(encoding="utf-8"))
        except (SceneError, UnicodeDecodeError) as error:
            click.echo(tell(say("{file} is no conversation: {reason}", file=file.name, reason=str(error))), err=True)
            worst = 2
            continue
        played = play(scene)
        if write:
            rewrite(file, scene, played)
            continue
        wrong = [lines for one in played if (lines := differences(one))]
        if not quiet:
            click.secho(f"\n{scene.title or file.name}", bold=True)
            show(played)
        for said in _differing(file, played):
            click.secho(tell(said) if isinstance(said, Said) else said, fg="red")
        worst = max(worst, 1 if wrong else 0)
    if not write:
        click.echo(tell(say("All replies are as written")) if worst == 0 else tell(say("Not all replies are as written")))
    return worst


def demos() -> list[Path]:
    """The conversations that come along."""
    return sorted(Path(demo_conversations.__path__[0]).glob(f"*{SUFFIX}"))


def rewrite(file: Path, scene: Scene, played: Sequence[Played]) -> None:
    """Put the replies as they are now into the file."""
    for one in played:
        one.spoken.reply = one.reply.split("\n")
    file.write_text(written(scene), encoding="utf-8")


def _differing(file: Path, played: Sequence[Played]) -> Iterator[Said | str]:
    for one in played:
        wrong = differences(one)
        if wrong:
            yield say("{file}, line {line}: {text}", file=file.name, line=one.spoken.line, text=one.spoken.text)
            yield from wrong
            yield from unified_diff(one.spoken.reply, one.reply.split("\n"), "written", "played", lineterm="", n=1)


def show(played: Sequence[Played]) -> None:
    """Each message beside its reply, or above it where there is no room."""
    from rich.console import Console  # noqa: PLC0415  (only where it is shown)
    from rich.table import Table  # noqa: PLC0415
    from rich.text import Text  # noqa: PLC0415

    console = Console(file=sys.stdout, highlight=False)
    if console.width >= NARROW:
        table = Table(box=None, padding=(0, 2, 1, 0), show_header=False)
        table.add_column(ratio=2)
        table.add_column(ratio=3)
        for one in played:
            table.add_row(Text(_said_by(one), style="cyan"), Text(one.reply))
        console.print(table)
        return
    for one in played:
        console.print(Text(_said_by(one), style="cyan"))
        console.print(Text("".join(f"  {line}\n" for line in one.reply.split("\n"))))


def _said_by(one: Played) -> str:
    return f"{one.spoken.sent_at:%H:%M} {one.spoken.who}: {one.spoken.text}"
