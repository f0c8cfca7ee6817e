"""Options that several commands take."""

import click

database = click.option(
    "--database",
    metavar="URL",
    help="Where jobs are kept: a SQLite file, or a database URL. Default: OHMREPLY_DATABASE, or a file in your data folder.",
)
technician = click.option("--technician", metavar="NAME", help="Who writes. Default: the user of this machine.")
