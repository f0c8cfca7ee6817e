"""One send under way at a time, as long as they are quick."""

import asyncio
import time

from bot.delivery.lane import Lane


async def pass_through(lane: Lane, under_way: list[int], most: list[int], takes_s: float) -> None:
    """One send of some length."""
    ours = await lane.enter()
    under_way[0] += 1
    most[0] = max(most[0], under_way[0])
    await asyncio.sleep(takes_s)
    under_way[0] -= 1
    lane.leave(ours)


def test_quick_sends_go_one_after_the_other() -> None:
    """So a crash finds one of them in doubt."""
    most = [0]

    async def several() -> None:
        lane, under_way = Lane(patience_s=1.0), [0]
        await asyncio.gather(*(pass_through(lane, under_way, most, 0.005) for _ in range(16)))

    asyncio.run(several())

    assert most == [1]


def test_a_long_queue_of_quick_sends_is_no_reason_to_go_beside() -> None:
    """Whoever waits for many waits longer than for one: as long as the lane moves it is kept to, within reason."""

    async def queue(takes_s: float) -> int:
        lane, under_way, most = Lane(patience_s=0.2), [0], [0]
        await asyncio.gather(*(pass_through(lane, under_way, most, takes_s) for _ in range(40)))
        return most[0]

    assert asyncio.run(queue(0.01)) == 1
    assert asyncio.run(queue(0.06)) > 1


def test_a_send_that_hangs_holds_nobody_up_for_longer_than_the_patience() -> None:
    """The others go beside it, and the lane is in order afterwards."""

    async def several() -> float:
        lane, under_way, most = Lane(patience_s=0.1), [0], [0]
        hanging = asyncio.create_task(pass_through(lane, under_way, most, 0.6))
        await asyncio.sleep(0)
        began = time.monotonic()
        await asyncio.gather(*(pass_through(lane, under_way, most, 0.001) for _ in range(8)))
        took = time.monotonic() - began
        await hanging
        assert await lane.enter()
        return took

    assert 0.1 <= asyncio.run(several()) < 0.4


def test_one_that_is_called_off_while_it_waits_leaves_the_lane_in_order() -> None:
    """As when the program is told to stop."""

    async def called_off() -> bool:
        lane = Lane(patience_s=5.0)
        held = await lane.enter()
        waiting = asyncio.create_task(lane.enter())
        await asyncio.sleep(0.01)
        waiting.cancel()
        await asyncio.gather(waiting, return_exceptions=True)
        lane.leave(held)
        return await asyncio.wait_for(lane.enter(), 1.0)

    assert asyncio.run(called_off())
