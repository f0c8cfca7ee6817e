"""Builds a table that stays without the collector, which would walk its thousands of rows again and again."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def uncollected() -> Iterator[None]:
    """
    Nothing is collected within, and what is there at the end is never walked again; the collector goes on as it was.

    >>> import gc
    >>> with uncollected():
    ...     gc.isenabled()
    False
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        if was_on:
            gc.enable()
