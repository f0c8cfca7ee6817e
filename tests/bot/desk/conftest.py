"""Lets the tests of this folder share their people."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

import pytest
from sqlalchemy import Engine


@pytest.fixture
def office(store: Engine):
    """A desk on an empty store, once on each database."""
    from desk_people import Office

    return Office(store)
