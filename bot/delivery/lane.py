"""The lane: as long as sends are quick, one is under way at a time, so that a crash leaves one reply in doubt and not sixteen."""

import asyncio

PATIENCE_S = 0.5
"""Whoever waited so long goes beside the one in front: a slow send holds nobody up for longer."""

SLICES = 5
"""Patience is counted in slices: a turn that keeps the whole program busy uses up one of them, not all."""


class Lane:
    """One at a time, with patience."""

    def __init__(self, patience_s: float = PATIENCE_S) -> None:
        self._lock = asyncio.Lock()
        self._patience_s = patience_s

    async def enter(self) -> bool:
        """Wait for the lane. True where it is ours, False where we go beside it; `leave` wants to know."""
        if not self._lock.locked():
            return await self._lock.acquire()
        for _ in range(SLICES):
            try:
                async with asyncio.timeout(self._patience_s / SLICES):
                    return await self._lock.acquire()
            except TimeoutError:
                continue
        return False

    def leave(self, ours: bool) -> None:  # noqa: FBT001  (what `enter` gave)
        """Let the next one in."""
        if ours:
            self._lock.release()
