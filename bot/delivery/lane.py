"""The lane: as long as sends are quick, one is under way at a time, so that a crash leaves one reply in doubt and not sixteen."""

import asyncio

PATIENCE_S = 0.5
"""Whoever waited so long for one and the same send goes beside it: a slow send holds nobody up for longer."""

SLICES = 5
"""Patience is counted in slices: a turn that keeps the whole program busy uses up one of them, not all."""

LONGEST = 4
"""So many times the patience is the longest wait, also where the lane moves: then there is more to send than one at a time can."""


class Lane:
    """One at a time, with patience."""

    def __init__(self, patience_s: float = PATIENCE_S) -> None:
        self._lock = asyncio.Lock()
        self._patience_s = patience_s
        self._passed = 0
        """How many had the lane; it tells whether the one in front is still the same."""

    async def enter(self) -> bool:
        """Wait for the lane. True where it is ours, False where we go beside it; `leave` wants to know."""
        if not self._lock.locked():
            return await self._lock.acquire()
        in_front, behind_it = self._passed, 0
        for _ in range(LONGEST * SLICES):
            try:
                async with asyncio.timeout(self._patience_s / SLICES):
                    return await self._lock.acquire()
            except TimeoutError:
                behind_it = behind_it + 1 if in_front == self._passed else 0
                in_front = self._passed
            if behind_it >= SLICES:
                break
        return False

    def leave(self, ours: bool) -> None:  # noqa: FBT001  (what `enter` gave)
        """Let the next one in."""
        if ours:
            self._passed += 1
            self._lock.release()
